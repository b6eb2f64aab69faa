"""Whether a water change is too much, in words: the first line, and what to do instead."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words import names
from bot.chat.words.change_doubts import retest_first
from bot.chat.words.changes import amount, figures, percent
from bot.chat.words.doses import only_below
from bot.chat.words.numbers import at_most, plain
from bot.chat.words.text import N_, _, ngettext
from core.advice import limits
from core.advice.change_doubt import ChangeDoubt
from core.advice.change_plan import ChangePlan
from core.advice.changes import Waters

REASONS: Final[Mapping[str, str]] = {
    "kh": N_("KH would move too far in a day (1 °dH, and never more than doubled)"),
    "kh_floor": N_("KH would end under 1 °dH, too little to hold pH"),
    "gh": N_("GH would move more than 2 °dH in a day"),
    "gh_floor": N_("GH would end under 1 °dH, too few minerals for any animal"),
    "ph": N_("pH would move too far at once"),
    "temperature": N_("the water would change by more than 2 °C"),
    "conductivity": N_("conductivity would move by more than 15 %, with hardness unknown"),
    "minerals": N_("GH of both waters is not known, and over 15 % could move it too far"),
    "ammonia": N_("it would set too much poisonous ammonia free"),
    "chloramine": N_(
        "the tap's total chlorine is not measured, and as chloramine (up to 4 mg/L) it would leave"
        " too much poisonous ammonia"
    ),
    "copper": N_("the new water holds copper, which kills shrimps, snails and the like"),
    "nitrite": N_("the new water brings nitrite, which harms fish"),
    "share": N_("even in an emergency not more than half at a time"),
}
ORDER: Final = (
    "copper", "nitrite", "ammonia", "kh_floor", "gh_floor", "kh", "ph", "gh",
    "conductivity", "minerals", "share", "chloramine",
    "temperature",
)  # fmt: skip


def head(
    plan: ChangePlan,
    waters: Waters,
    tank: str,
    volume_l: float | None,
    doubt: ChangeDoubt | None = None,
    instead: str | None = None,
    *,
    overdose: bool = False,
) -> str:
    """The answer: yes, or no and what instead (so many changes, unless told); what comes first.

    `overdose` where that is the emergency.
    """
    only = [] if plan.only_below is None else [only_below(plan.only_below)]
    if doubt is not None and doubt.retest_first:
        only.append(retest_first(doubt))
    if not plan.broken:
        told = (
            _("{tank}: the overdose is the greater danger: {share} at once is within the limits.")
            if overdose and plan.emergency
            else _("{tank}: poison is the greater danger: {share} at once is within the limits.")
            if plan.emergency
            else _("{tank}: {share} at once is within the limits.")
        ).format(tank=tank, share=amount(plan.share, volume_l))
        return " ".join([*only, told])
    lead = _too_much(plan, waters, tank)
    if not plan.steps:
        return lead
    return " ".join([*only, lead, instead or _instead(plan, volume_l)])


def _too_much(plan: ChangePlan, waters: Waters, tank: str) -> str:
    """The no, with its first reason."""
    if "salinity" in plan.broken:
        return _too_salty_or_fresh(plan, waters, tank)
    jump = abs(plan.after.at_once - waters.tank.ph_now)
    can_kill = "ph" in plan.broken and jump > limits.PH_DANGER
    template = (
        _("{tank}: not {share} at once: {reason}; pH would jump by {jump}, which can kill.")
        if can_kill
        else _("{tank}: not {share} at once: {reason}.")
    )
    return template.format(
        tank=tank,
        share=percent(plan.share),
        reason=_(next(REASONS[name] for name in ORDER if name in plan.broken)),
        jump=plain(jump, 1),
    )


def _too_salty_or_fresh(plan: ChangePlan, waters: Waters, tank: str) -> str:
    before, after = waters.tank.water.salinity, float(plan.after.water.salinity)
    if after > before:
        template = _(
            "{tank}: not with that water: {share} would lift salinity {before} → {after} g/kg."
        )
    elif waters.source.salinity <= limits.SALT_WATER:
        template = _(
            "{tank}: not with fresh water: {share} would let salinity fall {before} → {after} g/kg."
        )
    else:
        template = _(
            "{tank}: not with that water: {share} would let salinity fall {before} → {after} g/kg."
        )
    return template.format(
        tank=tank, share=percent(plan.share), before=plain(before, 1), after=plain(after, 1)
    )


def _instead(plan: ChangePlan, volume_l: float | None) -> str:
    """How many changes of which share may take its place."""
    count = len(plan.steps)
    template = (
        ngettext(
            "Instead {count} change of {share}, hours apart.",
            "Instead {count} changes of {share}, hours apart.",
            count,
        )
        if plan.emergency
        else ngettext(
            "Instead {count} change of {share}, one a day.",
            "Instead {count} changes of {share}, one a day.",
            count,
        )
    )
    return template.format(count=count, share=amount(at_most(plan.steps[0]), volume_l))


def no_steps(plan: ChangePlan, waters: Waters) -> list[str]:
    """Nothing of this water can be changed safely, or too little to be of use."""
    if "salinity" in plan.broken:
        return [_match_salinity(waters)]
    if "copper" in plan.broken:
        return [
            _("Use other water, or flush the pipes cold and test copper again before a change.")
        ]
    if "ammonia" in plan.broken:
        return [
            _(
                "First bring ammonia down: stop feeding, and change with water cut to the tank's"
                " own KH (with RO or rain), small and often. Then ask me again."
            )
        ]
    if plan.broken == ("temperature",):
        return [_("Bring the new water to the tank's temperature first, then ask me again.")]
    if {"kh_floor", "gh_floor"} & set(plan.broken):
        return [
            _("Give the new water minerals first (KH and GH near the tank's), then ask me again.")
        ]
    if plan.largest_safe_share <= 0.0:
        return [_("Match the new water to the tank first (KH, temperature), then ask me again.")]
    told = _("At most {share} a day of this water; retest in between.")
    return [told.format(share=percent(at_most(plan.largest_safe_share)))]


def _match_salinity(waters: Waters) -> str:
    tank = waters.tank.water.salinity
    if tank <= limits.SALT_WATER:
        return _("Use water without sea salt.")
    if waters.source.salinity > tank:
        told = _(
            "Thin the new water to the tank's salinity, {salinity} g/kg, first; then ask me again."
        )
    else:
        told = _(
            "Mix sea salt into the new water first, to the tank's {salinity} g/kg: aerate, measure,"
            " then ask me again."
        )
    return told.format(salinity=plain(tank, 1))


def counted_fresh(source: str) -> str:
    """A water for a salty tank whose salinity nobody measured."""
    return _(
        "{source} has no salinity on record, so I count it as fresh. Is it mixed? Send for example:"
        " /source {name} salinity 35"
    ).format(source=names.water(source), name=source)


def salinity_first(tank: str) -> str:
    """Nothing can be said of a brackish tank whose salinity is unknown."""
    return _(
        "{tank}: not yet: I do not know its salinity, and fresh water could kill. Send for example:"
        " salinity 8, or sg 1.006"
    ).format(tank=tank)


def gh_wanted() -> str:
    """What would let more be changed."""
    return _("Send GH of the tank and of the new water: then I can tell how much more is safe.")


def copper_told(mg_l: float) -> str:
    """The new water holds copper, and no invertebrates are on record."""
    return _(
        "Copper {mg_l} mg/L in the new water: never with shrimps, snails or corals, and with fish"
        " only after flushing the pipes; soft water makes it worse."
    ).format(mg_l=plain(mg_l, 2))


def chloramine(safe: float) -> str:
    """What chlorine that nobody measured changes."""
    if safe <= 0.0:
        return _(
            "Chloramine in the tap would free ammonia, so no change before you test the tap's total"
            " chlorine (or ask your supplier)."
        )
    return _(
        "Chloramine in the tap would free ammonia, so at most {share} at once until you test the"
        " tap's total chlorine (or ask your supplier)."
    ).format(share=percent(at_most(safe)))


def without_chloramine(safe: float) -> str:
    """What holds if there is none."""
    return _("With no chlorine in the tap the largest safe share at once is {share}.").format(
        share=percent(at_most(safe))
    )


def untreated(tank: str) -> list[str]:
    """Water that still holds its chlorine never goes in."""
    return [
        _(
            "{tank}: no, never with undechlorinated tap water: chlorine kills fish and filter."
        ).format(tank=tank),
        _(
            "Dechlorinate it first (ask: how much thiosulfate for 30 l). Without any, let tap water"
            " stand aerated for a day: that drives chlorine off, but not chloramine; test total"
            " chlorine, or wait with the change."
        ),
    ]


def how_warm(tank: str, share: float, between: tuple[float, float] | None) -> list[str]:
    """Cold or hot water whose temperature nobody told."""
    ask = _("Measure it and ask for example: what if i change {share} with 18 c water").format(
        share=percent(share).replace(" ", "")
    )
    if between is None:
        return [_("{tank}: not before both temperatures are measured.").format(tank=tank), ask]
    told = _(
        "{tank}: not with water that feels cold or hot: for {share} at once it must have {low} to"
        " {high} °C."
    )
    low, high = (plain(each, 1) for each in between)
    return [told.format(tank=tank, share=percent(share), low=low, high=high), ask]


def said(values: Mapping[str, float], source: str) -> str:
    """Which numbers of the question are the new water's."""
    told = _("Reckoned with {source} of {values}, as you say.")
    return told.format(source=names.water(source), values=figures(values))


def in_a_day(share: float, times: int, together: float) -> str:
    """Several changes of one day are one."""
    return _(
        "{times} times {share} in one day is {together}: the limits are those of a day."
    ).format(times=times, share=percent(share), together=percent(together))


def not_again(tank: str, share: float, times: int, broken: tuple[str, ...]) -> str:
    """A change that is safe once, and not for ever."""
    reason = next((_(REASONS[name]) for name in ORDER if name in broken), None)
    if reason is None:
        reason = _("salinity would move too far in a day")
    return ngettext(
        "{tank}: {share} is within the limits {times} time, not again and again: then {reason}.",
        "{tank}: {share} is within the limits {times} times, not again and again: then {reason}.",
        times,
    ).format(tank=tank, share=percent(share), times=times, reason=reason)


def unknown_water(tank: str) -> str:
    """A kind of water of which nothing is known."""
    return _("{tank}: not before I know that water.").format(tank=tank)
