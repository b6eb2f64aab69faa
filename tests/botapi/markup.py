"""Telegram's HTML, parsed as strictly as the Bot API's documentation words it.

The real server lets a bare ``&`` and an unknown entity through as text; its documentation asks
for them to be escaped, and this parser holds a bot to the documentation.
"""

from __future__ import annotations

import re
from typing import Any

STYLES = {
    "b": "bold",
    "strong": "bold",
    "i": "italic",
    "em": "italic",
    "u": "underline",
    "ins": "underline",
    "s": "strikethrough",
    "strike": "strikethrough",
    "del": "strikethrough",
    "code": "code",
    "pre": "pre",
    "tg-spoiler": "spoiler",
    "blockquote": "blockquote",
    "a": "text_link",
    "span": "spoiler",
    "tg-emoji": "custom_emoji",
}
ENTITIES = {"lt": "<", "gt": ">", "amp": "&", "quot": '"'}

_TAG = re.compile(r"<(/?)([a-zA-Z][a-zA-Z0-9-]*)((?:\s+[a-z-]+(?:=\"[^\"<]*\")?)*)\s*>")
_ATTRIBUTE = re.compile(r"([a-z-]+)(?:=\"([^\"]*)\")?")
_ENTITY = re.compile(r"&(?:#(\d{1,7})|#x([0-9a-fA-F]{1,6})|([a-z]+));")


class MarkupError(Exception):
    """The text is not the HTML that Telegram takes; the message is worded as the server's."""


def utf16_length(text: str) -> int:
    """Length in UTF-16 code units, the unit of Telegram's entity offsets."""
    return len(text) + sum(1 for char in text if ord(char) > 0xFFFF)


def parse_html(source: str) -> tuple[str, list[dict[str, Any]]]:
    """Split HTML into the plain text and its entities; raises MarkupError where it is bad."""
    plain: list[str] = []
    entities: list[dict[str, Any]] = []
    stack: list[tuple[str, dict[str, Any], int]] = []
    length = position = 0
    while position < len(source):
        char = source[position]
        if char == "<":
            position, length = _tag(source, position, stack, entities, length)
            continue
        if char == "&":
            char, position = _entity(source, position)
        else:
            position += 1
        plain.append(char)
        length += utf16_length(char)
    if stack:
        name, _, offset = stack[-1]
        raise MarkupError(
            f'Can\'t find end tag corresponding to start tag "{name}" at byte offset {offset}'
        )
    entities.sort(key=lambda entity: (entity["offset"], -entity["length"]))
    return "".join(plain), entities


def _bytes_before(source: str, position: int) -> int:
    return len(source[:position].encode())


def _tag(
    source: str,
    position: int,
    stack: list[tuple[str, dict[str, Any], int]],
    entities: list[dict[str, Any]],
    length: int,
) -> tuple[int, int]:
    offset = _bytes_before(source, position)
    match = _TAG.match(source, position)
    if match is None:
        raise MarkupError(f"Unsupported start tag or unescaped '<' at byte offset {offset}")
    closing, name, attributes = match[1], match[2].lower(), match[3]
    if closing:
        _close(name, offset, stack, entities, length)
    else:
        stack.append((name, _open(name, attributes, offset, length), offset))
    return match.end(), length


def _open(name: str, attributes: str, offset: int, length: int) -> dict[str, Any]:
    if name not in STYLES:
        raise MarkupError(f'Unsupported start tag "{name}" at byte offset {offset}')
    given = dict(_ATTRIBUTE.findall(attributes))
    entity: dict[str, Any] = {"type": STYLES[name], "offset": length}
    if name == "span" and given.get("class") != "tg-spoiler":
        raise MarkupError(f'Tag "span" must have class "tg-spoiler" at byte offset {offset}')
    if name == "a" and given.get("href"):
        entity["url"] = given["href"]
    if name == "tg-emoji":
        if "emoji-id" not in given:
            raise MarkupError(f'Attribute "emoji-id" must be specified at byte offset {offset}')
        entity["custom_emoji_id"] = given["emoji-id"]
    return entity


def _close(
    name: str,
    offset: int,
    stack: list[tuple[str, dict[str, Any], int]],
    entities: list[dict[str, Any]],
    length: int,
) -> None:
    if not stack:
        raise MarkupError(f"Unexpected end tag at byte offset {offset}")
    opened, entity, _ = stack.pop()
    if opened != name:
        raise MarkupError(
            f'Unmatched end tag at byte offset {offset}, expected "</{opened}>", found "</{name}>"'
        )
    entity["length"] = length - entity["offset"]
    if entity["length"]:
        entities.append(entity)


def _entity(source: str, position: int) -> tuple[str, int]:
    match = _ENTITY.match(source, position)
    offset = _bytes_before(source, position)
    if match is None:
        raise MarkupError(f"Unescaped '&' at byte offset {offset}")
    decimal, hexadecimal, name = match.groups()
    if name:
        if name not in ENTITIES:
            raise MarkupError(f'Unsupported entity "&{name};" at byte offset {offset}')
        return ENTITIES[name], match.end()
    number = int(decimal) if decimal else int(hexadecimal, 16)
    if not 0 < number < 0x110000 or 0xD800 <= number < 0xE000:
        raise MarkupError(f"Invalid character reference at byte offset {offset}")
    return chr(number), match.end()
