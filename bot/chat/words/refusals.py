"""Why there is no dose and what to do instead: the first sentence says no, no amount stands."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from bot.chat.words.numbers import plain
from core.advice.plan import Refusal

Facts = Mapping[str, float | str]


def refused(refusal: Refusal, tank: str | None) -> list[str]:
    """Why there is no plan, and what to do instead; never an amount."""
    facts = refusal.facts
    lines = _REFUSALS[refusal.reason](facts)
    where = f"{tank}: " if tank else ""
    return [f"{where}{lines[0]}", *lines[1:]]


def _analyte(facts: Facts) -> str:
    name = str(facts.get("analyte", "kh"))
    return {"kh": "KH", "gh": "GH", "ph": "pH"}.get(name, name)


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


def _number(facts: Facts, name: str) -> str:
    return plain(float(facts[name]), 2)


def _known(facts: Facts, name: str, shape: str) -> str:
    """A number in its words, or nothing where it is unknown."""
    return shape.format(_number(facts, name)) if name in facts else ""


_REFUSALS: Mapping[str, Callable[[Facts], list[str]]] = {
    "volume_unknown": lambda _facts: [
        "How many litres of water are in it? Send for example: 90 l",
        "Net: the water itself, not the tank's label.",
    ],
    "volume_implausible": lambda facts: [
        f"No plan for {plain(float(facts['volume_l']), 4)} L: that is no tank I can believe."
        " Send the net volume again, for example: 90 l"
    ],
    "kh_unknown": lambda _facts: [
        "I need the KH first. Measure it and send for example: kh 4",
    ],
    "kh_limit": lambda facts: [
        f"No plan: KH over {_number(facts, 'kh')} is off your kit's scale.",
        "Dilute the sample by half with distilled water, test again and send twice the number.",
    ],
    "target_reached": lambda facts: [
        f"No dose: {_analyte(facts)} {_number(facts, 'from')} is already at {_number(facts, 'to')}"
        " or over.",
        "To lower it, blend in RO or rain water in small changes: what if i change 20% with ro",
    ],
    "target_implausible": lambda facts: [
        f"No plan to {_analyte(facts)} {_number(facts, 'to')}: over {_number(facts, 'highest')}"
        " suits no tank. If you meant another unit, send it with the number.",
    ],
    "contradiction": lambda facts: [
        f"No dose yet: pH{_known(facts, 'ph', ' {}')} with KH{_known(facts, 'kh', ' {}')} does not"
        " add up.",
        "Retest both, with a fresh sample; check the kits' dates.",
    ],
    "ammonia": lambda facts: [
        f"No buffer now: with this much ammonia{_known(facts, 'ammonia', ' (total {} mg/L)')} a"
        " higher pH would poison the animals.",
        "First: stop feeding, change water that matches in KH and temperature, small and often.",
        "If they gasp, add air. Then measure ammonia and pH again and ask me again.",
    ],
    "ammonia_already": lambda facts: [
        f"No dose now: this much ammonia{_known(facts, 'ammonia', ' (total {} mg/L)')} is a danger"
        " already, and comes first.",
        "Stop feeding, change water that matches in KH and temperature, small and often; no food"
        " for plants, no salts until it is down.",
        "If they gasp, add air. Then measure ammonia and pH again and ask me again.",
    ],
    "ammonia_unmeasured": lambda facts: [
        f"No dose yet: with KH {_number(facts, 'kh')} I must know ammonia first.",
        "Measure total ammonia and pH and send both, for example: ammonia 0 ph 6.4",
    ],
    "temperature_unknown": lambda _facts: [
        "Not yet: how warm is the water? With this much ammonia it decides.",
        "Send for example: temp 24",
    ],
    "hydrate_unknown": lambda _facts: [
        "No number for sodium carbonate yet: is it anhydrous or the decahydrate (washing soda"
        " crystals)? They differ 2.7 times by weight.",
        "Look on the label and send the name with it.",
    ],
    "acid": lambda facts: [
        f"No {facts['substance']} for water with animals in it: a strong fall of pH and a burst of"
        " CO2 can kill at once.",
        "Lower KH with RO or rain water first, in small changes; pH follows by itself.",
        "Acid only for water in a separate container, and never mixed with other chemicals.",
    ],
    "mass_implausible": lambda facts: [
        f"No answer for that much in {_number(facts, 'volume_l')} L: send mass and volume again,"
        " for example: what does 10 g baking soda do in 120 l"
    ],
    "ph_step": lambda _facts: [
        "No dose of this: even a small part would move pH by more than 0.3 at once.",
        "Take bicarbonate instead, or prepare water apart, without animals.",
    ],
    "saturation": lambda facts: [
        "No dose now: the water is so full of lime"
        f" (saturation {_number(facts, 'saturation')}) that it would fall out as snow.",
        "Retest calcium, KH and pH; let the animals use it up first.",
    ],
    "carbonate": lambda _facts: [
        "No carbonate or hydroxide for water with animals in it: it lifts pH far too fast.",
        "Use bicarbonate instead: dose kh 6 with baking soda",
    ],
    "substance_unknown": lambda facts: [
        f"No number for “{facts['substance']}”: I do not know what is in it.",
        "Tell me what is in it and the mass. For KH I can work with sodium bicarbonate (baking"
        " soda) or potassium bicarbonate.",
    ],
    "reading_unknown": lambda facts: [
        f"I need {_analyte(facts)} first. Measure it and send it, for example:"
        f" {facts['analyte']} {EXAMPLES.get(str(facts['analyte']), '4')}",
    ],
    "dosed_since": lambda facts: [
        f"No second dose yet: {facts['substance']} went in after the {_analyte(facts)} reading.",
        f"Retest {_analyte(facts)}, pH and ammonia 24 h after it, send them, and ask again.",
    ],
    "one_at_a_time": lambda facts: [
        "No, not both at once: in the sea calcium and buffer in one place or at one time fall out"
        " as lime.",
        f"First {_analyte(facts)} alone. For the other ask me again, and give it hours later and in"
        " another place.",
    ],
    "iron_strength": lambda _facts: [
        "No number for iron yet: which salt is it? Chelates and fertilisers differ many times in"
        " strength.",
        "I can work with ferrous gluconate or ferrous sulfate, for example: how much ferrous"
        " gluconate for 90 l iron 0 to 0.1",
        "For another one send the words of its label.",
    ],
    "analyte_unknown": lambda facts: [
        f"No dose for {_analyte(facts)}: I cannot work that out. I can for kh, gh, calcium,"
        " magnesium, nitrate, phosphate, potassium, iron and salinity.",
    ],
    "use_gh": lambda facts: [
        f"No dose for {_analyte(facts)} alone in fresh water: GH is what you measure.",
        "Send for example: dose gh 8 with epsom salt",
    ],
    "salt_does_not": lambda facts: [
        f"No: {facts['substance']} does not raise {_analyte(facts)} to that.",
        "Ask without naming a salt, and I take the usual ones.",
    ],
    "kh_alone_first": lambda facts: [
        f"Not both at once: KH {_number(facts, 'kh')} is too low to plan on. KH first: dose kh 2",
    ],
    "kh_too_low": lambda facts: [
        f"No recipe: KH {_number(facts, 'kh')} would not hold pH. Say a KH of 1 or more, for"
        " example: how much salt for 20 l ro to gh 6 kh 3",
    ],
    "chlorine_implausible": lambda facts: [
        f"No number for chlorine {_number(facts, 'chlorine')} mg/L: that is no tap water. Test"
        " again.",
    ],
    "nitrite_implausible": lambda facts: [
        f"No number for nitrite {_number(facts, 'nitrite')} mg/L: test again, diluted.",
    ],
    "salt_enough": lambda _facts: [
        "No salt: in brackish and sea water nitrite is a sign of cycling, not a poison.",
    ],
    "chloride_enough": lambda facts: [
        f"No salt: chloride {_number(facts, 'chloride')} mg/L is ten times the nitrite already.",
        "Change water and feed less until nitrite is gone.",
    ],
    "salt_species": lambda facts: [
        f"No salt here: {facts['species']} bear it badly.",
        "Instead: change half the water with matching, dechlorinated water, stop feeding, aerate.",
    ],
    "animals_on_record": lambda _facts: [
        "No ammonia into a tank with animals: it would poison them.",
        "It is for tanks without any, snails and shrimps too.",
    ],
    "cycling_implausible": lambda facts: [
        f"No dose to {_number(facts, 'to')}: at most {_number(facts, 'highest')} mg/L as N, more"
        " stalls the cycle.",
    ],
    "ph_target": lambda _facts: [
        "No dose to a pH: pH follows KH and carbon dioxide, and chasing it swings the water.",
        "Higher: raise KH (dose kh 6). Lower: blend in RO or rain water in small changes.",
        "Send ph and kh and I say what they mean together.",
    ],
    "label_implausible": lambda _facts: [
        "No number: I cannot believe that label. Send its words: so many grams per so many litres"
        " raise kh by so much.",
    ],
    "potassium_mussels": lambda facts: [
        f"No {facts['substance']} with mussels: potassium harms them.",
        "Take a salt without potassium. For KH: dose kh 6 with baking soda",
    ],
    "mixing": lambda _facts: [
        "No, never mix these: it gives poisonous gas.",
        "If it has happened: leave the room, air it, and call the poison line or the emergency"
        " number.",
    ],
    "battery_acid": lambda _facts: [
        "No, never: battery acid and drain or toilet products carry metals and additives.",
        "Not for prepared water either: there only food or reagent grade, aerated for a day.",
    ],
    "caustic": lambda _facts: [
        "No caustic near animals: it burns gills, eyes and hands.",
        "To raise KH use bicarbonate: dose kh 6",
    ],
    "medicine": lambda _facts: [
        "No dose of medicines or of anything to end a life from me.",
        "Ask a vet who treats fish, and keep to the label. Soft water makes copper far deadlier.",
    ],
    "human": lambda _facts: [
        "No: tank water, condensate, RO waste water and hobby salts are not for people or pets.",
        "If somebody swallowed some or feels ill: the poison line or a doctor; tell them about the"
        " tank.",
    ],
    "release": lambda _facts: [
        "No, never into the wild or a drain that leads there: animals, plants or tank water.",
        "Give animals to a keeper, a shop or a shelter; bin plants; water onto a flower bed.",
    ],
    "condensate": lambda _facts: [
        "No: water from dehumidifiers and air conditioners is not for animals: metals, no buffer.",
        "Use RO, distilled or clean rain water, and put minerals back.",
    ],
    "bleach": lambda _facts: [
        "No number for that near animals: it kills gills and filter alike.",
    ],
}
