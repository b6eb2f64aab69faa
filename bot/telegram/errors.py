"""What python-telegram-bot raises, told apart by what may be done about it.

`BadRequest` and `TimedOut` are both `NetworkError` there, so the base class decides nothing:
bad requests come first, time-outs and broken connections are told apart by what httpx saw.
"""

from __future__ import annotations

from datetime import timedelta

import httpx
from telegram.error import (
    BadRequest,
    ChatMigrated,
    Conflict,
    EndPointNotFound,
    Forbidden,
    InvalidToken,
    NetworkError,
    RetryAfter,
    TelegramError,
    TimedOut,
)

from bot.delivery import ChatGone, DeliveryError, MaybeSent, Refused, Throttled, Unreachable

GONE = (
    "chat not found",
    "user not found",
    "peer_id_invalid",
    "chat_write_forbidden",
    "chat_restricted",
    "user_is_blocked",
    "input_user_deactivated",
    "group chat was deleted",
    "group chat was deactivated",
    "not enough rights to send",
    "have no rights to send",
    "need administrator rights",
)
"""Bad requests that mean the chat is closed to us, in the server's words (Bot API source)."""

NOT_SENT = (
    httpx.ConnectError,
    httpx.ConnectTimeout,
    httpx.PoolTimeout,
    httpx.UnsupportedProtocol,
    httpx.ProxyError,
)
"""What httpx raises before a request has left us."""


def is_token_refused(error: TelegramError) -> bool:
    """Tell whether the server refuses our token: no use in trying again."""
    return isinstance(error, InvalidToken | EndPointNotFound)


def is_conflict(error: TelegramError) -> bool:
    """Tell whether somebody else polls with our token, or a webhook is set."""
    return isinstance(error, Conflict)


def wait_asked(error: TelegramError) -> float | None:
    """How long the server asks us to wait, None where it does not. [s]"""
    if not isinstance(error, RetryAfter):
        return None
    wait = error.retry_after
    return wait.total_seconds() if isinstance(wait, timedelta) else float(wait)


def says(error: TelegramError, *words: str) -> bool:
    """Tell whether it is a bad request with any of these words in its description."""
    return isinstance(error, BadRequest) and any(w in error.message.lower() for w in words)


def delivery_error(error: TelegramError) -> DeliveryError:
    """Translate what went wrong with a message into what its sender may do next."""
    wait = wait_asked(error)
    if wait is not None:
        return Throttled(wait)
    if isinstance(error, ChatMigrated):
        return ChatGone("moved to a supergroup", str(error.new_chat_id))
    if isinstance(error, Forbidden) or says(error, *GONE):
        return ChatGone(error.message)
    if isinstance(error, BadRequest):
        return Refused(error.message)
    if is_token_refused(error) or is_conflict(error):
        return Unreachable(type(error).__name__)  # the text of it may hold the token
    if isinstance(error, NetworkError):
        return _broken(error)
    return MaybeSent(type(error).__name__)  # an answer came, and nobody can read it


def _broken(error: NetworkError) -> DeliveryError:
    cause = error.__cause__
    if isinstance(cause, NOT_SENT):
        return Unreachable(type(cause).__name__)
    if isinstance(error, TimedOut) or isinstance(cause, httpx.HTTPError):
        return MaybeSent(type(cause).__name__)
    if "too large" in error.message.lower():
        return Refused(error.message)
    return Unreachable(error.message)  # the server answered, with a status of its own trouble
