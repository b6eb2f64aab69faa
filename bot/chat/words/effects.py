"""What an amount does, and what lime or leaves do, in words."""

from __future__ import annotations

from bot.chat.words import names
from bot.chat.words.doses import of, only_below
from bot.chat.words.levels import unit
from bot.chat.words.numbers import litres, plain, small
from bot.chat.words.text import N_, _, ngettext
from core.advice.bounds import Bound
from core.advice.effects import Effect, is_strong
from core.advice.media import Leaves, Lime
from core.water import SUBSTANCES

FELT = 0.05
"""KH that no kit can tell. [°dH]"""


def head(effect: Effect, *, in_tank: bool) -> str:
    """The answer: what moves by how much."""
    moves = []
    if effect.kh:
        moves.append(_("KH +{kh} °dH").format(kh=plain(effect.kh, 1 if effect.kh >= 1 else 2)))
    if effect.gh:
        moves.append(_("GH +{gh} °dH").format(gh=plain(effect.gh, 1 if effect.gh >= 1 else 2)))
    if effect.salinity:
        moves.append(_("salinity +{salinity} g/kg").format(salinity=small(effect.salinity)))
    moves += [_brought(ion, amount) for ion, amount in effect.added.items()]
    lead = _("{salt} in {volume}: {moves}.").format(
        salt=of(effect.grams, names.substance(effect.substance)),
        volume=litres(effect.volume_l),
        moves=", ".join(moves),
    )
    if in_tank and (danger := _danger(effect)) is not None:
        return f"{danger} {lead}"
    return lead


def _brought(ion: str, amount: float) -> str:
    if ion == "ammonia":
        return _("{amount} mg/L ammonia as N").format(amount=small(amount))
    return _("{amount} mg/L {ion}").format(amount=small(amount), ion=names.said(ion))


def _danger(effect: Effect) -> str | None:
    """What stands against it in a tank, before any number."""
    if is_strong(effect.substance):
        return _("Not into water with animals: it lifts pH far too fast.")
    if effect.added.get("ammonia"):
        return _("Only without animals: it is poison to them.")
    if effect.poisons:
        return _("Not now: with this much ammonia a higher pH would poison the animals.")
    if effect.bound is not None:
        return past(effect.bound)
    if effect.potassium == "mussels":
        return _("Not with mussels: potassium harms them.")
    if effect.days > 1:
        return ngettext(
            "Too much for one day with animals: spread it over at least {days} day.",
            "Too much for one day with animals: spread it over at least {days} days.",
            effect.days,
        ).format(days=effect.days)
    return None


def past(bound: Bound) -> str:
    """An end that animals on record do not bear, however slowly it is reached."""
    fields = {
        "species": bound.species,
        "analyte": names.label(bound.analyte),
        "end": plain(bound.end, 1),
        "high": plain(bound.high, 1),
        "unit": unit(bound.analyte),
    }
    if bound.species:
        told = _("Not with {species}: they suit {analyte} up to {high}, this makes {end}{unit}.")
    else:
        told = _("Not with fresh-water animals: this makes {analyte} {end} g/kg.")
    return told.format(**fields)


def ph(effect: Effect) -> str | None:
    """What pH does, where the water is known."""
    if effect.stage is None or effect.outlook is None:
        return None
    stage = effect.stage
    if not effect.outlook.co2_known:
        return _("pH after standing about {stood} to {leaves}.").format(
            stood=plain(stage.expected, 1), leaves=plain(stage.leaves, 1)
        )
    return _(
        "pH {now} → {at_once} at once, {stood} after standing, {leaves} if CO2 leaves."
    ).format(
        now=plain(effect.outlook.ph or 0.0, 1),
        at_once=plain(stage.at_once, 1),
        stood=plain(stage.expected, 1),
        leaves=plain(stage.leaves, 1),
    )


def ammonia(effect: Effect) -> str | None:
    """That a higher pH frees the poison."""
    if effect.kh < FELT:
        return None
    return _("It raises pH: measure ammonia first. For a plan ask for a dose: dose kh +1")


def caution() -> str:
    """What goes before the numbers of a chemical."""
    return _("Taken as pure, by weight, net volume; an estimate, not veterinary advice.")


def two_forms() -> str:
    """The salt is sold in two forms."""
    return _("It is sold in two forms; look on the label which one is yours.")


def incomplete() -> list[str]:
    """Mass, substance or volume is missing."""
    return [
        _(
            "How much of what, in how much water? For example: what does 10 g baking soda"
            " do in 120 l"
        )
    ]


