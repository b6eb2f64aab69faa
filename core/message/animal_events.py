"""What events of animals have of their own: sexes, births, all of a kind, whom somebody got.

`added 1 male and 3 female guppies`, `20 baby guppies born`, `gave 2 guppies to a friend`.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import Final

from core.message import herd, kinds
from core.message.event_parts import Found, Parts, source_words
from core.message.fold import fold
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

TOWARDS: Final = frozenset({"nach", "naar", "onto", "vers", "into"})
"""Words for the way there that have another meaning, or none, elsewhere."""

WHENCE: Final = frozenset({"aus", "uit", "z", "ze"})
"""Words for where they came from that have another meaning, or none, elsewhere."""

_SETS: Final = {"pair": 2, "trio": 3}
"""How many animals are in one of a set."""

_WAY: Final = frozenset({"to", "at_to", "from", "in", "for"})
"""Marks behind which a place or a person is named, no kind."""


def tells(token: Token) -> bool:
    """Whether a word is kept with a kind's name: male, female, young."""
    return herd.saying(token.text) in herd.OF_A_KIND


def mark(tokens: list[Token]) -> None:
    """Give words their meaning beside animals: `gave 2 guppies` tells, `alle Neons` is no hour."""
    for token, behind in pairwise(tokens):
        every = token.kind == "time" and herd.saying(token.text) == "all"
        if every and behind.kind not in {"number", "count", "clock"}:
            token.kind = token.value = "fill"
    _none_lost(tokens)
    _gave_away(tokens)
    weak = [token for token in tokens if token.kind == "event" and token.value in kinds.WEAK]
    if weak and not _speaks_of_animals(tokens):
        for token in weak:
            # people sell, and bear, other things; of births the young may tell (see gains)
            token.kind, token.value = "word", "born" if token.value == "born" else None
    for index, token in enumerate(tokens[:-2]):
        all_of = herd.saying(tokens[index + 1].text) == "all" and _speaks_of_animals(tokens)
        back = any(t.text in {"away", "back"} for t in tokens[index + 2 :])
        if herd.saying(token.text) == "gave" and (all_of or (back and _speaks_of_animals(tokens))):
            token.kind, token.value = "event", "given"  # gave all the goldfish away
        if herd.saying(token.text) == "gave" and kinds.counts(tokens[index + 1]):
            animal = tokens[index + 2]
            if animal.kind == "word" or tells(animal):
                hunted = any(herd.saying(t.text) == "hunter" for t in tokens[:index])
                token.kind, token.value = "event", "lost" if hunted else "given"


_AWAY: Final = frozenset({"away", "back", "weg", "fort", "bort", "via", "terug", "zurück"})
"""Words that end a verb of giving, which may stand far behind it."""


def _none_lost(tokens: list[Token]) -> None:
    """Take the word of a loss that is denied for one without weight: `none dead`, `no fish died`.

    Nothing but animals may stand between the two, so that "no idea why my neon died" tells a loss.
    """
    for place, token in enumerate(tokens):
        if token.kind != "event" or token.value != "lost":
            continue
        before = place - 1
        while before >= 0 and (_light(tokens[before]) or _is_animal(tokens[before])):
            before -= 1
        behind = tokens[place + 1] if place + 1 < len(tokens) else None
        denied = before if before >= 0 and herd.saying(tokens[before].text) == "none" else None
        if denied is None and behind is not None and herd.saying(behind.text) == "none":
            denied = place + 1  # no murió ninguno
        if denied is not None:
            tokens[denied].kind = token.kind = "fill"
            tokens[denied].value = token.value = "fill"


def _light(token: Token) -> bool:
    return token.kind == "fill" or token.value == "link"


def _is_animal(token: Token) -> bool:
    if herd.saying(token.text) in {"any", "further"}:
        return True
    return token.kind == "word" and kinds.names_animal(token.text)


def _gave_away(tokens: list[Token]) -> None:
    """Hear that a kind was given away though its number is not told: `gave the guppies away`.

    What is given to them, without a word for where they went, is food or a dose.
    """
    for place, token in enumerate(tokens):
        gave = herd.saying(token.text) == "gave"
        dosed = token.value == "dose" and token.text.startswith("gave ")
        if not (gave or dosed):
            continue
        behind = tokens[place + 1 :]
        if not (any(each.text in _AWAY for each in behind) or _to_somebody(behind)):
            continue
        named = next((each for each in behind if each.kind != "fill"), None)
        if gave and named is not None and _is_animal(named):
            token.kind, token.value = "event", "given"
        elif dosed and not any(each.kind in {"unit", "substance"} for each in behind):
            token.kind, token.value = "word", None  # gave them all away


