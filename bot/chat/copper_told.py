"""Copper that is told without an amount, or beside a dose: kept, since it kills invertebrates."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from bot.chat import calls, readings
from bot.chat import denied as taken_back
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import copper as words
from core.advice.alarm_words import named
from core.message import parse
from core.message.copper_told import denied, went_in
from core.message.doubts import BAD_TIME, NO_VALUE, UNKNOWN_WORD, UNSURE_EVENT
from core.message.model import Event, Parsed

COPPER: Final = "copper"
_AMOUNT: Final = re.compile(
    r"(\d+(?:[.,]\d+)?\s*(?:ml|g|mg|l|drops?|tsp|tbsp|caps?|cl))\W*$", re.IGNORECASE
)
_LIGHT: Final = frozenset({BAD_TIME, NO_VALUE, UNKNOWN_WORD, UNSURE_EVENT})
"""Doubts that leave copper in the water all the same."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Log copper that surely went in; None where a dose of it is read already, or nothing tells it.

    What else is told beside it is kept with it.
    """
    text = turn.incoming.text
    if not turn.incoming.addressed or COPPER not in named(text).get("deed", frozenset()):
        return None
    if parsed.question is not None or parsed.command is not None or not turn.tanks:
        return None
    if denied(text) and not (parsed.values or parsed.events or parsed.doubts):
        return await taken_back.answer(turn, parsed) or await _none_in(turn)
    others = [event for event in parsed.events if event.kind != "dose"]
    if others or any(_is_copper(event.substance) for event in parsed.events):
        return None
    if any(value.analyte == COPPER for value in parsed.values):
        return None
    put = _with_amount(turn, parsed)
    if put is None and any(doubt.reason not in _LIGHT for doubt in parsed.doubts):
        return None
    if not went_in(text, timed=parsed.at is not None, dosed=bool(parsed.events)):
        return None
    if calls.danger_of(turn, parsed) not in {None, "illness"}:
        return None
    put = put or Event("dose", substance=COPPER, tank=parsed.tank, text=text)
    whole = replace(parsed, intent="event", events=(*parsed.events, put), doubts=())
    return await readings.keep(turn, whole)


async def _none_in(turn: Turn) -> list[Reply] | None:
    """No copper went in, as far as the record goes too; None in no tank."""
    stored = turn.current_tank
    if stored is None:
        return None
    state = await state_of(turn, stored, turn.now)
    put = any(e.what.kind == "dose" and _is_copper(e.what.substance) for e in state.events or ())
    return [await turn.reply(words.none_put(stored.name, on_record=put))]


def _with_amount(turn: Turn, parsed: Parsed) -> Event | None:
    """The dose where its amount stands behind the name: `just dosed copper, 10 ml`."""
    for doubt in parsed.doubts:
        found = _AMOUNT.search(doubt.text)
        if found is not None and _is_copper(doubt.text):
            told = parse(f"dosed {found[1]} copper", turn.context()).events
            if len(told) == 1 and _is_copper(told[0].substance):
                return replace(told[0], tank=parsed.tank, text=turn.incoming.text)
    return None


def _is_copper(substance: str | None) -> bool:
    return COPPER in named(substance or "").get("deed", frozenset())
