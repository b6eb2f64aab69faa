"""What is said of a mix of waters that was just answered: its litres, a change with it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from bot.chat import source_blends
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.source_blends import MIX
from bot.chat.supply import Supply
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from bot.chat.words import waters as water_words
from core.message import bought, followups, volume_said
from core.message.model import Parsed, Question
from core.message.waters import mentioned


async def litres(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """`in 60 l`, `50 l`: so much of the mix; None where nothing of that is said."""
    if not turn.incoming.addressed or parsed.values or parsed.events or parsed.command is not None:
        return None
    if (mix := await latest(turn)) is None:
        return None
    text, context = turn.incoming.text, turn.context()
    volume = volume_said.volume_alone(text, turn.chat.us_gallons)
    if volume is None and (said := followups.read(text, context)) is not None:
        volume = said.volume_l
    if volume is None or parsed.question is not None:
        return None
    reply = await in_litres(turn, mix, volume)
    return None if reply is None else [reply]


async def changed_with(turn: Turn, question: Question) -> tuple[Question, str | None]:
    """`change 40% with that`, `what if i change 40%` after a mix was told: of that mix.

    Nobody who was just told of a mix means another water, unless one is named. The mix in words
    stands beside the question, to be said.
    """
    text = question.text or ""
    rest = bought.without_it(text)
    if (question.percent is None and question.litres is None) or mentioned(rest):
        return question, None
    if (mix := await latest(turn)) is None:
        return question, None
    held = await Waters.of(turn)
    if await held.all_named(rest):
        return question, None
    shares = " ".join(f"{100.0 * share:.4g}% {source}" for source, share in mix["parts"])
    return replace(question, text=f"{rest} with {shares}"), water_words.blend(mix["parts"])


async def latest(turn: Turn) -> dict[str, Any] | None:
    """The mix that was answered last; None where something else was."""
    offers = await turn.uow.offers.latest(turn.chat.id)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not offers or turn.now - offers[0].made_at > patience:
        return None
    mix: dict[str, Any] | None = offers[0].context.get(MIX)
    return mix


async def supply_of(turn: Turn, mix: dict[str, Any], shares: Sequence[float] = ()) -> Supply | None:
    """The water of a mix as its parts stand today, in other shares where they are given."""
    held = await Waters.of(turn)
    parts: list[tuple[Supply, float]] = []
    for place, (name, share) in enumerate(mix["parts"]):
        found = await held.of_name(name)
        if found is None:
            return None
        parts.append((found, shares[place] if shares else share))
    return await held.mixed(parts, water_words.blend([(part.name, each) for part, each in parts]))


async def in_litres(turn: Turn, mix: dict[str, Any], volume: float) -> Reply | None:
    """How much of each water so many litres of a mix are."""
    if "target" in mix:
        question = Question(
            "dose", analyte=mix["analyte"], target=mix["target"], volume_l=volume, text=mix["text"]
        )
        return await source_blends.reach(turn, question)
    supply = await supply_of(turn, mix)
    return None if supply is None else await source_blends.tell(turn, supply, volume)
