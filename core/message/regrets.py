"""Whether what stands beside a value only regrets the one before: `kh was 5 sorry`."""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.right_pieces import class_of
from core.message.wordfile import spelt

_PHRASE: Final = 4
"""Words of the longest phrase that is looked for."""
_SIGHS: Final = frozenset(
    {
        "oh", "ah", "ach", "hmm", "hm", "er", "erm", "uh", "argh", "ugh", "ay", "uy", "euh", "aj",
        "oj", "ahm", "eh", "so", "then", "now", "wait", "moment",
    }
)  # fmt: skip
"""Words that may as well open what is told anew."""
_AND: Final = frozenset(
    {
        "and", "also", "too", "plus", "und", "auch", "et", "aussi", "y", "e", "anche", "tambien",
        "en", "ook", "oraz", "och",
    }
)  # fmt: skip
_LIGHT: Final = frozenset({"was", "is", "light"})


@cache
def slips() -> frozenset[str]:
    """The plain phrases that tell that a value told before was read or typed wrong."""
    return _ways("slip")


@cache
def _ways(section: str) -> frozenset[str]:
    told = spelt("slips.txt", {"slip", "wrong"})
    return frozenset(way for of, _name, ways in told if of == section for way in ways)


_BRACKETED: Final = re.compile(r"[(\[]([^()\[\]]{2,60})[)\]]")


def called_wrong(text: str) -> tuple[int, int] | None:
    """Where brackets begin and end that say of the value before them that it is wrong.

    Examples
    --------
    >>> called_wrong("nitrate: 30 (sorry, wrong)"), called_wrong("nitrate 30 (wrong)")
    ((12, 26), (11, 18))
    >>> called_wrong("kh 5 (sorry)"), called_wrong("kh 5 (correction)"), called_wrong("kh 5 wrong")
    (None, None, None)
    """
    for found in _BRACKETED.finditer(text):
        words = re.findall(r"[^\s.,;:!]+", fold(found[1]))
        wrong = not _phrases(found[1]).isdisjoint(_ways("wrong"))
        rest = " ".join(words)
        for way in sorted(_ways("wrong"), key=len, reverse=True):
            rest = re.sub(rf"(?<!\S){re.escape(way)}(?!\S)", " ", rest)
        if wrong and (not rest.strip() or only_regrets(rest)):
            return found.span()
    return None


def only_regrets(text: str) -> bool:
    """Whether a text is of words of regret (``put_right.txt``, ``slips.txt``) and light ones alone.

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
        slip = " ".join(words[place : place + size]) in slips()
        if meaning != "regret" and not slip and meaning not in _LIGHT:
            return False
        regrets |= slip or meaning == "regret"
        place += size
    return regrets


def firmly_regrets(text: str) -> bool:
    """As `only_regrets`, by more than a sigh, and with nothing added: oh, and.

    Examples
    --------
    >>> firmly_regrets("i mean"), firmly_regrets("oh sorry"), firmly_regrets("no")
    (True, True, True)
    >>> firmly_regrets("oh"), firmly_regrets("sorry and"), firmly_regrets("oh and")
    (False, False, False)
    """
    words = re.findall(r"[^\s.,;:!]+", fold(text))
    if not only_regrets(text) or not _AND.isdisjoint(words):
        return False
    return only_regrets(" ".join(word for word in words if word not in _SIGHS))


def tells_slip(beside: str, text: str) -> bool:
    """Whether what stands beside a value tells that one told before was wrong, or was another.

    `text` is the whole message: ``kh was 4 actually``.

    Examples
    --------
    >>> tells_slip("wrong, it was", "wrong, it was kh 4")
    True
    >>> tells_slip("actually", "kh was 4 actually")
    True
    >>> tells_slip("oh", "oh kh 4"), tells_slip("", "kh was 4")
    (False, False)
    """
    if not only_regrets(beside):
        return False
    return not _phrases(beside).isdisjoint(slips()) or any(
        class_of(each) == "was" for each in _phrases(text)
    )


def _phrases(text: str) -> set[str]:
    words = re.findall(r"[^\s.,;:!]+", fold(text))
    sizes = range(1, _PHRASE + 1)
    return {" ".join(words[at : at + size]) for at in range(len(words)) for size in sizes}


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
