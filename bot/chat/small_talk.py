"""Small talk that asks nothing: answered by what stands in the tank in use, where that is bad.

Relief and thanks are no verdict, and must not be taken for one: "cool so its ok" after ammonia of 5
is told what stands. Only where nothing is known to be wrong it is answered in kind.
"""

from __future__ import annotations

from typing import Any, Final

from bot.chat import eased, emergencies, unheard, verdicts, what_now
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import findings as finding_words
from bot.chat.words import first_evening as words
from bot.chat.words.names import of_tank
from core.message.first_evening import Talk, talk

LINES: Final = 2
"""Findings that are said once more."""


async def answer(turn: Turn) -> list[Reply] | None:
    """Answer a greeting, thanks, an oath or relief; None for other talk."""
    meaning = talk(turn.incoming.text)
    if meaning is None:
        return None
    if meaning == "oops" and (again := await what_now.dismayed(turn)) is not None:
        return again
    if turn.incoming.group:
        return []
    if meaning in {"thanks", "fine"} and (told := await _still_bad(turn, meaning)) is not None:
        return [told]
    return [await turn.reply(words.talk(meaning))]


async def _still_bad(turn: Turn, meaning: Talk) -> Reply | None:
    """What stands in the tank in use: findings, else a call of the day; None where nothing does."""
    stored = turn.current_tank
    if stored is None:
        return None
    state = await state_of(turn, stored, turn.now)
    found = [each for each in emergencies.what_stands(state) if each.severity != "note"]
    left = await unheard.left(turn, stored)
    supposed = verdicts.facts_of(state, left)
    facts: dict[str, Any] = {"tank": stored.name, **supposed}
    if found:
        lines = [finding_words.line(each) for each in found[:LINES]]
        told = [{"id": f.id, "severity": f.severity, **f.facts} for f in found]
        facts["findings"] = told
        lines[0] = of_tank(stored.name, lines[0])
    elif supposed:
        lines = verdicts.not_heard(state, left)
    elif (lasting := await what_now.unsettled(turn, stored)) is not None:
        if (better := await eased.stands(turn, stored.id)) is not None:
            return None if meaning == "thanks" else better
        facts["emergency"] = lasting
        lines = words.not_over(stored.name)
    else:
        return None
    return await turn.reply(
        [*([words.welcome()] if meaning == "thanks" else []), *lines], facts=facts
    )
