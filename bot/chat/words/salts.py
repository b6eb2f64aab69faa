"""Doses of salts, recipes for a bucket, dechlorination, salt for nitrite and cycling, in words."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import names
from bot.chat.words.doses import amount, head, where
from bot.chat.words.numbers import grams, litres, plain, small
from bot.chat.words.text import N_, _, ngettext
from core.advice.plan import Plan
from core.advice.recipes import Recipe
from core.advice.treatments import Cycling, Dechlorination, NitriteSalt
from core.water.atoms import molar_mass

YES_NONE, NO_SOME = N_("yes, none at all"), N_("no, there are animals")
YES_SALT, NO_SALT = N_("yes, they bear salt"), N_("no or not sure")


def two_forms(plans: Sequence[Plan], tank: str | None) -> list[str]:
    """A salt that is sold in two forms: both amounts, each named."""
    return [
        head(plans[0], tank),
        _("It is sold in two forms: look on the label which one is yours."),
        *(amount(plan) for plan in plans),
    ]


def dechlorinate_first() -> str:
    """Before salts go into water that a supplier treats."""
    return _("Dechlorinate it first, as for any change.")


def recipe(found: Recipe, source: str | None = None) -> list[str]:
    """Salts for a bucket of RO, or of a source of the keeper's."""
    wished = " ".join(
        f"{names.analyte(name)} {plain(target, 1)}" for name, target in found.targets.items()
    )
    shown = ", ".join(
        f"{grams(salt.grams)} {names.substance(salt.substance)}" for salt in found.salts
    )
    outdoors, stocked = found.ph_stood[1], found.ph_stood[0]
    return [
        _("{volume} of RO water to {wished}, prepared without animals:").format(
            volume=litres(found.volume_l), wished=wished
        )
        if source is None
        else _("{volume} of {source} to {wished}, prepared without animals:").format(
            volume=litres(found.volume_l), source=names.water(source), wished=wished
        ),
        _(
            "Dissolve one salt after the other, stirring; calcium chloride gets hot; not"
            " next to plugs. An estimate, not veterinary advice."
        ),
        _("{shown}, weighed, not by spoon.").format(shown=shown),
        _(
            "Aerate a day: pH then about {stocked} to {outdoors}. Check GH, KH and pH before use."
        ).format(stocked=plain(stocked, 1), outdoors=plain(outdoors, 1)),
    ]


def sea_water(volume_l: float, salinity: float, amount: float) -> list[str]:
    """Sea salt for a bucket."""
    return [
        _("{volume} of RO water to {salinity} g/kg, prepared without animals:").format(
            volume=litres(volume_l), salinity=plain(salinity, 1)
        ),
        _(
            "A little at a time into moving water, not next to plugs; never near animals"
            " before it is clear. An estimate, not veterinary advice."
        ),
        _(
            "{amount} of sea salt, taken as dry; a bought mix holds some water, so it may"
            " need more."
        ).format(amount=grams(amount)),
        _(
            "Stir a day, bring it to the tank's temperature, measure salinity, KH and pH"
            " before use."
        ),
    ]


def salt_for_what() -> list[str]:
    """Salt is asked for, and nothing tells what for."""
    return [
        _("What is the salt for? Against nitrite: how much salt for nitrite 1"),
        _("To a salinity: dose salinity 2. For sick fish ask a fish vet: no salt by guess."),
    ]


def no_table_salt() -> str:
    """That what is called salt raises no hardness."""
    return _("These are the salts for it. Table salt (sodium chloride) raises neither GH nor KH.")


def which_salinity(volume_l: float) -> list[str]:
    """New sea water needs to know how salt."""
    return [
        _("To which salinity? Send for example: mix {litres} of salt water to 35 ppt").format(
            litres=litres(volume_l)
        )
    ]


def ratio(wished: float) -> str:
    """Calcium to magnesium in what is weighed; by mass it is another number."""
    by_mass = wished * molar_mass("Ca") / molar_mass("Mg")
    return _(
        "Weighed with calcium to magnesium {wished}:1 by amount, which is {by_mass}:1 in mg/L."
    ).format(wished=plain(wished, 1), by_mass=plain(by_mass, 1))


def recipe_more(calcium_to_magnesium: float) -> list[str]:
    """What a recipe rests on."""
    return [
        _("Salts taken as pure and in the form named."),
        ratio(calcium_to_magnesium),
        _("pH from a stocked tank's CO2 (2000 µatm) to open air (420 µatm), at 25 °C."),
    ]


def no_recipe() -> list[str]:
    """A recipe needs what it is to become."""
    return [_("To what? Send for example: how much salt for 20 l ro to gh 6 kh 4")]


def dechlorination(found: Dechlorination) -> list[str]:
    """Thiosulfate against chlorine."""
    volume, chlorine = litres(found.volume_l), found.chlorine
    return [
        _(
            "{volume}: chlorine taken as {chlorine} mg/L, as nobody measured it (more after work"
            " on the mains: test)."
        ).format(volume=volume, chlorine=plain(chlorine, 1))
        if found.assumed
        else _("{volume}: total chlorine {chlorine} mg/L.").format(
            volume=volume, chlorine=plain(chlorine, 2)
        ),
        _(
            "Aerate. Treat the water before it goes in; with a hose into the tank dose for"
            " the whole tank. An estimate, not veterinary advice."
        ),
        _(
            "{pentahydrate} of sodium thiosulfate pentahydrate, or {anhydrous} of the"
            " anhydrous form: look on the label."
        ).format(pentahydrate=grams(found.pentahydrate), anhydrous=grams(found.anhydrous)),
        _freed(found),
    ]


