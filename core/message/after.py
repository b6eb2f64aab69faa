"""What is asked after an answer, in whole sentences: does it harm them, why so slow, is it gone.

None of it says alone what "it" is: the chat looks at what it answered last.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import Final, Literal, cast, get_args

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.message.waters import mentioned
from core.message.wordfile import spelt

Meaning = Literal[
    "harm",
    "hurts",
    "well",
    "whom",
    "add_part",
    "crash",
    "fill",
    "why_slow",
    "why_salt",
    "gone",
    "too_late",
    "hydrate",
    "anhydrous",
    "acid",
    "iodine",
    "use_salt",
]
"""Whether it is dangerous for animals, hurts them, or is well for them; for whom what was spoken of
is asked; may the next part go in; may pH crash; may it be filled with a water; why so slowly, why
not another salt; is the poison gone, is it too late for help; which form of a salt it is; vinegar
and the like; table salt with iodine; may it be table salt."""

_EDGES: Final = " \t\n¿?¡!.,;:"
_LEAD: Final = re.compile(
    r"(?:ok|okay|and|so|but|then|oh|und|aber|also|et|mais|y|e|pero|ma|en|maar|a|i|och|men)[\s,]+"
    r"(?=\S)"
)
_MOST: Final = 5
"""Words that "*" may stand for."""

Way = tuple[Meaning, tuple[str, ...], frozenset[str] | None]
"""A meaning, the words, classes and stars that say it, and with which words it may end; None where
that may be any."""


@dataclass(frozen=True, slots=True)
class Asked:
    """A meaning, and the words that stood in the open place of its sentence."""

    meaning: Meaning
    rest: str | None = None


@cache
def _words() -> tuple[dict[str, set[str]], dict[str, list[Way]]]:
    """The classes, and by its first word each way to ask something.

    Raises
    ------
    ValueError
        If a line has no ``=``, or an id that is no `Meaning`.
    """
    classes: dict[str, set[str]] = {}
    found: dict[str, list[Way]] = {}
    for section, meaning, told in spelt("after.txt", {"class", "after"}):
        if section == "class":
            classes[meaning] = {" ".join(_cut(way)) for way in told}
        elif meaning not in get_args(Meaning):
            raise ValueError(f"after.txt: {meaning}")
        else:
            for way in sorted(set(told)):
                items = tuple(_cut(way))
                ends = None if items[-1] == "*" else frozenset(_edge(items[-1], classes, -1))
                for word in _edge(items[0], classes, 0):
                    found.setdefault(word, []).append((cast("Meaning", meaning), items, ends))
    return classes, found


def _cut(plain: str) -> list[str]:
    """The words of a plain text, a French article apart from its word."""
    return plain.replace("l'", "l' ").split()


def _edge(item: str, classes: dict[str, set[str]], place: Literal[0, -1]) -> set[str]:
    """With which words a way may begin (place 0) or end (-1) that has an item there."""
    if item[0] != "{":
        return {item}
    named = item.strip("{}")
    ways = classes[named] | (classes["article"] if named == "it" and place == 0 else set())
    return {way.split()[place] for way in ways}


@cache
def _begins(named: str) -> set[str]:
    """With which words a class may begin."""
    return _edge(f"{{{named}}}", _words()[0], 0)


def _rest(way: tuple[str, ...], said: list[str], rest: str = "") -> str | None:
    """What stands for the star of a way that a text goes; "" without one, None where it does not.

    Patterns of it would take half a second to make.
    """
    if not way:
        return None if said else rest
    item = way[0]
    if item == "*":
        ends = range(1, min(_MOST, len(said)) + 1)
        found = (_rest(way[1:], said[end:], " ".join(said[:end])) for end in ends)
        return next((each for each in found if each is not None), None)
    if item[0] != "{":
        return _rest(way[1:], said[1:], rest) if said[:1] == [item] else None
    named = item.strip("{}")
    for end in _ends(named, said):
        if (found_rest := _rest(way[1:], said[end:], rest)) is not None:
            return found_rest
    return None


def _ends(named: str, said: list[str]) -> list[int]:
    """After how many words a text has said a class; before "it" an article may stand."""
    ways = _words()[0][named]
    if not said or said[0] not in _begins(named):
        return []
    ends = [end for end in range(1, min(_MOST, len(said)) + 1) if " ".join(said[:end]) in ways]
    if named == "it" and said[:1] and said[0] in _words()[0]["article"]:
        ends += [1 + end for end in range(1, _MOST) if " ".join(said[1 : 1 + end]) in ways]
    return ends


def asked(text: str) -> Asked | None:
    """What a text asks of the answer before it; None where it is none of that, or says more.

    Examples
    --------
    >>> asked("Is it dangerous for the shrimps?")
    Asked(meaning='harm', rest='the shrimps')
    >>> asked("ist das Natron gut für die Garnelen").meaning
    'well'
    >>> asked("can i add 3 shrimps") is None
    True
    """
    plain = " ".join(fold(text).strip(_EDGES).replace(",", " ").split())
    lead = _LEAD.match(plain)
    for said in dict.fromkeys([plain, plain[lead.end() :] if lead else plain]):
        for text_ in dict.fromkeys([said, _with_it(said)]):
            words = _cut(text_)
            for first in (*words[:1], "*"):
                for meaning, way, ends in _words()[1].get(first, ()):
                    may_end = ends is None or not ends.isdisjoint(words[-1:])
                    if may_end and (rest := _rest(way, words)) is not None:
                        return Asked(meaning, rest or None)
    return None


def means_them(said: str) -> bool:
    """Whether words only point at the animals: them, ihnen, loro."""
    return fold(said) in _words()[0]["them"]


def is_of_harm(text: str) -> bool:
    """Whether a question asks if something is bad, so that a yes would mean the opposite of safe.

    Examples
    --------
    >>> is_of_harm("is kh 8 dangerous for shrimps"), is_of_harm("is kh 8 safe for shrimps")
    (True, False)
    """
    return not _words()[0]["harmful"].isdisjoint(re.findall(r"[^\W\d_]+", fold(text)))


def water_alone(said: str) -> str | None:
    """The kind of the water that words name and say nothing else of; else None.

    Examples
    --------
    >>> water_alone("my tap"), water_alone("untreated tap")
    ('tap', None)
    """
    found = mentioned(said)
    if len(found) != 1:
        return None
    start, end, kind = found[0]
    beside = {*said[:start].split(), *said[end:].split()}
    light = _words()[0]["article"] | {"wody", "z", "de", "du", "del", "eau", "agua", "acqua"}
    return kind if beside <= light else None


def _with_it(text: str) -> str:
    """The text with every substance's name as a pronoun."""
    rest = text
    for token in reversed([t for t in cut(text, lexicon(), text) if t.kind == "substance"]):
        rest = f"{rest[: token.start]}it{rest[token.end :]}"
    return rest
