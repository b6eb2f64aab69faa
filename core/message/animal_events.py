"""What events of animals have of their own: sexes, births, all of a kind, whom somebody got.

`added 1 male and 3 female guppies`, `20 baby guppies born`, `gave 2 guppies to a friend`.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from core.message import doubts, herd, kinds
from core.message.animal_words import WAY, tells
from core.message.event_parts import Found, Parts, source_words
from core.message.fold import fold
from core.message.model import Doubt
from core.message.tokens import Token

KEPT_AS: Final = {
    "given": "moved_out",
    "missing": "lost",
    "born": "added",
    "arrived": "added",
}
"""What is kept of births, of animals that were given away and of those that nobody finds."""

ALL: Final = "all"
"""The text of an event of all animals of a kind, until their number is found on record."""

ALL_BUT: Final = "all but"
"""The text of a loss of which `count` are left, until the number on record is found."""

HALF: Final = "half"
"""The text of a loss of half of a kind, likewise."""

SOME: Final = "some"
"""The text of animals that are gone, one or many, until their number is found or asked."""


_SETS: Final = {"pair": 2, "trio": 3}
"""How many animals are in one of a set."""


def next_group(tokens: list[Token], place: int) -> int | None:
    """Where more counted animals begin, at a place or behind a word that joins them to it."""
    joint = tokens[place] if place < len(tokens) else None
    joined = joint is not None and (joint.value == "and" or joint.text in {",", "+", "&", "("})
    first = place + 1 if joined else place
    if first + 1 >= len(tokens) or not kinds.counts(tokens[first]):
        return None
    animal = tokens[first + 1]
    inside = joint is not None and joint.text == "("
    named = joined and not inside and (animal.kind == "word" or animal.value == "new")
    return first if named or tells(animal) else None


def uncounted(tokens: list[Token], place: int, source: str) -> Found | None:
    """Animals without a number behind counted ones, which are asked about: 2 chromis | and zoas."""
    if place >= len(tokens) or not (tokens[place].value == "and" or tokens[place].text in _PLUS):
        return None
    first = place + 1
    while first < len(tokens) and tokens[first].value == "some":
        first += 1
    last = first
    while last < len(tokens) and tokens[last].kind == "word":
        last += 1
    if first == last or not kinds.is_kind(source_words(tokens[first:last], source)):
        return None
    if last < len(tokens) and tokens[last].kind not in {"p", "nl", "fill", "time", "tank"}:
        return None
    start, end = tokens[first].start, tokens[last - 1].end
    doubt = Doubt(source[start:end], start, end, doubts.NO_NUMBER)
    return Found(place, last, doubt=doubt)


_PLUS = frozenset({",", "+", "&"})


def groups_before(tokens: list[Token], floor: int, first: int) -> list[tuple[int, int]]:
    """Counted animals joined to those before an event: `1 male and` 3 female guppies sold.

    Each as its first token and the one behind it, in order.
    """
    out: list[tuple[int, int]] = []
    last = first - 1
    while last > floor and (tokens[last].value == "and" or tokens[last].text in {"+", "&", ","}):
        place = last
        while place > floor and (tokens[place - 1].kind == "word" or tells(tokens[place - 1])):
            place -= 1
        if place in {last, floor} or not kinds.counts(tokens[place - 1]):
            break
        out.insert(0, (place - 1, last))
        last = place - 2
    return out


def take(tokens: list[Token], place: int, parts: Parts) -> bool:
    """Take a word that only events of animals have; False where it is none."""
    token = tokens[place]
    said = herd.saying(token.text)
    if tells(token):
        parts.unknown.append(token)
    elif said == "all" and parts.kind not in {"added", "arrived"}:
        parts.all = True
    elif said == "both" and parts.bare is None:
        parts.count, parts.before = 2, len(parts.unknown)
    elif parts.kind == "lost" and said == "except":
        parts.spared, parts.before = len(parts.unknown), 0
    elif parts.kind == "lost" and token.value == "half":
        parts.half = True
    elif said in _SETS and token.kind == "word" and not parts.unknown and place + 1 < len(tokens):
        parts.each = _SETS[said]
    elif said == "group" and not parts.unknown and parts.bare is None:
        parts.count, parts.grouped = None, True  # a school of 12 neons
    elif said == "further":
        pass  # 2 more neons
    elif said == "another" and parts.bare is None:
        parts.count, parts.before = 1, len(parts.unknown)
    elif parts.kind in {"moved", "given"} and token.kind == "mark" and token.value in WAY:
        parts.whither = True
    elif not (parts.kind == "given" and parts.whither and token.kind in {"word", "several"}):
        return False
    return True


def counted(parts: Parts) -> bool:
    """Whether a number of animals was told, or all of them."""
    return parts.bare is not None or parts.count is not None or parts.all


def untold(parts: Parts, count: int | None) -> str | None:
    """The text of an event whose number stands on record: all, all but a few, half, some."""
    if parts.kind == "lost" and parts.spared is not None:
        return ALL_BUT
    if parts.kind == "lost" and parts.half and count is None:
        return HALF
    if parts.kind == "missing" and count is None and not parts.all:
        return SOME  # the guppies are gone
    return ALL if parts.all and count is None else None


def of_them(told: list[Found], bracketed: bool) -> list[Found]:
    """Animals counted first in all and then by sex: `4 guppies (1 male)`, `4: 1 male, 3 females`.

    In brackets some of them may be told of, else the numbers must come to the same.
    """
    first, *rest = told
    parts = [found.event.count or 0 for found in rest if found.event and found.event.species]
    if first.event is None or not first.event.count or not rest or len(parts) < len(rest):
        return told
    alone = (not _without_herd(str(found.event and found.event.species)) for found in rest)
    others = first.event.count - sum(parts)
    if not all(alone) or others < 0 or (others and not bracketed):
        return told
    share_kinds(told)
    if others:
        first.event = replace(first.event, count=others)
        return told
    rest[0].first = first.first
    return rest


def of_so_many(before: list[Found], dead: Found) -> bool:
    """Whether those before the dead are the whole that they were of: `10 tetras, 3 died`.

    The dead name no kind, or one of those again; where they can be of one kind only, it is theirs.
    """
    told = [found.event.species for found in before if found.event and found.event.species]
    if not told or dead.event is None:
        return False
    named = None if dead.event.species in _OF else dead.event.species  # 2 davon sind tot
    if named is None:
        dead.event = replace(dead.event, species=told[0] if len(told) == 1 else None)
    return named is None or named in told


def the_dead(before: list[Token]) -> list[Token]:
    """Without those whom the dead are of: `6 guppies` 2 died, `8 guppies but` two of them dead."""
    counts = [n for n, token in enumerate(before) if kinds.counts(token)]
    bare = [n for n in counts if not any(_names(token) for token in before[n + 1 :])]
    return before[bare[0] :] if bare and counts[0] < bare[0] else before


def _names(token: Token) -> bool:
    """Whether a word beside a number may say who is counted."""
    return (token.kind == "word" and token.text not in _OF) or herd.saying(
        token.text
    ) in herd.OF_A_KIND | _OTHERS


_OTHERS: Final = frozenset({"all", "both", "further", "another"})
_OF: Final = frozenset({"of", "von", "davon", "de", "av", "z", "van", "daarvan", "di"})


def share_kinds(told: list[Found]) -> None:
    """Give animals of which only the sex or age was told the kind that is named beside them."""
    said = [found.event.species for found in told if found.event and found.event.species]
    if not 1 < len(said) == len(told):
        return
    named = list(map(_without_herd, said))
    for place, found in enumerate(told):
        if named[place] or found.event is None:
            continue
        order = (*range(place, len(told)), *range(place)[::-1])
        donor = next((n for n in order if named[n]), None)
        if donor is not None:
            own, kind = said[place], named[donor]
            leads = said[donor] != kind and not said[donor].startswith(kind)
            whole = f"{own} {kind}" if leads else f"{kind} ({own})"
            found.event = replace(found.event, species=whole)


def _without_herd(said: str) -> str:
    """The name of animals without the words for sex and age."""
    return " ".join(w for w in said.split() if herd.saying(fold(w)) not in herd.OF_A_KIND)
