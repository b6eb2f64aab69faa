"""Refusals of things: what is strong, unknown, unweighed, wrongly labelled, or no medicine."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from bot.chat.words.levels import unit
from bot.chat.words.numbers import plain, small
from bot.chat.words.refusal_parts import (
    Facts,
    acid_named,
    analyte_of,
    number,
    substance_of,
)
from bot.chat.words.text import _

OF_THINGS: Mapping[str, Callable[[Facts], list[str]]] = {
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
        ).format(substance=acid_named(facts)),
        _("Lower KH with RO or rain water first, in small changes; pH follows by itself."),
        _("Acid only for water in a separate container, and never mixed with other chemicals."),
    ],
    "insoluble": lambda facts: [
        _("No number: not all of that {substance} would dissolve in {volume} L.").format(
            substance=substance_of(facts), volume=number(facts, "volume_l")
        ),
        _("The rest lies on the ground and goes on making the water harder for weeks."),
    ],
    "carbonate": lambda _facts: [
        _("No carbonate or hydroxide for water with animals in it: it lifts pH far too fast."),
        _("Use bicarbonate instead, for example: dose kh +1 with baking soda"),
    ],
    "substance_unknown": lambda facts: [
        _("No number for “{substance}”: I do not know what is in it.").format(
            substance=substance_of(facts)
        ),
        _(
            "Tell me what is in it and the mass. For KH I can work with sodium bicarbonate"
            " (baking soda) or potassium bicarbonate."
        ),
    ],
    "raises_none": lambda facts: [
        _("{substance} raises no {analyte}.").format(
            substance=substance_of(facts).capitalize(), analyte=analyte_of(facts)
        ),
        _(
            "For KH take sodium bicarbonate (baking soda) or potassium bicarbonate, for GH"
            " calcium chloride, gypsum and Epsom salt."
        ),
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
    "use_gh": lambda facts: [
        _("No dose for {analyte} alone in fresh water: GH is what you measure.").format(
            analyte=analyte_of(facts)
        ),
        _("Send for example: dose gh 8 with epsom salt"),
    ],
    "salt_does_not": lambda facts: [
        _("No: {substance} does not raise {analyte} to that.").format(
            substance=substance_of(facts), analyte=analyte_of(facts)
        ),
        _("Ask without naming a salt, and I take the usual ones."),
    ],
    "chlorine_implausible": lambda facts: [
        _("No number for chlorine {chlorine} mg/L: that is no tap water. Test again.").format(
            chlorine=number(facts, "chlorine")
        ),
    ],
    "nitrite_implausible": lambda facts: [
        _("No number for nitrite {nitrite} mg/L: test again, diluted.").format(
            nitrite=number(facts, "nitrite")
        )
        if float(facts["nitrite"]) > 0.0
        else _("No salt: there is no nitrite to hold off."),
    ],
    "salt_enough": lambda _facts: [
        _("No salt: in brackish and sea water nitrite is a sign of cycling, not a poison."),
    ],
    "chloride_enough": lambda facts: [
        _("No salt: chloride {chloride} mg/L is ten times the nitrite already.").format(
            chloride=number(facts, "chloride")
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
    "cycling_implausible": lambda facts: [
        _("No dose to {target}: at most {highest} mg/L as N, more stalls the cycle.").format(
            target=number(facts, "to"), highest=number(facts, "highest")
        ),
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
            analyte=analyte_of(facts),
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
        _("No {substance} with mussels: potassium harms them.").format(
            substance=substance_of(facts)
        ),
        _("Take a salt without potassium. For KH: dose kh +1 with baking soda"),
    ],
    "mixing": lambda _facts: [
        _("No, never mix these: it gives poisonous gas."),
        _(
            "If it has happened: all out of the room into fresh air, then call the poison line or"
            " the emergency number."
        ),
    ],
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
        _("No, none of that near animals: it kills gills and filter alike."),
        _("If some got in already, send: bleach got in the tank"),
    ],
    "harmful": lambda facts: [
        _("No: no {substance} into water with animals in it: it can harm gills and filter.").format(
            substance=substance_of(facts)
        ),
        _("Shrimps, snails and the filter bear it worst. No amount of it from me."),
        _("What is it for? Tell me that, and measure ammonia, nitrite, pH and KH."),
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
