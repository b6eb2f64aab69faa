"""What came to a tank, told without a word for adding: `got 8 new rasboras`, `new carbon`.

gain = [ got ] count ( "new" | "more" ) animals | got count animals "in" tank
     | count ( "new" | "more" ) animals "in" tank | "new" medium
     | animals ... "had" ... [ count ] "babies" | count ( "babies" "born" | "born" )
loss = animals "ate" count animals | count animals ... "eaten" ...

Words of getting are said of all kinds of things, so that either "new" or a tank must stand with
them. A line that tells another event, or asks, is none of these.
"""

from __future__ import annotations

from core.message import animal_names, animal_words, bought, doubts, herd, kinds, quantities
from core.message.event_parts import Found, source_words
from core.message.model import Doubt, Event
from core.message.tokens import Token
from core.substances import MEDIA

_MOST = 10
"""Tokens of a line that tells it; a longer one is talk."""
_SIGNS = frozenset({"new", "more", "got"})
"""Words of which one stands in every gain."""
_PLACED = frozenset({"in", "for", "home", "and", "to"})
_ENDS = frozenset({".", "!", ",", ";", ":"})
_BESIDE = frozenset({"link", "in", "got", "home", "new", "some"})
"""Marks that may stand beside who bore."""
_BESIDE_KIND = frozenset({"word", "several", "fill", "tank", "time", "p"})
_SELLERS = frozenset({"vom", "beim", "chez", "dal", "dallo", "dalla", "bij", "od"})
"""Words before whom animals came from that have another meaning, or none, elsewhere."""
_NAME = 4
"""Words of the longest name of animals that were eaten."""
_AUXILIARY = 5
"""Letters of a word that may help the verb before it: ont eu, hanno avuto."""
_MANY = 1000
"""So many animals are not told so."""


def find(tokens: list[Token], source: str) -> list[Found]:
    """The gain that a line without an event tells, if it does."""
    tokens = _without_seller(tokens)
    if len(tokens) > _MOST or any(_forbids(token) for token in tokens):
        return []
    ate = any(_ate(token, source) for token in tokens)
    if not ate and any(herd.saying(t.text) == "bore" or t.value == "born" for t in tokens):
        born = _births(tokens, source)
        if born:
            return born
    if ate or _caught(tokens):
        return _eaten(tokens, source)
    if medium := _medium(tokens):
        return medium
    return [] if _SIGNS.isdisjoint([t.value for t in tokens]) else _animals(tokens, source)


def _without_seller(tokens: list[Token]) -> list[Token]:
    """A line without whom they came from: `picked up 3 snails from the shop`."""
    if not any(token.value == "got" for token in tokens):
        return tokens
    for index, token in enumerate(tokens[:-1]):
        if index < 2 or not (token.value == "from" or token.text in _SELLERS):
            continue
        last = index + 1
        while last < len(tokens) and _of_seller(tokens[last]):
            last += 1
        return tokens[:index] + tokens[last:]
    return tokens


def _of_seller(token: Token) -> bool:
    return token.kind in {"word", "fill", "several"} or token.value in {"other", "one"}


def _forbids(token: Token) -> bool:
    """Whether a token makes the line no gain: a name, a wish, a question."""
    bearing = {"wish", "if", "not", "other", "was", "from", "every", "does", "may"}
    asks = token.kind in {"analyte", "ask", "nl"} or token.text == "?"
    return asks or (token.kind == "mark" and token.value in bearing)


