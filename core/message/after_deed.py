"""After which deed a value was read, said behind the value: `ph 8.7 after kalkwasser`.

said = name number { word } "after" { light } deed { light | deed }     up to the end of the clause

Where the words are of nothing else they tell no time and no other water, and the value stands.
"""

from __future__ import annotations

from functools import cache
from typing import Final

from core.message.tokens import Token
from core.message.wordfile import spelt

_SECTIONS: Final = ("after", "deed", "light")
_MOST: Final = 4
"""Words of the longest phrase."""


@cache
def _words() -> dict[str, frozenset[str]]:
    """Each section's phrases.

    Raises
    ------
    ValueError
        If a line has no ``=`` or stands in no section.
    """
    found: dict[str, set[str]] = {section: set() for section in _SECTIONS}
    for section, _language, told in spelt("after_deed.txt", found):
        found[section] |= {" ".join(way.split()) for way in told}
    return {section: frozenset(ways) for section, ways in found.items()}


def mark(tokens: list[Token]) -> None:
    """Make words without weight, in place, of those that only tell after which deed it was read."""
    named = False
    for place, token in enumerate(tokens):
        named = named or token.kind == "analyte"
        if not named or place == 0 or tokens[place - 1].kind not in {"number", "unit"}:
            continue
        size = _at(tokens, place, "after")
        if size and (end := _deed_ends(tokens, place + size)):
            for each in tokens[place:end]:
                each.kind = each.value = "fill"


def _deed_ends(tokens: list[Token], place: int) -> int:
    """Where the clause of nothing but a deed ends; 0 where it says more, or no deed."""
    done = False
    while place < len(tokens) and tokens[place].kind not in {"p", "nl"}:
        token = tokens[place]
        deed = _at(tokens, place, "deed") or int(token.kind == "substance")
        light = _at(tokens, place, "light") or int(token.kind == "fill")
        if not deed and not light:
            return 0
        done = done or bool(deed)
        place += max(deed, light)
    return place if done else 0


def _at(tokens: list[Token], place: int, section: str) -> int:
    """How many tokens the longest phrase of a section takes from a place on; 0 for none."""
    said, taken = "", 0
    for size, token in enumerate(tokens[place : place + _MOST], 1):
        said = f"{said} {token.text}".strip()
        if said in _words()[section]:
            taken = size
    return taken
