"""``so 3 dead in all``, ``thats 3 now`` after a loss: the sum of the dead, not as many again.

What is surely new is the difference to those on record, so that alone is added. Where a number may
be a sum or new ones, and the record does not tell which, it is asked and nothing is stored.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Final

from bot.chat.asked_anew import Again
from bot.chat.model import Line, Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import Turn
from bot.chat.words import dead_total as words
from bot.store.log import Entry, Stored
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.advice.livestock import lookup
from core.advice.stock import meant, names_no_kind, tally
from core.message.asking_words import asks
from core.message.dead_total import DeadTotal, more_of_them, read
from core.message.fold import fold
from core.message.model import Event, Parsed

SERIES: Final = timedelta(days=7)
"""Losses with no longer pause between them are counted together; our judgement."""

OF_NOW: Final = timedelta(days=1)
"""So far back `now` counts; our judgement."""


async def answer(turn: Turn, parsed: Parsed, again: Again) -> list[Reply] | None:
    """Put on record what a sum of dead adds to the losses before; None where none is told."""
    incoming = turn.incoming
    if parsed.command is not None or parsed.values or incoming.reply_to is not None:
        return None
    if (lost_more := await _more(turn, parsed)) is not None:
        return await again(turn, replace(parsed, intent="event", events=(lost_more,), doubts=()))
    told = read(incoming.text, parsed)
    if told is None or asks(incoming.text) or not (told.dead or incoming.addressed):
        return None
    lost = next((event for event in parsed.events if event.kind == "lost"), None)
    stored = turn.tank_named((lost and lost.tank) or parsed.tank or "") or turn.current_tank
    if stored is None or (not told.dead and not await _lost_last(turn)):
        return None
    fewest, before = await _before(turn, stored, told)
    if before == 0 or (told.many == 1 < fewest and not told.sure):
        if not told.dead:
            return None
        return await again(turn, _counting(parsed, lost, told, told.many))
    if fewest < before:
        return [await _ask(turn, stored, told, [before, fewest])]
    if told.many > before and (told.dead or not await _are_left(turn, stored, told)):
        new = told.many - before
        replies = await again(turn, _counting(parsed, lost, told, new))
        return [_told_sum(reply, told, before) for reply in replies]
    if told.sure and told.many <= before and told.dead:
        facts = {"tank": stored.name, "dead": {"total": before}}
        return [await turn.reply(words.on_record(stored.name, before), facts=facts)]
    return [await _ask(turn, stored, told, [before, 0])]


async def _more(turn: Turn, parsed: Parsed) -> Event | None:
    """``2 more this morning`` right behind a loss: so many more of them; None of other talk."""
    if parsed.events or parsed.question is not None or asks(turn.incoming.text):
        return None
    many = more_of_them(turn.incoming.text)
    if many is None or not await _lost_last(turn):
        return None
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    entry = await turn.uow.log.current(turn.chat.id, latest[0].entry_id or 0)
    kinds = {each.what.species for each in entry.events} if entry is not None else set()
    text = turn.incoming.text
    return Event(
        "lost", count=many, species=kinds.pop() if len(kinds) == 1 else None, end=len(text)
    )


def _counting(parsed: Parsed, lost: Event | None, told: DeadTotal, count: int) -> Parsed:
    """A message with a loss of so many in the place of the sum."""
    new = replace(lost or Event("lost"), count=count, species=told.species)
    kept = tuple(event for event in parsed.events if event is not lost)
    doubts = parsed.doubts if lost is not None else ()
    return replace(parsed, intent="event", events=(new, *kept), doubts=doubts)


def _told_sum(reply: Reply, told: DeadTotal, before: int) -> Reply:
    """The answer to a loss with how many are dead in all, behind what was stored."""
    if not any(event["kind"] == "lost" for event in reply.facts.get("events", ())):
        return reply
    said = Line(words.in_all(told.many, before, told.species))
    facts = {**reply.facts, "dead": {"total": told.many, "before": before}}
    return replace(reply, lines=(*reply.lines[:1], said, *reply.lines[1:]), facts=facts)


async def _before(turn: Turn, stored: StoredTank, told: DeadTotal) -> tuple[int, int]:
    """How many of the dead on record a sum counts, at least and at most."""
    losses = await turn.uow.log.events(stored.id, kinds=("lost",))
    since = _since(turn, told, losses)
    of_it = [each for each in losses if since <= each.at <= turn.now]
    if names_no_kind(told.species):
        return sum(map(_many, of_it)), sum(map(_many, of_it))
    named = [each for each in of_it if not names_no_kind(each.what.species)]
    nameless = sum(map(_many, of_it)) - sum(map(_many, named))
    same = sum(_many(each) for each in named if _is_same(each.what.species, told.species))
    kinds = tally(await turn.uow.log.stock(stored.id, until=turn.now))
    # of several kinds nobody told which these were
    return same if len(kinds) > 1 else same + nameless, same + nameless


def _since(turn: Turn, told: DeadTotal, losses: Sequence[Stored[Event]]) -> datetime:
    """From when on the dead are counted: the day, a day back, or since the last long pause."""
    if told.today:
        return turn.local_now.replace(hour=0, minute=0, second=0, microsecond=0)
    if not told.sure:
        return turn.now - OF_NOW
    first = turn.now
    for each in sorted(losses, key=lambda loss: loss.at, reverse=True):
        if each.at <= turn.now and first - each.at <= SERIES:
            first = each.at
    return first


def _many(loss: Stored[Event]) -> int:
    return loss.what.count or 1


def _is_same(one: str | None, other: str | None) -> bool:
    """Whether two names, as told, are of one kind."""
    first, second = lookup(one or ""), lookup(other or "")
    if first.species is not None and first.species == second.species:
        return True
    shared = set(first.candidates) & set(second.candidates)
    return bool(shared) or fold(one or "").rstrip("s") == fold(other or "").rstrip("s")


async def _lost_last(turn: Turn) -> bool:
    """Whether what was answered last is a loss and nothing else."""
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or latest[0].entry_id is None or turn.now - latest[0].made_at > patience:
        return False
    entry = await turn.uow.log.current(turn.chat.id, latest[0].entry_id)
    return entry is not None and _is_loss(entry)


def _is_loss(entry: Entry) -> bool:
    kinds = {event.what.kind for event in entry.events}
    return kinds == {"lost"} and not entry.readings


async def _are_left(turn: Turn, stored: StoredTank, told: DeadTotal) -> bool:
    """Whether a number of which nobody said that it is of the dead is that of those that live."""
    held = tally(await turn.uow.log.stock(stored.id, until=turn.now))
    name = meant(held, told.species)
    return told.many in {sum(held.values()), held.get(name or "", 0)}


async def _ask(turn: Turn, stored: StoredTank, told: DeadTotal, counted: list[int]) -> Reply:
    """Ask how many are new, if so many are counted already; nothing is stored."""
    held = {"at": turn.now.isoformat(), "tank_id": stored.id}
    choices = []
    for count in dict.fromkeys(told.many - before for before in counted):
        if count > 0:
            text = f"lost {count} {told.species}" if told.species else f"{count} died"
            choices.append(Choice(words.new_dead(count), "for_tank", "", {**held, "text": text}))
    choices.append(Choice(words.none_new(), "leave_out", "no"))
    facts = {"tank": stored.name, "dead": {"before": max(counted)}}
    return await turn.reply(words.which(stored.name, max(counted)), choices=choices, facts=facts)


def recounted(entry: Entry, text: str, parsed: Parsed, before: Parsed) -> Parsed:
    """A loss told anew with another number: of a sum only what it adds to those before it.

    Parameters
    ----------
    entry : Entry
        What stands on record, typed as `before` is read.
    text : str
        The same with the new number, read as `parsed`.
    """
    if len(entry.events) != 1 or entry.events[0].what.kind != "lost" or entry.readings:
        return parsed
    first, second = read(entry.text, before), read(text, parsed)
    if first is None or second is None:
        return parsed
    on_record = first.many - _many(entry.events[0])
    new = second.many - on_record
    lost = next((event for event in parsed.events if event.kind == "lost"), None)
    return _counting(parsed, lost, second, new) if new > 0 else parsed
