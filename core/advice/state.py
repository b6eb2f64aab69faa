"""What is known of a tank's water when advice is asked: last readings, each an interval."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta

from core.advice import limits
from core.message.model import Basis, Event, Qualifier, Value
from core.tank import Tank

N_PER_NH4 = 14.007 / 18.039
N_PER_NH3 = 14.007 / 17.031
NO2_PER_N = 46.005 / 14.007
NO3_PER_N = 62.004 / 14.007


@dataclass(frozen=True, slots=True)
class Measured:
    """One reading in canonical units with its doubt.

    `value` is the middle (or the said end of a limit), `low` and `high` the ends between which
    the truth lies as far as the message tells; for ``<`` the low end is 0, for ``>`` the high
    end is infinite.
    """

    analyte: str
    value: float
    low: float
    high: float
    at: datetime
    qualifier: Qualifier = "="
    basis: Basis | None = None
    step: float = 0.0
    """How fine the reading was told: the kit's drop, or the last decimal. Canonical units."""
    order: int = 0
    """Of what was told of one moment the later has the higher one."""

    @property
    def is_limit(self) -> bool:
        """True for a value off the end of the kit's scale."""
        return self.qualifier in {"<", ">"}

    def age(self, now: datetime) -> timedelta:
        """How long ago it was measured."""
        return now - self.at

    def is_fresh(self, now: datetime) -> bool:
        """Tell whether it is young enough to decide a dose."""
        return self.age(now) <= limits.STALE


def measured(value: Value, at: datetime, tank: Tank, order: int = 0) -> Measured | None:
    """Turn a stored value into an interval; None where it holds no number at all.

    "Not detected" is the interval from 0 to the analyte's first visible step, which only the
    kit knows: without it, 0 to 0.
    """
    if value.canonical is None:
        if value.qualifier != "<":
            return None
        return Measured(value.analyte, 0.0, 0.0, 0.0, at, "<", value.basis, order=order)
    if isinstance(value.canonical, tuple):
        low, high = value.canonical
        middle = (low + high) / 2
        return Measured(
            value.analyte, middle, low, high, at, value.qualifier, value.basis, order=order
        )
    number = value.canonical
    if value.qualifier == "<":
        return Measured(value.analyte, number, 0.0, number, at, "<", value.basis, order=order)
    if value.qualifier == ">":
        return Measured(
            value.analyte, number, number, float("inf"), at, ">", value.basis, order=order
        )
    step = told_step(value, tank)
    low, high = _ends(value.analyte, number, step)
    return Measured(value.analyte, number, low, high, at, value.qualifier, value.basis, step, order)


def told_step(value: Value, tank: Tank) -> float:
    """How fine a hardness or pH reading is, from its kit or from how it was written.

    A titration counts whole drops, so a whole number of degrees is sure to one drop; half
    degrees and tenths come from finer kits and meters. ppm kits step by 10 mg/L. Common
    practice, no source.
    """
    if value.analyte == "ph":
        return limits.PH_RESOLUTION
    if value.analyte not in {"kh", "gh"} or value.value is None:
        return 0.0
    kit = tank.kits.get(value.analyte)
    if kit is not None and kit.per_drop:
        return kit.per_drop
    if value.unit in {None, "°dH", "drops"}:
        return degree_step(value.value)
    return 10.0 / 17.848


def degree_step(degrees: float) -> float:
    """How fine a number of degrees is as written: 1, one half or one tenth. [°dH]"""
    if float(degrees).is_integer():
        return 1.0
    return 0.5 if float(degrees * 2).is_integer() else 0.1


def _ends(analyte: str, number: float, step: float) -> tuple[float, float]:
    if analyte in {"kh", "gh"}:
        # The colour turns within the last drop: the truth lies between it and the one before.
        return max(0.0, number - step), number
    return max(0.0, number - step), number + step


def _moment(reading: Measured) -> datetime:
    return reading.at


class History(Mapping[str, tuple[Measured, ...]]):
    """All known readings by analyte, put in order of measuring once; look-ups are by bisection.

    Parameters
    ----------
    readings : mapping of analyte to readings
        In any order, with gaps and duplicates as they come.
    """

    __slots__ = ("_told",)

    def __init__(self, readings: Mapping[str, Iterable[Measured]]) -> None:
        self._told = {of: tuple(sorted(told, key=_moment)) for of, told in readings.items()}

    def __getitem__(self, analyte: str) -> tuple[Measured, ...]:
        return self._told[analyte]

    def __iter__(self) -> Iterator[str]:
        return iter(self._told)

    def __len__(self) -> int:
        return len(self._told)

    def between(self, analyte: str, after: datetime, until: datetime) -> tuple[Measured, ...]:
        """Readings of an analyte after one moment and up to another, the later one included."""
        told = self._told.get(analyte, ())
        first = bisect_right(told, after, key=_moment)
        return told[first : bisect_right(told, until, key=_moment)]

    def before(self, analyte: str, moment: datetime) -> Measured | None:
        """The last reading of an analyte that was measured before a moment."""
        told = self._told.get(analyte, ())
        place = bisect_left(told, moment, key=_moment)
        return told[place - 1] if place else None

    def previous(self, now: Measured) -> Measured | None:
        """The reading that was told before one; both may bear the same minute.

        None of what was only supposed: a question's premise is not in the history.
        """
        told = self._told.get(now.analyte, ())
        upto = told[: bisect_right(told, now.at, key=_moment)]
        if now not in upto:
            return None
        return next((each for each in reversed(upto) if each != now), None)

    @property
    def first(self) -> datetime | None:
        """When anything was measured for the first time."""
        return min((told[0].at for told in self._told.values() if told), default=None)


