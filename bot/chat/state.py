"""What the store knows of a tank's water, as the advice wants it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import datetime, timedelta

from bot.chat import calls_kept, off_record
from bot.chat.calls_kept import EASED
from bot.chat.supply import read
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from bot.store.tanks import StoredTank
from core.advice.calls import OF_PEOPLE
from core.advice.emergencies import A_DAY, STANDS_FOR
from core.advice.state import Happening, Measured, State, newest
from core.advice.stock import tally, uncounted
from core.advice.washed_out import UNTESTED, WELL_AFTER
from core.tank import Stock

LOOKED_BACK = timedelta(days=120)
"""How far back a tank's history speaks of its trends and habits."""

LOOKED_AT = 400
"""Newest readings of that time which are looked through: some eighty tests of five analytes."""

SHOWS = frozenset({"kh", "gh", "ph", "salinity", "calcium", "magnesium"})
"""Readings of which one shows what went in, once it is mixed."""

DECIDING = ("kh", "ph", "gh", "ammonia", "temperature", "salinity", "chloride")
"""What an old reading of still matters, if only to say that it is old."""


async def state_of(
    turn: Turn, stored: StoredTank, at: datetime, waters: Waters | None = None
) -> State:
    """The state of a tank's water as of a moment, in the chat's zone.

    `waters` are the chat's sources, where they were looked up already. Asked again in one turn it
    is read again only where something was written since, or the tank is another than it was.
    """
    basis = (stored, turn.uow.writes)
    held, state = turn.states.get((stored.id, at), (None, None))
    if state is None or held != basis:
        state = await _read(turn, stored, at, waters)
        turn.states[stored.id, at] = basis, state
    return state


async def _read(turn: Turn, stored: StoredTank, at: datetime, waters: Waters | None) -> State:
    since = at - LOOKED_BACK
    log = turn.uow.log
    rows = await log.readings(stored.id, since=since, until=at, limit=LOOKED_AT)
    missing = set(DECIDING) - {row.what.analyte for row in rows}
    if missing:
        rows += await log.last_of_each(stored.id, sorted(missing), until=at)
    came = await log.stock(stored.id, until=at)
    untold = uncounted(came)
    stock = tuple(Stock(kind, n, kind not in untold) for kind, n in tally(came).items())
    tank = replace(stored.tank, stock=stock)
    found = read(turn, rows, tank)
    latest = newest(found)
    ph = latest.get("ph")
    kept = [c for c in await calls_kept.of_tank(turn, stored.id) if c.danger not in OF_PEOPLE]
    called = _called(turn, kept, at)
    for danger in UNTESTED & called.keys():  # no test shows it: over once they are told to be well
        if at - called[danger][0] >= WELL_AFTER and await _well_since(turn, stored, at):
            del called[danger]
    open_ = {call.danger for call in kept if not call.over}
    events = await _events(turn, stored, since, at)
    tested = [each.at for each in found if each.analyte in SHOWS]
    return State(
        tank=tank,
        now=at.astimezone(turn.chat.zone),
        readings=latest,
        earlier=tuple(r for r in found if r.analyte == "ph" and ph is not None and r.at < ph.at),
        history=_by_analyte(reversed(found)),  # of one moment the newest is the last
        events=events,
        source=await source_readings(turn, stored, waters),
        began=tank.set_up,
        kit_expiry={of: kit.good_until for of, kit in tank.kits.items() if kit.good_until},
        injected=tank.co2,
        called={danger: when for danger, (when, _order) in called.items()},
        called_order={danger: order for danger, (_when, order) in called.items()},
        called_over=frozenset({call.danger for call in kept} - open_),
        went_in=await off_record.open_words(turn, stored.id, events, tested, at),
    )


async def source_readings(
    turn: Turn, stored: StoredTank, waters: Waters | None = None
) -> Mapping[str, Measured]:
    """What is known today of the water that a tank is filled from."""
    waters = waters or await Waters.of(turn)
    source = waters.default_for(stored)
    return {} if source is None else (await waters.supply(source)).readings


def _called(
    turn: Turn, kept: Iterable[calls_kept.Kept], at: datetime
) -> dict[str, tuple[datetime, int]]:
    """What was called out of a tank of late, when it was last, and behind which entry."""
    found: dict[str, tuple[datetime, int]] = {}
    for call in kept:
        for danger in filter(None, (call.danger, call.poison)):
            if at - STANDS_FOR.get(danger, A_DAY) < call.at <= at:
                found.setdefault(danger, (call.at.astimezone(turn.chat.zone), call.order))
    return found


async def _well_since(turn: Turn, stored: StoredTank, at: datetime) -> bool:
    """Whether animals were told to be better within a day before."""
    told = await turn.uow.offers.told_of(turn.chat.id, EASED)
    return any(
        at - A_DAY < made_at <= at and held["tank"] == stored.id and held["how"] == "better"
        for made_at, held in told
    )


async def _events(
    turn: Turn, stored: StoredTank, since: datetime, until: datetime
) -> tuple[Happening, ...]:
    zone = turn.chat.zone
    return tuple(
        Happening(row.at.astimezone(zone), row.what, row.entry_id)
        for row in await turn.uow.log.events(stored.id, since=since)
        if row.at <= until
    )


def _by_analyte(found: Iterable[Measured]) -> dict[str, tuple[Measured, ...]]:
    history: dict[str, list[Measured]] = {}
    for reading in found:
        history.setdefault(reading.analyte, []).append(reading)
    return {analyte: tuple(readings) for analyte, readings in history.items()}
