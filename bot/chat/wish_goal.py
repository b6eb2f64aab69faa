"""What is wished of a value, in the unit that it is told in: beside the value, or by itself."""

from __future__ import annotations

from typing import Any, Final

from bot.chat.turn import Turn
from core.message import doubts, parse
from core.message.lone_number import Lone, lone_number
from core.message.model import Doubt, Parsed, Value
from core.message.volume_said import volume_alone

_TOLD: Final = frozenset({doubts.WISH, doubts.STRAY_NUMBER})
"""Doubts of a message that may tell what is wished, and of how much water."""


def order(value: Value, said: Lone) -> str:
    """The order that a wish for a value is, in the unit that the value was told in if need be."""
    unit = said.unit or carried(value, said.number)
    way = "get" if _falls(value, said.number, unit) else "dose"
    return f"{way} {value.analyte} {said.number:.10g} {unit}".strip()


async def goal(turn: Turn, said: Lone, analyte: str) -> dict[str, Any] | None:
    """What is wished of an analyte, in the unit that its last reading was told in if need be."""
    unit = said.unit
    if not unit and (stored := turn.current_tank) is not None:
        rows = await turn.uow.log.last_of_each(stored.id, [analyte], until=turn.now)
        unit = next((carried(row.what, said.number) for row in rows), "")
    target = in_canonical(turn, analyte, said, unit)
    if target is None and not unit:
        target = _guessed(turn, analyte, said)
    return None if target is None else {"target": target, "delta": None}


def in_canonical(turn: Turn, analyte: str, said: Lone, unit: str) -> float | None:
    """A wish in the analyte's canonical unit; None where it is in none that this has."""
    wished = parse(f"dose {analyte} {said.number:.10g} {unit}", turn.context()).question
    return None if wished is None else wished.target


def _guessed(turn: Turn, analyte: str, said: Lone) -> float | None:
    """What a number that no water has in degrees is in another unit: `want about 100` is in ppm."""
    text = f"dose {analyte} {said.number:.10g}"
    ways = [way for each in parse(text, turn.context()).doubts for way in each.choices]
    in_unit = [way for way in ways if way.startswith(f"{text} ")]
    wished = parse(in_unit[0], turn.context()).question if len(in_unit) == 1 else None
    return None if wished is None else wished.target


def carried(told: Value, number: float) -> str:
    """The unit of a reading, where a bare number beside it is nearer in that than in degrees."""
    if told.unit is None or told.value is None or not isinstance(told.canonical, float):
        return ""
    off_as_told, off_as_is = abs(number - told.value), abs(number - told.canonical)
    return told.unit if told.unit != told.canonical_unit and off_as_told < off_as_is else ""


def measured(parsed: Parsed, analyte: str) -> Value | None:
    """The one value of an analyte in a message that tells but values, wishes and a volume."""
    said = parsed.events or parsed.question or parsed.command
    found = [value for value in parsed.values if value.analyte == analyte]
    if said or len(found) != 1 or any(doubt.reason not in _TOLD for doubt in parsed.doubts):
        return None
    return found[0]


def wished_beside(turn: Turn, parsed: Parsed, analyte: str) -> dict[str, Any] | None:
    """What is wished beside a value, and of how much water; None where a number is neither."""
    changes: dict[str, Any] = {}
    for doubt in parsed.doubts:
        told = (
            _target(turn, doubt, analyte) if doubt.reason == doubts.WISH else _volume(turn, doubt)
        )
        if told is None or told.keys() & changes.keys():
            return None
        changes |= told
    return changes


def _target(turn: Turn, doubt: Doubt, analyte: str) -> dict[str, Any] | None:
    """What is wished, without a name or of the value beside it: `kh 2, want kh 5`."""
    for value in parse(doubt.text, turn.context()).values:
        if value.analyte == analyte and value.value is not None:
            return {"wish": Lone(value.value, value.unit or "", wished=True)}
    said = lone_number(doubt.text)
    return None if said is None else {"wish": said}


def _volume(turn: Turn, doubt: Doubt) -> dict[str, Any] | None:
    volume = volume_alone(doubt.text, turn.chat.us_gallons)
    return None if volume is None else {"volume_l": volume}


def _falls(value: Value, target: float, unit: str) -> bool:
    """Whether a value is wished lower than it was told; of another unit it is not known."""
    now = value.value if unit and unit == value.unit else value.canonical
    if unit and unit != value.unit:
        return False
    most = max(now) if isinstance(now, tuple) else now
    return most is not None and target < most
