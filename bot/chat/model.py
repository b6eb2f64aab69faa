"""What goes in and out of the conversation, whichever messenger carries it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any, Literal

IncomingKind = Literal["message", "edit", "press", "other"]
Emphasis = Literal["plain", "strong", "quiet"]
ReplyKind = Literal["reply", "reminder"]


@dataclass(frozen=True, slots=True)
class Address:
    """Where a reply goes: messenger, its own id of the chat, and the topic within it if any."""

    messenger: str
    chat: str
    thread: str | None = None


@dataclass(frozen=True, slots=True)
class Incoming:
    """One thing a person did: sent or edited a message, or pressed a button.

    `update_id` is the messenger's identity of the delivery: the same one handled twice stores
    once. `message_ref` is the messenger's id of the message (of the pressed one for a press),
    `reply_to` the id of the message it answers. `action` is a pressed button's action.
    `attachment` names what came instead of text ("photo", "voice", ...), kind "other".
    `addressed` is True where the bot was spoken to (private chat, command, reply to the bot,
    mention); in a group an unaddressed line that is no reading is met with silence.
    """

    address: Address
    update_id: str
    kind: IncomingKind
    at: datetime
    text: str = ""
    author_id: str = ""
    author_name: str = ""
    message_ref: str | None = None
    reply_to: str | None = None
    action: str | None = None
    attachment: str | None = None
    group: bool = False
    addressed: bool = True
    language: str | None = None


@dataclass(frozen=True, slots=True)
class Button:
    """A labelled action. `action` is short (at most 64 bytes), versioned and safe to press twice.

    `meaning` is the word that does the same when typed: more, yes, no, done, ... or "".
    """

    label: str
    action: str
    meaning: str = ""


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a reply with its emphasis; adapters escape and style it."""

    text: str
    emphasis: Emphasis = "plain"


@dataclass(frozen=True, slots=True)
class Reply:
    """What the tool says: lines, buttons with actions, at most one picture, the facts behind.

    `edits` names the message (by its messenger's id) that this reply replaces in place, where
    the messenger can do that. `facts` holds every number that the text shows, in canonical
    units, under the names of DEVELOPERS.md. `at` is set on reminders: the moment of delivery in
    the chat's zone.
    """

    lines: tuple[Line, ...]
    buttons: tuple[Button, ...] = ()
    kind: ReplyKind = "reply"
    picture: str | None = None
    document: str | None = None
    facts: Mapping[str, Any] = field(default_factory=dict)
    edits: str | None = None
    token: int | None = None
    """Our handle on this reply; the adapter hands it back with the messenger's id once sent."""
    at: datetime | None = None

    @property
    def text(self) -> str:
        """The plain text of all lines."""
        return "\n".join(line.text for line in self.lines)
