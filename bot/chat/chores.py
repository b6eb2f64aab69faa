"""``every sunday 10am water change 30%``: a chore with its time is a reminder, and no deed."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat import acknowledged as acknowledged_talk
from bot.chat import calls, plan_reminders, reminder_requests, reminder_topic
from bot.chat.model import Reply
from bot.chat.reminder_moving import is_span
from bot.chat.reminding import KIND_OF_EVENT
from bot.chat.turn import Turn
from bot.chat.words import reminder_talk as talk_words
from bot.chat.words.rules import describe
from bot.chat.words.text import _
from bot.store.offers import Choice, Offer
from core.message import acknowledged, parse, reminder_said
from core.message.fold import fold
from core.message.followups import read as read_followup
from core.message.gave_told import gave
from core.message.model import Command, Parsed, Question
from core.message.plan_talk import about as plan_said
from core.message.plan_words import telling
from core.message.reminder_said import Chore, asked_behind, chore
from core.schedule import (
    Once,
    Problem,
    Request,
    parse_request,
    parse_several,
    split_time,
)

UNNAMED: Final = frozenset({"dose", "effect"})
"""Questions that a chore without a value sounds like."""

TOLD: Final = frozenset({"gave_all", "gave_two", "gave_double", "gave_one", "gave_it", "gave_half"})
"""What is told of a plan to be in."""

CHANGED: Final = "did a water change"
"""The message that puts a change without its share on record."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Set the reminder that a chore asks for, or offer it; None where no chore is told."""
    if turn.incoming.addressed and reminder_said.until_next(turn.incoming.text):
        return await reminder_requests.of_next(turn)
    says_more = parsed.values or parsed.events or parsed.command is not None
    if turn.incoming.addressed and not says_more and reminder_said.only_asks(turn.incoming.text):
        return await reminder_requests.command(turn, Command("remind", ""), parsed)
    if parsed.command is None and (both := await _both(turn)) is not None:
        return both
    if (after := await _behind_done(turn, parsed)) is not None:
        return after
    if parsed.command is None and (other := await _behind_said(turn, parsed)) is not None:
        return other
    if parsed.command is None and (behind := await _behind_reading(turn)) is not None:
        return behind
    if parsed.command is not None or parsed.values or not _may_ask(parsed.question):
        return None
    deed = bool(parsed.events) and all(e.kind in KIND_OF_EVENT for e in parsed.events)
    if parsed.events and not deed:
        return None
    told = chore(turn.incoming.text, turn.local_now, turn.chat.zone, deed=deed)
    if told is None or (told.how == "bare" and gave(turn.incoming.text) is not None):
        return None  # my wife put 5 g in an hour ago: what went in is no chore to come
    if not turn.incoming.addressed:  # among people it is said to them, and was not done
        return [] if parsed.events and told.how != "named" else None
    if calls.is_danger(turn, parsed) or calls.is_call(turn, parsed):
        return await _beside_danger(turn) if told.how == "asked" else None
    if told.how in {"asked", "bare"}:
        made = await reminder_requests.command(turn, Command("remind", told.text), parsed)
        too = await _done_too(turn, told, parsed, made) if told.how == "asked" else None
        return made if too is None else [*made, too]
    return await _offered(turn, told, parsed)


async def _done_too(turn: Turn, told: Chore, parsed: Parsed, made: list[Reply]) -> Reply | None:
    """``wc 30% remind me in 7 days``: it may be done as well; asked, beside the reminder of it.

    So it is behind how long from now alone: a day that is named is one of what is planned.
    """
    split, tank = asked_behind(turn.incoming.text), turn.current_tank
    timed = None if split is None else split_time(split[1])
    if timed is None or timed[0].strip(" ,.!") or not is_span(timed[1]) or tank is None:
        return None
    if [event.kind for event in parsed.events] != ["water_change"]:
        return None
    if isinstance(told.request, Problem) or not isinstance(told.request.rule, Once):
        return None
    (event,) = parsed.events
    if event.percent is None and event.litres is None:
        return None
    amount = f"{event.litres:g} l" if event.percent is None else f"{event.percent:g}%"
    stored = turn.tank_named(event.tank or parsed.tank or "") or tank
    held = {"text": f"changed {amount}", "at": turn.now.isoformat(), "tank_id": stored.id}
    done = Choice(_(talk_words.DONE_NOW), "for_tank", "yes", held)
    ids = [each.facts["reminder"]["id"] for each in made if "reminder" in each.facts]
    spoken = {"reminder_id": ids[-1]} if ids else {}
    return await turn.reply(talk_words.done_too(amount), choices=[done], context=spoken)


