"""Whether a tank holds too many fish."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.numbers import litres
from bot.chat.words.text import _


def untold(tank: str, volume_l: float | None) -> list[str]:
    """The tank's volume or its animals are not on record."""
    if volume_l is None:
        return [_("Tell me the litres of {tank} first, for example: 90 l").format(tank=tank)]
    return [_("Tell me who lives in {tank} first, for example: added 6 guppies").format(tank=tank)]


def room(tank: str, volume_l: float, least_l: float, unknown: Sequence[str]) -> list[str]:
    """What the fish need once grown, by a rule of thumb, and what the tank holds."""
    facts = {"tank": tank, "volume": litres(volume_l), "least": litres(round(least_l))}
    if least_l > volume_l:
        first = _(
            "Yes, by a lenient rule of thumb: the fish of {tank}, once grown, need {least} at the"
            " least, and it holds {volume}."
        )
    else:
        first = _(
            "Not by a lenient rule of thumb: the fish of {tank}, once grown, need {least}, and it"
            " holds {volume}."
        )
    lines = [
        first.format(**facts),
        _("The water tells more: fast climbing nitrate, any ammonia or nitrite is too many fish."),
    ]
    if unknown:
        lines.append(_("Not counted: {names}.").format(names=", ".join(unknown[:3])))
    return lines
