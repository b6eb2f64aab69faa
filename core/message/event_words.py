"""The words of one event taken one by one into its parts: amounts, animals, what was put in."""

from __future__ import annotations

from core.message import animal_events, deed_asked, event_bounds, kinds, nearest, quantities, trade
from core.message.amounts import GRAMS, MILLILITRES, SHARES, SPOONS, litres
from core.message.event_parts import Parts
from core.message.model import Context
from core.message.quantities import Quantity
from core.message.tokens import Token
from core.message.waters import SALTED, words


def take(tokens: list[Token], place: int, index: int, parts: Parts, context: Context) -> int:
    """Take what stands at `place` into the parts of the event at `index`; the place behind it."""
    token = tokens[place]
    if parts.kind in _OF_WATER and (salted := _salt_water(tokens, place)):
        parts.water = True
        if parts.kind == "top_up":  # of a change it is the tank's own kind
            parts.substance = SALTED
        return place + salted
    if parts.kind in event_bounds.GIVEN and (named := trade.given(tokens, index, place)):
        parts.unknown += tokens[place : place + named]
        return place + named
    if parts.kind in kinds.OF_ANIMALS and animal_events.take(tokens, place, parts):
        return place + 1
    if kinds.is_numbered(tokens, place):
        parts.unknown.append(token)
        return place + 1
    if token.text == "-" and _is_minus(tokens, place):
        if parts.kind in kinds.OF_ANIMALS:
            parts.bare = 0.0  # added -3 guppies
            return place + 2
        parts.unsure = True  # changed -10%
    numbered = quantities.is_number(token) or token.kind == "count"
    if numbered or token.value == "approx" or token.value in SHARES:
        quantity = quantities.read(tokens, place)
        if quantity is not None:
            if quantity.unit is None and event_bounds.share(token) and parts.kind == "water_change":
                above, slash, below = token.text.partition("/")
                part = int(above) / int(below) if slash else quantity.value or 0.0
                parts.percent = 100.0 * part
                return quantity.last
            _amount(quantity, parts, context)
            parts.weighed += quantity.unit in deed_asked.WEIGHED
            if quantity.last > index > place:
                return index
            return quantity.last
    if token.kind == "command" and token.value == "no":
        parts.unsure = True
    elif token.kind == "mark":
        mark = str(token.value)
        if mark in SHARES and parts.kind in {"dose", "added"}:
            return _part_of_dose(tokens, place, parts)
        if mark in SHARES:
            parts.percent = SHARES[mark]
        elif mark == "water":
            parts.water = True
        elif mark == "fish":
            parts.unknown.append(token)
        elif mark in event_bounds.UNSURE:
            parts.unsure = True
        elif mark == "other" and parts.kind in {"water_change", "top_up"}:
            parts.substance = parts.substance or token.text
            parts.water = True
            if parts.unknown and parts.unknown[-1] is tokens[place - 1]:
                parts.unknown = parts.unknown[: -1 if parts.unknown[-1].text in _PURELY else None]
    elif token.kind == "substance":
        if parts.kind in _OF_WATER and token.value in context.products:
            return place + 1  # with a conditioner in it
        parts.substance = str(token.value)
        parts.named.append(token)
    elif token.kind in {"word", "several", "event", "analyte"}:
        if not event_bounds.adds(token, parts.kind):
            parts.unknown.append(token)
    elif token.kind == "count" and parts.bare is None:
        parts.bare = float(str(token.value))
        parts.before = len(parts.unknown)
    elif token.kind == "time" and token.value == "one" and parts.count is None:
        following = tokens[place + 1] if place + 1 < len(tokens) else token
        if following.kind == "unit" and following.value in SPOONS:
            parts.spoons = SPOONS[str(following.value)]  # a teaspoon of it
            return place + 2
        of_them = place + 1
        while of_them + 1 < len(tokens) and (
            tokens[of_them].kind == "fill" or tokens[of_them].value == "link"
        ):
            of_them += 1  # one of my guppies
        living = parts.kind in kinds.OF_ANIMALS and tokens[min(of_them, len(tokens) - 1)].kind
        gone = living == "event" and parts.kind == "lost"  # one is dead
        gone = gone or (parts.kind == "lost" and following is token)  # se murió uno
        parts.count = 1 if following.kind in {"word", "event"} or living == "word" or gone else None
        parts.before = len(parts.unknown)
        slip = nearest.counts(following.text) and not kinds.is_kind(following.text)
        parts.unsure = parts.unsure or slip  # "a dozwn guppies"
    return place + 1


def _part_of_dose(tokens: list[Token], place: int, parts: Parts) -> int:
    """Take half a cup as a measure, half of a thing as a share; the place behind it."""
    behind = place + 1
    while behind < len(tokens) - 1 and tokens[behind].value == "one":
        behind += 1
    unit = tokens[behind] if behind < len(tokens) else None
    if unit is not None and unit.kind == "unit" and unit.value in SPOONS:
        parts.spoons = SHARES[str(tokens[place].value)] / 100.0 * SPOONS[str(unit.value)]
        return behind + 1
    parts.percent, parts.part = SHARES[str(tokens[place].value)], True
    return place + 1


def _is_minus(tokens: list[Token], place: int) -> bool:
    """Whether a dash behind an event's word is glued to its number, and so less than nothing."""
    before, following = tokens[place - 1], tokens[place + 1 : place + 2]
    glued = bool(following) and following[0].start == tokens[place].end
    return glued and before.kind == "event" and quantities.is_number(following[0])


def _amount(quantity: Quantity, parts: Parts, context: Context) -> None:
    value, unit = quantity.value, quantity.unit
    if quantity.grouped is not None and parts.kind in kinds.OF_ANIMALS and unit is None:
        value = quantity.grouped  # 10,000 fish are no ten
    elif quantity.grouped is not None:
        parts.unsure = True
        return
    if value is None or quantity.problem or quantity.sign:
        parts.unsure = True
        return
    if unit is None:
        parts.unsure = parts.unsure or (parts.kind in kinds.OF_ANIMALS and parts.bare is not None)
        parts.bare = value
        parts.before = len(parts.unknown)
    elif unit == "%":
        parts.percent = value
        parts.share_end = quantity.last
    elif unit in GRAMS:
        parts.heavy = parts.heavy or unit in {"kg", "mg"}
        parts.grams = value * GRAMS[unit]
    elif unit in MILLILITRES:
        parts.millilitres = value
    elif unit in SPOONS:
        parts.spoons = value * SPOONS[unit]
    else:
        volume = litres(quantity, us_gallons=context.us_gallons)
        if parts.whither and volume is not None:
            return  # moved to the 20 gal: a place
        if volume is None:
            parts.unsure = True
        elif not 0 < parts.share_end < quantity.first:
            parts.litres = volume  # but in "30% of 90 l" the volume is that of the whole


_OF_WATER = frozenset({"water_change", "top_up"})
_PURELY = frozenset(
    {
        "pure", "straight", "neat", "plain", "clean", "solely", "purely", "reinem", "reines",
        "rein",
        "pur", "pura", "puro", "zuiver", "puur", "czysta", "czystej", "rent", "ren",
    }
)  # fmt: skip
"""Before the name of a water: that it is nothing else."""
_LONGEST = 3
"""Words of a name of salt water."""


def _salt_water(tokens: list[Token], place: int) -> int:
    """How many tokens from here on name water with sea salt in it."""
    for count in range(_LONGEST, 0, -1):
        said = " ".join(token.text for token in tokens[place : place + count])
        if said.removeprefix("l ' ") in words().salted:
            return count
    return 0
