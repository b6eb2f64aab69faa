"""Source waters in words."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.text import _


def none_yet() -> list[str]:
    """No source is on record."""
    return [
        _("No source water yet. Send for example: /source tap ph 7.6 kh 8 gh 12 no3 10 temp 12")
    ]


def how() -> list[str]:
    """The line was not understood."""
    return [_("Send for example: /source tap ph 7.6 kh 8 gh 12, or: /source tap for fern")]


def unknown(name: str, known: Sequence[str]) -> list[str]:
    """No source of that name."""
    lines = [_("There is no source called {name}.").format(name=name[:60])]
    if known:
        lines.append(_("You have {known}.").format(known=", ".join(known)))
    return [" ".join(lines), *how()]


def no_such_tank(name: str) -> list[str]:
    """No tank of that name."""
    return [_("There is no tank called {name}.").format(name=name[:60])]


def chosen(source: str, tank: str) -> list[str]:
    """A tank is filled from a source."""
    return [_("{tank} is filled from {source} from now on.").format(tank=tank, source=source)]


def empty(source: str) -> list[str]:
    """A source without readings."""
    return [_("{source}: nothing measured yet.").format(source=source)]
