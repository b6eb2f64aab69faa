"""First-minute steps that do no harm: what to do, what to measure, what not to do, whom to call."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words import names
from bot.chat.words.numbers import plain, small
from bot.chat.words.poison_lines import whom_to_call
from bot.chat.words.text import N_, _
from core.advice.emergencies import Danger, Help

WHAT_NOW = N_("what now")
"""The button of an alarm that leads here."""

VET = N_("Whom to ask: a vet who treats fish, or an experienced keeper near you.")
SUPPLIER = N_("Your water supplier tells you how much chlorine or chloramine is in the tap.")

_STEPS: Final[Mapping[Danger, tuple[str, ...]]] = {
    "gasping": (
        N_("Air now: air stone, outlet to the surface, pour water from a jug back in."),
        N_("Stop feeding; switch CO2 injection off. Do not dose anything yet."),
        N_("Then measure temperature, ammonia, nitrite and pH, and send them to me."),
        N_(
            "If nothing explains it in 15 minutes: change a third with dechlorinated water"
            " of the same temperature."
        ),
        VET,
    ),
    "nitrite": (
        N_("Stop feeding; aerate; change half with dechlorinated water of the same temperature."),
        N_("Measure nitrite, ammonia, pH and KH, and send them."),
        N_("Do not clean the filter, do not add medicines."),
        N_("Salt can protect some fish: ask me “how much salt for nitrite”."),
        VET,
    ),
    "ph_crash": (
        N_(
            "Do not raise pH fast, and no buffer before ammonia is measured: it can poison"
            " in minutes."
        ),
        N_("Stop feeding. Measure pH, KH, ammonia and temperature, and send them."),
        N_("Then small changes, a tenth at a time, with water whose KH is close to the tank's."),
        N_("If they gasp, give air at once."),
        VET,
    ),
    "chlorine": (
        N_(
            "Thiosulfate dechlorinator into the tank now, for the whole tank, by its label; aerate."
        ),
        N_("No further tap water until it is dechlorinated. Do not use acid or vinegar with it."),
        N_("With pure thiosulfate ask me: how much thiosulfate for 100 l"),
        N_("Measure ammonia in an hour: chloramine frees some."),
        SUPPLIER,
    ),
    "overdose": (
        N_("Stop dosing. Do not add anything to undo it: no acid, no second product."),
        N_("Change up to half with dechlorinated water of the same temperature and KH; aerate."),
        N_(
            "Measure pH, KH, GH and ammonia; tell me what went in, how many grams, how many litres."
        ),
        N_("Repeat the change after some hours if animals look ill."),
        VET,
    ),
    "heater": (
        N_("Unplug the heater before a hand goes into the water."),
        N_("Give air first: warm water holds little oxygen."),
        N_("Bring it back 1 °C an hour, not faster: lid off, a fan; no ice in the water."),
        N_("Too cold: bottles of warm water, 1 °C an hour. Never run a heater out of the water."),
        N_("Send the temperature now and every hour."),
    ),
    "power": (
        N_("Air is first: a battery pump, or pour water from a jug back in every few minutes."),
        N_("Stop feeding. Wrap the tank against cold; no opening of the lid for long."),
        N_(
            "A filter that stood for over two hours: empty and rinse it in tank water"
            " before it runs."
        ),
        N_("No camping stove or generator indoors. Dry hands and a drip loop before you plug in."),
        N_("When it is back: measure temperature and ammonia, and send them."),
    ),
    "general": (
        N_("Measure ammonia, nitrite, pH, KH and temperature now, and send them."),
        N_("Until then: stop feeding, dose nothing, no medicine."),
        N_(
            "If they gasp at the surface: air now. If not, and ammonia may be up, no extra air yet."
        ),
        N_("Change a quarter with dechlorinated water of the same temperature and KH."),
        VET,
    ),
}


def lines(help_: Help, tank: str | None, country: str | None) -> list[str]:
    """The first steps for a danger, six lines at most."""
    if help_.danger == "swallowed":
        return swallowed(country)
    told = _ammonia(help_) if help_.danger == "ammonia" else _told(_STEPS[help_.danger])
    return [names.of_tank(tank, told[0]), *told[1:]][:6]


def _told(templates: tuple[str, ...]) -> list[str]:
    return [_(template) for template in templates]


def _ammonia(help_: Help) -> list[str]:
    lead, *then = _told(_NO_AIR if help_.no_air else _AIR)
    if help_.nh3_n is not None:
        known = _("Now {poison} mg/L poisonous ammonia as N, pH {ph}.")
        told = known.format(poison=small(help_.nh3_n), ph=plain(help_.ph or 0.0, 1))
        lead = f"{lead} {told}"
    return [lead, *then, *_told(_AMMONIA)]


_NO_AIR: Final = (
    N_(
        "Stop feeding. No buffer and no extra air while nobody gasps: a higher pH frees the poison."
    ),
    N_(
        "Change a quarter with dechlorinated water cut to the tank's own KH (RO or rain), same"
        " temperature; repeat after some hours."
    ),
)
"""While the gills still work, the low pH holds the poison down."""

_AIR: Final = (
    N_("Stop feeding, and change half the water, dechlorinated, same temperature."),
    N_("Aerate. Repeat after some hours. No buffer: a higher pH frees more of the poison."),
)

_AMMONIA: Final = (
    N_("Do not clean the filter, do not add medicines."),
    N_("If they gasp: air at once, whatever the pH."),
    N_("Measure ammonia, pH, KH and temperature and send them; then: what if i change 50%"),
    VET,
)
"""What follows in both cases."""


def swallowed(country: str | None) -> list[str]:
    """Somebody, or a pet, swallowed something."""
    return [
        whom_to_call(country),
        _(
            "Do not make them vomit. Rinse the mouth; rinse eyes or skin with running water"
            " for 15 minutes."
        ),
        _("Keep the bottle or bag at hand: they will ask what, how much and when."),
        _("A pet: an emergency vet. I cannot judge it."),
    ]
