"""``remind me to …``: what is asked for, with what of it is only said next or known from before."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any, Final

from bot.chat import (
    agenda,
    plan_reminders,
    plan_rounds,
    reminder_answers,
    reminder_ends,
    reminder_topic,
    reminders,
    task_deeds,
)
from bot.chat.model import Reply
from bot.chat.patience import PATIENCE
from bot.chat.reminding import said
from bot.chat.turn import Turn
from bot.chat.words import reminder_talk as talk_words
from bot.chat.words import reminders as words
from bot.store.offers import Choice
from core.message.fold import fold
from core.message.model import Command, Parsed
from core.message.past import asked as past_asked
from core.message.reminder_said import (
    at_same_time,
    is_no_task,
    joins,
    only_asks,
    without_request,
)
from core.message.reminder_talk import talk
from core.message.reminder_when import further_time, is_both
from core.schedule import (
    Problem,
    Request,
    bare_second,
    names_task,
    parse_moment,
    parse_request,
    parse_several,
    soon,
    split_time,
)

A_MINUTE: Final = timedelta(minutes=1)
"""Between two moments that are said alike."""

LABEL: Final = 40
"""What a button shows is no longer. [characters]"""

WAITS: Final = "reminder_waits"
"""Under which a question keeps the request of which a part is missing."""

LONGEST: Final = 60
"""A longer text is no plain answer to when, or of what. [characters]"""


async def command(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``/remind`` lists; ``remind me to …`` makes; ``remind me`` alone is of a plan's next test."""
    text = at_same_time(soon(command.arguments.strip()), await reminder_topic.same_time(turn))
    if (planned := await reminder_topic.planned_then(turn, text)) is not None:
        return await single(turn, planned)
    alone = only_asks(turn.incoming.text) and turn.incoming.addressed
    if alone and (not text or text in turn.incoming.text):
        return await _alone(turn)
    if not text:
        return await agenda.listed(turn)
    if (both := await on_both_days(turn, text)) is not None:
        return both
    if (several := await _several(turn, text)) is not None:
        return several
    return await single(turn, text)


async def single(turn: Turn, text: str) -> list[Reply]:
    """Make one reminder of a text, or ask for what is missing."""
    request = parse_request(text, turn.local_now, turn.chat.zone)
    if (known := await _known_from_before(turn, text, request)) is not None:
        return known
    if isinstance(request, Problem) and (each := await _each_hour(turn, request)) is not None:
        return each
    nameless = isinstance(request, Problem) and request.reason == "no_what"
    if nameless and (task := await reminder_topic.topic(turn)) is not None:
        timed = split_time(text)
        return await single(turn, f"{task} {text if timed is None else timed[1]}")
    if isinstance(request, Problem):
        return [await _asked_back(turn, text, request)]
    tank = reminders.tank_in(turn, request.what)
    refused = await task_deeds.too_much(turn, request.what, request.kind, tank)
    return refused or await reminders.make(turn, request, [text])


async def _alone(turn: Turn) -> list[Reply]:
    """The test after what went in of a plan; asked of what, where none is spoken of."""
    part = await plan_reminders.next_test(turn)
    if part is not None:
        return await _of_part(turn, part, None) or []
    task = await reminder_topic.topic(turn)
    if task is not None:
        return [await _asked_back(turn, task, Problem("no_time", "", 0, 0))]
    return [await _asked_back(turn, "", _NO_WHAT)]


async def on_both_days(turn: Turn, text: str) -> list[Reply] | None:
    """``both days`` behind a plan in two parts: the test after each; None where none is."""
    if not is_both(text):
        return None
    told = [await _of_part(turn, part, None) for part in await plan_reminders.both_tests(turn)]
    return [reply for replies in told for reply in replies or []] or None


async def of_next(turn: Turn) -> list[Reply] | None:
    """``remind me when the next one is due``: of a plan's next part; None where none is."""
    part = await plan_reminders.next_part(turn, "next")
    return None if part is None else await _of_part(turn, part, None)


async def _several(turn: Turn, text: str) -> list[Reply] | None:
    """A reminder for each of several jobs; what may be one or two is asked. None where it is one.

    Either all are set or none is.
    """
    jobs = parse_several(text, turn.local_now, turn.chat.zone)
    if isinstance(jobs, Problem):
        return [await _asked_back(turn, text, jobs)]
    if not jobs:
        return await _one_or_two(turn, text)
    for place, (words_alone, job) in enumerate(jobs[1:], start=1):
        if further_time(fold(words_alone)) is not None:  # change 20% fridays, and mondays too
            same = jobs[place - 1][1]
            counts = same.counts_from_done
            again = replace(job, what=same.what, kind=same.kind, counts_from_done=counts)
            jobs[place] = (f"{same.what} {words_alone}", again)
    return await _all_or_none(turn, jobs)


