"""A steady routine of water changes in words."""

from __future__ import annotations

from bot.chat.words import names
from bot.chat.words.numbers import litres, plain
from bot.chat.words.text import _, ngettext
from core.advice.routine import SawTooth
from core.analytes import ANALYTES


def routine(
    tank: str, analyte: str, target: float, found: SawTooth, new_water: float | None
) -> list[str]:
    """How much, how often, and between which values it then swings."""
    name, unit = _named(analyte)
    share = f"{found.share * 100:.0f} %"
    if new_water is not None:
        share = _("{share} ({volume})").format(share=share, volume=litres(new_water))
    return [
        ngettext(
            "{tank}: {share} every {days} day keeps {name} under {target} {unit}.",
            "{tank}: {share} every {days} days keeps {name} under {target} {unit}.",
            round(found.every_days, 1),
        ).format(
            tank=tank,
            share=share,
            days=plain(found.every_days, 1),
            name=name,
            target=plain(target, 1),
            unit=unit,
        ),
        _("Dechlorinated, same temperature; the step limits allow this much at once."),
        _(
            "It then swings from {low} to {high} {unit}; the tank makes {per_day} {unit} a"
            " day by its readings."
        ).format(
            low=plain(found.low, 1),
            high=plain(found.high, 1),
            unit=unit,
            per_day=f"{found.per_day:.2g}",
        ),
    ]


def source_unknown(source: str, analyte: str) -> list[str]:
    """The new water's value is not on record."""
    return [
        _(
            "I do not know the {name} of {source}. Send for example: /source {source} {name} 5"
        ).format(name=names.label(analyte), source=source)
    ]


def out_of_reach(source: str, analyte: str, new: float, target: float) -> list[str]:
    """The new water itself holds as much."""
    name, unit = _named(analyte)
    return [
        _(
            "No change with {source} keeps it there: it holds {name} {new} {unit} itself,"
            " and you want under {target}."
        ).format(source=source, name=name, new=plain(new, 1), unit=unit, target=plain(target, 1)),
        _("Blend it with RO or rain water."),
    ]


def more_than_changes(tank: str, analyte: str, target: float, per_day: float) -> list[str]:
    """No safe routine is enough."""
    name, unit = _named(analyte)
    return [
        _(
            "{tank}: no safe routine keeps {name} under {target} {unit}: it makes {per_day} a day."
        ).format(
            tank=tank, name=name, target=plain(target, 1), unit=unit, per_day=f"{per_day:.2g}"
        ),
        _(
            "Feed less, keep fewer animals or more plants, and use new water that is closer"
            " to the tank's."
        ),
    ]


def _named(analyte: str) -> tuple[str, str]:
    return names.label(analyte), ANALYTES[analyte].unit


def usual() -> str:
    """How much water is changed where no trend tells more: common practice, no source."""
    return _(
        "Common practice is a tenth to a quarter a week, always about the same. Whether that is"
        " enough your nitrate tells: test it weekly, and ask me again."
    )
