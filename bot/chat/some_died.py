"""``80l with 10 tetras, 3 died``: who lives there is told first, and some of them are dead.

Both are kept, one after the other, so that the dead are taken off those that were told.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from bot.chat.model import Reply
from bot.chat.turn import Turn
from core.advice.inhabitants import number_in
from core.advice.loose_lists import clauses_of
from core.message import doubts, kinds, parse
from core.message.fold import fold
from core.message.lexicon import meanings
from core.message.model import Parsed


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer what stands before the dead, then them; None where no animals are counted there."""
    if turn.incoming.group or turn.typed is None or turn.route is None or len(parsed.events) != 1:
        return None
    (dead,) = parsed.events
    if dead.kind != "lost" or not dead.count or not _left_over(parsed, dead.start):
        return None
    whole = turn.incoming
    head, tail = _joined_not(whole.text[: dead.start]), whole.text[dead.start :]
    living = [kind for each in clauses_of(head) if (kind := _counted(each)) is not None]
    told = parse(tail, turn.context())
    if not living or len(told.events) != 1 or told.events[0].count != dead.count:
        return None
    species = dead.species or (living[0] if len(living) == 1 else None)
    turn.incoming = replace(whole, text=head)
    replies = await turn.typed(turn)
    turn.incoming = replace(whole, text=tail, update_id=f"{whole.update_id}:dead")
    # at an hour before this one nobody of them would be on record yet
    told = replace(told, at=None, events=(replace(told.events[0], species=species, at=None),))
    replies += await turn.route(turn, told)
    turn.incoming = whole
    return replies


async def in_the(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``lost 3 cardinals overnight in the 125``: the dead of the tank of so many litres or gallons.

    None where no tank, or more than one, holds so much; without any tank it is the first one.
    """
    found = _IN_THE.search(turn.incoming.text)
    unsure = {doubt.reason for doubt in parsed.doubts} == {doubts.UNSURE_EVENT}
    if found is None or not unsure or parsed.events or parsed.values or turn.route is None:
        return None
    told = parse(turn.incoming.text[: found.start()], turn.context())
    if not told.events or told.doubts or any(each.kind != "lost" for each in told.events):
        return None
    number = float(found[1])
    of_it = [
        tank
        for tank in turn.tanks
        if tank.tank.volume_l
        and any(_near(tank.tank.volume_l, n) for n in (number, number * 3.785))
    ]
    if len(of_it) > 1 or (turn.tanks and not of_it):
        return None
    return await turn.route(turn, replace(told, tank=of_it[0].name if of_it else told.tank))


_IN_THE: Final = re.compile(r"\s+in (?:the|my|our) (\d{2,4})\W*$", re.IGNORECASE)


def _near(volume: float, said: float) -> bool:
    return abs(volume - said) <= 0.02 * said


def _joined_not(head: str) -> str:
    """Words without what joins them to what follows: and, but, a comma."""
    words = head.rstrip(" ,.;:-").split()
    while words and any(kind == "fill" or of == "and" for kind, of in meanings(fold(words[-1]))):
        words.pop()
    return " ".join(words).rstrip(" ,.;:-")


def _counted(clause: str) -> str | None:
    """The animals that a number stands before in a clause, as they are called there."""
    words = clause.split()
    first = max((n for n, word in enumerate(words) if number_in(word) is not None), default=None)
    said = " ".join(words[first + 1 :]) if first is not None else ""
    return said if said and kinds.is_kind(said) else None


def _left_over(parsed: Parsed, start: int) -> bool:
    """Whether counted animals before the dead are of no event: they are those who live there."""
    return any(d.reason == doubts.UNKNOWN_NAME and d.end <= start for d in parsed.doubts)
