"""A rhythm that is to end: repeated until it is stopped, or single reminders for its few times."""

from __future__ import annotations

from datetime import datetime, tzinfo
from typing import Final

from bot.chat import reminders, task_deeds
from bot.chat.model import Reply
from bot.chat.reminding import said
from bot.chat.turn import Turn
from bot.chat.words import reminder_talk as talk_words
from bot.chat.words import reminders as words
from bot.chat.words.numbers import when
from bot.chat.words.text import _
from bot.store.offers import Choice, Offer
from core.schedule import (
    Problem,
    Request,
    next_after,
    parse_end,
    parse_request,
    parse_several,
    parse_times,
)

MOST: Final = 14
"""So many single reminders are offered in the place of a rhythm with an end."""


def choices(turn: Turn, problem: Problem) -> list[Choice]:
    """The buttons for a rhythm with an end, which no rule has."""
    if problem.suggestion is None:
        return []
    held = {"text": problem.suggestion}
    without = Choice(_(talk_words.UNTIL_STOPPED), "remind", "", held)
    request = parse_request(*_at(turn, problem.suggestion))
    if isinstance(request, Problem) or parse_several(*_at(turn, problem.suggestion)):
        return [without]
    times = _times(turn, request, problem.text)
    if not times:
        return [without]
    last = when(times[-1].astimezone(turn.chat.zone), turn.local_now)
    moments = [each.isoformat() for each in times]
    few = talk_words.each_time(len(times), last)
    return [without, Choice(few[:40], "remind_each", "", {**held, "moments": moments})]


def _at(turn: Turn, text: str) -> tuple[str, datetime, tzinfo]:
    return text, turn.local_now, turn.chat.zone


def _times(turn: Turn, request: Request, end: str) -> list[datetime]:
    """When a rhythm is due until its end; none where that is too often, or unclear."""
    if (count := parse_times(end)) is not None:
        return _first(turn, request, count)
    until = parse_end(end, turn.local_now, turn.chat.zone)
    at: datetime | None = request.first
    times: list[datetime] = []
    while until is not None and at is not None and at <= until:
        if len(times) == MOST:
            return []
        times.append(at)
        at = next_after(request.rule, at, turn.chat.zone, request.anchor)
    return times


def _first(turn: Turn, request: Request, count: int) -> list[datetime]:
    """The first so many times of a rhythm; none where that is too many."""
    at: datetime | None = request.first
    times: list[datetime] = []
    while at is not None and len(times) < count <= MOST:
        times.append(at)
        at = next_after(request.rule, at, turn.chat.zone, request.anchor)
    return times


async def press(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Set the single reminders that are still to come; pressing twice sets each once."""
    await turn.uow.offers.take(offer.id, choice.verb)
    request = parse_request(*_at(turn, choice.arguments["text"]))
    if isinstance(request, Problem):
        return []
    tank = reminders.tank_in(turn, request.what)
    refused = await task_deeds.too_much(turn, request.what, request.kind, tank)
    if refused is not None:
        return refused
    moments = [datetime.fromisoformat(each) for each in choice.arguments["moments"]]
    lines: list[str] = []
    for at in moments:
        if at > turn.now:
            made = await reminders.make_once(turn, request.what, request.kind, at, tank)
            local = at.astimezone(turn.chat.zone)
            lines += words.made_once(said(turn, made), local, turn.local_now)
    return [await turn.reply(lines)] if lines else []
