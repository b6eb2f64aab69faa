"""``same for quarry``: the reminder just set, at the same times for another tank."""

from __future__ import annotations

import re

from bot.chat import reminders
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.store.reminders import Reminder
from bot.store.tanks import StoredTank
from core.message.fold import fold
from core.message.model import Parsed
from core.message.reminder_when import has, pattern
from core.schedule import Request, from_text, kind_of


async def answer(turn: Turn, spoken: Reminder | None, parsed: Parsed) -> list[Reply] | None:
    """Set it for the tank that is named, or the only other one; None where more is said."""
    told = parsed.values or parsed.events or parsed.question is not None
    if spoken is None or spoken.next_due is None or told or "?" in turn.incoming.text:
        return None
    tank = _tank(turn, spoken)
    if tank is None or tank.id == spoken.tank_id:
        return None
    rule = from_text(spoken.rule)
    what = f"{tank.name}: {_task(turn, spoken)}"
    request = Request(
        what,
        rule,
        kind_of(what),
        spoken.counts_from_done,
        clock_time_said=False,
        anchor=spoken.anchor,
        first=spoken.next_due,
    )
    return await reminders.make(turn, request, [f"{what} {spoken.rule}"])


def _tank(turn: Turn, spoken: Reminder) -> StoredTank | None:
    """The tank that is all that a text names beside words for the same."""
    plain = " ".join(re.findall(r"[\w']+", fold(turn.incoming.text)))
    if not has("same", plain):
        return None
    rest = " ".join(pattern("same").sub(" ", plain).split())
    others = [tank for tank in turn.tanks if tank.id != spoken.tank_id]
    if has("other_tank", rest) and len(others) == 1:
        left = pattern("other_tank").sub(" ", rest, count=1)
        return None if pattern("light").sub(" ", left).strip() else others[0]
    for tank in turn.tanks:
        name = " ".join(re.findall(r"[\w']+", fold(tank.name)))
        left, found = re.subn(rf"(?<!\w){re.escape(name)}(?!\w)", " ", rest, count=1)
        joined = re.sub(r"(?<!\w)(?:and|und|et|y|e|en|i|och|tank)(?!\w)", " ", left)
        if found and not pattern("light").sub(" ", joined).strip():
            return tank
    return None


def _task(turn: Turn, spoken: Reminder) -> str:
    """The task of a reminder without its tank."""
    former = turn.tank_by_id(spoken.tank_id)
    if former is None:
        return spoken.what
    named = rf"\b(?:(?:in|for) )?{re.escape(former.name)}\b:?"
    left = " ".join(re.sub(named, " ", spoken.what, flags=re.IGNORECASE).split())
    return left.strip(" ,:;") or spoken.what
