"""Words for what is told and asked after a call for help. Common practice, no source."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Final

from bot.chat.words import names
from bot.chat.words.aid_change import change
from bot.chat.words.emergency_steps import measure
from bot.chat.words.numbers import small
from bot.chat.words.text import _
from core.advice.emergencies import Help


def of(tank: str, lines: Sequence[str]) -> list[str]:
    """The lines, the first with the tank's name; six at most."""
    return [names.of_tank(tank, lines[0]), *lines[1:]][:6]


def worse() -> str:
    """They look worse after the first steps."""
    return _("Worse means act now, do not wait: these steps again, from the first.")


def look_fine() -> str:
    """They look well while a call stands: no reason to stop."""
    return _("Looking well does not make it safe: harm may come later. Go on with this:")


def will_live() -> list[str]:
    """Whether they will live: nobody knows, and what counts."""
    return [
        _("They can, while they breathe: do the steps now, in their order. Nobody knows for sure."),
        _("Then air, dim light, no food for a day. Some die days later: look twice a day."),
    ]


def better(*, asks: bool) -> list[str]:
    """They look better, or it is asked whether they are."""
    if asks:
        return [_("Better is: calm breathing, fins open, at their usual place. And by test:")]
    return [
        _("Good. Leave the air on, no food today, look again tonight and in the morning."),
        _("It is over only by test:"),
    ]


def _feed(help_: Help) -> list[str]:
    first = {
        "overfed": _("No food for two days: enough lies in the tank."),
        "heater_cold": _("No food until it is warm again: cold fish do not digest."),
        "power": _("No food until the filter has run for a day."),
        "filter": _("No food until the filter has run for a day."),
    }.get(help_.danger, _("Not today: a day without food does no grown fish harm, leftovers do."))
    return [
        first,
        _("Then a little, once they breathe calmly and ammonia and nitrite read 0."),
        _("Fry: a pinch, and take out what is left."),
    ]


def _not_eating(help_: Help) -> list[str]:
    missing = [
        _(
            "Not eating goes with it: no food now, and take out what lies there. A grown fish fasts"
            " for days without harm."
        )
    ]
    if help_.missing:
        missing.append(_("Send what is not tested yet, and say if they gasp or lie down."))
    return missing


def _no_kit(help_: Help) -> list[str]:
    return [
        _("Without a kit take the water itself as the cause: {step}").format(step=change(help_)),
        _("Before it fill a clean bottle to the brim: let ammonia, nitrite, pH and KH be tested."),
        _("Many shops test, and so do other keepers; strips are better than nothing."),
        _("Until then no food, no salt, no buffer, no medicine."),
    ]


def _test_when(help_: Help) -> list[str]:
    told = {
        "heater_hot": _("The temperature every hour until it is back; ammonia tomorrow morning."),
        "heater_cold": _("The temperature every hour until it is back; ammonia tomorrow morning."),
        "heater": _("The temperature every hour until it is back; ammonia tomorrow morning."),
        "chlorine": _("Ammonia in an hour, tonight and tomorrow; chlorine until it reads 0 twice."),
        "co2_high": _("pH in an hour and tomorrow before the lights: it rises back by itself."),
        "overdose": _("In an hour, tonight and tomorrow morning: pH, KH, and what was put in."),
        "copper": _("Copper tonight and tomorrow, then every other day until it reads 0 twice."),
        "ph_crash": _("pH, KH and ammonia morning and evening, until pH holds for two days."),
        "overfed": _("Ammonia and nitrite each morning and evening for three days."),
    }.get(
        help_.danger,
        _("Ammonia and nitrite tonight and tomorrow, then daily until both read 0 for two days."),
    )
    return [told, _("An hour after each change of water once more. Send me what it shows.")]


def _co2_on(_help: Help) -> list[str]:
    return [
        _("Not today. Tomorrow with the lights on, if all breathe calmly, at half of what it was."),
        _("Watch them for an hour; then send pH and KH and ask: co2"),
        _("Over 30 mg/L, or somebody at the surface: off again."),
    ]


def _filter_on(help_: Help) -> list[str]:
    told = [
        _(
            "If it stood for less than two hours: yes, at once. Longer: empty it and rinse it in"
            " tank water first, then run it."
        ),
        _("It smells of rotten eggs: wash it out well, with windows open, before it runs."),
        _("Dry hands and a drip loop. Ammonia and nitrite each day for a week."),
    ]
    return told if help_.danger != "leak" else [_("Only once the water stays."), *told]


def _power_back(_help: Help) -> list[str]:
    return [
        _("A filter that stood for over two hours: empty and rinse it in tank water, then run it."),
        _("Heater on only under water: back by 1 °C an hour, not faster."),
        _("Measure temperature and ammonia now, and send them; ammonia tomorrow again."),
        _("No food today. Dry hands and a drip loop at the plugs."),
    ]


def _air_on(help_: Help) -> list[str]:
    told = [_("Good. Leave it on through the night; they should breathe calmer in half an hour.")]
    if help_.total_n and help_.no_air:
        told = [
            _(
                "Only while they gasp: ammonia {total} mg/L as N is there, and air lifts pH and"
                " turns it to poison."
            ).format(total=small(help_.total_n))
        ]
    asked = measure(help_)
    return [*told, _("If not: {step}").format(step=change(help_)), *([asked] if asked else [])]


def _scooped(help_: Help) -> list[str]:
    told = [
        _("Good. Siphon what lies between the stones, rinse the sponge in tank water."),
        _("No food for two days. If they gasp, give air at once."),
        change(help_),
        _("Ammonia and nitrite each morning and evening for three days: rot comes late."),
    ]
    return told if help_.danger == "overfed" else [told[0], *told[2:]]


