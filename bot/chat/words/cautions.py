"""Cautions in words: one or two short lines each."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words.numbers import plain
from bot.chat.words.text import N_, _

CAUTIONS: Final[Mapping[str, tuple[str, ...]]] = {
    "carbonate": (
        N_(
            "Not in a tank with animals: washing soda, potash and lime lift pH far at once; where"
            " bicarbonate ends at pH 7.2 they end near 9, and ammonia turns to poison."
        ),
        N_("Take bicarbonate (baking soda), I plan it in safe steps: dose kh 6"),
        N_("In water prepared apart: gloves and eye protection, dissolve first, never in one go."),
    ),
    "zoanthids": (
        N_(
            "Never boil, scrub under hot water, scrape dry or microwave rock with zoanthids:"
            " their poison kills people, by air too."
        ),
        N_(
            "Gloves and eye protection, under water. If anyone feels ill after it: emergency"
            " care at once, and say “palytoxin”."
        ),
    ),
    "co2_injection": (
        N_(
            "CO2 at most 30 mg/L, and off at night: plants give it off then and oxygen falls."
            " If they gasp: gas off, air on."
        ),
        N_(
            "Never an acid beside it: 0.1 mmol/L of acid frees 4.4 mg/L more at once. Send ph"
            " and kh and I tell how much there is."
        ),
    ),
    "pressure": (
        N_("Never seal a vessel with bicarbonate and acid, or with yeast: it can burst."),
        N_("Leave a way out for the gas, and keep it away from children."),
    ),
    "cylinder": (
        N_(
            "A CO2 cylinder can suffocate unseen: secure it upright, air the room, leak-test"
            " with soapy water."
        ),
        N_("One 2 kg cylinder let out in a small room is enough."),
    ),
    "softened": (
        N_("Softened tap water is not soft water: hardly any GH, sodium, and its KH as before."),
        N_("Take it from before the softener, or RO with minerals; no bicarbonate to harden it."),
    ),
    "filter_tap": (
        N_(
            "No: tap water, hot water and soap kill the filter's life. Rinse the sponge in a"
            " bucket of tank water, never all its parts at once."
        ),
        N_("If it was done: ammonia and nitrite daily for two weeks, and feed little."),
    ),
    "filter_off": (
        N_(
            "No, let it run day and night: without flow its life dies within hours, and the water"
            " lacks oxygen."
        ),
        N_("If it stood for over two hours: empty and rinse it in tank water before it runs."),
        N_("Then ammonia and nitrite daily for a week, and feed little."),
    ),
    "long_unchanged": (
        N_(
            "Not all at once: in old water KH and pH are low, and a large change can kill."
            " Nothing is stored."
        ),
        N_("Test pH, KH, ammonia and nitrate, of the tank and of the tap, and send them."),
        N_("Then 10 % a day at most. If they gasp: air, and ask: what now"),
    ),
    "snail_plague": (
        N_("Snails live on leftover food: feed less, and take them out by hand or with a bait."),
        N_(
            "No copper, no snail poison: it kills shrimps too, and many dead snails at once make"
            " ammonia. Into no stream or pond."
        ),
        N_("If they climb out of the water: test ammonia, nitrite, pH and KH."),
    ),
    "spawned": (
        N_(
            "Keep the water steady for eggs and young: small changes, as warm and as hard as the"
            " tank; no medicine; ammonia and nitrite at 0."
        ),
        N_(
            "Others eat eggs and young. Once they swim, count them in, for example: 12 guppies born"
        ),
    ),
    "well": (
        N_(
            "Well water: aerate it a day and test before use: CO2, hydrogen sulfide, metals,"
            " little oxygen."
        ),
        N_("Its pH can rise by nearly two on aeration; measure pH and KH after, not before."),
    ),
    "copper_pipes": (
        N_(
            "Soft acid water takes copper from pipes: deadly for shrimps and snails, and"
            " worse at low KH. Test the tap for copper; let it run a few minutes first."
        ),
    ),
    "mouth_siphon": (
        N_("Never start a siphon by mouth: tank water carries germs, and chemicals if you dosed."),
        N_("Fill the hose with water first, or use a pump bulb."),
    ),
    "electric": (
        N_(
            "Unplug before a hand goes in; a ground-fault switch (RCD, GFCI) on the circuit;"
            " a drip loop in each cable."
        ),
        N_("Never run a heater out of the water. No buckets on the floor next to plugs."),
    ),
    "wounds": (
        N_("With open cuts: waterproof gloves. Fish tank germs can infect skin weeks later."),
        N_("A sore that does not heal: a doctor, and tell them about the tank."),
    ),
    "salmonella": (
        N_(
            "Tank water can carry Salmonella: wash hands with soap, no kitchen sink, no"
            " children under five with hands in it."
        ),
    ),
    "evaporation": (
        N_(
            "Top up what evaporates with RO or distilled water: hardness and salt do not"
            " evaporate, and tap water adds to them each time."
        ),
        N_("Topping up is no water change: it takes nothing out."),
    ),
    "weight": (
        N_(
            "About 1 kg a litre, and glass, stand and stones on top. Ask somebody who knows floors."
        ),
        N_("Open water and small children: a lid or a fence."),
    ),
    "medicine_in": (
        N_(
            "I cannot judge a medicine: keep to its label, ask a fish vet, no dose by guess, strong"
            " air. Copper kills shrimps and snails, and at low KH fish."
        ),
        N_("Nothing is stored yet: send what you gave, its name with the ml or g."),
    ),
    "acid_in": (
        N_(
            "An acid takes KH and frees CO2, and bacteria that feed on it take oxygen: air on,"
            " small doses, test pH and KH an hour after."
        ),
        N_("Nothing is stored yet. To put it on record: dosed 5 ml vinegar"),
    ),
    "salt_in": (
        N_(
            "Salt by 1 g/kg (0.1 %) a day at most; plants, snails, catfish and loaches bear it"
            " badly, and it stays until water is changed."
        ),
        N_("Nothing is stored yet. To put it on record: dosed 0.1 % salt"),
    ),
    "unknown_in": (
        N_(
            "I do not know what is in such a product: no second dose today, test pH and KH in an"
            " hour."
        ),
        N_("Nothing is stored yet. Send the words of its label, with grams and litres."),
    ),
    "storage": (N_("Label it with name and date, dry, away from food and from children."),),
    "pure_water": (
        N_("Never animals in pure RO, rain or distilled water: put GH and KH back first."),
        N_("Send for example: how much salt for 20 l ro to gh 6 kh 4"),
    ),
    "hands": (
        N_("Unplug heater, pump and lamp first; a ground-fault switch (RCD, GFCI) on the circuit."),
        N_("Clean hands without soap, cream or sun lotion; open cuts: waterproof gloves."),
        N_("Wash with soap afterwards, not in the kitchen sink; no children under five."),
    ),
    "dead_fish": (
        N_(
            "Not down the toilet or a drain, and into no pond or stream: wrap it, into the bin,"
            " or bury it deep where it is allowed."
        ),
        N_("Then test ammonia, nitrite, pH and temperature. To note it: lost 1 fish"),
    ),
    "eaten_by_pet": (
        N_(
            "If the water had medicine, copper or chemicals in it, or your pet is unwell: a vet"
            " now. I cannot judge it."
        ),
        N_("A lid on the tank. To note it: lost 1 fish"),
    ),
    "no_dechlorinator": (
        N_("Tap water must be dechlorinated before it meets animals: chlorine kills in minutes."),
        N_(
            "Without it put the change off: feed less, and test ammonia and nitrite. Standing for a"
            " day frees chlorine, never chloramine."
        ),
        N_("Pure sodium thiosulfate does it too: how much thiosulfate for 10 l"),
    ),
    "chlorine_smell": (
        N_("No water change with it today: your supplier may have dosed more chlorine."),
        N_("Test total chlorine after the dechlorinator: 0 before it goes in. Ask the supplier."),
        N_("If it went in already and they gasp: forgot the dechlorinator"),
    ),
    "tap_nitrate": (
        N_("Your tap is over 44 mg/L nitrate: not for infant formula; ask your water supplier."),
    ),
}


def caution(name: str) -> list[str]:
    """The lines of one caution."""
    return [_(line) for line in CAUTIONS[name]]


def lime_in_sea(kh: float | None, ph: float | None, *, enough: bool) -> list[str]:
    """Lime water, soda ash and the like in a marine tank; common practice, no source."""
    read = [
        _("{name} {value}").format(name=name, value=plain(value, 1))
        for name, value in (("KH", kh), ("pH", ph))
        if value is not None
    ]
    if enough:
        return [
            _("Not now: {read} is high already, and it lifts both.").format(read=", ".join(read)),
            _("Let it fall by itself; no acid against it. Test again tomorrow, then ask."),
        ]
    return [
        _("Only slowly: dripped in at night in place of what evaporates, never in one go."),
        _("It lifts pH and KH: measure both before; not at pH 8.5 or KH 10 and over."),
        _("pH by 0.2 a day at most; of lime only the clear water. Gloves, eye protection."),
        _("Gentler is bicarbonate in safe steps, ask: dose kh +1"),
    ]
