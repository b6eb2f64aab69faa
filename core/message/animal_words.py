"""What words mean beside animals, told before an event is read: who is spared, whither they go.

`gave 2 guppies` tells what `gave 2 ml` does not, `no dead fish` tells no loss, and a sentence that
ends with its verb (`2 Guppys in Fern gestorben`) has its tank before it.
"""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from core.message import herd, kinds
from core.message.tokens import Token

TOWARDS: Final = frozenset({"nach", "naar", "onto", "vers", "into"})
"""Words for the way there that have another meaning, or none, elsewhere."""
WHENCE: Final = frozenset({"aus", "uit", "z", "ze"})
"""Words for where they came from that have another meaning, or none, elsewhere."""
WAY: Final = frozenset({"to", "at_to", "from", "in", "for"})
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
    giving = herd.words_for("gave")
    for place, token in enumerate(tokens):
        gave = token.text in giving
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
        if tokens[first].value in WAY or tokens[first].text in TOWARDS | WHENCE:
            places[:0] = tokens[first : place + 1]
            del tokens[first : place + 1]
    tokens[:0] = places
