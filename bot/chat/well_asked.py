"""``all good?``, ``is gh the problem?``, ``pleco ok in this?``: a verdict, in other words."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from bot.chat import about_values, after, danger_first, plan_talk, standing
from bot.chat.given_plan import given
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import well_asked as words
from core.advice import limits
from core.advice.livestock import named_in
from core.message import parse, well_asked
from core.message.fold import fold
from core.message.model import Parsed, Question
from core.message.tank_asked import tank_asked

PLAINLY: Final = "is that ok?"
"""How it is asked, for what reads it."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Give the verdict, of the value or for the animal that is named; None for other talk.

    Where all is asked about and no tank is named, a danger in another one is said before it.
    """
    text = turn.incoming.text
    replies = await _answer(turn, parsed)
    of_all = well_asked.of_whole(text) or tank_asked(text)
    if replies is None or not of_all or len(turn.tanks) < 2 or _names_tank(turn, text):
        return replies
    wrong = await danger_first.standing(turn, elsewhere=True)
    if not wrong.choices:
        return replies
    return [await turn.reply(wrong.lines, facts=wrong.facts, choices=wrong.choices), *replies]


def _names_tank(turn: Turn, text: str) -> bool:
    return any(_own(tank.name).search(text) for tank in turn.tanks)


def _own(name: str) -> re.Pattern[str]:
    return re.compile(rf"(?<!\w){re.escape(name)}(?!\w)", re.IGNORECASE)


async def _answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    told = parsed.values or parsed.events or parsed.command is not None
    if told or not turn.incoming.addressed:
        return None
    text = turn.incoming.text
    if (whole := await _whole(turn, parsed)) is not None:
        return whole
    if well_asked.blamed(text):
        return await about_values.answer(turn, parsed)
    if parsed.question is not None and parsed.question.kind != "safe":
        return None
    if turn.current_tank is None and len(turn.tanks) > 1 and well_asked.asked(text):
        return await standing.status(turn, Question("safe"))
    if turn.current_tank is None:
        return None
    if (by := well_asked.swung(text)) is not None:
        return await _swung(turn, by)
    whom = well_asked.whom(text)
    if whom is not None and named_in(fold(whom)):
        return await _plainly(turn, f"is it ok for {whom}?")
    if not well_asked.asked(text):
        return None
    return await (_of_all(turn) if well_asked.of_whole(text) else _plainly(turn, PLAINLY))


async def _of_all(turn: Turn) -> list[Reply] | None:
    """How the tank in use stands, though a plan was spoken of last; a danger goes before."""
    offers = await turn.uow.offers.latest(turn.chat.id)
    if not offers or given(offers[0]) is None:
        return await _plainly(turn, PLAINLY)
    return await standing.status(turn, Question("safe"))


async def _whole(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """How a whole tank stands; None where that is not asked."""
    rest, named = turn.incoming.text, parsed.tank
    for tank in sorted(turn.tanks, key=lambda each: -len(each.name)):
        rest, count = _own(tank.name).subn("tank", rest)
        if count:
            named = tank.name
            break
    if not tank_asked(rest):
        return None
    return await standing.status(turn, Question("safe", tank=named))


async def _plainly(turn: Turn, text: str) -> list[Reply] | None:
    """The same, asked in words that the other topics read."""
    turn.incoming = replace(turn.incoming, text=text)
    asked = parse(text, turn.context())
    for look in (plan_talk.answer, after.answer):
        if (found := await look(turn, asked)) is not None:
            return [found] if isinstance(found, Reply) else list(found)
    return None if turn.route is None else await turn.route(turn, asked)


async def _swung(turn: Turn, by: float) -> list[Reply]:
    """A pH that goes up and down: against what it may move, then how the tank stands."""
    line = words.swung(by) if by > limits.PH_MOVED + 1e-9 else words.swung_little(by)
    (how,) = await standing.status(turn, Question("safe"))
    lines = [line, *(each.text for each in how.lines)]
    return [await turn.reply(lines, facts={**how.facts, "swing": by})]
