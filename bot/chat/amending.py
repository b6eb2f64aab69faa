"""What was just told, put right in other words: so much it was, half of it, another thing, none.

Only the entry that was answered last may be meant; what does not fit it is left to others.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from bot.chat import belongs, corrections, forgetting, open_told, own_plan, unheard, whose_water
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import Turn
from bot.chat.words import readings as words
from bot.store.log import Entry
from core.message import parse
from core.message.amounts import GRAMS
from core.message.fold import fold
from core.message.misput import misput
from core.message.model import Command, Event, Parsed
from core.message.plan_said import amounts_in, said_of_plan
from core.message.put_right import Right, put_right

NEAR: Final = 1e-6
_NEARLY: Final = re.compile(r"(?<!\w)(?:closer|nearer) to(?!\w)|(?<!\w)more like(?!\w)")


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Put right the entry that was answered last; None where nothing of it is told."""
    if not turn.incoming.addressed or parsed.values or turn.incoming.reply_to is not None:
        return None
    said = put_right(turn.incoming.text, [tank.name for tank in turn.tanks])
    of_plan = said_of_plan(turn.incoming.text)
    if said is None or (of_plan is not None and of_plan.also):
        return None  # hmm my wife also put it in: one more, not the same put right
    if said.forget is not None:
        return await forgetting.forget(turn, said)
    if said.water is not None or (said.tank is not None and (said.number or said.name)):
        return await whose_water.moved(turn, said)
    named = turn.tank_named(said.tank or "") if turn.incoming.reply_to is None else None
    if named is not None and (open_ := await open_told.instead(turn, named)) is not None:
        return open_
    latest = await turn.uow.offers.latest(turn.chat.id, 2)
    beside = len(latest) > 1 and latest[1].made_at == latest[0].made_at
    if said.undo and beside and latest[0].entry_id is None:
        latest = latest[1:]  # of one message a part was kept and a part asked about
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or latest[0].entry_id is None or turn.now - latest[0].made_at > patience:
        return None
    entry = await turn.uow.log.current(turn.chat.id, latest[0].entry_id)
    if entry is None or entry.is_empty or (said.deed and not entry.events):
        return None
    await turn.know_waters()
    if said.undo:
        return await _taken_back(turn, parsed, entry, said)
    if said.timed:
        when = parse(turn.incoming.text, turn.context()).at
        return None if when is None else await belongs.at_another_time(turn, entry, when)
    if said.tank is not None or said.other_tank:
        return await _elsewhere(turn, entry, said.tank)
    if said.number is not None and await unheard.since(turn, latest[0]):
        return [await turn.reply(words.of_what(said.number))]
    return await _put_right(turn, entry, said)


async def _elsewhere(turn: Turn, entry: Entry, tank: str | None) -> list[Reply] | None:
    """It was another tank; of a dose, which may be a plan's, `misput` knows more."""
    dosed = any(event.what.kind == "dose" for event in entry.events)
    if dosed and (tank is None or misput(turn.incoming.text, [each.name for each in turn.tanks])):
        return None
    if tank is None:
        return await belongs.to_meant(turn, entry, "other")
    return await belongs.move(turn, Command("move", tank), Parsed("none"), of=entry)


