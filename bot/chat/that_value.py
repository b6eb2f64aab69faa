"""``is that bad`` right behind one value: where it should be stands in the verdict."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from bot.chat import levels
from bot.chat.model import Line, Reply
from bot.chat.turn import Turn
from bot.store.tanks import StoredTank
from core.advice.state import State
from core.message.judged import refers_back

BEFORE: Final = 2
"""The verdict itself is an answer, and the one before it was to the value."""


async def beside(
    turn: Turn, text: str, stored: StoredTank | None, state: State, replies: list[Reply]
) -> list[Reply]:
    """A verdict with what is right of the only value that was told last, where `text` means it."""
    if stored is None or not refers_back(text) or not replies or replies[0].facts.get("findings"):
        return replies  # a finding says where it should be
    for offer in await turn.uow.offers.latest(turn.chat.id, BEFORE):
        facts = offer.context.get("facts", {})
        values = facts.get("values", [])
        if offer.entry_id is not None and facts.get("tank") == stored.name and len(values) == 1:
            analyte = str(values[0]["analyte"])
            suits = levels.for_kept(analyte, state) if analyte in levels.OF_ANIMALS else None
            told = [suits] if suits is not None else levels.told(analyte, state)
            return behind_first(replies, told[:1])
    return replies


def behind_first(replies: list[Reply], told: Sequence[str]) -> list[Reply]:
    """A verdict on readings with more said behind its first line."""
    if not told or not replies or not replies[0].facts.get("readings"):
        return replies
    (first, *others) = replies
    return [replace(first, lines=(first.lines[0], *map(Line, told), *first.lines[1:])), *others]