def _freed(found: Dechlorination) -> str:
    """What thiosulfate leaves of chloramine."""
    if found.freed_nh3_n is None:
        return _(
            "If it is chloramine this frees up to {ammonia} mg/L ammonia as N; thiosulfate does"
            " not touch that: then change a smaller share."
        ).format(ammonia=small(found.freed_n))
    return _(
        "If it is chloramine this frees up to {ammonia} mg/L ammonia as N, {poison} mg/L of it"
        " poisonous here; thiosulfate does not touch that: then change a smaller share."
    ).format(ammonia=small(found.freed_n), poison=small(found.freed_nh3_n))


def dechlorination_more() -> list[str]:
    """What the sum rests on."""
    return [
        _(
            "7.0 mg of the pentahydrate a mg of chlorine (two thiosulfates a Cl2), and a"
            " quarter more."
        ),
        _("4 mg/L is the most that an annual mean may be in the US (EPA)."),
    ]


def salt_ask() -> list[str]:
    """Who lives there decides."""
    return [
        _(
            "First: do all animals and plants in it bear salt? Loaches, catfish, snails,"
            " shrimps and many plants do not."
        ),
        _("It is proved for channel catfish, not for all (largemouth bass get none)."),
    ]


def salt_answer(found: NitriteSalt, tank: str | None, *, unsaid: bool) -> list[str]:
    """Salt against nitrite."""
    each = grams(found.grams / found.count)
    pace = (
        _("{mass} of plain sodium chloride, dissolved, over about an hour.").format(mass=each)
        if found.count == 1
        else ngettext(
            "{each} of plain sodium chloride a time, {count} time, dissolved, each over about an"
            " hour, a day apart ({whole} in all).",
            "{each} of plain sodium chloride a time, {count} times, dissolved, each over about an"
            " hour, a day apart ({whole} in all).",
            found.count,
        ).format(each=each, count=found.count, whole=grams(found.grams))
    )
    protects = (
        _(
            "It protects some species, not all, and does not remove nitrite: change water, feed"
            " less, aerate. Chloride before: {chloride} mg/L, with what went in."
        ).format(chloride=plain(found.chloride_now, 0))
        if found.chloride_dosed
        else _(
            "It protects some species, not all, and does not remove nitrite: change water, feed"
            " less, aerate. Chloride before: counted as 0 as it is unknown."
        )
        if found.chloride_assumed
        else _(
            "It protects some species, not all, and does not remove nitrite: change water, feed"
            " less, aerate. Chloride before: as measured."
        )
    )
    return [
        (
            _(
                "{where}: +{chloride} mg/L chloride for nitrite {nitrite} mg/L as NO2 (unsaid"
                " counts as N, the worse)."
            )
            if unsaid
            else _("{where}: +{chloride} mg/L chloride for nitrite {nitrite} mg/L as NO2.")
        ).format(
            where=where(tank, found.volume_l),
            chloride=plain(found.chloride, 0),
            nitrite=plain(found.nitrite, 2),
        ),
        _(
            "Not for plants, snails, loaches or catfish; weigh it, never spoons; watch the"
            " animals; not veterinary advice."
        ),
        pace,
        protects,
    ]


def salt_declined() -> list[str]:
    """No salt then."""
    return [
        _(
            "No salt then. Change up to a quarter with matching, dechlorinated water, stop"
            " feeding, aerate, and test nitrite every day."
        ),
    ]


def cycle_ask() -> list[str]:
    """Only for a tank without any animal."""
    return [_("First: are there no animals at all in it, snails and shrimps too?")]


def cycle_answer(found: Cycling, tank: str | None) -> list[str]:
    """Ammonium chloride for a cycle."""
    return [
        _("{where}: ammonia {start} → {target} mg/L as N.").format(
            where=where(tank, found.volume_l),
            start=plain(found.start, 2),
            target=plain(found.target, 2),
        ),
        _(
            "Only without animals. Away from bleach and alkalis: it gives off ammonia."
            " Label it, away from children."
        ),
        _("{mass} of ammonium chloride, weighed, not by spoon.").format(mass=grams(found.grams)),
        _(
            "Test ammonia and nitrite every two days; dose again only when ammonia is under"
            " 0.5. No animals until both stay 0 a day after a dose."
        ),
    ]


def cycle_declined() -> list[str]:
    """There are animals."""
    return [_("No dose then: ammonia would poison them. Test ammonia and nitrite daily instead.")]


def basis_ask(analyte: str) -> list[str]:
    """A wish that may be counted in two ways."""
    name = names.said(analyte)
    return [
        _("Counted how? {name} can be told in two ways that differ much:").format(
            name=name[:1].upper() + name[1:]
        )
    ]


def as_basis(_analyte: str, basis: str) -> str:
    """One of the two ways."""
    if basis == "N":
        return _("as nitrogen (N)")
    return _("as phosphorus (P)") if basis == "P" else _("as {basis}").format(basis=basis)


def which_form() -> list[str]:
    """Two forms of a salt differ in mass: which one is put on record."""
    return [_("Which of the two went in? Its label says so.")]


def ppm_of_what(value: float) -> list[str]:
    """So many mg/L are to go in, and nobody named of what."""
    return [
        _("{value} ppm of what? Nothing goes in until that is clear.").format(
            value=plain(value, 2)
        ),
        _("A tank without animals: how much ammonium chloride for 2 ppm"),
        _("Plant food: nitrate to 15. Hardness: dose gh 8"),
    ]
