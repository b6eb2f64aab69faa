"""Copper in the water of a tank that an invertebrate is asked about for."""

from __future__ import annotations

from bot.chat.words.numbers import small
from bot.chat.words.text import _, ngettext
from core.advice.findings import Finding


def not_for(whom: str, tank: str, finding: Finding, *, harm: bool) -> list[str]:
    """That it is no water for them before a test reads 0; no yes or no where `harm` is asked."""
    told = (
        _("{tank} is deadly for {whom} until copper reads 0 there.")
        if harm
        else _("No, {tank} is not for {whom} until copper reads 0 there.")
    )
    return [told.format(whom=whom, tank=tank), _why(finding)]


def _why(finding: Finding) -> str:
    days, amount = finding.facts.get("dosed_days_ago"), finding.facts.get("copper")
    if isinstance(days, float):
        count = round(days)
        if count == 0:
            return _(
                "Copper went in today and was not tested since. It kills them at less than most"
                " kits see: carbon in the filter, water changes, then a fine kit."
            )
        return ngettext(
            "Copper went in {count} day ago and was not tested since. It kills them at less than"
            " most kits see: carbon in the filter, water changes, then a fine kit.",
            "Copper went in {count} days ago and was not tested since. It kills them at less than"
            " most kits see: carbon in the filter, water changes, then a fine kit.",
            count,
        ).format(count=count)
    return _(
        "Measured: {amount} mg/L. It kills them at less than most kits see: carbon in the filter,"
        " water changes, then a fine kit."
    ).format(amount=small(float(amount or 0.0)))
