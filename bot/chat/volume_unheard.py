"""What was told and not understood that may be how much water is in a tank.

``id say 70 l once the stones are out``: an amount that is named after it is for the volume on
record, which the keeper is told until the volume is put right or asked about.
"""

from __future__ import annotations

from collections.abc import Collection
from datetime import timedelta
from typing import Any, Final

from bot.chat.turn import Turn
from bot.store.offers import AT_HAND
from bot.store.tanks import StoredTank
from core.message.how_full import may_tell_volume

STILL_MEANT: Final = timedelta(hours=12)
"""So long what was not understood may be of the water that is asked about; ours."""
KEY: Final = "of_volume"
"""Under which what may tell a volume is kept beside what was not understood last."""
QUOTED: Final = 60
"""Characters of it that are said back."""


async def of(turn: Turn, text: str) -> dict[str, Any] | None:
    """What is kept of a text that was not understood, or of one before it; None where nothing."""
    stored = turn.current_tank
    held = None if stored is None else stored.tank.volume_l
    said = " ".join(turn.incoming.text.split())
    if text and stored is not None and held is not None and may_tell_volume(said, held):
        shown = said if len(said) <= QUOTED else f"{said[: QUOTED - 1]}…"
        return {"text": shown, "tank": stored.id, "held": held, "at": turn.now.isoformat()}
    found = await turn.uow.offers.unheard(turn.chat.id, turn.now - STILL_MEANT)
    return None if found is None else found.context.get(KEY)


async def left(turn: Turn, stored: StoredTank, settling: Collection[str]) -> str | None:
    """What may tell another volume of a tank than is on record, while that is open; else None.

    `settling` are the keys of answers in which the volume was put right or asked about since.
    """
    found = await turn.uow.offers.unheard(turn.chat.id, turn.now - STILL_MEANT)
    told = None if found is None else found.context.get(KEY)
    if told is None or told["tank"] != stored.id or told["held"] != stored.tank.volume_l:
        return None
    for offer in await turn.uow.offers.latest(turn.chat.id, AT_HAND):
        if offer.made_at.isoformat() < told["at"]:
            break
        if not offer.context.keys().isdisjoint(settling):
            return None
    return str(told["text"])
