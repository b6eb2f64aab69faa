"""The numbers of a question, each in its place: from, to, by, for a volume, at a premise.

question = { word | name | substance | tank | role quantity | quantity }
role     = "from" | "to" | "under" | "by" | "+" | "at" | "if" | "with" | "for" | "in"
"""

from __future__ import annotations

from dataclasses import dataclass, field

from core.errors import CoreError
from core.message import doubts, numbers, quantities
from core.message.amounts import GRAMS, SHARES, SPOONS, litres
from core.message.candidates import Candidate
from core.message.lexicon import lexicon
from core.message.model import Context, Value
from core.message.quantities import Quantity
from core.message.settling import settle
from core.message.tokens import Token, is_salt_water
from core.units import UK_GALLON_L, US_GALLON_L, to_canonical

_ROLES = {
    "from": "from", "was": "from", "formerly": "from",
    "to": "to", "at_to": "to", "rose_to": "to", "fell_to": "to", "less": "to", "under": "to",
    "wish": "to", "by": "by", "up": "by", "down": "by", "if": "premise", "plus": "premise",
}  # fmt: skip
_VOLUMES = frozenset({"L", "gal", "uk gal"})
_GALLONS = {"gal": US_GALLON_L, "uk gal": UK_GALLON_L}
_AMOUNTS = _VOLUMES | GRAMS.keys() | SPOONS.keys() | {"mL"}


@dataclass(slots=True)
class Number:
    """A number of an analyte in its role (from, to, by, premise, or plain)."""

    analyte: str | None
    basis: str | None
    role: str
    value: float
    quantity: Quantity


@dataclass(slots=True)
class Slots:
    """All that a question's words say, before its kind decides what each is for."""

    numbers: list[Number] = field(default_factory=list)
    aimed: Number | None = None
    """The last of them that is a from, a to or a by."""
    names: list[tuple[str, str | None]] = field(default_factory=list)
    volume_l: float | None = None
    grams: float | None = None
    a_litre: float | None = None
    """Grams in each litre."""
    millilitres: float | None = None
    spoons: float | None = None
    percent: float | None = None
    ratio: float | None = None
    """Calcium to magnesium, as wished."""
    substance: str | None = None
    tank: str | None = None
    unit: str | None = None
    amount: Quantity | None = None
    units: list[tuple[str, str | None]] = field(default_factory=list)
    unknown: list[Token] = field(default_factory=list)
    unplaced: list[Quantity] = field(default_factory=list)
    guessed: dict[int, tuple[str, ...]] = field(default_factory=dict)
    """Start of a number that its analyte cannot have → what it may mean."""
    events: list[str] = field(default_factory=list)
    talk: bool = False
    default: str | None = None
    """What a number without a name measures (the warmth of "too warm")."""
    lowered: bool = False
    suiting: bool = False
    """Asked what would suit: whatever else stands there names no animal."""
    uses: bool = False
    """Asked what is used up."""
    joining: bool = False
    """Asked whether an animal may join: the numbers are its conditions."""
    readying: bool = False
    """Asked whether the tank is ready for any."""


def read(tokens: list[Token], context: Context, source: str, default: str | None = None) -> Slots:
    """Sort what the tokens of one question say; `default` is what a nameless number measures."""
    slots = Slots(default=default)
    tokens = _without_salt_water(tokens)
    role = ""
    index = 0
    while index < len(tokens):
        token = tokens[index]
        if token.value == "calcium" and (used := _ratio(tokens, index, slots)):
            index += used
            continue
        if token.kind == "unit" and _names_next(tokens, index):
            slots.names.append((str(token.value).partition("@")[2], None))
            index += 1
            continue
        if token.value == "one" and index + 1 < len(tokens) and tokens[index + 1].value in SPOONS:
            spoon = str(tokens[index + 1].value)  # a tablespoon of it
            slots.spoons = SPOONS[spoon]
            slots.units.append((spoon, None))
            index += 2
            continue
        quantity = None if token.kind in {"word", "fill"} else _read_at(tokens, index)
        if quantity is not None:
            _quantity(tokens, index, quantity, role, slots, context, source)
            role = "premise" if role == "premise" else ""
            index = quantity.last
            continue
        role = _by_so_much(tokens, index, slots) or _word(token, role, slots)
        index += 1
    _each_litre(slots)
    return slots


