"""Deeds that perhaps no tank had: they are asked about, and a button stores them.

perhaps = dose into { light word } word that nobody knows | change of a vessel

`put 20 g soda in my teapot`, `changed 10 l in the bucket` and `replaced 20 l jerrycan`: the words
stand in ``vessel.txt``.
"""

from __future__ import annotations

from core.message import doubts, kinds, vessel
from core.message.event_parts import Found
from core.message.model import Doubt, Event
from core.message.tokens import Token


def settle(found: list[Found], tokens: list[Token], source: str) -> list[Found]:
    """The same events, those that perhaps went to no tank as doubts."""
    for each in found:
        event = each.event
        if event is None:
            continue
        end = max(event.end, tokens[each.last - 1].end)
        said = source[event.start : end]
        told: str | None = None
        if event.kind == "dose" and _may_be_elsewhere(tokens, each, said):
            told = _dosed(event)
        elif event.kind == "water_change" and event.substance and _of_vessel(event.substance):
            told = _changed(event)
        if told is not None:
            choices = (told,) if told else ()
            each.event = None
            each.doubt = Doubt(
                said, event.start, end, doubts.UNSURE_EVENT, told or None, None, choices
            )
    return found


def _may_be_elsewhere(tokens: list[Token], found: Found, said: str) -> bool:
    place = vessel.unknown_place(said)
    if place is None or vessel.named(said) or vessel.elsewhere(said):
        return False
    behind = [token for token in tokens[found.first : found.last] if token.text == place]
    if not behind or behind[-1].kind != "word":
        return False
    if found.last < len(tokens) and tokens[found.last].kind == "tank":
        return False
    return not (kinds.names_animal(place) or kinds.names_thing(place))


def _of_vessel(source: str) -> bool:
    return vessel.named(f"in {source}") is not None and not vessel.is_water(source)


def _dosed(event: Event) -> str:
    """The dose as it is told beyond doubt; "" where its amount is no grams or millilitres."""
    if event.grams is not None:
        return f"dosed {event.grams:.6g} g {event.substance}"
    if event.millilitres is not None:
        return f"dosed {event.millilitres:.6g} ml {event.substance}"
    return ""


def _changed(event: Event) -> str:
    if event.litres is not None:
        return f"changed {event.litres:.6g} l"
    return "" if event.percent is None else f"changed {event.percent:.6g} %"