async def nameless(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``ricordamelo domani``: of what was just told, else it is asked of what."""
    if parsed.command is not None or parsed.values or parsed.events or not turn.incoming.addressed:
        return None
    asked = reminder_said.nameless(turn.incoming.text, turn.local_now, turn.chat.zone)
    if asked is None or not _may_ask(parsed.question):
        return None
    return await reminder_requests.command(turn, Command("remind", asked), parsed)


async def _both(turn: Turn) -> list[Reply] | None:
    """``changed 30%, remind me in 7 days``: what is told is kept, and the reminder set.

    One without a task of its own is of what was told.
    """
    split = asked_behind(turn.incoming.text) if turn.incoming.addressed else None
    if split is None or turn.route is None:
        return None
    before, asked = split
    told = parse(before, turn.context())
    if not (told.values or told.events) or told.doubts or told.question or told.command:
        return None
    request = parse_request(asked, turn.local_now, turn.chat.zone)
    nameless = isinstance(request, Problem) and request.reason == "no_what"
    if not told.values and reminder_said.of_task_before(turn.incoming.text, nameless=nameless):
        return None  # water change reminder sunday: of one to come
    if isinstance(request, Problem):
        if request.reason != "no_what":
            return None
        if told.values or told.events[0].kind != "dose":
            asked = f"{reminder_topic.task_of(told)} {asked}"
    said = turn.incoming
    turn.incoming = replace(said, text=before)
    replies = await turn.route(turn, told)
    turn.incoming, turn.asked = said, None
    return [*replies, *await reminder_requests.command(turn, Command("remind", asked), told)]


async def _behind_done(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``done, remind me for the next bit tomorrow``: what waits is done, and the reminder set.

    One without a task of its own is of a plan's next part, else of what was done.
    """
    split = asked_behind(turn.incoming.text) if turn.incoming.addressed else None
    if split is None or parsed.values or parsed.events:
        return None
    before, asked = split
    if acknowledged.told(before) != "did":
        return None
    said = turn.incoming
    turn.incoming = replace(said, text=before)
    command = Command("done", "")
    replies = await acknowledged_talk.done(turn, command, Parsed("command", command=command))
    turn.incoming, turn.asked = said, None
    request = parse_request(asked, turn.local_now, turn.chat.zone)
    lacks = isinstance(request, Problem) and request.reason in {"no_what", "no_time"}
    what = asked if isinstance(request, Problem) else request.what
    timed = split_time(asked)
    if timed is not None and (lacks or plan_reminders.is_rest(what)):
        task = await _task_answered(turn, replies)
        if task is not None and await plan_reminders.next_part(turn, "next") is None:
            asked = f"{task} {timed[1]}"
    return [*replies, *await reminder_requests.command(turn, Command("remind", asked), parsed)]


async def _task_answered(turn: Turn, replies: list[Reply]) -> str | None:
    """The task of the reminder that was answered, with its tank; None where none was."""
    ids = [each.facts["reminder"]["id"] for each in replies if "reminder" in each.facts]
    reminder = await turn.uow.reminders.get(ids[-1]) if ids else None
    if reminder is None:
        return None
    tank = turn.tank_by_id(reminder.tank_id)
    named = tank is None or fold(tank.name) in fold(reminder.what)
    return reminder.what if tank is None or named else f"{tank.name}: {reminder.what}"


async def _behind_said(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``first bit is in, remind me tomorrow for the second``: what is told of a plan, then that.

    ``forget the soda, remind me sunday to test``: what is let be asks nothing. ``i'll do it in 2
    days, remind me at 8`` is one of what somebody means to do.
    """
    split = asked_behind(turn.incoming.text) if turn.incoming.addressed else None
    if split is None or turn.typed is None:
        return None
    if calls.is_danger(turn, parsed) or calls.is_call(turn, parsed):
        return None
    before, asked = split
    told = parse(before, turn.context())
    if told.values or told.events or told.doubts or told.question is not None:
        return None
    request = parse_request(asked, turn.local_now, turn.chat.zone)
    meant = reminder_said.intended(before)
    timed = split_time(asked)
    if meant is not None and timed is not None:
        both = f"{meant}, {asked}"
        jobs = parse_several(both, turn.local_now, turn.chat.zone) if timed[0] else []
        alone = jobs[-1][0] if isinstance(jobs, list) and jobs else asked
        text = alone if timed[0] else both
        return await reminder_requests.command(turn, Command("remind", text), told)
    lets = plan_said(before) == "drop" or reminder_said.let_be(before)
    in_now = plan_said(before) in TOLD or ((of := telling(before)) and of.meaning in TOLD)
    parted = (other := read_followup(before, turn.context())) is not None and other.parts
    if not in_now and not parted and not (lets and isinstance(request, Request)):
        return None
    said = turn.incoming
    turn.incoming = replace(said, text=before)
    replies = await turn.typed(turn)
    turn.incoming, turn.asked = said, None
    if turn.unheard:
        turn.unheard, replies = False, []
        if not lets and not parted:
            return None
    return [*replies, *await reminder_requests.command(turn, Command("remind", asked), told)]


async def _beside_danger(turn: Turn) -> list[Reply] | None:
    """``the hose runs into the pond remind me 15min``: the danger is answered, the reminder set.

    None where the danger is only in what is to be reminded of.
    """
    split = asked_behind(turn.incoming.text)
    if split is None or turn.route is None:
        return None
    before, asked = split
    said = turn.incoming
    turn.incoming, told = replace(said, text=before), parse(before, turn.context())
    in_danger = calls.is_danger(turn, told) or calls.is_call(turn, told)
    replies = await turn.route(turn, told) if in_danger else []
    turn.incoming, turn.asked = said, None
    if not in_danger:
        return None
    request = parse_request(asked, turn.local_now, turn.chat.zone)
    nameless = isinstance(request, Problem) and request.reason == "no_what"
    done = Command("remind", f"{before} {asked}" if nameless else asked)
    return [*replies, *await reminder_requests.command(turn, done, told)]


async def _behind_reading(turn: Turn) -> list[Reply] | None:
    """``kh 4, wc 30% tomorrow``: what was read is kept, and the reminder set of the chore alone."""
    if turn.route is None or not turn.incoming.addressed:
        return None
    said = turn.incoming
    for before, behind in reminder_said.parted(said.text):
        told = parse(before, turn.context())
        if not told.values or told.events or told.doubts or told.question or told.command:
            continue
        asked = chore(behind, turn.local_now, turn.chat.zone, deed=True)
        if (
            asked is None
            or asked.how not in {"asked", "bare"}
            or parse(behind, turn.context()).values
        ):
            continue
        turn.incoming = replace(said, text=before)
        replies = await turn.route(turn, told)
        turn.incoming, turn.asked = said, None
        done = Command("remind", asked.text)
        return [*replies, *await reminder_requests.command(turn, done, told)]
    return None


def _may_ask(question: Question | None) -> bool:
    if question is None:
        return True
    told = (question.analyte, question.target, question.delta, question.volume_l)
    bare = question.kind == "change" and question.percent is None and question.litres is None
    return (bare or question.kind in UNNAMED) and all(each is None for each in told)


async def _offered(turn: Turn, told: Chore, parsed: Parsed) -> list[Reply] | None:
    """A routine that is told: nothing is logged of it, and a reminder is offered."""
    if isinstance(told.request, Problem):
        return None
    if told.how == "past":
        return [await turn.reply(talk_words.routine_past())]
    rule = describe(told.request.rule, turn.chat.zone)
    once = isinstance(told.request.rule, Once)
    remind = Choice(_(talk_words.REMIND), "remind", "", {"text": told.text})
    if told.how == "own":
        yes = replace(remind, meaning="yes")
        lines = talk_words.routine_told(told.request.what, rule, once=once)
        return [await turn.reply(lines, choices=[yes])]
    tank, event = turn.current_tank, parsed.events[0]
    if tank is None or event.kind != "water_change":
        return None
    share = "" if event.percent is None else f" {event.percent:g}%"
    text = f"changed{share}" if share else CHANGED
    held = {"text": text, "at": turn.now.isoformat(), "tank_id": tank.id}
    done = Choice(_(talk_words.DONE_NOW), "for_tank", "", held)
    return [await turn.reply(talk_words.done_or_planned(told.request.what), choices=[done, remind])]


async def press(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Set the reminder that was offered; pressing twice sets one."""
    await turn.uow.offers.take(offer.id, choice.verb)
    command = Command("remind", choice.arguments["text"])
    if choice.arguments.get("single"):
        return await reminder_requests.single(turn, command.arguments)
    return await reminder_requests.command(turn, command, Parsed("command", command=command))
