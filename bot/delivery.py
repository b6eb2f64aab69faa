"""Handing a reply to a messenger, and the ways in which that fails.

The classes say what a caller may do next, whatever the messenger: try again, try again and say
that it may be a repeat, or never try again.
"""

from __future__ import annotations


class DeliveryError(Exception):
    """A reply was not delivered, or nobody knows whether it was."""


class ChatGone(DeliveryError):
    """Nothing can be sent to this chat: blocked, kicked, deactivated, deleted, not found.

    Permanent until the chat speaks again. `moved_to` is the messenger's new id of a chat that
    lives on under another one, else None.
    """

    def __init__(self, reason: str, moved_to: str | None = None) -> None:
        super().__init__(reason)
        self.moved_to = moved_to


class Throttled(DeliveryError):
    """Not sent: too many messages. `retry_after` is how long to wait. [s]"""

    def __init__(self, retry_after: float) -> None:
        super().__init__(f"too many messages, again in {retry_after:g} s")
        self.retry_after = retry_after


class Unreachable(DeliveryError):
    """Certainly not sent: no connection, or the messenger says that it is unwell."""


class MaybeSent(DeliveryError):
    """The request went out and no answer came: it may have arrived, so a repeat must say so."""


class Refused(DeliveryError):
    """The messenger will never take this message: our own mistake, permanent for it."""
