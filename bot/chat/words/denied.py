"""What was told as done, or dead, and was not."""

from __future__ import annotations

from bot.chat.words.text import _


def nothing_stored() -> list[str]:
    """It was not done, and nothing tells that it was."""
    return [_("All right: nothing is stored of it.")]


def none_on_record(thing: str, days: int) -> list[str]:
    """A substance that was not dosed, as far as anybody said."""
    told = _("All right: nothing is stored, and no {thing} is on record in the last {days} days.")
    return [told.format(thing=thing, days=days)]


def no_loss() -> list[str]:
    """No animal died."""
    return [_("Good: no loss is stored.")]


def take_back(told: str) -> list[str]:
    """Something of the kind is on record, though it was not told last."""
    return [_("On record is {told}. If that was not done, press undo.").format(told=told)]


def still_lives(told: str) -> list[str]:
    """They may live who were told as dead, or the others are meant."""
    only = _("On record is {told}. If none of them died, press undo; it stays if others are meant.")
    return [only.format(told=told)]


def put_back() -> str:
    """A button: they did die."""
    return _("no, it did die")


def put_in() -> str:
    """A button: it was put in."""
    return _("no, it did go in")
