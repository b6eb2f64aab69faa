"""What was told and not understood: until it is told anew no verdict says that all is well."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any, Final

from bot.chat import volume_unheard
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.store.log import Entry
from bot.store.offers import UNHEARD, Offer
from bot.store.tanks import StoredTank
from core.advice.ammonia_gate import STILL_WARNS
from core.message import doubts
from core.message.asking_words import asks
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Doubt, Parsed
from core.message.plan_said import measures
from core.message.tokens import cut

STILL_MEANT: Final = volume_unheard.STILL_MEANT
PASSED: Final = 3
"""So many entries after it are the record's own word; ours."""
OPEN_AT_ONCE: Final = 3
"""So many numbers that wait for an answer are named; ours."""
TOLD: Final = 3
"""Words of a message without numbers that may tell a deed, at least."""
QUOTED: Final = 40
"""Characters of it that are said back."""

PASSED_OVER: Final = "passed_over"
"""Under which the newest entry is kept at the time when an amount came to nothing."""

_HELD: Final = ("values", "parts", "tank", "entry")
"""What is kept of a text that was asked about: its values and their words, where and when."""

_NUMBER: Final = re.compile(r"\d+(?:[.,]\d+)?|[.,]\d+")
_NO_READING: Final = frozenset(
    {doubts.WISH, doubts.AIM, doubts.QUESTIONED, doubts.OTHER_WATER, doubts.PRICE, doubts.NEGATED}
)
"""Doubts of what was never told to be so."""
_DEEDS: Final = frozenset({"event", "substance"})


@dataclass(frozen=True, slots=True)
class Left:
    """What was told and is on no record.

    Attributes
    ----------
    text : str
        The words, as far as they are said back.
    values : mapping of analyte to float
        What was asked about and not answered; canonical units.
    kit : bool
        True where the last test itself was doubted.
    open : bool
        True where no verdict may be good: a number, or the test, and nothing read since.
    others : tuple of Left
        Numbers that were asked about before it and not answered either, the newest first.
    """

    text: str
    values: Mapping[str, float] = field(default_factory=dict)
    kit: bool = False
    open: bool = False
    others: tuple[Left, ...] = ()
    dose: bool = False
    """Whether it tells of something that went in (`bot/chat/off_record.py`)."""


async def note(turn: Turn, parsed: Parsed) -> None:
    """Keep what of a message was not understood, if it may tell of the water."""
    asked = in_doubt(parsed.doubts)
    text = _part(turn, parsed)
    if text is None and turn.unheard and turn.incoming.addressed and measures(turn.incoming.text):
        await pass_over(turn)
        return
    if text is None and asked:
        text = next(doubt.text for doubt in parsed.doubts if doubt.value is not None)
    if text is None or not turn.incoming.addressed:
        return
    tanks = (parsed.tank, *(doubt.value.tank for doubt in parsed.doubts if doubt.value is not None))
    named = next((turn.tank_named(tank) for tank in tanks if tank), None)
    parts = {doubt.value.analyte: doubt.text for doubt in parsed.doubts if doubt.value is not None}
    tank_id = None if named is None else named.id
    held: dict[str, Any] = {"values": asked, "parts": parts, "tank": tank_id}
    older = [each for each in await _asked_before(turn) if not set(each["values"]) <= set(asked)]
    await _keep(turn, text, {**held, "older": older})


async def pass_over(turn: Turn) -> None:
    """Keep that an amount was named that nothing came of; what was not understood stays so."""
    found = await turn.uow.offers.unheard(turn.chat.id, turn.now - STILL_MEANT)
    held = {} if found is None else dict(found.context)
    (*_older, newest) = [0, *(each.id for each in await turn.uow.log.newest(turn.chat.id, 1))]
    await _keep(turn, held.pop(UNHEARD, ""), {**held, PASSED_OVER: newest})


