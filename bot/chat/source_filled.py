"""``my tap is no3 10`` behind a change that could not be told without it: it is told now."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from dataclasses import replace

from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import ASKED, Turn
from core.message import parse


async def going_on(turn: Turn, keep: Callable[[], Awaitable[list[Reply]]]) -> list[Reply]:
    """Keep what is told of a new water, then answer the change that waited for it, if any."""
    asked = await _waiting(turn)
    kept = await keep()
    if asked is None or turn.typed is None:
        return kept
    said = turn.incoming
    turn.incoming = replace(said, text=asked)
    replies = await turn.typed(turn)
    turn.incoming = said
    return [*kept, *replies]


async def _waiting(turn: Turn) -> str | None:
    """The change asked about last, as typed, where no share of it could be reckoned."""
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    for offer in await turn.uow.offers.latest(turn.chat.id, 1):
        asked = offer.context.get(ASKED)
        if asked is None or asked["changes"] or turn.now - offer.made_at > patience:
            return None
        question = parse(asked["text"], turn.context()).question
        reckoned = "largest_safe_share" in offer.context.get("facts", {})
        if question is not None and question.kind == "change" and not reckoned:
            return str(asked["text"])
    return None
