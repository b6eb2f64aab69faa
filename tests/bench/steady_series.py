"""False alarms of trends on steady tanks whose kits are noisy.

A tank is tested once to thrice a week; its values do not move, the kits err by up to a step.
Each week every analyte is asked for a trend, since the last change and over the season; a week
in which any is called sure is a false alarm. Run: python -m tests.bench.steady_series [YEARS]
"""

from __future__ import annotations

import random
import sys
from datetime import datetime, timedelta

from core.advice.state import Happening, Measured, State
from core.advice.trends import long_trend, trend
from core.message.model import Event
from core.tank import Tank
from tests.core.advice.waters import NOON

STEADY = {
    "ph": (7.2, 0.1, 0.2),
    "kh": (6.0, 0.5, 1.0),
    "gh": (9.0, 0.5, 1.0),
    "nitrate": (20.0, 4.0, 5.0),
    "temperature": (25.0, 0.4, 0.5),
}
"""Value, standard deviation of the reading, and the kit's step, by analyte. [canonical unit]"""


def _year(chance: random.Random, per_week: int, changes: bool) -> tuple[list[Measured], list]:
    readings, events = [], []
    for day in range(366):
        at = NOON - timedelta(days=365 - day, minutes=chance.randrange(0, 600))
        if chance.random() < per_week / 7.0:
            for analyte, (value, spread, step) in STEADY.items():
                told = round(chance.gauss(value, spread) / step) * step
                readings.append(Measured(analyte, told, told - step, told + step, at, step=step))
        if changes and day % 14 == 0:
            events.append(Happening(at, Event("water_change", percent=30.0)))
    return readings, events


def _asked(readings: list[Measured], events: list[Happening], now: datetime) -> bool:
    history: dict[str, tuple[Measured, ...]] = {
        analyte: tuple(r for r in readings if r.analyte == analyte and r.at <= now)
        for analyte in STEADY
    }
    state = State(Tank("Fern"), now, {}, (), history, tuple(e for e in events if e.at <= now))
    found = (ask(state, analyte) for analyte in STEADY for ask in (trend, long_trend))
    return any(one is not None and one.is_sure for one in found)


def alarms(years: int, seed: int) -> tuple[int, int]:
    """Weeks asked, and weeks in which a steady tank was said to move."""
    chance = random.Random(seed)  # noqa: S311 - invented data
    weeks = false = 0
    for year in range(years):
        readings, events = _year(chance, 1 + year % 3, changes=year % 2 == 0)
        for week in range(1, 53):
            weeks += 1
            false += _asked(readings, events, NOON - timedelta(weeks=52 - week))
    return weeks, false


if __name__ == "__main__":
    asked = int(sys.argv[1]) if len(sys.argv) > 1 else 100
    total, wrong = alarms(asked, 7)
    print(f"{asked} years, {total} weeks, {wrong} false alarms: {100 * wrong / total:.2f} in 100")