async def passed_over(turn: Turn, offer: Offer) -> bool:
    """Whether an amount, or a line, behind an answer came to nothing, and no dose is logged since.

    What is said to be in may be of that.
    """
    found = await turn.uow.offers.unheard(turn.chat.id, turn.now - STILL_MEANT)
    if found is None or found.id < offer.id:
        return False
    of_line = found.context[UNHEARD] and not (found.context.get("kit") or found.context["values"])
    before = found.context.get(PASSED_OVER, found.context["entry"] if of_line else None)
    if before is None:
        return False
    newer = [each for each in await turn.uow.log.newest(turn.chat.id, PASSED) if each.id > before]
    return not any(event.what.kind == "dose" for entry in newer for event in entry.events)


async def disown(turn: Turn) -> None:
    """Keep that the last test was doubted by who did it."""
    held = {"kit": True, "older": await _asked_before(turn)}
    await _keep(turn, " ".join(turn.incoming.text.split()), held)


async def settle(turn: Turn, answered: Collection[str] = ()) -> None:
    """Let go of what was asked about: it was answered. What else was asked about stays open.

    `answered` are the texts that were doubted; without them, or where none is one, the newest.
    """
    asked = await _asked_before(turn)
    left = [each for each in asked if each["text"] not in answered]
    newest, *older = (left if len(left) < len(asked) else left[1:]) or [{}]
    held: dict[str, Any] = {key: newest[key] for key in _HELD if key in newest}
    await _keep(turn, newest.get("text", ""), {**held, "older": older})


async def _asked_before(turn: Turn) -> list[dict[str, Any]]:
    """The numbers that were asked about and not answered, the newest first."""
    found = await turn.uow.offers.unheard(turn.chat.id, turn.now - STILL_WARNS)
    if found is None:
        return []
    held = {name: found.context.get(name) for name in _HELD}
    newest = [{"text": found.context[UNHEARD], **held}] if held["values"] else []
    asked = [*newest, *found.context.get("older", [])]
    if turn.now - found.made_at > STILL_MEANT:
        asked = [each for each in asked if each["values"].get("ammonia")]
    return asked[:OPEN_AT_ONCE]


async def ammonia(turn: Turn, stored: StoredTank) -> Left | None:
    """The most ammonia that was told and not settled until it is read anew, within 14 days."""
    read = await turn.uow.log.last_of_each(stored.id, ["ammonia"], until=turn.now)
    since = max((each.entry_id for each in read), default=0)
    told = [
        Left(_shortly(str(each["text"])), each["values"], open=True)
        for each in await _asked_before(turn)
        if each["values"].get("ammonia", 0.0) > 0.0
        and each["tank"] in {None, stored.id}
        and each["entry"] >= since
    ]
    return max(told, key=lambda each: each.values["ammonia"], default=None)


async def open_poison(turn: Turn, stored: StoredTank | None) -> str | None:
    """The words of an ammonia or nitrite that was asked about and not answered; None without."""
    for each in await _asked_before(turn):
        of_it = stored is None or each["tank"] in {None, stored.id}
        if of_it and any(each["values"].get(poison, 0.0) > 0.0 for poison in _POISONS):
            return _shortly(str(each["text"]))
    return None


_POISONS: Final = ("ammonia", "nitrite")


def _shortly(text: str) -> str:
    return text if len(text) <= QUOTED else f"{text[: QUOTED - 1]}…"


async def _keep(turn: Turn, text: str, held: Mapping[str, Any]) -> None:
    (*_older, newest) = [0, *(each.id for each in await turn.uow.log.newest(turn.chat.id, 1))]
    context = {UNHEARD: text, "entry": newest, "said_by": turn.incoming.update_id, **held}
    if (volume := await volume_unheard.of(turn, text)) is not None:
        context[volume_unheard.KEY] = volume
    offer = Offer(choices=(), made_at=turn.now, expects=UNHEARD, context=context)
    await turn.uow.offers.add(turn.chat.id, offer)


async def left(turn: Turn, stored: StoredTank) -> Left | None:
    """What was not understood or not answered, and was not told anew since; the newest first.

    What went in untold goes before all of it.
    """
    other = await _left_of_words(turn, stored)
    said = (await state_of(turn, stored, turn.now)).went_in
    if said is None:
        return other
    return Left(said, open=True, dose=True, others=() if other is None else (other, *other.others))


