"""The words of a product's label, which are no reading: `5 g per 80 l raises kh 1`.

label   = [ name [":"] ] dose [ effects ]
        | name effects ( "with" | "by" | "for" ) dose
dose    = amount "per" volume | "per" volume amount
amount  = quantity in g, kg, oz, mL or spoons | number measure ( "(" | "=" ) quantity [ "each" ]
effects = ( "raises" | "lowers" | "adds" | "+" ) { name number | number name }
        | "removes" chlorine

Whatever stands behind an amount, a volume and a word of moving is what the product does, so that
no value of it is ever stored; what it does is told only where each number is of one analyte. What a
label does not say, the unit of its amount or of its volume, stands as "?".
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from core.message import bought, quantities
from core.message.amounts import GRAMS, MILLILITRES, SPOONS, litres
from core.message.label_effects import effects, has_values
from core.message.model import Command, Context
from core.message.quantity import Quantity
from core.message.tokens import Token

_RAISING = frozenset({"up", "rose_to", "raise"})
MOVING: Final = {
    **dict.fromkeys(_RAISING | {"adding"}, "raises"),
    **dict.fromkeys(("down", "fell_to", "change"), "lowers"),
}
_VOLUMES = frozenset({"L", "gal", "uk gal"})
_NAMING: Final = frozenset({"word", "several", "analyte", "substance", "own"})
"""Tokens that can be a product's name; "i raised" has none."""
_BETWEEN: Final = 4
"""Words at most between an amount, its volume and what it does."""
_BRACKETED: Final = 8
"""Words at most from an amount to its volume, where a bracket tells what a measure holds."""
_CHLORINE: Final = frozenset({"chlorine", "total_chlorine", "ambiguous_chlorine"})
UNSAID: Final = "?"
"""In the place of a unit that was not told."""


@dataclass(frozen=True, slots=True)
class Dose:
    """So much of a product in so much water; `first` and `last` are the indexes of its tokens."""

    said: str
    sound: bool
    first: int
    last: int


def read(tokens: list[Token], context: Context) -> Command | None:
    """The label that a message tells, as a command with its words in the usual order.

    Examples
    --------
    ``5 g per 80 l raises kh 1``, ``10 ml auf 100 l erhöht die KH um 1``,
    ``1 cap (5 ml) per 50 l adds nitrate 5, phosphate 1``, ``5 ml per 40 l removes chlorine``
    """
    if len(tokens) < 5 or any(t.kind == "nl" or _is_deed(tokens, i) for i, t in enumerate(tokens)):
        return None
    colon = colon_of(tokens)
    if tokens[-1].text == "?" or (tokens[0].kind == "ask" and not colon):
        return None
    dose = find_dose(tokens, context)
    if dose is None:
        return None
    if colon >= dose.first:
        colon = 0
    named = colon > 0 and tokens[0].kind != "tank" and not has_values(tokens[:colon])
    tail = tokens[dose.last :]
    within = tokens[dose.first : dose.last]
    before = tokens[colon + 1 if named else 0 : dose.first]
    if _moving(tokens, dose.last) is not None or any(_way(token) for token in within):
        return _told(dose, [*before, *tail] if named else tail, within)
    if _way_in(before) and (named or (not tail and _tells(before))):
        return _told(dose, [*before, *tail] if dose.sound else [], within)
    if not dose.sound or context.group:
        return None
    if removes(tail) and (named or _is_name(before)):
        return Command("label", f"{dose.said} removes chlorine")
    read = has_values(before) and not _aims(before)  # today: kh 4, 5 ml per 100 l of food
    return _told(dose, [*before, *tail], within) if named and not read else None


def colon_of(tokens: list[Token]) -> int:
    """Where the colon behind a label's name stands, 0 where none does."""
    return next((i for i, token in enumerate(tokens) if token.text in {":", "="} and i), 0)


def _told(dose: Dose, rest: list[Token], within: list[Token]) -> Command:
    """A label with what the words around its amount and volume say that it does."""
    way = next((way for token in [*within, *rest] if (way := _way(token))), "")
    per_dose = any(bought.is_word("per_dose", text) for text in _texts(rest))
    signed = any(token.text in {"+", "="} for token in rest)
    if not way and not (signed or per_dose or _aims(rest)):
        return Command("label", dose.said)
    first = next((i + 1 for i, token in enumerate(rest) if _way(token)), 0)
    said = effects(rest[first:], way or "raises") or effects(rest, way or "raises")
    return Command("label", " ".join(filter(None, (dose.said, said))))


def _aims(rest: list[Token]) -> bool:
    """Whether a number in a unit of hardness is what the amount is for: `for 1 dkh use 5 g`."""
    return any(
        _is_per(one) and (found := quantities.single(rest, place)) is not None and bool(found.of)
        for place, one in enumerate(rest[:-1], 1)
    )


def _way(token: Token) -> str | None:
    """Whether a word tells that a value is raised, or lowered."""
    moved = MOVING.get(str(token.value))
    return moved or ("raises" if bought.is_word("gives", token.text) else None)


def _way_in(tokens: list[Token]) -> bool:
    return any(_way(token) for token in tokens)


def _is_deed(tokens: list[Token], place: int) -> bool:
    """Whether a word tells what was done, not what a product takes out or gives with a dose."""
    token = tokens[place]
    per = place > 0 and _is_per(tokens[place - 1])
    return token.kind == "event" and not per and not bought.is_word("removes", token.text)


def _tells(tokens: list[Token]) -> bool:
    """Whether a name stands before a word of moving, and a value with its number behind it."""
    moving = next(i for i, token in enumerate(tokens) if _way(token))
    return any(token.kind in _NAMING for token in tokens[:moving]) and has_values(tokens[moving:])


