"""So many dead told as the sum of all, not as new ones: `so 3 dead in all`, `thats 3 now`.

total = { light } ( sum | makes | now ) count [ kind ] [ dead ] { light }, in any order

The words are classes of ``dead_total.txt``. Where a message says more, only its clause with the
loss is read. With `more` it tells new ones; of those left it tells nothing of the dead.
"""

from __future__ import annotations

import re
from typing import Final, NamedTuple

from core.message import kinds
from core.message.fold import fold
from core.message.lexicon import meanings
from core.message.model import Event, Parsed
from core.message.word_classes import classes_in, said

FILE: Final = "dead_total.txt"
_SURE: Final = frozenset({"sum", "makes", "stands"})
_SUMS: Final = _SURE | {"now"}
_NONE: Final = frozenset({"more", "none"})
_WORD: Final = re.compile(r"[^\W\d_]+")
_CLAUSE: Final = re.compile(r"[.,;!?\n]")


class DeadTotal(NamedTuple):
    """A number of dead as it was told.

    Attributes
    ----------
    many : int
        All of them, those told before too.
    species : str or None
        Of which kind, as said.
    dead : bool
        Whether the message itself says that they are dead, or only counts.
    sure : bool
        Whether it tells a sum in so many words; `now` alone may tell new ones.
    today : bool
        Whether only those of the day are counted.
    """

    many: int
    species: str | None
    dead: bool
    sure: bool
    today: bool


def read(text: str, parsed: Parsed) -> DeadTotal | None:
    """The sum of the dead that a message tells; None where it tells none, or asks.

    Parameters
    ----------
    text : str
        The message as typed.
    parsed : Parsed
        What was understood of it: a loss in it gives the number and the kind.
    """
    losses = [event for event in parsed.events if event.kind == "lost"]
    if len(losses) > 1 or (losses and not losses[0].count) or (losses and losses[0].text):
        return None
    lost = losses[0] if losses else None
    plain, named = _plain(text)
    told = None if "?" in text or len(named) > 1 else said(FILE, plain)
    if told is None:
        return None if lost is None else _of_clause(text, lost)
    of = frozenset(told.classes)
    count = told.of(None)
    if not of & _SUMS or of & _NONE or len(told.numbers) != 1 or not count or count % 1:
        return None
    if lost is not None and lost.count != count:
        return None
    species = named[0] if named else None
    dead = "dead" in of or lost is not None
    if not dead and "makes" not in of:
        return None  # 6 in total may be those that live
    return DeadTotal(int(count), species, dead, bool(of & _SURE), "today" in of)


def _of_clause(text: str, lost: Event) -> DeadTotal | None:
    """The sum by the clause that tells of a loss, where other words stand beside it."""
    before = [sign.end() for sign in _CLAUSE.finditer(text, 0, lost.start)]
    behind = _CLAUSE.search(text, lost.end)
    clause = text[before[-1] if before else 0 : behind.start() if behind else len(text)]
    of = classes_in(FILE, clause.replace("'", " "))
    if not of & _SUMS or of & _NONE:
        return None
    words = (lost.species or "").split()
    kept = " ".join(word for word in words if not classes_in(FILE, word))
    whole = len(kept.split()) == len(words) or kinds.names_animal(kept)
    species = kept if kept and whole else None  # "total what" is no kind
    return DeadTotal(lost.count or 0, species, True, bool(of & _SURE), "today" in of)


def _plain(text: str) -> tuple[str, list[str]]:
    """A text with digits for numbers in words and without the animals it names, and those."""
    named = kinds.animals_in(text)
    plain = fold(text).replace("'", " ")
    for name in named:
        plain = plain.replace(fold(name), " ")
    return _WORD.sub(lambda word: _digits(word[0]), plain), named


def _digits(word: str) -> str:
    return next((number for kind, number in meanings(word) if kind == "count"), word)


def more_of_them(text: str) -> int | None:
    """So many more, where a text says no more than that; None of other talk.

    Examples
    --------
    >>> more_of_them("2 more this morning"), more_of_them("2 more kh"), more_of_them("3 in all")
    (2, None, None)
    """
    told = said(FILE, text)
    if told is None or not {"number", "more"} <= set(told.classes) <= _MORE or "?" in text:
        return None
    value = told.numbers[0].value
    return int(value) if len(told.numbers) == 1 and value == int(value) > 0 else None


_MORE: Final = frozenset({"number", "more", "light", "dead"})
