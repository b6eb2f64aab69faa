"""Answers to a question about a doubtful part of a message."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime

from bot.chat import readings
from bot.chat.answering import answer_for
from bot.chat.asking import unpacked
from bot.chat.model import Reply
from bot.chat.told import FIRST_NAME, Told, entry_of
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import readings as words
from bot.store.log import Stored
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.message import parse
from core.message.model import Event, Parsed
from core.tank import Tank


async def take(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Store what a doubtful part probably meant, once, with the moment of its message."""
    update_id = f"offer:{offer.id}:{choice.label}"
    taken = await turn.uow.log.by_update(turn.chat.id, update_id)
    if offer.used is not None or taken is not None:
        return [await turn.reply(general.already())]
    turn.incoming = replace(turn.incoming, update_id=update_id)
    held = choice.arguments
    if "value" not in held:
        return await say(turn, held["text"], offer.made_at)
    tank = turn.tank_named(held["tank"]) if held["tank"] else None
    tank = tank or turn.current_tank or await _new_tank(turn)
    reading = Stored(unpacked(held["value"]), tank.id, datetime.fromisoformat(held["at"]))
    told = Told(tank, (reading,), ())
    entry = entry_of(turn, [told], kind="confirmed", text=held["doubt"])
    entry_id = await turn.uow.log.add(turn.chat.id, entry)
    return [await answer_for(turn, told, entry_id, made=not tank.tank.named)]


async def keep_stray(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Store readings of a tank that was not on record: in a new tank, or in the one meant."""
    held = choice.arguments
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    tank = turn.tank_by_id(held["tank_id"]) if "tank_id" in held else None
    if tank is None:
        name = held.get("new", FIRST_NAME)
        tank = turn.tank_named(name) or await turn.add_tank(Tank(name=name))
    at = datetime.fromisoformat(held["at"])
    told = Told(
        tank,
        tuple(Stored(unpacked(value), tank.id, at) for value in held["values"]),
        tuple(Stored(Event(**event), tank.id, at) for event in held["events"]),
    )
    entry = entry_of(turn, [told], kind="confirmed")
    entry_id = await turn.uow.log.add(turn.chat.id, entry)
    await turn.use_tank(tank)
    return [await answer_for(turn, told, entry_id)]


async def leave_out(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Let a doubtful part go."""
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
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
    if parsed.values or parsed.events:
        return await readings.keep(turn, parsed, tank)
    return [] if turn.route is None else await turn.route(turn, parsed)


async def _new_tank(turn: Turn) -> StoredTank:
    return await turn.add_tank(Tank(name=FIRST_NAME, named=False))
