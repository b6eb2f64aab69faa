"""A plan asked for another way: `with potassium bicarbonate instead?`, `in 3 parts`, `for quarry`.

What was asked is kept with the answer as it was typed, and what has been changed of it since; a
follow-up reads it again, changes one thing more and lets the same topic answer.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, Final

from bot.chat import dosing
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.typed import GROUP_PATIENCE, PATIENCE
from bot.store.offers import Offer
from core.message import followups, parse
from core.message.fold import fold
from core.message.followups import Followup
from core.message.lexicon import lexicon
from core.message.model import Parsed, Question
from core.message.tokens import cut

ASKED: Final = "asked"
"""Under which an offer keeps the question that it answers."""

SLOWER: Final = 2
"""Who wants it slower gets so many times the parts."""

_TOPICS: Final = {"dose": dosing.dose, "effect": dosing.effect, "change": dosing.change}


def begin(turn: Turn, question: Question) -> None:
    """Keep a question of a plan with the replies that answer it."""
    if question.kind in _TOPICS:
        turn.asked = {"text": turn.incoming.text, "changes": {}}


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer the newest plan's question another way; None where that is not what was said."""
    if not turn.incoming.addressed or parsed.question is not None or parsed.values:
        return None
    latest = await turn.uow.offers.latest(turn.chat.id)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or ASKED not in latest[0].context or turn.now - latest[0].made_at > patience:
        return None
    offer = latest[0]
    followup = followups.read(turn.incoming.text, turn.context())
    if followup is None:
        return None
    asked = offer.context[ASKED]
    first = parse(asked["text"], turn.context()).question
    if first is None or first.kind not in _TOPICS:
        return None
    before = replace(first, **asked["changes"])
    changes = _changes(before, followup, offer)
    if changes is None:
        return None
    question = replace(before, **changes)
    turn.asked = {"text": asked["text"], "changes": {**asked["changes"], **changes}}
    turn.parts = followup.parts
    if followup.slower:
        turn.parts = SLOWER * len(_facts(offer).get("parts", [0]))
    return await _TOPICS[question.kind](turn, question, Parsed("question", question=question))


def _facts(offer: Offer) -> Mapping[str, Any]:
    facts: Mapping[str, Any] = offer.context.get("facts", {})
    return facts


def _changes(asked: Question, said: Followup, offer: Offer) -> dict[str, Any] | None:
    """What of the question becomes another; None where the follow-up does not fit it."""
    if said.substance is not None:
        return {"substance": said.substance, "text": _with(asked, said.substance)}
    if said.parts is not None or said.slower:
        return {} if asked.kind == "dose" else None
    if said.factor is not None:
        return _times(asked, said.factor, offer)
    if said.volume_l is not None:
        return {"volume_l": said.volume_l, "tank": None}
    if said.tank is not None:  # another water: what the question said of the first one is not its
        return {"tank": said.tank, "volume_l": None, "start_value": None, "premises": {}}
    if said.percent is not None:
        return {"percent": said.percent, "litres": None} if asked.kind == "change" else None
    if said.grams is not None:
        return {"grams": said.grams} if asked.kind == "effect" else None
    return _wish(asked, said)


def _wish(asked: Question, said: Followup) -> dict[str, Any] | None:
    if asked.kind == "effect":
        return None
    if said.analyte == asked.analyte:
        return {"target": said.target, "delta": None}
    return {
        "analyte": said.analyte, "target": said.target, "delta": None, "start_value": None,
        "substance": None, "also": None, "also_target": None, "also_delta": None,
        "premises": {}, "text": f"{asked.kind} {said.analyte}",
    }  # fmt: skip


def _times(asked: Question, factor: float, offer: Offer) -> dict[str, Any] | None:
    """So much of what was wished: of the way from where the water stands."""
    if asked.kind == "effect":
        return {"grams": asked.grams * factor} if asked.grams is not None else None
    if asked.kind == "change" and asked.percent is not None:
        return {"percent": min(asked.percent * factor, 100.0)}
    if asked.delta is not None and asked.target is None:
        return {"delta": asked.delta * factor}
    start, target = _facts(offer).get("from"), asked.target
    goals = _facts(offer).get("goals", [])
    if start is None and len(goals) == 1:
        start = goals[0]["from"]
    if asked.kind != "dose" or start is None or target is None:
        return None
    return {"target": start + (target - start) * factor}


def _with(asked: Question, substance: str) -> str:
    """The question's words with another substance in the place of the one that it named."""
    text = asked.text or ""
    tokens = cut(fold(text), lexicon(), text)
    for token in reversed([each for each in tokens if each.kind == "substance"]):
        text = text[: token.start] + text[token.end :]
    return f"{text} {substance}"
