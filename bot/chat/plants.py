"""``is it bad for the plants``: what plants bear of a plan, an amount, a change or a water."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final

from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import plants as words
from bot.chat.words.keeping import THAT_WATER
from bot.chat.words.text import _
from bot.store.tanks import StoredTank
from core.advice.by_now import by_now
from core.advice.plants import borne, ends, food_in
from core.advice.state import State
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Question
from core.message.tokens import cut
from core.tank import Tank
from core.water.substances import SUBSTANCES

SALTS: Final = frozenset({"sodium chloride", "sea salt"})


async def answer(turn: Turn, stored: StoredTank, facts: Mapping[str, Any]) -> Reply:
    """What plants bear of what the facts of the last answer tell, or of the water as it is now."""
    if stored.tank.is_sea:
        return await turn.reply(words.no_sea(stored.name), facts={"tank": stored.name})
    state = by_now(await state_of(turn, stored, turn.now))
    dosed = [each for each in facts.get("events", ()) if each.get("kind") == "dose"]
    found = borne(ends({} if "events" in facts else facts, state), state)
    lines = words.borne(found, stored.name)
    for each in [*dosed, facts]:
        lines += _of_salt(each)
    lines.append(words.animals_first())
    told = {"tank": stored.name, "plants": _plants(found.of, len(found.against), found.values)}
    return await turn.reply(lines, facts=told)


def is_of(text: str, facts: Mapping[str, Any]) -> bool:
    """Whether a question is of the last answer: it names no other salt."""
    named = {t.value for t in cut(fold(text), lexicon(), text) if t.kind == "substance"}
    held = {
        str(each.get("substance"))
        for each in (facts, *facts.get("salts", ()), *facts.get("events", ()))
    }
    return named <= held


async def of_numbers(turn: Turn, question: Question, stored: StoredTank | None) -> Reply | None:
    """What plants bear of the numbers of a question; None where it has none that are judged."""
    if stored is not None and stored.tank.is_sea:
        return await turn.reply(words.no_sea(stored.name), facts={"tank": stored.name})
    state = State(Tank(name=""), turn.local_now)
    if stored is not None:
        state = await state_of(turn, stored, turn.now)
    found = borne(question.premises, state)
    if not found.values:
        return None
    told = {"plants": _plants(found.of, len(found.against), found.values)}
    name = stored.name if stored is not None else _(THAT_WATER)
    return await turn.reply(words.borne(found, name), facts=told)


async def of_water(turn: Turn, name: str, values: Mapping[str, float], bad: Sequence[str]) -> Reply:
    """What plants bear of a water of a source; `bad` is what is bad in it whoever lives there."""
    found = borne(values, State(Tank(name=""), turn.local_now))
    told = {"source": name, "plants": _plants(found.of, len(found.against), found.values)}
    return await turn.reply([*words.borne(found, name), *bad], facts=told)


def _of_salt(facts: Mapping[str, Any]) -> list[str]:
    """What is to be said of what goes in, beside the water that it makes."""
    substance = facts.get("substance")
    if substance in SALTS:
        return [words.salt()]
    if food := food_in(facts):
        return [words.food(food)]
    if substance is not None and substance not in SUBSTANCES:
        return [words.unknown_in(str(substance))]
    return []


def _plants(kinds: int, against: int, values: Mapping[str, float]) -> dict[str, Any]:
    return {"kinds": kinds, "suited": kinds - against, "water": dict(values)}
