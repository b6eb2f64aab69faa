"""Calls for help from a chat without a tank: the poison told stands, whatever is told next."""

from __future__ import annotations

from typing import Any, Final

from bot.chat.state import CALLED, CALLS_AMONG
from bot.chat.turn import Turn
from core.advice.calls import Danger
from core.advice.emergencies import A_DAY, STANDING

POISONS: Final[tuple[Danger, ...]] = (*STANDING, "sulfide", "co2_high")
"""What was called out to be in the water, the most deadly first: its steps are the first ones."""


async def standing(turn: Turn) -> Danger | None:
    """The poison called out within the day without a tank; None where none was."""
    called = {each["danger"] for each in await _of_day(turn)}
    return next((each for each in POISONS if each in called), None)


async def newest(turn: Turn) -> tuple[Danger, bool] | None:
    """The last call of the day without a tank, and whether animals gasp; None where none was."""
    called = await _of_day(turn)
    if not called:
        return None
    return called[0]["danger"], any(each.get("gasping", False) for each in called)


async def _of_day(turn: Turn) -> list[dict[str, Any]]:
    return [
        dict(called)
        for made_at, called in await turn.uow.offers.told_of(turn.chat.id, CALLED, CALLS_AMONG)
        if called and called["tank"] is None and turn.now - A_DAY < made_at <= turn.now
    ]
