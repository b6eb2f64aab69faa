"""What is said of a mix of waters that was just answered: its litres, a change with it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from bot.chat import source_blends
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.source_blends import MIX
from bot.chat.turn import Turn
from core.message import bought, followups, volume_said
from core.message.fold import fold
from core.message.model import Parsed, Question
from core.message.waters import mentioned


async def litres(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """`in 60 l`, `50 l`: so much of the mix; None where nothing of that is said."""
    if not turn.incoming.addressed or parsed.values or parsed.events or parsed.command is not None:
        return None
    if (mix := await _latest(turn)) is None:
        return None
    text, context = turn.incoming.text, turn.context()
    volume = volume_said.volume_alone(text, turn.chat.us_gallons)
    if volume is None and (said := followups.read(text, context)) is not None:
        volume = said.volume_l
    if volume is None or parsed.question is not None:
        return None
    question = Question(
        "dose", analyte=mix["analyte"], target=mix["target"], volume_l=volume, text=mix["text"]
    )
    reply = await source_blends.reach(turn, question)
    return None if reply is None else [reply]


async def changed_with(turn: Turn, question: Question) -> Question:
    """`change 40% with that` after a mix was told: of that mix, by its shares."""
    text = question.text or ""
    rest = bought.without_it(text)
    if rest == fold(text) or mentioned(rest):
        return question
    if (mix := await _latest(turn)) is None:
        return question
    shares = " ".join(f"{100.0 * share:.4g}% {source}" for source, share in mix["parts"])
    return replace(question, text=f"{rest} with {shares}")


async def _latest(turn: Turn) -> dict[str, Any] | None:
    """The mix that was answered last; None where something else was."""
    latest = await turn.uow.offers.latest(turn.chat.id)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or turn.now - latest[0].made_at > patience:
        return None
    mix: dict[str, Any] | None = latest[0].context.get(MIX)
    return mix
