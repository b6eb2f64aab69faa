"""Replies as the inbox keeps them between being made and being sent.

Facts are left out: they are for those who ask the conversation itself, not for a messenger.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import asdict
from datetime import datetime
from typing import Any

from bot.chat.model import Button, Line, Reply
from bot.inbox.model import Unreadable

VERSION = 1
_PLAIN = ("kind", "picture", "document", "edits", "token")


def dump_replies(replies: Sequence[Reply]) -> str:
    """Replies as JSON text, ASCII only, so that any database takes any character."""
    return json.dumps({"version": VERSION, "replies": [_as_json(reply) for reply in replies]})


def load_replies(text: str) -> list[Reply]:
    """Replies from JSON text.

    Raises
    ------
    Unreadable
        Where another version of the program wrote what this one does not understand.
    """
    try:
        kept = json.loads(text)
        if kept["version"] != VERSION:
            raise Unreadable(f"replies of version {kept['version']}")
        return [_from_json(reply) for reply in kept["replies"]]
    except (ValueError, KeyError, TypeError, IndexError) as error:
        raise Unreadable("replies that are none of ours") from error


def _as_json(reply: Reply) -> dict[str, Any]:
    return {
        "lines": [[line.text, line.emphasis] for line in reply.lines],
        "buttons": [asdict(button) for button in reply.buttons],
        "at": None if reply.at is None else reply.at.isoformat(),
        **{name: getattr(reply, name) for name in _PLAIN},
    }


def _from_json(kept: dict[str, Any]) -> Reply:
    return Reply(
        lines=tuple(Line(text, emphasis) for text, emphasis in kept["lines"]),
        buttons=tuple(Button(**button) for button in kept["buttons"]),
        at=None if kept["at"] is None else datetime.fromisoformat(kept["at"]),
        **{name: kept[name] for name in _PLAIN},
    )
