"""What is known to be wrong with the water, in a short line; what to do stands beside it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words import finding_nitrite
from bot.chat.words.findings import line
from bot.chat.words.numbers import small
from bot.chat.words.text import N_, _
from core.advice.findings import Finding

MEASURED: Final[Mapping[str, tuple[str, str]]] = {
    "ammonia": (N_("Measured: ammonia {amount} mg/L as N, dangerous at this pH."), "total_n"),
    "chlorine": (N_("Measured: chlorine {amount} mg/L, it burns gills."), "chlorine"),
    "low_oxygen": (N_("Measured: oxygen {amount} mg/L, too little to breathe."), "oxygen"),
    "copper": (N_("Measured: copper {amount} mg/L, poison for shrimps and snails."), "copper"),
}
"""Template and fact by the finding's id."""


def cause(finding: Finding) -> str:
    """A finding as the cause of trouble."""
    if finding.id == "nitrite":
        return _("Measured: nitrite {nitrite}, it harms fish.").format(
            nitrite=finding_nitrite.told(finding.facts)
        )
    if finding.id not in MEASURED:
        return line(finding)
    template, fact = MEASURED[finding.id]
    return _(template).format(amount=small(float(finding.facts[fact])))
