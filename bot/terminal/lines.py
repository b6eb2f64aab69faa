"""What one line at the terminal asks for: words, a press, or a move of the simulated clock.

=====================  ==================================================
empty, or ``;`` first  ignored
``#2``                 press the second button of the latest reply
``+90m`` (m, h, d, w)  move the clock by elapsed time
``>anna: kh 4``        in a group: the rest is said, or pressed, by Anna
anything else          said by the owner
=====================  ==================================================
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import timedelta

_PRESS = re.compile(r"#([0-9]{1,3})")
_MOVE = re.compile(r"\+([0-9]{1,7})([mhdw])")
_UNIT = {
    "m": timedelta(minutes=1),
    "h": timedelta(hours=1),
    "d": timedelta(days=1),
    "w": timedelta(weeks=1),
}


class LineError(ValueError):
    """A line that the terminal cannot act on: wrong usage, said to whoever wrote it."""


@dataclass(frozen=True, slots=True)
class Say:
    """Words, and who says them: a name in a group, None for the owner."""

    text: str
    author: str | None = None


@dataclass(frozen=True, slots=True)
class Press:
    """A press of a button, counted from 1, and whose."""

    number: int
    author: str | None = None


@dataclass(frozen=True, slots=True)
class Move:
    """A move of the simulated clock by elapsed time: a day is 24 h."""

    span: timedelta


def read_line(line: str, *, group: bool) -> Say | Press | Move | None:
    """Read one line; None where it is to be ignored.

    Raises
    ------
    LineError
        If it speaks for another person outside a group, or names none.
    """
    if not line.strip() or line.startswith(";"):
        return None
    if not line.startswith(">"):
        move = _MOVE.fullmatch(line.rstrip())
        return Move(int(move[1]) * _UNIT[move[2]]) if move else _said(line, None)
    if not group:
        raise LineError("a line that starts with > speaks for another person: start with --group")
    name, colon, text = line[1:].partition(":")
    if not colon or not name.strip():
        raise LineError("a line that starts with > names who speaks: >anna: kh 4")
    return _said(text.strip(), _capital(name.strip())) if text.strip() else None


def _said(text: str, author: str | None) -> Say | Press:
    press = _PRESS.fullmatch(text.rstrip())
    return Press(int(press[1]), author) if press else Say(text, author)


def _capital(name: str) -> str:
    return name[:1].upper() + name[1:]
