"""Words for how it stands after a call for help: eased, or settled by a test."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from typing import Final

from bot.chat.words import after_call
from bot.chat.words.emergency_steps import measure
from bot.chat.words.standing import as_measured
from bot.chat.words.text import N_, _
from core.advice.calls import Danger
from core.advice.emergencies import Help
from core.advice.state import Measured


def eased(tank: str, help_: Help, *, better: bool) -> list[str]:
    """Air is on, or they look better; what is still to be tested before it is called well."""
    first = (
        _("{tank}: better, as you told; what it was is not known yet.")
        if better
        else _("{tank}: air is on, as you told; they should breathe calmer in half an hour.")
    )
    asked = measure(help_)
    return [
        first.format(tank=tank),
        asked or _("Test ammonia, nitrite and pH again tonight and tomorrow morning."),
        _("Until then leave the air on, no food, nothing in. Worse again? Say: worse"),
    ]


def settled(tank: str, danger: Danger, read: Measured, now: datetime, help_: Help) -> list[str]:
    """A test since shows none of what was called out: how that is made sure, and what to watch."""
    told = _("{tank}: {reading} was read since, so the first steps are over. To be sure of it:")
    asked = measure(help_)
    return [
        told.format(tank=tank, reading=as_measured(read, now)),
        *after_call.gone(danger)[:2],
        _(_WATCH.get(danger, _WATCH["chlorine"])),
        *([asked] if asked else []),
        _("Gasping, red gills, or one lies down: tell me at once."),
    ]


_WATCH: Final[Mapping[str, str]] = {
    "bleach": N_(
        "Bleach kills the filter too: ammonia and nitrite daily for two weeks, feed little."
    ),
    "chlorine": N_(
        "Chlorine harms the filter too: ammonia and nitrite daily for a week, feed little."
    ),
    "copper_metal": N_("Look for more of it: fittings, weights, ornaments, the pump's screws."),
    "copper": N_("Find where it came from; test copper again after each change of water."),
}
"""What is watched once a poison is gone."""
