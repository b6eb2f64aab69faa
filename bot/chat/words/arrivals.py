"""New animals home, in words: the order of work, and what differs."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words import names
from bot.chat.words.keeping import misfit
from bot.chat.words.numbers import plain, small
from bot.chat.words.text import N_, _, ngettext
from core.advice.arrivals import Arrival, Step
from core.advice.bags import BagAmmonia, Difference
from core.analytes import ANALYTES

THEY_ARE_IN: Final = N_("they are in: log it")

_NOT_YET: Final[Mapping[str, str]] = {
    "ammonia": N_(
        "Not into {tank} yet: there is ammonia in it. Other water is better; if there is none:"
    ),
    "nitrite": N_(
        "Not into {tank} yet: there is nitrite in it. Other water is better; if there is none:"
    ),
    "chlorine": N_(
        "Not into {tank} yet: there is chlorine in it. Other water is better; if there is none:"
    ),
} | dict.fromkeys(
    ("cycling_ammonia", "cycling_nitrite"),
    N_(
        "Not into {tank} yet: its filter is not ready yet. Other water is better; if there is none:"
    ),
)
_NOT_READY: Final = N_(
    "Not into {tank} yet: it is not ready. Other water is better; if there is none:"
)


def arrival(plan: Arrival, tank: str, company: str | None = None) -> list[str]:
    """The order of work for a bag in six lines: what decides first, then the steps.

    `company` says who of the tank does not go together with them.
    """
    if plan.foreign is not None:
        return _not_this_water(plan.foreign, tank)
    lines = [_head(plan, tank, company)]
    if company is not None and plan.misfits:
        lines.append(company)
    if plan.copper is not None:
        lines.append(
            _(
                "Copper {copper} mg/L in the bag: none of that water into {tank}, it kills shrimps,"
                " snails and corals."
            ).format(copper=small(plan.copper), tank=tank)
        )
    if plan.ammonia is not None and plan.ammonia.is_dangerous:
        lines.append(_ammonia(plan.ammonia))
    elif plan.keep_closed:
        lines.append(
            _("Open, a bag loses its CO2, pH rises, its ammonia turns poisonous: no drip.")
        )
    if plan.keep_closed and not _hardness_known(plan):
        lines.append(
            _("I do not know the bag's KH and GH: ask the seller, or test a little of it.")
        )
    steps = _steps(plan)
    lines += [f"{number}. {step}" for number, step in enumerate(steps, 1)]
    return lines


def nothing_into_the_bag(ammonia: float | None) -> list[str]:
    """No buffer for the bag's water, and what to do instead; its ammonia where it was told."""
    first = (
        _("No, nothing into the bag: a higher pH turns its ammonia into poison at once.")
        if ammonia is None
        else _(
            "No, nothing into the bag: a higher pH turns its ammonia ({ammonia} mg/L) into poison"
            " at once."
        ).format(ammonia=small(ammonia))
    )
    return [
        first,
        _(
            "Leave it closed, float it 15 min, then net them over without its water, soon: into"
            " clean water without ammonia, as warm, its pH and KH near the bag's."
        ),
        _("Pour the bag's water away, not outdoors. Then test ammonia in their tank."),
    ]


def _not_this_water(foreign: tuple[str, str], tank: str) -> list[str]:
    """They live in other water than the tank's: what to do with them instead."""
    water, here = foreign
    first = (
        _("Not into {tank}: it is down as {here}, and their water is salt water.")
        if water == "salt"
        else _("Not into {tank}: it is down as {here}, and they need {water} water.")
    )
    return [
        first.format(tank=tank, here=_(here), water=_(water)),
        _(
            "Keep them in clean, aerated, warm water as salty as the bag's, and ask the seller to"
            " take them back until they have a tank of their own."
        ),
        _("No steps lead from one to the other: it would kill them."),
    ]


def _head(plan: Arrival, tank: str, company: str | None) -> str:
    if (reason := _reason(plan)) is not None:
        return _(_NOT_YET.get(reason, _NOT_READY)).format(tank=tank)
    if plan.misfits or company is not None:
        against = misfit(plan.misfits[0]) if plan.misfits else company
        return _("Better not into {tank}: {misfit} If they must go in all the same:").format(
            tank=tank, misfit=against
        )
    if plan.salt_unknown:
        return _(
            "Measure the bag's salinity first. Only if it is {tank}'s within 1 g/kg: warm the"
            " closed bag, then move them over: about {minutes} min."
        ).format(tank=tank, minutes=_all(plan))
    if plan.days > 0.0:
        days = round(plan.days)
        return ngettext(
            "Not straight into {tank}: {apart}. A day in water like the bag's first.",
            "Not straight into {tank}: {apart}. {days} days in water like the bag's first.",
            days,
        ).format(tank=tank, apart=_difference(_deciding(plan)), days=days)
    if plan.keep_closed and not _hardness_known(plan):
        return _(
            "Only if the bag's water is like {tank}'s (KH, GH, and any salt): warm the closed bag,"
            " then move them over: about {minutes} min."
        ).format(tank=tank, minutes=_all(plan))
    if plan.keep_closed and any(step.id == "prepare_container" for step in plan.steps):
        return _(
            "Warm the closed bag, net them into clean water like the bag's, get them used to {tank}"
            " there: about {minutes} min."
        ).format(tank=tank, minutes=_all(plan))
    if plan.keep_closed:
        return _(
            "Warm the closed bag, then move them into {tank} at once: about {minutes} min."
        ).format(tank=tank, minutes=_all(plan))
    return _(
        "Warm the bag, mix in water of {tank} bit by bit, then move them: about {minutes} min."
    ).format(tank=tank, minutes=_all(plan))


