"""What was told and not understood: until it is told anew no verdict says that all is well."""

from __future__ import annotations

import re
from datetime import timedelta
from typing import Final

from bot.chat.turn import Turn
from bot.store.log import Entry
from bot.store.offers import UNHEARD, Offer
from bot.store.tanks import StoredTank
from core.message import doubts
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Parsed
from core.message.tokens import cut

STILL_MEANT: Final = timedelta(hours=12)
"""So long what was not understood may be of the water that is asked about; ours."""
PASSED: Final = 3
"""So many entries after it are the record's own word; ours."""
TOLD: Final = 3
"""Words of a message without numbers that may tell a deed, at least."""
QUOTED: Final = 40
"""Characters of it that are said back."""

_NUMBER: Final = re.compile(r"\d+(?:[.,]\d+)?|[.,]\d+")
_NO_READING: Final = frozenset(
    {doubts.WISH, doubts.AIM, doubts.QUESTIONED, doubts.OTHER_WATER, doubts.PRICE, doubts.NEGATED}
)
"""Doubts of what was never told to be so."""
_DEEDS: Final = frozenset({"event", "substance"})


async def note(turn: Turn, parsed: Parsed) -> None:
    """Keep what of a message was not understood, if it may tell of the water."""
    text = _part(turn, parsed)
    if text is None or not turn.incoming.addressed:
        return
    (*_older, newest) = [0, *(each.id for each in await turn.uow.log.newest(turn.chat.id, 1))]
    context = {UNHEARD: text, "entry": newest}
    offer = Offer(choices=(), made_at=turn.now, expects=UNHEARD, context=context)
    await turn.uow.offers.add(turn.chat.id, offer)


async def part(turn: Turn, stored: StoredTank) -> str | None:
    """The newest part of a message that was not understood, and was not told anew since."""
    found = await turn.uow.offers.unheard(turn.chat.id, turn.now - STILL_MEANT)
    if found is None:
        return None
    text = str(found.context[UNHEARD])
    newer = await turn.uow.log.newest(turn.chat.id, PASSED)
    newer = [entry for entry in newer if entry.id > found.context["entry"]]
    if len(newer) >= PASSED or _told_anew(text, newer, stored):
        return None
    return text if len(text) <= QUOTED else f"{text[: QUOTED - 1]}…"


def _part(turn: Turn, parsed: Parsed) -> str | None:
    """What of a message was not understood: a doubtful number, or all of what got the hint."""
    for doubt in parsed.doubts:
        if doubt.reason not in _NO_READING and _NUMBER.search(doubt.text):
            return doubt.text
    text = " ".join(turn.incoming.text.split())
    return text if turn.unheard and _may_tell(text) else None


def _may_tell(text: str) -> bool:
    """Whether words that were not understood may tell a reading or a deed."""
    if _NUMBER.search(text):
        return True
    tokens = cut(fold(text), lexicon(), text)
    if any(token.kind in _DEEDS or token.value == "adding" for token in tokens):
        return True
    return "?" not in text and len(text.split()) >= TOLD


def _told_anew(text: str, newer: list[Entry], stored: StoredTank) -> bool:
    """Whether entries since, or what is known of the tank, hold every number of a text.

    Of a text without numbers any entry since does.
    """
    numbers = _numbers(text)
    if not numbers:
        return bool(newer)
    known = {stored.tank.volume_l, *(each.count for each in stored.tank.stock)}
    for entry in newer:
        known |= _numbers(entry.text) | {each.what.value for each in entry.readings}
    return numbers <= known


def _numbers(text: str) -> set[float]:
    return {float(found.replace(",", ".")) for found in _NUMBER.findall(text)}