async def _all_or_none(turn: Turn, jobs: Sequence[tuple[str, Request]]) -> list[Reply]:
    """Set a reminder for each job, told with its words; the refusal of one is that of all."""
    for _said, job in jobs:
        tank = reminders.tank_in(turn, job.what)
        refused = await task_deeds.too_much(turn, job.what, job.kind, tank)
        if refused is not None:
            return refused
    replies: list[Reply] = []
    set_now: list[int] = []
    for words_alone, job in jobs:
        replies += await reminders.make(turn, job, [words_alone], beside=set_now)
        set_now.append(replies[-1].facts["reminder"]["id"])
    return replies


async def _each_hour(turn: Turn, problem: Problem) -> list[Reply] | None:
    """``every day at 8am and 8pm``: a reminder at each hour; None where they are not joined."""
    if problem.reason != "unclear" or len(problem.options) < 2 or not joins(problem.text):
        return None
    jobs = [parse_request(each, turn.local_now, turn.chat.zone) for each in problem.options]
    asked = [job for job in jobs if isinstance(job, Request)]
    if len(asked) != len(jobs) or len({job.what for job in asked}) > 1:
        return None
    return await _all_or_none(turn, list(zip(problem.options, asked, strict=True)))


async def _one_or_two(turn: Turn, text: str) -> list[Reply] | None:
    """Ask whether a number behind `and` is an hour; None where there is none."""
    found = bare_second(text)
    jobs = [] if found is None else parse_several(found[0], turn.local_now, turn.chat.zone)
    if found is None or isinstance(jobs, Problem) or len(jobs) < 2:
        return None
    zone = turn.chat.zone
    told = [(job.what, job.first.astimezone(zone)) for _said, job in jobs]
    lines, two, one = talk_words.one_or_two(told, turn.local_now)
    choices = [
        Choice(two[:40], "remind", "", {"text": found[0]}),
        Choice(one[:40], "remind", "", {"text": text, "single": True}),
    ]
    return [await turn.reply(lines, choices=choices)]


