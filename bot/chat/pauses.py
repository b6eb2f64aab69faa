"""When reminders are held back: quiet hours, holidays."""

from __future__ import annotations

from datetime import datetime, time
from typing import Final

from bot.chat import reminders
from bot.chat.model import Reply
from bot.chat.patience import PATIENCE
from bot.chat.reminder_answers import MORNING
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import reminders as words
from bot.chat.words.text import _
from bot.reminders import planning
from bot.store.offers import Choice, Offer
from core.message.away_said import away, end_of
from core.message.model import Command, Parsed
from core.message.quiet_said import quiet_side
from core.schedule import Problem, Quiet, moment_at, parse_quiet, parse_until

USUAL: Final = Quiet(time(22), time(7))
"""The quiet hours whose end is taken where only one was said; ours, no source."""

ASKED: Final = "holiday_until"
"""Of an offer: that it was asked until when reminders are to pause."""


async def quiet(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``quiet hours 22:00-07:00`` and ``quiet hours off``."""
    wanted = command.arguments.strip()
    if not wanted:
        return [await turn.reply(words.quiet_shown(turn.chat.quiet))]
    if wanted.casefold() == "off":
        await turn.change_chat(quiet=None)
        lines = words.quiet_off()
    else:
        span = parse_quiet(wanted)
        if isinstance(span, Problem):
            return [
                await turn.reply(words.problem("unclear", wanted, _("quiet hours 22:00-07:00")))
            ]
        await turn.change_chat(quiet=str(span))
        lines = words.quiet_set(str(span))
    await planning.reschedule(turn.uow, turn.chat, turn.now, zone_changed=False)
    return [await turn.reply(lines)]


async def holiday(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``holiday until 4 May``: nothing is said until that day begins."""
    wanted = command.arguments.strip()
    if wanted.casefold() in {"off", "over", "end"}:
        await turn.change_chat(paused_until=None)
        await planning.reschedule(turn.uow, turn.chat, turn.now, zone_changed=False)
        return [await turn.reply(words.holiday_off())]
    until = parse_until(wanted, turn.local_now, turn.chat.zone)
    if not wanted:
        return [await _asked_until(turn)]
    if isinstance(until, Problem):
        lines = words.problem(until.reason, until.text or wanted, _("holiday until 4 May"))
        return [await turn.reply(lines)]
    return await _set(turn, until)


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``im away until friday``, ``pause reminders``: the holiday; None where none is told.

    When it ends is asked where that is unsaid, and so is what to do until it begins.
    """
    if not turn.incoming.addressed or parsed.command is not None or parsed.events:
        return None
    if (side := quiet_side(turn.incoming.text)) is not None:
        return [await _quiet_asked(turn, *side)]
    now, zone = turn.local_now, turn.chat.zone
    latest = next(iter(await turn.uow.offers.latest(turn.chat.id, 1)), None)
    if latest is not None and ASKED in latest.context and turn.now - latest.made_at <= PATIENCE:
        until = end_of(turn.incoming.text, now, zone)
        if until is not None:
            return await _set(turn, until)
    told = away(turn.incoming.text, now, zone)
    if told is None:
        return None
    if told.until is None:
        return [await _asked_until(turn)]
    if told.since is None or told.since <= turn.now:
        return await _set(turn, told.until)
    since, until = told.since.astimezone(zone), told.until.astimezone(zone)
    held = {"until": told.until.isoformat(), "since": told.since.isoformat()}
    lines, begin, wait = words.holiday_to_come(since, until, now)
    choices = [
        Choice(begin[:40], "pause", "", held),
        Choice(wait[:40], "pause_later", "", held),
    ]
    return [await turn.reply(lines, choices=choices)]


async def _quiet_asked(turn: Turn, side: str, at: time) -> Reply:
    """Ask whether quiet hours are meant, with the other end that they have, or usually have."""
    known = planning.quiet_of(turn.chat) or USUAL
    start, end = (known.start, at) if side == "before" else (at, known.end)
    if start == end:
        return await turn.reply(words.quiet_shown(turn.chat.quiet))
    span = str(Quiet(start, end))
    choices = [Choice(_("quiet hours {span}").format(span=span), "quiet", "yes", {"span": span})]
    return await turn.reply(words.quiet_asked(span), choices=choices)


async def press_quiet(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Set the quiet hours of a button."""
    span = choice.arguments["span"]
    await turn.change_chat(quiet=span)
    await planning.reschedule(turn.uow, turn.chat, turn.now, zone_changed=False)
    return [await turn.reply(words.quiet_set(span))]


async def press(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Let reminders pause from now on."""
    until = datetime.fromisoformat(choice.arguments["until"])
    return await _set(turn, until) if until > turn.now else [await turn.reply(general.already())]


async def press_later(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Remind of the pause on the day that it begins; pressing twice sets one."""
    zone = turn.chat.zone
    since = datetime.fromisoformat(choice.arguments["since"]).astimezone(zone)
    at = moment_at(since.date(), MORNING, zone)
    until = datetime.fromisoformat(choice.arguments["until"]).astimezone(zone)
    if at <= turn.now:
        return [await turn.reply(general.already())]
    await turn.uow.offers.take(offer.id, choice.verb)
    task = _("holiday until {day}").format(day=f"{until:%Y-%m-%d}")
    made = await reminders.make_once(turn, task, "other", at, None)
    lines = words.made_once(made.what, at.astimezone(zone), turn.local_now)
    return [await turn.reply(lines)]


async def _asked_until(turn: Turn) -> Reply:
    """Ask when reminders are to go on."""
    return await turn.reply(words.holiday_until_when(), context={ASKED: True}, expects="followup")


async def _set(turn: Turn, until: datetime) -> list[Reply]:
    """Let reminders pause."""
    await turn.change_chat(paused_until=until)
    await planning.reschedule(turn.uow, turn.chat, turn.now, zone_changed=False)
    shown = until.astimezone(turn.chat.zone)
    return [await turn.reply(words.holiday_set(shown, turn.local_now))]
