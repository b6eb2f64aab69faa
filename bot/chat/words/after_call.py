"""Words for what is asked after a call for help."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from bot.chat.words import names
from bot.chat.words.numbers import grams as weight
from bot.chat.words.text import N_, _, ngettext

GONE: Final[Mapping[str, tuple[str, ...]]] = {
    "chlorine": (
        N_("By a test of total chlorine: 0, twice, an hour apart. Free chlorine is no proof."),
        N_("Without one: dechlorinator for all the water, strong air, a day. Smell tells nothing."),
        N_("Test ammonia today and tomorrow: chloramine leaves some."),
    ),
    "bleach": (
        N_("By a test of total chlorine: 0, twice, an hour apart."),
        N_("Until then it is not gone, whatever the smell: it takes far more dechlorinator."),
    ),
    "ammonia": (
        N_("By your kit: 0 on two days running. Less after a change alone is no proof."),
        N_("Feed little until then, and test nitrite too."),
    ),
    "nitrite": (
        N_("By your kit: 0 on two days running. Less after a change alone is no proof."),
        N_("Feed little until then, and test ammonia too."),
    ),
    "copper": (
        N_("By a copper kit: 0 twice, some days apart."),
        N_("Shrimps, snails and corals die of less than most kits show: let none in before weeks."),
    ),
    "copper_metal": (
        N_("By a copper kit, once the metal is out: 0 twice, some days apart."),
        N_("Shrimps, snails and corals die of less than most kits show: watch them first."),
    ),
    "overdose": (
        N_("By the readings: test pH, KH and what was put in, twice, some hours apart."),
        N_("What no kit shows goes by water changes only; carbon takes out some of it."),
    ),
    "ph_crash": (
        N_("By pH and KH: steady over two days, KH where it was before."),
        N_("Test ammonia too, and raise nothing fast."),
    ),
}
_ANY: Final = (
    N_("No kit shows all of it: measure what you can, twice, some hours apart."),
    N_("Breathing calm and eating for two days is the best sign; no new animals before that."),
)


def gone(danger: str) -> list[str]:
    """How it shows that a poison is gone."""
    return [_(line) for line in GONE.get(danger, _ANY)]


_NOT_GONE: Final[Mapping[str, str]] = {
    "bleach": N_("No test since says that the bleach is gone: chlorine must read 0."),
    "chlorine": N_("No test since says that the chlorine is gone: chlorine must read 0."),
    "copper": N_("No test since says that the copper is gone: copper must read 0."),
    "copper_metal": N_("No test since says that no copper came of it: copper must read 0."),
    "contaminated": N_("What was read since does not show that poison, so it may still be there."),
    "overdose": N_("What was read since does not show whether that is gone: test pH, KH and GH."),
}


def not_gone(danger: str) -> list[str]:
    """What was read after poison was called out tells nothing of it."""
    return [_(_NOT_GONE[danger])] if danger in _NOT_GONE else []


def too_late() -> list[str]:
    """Whether help comes too late."""
    return [
        _("Not while they breathe: do the steps now, in their order."),
        _("Then air, dim light, no food for a day. Some die days later: look twice a day."),
    ]


def form(substance: str, grams: float, parts: Sequence[float]) -> list[str]:
    """The mass of the form that the keeper has. [g]"""
    told = ngettext(
        "Then {grams} of {salt} in all, in {count} part, weighed, not by spoon.",
        "Then {grams} of {salt} in all, in {count} parts, weighed, not by spoon.",
        len(parts),
    )
    return [
        told.format(grams=weight(grams), salt=names.substance(substance), count=len(parts)),
        _("Look on the label that it is this form. Dissolve it first; all else stays as I said."),
    ]


def table_salt(*, is_salty: bool) -> list[str]:
    """Iodised salt: 20 to 40 mg of iodine a kg; the sea has 0.06 mg/L (both from memory)."""
    if is_salty:
        return [
            _("For brackish and sea water take sea salt: table salt lacks all else of the sea."),
            _("Did some go in? Test salinity, KH and calcium, and send how much it was."),
        ]
    return [
        _("Its iodine is no danger at what goes in against nitrite: less than the sea holds."),
        _("The salt counts: loaches, catfish, snails, shrimps and many plants bear little."),
        _("Pure salt only: no herbs, no sugar. Did it go in? Send for example: dosed 5 g salt"),
    ]


def of_theirs() -> str:
    """Before the steps for somebody else's tank."""
    return _("For their tank, as you tell it; nothing of it is kept for yours:")
