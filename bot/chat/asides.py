"""What is said of the message before, or in the place of readings: asked, never stored unasked.

``quarry: same`` may mean that all was measured again and has not moved, ``should be kh 8`` that a
number was mistyped or what is wished.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat import corrections, readings, unheard
from bot.chat.asking import ask
from bot.chat.corrections import OF_LATE, STILL_MEANT
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.store.tanks import StoredTank
from core.message import doubts, parse
from core.message.followups import should_be, should_have_been, unchanged, was_slip
from core.message.model import Doubt, Parsed, Value
from core.message.volume_said import without_other


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Ask what such a message means; None where it is none, or nothing stands that it is about."""
    if not turn.incoming.addressed or parsed.values or parsed.events or parsed.command is not None:
        return None
    if (amended := await _should_have(turn)) is not None:
        return amended
    return await _should(turn, parsed) or await _same(turn, parsed)


async def _same(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Offer the readings of the newest entry of a tank again."""
    text = turn.incoming.text
    named = next((tank for tank in turn.tanks if unchanged(text, tank.name)), None)
    stored = turn.current_tank if unchanged(text) else named
    told = None if stored is None else await _newest(turn, stored)
    if stored is None or told is None:
        return None
    doubt = Doubt(text, 0, len(text), doubts.NO_VALUE, suggestion=f"{stored.name}: {told}")
    return [await ask(turn, [doubt], parsed)]


async def _newest(turn: Turn, stored: StoredTank) -> str | None:
    """The readings of a tank's newest entry, as they would be typed; None where none is of late."""
    for entry in await turn.uow.log.newest(turn.chat.id, OF_LATE):
        values = [r.what for r in entry.readings if r.tank_id == stored.id]
        if values and all(value.value is not None for value in values):
            return " ".join(map(_typed, values))
    return None


def _typed(value: Value) -> str:
    mark = "" if value.qualifier == "=" else value.qualifier
    basis = f" as {value.basis}" if value.basis and value.unit else ""
    name = value.analyte.replace("_", " ")
    return f"{name} {mark}{value.value:.10g} {value.unit or ''}".rstrip() + basis


async def _should_have(turn: Turn) -> list[Reply] | None:
    """`nitrate should've been 100`: what was told of it of late is put right; nothing is wished."""
    said = should_have_been(turn.incoming.text)
    meant = None if said is None else parse(f"no, {without_other(said)}", turn.context())
    if meant is None or meant.command is None or meant.command.name != "correct":
        return None
    if not meant.values or meant.doubts or await corrections.told_of_late(turn, meant) is None:
        return None
    return await corrections.correct(turn, meant.command, meant)


async def _should(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Right after a reading of it, a value that should be: put right, or wished."""
    said = should_be(turn.incoming.text)
    if said is None or len(parsed.doubts) != 1 or parsed.doubts[0].reason != doubts.WISH:
        return None
    doubt = parsed.doubts[0]
    meant = doubt.suggestion
    latest = await turn.uow.log.newest(turn.chat.id, 1)
    if not latest or turn.now - latest[0].at > STILL_MEANT or not latest[0].readings:
        return None
    right = parse(f"no, {doubt.text}", turn.context())
    told = {r.what.analyte: r.what.value for r in latest[0].readings}
    sure = right.command is not None and len(right.values) == 1 and not right.doubts
    if sure and right.command is not None and right.values[0].analyte in told:
        (value,) = right.values
        if was_slip(turn.incoming.text) or _point_moved(told[value.analyte], value.value):
            turn.incoming = replace(turn.incoming, text=f"no, {doubt.text}")
            return await corrections.correct(turn, right.command, right)
    if not meant:
        return None
    doubt = replace(doubt, suggestion=None, value=None, choices=(f"no, {doubt.text}", meant))
    asked = await readings.keep(turn, replace(parsed, doubts=(doubt,)))
    if sure:  # until it is answered nothing is good by the number before
        may_be = replace(doubt, reason=doubts.CONFLICT, value=right.values[0], choices=())
        await unheard.note(turn, replace(parsed, doubts=(may_be,)))
    return asked


_SHIFTS: Final = (10.0, 100.0, 0.1, 0.01)


def _point_moved(told: float | None, meant: float | None) -> bool:
    """Whether two numbers have the same digits, and their points apart: 4 and 0.4."""
    return bool(told and meant) and any(
        abs(told * shift - meant) <= 1e-6 * meant for shift in _SHIFTS if told and meant
    )
