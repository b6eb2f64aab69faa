"""``what did i do last week``, ``how much soda did i use``: the record of a tank told or summed."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from typing import Final

from bot.chat import off_record
from bot.chat.model import Reply
from bot.chat.past import KEPT_BACK, SHOWN, Told, facts_of, is_within, line_of, moment
from bot.chat.past import answer as told_before
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import questions as question_words
from bot.chat.words import record as words
from bot.store.log import Stored
from bot.store.tanks import StoredTank
from core.message.model import Event, Parsed, Value
from core.message.past import ANY, Past, asked

_AMOUNTS: Final = ("grams", "millilitres", "spoons")


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """What was done and measured, or the sum of what went in; None where neither is asked.

    It is asked of the record in so many words, whatever plan was spoken of last.
    """
    if not turn.incoming.addressed or parsed.values or parsed.command is not None:
        return None
    past = asked(turn.incoming.text, [tank.name for tank in turn.tanks])
    if past is not None and past.form == "what" and past.deed != ANY:
        return await _with_untold(turn, past, await told_before(turn, past))
    if past is None or (past.deed != ANY and past.form not in {"total", "moved"}):
        return None
    stored = turn.tank_named(past.tank) if past.tank else turn.current_tank
    if stored is None:
        return [await turn.reply(question_words.which_tank([tank.name for tank in turn.tanks]))]
    await turn.use_tank(stored)
    if past.form == "moved":
        return [await _moved(turn, stored, past)]
    told = await (_total if past.form == "total" else _everything)(turn, stored, past)
    return [told]


async def _with_untold(turn: Turn, past: Past, replies: list[Reply] | None) -> list[Reply] | None:
    """The doses on record, and what is told to be in that is on none: it is asked once more."""
    stored = turn.tank_named(past.tank) if past.tank else turn.current_tank
    if not replies or past.deed != "dose" or stored is None:
        return replies
    said = (await state_of(turn, stored, turn.now)).went_in
    return replies if said is None else [*replies, await off_record.again(turn, stored, said)]


async def _everything(turn: Turn, stored: StoredTank, past: Past) -> Reply:
    """All deeds and readings of a span, the newest first."""
    log = turn.uow.log
    events = [each for each in await log.events(stored.id) if each.at <= turn.now]
    values = await log.readings(stored.id, until=turn.now)
    every: list[Told] = sorted([*events, *values], key=lambda each: each.at, reverse=True)
    within = [each for each in every if is_within(turn, past, each.at)]
    lines = _lines(turn, within[:KEPT_BACK])
    if not lines:
        last = [words.last(line) for line in _lines(turn, every[:1])]
        return await turn.reply([words.nothing(stored.name), *last], facts={"tank": stored.name})
    facts: dict[str, object] = {"tank": stored.name}
    if found := [each for each in within if isinstance(each.what, Event)][:KEPT_BACK]:
        facts |= facts_of(turn, found)
    if read := [each for each in within if isinstance(each.what, Value)][:KEPT_BACK]:
        facts |= facts_of(turn, read)
    head = words.head(stored.name, len(lines))
    return await turn.reply([head, *lines[:SHOWN]], more=lines[SHOWN:], facts=facts)


def _lines(turn: Turn, told: Sequence[Told]) -> list[str]:
    """A line a deed, and a line for all that was measured at one moment."""
    return [line_of(turn, list(group)) for _key, group in groupby(told, moment)]


async def _moved(turn: Turn, stored: StoredTank, past: Past) -> Reply:
    """The two newest readings of a value in the span that is asked about, and which way it went."""
    analyte = past.analyte or ""
    read = await turn.uow.log.readings(stored.id, analytes=[analyte], until=turn.now)
    numbers = [
        (each, float(each.what.canonical))
        for each in read
        if isinstance(each.what.canonical, int | float)
    ]
    told = [each for each in numbers if is_within(turn, past, each[0].at)]
    if past.since:  # from the first of the span on, or from what stood when it began
        told = [*told[:1], *(told[-1:] if len(told) > 1 else numbers[len(told) :][:1])]
    told = told[:2]
    newest = [each for each, _number in told]
    facts: dict[str, object] = {"tank": stored.name, **facts_of(turn, newest)}
    lines = _lines(turn, newest)
    if len(told) < 2:
        return await turn.reply([words.no_two(stored.name, analyte), *lines], facts=facts)
    now, before = (number for _each, number in told)
    way = words.moved(stored.name, analyte, now - before, since=past.since is not None)
    return await turn.reply([way, *lines], facts=facts)


async def _total(turn: Turn, stored: StoredTank, past: Past) -> Reply:
    """Grams, millilitres and spoons of each substance that went in."""
    doses = await turn.uow.log.events(stored.id, kinds=("dose",))
    of_it = [
        each
        for each in doses
        if each.at <= turn.now and _is_of(past.substance, each.what.substance or "")
    ]
    within = [each for each in of_it if is_within(turn, past, each.at)]
    if not within:
        last = [words.last(line) for line in _lines(turn, of_it[:1])]
        lines = [words.none_in(stored.name, past.substance), *last]
        return await turn.reply(lines, facts={"tank": stored.name})
    sums = _sums(within)
    first = within[-1].at.astimezone(turn.chat.zone)
    lines = [
        words.total(stored.name, sums),
        words.counted(len(within), first, turn.local_now),
    ]
    if any("spoons" in of for of in sums.values()):
        lines.append(words.spoons_unweighed())
    totals = [{"substance": name, **of} for name, of in sums.items()]
    return await turn.reply(lines, facts={"tank": stored.name, "total": totals})


def _is_of(said: str | None, put_in: str) -> bool:
    """Whether a dose is of what is asked about; "soda" may be either of two."""
    return said in {None, put_in} or (said == "soda" and put_in.startswith("sodium"))


def _sums(doses: Sequence[Stored[Event]]) -> dict[str, dict[str, float]]:
    """Each substance with its amounts added up by measure; with none where nobody told any."""
    found: dict[str, dict[str, float]] = {}
    for each in doses:
        of = found.setdefault(each.what.substance or "", {})
        for measure in _AMOUNTS:
            amount = getattr(each.what, measure)
            if amount is not None:
                of[measure] = of.get(measure, 0.0) + amount
    return found
