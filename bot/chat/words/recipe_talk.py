"""Words for the salts that a keeper has, and for what a plan's salts bring."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from bot.chat.words import names
from bot.chat.words.numbers import litres
from bot.chat.words.sources import figure
from bot.chat.words.text import _


def none_serves(salts: Sequence[str], goals: Sequence[str]) -> list[str]:
    """None of the salts at home is for what is wished."""
    told = _("With {salts} alone {goals} cannot be raised safely.")
    return [
        told.format(
            salts=names.listed([names.said(each) for each in salts]),
            goals=names.listed([names.label(each) for each in goals]),
        ),
        _("Ask what is needed: what do i need"),
    ]


def brings(values: Mapping[str, float], volume: float) -> list[str]:
    """What the salts of a plan bring in all. [L]"""
    told = _("In all, in {volume}: {values} more.")
    listed = ", ".join(figure(name, value) for name, value in values.items())
    return [
        told.format(volume=litres(volume), values=listed),
        _("By weight and formula, as the plan has it; a test tells what came of it."),
    ]
