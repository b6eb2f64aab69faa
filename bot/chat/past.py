"""``when did i last change the water``, ``how was kh last week``: from the tank's own record."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, time, timedelta
from itertools import groupby
from typing import Final

from bot.chat import reckoned
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import past as words
from bot.chat.words import questions as question_words
from bot.chat.words import reckoned as reckoned_words
from bot.store.log import Stored
from bot.store.tanks import StoredTank
from core.advice.salts import HIGHEST
from core.advice.scheduling import per_gram
from core.message import parse
from core.message.model import Event, Parsed, Value
from core.message.past import ANY, HOURS, MEASURED, Past, days_of
from core.message.past import behind as asked_behind
from core.message.wire import to_json
from core.schedule import moment_at
from core.water.substances import SUBSTANCES

SHOWN: Final = 5
KEPT_BACK: Final = 40
"""Of what is on record on one screen, and looked at in all."""

MOVING: Final = ("water_change", "top_up", "dose")
"""Events that may leave a value behind."""

Told = Stored[Event] | Stored[Value]


async def answer(turn: Turn, past: Past) -> list[Reply] | None:
    """What is on record of the deed or the value that is asked about.

    None where the value that stands is asked for, not expressly now, and was never measured, and
    of what `bot.chat.record` lists or sums up.
    """
    if past.form in {"total", "moved"} or past.deed == ANY:
        return None
    stored = turn.tank_named(past.tank) if past.tank else turn.current_tank
    if past.form == "now" and (stored is None or past.span is None):
        known = stored and await turn.uow.log.last_of_each(
            stored.id, [past.analyte or ""], until=turn.now
        )
        if not known:
            return None
    if stored is None:
        return [await turn.reply(question_words.which_tank([tank.name for tank in turn.tanks]))]
    await turn.use_tank(stored)
    if past.form == "now":
        return [await _standing(turn, stored, past.analyte or "")]
    on_record = await _on_record(turn, stored, past)
    told = [each for each in on_record if is_within(turn, past, each.at)]
    shown = told or on_record[:1]
    lines = [line_of(turn, list(group)) for _key, group in groupby(shown, moment)]
    facts = {"tank": stored.name, **facts_of(turn, shown[:SHOWN])}
    first = _first(turn, stored, past, told, lines)
    rest = lines[1:] if told else []
    return [await turn.reply([*first, *rest[:SHOWN]], more=rest[SHOWN:], facts=facts)]


def _moves(event: Event, analyte: str) -> bool:
    """Whether an event may leave a value behind; a dose of what is known to hold none does not."""
    known = event.kind == "dose" and event.substance in SUBSTANCES and analyte in HIGHEST
    return not known or per_gram(str(event.substance), analyte) != 0.0


async def behind(turn: Turn) -> list[Reply] | None:
    """``changed 30% whats no3 now``: keep what is told, then tell the value that stands.

    None where nothing is told first, or not all of it is understood.
    """
    found = asked_behind(turn.incoming.text, [tank.name for tank in turn.tanks])
    if found is None or turn.route is None:
        return None
    told, asked = found
    parsed = parse(told, turn.context())
    if not (parsed.values or parsed.events) or parsed.doubts or parsed.question:
        return None
    turn.incoming = replace(turn.incoming, text=told)
    replies = await turn.route(turn, parsed)
    return replies + (await answer(turn, asked) or [])


async def _standing(turn: Turn, stored: StoredTank, analyte: str) -> Reply:
    """The last value, how old it is, and what was done to the water since.

    What was done at the moment of a reading counts as done after it, as in `core.advice.since`.
    """
    rows = await turn.uow.log.last_of_each(stored.id, [analyte], until=turn.now)
    if not rows:
        return await turn.reply(words.unmeasured(stored.name, analyte), facts={"tank": stored.name})
    last = rows[0]
    moved = await turn.uow.log.events(stored.id, kinds=MOVING, since=last.at)
    since = [each for each in moved if each.at <= turn.now and _moves(each.what, analyte)]
    lines = [words.last(stored.name, line_of(turn, [last]), turn.now - last.at)]
    value: float | None = None
    if since:
        lines += words.before(analyte, [line_of(turn, [each]) for each in since[:SHOWN]])
        if (value := await _should_be(turn, stored, analyte)) is not None:
            lines.append(reckoned_words.should_be(analyte, value))
    facts = {"tank": stored.name, **facts_of(turn, [last])}
    if since:
        facts |= {"events": facts_of(turn, since[:SHOWN])["events"]}
        facts |= {} if value is None else {"reckoned": {analyte: value}}
    return await turn.reply(lines, facts=facts)


async def _should_be(turn: Turn, stored: StoredTank, analyte: str) -> float | None:
    """What an analyte should be by what was logged since; None where it cannot be reckoned."""
    found = await reckoned.by_now(turn, stored, await state_of(turn, stored, turn.now), analyte)
    return None if found is None else found.value


def _first(
    turn: Turn, stored: StoredTank, past: Past, told: Sequence[Told], lines: Sequence[str]
) -> list[str]:
    """The line that answers."""
    kind = past.deed or MEASURED
    if told and past.form == "whether":
        return [words.yes(stored.name, lines[0])]
    if told:
        return [words.last(stored.name, lines[0], turn.now - told[0].at)]
    if past.span is None:
        return [words.never(stored.name, kind)]
    nothing = words.no(stored.name, kind)
    if past.deed is None and past.analyte is not None:
        nothing = words.no_value(stored.name, past.analyte)
    return [nothing, *map(words.newest, lines)]


async def _on_record(turn: Turn, stored: StoredTank, past: Past) -> Sequence[Told]:
    """All of the kind up to now, newest first."""
    log = turn.uow.log
    if past.deed in {None, MEASURED}:
        analytes = (past.analyte,) if past.analyte else ()
        return await log.readings(stored.id, analytes=analytes, limit=KEPT_BACK)
    events = await log.events(stored.id, kinds=(str(past.deed),))
    of_it = (None, past.substance)
    return [each for each in events if past.substance is None or each.what.substance in of_it]


def is_within(turn: Turn, past: Past, at: datetime) -> bool:
    """Whether a moment is in the span that is asked about, by the chat's clock."""
    if past.span is None:
        return True
    first, last = days_of(past.span, turn.local_now.date())
    opens, closes = HOURS.get(past.span, (0, 0))
    begins = moment_at(first, time(opens), turn.chat.zone)
    ends = moment_at(last if closes else last + timedelta(days=1), time(closes), turn.chat.zone)
    if past.since:
        return begins <= at
    return begins <= at < ends


def moment(told: Told) -> object:
    """What stands in one line: an event, or all readings of a moment."""
    return id(told) if isinstance(told.what, Event) else told.at


def line_of(turn: Turn, told: Sequence[Told]) -> str:
    """What stands at one moment."""
    at = told[0].at.astimezone(turn.chat.zone)
    events = [each.what for each in told if isinstance(each.what, Event)]
    if events:
        return words.deed(events[0], at, turn.local_now)
    values = [each.what for each in told if isinstance(each.what, Value)]
    return words.measurement(values, at, turn.local_now)


def facts_of(turn: Turn, told: Sequence[Told]) -> dict[str, object]:
    """What is shown, as a message writes it, each with its moment."""
    events = tuple(each.what for each in told if isinstance(each.what, Event))
    values = tuple(each.what for each in told if isinstance(each.what, Value))
    written = to_json(Parsed("reading", values=values, events=events))
    name = "events" if events else "values"
    return {
        name: [
            {**each, "at": stored.at.astimezone(turn.chat.zone).isoformat()}
            for each, stored in zip(written[name], told, strict=True)
        ]
    }
