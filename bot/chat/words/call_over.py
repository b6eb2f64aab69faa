"""Words for what ends a call for help, and for people who go before every answer on water.

Common practice, no source; what people are told is in `bot.chat.words.aid_people`.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from typing import Final

from bot.chat.words.numbers import when
from bot.chat.words.text import N_, _
from core.advice.calls import Danger

_HEATER: Final = (
    N_("Good. It stays out of the socket: throw it away, or have it checked."),
    N_("Air, lid off: the water goes back by 1 °C an hour, not faster; no ice, no cold water."),
    N_("Send the temperature now and every hour."),
)
_DONE: Final[Mapping[tuple[str, Danger], tuple[str, ...]]] = {
    ("off", "electric"): (
        N_(
            "Good. It stays off until heater, pump and lamp are out of the sockets; use none of"
            " them again before a check, and no hand into the water before that."
        ),
        N_(
            "Anybody who got a shock sees a doctor today, even if well: the heart can follow later."
        ),
        N_("Then for the fish: air from a battery pump, or water from a jug back in; no food."),
    ),
    ("off", "heater"): _HEATER,
    ("off", "heater_hot"): _HEATER,
    ("mended", "heater"): (
        N_("Good. The water goes back by 1 °C an hour, not faster. Send the temperature now."),
    ),
    ("mended", "heater_hot"): (
        N_("Good. The water goes back by 1 °C an hour, not faster. Send the temperature now."),
    ),
    ("mended", "heater_cold"): (
        N_("Good. The water goes back by 1 °C an hour, not faster. Send the temperature now."),
    ),
    ("mended", "leak"): (
        N_("Good. Dry paper under it for a day; a seal inside cures for days without animals."),
        N_("Fill up with dechlorinated water as warm as the tank, and of its pH and KH."),
        N_("Heater on only under water. Measure temperature and ammonia, and send them."),
    ),
    ("mended", "filter"): (
        N_("Good. Had it stood for over two hours, it was to be emptied and rinsed first."),
        N_("Ammonia and nitrite each day until it has run for a week; feed little."),
    ),
    ("mended", "frozen"): (N_("Good. Keep a hole open for the air; no food in the cold."),),
    ("mended", "jumped"): (
        N_("Good. Lights off, lid on, no food today; look in an hour how it breathes."),
        N_("Fish jump from bad water too: test ammonia, nitrite, pH and temperature."),
    ),
    ("better", "splashed"): (
        N_("Good. An eye is seen by a doctor today, even if it feels better."),
        N_("Skin that stays red or blisters: a doctor as well. Keep the bottle or bag at hand."),
        N_("Go on only with gloves and glasses on, and with the windows open."),
    ),
    ("better", "sting"): (
        N_("Good. Do not stay alone for some hours: a swelling face or short breath comes late."),
        N_("Then it is the emergency number, at once."),
    ),
}
_HELPED: Final = (
    N_("Good. Do as they tell you: that goes before all that I say. Keep bottle or bag at hand."),
    N_("The tank can wait. Ask me again when you are back at it."),
)
_OUTSIDE: Final = (
    N_("Good. Stay out, all of you, until somebody with a gas meter says that the room is clear."),
    N_("Anyone unwell, even a little: your emergency number now. When help is called, say: called"),
)


def done(how: str, danger: Danger) -> list[str]:
    """What comes after what ended a call."""
    told = _HELPED if how == "helped" else _DONE[how, danger]
    return [_(line) for line in told]


def is_worded(how: str, danger: Danger) -> bool:
    """Whether there is something to say after it."""
    return how == "helped" or (how, danger) in _DONE


def outside() -> list[str]:
    """All are out of the room, and who is called now."""
    return [_(line) for line in _OUTSIDE]


def not_yet() -> str:
    """Somebody looks well after a danger of which that tells nothing."""
    return _(
        "To look well does not count yet: these steps first. When help was called, say: called"
    )


_ENDS: Final[Mapping[Danger, str]] = {
    "electric": N_("When the power is off, say: power is off now"),
    "splashed": N_("When it is rinsed and well, say: eyes ok now"),
    "sting": N_("When you are well, say: i am fine"),
}
_HELP_CALLED: Final = N_("When help was called, say: called")


def tell_them(said: str, *, rinsed: bool = True) -> str:
    """What it was or how somebody feels, which whoever helps must know."""
    if not rinsed:
        return _("Tell them: “{said}”. Any worse, or hard to wake: the emergency number.").format(
            said=said
        )
    return _("Tell them: “{said}”. Rinse the mouth and wash the hands now, if not done.").format(
        said=said
    )


def people_first(danger: Danger, said: str | None, at: datetime, now: datetime) -> str:
    """Why nothing is said of the water: somebody is in danger, by the keeper's own words."""
    ends = _(_ENDS.get(danger, _HELP_CALLED))
    if said is None:
        return _(
            "First the danger to people that you told me {when}, then the water. {ends}"
        ).format(when=when(at, now), ends=ends)
    return _("First this: “{said}” ({when}); the water after it. {ends}").format(
        said=said, when=when(at, now), ends=ends
    )


def nothing_against() -> str:
    """No remedy at home, before what must be done."""
    return _(
        "No: nothing against it, to drink or on the skin, that the poison line did not tell you."
    )


def then_the_animals() -> str:
    """What is done for animals once the current is off."""
    return _(
        "With the power off: air from a battery pump, out with the heater, and only then the fish"
        " and their water. Say: power is off now"
    )
