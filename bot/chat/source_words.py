"""What a message tells of a source: which water it begins with, and its readings by facet."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from bot.chat.source_blends import LONGEST
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from bot.chat.words import readings as reading_words
from bot.store.tanks import Facet, StoredTank
from core.message import facets, parse
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Parsed
from core.message.tokens import cut as tokenised
from core.message.waters import mentioned


@dataclass(frozen=True, slots=True)
class Heard:
    """What is told of a source: its name, and readings by facet (None: as it comes out)."""

    name: str
    pieces: tuple[tuple[Facet | None, Parsed], ...]


_MY: Final = re.compile(
    r"^(?:(?:source|quelle|fuente|fonte|kalla|zrodlo)\s{1,3})?"
    r"(?:(?:from|according to|by|vom|von|laut|aus|du|de|d'apres|selon|del|segun|da|do|segundo|dal"
    r"|dall'|dell'|secondo|van|volgens|z|od|wedlug|fran|enligt)\s{1,3})?"
    r"(?:(?:my|our|the|mein|unser|dem|der|das|le|la|mon|notre|mi|il|il mio|mijn|het|min)\s{1,3})?"
)
"""What may stand before a source's name."""
_IS: Final = re.compile(
    r"^\s{0,3}(?:water|wasser)?\s{0,3}(?:[:=,]|is|has|reads|measures|ist|hat|est|es)?\s{1,3}"
)
"""What may stand between a source and its readings."""


def opening(text: str, held: Waters) -> tuple[str, str] | None:
    """The source that a message begins with, and what is told of it."""
    plain = fold(text)
    start = found.end() if (found := _MY.match(plain)) else 0
    own = sorted(held.sources, key=lambda source: -len(source.name))
    for source in own:
        name = fold(source.name)
        if plain.startswith(name, start) and not plain[start + len(name) :][:1].isalnum():
            return _rest(source.name, text, start + len(name))
    first = mentioned(text[:60])
    if not first or first[0][0] != start:
        return None
    _, end, kind = first[0]
    known = held.named(kind)
    return _rest(known.name if known is not None else kind, text, end)


def behind_names(text: str) -> str | None:
    """What follows a sentence that only names waters: `i have ro and tap. tap gh 16 kh 12`."""
    first, stop, rest = text.partition(". ")
    if not stop or not rest.strip() or any(char.isdigit() for char in first):
        return None
    return rest.strip() if mentioned(first[:60]) else None


def _rest(name: str, text: str, end: int) -> tuple[str, str]:
    found = _IS.match(fold(text[end:]))
    return name, text[end + (found.end() if found else 0) :]


def split(turn: Turn, said: str, sources: Sequence[StoredTank]) -> Heard | None:
    """Part a name from the readings after it: the shortest name that leaves only readings."""
    parts = said.split()
    usual = next((each.name for each in sources if not each.blend), "tap")
    for cut in range(1, min(len(parts), LONGEST + 1)):
        name, rest = " ".join(parts[:cut]).rstrip(":"), " ".join(parts[cut:])
        if not facets.strip(name):  # "/source stood ph 7.9" is of the usual source
            name, rest = usual, f"{name} {rest}"
        found = heard(turn, name, rest)
        if found is not None:
            return found
    return None


def heard(turn: Turn, name: str, rest: str) -> Heard | None:
    """Read what is told of a source, piece by piece; None where a piece is no reading."""
    pieces: list[tuple[Facet | None, Parsed]] = []
    for piece in facets.split(rest):
        told = piece.text[found.end() :] if (found := _IS.match(piece.text)) else piece.text
        parsed = parse(told, turn.context_apart())
        numbers = re.findall(r"\d+(?:[.,]\d+)?", piece.text)
        if not parsed.values and piece.stood is not None and len(numbers) == 1:
            parsed = parse(f"ph {numbers[0]}", turn.context())  # "7.8 after a day standing"
        if not parsed.values or parsed.intent != "reading" or parsed.events:
            return None
        pieces += _by_facet(parsed, piece)
    return Heard(name, tuple(pieces)) if pieces else None


def _by_facet(parsed: Parsed, piece: facets.Piece) -> list[tuple[Facet | None, Parsed]]:
    """Readings of one piece; of stood water only what changes as it stands is kept apart."""
    if not piece.stood:
        return [(piece.season, parsed)]
    apart = tuple(value for value in parsed.values if value.analyte in facets.GASSES)
    rest = tuple(value for value in parsed.values if value.analyte not in facets.GASSES)
    told: list[tuple[Facet | None, Parsed]] = []
    if rest:
        told.append((piece.season, replace(parsed, values=rest, doubts=())))
    if apart or parsed.doubts:
        told.append(("stood", replace(parsed, values=apart)))
    return told


def doubtful(turn: Turn, said: str) -> list[str]:
    """Why what stands behind a source's name was not taken: "tap ph 72"."""
    _name, _blank, rest = said.partition(" ")
    doubts = parse(rest, turn.context_apart()).doubts if rest else ()
    return [reading_words.doubt([each.text], each.reason) for each in doubts[:3]]


_LIGHT: Final = frozenset({"link", "status", "current", "home", "explain", "other"})


def alone(text: str, held: Waters) -> str | None:
    """The source that a message names and says nothing of: `how is my tap?`, `tap`."""
    plain = fold(text).strip(" ?!.")
    names = [fold(source.name) for source in held.sources]
    name = next((each for each in names if plain.endswith(each)), None)
    if name is None:
        kinds = mentioned(plain)
        if len(kinds) != 1 or kinds[0][1] != len(plain) or held.named(kinds[0][2]) is None:
            return None
        name = plain[kinds[0][0] :]
    before = tokenised(plain.removesuffix(name), lexicon())
    light = all(token.kind == "fill" or token.value in _LIGHT for token in before)
    return name if light else None
