"""Findings about the animals on record, in one line each."""

from __future__ import annotations

from collections.abc import Mapping

from bot.chat.words import names
from bot.chat.words.finding_parts import Facts, analyte, number, with_unit
from bot.chat.words.numbers import litres, plain
from bot.chat.words.text import N_, _, ngettext
from core.advice.livestock import NOBODY_TOLD, SHOAL, Sexes


def does_not_suit(facts: Facts) -> str:
    """A reading outside of what suits animals on record, and how it may be brought back."""
    return _off(facts, _species(facts))


def unlike_the_sea(facts: Facts) -> str:
    """A marine tank of which no animal is known, outside of what animals of warm seas bear."""
    return _off(facts, _("most animals of warm seas"), _SEA_BACK)


def salt_in_fresh(facts: Facts) -> str:
    """Salt water was measured in a tank that is down as fresh."""
    return _(
        "Salinity {amount} is salt water, and this tank is down as fresh: test again, or say which"
        " tank it was. If it is a sea: /tank Fern marine."
    ).format(amount=with_unit(facts, "value"))


_SEA_BACK: Mapping[tuple[str, bool], str] = {
    ("ph", True): N_("stop lime, soda and other buffers, test again, and let it fall by itself"),
    ("ph", False): N_("air the room and the water, look at KH, never chase pH itself"),
}
"""What brings it back in the sea, by analyte and whether it is high."""


def _off(facts: Facts, species: str, of_sea: Mapping[tuple[str, bool], str] | None = None) -> str:
    high = number(facts, "value") > number(facts, "high")
    template = (
        _("{name} {amount} is high for {species} (over {end}): {act}.")
        if high
        else _("{name} {amount} is low for {species} (under {end}): {act}.")
    )
    return template.format(
        name=analyte(facts),
        amount=with_unit(facts, "value"),
        species=species,
        end=with_unit(facts, "high" if high else "low"),
        act=_((of_sea or {}).get((str(facts["analyte"]), high), _back(facts, high=high))),
    )


def _species(facts: Facts) -> str:
    """The kinds that are named, and how many more."""
    species = str(facts["species"])
    more = round(number(facts, "kinds") - len(species.split(", ")))
    if more <= 0:
        return species
    told = ngettext("{species} and {count} more", "{species} and {count} more", more)
    return told.format(species=species, count=more)


def _back(facts: Facts, *, high: bool) -> str:
    """What brings an analyte back; a pond follows the weather."""
    if "pond" in facts:
        return _POND_WARM if high else _POND_COLD
    name = str(facts["analyte"])
    return _COLD if name == "temperature" and not high else _BACK.get(name, _STEADY)


_POND_COLD = N_("do not warm it, no food, keep a hole open in the ice")
_POND_WARM = N_("shade it, strong air, no food in the heat, no cold water at once")


_COLD = N_("check the heater, warm it by 1 °C an hour at most")
_STEADY = N_("steady counts more, so never change it fast")
_BACK: Mapping[str, str] = {
    "temperature": N_("check heater or cooling, add air, bring it back by 1 °C an hour at most"),
    "salinity": N_("check the reading, then correct by at most 1 g/kg a day"),
    "ph": N_("look at KH and hardness, never chase pH itself"),
}
"""What brings an analyte back; the step limits of the advice."""


def do_not_go_together(facts: Facts) -> str:
    """Two kinds that do not suit each other, and why."""
    one, other = str(facts["species"]), str(facts["species_2"])
    reason = str(facts["reason"])
    if reason in _PARTED:
        told = {name: _(str(facts[name])) for name in ("water", "water_2") if name in facts}
        return _(_PARTED[reason]).format(one=names.capital(one), other=other, **told)
    return _(
        "No {name} suits both {one} ({span}) and {other} ({span_2}): rehome one kind, without"
        " haste."
    ).format(
        name=names.label(reason),
        one=one,
        span=_span(facts, "low", "high"),
        other=other,
        span_2=_span(facts, "low_2", "high_2"),
    )


_PARTED: Mapping[str, str] = {
    "water": N_(
        "{one} and {other} need two tanks: {water} water for the first, {water_2} for the other."
    ),
    "eats": N_("{one}, once grown, can swallow {other}: part them before that."),
    "preys": N_("{one} and {other}: the first eats the other. They need two tanks."),
    "picks": N_("{one} may eat {other}: dense cover, and watch; they may vanish all the same."),
    "fights": N_("{one} may harass {other}: give hiding places and watch, or part them."),
}
"""Why two kinds do not go together, where it is no range."""


