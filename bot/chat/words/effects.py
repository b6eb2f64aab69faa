"""What an amount does, and what lime or leaves do, in words."""

from __future__ import annotations

from bot.chat.words.doses import NAMES
from bot.chat.words.numbers import grams, litres, plain, small
from core.advice.effects import Effect, is_strong
from core.advice.media import Leaves, Lime
from core.water import SUBSTANCES

FELT = 0.05
"""KH that no kit can tell. [°dH]"""


def head(effect: Effect, *, in_tank: bool) -> str:
    """The answer: what moves by how much."""
    name = NAMES.get(effect.substance, effect.substance)
    moves = []
    if effect.kh:
        moves.append(f"KH +{plain(effect.kh, 1 if effect.kh >= 1 else 2)} °dH")
    if effect.gh:
        moves.append(f"GH +{plain(effect.gh, 1 if effect.gh >= 1 else 2)} °dH")
    brought = [
        f"{small(amount)} mg/L {ion if ion != 'ammonia' else 'ammonia as N'}"
        for ion, amount in effect.added.items()
    ]
    what = ", ".join([*moves, *brought])
    lead = f"{grams(effect.grams)} of {name} in {litres(effect.volume_l)}: {what}."
    if in_tank and (danger := _danger(effect)) is not None:
        return f"{danger} {lead}"
    return lead


def _danger(effect: Effect) -> str | None:
    """What stands against it in a tank, before any number."""
    if is_strong(effect.substance):
        return "Not into water with animals: it lifts pH far too fast."
    if effect.added.get("ammonia"):
        return "Only without animals: it is poison to them."
    if effect.poisons:
        return "Not now: with this much ammonia a higher pH would poison the animals."
    if effect.potassium == "mussels":
        return "Not with mussels: potassium harms them."
    if effect.days > 1:
        return f"Too much for one day with animals: spread it over at least {effect.days} days."
    return None


def ph(effect: Effect) -> str | None:
    """What pH does, where the water is known."""
    if effect.stage is None or effect.outlook is None:
        return None
    stage = effect.stage
    if not effect.outlook.co2_known:
        return f"pH after standing about {plain(stage.expected, 1)} to {plain(stage.leaves, 1)}."
    return (
        f"pH {plain(effect.outlook.ph or 0.0, 1)} → {plain(stage.at_once, 1)} at once,"
        f" {plain(stage.expected, 1)} after standing, {plain(stage.leaves, 1)} if CO2 leaves."
    )


def ammonia(effect: Effect) -> str | None:
    """That a higher pH frees the poison."""
    if effect.kh < FELT:
        return None
    return "It raises pH: measure ammonia first. For a plan ask for a dose: dose kh 6"


def caution() -> str:
    """What goes before the numbers of a chemical."""
    return "Taken as pure, by weight, net volume; an estimate, not veterinary advice."


def two_forms() -> str:
    """The salt is sold in two forms."""
    return "It is sold in two forms; look on the label which one is yours."


def incomplete() -> list[str]:
    """Mass, substance or volume is missing."""
    return [
        "How much of what, in how much water? For example: what does 10 g baking soda do in 120 l"
    ]


def unknown_amount(substance: str | None) -> list[str]:
    """Millilitres or spoons of something."""
    name = f"“{substance}”" if substance else "it"
    if substance is not None and substance in SUBSTANCES:
        return [
            f"No number for {NAMES.get(substance, substance)} by spoon or millilitre: a spoon is no"
            " weight, it differs twofold.",
            "Weigh it and ask again, for example: what does 10 g baking soda do in 120 l",
        ]
    return [
        f"No number for {name} by spoon or millilitre: I do not know how much is in it.",
        "Send what is in it and its mass in grams.",
    ]


def lime(found: Lime, tank: str) -> list[str]:
    """Whether lime acts here, and where the water ends."""
    water, name = found.outlook.water, found.substance
    index = plain(found.saturation_index, 1)
    if not found.acts:
        lines = [
            f"{tank}: no, {name} will do nothing here: at this pH and KH the water is full of lime"
            f" already (saturation index {index})."
        ]
    else:
        lines = [
            f"{tank}: yes, {name} will dissolve here: from KH {plain(water.kh, 1)} towards about"
            f" {plain(found.end.kh, 1)}, GH {plain(found.end.gh, 1)}, pH {plain(found.end.ph, 1)},"
            " if there is enough of it.",
            f"If CO2 leaves it stops at KH {plain(found.end_leaves.kh, 1)}, pH"
            f" {plain(found.end_leaves.ph, 1)}.",
            "Slowly: days to weeks in the filter, hardly at all in still gravel. Start with a"
            " handful in the filter; take it out when KH is where you want it.",
            "Rising pH frees ammonia: measure it first; then KH and pH every two days.",
        ]
    return lines


def lime_more(found: Lime) -> list[str]:
    """What the answer about lime rests on."""
    lines = [
        f"Saturation index {plain(found.saturation_index, 2)}: under 0 it dissolves, at 0 it stops."
        " The end is set by calcium and CO2, not by the amount of coral.",
        "To check: note KH now and in a week without changing water.",
    ]
    if found.outlook.ph is None:
        lines.append("No pH of the last three days: a stocked tank's CO2 (2000 µatm) taken.")
    return lines


def leaves(found: Leaves, tank: str) -> list[str]:
    """How far leaves, wood or peat can move pH at this KH."""
    kh = plain(found.outlook.water.kh, 1)
    fall = found.ph_before - found.ph_after
    first = (
        f"{tank}: at KH {kh} {found.substance} can do little: water like dark tea moves pH by about"
        f" {plain(fall, 2)}."
        if fall < 0.3
        else f"{tank}: at KH {kh} {found.substance} can move pH a lot: water like dark tea from"
        f" {plain(found.ph_before, 1)} to about {plain(found.ph_after, 1)}."
    )
    return [
        first,
        "A little at a time, and measure pH and KH after each; with KH under 1 nothing holds pH.",
    ]


def no_effect(substance: str) -> list[str]:
    """A medium that moves no hardness."""
    return [f"{substance.capitalize()} moves neither KH, GH nor pH."]


def need_tank(substance: str) -> list[str]:
    """Which water is it for?"""
    return [f"That depends on the water. Send its pH and KH, then ask about {substance} again."]