def _deciding(plan: Arrival) -> Difference:
    """What makes days of waiting."""
    return next(each for each in plan.differences if each.analyte == plan.deciding)


def _by_salt(plan: Arrival) -> bool:
    return plan.deciding == "salinity"


def _hardness_known(plan: Arrival) -> bool:
    return any(each.analyte in {"kh", "gh"} for each in plan.differences) or plan.deciding in {
        "salinity",
        "temperature",
        "conductivity",
        "tds",
    }


def _reason(plan: Arrival) -> str | None:
    first = plan.steps[0]
    return str((first.facts or {})["reason"]) if first.id == "not_yet" else None


def _all(plan: Arrival) -> str:
    return f"{plan.minutes:.0f}"


def _ammonia(bag: BagAmmonia) -> str:
    if bag.ph is None or bag.nh3_n is None:
        return _(
            "Keep the bag closed: open, pH may rise to {ph_open} and {nh3_n_open} mg/L as N of its"
            " ammonia turn poisonous."
        ).format(ph_open=plain(bag.ph_open, 1), nh3_n_open=small(bag.nh3_n_open))
    return _(
        "Keep the bag closed: open, its pH rises from {ph} to {ph_open} and poisonous"
        " ammonia from {nh3_n} to {nh3_n_open} mg/L as N."
    ).format(
        ph=plain(bag.ph, 1),
        ph_open=plain(bag.ph_open, 1),
        nh3_n=small(bag.nh3_n),
        nh3_n_open=small(bag.nh3_n_open),
    )


def _steps(plan: Arrival) -> list[str]:
    """The steps that belong together in one line each."""
    by_id = {step.id: step for step in plan.steps}
    minutes = f"{by_id['float_closed'].minutes:.0f}"
    told = [_("Dim the light, float the closed bag {minutes} min.").format(minutes=minutes)]
    if plan.deciding == "temperature":
        told = [_("Dim the light. Do not float the bag: the tank's warmth is too far off.")]
    if "prepare_container" in by_id:
        told.append(
            _(
                "Ready clean, aerated water like the bag's; open the bag, net them over at once"
                " without its water."
            )
        )
    elif "open_and_move" in by_id:
        told.append(_("Open the bag, net them over at once without its water."))
    if "hold_in_quarantine" in by_id:
        told.append(
            _(
                "Bring that water to the tank's by 1 g/kg of salt a day at most; test its ammonia"
                " daily."
            )
            if _by_salt(plan)
            else _("Bring that water to the tank's by 1 °C an hour; test its ammonia daily.")
            if plan.deciding == "temperature"
            else _("Bring that water to the tank's by small changes; test its ammonia daily.")
        )
    if "add_tank_water" in by_id:
        mixing = by_id["add_tank_water"]
        told.append(
            _("Add tank water in {parts} parts over {minutes} min, then net them in.").format(
                parts=_parts(mixing), minutes=f"{mixing.minutes:.0f}"
            )
        )
    told.append(_("Pour the bag's water away, not outdoors. No food today; watch them 24 h."))
    return told


def _parts(step: Step) -> str:
    return plain(float((step.facts or {})["parts"]), 0)


def more(plan: Arrival, *, hours_known: bool) -> list[str]:
    """What differs, what would tell more, and where it comes from."""
    lines = []
    if plan.differences:
        lines.append(
            _("Bag → tank: {differences}.").format(
                differences=", ".join(map(_difference, plan.differences))
            )
        )
    missing = {"temperature", "kh", "gh"} - {each.analyte for each in plan.differences}
    if missing:
        lines.append(_("Tell me the bag's water: bag ph 6.4 kh 3 gh 6 temp 22 ammonia 1"))
    if not hours_known:
        lines.append(_("Under three hours on the way? Tell me, for example: bag closed 40 min"))
    if any(step.id == "prepare_container" for step in plan.steps):
        lines.append(
            _(
                "Water like the bag's: as warm, as salty, as hard; tank water with RO or"
                " treated tap."
            )
        )
    if plan.ammonia is not None and plan.ammonia.kh_assumed:
        lines.append(_("The bag's KH is unknown: I took the tank's."))
    lines.append(
        _(
            "Floating and mixing 15 min each, a day where pH differs over 0.5 (both stood):"
            " after a text on acclimatising fish, as copied; the rest: common practice, no"
            " source."
        )
    )
    return lines


def _difference(each: Difference) -> str:
    row = ANALYTES[each.analyte]
    unit = "" if row.unit == "pH" else f" {row.unit}"
    bag, tank = plain(each.bag, row.decimals), plain(each.tank, row.decimals)
    return _("{name} {bag} → {tank}").format(
        name=names.label(each.analyte), bag=bag, tank=f"{tank}{unit}"
    )
