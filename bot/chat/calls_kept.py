"""What is kept of calls for help: which were called out of late, and which were told to be over."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Final

from bot.chat.turn import Turn
from core.advice.call_over import ended_by
from core.advice.calls import Danger

CALLED: Final = "called"
"""Place of a call for help in what is kept of a reply, for what is asked after it."""

EASED: Final = "eased"
"""Where a reply keeps that a call was answered by a deed, or that animals look better."""


@dataclass(frozen=True, slots=True)
class Kept:
    """A call for help: of which tank (None: of none), when, and in which words.

    `order` is behind which entry it came, `poison` what of too much of a thing it is, and `over`
    whether it was told since to be so.
    """

    danger: Danger
    tank_id: int | None
    at: datetime
    gasping: bool
    order: int
    poison: Danger | None
    said: str | None
    over: bool


async def all_of(turn: Turn) -> list[Kept]:
    """All calls of a chat that are sought, the last one first."""
    found: list[Kept] = []
    ended: dict[int | None, set[str]] = {}
    told = await turn.uow.offers.told_in_order(turn.chat.id, [CALLED, EASED])
    for key, made_at, held in told:
        if not held:
            continue
        tank_id = held["tank"]
        if key == EASED:
            ended.setdefault(tank_id, set()).update(ended_by(held["how"]))
            continue
        over = set().union(*ended.values()) if tank_id is None else ended.get(tank_id, set())
        found.append(
            Kept(
                held["danger"],
                tank_id,
                made_at,
                held.get("gasping", False),
                int(held.get("entry", 0)),
                held.get("of"),
                held.get("said"),
                held["danger"] in over | ended.get(None, set()),
            )
        )
    return found


async def of_tank(turn: Turn, tank_id: int) -> list[Kept]:
    """Those of a tank, and those that were called before there was one; the last one first."""
    return [each for each in await all_of(turn) if each.tank_id in {tank_id, None}]
