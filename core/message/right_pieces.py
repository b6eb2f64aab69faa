"""What a text that puts something right is made of, by the classes of ``put_right.txt``."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import Final, NamedTuple

from core.message import quantities
from core.message.fold import fold
from core.message.lexicon import lexicon, meanings
from core.message.tokens import Token, cut
from core.message.waters import mentioned
from core.message.worded import SPOONS
from core.message.wordfile import spelt

_PHRASE: Final = 6
EDGES: Final = " \t\n¿?¡!.,;:-…"


class Piece(NamedTuple):
    """A word, a phrase or an amount of a text, with its class and, of a number, its value."""

    kind: str
    text: str = ""
    value: float | None = None
    token: Token | None = None


@cache
def _ways() -> dict[str, str]:
    """Plain phrases → the class that they are of; a word of two is of the first."""
    found: dict[str, str] = {}
    for _section, meaning, told in spelt("put_right.txt", {"word"}):
        for way in told:
            found.setdefault(" ".join(way.split()), meaning)
    return found


def class_of(phrase: str) -> str | None:
    """The class of a plain phrase, as in ``put_right.txt``.

    Examples
    --------
    >>> class_of("scratch that"), class_of("only"), class_of("epsom")
    ('regret', 'only', None)
    """
    return _ways().get(phrase)


def regretted(text: str) -> bool:
    """Whether the first words of a text tell regret.

    Examples
    --------
    >>> regretted("no the other one"), regretted("and the other one")
    (True, False)
    """
    return _class_at(fold(text).strip(EDGES), 0)[1] == "regret"


def says_nothing(text: str) -> bool:
    """Whether all words of a text are of regret, or have no weight.

    Examples
    --------
    >>> says_nothing("wait no i meant the"), says_nothing("no ammonia in the")
    (True, False)
    """
    told = pieces(text, ())
    return bool(told) and all(piece.kind in _WEIGHTLESS for piece in told)


_WEIGHTLESS: Final = frozenset({"regret", "light", "is", "was", "into"})


def pieces(text: str, tanks: Sequence[str]) -> list[Piece]:
    """What a text is made of, in order; empty where a word is of no class."""
    plain = fold(text).strip(EDGES)
    tokens = cut(plain, lexicon(), plain)
    if any(token.kind == "ask" for token in tokens):
        return []
    names = {fold(tank): tank for tank in tanks}
    out: list[Piece] = []
    place = end = 0
    while place < len(tokens):
        token = tokens[place]
        if token.start < end or token.text in EDGES:
            place += 1
            continue
        if quantities.is_number(token):
            found = quantities.read(tokens, place)
            if found is None or found.value is None or found.problem:
                return []
            last = tokens[found.last - 1]
            said = plain[token.start : last.end]
            if token.text not in said and last.kind == "unit":
                said = f"{token.text} {last.text}"  # a whole tablespoon
            out.append(Piece("number", said, found.value))
            place, end = found.last, last.end
            continue
        if token.value == "one" and place + 1 < len(tokens) and tokens[place + 1].value in SPOONS:
            last = tokens[place + 1]
            out.append(Piece("number", f"1 {last.text}", 1.0))
            place, end = place + 2, last.end
            continue
        named = next((each for each in names if _stands(plain, token.start, each)), None)
        if named is not None:
            out.append(Piece("tank", names[named]))
            place, end = place + 1, token.start + len(named)
            continue
        behind_water = bool(out) and out[-1].kind in {"tank", "water"}
        if behind_water and (token.value == "one" or _count(token.text) == "1"):
            place, end = place + 1, token.end  # the tap one
            continue
        size, meaning = _class_at(plain, token.start)
        if (water := _water_at(plain, token.start)) is not None and water[0] >= size:
            out.append(Piece("water", water[1]))
            place, end = place + 1, token.start + water[0]
            continue
        if token.kind == "substance" and token.end >= token.start + size:
            out.append(Piece("thing", str(token.value)))
            end = token.end
        elif size:
            out.append(Piece(meaning, plain[token.start : token.start + size]))
            end = token.start + size
        elif (count := _count(token.text)) and (count != "1" or "," in text):  # no, eran dos
            out.append(Piece("number", count, float(count)))
            end = token.end
        elif token.kind == "time" or (token.kind in {"clock", "iso", "dotted"}):
            out.append(Piece("time", token=token))
            end = token.end
        elif token.kind == "analyte":
            out.append(Piece("analyte", str(token.value).partition("@")[0]))
            end = token.end
        elif token.kind == "fill" or (token.kind == "unit" and out and out[-1].kind == "not"):
            end = token.end  # 2 grams, not teaspoons
        else:
            return []
        place += 1
    return out


def _count(word: str) -> str | None:
    """The digits of a number in words; None for all else."""
    return next((name for kind, name in meanings(word) if kind == "count"), None)


def _stands(plain: str, start: int, name: str) -> bool:
    """Whether a name stands at a place, alone."""
    behind = plain[start + len(name) : start + len(name) + 1]
    return plain.startswith(name, start) and not behind.isalnum()


def _water_at(plain: str, start: int) -> tuple[int, str] | None:
    """How many characters the name of a source water at a place has, and which water it is."""
    return next(((end - start, of) for first, end, of in mentioned(plain) if first == start), None)


def _class_at(plain: str, start: int) -> tuple[int, str]:
    """How many characters the longest phrase at a place has, and its class; 0 for none."""
    words = plain[start:].split(" ", _PHRASE)[:_PHRASE]
    for count in range(len(words), 0, -1):
        phrase = " ".join(words[:count])
        bare = phrase.rstrip(EDGES)
        meaning = _ways().get(bare)
        if meaning is not None:
            return len(bare), meaning
    return 0, ""
