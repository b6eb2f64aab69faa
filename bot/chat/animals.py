"""``can i keep X with Y``, ``what could live in my water``: animals against a tank or a source."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

from bot.chat.model import Reply
from bot.chat.state import source_of, source_readings, state_of
from bot.chat.turn import Turn
from bot.chat.words import animals as words
from bot.chat.words import questions as question_words
from core.advice.keeping import can_keep
from core.advice.livestock import Found, could_live, lookup
from core.advice.state import State
from core.message.model import Parsed, Question
from core.tank import Stock, Tank

_WITH = re.compile(r"\s+(?:with|and|together with|&)\s+", re.IGNORECASE)
SHOWN = 8
"""Kinds that fit one screen."""


async def keep(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    """Whether a kind may join a tank, or the company that the question names."""
    if question.species is None:
        return [await _could_live(turn)]
    asked, *company = _WITH.split(question.species)
    found = lookup(asked)
    if found.species is None:
        return [await turn.reply(words.which(asked, found))]
    state, name = await _against(turn, question, company)
    if isinstance(state, Found):
        return [await turn.reply(words.which(name, state))]
    answer = can_keep(found.species, state, asked)
    facts: dict[str, Any] = {"species": found.species.scientific, "verdict": answer.verdict}
    return [await turn.reply(words.keep(answer, name), facts=facts)]


async def _against(turn: Turn, question: Question, company: list[str]) -> tuple[State | Found, str]:
    """The tank that is meant, with the company that the question adds to its stock.

    A companion whose name is not one kind's is given back to be asked about.
    """
    stored = turn.tank_named(question.tank) if question.tank else turn.current_tank
    if stored is None:
        state, name = State(Tank(name=""), turn.local_now), words.THAT_TANK
    else:
        state, name = await state_of(turn, stored, turn.now), stored.name
    extra = []
    for said in company:
        found = lookup(said)
        if found.species is None:
            return found, said
        extra.append(Stock(said, 1))
    tank = replace(state.tank, stock=(*state.tank.stock, *extra))
    return replace(state, tank=tank), name


async def _could_live(turn: Turn) -> Reply:
    """What the source water of the current tank suits as it is."""
    stored = turn.current_tank
    source = None if stored is None else await source_of(turn, stored)
    if stored is None or source is None:
        return await turn.reply(question_words.no_source())
    suited = could_live(await source_readings(turn, stored))
    facts = {"species": [each.species.scientific for each in suited[:SHOWN]]}
    return await turn.reply(words.could_live(suited, source.name), facts=facts)