def _cold_new(help_: Help) -> list[str]:
    told = [
        _("Cold water shocks: bring it back by 1 °C an hour, lid on; no hot water poured in."),
        _("Send the temperature now and every hour."),
        _("If they gasp, give air; lights off, no food today."),
    ]
    asked = measure(help_)
    return [*told, *([asked] if asked else [])]


def _cool_rate(_help: Help) -> list[str]:
    return [
        _("1 °C an hour, not faster: lid off, a fan over the water; no ice, no cold water."),
        _("Strong air meanwhile: warm water holds little oxygen. Send the temperature every hour."),
    ]


def _warm_rate(_help: Help) -> list[str]:
    return [
        _("1 °C an hour, not faster: closed bottles of warm water in it, lid on, a blanket."),
        _("No hot water poured in. Send the temperature every hour."),
    ]


def _survive(help_: Help) -> list[str]:
    told = [
        _("Nobody can tell the hour: many fish in warm water have the least time."),
        _("Oxygen goes first: pour water from a jug back in every few minutes, all night too."),
    ]
    if help_.danger not in {"power", "filter"}:
        told[1] = _("What counts is that the steps are done now, in their order.")
    return [*told, _("Gasping at the surface is the sign that it is urgent.")]


LINES: Final[Mapping[str, Callable[[Help], list[str]]]] = {
    "feed": _feed,
    "no_kit": _no_kit,
    "test_when": _test_when,
    "co2_on": _co2_on,
    "filter_on": _filter_on,
    "power_back": _power_back,
    "air_on": _air_on,
    "scooped": _scooped,
    "cold_new": _cold_new,
    "cool_rate": _cool_rate,
    "warm_rate": _warm_rate,
    "survive": _survive,
    "not_eating": _not_eating,
}
"""The lines of each meaning, of what is known of the tank."""


def conditioned() -> list[str]:
    """After a dechlorinator went in."""
    return [
        _("Good. Up to twice the label harms no fish here; no more of it. Aerate strongly."),
        _("Measure ammonia in an hour and tomorrow: chloramine frees some."),
        _("Free chlorine or total chlorine, if you can test it, should read 0."),
    ]


def co2_back_off(tank: str, finding: str) -> list[str]:
    """CO2 was turned on while there is too much of it."""
    return [
        _("{tank}: CO2 off again, until pH has risen and you have tested it. {finding}").format(
            tank=tank, finding=finding
        ),
        _("If they gasp: air at once. Later begin with less, and test pH after some hours."),
    ]


def on_when_tested(tank: str) -> list[str]:
    """CO2 stays off until pH and KH were read after it was shut off."""
    told = _("{tank}: leave CO2 off until pH and KH are tested anew. Send for example: ph 6.8 kh 4")
    return [told.format(tank=tank)]


def on_again(*, not_yet: bool) -> list[str]:
    """Whether CO2 may go on by what pH and KH show, and how."""
    if not_yet:
        return [_("Leave it off: test pH again in some hours, and go by that.")]
    return [
        _(
            "If all breathe calmly it may go on: less than before, by day only, pH again after an"
            " hour or two. Gasping: off and air."
        )
    ]


def no_co2() -> str:
    """More CO2 is asked for while animals suffer."""
    return _("No: CO2 stays off today, plants can wait.")


def co2_down(tank: str, finding: str) -> list[str]:
    """CO2 was turned down after too much of it."""
    return [
        _("{tank}: good. Test pH again in an hour and send it: it rises as CO2 leaves.").format(
            tank=tank
        ),
        _("One at the surface, or gasping: CO2 off, and air at once."),
        _("By the last test: {finding}").format(finding=finding),
    ]


def co2_off(help_: Help) -> list[str]:
    """After CO2 was shut off."""
    told = [
        _("Good. It stays off today; pH rises back by itself, no buffer."),
        _("They should breathe calmer within half an hour. If not: {step}").format(
            step=change(help_)
        ),
    ]
    if help_.total_n:
        told.insert(
            1,
            _(
                "Ammonia {total} mg/L as N is there: a higher pH makes poison of it, test again."
            ).format(total=small(help_.total_n)),
        )
    asked = measure(help_)
    return [*told, *([asked] if asked else [])]


def milky(tank: str, *, is_sea: bool) -> list[str]:
    """A white cloud after a dose."""
    if is_sea:
        told = [
            _("Stop dosing KH and calcium: that is most likely lime falling out of the water."),
            _("Pumps and surface keep running; it settles within hours. Nothing against it."),
            _("Test KH, calcium and pH when it is clear, and send them before any dose."),
            _("If they gasp or corals stay shut: change a tenth of the same salinity and warmth."),
        ]
    else:
        told = [
            _("Stop dosing: a white cloud after a dose is salt not yet dissolved, or lime."),
            _("It clears within hours, with the filter on. Put nothing in against it."),
            _("Test pH, KH and GH when it is clear; tell me what went in, and how many grams."),
            _("If they gasp, give air at once."),
        ]
    return of(tank, told)


def slowly_back(*, is_hot: bool) -> list[str]:
    """Beside the judgement of a warmth: how fast it goes back."""
    if is_hot:
        return [
            _("Do not leave it so: strong air all night, lid off, 1 °C an hour back, not faster."),
        ]
    return [_("Do not leave it so: lid on, a blanket, 1 °C an hour back, not faster.")]


def take_back() -> str:
    """How the last thing is taken back, where what was told was a slip."""
    return _("If it was only a slip in what you sent, take it back: undo")