NO_HISTORY: Mapping[str, tuple[Measured, ...]] = History({})


DISTURBING = frozenset(
    {"water_change", "top_up", "dose", "moved", "moved_in", "moved_out", "media"}
)
"""Kinds of events after which a series of readings begins anew."""


@dataclass(frozen=True, slots=True)
class Happening:
    """Something done to the tank or seen in it, and when."""

    at: datetime
    what: Event
    order: int = 0
    """Of what was told of one moment the later has the higher one."""

    def is_after(self, reading: Measured) -> bool:
        """Whether it was done after a reading was taken."""
        return (self.at, self.order) > (reading.at, reading.order)

    @property
    def disturbs(self) -> bool:
        """Whether readings before and after it are two stories."""
        return self.what.kind in DISTURBING


@dataclass(frozen=True, slots=True)
class State:
    """A tank and the newest reading of each analyte, as of `now`.

    Everything but the first three is optional: a rule that needs what was not looked up says
    nothing.

    Attributes
    ----------
    tank : Tank
        The tank with its animals.
    now : datetime
        The moment that ages count to, in the chat's zone.
    readings : mapping of analyte to Measured
        The newest of each.
    earlier : tuple of Measured
        Older pH readings, newest first, for what moved.
    history : mapping of analyte to readings
        All that are known, in any order; kept as a `History`, by when they were measured.
    events : tuple of Happening or None
        What was done, in any order; None where it was not looked up.
    source : mapping of analyte to Measured
        The water that the tank is filled from.
    began : datetime or None
        When the tank was set up, where the keeper said so.
    kit_expiry : mapping of analyte to date
        The day until which a kit is good.
    injected : bool
        True where carbon dioxide is injected.
    called : mapping of danger to datetime
        What was called out of late that no reading and no event may show, and when.
    called_order : mapping of danger to int
        Of the same: what was told of that moment before has at most this order.
    called_over : frozenset of str
        Those of them that were told to be over since.
    went_in : str or None
        The keeper's words of what went in and is on no record yet.
    """

    tank: Tank
    now: datetime
    readings: Mapping[str, Measured] = field(default_factory=dict)
    earlier: tuple[Measured, ...] = ()
    history: Mapping[str, tuple[Measured, ...]] = field(default_factory=lambda: NO_HISTORY)
    events: tuple[Happening, ...] | None = None
    source: Mapping[str, Measured] = field(default_factory=dict)
    began: datetime | None = None
    kit_expiry: Mapping[str, date] = field(default_factory=dict)
    injected: bool = False
    called: Mapping[str, datetime] = field(default_factory=dict)
    called_order: Mapping[str, int] = field(default_factory=dict)
    called_over: frozenset[str] = frozenset()
    went_in: str | None = None
    disturbances: tuple[datetime, ...] = field(init=False, repr=False, compare=False)
    """When the water was changed, dosed, topped up or moved up to now, in order."""

    def __post_init__(self) -> None:
        if not isinstance(self.history, History):
            object.__setattr__(self, "history", History(self.history))
        told = sorted(e.at for e in self.events or () if e.at <= self.now and e.disturbs)
        object.__setattr__(self, "disturbances", tuple(told))

    @property
    def past(self) -> History:
        """The history, with its look-ups."""
        assert isinstance(self.history, History)  # noqa: S101 - made so above
        return self.history

    def disturbed(self) -> datetime | None:
        """When the water was last changed, dosed, topped up or moved; None where never known."""
        return self.disturbances[-1] if self.disturbances else None

    def last(self, analyte: str) -> Measured | None:
        """The newest reading of an analyte, whatever its age."""
        return self.readings.get(analyte)

    def fresh(self, analyte: str) -> Measured | None:
        """The newest reading of an analyte if it is young enough to decide."""
        found = self.readings.get(analyte)
        return found if found is not None and found.is_fresh(self.now) else None

    @property
    def salinity(self) -> float:
        """Salinity to reckon with: measured, else by the kind of tank. [g/kg]"""
        found = self.last("salinity")
        if found is not None:
            return found.value
        return limits.SEA_SALINITY if self.tank.is_sea else 0.0


def newest(readings: Iterable[Measured]) -> dict[str, Measured]:
    """The newest reading of each analyte."""
    found: dict[str, Measured] = {}
    for reading in readings:
        held = found.get(reading.analyte)
        if held is None or reading.at > held.at:
            found[reading.analyte] = reading
    return found


def ammonia_as_n(amount: float, basis: Basis | None) -> float:
    """Total ammonia as nitrogen; an unsaid basis is taken as N, the cautious reading. [mg/L]"""
    factor = {"NH4": N_PER_NH4, "NH3": N_PER_NH3, "ion": N_PER_NH4}
    return amount * factor.get(basis or "N", 1.0)


def nitrite_as_no2(amount: float, basis: Basis | None) -> float:
    """Nitrite as the ion, to be judged. [mg/L NO2]

    A value said as N is the ion already when it is canonical; one whose basis was never said is
    judged as if it were nitrogen, the cautious reading.
    """
    return amount * NO2_PER_N if basis is None else amount
