"""A question with its numbers in their places: what is wished, where it stands, under what."""

from __future__ import annotations

from collections.abc import Mapping

from core.message import doubts, stands, trade
from core.message.asked_words import is_word
from core.message.dose_words import names_what_it_moves
from core.message.model import Doubt, Question
from core.message.quantity import Quantity
from core.message.slot import Number, Slots
from core.message.slot_numbers import is_gravity
from core.message.tokens import Token
from core.units import FACTORS, to_canonical

_RAISED = {
    "sodium bicarbonate": "kh",
    "potassium bicarbonate": "kh",
    "potassium nitrate": "nitrate",
    "monopotassium phosphate": "phosphate",
    "dipotassium phosphate": "phosphate",
    "potassium sulfate": "potassium",
    "sea salt": "salinity",
    "sodium chloride": "salinity",
}
"""What a salt is dosed for, where only the salt is named."""


def unplaced(
    quantity: Quantity, kind: str, source: str, inside: list[Token], found: Slots
) -> Doubt:
    """A number without a place; `raise kh 2` is either by 2 or to 2, which the keeper chooses.

    One that no water has may be of another unit: `dose kh 200` is in ppm.
    """
    start, end = quantity.start, quantity.end
    fragment = source[start:end]
    guessed = kind == "change" and start in found.guessed  # bring kh up to 100
    if not (kind == "dose" or guessed) or quantity.value is None:
        return Doubt(fragment, start, end, doubts.INCOMPLETE_QUESTION)
    head, tail = source[inside[0].start : start], source[end : inside[-1].end]
    if meant := found.guessed.get(start):
        other = tuple(f"{head}{number}{tail}" for number in meant)
        return Doubt(
            fragment, start, end, doubts.INCOMPLETE_QUESTION, other[0], choices=other[1:] and other
        )
    both = tuple(f"{head}{word} {fragment}{tail}" for word in ("by", "to"))
    return Doubt(fragment, start, end, doubts.INCOMPLETE_QUESTION, choices=both)


def question_of(
    kind: str, found: Slots, text: str, asking: Token, inside: list[Token], source: str
) -> Question:
    """The question of a kind that the slots fill; `asking` is its word, `inside` its sentence."""
    main = _main(kind, found)
    if kind == "dose":
        main = main or _by_unit(found)
        _in_own_unit(found, main)
    roles: dict[str, float] = {}
    premises: dict[str, float] = {}
    also: Number | None = None
    basis = bound = None
    if kind == "dose":
        stands.aim(found.numbers, main, inside)
        stands.stand(found.numbers, main, inside)
        stands.tell(found.numbers, main, inside)
    wished = any(n.role in {"to", "by"} and n.analyte == main for n in found.numbers)
    for number in found.numbers:
        analyte = number.analyte or main
        role = _role(kind, number, main, found, wished=wished)
        if kind == "safe" and found.substance is None and analyte is not None and role != "by":
            # Whatever word stands before it, this is the number to judge; of a range the upper end.
            if analyte not in premises or role == "to":
                premises[analyte] = number.value
            basis = basis or number.basis
            continue
        if analyte is None and kind not in {"dose", "effect", "change"}:
            continue
        if analyte == main and role in {"from", "to", "by"} and role not in roles:
            roles[role] = _as_gravity(number) if main == "salinity" else number.value
            bound = "<" if role == "to" and number.quantity.qualifier == "<" else bound
            basis = basis or number.basis
        elif analyte not in {None, main} and kind == "dose" and role in {"to", "by"} and not also:
            also = number
        elif analyte is not None and analyte not in premises:
            premises[analyte] = number.value
            basis = basis or (number.basis if analyte == main or kind == "safe" else None)
    if kind == "convert":
        return _conversion_question(found, text, main)
    litres = None
    volume = found.volume_l
    if kind == "change" and volume is not None and found.percent is None and not roles:
        litres, volume = volume, None
    return Question(
        kind,
        found.tank,
        main,
        volume,
        roles.get("from"),
        roles.get("to"),
        bound,
        roles.get("by"),
        also.analyte if also else None,
        also.value if also and also.role == "to" else None,
        also.value if also and also.role == "by" else None,
        found.ratio,
        found.grams,
        found.a_litre,
        found.millilitres,
        found.spoons,
        found.percent,
        litres,
        found.substance or _unknown_substance(kind, found, asking, inside, source),
        _species(kind, found, source),
        basis,  # type: ignore[arg-type]
        premises=_without(premises, main if roles else None),
        text=text,
    )


