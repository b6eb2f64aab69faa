"""What goes to another tank than the one in use, as only that one can be meant.

More of a kind, and its young, join those that live there: ``got 5 more corys`` while the corys
live in Fern, ``my guppies had 20 babies``. Sea water is of the only sea: ``sg 1.026``.
"""

from __future__ import annotations

from typing import Final

from bot.chat.asking import ask_tank
from bot.chat.model import Reply
from bot.chat.told import Told
from bot.chat.turn import Turn
from bot.chat.words import joining as words
from bot.chat.words.losses import it_was
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.advice._livestock_words import is_young, kind_alone, plain_name
from core.advice.findings._sea import FRESH
from core.advice.livestock import lookup
from core.advice.stock import meant, tally
from core.message import herd
from core.message.model import Event, Parsed, Value
from core.message.salinity_talk import SALINITIES


async def their_tank(turn: Turn, parsed: Parsed, used: StoredTank | None) -> StoredTank | None:
    """The only tank where their like live, if that is another one; None where nothing tells it.

    `used` is the tank that what names none is taken for.
    """
    named = parsed.tank is not None or any(event.tank for event in parsed.events)
    if named or parsed.values or used is None or len(turn.tanks) < 2:
        return None
    kinds = {_kind(turn, event) for event in parsed.events}
    if len(kinds) != 1 or (kind := kinds.pop()) is None:
        return None
    home = await only_home(turn, kind)
    return None if home is None or home.id == used.id else home


async def only_sea(turn: Turn, parsed: Parsed, used: StoredTank) -> StoredTank | Reply | None:
    """The only marine tank, for sea water told without a tank while a fresh one is in use.

    Asked which tank it is where no tank or several may be meant; None where nothing speaks
    against the tank in use.
    """
    named = parsed.tank is not None or any(value.tank for value in parsed.values)
    if named or len(turn.tanks) < 2 or used.tank.kind not in FRESH:
        return None
    if not any(_is_sea_water(value) for value in parsed.values):
        return None
    seas = [tank for tank in turn.tanks if tank.tank.is_sea]
    return seas[0] if len(seas) == 1 and not parsed.events else await ask_tank(turn)


def _is_sea_water(value: Value) -> bool:
    """Whether a reading is a salinity that only a sea has."""
    told = value.canonical if isinstance(value.canonical, tuple) else (value.canonical,)
    numbers = [each for each in told if each is not None]
    is_salinity = value.analyte == "salinity" and value.qualifier != "<" and bool(numbers)
    return is_salinity and min(numbers) >= SALINITIES[0]


def tells_sea(value: Value) -> bool:
    """Whether no fresh water has such a reading: a sea's salinity, calcium or magnesium."""
    told = value.canonical if isinstance(value.canonical, tuple) else (value.canonical,)
    least = _IONS.get(value.analyte)
    numbers = [each for each in told if each is not None]
    ions = least is not None and value.qualifier != "<" and bool(numbers) and min(numbers) >= least
    return ions or _is_sea_water(value)


_IONS: Final = {"calcium": 350.0, "magnesium": 900.0}
"""So much of these only sea water has; natural: 412 and 1290 at 35 g/kg. [mg/L]"""


async def only_home(turn: Turn, kind: str) -> StoredTank | None:
    """The only tank that has a kind on record."""
    homes = [
        tank
        for tank in turn.tanks
        if meant(tally(await turn.uow.log.stock(tank.id, until=turn.now)), kind) is not None
    ]
    return homes[0] if len(homes) == 1 else None


def _kind(turn: Turn, event: Event) -> str | None:
    """The kind of which more came, or whose young were born; None where it is neither."""
    said = event.species or ""
    kind = kind_alone(plain_name(said))
    further = any(herd.saying(word) == "further" for word in plain_name(turn.incoming.text).split())
    if event.kind != "added" or not (further or is_young(said)):
        return None
    return kind if lookup(kind).species is not None else None


def lines(told: Told, used: StoredTank | None) -> list[str]:
    """Why it is noted in another tank than the one in use."""
    if used is None:
        return []
    name = told.tank.name
    if any(_is_sea_water(reading.what) for reading in told.readings):
        return [words.of_the_sea(name, used.name)]
    return [words.of_its_plan(name, used.name) if told.readings else words.joined(name)]


def choices(used: StoredTank | None) -> list[Choice]:
    """The button that takes it to the tank in use."""
    if used is None:
        return []
    return [Choice(it_was(used.name), "say_again", "", {"text": f"that was {used.name}"})]
