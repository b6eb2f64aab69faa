"""Words of what was measured of water made by a recipe."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from bot.chat.words import names
from bot.chat.words.numbers import plain
from bot.chat.words.text import _


class Compared(NamedTuple):
    """What was wished of an analyte, and what was measured. [canonical unit]"""

    analyte: str
    wished: float
    told: float


def of_mix(tank: str | None, compared: Sequence[Compared], *, alike: bool) -> list[str]:
    """Whether a mix came out as its recipe says; it is no reading of the tank."""
    told = ", ".join(
        _("{analyte} {told} of {wished}").format(
            analyte=names.analyte(each.analyte),
            told=plain(each.told, 2),
            wished=plain(each.wished, 2),
        )
        for each in compared
    )
    lead = (
        _("The mix has {told}: as wished.").format(told=told)
        if alike
        else _(
            "The mix has {told}: not as wished. Stir, wait an hour, test again; add nothing before."
        ).format(told=told)
    )
    kept = (
        _("Not stored, since it is not {tank}'s water.").format(tank=tank)
        if tank is not None
        else _("Not stored, since it is not the tank's water.")
    )
    return [lead, kept] if compared else [kept]
