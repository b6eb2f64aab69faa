"""A steady routine of water changes in words."""

from __future__ import annotations

from bot.chat.words.numbers import litres, plain
from core.advice.routine import SawTooth
from core.analytes import ANALYTES


def routine(
    tank: str, analyte: str, target: float, found: SawTooth, new_water: float | None
) -> list[str]:
    """How much, how often, and between which values it then swings."""
    label, unit = _label(analyte)
    amount = "" if new_water is None else f" ({litres(new_water)})"
    return [
        f"{tank}: {found.share * 100:.0f} %{amount} every {plain(found.every_days, 1)} days keeps"
        f" {label} under {plain(target, 1)} {unit}.",
        f"It then swings from {plain(found.low, 1)} to {plain(found.high, 1)} {unit}; the tank"
        f" makes {found.per_day:.2g} {unit} a day by its readings.",
        "Dechlorinated, same temperature; the step limits allow this much at once.",
    ]


def source_unknown(source: str, analyte: str) -> list[str]:
    """The new water's value is not on record."""
    label, _ = _label(analyte)
    return [f"I do not know the {label} of {source}. Send for example: /source {source} {label} 5"]


def out_of_reach(source: str, analyte: str, new: float, target: float) -> list[str]:
    """The new water itself holds as much."""
    label, unit = _label(analyte)
    return [
        f"No change with {source} keeps it there: it holds {label} {plain(new, 1)} {unit} itself,"
        f" and you want under {plain(target, 1)}.",
        "Blend it with RO or rain water.",
    ]


def more_than_changes(tank: str, analyte: str, target: float, per_day: float) -> list[str]:
    """No safe routine is enough."""
    label, unit = _label(analyte)
    return [
        f"{tank}: no safe routine keeps {label} under {plain(target, 1)} {unit}: it makes"
        f" {per_day:.2g} a day.",
        "Feed less, keep fewer animals or more plants, and use new water that is closer to the"
        " tank's.",
    ]


def _label(analyte: str) -> tuple[str, str]:
    row = ANALYTES[analyte]
    return row.label, row.unit