def _to_somebody(tokens: list[Token]) -> bool:
    """Whether a word for the way leads to somebody: to a friend, to my brother, to the shop."""
    return any(
        (way.value in {"to", "at_to"} or way.text in TOWARDS | _UNTO)
        and (who.value in {"one", "other"} or who.kind == "fill")
        for way, who in pairwise(tokens)
    )


_UNTO: Final = frozenset({"an", "aan", "a", "do", "para"})


def leads_to_tank(tokens: list[Token], place: int) -> bool:
    """Whether a tank stands from a place on, behind a word for the way there."""
    heading = False
    for at, token in enumerate(tokens):
        if token.kind == "tank" and heading and at >= place:
            return True
        if token.kind != "fill":
            heading = token.value in {"to", "at_to"} or token.text in TOWARDS
    return False


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


def _speaks_of_animals(tokens: list[Token]) -> bool:
    said = [token.text for token in tokens]
    if any(herd.saying(word) == "any" for word in said) or kinds.names_animal(" ".join(said)):
        return True
    return any(kinds.is_kind(token.text) for token in tokens if token.kind == "word")  # tetras


def place_first(tokens: list[Token]) -> None:
    """Put the tanks of a sentence that ends with its verb first: `2 Guppys in Fern gestorben`."""
    last = next((n for n in range(len(tokens) - 1, 0, -1) if tokens[n].kind != "p"), 0)
    if tokens[last].kind != "event" or tokens[last].value not in kinds.OF_ANIMALS:
        return
    places: list[Token] = []
    for place in range(last - 1, 1, -1):
        if place >= len(tokens) or tokens[place].kind != "tank":
            continue
        first = place - 1
        while first > 0 and tokens[first].kind == "fill":
            first -= 1  # in den Teich
        if tokens[first].value in _WAY or tokens[first].text in TOWARDS | WHENCE:
            places[:0] = tokens[first : place + 1]
            del tokens[first : place + 1]
    tokens[:0] = places


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
    elif parts.kind in {"moved", "given"} and token.kind == "mark" and token.value in _WAY:
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


def parents(tokens: list[Token], floor: int, first: int, source: str) -> str | None:
    """The kind that is named before a birth: `my guppies gave birth to 20`."""
    if floor >= first:
        return None
    named = kinds.animals_in(source[tokens[floor].start : tokens[first - 1].end])
    return named[-1] if named else None


def species(parts: Parts, source: str) -> str | None:
    """The animals of an event as the keeper calls them; of the new-born it is said."""
    words = parts.unknown
    counts_dead = parts.spared is None and parts.kind in {"lost", "missing", "given"}
    if counts_dead and parts.before < len(words):
        words = _of_the_dead(words, parts.before, source)
    if parts.kind == "lost" and counts_dead:
        words = _up_to_gap(words, source)
    said = source_words(words, source) if words else None
    if said is not None and parts.kind == "lost":
        return _without_tail(said)
    if said is not None and parts.kind in {"given", "missing"}:
        return _without_takers(said)
    if parts.kind != "born":
        return said
    young = [token for token in parts.unknown if herd.saying(token.text) == "young"]
    if young and len(young) < len(parts.unknown):
        return said
    kind = said if said is not None and not young else parts.parents
    word = source_words(young, source) if young else herd.young_as_said(parts.word)
    return f"{kind} ({word})" if kind is not None else said


def _of_the_dead(words: list[Token], before: int, source: str) -> list[Token]:
    """The words that name who died: behind the event, or before it where only those name any."""
    behind = words[before:]  # found one neon dead
    named = kinds.names_animal(source_words(words[:before], source)) if before else False
    return words[:before] if named and not _names(source_words(behind, source)) else behind


def _names(said: str) -> bool:
    return kinds.names_animal(said) or any(kinds.names_any(word) for word in said.split())


def _without_tail(said: str) -> str:
    """Fish of no kind without what is told behind them: fish others gasping."""
    first, *rest = said.split()
    return first if rest and kinds.names_any(first) and not _names(" ".join(rest)) else said


def _up_to_gap(words: list[Token], source: str) -> list[Token]:
    """The words of who died, without those told behind a word of another kind: over winter."""
    for place in range(1, len(words)):
        between = source[words[place - 1].end : words[place].start]
        apart = any(letter.isalnum() for letter in between)
        if apart and not tells(words[place]):
            named = kinds.names_animal(source_words(words[:place], source))
            return words[:place] if named else words
    return words


def _without_takers(said: str) -> str:
    """The kind alone, where words of whom it went to stand behind: verkauft 2 Guppys an Max."""
    named = kinds.animals_in(said)
    if len(named) != 1:
        return said
    from core.advice.livestock import plain_name

    kind = named[0].split()
    kept = (
        word
        for word in said.split()
        if plain_name(word) in kind or herd.saying(fold(word)) in herd.OF_A_KIND
    )
    return " ".join(kept)


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
