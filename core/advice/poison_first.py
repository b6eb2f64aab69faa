"""Poison that stands in a water: called out and not settled since, or read. It goes first."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Final

from core.advice.alarm_words import named
from core.advice.call_over import CALLED_ONLY, suffering
from core.advice.calls import Danger
from core.advice.danger import told_after_test
from core.advice.emergencies import JUST_NOW, standing_call
from core.advice.findings import stands
from core.advice.plan import Refusal
from core.advice.recent_change import has_crashed
from core.advice.since import A_DAY
from core.advice.state import State
from core.advice.untested import losses
from core.substances import ACIDS

READ: Final[Mapping[str, Danger]] = {
    "chlorine": "chlorine",
    "copper": "copper",
    "copper_unknown_stock": "copper",
}
"""Findings of a poison that no salt makes better, and what it is."""


def poison_of(text: str) -> Danger | None:
    """Name the poison of which too much was told to be in, where no usual test shows it.

    Copper and bleach have tests of their own; a medicine, a cleaner or an algae killer has none.
    None of what pH, KH, GH or salinity show: a salt, an acid, plant food.

    Examples
    --------
    >>> poison_of("overdosed the copper medicine"), poison_of("spilled drain cleaner in it")
    ('copper', 'contaminated')
    >>> poison_of("poured vinegar in") is None
    True
    """
    said = named(text).get("deed", frozenset())
    return next((danger for word, danger in _NAMED.items() if word in said), None)


_NAMED: Final[Mapping[str, Danger]] = {
    "bleach_named": "bleach",
    "copper": "copper",
    "unseen": "contaminated",
}
"""Words of what went in, and the call that it is."""


def poison_standing(state: State) -> Danger | None:
    """Name the poison that stands: called out with nothing that settles it, or freshly read.

    Parameters
    ----------
    state : State
        The tank, with what was called out of it.

    Notes
    -----
    Ammonia and nitrite are no matter of this: the gate of every plan judges them by the pH.
    """
    if (called := standing_call(state)) is not None:
        return called
    fresh = {name: each for name, each in state.readings.items() if each.is_fresh(state.now)}
    found = stands(
        replace(state, readings=fresh), frozenset({"chlorine", "total_chlorine", "copper"})
    )
    return next((READ[each.id] for each in found if each.id in READ), None)


DIED: Final = "lost"
"""What stands where animals died of late and ammonia was not read since: nobody knows of what."""

TOLD_FIRST: Final = "told_first"
"""Why nothing goes in before it is told what went in already."""


def no_dose(state: State) -> Refusal | None:
    """Why no salt goes into a tank now; None where nothing of this stands.

    A poison in it, animals that suffer or died of what nobody knows, or something that went in and
    is on no record: it may be the very dose that is asked for.
    """
    danger = poison_standing(state) or suffering(state) or _died(state) or _too_much(state)
    if danger is None:
        return None if state.went_in is None else Refusal(TOLD_FIRST, {"said": state.went_in})
    called = standing_call(state) is not None or danger in {*CALLED_ONLY, DIED, "overdose"}
    read = None if called else state.last(danger)
    facts: dict[str, float | str] = {"danger": danger}
    if read is not None:
        facts[danger] = read.value
    return Refusal("poison_first", facts)


def _too_much(state: State) -> Danger | None:
    """Too much of something that was told only after the newest test, or an acid of the day.

    The test is no answer to it then, whatever hour either is said to be of; and an acid goes on
    taking KH, so that no salt is worked out against it on the day. A pH that crashed by it has
    steps of its own.
    """
    acid = any(
        each.what.kind == "dose"
        and each.what.substance in ACIDS
        and each.at <= state.now < each.at + A_DAY
        for each in state.events or ()
    )
    if told_after_test(state) or (acid and not has_crashed(state)):
        return "overdose"
    return None


def _died(state: State) -> str | None:
    """Deaths of which ammonia may be the cause: a dose would make more of it poison.

    A pH that crashed is known to be the cause: its own steps say when a little goes in.
    """
    lost, _missing = losses(state)
    if not lost or has_crashed(state):
        return None
    read = state.last("ammonia")
    known = read is not None and read.at >= lost[-1].at - JUST_NOW
    return None if known else DIED
