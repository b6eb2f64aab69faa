"""Who eats algae, in words."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.keeping import THAT_TANK
from bot.chat.words.text import _


def eaters(names: Sequence[str], tank: str | None) -> list[str]:
    """Kinds that graze on algae, and what does more against them."""
    if not names:
        where = tank or _(THAT_TANK)
        told = _("Of those that I know to eat algae, none suits {tank}.").format(tank=where)
    elif tank is None:
        told = _("These eat algae: {kinds}.").format(kinds=", ".join(names))
    else:
        told = _("These eat algae, and nothing that I know of {tank} rules them out: {kinds}.")
        told = told.format(tank=tank, kinds=", ".join(names))
    lines = [told, _("None keeps a tank clear alone: less light and less food do more.")]
    if names:
        asked = _("They need food when the algae are gone. Ask first: can i keep {kind}")
        lines.append(asked.format(kind=names[0]))
    return lines