def _by_unit(found: Slots) -> str | None:
    """Alkalinity where a number of no name is told in its unit: `raise it to 3 meq`.

    In ppm only of soda, whichever it is.
    """
    units = {each.quantity.unit for each in found.numbers if each.role}
    soda = found.substance == "soda"
    nameless = not found.names and (soda or found.substance is None)
    return "kh" if nameless and ("meq/L" in units or (soda and "ppm" in units)) else None


def _in_own_unit(found: Slots, main: str | None) -> None:
    """Take numbers without a name in the unit that they are told in: `soda to get to 3 meq/l`.

    The unit behind the last number of a pair is that of both, where both fit: `from 50 up to
    100 ppm`.
    """
    if main is None:
        return
    for number in found.numbers:
        unit = number.quantity.unit
        low, high = number.quantity.low, number.quantity.high
        falls = low is not None and high is not None and low > high
        if falls and number.role == "from":
            continue  # from 6.2 to 3 meq: the first is in degrees
        if number.analyte is None and unit is not None and _measures(main, unit):
            basis = number.quantity.basis or number.basis
            number.value = to_canonical(main, number.value, unit, basis)
            number.analyte = main
    ends = {each.role: each for each in found.numbers if each.analyte in {None, main}}
    start, end = ends.get("from"), ends.get("to")
    if start is None or end is None or start.quantity.unit is not None:
        return
    first, last, unit = start.quantity.value, end.quantity.value, end.quantity.unit
    if first is None or last is None or unit is None or not _measures(main, unit):
        return
    if first < last:
        start.value, start.analyte = to_canonical(main, first, unit, end.basis), main


def _measures(analyte: str, unit: str) -> bool:
    """Whether a unit is one of an analyte's that is counted by a factor."""
    return (analyte, unit) in FACTORS


def _as_gravity(number: Number) -> float:
    """A salinity in g/kg, also where a bare 1.024 of no name can only be a specific gravity."""
    if number.analyte is None and is_gravity(number.quantity):
        return to_canonical("salinity", number.value, "SG")
    return number.value


def _without(premises: dict[str, float], main: str | None) -> Mapping[str, float]:
    premises.pop(main or "", None)
    return premises


def _main(kind: str, found: Slots) -> str | None:
    """The analyte asked about: the one with a from, to or by; else the first named."""
    if kind == "co2":
        return "co2"
    if found.joining and kind == "keep":
        return None
    for number in found.numbers:
        if number.role in {"from", "to", "by"} and number.analyte is not None:
            return number.analyte
    numbered = {number.analyte for number in found.numbers}
    bare = [name for name, _ in found.names if name not in numbered]
    if bare:
        return bare[0]
    bare_gravity = not found.names and any(n.analyte == "salinity" for n in found.numbers)
    if kind == "dose" and found.substance in _SALTS and bare_gravity:
        return "salinity"  # how much salt for 1.005
    raised = _raised(found) if kind == "dose" else None
    if kind == "dose" and any(names_what_it_moves(t.text, "kh") for t in found.unknown):
        return "kh"  # how much buffer to get to 5
    aimed = raised != "salinity" or any(number.role for number in found.numbers)
    if raised == "kh" or (raised and aimed and not found.names):
        return raised
    if found.names and kind in {"dose", "change", "keep", "convert", "history", "when"}:
        return found.names[0][0]
    if kind == "convert" and found.numbers:
        return found.numbers[0].analyte
    return None


