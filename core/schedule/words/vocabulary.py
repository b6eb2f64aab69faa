"""What a language gives to the grammar of time: words and phrases by the role they play."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Literal

Role = Literal[
    "weekday",  # 0 Monday to 6 Sunday
    "weekdays",  # plural, or a word for several: a tuple of days; said so, it repeats
    "month",  # 1 to 12
    "unit",  # "minutes" "hours" "days" "weeks" "months" "years"
    "number",  # a number in words
    "article",  # "a" before a unit: 1
    "half",
    "ordinal",  # 1, 2, ..., -1 for last
    "ordinal_ending",  # the "st" of 1st
    "other",  # every other day
    "often",  # daily, weekly: (count, unit), for which no number was said
    "vague",  # twice a week, biweekly: what to say instead
    "times",  # "times" of "three times a week"
    "once",  # "once" before a rhythm
    "parts",  # plural: each day
    "loose",  # words that would change what stands before them, and that no rule reads
    "part",  # a part of the day: its name in `PARTS`
    "near",  # today, tomorrow: days from now
    "near_part",  # tonight: (days from now, part)
    "am_pm",  # 0 or 12
    "oclock",
    "ish",  # behind an hour, of which it tells no more: 7ish, at 7 sharp
    "past",  # half past 8
    "to_hour",  # quarter to 8
    "quarter",
    "half_hour",  # "halb acht": half an hour before
    "every",
    "at",
    "on",
    "both",  # before two days of the week that are named
    "in",
    "the",
    "of",
    "and",
    "through",
    "except",
    "next",
    "this",
    "from_now",
    "until",
    "lasting",
    "start",
    "month_end",
    "month_start",  # the day of a month that its beginning or its middle is
    "last_day",
    "weekend",
    "day_word",
    "filler",  # words that may be left out of the task: please, me, to
]

PARTS: Mapping[str, tuple[int, int]] = {
    "morning": (9, 0),
    "noon": (12, 0),
    "afternoon": (15, 0),
    "evening": (19, 0),
    "night": (21, 0),
    "midnight": (0, 0),
}
"""The clock time that a part of the day means when none was said; ours, no source."""

Entry = Mapping[Role, object]
_TOKEN = re.compile(r"[0-9]+|[^\W\d_]+|\S")
_FOLDED = str.maketrans({"ł": "l", "ø": "o", "đ": "d", "’": "'", "–": "-", "—": "-"})


def fold(word: str) -> str:
    """Write a word without case and accents, as the vocabularies are compared."""
    plain = unicodedata.normalize("NFKD", word.casefold().translate(_FOLDED))
    return "".join(letter for letter in plain if not unicodedata.combining(letter))


def split(text: str) -> list[tuple[str, int, int]]:
    """Cut a text into runs of digits, words and single signs, each with its span."""
    return [(found[0], found.start(), found.end()) for found in _TOKEN.finditer(text)]


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """The words of one language.

    Attributes
    ----------
    language : str
        Its ISO 639-1 code.
    phrases : mapping
        First folded word → the phrases that begin with it, longest first: all their folded words,
        and their value by role.
    day_first : bool
        True where 4/5 is the fourth of May without doubt; False where it may be either.
    """

    language: str
    phrases: Mapping[str, tuple[tuple[tuple[str, ...], Entry], ...]] = field(repr=False)
    day_first: bool = True


def build(
    language: str,
    words: Mapping[Role, Mapping[str, object]],
    *,
    day_first: bool = True,
) -> Vocabulary:
    """Make a vocabulary from role → phrase → value.

    A cell may name several phrases, parted by '|'; all have the value of the cell. Words for
    in come first, in their order, whatever other phrases begin with them.
    """
    entries: dict[tuple[str, ...], dict[Role, object]] = {}
    for role, cells in sorted(words.items(), key=lambda each: each[0] != "in"):
        for cell, value in cells.items():
            for phrase in cell.split("|"):
                key = tuple(word for word, _, _ in split(fold(phrase)))
                entries.setdefault(key, {})[role] = value
    return Vocabulary(language, _by_first_word(entries.items()), day_first)


def _by_first_word(
    entries: Iterable[tuple[tuple[str, ...], Entry]],
) -> dict[str, tuple[tuple[tuple[str, ...], Entry], ...]]:
    found: dict[str, list[tuple[tuple[str, ...], Entry]]] = {}
    for key, entry in entries:
        found.setdefault(key[0], []).append((key, entry))
    return {
        first: tuple(sorted(phrases, key=lambda phrase: -len(phrase[0])))
        for first, phrases in found.items()
    }
