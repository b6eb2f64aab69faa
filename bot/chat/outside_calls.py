"""Calls for help from a chat without a tank: the poison told stands, whatever is told next."""

from __future__ import annotations

from datetime import timedelta
from typing import Final

from bot.chat import calls_kept
from bot.chat.turn import Turn
from core.advice.call_over import HOLDS, SUFFERING
from core.advice.calls import Danger
from core.advice.emergencies import A_DAY, STANDING

POISONS: Final[tuple[Danger, ...]] = (*STANDING, "sulfide", "co2_high")
"""What was called out to be in the water, the most deadly first: its steps are the first ones."""


async def standing(turn: Turn) -> Danger | None:
    """The poison called out within the day without a tank; None where none was."""
    called = {each.danger for each in await _of_day(turn)}
    return next((each for each in POISONS if each in called), None)


async def no_dose(turn: Turn) -> Danger | None:
    """What was called out within the day that nothing is dosed beside; None where nothing was."""
    called = {each.danger for each in await _of_day(turn)}
    return next((each for each in (*STANDING, *SUFFERING, "ammonia") if each in called), None)


async def newest(turn: Turn) -> tuple[Danger, bool] | None:
    """The last call of the day without a tank, and whether animals gasp; None where none was."""
    called = await _of_day(turn)
    if not called:
        return None
    return called[0].danger, any(each.gasping for each in called)


async def _of_day(turn: Turn) -> list[calls_kept.Kept]:
    return [
        each
        for each in await calls_kept.all_of(turn)
        if each.tank_id is None
        and not each.over
        and timedelta() <= turn.now - each.at < HOLDS.get(each.danger, A_DAY)
    ]
