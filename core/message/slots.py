"""The numbers of a question, each in its place: from, to, by, for a volume, at a premise.

question = { word | name | substance | tank | role quantity | quantity }
role     = "from" | "to" | "under" | "by" | "+" | "at" | "if" | "with" | "for" | "in"
"""

from __future__ import annotations

import itertools
import re
from typing import Final

from core.message import kinds, numbers, part_words, quantities, slot_numbers
from core.message.amounts import SHARES, SPOONS
from core.message.lexicon import lexicon
from core.message.model import Context
from core.message.quantities import Quantity
from core.message.slot import Slots
from core.message.slot_numbers import VOLUMES, names_next
from core.message.tokens import Token, is_salt_water
from core.units import UK_GALLON_L, US_GALLON_L

_ROLES = {
    "from": "from", "was": "from", "formerly": "from",
    "to": "to", "at_to": "to", "rose_to": "to", "fell_to": "to", "less": "to", "under": "to",
    "wish": "to", "by": "by", "up": "by", "down": "by", "if": "premise", "plus": "premise",
}  # fmt: skip
_GALLONS = {"gal": US_GALLON_L, "uk gal": UK_GALLON_L}


def read(tokens: list[Token], context: Context, source: str, default: str | None = None) -> Slots:
    """Sort what the tokens of one question say; `default` is what a nameless number measures."""
    slots = Slots(default=default)
    tokens = _without_salt_water(tokens)
    role, wished = "", False
    index = 0
    while index < len(tokens):
        token = tokens[index]
        if token.value == "at" and wished and role == "to":
            index += 1
            continue  # want kh at 6
        if token.value == "calcium" and (used := _ratio(tokens, index, slots)):
            index += used
            continue
        if token.kind == "unit" and names_next(tokens, index):
            slots.names.append((str(token.value).partition("@")[2], None))
            index += 1
            continue
        if token.value == "one" and index + 1 < len(tokens) and tokens[index + 1].value in SPOONS:
            spoon = str(tokens[index + 1].value)  # a tablespoon of it
            slots.spoons = SPOONS[spoon]
            slots.units.append((spoon, None))
            index += 2
            continue
        if part_words.count_at(tokens, index) is not None:
            index += 2  # dose kh 5 in 3 parts
            continue
        quantity = None if token.kind in {"word", "fill"} else _read_at(tokens, index)
        if quantity is not None and not role and _is_of_else(tokens, index, quantity):
            index = quantity.last  # no number of the water
            continue
        if quantity is not None:
            slot_numbers.take(tokens, index, quantity, role, slots, context, source)
            role = "premise" if role == "premise" else ""
            index = quantity.last
            continue
        gives = _by_so_much(tokens, index, slots) or _is_worth(tokens, index)
        stands = role == "to" and _stands(tokens, index)
        role = "" if stands else gives or _word(token, role, slots)
        wished = token.value == "wish" or (wished and role == "to" and token.kind != "mark")
        index += 1
    _each_litre(slots)
    return slots


_IT: Final = frozenset({"it", "es", "het", "det"})


def _stands(tokens: list[Token], index: int) -> bool:
    """Whether a word tells how a value stands, whatever was wished before: `do i need kh is 2`."""
    link, before = tokens[index], tokens[index - 1 : index]
    named = any(each.kind == "analyte" or each.text in _IT for each in before)
    if link.value == "its":
        return all(each.kind != "analyte" for each in tokens[index + 1 : index + 2])
    return named and link.value == "link" and link.text.isalpha()


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
    if ends < len(tokens) and tokens[index + 1].value in VOLUMES and tokens[ends].value == "to":
        return quantities.read(tokens[:ends], index)
    return quantities.read(tokens, index)


def _is_of_else(tokens: list[Token], index: int, quantity: Quantity) -> bool:
    """Whether a bare number counts animals or tanks, or is a length or an age: `5 fish`, `30 cm`.

    A number behind the name of a value is that value, whoever is told behind it.
    """
    place = quantity.last
    before = tokens[index - 1] if index else None
    if quantity.unit is not None or quantity.of is not None:
        return False
    if before is not None and (before.kind == "analyte" or before.value == "link"):
        return False
    if before is not None and before.text == "x":
        return True  # 60 x 30 x 35
    if place >= len(tokens):
        return False
    behind = tokens[place]
    if behind.kind in {"word", "unit", "p"} and _APART.fullmatch(behind.text):
        return True
    if quantity.value is None or not float(quantity.value).is_integer():
        return False
    if behind.value == "fish":
        return True
    words = [token.text for token in itertools.takewhile(_is_word, tokens[place : place + _NAME])]
    said = [" ".join(words[:size]) for size in range(1, len(words) + 1)]
    return any(kinds.is_kind(each) or kinds.names_any(each) for each in said)


def _is_word(token: Token) -> bool:
    return token.kind == "word"


_NAME: Final = 3
"""Words of an animal's name that are looked at behind a number."""
_APART: Final = re.compile(
    r"cms?|mm|m|inch|inches|ft|foot|feet|\"|x|(?:x\d{1,4}){1,2}|years?|yrs?|yr|tanks|aquariums"
)
"""What stands behind a length, an age or a number of tanks."""


def _each_litre(slots: Slots) -> None:
    """Grams before a litre without a number (`3 g salt per litre`) are those of each litre."""
    bare = next((unit for unit, of in slots.units if unit in VOLUMES and of is None), None)
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


def _is_worth(tokens: list[Token], index: int) -> str:
    """The role of degrees whose worth is asked (`how many grams is 1 dkh`): by so much, or ""."""
    if tokens[0].value != "how_much" or tokens[index].value != "link" or index + 2 >= len(tokens):
        return ""
    behind = tokens[index + 2]
    named = "@" in str(behind.value) or any(token.value in {"kh", "gh"} for token in tokens)
    worth = behind.kind == "unit" and str(behind.value).startswith("°") and named
    return "by" if worth else ""


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
