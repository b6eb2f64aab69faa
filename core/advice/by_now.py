"""A tank's readings as what went in since has made them: the last test tells of other water."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final

from core.advice.changes import source_water
from core.advice.outlook import outlook_of
from core.advice.potassium import dosed_so_far, left_of_measured
from core.advice.scheduling import moved_by
from core.advice.since import share_of
from core.advice.spoons import least_grams
from core.advice.state import Happening, Measured, State
from core.errors import CoreError
from core.message.waters import PURE, kind_of
from core.water import SUBSTANCES, Water, add, in_air, mix

MOVED: Final = ("kh", "gh", "ph", "calcium", "magnesium", "salinity")


LEAST_SEEN: Final = 0.05
SEEN: Final[Mapping[str, float]] = {"calcium": 1.0, "magnesium": 1.0}
"""Less than this moved is as if nothing went in; common practice. [canonical unit]"""


def by_now(state: State) -> State:
    """Let doses of known grams since the KH reading, and changes after them, move the readings.

    Parameters
    ----------
    state : State
        The tank with its events.

    Returns
    -------
    State
        The same where nothing went in since, or too little is known of it. What was read after
        the first of them stays as it was read; all readings keep their moment and their doubt.

    Notes
    -----
    A dose of the same moment went in after the reading, as in `core.advice.since`. The water rests
    with the carbon dioxide that its pH and KH told before.
    """
    kh, volume = state.last("kh"), state.tank.volume_l
    if kh is None or kh.is_limit or not volume or state.events is None:
        return state
    since = sorted((e for e in state.events if kh.at <= e.at <= state.now), key=lambda e: e.at)
    first = next((e.at for e in since if _is_known(e)), None)
    if first is None:
        return state
    since = [event for event in since if event.at >= first]
    try:
        began, ended = _waters(state, kh, since, volume)
    except CoreError:
        return state
    moves: dict[str, float] = {name: ended[name] - began[name] for name in MOVED[:-1]}
    moves["salinity"] = sum(
        moved_by(e.what.substance or "", state).get("salinity", 0.0) * (least_grams(e.what) or 0.0)
        for e in since
        if _is_known(e)
    ) / volume  # fmt: skip
    if not _is_seen(moves) and dosed_so_far(state, "nitrate") <= 0.0:
        return state
    readings = {
        name: _moved(reading, moves.get(name, 0.0)) if reading.at <= first else reading
        for name, reading in state.readings.items()
    }
    if "nitrate" in readings and dosed_so_far(state, "nitrate") > 0.0:
        there = left_of_measured(state, "nitrate") + dosed_so_far(state, "nitrate")
        readings["nitrate"] = _moved(readings["nitrate"], there - readings["nitrate"].value)
    return replace(state, readings=readings)


def _is_seen(moves: Mapping[str, float]) -> bool:
    """Whether any of it moved by what somebody might read."""
    return any(abs(moves[name]) >= SEEN.get(name, LEAST_SEEN) for name in moves)


def _is_known(event: Happening) -> bool:
    dosed = event.what.kind == "dose" and event.what.substance in SUBSTANCES
    return dosed and bool(least_grams(event.what))


def _moved(reading: Measured, by: float) -> Measured:
    if not by:
        return reading
    low, high = max(0.0, reading.low + by), max(0.0, reading.high + by)
    return replace(reading, value=max(0.0, reading.value + by), low=low, high=high)


def _waters(
    state: State, kh: Measured, since: Sequence[Happening], volume_l: float
) -> tuple[Mapping[str, float], Mapping[str, float]]:
    """What the tank's water read before, and what it reads after all of it, at rest."""
    outlook = outlook_of(state, kh.value, kh_is_fresh=kh.is_fresh(state.now))
    water = outlook.water
    for event in since:
        if _is_known(event):
            water = add(water, event.what.substance or "", least_grams(event.what) or 0.0, volume_l)
        elif (new := _new_water(state, event, water)) is not None:
            share = share_of(state, event) or 0.0
            water = mix([(water, 1.0 - share), (new, share)])
    rested = in_air(water, outlook.pressure)
    return _read(outlook.water, outlook.ph_now), _read(rested.water, rested.ph)


def _new_water(state: State, event: Happening, tank: Water) -> Water | None:
    """The water of a change whose share is known; None where it, or what it is, is unknown."""
    share = share_of(state, event)
    if event.what.kind != "water_change" or share is None or not 0.0 < share < 1.0:
        return None
    if kind_of((event.what.substance or "").casefold()) in PURE:
        return Water(tank.temperature)
    if event.what.substance is not None or "kh" not in state.source:
        return None
    return source_water(replace(state, readings=state.source), tank)


def _read(water: Water, ph: float) -> dict[str, float]:
    ions = {name: water.mg_l(name) for name in ("calcium", "magnesium")}
    return {"kh": water.kh, "gh": water.gh, "ph": ph, **ions}
