"""When reminders are held back: quiet hours, holidays."""

from __future__ import annotations

from dataclasses import replace
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
from core.message import parse
from core.message.away_said import away, end_of, home_again
from core.message.model import Command, Parsed
from core.message.quiet_said import quiet_side
from core.message.reminder_said import asked_behind
from core.schedule import Problem, Quiet, moment_at, parse_quiet, parse_until

USUAL: Final = Quiet(time(22), time(7))
"""The quiet hours whose end is taken where only one was said; ours, no source."""

ASKED: Final = "holiday_until"
"""Of an offer: that it was asked until when reminders are to pause."""

_REMIND: Final = "remind me to {asked}"

SINCE: Final = "holiday_since"
"""Of such an offer: when the pause is to begin, where that was said."""


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
        return await _end(turn)
    if (both := await _and_reminder(turn)) is not None:
        return both
    until = parse_until(wanted, turn.local_now, turn.chat.zone)
    if not wanted:
        return [await _asked_until(turn)]
    if isinstance(until, Problem):
        lines = words.problem(until.reason, until.text or wanted, _("holiday until 4 May"))
        return [await turn.reply(lines)]
    return await pause(turn, until)


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``im away until friday``, ``pause reminders``: the holiday; None where none is told.

    When it ends is asked where that is unsaid.
    """
    if not turn.incoming.addressed or parsed.command is not None or parsed.events:
        return None
    if (side := quiet_side(turn.incoming.text)) is not None:
        return [await _quiet_asked(turn, *side)]
    now, zone = turn.local_now, turn.chat.zone
    latest = next(iter(await turn.uow.offers.latest(turn.chat.id, 1)), None)
    if latest is not None and ASKED in latest.context and turn.now - latest.made_at <= PATIENCE:
        held = latest.context.get(SINCE)
        since = None if held is None else datetime.fromisoformat(held)
        until = end_of(turn.incoming.text, now, zone, since)
        if until is not None:
            return await pause(turn, until, since)
    if _rests_now(turn) and home_again(turn.incoming.text):
        return await _end(turn)
    told = away(turn.incoming.text, now, zone)
    if told is None:
        return await _and_reminder(turn)
    if told.then and (standing := pause_of(turn)) is not None:
        return [await turn.reply(standing)]
    if told.until is None:
        return [await _asked_until(turn, told.since)]
    return await pause(turn, told.until, told.since)


def _rests_now(turn: Turn) -> bool:
    """Whether reminders rest at the moment."""
    since, until = turn.chat.paused_from, turn.chat.paused_until
    return until is not None and until > turn.now and (since is None or since <= turn.now)


async def _end(turn: Turn) -> list[Reply]:
    """Let reminders go on from now."""
    await turn.change_chat(paused_until=None, paused_from=None)
    await planning.reschedule(turn.uow, turn.chat, turn.now, zone_changed=False)
    return [await turn.reply(words.holiday_off())]


async def _and_reminder(turn: Turn) -> list[Reply] | None:
    """``on holiday until friday, remind me to test on saturday``: the pause, and the reminder.

    None where no reminder is asked for behind it, or when it ends is unsaid.
    """
    split = asked_behind(turn.incoming.text) if turn.incoming.addressed else None
    told = None if split is None else away(split[0], turn.local_now, turn.chat.zone)
    if split is None or told is None or told.until is None or turn.route is None:
        return None
    replies = await pause(turn, told.until, told.since)
    before, text = turn.incoming, _REMIND.format(asked=split[1])
    turn.incoming = replace(before, text=text)
    replies += await turn.route(turn, parse(text, turn.context()))
    turn.incoming = before
    return replies


def pause_of(turn: Turn) -> list[str] | None:
    """The pause that is on or to come, in words; None where there is none."""
    since, until = turn.chat.paused_from, turn.chat.paused_until
    if until is None or until <= turn.now:
        return None
    zone = turn.chat.zone
    begins = since.astimezone(zone) if since is not None and since > turn.now else None
    return words.holiday_set(until.astimezone(zone), turn.local_now, begins)


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
    """Let reminders pause from now on, or at the time of a button in the place of another."""
    until = datetime.fromisoformat(choice.arguments["until"])
    if until <= turn.now:
        return [await turn.reply(general.already())]
    since = choice.arguments.get("instead")
    return await _keep(turn, until, None if since is None else datetime.fromisoformat(since))


async def press_later(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Remind of the pause on the day that it begins, of an offer made before those were kept.

    Pressing twice sets one.
    """
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


async def _asked_until(turn: Turn, since: datetime | None = None) -> Reply:
    """Ask when reminders are to go on."""
    held = {ASKED: True} | ({} if since is None else {SINCE: since.isoformat()})
    return await turn.reply(words.holiday_until_when(), context=held, expects="followup")


async def pause(turn: Turn, until: datetime, since: datetime | None = None) -> list[Reply]:
    """Let reminders pause, from now on or from when on; one is kept at a time.

    Where one stands that the new one does not touch, it is asked which of both is meant.
    """
    since = None if since is None or since <= turn.now else since
    stands, ends = turn.chat.paused_from, turn.chat.paused_until
    if ends is None or ends <= turn.now:
        return await _keep(turn, until, since)
    stands = None if stands is None or stands <= turn.now else stands
    zone, now = turn.chat.zone, turn.local_now
    apart = (since or turn.now) > ends or (stands or turn.now) > until
    if apart:
        begins = None if stands is None else stands.astimezone(zone)
        lines = words.holiday_set(ends.astimezone(zone), now, begins)[:1]
        lines += words.holiday_only_one()
        held = {"until": until.isoformat(), "instead": (since or turn.now).isoformat()}
        label = words.holiday_instead((since or turn.now).astimezone(zone), until.astimezone(zone))
        return [await turn.reply(lines, choices=[Choice(label[:40], "pause", "", held)])]
    if since is not None and (stands is None or stands < since):
        since = stands  # a longer one begins as the one that stands
    return await _keep(turn, until, since)


async def _keep(turn: Turn, until: datetime, since: datetime | None) -> list[Reply]:
    """Let reminders pause in the place of any other time."""
    since = None if since is None or since <= turn.now else since
    await turn.change_chat(paused_until=until, paused_from=since)
    await planning.reschedule(turn.uow, turn.chat, turn.now, zone_changed=False)
    return [await turn.reply(pause_of(turn) or [])]
