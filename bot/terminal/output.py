"""Where replies go: JSON or text, flushed one by one."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, tzinfo
from typing import Protocol

from bot.chat.model import Reply
from bot.terminal.render import as_object, as_text, encode


class Output(Protocol):
    """Something that shows replies."""

    def show(self, reply: Reply, *, line: int, now: datetime) -> None:
        """Show one reply, caused by an input line at a moment."""
        ...

    def done(self, *, line: int) -> None:
        """Say to a waiting program that all that was due has been delivered."""
        ...


class JsonOutput:
    """One object a reply, one line an object.

    Parameters
    ----------
    write : callable
        Takes bytes and sends them on their way at once.
    zone : tzinfo
        The zone in which moments are written that a reply does not carry itself.
    """

    def __init__(self, write: Callable[[bytes], None], zone: tzinfo) -> None:
        self._write = write
        self._zone = zone

    def show(self, reply: Reply, *, line: int, now: datetime) -> None:
        """Write one reply as an object."""
        self._write(encode(as_object(reply, line=line, now=now, zone=self._zone)))

    def done(self, *, line: int) -> None:
        """Write the object that a driver waits for."""
        self._write(encode({"line": line, "kind": "done"}))


class TextOutput:
    """Text for people, with emphasis where the terminal shows it.

    Parameters
    ----------
    write : callable
        Takes a text and sends it on its way at once.
    ansi : bool
        Whether emphasis is shown.
    """

    def __init__(self, write: Callable[[str], None], *, ansi: bool = False) -> None:
        self._write = write
        self._ansi = ansi

    def show(self, reply: Reply, *, line: int, now: datetime) -> None:  # noqa: ARG002
        """Write one reply as text."""
        self._write(as_text(reply, ansi=self._ansi))

    def done(self, *, line: int) -> None:
        """Write nothing: a person sees what there was."""
