"""When reminders are held back: quiet hours, holidays."""

from __future__ import annotations

from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import reminders as words
from bot.chat.words.text import _
from bot.reminders import planning
from core.message.model import Command, Parsed
from core.schedule import Problem, parse_quiet, parse_until


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
    if isinstance(until, Problem):
        lines = words.problem(until.reason, until.text or wanted, _("holiday until 4 May"))
        return [await turn.reply(lines)]
    await turn.change_chat(paused_until=until)
    await planning.reschedule(turn.uow, turn.chat, turn.now, zone_changed=False)
    shown = until.astimezone(turn.chat.zone)
    return [await turn.reply(words.holiday_set(shown, turn.local_now))]
