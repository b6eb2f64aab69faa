"""Words for a dose that is refused while a poison stands in the tank, or its animals suffer."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words.numbers import plain
from bot.chat.words.refusal_parts import Facts
from bot.chat.words.text import N_, _
from core.advice.call_over import SUFFERING

_FIRST: Final[Mapping[str, str]] = {
    "bleach": N_(
        "No dose while bleach may be in it: dechlorinator first, until a test reads chlorine 0."
    ),
    "chlorine": N_(
        "No dose while chlorine may be in it: dechlorinator first, then chlorine must read 0."
    ),
    "copper": N_(
        "No dose while copper may be in it: small changes and fresh carbon first, until a test"
        " reads copper 0."
    ),
    "copper_metal": N_(
        "No dose while copper may be in it: the metal out first, then a test must read copper 0."
    ),
    "contaminated": N_(
        "No dose after what got in: small changes of water and fresh carbon in the filter first."
    ),
    "overdose": N_(
        "No dose after what went in: first a small change of water and a test of pH, KH and GH."
    ),
    "gasping": N_(
        "No dose while they gasp, as you told me: air first, then test ammonia, nitrite and pH."
    ),
    "ammonia": N_(
        "No dose after what you told me of ammonia: a higher pH makes poison of it. Test it first."
    ),
    "lost": N_(
        "No dose after a death of unknown cause: test ammonia, nitrite, pH and temperature first."
    ),
    "general": N_(
        "No dose while animals are as you told me: test ammonia, nitrite, pH and temperature first."
    ),
}
_HOW_IT_ENDS: Final = N_(
    "No kit shows it: tell me the changes and the carbon (half of the water in all), or in three"
    " days how the animals are."
)
_READ: Final[Mapping[str, str]] = {
    "chlorine": N_("No dose at chlorine {value} mg/L: dechlorinator first, until a test reads 0."),
    "copper": N_(
        "No dose at copper {value} mg/L: find where it comes from first, change small parts, until"
        " a test reads 0."
    ),
}


def no_dose(facts: Facts) -> list[str]:
    """That no salt goes in before the poison is gone, and what is done first. Copper [mg/L]."""
    danger = str(facts["danger"])
    if danger in _READ and danger in facts:
        first = _(_READ[danger]).format(value=plain(float(facts[danger]), 2))
    else:
        first = _(_FIRST[danger])
    if danger == "contaminated":
        return [first, _(_HOW_IT_ENDS)]
    if danger in {"ammonia", "lost"}:
        return [first, _("Send what it shows, for example: ammonia 0.5")]
    if danger in SUFFERING:
        return [first, _("They breathe calmly and move as ever again? Say: better")]
    return [first, _("Nothing else goes in before that: a salt moves the water once more.")]


def nothing_more() -> str:
    """More is asked for or planned while something is wrong in the tank."""
    return _("No: put in nothing more now.")
