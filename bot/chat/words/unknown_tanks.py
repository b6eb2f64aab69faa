"""What is said of readings of several tanks that are not on record."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.text import _


def tell_them_first(names: Sequence[str]) -> list[str]:
    """Nothing is stored before each tank is told of."""
    told = _("Nothing is stored: I do not know these tanks yet: {names}.")
    first = _("Tell me each first, for example: /tank new {name} 90 l fresh. Then send it again.")
    name = names[0].replace(" ", "").capitalize()
    return [told.format(names=", ".join(names)), first.format(name=name)]
