"""How much a tank holds, put right: by what is not so, and by what is so only now.

``it's actually 400 not 4000`` puts right what has the number 4000: a dose or reading of late, else
the tank whose volume it is. Where nothing has it, nothing is put right and it is asked.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Any, Final

from bot.chat import amending, corrections, replanned, resizing, tanks_told
from bot.chat.given_plan import running
from bot.chat.model import Reply
from bot.chat.patience import PATIENCE
from bot.chat.tank_volumes import ask_from_now, ask_whether
from bot.chat.tank_words import NOUNS, plain
from bot.chat.turn import ASKED, Turn
from bot.chat.words import tanks as words
from bot.store.log import Entry
from bot.store.offers import AT_HAND
from bot.store.tanks import StoredTank
from core.advice import limits
from core.message import parse
from core.message.amount_named import numbers_in
from core.message.amounts import volume_litres
from core.message.how_full import how_full
from core.message.model import Parsed
from core.message.volume_said import (
    Exchanged,
    exchanged,
    half_full,
    of_now,
    volume_alone,
    volume_told,
)

SAME: Final = 0.01
"""So near, as a share, a number told is a tank's volume: 23 gallons are 87 L."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Put a volume right, or ask; None where nothing of it is told."""
    said = turn.incoming
    if not said.addressed or said.reply_to is not None or parsed.question is not None:
        return None
    if parsed.values or parsed.events:
        return None
    if not said.group and (asked := await _of_now(turn)) is not None:
        return asked
    if (again := await _again(turn)) is not None:
        return again
    stored, text = tanks_told.spoken_of(turn, turn.incoming.text)
    found = exchanged(text)
    return None if found is None else await _exchanged(turn, found, stored, text)


async def _of_now(turn: Turn) -> list[Reply] | None:
    """`it's half full`, `only 40 l in it at the moment`: whether to reckon with it is asked."""
    stored, text = tanks_told.spoken_of(turn, turn.incoming.text)
    stored = stored or turn.current_tank
    held = None if stored is None else stored.tank.volume_l
    if stored is None or held is None:
        return None
    share = 0.5 if half_full(text) else how_full(text)
    volume = None if share is None else share * held
    if volume is None and of_now(text):
        volume = volume_alone(text, turn.chat.us_gallons)
    if volume is None or abs(volume - held) <= SAME * held or not _possible(volume):
        return None
    return [await ask_from_now(turn, stored, volume)]


async def _again(turn: Turn) -> list[Reply] | None:
    """`no, it's 26 gallons` right after a volume was put on record."""
    newest = await turn.uow.offers.latest(turn.chat.id, 1)
    held = newest[0].context.get(replanned.RESIZED) if newest else None
    if held is None or turn.now - newest[0].made_at > PATIENCE:
        return None
    stored = turn.tank_by_id(held["tank_id"])
    volume = volume_told(turn.incoming.text, turn.chat.us_gallons)
    if stored is None or volume is None:
        return None
    return await _set(turn, stored, volume)


async def _set(turn: Turn, stored: StoredTank, volume: float) -> list[Reply]:
    if not _possible(volume):
        return [await turn.reply(words.volume_implausible(volume))]
    before = stored.tank.volume_l
    return await resizing.changed(turn, await turn.change_tank(stored, volume_l=volume), before)


def _possible(volume: float) -> bool:
    return limits.VOLUME_SMALLEST <= volume <= limits.VOLUME_LARGEST


A_DOSE: Final = 0.1
"""Units of no more than this measure what is put in, not water: mL. [L]"""


async def _exchanged(
    turn: Turn, found: Exchanged, stored: StoredTank | None, text: str
) -> list[Reply] | None:
    """What has the wrong number is put right; None where others know what has it."""
    units = [volume_litres(f"1 {unit}") for unit in (found.unit, found.wrong_unit) if unit]
    of_water = any(litres is not None and litres > A_DOSE for litres in units)
    if (found.unit or found.wrong_unit) and not of_water:
        return None
    of_tank = stored is not None or any(plain(word) in NOUNS for word in text.split())
    if not of_tank:
        said = await _was_said(turn, found.wrong, 1)
        entries = [each for each in await _of_late(turn) if _has(each, found.wrong, of_water)]
        if not said and entries:
            if await _after_plan(turn):
                return None  # 9 instead of 3: so much of it went in
            return await _of_entry(turn, entries[0], found)
        said = said or await _was_said(turn, found.wrong, AT_HAND)
        if said == "asked":
            _as_wish(turn, found)
        if said:
            return None
    fitting = _fitting(turn, found, stored)
    if len(fitting) == 1:
        (tank, volume) = fitting[0]
        return await _set(turn, tank, volume)
    stored = stored or turn.current_tank
    volume = _litres(turn, found.meant, found.unit)
    if (of_tank or of_water) and stored is not None and not fitting and _possible(volume):
        return [await ask_whether(turn, stored, volume)]
    return [await turn.reply(words.nothing_is(found.wrong))]


