"""What is asked where another amount than the answered one was named of a water change."""

from __future__ import annotations

from bot.chat.words.numbers import plain
from bot.chat.words.text import _


def how_much() -> list[str]:
    """How much was, or shall be, changed; nothing is on record until it is said."""
    return [
        _("How much went in? Send for example: changed 20 % or: changed 15 l."),
        _("Nothing is on record for it yet. Still to do? Ask for example: what if i change 20 %"),
    ]


def changed_litres(litres: float) -> str:
    """A change by its litres on a button. [L]"""
    return _("changed {litres} L").format(litres=plain(litres, 1))
