"""A dose that is in another tank than it was planned for: on record and judged where it is.

It counts where it went, and nowhere else: a part that was put on record for the tank of its plan
is moved, and the plan stands as it was.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC
from typing import Any, Final

from bot.chat import belongs, corrections, doses, off_record, own_plan, plan_parts
from bot.chat.given_plan import LOOKED_AT, Given, given
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import Turn
from bot.chat.words import misput as words
from bot.chat.words import plan_talk as plan_words
from bot.store.log import Entry
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.message.misput import SIZED, Misput, misput
from core.message.model import Command, Parsed, Question
from core.message.plan_said import Amounts

LOOKED_BACK: Final = 6
"""So many of the newest entries may have the dose that went elsewhere."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Put on record where a dose went; None where nothing of that is told, or it is asked."""
    said = misput(turn.incoming.text, [tank.name for tank in turn.tanks if tank.tank.named])
    if said is None or parsed.values or not _is_told(parsed.question):
        return None
    own = said.substance is not None and said.grams is not None
    if own and not said.tells_both:
        return None  # an event with its tank, as any
    of, into = _tank(turn, said.of), _tank(turn, said.into)
    entry = None if own or said.later else await _on_record(turn, said, of, into)
    plan = None if own or said.was else await _plan(turn, of)
    if said.was and entry is None:
        return None
    of = of or _planned_for(turn, plan, entry)
    if into is None and (said.wrong or said.into == f"{SIZED}other"):
        into = _other(turn, of)
    if of is into and of is not None:
        return await _where_it_belongs(turn, said, plan)
    if entry is not None and (plan is None or await _is_of(turn, entry, plan)):
        return await _moved(turn, entry, plan, into, said.grams)
    held = _own(said) if own else None if plan is None else _held(plan, said)
    if held is None:
        where = into or turn.current_tank
        told = said.tells_both or (said.regretted and into is not None)
        return [await _how_much(turn, where)] if told and where else None
    if into is None:
        return [await _which(turn, of, held)]
    count = 1 if plan is None else _count(plan, said)
    replies = await doses.log_parts(
        turn, turn.incoming.update_id, {**held, "tank_id": into.id}, count
    )
    await turn.use_tank(into)
    left = await _not_counted(turn, of, planned=plan is not None)
    return [*replies, *left]


async def _how_much(turn: Turn, where: StoredTank) -> Reply:
    """Ask how much of what is in a tank: until it is told nothing more goes into that one."""
    await turn.use_tank(where)
    held = await off_record.held_of(turn, where.id, " ".join(turn.incoming.text.split()))
    lines = words.how_much(where.name)
    return await turn.reply(
        lines,
        choices=[off_record.none_of_it(where.id)],
        facts={"tank": where.name},
        context={off_record.NAMELESS: held, off_record.LINES: lines},
        expects="followup",
    )


async def _not_counted(turn: Turn, of: StoredTank | None, *, planned: bool) -> list[Reply]:
    return [] if of is None else [await turn.reply(words.not_counted(of.name, planned=planned))]


def _is_told(question: Question | None) -> bool:
    """Whether nothing is asked; `the dose went into quarry` has the word of a question."""
    if question is None:
        return True
    wished = (question.analyte, question.target, question.delta, question.volume_l)
    return question.kind == "dose" and all(each is None for each in wished)


def _tank(turn: Turn, said: str | None) -> StoredTank | None:
    """A tank by its name, or the largest or smallest where it is told so."""
    if said is None or not said.startswith(SIZED):
        return None if said is None else turn.tank_named(said)
    wanted = {f"{SIZED}big": max, f"{SIZED}small": min}.get(said)
    sizes = [tank.tank.volume_l or 0.0 for tank in turn.tanks]
    if wanted is None or not all(sizes):
        return None
    fitting = [tank for tank in turn.tanks if tank.tank.volume_l == wanted(sizes)]
    return fitting[0] if len(fitting) == 1 else None


def _other(turn: Turn, of: StoredTank | None) -> StoredTank | None:
    """The one tank beside that of the dose; None where there are more."""
    others = [tank for tank in turn.tanks if of is not None and tank.id != of.id]
    return others[0] if len(others) == 1 else None


async def _plan(turn: Turn, of: StoredTank | None) -> Given | None:
    """The newest plan while it is spoken of, of a tank where one is told."""
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        plan = given(offer)
        if plan is None or (of is not None and plan.tank_id != of.id):
            continue
        patience = GROUP_PATIENCE if turn.incoming.group else plan.runs
        return plan if turn.now - offer.made_at <= patience else None
    return None


