"""What would be of a value that nobody measured: `would ph 9 be ok`, `kann ph 9 gehen`.

asked = open [ close ] value { value } [ close ] ["?"] | alone value ["?"]
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message.model import Parsed, Question
from core.message.waters import one_of
from core.message.wordfile import spelt

LONGEST: Final = 70
"""A longer text asks for more. [characters]"""


@cache
def _asked() -> re.Pattern[str]:
    told: dict[str, list[str]] = {"open": [], "alone": [], "close": []}
    for section, _language, ways in spelt("would_be.txt", told):
        told[section] += ways
    opened, alone, close = (one_of(told[section]) for section in ("open", "alone", "close"))
    value = r"[^?!\n]*?\d[^?!\n]*?"
    return re.compile(
        rf"[\s¿]*(?:(?:{alone}) (?P<alone>{value})"
        rf"|(?:{opened}) (?:{close}) (?P<behind>{value})"
        rf"|(?:{opened}) (?P<between>{value}) (?:{close}))[\s?.!]*"
    )


def value_in(plain: str) -> tuple[int, int] | None:
    """Where the value stands that such a question is about; None for any other text.

    Examples
    --------
    >>> value_in("would ph 9 be ok"), value_in("would it be ok if ph was 9")
    ((6, 10), (18, 26))
    >>> value_in("ph 9 ok") is None, value_in("can i put in 9 neons") is None
    (True, True)
    """
    found = _asked().fullmatch(plain) if len(plain) <= LONGEST else None
    if found is None:
        return None
    return found.span(next(name for name, said in found.groupdict().items() if said is not None))


def question(text: str, told: Parsed) -> Parsed | None:
    """The question that a text asks of what stands in it as `told`; None where that is no value."""
    apart = told.events or told.doubts or told.question is not None or told.command is not None
    premises = {
        each.analyte: float(each.canonical)
        for each in told.values
        if isinstance(each.canonical, float | int)
    }
    if not premises or apart or len(premises) != len(told.values) or told.at is not None:
        return None
    asked = Question("safe", tank=told.tank, premises=premises, text=text)
    return Parsed("question", told.tank, question=asked)
