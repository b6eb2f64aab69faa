"""First-minute steps that do no harm: what to do, what to measure, what not to do, whom to call."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words.numbers import plain, small
from bot.chat.words.poison_lines import whom_to_call
from core.advice.emergencies import Danger, Help

WHAT_NOW = "what now"
"""The button of an alarm that leads here."""

VET = "Whom to ask: a vet who treats fish, or an experienced keeper near you."
SUPPLIER = "Your water supplier tells you how much chlorine or chloramine is in the tap."

_STEPS: Final[Mapping[Danger, tuple[str, ...]]] = {
    "gasping": (
        "Air now: air stone, outlet to the surface, pour water from a jug back in.",
        "Stop feeding; switch CO2 injection off. Do not dose anything yet.",
        "Then measure temperature, ammonia, nitrite and pH, and send them to me.",
        "If nothing explains it in 15 minutes: change a third with dechlorinated water of the same"
        " temperature.",
        VET,
    ),
    "nitrite": (
        "Stop feeding; aerate; change half with dechlorinated water of the same temperature.",
        "Measure nitrite, ammonia, pH and KH, and send them.",
        "Do not clean the filter, do not add medicines.",
        "Salt can protect some fish: ask me “how much salt for 100 l nitrite 1”.",
        VET,
    ),
    "ph_crash": (
        "Do not raise pH fast, and no buffer before ammonia is measured: it can poison in minutes.",
        "Stop feeding. Measure pH, KH, ammonia and temperature, and send them.",
        "Then small changes, a tenth at a time, with water whose KH is close to the tank's.",
        "If they gasp, give air at once.",
        VET,
    ),
    "chlorine": (
        "Thiosulfate dechlorinator into the tank now, for the whole tank, by its label; aerate.",
        "No further tap water until it is dechlorinated. Do not use acid or vinegar with it.",
        "With pure thiosulfate ask me: how much thiosulfate for 100 l",
        "Measure ammonia in an hour: chloramine frees some.",
        SUPPLIER,
    ),
    "overdose": (
        "Stop dosing. Do not add anything to undo it: no acid, no second product.",
        "Change up to half with dechlorinated water of the same temperature and KH; aerate.",
        "Measure pH, KH, GH and ammonia; tell me what went in, how many grams, how many litres.",
        "Repeat the change after some hours if animals look ill.",
        VET,
    ),
    "heater": (
        "Unplug the heater before a hand goes into the water.",
        "Give air first: warm water holds little oxygen.",
        "Bring it back 1 °C an hour, not faster: lid off, a fan; no ice in the water.",
        "Too cold: bottles of warm water, 1 °C an hour. Never run a heater out of the water.",
        "Send the temperature now and every hour.",
    ),
    "power": (
        "Air is first: a battery pump, or pour water from a jug back in every few minutes.",
        "Stop feeding. Wrap the tank against cold; no opening of the lid for long.",
        "A filter that stood for over two hours: empty and rinse it in tank water before it runs.",
        "No camping stove or generator indoors. Dry hands and a drip loop before you plug in.",
        "When it is back: measure temperature and ammonia, and send them.",
    ),
    "general": (
        "Measure ammonia, nitrite, pH, KH and temperature now, and send them.",
        "Until then: stop feeding, dose nothing, no medicine.",
        "If they gasp at the surface: air now. If not, and ammonia may be up, no extra air yet.",
        "Change a quarter with dechlorinated water of the same temperature and KH.",
        VET,
    ),
}


def lines(help_: Help, tank: str | None, country: str | None) -> list[str]:
    """The first steps for a danger, six lines at most."""
    if help_.danger == "swallowed":
        return swallowed(country)
    where = f"{tank}: " if tank else ""
    told = _ammonia(help_) if help_.danger == "ammonia" else list(_STEPS[help_.danger])
    return [f"{where}{told[0]}", *told[1:]][:6]


def _ammonia(help_: Help) -> list[str]:
    known = ""
    if help_.nh3_n is not None:
        acidity = plain(help_.ph or 0.0, 1)
        known = f" Now {small(help_.nh3_n)} mg/L poisonous ammonia as N, pH {acidity}."
    if help_.no_air:
        first = (
            "Stop feeding. No buffer and no extra air while nobody gasps: a higher pH frees the"
            " poison."
        )
        second = (
            "Change a quarter with dechlorinated water cut to the tank's own KH (RO or rain), same"
            " temperature; repeat after some hours."
        )
    else:
        first = "Stop feeding, and change half the water, dechlorinated, same temperature."
        second = "Aerate. Repeat after some hours. No buffer: a higher pH frees more of the poison."
    return [
        first + known,
        second,
        "Do not clean the filter, do not add medicines.",
        "If they gasp: air at once, whatever the pH.",
        "Measure ammonia, pH, KH and temperature and send them; then: what if i change 50%",
        VET,
    ]


def swallowed(country: str | None) -> list[str]:
    """Somebody, or a pet, swallowed something."""
    return [
        whom_to_call(country),
        "Do not make them vomit. Rinse the mouth; rinse eyes or skin with running water for 15"
        " minutes.",
        "Keep the bottle or bag at hand: they will ask what, how much and when.",
        "A pet: an emergency vet. I cannot judge it.",
    ]
