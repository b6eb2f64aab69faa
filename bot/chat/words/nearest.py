"""What can be asked of a thing that a message named, as it is typed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from bot.chat.words.text import N_, _
from core.message.themes import About, Theme

_ASKED: Final[Mapping[Theme, tuple[str, ...]]] = {
    "substance": (N_("what does {thing} do"),),
    "animal": (N_("can i keep {thing}"), N_("is my water ok for {thing}")),
    "filter": (N_("when did i last clean the filter"),),
    "change": (N_("should i change water"), N_("when did i last change water")),
    "stock": (N_("is my tank overstocked"), N_("can i add fish")),
    "algae": (N_("why is there algae"),),
    "due": (N_("what is due"),),
    "test": (N_("how often should i test"),),
}


def asked(about: About) -> list[str]:
    """The questions that can be answered of a thing, in words that are understood when typed."""
    return [_(each).format(thing=about.thing) for each in _ASKED[about.theme]]


def how_it_is() -> str:
    """The question that any tank can be asked about."""
    return _("how is my water")


def hint() -> list[str]:
    """For a message of which no more was understood than what it names."""
    return [
        _("I did not find a reading or a question in that. Is it one of these? Tap it."),
        _("Else send it in other words, for example: kh 4 ph 7.2. /help shows more."),
    ]


def restated(meant: Sequence[str]) -> list[str]:
    """Ask whether a message means one of some plain sentences."""
    if len(meant) == 1:
        lines = [_("Do you mean: {text}?").format(text=meant[0])]
    else:
        lines = [_("Which do you mean? Tap it.")]
    return [*lines, _("Nothing is stored yet. Else send it in other words.")]
