"""``ok done``, ``its back on``, ``dont have any``: answered by what was spoken of last.

In an emergency with its next step (what ends one is heard before: `bot/chat/call_over.py`), after a
plan as `done` is, else with what is still to be told. Nothing is stored: what was done nobody said.
"""

from __future__ import annotations

from typing import Any, Final

from bot.chat import (
    copper_asked,
    emergencies,
    given_parts,
    how_much,
    outside_calls,
    reminder_answers,
    typed,
    what_now,
)
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import acknowledged as words
from bot.chat.words import emergency_talk as talk_words
from bot.chat.words import findings as finding_words
from core.advice.calls import OF_PEOPLE, Danger
from core.advice.emergencies import Help, help_for
from core.advice.findings import stands
from core.message.acknowledged import Told, told
from core.message.emergency_talk import meant
from core.message.model import Command, Parsed

WANTS_DOSE: Final = frozenset({"low_kh", "low_gh"})
"""Findings whose words ask for a dose."""

POWERED: Final = frozenset({"power", "filter"})
"""Dangers that are over, but for what is left to do, once a thing runs again."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer what acknowledges the last answer; None for other talk."""
    if parsed.values or parsed.events or parsed.question or parsed.doubts:
        return None
    said = told(turn.incoming.text)
    if said is None:
        return await _calm(turn)
    if said == "agrees":
        return await _agreed(turn)
    waits = await _waiting(turn) if said == "did" else None
    return waits or await _of_danger(turn, said) or [await _of_tank(turn, said)]


async def _agreed(turn: Turn) -> list[Reply] | None:
    """What was just offered to be asked, or what the reading just kept calls for."""
    if (taken := await typed.agreed(turn)) is not None:
        return taken
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    kept = latest and latest[0].entry_id is not None and turn.now - latest[0].made_at <= patience
    return await how_much.of_what_stands(turn) if kept else None


async def done(turn: Turn, command: Command, parsed: Parsed) -> list[Reply]:
    """``done``: of what waits for it, else of the danger that stands."""
    if command.arguments or await turn.uow.reminders.of_chat(turn.chat.id):
        return await typed.done(turn, command, parsed)
    waits = await _waiting(turn)
    of_danger = None if waits else await _of_danger(turn, "did")
    return waits or of_danger or await typed.done(turn, command, parsed)


async def _waiting(turn: Turn) -> list[Reply] | None:
    """What `done` does: the plan's part or the copper asked about last, the reminder that waits."""
    for look in (typed.plan_given, given_parts.done, copper_asked.did):
        if (found := await look(turn)) is not None:
            return found
    if await turn.uow.reminders.of_chat(turn.chat.id, only_open=True):
        return await reminder_answers.by_number(turn, "done", "")
    return None


async def _danger(turn: Turn) -> tuple[Danger, Help, dict[str, Any]] | None:
    """What is wrong in the tank in use, or was called out without a tank, and how it is helped."""
    stored = turn.current_tank
    if stored is None:
        danger, gasping = await outside_calls.newest(turn) or (None, False)
        if danger is None or danger in OF_PEOPLE:
            return None
        return danger, help_for(danger, None, gasping=gasping), {"emergency": danger}
    danger, gasping = await what_now.danger_in(turn, stored)
    if danger is None or danger in OF_PEOPLE:
        return None
    state = await state_of(turn, stored, turn.now)
    new = await emergencies.new_water(turn, stored, state)
    facts = {"emergency": danger, "tank": stored.name}
    return danger, help_for(danger, state, new, gasping=gasping), facts


async def _of_danger(turn: Turn, said: Told) -> list[Reply] | None:
    """The next step in an emergency; None where nothing is wrong."""
    spoken = await _danger(turn)
    if spoken is None:
        return None
    danger, help_, facts = spoken
    if said == "on" and danger == "heater_hot":  # one that stuck must not be on again
        return [await emergencies.help_in(turn, turn.current_tank, danger)]
    if said == "on" and danger in POWERED:
        lines = talk_words.LINES["power_back"](help_)
    else:
        lines = words.in_danger(said, help_)
    if "tank" in facts:
        lines = talk_words.of(facts["tank"], lines)
    return [await turn.reply(lines, facts=facts)]


async def _of_tank(turn: Turn, said: Told) -> Reply:
    """What is still to be told of a tank that nothing is badly wrong in."""
    stored = turn.current_tank
    state = None if stored is None else await state_of(turn, stored, turn.now)
    found = [] if state is None else stands(state, frozenset(state.readings))
    quiet = WANTS_DOSE if said == "did" else frozenset[str]()  # it may be what was done
    bad = [
        finding_words.line(each)
        for each in found
        if each.severity != "note" and each.id not in quiet
    ]
    alarmed = any(each.severity == "alarm" for each in found)
    lines = words.lacking() if alarmed and said == "lacks" else words.in_calm(said)
    facts = {} if stored is None else {"tank": stored.name}
    return await turn.reply([*lines, *bad[:1]], facts=facts)


async def _calm(turn: Turn) -> list[Reply] | None:
    """``they look better``, ``no test kit`` where nothing is known to be wrong."""
    meaning = meant(turn.incoming.text)
    if meaning == "no_kit":
        return [await turn.reply(words.no_kit())]
    if meaning == "better" and "?" not in turn.incoming.text:
        return [await turn.reply(words.better())]
    return None
