"""``no bleach went in, it was a joke``: a call for help is taken back, in so many words."""

from __future__ import annotations

from itertools import pairwise

from core.message.word_classes import said


def takes_back(text: str) -> bool:
    """Whether all that a text says is that a call was none: a joke, or that nothing went in.

    Examples
    --------
    >>> takes_back("no bleach went in, it was a joke"), takes_back("false alarm")
    (True, True)
    >>> takes_back("bleach went in, no joke"), takes_back("not a joke"), takes_back("no bleach?")
    (False, False, False)
    """
    told = None if "?" in text else said("taken_back.txt", text, small=True)
    if told is None or told.numbers:
        return False
    if not told.has("joke"):
        return told.has("none", "thing")
    heavy = [each for each in told.classes if each != "light"]
    denied = ("none", "joke") in pairwise(heavy)  # no joke, bleach went in
    return not denied and (told.has("none") or not told.has("thing"))
