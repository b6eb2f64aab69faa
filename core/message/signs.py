"""What keepers see or smell of a tank: ``water is cloudy``, ``snail shells are dissolving``."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.message.wordfile import spelt

_MOST: Final = 12
"""Tokens of such a message, at most: a longer one tells more than a sign."""

ORDER: Final = (
    "co2_yellow", "co2_green", "co2_blue", "shells", "pearling", "algae", "green_water", "film",
    "foam", "smell", "plants", "crust", "gassed", "cloudy", "tea", "coral", "bloated",
    "chasing", "hiding", "listless",
    "filter_care", "ground_care", "feeding", "lighting", "snails",
)  # fmt: skip
"""Where words of two signs stand in a message: the one that says more exactly what is meant."""


@cache
def _words() -> dict[str, tuple[re.Pattern[str], re.Pattern[str]]]:
    """Sign → patterns of its subject and of its sight."""
    ways: dict[tuple[str, str], list[str]] = {}
    for sign, part, found in spelt("signs.txt", set(ORDER)):
        ways.setdefault((sign, part), []).extend(found)
    return {sign: (_any(ways[sign, "subject"]), _any(ways[sign, "sight"])) for sign in ORDER}


def _any(ways: list[str]) -> re.Pattern[str]:
    listed = "|".join(map(re.escape, sorted(set(ways), key=len, reverse=True)))
    return re.compile(rf"(?<!\w)(?:{listed})(?!\w)")


def seen(text: str) -> str | None:
    """The sign that a short message tells; None where it tells none, or a number.

    Examples
    --------
    >>> seen("my water is cloudy"), seen("Schneckenhäuser lösen sich auf"), seen("hello")
    ('cloudy', 'shells', None)
    """
    plain = fold(text)
    tokens = cut(plain, lexicon(), text, most=_MOST + 1)
    if len(tokens) > _MOST or any(token.kind in {"number", "fraction"} for token in tokens):
        return None
    return next(
        (
            sign
            for sign, (subject, sight) in _words().items()
            if sight.search(plain) and subject.search(plain)
        ),
        None,
    )


@cache
def _checkers() -> re.Pattern[str]:
    signs = [_words()[sign] for sign in ORDER if sign.startswith("co2_")]
    subject = "|".join(subject.pattern for subject, _sight in signs)
    sight = "|".join(sight.pattern for _subject, sight in signs)
    return re.compile(rf"(?:{subject})(?:[ :,=]+\w+)?[ :,=]+(?:{sight})")


def checker(text: str) -> tuple[int, int] | None:
    """Where a text tells the colour of a CO2 checker; None where it does not.

    Examples
    --------
    >>> checker("kh 5 drop checker is yellow, ph 6"), checker("drop checker fell off")
    ((5, 27), None)
    """
    found = _checkers().search(fold(text))
    return None if found is None else found.span()
