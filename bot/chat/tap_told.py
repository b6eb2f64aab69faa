"""``10 gal change w tap kh 2 gh 3 ph 7``: the own tap is kept, and the change answered."""

from __future__ import annotations

from bot.chat import changes, mixes, source_filled, source_words, sources
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from core.message import parse
from core.message.mixing import Mixing
from core.message.model import Parsed
from core.message.tap_told import tap_told


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Keep what is told of a water, and answer what is to be done with it; None for other talk."""
    apart = parsed.command is not None or parsed.events or parsed.values
    if not turn.incoming.addressed or apart:
        return None
    told = tap_told(turn.incoming.text)
    if told is None or (told.change is not None and not (told.is_named or await _of_change(turn))):
        return None
    held = await Waters.of(turn)
    opened = source_words.opening(f"{told.name} {told.readings}", held)
    heard = None if opened is None else source_words.heard(turn, *opened)
    if heard is None or any(piece.doubts for _, piece in heard.pieces):
        return None
    if any(value.tank for _, piece in heard.pieces for value in piece.values):
        return None
    pure = told.pure
    if told.change is None and pure is None:
        return await source_filled.going_on(turn, lambda: sources.keep(turn, held, heard))
    kept = await sources.keep(turn, held, heard)
    if told.change is not None:
        text = f"what if i change {told.change} with {heard.name}"
        question = parse(text, turn.context()).question
        if question is None or turn.current_tank is None:
            return kept
        turn.asked = {"text": text, "changes": {}}
        return [*kept, *await changes.change(turn, question, parsed)]
    if pure is None:
        return kept
    mixed = await mixes.shares_of(turn, Mixing(pure, heard.name, None, None, None))
    return [*kept, *(mixed or [])]


async def _of_change(turn: Turn) -> bool:
    """Whether the answer before was of a change of water."""
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or turn.now - latest[0].made_at > patience:
        return False
    facts = latest[0].context.get("facts", {})
    return "share" in facts or "largest_safe_share" in facts
