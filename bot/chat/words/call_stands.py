"""Words for a call for help that nothing ended since, before any verdict on the water."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from typing import Final

from bot.chat.words.numbers import when
from bot.chat.words.text import N_, _
from core.advice.calls import Danger

_ENDS: Final[Mapping[Danger, str]] = {
    "power": N_("When the power is back, say: power is back"),
    "filter": N_("When it runs again, say: filter is back on"),
    "heater": N_("When that is mended, say: fixed"),
    "heater_hot": N_("When its plug is pulled, say: heater is off"),
    "heater_cold": N_("When that is mended, say: fixed"),
    "leak": N_("When that is mended, say: fixed"),
    "ammonia": N_("Test ammonia now and send it."),
    "nitrite": N_("Test nitrite now and send it."),
    "ph_crash": N_("Test pH and KH now and send them."),
    "ph_high": N_("Test pH now and send it."),
}
_BETTER: Final = N_("When all breathe calmly and move as ever, say: better")


def not_over(danger: Danger, said: str | None, at: datetime, now: datetime) -> str:
    """What was called out, that nothing says that it is over, and how it ends."""
    ends = _(_ENDS.get(danger, _BETTER))
    if said is None:
        return _("Not called well: what you told me {when} is not told to be over. {ends}").format(
            when=when(at, now), ends=ends
        )
    return _(
        "Not called well: “{said}” ({when}), and nothing since tells that it is over. {ends}"
    ).format(said=said, when=when(at, now), ends=ends)
