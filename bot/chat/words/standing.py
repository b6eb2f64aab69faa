"""How a tank stands and where it is going, in a few lines."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta

from bot.chat.words.numbers import plain
from core.advice.state import Measured
from core.advice.trends import Trend
from core.analytes import ANALYTES


def nothing_measured(tank: str) -> list[str]:
    """No reading to judge by."""
    return [f"{tank}: nothing is measured yet. Send for example: ph 7.2 kh 4 ammonia 0 temp 24"]


def lead(tank: str, line: str) -> str:
    """The worst finding, or the full answer to good water."""
    return f"{tank}: {line}"


def nothing_off(tank: str) -> str:
    """No rule speaks; what was measured is within the limits that are known."""
    return f"{tank}: nothing that was measured passes a limit that I know. Change nothing for it."


def only_old(tank: str) -> str:
    """Every reading is too old to judge the water by."""
    return f"{tank}: I cannot tell, the newest reading is over three days old. Test again first."


def measured(readings: Iterable[Measured], now: datetime) -> list[str]:
    """The newest reading of each analyte: the fresh ones in a line, the old ones in another."""
    fresh: list[str] = []
    old: list[str] = []
    for reading in readings:
        (fresh if reading.is_fresh(now) else old).append(_reading(reading, now))
    lines = [f"Measured: {', '.join(fresh)}."] if fresh else []
    if old:
        lines.append(f"Old: {', '.join(old)}.")
    return lines


def _reading(reading: Measured, now: datetime) -> str:
    row = ANALYTES.get(reading.analyte)
    label, unit, decimals = (row.label, row.unit, row.decimals) if row else (reading.analyte, "", 2)
    sign = {"<": "under ", ">": "over "}.get(reading.qualifier, "")
    number = plain(reading.value, decimals)
    if reading.step == 0.0 and reading.low < reading.high and not reading.is_limit:
        number = (
            f"{plain(reading.low, decimals)}–{plain(reading.high, decimals)}"  # told as a range
        )
    written = "" if unit in {"pH", ""} else f" {unit}"
    days = reading.age(now) / timedelta(days=1)
    since = "" if reading.is_fresh(now) else f" ({days:.0f} days ago)"
    return f"{label} {sign}{number}{written}{since}"


def due_next(what: str, when: str) -> str:
    """The next reminder of the tank."""
    return f"Due next: {what}, {when}."


def change_now(tank: str, lines: Sequence[str]) -> list[str]:
    """A finding is mended by new water."""
    return [f"{tank}: yes. {lines[0]}", *lines[1:]]


def change_unneeded(tank: str, last: timedelta | None) -> list[str]:
    """No reading asks for new water; the routine stands."""
    known = "" if last is None else f" The last one was {_ago(last)}."
    return [f"{tank}: nothing that was measured asks for a water change now.{known}"]


def keep_routine() -> str:
    """What a routine is for."""
    return "Keep to your routine: small and regular is better than large and rare."


def _ago(span: timedelta) -> str:
    days = span / timedelta(days=1)
    return "today" if days < 1 else f"{days:.0f} day{'' if round(days) == 1 else 's'} ago"


def reaches(tank: str, found: Trend, limit: float, days: Sequence[float]) -> list[str]:
    """When an analyte on the move is at a value, with the interval that its readings leave."""
    label, unit, decimals = _row(found.analyte)
    where = f"{label} {plain(limit, decimals)}{unit}"
    moves = (
        f"It moves {found.per_day:+.2g}{unit} a day, by {found.count} readings over"
        f" {found.span / timedelta(days=1):.0f} days."
    )
    if days[0] == 0.0:
        return [f"{tank}: by its trend it is at {where} by now. Test it.", moves]
    soonest, latest = f"{days[1]:.0f}", f"{days[2]:.0f}" if math.isfinite(days[2]) else "never"
    return [f"{tank}: {where} in about {days[0]:.0f} days ({soonest} to {latest}).", moves]


def no_trend(tank: str, analyte: str) -> list[str]:
    """Too few readings, or they do not move surely."""
    label, _, _ = _row(analyte)
    return [
        f"{tank}: I cannot tell. The readings of {label} on record show no sure movement that way.",
        "Five readings over some days, without a change or dose between, are the least for it.",
    ]


def _row(analyte: str) -> tuple[str, str, int]:
    row = ANALYTES.get(analyte)
    if row is None:
        return analyte, "", 2
    return row.label, "" if row.unit == "pH" else f" {row.unit}", row.decimals
