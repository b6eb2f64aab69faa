"""Animals that came or went: whom a name means, and numbers that are asked about first."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, replace
from datetime import UTC
from typing import Any

from bot.chat.answering import answer_for
from bot.chat.model import Reply
from bot.chat.told import Told, entry_of, summary
from bot.chat.turn import Turn
from bot.chat.words import animals as words
from bot.chat.words import general
from bot.chat.words.text import _
from bot.store.log import Stored
from bot.store.offers import Choice, Offer
from core.advice.stock import is_crowd
from core.message.model import Event


def part_crowds(told: Sequence[Told]) -> tuple[list[Told], list[Told]]:
    """Part what is stored at once from numbers of animals that no tank holds."""
    kept, crowds = [], []
    for each in told:
        many = tuple(e for e in each.events if _is_crowd(each, e.what))
        rest = replace(each, events=tuple(e for e in each.events if e not in many))
        if many:
            crowds.append(replace(each, readings=(), events=many))
        if rest.readings or rest.events:
            kept.append(rest)
    return kept, crowds


def _is_crowd(told: Told, event: Event) -> bool:
    return event.kind == "added" and is_crowd(event.count or 1, told.tank.tank.volume_l)


async def ask_crowd(turn: Turn, told: Told) -> Reply:
    """Ask whether so many animals are meant; nothing of it is stored yet."""
    held: dict[str, Any] = {
        "tank_id": told.tank.id,
        "values": [],
        "events": [{**asdict(event.what), "at": None} for event in told.events],
        "at": told.at.astimezone(UTC).isoformat(),
    }
    event = told.events[0].what
    choices = [
        Choice(words.crowd_yes(event), "keep_stray", "yes", held),
        Choice(_(words.CROWD_NO), "leave_out", "no"),
    ]
    lines = words.crowd(told.tank.name, told.tank.tank.volume_l, event)
    return await turn.reply(lines, choices=choices)


async def press_name(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Take the kind that was asked for: the entry is put right, and judged by it."""
    held = choice.arguments
    entry = await turn.uow.log.current(turn.chat.id, held["entry_id"])
    open_ = entry is not None and any(_is_asked(e, held) for e in entry.events)
    if entry is None or not open_ or not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    events = tuple(_named(e, held["name"]) if _is_asked(e, held) else e for e in entry.events)
    corrected = replace(
        entry_of(turn, ()),
        kind="correction",
        text=held["name"],
        message_ref=None,
        update_id=f"offer:{offer.id}:name",
        replaces=entry.id,
        readings=entry.readings,
        events=events,
    )
    stored = turn.tank_by_id(held["tank_id"])
    if stored is None:
        return [await turn.reply(general.already())]
    entry_id = await turn.uow.log.add(turn.chat.id, corrected)
    mine = tuple(event for event in events if event.tank_id == stored.id)
    told = Told(stored, (), mine)
    return [await answer_for(turn, told, entry_id, lead=summary(turn, told))]


def _is_asked(event: Stored[Event], held: dict[str, Any]) -> bool:
    said: str | None = held["said"]
    return bool(event.tank_id == held["tank_id"]) and event.what.species == said


def _named(event: Stored[Event], name: str) -> Stored[Event]:
    return replace(event, what=replace(event.what, species=name))
