"""``make it an hour earlier``: by how much a reminder that stands is to be moved."""

from __future__ import annotations

from typing import Final, NamedTuple

from core.message.fold import fold
from core.message.reminder_said import LONGEST
from core.message.reminder_when import EDGES, has, pattern, without_verb
from core.schedule import tells_span

_VERBS: Final = ("put", "move", "change")
_FRONT: Final = ("light", "one", "noun", "by")
"""What may stand in front of the span."""


class Shift(NamedTuple):
    """How long, in words of time, and which way."""

    span: str
    earlier: bool


def shift(text: str) -> Shift | None:
    """How much earlier, or with a verb how much later, a reminder is to be; None where not told.

    A bare ``an hour later`` puts off what is due, and is none.

    Examples
    --------
    >>> shift("an hour earlier"), shift("make it 2 hours later"), shift("an hour later")
    (Shift(span='an hour', earlier=True), Shift(span='2 hours', earlier=False), None)
    >>> shift("eine stunde früher"), shift("earlier it was kh 4")
    (Shift(span='eine stunde', earlier=True), None)
    """
    plain = " ".join(fold(text).strip(EDGES).split())
    earlier = has("earlier", plain)
    if len(text) > LONGEST or "\n" in text.strip() or not (earlier or has("further", plain)):
        return None
    told = next((rest for verb in _VERBS if (rest := without_verb(verb, plain)) is not None), None)
    if told is None and not earlier:
        return None
    span = plain if told is None else told
    span = " ".join(pattern("earlier" if earlier else "further").sub(" ", span).split())
    while (ending := list(pattern("light").finditer(span))) and ending[-1].end() == len(span):
        span = span[: ending[-1].start()].strip(EDGES)
    while not tells_span(span):
        front = next((f for name in _FRONT if (f := pattern(name).match(span)) is not None), None)
        if front is None or front.end() == len(span):
            return None
        span = span[front.end() :].strip(EDGES)
    return Shift(span, earlier)
