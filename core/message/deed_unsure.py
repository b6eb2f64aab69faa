"""Deeds that were perhaps not done, or are taken back as they are told: they are asked about.

unsure = ( maybe | heard ) { light } deed | deed maybe | deed { regret } back
       | let_go [short] [short] [share] change | change { word } left_out

what is no deed here: others { word } change | habit { word } change rhythm | half "of that change"

`probably added 10 g soda`, `was told i added it`, `… in my dream` and `… ach ne doch nicht` tell
no deed that is surely done. The words stand in ``deed_unsure.txt``, those of regret in
``put_right.txt``.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message import doubts, rhythm
from core.message.deed_doubted import OF_HAND
from core.message.event_parts import Found
from core.message.fold import fold
from core.message.model import Doubt
from core.message.right_pieces import class_of
from core.message.tokens import Token
from core.message.waters import one_of
from core.message.wordfile import spelt

_SEEN: Final = 70
"""Characters on either side of a deed that are looked at."""
_PHRASE: Final = 6
_MARKS: Final = r"[\s,.;:!()\-…]*"
_SECTIONS: Final = (
    "unsure", "heard", "light", "back", "seems", "thought", "others", "habit", "half", "let_go",
    "left_out",
)  # fmt: skip
_SLIGHT: Final = frozenset({"regret", "light", "only", "was", "is"})
_MIRTH: Final = r"(?:\s*(?:lol|haha\w*|hehe\w*|xd|jaja\w*|[:;]-?[)dp]))?"
"""What may be laughed behind it."""
_SHORT: Final = r"(?:[\s']+(?:[^\W\d_]{1,3}|next|this))*?(?:\s+\d{1,2}\s?%)?[\s']*$"
"""Short words, and a share, between what lets a change go and its word."""


@cache
def _patterns() -> dict[str, re.Pattern[str]]:
    """Where each kind of word stands beside a deed."""
    found: dict[str, list[str]] = {name: [] for name in _SECTIONS}
    for section, _language, ways in spelt("deed_unsure.txt", found):
        found[section] += ways
    words = {section: one_of(ways) for section, ways in found.items()}
    before = rf"(?:{words['unsure']}|{words['heard']})"
    return {
        "before": re.compile(rf"(?<!\w){before}(?:[\s,':]+(?:{words['light']}))*[\s':]*$"),
        "inside": re.compile(rf"(?<!\w)(?:{words['unsure']})(?!\w)(?!\s+\W?\d)"),
        "behind": re.compile(rf"{_MARKS}(?:{words['unsure']}){_MIRTH}{_MARKS}$"),
        "seems": re.compile(rf"(?<!\w)(?:{words['seems']})(?!\w)"),
        "thought": re.compile(
            rf"\W*(?:(?:ok|oh|omg|so|and|but|hm+)\W+)*(?:{words['thought']}|{before})"
            rf"(?:[\s,']+(?:{words['light']}))*[\s']+(?!because)"
        ),
        "named": re.compile(rf"{words['thought']}|{words['unsure']}"),
        "ends": re.compile(rf"(?<!\w)(?:{words['thought']}|{words['unsure']}){_MARKS}$"),
        **{
            name: re.compile(rf"(?<!\w)(?:{words[name]})(?!\w)")
            for name in ("others", "habit", "half")
        },
        "back": re.compile(rf"(?:{words['back']}){_MIRTH}{_MARKS}$"),
        "let_go": re.compile(rf"(?<![\w'])(?:{words['let_go']}){_SHORT}"),
        "left_out": re.compile(rf"[^.!?;,\d]*(?<!\w)(?:{words['left_out']}){_MARKS}$"),
    }


def settle(found: list[Found], tokens: list[Token], source: str) -> list[Found]:
    """The same events, those that were perhaps not done as doubts."""
    for each in found:
        event = each.event
        if event is None or event.kind not in OF_HAND | {"lost"}:
            continue
        start, end = event.start, max(event.end, tokens[each.last - 1].end)
        if event.kind == "lost":
            named = fold(event.species or "")
            if _is_thought(source, start, end) or _patterns()["named"].fullmatch(named):
                each.event = None
                each.doubt = Doubt(source[start:end], start, end, doubts.UNSURE_EVENT)
            continue
        before = fold(source[:start].rpartition("\n")[2][-_SEEN:])
        behind = fold(source[end:].partition("\n")[0])
        if len(behind) > _SEEN:
            behind = re.split(r"[.!?;]", behind, maxsplit=1)[0]
        led, said = re.split(r"[.!?;]", before)[-1], fold(source[start:end])
        changed = event.kind == "water_change"
        if _unsure(led, said, behind) or (
            changed and (_no_change_of_mine(led + said, behind) or _let_go(led, behind))
        ):
            each.event = None
            each.doubt = Doubt(source[start:end], start, end, doubts.UNSURE_EVENT)
    return found


def _is_thought(source: str, start: int, end: int) -> bool:
    """Whether animals only look dead, or are only thought to be: `think one is dead`."""
    words = _patterns()
    led = re.split(r"[.!?;]", fold(source[:start].rpartition("\n")[2][-_SEEN:]))[-1]
    said, behind = fold(source[start:end]), fold(source[end:].partition("\n")[0])[:_SEEN]
    thought = words["thought"].match(led + said)
    if words["seems"].search(said) or (thought is not None and thought.end() >= len(led)):
        return True
    ends = words["ends"].search(re.split(r"[.!?;]", said + behind)[0])
    return bool(ends or words["before"].search(led))


def _unsure(before: str, said: str, behind: str) -> bool:
    words = _patterns()
    if words["before"].search(before) or words["inside"].search(said):
        return True
    return words["behind"].match(behind) is not None or _taken_back(behind)


def is_unsure(text: str) -> bool:
    """Whether a short text that tells a deed has a word for that it was perhaps not done.

    Examples
    --------
    >>> is_unsure("I think i gave it"), is_unsure("gave it, not sure"), is_unsure("i gave it")
    (True, True, False)
    """
    return _patterns()["inside"].search(fold(text)) is not None


def _let_go(before: str, behind: str) -> bool:
    """Whether a change is to be left out or put off: `skip the water change`."""
    words = _patterns()
    return bool(words["let_go"].search(before) or words["left_out"].match(behind))


def _no_change_of_mine(said: str, behind: str) -> bool:
    """Whether a change is somebody else's, a routine, or a half of one that was told."""
    words = _patterns()
    if words["others"].search(said) or words["half"].search(said):
        return True
    rest = re.split(r"[.!?;]", behind, maxsplit=1)[0]
    often = rhythm.days_between(said + rest) is not None
    return often and words["habit"].search(said) is not None


def _taken_back(behind: str) -> bool:
    """Whether nothing but words of regret stands behind a deed, and that it was not done."""
    words = _patterns()
    plain = " ".join(re.sub(r"[,.;:!]+", " ", behind).split())
    if not re.match(r"\s*[,.;:!\-…(]|\s+\w", behind):
        return False
    while plain:
        if words["back"].match(plain):
            return True
        parts = plain.split(" ")
        size = next(
            (
                n
                for n in range(min(_PHRASE, len(parts)), 0, -1)
                if class_of(" ".join(parts[:n])) in _SLIGHT
            ),
            0,
        )
        if not size:
            return False
        plain = " ".join(parts[size:])
    return False
