"""Tank names in a message: as spelt, as a beginning, or nearly."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from rapidfuzz.distance import OSA

from core.message.fold import fold
from core.message.tokens import Token


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

    Nearest is by edits (a swap counts one): one edit up to five letters, two from six on. A tie
    gives several candidates and no name, so that the chat asks.

    Examples
    --------
    >>> match("quary", ("Fern", "Quarry")).name
    'Quarry'
    >>> match("reef", ("Reef A", "Reef B")).candidates
    ('Reef A', 'Reef B')
    """
    plain = fold(text).strip(" @:,.")
    if not plain:
        return _NONE
    known = _folded(tuple(tanks))
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
    most = 0 if len(plain) < 3 else 1 if len(plain) < 6 else 2
    if not most:
        return []
    distances = [OSA.distance(plain, name, score_cutoff=most) for _, name in known]
    best = min(distances, default=most + 1)
    if best > most:
        return []
    return [tank for (tank, _), distance in zip(known, distances, strict=True) if distance == best]


@lru_cache(maxsize=512)
def _index(tanks: tuple[str, ...]) -> dict[str, list[tuple[str, str]]]:
    """First character → (plain name, name), the longest first."""
    index: dict[str, list[tuple[str, str]]] = {}
    for tank in sorted(tanks, key=len, reverse=True):
        plain = fold(tank).strip()
        if plain:
            index.setdefault(plain[0], []).append((plain, tank))
    return index


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
    for place, token in enumerate(tokens):
        if token.start < done:
            continue
        near = index.get(token.text[0])
        found = None if near is None else _named(token, folded, near)
        if found is None or (token.kind == "analyte" and _number_next(tokens, place)):
            out.append(token)
            continue
        plain, name = found
        done = token.start + len(plain)
        if folded.startswith("'s ", done):
            done += 2
        out.append(Token("tank", name, plain, token.start, done))
    return out


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