def _medium(tokens: list[Token]) -> list[Found]:
    """`new carbon in the filter`, `put fresh carbon in`: the line begins with it, a tank aside."""
    opening = [i for i, token in enumerate(tokens) if token.kind not in {"fill", "tank", "time"}]
    put = bool(opening) and tokens[opening[0]].value == "got"
    opening = opening[1:] if put else opening
    anew = [tokens[i].value == "new" or bought.is_word("anew", tokens[i].text) for i in opening[:1]]
    places = opening[any(anew) :]
    if not places or not (put or any(anew)):
        return []
    substance = tokens[places[0]]
    if substance.kind != "substance" or substance.value not in MEDIA:
        return []
    first, start, end = opening[0], tokens[opening[0]].start, substance.end
    second = places[0]
    behind = tokens[second + 1] if second + 1 < len(tokens) else None
    ends = behind is None or behind.kind in {"tank", "time", "p"} or behind.value in _PLACED
    if not ends or (put and (behind is None or behind.value != "in")):
        return []  # "new carbon bike", "got carbon"
    event = Event("media", substance=str(substance.value), start=start, end=end)
    return [Found(first, second + 1, event=event)]


def _births(tokens: list[Token], source: str) -> list[Found]:
    """`my guppies had 20 babies`, `3 born`: a counted word for young animals, or births alone.

    Of a kind that is named the number may be missing: it is asked for. Where no kind is named
    nothing else may stand in the line, and whose young they are is asked.
    """
    for index, counted in enumerate(tokens):
        behind = tokens[index + 1] if index + 1 < len(tokens) else counted
        young = herd.saying(behind.text) == "young"
        born = next((t for t in (behind, tokens[index - 1]) if t.value == "born"), None)
        if not kinds.counts(counted) or not (young or born):
            continue
        count, last = _whole(tokens, index), index + 1 + (young or behind is born)
        kind = animal_names.parents(tokens, 0, index, source)
        alone = any(other.value == "born" for other in tokens) and all(
            _is_of_births(other) for at, other in enumerate(tokens) if at != index
        )  # we had 2 babies: people do, too
        if count is None or (kind is None and not alone) or (kind is not None and not young):
            return []
        start, end = counted.start, tokens[last - 1].end
        said = source_words([behind], source) if young else herd.young_as_said(_first(born))
        species = said if kind is None else f"{kind} ({said})"
        event = Event("added", count=count, species=species, start=start, end=end)
        return [Found(index, last, event=event)]
    return _uncounted(tokens, source)


def _first(token: Token | None) -> str:
    """The first word of what told a birth, by which its language is known."""
    return token.text.split()[0] if token is not None else ""


def _is_of_births(token: Token) -> bool:
    """Whether a word may stand in a line that tells of births and of no kind."""
    told = herd.saying(token.text) in {"young", "bore", "further"} or token.value == "born"
    return told or token.kind in {"fill", "tank", "time", "p"} or token.value in {"link", "in"}


def _uncounted(tokens: list[Token], source: str) -> list[Found]:
    """`my guppies had babies`: who bore, the birth, and the young, whom nobody counted yet."""
    if any(map(kinds.counts, tokens)):
        return []
    bore = [i for i, token in enumerate(tokens) if herd.saying(token.text) == "bore"]
    young = [i for i, token in enumerate(tokens) if herd.saying(token.text) == "young"]
    rest = [t for i, t in enumerate(tokens) if i not in {*bore, *young}]
    plain = all(t.kind in _BESIDE_KIND or t.value in _BESIDE for t in rest)
    if not bore or len(young) != 1 or not plain:
        return []
    kind = animal_names.parents(tokens, 0, min(bore[0], young[0]), source)
    aside = {token.text for token in tokens[: bore[0]] if len(token.text) <= _AUXILIARY}
    words = [t.text for t in rest if t.kind == "word"]
    own = [word for word in words if word in (kind or "") or word not in aside]
    if kind is None or "".join(own) != kind.replace(" ", ""):
        return []  # my guppies had babies eaten by the betta
    start, end = tokens[young[0]].start, tokens[young[0]].end
    text = source[start:end]
    return [Found(young[0], young[0] + 1, doubt=Doubt(text, start, end, doubts.NO_NUMBER))]


