"""Words that ask which tank was told without its name."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.text import _


def which(said: str, tanks: Sequence[str]) -> list[str]:
    """Ask which tank it is, and how one that is not on record is added."""
    if not tanks:
        return [
            _("“{said}” is none of your tanks that I know. Nothing is stored or reckoned.").format(
                said=said
            ),
            _("To keep it here add it first: /tank new name 200 l fresh. Then send it again."),
        ]
    return [
        _("Which tank is “{said}”? I know {tanks}. Nothing is stored or reckoned.").format(
            said=said, tanks=", ".join(tanks)
        ),
        _("If it is another one, add it first: /tank new name 200 l fresh. Then send it again."),
    ]


def another() -> str:
    """The button for a tank that is not on record."""
    return _("another tank")


def name_it(volume_l: float) -> list[str]:
    """That a volume is of a tank which is not on record yet."""
    return [
        _("No tank was changed. To add that one: /tank new name {litres:g} l fresh").format(
            litres=volume_l
        )
    ]