def _without_salt_water(tokens: list[Token]) -> list[Token]:
    """Leave the salt of salt water out where water is changed: the water is meant, not the salt."""
    if all(token.value not in {"changing", "water_change"} for token in tokens):
        return tokens
    return [token for place, token in enumerate(tokens) if not is_salt_water(tokens, place)]


def _read_at(tokens: list[Token], index: int) -> Quantity | None:
    """The quantity that begins here; a volume is no start of a range: `40 l to 1.025`.

    Hours are no reading: `co2 on 24h ok`.
    """
    ends = index + 2
    if ends <= len(tokens) - 1 and tokens[index + 1].value == "hour":
        return None
    if ends < len(tokens) and tokens[index + 1].value in _VOLUMES and tokens[ends].value == "to":
        return quantities.read(tokens[:ends], index)
    return quantities.read(tokens, index)


def _each_litre(slots: Slots) -> None:
    """Grams before a litre without a number (`3 g salt per litre`) are those of each litre."""
    bare = next((unit for unit, of in slots.units if unit in _VOLUMES and of is None), None)
    if slots.grams is not None and bare is not None:
        slots.a_litre = slots.grams / (1.0 if bare == "L" else _GALLONS[bare])
        slots.grams = None
    elif slots.a_litre is not None and slots.substance is not None and slots.aimed is None:
        slots.numbers = [number for number in slots.numbers if number.quantity.unit != "g/L"]
    else:
        slots.a_litre = None  # no dose: a salinity


def _by_so_much(tokens: list[Token], index: int, slots: Slots) -> str:
    """The role that a small word gives the number behind it where something is raised, or "".

    `höj kh med 3`, `kh um 3 senken`; with a second number it is where it starts: `de 3 à 6`.
    """
    if tokens[index].text not in lexicon().numerals["by_so_much"] or not slots.names:
        return ""
    quantity = quantities.read(tokens, index + 1) if index + 1 < len(tokens) else None
    verb = next((t for t in tokens if t.kind == "ask" and t.value in {"raise", "change"}), None)
    if quantity is None or verb is None:
        return ""
    slots.lowered = verb.value == "change"
    ends = quantity.last < len(tokens) and tokens[quantity.last].value in {"to", "at_to"}
    return "from" if ends else "by"


def _names_next(tokens: list[Token], index: int) -> bool:
    """Whether a unit names the number behind it (`sg 1.025`)."""
    named = "@" in str(tokens[index].value) and index + 1 < len(tokens)
    return named and quantities.is_number(tokens[index + 1])


def _ratio(tokens: list[Token], index: int, slots: Slots) -> int:
    """`ca:mg 4:1`, `ca/mg ratio 4`, `ca to mg = 3 to 1`: how many tokens it takes."""
    place = index + 1
    place += place < len(tokens) and (tokens[place].text in _OVER or tokens[place].value == "to")
    if place >= len(tokens) or tokens[place].value != "magnesium":
        return 0
    place += 1
    while place < len(tokens) and (tokens[place].value == "link" or tokens[place].text == "ratio"):
        place += 1
    if place >= len(tokens) or (first := _count(tokens[place])) is None:
        return 0
    slots.ratio = first
    place += 1
    joined = place + 1 < len(tokens) and (
        tokens[place].text in _OVER or tokens[place].value in {"to", "link"}
    )
    if joined and (second := _count(tokens[place + 1])) is not None:
        slots.ratio = first / second
        place += 2
    return place - index


def _count(token: Token) -> float | None:
    number = token.value
    sound = isinstance(number, numbers.Number) and number.problem is None
    return number.value or None if isinstance(number, numbers.Number) and sound else None