async def _put_right(turn: Turn, entry: Entry, said: Right) -> list[Reply] | None:
    if said.unit is not None:
        only = entry.readings[0].what if len(entry.readings) == 1 and not entry.events else None
        if only is None or only.value is None:
            return None
        return await corrections.with_number(turn, entry, f"{only.value:.10g} {said.unit}")
    dose = _only_dose(entry)
    if said.substance is not None:
        of_it = said.other is None or (dose is not None and dose.substance == said.other)
        return await corrections.with_substance(turn, entry.id, said.substance) if of_it else None
    if said.half:
        twice = not said.marked and own_plan.LOGGED.fullmatch(await own_plan.logged_as(turn, entry))
        return None if twice else await _half(turn, entry)  # the other half of it, maybe
    if said.number is None or not was(entry, said.wrong):
        return None
    weighed = dose is not None and (dose.grams is not None or not said.number[-1].isdigit())
    if weighed and (mass := _grams(said.number)) is not None:
        return await corrections.with_grams(turn, entry.id, mass)
    if dose is not None and dose.substance and _in_measure(said.number):
        return await corrections.as_dose(turn, entry, f"{said.number} {dose.substance}")
    nearly = not entry.events and _NEARLY.search(fold(turn.incoming.text))
    number = f"~{said.number}" if nearly else said.number
    return await corrections.with_number(turn, entry, number)


async def _half(turn: Turn, entry: Entry) -> list[Reply] | None:
    """Half of the only deed of an entry."""
    what = entry.events[0].what if len(entry.events) == 1 and not entry.readings else None
    if what is None:
        return None
    if what.kind == "dose" and what.grams is not None:
        return await corrections.with_grams(turn, entry.id, what.grams / 2.0)
    told = next((n for n in (what.percent, what.litres, what.millilitres, what.spoons) if n), None)
    return None if told is None else await corrections.with_number(turn, entry, f"{told / 2.0:.6g}")


def _only_dose(entry: Entry) -> Event | None:
    only = entry.events[0].what if len(entry.events) == 1 and not entry.readings else None
    return only if only is not None and only.kind == "dose" else None


def was(entry: Entry, wrong: float | None) -> bool:
    """Whether an entry tells the number that is said to be wrong, where one is."""
    if wrong is None:
        return True
    told = [reading.what.value for reading in entry.readings]
    for event in entry.events:
        what = event.what
        told += [what.percent, what.litres, what.grams, what.millilitres, what.spoons, what.count]
    return any(each is not None and abs(each - wrong) < NEAR for each in told)


def _grams(number: str) -> float | None:
    """The grams of a number as typed, without a unit or with one of mass. [g]"""
    bare = number.rstrip("abcdefghijklmnopqrstuvwxyzµ ").rstrip()
    unit = number[len(bare) :].strip()
    factor = 1.0 if not unit else GRAMS.get(unit)
    try:
        return None if factor is None else factor * float(bare.replace(",", "."))
    except ValueError:
        return None


def _in_measure(number: str) -> bool:
    """Whether a number as typed is in spoons, cups or millilitres: of a dose it is all of it."""
    amounts = amounts_in(number)
    return amounts.spoons is not None or amounts.millilitres is not None


async def _taken_back(turn: Turn, parsed: Parsed, entry: Entry, said: Right) -> list[Reply] | None:
    """Take back what was told last, or the last two things."""
    plain = parsed.command is not None and parsed.command.name == "undo"
    if turn.route is None or (said.undo == "last" and plain):
        return None
    undo = Parsed("command", command=Command("undo", ""))
    replies = await turn.route(turn, undo)
    if said.deed:  # nothing of it was done: not as it was told before it was put right either
        return await _all_of_it(turn, entry, replies)
    if said.undo == "both" and len(entry.events) + len(entry.readings) < 2:
        # two entries of one message: each needs an id of its own
        apart = f"{turn.incoming.update_id}:both"
        turn.incoming = replace(turn.incoming, update_id=apart)
        replies += await turn.route(turn, undo)
    return replies


async def _all_of_it(turn: Turn, entry: Entry, replies: list[Reply]) -> list[Reply]:
    """Take back what stands again of an entry that was put right."""
    for time in range(corrections.OF_LATE):
        standing = await turn.uow.log.current(turn.chat.id, entry.id)
        if standing is None or standing.is_empty or turn.route is None:
            break
        turn.incoming = replace(turn.incoming, update_id=f"{turn.incoming.update_id}:{time}")
        replies = await turn.route(turn, Parsed("command", command=Command("undo", "")))
    return replies
