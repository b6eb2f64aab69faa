"""``how much can i change`` in an emergency, of a new water nobody knows: first aid's share."""

from __future__ import annotations

from dataclasses import replace
from typing import Any, Final

from bot.chat.model import Line, Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import aid_change as words
from bot.chat.words import standing
from core.advice.ammonia_gate import shown
from core.advice.calls import Danger
from core.advice.danger import poison_in
from core.advice.emergencies import POISONED, SHOWING, help_for
from core.advice.findings import BY_ID, stands
from core.advice.state import State
from core.message.model import Question

FIRST: Final = (0.1, 0.25)
"""Between a tenth and a quarter, as the words of first aid have it."""

SMALL: Final = 40.0
"""Of less a tenth is told to a tenth of a litre. [L]"""

CALL_FOR_CHANGE: Final = frozenset({"change_water", "stop_feeding", "stop_dosing"})
"""What to do first, where that is a water change or leads to one."""


async def led(turn: Turn, question: Question, reply: Reply) -> Reply:
    """What first aid says of a change, before what is missing to reckon it; else that alone."""
    stored = turn.tank_named(question.tank) if question.tank else turn.current_tank
    if stored is None or reply.facts.get("refused") != "source_unknown":
        return reply
    state = await state_of(turn, stored, turn.now)
    aid = line(state)
    lead = (_for_ammonia(state, stored.name) or _for_finding(state)) if aid is None else (aid,)
    told, litres = in_litres(state) if lead else ([], {})
    lines = (*map(Line, [*lead, *told]), *reply.lines)
    return replace(reply, lines=lines, facts={**reply.facts, **litres})


def line(state: State) -> str | None:
    """What first aid says of a change; None where there is no emergency."""
    danger = _danger(state)
    if danger is None:
        return None
    return words.change(help_for(danger, state, gasping="gasping" in state.called))


def in_litres(state: State) -> tuple[list[str], dict[str, Any]]:
    """How many litres first aid's share is, with the facts; nothing of a tank without a volume."""
    volume, called = state.tank.volume_l, help_for("general", state)
    if volume is None or called.share is not None or called.changed is not None:
        return [], {}
    least, most = (round(share * volume, 1 if volume < SMALL else 0) for share in FIRST)
    return [words.first_litres(least, most)], {"first_litres": [least, most]}


def _for_finding(state: State) -> tuple[str, ...]:
    """The share that harms with no water like the tank's own, where a reading wants new water."""
    found = [each for each in stands(state, frozenset(state.readings)) if each.severity != "note"]
    wanted = any(BY_ID[each.id].first in CALL_FOR_CHANGE for each in found)
    if not wanted or any(each.id == "neglected" for each in found):
        return ()  # of a neglected tank less is changed, as its finding says
    return (words.change(help_for("general", state)),)


def _for_ammonia(state: State, name: str) -> tuple[str, ...]:
    """What is changed for ammonia that no limit warns of; nothing without a fresh reading."""
    total = shown(state)
    if total is None or not total.is_fresh(state.now):
        return ()
    first = standing.change_for_ammonia(name, total, state.now)
    return first, words.change(help_for("general", state))


def _danger(state: State) -> Danger | None:
    """The poison that was read, else what was called out within the day.

    Copper is one whether or not it is known who lives there.
    """
    poison = poison_in(state)
    found: tuple[Danger, ...] = ("ammonia", "nitrite", "chlorine")
    read = next((each for each in found if poison == each), None)
    called = (each for each in (*POISONED, *SHOWING) if each in state.called)
    copper = state.fresh("copper")
    if read is None and copper is not None and copper.value > 0.0:
        return "copper"
    return read or next(called, None)
