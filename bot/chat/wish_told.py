"""``gh up to 12``, ``kh 6 please``, ``gh at least 8``: a wish, which is never stored unasked.

What stands on record tells the way: where a salt brings the value there it is planned at once.
Where it may have been measured as well (``kh down to 4``), it is asked. What nobody wishes (more
nitrate than is good, any ammonia) stays the reading that it is.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final

from bot.chat import orders, readings
from bot.chat.aims import unwished
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.store.tanks import StoredTank
from core.message import doubts, parse
from core.message.aims import UNSALTED, WISHED
from core.message.model import Doubt, Parsed
from core.message.wish_moved import wish_moved
from core.message.wish_told import Wish, read

SALTED: Final = frozenset({"kh", "gh", "calcium", "magnesium"})
"""What a salt raises that most keepers have; a wish for it is planned."""

TO_SCALE: Final = frozenset({"nitrate", "phosphate", "ph"})
"""Analytes whose kits end where the water goes on: `nitrate at least 100` was measured."""

_OTHERS: Final = frozenset(
    {doubts.UNKNOWN_TANK, doubts.AMBIGUOUS_TANK, doubts.OTHER_WATER, doubts.PAST, doubts.FUTURE}
)
"""Doubts of a message that is of another water or time."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Plan what is wished, or ask whether it is; None where nothing is wished."""
    beside = parsed.events or parsed.question or parsed.command or parsed.at
    if beside or any(doubt.reason in _OTHERS for doubt in parsed.doubts):
        return None
    wished = read(turn.incoming.text, turn.context())
    stored = orders.tank_of(turn, parsed)
    if not wished or any(_measured(each, stored) for each in wished):
        return None
    known: Mapping[str, float] = {}
    if stored is not None:
        known = await orders.known_of(turn, stored, [each.analyte for each in wished])
    if stored is not None and turn.incoming.addressed and turn.route is not None:
        if all(_rises(each, known) for each in wished) and not await _moved(turn, stored, wished):
            return await orders.plan(turn, " ".join(each.said for each in wished), stored)
        if len(wished) == 1 and _falls(wished[0], known):
            return await _by_water(turn, wished[0], stored)
    end = len(turn.incoming.text)
    asked = tuple(
        Doubt(each.said, 0, end, doubts.AIM, choices=(_asked_for(each, known), each.said))
        for each in wished
    )
    return await readings.keep(turn, replace(parsed, intent="unclear", values=(), doubts=asked))


async def moved(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``need calcium up``: what it is asked by, answered; None where nothing is wished so."""
    if parsed.values or parsed.events or parsed.command or not turn.incoming.addressed:
        return None
    order = wish_moved(turn.incoming.text)
    if order is None or turn.route is None:
        return None
    turn.incoming = replace(turn.incoming, text=order)
    return await turn.route(turn, parse(order, turn.context()))


def _measured(wish: Wish, stored: StoredTank | None) -> bool:
    """Whether nobody wishes this, so that it was measured."""
    if wish.analyte not in WISHED:
        return True
    if wish.ways == {"least"} and wish.analyte in TO_SCALE:
        return True
    return "down" not in wish.ways and unwished(stored, wish.analyte, wish.target)


def _rises(wish: Wish, known: Mapping[str, float]) -> bool:
    """Whether a salt brings the value up to the wish, and nothing else is said."""
    now = known.get(wish.analyte)
    above = now is not None and wish.target > now + orders.SAME
    return above and wish.analyte in SALTED and not wish.ways & {"down", "then"}


def _falls(wish: Wish, known: Mapping[str, float]) -> bool:
    """Whether a value on record is asked to be lower, in words that tell of nothing measured."""
    now = known.get(wish.analyte)
    below = now is not None and wish.target < now - orders.SAME
    return below and wish.analyte in {"kh", "gh"} and wish.ways <= {"please", "want"}


async def _moved(turn: Turn, stored: StoredTank, wished: Sequence[Wish]) -> bool:
    """Whether something went in since a value was read, that may have brought it up to there."""
    if not any(each.ways & {"up", "least"} for each in wished):
        return False
    names = [each.analyte for each in wished]
    rows = await turn.uow.log.last_of_each(stored.id, names, until=turn.now)
    kinds, oldest = ("dose", "water_change", "top_up"), min(row.at for row in rows)
    return bool(await turn.uow.log.events(stored.id, kinds=kinds, since=oldest))


async def _by_water(turn: Turn, wish: Wish, stored: StoredTank) -> list[Reply]:
    """The answer to the question how it gets down to there."""
    assert turn.route is not None  # noqa: S101 - narrows for the type checker
    await turn.use_tank(stored)
    turn.incoming = replace(turn.incoming, text=_lowered(wish))
    return await turn.route(turn, parse(turn.incoming.text, turn.context()))


def _asked_for(wish: Wish, known: Mapping[str, float]) -> str:
    """The question that a wish is."""
    lower = wish.target < known.get(wish.analyte, wish.target)
    if wish.analyte in UNSALTED or "down" in wish.ways or lower:
        return _lowered(wish)
    return f"dose {wish.said}"


def _lowered(wish: Wish) -> str:
    name, _space, number = wish.said.partition(" ")
    return f"get {name} to {number}"
