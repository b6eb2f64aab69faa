"""What a dose rests on, in words: what it brings, the kits' doubt, the limits, what was assumed."""

from __future__ import annotations

from collections.abc import Mapping

from bot.chat.words import names
from bot.chat.words.numbers import plain, small, span
from bot.chat.words.text import N_, _
from core.advice import limits
from core.advice.kit_doubt import KitDoubt
from core.advice.plan import Plan
from core.water import solve


def doubts(doubt: KitDoubt) -> list[str]:
    """Between which values the water will be in truth."""
    lines = [
        _(
            "By your kits' steps and 5 % of the volume, nine times in ten: KH {kh} °dH, pH {stood}"
            " after standing, {leaves} if CO2 leaves."
        ).format(
            kh=span(*doubt.kh, 1),
            stood=span(*doubt.ph_stood, 1),
            leaves=span(*doubt.ph_leaves, 1),
        )
    ]
    if doubt.gh is not None:
        lines.append(_("GH then {gh} °dH.").format(gh=span(*doubt.gh, 1)))
    if doubt.nh3_n is not None:
        least, most = map(small, doubt.nh3_n)
        told = _("Poisonous ammonia then {least}–{most} mg/L as N.")
        lines.append(told.format(least=least, most=most))
    return lines


def more(plan: Plan, doubt: KitDoubt | None = None) -> list[str]:
    """What the sum rests on."""
    brought = ", ".join(
        _("{amount} mg/L {ion}").format(amount=small(amount), ion=names.said(ion))
        for ion, amount in plan.added.items()
    )
    lines = [
        _("Taken as pure and dry. It adds {brought} in all.").format(brought=brought),
        steps(plan),
        *(doubts(doubt) if doubt is not None else []),
        *assumed(plan),
    ]
    if plan.emergency:
        lines.append(
            _(
                "An emergency: pH has fallen and little buffer is left, so KH may rise by up to"
                " 2 °dH a day; never with KH under 1."
            )
        )
    if plan.gate is not None and plan.gate.limit is not None:
        lines.append(
            _("Limit: {limit} mg/L un-ionised ammonia as N, which is never called safe.").format(
                limit=plain(plan.gate.limit, 2)
            )
        )
    if plan.added.get("potassium", 0.0) > limits.POTASSIUM_CAUTION_TENDER:
        lines.append(
            _("Potassium over 20 mg/L: caution with snails and shrimps; none with mussels.")
        )
    return lines


def steps(plan: Plan) -> str:
    """What a day may bring, by the kind of water."""
    if plan.told is not None and plan.told.tank.is_sea:
        return _(
            "At most KH {kh} °dH, calcium {calcium} and magnesium {magnesium} mg/L, salinity"
            " {salinity} g/kg and pH {ph} a day (common practice)."
        ).format(
            kh=plain(limits.KH_STEP, 1),
            calcium=plain(limits.CALCIUM_STEP, 0),
            magnesium=plain(limits.MAGNESIUM_STEP, 0),
            salinity=plain(limits.SALINITY_UP, 1),
            ph=plain(limits.PH_STEP, 1),
        )
    return _(
        "At most KH {kh} °dH and a doubling, GH {gh} °dH and pH {ph} a day, counted from the low"
        " end of the reading (common practice)."
    ).format(
        kh=plain(limits.KH_STEP, 1),
        gh=plain(limits.GH_STEP, 1),
        ph=plain(limits.PH_STEP, 1),
    )


def assumed(plan: Plan) -> list[str]:
    """What the pH was reckoned with."""
    outlook = plan.outlook
    if outlook is None:
        return [_("KH unknown: nothing can be said of pH.")]
    warm = (
        _("Reckoned at {degrees} °C, the warmest, as no temperature is known.")
        if outlook.temperature_assumed
        else _("Reckoned at {degrees} °C.")
    )
    lines = [warm.format(degrees=plain(outlook.water.temperature, 0))]
    if outlook.ph is not None:
        lines.append(
            _(
                "pH {ph} with this KH means about {co2} mg/L CO2 in the tank, taken to stay; “if"
                " CO2 leaves” is open air (420 µatm)."
            ).format(ph=plain(outlook.ph, 2), co2=small(solve(outlook.water).co2_mg_l))
        )
    else:
        lines.append(
            _(
                "No pH of the last three days: so from a stocked tank's CO2 (2000 µatm) to open"
                " air (420 µatm)."
            )
        )
    lines += [_(ASSUMED[each]) for each in outlook.water.assumptions if each in ASSUMED]
    return lines


ASSUMED: Mapping[str, str] = {
    "hardness_as_kh": N_("GH unknown: taken as KH."),
    "calcium_to_magnesium": N_("Calcium to magnesium taken as 3:1 by amount."),
    "sea_salt": N_("Ions taken from salinity as in sea water."),
    "meter_ph": N_("pH taken as a kit or an ordinarily calibrated meter reads it."),
}
"""What was filled in, by the ids of `core.water.Assumption`."""
