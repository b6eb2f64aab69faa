"""Words for what the sea's animals use up a day, and what holds it."""

from __future__ import annotations

from bot.chat.words.levels import unit
from bot.chat.words.names import analyte as name_of
from bot.chat.words.names import label
from bot.chat.words.numbers import plain
from bot.chat.words.text import _


def unknown(tank: str, analyte: str) -> list[str]:
    """No two readings tell it."""
    told = _(
        "{tank}: I cannot tell what it uses of {name}. I need two readings, some days apart, with"
        " no dose and no change between."
    )
    return [told.format(tank=tank, name=name_of(analyte))]


def as_told(tank: str, analyte: str, per_day: float) -> str:
    """What the keeper says that it uses a day."""
    told = _("{tank}: for {amount}{unit} {name} a day, as you say. Once a day, to hold it:")
    return told.format(
        tank=tank, amount=plain(per_day, 2), unit=unit(analyte), name=name_of(analyte)
    )


def to_hold(used: str) -> str:
    """The use by the readings, before what holds it."""
    return _("{used} Once a day, to hold it:").format(used=used)


def too_much(step: float, analyte: str) -> str:
    """More is used a day than may rise at once."""
    told = _("That is more than may rise in a day ({step}{unit}): no single dose holds it.")
    return told.format(step=plain(step, 1), unit=unit(analyte))


def first_down(analyte: str, now: float, wish: float) -> str:
    """The water stands over what is to be held."""
    told = _(
        "{name} is {now}: dose nothing until it has come down to {wish}{unit}, then ask again."
    )
    return told.format(
        name=label(analyte), now=plain(now, 1), wish=plain(wish, 1), unit=unit(analyte)
    )
