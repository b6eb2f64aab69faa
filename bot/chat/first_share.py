"""``how much can i change`` in an emergency, of a new water nobody knows: first aid's share."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.model import Line, Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import aid_change as words
from core.advice.calls import Danger
from core.advice.danger import poison_in
from core.advice.emergencies import POISONED, SHOWING, help_for
from core.advice.state import State
from core.message.model import Question


async def led(turn: Turn, question: Question, reply: Reply) -> Reply:
    """What first aid says of a change, before what is missing to reckon it; else that alone."""
    stored = turn.tank_named(question.tank) if question.tank else turn.current_tank
    if stored is None or reply.facts.get("refused") != "source_unknown":
        return reply
    aid = line(await state_of(turn, stored, turn.now))
    return reply if aid is None else replace(reply, lines=(Line(aid), *reply.lines))


def line(state: State) -> str | None:
    """What first aid says of a change; None where there is no emergency."""
    danger = _danger(state)
    if danger is None:
        return None
    return words.change(help_for(danger, state, gasping="gasping" in state.called))


def _danger(state: State) -> Danger | None:
    """The poison that was read, else what was called out within the day."""
    poison = poison_in(state)
    found: tuple[Danger, ...] = ("ammonia", "nitrite", "chlorine")
    read = next((each for each in found if poison == each), None)
    called = (each for each in (*POISONED, *SHOWING) if each in state.called)
    return read or next(called, None)
