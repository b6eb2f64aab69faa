"""What the buttons of a dose answer do: log its first part, remind to retest."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

from bot.chat import own_plan, product_doses, reminders
from bot.chat.answering import answer_for
from bot.chat.model import Reply
from bot.chat.told import Told, entry_of
from bot.chat.turn import ASKED, Turn
from bot.chat.words import doses as words
from bot.chat.words import general
from bot.chat.words.names import first_tank
from bot.chat.words.numbers import when
from bot.store.log import Stored
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.message.model import Event
from core.message.other_tank import water_told
from core.tank import Tank

RETEST_AFTER = timedelta(hours=24)


async def log(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Put the first part of a plan on record, once."""
    held: Mapping[str, Any] = choice.arguments
    told = await own_plan.share_logged(turn, offer.id, held)  # in words
    if told >= own_plan.A_PART:
        return [await turn.reply(general.already())]
    if told > 0.0:
        held = so_much_of(held, 1.0 - told)
    first = own_plan.log_id(offer.id)
    if (other := await turn.uow.log.by_update(turn.chat.id, first)) is not None:
        first = f"{first}:{other.id}"  # that one is of another tank by now, or was taken back
    return await log_parts(turn, first, held)


async def log_form(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Put the first part of a plan on record in the form that the keeper has, once."""
    return await log_parts(turn, own_plan.log_id(choice.arguments["of"]), choice.arguments)


def so_much_of(held: Mapping[str, Any], share: float) -> dict[str, Any]:
    """So much of a part of a plan, of each of its salts."""
    if "millilitres" in held:
        return {**held, "millilitres": share * held["millilitres"]}
    salts = [[name, share * grams] for name, grams in salts_of(held)]
    return {**held, "grams": salts[0][1], "salts": salts}


async def log_parts(
    turn: Turn,
    update_id: str,
    held: Mapping[str, Any],
    count: int = 1,
    at: datetime | None = None,
) -> list[Reply]:
    """Put so many parts of a plan on record together, once under an id, as of now or of `at`."""
    if await turn.uow.log.by_update(turn.chat.id, update_id) is not None:
        return [await turn.reply(general.already())]
    tank = await tank_for(turn, held)
    if tank is None:
        return [await turn.reply([words.no_tank_to_log(turn.example_tank)])]
    at = (at or turn.now).astimezone(UTC)
    put_in = _put_in(held, count)
    told = Told(tank, (), tuple(Stored(event, tank.id, at) for event in put_in))
    lead = words.logged(tank.name, put_in)
    entry = replace(
        entry_of(turn, [told], kind="button", update_id=update_id),
        text=lead,
        message_ref=None,
    )
    entry_id = await turn.uow.log.add(turn.chat.id, entry)
    answered = await answer_for(turn, told, entry_id, lead=lead)
    warned = await product_doses.too_much(turn, told)
    return [answered] if warned is None else [answered, warned]


def _put_in(held: Mapping[str, Any], count: int) -> list[Event]:
    """So many parts of each salt of a plan, or of a bought product, also by volume or spoon."""
    if "spoons" in held:
        return [Event("dose", spoons=count * held["spoons"], substance=held["substance"])]
    if "millilitres" in held:
        ml = count * held["millilitres"]
        return [Event("dose", millilitres=ml, substance=held["substance"])]
    return [Event("dose", grams=count * grams, substance=of) for of, grams in salts_of(held)]


def salts_of(held: Mapping[str, Any]) -> list[tuple[str, float]]:
    """Each salt of a plan with its grams a part; none of a product that goes by volume."""
    if "millilitres" in held:
        return []
    # Without a list: a product, or an offer of an older version.
    weighed = held.get("salts") or [[held["substance"], held["grams"]]]
    return [(substance, grams) for substance, grams in weighed]


async def retest(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Set a reminder to measure again a day later; pressing twice sets one."""
    tank = turn.tank_by_id(choice.arguments["tank_id"])
    at = turn.now + RETEST_AFTER
    already = await turn.uow.reminders.of_chat(turn.chat.id)
    for each in already:
        same = each.what == words.retest_task() and each.tank_id == (tank.id if tank else None)
        if same and each.next_due is not None and abs(each.next_due - at) < RETEST_AFTER / 2:
            return [await turn.reply(general.already())]
    reminder = await reminders.make_once(turn, words.retest_task(), "test", at, tank)
    shown = when(at.astimezone(turn.chat.zone), turn.local_now)
    facts = {"reminder": {"id": reminder.id, "what": reminder.what, "due": at.isoformat()}}
    return [await turn.reply([words.retest_set(shown)], facts=facts)]


def tank_of(turn: Turn, held: Mapping[str, Any]) -> StoredTank | None:
    """The tank of a plan; for a question about any water, the only one of that volume."""
    stored = turn.tank_by_id(held["tank_id"])
    if stored is not None or held["tank_id"] is not None:
        return stored
    fitting = [tank for tank in turn.tanks if tank.tank.volume_l == held["volume_l"]]
    return fitting[0] if len(fitting) == 1 else None


async def tank_for(turn: Turn, held: Mapping[str, Any]) -> StoredTank | None:
    """Likewise, or the only one, of unknown volume; in a chat without any one is made of it."""
    stored = tank_of(turn, held)
    if stored is None and held["tank_id"] is None and len(turn.tanks) == 1:
        stored = turn.tanks[0] if turn.tanks[0].tank.volume_l is None else None
    if stored is None and not turn.tanks:
        asked = [each.context.get(ASKED, {}) for each in await turn.uow.offers.latest(turn.chat.id)]
        text = next((str(each["text"]) for each in asked if each), "")
        kind = water_told(text) or "fresh"  # soda for my reef
        first = Tank(first_tank(), kind=kind, volume_l=held["volume_l"], named=False)
        return await turn.add_tank(first)
    return stored
