"""The words around what was put in: those of products, and those that tell of the deed."""

from __future__ import annotations

from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.message.wordfile import spelt

_SECTIONS: Final = frozenset(
    {"product", "linked", "said", "alkaline", "care", "meal", "size", "kitchen"}
)


@cache
def dose_words() -> dict[str, frozenset[str]]:
    """Section of ``dose_words.txt`` → its words in all languages."""
    found: dict[str, set[str]] = {section: set() for section in _SECTIONS}
    for section, _language, ways in spelt("dose_words.txt", _SECTIONS):
        found[section].update(ways)
    return {section: frozenset(ways) for section, ways in found.items()}


def is_care(verb: str, thing: str) -> bool:
    """Whether what a verb of giving gave is a deed of the hand, and nothing that was put in.

    Examples
    --------
    >>> is_care("gave the tank", "clean"), is_care("gave it", "gravel vac")
    (True, True)
    >>> is_care("gave the tank", "cleaner"), is_care("put in", "clean")
    (False, False)
    """
    words = fold(thing).split()
    whole = {" ".join(words), *words[-1:]}
    return verb.startswith("gave ") and not whole.isdisjoint(dose_words()["care"])


def names_what_it_moves(product: str, analyte: str) -> bool:
    """Whether a product of unknown contents is named for an analyte, or is a buffer (of KH).

    Examples
    --------
    >>> names_what_it_moves("kh buffer", "kh"), names_what_it_moves("buffer", "kh")
    (True, True)
    >>> names_what_it_moves("gh booster", "kh"), names_what_it_moves("fish food", "kh")
    (False, False)
    """
    tokens = cut(fold(product), lexicon(), product)
    if any(token.kind == "analyte" and token.value == analyte for token in tokens):
        return True
    return analyte == "kh" and any(token.text in dose_words()["alkaline"] for token in tokens)


def is_bare_buffer(thing: str) -> bool:
    """Whether a thing has no other name than that it holds pH: `buffer`, of whatever contents.

    Examples
    --------
    >>> is_bare_buffer("Buffer"), is_bare_buffer("buffer 8.2"), is_bare_buffer("baking soda")
    (True, False, False)
    """
    return " ".join(fold(thing).split()) in dose_words()["alkaline"]


def names_put_in(thing: str) -> bool:
    """Whether a name that no table knows is that of a powder, a liquid or what is eaten or drunk.

    Examples
    --------
    >>> names_put_in("lemon tea"), names_put_in("aceite de oliva"), names_put_in("purple stuff")
    (True, True, True)
    >>> names_put_in("blobfish"), names_put_in("milk fish")
    (False, False)
    """
    words, said = fold(thing).split(), dose_words()
    if not words:
        return False
    if words[-1] in said["product"] | said["kitchen"]:
        return True
    return len(words) > 2 and words[0] in said["kitchen"] and words[1] in said["linked"]


def names_buffer(text: str) -> bool:
    """Whether a text has a word for what holds pH and is no salt by its name.

    Examples
    --------
    >>> names_buffer("how much buffer, kh 3"), names_buffer("how much baking soda")
    (True, False)
    """
    return any(token.text in dose_words()["alkaline"] for token in cut(fold(text), lexicon(), text))
