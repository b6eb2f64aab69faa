"""The words of nine languages, read once from the files in ``words/``.

A file has sections ``[analyte]``, ``[element]`` (analytes that are kept without advice),
``[unit]``, ``[substance]``, ``[event]``, ``[time]``, ``[clock]`` (patterns of spoken hours, see
`clockwords`), ``[mark]``, ``[count]``, ``[numeral]`` (how words of numbers join, see `compounds`
and `numerals`), ``[animal]`` (see `herd`), ``[ask]``, ``[command]`` and ``[fill]``; a line
``id = word, two words, ...`` lists the ways to say one meaning; ``(is|seems) (now|) low`` stands
for four of them. ``#`` starts a comment. Words are matched without case and accents; ä, ö, ü, å, ø
may also be typed ae, oe, ue, aa, oe. A translator needs no code for it.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from functools import lru_cache
from importlib.resources import files

from core.message.compounds import ROLES, expand
from core.message.fold import fold
from core.message.wordfile import alternatives, entries, spellings

LANGUAGES = ("common", "en", "de", "fr", "es", "pt", "it", "nl", "pl", "sv")

CATEGORIES = frozenset(
    "analyte unit substance event time mark count ask command fill".split()  # noqa: SIM905
)
SECTIONS = {category: category for category in CATEGORIES} | {
    "element": "analyte",
    "clock": "clock",
    "numeral": "numeral",
    "animal": "animal",
    "about": "about",
}
"""Sections of a file → category; the elements are analytes that are kept without advice.

