"""``why so slow``, ``why not sodium``: why a plan or a change is as it was just told."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import after_why as words
from bot.chat.words.change_verdict import ORDER
from bot.store.tanks import StoredTank
from core.advice.buffers import STRONG
from core.advice.scheduling import per_gram, steps_of
from core.message.after import Asked
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.water.substances import SUBSTANCES

MEANINGS: Final = frozenset({"why_slow", "why_salt"})


@dataclass(frozen=True, slots=True)
class Spoken:
    """What an answer was about that is not done yet: a plan, or a change of water."""

    tank: StoredTank
    facts: Mapping[str, Any]
    asked: dict[str, Any] | None = None
    """The question that it answers, for what is asked of it next."""

    @property
    def is_plan(self) -> bool:
        """Whether salts are to go in."""
        return "largest_safe_share" not in self.facts

    @property
    def goals(self) -> dict[str, float]:
        """To what a plan brings the water, by analyte; potassium comes with its salts."""
        goals = self.facts.get("goals") or [{"analyte": "kh", "to": self.facts.get("to")}]
        return {goal["analyte"]: goal["to"] for goal in goals if goal.get("to") is not None}


async def answer(turn: Turn, said: Asked, spoken: Spoken | None) -> list[Reply] | None:
    """Answer why a plan or a change is so slow, or of that salt; None where there is none."""
    if spoken is None:
        return None
    turn.asked = spoken.asked  # still what is spoken of
    if said.meaning == "why_slow":
        return [await _slow(turn, spoken)]
    return await _other_salt(turn, said.rest or "", spoken) if spoken.is_plan else None


async def _slow(turn: Turn, spoken: Spoken) -> Reply:
    facts: dict[str, Any] = {"tank": spoken.tank.name}
    if not spoken.is_plan:
        broken = next((name for name in ORDER if name in spoken.facts.get("broken", ())), None)
        return await turn.reply(words.slow_change(broken), facts=facts)
    steps = steps_of(spoken.tank.tank)
    analyte = next((name for name in spoken.goals if name in steps), None)
    parts = len((spoken.facts.get("salts") or [spoken.facts])[0].get("parts", (0,)))
    if analyte is None or parts < 2:
        return await turn.reply(words.at_once_already(), facts=facts)
    facts |= {"analyte": analyte, "step": steps[analyte], "count": parts}
    return await turn.reply(words.slow_plan(analyte, steps[analyte], parts), facts=facts)


async def _other_salt(turn: Turn, said: str, spoken: Spoken) -> list[Reply] | None:
    """Whether another salt would do, and how it is asked for; a carbonate is refused elsewhere."""
    goals, own = [*spoken.goals], spoken.facts.get("substance")
    if len(goals) != 1 or not isinstance(own, str):
        return None
    analyte = goals[0]
    other = _salt_of(said, analyte)
    if other is None:
        return None
    facts: dict[str, Any] = {"tank": spoken.tank.name, "substance": own, "other": other}
    if other == own:
        return [await turn.reply(words.that_is_it(own), facts=facts)]
    if other not in SUBSTANCES or per_gram(other, analyte) <= 0.0:
        return [await turn.reply(words.brings_none(other, analyte), facts=facts)]
    return [await turn.reply(words.does_as_well(own, other, analyte), facts=facts)]


IONS: Final = ("sodium", "potassium", "calcium", "magnesium")


def _salt_of(said: str, analyte: str) -> str | None:
    """The salt that words name, or the one that an ion's name means where that analyte is raised.

    What is strong, or moves pH far, is left to the cautions.
    """
    plain = fold(said)
    tokens = [t for t in cut(plain, lexicon(), plain) if t.kind != "fill"]
    named = next((str(t.value) for t in tokens if t.kind == "substance"), None)
    if named is not None:
        return None if named in STRONG or named not in SUBSTANCES else named
    if len(tokens) != 1 or (ion := str(tokens[0].value).partition("@")[0]) not in IONS:
        return None
    salts = (name for name in SUBSTANCES if name.startswith(f"{ion} ") and name not in STRONG)
    return next((name for name in salts if per_gram(name, analyte) > 0.0), None)
