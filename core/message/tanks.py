"""Tank names in a message: as spelt, as a beginning, or nearly."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from rapidfuzz.distance import OSA

from core.message import described, namesakes
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Context
from core.message.tokens import Token, cut


@dataclass(frozen=True, slots=True)
class Match:
    """Which tank a word means.

    `name` is the tank's own spelling, None where none or more than one fits; `candidates` are all
    that fit equally well, in the order of the chat's tanks.
    """

    name: str | None
    candidates: tuple[str, ...] = ()


_NONE = Match(None)


def match(text: str, tanks: Sequence[str]) -> Match:
    """The tank meant by `text`: exact, else the only one that begins so, else the nearest.

    Nearest is by edits (a swap counts one): one edit up to five letters, two from six on, or where
    the tank's name has six and the first letter is right; a number in a name is no slip. A tie
    gives several candidates and no name, so that the chat asks.

    Examples
    --------
    >>> match("quary", ("Fern", "Quarry")).name, match("qaury", ("Fern", "Quarry")).name
    ('Quarry', 'Quarry')
    >>> match("reef", ("Reef A", "Reef B")).candidates
    ('Reef A', 'Reef B')
    """
    plain = fold(text).strip(" @:,.")
    return _match(plain, tuple(tanks)) if plain else _NONE


@lru_cache(maxsize=4096)
def _match(plain: str, tanks: tuple[str, ...]) -> Match:
    # Kept, since the words that begin messages come again.
    known = _folded(tanks)
    found = [tank for tank, name in known if name == plain]
    if not found and len(plain) > 1:
        found = [tank for tank, name in known if name.startswith(plain)]
    found = found or _nearest(plain, known)
    if not found:
        return _NONE
    return Match(found[0] if len(found) == 1 else None, tuple(found))


@lru_cache(maxsize=512)
def _folded(tanks: tuple[str, ...]) -> tuple[tuple[str, str], ...]:
    """(name, plain name) of each tank."""
    return tuple((tank, fold(tank)) for tank in tanks)


def _nearest(plain: str, known: tuple[tuple[str, str], ...]) -> list[str]:
    if len(plain) < 3:
        return []
    found: list[tuple[float, str]] = []
    for tank, name in known:
        if _numbers(plain) != _numbers(name):
            continue  # tap2 is not tap
        most = _most(plain, name)
        distance: float = OSA.distance(plain, name, score_cutoff=most)
        if distance <= most:
            found.append((distance, tank))
    best = min((distance for distance, _ in found), default=0)
    return [tank for distance, tank in found if distance == best]


def _numbers(text: str) -> str:
    return "".join(filter(str.isdigit, text))


def _most(plain: str, name: str) -> int:
    """Edits between a word and a name that it still means."""
    long = len(plain) > 5 or (len(plain) == 5 and len(name) > 5 and plain[0] == name[0])
    return 2 if long else 1


def near(text: str, tanks: Sequence[str]) -> str | None:
    """The one tank that a word is somewhat like, for asking: half of it right, and its beginning.

    Examples
    --------
    >>> near("lagune", ("Fern", "Lagoon")), near("tang", ("Fern", "Lagoon"))
    ('Lagoon', None)
    """
    plain = fold(text)
    if len(plain) < 3:
        return None
    found: list[tuple[float, str]] = []
    for tank, name in _folded(tuple(tanks)):
        most = max(len(plain), len(name)) // 2
        distance: float = OSA.distance(plain, name, score_cutoff=most)
        if distance <= most and plain[0] == name[0]:
            found.append((distance, tank))
    best = min(found, default=None)
    if best is None or sum(distance == best[0] for distance, _ in found) > 1:
        return None
    return best[1]


@lru_cache(maxsize=512)
def _index(tanks: tuple[str, ...]) -> dict[str, list[tuple[str, str]]]:
    """First character → (plain name, name), the longest first."""
    index: dict[str, list[tuple[str, str]]] = {}
    for tank in sorted(tanks, key=len, reverse=True):
        plain = fold(tank).strip()
        if plain:
            index.setdefault(plain[0], []).append((plain, tank))
    return index


MET = 12
"""Names of tanks in a message that are looked at for animals; more are no message of a keeper."""


def mark(tokens: list[Token], folded: str, tanks: tuple[str, ...]) -> list[Token]:
    """`tokens` with every exact tank name made one token of kind ``tank``."""
    index = _index(tanks)
    for token in tokens:
        if token.text[0] in index:
            break
    else:
        return tokens
    out: list[Token] = []
    done = 0
    alone: set[str] = set()
    met = 0
    for place, token in enumerate(tokens):
        if token.start < done:
            continue
        near = index.get(token.text[0])
        found = None if near is None else _named(token, folded, near)
        if found is None and near is not None and token.kind == "number":
            found = _parted(tokens, place, folded, near)
        if found is None or (token.kind == "analyte" and _number_next(tokens, place)):
            out.append(token)
            continue
        plain, name = found
        if len(plain) == 1 and namesakes.is_letter(tokens, place):
            out.append(token)
            continue
        done = token.start + len(plain)
        behind = place + 1
        while behind < len(tokens) and tokens[behind].start < done:
            behind += 1
        met += 1
        animal = namesakes.is_animal(tokens, place, plain, behind) if met <= MET else None
        if animal is not None:
            out.append(Token("word", None, plain, token.start, done))
            if animal == "alone":
                alone.add(name)
            continue
        if folded.startswith("'s ", done):
            done += 2
        out.append(Token("tank", name, plain, token.start, done))
    if len(alone) == 1 and all(token.kind != "tank" for token in out):
        name, start = alone.pop(), tokens[0].start  # the tank and its animal: it is both
        return [Token("tank", name, fold(name), start, start), *out]
    return out


def marked(tokens: list[Token], folded: str, context: Context) -> list[Token]:
    """`tokens` with every tank made one token, told by its name or without it."""
    if not context.tanks:
        return tokens
    return described.mark(mark(tokens, folded, context.tanks), folded, context.looks)


def named_alone(text: str, tanks: Sequence[str]) -> str | None:
    """The one tank that is all that a text says, beside small words.

    Examples
    --------
    >>> named_alone("the big one", ("Big", "Small")), named_alone("my mess in big", ("Big",))
    ('Big', None)
    """
    folded = fold(text)
    tokens = mark(cut(folded, lexicon(), text), folded, tuple(tanks)) if tanks else []
    named = {str(token.value) for token in tokens if token.kind == "tank"}
    light = all(
        (token.kind in {"tank", "fill", "p"} and token.value != "judge")
        or token.value in {"one", "in", "home", "link", "was"}
        for token in tokens
    )
    return named.pop() if light and len(named) == 1 else None


_PLACES = frozenset({"to", "at_to", "from", "in", "for"})
_SIZE = re.compile(r"\d{1,5} ?[a-z]{1,9}\b")
_BORDER = re.compile(r"(?<=\d) (?=[a-z])")


def _parted(
    tokens: list[Token], place: int, folded: str, tanks: list[tuple[str, str]]
) -> tuple[str, str] | None:
    """A tank named by its size, written otherwise, behind a word for a place: to the 20 gal."""
    before = place - 1
    while before >= 0 and tokens[before].kind == "fill":
        before -= 1
    if before < 0 or tokens[before].value not in _PLACES:
        return None
    said = _SIZE.match(folded, tokens[place].start)
    bare = "" if said is None else said[0].replace(" ", "")
    for plain, name in tanks:
        if said is not None and _BORDER.sub("", plain) == bare:
            return said[0], name
    return None


def _number_next(tokens: list[Token], place: int) -> bool:
    return place + 1 < len(tokens) and tokens[place + 1].kind == "number"


def _named(token: Token, folded: str, tanks: list[tuple[str, str]]) -> tuple[str, str] | None:
    """The tank that stands whole at a token, of those that begin with its first character."""
    start = token.start
    if start and folded[start - 1].isalpha():
        return None
    for plain, name in tanks:
        end = start + len(plain)
        if folded.startswith(plain, start) and not folded[end : end + 1].isalnum():
            return plain, name
    return None
