"""First-minute steps that do no harm: what to do, what to measure, what not to do, whom to call."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final

from bot.chat.words import aid_people, names
from bot.chat.words.aid_change import change
from bot.chat.words.emergency_steps import (
    AIR,
    UNPLUG,
    VET,
    after_change,
    co2_off,
    copper_out,
    fed_and_aired,
    later_change,
    measure,
    no_air_yet,
    no_buffer,
    of_lost,
    ph_high,
    ph_low,
    salt_or_none,
    thiosulfate,
)
from bot.chat.words.numbers import plain, small
from bot.chat.words.text import N_, _
from core.advice.calls import OF_PEOPLE, Danger
from core.advice.emergencies import Help
from core.advice.limits import NH3_WARN

WHAT_NOW = N_("what now")
"""The button of an alarm that leads here."""

MOST = 6
"""Lines of one answer."""

Step = str | Callable[[Help], str | None]
"""A line, or what makes one of the readings; None where it has nothing to say."""

_STEPS: Final[Mapping[Danger, tuple[Step, ...]]] = {
    "gasping": (
        AIR,
        after_change,
        N_("Stop feeding; switch CO2 injection off. Do not dose anything yet."),
        measure,
        later_change,
        VET,
    ),
    "nitrite": (
        fed_and_aired,
        change,
        measure,
        N_("Do not clean the filter, do not add medicines."),
        salt_or_none,
        VET,
    ),
    "ph_crash": (
        no_buffer,
        ph_low,
        of_lost,
        N_("Stop feeding. If they gasp, give air at once."),
        measure,
        change,
        VET,
    ),
    "ph_high": (
        ph_high,
        N_(
            "If it holds: a fifth to a half changed with water of a lower pH, dechlorinated, as"
            " warm, with the tank's own salinity; again until it is under 9. No acid."
        ),
        N_("Better still: fish out of it, into such water in a tub with air."),
        N_("Cement, lime, limestone or algae in the sun: stop what still gets in, shade a pond."),
        measure,
        N_("At this pH nearly all ammonia is poison: no food."),
    ),
    "chlorine": (
        N_(
            "No more tap water. Dechlorinator (thiosulfate) into the tank now, for all of its"
            " water, by the label; aerate."
        ),
        N_("No acid or vinegar with it, and nothing else."),
        thiosulfate,
        N_("Check the temperature: bring it back by 1 °C an hour."),
        N_("Measure ammonia in an hour: chloramine frees some."),
        N_("No dechlorinator at hand: strong air, no more tap water, and fetch some today."),
    ),
    "bleach": (
        N_(
            "Animals out now, into clean dechlorinated water as warm as theirs, with air; if"
            " you have none: dechlorinator (thiosulfate) into the tank at once."
        ),
        N_("No vinegar, acid, ammonia or other cleaner near it: poisonous gas. Air the room."),
        N_("Bleach takes far more dechlorinator than tap water: test until total chlorine is 0."),
        change,
        N_("Rinse all that was bleached and let it dry before animals go back."),
        VET,
    ),
    "contaminated": (
        N_(
            "Stop what still gets in. A spray in the room: air pump off, tank covered, windows"
            " open, until the air is clean."
        ),
        change,
        N_("Fresh activated carbon into the filter. Then aerate well."),
        N_("Nothing against it: no second product, no medicine, no food."),
        measure,
        VET,
    ),
    "sulfide": (
        N_(
            "That is hydrogen sulfide, a poison from rotting ground or a filter that stood: strong"
            " air now, do not stir the bottom."
        ),
        N_("Open the windows; a headache or sore eyes: out of the room, all of you."),
        N_("A filter that stood stays off until it is emptied and rinsed in tank water."),
        change,
        measure,
        VET,
    ),
    "co2_high": (
        co2_off,
        N_("No buffer and nothing else to lift pH: it comes back by itself as the CO2 leaves."),
        measure,
        change,
        N_("A cylinder that let go its gas in the room: windows open, and out if you feel dizzy."),
        VET,
    ),
    "copper": (
        copper_out,
        N_(
            "Change a tenth to a quarter with dechlorinated water of the tank's own pH, KH and"
            " salinity that reads 0 copper: test the tap, let it run long; again after some hours."
        ),
        N_("Fresh activated carbon into the filter now; it takes copper out slowly."),
        N_("Find the source: copper pipes, a medicine, plant food, metal in the water."),
        measure,
        N_("In soft water copper kills fish too. No acid, nothing that lowers KH."),
    ),
    "copper_metal": (
        N_("Take it out of the water now: copper, brass and bronze give off copper."),
        N_("Test copper today and in two days, and send it; if they gasp, give air at once."),
        N_(
            "It kills shrimps, snails and corals first, fish later, and sooner in soft, acid water."
        ),
        measure,
        change,
        N_("Fresh activated carbon into the filter takes copper out slowly. No acid."),
    ),
    "overdose": (
        N_("Stop dosing. Do not add anything to undo it: no acid, no second product."),
        N_("If they gasp, give air at once."),
        change,
        N_(
            "Measure pH, KH, GH and ammonia; tell me what went in, how many grams, how many litres."
        ),
        N_("A medicine: fresh activated carbon takes much of it out."),
        VET,
    ),
    "jumped": (
        N_("Back into its own tank now, with wet hands, even if it looks dry and dead."),
        N_("Lights off, a lid on; no food today, no salt and no medicine."),
        N_("Fish jump from bad water too."),
        measure,
        VET,
    ),
    "leak": (
        N_(
            "Pull the plugs with dry hands, or the fuse if it is wet there. Then siphon clean"
            " buckets full, until the water is below the leak."
        ),
        N_("Animals into those buckets of their own water: lid, air, and as warm as before."),
        N_("Keep the filter's sponges wet in tank water; no heater out of the water."),
        N_("No sealing with animals in it: a seal must cure for days, outside the water."),
        N_("A litre weighs a kilogram, and a cracked pane can go at once: keep children away."),
    ),
    "overfed": (
        N_("Take the food out now: net, then siphon along the bottom; rinse the sponge after."),
        N_("No food for two days. If they gasp, give air at once."),
        change,
        measure,
        N_("Then ammonia and nitrite each morning and evening for three days: rot comes late."),
    ),
    "heater_hot": (
        N_("Pull the heater's plug now, before a hand goes into the water."),
        N_("Air: warm water holds little oxygen. Stop feeding."),
        N_(
            "Cool it 1 °C an hour, not faster: lid off, a fan over the water; no ice, no cold"
            " water."
        ),
        N_("Send the temperature now and every hour."),
        VET,
    ),
    "heater_cold": (
        N_(
            "Warm it 1 °C an hour, not faster: closed bottles of warm water into it, lid on, a"
            " blanket."
        ),
        UNPLUG,
        N_("No hot water poured in. Keep the filter running, no food until it is warm."),
        N_("Send the temperature now and every hour."),
    ),
    "heater": (
        N_("Pull the heater's plug before a hand goes into the water. Too hot or too cold?"),
        N_("Too hot: air, lid off, a fan. Too cold: closed bottles of warm water, a blanket."),
        N_("Either way 1 °C an hour, not faster. Never run a heater out of the water."),
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
    "filter": (
        N_(
            "Move the surface: an air stone, or a jug. If the filter stood for over two hours,"
            " empty and rinse it in tank water before it runs."
        ),
        N_("Unplug before a hand goes in; then look for a blocked inlet or rotor, and low water."),
        N_("Stop feeding. Keep its sponges wet in tank water; borrow one if it stays dead."),
        measure,
        N_("Then ammonia and nitrite each day until it has run for a week."),
    ),
    "filter_harmed": (
        N_(
            "The filter may have lost the life that keeps the water clean: test ammonia and nitrite"
            " daily for two weeks, and feed little."
        ),
        N_(
            "Keep the old medium wet in tank water and run it beside the new for a month, if you"
            " still have it."
        ),
        N_("Next time rinse in tank water, not under the tap, and renew one part at a time."),
        measure,
        N_("No new animals until both stay at zero for a week."),
    ),
    "frozen": (
        N_("Do not hit the ice. Stay off it, and melt a hole with a pot of hot water set on it."),
        N_("Keep one hole open: an air stone near the surface, not on the bottom."),
        N_("No food in the cold, no salt, no antifreeze, no boiling water poured in."),
        N_("Fish that lie still under ice are at rest. If they gasp at the hole: air."),
        N_("Ice and small children: a fence."),
    ),
    "maybe_dead": (
        N_(
            "If the gills move it lives: leave it in its water, lights off, no food, no medicine."
            " Nothing is stored."
        ),
        N_("If it gasps: air now."),
        measure,
        later_change,
        N_("Dead for sure, no gill moved for ten minutes: take it out, and tell me “1 fish died”."),
        VET,
    ),
    "general": (
        N_("Stop feeding, dose nothing, no medicine. If they gasp at the surface: air now."),
        after_change,
        of_lost,
        measure,
        no_air_yet,
        change,
        VET,
    ),
    "illness": (
        N_("No medicine and no salt by guess: bad water is the first cause. Feed less."),
        measure,
        N_("I make no diagnosis. Ask a vet who treats fish: photos, readings, since when."),
        N_("Medicines and salt can kill shrimps, snails and some fish."),
        N_("If they gasp at the surface: air now. No new animals; a net of its own."),
    ),
}


def lines(
    help_: Help, tank: str | None, country: str | None, known: str | None = None
) -> list[str]:
    """The first steps for a danger, six lines at most.

    Parameters
    ----------
    help_ : Help
        The danger, with what is known of the tank.
    tank, country : str or None
        Name of the tank; code of the keeper's country.
    known : str or None, optional
        What is known to be wrong with the water.
    """
    if help_.danger in OF_PEOPLE:
        return aid_people.lines(help_.danger, country)[:MOST]
    told = _ammonia(help_) if help_.danger == "ammonia" else _told(_of(help_), help_)
    if help_.gasping and help_.danger not in _AIRED:
        told.insert(0, _(AIR))
    if known is not None:
        told.insert(1, known)
    return [names.of_tank(tank, told[0]), *told[1:]][:MOST]


_AIRED: Final = frozenset(
    {"gasping", "chlorine", "co2_high", "heater_hot", "power", "filter", "bleach", "contaminated"}
)
"""Whose first lines give air already."""


def _of(help_: Help) -> tuple[Step, ...]:
    return _SEA_NITRITE if help_.sea_nitrite else _STEPS[help_.danger]


_SEA_NITRITE: Final[tuple[Step, ...]] = (
    N_("Stop feeding. In salt water nitrite is hardly a poison: no big change, no salt for it."),
    N_("It tells that the filter is not ready: ammonia is what counts."),
    measure,
    VET,
)


def _told(steps: tuple[Step, ...], help_: Help) -> list[str]:
    """The lines of steps, in order; a step that has nothing to say is left out."""
    told = [_(step) if isinstance(step, str) else step(help_) for step in steps]
    return [line for line in told if line]


def _ammonia(help_: Help) -> list[str]:
    lead, *then = _told(_NO_AIR if help_.no_air else _AERATED, help_)
    if help_.nh3_n is not None and help_.nh3_n >= NH3_WARN:
        known = _("Now {poison} mg/L poisonous ammonia as N, pH {ph}.")
        told = known.format(poison=small(help_.nh3_n), ph=plain(help_.ph or 0.0, 1))
        lead = f"{lead} {told}"
    return [lead, *then, *_told(_AMMONIA, help_)]


_NO_AIR: Final[tuple[Step, ...]] = (
    N_(
        "Stop feeding. No buffer and no extra air while nobody gasps: a higher pH frees the poison."
    ),
    change,
    N_("If they gasp: air at once, whatever the pH."),
)
"""While the gills still work, the low pH holds the poison down."""

_AERATED: Final[tuple[Step, ...]] = (
    N_("Stop feeding, and aerate. No buffer: a higher pH frees more of the poison."),
    change,
)

_AMMONIA: Final[tuple[Step, ...]] = (
    N_("Do not clean the filter, do not add medicines."),
    measure,
    VET,
)
"""What follows in both cases."""
