"""What was just done that animals may not bear: a dose over a day's step, a very large change."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from core.advice.findings._model import Facts, Finding
from core.advice.plan import Refusal
from core.advice.state import Happening, State

if TYPE_CHECKING:
    from core.advice.effects import Effect

MUCH: Final = 3
"""So many days' steps at once are an alarm, fewer a warning; common practice."""

LARGE_SHARE: Final = 0.6
"""A change of more than this is one to watch the animals after; common practice."""


def overdose(state: State) -> Finding | None:
    """A dose just logged that moved the water by more than a day's step, or past the animals."""
    told = _latest(state, "dose")
    if told is None:
        return None
    dose, volume = told.what, state.tank.volume_l
    if dose.substance is None or dose.grams is None or not volume:
        return None
    # Of a salt that is sold in two forms the weaker one counts: less is sure to have gone in.
    from core.advice.effects import effects_of  # half of the advice, which asks for findings

    found = effects_of(dose.substance, dose.grams, volume, state)
    if isinstance(found, Refusal):
        return None
    effect = min(found, key=lambda each: each.days)
    if effect.days <= 1 and effect.bound is None and not effect.poisons:
        return None
    alarm = effect.days >= MUCH or effect.bound is not None or effect.poisons
    return Finding("overdose", "alarm" if alarm else "warn", _facts(effect))


def _facts(effect: Effect) -> Facts:
    facts: Facts = {"substance": effect.substance, "grams": effect.grams, "days": effect.days}
    moves = {"kh": effect.kh, "gh": effect.gh, "salinity": effect.salinity}
    facts |= {name: amount for name, amount in moves.items() if amount}
    if effect.stage is not None and effect.outlook is not None and effect.outlook.co2_known:
        facts["ph_at_once"] = effect.stage.at_once
    return facts


def large_change(state: State) -> Finding | None:
    """A change just logged of most of the water."""
    told = _latest(state, "water_change")
    if told is None:
        return None
    change, volume = told.what, state.tank.volume_l
    share = (change.percent or 0.0) / 100.0
    if not share and change.litres is not None and volume:
        share = change.litres / volume
    if share <= LARGE_SHARE:
        return None
    return Finding("large_change", "warn", {"share": min(share, 1.0)})


def _latest(state: State, kind: str) -> Happening | None:
    """The newest deed of a kind, where it was done at the moment that is judged."""
    told = [each for each in state.events or () if each.what.kind == kind and each.at <= state.now]
    newest = max(told, key=lambda each: each.at, default=None)
    return newest if newest is not None and newest.at == state.now else None
