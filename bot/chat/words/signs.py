"""What a sign that keepers see may mean for the water; common practice, no source."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from bot.chat.words.names import label
from bot.chat.words.text import N_, _

MEANS: Final[Mapping[str, str]] = {
    "cloudy": N_(
        "Cloudy water is mostly bacteria (a new tank, much food, something dead) or stirred dust."
        " Feed little, look for the dead, leave the filter as it is."
    ),
    "green_water": N_(
        "Green water is drifting algae: much light, much food. Shade it for some days, feed less,"
        " keep air on at night; no algae killer."
    ),
    "algae": N_(
        "Algae live of light and food: 6 to 8 hours of light, less food, small changes, more"
        " plants. No algae killer with shrimps, snails or corals."
    ),
    "film": N_(
        "A film is protein and bacteria, and keeps air out: move the surface, take it off with"
        " paper, feed less."
    ),
    "smell": N_(
        "A healthy tank smells of earth. A bad smell is rot: look for dead animals, old food, a"
        " filter that stopped. Rotten eggs: strong air, do not stir the ground."
    ),
    "foam": N_(
        "Foam that stays is protein (much food, something dead), soap, or a product that went in."
    ),
    "feeding": N_(
        "Most fish: once or twice a day, as much as is eaten in two minutes; a day without food a"
        " week does no harm. What is left over becomes ammonia, then nitrate."
    ),
    "feeding_cold": N_(
        "No food under about 8 °C, nor under ice: fish do not digest it then, and it rots. From 8"
        " to 10 °C hardly any, light food, at noon; a little again once it stays over 10 °C."
    ),
    "lighting": N_(
        "6 to 8 hours of light a day, dark at night, by a timer: longer feeds algae. With plants,"
        " CO2 rises and pH falls in the dark, so give air at night."
    ),
    "filter_care": N_(
        "Rinse the filter in old tank water when its flow gets weak, only a part at a time, never"
        " under chlorinated tap water and never all of it new: its bacteria eat the ammonia."
    ),
    "ground_care": N_(
        "Suck the dirt off the ground at a water change, a third of it each time; leave planted"
        " soil and deep sand. Glass: by hand or magnet, no cleaner."
    ),
    "snails": N_(
        "Small snails come with plants, do no harm, and are many where much food is left: feed"
        " less, take them out by hand. No snail killer: it is copper mostly, or rots the water."
    ),
    "shells": N_("Shells dissolve in sour or soft water: too little pH, KH or calcium (GH)."),
    "plants": N_(
        "Yellow, thin or holed leaves lack light, CO2 or food (nitrate, potassium, iron); new"
        " plants often melt while they settle. Change one thing at a time, take off what rots."
    ),
    "tea": N_(
        "Yellow or brown water is tannin of wood, leaves or peat: harmless, but it can lower pH"
        " where KH is low."
    ),
    "crust": N_(
        "A white crust is lime of hard water that dried. Take it off by hand; no vinegar or cleaner"
        " may get into the tank. Top up with RO or rain water."
    ),
    "pearling": N_(
        "Fine bubbles on leaves are oxygen: light and CO2 are good. A pH read in full light is the"
        " highest of the day."
    ),
    "gassed": N_(
        "Bubbles on everything after a change are air of cold tap water: gone in a day. Let new"
        " water stand or stir it first."
    ),
    "co2_yellow": N_(
        "Yellow means too much CO2, far over 30 mg/L, where its own water has KH 4: turn the gas"
        " down and give more air now. Do animals gasp?"
    ),
    "co2_green": N_(
        "Green means about 30 mg/L CO2, where its own water has KH 4. It shows an hour or two late."
    ),
    "co2_blue": N_(
        "Blue means little CO2, under about 15 mg/L, where its own water has KH 4. It shows an hour"
        " or two late: raise the gas slowly, with animals in sight."
    ),
    "coral": N_(
        "By common practice a coral draws in where salinity, warmth or KH moved, after a touch, a"
        " sting of a neighbour or too much light. Look at the heater; put nothing in by guess."
    ),
    "bloated": N_(
        "By common practice it may be eggs, too much food, or an illness inside. No food for a day,"
        " no medicine by guess. Scales that stand off, or it lies down: ask a vet who treats fish."
    ),
    "chasing": N_(
        "By common practice chasing is courting, rank, or too little room or company. More plants"
        " and hides, and part them where fins are torn or one no longer eats."
    ),
    "listless": N_(
        "By common practice who is listless or does not eat has bad or cold water, is new, or is"
        " ill. No food for a day, no medicine by guess; if it gasps or lies down, say: help. A vet"
        " who treats fish can tell an illness."
    ),
    "hiding": N_(
        "Animals that hide, clamp their fins or turn pale are stressed: bad water is the first"
        " cause. No medicine by guess."
    ),
}


def means(sign: str) -> str:
    """What it may come of, and what to do that does no harm."""
    return _(MEANS[sign])


def no_food_while_open(part: str) -> str:
    """Whether to feed, while a poison that was told is asked about."""
    return _(
        "“{part}” is not answered yet: if it is right, no food today. It becomes ammonia, then"
        " nitrite; a day without does no grown fish harm."
    ).format(part=part)


def measure(analytes: Sequence[str]) -> str:
    """What to test for it."""
    told = _("Measure and send: {names}.")
    return told.format(names=", ".join(label(each) for each in analytes))
