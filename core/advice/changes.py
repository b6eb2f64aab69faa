"""A water change before it is done: the water at once and stood, and what binds it.

Everything is worked out for one share of new water or for an array of shares by the same code.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Any

from core.advice import limits
from core.advice.ammonia_gate import gate_limit, upper_total
from core.advice.outlook import Outlook, outlook_of, un_ionised_share
from core.advice.possibilities import in_both_airs
from core.advice.setup import holds_only_fish
from core.advice.state import State, ammonia_as_n
from core.advice.tainted import UNTAINTED, Taint, taint_of, total_chlorine
from core.errors import CoreError
from core.water import Water, ammonia_freed, in_air, mix, solve
from core.water._elementwise import is_array


@dataclass(frozen=True, slots=True)
class Waters:
    """The tank's water and the new one, with what is known of each.

    Attributes
    ----------
    tank : Outlook
        The tank's water.
    source : Water
        The new water.
    known : frozenset of str
        Analytes that were read in both waters.
    nitrate : tuple of float, or None
        Of the tank and of the new water; None unless both are known. [mg/L NO3]
    total_n : float or None
        Total ammonia of the tank that counts, upper end; None where unknown or old. [mg/L as N]
    source_n : float
        Ammonia that the new water brings, that of chloramine counted. [mg/L as N]
    minerals : tuple of float, or None
        Conductivity of both, else dissolved solids; None unless both are known. [µS/cm or mg/L]
    limit : float
        Un-ionised ammonia that no change may pass. [mg/L as N]
    kh_low : float
        The low end of the tank's KH. [°dH]
    invertebrates : bool
        True where salinity may fall no faster than it may rise.
    kh_floor, gh_floor : float
        KH and GH under which no change may lead; 0 where the tank is kept soft on purpose. [°dH]
    taint : Taint
        Copper and nitrite of both.
    leaves_first : float or None
        Un-ionised ammonia before the first change of several, if the CO2 left; None before it.
    off : float
        By how much the tank is warmer than its thermometer tells. [°C]
    """

    tank: Outlook
    source: Water
    known: frozenset[str]
    nitrate: tuple[float, float] | None
    total_n: float | None
    source_n: float
    minerals: tuple[float, float] | None
    limit: float
    kh_low: float
    invertebrates: bool = True
    kh_floor: float = limits.KH_SOFT
    gh_floor: float = limits.GH_LOWEST
    taint: Taint = UNTAINTED
    leaves_first: float | None = None
    off: float = 0.0

    @property
    def is_salty(self) -> bool:
        """Whether salinity, not hardness, says how many minerals the tank holds."""
        return bool(self.tank.water.salinity > limits.SALT_WATER)


@dataclass(frozen=True, slots=True)
class Mixed:
    """What a share of new water makes of the tank; each field a number, or an array of them.

    `water` is the mix, `rest` the same warmed and at rest with the tank's own carbon dioxide.
    `at_once`, `expected` and `open_air` are pH; `total_n` is total ammonia [mg/L as N], of 1 mg/L
    in the tank where that is unknown, and `poisonous` its un-ionised shares at once, expected, and
    if the carbon dioxide leaves.
    """

    share: Any
    water: Water
    rest: Water
    at_once: Any
    expected: Any
    open_air: Any
    total_n: Any
    poisonous: tuple[Any, Any, Any]
    minerals: Any = field(default=None)

    @property
    def nh3(self) -> tuple[Any, Any, Any]:
        """Un-ionised ammonia at once, expected, and if the CO2 leaves. [mg/L as N]"""
        at_once, expected, leaves = self.poisonous
        return self.total_n * at_once, self.total_n * expected, self.total_n * leaves

    @property
    def leaves(self) -> Any:
        """PH if the carbon dioxide leaves: the highest of the three."""
        return _largest(_largest(self.open_air, self.at_once), self.expected)


def waters_of(tank: State, source: State) -> Waters | None:
    """Make both waters of their readings; None where the KH of one is not known.

    Raises
    ------
    CoreError
        If readings are no water that can be.
    """
    kh, new_kh = tank.last("kh"), source.last("kh")
    if kh is None or new_kh is None:
        return None
    outlook = outlook_of(tank, kh.value, kh_is_fresh=kh.is_fresh(tank.now))
    return Waters(
        tank=outlook,
        source=source_water(source, outlook.water),
        known=frozenset(name for name in tank.readings if source.last(name) is not None),
        nitrate=_pair(tank, source, "nitrate"),
        total_n=upper_total(tank),
        source_n=source_ammonia(source),
        minerals=_pair(tank, source, "conductivity") or _pair(tank, source, "tds"),
        limit=gate_limit(tank),
        kh_low=max(kh.low, 0.0),
        invertebrates=not holds_only_fish(tank.tank),
        kh_floor=0.0 if tank.tank.soft else limits.KH_SOFT,
        gh_floor=_gh_floor(tank),
        taint=taint_of(tank, source),
    )


def _gh_floor(tank: State) -> float:
    """No water is made poorer than any animal needs, but one that is kept so on purpose."""
    gh = tank.last("gh")
    poor = gh is not None and gh.value < limits.GH_LOWEST
    return 0.0 if tank.tank.soft and poor else limits.GH_LOWEST


def source_water(source: State, tank: Water) -> Water:
    """The new water; where nobody measured, as warm as the tank's, and fresh."""
    given: dict[str, float] = {"temperature": tank.temperature}
    for name in ("temperature", "ph", "kh", "gh", "calcium", "magnesium", "chloride", "sodium"):
        reading = source.last(name)
        if reading is not None and not reading.is_limit:
            given[name] = reading.value
    given.setdefault("kh", 0.0)
    salinity = source.last("salinity")
    if salinity is not None:
        given["salinity"] = salinity.value
    if given["kh"] == 0.0:
        given.pop("ph", None)  # without buffer a pH tells nothing
    given["temperature"] = min(max(given["temperature"], 0.0), 45.0)
    try:
        return Water.from_readings(**given)  # type: ignore[arg-type]
    except CoreError:
        least = {k: v for k, v in given.items() if k in {"kh", "temperature", "salinity"}}
        return Water.from_readings(**least)  # type: ignore[arg-type]


