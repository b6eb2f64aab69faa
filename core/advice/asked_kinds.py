"""What a message asks of animals beside keeping: how many are on record, where, what a kind needs.

`how many neons do i have`, `where is my betta`, `what water do discus need`, `how big do plecos
grow`. Read only where every word is known: kinds of the table, tanks, and words about animals of
nine languages.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, NamedTuple

from core.advice._livestock_words import plain_name
from core.advice.asked_company import ASKING, BESIDE, WHAT, asks_how_many
from core.advice.inhabitants import LONGEST, NUMBER_TIMES, is_animal, leads
from core.advice.livestock import Found, lookup, name_at
from core.message import herd
from core.message.lexicon import lexicon

About = Literal["record", "needs", "size"]


class Asked(NamedTuple):
    """What is asked of which animals; of none that are named it is asked of all."""

    about: About
    kinds: tuple[tuple[str, Found], ...]
    tank: str | None


def asked_of(text: str, tanks: Sequence[str] = ()) -> Asked | None:
    """What a message asks of animals; None where it is anything else.

    Examples
    --------
    >>> asked = asked_of("how many neons do i have")
    >>> asked.about, [said for said, found in asked.kinds]
    ('record', ['neons'])
    >>> asked_of("what water do discus need").about, asked_of("how big do plecos grow").about
    ('needs', 'size')
    >>> asked_of("how many neons can i keep"), asked_of("my neons need food")
    (None, None)
    """
    if len(text) > LONGEST:
        return None
    words = plain_name(NUMBER_TIMES.sub(r"\1 \2", text)).split()  # j'ai
    what = not WHAT.isdisjoint(words[:2])
    first = _said(words[:1])
    many, where = asks_how_many(text), "where" in first
    asks = what or many or where or "much" in first or ("need" in first and len(words) > 2)
    owns = "own" in first and "?" in text  # habe ich Guppys?
    if not asks and not owns and (not words or words[0] not in ASKING):
        return None
    read = _read(words, {tank: plain_name(tank).split() for tank in tanks})
    if read is None:
        return None
    kinds, any_kind, tank, said = read
    if said & {"fit", "enough"} or not (kinds or any_kind):
        return None
    if kinds and "big" in said:
        return Asked("size", kinds, tank)
    if kinds and "need" in said:
        return Asked("needs", kinds, tank)
    # which tank has the betta, which fish are in fern
    asks_have = "have" in said and (many or (what and bool(kinds or tank)))
    asks_have = asks_have or ("own" in said and len(kinds) == 1 and not what)  # do i have snails
    return Asked("record", kinds, tank) if where or asks_have else None


def _said(words: Sequence[str]) -> set[str]:
    return {each for word in words for each in herd.asking(word)}


def _read(
    words: Sequence[str], tanks: dict[str, list[str]]
) -> tuple[tuple[tuple[str, Found], ...], bool, str | None, set[str]] | None:
    """The kinds, whether any animals, the tank and what else is said; None with a strange word."""
    kinds: list[tuple[str, Found]] = []
    any_kind, tank = False, None
    said: set[str] = set()
    beside: list[str] = []
    place = 0
    while place < len(words):
        word = words[place]
        here = next((t for t, name in tanks.items() if words[place:][: len(name)] == name), None)
        size, found = name_at(words, place)
        shared = lookup(word) if not size and len(word) > 3 else found
        if size and (is_animal(found) or here is None):
            kinds.append((" ".join([*beside, *words[place : place + size]]), found))
            beside = []
        elif here is not None:
            tank, size = here, len(tanks[here])
        elif herd.saying(word) in herd.OF_A_KIND:
            beside.append(word)  # male guppies
        elif herd.saying(word) == "any":
            any_kind = True
        elif told := herd.asking(word):
            said |= told
        elif not _is_plain(word):
            if not (shared.shared and is_animal(shared)):
                return None
            kinds.append((word, shared))
        place += size or 1
    return tuple(kinds), any_kind, tank, said


def _is_plain(word: str) -> bool:
    """Whether a word has no weight here; names of what is measured have none either."""
    if word in ASKING or word in BESIDE or word in WHAT or leads(word):
        return True
    entry = lexicon().words.get(word)
    return entry is not None and entry[0] in {"analyte", "ask"}
