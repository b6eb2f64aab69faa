"""The words of danger, read once from ``core/message/words/danger/``, one file a language.

line    = id "=" part { ("+" | ">") part } [ "!" part ]
part    = alternative { "," alternative }
alternative = word [ "*" ] { word [ "*" ] } | "$" group

``+`` joins parts that stand anywhere in a message; before ``>`` stands what is said within a few
words before the next, in one sentence. Behind ``!`` stands what must not be said. ``*`` ends a
stem. Under ``[group]`` stand names for words that many lines need; a group of one name has the
words of all languages. Under ``[danger]`` are calls for help, under ``[whole]`` messages of nothing
else, under ``[distress]`` what is a call for help only in a message that nobody understood, under
``[refuse]`` and ``[caution]`` the rows of the cautions that a message touches, under ``[asked]``
what of both only a question touches, under ``[deed]`` what was dosed or filled in, under
``[label]`` what a bought product may not be.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from importlib.resources import files
from typing import Final

from core.message.fold import fold
from core.message.i_will import spelt_out
from core.message.lexicon import lexicon
from core.message.wordfile import alternatives, entries, spellings

LANGUAGES: Final = ("en", "de", "fr", "es", "pt", "it", "nl", "pl", "sv")
SECTIONS: Final = frozenset(
    {"group", "danger", "whole", "distress", "refuse", "caution", "asked", "deed", "label"}
)
NEAR: Final = 7
"""Words after one part of a line within which the next begins, where ``>`` joins them."""

READ: Final = 1500
"""Characters of a message that are looked at: beyond it is no cry for help."""

TYPED: Final = 7
"""Letters from which on a word with one slip is read as meant: a letter too many or too few, two
swapped, a wrong vowel. A wrong consonant is no slip here: chloride is not chlorine."""

_LEAST_STEM: Final = 2
_LETTERS: Final = "abcdefghijklmnopqrstuvwxyz"
_VOWELS: Final = "aeiouy"
_APART: Final = 50
"""Places that a full stop counts for, so that no ``>`` reaches over it."""
_WORD: Final = re.compile(r"[^\W_]+|[.!?;\n]+")

Phrase = tuple[str, ...]
Spans = list[tuple[int, int]]


@dataclass(frozen=True, slots=True)
class Rule:
    """One line: its section and id, its parts with what joins each to the one before, and not."""

    section: str
    id: str
    parts: tuple[frozenset[Phrase], ...]
    joints: tuple[str, ...]
    never: frozenset[Phrase]

    @property
    def key(self) -> frozenset[Phrase]:
        """The part of the fewest phrases: without it the rule need not be looked at."""
        return min(self.parts, key=len)


@dataclass(slots=True)
class Alarms:
    """All rules; the first words of all phrases → the phrases; a rule's key → the rule."""

    rules: list[Rule] = field(default_factory=list)
    words: dict[str, list[Phrase]] = field(default_factory=dict)
    stems: dict[str, list[Phrase]] = field(default_factory=dict)
    by_key: dict[Phrase, list[Rule]] = field(default_factory=dict)
    known: set[str] = field(default_factory=set)
    """Every word of the phrases that is no stem."""
    groups: Groups | None = None

    def found(self, text: str) -> dict[str, set[str]]:
        """The ids that a message names, by section."""
        places = [(self._meant(word), place) for word, place in _places(text)]
        spans = self._spans(places)
        out: dict[str, set[str]] = {}
        for phrase in spans:
            whole = len(phrase) == len(places)
            for rule in self.by_key.get(phrase, ()):
                said = out.setdefault(rule.section, set())
                if rule.id not in said and (whole or rule.section != "whole"):
                    said |= {rule.id} if _holds(rule, spans) else set()
        return {section: ids for section, ids in out.items() if ids}

    def _spans(self, places: Sequence[tuple[str, int]]) -> dict[Phrase, Spans]:
        spans: dict[Phrase, Spans] = {}
        for index, (word, place) in enumerate(places):
            for phrase in self._beginning(word):
                following = places[index : index + len(phrase)]
                if (
                    len(following) == len(phrase)
                    and all(
                        _is(word, wanted)
                        for (word, _), wanted in zip(following, phrase, strict=True)
                    )
                    and following[-1][1] == place + len(phrase) - 1
                ):
                    spans.setdefault(phrase, []).append((place, following[-1][1]))
        return spans

    def _meant(self, word: str) -> str:
        """The word of danger that a word is a slip of; the word itself where it is one, or none."""
        if len(word) < TYPED - 1 or word in self.known or word in lexicon().words:
            return word
        if not word.isalpha() or any(word[:size] in self.stems for size in range(2, len(word) + 1)):
            return word
        meant = {slip for slip in _slips(word) if len(slip) >= TYPED and slip in self.known}
        return min(meant, key=lambda slip: (len(slip) != len(word), slip), default=word)

    def _beginning(self, word: str) -> Iterator[Phrase]:
        yield from self.words.get(word, ())
        for size in range(_LEAST_STEM, len(word) + 1):
            yield from self.stems.get(word[:size], ())


def _places(text: str) -> list[tuple[str, int]]:
    """The plain words of a text, each with its place."""
    out, place = [], 0
    for match in _WORD.finditer(spelt_out(fold(text[:READ]))):
        if match[0][0] in ".!?;\n":
            place += _APART
            continue
        out.append((match[0], place))
        place += 1
    return out


