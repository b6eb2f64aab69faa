"""An acid that is wished beside another thing, or against a pest: `salt and vinegar for snails`.

wished = acid and thing | thing and acid | acid, a use and a pest or pH

where nothing is told or denied.

What cleans, makes CO2, stands in a bucket or tells of the dead is none. The words stand in
``acid_wished.txt``.
"""

from __future__ import annotations

import re
from functools import cache

from core.message import acid_in
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.message.wordfile import patterns

_SECTIONS = ("and", "pest", "use", "not", "other")


@cache
def _ways() -> dict[str, re.Pattern[str]]:
    return patterns("acid_wished.txt", _SECTIONS)


def wished(text: str) -> str | None:
    """The acid that is wished beside another thing, against a pest or for the pH; folded.

    Examples
    --------
    >>> wished("salt and vinegar to kill snails"), wished("Essig gegen Schnecken")
    ('vinegar', 'essig')
    >>> wished("how much epsom salt and citric acid"), wished("does vinegar kill snails")
    ('citric acid', 'vinegar')
    >>> wished("the rest with some vinegar so ph stays"), wished("vinegar to put ph down then?")
    ('vinegar', 'vinegar')
    >>> wished("clean the glass with salt and vinegar"), wished("salt and no vinegar for snails")
    (None, None)
    >>> wished("amino acid for shrimps"), wished("snails in acid water"), wished("salt for snails")
    (None, None, None)
    """
    named = acid_in.named(text)
    if named is None:
        return None
    plain, ways = fold(text), _ways()
    acid, start, end = named
    before, behind = plain[:start], plain[end:]
    if ways["other"].search(plain) or _ends_with(before, "not"):
        return None
    if _joined(before, behind):
        return acid
    rest = f"{before} {behind}"
    return acid if ways["pest"].search(rest) and ways["use"].search(rest) else None


def _ends_with(text: str, section: str) -> re.Match[str] | None:
    """The last word of a text, where it is of a section."""
    text = text.rstrip()
    found = _ways()[section].finditer(text)
    return next((each for each in found if each.end() == len(text)), None)


def _joined(before: str, behind: str) -> bool:
    """Whether a word joins another substance to the acid, right before it or right behind."""
    joint = _ends_with(before, "and")
    if joint is not None and _substance(before[: joint.start()], last=True):
        return True
    led = _ways()["and"].match(behind.lstrip())
    return led is not None and _substance(behind.lstrip()[led.end() :], last=False)


def _substance(text: str, *, last: bool) -> bool:
    """Whether a text ends with the name of a substance, or begins with one."""
    tokens = cut(text.strip(), lexicon(), text.strip())
    if not tokens:
        return False
    return tokens[-1 if last else 0].kind == "substance"
