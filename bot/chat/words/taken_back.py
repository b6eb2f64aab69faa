"""Words for a call for help that is taken back."""

from __future__ import annotations

from bot.chat.words.text import _


def whether_none(tank: str | None) -> list[str]:
    """Ask whether a call was none before it is off."""
    if tank is None:
        return [_("Did nothing of it get into the water at all? Then the call is off.")]
    return [_("Did nothing of it get into {tank} at all? Then the call is off.").format(tank=tank)]


def was_none() -> str:
    """The button that takes the call back."""
    return _("nothing got in")


def it_stands() -> str:
    """The button that leaves it."""
    return _("it did")


def off() -> list[str]:
    """The call is none any more."""
    return [
        _("Good: the call is off. What you measured and logged stays."),
        _("If animals gasp or dash about after all: help."),
    ]


def stands() -> list[str]:
    """The call is left as it was."""
    return [_("Then it stands. Its steps again: what now")]
