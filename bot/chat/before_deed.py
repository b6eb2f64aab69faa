"""What stood before a deed that was just told: `it was kh 2 before`, right after a dose.

`kh was 2` right after one may be what stood before it or what was measured since: it is asked.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from typing import Final

from bot.chat.corrections import STILL_MEANT
from bot.chat.turn import Turn
from core.message import parse
from core.message.before_dose import asks_now, tells_past, tells_since, without
from core.message.doubts import PAST
from core.message.guesses import name_for
from core.message.model import Doubt, Parsed, Value

LOOKED_AT: Final = 6
"""Newest entries among which a deed is found that something was before."""

MOVING: Final = frozenset({"dose", "water_change", "top_up"})


async def placed(turn: Turn, parsed: Parsed) -> Parsed:
    """The same message with its values at the moment of the deed before, where it says so.

    A value of the deed's own moment was measured before it, as in `core.advice.since`. Where the
    message tells a time, an event or a question of its own, or no deed was told of late, it is
    left as it was read.
    """
    text = turn.incoming.text
    if parsed.events or parsed.question is not None or parsed.at is not None:
        return parsed
    rest = without(text)
    if not (parsed.values or parsed.doubts) or not (
        rest is not None or (tells_past(text) and not tells_since(text))
    ):
        return parsed
    entries = await turn.uow.log.newest(turn.chat.id, 1 if rest is not None else LOOKED_AT)
    late = [entry for entry in entries if turn.now - entry.at <= STILL_MEANT]
    moved = [event for entry in late for event in entry.events if event.what.kind in MOVING][:1]
    told = parsed if rest is None else parse(rest, turn.context())
    named = turn.tank_named(told.tank) if told.tank else turn.current_tank
    if not moved or named is None or named.id != moved[-1].tank_id:
        return parsed
    timed = told.at is not None or any(value.at is not None for value in told.values)
    if not told.values or told.events or told.doubts or told.question is not None or timed:
        return parsed
    if rest is None:  # it was measured just now, or before
        plain = all(each.value is not None for each in parsed.values) and bool(parsed.values)
        return _either(turn, parsed, moved[-1].at) if plain else parsed
    return replace(told, at=moved[-1].at)


def formerly(text: str, parsed: Parsed) -> Parsed:
    """`tank had gh 12, what is it now`: its values as earlier ones that have no time."""
    if not parsed.values or parsed.events or not asks_now(text):
        return parsed
    told = [
        Doubt(text[each.start : each.end], each.start, each.end, PAST) for each in parsed.values
    ]
    return replace(
        parsed, intent="unclear", values=(), doubts=(*told, *parsed.doubts), question=None
    )


def _either(turn: Turn, parsed: Parsed, at: datetime) -> Parsed:
    """The same message, with the question of each value whether it was before a deed or is now."""
    text, then = turn.incoming.text, at.astimezone(turn.chat.zone)
    told = [
        Doubt(
            text[each.start : each.end],
            each.start,
            each.end,
            PAST,
            choices=(f"{then:%Y-%m-%d %H:%M} {plain}", f"now {plain}"),
        )
        for each in parsed.values
        if (plain := f"{name_for(each.analyte)} {each.value:g}{_unit(each)}")
    ]
    return replace(parsed, values=(), doubts=(*told, *parsed.doubts))


def _unit(value: Value) -> str:
    return f" {value.unit}" if value.unit else ""
