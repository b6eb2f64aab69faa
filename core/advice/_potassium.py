"""How much potassium the doses on record have brought into a tank."""

from __future__ import annotations

from core.advice.state import Happening, State
from core.water.substances import SUBSTANCES


def potassium_from_doses(state: State) -> float | None:
    """Potassium from doses since it was last measured, less what water changes took away.

    Parameters
    ----------
    state : State
        With its events and the net volume.

    Returns
    -------
    float or None
        None where the events or the volume are unknown, or no dose held potassium. [mg/L]

    Notes
    -----
    Doses by spoon or by volume have no known mass and are left out.
    """
    volume = state.tank.volume_l
    if state.events is None or not volume:
        return None
    measured = state.last("potassium")
    total, dosed = 0.0, False
    for event in sorted(state.events, key=lambda happening: happening.at):
        if event.at > state.now or (measured is not None and event.at <= measured.at):
            continue
        brought = potassium_in(event)
        if brought:
            total += brought / volume
            dosed = True
        total *= 1.0 - share_changed(event, volume)
    return total if dosed else None


def potassium_in(event: Happening) -> float:
    """Potassium in a dose, 0 in anything else. [mg]"""
    what = event.what
    known = SUBSTANCES.get(what.substance or "")
    if what.kind != "dose" or known is None or what.grams is None:
        return 0.0
    if "potassium" not in known.ions:
        return 0.0
    return what.grams * known.milligrams_per_gram("potassium")


def share_changed(event: Happening, volume_l: float) -> float:
    """Share of the water that a change replaced, 0 to 1; 0 where it was not said."""
    what = event.what
    if what.kind != "water_change":
        return 0.0
    if what.percent is not None:
        share = what.percent / 100.0
    elif what.litres is not None:
        share = what.litres / volume_l
    else:
        share = 0.0
    return min(max(share, 0.0), 1.0)