async def _left_of_words(turn: Turn, stored: StoredTank) -> Left | None:
    found = await turn.uow.offers.unheard(turn.chat.id, turn.now - STILL_MEANT)
    if found is None:
        return None
    newer = await turn.uow.log.newest(turn.chat.id, PASSED)
    asked = [{**found.context, "text": found.context[UNHEARD]}, *found.context.get("older", [])]
    open_ = [each for held in asked if (each := _left(held, newer, stored)) is not None]
    if not open_:
        return None
    newest, *others = open_
    return replace(newest, others=tuple(others), open=any(each.open for each in open_))


def _left(held: Mapping[str, Any], newest: Sequence[Entry], stored: StoredTank) -> Left | None:
    """One thing that was told as it was kept; None where it is settled, or of another tank."""
    if not (text := str(held["text"])) or held.get("tank") not in {None, stored.id}:
        return None
    newer = [entry for entry in newest if entry.id > held["entry"]]
    read = {each.what.analyte for entry in newer for each in entry.readings}
    values: dict[str, float] = held.get("values") or {}
    parts: dict[str, str] = held.get("parts") or {}
    kit = bool(held.get("kit"))
    if kit and read:
        return None
    if not kit and (
        len(newer) >= PASSED or _told_anew(" ".join(parts.values()) or text, newer, stored)
    ):
        return None
    if values and set(values) <= read:
        return None
    if read & set(values):  # of two that were asked about the other is left
        values = {analyte: number for analyte, number in values.items() if analyte not in read}
        text = parts.get(next(iter(values)), text)
    said = _shortly(text)
    is_open = kit or bool(values) or (not read and bool(_numbers(text)))
    return Left(said, values, kit, is_open)


def in_doubt(found: Sequence[Doubt]) -> dict[str, float]:
    """The values that a message leaves in doubt, by analyte; of a range its worse end."""
    told: dict[str, float] = {}
    for doubt in found:
        if doubt.value is None or doubt.reason in _NO_READING - {doubts.QUESTIONED}:
            continue
        number = doubt.value.canonical
        if isinstance(number, tuple):
            number = max(number)
        if number is not None:
            told[doubt.value.analyte] = number
    return told


async def since(turn: Turn, offer: Offer) -> bool:
    """Whether a message behind the one that an offer answers was not understood.

    What is said next may be of that one: it puts nothing right that is older.
    """
    found = await turn.uow.offers.unheard(turn.chat.id, turn.now - STILL_MEANT)
    if found is None or found.id < offer.id or not found.context[UNHEARD]:
        return False
    if found.context.get("kit"):
        return False
    of = None if offer.entry_id is None else await turn.uow.log.get(turn.chat.id, offer.entry_id)
    return of is None or of.update_id != found.context.get("said_by")


def _part(turn: Turn, parsed: Parsed) -> str | None:
    """What of a message was not understood: a doubtful number, or all of what got the hint."""
    told = bool(parsed.values)
    for doubt in parsed.doubts:
        if told and doubt.reason == doubts.PAST:
            continue  # kh 12 now was 6: what stands now is on record
        if doubt.reason not in _NO_READING and _NUMBER.search(doubt.text):
            return doubt.text
    text = " ".join(turn.incoming.text.split())
    return text if turn.unheard and _may_tell(text) else None


def _may_tell(text: str) -> bool:
    """Whether words that were not understood may tell a reading or a deed."""
    if _NUMBER.search(text):
        return True
    if asks(text):
        return False
    tokens = cut(fold(text), lexicon(), text)
    if any(token.kind in _DEEDS or token.value == "adding" for token in tokens):
        return True
    return len(text.split()) >= TOLD


def _told_anew(text: str, newer: list[Entry], stored: StoredTank) -> bool:
    """Whether entries since, or what is known of the tank, hold every number of a text.

    Of a text without numbers any entry since does.
    """
    numbers = _numbers(text)
    if not numbers:
        return bool(newer)
    known = {stored.tank.volume_l, *(each.count for each in stored.tank.stock)}
    for entry in newer:
        known |= _numbers(entry.text) | {each.what.value for each in entry.readings}
    return numbers <= known


def _numbers(text: str) -> set[float]:
    return {float(found.replace(",", ".")) for found in _NUMBER.findall(text)}
