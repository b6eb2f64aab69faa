"""Answers to a question about a doubtful part of a message."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import UTC, datetime
from typing import Any

from bot.chat import moves, readings, unheard
from bot.chat.answering import answer_for
from bot.chat.asking import unpacked
from bot.chat.model import Reply
from bot.chat.told import Told, entry_of, place
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import readings as words
from bot.chat.words.names import first_tank
from bot.store.log import Stored
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.message import parse
from core.message.amends import corrected
from core.message.guesses import as_one
from core.message.model import Event, Parsed, Value
from core.tank import Tank


async def take(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Store what doubtful parts probably meant, each once, with the moment of their message."""
    update_id = f"offer:{offer.id}:{choice.label}"[:200]
    parts = choice.arguments["parts"]
    if offer.used is not None or await turn.uow.log.by_update(turn.chat.id, update_id) is not None:
        return [await turn.reply(general.already())]
    alone = len(parts) > 1 or "only" in choice.arguments
    if alone and not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    turn.incoming = replace(turn.incoming, update_id=update_id)
    replies = await _keep(turn, [part for part in parts if "value" in part])
    texts: dict[tuple[str | None, datetime], list[str]] = {}
    for part in parts:
        if "value" not in part:
            texts.setdefault((part["tank"], _when(part, offer)), []).append(part["text"])
    for (name, at), told in texts.items():
        tank = turn.tank_named(name) if name else None
        replies += await say(turn, "\n".join(as_one(told)), at, tank)
    return replies


def _when(part: Mapping[str, Any], offer: Offer) -> datetime:
    """Of when a doubtful part is: as it told, else of its message."""
    return datetime.fromisoformat(part["at"]) if "at" in part else offer.made_at


async def _keep(turn: Turn, parts: Sequence[Mapping[str, Any]]) -> list[Reply]:
    """Store the values of confirmed guesses, an entry a tank."""
    by_tank: dict[int, list[Stored[Value]]] = {}
    made = False
    for part in parts:
        named = turn.tank_named(part["tank"]) if part["tank"] else None
        tank = named or turn.current_tank
        if tank is None:
            tank, made = await _new_tank(turn), True
        reading = Stored(unpacked(part["value"]), tank.id, datetime.fromisoformat(part["at"]))
        by_tank.setdefault(tank.id, []).append(reading)
    told = [
        Told(stored, tuple(readings), ())
        for tank_id, readings in by_tank.items()
        if (stored := turn.tank_by_id(tank_id)) is not None
    ]
    if not told:
        return []
    entry = entry_of(turn, told, kind="confirmed", text=", ".join(p["doubt"] for p in parts))
    entry_id = await turn.uow.log.add(turn.chat.id, entry)
    return [await answer_for(turn, each, entry_id, made=made) for each in told]


async def keep_stray(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Store readings of a tank that was not on record: in a new tank, or in the one meant."""
    held = choice.arguments
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    turn.incoming = replace(turn.incoming, text=held.get("text", ""))
    used = turn.current_tank
    tank = turn.tank_by_id(held["tank_id"]) if "tank_id" in held else None
    if tank is None:
        name = held.get("new", first_tank())
        tank = turn.tank_named(name) or await turn.add_tank(Tank(name=name))
    at = datetime.fromisoformat(held["at"])
    values = tuple(replace(unpacked(v), at=at, tank=tank.name) for v in held["values"])
    events = tuple(replace(Event(**event), at=at, tank=tank.name) for event in held["events"])
    known, asked = await moves.settle(turn, Parsed("event", events=events), used or tank)
    if asked:
        return asked
    told = place(turn, replace(known, values=values), tank)
    entry = entry_of(turn, told, kind="confirmed")
    entry_id = await turn.uow.log.add(turn.chat.id, entry)
    await turn.use_tank(tank)
    return [await answer_for(turn, each, entry_id) for each in told]


_ONE_NUMBER = re.compile(r"(?<![\w.,])[<>]?\d+(?:[.,]\d+)?(?![.,]?\d)")


async def renumbered(turn: Turn, offer: Offer) -> list[Reply] | None:
    """``no, 40`` right behind a question about a value: the doubtful text with that number.

    None where it puts no number right, or where more than one text was doubted. What is still
    doubtful with it is asked again.
    """
    parts = [p for c in offer.choices if c.verb == "take_doubt" for p in c.arguments["parts"]]
    number = corrected(turn.incoming.text) if parts and offer.used is None else None
    if number is None or len({part["doubt"] for part in parts}) != 1:
        return None
    text = _with_number(number, [part["doubt"] for part in parts])
    text = text or _with_number(number, [part["text"] for part in parts])  # nitrate 10 or 20
    if text is None or not await turn.uow.offers.take(offer.id, "renumbered"):
        return None
    tank = turn.tank_named(parts[0]["tank"]) if parts[0]["tank"] else None
    return await say(turn, text, _when(parts[0], offer), tank)


def _with_number(number: str, texts: list[str]) -> str | None:
    """The texts with another number, where each has one and they are then the same."""
    if any(len(_ONE_NUMBER.findall(text)) != 1 for text in texts):
        return None
    found = {_ONE_NUMBER.sub(number, text) for text in texts}
    return found.pop() if len(found) == 1 else None


async def leave_out(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Let a doubtful part go."""
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    parts = [p for each in offer.choices for p in each.arguments.get("parts", ())]
    await unheard.settle(turn, {part["doubt"] for part in parts if "doubt" in part})
    return [await turn.reply(words.left_out())]


async def type_again(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """The keeper types it anew: an ordinary message follows."""
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    return [await turn.reply(words.type_again())]


async def for_tank(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Take a message that named no tank as being about the chosen one."""
    tank = turn.tank_by_id(choice.arguments["tank_id"])
    if tank is None or not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    return await say(
        turn, choice.arguments["text"], datetime.fromisoformat(choice.arguments["at"]), tank
    )


async def say(turn: Turn, text: str, at: datetime, tank: StoredTank | None = None) -> list[Reply]:
    """Handle a text as if it had been sent at a moment, about a tank."""
    turn.now = at.astimezone(UTC)
    turn.incoming = replace(turn.incoming, text=text, kind="message")
    parsed: Parsed = parse(text, turn.context())
    if parsed.command is None and (parsed.values or parsed.events):
        return await readings.keep(turn, parsed, tank)
    if tank is not None and parsed.doubts:
        parsed = replace(parsed, tank=tank.name)  # what is asked again is of it still
    return [] if turn.route is None else await turn.route(turn, parsed)


async def _new_tank(turn: Turn) -> StoredTank:
    return await turn.add_tank(Tank(name=first_tank(), named=False))
