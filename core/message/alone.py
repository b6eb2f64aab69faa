"""``peat?``, ``what about oak leaves``: a substance that is asked about without a verb."""

from __future__ import annotations

from typing import Final

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.plan_said import LONGEST_TEXT
from core.message.tokens import cut
from core.message.word_classes import said

FILE: Final = "alone.txt"


def substance_asked(text: str) -> str | None:
    """The one substance that is all a question is about; None where it says more, or asks nothing.

    Examples
    --------
    >>> substance_asked("peat?"), substance_asked("what about oak leaves")
    ('peat', 'leaves')
    >>> substance_asked("peat"), substance_asked("i put peat in?")
    (None, None)
    """
    if len(text) > LONGEST_TEXT:
        return None
    plain = " ".join(fold(text).split())
    named = [token for token in cut(plain, lexicon(), plain) if token.kind == "substance"]
    if len({str(token.value) for token in named}) != 1:
        return None
    rest = plain
    for token in reversed(named):
        rest = f"{rest[: token.start]} it {rest[token.end :]}"
    told = said(FILE, rest)
    if told is None or told.numbers or not ("?" in text or told.has("asks")):
        return None
    return str(named[0].value)
