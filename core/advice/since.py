"""What was done to the water after a reading was taken: then the reading tells another water."""

from __future__ import annotations

from core.advice.plan import Refusal
from core.advice.scheduling import per_gram
from core.advice.state import Measured, State
from core.water import SUBSTANCES


def dosed_since(state: State, reading: Measured) -> Refusal | None:
    """Refuse a second dose on a reading from before the first one.

    Parameters
    ----------
    state : State
        With its events.
    reading : Measured
        What the plan would start from.

    Notes
    -----
    A dose of the same moment counts as given after the reading: water that was dosed a moment ago
    is not mixed, and no reading of it tells anything yet.
    """
    for event in state.events or ():
        dosed = SUBSTANCES.get(event.what.substance or "")
        if event.what.kind != "dose" or dosed is None or event.at < reading.at:
            continue
        if event.at <= state.now and per_gram(dosed.name, reading.analyte) > 0.0:
            return Refusal("dosed_since", {"analyte": reading.analyte, "substance": dosed.name})
    return None


def changed_since(state: State, reading: Measured) -> bool:
    """Whether water was changed after a reading was taken."""
    changes = (e.at for e in state.events or () if e.what.kind == "water_change")
    return any(reading.at < at <= state.now for at in changes)
