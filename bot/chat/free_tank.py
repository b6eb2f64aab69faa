"""A tank told in a free sentence: `hi, got a 54 litre tank, its called Window, with 8 tetras`.

The words that tell of the tank are taken out wherever they stand: one volume, the word for a tank,
a name behind "called", a kind. What is left is for others to read.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from bot.chat.tank_words import CALLED, KIND_WORDS, POND_WORDS, SETUP_WORDS, TANK_WORDS, plain
from core.advice.inhabitants import leads, number_in
from core.advice.introduction_parts import is_aside
from core.advice.loose_lists import ONE
from core.message.amounts import volume_litres
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import Token, cut

_KEEP: Final = frozenset(
    "keep got hello hi hey new neues neuer nouveau nouvel nuevo novo nuovo nieuw nieuwe nowe nytt"  # noqa: SIM905
    " of de di da von van z called its it's is has holds".split()
)
"""Words of an introduction that say no more."""


@dataclass(frozen=True, slots=True)
class FreeTank:
    """The tank of a sentence, and what else the sentence says."""

    volume_l: float
    name: str | None
    kind: str | None
    rest: str
    beside: str = ""
    """The same with the words that lead to it: water is yellow."""

    @property
    def line(self) -> str:
        """The same as a line that is always read."""
        kind = f" {self.kind}" if self.kind else ""
        if self.name is None:
            return f"my tank is {self.volume_l:.4g} l{kind}"
        return f"/tank new {self.name} {self.volume_l:.4g} l{kind or ' fresh'}"


def read(text: str, *, us_gallons: bool, nouns: int = 1) -> FreeTank | None:
    """The tank of a sentence; None where it names none, or no volume or two of them.

    `nouns` is how many words for a tank it has: with 0 its volume must tell of it alone.
    """
    if is_anothers(text) or any(map(_says_more, cut(fold(text), lexicon(), text))):
        return None
    parts = [text] if nouns else _PARTS.split(text)
    if any(is_aside(part) and volumes_in(part.split(), us_gallons=us_gallons) for part in parts):
        return None
    words = text.replace("\n", " ; ").split()
    tanks = [place for place, word in enumerate(words) if plain(word) in TANK_WORDS]
    volumes = volumes_in(words, us_gallons=us_gallons)
    if len(tanks) != nouns or len(volumes) != 1:
        return None
    (start, end), volume = volumes[0]
    taken = {*tanks, *range(start, end)}
    name = None
    for place, word in enumerate(words[:-1]):
        behind = words[place + 1].strip(",.;:!")
        colon = place in tanks and word.endswith(":") and place + 1 not in taken
        if (fold(plain(word)) in CALLED or colon) and behind.isalpha():
            name, taken = behind, taken | {place, place + 1}
            break
    kinds = [place for place, word in enumerate(words) if plain(word) in KIND_WORDS]
    kinds = [place for place in kinds if place not in taken]
    kind = plain(words[kinds[0]]) if kinds else None
    if kind is None and any(plain(words[place]) in POND_WORDS for place in tanks):
        kind = "pond"
    taken |= {place for place in kinds if plain(words[place]) not in SETUP_WORDS or kind}
    for place in sorted(taken):
        while place - 1 not in taken and place > 1 and _light(words, place - 1) and nouns == 0:
            place -= 1  # noqa: PLW2901 - `alk 6.5 in my reef 300l`: they lead to the tank alone
            taken.add(place)
    left = [
        "," if place in taken else word
        for place, word in enumerate(words)
        if place not in taken or word[-1] in ",;."
    ]
    return FreeTank(volume, name, kind, _trimmed(left), " ".join(left).strip(" ,;."))


_PARTS: Final = re.compile(r"[,;\n]\s")
"""What a wish for a value, said beside, is no part of: `kh 3 want 5, 90 l`."""


def _says_more(token: Token) -> bool:
    """Whether a word tells a deed, asks or names a substance: then the volume is not the tank's."""
    asks = token.kind in {"ask", "several"} and token.value != "keep"
    return token.kind in {"event", "substance"} or asks


def is_anothers(text: str) -> bool:
    """Whether a text speaks of somebody else's: my neighbour has a 60 l tank."""
    return any(token.value == "other" for token in cut(fold(text), lexicon(), text))


def is_light(clause: str) -> bool:
    """Whether a clause holds nothing but words that lead to something."""
    words = clause.split()
    return all(_light(words, place) for place in range(len(words)))


def volumes_in(words: list[str], *, us_gallons: bool) -> list[tuple[tuple[int, int], float]]:
    """Where volumes stand, of one word or two, and how many litres each is."""
    found = []
    place = 0
    while place < len(words):
        for size in (2, 1):
            said = " ".join(words[place : place + size]).strip(",.;:!")
            numbered = words[place][:1].isdigit()
            volume = volume_litres(said, us_gallons) if numbered else None
            if volume is not None and not said.replace(".", "").isdigit():
                found.append(((place, place + size), volume))
                place += size - 1
                break
        place += 1
    return found


def _trimmed(words: list[str]) -> str:
    """What is left without the words that lead to it, and without idle marks."""
    while words and _light(words, 0):
        words = words[1:]
    while words and _light(words, len(words) - 1):
        words = words[:-1]
    return " ".join(words)


def _light(words: list[str], place: int) -> bool:
    word = fold(plain(words[place]))
    if word[:1].isdigit():
        return False
    if not word or word in _KEEP:
        return True
    if word in ONE:  # an article of the tank, not of an animal
        return place + 1 >= len(words) or _light(words, place + 1)
    return number_in(word) is None and leads(word)