def unknown_amount(substance: str | None) -> list[str]:
    """Millilitres or spoons of something."""
    if substance is not None and substance in SUBSTANCES:
        return [
            _(
                "No number for {name} by spoon or millilitre: a spoon is no weight, it differs"
                " twofold."
            ).format(name=names.substance(substance)),
            _("Weigh it and ask again, for example: what does 10 g baking soda do in 120 l"),
        ]
    return [
        _("No number for it by spoon or millilitre: I do not know how much is in it.")
        if not substance
        else _(
            "No number for “{name}” by spoon or millilitre: I do not know how much is in it."
        ).format(name=names.said(substance)),
        _("Send what is in it and its mass in grams."),
    ]


def that_water() -> str:
    """The water of a question that names no tank."""
    return _("That water")


LIME_IN = N_(
    "KH, GH and pH will rise slowly, over days to weeks. Rising pH frees ammonia: measure it first,"
    " then KH and pH every day; take it out when KH is where you want it."
)
LIME_FULL = N_("At this pH and KH the water is full of lime already: it will do nothing here.")


def lime(found: Lime, tank: str) -> list[str]:
    """Whether lime acts here, and where the water ends."""
    water, name = found.outlook.water, names.said(found.substance)
    index = plain(found.saturation_index, 1)
    if not found.acts:
        lines = [
            _(
                "{tank}: no, {name} will do nothing here: at this pH and KH the water is full"
                " of lime already (saturation index {index})."
            ).format(tank=tank, name=name, index=index)
        ]
    else:
        lines = [
            _(
                "{tank}: {name} will dissolve here: from KH {kh} towards about {end} °dH, GH"
                " {gh} °dH, pH {ph}, if there is enough of it."
            ).format(
                tank=tank,
                name=name,
                kh=plain(water.kh, 1),
                end=plain(found.end.kh, 1),
                gh=plain(found.end.gh, 1),
                ph=plain(found.end.ph, 1),
            ),
            _("If CO2 leaves it stops at KH {kh} °dH, pH {ph}.").format(
                kh=plain(found.end_leaves.kh, 1), ph=plain(found.end_leaves.ph, 1)
            ),
            _(
                "Slowly: days to weeks in the filter, hardly at all in still gravel. Start with"
                " a handful in the filter; take it out when KH is where you want it."
            ),
            _("Rising pH frees ammonia: measure it first; then KH and pH every day."),
        ]
        if found.only_below is not None:
            lines[0] = f"{only_below(found.only_below)} {lines[0]}"
    return lines


def lime_more(found: Lime) -> list[str]:
    """What the answer about lime rests on."""
    lines = [
        _(
            "Saturation index {index}: under 0 it dissolves, at 0 it stops. The"
            " end is set by calcium and CO2, not by the amount of coral."
        ).format(index=plain(found.saturation_index, 2)),
        _("To check: note KH now and in a week without changing water."),
    ]
    if found.outlook.ph is None:
        lines.append(_("No pH of the last three days: a stocked tank's CO2 (2000 µatm) taken."))
    return lines


def leaves(found: Leaves, tank: str) -> list[str]:
    """How far leaves, wood or peat can move pH at this KH."""
    kh = plain(found.outlook.water.kh, 1)
    fall = found.ph_before - found.ph_after
    first = (
        _(
            "{tank}: at KH {kh} °dH {substance} can do little: water like dark tea moves pH by"
            " about {fall}."
        ).format(tank=tank, kh=kh, substance=names.said(found.substance), fall=plain(fall, 2))
        if fall < 0.3
        else _(
            "{tank}: at KH {kh} °dH {substance} can move pH a lot: water like dark tea from"
            " {ph_before} to about {ph_after}."
        ).format(
            tank=tank,
            kh=kh,
            substance=names.said(found.substance),
            ph_before=plain(found.ph_before, 1),
            ph_after=plain(found.ph_after, 1),
        )
    )
    return [
        first,
        _(
            "A little at a time, and measure pH and KH after each; with KH under 1 nothing"
            " holds pH."
        ),
    ]


def no_effect(substance: str) -> list[str]:
    """A medium that moves no hardness."""
    name = names.said(substance)
    return [_("{name} moves neither KH, GH nor pH.").format(name=name[:1].upper() + name[1:])]


def need_tank(substance: str) -> list[str]:
    """Which water is it for?"""
    return [
        _(
            "That depends on the water. Send its pH and KH, then ask about {substance} again."
        ).format(substance=names.said(substance))
    ]
