"""New animals home: the bag against the tank, the order of work, and quarantine."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import timedelta
from typing import Any

from bot.chat import calls, readings, reminders
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import arrivals as words
from bot.chat.words import general
from bot.chat.words import quarantine as apart
from bot.chat.words.animals import which
from bot.chat.words.keeping import THAT_TANK, company
from bot.chat.words.text import _
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.advice.arrivals import Arrival, arrive
from core.advice.buffers import BUFFERS, STRONG
from core.advice.calls import asks as asks_for
from core.advice.keeping import can_keep
from core.advice.livestock import Found, Species, foreign_water, lookup, named_in
from core.advice.quarantine import QUARANTINE, QUARANTINE_DAYS
from core.advice.state import Measured, State, measured
from core.message.bagged import bag_water, raises_in_bag
from core.message.fold import fold
from core.message.homecoming import Coming, gets_used, read
from core.message.model import Parsed
from core.message.plan_said import substances_named
from core.schedule import Every, Kind
from core.tank import Tank

_COUNTED = re.compile(r"\b(\d{1,4}) ((?:[^\W\d_]+ ){0,2}[^\W\d_]+)")

_SALT_WATER = re.compile(
    r"\b(?:salt(?:y)? ?water|sea ?water|salzwasser|meerwasser|eau (?:salee|de mer)|agua (?:salada"
    r"|de mar|do mar)|acqua (?:salata|di mare|marina)|zout(?:e)? ?water|zeewater|slona woda"
    r"|slonej wod\w{1,3}|wod\w{1,3} (?:slon\w{1,2}|morsk\w{1,3})|saltvatten|havsvatten)\b"
)
"""Words for salt water in nine languages, without accents."""

STILL_THE_BAG = timedelta(hours=3)
"""What was told of a bag so lately is of the same one."""

KIND_OF_DUTY: Mapping[str, Kind] = {"look": "other", "test": "test", "change": "change"}


def coming_in(turn: Turn, parsed: Parsed) -> Coming | None:
    """What a message tells of animals on their way in; None where it is about something else."""
    if parsed.command is not None or parsed.events or not turn.incoming.addressed:
        return None
    text = turn.incoming.text
    coming = read(text, turn.context())
    if coming is None and gets_used(text) and not (parsed.values or parsed.doubts):
        return Coming(text=text, home=True)
    if coming is None or (parsed.values and not coming.bag):
        return None
    if coming.quarantine and not coming.bag and _is_a_tank(turn):
        return None
    if coming.bag or coming.quarantine:
        return coming
    living = coming.animals or _animals(coming) is not None or gets_used(text)
    told = coming.about_bag or coming.home or coming.adding
    return coming if told and living else None


def _is_a_tank(turn: Turn) -> bool:
    """Whether quarantine is said of nothing but a tank that is called so."""
    text = turn.incoming.text
    for tank in turn.tanks:
        text = re.sub(rf"(?<!\w){re.escape(tank.name)}(?!\w)", " ", text, flags=re.IGNORECASE)
    bare = read(text, turn.context())
    return text != turn.incoming.text and (bare is None or not bare.quarantine)


async def answer(turn: Turn, coming: Coming) -> list[Reply]:
    """Say how they come in; what is told of a tank's own water is kept first."""
    replies: list[Reply] = []
    if coming.rest is not None:
        replies += await readings.keep(turn, coming.rest)
    stored = turn.tank_named(coming.tank) if coming.tank else turn.current_tank
    if coming.quarantine and not (coming.bag or coming.home):
        name = stored.name if stored is not None else _(THAT_TANK)
        lines = apart.quarantine(name)
        return [*replies, await turn.reply(lines, choices=_choices(None, stored))]
    return [*replies, await _plan(turn, coming, stored)]


async def into_the_bag(turn: Turn, parsed: Parsed) -> Reply | None:
    """No, where a buffer for the water of the animals' bag is asked for; None of other talk."""
    if parsed.events or parsed.command is not None or not turn.incoming.addressed:
        return None
    text = turn.incoming.text
    asks = parsed.question is not None or asks_for(text) or "?" in text
    raises = bool(substances_named(text) & {*BUFFERS, *STRONG}) or raises_in_bag(text)
    if not asks or not raises or calls.danger_of(turn, parsed) is not None:
        return None
    told = await _of_bag(turn)
    if not bag_water(text, is_spoken_of=told is not None):
        return None
    lines = words.nothing_into_the_bag((told or {}).get("ammonia"))
    return await turn.reply(lines, facts={"refused": "bag_buffer", "bag": told or {}})


async def _of_bag(turn: Turn) -> dict[str, float] | None:
    """What was told of a bag lately; None where none was spoken of."""
    for offer in await turn.uow.offers.latest(turn.chat.id):
        facts = offer.context.get("facts", {})
        if turn.now - offer.made_at <= STILL_THE_BAG and "bag" in facts and "steps" in facts:
            return dict(facts["bag"])
    return None