async def _on_record(
    turn: Turn, said: Misput, of: StoredTank | None, into: StoredTank | None
) -> Entry | None:
    """The newest dose of late, of a tank where one is told, that may be the one that is meant."""
    for entry in await turn.uow.log.newest(turn.chat.id, LOOKED_BACK):
        tanks = {event.tank_id for event in entry.events if event.what.kind == "dose"}
        if entry.readings or len(tanks) != 1 or turn.now - entry.at > PATIENCE:
            continue
        there = of is None or tanks == {of.id}
        return entry if there and (said.was or into is None or tanks != {into.id}) else None
    return None


async def _is_of(turn: Turn, entry: Entry, plan: Given) -> bool:
    """Whether an entry has parts of a plan, or of its own words what was given after it."""
    made_at = plan.offer.made_at
    return entry.at >= made_at or await own_plan.is_part(turn, entry, plan.offer.id)


def _planned_for(turn: Turn, plan: Given | None, entry: Entry | None) -> StoredTank | None:
    if plan is not None:
        return turn.tank_by_id(plan.tank_id)
    return None if entry is None else turn.tank_by_id(entry.events[0].tank_id)


async def _where_it_belongs(turn: Turn, said: Misput, plan: Given | None) -> list[Reply] | None:
    """`i put it in fern`, of Fern's own plan: parts of it."""
    if plan is None:
        return None
    many = {"all": "gave_all", "rest": "gave_all", "two": "gave_two", "double": "gave_double"}
    telling: Any = many.get(said.many or "", "gave_one")
    return await plan_parts.answer(turn, telling, plan, Amounts(grams=said.grams))


async def _moved(
    turn: Turn, entry: Entry, plan: Given | None, into: StoredTank | None, grams: float | None
) -> list[Reply]:
    """What is on record for one tank goes to the other, with its grams where they are told. [g]"""
    was = turn.tank_by_id(entry.events[0].tank_id)
    if into is None:
        named = [tank for tank in turn.tanks if tank is not was]
        return [await turn.reply(words.which([tank.name for tank in named]))]
    replies = await belongs.move(turn, Command("move", into.name), Parsed("none"), of=entry)
    if was is into:
        return replies
    if grams is not None and grams != entry.events[0].what.grams:
        newest = await turn.uow.log.latest(turn.chat.id)
        # two entries of one message: each needs an id of its own
        apart = f"{turn.incoming.update_id}:grams"
        turn.incoming = replace(turn.incoming, update_id=apart)
        right = newest and await corrections.with_grams(turn, newest.id, grams)
        replies = right or replies
    planned = plan is not None and was is not None and plan.tank_id == was.id
    return [*replies, *await _not_counted(turn, was, planned=planned)]


def _own(said: Misput) -> dict[str, Any]:
    """So much of a substance as is told."""
    return {"substance": said.substance, "grams": said.grams}


def _held(plan: Given, said: Misput) -> dict[str, Any] | None:
    """A part of a plan, or so much of its only salt as is told; None of several."""
    if said.grams is None:
        return plan.held
    if len(plan.salts) != 1:
        return None
    name = plan.salts[0][0]
    return {"substance": name, "grams": said.grams}


def _count(plan: Given, said: Misput) -> int:
    """How many parts are told to be in; so many grams are one."""
    if said.grams is not None:
        return 1
    return {"all": plan.count, "rest": plan.count, "two": 2, "double": 2}.get(said.many or "", 1)


def _told(held: dict[str, Any]) -> str:
    """What went in as a keeper would type it."""
    if "millilitres" in held:
        return f"dosed {held['millilitres']:g} ml {held['substance']}"
    return "dosed " + ", ".join(f"{grams:g} g {name}" for name, grams in doses.salts_of(held))


def _shown(held: dict[str, Any]) -> str:
    if "millilitres" in held:
        return plan_words.of_product(held["millilitres"], held["substance"])
    return plan_words.salts(doses.salts_of(held))


async def _which(turn: Turn, of: StoredTank | None, held: dict[str, Any]) -> Reply:
    """Ask which tank got a dose: by a button, or by its name alone."""
    others: Sequence[StoredTank] = [t for t in turn.tanks if of is None or t.id != of.id]
    told, at = _told(held), turn.now.astimezone(UTC).isoformat()
    choices = [
        Choice(tank.name, "for_tank", "", {"text": told, "at": at, "tank_id": tank.id})
        for tank in others
    ]
    return await turn.reply(
        words.which_got(_shown(held), [tank.name for tank in others]),
        choices=choices,
        expects="tank_for_text",
        context={"text": told, "at": at},
    )
