"""`meniscus parse`: messages in, one JSON object a line out."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterable, Iterator
from datetime import datetime, tzinfo
from typing import BinaryIO

from bot.clock import Clock
from core.message import parse
from core.message.model import Context
from core.message.wire import to_text


def parse_lines(
    source: Iterable[bytes],
    sink: BinaryIO,
    *,
    context: Callable[[], Context],
    json_input: bool = False,
) -> int:
    """Read every message of a source and write what each one means, flushed one by one.

    Parameters
    ----------
    source : iterable of bytes
        Lines; undecodable bytes become U+FFFD.
    sink : binary file
        Where the objects go.
    context : callable
        Gives what the words of the next message depend on.
    json_input : bool
        Whether each line is an object ``{"text": …}``, so that a message may hold line breaks.

    Returns
    -------
    int
        The exit status: 1 if a line was no such object; the others are answered all the same.
    """
    messages = _objects(source) if json_input else map(_text, source)
    failed = False
    for message in messages:
        if message is None:
            failed = True
            continue
        sink.write(_encoded(to_text(parse(message, context()))))
        sink.flush()
    return int(failed)


def contexts(
    clock: Clock, *, now: datetime | None, zone: tzinfo, tanks: tuple[str, ...]
) -> Callable[[], Context]:
    """Give the context of each message in turn: at a fixed moment, or at the clock's.

    Parameters
    ----------
    clock : Clock
        Read for every message where `now` is None.
    now : datetime or None
        The fixed moment; aware.
    zone : tzinfo
        Where the words of the message are said.
    tanks : tuple of str
        The names of the chat's tanks.
    """
    if now is not None:
        fixed = Context(now=now, zone=zone, tanks=tanks)
        return lambda: fixed
    return lambda: Context(now=clock.now(), zone=zone, tanks=tanks)


def _encoded(line: str) -> bytes:
    """One line in UTF-8; a lone half of a surrogate pair, which it cannot carry, is escaped."""
    return line.encode(errors="backslashreplace") + b"\n"


def _text(line: bytes) -> str:
    return line.rstrip(b"\r\n").decode("utf-8", errors="replace")


def _objects(source: Iterable[bytes]) -> Iterator[str | None]:
    """Give the text of each object; None, with a word on standard error, where there is none."""
    for number, line in enumerate(source, start=1):
        if not line.strip():
            continue
        try:
            given = json.loads(_text(line))
        except (ValueError, RecursionError) as error:
            _complain(number, f"this is no JSON: {error}")
            yield None
            continue
        text = given.get("text") if isinstance(given, dict) else None
        if not isinstance(text, str):
            _complain(number, 'an object {"text": "the message"} is wanted')
            text = None
        yield text


def _complain(number: int, problem: str) -> None:
    sys.stderr.write(f"meniscus parse: line {number}: {problem}\n")
