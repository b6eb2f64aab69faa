"""What is told of a tank for good: its first day, CO2, plants, a reef, a kit's last day."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from typing import Any

from bot.chat import reminders
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import traits as words
from bot.chat.words.numbers import when
from bot.chat.words.text import _
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.message import beside_value, parse
from core.message.model import Kit, Parsed
from core.message.traits import Trait, read, without_age

RENEW_AHEAD = timedelta(days=14)
"""So long before a kit's last day its reminder comes, for time to get another."""

REMINDED_AT = time(10)


def trait_of(turn: Turn, parsed: Parsed) -> Trait | None:
    """What a message tells of a tank for good; None where it tells or asks something else."""
    if parsed.command is not None or parsed.values or parsed.events or not turn.incoming.addressed:
        return None
    told = read(turn.incoming.text, turn.context())
    measured = any(doubt.value is not None for doubt in parsed.doubts)
    return None if measured and told is not None and told.kind == "set_up" else told


async def with_readings(turn: Turn, _parsed: Parsed) -> list[Reply] | None:
    """`ammonia 0.5, tank is 3 weeks old`: the readings are answered as ever, then its first day.

    None where nothing is measured beside the age of the tank.
    """
    parts = without_age(turn.incoming.text) if turn.incoming.addressed else None
    if parts is None or turn.typed is None or "?" in parts[1]:
        return None
    rest, age = parts
    if not parse(rest, turn.context()).values:
        return None
    whole = turn.incoming
    turn.incoming = replace(whole, text=rest)
    replies = await turn.typed(turn)
    turn.incoming = whole
    stored = turn.current_tank
    trait = read(age, turn.context())
    if stored is None or trait is None or trait.at is None or stored.tank.set_up is not None:
        return replies
    return [*replies, await _set_up(turn, stored, trait.at)]


async def answer(turn: Turn, trait: Trait) -> list[Reply]:
    """Keep it, and say so."""
    if trait.problem is not None:
        return [await turn.reply(words.problem(trait.problem, turn.example_tank))]
    if trait.kind == "kit_expiry":
        return [await _kit(turn, trait)]
    stored = turn.tank_named(trait.tank) if trait.tank else turn.current_tank
    if stored is None:
        return [await turn.reply(words.which_tank([tank.name for tank in turn.tanks]))]
    await turn.use_tank(stored)
    if trait.kind in {"co2", "setup"}:
        return [await _made(turn, stored, trait)]
    return [await _set_up(turn, stored, trait.at or turn.now)]


async def beside(turn: Turn, parsed: Parsed) -> list[Reply]:
    """Keep the first day of a tank, told with its values: set up yesterday, ph 7."""
    stored = turn.current_tank
    day = beside_value.set_up_day(turn.incoming.text) if parsed.values else None
    if day is None or stored is None or stored.tank.set_up is not None:
        return []
    at = parse(f"kh 4 {day}", turn.context()).at
    return [] if at is None or at > turn.now else [await _set_up(turn, stored, at)]


async def _made(turn: Turn, stored: StoredTank, trait: Trait) -> Reply:
    """What a tank is made for, and whether carbon dioxide is injected, told in one or apart."""
    if trait.setup == "reef" and not stored.tank.is_sea:
        return await turn.reply(words.not_the_sea(stored.name))
    lines: list[str] = []
    facts: dict[str, Any] = {"tank": stored.name}
    if trait.setup is not None:
        stored = await turn.change_tank(stored, setup=trait.setup)
        lines += words.made_for(stored.name, trait.setup)
        facts["setup"] = trait.setup
    if trait.kind == "co2":
        stored = await turn.change_tank(stored, co2=trait.has)
        lines += words.carbon(stored.name, has=trait.has)
        facts["co2_injected"] = trait.has
    return await turn.reply(lines, facts=facts)


async def _set_up(turn: Turn, stored: StoredTank, at: datetime) -> Reply:
    stored = await turn.change_tank(stored, set_up_at=at.astimezone(UTC))
    day = at.astimezone(turn.chat.zone).date()
    facts = {"tank": stored.name, "set_up": day.isoformat()}
    return await turn.reply(words.set_up(stored.name, day, turn.local_now.date()), facts=facts)


async def _kit(turn: Turn, trait: Trait) -> Reply:
    """Keep until when a kit is good: of the tank named, else of all that are tested with it."""
    if trait.analyte is None or trait.until is None:
        raise ValueError("a kit's day without a day")
    named = turn.tank_named(trait.tank) if trait.tank else None
    tanks = [named] if named is not None else turn.tanks
    if not tanks:
        return await turn.reply(words.which_tank([]))
    for stored in tanks:
        await turn.uow.tanks.set_kit(stored.id, trait.analyte, Kit(good_until=trait.until))
    facts = {"analyte": trait.analyte, "good_until": trait.until.isoformat()}
    facts["tanks"] = ", ".join(stored.name for stored in tanks)
    past = trait.until < turn.local_now.date()
    held = {"analyte": trait.analyte, "until": trait.until.isoformat()}
    held["tank_id"] = str(named.id) if named is not None else ""
    choices = [] if past else [Choice(_(words.REMIND_ME), "kit_reminder", "yes", held)]
    lines = words.kit(trait.analyte, trait.until, named.name if named else None, past=past)
    return await turn.reply(lines, choices=choices, facts=facts)


async def press_reminder(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Remind of a kit before its last day; at the day's eve where that is close."""
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    until = date.fromisoformat(choice.arguments["until"])
    noon = datetime.combine(until, REMINDED_AT, tzinfo=turn.chat.zone)
    at = max(noon - RENEW_AHEAD, turn.local_now + timedelta(days=1))
    tank = turn.tank_by_id(int(choice.arguments["tank_id"] or 0))
    what = words.renew_task(choice.arguments["analyte"], until)
    reminder = await reminders.make_once(turn, what, "kit", at, tank)
    facts = {"reminder": {"id": reminder.id, "what": reminder.what, "due": at.isoformat()}}
    told = words.reminder_set(when(at.astimezone(turn.chat.zone), turn.local_now))
    return [await turn.reply(told, facts=facts)]
