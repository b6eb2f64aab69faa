"""``kh?``, ``is my water hard``: how values stand, and where they should be, in a few lines."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from bot.chat import animals, levels, verdicts
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import ABOUT, Turn
from bot.chat.words import about_values as words
from bot.chat.words import questions as asked_words
from bot.chat.words import standing as standing_words
from core.advice.hardness import HardnessClass, buffer_class, hardness_classes
from core.advice.state import Measured, State
from core.message import value_asked
from core.message.model import Parsed, Question
from core.message.value_asked import HARDNESS, Asked, asked, hardness
from core.tank import Stock, Tank

SHOWN = 5
"""Lines of an answer; how a value stands goes before where it should be."""


async def hard_or_soft(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``is my water hard or soft``: its hardness with its class; None where it is not asked."""
    if parsed.values or not turn.incoming.addressed:
        return None
    found = hardness(turn.incoming.text)
    return None if found is None else await _told(turn, parsed, found)


async def ideal(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``whats a good kh``: where a value should be, not what its name means."""
    told = parsed.values or parsed.events
    if told or not turn.incoming.addressed:
        return None
    found = value_asked.ideal(turn.incoming.text)
    return None if found is None else await _told(turn, parsed, found)


async def judged(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``is no3 high``: the value on record first; None where it is not asked so."""
    told = parsed.values or parsed.events or turn.current_tank is None
    if told or not turn.incoming.addressed:
        return None
    found = value_asked.judged(turn.incoming.text)
    return None if found is None else await _told(turn, parsed, found)


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """What is known of the values that a message names which nothing else understood."""
    found = asked(turn.incoming.text)
    return None if found is None else await _told(turn, parsed, found)


async def _told(turn: Turn, parsed: Parsed, found: Asked) -> list[Reply]:
    stored = turn.tank_named(parsed.tank or "") or turn.current_tank
    state = State(Tank(name=""), turn.local_now)
    if stored is not None:
        state = await state_of(turn, stored, turn.now)
    should = [line for each in found.analytes for line in levels.told(each, _for(turn, state))]
    if stored is None:
        return [await turn.reply(should[:SHOWN])]
    facts = {"tank": stored.name, "about": list(found.analytes)}
    measured = [state.readings[each] for each in found.analytes if each in state.readings]
    unknown = [each for each in found.analytes if each not in state.readings]
    classed = [(each, _class_of(each, stored.tank)) for each in measured]
    lines = [words.stand(stored.name, classed, state.now)] if measured else []
    lines += [line for each in unknown for line in asked_words.no_history(stored.name, each)]
    waits: dict[str, Any] = {}
    if len(found.analytes) == 1 and unknown:
        held = {ABOUT: {"analyte": unknown[0], "tank": stored.id}}
        waits = {"context": held, "expects": "followup"}
    if found.should:
        return [await turn.reply([*should, *lines][:SHOWN], facts=facts)]
    hard = found.analytes == HARDNESS  # of that the class is asked for
    if measured:
        judged, off, still = await verdicts.verdict(turn, stored, state, measured)
        if hard:
            lines = [*lines, *judged] if off or still.lines else lines
        elif off or still.lines:
            lines = [*judged, *lines]
        else:  # nobody asked whether all is well: what is not known of it is said behind
            well = {standing_words.nothing_off(stored.name), standing_words.within(stored.name)}
            well |= set(verdicts.untested(state))
            lines += [line for line in judged if line not in well]
    told = [*lines, *([] if hard else should)][:SHOWN]
    return [await turn.reply(told, facts=facts, **waits)]


def _for(turn: Turn, state: State) -> State:
    """The state with the kinds that the message names in the place of those on record."""
    whom = animals.meant(Question("safe", species=turn.incoming.text), state.tank)
    if not whom:
        return state
    return replace(state, tank=replace(state.tank, stock=tuple(Stock(name, 1) for name in whom)))


def _class_of(reading: Measured, tank: Tank) -> HardnessClass | None:
    """The class of a GH or KH that is told exactly; none of GH in the sea."""
    if reading.is_limit or (reading.analyte == "gh" and tank.is_sea):
        return None
    if reading.analyte == "gh":
        return hardness_classes(reading.value)[0]
    return buffer_class(reading.value, sea=tank.is_sea) if reading.analyte == "kh" else None