def _raised(found: Slots) -> str | None:
    """What a salt is to raise where no name says so.

    Those of calcium and magnesium are dosed for hardness in degrees, and in the sea for their own
    mg/L, which no hardness reaches.
    """
    substance = found.substance or ""
    ion = substance.partition(" ")[0]
    if ion in {"calcium", "magnesium"} and found.aimed is not None:
        return ion if found.aimed.value > _MOST_DEGREES else "gh"
    return _RAISED.get(substance)


_SALTS = frozenset({"sodium chloride", "sea salt"})

_MOST_DEGREES = 60.0
"""Above this a number is no hardness that anybody doses for. [°dH]"""


def _role(kind: str, number: Number, main: str | None, found: Slots, *, wished: bool) -> str:
    """A plain number of the main analyte is what is wished, in the kinds that have a wish.

    Beside a number that is wished it is where the water stands (`kh 2, want kh 5`); the nitrite
    that salt is asked for is a reading.
    """
    if number.role == "premise" and number.analyte == main and kind == "dose":
        beside = (n for n in found.numbers if n is not number and n.analyte in {None, main})
        return "from" if any(beside) else number.role  # at 3 dkh, want 5
    if number.role or number.analyte != main:
        return number.role
    if main == "nitrite" and found.substance == "sodium chloride":
        return ""
    if wished:
        return "from"
    return "to" if kind in {"dose", "change", "keep", "when"} else ""


def _conversion_question(found: Slots, text: str, main: str | None) -> Question:
    number = found.numbers[0] if found.numbers else None
    quantity = number.quantity if number is not None else found.amount
    to_unit = found.units[-1] if found.units else None
    analyte = (number.analyte if number else None) or main
    if analyte is None and to_unit is not None:
        analyte = to_unit[1]
    return Question(
        "convert",
        analyte=analyte,
        substance=found.substance,
        spoons=found.spoons,
        basis=quantity.basis if quantity is not None else None,  # type: ignore[arg-type]
        value=quantity.value if quantity is not None else None,
        unit=quantity.unit if quantity is not None else None,
        to_unit=to_unit[0] if to_unit is not None else None,
        text=text,
    )


def _unknown_substance(
    kind: str, found: Slots, asking: Token, inside: list[Token], source: str
) -> str | None:
    """The words right behind the word of asking, as said: `how much coral powder for 90 l`.

    A unit, "of" and articles may stand between (`how many ml of the blue bottle`); what asks of
    what so much is to be given (`how much of what`) names nothing.
    """
    if kind not in {"dose", "effect"} or asking not in inside:
        return None
    words: list[Token] = []
    first = inside.index(asking) + 1
    if (named := trade.spelt(inside, first)) and asking.value == "how_much":
        return source[inside[first].start : inside[first + named - 1].end]  # how much kh plus
    for token in inside[first:]:
        if token in found.unknown and not is_word("of_what", token.text):
            words.append(token)
        elif words or not (_passed_over(token) or token in found.unknown):
            break
    return " ".join(source[token.start : token.end] for token in words) or None


def _passed_over(token: Token) -> bool:
    return token.kind in {"fill", "unit"} or token.text in _ARTICLES or token.value == "new"


_ARTICLES = frozenset({"of", "de", "a", "an", "von", "van", "di", "av"})
ANY = "fish"
"""The species of a question about animals of no kind: `can i add fish`, `is it cycled`."""


def _species(kind: str, found: Slots, source: str) -> str | None:
    if found.readying:
        return ANY
    if found.suiting or not (kind == "safe" or found.joining):
        return None
    if found.unknown:
        return source[found.unknown[0].start : found.unknown[-1].end]
    return ANY if kind == "keep" else None