def _span(facts: Facts, low: str, high: str) -> str:
    return f"{plain(number(facts, low), 1)}–{plain(number(facts, high), 1)}"


def cramped(facts: Facts) -> str:
    """A fish that outgrows the tank, by a rule of thumb."""
    return _(
        "{species} can grow to about {length} cm: {volume} is little, {least} L the least by rule"
        " of thumb."
    ).format(
        species=names.capital(str(facts["species"])),
        length=plain(number(facts, "length"), 0),
        volume=litres(number(facts, "volume_l")),
        least=plain(round(number(facts, "least_l"), -1), 0),
    )


def crowded(facts: Facts) -> str:
    """More fish than the water can hold, by a rule of thumb."""
    return _(
        "The fish on record, once grown, need {least} L by a lenient rule of thumb: {volume} is"
        " little. Add no more, and watch ammonia and nitrate."
    ).format(
        least=plain(round(number(facts, "least_l")), 0), volume=litres(number(facts, "volume_l"))
    )


def rivals(facts: Facts) -> str:
    """More of a kind than bear each other, or the question of their sex where it decides."""
    told = Sexes(*(int(float(facts.get(of, 0.0))) for of in ("males", "females")))
    name, count = str(facts["species"]), round(number(facts, "count"))
    line = rival_line(str(facts["rivals"]), names.capital(name), told)
    told_all = count <= told.male + told.female
    if told_all or facts["rivals"] not in BY_SEX or (facts["rivals"] == "apart" and told.male):
        return line
    asked = (
        _("Which sex are they? Answer like: no, added 1 male and 1 female {name}.")
        if facts["rivals"] == "males"
        else _("All females? Then answer: no, added {count} female {name}.")
    )
    return f"{line} {asked.format(name=name, count=count)}"


BY_SEX = frozenset({"males", "apart"})
"""Rivals of whom the sexes decide."""


def rival_line(kind: str, name: str, told: Sexes = NOBODY_TOLD) -> str:
    """How many of a kind bear each other, as far as their sexes are told."""
    if kind == "apart" and told.male and told.female:
        kind = "couple"
    elif kind == "apart" and (told.male or told.female):
        kind = "suitors" if told.male else "sisters"
    return _(_RIVALS[kind]).format(name=name)


_RIVALS: Mapping[str, str] = {
    "kind": N_("{name} fight their own kind, even to the death: keep only one in a tank."),
    "apart": N_("{name} fight their own kind, two males to the death: keep only one in a tank."),
    "suitors": N_("{name}: two males fight to the death, so each male needs a tank of his own."),
    "couple": N_("{name}: a male hunts the females, even to the death: he needs his own tank."),
    "sisters": N_("{name}: females may fight too. Dense cover, and part those that are hunted."),
    "males": N_("{name}: two males fight and wear out the females, so one male to a tank."),
    "pair": N_("{name}: two get on as a pair, any more are driven to death."),
}


def wrong_water(facts: Facts) -> str:
    """Animals in water of another kind than they live in."""
    return _(
        "{species} need {water} water, and this tank is down as {water_2}: if so, move them now to"
        " water that suits them."
    ).format(
        species=names.capital(str(facts["species"])),
        water=_(str(facts["water"])),
        water_2=_(str(facts["water_2"])),
    )


def few_of_a_shoal(facts: Facts) -> str:
    """A kind that lives in groups, and too few of it."""
    return _("{species} live in groups: {count} is few, {least} or more feel safe.").format(
        species=names.capital(str(facts["species"])),
        count=plain(number(facts, "count"), 0),
        least=SHOAL,
    )


def unknown_animal(facts: Facts) -> str:
    """A name on record that is no one kind of the table."""
    said = facts["said"]
    if "any" in facts:
        return _(
            "Which kind is “{said}”? Then I judge the water for it: no, added 2 guppies"
        ).format(said=said)
    if "shared" in facts:
        return _("“{said}” can be several kinds ({shared}), so I judge no water for it.").format(
            said=said, shared=facts["shared"]
        )
    if "nearest" not in facts:
        return _(
            "I do not know “{said}”, so I judge no water for it: it is kept by its name. Compare"
            " pH, GH, KH and temperature with a keeper's book."
        ).format(said=said)
    told = _("I do not know “{said}”, so I judge no water for it.").format(said=said)
    meant = _("Did you mean {nearest}?").format(nearest=facts["nearest"])
    return f"{told} {meant}"
