"""What is said of readings of several tanks that are not on record."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.text import _


def tell_them_first(names: Sequence[str]) -> list[str]:
    """Nothing is stored before the tanks are on record."""
    told = _("Nothing is stored yet: I do not know these tanks: {names}. Shall I add them?")
    return [
        told.format(names=", ".join(names)),
        _("With the litres of each I can tell doses: send them behind its name."),
    ]
