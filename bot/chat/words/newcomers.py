"""What is said where animals were put into water of another kind."""

from __future__ import annotations

from bot.chat.words.text import _


def out_again(name: str, tank: str) -> str:
    """Newcomers go out again; the water stays as those need it who live in it."""
    return _(
        "Take {name} out again, into water that suits them; do not change {tank} for them."
    ).format(name=name, tank=tank)
