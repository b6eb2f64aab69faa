"""Animals told as a list, without a word for coming or going: `10 neons, 6 cherry shrimp`.

Such a list may be what lives in a tank or what a shop sells, so it is only ever asked about. It is
one where nothing else is said: numbers, kinds that the table knows, a tank, and words that
lead to a list (my, fish, in, we have) in nine languages.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise
from typing import Final, NamedTuple

from core.advice._livestock_names import NOTHING
from core.advice._livestock_words import Sexes, plain_name, sexed, sexes_in
from core.advice.livestock import Found, is_head, lookup, name_at
from core.message import herd
from core.message.lexicon import meanings

LONGEST: Final = 400
"""A longer text is no list of animals. [characters]"""

MOST: Final = 9_999
"""A larger number counts no animals."""

LEADING: Final = frozenset({"and", "fish", "in", "home", "some", "got", "link", "lives", "water"})
"""Marks that may stand in a list; every fill may."""


FURTHER: Final = frozenset({"further", "another"})
"""What animals are called that come to others: 5 more corys, noch 5 Panzerwelse dazu."""

_TOWARDS: Final = frozenset({("mark", "to"), ("mark", "at_to")})

NUMBER_TIMES: Final = re.compile(r"(\d(?=[x×'’])|\b[^\W\d_](?=['’]))[x×'’](\W|[^\W\d_])")
"""A number and its times sign (6x), an elided word (j'ai): told apart from what follows."""


class Counted(NamedTuple):
    """So many of a kind, in the keeper's words; None where they are some, or nobody says."""

    many: int | None
    said: str
    found: Found


class Listed(NamedTuple):
    """A list of animals and the tank that it names.

    `recount` tells that so many are there now, `further` that they are more than there were.
    """

    kinds: tuple[Counted, ...]
    tank: str | None
    recount: bool = False
    further: bool = False


def listed_in(text: str, tanks: Sequence[str] = (), on_record: Sequence[str] = ()) -> Listed | None:
    """The kinds of a list with their numbers; None where the text is anything else.

    Parameters
    ----------
    text : str
        A message, such as `fern: 10 neon tetras + 6 cherry shrimp`.
    tanks : sequence of str
        The chat's tanks, whose names may stand in it.
    on_record : sequence of str
        Kinds that the chat keeps, of which a part of the name will do: 25 cherries.

    Examples
    --------
    >>> found = listed_in("fern: 10 neon tetras, guppies 3", ["Fern"])
    >>> found.tank, [(each.many, each.said) for each in found.kinds]
    ('Fern', [(10, 'neon tetras'), (3, 'guppies')])
    >>> [(each.many, each.said) for each in listed_in("1 clown and some zoas").kinds]
    [(1, 'clown'), (None, 'zoas')]
    >>> listed_in("the 2 neons look pale"), listed_in("3 neons?"), listed_in("the guppies to 6")
    (None, None, None)
    """
    if len(text) > LONGEST or "?" in text:
        return None
    words = plain_name(NUMBER_TIMES.sub(r"\1 \2", text)).split()
    names = {tank: plain_name(tank).split() for tank in tanks}
    found: list[Counted] = []
    named: str | None = None
    count: int | None = None
    kind: tuple[str, Found] | None = None
    some = sure = False
    place = ended = 0
    while place < len(words):
        tank = next((t for t, name in names.items() if words[place:][: len(name)] == name), None)
        if tank is not None and kind is None and count is None:
            if named not in {None, tank}:
                return None
            named, place = tank, place + len(names[tank])
            continue
        lead = int(herd.saying(words[place]) in herd.OF_A_KIND)  # 3 baby guppies
        size, known = name_at(words, place + lead)
        head = " ".join(words[place + lead : place + lead + 1])
        if not size and not leads(head) and (is_head(head) or _is_part(head, on_record)):
            size, known = 1, lookup(head)  # 5 shrimp
        size += lead if size else 0
        joined = place > 0 and ("mark", "and") in meanings(words[place - 1])
        exact = size > 0 and (some or joined)
        if not size and (count is not None or kind is None):
            size, known = _near(words, place)
        if size and kind is not None:
            return None  # two kinds and no number for the first
        if size:
            kind, sure = (" ".join(words[place : place + size]), known), exact
            ended = place + size
        elif (number := number_in(words[place])) is not None and count is None:
            between = words[ended:place] if kind is not None else []
            if len(between) == 1 and not _TOWARDS.isdisjoint(meanings(between[0])):
                return None  # the guppies to 6: a wish for their water
            if not (_joins(words, place) and kind is None):
                count = number
        elif number is not None and words[place].isdigit():
            return None  # two numbers for one kind
        elif not leads(words[place]):
            return None
        some = some or ("mark", "some") in meanings(words[place])
        if kind is not None and (count is not None or (some and sure)):
            found.append(Counted(count, *kind))
            count, kind, some = None, None, False
        place += size or 1
    if found and kind is not None and sure:  # 2 clowns and zoas
        found.append(Counted(None, *kind))
        kind = None
    tallies = [word for word in words if "tally" in herd.asking(word)]
    whole = count is None and kind is None and any(is_animal(each.found) for each in found)
    whole = whole and any(each.many is not None for each in found)
    further = any(herd.saying(word) in FURTHER and word not in tallies for word in words)
    recount = bool(tallies) and not further
    return Listed(tuple(found), named, recount, further) if whole else None


def _joins(words: Sequence[str], place: int) -> bool:
    """Whether a word that may count one joins a number to what was told: 10 neons en 6 corys."""
    return (
        not words[place].isdigit()
        and leads(words[place])
        and place + 1 < len(words)
        and number_in(words[place + 1]) is not None
    )


def _is_part(word: str, on_record: Sequence[str]) -> bool:
    """Whether a word can mean one of the kinds on record, being a part of their names."""
    found = lookup(word) if len(word) >= NEAR_ENOUGH else NOTHING
    kinds = (lookup(name).species for name in on_record)
    return found.shared and any(kind in found.candidates for kind in kinds)


NEAR_ENOUGH: Final = 5
"""Letters of a name that is sought although it is misspelt."""


def _near(words: Sequence[str], place: int) -> tuple[int, Found]:
    """A misspelt name at a place: how many words it is, and whom it may mean."""
    if len(words[place]) < NEAR_ENOUGH or leads(words[place]) or number_in(words[place]):
        return 0, NOTHING
    for size in (3, 2, 1):
        said = words[place : place + size]
        if len(said) == size and not any(map(number_in, said)):
            found = lookup(" ".join(said))
            if found.candidates and not found.shared:
                return size, found
    return 0, NOTHING


GROUPED: Final = re.compile(r"(?<=\d)[.,'’ ](?=\d{3}(?!\d))")
"""What parts the thousands of a number."""

LONGEST_COUNT: Final = 9
"""Digits of a number that are read; more is as absurd."""

BETWEEN: Final = 3
"""Most words between a number and the kind that it counts: 2 young male bettas."""


def many_of(text: str, said: str) -> int | None:
    """How many of a kind a text tells; None where it does not.

    Examples
    --------
    >>> many_of("can i keep 2 male bettas in 20 l", "bettas"), many_of("a betta?", "betta")
    (2, 1)
    >>> many_of("a pair of kribensis", "kribensis"), many_of("can i keep bettas", "bettas")
    (2, None)
    >>> many_of("can i keep 10,000 neons", "neons")
    10000
    """
    whole = GROUPED.sub("", text[:LONGEST])
    words = plain_name(NUMBER_TIMES.sub(r"\1 \2", whole)).split()
    name = plain_name(said).split()
    places = [at for at in range(len(words)) if words[at : at + len(name)] == name]
    for before in reversed(words[max(0, places[0] - BETWEEN) : places[0]] if places else ()):
        if before.isdecimal() and before.isascii():
            return int(before[:LONGEST_COUNT]) or None
        number = 2 if herd.saying(before) == "pair" else number_in(before)
        if number is not None:
            return number
        if any(kind == "mark" and of in {"and", "in"} for kind, of in meanings(before)):
            return None
    return None


def sexes_of(text: str, many: int | None) -> tuple[int | None, Sexes]:
    """How many of which sex a text tells of so many animals, and how many they are in all.

    Examples
    --------
    >>> sexes_of("can i keep 1 male and 3 female bettas", 3)
    (4, Sexes(male=1, female=3))
    >>> sexes_of("can i keep 2 young male bettas", 2), sexes_of("can i keep bettas", None)
    ((2, Sexes(male=2, female=0)), (None, Sexes(male=0, female=0)))
    """
    words = plain_name(NUMBER_TIMES.sub(r"\1 \2", text[:LONGEST])).split()
    told = {"male": 0, "female": 0}
    for before, word in pairwise(words):
        sex, number = herd.saying(word), number_in(before)
        if sex in told and number is not None:
            told[sex] += number
    sexes = Sexes(told["male"], told["female"])
    if not (sexes.male or sexes.female):
        return many, sexed(many or 1, sexes_in(text))
    return max(many or 0, sexes.male + sexes.female), sexes


def is_animal(found: Found) -> bool:
    """Whether any of the kinds that a name can mean is an animal."""
    rows = (found.species, *found.candidates)
    return any(row is not None and row.is_animal for row in rows)


def number_in(word: str) -> int | None:
    """The number that a word is, in digits or letters."""
    if word.isascii() and word.isdigit():
        value = int(word)
        return value if 0 < value <= MOST else None
    counts = [int(name) for kind, name in meanings(word) if kind == "count" and name.isdigit()]
    if counts:
        return counts[0]
    return 1 if ("time", "one") in meanings(word) else None


def leads(word: str) -> bool:
    """Whether a word may stand in a list of animals without weight."""
    return (
        len(word) == 1
        or not {"tally", "have"}.isdisjoint(herd.asking(word))
        or herd.saying(word) in FURTHER
        or any(
            kind == "fill" or (kind == "mark" and name in LEADING) for kind, name in meanings(word)
        )
    )
