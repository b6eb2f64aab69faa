"""What is asked of new water and of a bag, beside what is asked of a plan.

It is read only where such an answer was just given; alone none of it says what is meant.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final, Literal

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.message.waters import one_of
from core.message.wordfile import spelt

LONGEST: Final = 70
"""A longer text says more than one question. [characters]"""

Beside = Literal["store", "tip"]
"""Whether new water may be kept; whether a bag may be tipped in, or its water."""


@cache
def _pattern(meaning: Beside) -> re.Pattern[str]:
    told = [ways for _section, name, ways in spelt("answer_talk.txt", {"word"}) if name == meaning]
    return re.compile(rf"(?<!\w)(?:{one_of(way for ways in told for way in ways)})(?!\w)")


def beside(text: str) -> Beside | None:
    """What a question asks of such an answer; None where it is told, or about something else.

    Examples
    --------
    >>> beside("can i store it a week"), beside("just dump them in?"), beside("i poured it in")
    ('store', 'tip', None)
    """
    plain = fold(text)
    found: Beside | None = next(
        (name for name in ("store", "tip") if _pattern(name).search(plain)), None
    )
    if found is None or len(text) > LONGEST:
        return None
    tokens = cut(plain, lexicon(), text)
    asks = "?" in text or any(token.value == "may" or token.kind == "ask" for token in tokens)
    return found if asks else None
