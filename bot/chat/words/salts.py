"""Doses of salts, recipes for a bucket, dechlorination, salt for nitrite and cycling, in words."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.doses import LABELS, NAMES, amount, head
from bot.chat.words.numbers import grams, litres, plain, small
from core.advice.plan import Plan
from core.advice.recipes import Recipe
from core.advice.treatments import Cycling, Dechlorination, NitriteSalt
from core.water.atoms import molar_mass

YES_NONE, NO_SOME = "yes, none at all", "no, there are animals"
YES_SALT, NO_SALT = "yes, they bear salt", "no or not sure"


def two_forms(plans: Sequence[Plan], tank: str | None) -> list[str]:
    """A salt that is sold in two forms: both amounts, each named."""
    return [
        head(plans[0], tank),
        "It is sold in two forms: look on the label which one is yours.",
        *(amount(plan) for plan in plans),
    ]


def recipe(found: Recipe) -> list[str]:
    """Salts for a bucket."""
    wished = " ".join(
        f"{LABELS.get(name, name)} {plain(target, 1)}" for name, target in found.targets.items()
    )
    shown = ", ".join(
        f"{grams(salt.grams)} {NAMES.get(salt.substance, salt.substance)}" for salt in found.salts
    )
    outdoors, stocked = found.ph_stood[1], found.ph_stood[0]
    return [
        f"{litres(found.volume_l)} of RO water to {wished}, prepared without animals:",
        "Dissolve one salt after the other, stirring; calcium chloride gets hot; not next to plugs."
        " An estimate, not veterinary advice.",
        f"{shown}, weighed, not by spoon.",
        f"Aerate a day: pH then about {plain(stocked, 1)} to {plain(outdoors, 1)}. Check GH, KH and"
        " pH before use.",
    ]


def sea_water(volume_l: float, salinity: float, amount: float) -> list[str]:
    """Sea salt for a bucket."""
    return [
        f"{litres(volume_l)} of RO water to {plain(salinity, 1)} g/kg, prepared without animals:",
        "A little at a time into moving water, not next to plugs; never near animals before it is"
        " clear. An estimate, not veterinary advice.",
        f"{grams(amount)} of sea salt, taken as dry; a bought mix holds some water, so it may need"
        " more.",
        "Stir a day, bring it to the tank's temperature, measure salinity, KH and pH before use.",
    ]


def ratio(wished: float) -> str:
    """Calcium to magnesium in what is weighed; by mass it is another number."""
    by_mass = wished * molar_mass("Ca") / molar_mass("Mg")
    return (
        f"Weighed with calcium to magnesium {plain(wished, 1)}:1 by amount, which is"
        f" {plain(by_mass, 1)}:1 in mg/L."
    )


def recipe_more(calcium_to_magnesium: float) -> list[str]:
    """What a recipe rests on."""
    return [
        "Salts taken as pure and in the form named.",
        ratio(calcium_to_magnesium),
        "pH from a stocked tank's CO2 (2000 µatm) to open air (420 µatm), at 25 °C.",
    ]


def no_recipe() -> list[str]:
    """A recipe needs what it is to become."""
    return ["To what? Send for example: how much salt for 20 l ro to gh 6 kh 4"]


def dechlorination(found: Dechlorination) -> list[str]:
    """Thiosulfate against chlorine."""
    known = (
        f"chlorine taken as {plain(found.chlorine, 1)} mg/L, as nobody measured it (more after work"
        " on the mains: test)"
        if found.assumed
        else f"total chlorine {plain(found.chlorine, 2)} mg/L"
    )
    poison = (
        f", {small(found.freed_nh3_n)} mg/L of it poisonous here"
        if found.freed_nh3_n is not None
        else ""
    )
    return [
        f"{litres(found.volume_l)}: {known}.",
        "Aerate. Treat the water before it goes in; with a hose into the tank dose for the whole"
        " tank. An estimate, not veterinary advice.",
        f"{grams(found.pentahydrate)} of sodium thiosulfate pentahydrate, or"
        f" {grams(found.anhydrous)} of the anhydrous form: look on the label.",
        f"If it is chloramine this frees up to {small(found.freed_n)} mg/L ammonia as N{poison};"
        " thiosulfate does not touch that: then change a smaller share.",
    ]


def dechlorination_more() -> list[str]:
    """What the sum rests on."""
    return [
        "7.0 mg of the pentahydrate a mg of chlorine (two thiosulfates a Cl2), and a quarter more.",
        "4 mg/L is the most that an annual mean may be in the US (EPA).",
    ]


def salt_ask() -> list[str]:
    """Who lives there decides."""
    return [
        "First: do all animals and plants in it bear salt? Loaches, catfish, snails, shrimps and"
        " many plants do not.",
        "It is proved for channel catfish, not for all (largemouth bass get none).",
    ]


def salt_answer(found: NitriteSalt, tank: str | None) -> list[str]:
    """Salt against nitrite."""
    where = f"{tank} ({litres(found.volume_l)})" if tank else litres(found.volume_l)
    each = found.grams / found.count
    pace = (
        f"{grams(found.grams)} of plain sodium chloride, dissolved, over about an hour."
        if found.count == 1
        else f"{grams(each)} of plain sodium chloride a time, {found.count} times, dissolved, each"
        f" over about an hour, a day apart ({grams(found.grams)} in all)."
    )
    held = "counted as 0 as it is unknown" if found.chloride_assumed else "as measured"
    return [
        f"{where}: +{plain(found.chloride, 0)} mg/L chloride for nitrite"
        f" {plain(found.nitrite, 2)} mg/L as NO2 (unsaid counts as N, the worse).",
        "Not for plants, snails, loaches or catfish; weigh it, never spoons; watch the animals; not"
        " veterinary advice.",
        pace,
        "It protects some species, not all, and does not remove nitrite: change water, feed less,"
        f" aerate. Chloride before: {held}.",
    ]


def salt_declined() -> list[str]:
    """No salt then."""
    return [
        "No salt then. Change half the water with matching, dechlorinated water, stop feeding,"
        " aerate, and test nitrite every day.",
    ]


def cycle_ask() -> list[str]:
    """Only for a tank without any animal."""
    return ["First: are there no animals at all in it, snails and shrimps too?"]


def cycle_answer(found: Cycling, tank: str | None) -> list[str]:
    """Ammonium chloride for a cycle."""
    where = f"{tank} ({litres(found.volume_l)})" if tank else litres(found.volume_l)
    return [
        f"{where}: ammonia {plain(found.start, 2)} → {plain(found.target, 2)} mg/L as N.",
        "Only without animals. Away from bleach and alkalis: it gives off ammonia. Label it, away"
        " from children.",
        f"{grams(found.grams)} of ammonium chloride, weighed, not by spoon.",
        "Test ammonia and nitrite every two days; dose again only when ammonia is under 0.5. No"
        " animals until both stay 0 a day after a dose.",
    ]


def cycle_declined() -> list[str]:
    """There are animals."""
    return ["No dose then: ammonia would poison them. Test ammonia and nitrite daily instead."]


def basis_ask(analyte: str) -> list[str]:
    """A wish that may be counted in two ways."""
    return [f"Counted how? {analyte.capitalize()} can be told in two ways that differ much:"]


def as_basis(_analyte: str, basis: str) -> str:
    """One of the two ways."""
    return {"N": "as nitrogen (N)", "P": "as phosphorus (P)"}.get(basis, f"as {basis}")
