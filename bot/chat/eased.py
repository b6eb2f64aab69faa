"""After the first steps of a call: how it stands once air is on, they look better, or a test is 0.

What was told is said back, with what is still to be tested: no steps from the first again, and no
word that all is well.
"""

from __future__ import annotations

from typing import Any, Final

from bot.chat import emergencies
from bot.chat.calls_kept import CALLED, EASED
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import eased as words
from bot.store.offers import Offer
from bot.store.tanks import StoredTank
from core.advice.call_over import ended_by
from core.advice.calls import Danger
from core.advice.emergencies import (
    A_DAY,
    SETTLED_BY,
    help_for,
    lost_lately,
    read_since_call,
    standing_call,
)
from core.advice.state import State

HOW: Final = frozenset({"air_on", "better"})
"""Meanings of the talk after a call for help that ease it."""

AMONG: Final = 12
"""Replies among which it is sought."""


async def keep(turn: Turn, stored: StoredTank | None, danger: Danger, how: str) -> None:
    """Keep that a call was eased, or is over, where what was told does so."""
    if how in HOW or ended_by(how):
        held = {"tank": None if stored is None else stored.id, "danger": danger, "how": how}
        await turn.uow.offers.add(turn.chat.id, Offer((), turn.now, context={EASED: held}))


async def stands(turn: Turn, tank_id: int | None, how: str | None = None) -> Reply | None:
    """How a tank stands whose call was eased since; None where it was not, or worse is known.

    With `how` only what was eased so counts.
    """
    eased = await _newest(turn, tank_id)
    if eased is not None and how not in {None, eased["how"]}:
        return None
    stored = None if eased is None else turn.tank_by_id(eased["tank"])
    if eased is None or stored is None:
        return None
    state = await state_of(turn, stored, turn.now)
    worse = any(each.severity != "note" for each in emergencies.what_stands(state))
    if worse or standing_call(state) is not None or lost_lately(state):
        return None
    new = await emergencies.new_water(turn, stored, state)
    help_ = help_for(eased["danger"], state, new)
    lines = words.eased(stored.name, help_, better=eased["how"] == "better")
    facts = {"emergency": eased["danger"], "tank": stored.name}
    return await turn.reply(lines, facts=facts)


async def is_eased(turn: Turn, tank_id: int | None) -> bool:
    """Whether a call in a tank was eased since."""
    return await _newest(turn, tank_id) is not None


async def _newest(turn: Turn, tank_id: int | None) -> dict[str, Any] | None:
    """What eased the call that was answered last in a tank; None where nothing did since."""
    for offer in await turn.uow.offers.latest(turn.chat.id, AMONG):
        if turn.now - offer.made_at >= A_DAY or CALLED in offer.context:
            return None
        if EASED in offer.context and offer.context[EASED]["how"] in HOW:
            eased: dict[str, Any] = offer.context[EASED]
            return eased if eased["tank"] == tank_id else None
        if offer.entry_id is not None:
            return None  # what was logged since tells more
    return None


async def settled(
    turn: Turn, stored: StoredTank, state: State, danger: Danger | None
) -> Reply | None:
    """What is left to do once a test of 0 settled what was called out; None where none did."""
    if danger is None or danger not in SETTLED_BY or lost_lately(state):
        return None
    read = read_since_call(state, danger, SETTLED_BY[danger])
    if not read or read[0].value > 0.0:
        return None
    help_ = help_for("general", state, await emergencies.new_water(turn, stored, state))
    lines = words.settled(stored.name, danger, read[0], state.now, help_)
    facts = {"tank": stored.name, "settled": danger, "by": {read[0].analyte: read[0].value}}
    return await turn.reply(lines, facts=facts)
