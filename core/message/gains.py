"""What came to a tank, told without a word for adding: `got 8 new rasboras`, `new carbon`.

gain = [ got ] count ( "new" | "more" ) animals | got count animals "in" tank
     | count ( "new" | "more" ) animals "in" tank | "new" medium
     | animals ... "had" ... count "babies"

Words of getting are said of all kinds of things, so that either "new" or a tank must stand with
them. A line that tells another event, or asks, is none of these.
"""

from __future__ import annotations

from core.message import animal_events, doubts, herd, kinds, quantities
from core.message.event_parts import Found, source_words
from core.message.model import Doubt, Event
from core.message.tokens import Token
from core.substances import MEDIA

_MOST = 10
"""Tokens of a line that tells it; a longer one is talk."""
_SIGNS = frozenset({"new", "more", "got"})
"""Words of which one stands in every gain."""
_PLACED = frozenset({"in", "for", "home", "and", "to"})
_ENDS = frozenset({".", "!", ",", ";"})


def find(tokens: list[Token], source: str) -> list[Found]:
    """The gain that a line without an event tells, if it does."""
    if len(tokens) > _MOST or any(_forbids(token) for token in tokens):
        return []
    if any(herd.saying(token.text) == "bore" for token in tokens):
        born = _births(tokens, source)
        if born:
            return born
    if _SIGNS.isdisjoint([token.value for token in tokens]):
        return []
    medium = _medium(tokens, source)
    return medium or _animals(tokens, source)


def _forbids(token: Token) -> bool:
    """Whether a token makes the line no gain: a name, a wish, a question."""
    bearing = {"wish", "if", "not", "other", "was", "from", "every", "does", "may"}
    asks = token.kind in {"analyte", "ask", "nl"} or token.text == "?"
    return asks or (token.kind == "mark" and token.value in bearing)


def _medium(tokens: list[Token], source: str) -> list[Found]:
    """`new carbon in the filter`: the line begins with it, a tank aside."""
    del source
    opening = [i for i, token in enumerate(tokens) if token.kind not in {"fill", "tank", "time"}]
    if len(opening) < 2 or tokens[opening[0]].value != "new":
        return []
    first, second = opening[0], opening[1]
    substance = tokens[second]
    if substance.kind != "substance" or substance.value not in MEDIA:
        return []
    start, end = tokens[first].start, substance.end
    behind = tokens[second + 1] if second + 1 < len(tokens) else None
    ends = behind is None or behind.kind in {"tank", "time", "p"} or behind.value in _PLACED
    if not ends:
        return []  # "new carbon bike"
    event = Event("media", substance=str(substance.value), start=start, end=end)
    return [Found(first, second + 1, event=event)]


def _births(tokens: list[Token], source: str) -> list[Found]:
    """`my guppies had 20 babies`: a kind, and a counted word for young animals behind it."""
    for index, token in enumerate(tokens[1:-1], 1):
        young = tokens[index + 1]
        if not kinds.counts(token) or herd.saying(young.text) != "young":
            continue
        kind = animal_events.parents(tokens, 0, index, source)
        number = quantities.single(tokens, index)
        value = number.value if number is not None else None
        value = float(str(token.value)) if token.kind == "count" else value
        if kind is None or value is None or value != int(value) or value <= 0:
            return []
        start, end = token.start, young.end
        species = f"{kind} ({source_words([young], source)})"
        event = Event("added", count=int(value), species=species, start=start, end=end)
        return [Found(index, index + 2, event=event)]
    return []


def _animals(tokens: list[Token], source: str) -> list[Found]:
    got = any(token.value == "got" for token in tokens)
    placed = any(token.kind == "tank" for token in tokens)
    for index, token in enumerate(tokens):
        if not kinds.counts(token):
            continue
        return _counted(tokens, index, source, got=got, placed=placed)
    return []


def _counted(
    tokens: list[Token], index: int, source: str, *, got: bool, placed: bool
) -> list[Found]:
    """The animals counted at `index`, where enough is said to tell that they came."""
    number = quantities.single(tokens, index)
    value = float(str(tokens[index].value)) if tokens[index].kind == "count" else None
    value = 1.0 if tokens[index].value == "one" else value
    if number is not None:
        value = None if number.unit or number.problem else number.value
    place = index + 1
    new = place < len(tokens) and tokens[place].value in {"new", "more"}
    place += new
    words: list[Token] = []
    while place < len(tokens) and (
        tokens[place].kind == "word" or (words and tokens[place].kind in {"several", "substance"})
    ):
        words.append(tokens[place])
        place += 1
    kind = got and bool(words) and kinds.names_animal(source_words(words, source))
    if tokens[index].value == "one" and not kind:
        return []  # "got a new job"
    enough = new and (placed or kind)  # "got 8 new emails" tells of no animals
    enough = enough or (got and placed)
    whole = value is not None and value == int(value) and 0 < value < 1000
    asked = kind or (got and new)
    if not (enough or asked) or not whole or not words or not _nothing_else(tokens, index, place):
        return []
    start, end = tokens[index].start, words[-1].end
    species = source_words(words, source)
    if not enough:
        text, said = source[start:end], f"added {value:.0f} {species}"
        return [Found(index, place, doubt=Doubt(text, start, end, doubts.UNSURE_EVENT, said))]
    event = Event("added", count=int(value or 0), species=species, start=start, end=end)
    return [Found(index, place, event=event)]


def _nothing_else(tokens: list[Token], first: int, last: int) -> bool:
    """Whether the rest of the line is words without weight, a tank or a time."""
    rest = tokens[:first] + tokens[last:]
    return all(
        token.kind in {"fill", "tank", "time"}
        or token.text in _ENDS
        or token.value in {"got", "in", "for", "to", "at_to", "home", "some", "and"}
        for token in rest
    )