def _slips(word: str) -> Iterator[str]:
    """All that one slip makes of a word; its first letter stays."""
    for place in range(1, len(word) + 1):
        head, tail = word[:place], word[place:]
        if tail:
            yield head + tail[1:]
            if tail[0] in _VOWELS:
                yield from (head + vowel + tail[1:] for vowel in _VOWELS)
        if len(tail) > 1:
            yield head + tail[1] + tail[0] + tail[2:]
        for letter in _LETTERS:
            yield head + letter + tail


def _is(word: str, wanted: str) -> bool:
    return word.startswith(wanted[:-1]) if wanted.endswith("*") else word == wanted


def _holds(rule: Rule, spans: Mapping[Phrase, Spans]) -> bool:
    if not rule.never.isdisjoint(spans):
        return False
    reached: Spans = []
    for joint, part in zip(rule.joints, rule.parts, strict=True):
        here = [span for phrase in spans if phrase in part for span in spans[phrase]]
        if joint == ">":
            here = [
                (start, end)
                for start, end in here
                if any(0 < start - before <= NEAR for _, before in reached)
            ]
        if not here:
            return False
        reached = here
    return True


def read(text: str, language: str) -> tuple[dict[str, list[str]], list[tuple[str, str, str]]]:
    """The groups of one file, and its lines as (section, id, right side).

    Raises
    ------
    ValueError
        If a line belongs to no known section or has no ``=``; the line is named.
    """
    groups: dict[str, list[str]] = {}
    lines: list[tuple[str, str, str]] = []
    for section, name, right in entries(text, f"danger/{language}.txt", SECTIONS):
        if section == "group":
            groups.setdefault(name, []).extend(alternatives(right))
        else:
            lines.append((section, name, right))
    return groups, lines


class Groups:
    """The groups of all files by name, each read into phrases once."""

    def __init__(self, words: Mapping[str, Sequence[str]]) -> None:
        self._words = words
        self._read: dict[str, frozenset[Phrase]] = {}

    def phrases(self, name: str) -> frozenset[Phrase]:
        """All ways to say a group.

        Raises
        ------
        KeyError
            If no file has it.
        """
        if name not in self._read:
            self._read[name] = _phrases(self._words[name], self)
        return self._read[name]


def _phrases(alternatives: Sequence[str], groups: Groups) -> frozenset[Phrase]:
    out: set[Phrase] = set()
    for said in alternatives:
        if said.startswith("$"):
            out |= groups.phrases(said[1:])
            continue
        stems = _stems(said)
        for plain in spellings(said.replace("*", "")):
            words = _WORD.findall(plain)
            out.add(tuple(word + "*" * (place in stems) for place, word in enumerate(words)))
    return frozenset(out)


def _stems(said: str) -> frozenset[int]:
    """Places of the words of an alternative that are stems."""
    if "*" not in said:
        return frozenset()
    starred = re.findall(r"[^\W_]+\*?", fold(said))
    return frozenset(place for place, word in enumerate(starred) if word.endswith("*"))


def rule(section: str, name: str, right: str, groups: Groups) -> Rule:
    """One line as a rule.

    Raises
    ------
    KeyError
        If a group is named that no file has.
    """
    said, _, never = right.partition("!")
    pieces = re.split(r"([+>])", said)
    return Rule(
        section,
        name,
        tuple(_phrases(alternatives(piece), groups) for piece in pieces[::2]),
        ("+", *pieces[1::2]),
        _phrases(alternatives(never), groups),
    )


def build(sources: Mapping[str, str]) -> Alarms:
    """The alarms of all files, by language."""
    groups: dict[str, list[str]] = {}
    lines: list[tuple[str, str, str]] = []
    for language, text in sources.items():
        own, more = read(text, language)
        for name, words in own.items():
            groups.setdefault(name, []).extend(words)
        lines += more
    read_groups = Groups(groups)
    alarms = Alarms(groups=read_groups)
    known: set[Phrase] = set()
    for line in lines:
        made = rule(*line, read_groups)
        alarms.rules.append(made)
        for phrase in made.key:
            alarms.by_key.setdefault(phrase, []).append(made)
        known.update(*made.parts, made.never)
    alarms.known = {word for phrase in known for word in phrase if not word.endswith("*")}
    for phrase in sorted(known):
        first = phrase[0]
        if first.endswith("*"):
            alarms.stems.setdefault(first[:-1], []).append(phrase)
        else:
            alarms.words.setdefault(first, []).append(phrase)
    return alarms


@lru_cache(maxsize=1)
def alarms() -> Alarms:
    """The alarms of all languages, made at the first call."""
    folder = files("core.message") / "words" / "danger"
    return build({each: (folder / f"{each}.txt").read_text(encoding="utf-8") for each in LANGUAGES})


@lru_cache(maxsize=64)
def named(text: str) -> Mapping[str, frozenset[str]]:
    """The ids that a message names, by section; the same message is asked of several times."""
    return {section: frozenset(ids) for section, ids in alarms().found(text).items()}


def group(name: str) -> frozenset[Phrase]:
    """All ways to say a group, in all languages.

    Raises
    ------
    KeyError
        If no file has it.
    """
    groups = alarms().groups
    return frozenset() if groups is None else groups.phrases(name)