_OVER = frozenset({":", "/", "-"})


def _word(token: Token, role: str, slots: Slots) -> str:
    """What one word adds; the role that it gives to the next number."""
    kind = token.kind
    if kind == "analyte":
        analyte, _, basis = str(token.value).partition("@")
        slots.names.append((analyte, basis or None))
    elif kind == "substance":
        slots.substance = slots.substance or str(token.value)
    elif kind == "tank":
        slots.tank = str(token.value)
    elif kind == "unit":
        unit, _, of = str(token.value).partition("@")
        slots.units.append((unit, of or None))
    elif kind == "event":
        slots.events.append(str(token.value))
    elif kind == "mark" and token.value in SHARES:
        slots.percent = SHARES[str(token.value)]
    elif kind == "mark" and token.value == "changing":
        slots.events.append("water_change")
    elif kind == "mark" and token.value == "uses":
        slots.uses = True
    elif kind == "mark":
        return _ROLES.get(str(token.value), role)
    elif kind == "ask" and token.value == "suits":
        slots.suiting = True
    elif kind == "ask" and token.value == "join":
        slots.joining = True
    elif kind == "ask" and token.value == "ready":
        slots.readying = True
    elif kind == "ask" and token.value in {"raise", "change"}:
        slots.lowered = token.value == "change"
        return "raise"
    elif kind == "time" and token.value == "at":
        return "premise"
    elif kind in {"word", "several"}:
        slots.unknown.append(token)
    return role


def _quantity(
    tokens: list[Token],
    index: int,
    quantity: Quantity,
    role: str,
    slots: Slots,
    context: Context,
    source: str,
) -> None:
    if quantity.sign == "-" and quantity.unit in _AMOUNTS | {"%"}:
        slots.unplaced.append(quantity)  # less than nothing can be put in
        return
    if _amount(quantity, slots, context):
        return
    name = _name(tokens, index, quantity, slots)
    if role == "raise":
        # "raise kh 2" may be to 2 or by 2; "2 degrees" is by.
        if quantity.low is None and not quantity.sign and quantity.qualifier == "=":
            if quantity.unit != "°":
                slots.unplaced.append(quantity)
                return
            role = "by"
        else:
            role = ""
    analyte, basis = name if name is not None else (quantity.of or slots.default, None)
    if analyte is None and not slots.names and _is_gravity(quantity):
        analyte = "salinity"
    if quantity.low is not None and quantity.high is not None:
        for number, part in ((quantity.low, "from"), (quantity.high, "to")):
            _number(number, part, analyte, basis, quantity, slots, context, source)
    elif quantity.value is not None and _fit(quantity, analyte):
        if quantity.sign:
            role = "by"
            number = -quantity.value if quantity.sign == "-" else quantity.value
        else:
            number = -quantity.value if role == "by" and slots.lowered else quantity.value
            role = "to" if quantity.qualifier == "<" else role
        _number(number, role, analyte, basis, quantity, slots, context, source)
    else:
        slots.unplaced.append(quantity)


def _is_gravity(quantity: Quantity) -> bool:
    """Whether a bare number can only be a specific gravity: `how much salt for 40 l to 1.025`."""
    values = [v for v in (quantity.value, quantity.low, quantity.high) if v is not None]
    return quantity.unit is None and bool(values) and all(1.0 < v < 1.05 for v in values)


def _fit(quantity: Quantity, analyte: str | None) -> bool:
    """Whether a number can be taken; a mark that may divide thousands needs its analyte."""
    return quantity.problem is None and (quantity.grouped is None or analyte is not None)


def _amount(quantity: Quantity, slots: Slots, context: Context) -> bool:
    """Take a volume, mass, spoon or share; whether it was one."""
    value, unit = quantity.value, quantity.unit
    if value is None or unit is None or quantity.problem or quantity.grouped is not None:
        return False
    if unit == "g/L":
        slots.a_litre = value
    if unit in _VOLUMES:
        slots.volume_l = litres(quantity, us_gallons=context.us_gallons)
    elif unit in GRAMS:
        slots.grams = value * GRAMS[unit]
    elif unit == "mL":
        slots.millilitres = value
    elif unit in SPOONS:
        slots.spoons = value * SPOONS[unit]
    elif unit == "%":
        slots.percent = value
    else:
        return False
    slots.amount = slots.amount or quantity
    return True


