"""How a call for help ends: what must be told before it stands no longer.

What was called out stands in the way of every dose and every verdict until it is told to be over,
or so long went by. A poison ends otherwise, by a test or by new water: see
`core.advice.emergencies`.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import timedelta
from typing import Final

from core.advice.calls import HEATED, OF_PEOPLE, ORDER, Danger
from core.advice.emergencies import read_since_call
from core.advice.recent_change import has_crashed
from core.advice.state import State

SIGNS: Final[frozenset[Danger]] = frozenset({"gasping", "general", "maybe_dead"})
"""Calls of what animals look like: nobody knows why yet."""

SUFFERING: Final[tuple[Danger, ...]] = ("gasping", "general")
"""Signs under which nothing is dosed, as their first steps say; air goes first."""

CALLED_ONLY: Final[frozenset[Danger]] = frozenset({*SUFFERING, "ammonia"})
"""What forbids a dose because it was told, with no reading behind it."""

OVER_BY: Final[Mapping[str, frozenset[Danger]]] = {
    "better": SIGNS
    | {"illness", "jumped", "co2_high", "sulfide", "overfed", "splashed", "sting", "wound"},
    "power_back": frozenset({"power", "filter"}),
    "off": frozenset({"electric", "heater_dry", "heater", "heater_hot"}),
    "mended": HEATED | {"leak", "filter", "frozen", "jumped"},
    "helped": OF_PEOPLE - {"electric"},
}
"""What was told → the calls that are over by it. Who looks well after poison is not over it."""

READ: Final[Mapping[Danger, tuple[str, ...]]] = {
    "ammonia": ("ammonia",),
    "nitrite": ("nitrite",),
    "ph_crash": ("ph",),
    "ph_high": ("ph",),
}
"""Calls that are over once so much was read: the reading speaks then."""

TOLD: Final[frozenset[Danger]] = HEATED | {
    "power",
    "filter",
    "leak",
    "jumped",
    "co2_high",
    "sulfide",
    "overfed",
}
"""Calls that a verdict says again before it, though no reading shows them."""

_HOUR: Final = timedelta(hours=1)

HOLDS: Final[Mapping[Danger, timedelta]] = {
    "electric": 24 * _HOUR,
    "drowning": 6 * _HOUR,
    "fumes": 6 * _HOUR,
    "co_air": 6 * _HOUR,
    "co2_air": 6 * _HOUR,
    "collapsed": 6 * _HOUR,
    "toxin": 6 * _HOUR,
    "breath": 6 * _HOUR,
    "swallowed": 6 * _HOUR,
    "splashed": 2 * _HOUR,
    "bleeding": 2 * _HOUR,
    "sting": 2 * _HOUR,
    "pet": 2 * _HOUR,
}
"""How long a danger to people goes before what is asked of water, unless told over; ours.

Current in the water holds for a day: a hand that goes in dies of it.
"""


def ended_by(how: str) -> frozenset[Danger]:
    """The calls that are over by what was told."""
    return OVER_BY.get(how, frozenset())


def open_in(state: State) -> Danger | None:
    """The call that stands in the way of calling a tank well; None where none does.

    Poison has its own rule, `core.advice.emergencies.standing_call`, and illness is what the
    readings are asked for.
    """
    named = (each for each in ORDER if each in state.called and each not in state.called_over)
    for danger in named:
        if danger in SIGNS | TOLD:
            return danger
        if danger in READ and not read_since_call(state, danger, READ[danger]):
            return danger
    return None


def tested_well(state: State, danger: Danger) -> bool:
    """Whether a poison was read as 0 since a call: the readings then tell something of it."""
    read = read_since_call(state, danger, ("ammonia", "nitrite"))
    return any(each.value == 0.0 and each.is_fresh(state.now) for each in read)


def suffering(state: State) -> Danger | None:
    """The sign that no dose goes beside, or ammonia called out and not read since; None of none.

    A pH that crashed is known to be the cause: its own steps say when a little goes in.
    """
    if has_crashed(state):
        return None
    if open_in(state) == "ammonia":
        return "ammonia"
    return next((d for d in SUFFERING if d in state.called and d not in state.called_over), None)
