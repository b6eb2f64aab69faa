"""A demonstration: the tanks of a town library's reading room, with a season of invented history.

Everything here is made up, from a seed, so that it is the same each time. The history goes
through the parser like any keeper's messages.
"""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import TYPE_CHECKING, Final

from bot.chat import reminder_requests
from bot.chat.model import Address, Incoming
from bot.chat.told import entry_of, place
from bot.chat.turn import Turn
from bot.store.chats import NewChat
from core.message import parse
from core.message.model import Command
from core.tank import Tank, TankKind

if TYPE_CHECKING:
    from bot.app import App
    from bot.store.uow import UnitOfWork

SEED: Final = 20260301
WEEKS: Final = 13
ROTA: Final = ("morning desk", "afternoon desk", "evening desk")


@dataclass(frozen=True, slots=True)
class Drift:
    """How one analyte wanders between two water changes: start, a day's drift, the kit's step."""

    name: str
    start: float
    per_day: float
    step: float
    scatter: float = 0.0


@dataclass(frozen=True, slots=True)
class Invented:
    """A tank, its water, its stock, and how often it is tested and changed. [days]"""

    name: str
    kind: TankKind
    volume_l: float
    stock: tuple[str, ...]
    water: tuple[Drift, ...]
    test_every: int
    change: str
    change_every: int
    fading: float = 0.0
    """KH that a season takes away for good. [°dH a week]"""


TANKS: Final = (
    Invented(
        name="Fern",
        kind="fresh",
        volume_l=90.0,
        stock=("12 neon tetras", "6 corydoras", "8 amano shrimps"),
        water=(
            Drift("temp", 24.5, 0.0, 0.5, 0.4),
            Drift("ph", 6.9, -0.02, 0.1, 0.05),
            Drift("kh", 5.0, -0.05, 1.0),
            Drift("gh", 6.0, 0.0, 1.0, 0.3),
            Drift("no3", 8.0, 1.1, 5.0, 2.0),
        ),
        test_every=7,
        change="changed 30%",
        change_every=7,
        fading=0.1,
    ),
    Invented(
        name="Quarry",
        kind="fresh",
        volume_l=240.0,
        stock=("15 yellow labs", "10 rusty cichlids"),
        water=(
            Drift("temp", 25.5, 0.0, 0.5, 0.4),
            Drift("ph", 8.1, -0.01, 0.1, 0.05),
            Drift("kh", 13.0, -0.06, 1.0),
            Drift("gh", 16.0, 0.02, 1.0, 0.4),
            Drift("no3", 15.0, 2.2, 5.0, 3.0),
            Drift("ammonia", 0.0, 0.0, 0.25),
            Drift("no2", 0.0, 0.0, 0.1),
        ),
        test_every=7,
        change="changed 40%",
        change_every=10,
    ),
    Invented(
        name="Lagoon",
        kind="marine",
        volume_l=150.0,
        stock=("2 clownfish", "3 cleaner shrimps"),
        water=(
            Drift("temp", 25.5, 0.0, 0.5, 0.3),
            Drift("ph", 8.2, -0.005, 0.1, 0.05),
            Drift("kh", 9.0, -0.12, 0.5),
            Drift("ca", 430.0, -2.0, 10.0, 5.0),
            Drift("no3", 3.0, 0.4, 1.0, 1.0),
        ),
        test_every=4,
        change="changed 15%",
        change_every=14,
    ),
)


async def build(app: App, address: Address) -> None:
    """Fill an empty database with the three tanks and their season, up to now.

    Parameters
    ----------
    app : App
        The running house; its clock says when the season ends.
    address : Address
        The chat that gets the tanks.
    """
    chance = random.Random(SEED)  # noqa: S311 - invented data, the same each time
    now = app.clock.now()
    async with app.database.write() as uow:
        room = _Room(uow, address, app.new_chat)
        for tank in TANKS:
            await _begin(room, tank, now)
            for day, text in _season(tank, chance):
                at = now - timedelta(weeks=WEEKS) + timedelta(days=day)
                await _say(room, tank, at + _hour(chance), text, chance)
            await _remind(room, tank, now)
        await uow.commit()


def _season(tank: Invented, chance: random.Random) -> Iterator[tuple[float, str]]:
    """Lines of a season with the day on which each was sent."""
    for animals in tank.stock:
        yield 0.0, f"added {animals}"
    since_change = 0
    for day in range(WEEKS * 7):
        if day % tank.test_every == 0:
            yield float(day), _test(tank, day, since_change, chance)
        since_change += 1
        if day and day % tank.change_every == 0:
            yield day + 0.05, tank.change
            since_change = 0
        if day and day % 28 == 0:
            yield day + 0.1, "cleaned filter"


def _test(tank: Invented, day: int, since_change: int, chance: random.Random) -> str:
    parts = []
    for drift in tank.water:
        value = drift.start + drift.per_day * since_change + chance.gauss(0.0, drift.scatter)
        if drift.name == "kh":
            value -= tank.fading * day / 7
        stepped = max(0.0, round(value / drift.step) * drift.step)
        parts.append(f"{drift.name} {stepped:g}")
    return " ".join(parts)


@dataclass(frozen=True, slots=True)
class _Room:
    """Where the history is written: the unit of work, the chat, and what a new chat starts with."""

    uow: UnitOfWork
    address: Address
    new: NewChat


async def _turn(room: _Room, at: datetime, text: str, who: str) -> Turn:
    incoming = Incoming(
        address=room.address,
        update_id=f"demo:{at.isoformat()}:{text}",
        kind="message",
        at=at,
        text=text,
        author_id=who,
        author_name=who,
    )
    return await Turn.begin(room.uow, incoming, room.new)


async def _begin(room: _Room, tank: Invented, now: datetime) -> None:
    turn = await _turn(room, now - timedelta(weeks=WEEKS), "", ROTA[0])
    await turn.add_tank(Tank(name=tank.name, kind=tank.kind, volume_l=tank.volume_l))


async def _say(room: _Room, tank: Invented, at: datetime, text: str, chance: random.Random) -> None:
    """Store a line as it would have been, had it been sent then."""
    turn = await _turn(room, at, f"{tank.name.lower()}: {text}", chance.choice(ROTA))
    stored = turn.tank_named(tank.name)
    parsed = parse(turn.incoming.text, turn.context())
    if stored is None or parsed.doubts:
        raise ValueError(f"the demonstration says what cannot be read: {turn.incoming.text}")
    told = place(turn, parsed, stored)
    await turn.uow.log.add(turn.chat.id, replace(entry_of(turn, told), kind="demo"))


async def _remind(room: _Room, tank: Invented, now: datetime) -> None:
    """Reminders that fall due in the days to come."""
    turn = await _turn(room, now, "", ROTA[0])
    for task, days in (("test", tank.test_every), ("change", tank.change_every)):
        asked = Command("remind", f"{task} {tank.name} every {days} days at 18:00")
        await reminder_requests.command(turn, asked, parse("", turn.context()))


def _hour(chance: random.Random) -> timedelta:
    """A moment of the library's opening hours, seen from the hour at which the season ends."""
    return timedelta(minutes=chance.randrange(0, 50))
