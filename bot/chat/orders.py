"""``kh to 6`` as the whole message: planned at once where the value of now is known.

Where it is not, or is what is told, the keeper is asked whether it is wished or was measured.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace
from typing import Final

from bot.chat import readings
from bot.chat.model import Reply
from bot.chat.supply import read
from bot.chat.turn import Turn
from bot.store.tanks import StoredTank
from core.message import doubts, parse
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Parsed, Question
from core.message.orders import ordered
from core.message.tokens import cut

SAME: Final = 1e-6
"""Values nearer than this are one, in their canonical unit."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Plan what such a message wishes; None where it wishes nothing, or may tell a reading."""
    if not turn.incoming.addressed or turn.route is None:
        return None
    text = turn.incoming.text
    if (wished := " ".join(ordered(text, parsed, turn.context()))) == "":
        return await _moved(turn, parsed)
    asked = parse(f"dose {wished}", turn.context())
    stored = tank_of(turn, parsed)
    if asked.question is None or asked.doubts or stored is None:
        return None
    goals = _goals(asked.question)
    known = await known_of(turn, stored, goals)
    if set(known) != set(goals) or any(abs(known[n] - to) < SAME for n, to in goals.items()):
        return None
    return await plan(turn, wished, stored)


async def _moved(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """`kh 3 to 6`, where 3 is what stands: a wish; `kh from 3 to 6` may also tell a rise."""
    text = turn.incoming.text
    of_range = len(parsed.values) == 1 and parsed.values[0].low is not None and not parsed.doubts
    of_change = len(parsed.doubts) == 1 and parsed.doubts[0].reason == doubts.CHANGE
    beside = parsed.events or parsed.question or parsed.command or parsed.at
    if beside or not (of_range or (of_change and not parsed.values)) or not _has_to(text):
        return None
    asked, stored = parse(f"dose {text}", turn.context()).question, tank_of(turn, parsed)
    if asked is None or stored is None or asked.analyte is None or asked.target is None:
        return None
    start = (await known_of(turn, stored, [asked.analyte])).get(asked.analyte)
    if start is None or asked.start_value is None or abs(start - asked.start_value) > SAME:
        return None
    wished = f"{asked.analyte.replace('_', ' ')} {asked.target:.6g}"
    if of_range:
        return await plan(turn, wished, stored)
    both = (f"dose {wished}", wished)
    doubt = replace(parsed.doubts[0], suggestion=None, value=None, choices=both)
    return await readings.keep(turn, replace(parsed, doubts=(doubt,)))


def _has_to(text: str) -> bool:
    plain = fold(text)
    return any(token.value == "to" for token in cut(plain, lexicon(), text))


def tank_of(turn: Turn, parsed: Parsed) -> StoredTank | None:
    """The tank that a message names, else the one in use."""
    return turn.tank_named(parsed.tank) if parsed.tank else turn.current_tank


def _goals(question: Question) -> dict[str, float]:
    named = ((question.analyte, question.target), (question.also, question.also_target))
    told = {name: to for name, to in named if name is not None and to is not None}
    return {**question.premises, **told}


async def known_of(turn: Turn, stored: StoredTank, names: Collection[str]) -> dict[str, float]:
    """What the tank has on record of some analytes, in their canonical units."""
    rows = await turn.uow.log.last_of_each(stored.id, list(names), until=turn.now)
    return {reading.analyte: reading.value for reading in read(turn, rows, stored.tank)}


async def plan(turn: Turn, wished: str, stored: StoredTank) -> list[Reply]:
    """The answer to the question that says the same."""
    assert turn.route is not None  # noqa: S101 - narrows for the type checker
    await turn.use_tank(stored)
    turn.incoming = replace(turn.incoming, text=f"dose {wished}")
    return await turn.route(turn, parse(turn.incoming.text, turn.context()))
