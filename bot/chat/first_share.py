"""``how much can i change`` in an emergency, of a new water nobody knows: first aid's share."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.model import Line, Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import aid_change as words
from bot.chat.words import standing
from core.advice.ammonia_gate import shown
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
    state = await state_of(turn, stored, turn.now)
    aid = line(state)
    lead = _for_ammonia(state, stored.name) if aid is None else (aid,)
    return replace(reply, lines=(*map(Line, lead), *reply.lines))


def line(state: State) -> str | None:
    """What first aid says of a change; None where there is no emergency."""
    danger = _danger(state)
    if danger is None:
        return None
    return words.change(help_for(danger, state, gasping="gasping" in state.called))


def _for_ammonia(state: State, name: str) -> tuple[str, ...]:
    """What is changed for ammonia that no limit warns of; nothing without a fresh reading."""
    total = shown(state)
    if total is None or not total.is_fresh(state.now):
        return ()
    first = standing.change_for_ammonia(name, total, state.now)
    return first, words.change(help_for("general", state))


def _danger(state: State) -> Danger | None:
    """The poison that was read, else what was called out within the day."""
    poison = poison_in(state)
    found: tuple[Danger, ...] = ("ammonia", "nitrite", "chlorine")
    read = next((each for each in found if poison == each), None)
    called = (each for each in (*POISONED, *SHOWING) if each in state.called)
    return read or next(called, None)
