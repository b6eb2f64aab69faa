"""What the local server knows: people, chats, calls made to it, faults to play, refusals."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any, Literal

Standing = Literal["ok", "blocked", "kicked", "deactivated", "deleted", "not_found", "no_rights"]
Drop = Literal["before", "after"]

REFUSALS: dict[str, tuple[int, str]] = {
    "blocked": (403, "Forbidden: bot was blocked by the user"),
    "deactivated": (403, "Forbidden: user is deactivated"),
    "deleted": (403, "Forbidden: the group chat was deleted"),
    "not_found": (400, "Bad Request: chat not found"),
    "no_rights": (400, "Bad Request: not enough rights to send text messages to the chat"),
}


class Refusal(Exception):
    """The server says no: what it puts on the wire instead of a result."""

    def __init__(
        self, code: int, description: str, parameters: dict[str, Any] | None = None
    ) -> None:
        super().__init__(description)
        self.code = code
        self.description = description
        self.parameters = parameters

    def as_json(self) -> dict[str, Any]:
        answer = {"ok": False, "error_code": self.code, "description": self.description}
        if self.parameters:
            answer["parameters"] = self.parameters
        return answer


@dataclass(slots=True)
class Person:
    """Somebody with an account."""

    id: int
    first_name: str
    username: str | None = None
    language_code: str | None = "en"
    is_bot: bool = False

    def as_json(self) -> dict[str, Any]:
        fields = {
            "id": self.id,
            "is_bot": self.is_bot,
            "first_name": self.first_name,
            "username": self.username,
            "language_code": self.language_code,
        }
        return {key: value for key, value in fields.items() if value is not None}


@dataclass(slots=True)
class Chat:
    """A conversation and how the bot stands in it."""

    id: int
    type: Literal["private", "group", "supergroup", "channel"]
    title: str | None = None
    first_name: str | None = None
    is_forum: bool = False
    standing: Standing = "ok"
    moved_to: int | None = None
    topics: set[int] = field(default_factory=set)
    last_message_id: int = 0

    @property
    def is_group(self) -> bool:
        return self.type in ("group", "supergroup")

    def as_json(self) -> dict[str, Any]:
        fields: dict[str, Any] = {"id": self.id, "type": self.type}
        for key in ("title", "first_name"):
            if getattr(self, key) is not None:
                fields[key] = getattr(self, key)
        if self.is_forum:
            fields["is_forum"] = True
        return fields

    def check_reachable(self) -> None:
        """Raise the Refusal that the real server answers where the bot cannot write here."""
        if self.moved_to is not None:
            raise Refusal(
                400,
                "Bad Request: group chat was upgraded to a supergroup chat",
                {"migrate_to_chat_id": self.moved_to},
            )
        if self.standing == "kicked":
            raise Refusal(403, f"Forbidden: bot was kicked from the {self.type} chat")
        if self.standing != "ok":
            raise Refusal(*REFUSALS[self.standing])


@dataclass(slots=True)
class Call:
    """One request that reached the server, in order; `accepted` once it had its effect."""

    number: int
    method: str
    params: dict[str, Any]
    at: float
    accepted: bool = False
    code: int | None = None
    description: str | None = None
    result: Any = None

    def as_json(self) -> dict[str, Any]:
        return {name: getattr(self, name) for name in self.__slots__}


@dataclass(slots=True)
class Fault:
    """Something that goes wrong with the next `times` calls of `method` (all of them if None).

    `code` answers with that status; `drop` closes the connection before or after the call has
    had its effect; `stall` holds the answer back that many seconds after the effect; `body` is
    sent raw instead of JSON. `chat` narrows it to one chat.
    """

    method: str = "*"
    times: int | None = 1
    chat: int | None = None
    code: int | None = None
    description: str = ""
    retry_after: int | None = None
    drop: Drop | None = None
    stall: float = 0.0
    body: str | None = None

    def meets(self, method: str, params: dict[str, Any]) -> bool:
        if self.times == 0 or self.method not in ("*", method):
            return False
        return self.chat is None or str(params.get("chat_id")) == str(self.chat)

    def refusal(self) -> Refusal | None:
        if self.code is None:
            return None
        if self.code == 429:
            wait = 1 if self.retry_after is None else self.retry_after
            return Refusal(429, f"Too Many Requests: retry after {wait}", {"retry_after": wait})
        names = {
            401: "Unauthorized",
            403: "Forbidden: bot was blocked by the user",
            409: "Conflict: terminated by other getUpdates request; make sure that only one bot "
            "instance is running",
            500: "Internal Server Error",
            502: "Bad Gateway",
        }
        return Refusal(self.code, self.description or names.get(self.code, "Bad Request"))