def _is_name(tokens: list[Token]) -> bool:
    """Whether tokens are nothing but words that can name a product."""
    return bool(tokens) and all(token.kind in {"word", "own", "fill"} for token in tokens)


def removes(tokens: list[Token]) -> bool:
    """Whether words say that chlorine is taken out, without a number of it."""
    if any(quantities.is_number(token) for token in tokens):
        return False
    chlorine = any(str(token.value).partition("@")[0] in _CHLORINE for token in tokens)
    return chlorine and any(bought.is_word("removes", text) for text in _texts(tokens))


def _texts(tokens: list[Token]) -> list[str]:
    """The words, and each with the one behind it."""
    words = [token.text for token in tokens]
    return [*words, *(f"{one} {two}" for one, two in pairwise(words))]


# --- so much in so much water -------------------------------------------------------------------


def find_dose(tokens: list[Token], context: Context) -> Dose | None:
    """The first amount of something for a volume of water; None where none is told."""
    for place in range(len(tokens)):
        water = _water(tokens, place, context)
        if water is None:
            continue
        last, whole = water
        last = _behind_bracket(tokens, last)
        amount = _amount(tokens, max(0, place - _BRACKETED), place)
        if amount is None and last < len(tokens):
            amount = _amount(tokens, last, min(len(tokens), last + _BETWEEN))
        if amount is None:
            continue
        said, sound, first, end = amount
        in_litres = UNSAID if whole is None else f"{whole:.6g} l"
        return Dose(
            f"{said} per {in_litres}",
            sound and whole is not None,
            min(first, place),
            max(last, end),
        )
    return None


def _behind_bracket(tokens: list[Token], last: int) -> int:
    """Behind the same volume in another unit: `38 l (10 gal)`."""
    if last + 3 < len(tokens) and tokens[last].text == "(" and tokens[last + 3].text == ")":
        other = quantities.single(tokens, last + 1)
        return last + 4 if other is not None and other.unit in _VOLUMES else last
    return last


def _water(tokens: list[Token], place: int, context: Context) -> tuple[int, float | None] | None:
    """The volume that begins here: where it ends, and its litres, None where no unit was told."""
    token = tokens[place]
    per = place > 0 and (tokens[place - 1].text == "/" or _is_per(tokens[place - 1]))
    if token.kind == "unit" and per and token.value in _VOLUMES:
        one = Quantity(place, token.start)
        one.value, one.unit = 1.0, str(token.value)
        return place + 1, litres(one, us_gallons=context.us_gallons)
    found = quantities.single(tokens, place)
    if found is None:
        return None
    if found.unit in _VOLUMES:
        sound = found.grouped is None and not found.problem
        return found.last, litres(found, us_gallons=context.us_gallons) if sound else None
    slip = per and found.unit is None and _measured(tokens, place - 2)
    return (found.last, None) if slip and _moving(tokens, found.last) is not None else None


def _is_per(token: Token) -> bool:
    return bought.is_word("per", token.text)


def _measured(tokens: list[Token], end: int) -> bool:
    """Whether an amount in a unit of mass or volume ends at a token."""
    return end > 0 and tokens[end].kind == "unit" and quantities.is_number(tokens[end - 1])


def _amount(tokens: list[Token], start: int, end: int) -> tuple[str, bool, int, int] | None:
    """The amount between two indexes as said, whether it is one in g or mL, and where it stands.

    What a measure holds goes before the measure: of `2 scoops (5 g each)` it is 10 g.
    """
    weighed: Quantity | None = None
    counted: tuple[Quantity, str] | None = None
    bare: Quantity | None = None
    place = start
    while place < end:
        found = quantities.single(tokens, place)
        if found is None or found.last > end:
            place += 1
            continue
        behind = tokens[found.last].text if found.last < end else ""
        if found.unit in GRAMS or found.unit in MILLILITRES:
            weighed = found
        elif found.unit in SPOONS or found.unit == "drops":
            counted = found, str(found.unit)
        elif found.unit is None and bought.is_word("measure", behind):
            counted = found, behind
        elif found.unit is None and found.last == end - 1 and _is_per(tokens[end - 1]):
            bare = found
        place = found.last
    if weighed is not None:
        ranged = weighed.first > 1 and tokens[weighed.first - 1].text in {"-", ".."}
        ranged = ranged and quantities.is_number(tokens[weighed.first - 2])
        if weighed.value is None or weighed.problem or weighed.grouped is not None or ranged:
            return UNSAID, False, weighed.first, weighed.last
        total, unit = weighed.value, "mL"
        if weighed.unit in GRAMS:
            total, unit = total * GRAMS[weighed.unit], "g"
        first, last = weighed.first, weighed.last
        if counted is not None and counted[0].value:
            first, last = min(first, counted[0].first), max(last, counted[0].last)
            each = last < len(tokens) and bought.is_word("each", tokens[weighed.last].text)
            total *= counted[0].value if each else 1.0
        return f"{total:.6g} {unit}", True, first, last
    if counted is not None:
        return f"{counted[0].value or 0:.6g} {counted[1]}", True, counted[0].first, counted[0].last
    if bare is not None and _moving(tokens, end) is not None:
        return f"{bare.value or 0:.6g} {UNSAID}", False, bare.first, bare.last
    return None


def _moving(tokens: list[Token], start: int) -> int | None:
    """Where a word of raising or lowering stands behind a volume."""
    near = range(start, min(len(tokens) - 1, start + _BETWEEN))
    return next((i for i in near if _way(tokens[i])), None)
