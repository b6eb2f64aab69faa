"""How files of words are written: sections in brackets, ``meaning = words``, notes after ``#``."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from importlib.resources import files
from itertools import product
from typing import Final

from core.message.fold import fold

_TWO_LETTERS = {"ä": "ae", "ö": "oe", "ü": "ue", "å": "aa", "ø": "oe", "ß": "ss"}


def entries(
    text: str, file: str, sections: Collection[str] | None = None
) -> Iterator[tuple[str, str, str]]:
    """Every entry of a file as (section, meaning, right side), in the order written.

    Parameters
    ----------
    text, file : str
        What the file holds, and its name for the error.
    sections : collection of str, optional
        The sections that the file may have; without it, any.

    Raises
    ------
    ValueError
        If a line belongs to no known section or has no ``=``; file and line are named.
    """
    section = ""
    for number, raw in enumerate(text.splitlines(), 1):
        line = raw.partition("#")[0].strip()
        if line.startswith("["):
            section = line.strip("[]")
        elif line:
            meaning, equals, right = line.partition("=")
            if not equals or (sections is not None and section not in sections):
                raise ValueError(f"{file} line {number}: {raw!r}")
            yield section, meaning.strip(), right.strip()


_CHOICE: Final = re.compile(r"\(([^()]*\|[^()]*)\)")


def alternatives(right: str) -> list[str]:
    """The ways to say one thing, which stand between commas, each choice of words written out.

    Examples
    --------
    >>> alternatives("it is, (is|seems) (now|) fine")
    ['it is', 'is now fine', 'is fine', 'seems now fine', 'seems fine']
    """
    return [word for each in right.split(",") for word in _written_out(each) if word]


def _written_out(way: str) -> list[str]:
    parts = _CHOICE.split(way)  # what stands in brackets is every other part
    if len(parts) == 1:
        return [way.strip()]
    options = [part.split("|") if at % 2 else [part] for at, part in enumerate(parts)]
    return [" ".join("".join(chosen).split()) for chosen in product(*options)]


def spellings(word: str) -> set[str]:
    """The plain forms under which a word can be typed."""
    plain = {fold(word)}
    if word.isascii():
        return plain
    wide = word.lower()
    for letter, two in _TWO_LETTERS.items():
        wide = wide.replace(letter, two)
    plain.add(fold(wide))
    return plain


def spelt(
    file: str, sections: Collection[str] | None = None
) -> Iterator[tuple[str, str, list[str]]]:
    """Every entry of a file of this package as (section, meaning, ways to type it), in order.

    Parameters
    ----------
    file : str
        Its name, as in ``aims.txt``.
    sections : collection of str, optional
        The sections that it may have; without it, any.

    Raises
    ------
    ValueError
        As `entries`.
    """
    text = (files("core.message") / file).read_text(encoding="utf-8")
    for section, meaning, right in entries(text, file, sections):
        yield section, meaning, [way for each in alternatives(right) for way in spellings(each)]


def patterns(
    file: str, sections: Collection[str], opening: Collection[str] = ()
) -> dict[str, re.Pattern[str]]:
    """Section → what finds any of its ways as whole words, the longest first.

    Parameters
    ----------
    file : str
        Its name; every entry is a language with its ways.
    sections : collection of str
        All that it has.
    opening : collection of str
        Those whose ways count only where a text begins with them.

    Raises
    ------
    ValueError
        As `entries`.
    """
    ways: dict[str, list[str]] = {section: [] for section in sections}
    for section, _language, found in spelt(file, ways):
        ways[section] += found
    return {
        section: re.compile(
            (r"^\W*" if section in opening else r"(?<!\w)")
            + rf"(?:{'|'.join(map(re.escape, sorted(found, key=len, reverse=True)))})(?!\w)"
        )
        for section, found in ways.items()
    }
