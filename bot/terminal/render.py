"""A reply as the terminal shows it: one JSON object, or text with or without emphasis."""

from __future__ import annotations

import json
from datetime import date, datetime, tzinfo
from typing import Any

from bot.chat.model import Line, Reply

_BOLD, _DIM, _OFF = "\x1b[1m", "\x1b[2m", "\x1b[0m"
_CONTROLS = {code: 0x2400 + code for code in range(0x20) if code not in (0x09, 0x0A)}
_CONTROLS |= {0x7F: 0x2421} | dict.fromkeys(range(0x80, 0xA0), 0xFFFD)


def as_object(reply: Reply, *, line: int, now: datetime, zone: tzinfo) -> dict[str, Any]:
    """Give a reply as the object that ``--json`` prints.

    Parameters
    ----------
    reply : Reply
        What is said.
    line : int
        The input line that caused it, from 1; 0 for what comes at the start.
    now : datetime
        The moment, used where the reply carries none; aware.
    zone : tzinfo
        The zone in which `now` is written.
    """
    at = reply.at or now.astimezone(zone)
    return {
        "line": line,
        "kind": reply.kind,
        "at": at.isoformat(timespec="seconds"),
        "text": reply.text,
        "buttons": [button.label for button in reply.buttons],
        "picture": reply.picture,
        "document": reply.document,
        "facts": dict(reply.facts),
    }


def encode(value: dict[str, Any]) -> bytes:
    """Write an object as one line of JSON in UTF-8.

    A lone half of a surrogate pair, which JSON can carry and UTF-8 cannot, is escaped.

    Raises
    ------
    ValueError
        If a number in it is not finite: a fact that is not known is left out, never NaN.
    """
    try:
        return _ENCODE(value).encode() + b"\n"
    except UnicodeEncodeError:
        return _ENCODE_ASCII(value).encode() + b"\n"


def as_text(reply: Reply, *, ansi: bool) -> str:
    """Give a reply as text that ends in an empty line.

    Control characters that came in with a message are shown, never sent to the terminal, where
    they could move its cursor or change its title.
    """
    lines = [_styled(line, ansi=ansi) for line in reply.lines]
    if reply.buttons:
        lines.append(_quiet(_button_row(reply), ansi=ansi))
    lines += [f"Picture: {reply.picture}"] if reply.picture else []
    lines += [f"File: {reply.document}"] if reply.document else []
    return "\n".join(lines) + "\n\n"


def visible(text: str) -> str:
    """Give a text with its control characters replaced by pictures of them."""
    return text.translate(_CONTROLS)


def _button_row(reply: Reply) -> str:
    numbered = enumerate(reply.buttons, start=1)
    return "  ".join(f"[{number}] {visible(button.label)}" for number, button in numbered)


def _styled(line: Line, *, ansi: bool) -> str:
    text = visible(line.text)
    if line.emphasis == "strong" and ansi:
        return f"{_BOLD}{text}{_OFF}"
    return _quiet(text, ansi=ansi) if line.emphasis == "quiet" else text


def _quiet(text: str, *, ansi: bool) -> str:
    return f"{_DIM}{text}{_OFF}" if ansi else text


def _plain(value: object) -> str:
    if isinstance(value, date):  # a datetime is one, too
        return value.isoformat()
    raise TypeError(f"a fact of type {type(value).__name__} has no form in JSON")


_ENCODE = json.JSONEncoder(ensure_ascii=False, allow_nan=False, default=_plain).encode
_ENCODE_ASCII = json.JSONEncoder(allow_nan=False, default=_plain).encode
