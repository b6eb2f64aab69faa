"""A call for help that nothing ended stands before every verdict: is my water ok, may I change.

It was told by the keeper, so no reading beside it makes the tank well: it is said back, with how it
ends.
"""

from __future__ import annotations

from bot.chat import calls_kept, emergencies
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import call_stands as words
from bot.store.tanks import StoredTank
from core.advice.call_over import READ, SIGNS, open_in, tested_well
from core.advice.calls import Danger
from core.advice.state import State


async def lead(turn: Turn, stored: StoredTank, danger: Danger) -> str:
    """What was called out of a tank in the keeper's words, and how it ends."""
    calls = await calls_kept.of_tank(turn, stored.id)
    call = next(each for each in calls if each.danger == danger)
    return words.not_over(danger, call.said, call.at.astimezone(turn.chat.zone), turn.local_now)


async def instead(turn: Turn, stored: StoredTank, state: State) -> Reply | None:
    """The first steps again in the place of a verdict; None where the verdict tells something.

    Where animals suffer and no poison was read as 0 since, no other reading tells how they are.
    """
    danger = open_in(state)
    if danger is None or not (danger in SIGNS or danger in READ) or tested_well(state, danger):
        return None
    if any(each.severity == "alarm" for each in emergencies.what_stands(state)):
        return None  # the verdict says what is wrong
    told = await lead(turn, stored, danger)
    gasping = danger == "gasping"
    return await emergencies.help_in(turn, stored, danger, gasping=gasping, lead=told)


async def before(turn: Turn, stored: StoredTank, state: State) -> list[str]:
    """What is said before a verdict that is given all the same; nothing where no call stands."""
    danger = open_in(state)
    return [] if danger is None else [await lead(turn, stored, danger)]
