"""A supplier's water report in words: what was understood, what is asked, what is left out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from bot.chat.words import names
from bot.chat.words.numbers import plain
from bot.chat.words.readings import values
from bot.chat.words.text import N_, _
from core.analytes import ANALYTES
from core.message.report_amounts import Amount
from core.message.reports import Report

YES = N_("yes, keep it")
NO = N_("no, leave it")

HOW: Mapping[str, str] = {
    "bicarbonate": N_("KH {kh} °dH follows from the hydrogencarbonate."),
    "acid_capacity": N_("KH {kh} °dH follows from the acid capacity (2.8 °dH for 1 mmol/L)."),
    "alkalinity": N_("KH {kh} °dH is the alkalinity."),
    "ions": N_("GH {kh} °dH follows from calcium and magnesium."),
}


def understood(source: str, report: Report, day: str | None) -> list[str]:
    """What would be kept, for a yes."""
    told = values([amount.as_value() for amount in report.amounts], {})
    template = (
        _("{source}, as the report says: {values}. Keep it?")
        if day is None
        else _("{source}, as the report of {day} says: {values}. Keep it?")
    )
    lines = [template.format(source=source, values=told, day=day)]
    followed = [
        _(HOW[amount.how]).format(kh=_middle(amount)) for amount in report.amounts if amount.how
    ]
    if any(amount.at_20 for amount in report.amounts):
        followed.append(_("Conductivity was told at 20 °C; it is kept as at 25 °C (times 1.116)."))
    if followed:
        lines.append(" ".join(followed))
    lines += [
        _(
            "{name} does not fit: the report says {said}, but {other} follows from its parts."
        ).format(name=names.label(held.analyte), said=_middle(held), other=_middle(other))
        for held, other in report.conflicts
    ]
    return lines


def passed(said: Sequence[str]) -> list[str]:
    """Lines of the report that are not kept."""
    if not said:
        return []
    return [_("Passed over: {names}.").format(names=", ".join(said[:12]))]


def which_unit(said: str) -> str:
    """A hardness without a unit."""
    return _("In which unit is “{name}”? Nothing is kept yet.").format(name=said[:40])


def which_number(said: str) -> str:
    """Two numbers, one of which may be the limit."""
    return _("Which number of “{name}” is the value? Nothing is kept yet.").format(name=said[:40])


def option(amount: Amount) -> str:
    """One way to read a line."""
    unit = amount.unit or ANALYTES[amount.analyte].unit
    number = plain(amount.value or 0.0, 3)
    if amount.analyte in {"gh", "kh"} and unit != "°dH":
        told = _("{number} {unit} ({degrees} °dH)")
        return told.format(number=number, unit=unit, degrees=_middle(amount))
    return f"{number} {unit}"


def paste() -> list[str]:
    """The report itself is still to come."""
    return [
        _("Paste the report's lines now, such as: Total hardness 14.2 °dH. I ask before I keep it.")
    ]


def nothing() -> list[str]:
    """No line was understood."""
    return [
        _("I found no value in that report; nothing is kept. Send lines such as:"),
        _("Total hardness 14.2 °dH, Hydrogencarbonate 240 mg/L, Nitrate 8.5 mg/L, pH 7.6"),
    ]


def left(source: str) -> list[str]:
    """The keeper said no."""
    return [_("Nothing is kept; {source} stays as it was.").format(source=source)]


def undated() -> str:
    """The report does not say when the water was sampled."""
    return _("The report names no day of sampling: kept as of today.")


def _middle(amount: Amount) -> str:
    canonical = amount.canonical
    if isinstance(canonical, tuple):
        return "–".join(plain(end, 1) for end in canonical)
    return plain(canonical or 0.0, 1)