def source_ammonia(source: State) -> float:
    """Total ammonia of a new water, with what its chloramine frees. [mg/L as N]"""
    own = source.last("ammonia")
    brought = 0.0 if own is None else ammonia_as_n(_end(own.high, own.value), own.basis)
    total, free = total_chlorine(source), source.last("chlorine")
    if total is not None:
        bound = total - (free.value if free is not None else 0.0)
        brought += ammonia_freed(max(bound, 0.0))
    return brought


def with_chloramine(waters: Waters, treated: float = 1.0) -> Waters:
    """The same waters with what a supplier may add unmeasured, as ammonia once it is bound.

    Parameters
    ----------
    waters : Waters
        The tank's water and the new one.
    treated : float, optional
        Share of the new water that a supplier treats.
    """
    freed = ammonia_freed(limits.CHLORINE_ASSUMED * treated)
    return replace(waters, source_n=waters.source_n + freed)


def salinity_unknown(state: State) -> bool:
    """Whether nothing tells how salty a brackish tank is; the sea is taken at 35 g/kg."""
    return state.tank.kind == "brackish" and state.last("salinity") is None


def mixed(waters: Waters, share: Any) -> Mixed:
    """Work out a change: mixed shut off from air, then at rest at the tank's own temperature.

    Parameters
    ----------
    waters : Waters
        Both waters.
    share : float or array
        New water, over 0 up to 1.
    """
    old = waters.tank.water
    fresh = mix([(old, 1.0 - share), (waters.source, share + 0.0)])
    at_once = solve(fresh).ph
    warm = fresh.changed(temperature=old.temperature)  # as its heater makes it
    rest, expected, open_air = _stood(warm, waters.tank.pressure, share)
    leaves = _largest(_largest(open_air, at_once), expected)
    minerals = waters.minerals
    return Mixed(
        share,
        fresh,
        rest,
        at_once,
        expected,
        open_air,
        _total(waters, share),
        (
            _poisonous(at_once, fresh, waters.off),
            _poisonous(expected, warm, waters.off),
            _poisonous(leaves, warm, waters.off),
        ),
        None if minerals is None else minerals[0] + (minerals[1] - minerals[0]) * share,
    )


def with_ammonia_of(after: Mixed, waters: Waters) -> Mixed:
    """The same change of waters that hold another amount of ammonia: nothing else differs."""
    return replace(after, total_n=_total(waters, after.share))


def _total(waters: Waters, share: Any) -> Any:
    own = 1.0 if waters.total_n is None else waters.total_n
    return own * (1.0 - share) + waters.source_n * share


def _stood(warm: Water, pressure: Any, share: Any) -> tuple[Water, Any, Any]:
    """At rest: the water with its pH at the tank's own CO2, and pH in open air."""
    if not is_array(share):
        rested = in_air(warm, pressure)
        return rested.water, rested.ph, in_air(warm, limits.OPEN_AIR).ph
    found: Any = in_air(warm, in_both_airs(pressure, share.ndim))
    carbon, ph = found.water.carbon, found.ph
    return warm.changed(carbon=carbon[0]), ph[0], ph[1]


def nh3_now(waters: Waters) -> tuple[float, float]:
    """Un-ionised ammonia of the tank now: as it is, and if its CO2 left; of 1 mg/L if unknown."""
    total = waters.total_n if waters.total_n is not None else 1.0
    tank = waters.tank
    return (
        total * _poisonous(tank.ph_now, tank.water, waters.off),
        total * _poisonous(tank.ph_leaves, tank.water, waters.off),
    )


def _poisonous(ph: Any, water: Water, off: Any) -> Any:
    return un_ionised_share(water, ph, water.temperature + off)


def _largest(one: Any, other: Any) -> Any:
    higher = one >= other
    return other + (one - other) * higher


def _pair(tank: State, source: State, analyte: str) -> tuple[float, float] | None:
    one, other = tank.last(analyte), source.last(analyte)
    return None if one is None or other is None else (one.value, other.value)


def _end(high: float, value: float) -> float:
    return value if high == float("inf") else high
