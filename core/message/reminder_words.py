"""The words of ``reminder_said.txt``, as patterns of plain texts."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.waters import one_of
from core.message.wordfile import spelt

FILE: Final = "reminder_said.txt"


def has(section: str, meaning: str, text: str) -> bool:
    """Whether a text has a word of a meaning."""
    return patterns()[section, meaning].search(fold(text)) is not None


@cache
def ways() -> dict[tuple[str, str], set[str]]:
    """The words of each meaning of each section."""
    found: dict[tuple[str, str], set[str]] = {}
    for section, meaning, said in spelt(FILE):
        found.setdefault((section, meaning), set()).update(said)
    return found


@cache
def patterns() -> dict[tuple[str, str], re.Pattern[str]]:
    """Any of the words of a meaning, as whole words of a plain text."""
    found = {
        key: re.compile(rf"(?<![\w'])(?:{one_of(said)})(?![\w'])") for key, said in ways().items()
    }
    joint = ("ask", "and")
    found[joint] = re.compile(rf"(?<![\w'])(?:{one_of(ways()[joint])})$", re.IGNORECASE)
    return found


@cache
def frames() -> tuple[re.Pattern[str], re.Pattern[str]]:
    """What may stand in front of a request, and behind it."""
    front, tail = one_of(ways()["ask", "frame"]), one_of(ways()["ask", "tail"])
    return (
        re.compile(rf"\s*(?:(?:{front})(?![\w'])[\s,:.!]*)?"),
        re.compile(rf"(?:[\s,:]+(?:{tail}))?$"),
    )
