"""``what could live in my water``: the kinds that a water suits, the best suited first."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from bot.chat.words import could_live as words
from bot.chat.words import questions as question_words
from bot.chat.words.keeping import THAT_WATER
from bot.chat.words.text import _
from core.advice.livestock import Species, could_live, lookup, plain_name
from core.advice.state import Measured
from core.advice.stock import names_no_kind
from core.message.model import Question

SHOWN: Final = 8
"""Kinds that fit one screen."""


async def answer(turn: Turn, question: Question) -> Reply:
    """What a water suits: the question's, a named tank's, the source's, else the tank's own."""
    name, water = await _water(turn, question)
    if not water:
        return await turn.reply(question_words.no_source())
    stored = turn.tank_named(question.tank) if question.tank else turn.current_tank
    volume = question.volume_l or (stored.tank.volume_l if stored is not None else None)
    suited = could_live(water, volume)
    if (group := _group(question)) is not None:
        suited = [each for each in suited if each.species in group]
    facts = {"species": [each.species.scientific for each in suited[:SHOWN]]}
    return await turn.reply(words.could_live(suited, name, water, turn.chat.language), facts=facts)


def _group(question: Question) -> tuple[Species, ...] | None:
    """The kinds of a name that several share, where only such are asked for: which snails."""
    words_ = plain_name(question.species or question.text or "").split()
    found = (lookup(word) for word in words_ if len(word) > 3 and not names_no_kind(word))
    return next((each.candidates for each in found if each.shared), None)


async def _water(
    turn: Turn, question: Question
) -> tuple[str, Mapping[str, Measured] | Mapping[str, float]]:
    told = dict(question.premises)
    if question.analyte is not None and question.target is not None:
        told[question.analyte] = question.target
    if told.keys() & {"gh", "kh", "salinity"}:
        return _(THAT_WATER), told
    named = turn.tank_named(question.tank) if question.tank else None
    stored = named or turn.current_tank
    if stored is None:
        return "", {}
    waters = await Waters.of(turn)
    source = waters.default_for(stored)
    if named is None and source is not None:
        return source.name, (await waters.supply(source)).readings
    state = await state_of(turn, stored, turn.now)
    return stored.name, state.readings
