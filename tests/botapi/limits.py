"""Telegram's sending limits, enforced when a test asks for them."""

from __future__ import annotations

import math
from collections import deque
from dataclasses import dataclass, field

from tests.botapi.model import Chat, Refusal


@dataclass(slots=True)
class Limits:
    """How much may be sent before 429: per chat, per group and minute, in all per second.

    None leaves a limit off. The numbers of Telegram's "Bots FAQ" are 1, 20 and 30.
    """

    chat_per_second: int | None = None
    group_per_minute: int | None = None
    overall_per_second: int | None = None
    refused: int = 0
    _sent: dict[str, deque[float]] = field(default_factory=dict)

    def check(self, chat: Chat, now: float) -> None:
        """Count one message; raises the 429 where it is one too many."""
        windows = [
            (f"chat {chat.id}", self.chat_per_second, 1.0),
            ("all", self.overall_per_second, 1.0),
        ]
        if chat.is_group:
            windows.append((f"group {chat.id}", self.group_per_minute, 60.0))
        for name, most, span in windows:
            self._check_one(name, most, span, now)
        for name, most, _ in windows:
            if most is not None:
                self._sent[name].append(now)

    def _check_one(self, name: str, most: int | None, span: float, now: float) -> None:
        if most is None:
            return
        times = self._sent.setdefault(name, deque())
        while times and times[0] <= now - span:
            times.popleft()
        if len(times) >= most:
            self.refused += 1
            wait = max(1, math.ceil(times[0] + span - now))
            raise Refusal(429, f"Too Many Requests: retry after {wait}", {"retry_after": wait})