def _eaten(tokens: list[Token], source: str) -> list[Found]:
    """`the heron ate 3 koi`, `3 neons eaten by the angelfish`: those who are counted died.

    What was eaten is an animal by its whole name, so that 3 pellets and 2 koi sticks are none.
    """
    if any(herd.saying(token.text) == "except" for token in tokens):
        return []
    for index, token in enumerate(tokens):
        if not kinds.counts(token) or (count := _whole(tokens, index)) is None:
            continue
        first = index + 1
        while first < len(tokens) and tokens[first].kind == "fill":
            first += 1  # one of my koi
        for last in range(min(len(tokens), first + _NAME), first, -1):
            words = [t for t in tokens[first:last] if not animal_words.tells(t)]
            said = source_words(tokens[first:last], source)
            if any(t.kind not in {"word", "several", "substance"} for t in words) or not words:
                continue
            behind = tokens[last] if last < len(tokens) else None
            feed = behind is not None and behind.kind == "word"
            ate = behind is not None and (_ate(behind, source) or _is_catch(behind))
            if kinds.is_kind(source_words(words, source)) and (ate or not feed):
                start, end = token.start, tokens[last - 1].end
                event = Event("lost", count=count, species=said, start=start, end=end)
                return [Found(index, last, event=event)]
    return []


def _ate(token: Token, source: str) -> bool:
    """Whether a word tells that an animal was eaten; Swedish åt only with its ring."""
    said = herd.saying(token.text) == "ate"
    return said or source[token.start : token.end].casefold() == "åt"


def _is_catch(token: Token) -> bool:
    return token.value == "got" or herd.saying(token.text) == "caught"


def _caught(tokens: list[Token]) -> bool:
    """Whether a hunter caught something: `cat got 2 goldfish`, `Reiher hat einen Koi geholt`."""
    first = next((i for i, t in enumerate(tokens) if herd.saying(t.text) == "hunter"), len(tokens))
    return any(map(_is_catch, tokens[first:]))  # got a cat and 2 goldfish


def _whole(tokens: list[Token], index: int) -> int | None:
    """The number of animals that is counted at a place; None where it is no such number."""
    token = tokens[index]
    if token.kind == "count":
        return int(float(str(token.value)))
    if token.value == "one":
        return 1
    number = quantities.single(tokens, index)
    value = None if number is None or number.unit or number.problem else number.value
    return int(value) if value is not None and value == int(value) and 0 < value < _MANY else None


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
        tokens[place].kind == "word" or (words and _of_a_name(tokens[place]))
    ):
        words.append(tokens[place])
        place += 1
    kind = got and bool(words) and kinds.names_animal(source_words(words, source))
    if tokens[index].value == "one" and not kind:
        return []  # "got a new job"
    enough = new and (placed or kind)  # "got 8 new emails" tells of no animals
    enough = enough or (got and placed)
    whole = value is not None and value == int(value) and 0 < value < _MANY
    asked = kind or (got and new)
    if not (enough or asked) or not whole or not words or not _nothing_else(tokens, index, place):
        return []
    start, end = tokens[index].start, words[-1].end
    species = " ".join(source[words[0].start : words[-1].end].split())
    if not enough:
        text, said = source[start:end], f"added {value:.0f} {species}"
        return [Found(index, place, doubt=Doubt(text, start, end, doubts.UNSURE_EVENT, said))]
    event = Event("added", count=int(value or 0), species=species, start=start, end=end)
    return [Found(index, place, event=event)]


def _of_a_name(token: Token) -> bool:
    """Whether a token may stand behind the first word of a kind's name: an apostrophe, a salt."""
    return token.kind in {"several", "substance"} or token.text in {"'", "’"}


def _nothing_else(tokens: list[Token], first: int, last: int) -> bool:
    """Whether the rest of the line is words without weight, a tank or a time."""
    rest = tokens[:first] + tokens[last:]
    return all(
        token.kind in {"fill", "tank", "time"}
        or token.text in _ENDS
        or token.value in {"got", "in", "for", "to", "at_to", "home", "some", "and"}
        for token in rest
    )
