"""What is said of a dose that went into another tank."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.text import _


def not_counted(tank: str, *, planned: bool) -> list[str]:
    """It was meant for one tank, perhaps by a plan, and went into another."""
    if not planned:
        return [_("Nothing of it is counted for {tank}.").format(tank=tank)]
    return [_("Nothing of it is counted for {tank}: its plan stands as it was.").format(tank=tank)]


def how_much(tank: str) -> list[str]:
    """A dose that nobody planned or told went into a tank."""
    return [
        _("How much of what went into {tank}? Send for example: {tank}: 5 g baking soda").format(
            tank=tank
        ),
        _("If animals gasp or dash about: help. Nothing is stored yet."),
    ]


def which_got(told: str, tanks: Sequence[str]) -> list[str]:
    """Ask which of the tanks got what was put in."""
    shown = _("Which tank got it: {tanks}? On record there it will be: {told}.")
    return [shown.format(tanks=", ".join(tanks), told=told)]


def which(tanks: Sequence[str]) -> list[str]:
    """Ask which of the tanks got what is on record for another."""
    shown = _("Which tank got it: {tanks}? Send for example: that was {tank}")
    return [shown.format(tanks=", ".join(tanks), tank=tanks[0])]
