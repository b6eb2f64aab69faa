"""The plan of which a part is on record: its next part is led on to, and known as its own."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any, Final

from bot.chat.told import Told
from bot.chat.turn import Turn
from bot.chat.words import doses as words
from bot.chat.words.numbers import plain
from bot.store.log import Entry
from bot.store.offers import Offer
from core.advice import limits
from core.advice.dosing import Wish, plan_kh
from core.advice.findings import Finding
from core.advice.plan import Plan, Refusal
from core.advice.salts import USUAL, SaltWish, plan_salts
from core.advice.spoons import spoon_grams
from core.advice.state import State
from core.message.model import Event

HELD: Final = timedelta(hours=72)
"""A part that was given longer ago begins no next one: the water has gone its own way."""

LOOKED_BACK: Final = 20
"""So many of the newest entries are looked through for the part."""

OFFERS_LOOKED_AT: Final = 40
"""So many of the newest answers are looked through for readings of the same moment."""

LOGGED: Final = re.compile(r"offer:(\d+):log_dose(?::.*)?")
"""Of the entry that puts parts of a plan on record; behind it, the message that told so."""


def log_id(offer_id: int) -> str:
    """Under which a part of an offer's plan is put on record by its button, once."""
    return f"offer:{offer_id}:log_dose"


async def logged_as(turn: Turn, entry: Entry) -> str:
    """Under which an entry was put on record at first, before it was put right in its tank."""
    where = {event.tank_id for event in entry.events}
    for _step in range(LOOKED_BACK):
        before = entry.replaces and await turn.uow.log.get(turn.chat.id, entry.replaces)
        if not before or (before.events and {each.tank_id for each in before.events} != where):
            break
        entry = before
    return entry.update_id


async def is_part(turn: Turn, entry: Entry, offer_id: int) -> bool:
    """Whether an entry puts parts of an offer's plan on record, be it put right since."""
    logged = LOGGED.fullmatch(await logged_as(turn, entry))
    return logged is not None and int(logged[1]) == offer_id


A_PART: Final = 0.9
"""As much of a part is the part: no scale tells what is missing from it."""


async def parts_logged(turn: Turn, offer_id: int, held: Mapping[str, Any]) -> int:
    """How many parts of an offer's plan are on record; `held` is what its button holds.

    A part of which some is missing is none yet.
    """
    return math.floor(await share_logged(turn, offer_id, held) + 1.0 - A_PART)


async def share_logged(
    turn: Turn, offer_id: int, held: Mapping[str, Any], since: datetime | None = None
) -> float:
    """How much of an offer's plan is on record, in parts of it; of what went in `since`.

    What of the same was told to be in since, in other words than the plan's, counts as well;
    of several salts as much of it as of each went in.
    """
    amount = "millilitres" if "millilitres" in held else "grams"
    a_part: float = held["salts"][0][1] if held.get("salts") else held[amount]
    salts = held.get("salts") or [[held["substance"], a_part]]
    told = dict.fromkeys((str(name) for name, _amount in salts), 0.0)
    offer = await turn.uow.offers.get(offer_id)
    put_in = 0.0
    for entry in await turn.uow.log.newest(turn.chat.id, LOOKED_BACK):
        if since is not None and all(event.at < since for event in entry.events):
            continue
        if entry.events and await is_part(turn, entry, offer_id):
            put_in += _so_much(entry.events[0].what, amount)
            continue
        for event in entry.events:
            later = offer is not None and event.at >= offer.made_at
            of = event.what.substance if later and event.what.kind == "dose" else None
            if of in told and event.tank_id == held.get("tank_id"):
                told[of] += _so_much(event.what, amount)
    besides: float = min(told[str(name)] / so_much for name, so_much in salts)
    return put_in / a_part + besides


async def by_spoon(turn: Turn, offer_id: int) -> bool:
    """Whether what is on record of an offer's plan went in by the spoon, which weighs anything."""
    for entry in await turn.uow.log.newest(turn.chat.id, LOOKED_BACK):
        spoons = any(each.what.spoons is not None for each in entry.events)
        if spoons and await is_part(turn, entry, offer_id):
            return True
    return False


def _so_much(put_in: Event, amount: str) -> float:
    """How much of it went in, by weight or volume; a spoon as heavy as it usually is."""
    told: float | None = getattr(put_in, amount)
    if told is None and amount == "grams" and put_in.spoons is not None:
        weighed = spoon_grams(put_in.substance or "", put_in.spoons)
        told = None if weighed is None else weighed[0]
    return told or 0.0


