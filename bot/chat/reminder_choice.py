"""A question about a reminder answered in words: ``the first one``, ``mon and thu``."""

from __future__ import annotations

from datetime import datetime, time, tzinfo
from typing import Final

from bot.chat import presses, reminder_moving, reminder_requests
from bot.chat.model import Reply
from bot.chat.patience import PATIENCE
from bot.chat.turn import Turn
from bot.store.offers import Choice
from core.message.choices import chosen, ordinal
from core.message.model import Parsed
from core.message.reminder_when import names_part
from core.schedule import Once, Request, parse_moment, parse_request, split_time, two_hours

VERBS: Final = frozenset(
    {"remind", "remind_each", "move_reminder", "skip_next", "stop_reminder", "done_early"}
)
"""What the choices of such a question do."""

LONGEST: Final = 40
"""A longer text says more than which choice is meant. [characters]"""

NOON: Final = 12
HOURS: Final = 24
"""A bare hour between them is of the afternoon. [h]"""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Take the choice that the words mean; None where they are about something else.

    Words of time that are none of the choices are the time of what was asked for.
    """
    text = turn.incoming.text.strip(" .!")
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    if not latest or latest[0].used is not None or turn.now - latest[0].made_at > PATIENCE:
        return None
    choices = latest[0].choices
    asked = len(choices) > 1 and all(each.verb in VERBS for each in choices)
    told = parsed.values or parsed.events or parsed.command is not None or parsed.question
    if not asked or told or not turn.incoming.addressed or "?" in text or len(text) > LONGEST:
        return None
    place = None if names_part(text) else ordinal(text)  # first thing: of the morning
    if place is None:
        place = chosen(text, [each.label for each in choices])
    if place is None:
        place = _by_part(turn, text, choices)
    if place is None:
        place = _by_hour(turn, text, choices)
    if place is not None:
        ready = place < len(choices)
        return await presses.take(turn, latest[0], choices[place]) if ready else None
    return await _anew(turn, text, choices)


def _by_part(turn: Turn, text: str, choices: tuple[Choice, ...]) -> int | None:
    """The only choice whose hour is of the part of the day that was said."""
    part = parse_moment(f"tomorrow {text}", turn.local_now, turn.chat.zone)
    if any(letter.isdigit() for letter in text) or not isinstance(part, datetime):
        return None
    if split_time(text) != ("", text):
        return None
    near = []
    for place, each in enumerate(choices):
        request = parse_request(each.arguments.get("text", ""), *_now(turn))
        if not isinstance(request, Request):
            return None
        hour, at = (when.astimezone(turn.chat.zone) for when in (request.first, part))
        near += [place] if reminder_moving.is_near(hour, at) else []
    return near[0] if len(near) == 1 else None


def _by_hour(turn: Turn, text: str, choices: tuple[Choice, ...]) -> int | None:
    """The only choice at the hour that was said, which can be no other: `17`, `5 pm`."""
    if text.isascii() and text.isdigit():
        wanted = time(int(text)) if NOON < int(text[:3]) < HOURS else None
    else:
        wanted = _time_in(turn, text) if split_time(text) == ("", text) else None
    if wanted is None or two_hours(text) or not any(letter.isdigit() for letter in text):
        return None
    timed = [split_time(each.arguments.get("text", each.label)) for each in choices]
    at = [None if each is None else _time_in(turn, each[1]) for each in timed]
    return at.index(wanted) if at.count(wanted) == 1 else None


def _time_in(turn: Turn, when: str) -> time | None:
    """The time of day of one moment, by the chat's clock; None where it is none."""
    found = parse_moment(when, *_now(turn))
    return found.astimezone(turn.chat.zone).time() if isinstance(found, datetime) else None


async def _anew(turn: Turn, text: str, choices: tuple[Choice, ...]) -> list[Reply] | None:
    """What was asked for, at the time that was said in the place of those shown."""
    timed = split_time(text)
    parts = [split_time(each.arguments.get("text", "")) for each in choices]
    tasks = {part[0] for part in parts if part is not None}
    if timed is None or timed[0] or len(tasks) != 1 or None in parts or "" in tasks:
        return None
    request = parse_request(f"{min(tasks)} {text}", *_now(turn))
    shown = [parse_request(each.arguments["text"], *_now(turn)) for each in choices]
    single = all(isinstance(each, Request) and isinstance(each.rule, Once) for each in shown)
    if not isinstance(request, Request) or single != isinstance(request.rule, Once):
        return None
    return await reminder_requests.single(turn, f"{min(tasks)} {text}")


def _now(turn: Turn) -> tuple[datetime, tzinfo]:
    return turn.local_now, turn.chat.zone