async def _plan(turn: Turn, coming: Coming, stored: StoredTank | None) -> Reply:
    animals = _animals(coming)
    kind = animals[1].species if animals is not None else None
    stored = _home_of(kind, turn, stored) if coming.tank is None else stored
    if stored is None:
        state = State(Tank(name=""), turn.local_now)
    else:
        state = await state_of(turn, stored, turn.now)
    read_in_bag = (measured(value, turn.local_now, state.tank) for value in coming.bag)
    bag = {reading.analyte: reading for reading in read_in_bag if reading is not None}
    if bag and animals is None and not (coming.home or coming.adding or coming.animals):
        bag = await _told_before(turn) | bag  # more of the same bag
    salt_water = _SALT_WATER.search(fold(turn.incoming.text)) is not None
    kinds = [kind] if kind is not None else []
    plan = arrive(bag, state, kinds, coming.hours, salt_water=salt_water)
    name = stored.name if stored is not None else _(THAT_TANK)
    log = None
    may_go = plan.foreign is None
    if may_go and animals is not None and animals[2] is not None and stored is not None:
        log = f"{stored.name}: added {animals[2]} {animals[0]}"
    lines = words.arrival(plan, name, _company(kind, state))
    if animals is not None and kind is None and animals[1].candidates:
        lines.append(which(animals[0], animals[1], turn.chat.language)[0])
    return await turn.reply(
        lines,
        choices=_choices(log, stored if may_go else None),
        more=words.more(plan, hours_known=coming.hours is not None) if may_go else [],
        facts=_facts(plan, bag, stored, kind.scientific if kind is not None else None),
    )


async def _told_before(turn: Turn) -> dict[str, Measured]:
    """What was told of the bag just before, where nothing else was spoken of since.

    Ammonia is taken to be as N then: of all that it may be the most.
    """
    newest = await turn.uow.offers.latest(turn.chat.id, 1)
    if not newest or turn.now - newest[0].made_at > STILL_THE_BAG:
        return {}
    told = newest[0].context.get("facts", {}).get("bag", {})
    return {of: Measured(of, at, at, at, turn.local_now) for of, at in told.items()}


def _company(kind: Species | None, state: State) -> str | None:
    """Who of the tank surely does not go together with a kind, in words; None where nobody."""
    if kind is None or not state.tank.stock:
        return None
    answer = can_keep(kind, state)
    return next(iter(company(answer)), None) if answer.verdict == "no" else None


def _home_of(kind: Species | None, turn: Turn, used: StoredTank | None) -> StoredTank | None:
    """The tank used last, unless it holds other water than the only one that may be meant."""
    if kind is None or used is None or not foreign_water(kind, used.tank):
        return used
    fitting = [tank for tank in turn.tanks if not foreign_water(kind, tank.tank)]
    return fitting[0] if len(fitting) == 1 else used


def _animals(coming: Coming) -> tuple[str, Found, int | None] | None:
    """The animals that are named: the words, whom they can mean, and how many."""
    named = next(iter(named_in(coming.text)), None)
    for counted in _COUNTED.finditer(coming.text):
        many, said = int(counted[1]), counted[2].split()
        if named is not None:
            if named[0] in counted[2]:
                return named[0], named[1], many
            continue
        for size in range(len(said), 0, -1):
            found = lookup(" ".join(said[:size]))
            if found.species is not None or found.candidates:
                return " ".join(said[:size]), found, many
    return None if named is None else (*named, None)


def _choices(log: str | None, stored: StoredTank | None) -> list[Choice]:
    choices = [Choice(_(words.THEY_ARE_IN), "say_again", "", {"text": log})] if log else []
    if stored is not None:
        held = {"tank_id": stored.id}
        choices.append(Choice(_(apart.QUARANTINE_FIRST), "quarantine", "", held))
    return choices


def _facts(
    plan: Arrival, bag: Mapping[str, Measured], stored: StoredTank | None, species: str | None
) -> dict[str, Any]:
    """Every number of the plan; what is not known is absent."""
    facts: dict[str, Any] = {
        "bag": {of: reading.value for of, reading in bag.items()},
        "steps": [step.id for step in plan.steps],
        "minutes": plan.minutes,
        "days": plan.days,
        "keep_closed": plan.keep_closed,
    }
    if stored is not None:
        facts["tank"] = stored.name
    if species is not None:
        facts["species"] = species
    if plan.foreign is not None:
        facts["refused"] = "other_water"
    if plan.ammonia is not None:
        held = plan.ammonia
        facts |= {"ph_open": held.ph_open, "nh3_n_open": held.nh3_n_open}
        if held.nh3_n is not None:
            facts["nh3_n"] = held.nh3_n
    return facts


async def press_quarantine(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Make a quarantine tank for a tank, with reminders until its end."""
    stored = turn.tank_by_id(choice.arguments["tank_id"])
    if stored is None or not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    name = _(apart.NAME)
    if turn.tank_named(name) is not None:
        return [await turn.reply(apart.there_already(name))]
    own = await turn.add_tank(Tank(name=name, kind=stored.tank.kind, soft=stored.tank.soft))
    await turn.use_tank(stored)
    tasks = []
    for duty in QUARANTINE:
        what = _(apart.TASKS[duty.id])
        rule = Every(duty.every_days, "days")
        await reminders.make_every(turn, what, KIND_OF_DUTY[duty.id], rule, own)
        tasks.append(apart.duty(what, duty.every_days))
    end = turn.now + timedelta(days=QUARANTINE_DAYS)
    task = apart.move_task(stored.name, own.name)
    await reminders.make_once(turn, task, "other", end, own)
    tasks.append(apart.move_said(QUARANTINE_DAYS))
    facts = {"tank": own.name, "days": QUARANTINE_DAYS}
    return [await turn.reply(apart.made(own.name, stored.name, tasks), facts=facts)]