def _litres(turn: Turn, number: float, unit: str) -> float:
    """A number in litres; a bare one is of litres. [L]"""
    told = volume_litres(f"{number:.10g} {unit}", turn.chat.us_gallons) if unit else None
    return number if told is None else told


def _fitting(
    turn: Turn, found: Exchanged, stored: StoredTank | None
) -> list[tuple[StoredTank, float]]:
    """Tanks whose volume is the wrong number, in the unit told or in litres or gallons."""
    unit = found.wrong_unit or found.unit
    units = [unit] if unit else ["l", "gal"]
    meant = [
        (tank, _litres(turn, found.meant, found.unit or each))
        for tank in (turn.tanks if stored is None else [stored])
        for each in units
        if tank.tank.volume_l is not None
        and _near(_litres(turn, found.wrong, each), tank.tank.volume_l)
    ]
    used = [each for each in meant if each[0] == turn.current_tank]
    return used or meant


async def _after_plan(turn: Turn) -> bool:
    """Whether a plan was the newest answer, or a dose by it the newest that was told."""
    plan, newest = await running(turn), await turn.uow.offers.latest(turn.chat.id, 1)
    if plan is None or not newest:
        return False
    if newest[0].id == plan.offer.id:
        return True
    entries = await turn.uow.log.newest(turn.chat.id, 1)
    return bool(entries) and [each.what.kind for each in entries[0].events] == ["dose"]


def _near(told: float, held: float) -> bool:
    return abs(told - held) <= SAME * held


async def _of_late(turn: Turn) -> list[Entry]:
    """The entries that a correction may be of, newest first."""
    newest = await turn.uow.log.newest(turn.chat.id, corrections.OF_LATE)
    return [each for each in newest if turn.now - each.at <= corrections.STILL_MEANT]


def _has(entry: Entry, number: float, of_water: bool) -> bool:
    """Whether an entry tells a number; behind a unit of water only litres count."""
    if not of_water:
        return amending.was(entry, number)
    told = [event.what.litres for event in entry.events]
    return any(each is not None and _near(number, each) for each in told)


async def _of_entry(turn: Turn, entry: Entry, found: Exchanged) -> list[Reply] | None:
    """Put right the one reading of several that has the number; what is alone others put right."""
    if len(entry.readings) < 2 or entry.events:
        return None
    values = [each.what for each in entry.readings if each.what.value == found.wrong]
    if len(values) != 1:
        return None
    (value,) = values
    basis = f"as {value.basis}" if value.basis else ""
    unit = found.unit or value.unit or ""
    text = f"no, {value.analyte.replace('_', ' ')} {found.meant:.10g} {unit} {basis}".strip()
    parsed = parse(text, turn.context())
    if parsed.command is None or len(parsed.values) != 1 or parsed.doubts:
        return None
    return await corrections.correct(turn, parsed.command, parsed)


async def _was_said(turn: Turn, number: float, most: int) -> str:
    """Whether of the newest the `answer` has a number, or what was `asked`; else ""."""
    for offer in await turn.uow.offers.latest(turn.chat.id, most):
        if turn.now - offer.made_at > corrections.STILL_MEANT:
            break
        if offer.entry_id is not None:
            continue  # an entry tells its own numbers
        told = dict(offer.context.get("facts", {}))
        told.pop("volume_l", None)
        asked = offer.context.get(ASKED, {})
        answered = {name: told[name] for name in told if name not in _WISHED | _STOOD}
        if _is_in(number, _numbers(answered)):
            return "answer"
        wished = [
            *_numbers({name: told[name] for name in _WISHED & told.keys()}),
            *_numbers(asked.get("changes", {})),
        ]
        wished += [each for each in numbers_in(asked.get("text", "")) if each is not None]
        if _is_in(number, wished):
            return "asked"
    return ""


_WISHED: Final = frozenset({"to", "delta", "goals"})
_STOOD: Final = frozenset({"from"})


def _is_in(number: float, numbers: Iterable[float]) -> bool:
    return any(abs(each - number) < amending.NEAR for each in numbers)


def _as_wish(turn: Turn, found: Exchanged) -> None:
    """`its 4 not 5` after a plan to 5 is of the wish, and tells of no dose: not 5, 4."""
    text = f"not {found.wrong:.10g}, {found.meant:.10g} {found.unit}".strip()
    turn.incoming = replace(turn.incoming, text=text)


def _numbers(held: Any) -> Iterable[float]:
    """Every number that facts hold, however deep."""
    if isinstance(held, dict):
        held = list(held.values())
    if isinstance(held, list | tuple):
        return [number for each in held for number in _numbers(each)]
    return [float(held)] if isinstance(held, int | float) and not isinstance(held, bool) else []
