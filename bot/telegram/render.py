"""Replies as Telegram shows them: HTML, escaped here and nowhere else, and inline keyboards."""

from __future__ import annotations

import html
import json
import re
from collections.abc import Iterable, Sequence
from dataclasses import replace

from bot.chat.model import Button, Line, Reply

LONGEST_TEXT = 4096
LONGEST_CAPTION = 1024
"""Characters after entities are parsed; we count UTF-16 units, of which there are never fewer."""

ROW_WIDTH = 34
ROW_BUTTONS = 3
_TAGS = {"strong": "b", "quiet": "i"}
_UNSHOWABLE = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\ud800-\udfff]")


def to_html(lines: Iterable[Line]) -> str:
    """Lines with their emphasis as Telegram's HTML."""
    return "\n".join(_line(line) for line in lines)


def to_plain(lines: Iterable[Line]) -> str:
    """Lines without emphasis, for a message sent without markup."""
    return "\n".join(_showable(line.text) for line in lines)


def keyboard(buttons: Sequence[Button]) -> str | None:
    """Buttons as an inline keyboard in JSON, short labels side by side; None without buttons."""
    if not buttons:
        return None
    rows: list[list[dict[str, str]]] = []
    width = ROW_WIDTH
    for button in buttons:
        if width + len(button.label) > ROW_WIDTH or len(rows[-1]) == ROW_BUTTONS:
            rows.append([])
            width = 0
        rows[-1].append({"text": button.label, "callback_data": button.action})
        width += len(button.label)
    return json.dumps({"inline_keyboard": rows})


def pages(reply: Reply) -> list[Reply]:
    """Split a reply into replies of one message each.

    Lines stay whole where they fit; the first page keeps the picture and the place of the
    message that is replaced, the last one the buttons and all that hangs on them.
    """
    limit = LONGEST_TEXT
    with_file = reply.picture or reply.document
    if with_file and units(reply.text) > LONGEST_CAPTION:
        bare = replace(reply, lines=(), buttons=(), document=None, token=None)
        text = replace(reply, picture=None, document=reply.document if reply.picture else None)
        return [bare if reply.picture else replace(bare, document=reply.document), *pages(text)]
    if reply.picture and reply.document:
        picture = replace(reply, document=None, buttons=(), token=None)
        return [picture, replace(reply, picture=None, lines=(), edits=None)]
    chunks = _chunks(reply.lines, limit)
    if len(chunks) < 2:
        return [reply]
    last = len(chunks) - 1
    return [
        replace(
            reply,
            lines=chunk,
            buttons=reply.buttons if number == last else (),
            token=reply.token if number == last else None,
            edits=reply.edits if number == 0 else None,
        )
        for number, chunk in enumerate(chunks)
    ]


def units(text: str) -> int:
    """Length of a text in UTF-16 units."""
    return len(text) + sum(1 for char in text if ord(char) > 0xFFFF)


def _chunks(lines: Sequence[Line], limit: int) -> list[tuple[Line, ...]]:
    """Gather lines into pages of at most `limit` units; no page is blank."""
    chunks: list[tuple[Line, ...]] = []
    page: list[Line] = []
    used = 0
    for line in (piece for whole in lines for piece in _pieces(whole, limit)):
        size = units(line.text) + (1 if page else 0)
        if page and used + size > limit:
            chunks.append(tuple(page))
            page, used, size = [], 0, units(line.text)
        page.append(line)
        used += size
    chunks.append(tuple(page))
    return [chunk for chunk in chunks if any(line.text.strip() for line in chunk)]


def _pieces(line: Line, limit: int) -> list[Line]:
    """Cut a line that fits no message: at its own line breaks, at blanks, else anywhere."""
    rest, pieces = line.text, []
    while units(rest) > limit:
        head = rest[:limit]
        while units(head) > limit:
            head = head[: len(head) - max(1, (units(head) - limit) // 2)]
        cut = max(head.rfind("\n"), 0) or max(head.rfind(" "), 0) or len(head)
        pieces.append(replace(line, text=rest[:cut]))
        rest = rest[cut:].lstrip(" \n")
    return [*pieces, replace(line, text=rest)]


def _line(line: Line) -> str:
    text = html.escape(_showable(line.text), quote=False)
    tag = _TAGS.get(line.emphasis)
    return f"<{tag}>{text}</{tag}>" if tag and text.strip() else text


def _showable(text: str) -> str:
    return _UNSHOWABLE.sub("\N{REPLACEMENT CHARACTER}", text)