async def completed(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``friday`` or ``the filter``, right after it was asked when, or of what."""
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    waits = latest[0].context.get(WAITS) if latest else None
    if waits is None or turn.now - latest[0].made_at > PATIENCE or not turn.incoming.addressed:
        return None
    text = without_request(turn.incoming.text.strip(" .!"))
    text = at_same_time(text, await reminder_topic.same_time(turn))
    if past_asked(turn.incoming.text, [tank.name for tank in turn.tanks]) is not None:
        return None
    asks = parsed.command is not None and parsed.command.name != "remind"
    if asks or parsed.values or len(text) > LONGEST or "?" in text or "\n" in text:
        return None
    timed = split_time(text)
    if waits["lacks"] == "no_time":
        when = _when_alone(text) if timed is None or timed[0] else timed[1]
        whole = f"{waits['text']} {when}" if when else None
    elif waits["lacks"] == "ambiguous":
        whole = _other_time(turn, waits, _when_alone(text) if timed is None else timed[1])
        whole = whole if timed is None or not _more_than_time(text, timed[0]) else None
    elif timed is None:
        whole = f"{text} {waits['text']}".strip() if names_task(text) else None
    else:
        whole = text if timed[0].strip(" ,.!") and not (waits["text"] or is_no_task(text)) else None
    if whole is None:
        return None
    request = parse_request(whole, turn.local_now, turn.chat.zone)
    if isinstance(request, Problem) and request.reason == "no_what":
        return None
    if isinstance(request, Problem) and request.reason == "no_time" and waits["text"]:
        return None
    return await command(turn, Command("remind", whole), parsed)


def _other_time(turn: Turn, waits: Mapping[str, Any], when: str) -> str | None:
    """The request whose hour may be two, with another hour in its place; None where none is."""
    asked, (start, end) = waits["text"], waits["at"]
    whole = f"{asked[:start]}{when}{asked[end:]}"
    read = parse_request(whole, turn.local_now, turn.chat.zone)
    hour = any(letter.isdigit() for letter in when)
    return whole if hour and isinstance(read, Request) else None


def _more_than_time(text: str, beside: str) -> bool:
    """Whether an answer says anything beside its time but that it is one: `no, at 7`."""
    return bool(beside.strip(" ,.!")) and not _when_alone(text)


def _when_alone(text: str) -> str:
    """The words of time of ``make it 19:00``; "" where anything else is said."""
    told = talk(text)
    alone = told is not None and told.verb in {"move", "when"} and not (told.target or told.noun)
    return told.when if told is not None and alone else ""


async def _asked_back(turn: Turn, text: str, problem: Problem) -> Reply:
    """What is missing or unclear, with a button for each thing that may be meant."""
    lines = words.problem(problem.reason, problem.text, problem.suggestion, turn.example_tank)
    held = {WAITS: {"text": text, "lacks": problem.reason, "at": [problem.start, problem.end]}}
    waits = problem.reason in {"no_time", "no_what"}
    options = problem.options if problem.reason == "ambiguous" else ()
    spoken = text[problem.start : problem.end] == problem.text
    kept = waits or bool(options and spoken)
    choices = [Choice(_label(each), "remind", "", {"text": each}) for each in options]
    if problem.reason == "ends":
        choices = reminder_ends.choices(turn, problem)
    return await turn.reply(
        lines,
        choices=choices,
        context=held if kept else None,
        expects="followup" if waits else None,
    )


def _label(option: str) -> str:
    """What a button shows of a text: its words of time, where the whole is too long."""
    timed = split_time(option) if len(option) > LABEL else None
    return (option if timed is None else timed[1])[:LABEL]


async def _known_from_before(
    turn: Turn, text: str, request: Request | Problem
) -> list[Reply] | None:
    """A request without a task of its own: of what just fell due, or of a plan's next part."""
    if isinstance(request, Problem) and request.reason == "unclear":
        return await _numbered_part(turn, text)
    if isinstance(request, Problem) and request.reason not in {"no_what", "no_time"}:
        return None
    lacks_time = isinstance(request, Problem) and request.reason == "no_time"
    what = text if lacks_time else "" if isinstance(request, Problem) else request.what
    if not plan_reminders.is_rest(what):
        return None
    timed = split_time(text)
    found = None if timed is None else parse_moment(timed[1], turn.local_now, turn.chat.zone)
    moment = found if isinstance(found, datetime) else None
    if moment is None and not lacks_time:
        named = what and not plan_reminders.is_part(what)
        return None if timed is None or named else await plan_rounds.answer(turn, [timed[1]])
    waiting = await turn.uow.reminders.of_chat(turn.chat.id, only_open=True)
    if moment is not None and len(waiting) == 1 and plan_reminders.is_that(what):
        return await reminder_answers.put_off(turn, waiting[0], moment)
    part = await plan_reminders.next_part(turn, what)
    if part is None:
        whole = isinstance(request, Request) and request.kind == "test"
        if lacks_time or not what or whole or plan_reminders.is_deed(what):
            return None
        that = plan_reminders.is_that(what)
        task = await reminder_topic.topic(turn, again=True) if that else None
        if task is not None and timed is not None:
            return await single(turn, f"{task} {timed[1]}")
        return [await _asked_back(turn, timed[1] if timed else text, _NO_WHAT)]
    return await _of_part(turn, part, moment)


async def _numbered_part(turn: Turn, text: str) -> list[Reply] | None:
    """``morgen an die zweite``: a part behind a time, whose number is no day."""
    words_of = text.split()
    for size in range(len(words_of) - 1, 0, -1):
        when, what = " ".join(words_of[:size]), " ".join(words_of[size:])
        moment = parse_moment(when, turn.local_now, turn.chat.zone)
        if isinstance(moment, datetime) and plan_reminders.is_rest(what):
            part = await plan_reminders.next_part(turn, what)
            if part is None:
                return [await _asked_back(turn, when, _NO_WHAT)]
            return await _of_part(turn, part, moment)
    return None


_NO_WHAT: Final = Problem("no_what", "", 0, 0)


async def _of_part(
    turn: Turn, part: plan_reminders.Part, moment: datetime | None
) -> list[Reply] | None:
    """A reminder of a plan's next part, no sooner than it may go in."""
    at = moment or part.not_before
    if at is None:
        return None
    sooner = part.not_before is not None and at < part.not_before
    told = sooner and part.not_before is not None and part.not_before - at >= A_MINUTE
    at = part.not_before if sooner and part.not_before is not None else at
    made = await reminders.make_once(turn, part.what, part.kind, at, part.tank)
    lines = words.made_once(said(turn, made), at.astimezone(turn.chat.zone), turn.local_now)
    if told:
        lines.append(talk_words.not_sooner())
    facts = {
        "reminder": {
            "id": made.id,
            "tank": part.tank.name,
            "what": made.what,
            "kind": made.kind,
            "rule": made.rule,
            "due": at.isoformat(),
        }
    }
    held = {reminders.MADE: {"id": made.id}}
    return [await turn.reply(lines, facts=facts, context=held, expects="followup")]
