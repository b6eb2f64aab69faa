"""Calls for help: what a tank's readings add to the danger that is named."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final

from core.advice import limits
from core.advice.alarm_words import named
from core.advice.ammonia_gate import gate_limit, upper_total
from core.advice.calls import OF_PEOPLE, Danger, side
from core.advice.danger import holds_chlorine, poison_in
from core.advice.findings import TESTED_BY
from core.advice.first_aid import NewWater, Share, safe_share
from core.advice.outlook import temperature_of
from core.advice.recent_change import Changed, changed_lately, has_crashed
from core.advice.salted import Salted, salted
from core.advice.state import Measured, State
from core.advice.stock import COMING
from core.advice.washed_out import UNTESTED, washed_out
from core.water import un_ionised_fraction

POISONED: Final[frozenset[Danger]] = frozenset(
    {"chlorine", "bleach", "contaminated", "copper", "overdose", "ammonia", "nitrite"}
)
"""Where poison in the water is a greater danger than a quick change of it."""

SHOWING: Final[frozenset[Danger]] = frozenset({"gasping", "general", "illness"})
"""What chlorine in the water looks like from outside."""

CRASH_EXPLAINS: Final[frozenset[Danger]] = frozenset({"general", "illness"})
"""Calls whose steps are those of a pH that fell, where it is on record; who gasps has air first."""

MOST_CHANGED: Final = 0.5
MOST_IN_DOUBT: Final = 0.25
MOST_AFTER_CRASH: Final = 0.1
"""Largest change of first aid: against poison (the limits), else by common practice."""

A_DAY: Final = timedelta(days=1)

JUST_NOW: Final = timedelta(hours=3)
"""A reading this young need not be asked for again; common practice."""

BRACKISH_NITRITE: Final = 5.0
"""From this salinity on nitrite is no poison worth a big change (the limits). [g/kg]"""


@dataclass(frozen=True, slots=True)
class Help:
    """A danger and what is known of the tank.

    Attributes
    ----------
    danger : Danger
        What the first steps are about.
    ph, total_n, nh3_n, temperature : float or None
        Fresh readings: pH, total and un-ionised ammonia [mg/L as N], temperature [°C].
    over_gate : bool
        True where un-ionised ammonia is over what any plan may reach.
    share : Share or None
        The largest safe change of water; None where the new water is not known.
    salt : bool
        True where new water must be as salty as the tank.
    sea_nitrite : bool
        True where the water is too salty for nitrite to be a poison.
    poisoned : bool
        True where poison in the water is the greater danger: by what was said, or as measured.
    gasping : bool
        True where animals gasp, beside another danger.
    missing : tuple of str
        Analytes that nobody read just now, of those that decide.
    volume_l : float or None
        The tank's own litres.
    copper : float or None
        A fresh reading. [mg/L]
    changed : Changed or None
        A change of the last day.
    lost : bool
        True where animals died within the last two days.
    newcomers : bool
        True where others came within three weeks before.
    salted : Salted or None
        Salt that went in already.
    nameless : bool
        True where a thing went in that nobody named, so that it may have been salt.
    crashed : float or None
        The KH under which pH fell too low, where both are fresh. [°dH]
    """

    danger: Danger
    ph: float | None = None
    total_n: float | None = None
    nh3_n: float | None = None
    over_gate: bool = False
    share: Share | None = None
    salt: bool = False
    sea_nitrite: bool = False
    poisoned: bool = False
    gasping: bool = False
    missing: tuple[str, ...] = ("ammonia", "nitrite", "ph", "temperature")
    temperature: float | None = None
    volume_l: float | None = None
    copper: float | None = None
    changed: Changed | None = None
    lost: bool = False
    newcomers: bool = False
    salted: Salted | None = None
    nameless: bool = False
    crashed: float | None = None

    @property
    def no_air(self) -> bool:
        """True where extra air would make it worse: ammonia at a low or unknown pH."""
        acid = self.ph is None or self.ph < limits.AIRING_BELOW_PH
        return acid and not self.gasping and self.total_n != 0.0


def help_for(
    danger: Danger,
    state: State | None,
    new: NewWater | None = None,
    *,
    gasping: bool = False,
    warmth_told: bool = False,
    nameless: bool = False,
) -> Help:
    """Join a danger with what the tank's fresh readings say.

    Parameters
    ----------
    danger : Danger
        What the message is about.
    state : State or None
        The tank; None where there is none.
    new : NewWater or None, optional
        The water that the tank is filled from.
    gasping : bool, optional
        True where animals gasp as well. Beside signs and CO2 they do so where it was called out
        and is not over.
    warmth_told : bool, optional
        True where a number beside the call may be the water's warmth: no older reading is.
    nameless : bool, optional
        True where a thing went in within the day that nobody has named yet.
    """
    if state is None or danger in OF_PEOPLE:
        return Help(danger, gasping=gasping, poisoned=danger in POISONED)
    if danger == "heater" and not warmth_told and (warm := state.last("temperature")) is not None:
        danger = side(warm.value, "heater") if warm.age(state.now) <= JUST_NOW else danger
    gasping = gasping or danger == "gasping"
    if danger in {*SHOWING, "co2_high"}:
        gasping = gasping or "gasping" in state.called.keys() - state.called_over
    if danger in CRASH_EXPLAINS and has_crashed(state):
        danger = "ph_crash"
    if danger in SHOWING and (called := standing_call(state)) is not None:
        danger = called
    elif danger in SHOWING and holds_chlorine(state):
        danger = "chlorine"
    reading, total, warmth = state.fresh("ph"), upper_total(state), state.fresh("temperature")
    copper = state.fresh("copper")
    ph = None if reading is None else reading.value
    total = None if total == float("inf") else total
    nh3_n = None
    if ph is not None and total is not None:
        warm_now, _ = temperature_of(state)
        nh3_n = total * un_ionised_fraction(min(max(ph, 2.0), 12.0), warm_now, state.salinity)
    poisoned = danger in POISONED or (danger != "ph_crash" and poison_in(state) is not None)
    return Help(
        danger,
        ph,
        total,
        nh3_n,
        over_gate=nh3_n is not None and nh3_n > gate_limit(state),
        share=safe_share(state, new, poisoned=poisoned, most=_most(danger, poisoned)),
        salt=state.salinity > limits.SALT_WATER,
        sea_nitrite=danger == "nitrite" and state.salinity > BRACKISH_NITRITE,
        poisoned=poisoned,
        gasping=gasping,
        missing=missing(state),
        temperature=None if warmth is None else warmth.value,
        volume_l=state.tank.volume_l,
        copper=None if copper is None else copper.value,
        changed=changed_lately(state, new),
        lost=lost_lately(state),
        newcomers=_came_lately(state),
        salted=salted(state),
        nameless=nameless,
        crashed=state.readings["kh"].value if has_crashed(state) else None,
    )


STANDING: Final[tuple[Danger, ...]] = (
    "bleach",
    "chlorine",
    "contaminated",
    "copper",
    "copper_metal",
    "overdose",
)
"""Poison that was called out and that other tests do not show, the most deadly first."""


def standing_call(state: State) -> Danger | None:
    """Give the poison called out of late that nothing on record has settled since.

    Chlorine is settled by a dechlorinator, or a reading of it; bleach and copper by a reading of 0;
    too much of a thing by a test of what it moves; soap or insecticide by no test, but by half
    of the water changed with carbon in the filter.
    """
    return next((each for each in STANDING if _is_open(state, each)), None)


def read_since_call(state: State, danger: Danger, names: Collection[str]) -> list[Measured]:
    """Give what was read of these analytes after a danger was called out, the newest first."""
    called = state.called.get(danger)
    if called is None:
        return []
    since = (called, state.called_order.get(danger, 0))
    read = [each for name in names if (each := state.last(name)) is not None]
    late = [each for each in read if (each.at, each.order) > since]
    return sorted(late, key=lambda each: (each.at, each.order), reverse=True)


def _is_open(state: State, danger: Danger) -> bool:
    called = state.called.get(danger)
    if called is None or (danger in UNTESTED and washed_out(state, called)):
        return False
    read = read_since_call(state, danger, SETTLED_BY.get(danger, ()))
    if danger in {
        "bleach",
        "copper",
        "copper_metal",
    }:  # bleach takes more dechlorinator than anybody knows
        return not read or read[0].value > 0.0
    return not read and not (danger == "chlorine" and _dechlorinated(state, called))


STANDS_FOR: Final[Mapping[str, timedelta]] = {
    "bleach": 7 * A_DAY,
    "contaminated": 7 * A_DAY,
    "copper": 7 * A_DAY,
    "copper_metal": 7 * A_DAY,
}
"""How long a poison stands that nothing settles; all else for a day. Common practice."""

SETTLED_BY: Final[Mapping[Danger, Collection[str]]] = {
    "bleach": ("chlorine", "total_chlorine"),
    "chlorine": ("chlorine", "total_chlorine"),
    "copper": ("copper",),
    "copper_metal": ("copper",),
    "overdose": TESTED_BY,
}
"""Readings that may settle what was called out."""


def treated_since(state: State) -> bool:
    """Whether a dechlorinator went in since chlorine was read last: then a test must tell."""
    read = [state.last(name) for name in ("chlorine", "total_chlorine")]
    found = [each.at for each in read if each is not None and each.value > 0.0]
    return bool(found) and _dechlorinated(state, max(found))


def _dechlorinated(state: State, since: datetime) -> bool:
    doses = [e for e in state.events or () if e.what.kind == "dose" and e.at >= since]
    return any("dechlorinated" in named(e.what.substance or "").get("deed", ()) for e in doses)


def _came_lately(state: State) -> bool:
    """Whether animals joined others within three weeks: illness comes with them; our judgement."""
    came = [each.at for each in state.events or () if each.what.kind in COMING]
    return bool(came) and state.now - max(came) < 21 * A_DAY and max(came) - min(came) >= A_DAY


def lost_lately(state: State) -> bool:
    """Whether animals died within two days: the cause may still be there."""
    return any(
        each.what.kind == "lost" and timedelta() <= state.now - each.at < 2 * A_DAY
        for each in state.events or ()
    )


def _most(danger: Danger, poisoned: bool) -> float:
    if poisoned:
        return MOST_CHANGED
    return MOST_AFTER_CRASH if danger == "ph_crash" else MOST_IN_DOUBT


def missing(state: State) -> tuple[str, ...]:
    """The analytes that decide, of those that nobody read just now."""
    wanted = ("ammonia", "nitrite", "ph", "kh", "temperature")
    read = {name: state.last(name) for name in wanted}
    changes = [each for each in state.events or () if each.what.kind == "water_change"]

    def is_known(found: Measured | None) -> bool:
        if found is None or found.age(state.now) > JUST_NOW:
            return False
        return not any(each.is_after(found) for each in changes)  # that water is partly gone

    return tuple(name for name, found in read.items() if not is_known(found))
