"""Copper in the water of a tank that an invertebrate is asked about for."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import names
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


def not_used(whom: Sequence[str], tank: str | None, *, is_reef: bool) -> list[str]:
    """No copper where invertebrates live, by the record or as they are named."""
    if is_reef:
        first = _("No: copper kills corals, shrimps and snails at less than most kits see.")
    elif tank is None:
        first = _("No: copper kills {whom} at less than most kits see.").format(
            whom=names.listed(list(whom))
        )
    else:
        first = _("No: in {tank} live {whom}, and copper kills them at less than kits see.").format(
            tank=tank, whom=names.listed(list(whom))
        )
    return [
        first,
        _("It stays in gravel and filter for weeks. A sick fish: in a tank of its own, by a vet."),
        _("No amount of it from me. Tell me what it is for, and measure ammonia and nitrite."),
    ]


def kills(whom: Sequence[str]) -> list[str]:
    """What copper does to kinds without a spine."""
    told = _("Copper is not safe for {whom}: it kills them at less than most kits see.")
    return [
        told.format(whom=names.listed(list(whom))),
        _("No copper medicine, copper pipe or coin in their water; test the tap after it stood."),
    ]


def none_put(tank: str, *, on_record: bool) -> list[str]:
    """It is told that no copper went in."""
    if on_record:
        return [
            _("{tank}: a dose of copper is on record there. Wrong? Say: undo").format(tank=tank)
        ]
    return [_("{tank}: no dose of copper is on record there.").format(tank=tank)]


def by_a_vet(*, known: bool) -> list[str]:
    """Copper where only fish live, as far as known: no amount, and a vet decides."""
    first = (
        _("Not by guess: copper is a medicine for fish alone, and in soft water kills them too.")
        if known
        else _("No, if any shrimp, snail, mussel or coral lives there: copper kills them.")
    )
    return [
        first,
        _("No amount of it from me: ask a vet who treats fish, keep to the label, measure KH."),
        _("It stays in gravel and filter for weeks; no shrimps or snails there after it."),
    ]


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
