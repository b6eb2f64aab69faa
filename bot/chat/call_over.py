"""What ends a call for help: `ok turned it off`, `fixed the leak`, `called them`, `eyes ok now`.

It is kept, so that the call stands no longer, and what comes next is told: no steps from the first.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat import calls, calls_kept, emergency_talk, people_first
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import call_over as words
from bot.chat.words.names import of_tank
from bot.store.offers import Offer
from core.advice.call_over import HOLDS, ended_by
from core.advice.calls import Danger
from core.advice.emergencies import A_DAY
from core.message import parse
from core.message.call_over import over
from core.message.model import Parsed

GAS: Final[frozenset[Danger]] = frozenset({"fumes", "co_air", "co2_air", "breath", "collapsed"})
"""Dangers of a room: to be out of it is the first step, and no end."""

_ENDS: Final = {"well": "better"}


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Take a call for over and say what comes next; None where none is, or for other talk."""
    if not turn.incoming.addressed or parsed.values or parsed.command is not None:
        return None
    what = over(turn.incoming.text)
    if what is None:
        return None
    of_people = await people_first.standing(turn)
    if what == "outside":
        is_gas = of_people is not None and of_people.danger in GAS
        return [await turn.reply(words.outside(), facts=_facts(of_people))] if is_gas else None
    how = _ENDS.get(what, what)
    call = await _ended(turn, how)
    if call is None:
        if what == "well" and of_people is not None:
            return [await people_first.steps(turn, of_people, words.not_yet())]
        return await _co2_off(turn) if what == "off" else None
    if call.danger != "electric" and calls.is_danger(turn, parsed):
        return None  # power is off now: a call of its own, but for the current in the water
    held = {"tank": call.tank_id, "danger": call.danger, "how": how}
    await turn.uow.offers.add(turn.chat.id, Offer((), turn.now, context={calls_kept.EASED: held}))
    tank = turn.tank_by_id(call.tank_id)
    first, *then = words.done(how, call.danger)
    lines = [of_tank(tank.name if tank is not None else None, first), *then]
    return [await turn.reply(lines, facts=_facts(call))]


def _facts(call: calls_kept.Kept | None) -> dict[str, str]:
    return {} if call is None else {"emergency": call.danger}


async def _of_late(turn: Turn) -> list[calls_kept.Kept]:
    """The calls of the tank in use or of none, the last one first."""
    used = turn.current_tank
    ids = {None} if used is None else {used.id, None}
    return [
        each
        for each in await calls_kept.all_of(turn)
        if each.tank_id in ids and turn.now - each.at < HOLDS.get(each.danger, A_DAY)
    ]


async def _ended(turn: Turn, how: str) -> calls_kept.Kept | None:
    """The last call that is over by what was told, be it told once more."""
    ends = ended_by(how)
    told = [
        each
        for each in await _of_late(turn)
        if each.danger in ends and words.is_worded(how, each.danger)
    ]
    return next((each for each in told if not each.over), next(iter(told), None))


async def _co2_off(turn: Turn) -> list[Reply] | None:
    """What was turned off is the gas, where too much CO2 was called out last."""
    last = next((each for each in await _of_late(turn) if not each.over), None)
    if last is None or last.danger != "co2_high":
        return None
    turn.incoming = replace(turn.incoming, text="co2 off")
    return await emergency_talk.answer(turn, parse("co2 off", turn.context()))
