"""Whether what stands beside a value only regrets the one before: `kh was 5 sorry`."""

from __future__ import annotations

import re
from typing import Final

from core.message.fold import fold
from core.message.put_right import class_of

_PHRASE: Final = 4
"""Words of the longest phrase that is looked for."""
_LIGHT: Final = frozenset({"was", "is", "light"})


def only_regrets(text: str) -> bool:
    """Whether a text is of words of regret, as in ``put_right.txt``, and light ones alone.

    Examples
    --------
    >>> only_regrets("sorry"), only_regrets("was, oops"), only_regrets("sorry for the delay")
    (True, True, False)
    >>> only_regrets("so"), only_regrets("")
    (False, False)
    """
    words = re.findall(r"[^\s.,;:!]+", fold(text))
    regrets, place = False, 0
    while place < len(words):
        for size in range(min(_PHRASE, len(words) - place), 0, -1):
            meaning = class_of(" ".join(words[place : place + size]))
            if meaning is not None:
                break
        if meaning != "regret" and meaning not in _LIGHT:
            return False
        regrets |= meaning == "regret"
        place += size
    return regrets


def behind_regret(text: str) -> str | None:
    """What stands behind the words of regret that a text opens with; None where none does.

    Examples
    --------
    >>> behind_regret("oh wait, cube ph was 6.5 not 6.8"), behind_regret("cube ph 6.5")
    ('cube ph was 6.5 not 6.8', None)
    """
    words = list(re.finditer(r"[^\s.,;:!]+", text))
    plain = [fold(word[0]) for word in words]
    place, last = 0, 0
    while place < len(words):
        sizes = range(min(_PHRASE, len(words) - place), 0, -1)
        classes = {size: class_of(" ".join(plain[place : place + size])) for size in sizes}
        size = next((size for size in sizes if classes[size] in {"regret", "light"}), 0)
        if not size:
            break
        place += size
        last = place if classes[size] == "regret" else last
    return text[words[last].start() :] if 0 < last < len(words) else None
