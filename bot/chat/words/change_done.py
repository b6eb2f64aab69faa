"""A change that was made and was too much, in words: why, what to watch and what to do."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words.changes import percent
from bot.chat.words.numbers import plain
from bot.chat.words.text import N_, _
from core.advice import limits
from core.advice.change_done import Overdone

REASONS: Final[Mapping[str, str]] = {
    "copper": N_("the new water holds copper, which kills shrimps, snails and the like"),
    "nitrite": N_("the new water brings nitrite, which harms fish"),
    "ammonia": N_("it may have set poisonous ammonia free"),
    "kh_floor": N_("KH may be under 1 °dH now, too little to hold pH"),
    "salinity": N_("salinity moved more than in a day"),
    "ph": N_("pH moved too far at once"),
    "kh": N_("KH moved too far in a day (1 °dH, and never more than doubled)"),
    "gh_floor": N_("GH may be under 1 °dH now, too few minerals for any animal"),
    "gh": N_("GH moved more than 2 °dH in a day"),
    "temperature": N_("the water moved by more than 2 °C"),
    "share": N_("even in an emergency not more than half at a time"),
}
"""Why a change was too much, by the limit that it went past, the worst first."""


def overdone(tank: str, over: Overdone) -> list[str]:
    """Say what the change may have done, what to watch, what to test, and what not to do."""
    reason = _(next(words for name, words in REASONS.items() if name in over.broken))
    jumped = "ph" in over.broken and over.ph_jump > limits.PH_DANGER
    told = (
        _("{share} was too much for {tank}: {reason}; pH may have jumped by {jump}: it can kill.")
        if jumped
        else _("{share} was too much at once for {tank}: {reason}.")
    )
    lines = [
        told.format(
            share=percent(over.share), tank=tank, reason=reason, jump=plain(over.ph_jump, 1)
        )
    ]
    if over.danger:
        lines.append(_("Watch them for some hours. If they gasp: air. Stop feeding today."))
    lines.append(_tests(over))
    return lines


def may_free(tank: str, ammonia: float) -> list[str]:
    """Ammonia was in the tank before a large change with water whose pH nobody told."""
    return [
        _(
            "{tank}: ammonia {ammonia} mg/L was in it: new water of a higher pH turns it to poison."
            " Test pH and ammonia now. They gasp or dash about: air, and tell me."
        ).format(tank=tank, ammonia=plain(ammonia, 2))
    ]


def _tests(over: Overdone) -> str:
    if over.broken == {"temperature"}:
        return _("Measure the temperature now. No more new water today, and no way back in haste.")
    return _(
        "Test pH, KH and ammonia now and send them. No other change, no dose and no way back in"
        " haste until then."
    )
