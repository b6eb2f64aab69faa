"""The animals on a tank's record as they are shown, with their numbers where those were told."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from bot.chat.turn import Turn
from bot.store.tanks import StoredTank
from core.advice.stock import tally, uncounted


async def held_in(turn: Turn, tank: StoredTank) -> dict[str, int | None]:
    """Each kind on record by the keeper's name for it; None where nobody told how many."""
    came = await turn.uow.log.stock(tank.id, until=turn.now)
    untold = uncounted(came)
    return {name: None if name in untold else count for name, count in tally(came).items()}


def facts(stock: Mapping[str, Mapping[str, int | None]]) -> dict[str, Any]:
    """The numbers of each tank as ``stock``, and the kinds without one as ``uncounted``."""
    counted = {
        tank: {name: count for name, count in held.items() if count is not None}
        for tank, held in stock.items()
    }
    untold = {
        tank: [name for name, count in held.items() if count is None]
        for tank, held in stock.items()
        if None in held.values()
    }
    return {"stock": counted} | ({"uncounted": untold} if untold else {})
