"""Deeds that a whole message says were not done: `i didnt actually dose any copper`.

denied = { light | amount | thing | animal | time | tank } ( not | near ) with one deed

All words must be of one language of ``denied.txt``, or be amounts, things, animals, times or
tanks: of what says more, or asks, nothing is known here. `near` are the words of ``deed_told.txt``
for what was nearly done.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from typing import Final, Literal, NamedTuple

from core.message import bought, kinds
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Context
from core.message.tanks import marked
from core.message.tokens import Token, cut
from core.message.wordfile import spelt

LONGEST: Final = 16
"""More words than these say more than one thing."""

Deed = Literal["dose", "added", "water_change", "fed", "lost"]

_PHRASE: Final = 6
_WORD: Final = re.compile(r"[^\W\d_]+|\d+(?:[.,]\d+)?|[^\w\s']")
_SECTIONS: Final = (
    "not", "bare", "helper", "dose", "change", "fed", "lost", "loss", "fish", "light",
)  # fmt: skip
_DEEDS: Final[Mapping[str, Deed]] = {
    "dose": "dose", "change": "water_change", "fed": "fed", "lost": "lost", "loss": "lost",
}  # fmt: skip
_TYPED: Final = frozenset({"substance", "number", "count", "unit", "tank", "time", "analyte"})
_PUT_IN: Final = frozenset(
    {"copper", "iron", "potassium", "calcium", "magnesium", "nitrate", "phosphate"}
)
"""What is measured and dosed by the same name."""
_LENGTHS: Final = frozenset({"minute", "hour", "day", "week", "month"})
_MARKS: Final = frozenset(".,!;:-")
_ASKS: Final = re.compile(
    r"(?:did(?: not|nt)?|have(?:nt)?|has(?:nt)?|is|was)\s+(?:i|we|he|she|it)\b"
)


class Denied(NamedTuple):
    """What was not done, of which substance or animals; `near` where it was nearly done.

    `name` is the substance as it was typed.
    """

    deed: Deed
    substance: str | None = None
    name: str = ""
    species: str | None = None
    near: bool = False


class _Piece(NamedTuple):
    kind: str
    text: str
    value: str | None = None


@cache
def _ways() -> Mapping[str, Mapping[str, frozenset[str]]]:
    """Language → plain phrase → the classes that it is of."""
    found: dict[str, dict[str, set[str]]] = {}
    for section, language, told in spelt("denied.txt", _SECTIONS):
        for way in told:
            plain = " ".join(_plain(way).split())
            found.setdefault(language, {}).setdefault(plain, set()).add(section)
    near = [
        " ".join(_plain(way).split())
        for _section, meaning, told in spelt("deed_told.txt", {"word"})
        if meaning in {"near", "missed"}
        for way in told
    ]
    for by_phrase in found.values():
        for way in near:
            by_phrase.setdefault(way, set()).add("near")
    return {
        language: {phrase: frozenset(classes) for phrase, classes in by_phrase.items()}
        for language, by_phrase in found.items()
    }


@cache
def _heads() -> Mapping[str, frozenset[str]]:
    """Language → the first words of its phrases that deny."""
    return {
        language: frozenset(
            phrase.split()[0] for phrase, of in ways.items() if of & {"not", "bare", "near"}
        )
        for language, ways in _ways().items()
    }


def _plain(text: str) -> str:
    """A text as it is compared: didn't is one word, d'eau two; as long as the text."""
    return re.sub(r"n't\b", "nt ", fold(text)).replace("'", " ")


def denied(text: str, context: Context) -> Denied | None:
    """What a message says was not done; None where it tells, asks or says anything else.

    Parameters
    ----------
    text : str
        The message as typed.
    context : Context
        The chat's tanks and products.

    Examples
    --------
    >>> from datetime import UTC, datetime
    >>> here = Context(datetime(2026, 3, 1, tzinfo=UTC))
    >>> denied("I didn't actually dose any copper", here).substance
    'copper'
    >>> denied("fish hasnt died", here).deed, denied("almost dosed 5 g soda", here).near
    ('lost', True)
    >>> denied("didnt i dose copper", here), denied("no, i dosed copper", here)
    (None, None)
    """
    plain = _plain(text).strip()
    if "?" in plain or "\n" in plain or _ASKS.match(plain):
        return None
    folded = " ".join(plain.split())
    words = [(match.group(), match.start()) for match in _WORD.finditer(folded)]
    if not 2 <= len(words) <= LONGEST:
        return None
    heads = {word for word, _at in words}
    denying = [language for language, of in _heads().items() if not of.isdisjoint(heads)]
    if not denying:
        return None
    tokens = marked(cut(folded, lexicon(), folded), folded, context)
    if context.products or context.spoken_of:
        tokens = bought.mark(tokens, folded, context.products, context.spoken_of)
    typed = {token.start: token for token in tokens if token.kind in _TYPED}
    found = (_in_language(words, typed, _ways()[language]) for language in denying)
    return next((each for each in found if each is not None), None)


def _in_language(
    words: list[tuple[str, int]], typed: Mapping[int, Token], ways: Mapping[str, frozenset[str]]
) -> Denied | None:
    pieces: list[_Piece] = []
    kinds_of: list[frozenset[str]] = []
    place = 0
    while place < len(words):
        word, start = words[place]
        size, classes = _longest(words, place, ways)
        token = typed.get(start)
        within = 0 if token is None else sum(start <= at < token.end for _word, at in words)
        if token is not None and within and within >= size and not classes - {"light", "fish"}:
            pieces.append(_Piece(token.kind, token.text, str(token.value)))
            kinds_of.append(frozenset())
            place += within
        elif size:
            pieces.append(_Piece("class", word))
            kinds_of.append(classes)
            place += size
        elif word in _MARKS:
            pieces.append(_Piece("mark", word))
            kinds_of.append(frozenset())
            place += 1
        elif (many := _animal(words, place)) > 0:
            said = " ".join(each for each, _at in words[place : place + many])
            pieces.append(_Piece("animal", said))
            kinds_of.append(frozenset())
            place += many
        else:
            return None
    return _of(pieces, kinds_of)


def _longest(
    words: list[tuple[str, int]], place: int, ways: Mapping[str, frozenset[str]]
) -> tuple[int, frozenset[str]]:
    for size in range(min(_PHRASE, len(words) - place), 0, -1):
        found = ways.get(" ".join(word for word, _at in words[place : place + size]))
        if found is not None:
            return size, found
    return 0, frozenset()


def _animal(words: list[tuple[str, int]], place: int) -> int:
    """How many words at a place name an animal."""
    for size in (3, 2, 1):
        part = [word for word, _at in words[place : place + size]]
        if len(part) == size and kinds.is_kind(" ".join(part)):
            return size
    return 0


def _of(pieces: list[_Piece], classes: list[frozenset[str]]) -> Denied | None:
    near = any("near" in each for each in classes)
    if not near and not _denies(pieces, classes):
        return None
    told = {name for each in classes for name in each if name in _DEEDS}
    if any(piece.kind == "time" and piece.value in _LENGTHS for piece in pieces):
        return None  # i haven't changed the water in 3 weeks
    things = [piece for piece in pieces if piece.kind in {"substance", "analyte"}]
    if any(each.kind == "analyte" and _thing(each) not in _PUT_IN for each in things):
        return None
    animals = [piece.text for piece in pieces if piece.kind == "animal"]
    if any(sum(piece.kind == each for piece in pieces) > 1 for each in ("number", "tank")):
        return None  # gave 8 g, not 5
    if len(things) > 1 or len(animals) > 1 or (things and animals):
        return None
    deeds = list(dict.fromkeys(_DEEDS[name] for name in _DEEDS if name in told))
    if "water_change" in deeds and "dose" in deeds:
        deeds.remove("dose")  # gave it no change
    if len(deeds) != 1:
        return None
    (deed,) = deeds
    if deed == "dose" and animals:
        deed = "added"
    if things and deed != "dose":
        return None
    thing, name = (_thing(things[0]), things[0].text) if things else (None, "")
    return Denied(deed, thing, name, animals[0] if animals else None, near)


def _thing(piece: _Piece) -> str:
    return (piece.value or piece.text).partition("@")[0]


def _denies(pieces: list[_Piece], classes: list[frozenset[str]]) -> bool:
    """Whether one word denies; the word for no only right before the deed or its helping verb."""
    for place, each in enumerate(classes):
        behind = classes[place + 1] if place + 1 < len(classes) else frozenset[str]()
        kind = pieces[place + 1].kind if place + 1 < len(pieces) else ""
        if pieces[place].text == "not" and not any(
            set(_DEEDS) & after for after in classes[place:]
        ):
            return False  # gave 8 g, not that
        if "not" in each and (place or kind != "mark"):
            if pieces[place].text != "no":
                return True
            return bool(behind & {"fish", "loss"}) or kind in {
                "animal",
                "substance",
                "analyte",
            }  # no fish died
        if "bare" in each and behind & {"helper", *_DEEDS}:
            return True
    return False
