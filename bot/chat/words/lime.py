"""Lime in a tank that is not one for it: why, and what is done in its place."""

from __future__ import annotations

from bot.chat.words import names
from bot.chat.words.numbers import plain
from bot.chat.words.text import _
from core.advice.media import Lime
from core.advice.state import Measured


def unsuited(found: Lime, tank: str, ammonia: Measured | None) -> list[str]:
    """Why lime is not for this tank; `ammonia` is a fresh reading that shows any."""
    name = names.said(found.substance)
    told = _("{tank}: I do not recommend {name} here. {why}")
    lines = [told.format(tank=tank, name=name, why=_why(found))]
    lines.append(_leads(found))
    if ammonia is not None:
        lines.append(
            _("Ammonia {total} mg/L comes first: a higher pH makes poison of it.").format(
                total=plain(ammonia.value, 2)
            )
        )
    elif found.soft or found.bound is not None:
        lines.append(_("Steady is worth more than higher: leave KH as it is while pH stands."))
    else:
        lines.append(
            _("If KH must rise, then in weighed parts. Measure ammonia, then ask: dose kh +0.25")
        )
    return lines


def went_in(found: Lime) -> list[str]:
    """Lime is in a tank that is not one for it."""
    first = _("Better take {name} out again. {why}")
    return [
        first.format(name=names.said(found.substance), why=_why(found)),
        _leads(found),
        _("Measure ammonia, pH and KH every day."),
    ]


def _why(found: Lime) -> str:
    if found.bound is not None:
        return _("{species} suit {analyte} up to {high}.").format(
            species=names.capital(found.bound.species),
            analyte=names.label(found.bound.analyte),
            high=plain(found.bound.high, 1),
        )
    if found.soft:
        return _("It is kept soft for what lives in it.")
    return _("With KH {kh} nothing holds pH, and lime is not weighed in small parts.").format(
        kh=plain(found.outlook.water.kh, 1)
    )


def _leads(found: Lime) -> str:
    return _(
        "It would lead from KH {kh} towards about {end} °dH, GH {gh} °dH, pH {ph}: more than a"
        " day's safe step if much lies there."
    ).format(
        kh=plain(found.outlook.water.kh, 1),
        end=plain(found.end.kh, 1),
        gh=plain(found.end.gh, 1),
        ph=plain(found.end.ph, 1),
    )
