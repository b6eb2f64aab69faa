"""Cautions in words: one or two short lines each."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

CAUTIONS: Final[Mapping[str, tuple[str, ...]]] = {
    "zoanthids": (
        "Never boil, scrub under hot water, scrape dry or microwave rock with zoanthids: their"
        " poison kills people, by air too.",
        "Gloves and eye protection, under water. If anyone feels ill after it: emergency care at"
        " once, and say “palytoxin”.",
    ),
    "co2_injection": (
        "CO2 at most 30 mg/L, and off at night: plants give it off then and oxygen falls. If they"
        " gasp: gas off, air on.",
        "Never an acid beside it: 0.1 mmol/L of acid frees 4.4 mg/L more at once. Send ph and kh"
        " and I tell how much there is.",
    ),
    "pressure": (
        "Never seal a vessel with bicarbonate and acid, or with yeast: it can burst.",
        "Leave a way out for the gas, and keep it away from children.",
    ),
    "cylinder": (
        "A CO2 cylinder can suffocate unseen: secure it upright, air the room, leak-test with"
        " soapy water.",
        "One 2 kg cylinder let out in a small room is enough.",
    ),
    "softened": (
        "Softened tap water is not soft water: hardly any GH, sodium, and its KH as before.",
        "Take it from before the softener, or RO with minerals; no bicarbonate to harden it.",
    ),
    "well": (
        "Well water: aerate it a day and test before use: CO2, hydrogen sulfide, metals, little"
        " oxygen.",
        "Its pH can rise by nearly two on aeration; measure pH and KH after, not before.",
    ),
    "copper_pipes": (
        "Soft acid water takes copper from pipes: deadly for shrimps and snails, and worse at low"
        " KH. Test the tap for copper; let it run a few minutes first.",
    ),
    "mouth_siphon": (
        "Never start a siphon by mouth: tank water carries germs, and chemicals if you dosed.",
        "Fill the hose with water first, or use a pump bulb.",
    ),
    "electric": (
        "Unplug before a hand goes in; a ground-fault switch (RCD, GFCI) on the circuit; a drip"
        " loop in each cable.",
        "Never run a heater out of the water. No buckets on the floor next to plugs.",
    ),
    "wounds": (
        "With open cuts: waterproof gloves. Fish tank germs can infect skin weeks later.",
        "A sore that does not heal: a doctor, and tell them about the tank.",
    ),
    "salmonella": (
        "Tank water can carry Salmonella: wash hands with soap, no kitchen sink, no children under"
        " five with hands in it.",
    ),
    "evaporation": (
        "Top up what evaporates with RO or distilled water: hardness and salt do not evaporate, and"
        " tap water adds to them each time.",
        "Topping up is no water change: it takes nothing out.",
    ),
    "weight": (
        "About 1 kg a litre, and glass, stand and stones on top. Ask somebody who knows floors.",
        "Open water and small children: a lid or a fence.",
    ),
    "storage": ("Label it with name and date, dry, away from food and from children.",),
    "pure_water": (
        "Never animals in pure RO, rain or distilled water: put GH and KH back first.",
        "Send for example: how much salt for 20 l ro to gh 6 kh 4",
    ),
    "tap_nitrate": (
        "Your tap is over 44 mg/L nitrate: not for infant formula; ask your water supplier.",
    ),
}
