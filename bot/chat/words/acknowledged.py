"""Words for what acknowledges the last answer. Common practice, no source."""

from __future__ import annotations

from bot.chat.words.emergency_steps import measure
from bot.chat.words.emergency_talk import LINES
from bot.chat.words.text import _
from core.advice.emergencies import Help
from core.message.acknowledged import Told


def in_danger(said: Told, help_: Help) -> list[str]:
    """What comes next of an emergency, whose last steps are told done, or cannot be done."""
    asked = measure(help_)
    if said == "untested":
        first = asked or _("Test again now, and send it.")
        return [first, _("Ammonia first, then nitrite and pH.")]
    if said == "lacks":
        return lacking()
    return [
        _("Good. Go on with the steps that are left; worse again? Say: worse"),
        *([asked] if asked else []),
        *LINES["test_when"](help_)[:1],
    ]


def lacking() -> list[str]:
    """What the steps ask for is not at hand, whatever it is."""
    return [
        _("Then do the other steps. No dechlorinator: no tap water goes in, strong air."),
        _("No air pump: pour water from a jug back in, every few minutes. No kit: a shop tests."),
        _("Say what is missing, for example: no dechlorinator, or: no test kit"),
    ]


def in_calm(said: Told) -> list[str]:
    """What is to be told where nothing is badly wrong."""
    if said == "untested":
        return [
            _("Test ammonia and nitrite first, they harm soonest; then pH, KH and temperature."),
            _("Send them for example as: ammonia 0 nitrite 0 ph 7.2 kh 4 temp 24"),
        ]
    if said == "lacks":
        return [
            _("Then say what you have, and I go by that. For example: only epsom salt"),
            _("Nothing is stored."),
        ]
    return [
        _("Good. I cannot tell from that what was done, so nothing is stored of it."),
        _("Send it with its amount, for example: changed 30%, or: dosed 5 g baking soda"),
    ]


def no_kit() -> list[str]:
    """No test kit, where nothing is known to be wrong."""
    return [
        _("Without a kit fill a clean bottle to the brim and let it be tested: many shops do."),
        _("First a kit for ammonia and nitrite; then pH and KH. Strips are better than nothing."),
        _("Until then feed little, and change a tenth to a quarter of the water a week."),
    ]


def better() -> list[str]:
    """They look better, of whom nothing was told to be wrong."""
    return [
        _("Good. Whether the water is well shows only a test: ammonia, nitrite, pH."),
        _("Gasping, or one lies down: tell me at once."),
    ]
