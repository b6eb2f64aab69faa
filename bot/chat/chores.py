"""``every sunday 10am water change 30%``: a chore with its time is a reminder, and no deed."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat import calls, reminder_requests
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import reminder_talk as talk_words
from bot.chat.words.rules import describe
from bot.chat.words.text import _
from bot.store.offers import Choice, Offer
from core.message.model import Command, Parsed, Question
from core.message.reminder_said import Chore, chore
from core.schedule import Problem

UNNAMED: Final = frozenset({"dose", "effect"})
"""Questions that a chore without a value sounds like."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Set the reminder that a chore asks for, or offer it; None where no chore is told."""
    if parsed.command is not None or parsed.values or not _may_ask(parsed.question):
        return None
    told = chore(turn.incoming.text, turn.local_now, turn.chat.zone, deed=bool(parsed.events))
    if told is None:
        return None
    if not turn.incoming.addressed:  # among people it is said to them, and was not done
        return [] if parsed.events and told.how != "named" else None
    if calls.is_danger(turn, parsed) or calls.is_call(turn, parsed):
        return None
    if told.how in {"asked", "bare"}:
        return await reminder_requests.command(turn, Command("remind", told.text), parsed)
    return await _offered(turn, told, parsed)


def _may_ask(question: Question | None) -> bool:
    if question is None:
        return True
    told = (question.analyte, question.target, question.delta, question.volume_l)
    return question.kind in UNNAMED and all(each is None for each in told)


async def _offered(turn: Turn, told: Chore, parsed: Parsed) -> list[Reply] | None:
    """A routine that is told: nothing is logged of it, and a reminder is offered."""
    if isinstance(told.request, Problem):
        return None
    if told.how == "past":
        return [await turn.reply(talk_words.routine_past())]
    rule = describe(told.request.rule, turn.chat.zone)
    remind = Choice(_(talk_words.REMIND), "remind", "", {"text": told.text})
    if told.how == "own":
        yes = replace(remind, meaning="yes")
        return [await turn.reply(talk_words.routine_told(told.request.what, rule), choices=[yes])]
    tank, event = turn.current_tank, parsed.events[0]
    if tank is None or event.kind != "water_change":
        return None
    share = "" if event.percent is None else f" {event.percent:g}%"
    held = {"text": f"changed{share}", "at": turn.now.isoformat(), "tank_id": tank.id}
    done = Choice(_(talk_words.DONE_NOW), "for_tank", "", held)
    return [await turn.reply(talk_words.done_or_planned(told.request.what), choices=[done, remind])]


async def press(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Set the reminder that was offered; pressing twice sets one."""
    await turn.uow.offers.take(offer.id, choice.verb)
    command = Command("remind", choice.arguments["text"])
    return await reminder_requests.command(turn, command, Parsed("command", command=command))