def _name(
    tokens: list[Token], index: int, quantity: Quantity, slots: Slots
) -> tuple[str, str | None] | None:
    """The name that a number belongs to: the one before it, or the one right behind."""
    if quantity.of is not None:
        same = [name for name in slots.names if name[0] == quantity.of]
        return same[-1] if same else (quantity.of, None)
    before = index - 1
    while before >= 0 and tokens[before].kind in {"mark", "fill", "p", "time"}:
        before -= 1
    naming = before >= 0 and (tokens[before].kind == "analyte" or _names_next(tokens, before))
    if naming and slots.names:
        return _basis_behind(tokens, quantity, slots.names[-1])
    beside = tokens[index - 1] if index and quantity.unit == "°" else None
    if beside is not None and (beside.kind in {"number", "unit"} or beside.value == "at"):
        return "temperature", None  # ph 7 25 degrees: no name waits for it
    if quantity.last < len(tokens) and tokens[quantity.last].kind == "analyte":
        analyte, _, basis = str(tokens[quantity.last].value).partition("@")
        following = quantity.last + 1
        if following >= len(tokens) or not quantities.is_number(tokens[following]):
            return analyte, basis or None
    aimed = slots.aimed
    if aimed is not None:
        return (aimed.analyte, aimed.basis) if aimed.analyte else None
    return slots.names[-1] if slots.names else None


def _basis_behind(
    tokens: list[Token], quantity: Quantity, name: tuple[str, str | None]
) -> tuple[str, str | None]:
    """The name with the basis that its other name behind the number states (`1 nh4-n`)."""
    if quantity.last < len(tokens) and tokens[quantity.last].kind == "analyte":
        analyte, _, basis = str(tokens[quantity.last].value).partition("@")
        if analyte == name[0]:
            return analyte, basis or name[1]
    return name


def _number(
    number: float,
    role: str,
    analyte: str | None,
    basis: str | None,
    quantity: Quantity,
    slots: Slots,
    context: Context,
    source: str,
) -> None:
    if analyte is not None:
        canonical = _canonical(number, role, analyte, basis, quantity, context, source, slots)
        if canonical is None:
            slots.unplaced.append(quantity)
            return
        number = canonical
    said = Number(analyte, quantity.basis or basis, role, number, quantity)
    slots.numbers.append(said)
    if role in {"from", "to", "by"}:
        slots.aimed = said


def _canonical(
    number: float,
    role: str,
    analyte: str,
    basis: str | None,
    quantity: Quantity,
    context: Context,
    source: str,
    slots: Slots,
) -> float | None:
    """In the analyte's own unit; a difference of temperature in °F is scaled only."""
    if role == "by":
        try:
            if analyte == "temperature" and quantity.unit == "°F":
                return number / 1.8
            unit = None if quantity.unit == "°" else quantity.unit
            return to_canonical(analyte, number, unit, quantity.basis or basis)
        except (CoreError, KeyError):
            return None
    single = Quantity(quantity.first, quantity.start)
    single.value, single.unit, single.of = number, quantity.unit, quantity.of
    single.unit_text, single.basis = quantity.unit_text, quantity.basis
    single.grouped, single.mark = quantity.grouped, quantity.mark
    settled = settle(
        Candidate(analyte, basis, single, quantity.start, quantity.end), context, source
    )
    if isinstance(settled, Value) and isinstance(settled.canonical, float):
        return settled.canonical
    if not isinstance(settled, Value) and settled.reason == doubts.IMPLAUSIBLE:
        guesses = settled.choices or (settled.suggestion or "",)
        slots.guessed[quantity.start] = tuple(each.partition(" ")[2] for each in guesses if each)
    return None