async def measured_since(turn: Turn, offer: Offer, tank_id: int) -> bool:
    """Whether anything was measured in a tank since an offer's plan was given."""
    rows = await turn.uow.log.readings(tank_id, since=offer.made_at, until=turn.now)
    if any(row.at > offer.made_at for row in rows):
        return True
    latest = await turn.uow.offers.latest(turn.chat.id, OFFERS_LOOKED_AT)
    later = [each.context.get("facts", {}) for each in latest if each.id > offer.id]
    return bool(rows) and any(facts.get("values") for facts in later)


async def dosed_besides(turn: Turn, offer_id: int, tank_id: int, since: datetime) -> bool:
    """Whether anything else than an offer's own plan was dosed into a tank since then."""
    for entry in await turn.uow.log.newest(turn.chat.id, LOOKED_BACK):
        if await is_part(turn, entry, offer_id):
            continue
        doses = (e for e in entry.events if e.tank_id == tank_id and e.what.kind == "dose")
        if any(event.at >= since for event in doses):
            return True
    return False


@dataclass(frozen=True, slots=True)
class OwnPlan:
    """One goal of a plan in several parts, the first of which was put on record."""

    analyte: str
    target: float
    """Canonical unit of the analyte."""
    at: datetime
    salts: tuple[str, ...] = ()
    """What its part was of."""

    @property
    def wish(self) -> str:
        """What asks for the rest; its only salt is named where another is taken unnamed."""
        wish = f"{self.analyte} {plain(self.target, 2)}"
        usual = self.salts == USUAL.get(self.analyte, self.salts)
        return wish if usual or len(self.salts) != 1 else f"{wish} with {self.salts[0]}"


async def of(turn: Turn, tank_id: int) -> OwnPlan | None:
    """Give the plan that the tank's newest logged part belongs to, if parts of it are left."""
    doses = await turn.uow.log.events(tank_id, kinds=["dose"], since=turn.now - HELD)
    if not doses:
        return None
    for entry in await turn.uow.log.newest(turn.chat.id, LOOKED_BACK):
        pressed = LOGGED.fullmatch(await logged_as(turn, entry))
        if pressed is None or not any(event.tank_id == tank_id for event in entry.events):
            continue
        at = entry.events[0].at
        offer = await turn.uow.offers.get(int(pressed[1]))
        if offer is None or at < doses[0].at:  # another dose went in since
            return None
        told = offer.context.get("facts", {})
        facts = (told.get("forms") or [told])[0]
        parts = (facts.get("salts") or [facts])[0].get("parts", ())
        goals = facts.get("goals") or [{"analyte": "kh", "to": facts.get("to")}]
        if len(parts) < 2 or len(goals) > 1 or goals[0].get("to") is None:
            return None
        put_in = tuple(event.what.substance or "" for event in entry.events)
        return OwnPlan(goals[0]["analyte"], goals[0]["to"], at, put_in)
    return None


async def was_retested(turn: Turn, tank_id: int | None, newest: Offer) -> bool:
    """Whether the newest answer is to a reading of what the tank's begun plan raises."""
    values = newest.context.get("facts", {}).get("values", ())
    if tank_id is None or newest.entry_id is None or not values:
        return False
    own = await of(turn, tank_id)
    return own is not None and any(value["analyte"] == own.analyte for value in values)


async def is_next_part(turn: Turn, plan: Plan, tank_id: int) -> bool:
    """Whether a plan is the rest of the tank's own, its retest sent since the part went in."""
    if not plan.within_kit or plan.reading_age is None or len(plan.goals) > 1:
        return False
    own = await of(turn, tank_id)
    return (
        own is not None
        and plan.goals[0].analyte == own.analyte
        and plan.goals[0].target == own.target
        and turn.now - plan.reading_age > own.at
    )


async def lead_on(turn: Turn, told: Told, state: State, found: list[Finding]) -> list[str]:
    """How to ask for the next part, once the retest is sent a day after the part before.

    Nothing is said beside an alarm or a finding about ammonia, which come first, nor where the
    next part would be refused.
    """
    first = (each.severity == "alarm" or each.id.startswith("ammonia") for each in found)
    if not told.readings or any(first):
        return []
    own = await of(turn, told.tank.id)
    if own is None or told.at - own.at < timedelta(hours=limits.DOSE_EVERY_HOURS):
        return []
    read = [each.what.canonical for each in told.readings if each.what.analyte == own.analyte]
    short = any(isinstance(value, float | int) and value < own.target for value in read)
    short = short and not isinstance(_anew(own, state), Refusal)
    return [words.next_part(own.analyte, own.target, own.wish)] if short else []


def _anew(own: OwnPlan, state: State) -> object:
    """The rest of a plan as it would be planned now, or why it would be refused."""
    if own.analyte == "kh":
        return plan_kh(Wish(target=own.target), state, known_tank=True)
    wish = SaltWish(targets={own.analyte: own.target}, substances=own.salts)
    return plan_salts(wish, state, known_tank=True)
