"""Why there is no dose and what to do instead: the first sentence says no, no amount stands."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from bot.chat.words import names
from bot.chat.words.levels import unit
from bot.chat.words.numbers import plain, small
from bot.chat.words.text import _
from core.advice.plan import Refusal

Facts = Mapping[str, float | str]


def refused(refusal: Refusal, tank: str | None) -> list[str]:
    """Why there is no plan, and what to do instead; never an amount."""
    facts = refusal.facts
    lines = _REFUSALS[refusal.reason](facts)
    return [names.of_tank(tank, lines[0]), *lines[1:]]


def _analyte(facts: Facts) -> str:
    name = str(facts.get("analyte", "kh"))
    return names.analyte(name)


def _substance(facts: Facts) -> str:
    return names.said(str(facts["substance"]))


def _acid(facts: Facts) -> str:
    """The acid that was named, or acids."""
    return _substance(facts) if "substance" in facts else _("strong acid")


EXAMPLES = {
    "calcium": "400",
    "magnesium": "1300",
    "salinity": "34",
    "nitrate": "10",
    "phosphate": "0.2",
    "potassium": "10",
    "iron": "0.05",
    "nitrite": "0.5",
}


def _past_animals(facts: Facts) -> list[str]:
    fields = {
        "species": str(facts["species"]),
        "analyte": names.label(str(facts["analyte"])),
        "asked": str(facts["analyte"]),
        "end": _number(facts, "to"),
        "high": _number(facts, "highest"),
        "unit": unit(str(facts["analyte"])),
    }
    if not facts["species"]:
        told = [_("No: {analyte} {end} g/kg is too much for fresh-water animals.")]
    else:
        told = [_("No: {species} suit {analyte} up to {high}, not {end}{unit}.")]
        told.append(_("Stay within that, for example: dose {asked} {high}"))
    return [line.format(**fields) for line in told]


def _number(facts: Facts, name: str) -> str:
    return plain(float(facts[name]), 2)


def _with_unit(facts: Facts, name: str) -> str:
    return f"{_number(facts, name)}{unit(str(facts.get('analyte', 'kh')))}"


def _lowered(facts: Facts) -> list[str]:
    """What brings a value down; in the sea pure water would bring salinity down with it."""
    if facts.get("analyte", "kh") in {"kh", "gh"}:
        return [
            _(
                "To lower it in fresh water, small changes with RO or rain: how much can i change"
                " with ro. In the sea let the animals use it up."
            )
        ]
    if facts["analyte"] in {"calcium", "magnesium"}:
        return [_("Let the animals use it up; usual water changes bring it back as well.")]
    return [_("To lower it, small water changes, a day apart: how much can i change")]


def _read(facts: Facts, name: str) -> str:
    """An analyte with its number, where that is known."""
    if name not in facts:
        return names.label(name)
    told = _("{name} {amount}")
    amount = f"{_number(facts, name)}{unit(name)}"
    return told.format(name=names.label(name), amount=amount)


_REFUSALS: Mapping[str, Callable[[Facts], list[str]]] = {
    "volume_unknown": lambda _facts: [
        _("How many litres of water are in it? Send for example: 90 l"),
        _("Net: the water itself, not the tank's label."),
    ],
    "volume_implausible": lambda facts: [
        _(
            "No plan for {volume} L: that is no tank I can believe. Send the net volume"
            " again, for example: 90 l"
        ).format(volume=plain(float(facts["volume_l"]), 4))
    ],
    "kh_unknown": lambda _facts: [
        _("I need the KH first. Measure it and send for example: kh 4"),
    ],
    "kh_limit": lambda facts: [
        _("No plan: KH over {kh} °dH is off your kit's scale.").format(kh=_number(facts, "kh")),
        _("Dilute the sample by half with distilled water, test again and send twice the number."),
    ],
    "target_reached": lambda facts: [
        _("No dose: {analyte} {start} is already at {target} or over.").format(
            analyte=_analyte(facts), start=_number(facts, "from"), target=_with_unit(facts, "to")
        ),
        *_lowered(facts),
    ],
    "target_implausible": lambda facts: [
        _(
            "No plan to {analyte} {target}: over {highest} suits no tank. If you meant another"
            " unit, send it with the number."
        ).format(
            analyte=_analyte(facts),
            target=_number(facts, "to"),
            highest=_with_unit(facts, "highest"),
        ),
    ],
    "contradiction": lambda facts: [
        _("No dose yet: {ph} with {kh} does not add up.").format(
            ph=_read(facts, "ph"), kh=_read(facts, "kh")
        ),
        _("Retest both, with a fresh sample; check the kits' dates. If they gasp, air now."),
    ],
    "ammonia": lambda facts: [
        _(
            "No buffer now: with this much ammonia (total {ammonia} mg/L as N) a higher pH would"
            " poison the animals."
        ).format(ammonia=_number(facts, "ammonia"))
        if "ammonia" in facts
        else _("No buffer now: with this much ammonia a higher pH would poison the animals."),
        _(
            "First: stop feeding, change a little often, with dechlorinated water of the tank's KH"
            " and temperature."
        ),
        _("If they gasp, add air. Then measure ammonia and pH again and ask me again."),
    ],
    "ammonia_old": lambda facts: [
        _("Measure ammonia first: the last was {ammonia} mg/L, {days} days ago.").format(
            ammonia=_number(facts, "ammonia"), days=_number(facts, "days")
        )
        if "ammonia" in facts
        else _("Measure ammonia first: the last was off the kit's scale."),
        _("With that much a higher pH would poison the animals. Send for example: ammonia 0"),
    ],
    "ammonia_already": lambda facts: [
        _(
            "No dose now: this much ammonia (total {ammonia} mg/L as N) is a danger already, and"
            " comes first."
        ).format(ammonia=_number(facts, "ammonia"))
        if "ammonia" in facts
        else _("No dose now: this much ammonia is a danger already, and comes first."),
        _(
            "Stop feeding, change a little often, with dechlorinated water of the tank's KH and"
            " temperature; no food for plants, no salts until it is down."
        ),
        _("If they gasp, add air. Then measure ammonia and pH again and ask me again."),
    ],
    "ammonia_unmeasured": lambda facts: [
        _("No dose yet: with KH {kh} °dH I must know ammonia first.").format(
            kh=_number(facts, "kh")
        ),
        _("Measure total ammonia and pH and send both, for example: ammonia 0 ph 6.4"),
    ],
    "temperature_unknown": lambda _facts: [
        _("Not yet: how warm is the water? With this much ammonia it decides."),
        _("Send for example: temp 24"),
    ],
    "hydrate_unknown": lambda _facts: [
        _(
            "No number for sodium carbonate yet: is it anhydrous or the decahydrate"
            " (washing soda crystals)? They differ 2.7 times by weight."
        ),
        _("Look on the label and send the name with it."),
    ],
    "acid": lambda facts: [
        _(
            "No {substance} for water with animals in it: a strong fall of pH and a burst"
            " of CO2 can kill at once."
        ).format(substance=_acid(facts)),
        _("Lower KH with RO or rain water first, in small changes; pH follows by itself."),
        _("Acid only for water in a separate container, and never mixed with other chemicals."),
    ],
    "insoluble": lambda facts: [
        _("No number: not all of that {substance} would dissolve in {volume} L.").format(
            substance=_substance(facts), volume=_number(facts, "volume_l")
        ),
        _("The rest lies on the ground and goes on making the water harder for weeks."),
    ],
    "mass_implausible": lambda facts: [
        _(
            "No answer for that much in {volume} L: send mass and volume again, for"
            " example: what does 10 g baking soda do in 120 l"
        ).format(volume=_number(facts, "volume_l"))
    ],
    "ph_step": lambda _facts: [
        _("No dose of this: even a small part would move pH by more than 0.3 at once."),
        _("Take bicarbonate instead, or prepare water apart, without animals."),
    ],
    "saturation": lambda facts: [
        _(
            "No dose now: the water is so full of lime (saturation {saturation}) that it"
            " would fall out as snow."
        ).format(saturation=_number(facts, "saturation")),
        _("Retest calcium, KH and pH; let the animals use it up first."),
    ],
    "carbonate": lambda _facts: [
        _("No carbonate or hydroxide for water with animals in it: it lifts pH far too fast."),
        _("Use bicarbonate instead, for example: dose kh +1 with baking soda"),
    ],
    "substance_unknown": lambda facts: [
        _("No number for “{substance}”: I do not know what is in it.").format(
            substance=_substance(facts)
        ),
        _(
            "Tell me what is in it and the mass. For KH I can work with sodium bicarbonate"
            " (baking soda) or potassium bicarbonate."
        ),
    ],
    "raises_none": lambda facts: [
        _("{substance} raises no {analyte}.").format(
            substance=_substance(facts).capitalize(), analyte=_analyte(facts)
        ),
        _(
            "For KH take sodium bicarbonate (baking soda) or potassium bicarbonate, for GH"
            " calcium chloride, gypsum and Epsom salt."
        ),
    ],
    "reading_unknown": lambda facts: [
        _("I need {analyte} first. Measure it and send it, for example: {wish} {number}").format(
            analyte=_analyte(facts),
            wish=names.said(str(facts["analyte"])),
            number=EXAMPLES.get(str(facts["analyte"]), "4"),
        ),
    ],
    "dosed_since": lambda facts: [
        _("No second dose yet: {substance} went in after the {analyte} reading.").format(
            substance=_substance(facts), analyte=_analyte(facts)
        ),
        _("Retest {analyte}, pH and ammonia 24 h after it, send them, and ask again.").format(
            analyte=_analyte(facts)
        ),
    ],
    "jumped": lambda facts: [
        _(
            "No dose yet: {analyte} went from {start} to {target} with nothing logged between."
        ).format(
            analyte=_analyte(facts), start=_number(facts, "from"), target=_with_unit(facts, "to")
        ),
        _("Test it again with a fresh sample and send it. If it reads the same, ask again."),
        _("If something was put in or changed, tell me that first."),
    ],
    "unlike_dose": lambda facts: [
        _(
            "Retest first: by what went in, {analyte} should be about {expected}, not {target}."
        ).format(
            analyte=_analyte(facts),
            expected=_with_unit(facts, "expected"),
            target=_with_unit(facts, "to"),
        ),
        _("The kit, the volume or the amount is wrong: test again, and put in nothing until then."),
    ],
    "diluted_since": lambda facts: [
        _("No dose yet: water was changed after the {analyte} reading.").format(
            analyte=_analyte(facts)
        ),
        _("Retest {analyte}, pH and ammonia, send them, and ask again.").format(
            analyte=_analyte(facts)
        ),
    ],
    "changed_today": lambda _facts: [
        _("Not today: water was changed after the last readings, and they tell another water."),
        _("Test KH, GH, pH and temperature, send them, and ask again tomorrow."),
    ],
    "moved_today": lambda facts: [
        _(
            "Not today: {analyte} was {was} before what went in within a day, and may move by"
            " {step} a day."
        ).format(
            analyte=_analyte(facts),
            was=plain(float(facts["was"]), 1),
            step=plain(float(facts["step"]), 1),
        ),
        _("Retest and ask again in about {hours} h. Animals bear slow changes only.").format(
            hours=plain(max(1.0, float(facts["hours"])), 0)
        ),
    ],
    "one_at_a_time": lambda facts: [
        _(
            "No, not both at once: in the sea calcium and buffer in one place or at one"
            " time fall out as lime."
        ),
        _(
            "First {analyte} alone. For the other ask me again, and give it hours later and"
            " in another place."
        ).format(analyte=_analyte(facts)),
    ],
    "iron_strength": lambda _facts: [
        _(
            "No number for iron yet: which salt is it? Chelates and fertilisers differ many"
            " times in strength."
        ),
        _(
            "I can work with ferrous gluconate or ferrous sulfate, for example: how much"
            " ferrous gluconate for 90 l iron 0 to 0.1"
        ),
        _("For another one send the words of its label."),
    ],
    "analyte_unknown": lambda facts: [
        _(
            "No dose for {analyte}: I cannot work that out. I can for kh, gh, calcium,"
            " magnesium, nitrate, phosphate, potassium, iron and salinity."
        ).format(analyte=_analyte(facts)),
    ],
    "use_gh": lambda facts: [
        _("No dose for {analyte} alone in fresh water: GH is what you measure.").format(
            analyte=_analyte(facts)
        ),
        _("Send for example: dose gh 8 with epsom salt"),
    ],
    "salt_does_not": lambda facts: [
        _("No: {substance} does not raise {analyte} to that.").format(
            substance=_substance(facts), analyte=_analyte(facts)
        ),
        _("Ask without naming a salt, and I take the usual ones."),
    ],
    "kh_alone_first": lambda facts: [
        _("Not both at once: KH {kh} °dH is too low to plan on. KH first: dose kh 2").format(
            kh=_number(facts, "kh")
        ),
    ],
    "kh_too_low": lambda facts: [
        _(
            "No recipe: KH {kh} °dH would not hold pH. Say a KH of 1 or more, for example: how"
            " much salt for 20 l ro to gh 6 kh 3"
        ).format(kh=_number(facts, "kh")),
    ],
    "chlorine_implausible": lambda facts: [
        _("No number for chlorine {chlorine} mg/L: that is no tap water. Test again.").format(
            chlorine=_number(facts, "chlorine")
        ),
    ],
    "nitrite_implausible": lambda facts: [
        _("No number for nitrite {nitrite} mg/L: test again, diluted.").format(
            nitrite=_number(facts, "nitrite")
        )
        if float(facts["nitrite"]) > 0.0
        else _("No salt: there is no nitrite to hold off."),
    ],
    "salt_enough": lambda _facts: [
        _("No salt: in brackish and sea water nitrite is a sign of cycling, not a poison."),
    ],
    "chloride_enough": lambda facts: [
        _("No salt: chloride {chloride} mg/L is ten times the nitrite already.").format(
            chloride=_number(facts, "chloride")
        ),
        _("Change water and feed less until nitrite is gone."),
    ],
    "salt_unweighed": lambda _facts: [
        _("No more salt now: some went in of which I do not know the grams."),
        _("Send them, for example: it was 30 g. Or measure chloride: chloride 100"),
    ],
    "salt_species": lambda facts: [
        _("No salt here: {species} bear it badly.").format(species=facts["species"]),
        _(
            "Instead: change up to a quarter with matching, dechlorinated water, stop"
            " feeding, aerate."
        ),
    ],
    "animals_on_record": lambda _facts: [
        _("No ammonia into a tank with animals: it would poison them."),
        _("It is for tanks without any, snails and shrimps too."),
    ],
    "cycling_implausible": lambda facts: [
        _("No dose to {target}: at most {highest} mg/L as N, more stalls the cycle.").format(
            target=_number(facts, "to"), highest=_number(facts, "highest")
        ),
    ],
    "ph_target": lambda _facts: [
        _("No dose to a pH: pH follows KH and carbon dioxide, and chasing it swings the water."),
        _(
            "Too low: raise KH a little (dose kh +1). Too high, in fresh water only: small changes"
            " with RO or rain water."
        ),
        _("Send ph and kh and I say what they mean together."),
    ],
    "ph_target_gated": lambda _facts: [
        _("No dose to a pH, and nothing that raises it now: ammonia would turn to poison."),
        _("Too high, in fresh water only: small changes with RO or rain water."),
        _("First get ammonia down: stop feeding, small changes with water of the tank's KH."),
    ],
    "label_implausible": lambda _facts: [
        _(
            "No number: I cannot believe that label. Send its words: so many grams per so"
            " many litres raise kh by so much."
        ),
    ],
    "label_past_salts": lambda facts: [
        _(
            "No number: by that label {each} {measure} would raise {analyte} by 1{unit}; any salt"
            " needs {least} to {most}."
        ).format(
            each=small(float(facts["each"])),
            measure=facts["measure"],
            analyte=_analyte(facts),
            unit=unit(str(facts["analyte"])),
            least=plain(float(facts["least"]), 3),
            most=plain(float(facts["most"]), 3),
        ),
        _("Look at its amount, litres and rise again, and send it once more."),
    ],
    "label_unmeasured": lambda _facts: [
        _(
            "No number: that label counts in caps, drops, scoops or spoons, or a unit is missing."
            " Nothing is stored."
        ),
        _("Weigh or measure one and send it so: my buffer: 1 cap (5 g) per 80 l raises kh 1"),
    ],
    "label_lowers": lambda _facts: [
        _("No number for a product that lowers KH or pH: it is an acid, whatever its name."),
        _("A fall of pH and a burst of CO2 can kill animals at once. Nothing is stored."),
        _("Lower KH with RO or rain water, in small changes; pH follows by itself."),
    ],
    "label_refused": lambda _facts: [
        _("No number: by its name that is nothing for water with animals in it."),
        _("To raise KH use bicarbonate: dose kh +1"),
    ],
    "potassium_mussels": lambda facts: [
        _("No {substance} with mussels: potassium harms them.").format(substance=_substance(facts)),
        _("Take a salt without potassium. For KH: dose kh +1 with baking soda"),
    ],
    "mixing": lambda _facts: [
        _("No, never mix these: it gives poisonous gas."),
        _(
            "If it has happened: all out of the room into fresh air, then call the poison line or"
            " the emergency number."
        ),
    ],
    "past_animals": _past_animals,
    "together": lambda _facts: [
        _("No, not together: calcium and buffer in one place or at one time fall out as lime."),
        _(
            "Dissolve each apart. In the sea give them hours apart, in different places; ask me for"
            " one at a time."
        ),
    ],
    "battery_acid": lambda _facts: [
        _("No, never: battery acid and drain or toilet products carry metals and additives."),
        _("Not for prepared water either: there only food or reagent grade, aerated for a day."),
    ],
    "caustic": lambda _facts: [
        _("No caustic near animals: it burns gills, eyes and hands."),
        _("To raise KH use bicarbonate: dose kh +1"),
    ],
    "medicine": lambda _facts: [
        _("No dose of medicines or of anything to end a life from me."),
        _(
            "Ask a vet who treats fish, and keep to the label. Soft water makes copper far"
            " deadlier."
        ),
    ],
    "human": lambda _facts: [
        _("No: tank water, condensate, RO waste water and hobby salts are not for people or pets."),
        _(
            "If somebody swallowed some or feels ill: the poison line or a doctor; tell"
            " them about the tank."
        ),
    ],
    "release": lambda _facts: [
        _("No, never into the wild or a drain that leads there: animals, plants or tank water."),
        _("Give animals to a keeper, a shop or a shelter; bin plants; water onto a flower bed."),
    ],
    "condensate": lambda _facts: [
        _(
            "No: water from dehumidifiers and air conditioners is not for animals: metals,"
            " no buffer."
        ),
        _("Use RO, distilled or clean rain water, and put minerals back."),
    ],
    "bleach": lambda _facts: [
        _("No number for that near animals: it kills gills and filter alike."),
        _("If some got in already, send: bleach got in the tank"),
    ],
    "plaster": lambda _facts: [
        _(
            "No plaster: it is calcium sulfate with half its water, made for walls; it sets to"
            " a lump, and what else is in it no label says."
        ),
        _(
            "Take gypsum sold as food or for brewing (calcium sulfate dihydrate): dose gh +1 with"
            " gypsum"
        ),
    ],
    "baking_powder": lambda _facts: [
        _("No baking powder: it is soda with an acid and starch; it hardly raises KH."),
        _("Take pure baking soda (sodium bicarbonate) and ask: dose kh +1"),
    ],
}

REASONS = tuple(_REFUSALS)
"""Every reason that has its words."""
