"""How much may be changed at a time: the largest safe share, and a schedule of such."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from core.advice import limits
from core.advice.change_limits import TINY, bound_by_sums, broken, excesses
from core.advice.changes import Mixed, Waters, mixed, nh3_now, with_ammonia_of

ENDING: Final = 1e-3
"""Over a limit by more than rounding on the way. [the limit's own unit]"""


@dataclass(frozen=True, slots=True)
class ChangePlan:
    """A change that was asked for, and what to do instead where it is too much.

    Attributes
    ----------
    share : float
        As asked, 0 to 1.
    after : Mixed
        What it becomes.
    broken : tuple of str
        Limits that the whole change would break: kh, kh_floor, gh, gh_floor, ph, temperature,
        salinity, conductivity, minerals, ammonia, copper, nitrite, share; chloramine where it is
        only what may be in the new water unmeasured that would take ammonia over its gate.
    largest_safe_share : float
        The largest change that breaks none; 0 where there is none.
    largest_as_measured : float
        The same by what was measured of the new water alone.
    steps : tuple of float
        Shares, one a day, that together do the same; empty where no safe ones do.
    afters : tuple of Mixed
        What each of the steps makes of the tank.
    emergency : bool
        True where poison is the greater danger and only its limits bind.
    only_below : float or None
        Total ammonia that the steps bear, where it is unknown. [mg/L as N]
    """

    share: float
    after: Mixed
    broken: tuple[str, ...]
    largest_safe_share: float
    largest_as_measured: float
    steps: tuple[float, ...]
    afters: tuple[Mixed, ...]
    emergency: bool
    only_below: float | None


def plan_change(
    waters: Waters,
    share: float,
    *,
    counted: Waters | None = None,
    emergency: bool = False,
    salting: bool = False,
) -> ChangePlan:
    """Judge a change, and find the largest safe share and a schedule of safe ones.

    Parameters
    ----------
    waters : Waters
        The tank's water and the new one, as measured: the figures are theirs.
    share : float
        New water, over 0 up to 1.
    counted : Waters, optional
        The same with the ammonia that its limits count besides: chloramine that nobody measured.
    emergency : bool
        True where poison is the greater danger.
    salting : bool
        True where it is salinity that is to move: only then is it moved in steps, which would
        end where the animals cannot live.
    """
    counted = waters if counted is None else counted
    after = mixed(waters, share)
    own = broken(waters, after, emergency=emergency)
    found = broken(counted, with_ammonia_of(after, counted), emergency=emergency)
    measured, largest = _largest((waters, counted), emergency=emergency)
    afters: tuple[Mixed, ...] = ()
    if not any(found.values()):
        afters = (after,)
    elif salting or not found["salinity"]:
        afters = schedule(waters, after, largest, counted=counted, emergency=emergency)
    return ChangePlan(
        share,
        after,
        tuple(
            "chloramine" if name == "ammonia" and not own[name] else name
            for name, is_broken in found.items()
            if is_broken
        ),
        largest,
        measured,
        tuple(each.share for each in afters),
        afters,
        emergency,
        bears(counted, afters[0]) if afters and waters.total_n is None else None,
    )


def largest_safe_share(waters: Waters, *, emergency: bool = False) -> float:
    """The largest whole percentage that is safe with all smaller ones.

    Parameters
    ----------
    waters : Waters
        The tank's water and the new one.
    emergency : bool, optional
        True where poison is the greater danger.
    """
    (largest,) = _largest((waters,), emergency=emergency)
    return largest


def _largest(kinds: Sequence[Waters], *, emergency: bool) -> list[float]:
    """The largest share of waters that differ in nothing but their ammonia: mixed only once."""
    import numpy

    bound = limits.EMERGENCY_SHARE if emergency else bound_by_sums(kinds[0])
    shares = numpy.arange(1, math.ceil(100.0 * bound) + 1) / 100.0
    after = mixed(kinds[0], shares)
    found = []
    for waters in kinds:
        over = broken(waters, with_ammonia_of(after, waters), emergency=emergency)
        unsafe = numpy.zeros(shares.shape, dtype=bool)
        for each in over.values():
            unsafe |= each
        safe = int(unsafe.argmax()) if unsafe.any() else len(shares)
        found.append(safe / 100.0)
    return found


def first_safe_share(waters: Waters, shares: Sequence[float]) -> float | None:
    """The first of some shares, in falling order, that breaks no limit; None where all do."""
    bound = bound_by_sums(waters)
    return next((s for s in shares if s <= bound and _is_safe(waters, s, emergency=False)), None)


def _is_safe(waters: Waters, share: float, *, emergency: bool) -> bool:
    return not any(broken(waters, mixed(waters, share), emergency=emergency).values())


def schedule(
    waters: Waters, after: Mixed, largest: float, *, counted: Waters, emergency: bool = False
) -> tuple[Mixed, ...]:
    """Equal changes, one a day, that together replace a share or little more: what each makes.

    Empty where there are no safe ones. Their ammonia is that of `waters` or of `counted`,
    whichever bears them: `rested` with `with_ammonia_of` follows either of them.

    Parameters
    ----------
    waters, counted : Waters
        As for `plan_change`. What the limits count besides may add up from day to day; where no
        schedule bears that, a filter is taken to eat what one day frees before the next. In an
        emergency both must be borne: there no filter is sure.
    after : Mixed
        The whole change at once.
    largest : float
        Most of it in one day.
    emergency : bool, optional
        True where poison is the greater danger.
    """
    if largest < limits.LEAST_SHARE:
        return ()
    whole = min(after.share, 0.99)  # all of the water is never replaced by parts
    end = after if whole == after.share else mixed(waters, whole)
    begun: Sequence[Waters] = (counted,) if counted is waters else (counted, waters)
    begun = [each for each in begun if emergency or not _ends_unsafe(each, end)]
    found: tuple[Mixed, ...] = ()
    count = math.ceil(math.log(1.0 - whole) / math.log(1.0 - min(largest, 0.99)) - TINY)
    while begun and count <= limits.MOST_CHANGES:
        each = as_told(1.0 - (1.0 - whole) ** (1.0 / count))
        safe, made = follow(begun, counted.source_n, each, count, emergency=emergency)
        if emergency and len(safe) == len(begun):
            return made
        if safe and not emergency:
            begun, found = begun[: safe[0]], made
        count += 1 + count // 4
    return found


def as_told(share: float) -> float:
    """A share as finely as it is told and measured out, rounded up so that the whole is reached.

    Whole percents, tenths of one under 10 %.
    """
    finest = 0.01 if share >= 0.1 else 0.001
    return math.ceil(share / finest - TINY) * finest


def _ends_unsafe(waters: Waters, after: Mixed) -> bool:
    """Whether the water that all changes lead to is itself over a limit, however small they are.

    At rest it is the same by whichever steps, so that none need be tried.
    """
    after = with_ammonia_of(after, waters)
    _, expected, leaves = after.poisonous
    leaves = leaves if after.open_air >= after.at_once else expected
    end = replace(after, at_once=after.expected, poisonous=(expected, expected, leaves))
    first = replace(waters, leaves_first=nh3_now(waters)[1])
    over = excesses(first, end, emergency=False)
    return any(over.get(name, 0.0) > ENDING for name in ("ammonia", "kh_floor", "gh_floor"))


def follow(
    begun: Sequence[Waters], source_n: float, each: float, count: int, *, emergency: bool
) -> tuple[list[int], tuple[Mixed, ...]]:
    """The places of those beginnings from which so many changes, a day apart, break nothing.

    Beside them what each change makes of the tank. The beginnings differ in their ammonia alone;
    each day brings so much of it, whatever is left of it on the next.
    """
    held = {place: replace(w, leaves_first=nh3_now(w)[1]) for place, w in enumerate(begun)}
    made = []
    for _ in range(count):
        after = mixed(next(iter(held.values())), each)
        for place, waters in tuple(held.items()):
            full = replace(waters, source_n=source_n)
            if any(broken(full, with_ammonia_of(after, full), emergency=emergency).values()):
                del held[place]
            else:
                held[place] = rested(waters, with_ammonia_of(after, waters))
        if not held:
            break
        made.append(after)
    return list(held), tuple(made)


def rested(waters: Waters, after: Mixed) -> Waters:
    """Both waters a day after a change: the tank at rest at its own temperature and CO2."""
    old = waters.tank
    share = after.share
    nitrate, minerals = waters.nitrate, waters.minerals
    return replace(
        waters,
        tank=replace(
            old,
            water=after.rest,
            ph=None if old.ph is None else after.expected,
            ph_now=after.expected,
            ph_open_air=after.open_air,
        ),
        total_n=None if waters.total_n is None else after.total_n,
        nitrate=None if nitrate is None else (_blend(nitrate, share), nitrate[1]),
        minerals=None if minerals is None else (_blend(minerals, share), minerals[1]),
        taint=waters.taint.after(share),
        kh_low=waters.kh_low + (waters.source.kh - waters.kh_low) * share,
    )


def bears(waters: Waters, after: Mixed) -> float:
    """The highest total ammonia of the tank that a change bears. [mg/L as N]"""
    one = replace(waters, total_n=1.0, source_n=0.0)
    after = with_ammonia_of(after, one)
    _, leaves_now = nh3_now(one)
    at_once, expected, leaves = (float(each) for each in after.nh3)
    likely = max(expected if waters.tank.co2_known else leaves, at_once)
    deciding = likely
    if leaves > limits.NH3_RAISE * leaves_now or waters.source_n > 0.0:
        deciding = max(likely, leaves)
    # Each figure is of 1 mg/L in the tank before: what the new water brings comes off the limit.
    brought: float = waters.source_n * after.share * deciding / max(1.0 - after.share, TINY)
    return math.floor(max(waters.limit - brought, 0.0) / deciding * 100.0) / 100.0


def _blend(pair: tuple[float, float], share: float) -> float:
    return pair[0] + (pair[1] - pair[0]) * share