Those of clock and numeral are no words with a meaning, but patterns of which words may stand; those
of animal and about have theirs only beside an animal (see `herd`), and may have another elsewhere.
"""
Entry = tuple[str, str]
"""(category, id)."""

_PIECE = re.compile(r"[^\W_]+|[^\w\s]")
_SPACED = re.compile(r"(?:^| )[^\w\s] ")


@dataclass(slots=True, eq=False)
class Lexicon:
    """All words by their plain form.

    Attributes
    ----------
    words : dict
        Plain word → (category, id). Where languages disagree the category is ``several`` and the
        id a key of `several`.
    phrases : dict
        First two words of a phrase → all words behind the first, the longest first, with its
        entry and whether its signs must touch the words.
    openers : set
        First words of phrases.
    several : dict
        Word → (language, entry) for words that mean different things.
    languages : dict
        Word → the languages that have it, as evidence for the others.
    written : dict
        (word, spelling with accents) → the one language and meaning that is written so, for words
        of `several`.
    numerals : dict
        How words of numbers stand together (`compounds.ROLES`) → the words that do.
    clocks : list
        (id, pieces, language) of every pattern of a spoken hour.
    herd : dict
        Word → what it says of animals beside it: male, female, young, pair, all, bore.
    about : dict
        Word → what it asks or tells of animals in a message that names nothing else.
    newborn : dict
        Language → its first word for young animals, as written.
    """

    words: dict[str, Entry] = field(default_factory=dict)
    phrases: dict[tuple[str, str], list[tuple[tuple[str, ...], Entry, bool]]] = field(
        default_factory=dict
    )
    openers: set[str] = field(default_factory=set)
    several: dict[str, tuple[tuple[str, Entry], ...]] = field(default_factory=dict)
    languages: dict[str, frozenset[str]] = field(default_factory=dict)
    written: dict[tuple[str, str], tuple[str, Entry]] = field(default_factory=dict)
    numerals: dict[str, frozenset[str]] = field(default_factory=dict)
    clocks: list[tuple[str, tuple[str, ...], str]] = field(default_factory=list)
    herd: dict[str, str] = field(default_factory=dict)
    about: dict[str, set[str]] = field(default_factory=dict)
    newborn: dict[str, str] = field(default_factory=dict)


def read(text: str, language: str) -> list[tuple[str, str, str, str]]:
    """The lines of one file as (category, id, word as written, language).

    Raises
    ------
    ValueError
        If a line belongs to no known section or has no ``=``; the line is named.
    """
    return [
        (SECTIONS[section], meaning, word, language)
        for section, meaning, right in entries(text, f"{language}.txt", SECTIONS)
        for word in alternatives(right)
    ]


def pieces(phrase: str) -> tuple[str, ...]:
    """A plain phrase cut as the tokeniser cuts text."""
    return tuple(_PIECE.findall(phrase))


def _pattern(phrase: str) -> tuple[str, ...]:
    """The pieces of a pattern of the clock, its {hour} and {minute} whole."""
    found: list[str] = []
    for word in phrase.split():
        found += [word] if word[0] == "{" else pieces(word)
    return tuple(found)


def build(rows: list[tuple[str, str, str, str]]) -> Lexicon:
    """A lexicon of the rows; a word with two meanings is kept as both."""
    clocks = [row for row in rows if row[0] == "clock"]
    beside = [row for row in rows if row[0] in {"animal", "about"}]
    rows = [row for row in rows if row[0] not in {"clock", "animal", "about"}]
    roles = [row for row in rows if row[0] == "numeral"]
    rows = expand(rows)
    meanings: dict[tuple[str, ...], dict[str, Entry]] = {}
    for category, meaning, word, language in rows:
        for plain in spellings(word):
            meanings.setdefault(pieces(plain), {})[language] = (category, meaning)
    spaced = {pieces(fold(word)) for _, _, word, _ in rows if _SPACED.search(word)}
    lexicon = Lexicon()
    lexicon.clocks = [
        (name, found, language)
        for _, name, phrase, language in clocks
        for found in {_pattern(plain) for plain in spellings(phrase)}
    ]
    for category, meaning, word, language in beside:
        if category == "about":
            for plain in spellings(word):
                lexicon.about.setdefault(plain, set()).add(meaning)
            continue
        lexicon.herd |= dict.fromkeys(spellings(word), meaning)
        if meaning == "young":
            lexicon.newborn.setdefault(language, word)
    for role in ROLES:
        lexicon.numerals[role] = frozenset(
            " ".join(pieces(fold(word))) for _, name, word, _ in roles if name == role
        )
    for key, by_language in meanings.items():
        _add(lexicon, key, by_language, loose=key in spaced)
    _written(lexicon, rows)
    for continuations in lexicon.phrases.values():
        continuations.sort(key=lambda item: -len(item[0]))
    return lexicon


def _add(
    lexicon: Lexicon, key: tuple[str, ...], by_language: dict[str, Entry], *, loose: bool
) -> None:
    distinct = set(by_language.values())
    name = " ".join(key)
    if len(distinct) == 1:
        entry = distinct.pop()
    else:
        lexicon.several[name] = tuple(sorted(by_language.items()))
        entry = ("several", name)
    lexicon.languages[name] = frozenset(by_language)
    if "·" in key and key[-1].endswith("h2o"):
        lexicon.words["".join(key)] = entry  # a formula with its water is one token
    elif len(key) == 1 or not any(piece.isalnum() for piece in key):
        lexicon.words["".join(key)] = entry
    else:
        lexicon.openers.add(key[0])
        lexicon.phrases.setdefault((key[0], key[1]), []).append((key[1:], entry, not loose))


def _written(lexicon: Lexicon, rows: list[tuple[str, str, str, str]]) -> None:
    """Which accented spellings of a word with several meanings belong to one of them."""
    found: dict[tuple[str, str], set[tuple[str, Entry]]] = {}
    for category, meaning, word, language in rows:
        if not word.isascii():
            name = " ".join(pieces(fold(word)))
            if name in lexicon.several:
                key = (name, word.lower())
                found.setdefault(key, set()).add((language, (category, meaning)))
    for key, meanings in found.items():
        if len({entry for _, entry in meanings}) == 1:
            lexicon.written[key] = min(meanings)


@lru_cache(maxsize=1)
def lexicon() -> Lexicon:
    """The lexicon of all files, made at the first call."""
    rows = []
    folder = files("core.message") / "words"
    for language in LANGUAGES:
        source = folder / f"{language}.txt"
        rows += read(source.read_text(encoding="utf-8"), language)
    return build(rows)


def meanings(word: str) -> tuple[Entry, ...]:
    """All that a word means in any language, as category and meaning."""
    held = lexicon()
    entry = held.words.get(word)
    if entry is None:
        return ()
    if entry[0] == "several":
        return tuple(meaning for _language, meaning in held.several[entry[1]])
    return (entry,)
