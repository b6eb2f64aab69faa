"""``make it an hour earlier``: by how much a reminder that stands is to be moved."""

from __future__ import annotations

import re
from typing import Final, NamedTuple

from core.message.fold import fold
from core.message.reminder_said import LONGEST
from core.message.reminder_when import EDGES, has, pattern, ways, without_verb
from core.schedule import tells_span

_VERBS: Final = ("put", "move", "change")
_FRONT: Final = ("light", "one", "noun", "by")
"""What may stand in front of the span."""


class Shift(NamedTuple):
    """How long, in words of time, which way, and the words that name of what, if any."""

    span: str
    earlier: bool
    target: tuple[str, ...] = ()


def shift(text: str) -> Shift | None:
    """How much earlier, or with a verb how much later, a reminder is to be; None where not told.

    A bare ``an hour later`` puts off what is due, and is none.

    Examples
    --------
    >>> shift("an hour earlier"), shift("an hour later"), shift("earlier it was kh 4")
    (Shift(span='an hour', earlier=True, target=()), None, None)
    >>> shift("make it 2 hours later"), shift("eine stunde früher").span
    (Shift(span='2 hours', earlier=False, target=()), 'eine stunde')
    >>> shift("make the ammonia one half an hour later")
    Shift(span='half an hour', earlier=False, target=('ammonia',))
    >>> shift("move that to a week later").span, shift("push the kh one an hour back").target
    ('a week', ('kh',))
    """
    plain = " ".join(fold(text).strip(EDGES).split())
    earlier = has("earlier", plain)
    if has("push", plain) and (back := list(pattern("back").finditer(plain))):
        plain = f"{plain[: back[-1].start()]}{min(ways()['further'])}{plain[back[-1].end() :]}"
    if len(text) > LONGEST or "\n" in text.strip() or not (earlier or has("further", plain)):
        return None
    told = next((rest for verb in _VERBS if (rest := without_verb(verb, plain)) is not None), None)
    if told is None and not earlier:
        return None
    span = plain if told is None else told
    span = " ".join(pattern("earlier" if earlier else "further").sub(" ", span).split())
    while (ending := list(pattern("light").finditer(span))) and ending[-1].end() == len(span):
        span = span[: ending[-1].start()].strip(EDGES)
    target, span = _named(span) if told is not None else ((), span)
    while not tells_span(span):
        front = next((f for name in _FRONT if (f := pattern(name).match(span)) is not None), None)
        if front is None or front.end() == len(span):
            return None
        span = span[front.end() :].strip(EDGES)
    return Shift(span, earlier, target)


def _named(span: str) -> tuple[tuple[str, ...], str]:
    """The words of a task in front of a word for one, and what stands behind it."""
    ends = [each for name in ("one", "noun") for each in pattern(name).finditer(span)]
    for found in sorted(ends, key=lambda each: each.start(), reverse=True):
        front = re.findall(r"[^\W_]+", pattern("light").sub(" ", span[: found.start()]))
        if front and not tells_span(span[: found.end()]) and span[found.end() :].strip(EDGES):
            return tuple(front), span[found.end() :].strip(EDGES)
    return (), span
