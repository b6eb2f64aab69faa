"""What was done to a tank or seen in it.

event   = [ amounts ] word { amount | substance | "with" water | species }
amount  = quantity in %, L, gal, g, kg, mL, spoons | half | count

An event ends at a comma, a line break, a full stop, the name of an analyte or another event.
Words of wishing, asking or denying beside it make it a doubt.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from core.message import doubts, kinds, nearest, quantities, sentences
from core.message.amounts import GRAMS, MILLILITRES, SHARES, SPOONS, litres
from core.message.event_parts import Parts, added, doubt, judge
from core.message.lexicon import lexicon
from core.message.model import Context, Doubt, Event
from core.message.quantities import Quantity
from core.message.tokens import Token
from core.substances import MEDIA

_STOPS = frozenset({",", ";", "|", ".", "!", "?", "(", ")", "•"})
_SMALL = frozenset({"one", "link", "some", "new", "fish"})
_BY_HAND = frozenset({"water_change", "top_up", "filter", "dose"})
_OF_ANIMALS = frozenset({"added", "lost", "moved"})
_NAMED = frozenset({"added", "lost", "moved", "dose"})
"""Events of things whose name may hold an analyte's word."""
_REACH = 12
"""How many words before an event are looked at."""
_UNSURE = frozenset({"wish", "if", "not", "every", "nd", "zero", "may", "does", "whether"})


@dataclass(slots=True)
class Found:
    """An event in tokens `first` to `last` (exclusive), or the doubt about it."""

    first: int
    last: int
    event: Event | None = None
    doubt: Doubt | None = None


def find(tokens: list[Token], source: str, context: Context) -> list[Found]:
    """All events of one line of tokens, in order and apart from each other."""
    out: list[Found] = []
    done = 0
    for index, token in enumerate(tokens):
        if token.kind != "event" or index < done:
            continue
        found = _one(tokens, index, done, source, context)
        if found is not None:
            out.append(found)
            done = found.last
            done = _more_animals(tokens, found, source, context, out)
    return out


def _one(
    tokens: list[Token], index: int, floor: int, source: str, context: Context
) -> Found | None:
    kind = str(tokens[index].value)
    if tokens[index].text == "tpa" and not any(map(quantities.is_number, tokens[: index + 3])):
        return None  # Portuguese for a change, but also a slip for "tap": its amount must follow
    if kind == "note":
        return _note(tokens, index, source)
    first = _left(tokens, index, floor, kind)
    last = _right(tokens, index)
    parts = Parts(kind, tokens[first].start, tokens[last - 1].end)
    parts.water = tokens[index].text not in {"changed", "replaced", "swapped", "exchanged"}
    parts.unsure = _unsure_before(tokens, first, kind)
    if last < len(tokens) and tokens[last].text == "?":
        parts.unsure = True  # asked, not told
    place = first
    while place < last:
        place = _take(tokens, place, index, parts, context) if place != index else place + 1
    said = next((t for t in tokens[first:last] if t.kind == "count" or t.value == "one"), None)
    words = [t for t in parts.unknown if t.kind not in {"count", "number"}]
    if said is not None and any(nearest.counts_like(t.text, said.text) for t in words):
        parts.unsure = True  # "twenmty one": a part of the number was misspelt
    if tokens[first].kind == "count" and _cut_off(tokens, first):
        parts.unsure = True
    if kind == "lost" and context.group and not parts.unknown:
        parts.unsure = True  # people lose other things too
    return _made(parts, first, last, source)


def _more_animals(
    tokens: list[Token], found: Found, source: str, context: Context, out: list[Found]
) -> int:
    """Further counts behind an event of animals: `added 3 shrimp and 2 snails`."""
    event = found.event
    last = found.last
    while event is not None and event.kind in {"added", "lost", "moved"}:
        if last + 2 >= len(tokens) or not _counts_animals(tokens[last + 1]):
            break
        joint, animal = tokens[last], tokens[last + 2]
        if joint.text != "," and joint.value != "and":
            break
        if animal.kind not in {"word", "mark"} or (animal.kind == "mark" and animal.value != "new"):
            break
        end = _right(tokens, last + 1)
        parts = Parts(event.kind, tokens[last + 1].start, tokens[end - 1].end)
        place = last + 1
        while place < end:
            place = _take(tokens, place, -1, parts, context)
        made = _made(parts, last, end, source)
        if made is None:
            break
        out.append(made)
        last = end
    return last


def _counts_animals(token: Token) -> bool:
    """Whether a token is a number of animals: 6, six, a."""
    return token.kind in {"number", "count"} or (token.kind == "time" and token.value == "one")


def _note(tokens: list[Token], index: int, source: str) -> Found | None:
    if index:
        return None
    start, end = tokens[0].start, tokens[-1].end
    text = source[tokens[0].end : end].strip(" :,")
    return Found(0, len(tokens), Event("note", text=text, start=start, end=end))


def _left(tokens: list[Token], index: int, floor: int, kind: str) -> int:
    """Where the event begins: its amount may stand before it (`30% wc`, `2 tetras died`)."""
    place = index
    floor = max(floor, index - _REACH)
    while place > floor:
        token = tokens[place - 1]
        if token.text in _STOPS or token.kind in {"analyte", "tank", "nl", "iso", "dotted"}:
            break
        if token.kind in {"clock", "event", "ask", "command"} or token.value in {"ago", "at"}:
            break
        place -= 1
    before = tokens[place:index]
    if before and tokens[place - 1].kind == "analyte" and place > floor and _bare(before):
        before = before[1:]  # kh 5 dosed 5 ml: the first five is the name's
    if kind == "lost" and _right(tokens, index) == index + 1:
        while before and before[0].kind not in {"word", "number", "count", "time", "mark"}:
            before = before[1:]
        animals = all(
            t.kind in {"word", "number", "count", "fill"} or t.value in _SMALL for t in before
        )
        return index - len(before) if animals else index
    while any(t.kind == "time" and t.value != "one" for t in before):
        before = before[1:]  # "yesterday 30% wc": the amount stands behind the time
    counted = [
        t
        for at, t in enumerate(tokens[index - len(before) : index], index - len(before))
        if (quantities.is_number(t) or t.kind == "count") and not kinds.is_numbered(tokens, at)
    ]
    if kind in {"dose", "added"}:
        counted += [
            one for one, of in pairwise(before) if one.value == "one" and of.value in SPOONS
        ]  # un cucchiaino di bicarbonato aggiunto
    if kind == "lost" and before and before[-1].value == "one":
        counted.append(before[-1])
    if kind == "water_change" and not any(t.kind == "unit" for t in before):
        counted = [t for t in before if _share(t) or t.value in SHARES]
    if not counted:
        return index
    first = index - len(before) + before.index(counted[-1])
    thing = first > floor and kind == "dose" and tokens[first - 1].kind == "substance"
    return first - 1 if thing else first  # vinegar 5 ml dosed


def _bare(tokens: list[Token]) -> bool:
    """Whether a number without a unit begins here."""
    return quantities.is_number(tokens[0]) and (len(tokens) < 2 or tokens[1].kind != "unit")


def _cut_off(tokens: list[Token], first: int) -> bool:
    """Whether signs part a word of a number from another before it (`vingt--cinq`)."""
    place = first - 1
    while place >= max(first - 3, 0) and tokens[place].kind in {"p", "mark"}:
        place -= 1
    return 0 <= place < first - 1 and tokens[place].kind == "count"


def _share(token: Token) -> bool:
    """Whether a token is a part of a whole: 1/3, ½."""
    above, slash, below = token.text.partition("/")
    return token.kind == "fraction" or (slash == "/" and above.isdigit() and below in "2 3 4 5 8")


def _right(tokens: list[Token], index: int) -> int:
    place = index + 1
    while place < len(tokens):
        token = tokens[place]
        if token.kind == "analyte" and tokens[index].value in _NAMED and _of_a_name(tokens, place):
            place += 1
            continue
        if token.text in _STOPS or token.kind in {
            "analyte",
            "event",
            "tank",
            "ask",
            "clock",
            "iso",
        }:
            break
        if token.kind == "time" and token.value not in {"one", "today", "now"}:
            break
        if token.kind == "mark" and token.value == "and" and token.text != "with":
            break
        if quantities.is_number(token) and place + 1 < len(tokens):
            following = tokens[place + 1]
            if following.kind == "time" and following.value != "one":
                break
        place += 1
    return place


def _of_a_name(tokens: list[Token], place: int) -> bool:
    """Whether an analyte's word stands before a word, as in an animal's name (copper tetra)."""
    following = tokens[place + 1] if place + 1 < len(tokens) else None
    if following is None or following.text in _STOPS:
        return len(tokens[place].text) > 3 and tokens[place - 1].kind in {"unit", "fill", "word"}
    return len(tokens[place].text) > 3 and following.kind == "word"


def _unsure_before(tokens: list[Token], first: int, kind: str) -> bool:
    place = first - 1
    last = max(place - _REACH, 0)
    while place >= last and tokens[place].text not in _STOPS and tokens[place].kind != "analyte":
        if tokens[place].kind == "mark" and tokens[place].value in _UNSURE:
            return True
        if kind in _BY_HAND and _to_come(tokens[place]):
            return True  # morgen 50% wechseln: tomorrow or in the morning
        if tokens[place].kind == "command" and tokens[place].value == "no":
            return True
        if tokens[place].kind == "word" and kind in _BY_HAND:
            return True  # "after the water change": not told as done now
        place -= 1
    return place + 1 < first and sentences.asks_first(tokens[place + 1])  # is a 30% change ok


def _to_come(token: Token) -> bool:
    """Whether a word that means several things may be a day to come."""
    meanings = lexicon().several.get(token.text, ())
    return any(entry == ("time", "tomorrow") for _, entry in meanings)


def _take(tokens: list[Token], place: int, index: int, parts: Parts, context: Context) -> int:
    token = tokens[place]
    if kinds.is_numbered(tokens, place):
        parts.unknown.append(token)
        return place + 1
    if quantities.is_number(token) or token.kind == "count" or token.value == "approx":
        quantity = quantities.read(tokens, place)
        if quantity is not None:
            if quantity.unit is None and _share(token) and parts.kind == "water_change":
                above, slash, below = token.text.partition("/")
                part = int(above) / int(below) if slash else quantity.value or 0.0
                parts.percent = 100.0 * part
                return quantity.last
            _amount(quantity, parts, context)
            if quantity.last > index > place:
                return index
            return quantity.last
    if token.kind == "command" and token.value == "no":
        parts.unsure = True
    elif token.kind == "mark":
        mark = str(token.value)
        if mark in SHARES:
            parts.percent = SHARES[mark]
        elif mark == "water":
            parts.water = True
        elif mark == "fish":
            parts.unknown.append(token)
        elif mark in _UNSURE:
            parts.unsure = True
        elif mark == "other" and parts.kind in {"water_change", "top_up"}:
            parts.substance = parts.substance or token.text
            parts.water = True
    elif token.kind == "substance":
        parts.substance = str(token.value)
        parts.named.append(token)
    elif token.kind in {"word", "several", "event", "analyte"}:
        parts.unknown.append(token)
    elif token.kind == "count" and parts.bare is None:
        parts.bare = float(str(token.value))
    elif token.kind == "time" and token.value == "one" and parts.count is None:
        following = tokens[place + 1] if place + 1 < len(tokens) else token
        if following.kind == "unit" and following.value in SPOONS:
            parts.spoons = SPOONS[str(following.value)]  # a teaspoon of it
            return place + 2
        parts.count = 1 if following.kind in {"word", "event"} else None
        parts.unsure = parts.unsure or nearest.counts(following.text)  # "a dozwn guppies"
    return place + 1


def _amount(quantity: Quantity, parts: Parts, context: Context) -> None:
    value, unit = quantity.value, quantity.unit
    if quantity.grouped is not None and parts.kind in _OF_ANIMALS and unit is None:
        value = quantity.grouped  # 10,000 fish are no ten
    elif quantity.grouped is not None:
        parts.unsure = True
        return
    if value is None or quantity.problem or quantity.sign:
        parts.unsure = True
        return
    if unit is None:
        parts.bare = value
    elif unit == "%":
        parts.percent = value
        parts.share_end = quantity.last
    elif unit in GRAMS:
        parts.heavy = parts.heavy or unit in {"kg", "mg"}
        parts.grams = value * GRAMS[unit]
    elif unit in MILLILITRES:
        parts.millilitres = value
    elif unit in SPOONS:
        parts.spoons = value * SPOONS[unit]
    else:
        volume = litres(quantity, us_gallons=context.us_gallons)
        if volume is None:
            parts.unsure = True
        elif not 0 < parts.share_end < quantity.first:
            parts.litres = volume  # but in "30% of 90 l" the volume is that of the whole


def _made(parts: Parts, first: int, last: int, source: str) -> Found | None:
    kind = parts.kind
    if kind == "added":
        kind = added(parts)
    untold = parts.percent is None and parts.litres is None
    if kind == "water_change" and parts.substance in MEDIA and untold:
        kind = "media"  # "swapped the carbon"
    problem = judge(kind, parts)
    if problem == "":
        return None
    if problem is not None or parts.unsure:
        return Found(first, last, doubt=doubt(parts, problem or doubts.UNSURE_EVENT, source))
    living = kind in {"added", "lost", "moved"}
    pairs = living and len(parts.unknown) > 1 and parts.unknown[0].text in kinds.PAIRS
    if pairs:
        parts.unknown = parts.unknown[1:]  # 2 pairs of kribensis are four
    said = " ".join(token.text for token in parts.unknown)
    species = source_words(parts.unknown, source) if said and living else None
    substance = parts.substance
    if kind == "dose" and said:
        # A word that we do not know may make another thing of it: liquid carbon is no carbon.
        substance = source_words(sorted(parts.unknown + parts.named, key=_start), source)
    living = living or kind == "media"
    count = int(parts.bare) if living and parts.bare is not None else parts.count
    count = (count or 1) * 2 if pairs else count if living else None
    return Found(
        first,
        last,
        Event(
            kind,
            percent=parts.percent,
            litres=parts.litres,
            grams=parts.grams,
            millilitres=parts.millilitres,
            spoons=parts.spoons,
            count=count,
            substance=substance,
            species=species,
            start=parts.start,
            end=parts.end,
        ),
    )


def _start(token: Token) -> int:
    return token.start


def source_words(tokens: list[Token], source: str) -> str:
    """Words as the keeper wrote them, one blank between; an apostrophe stays (guppy's)."""
    text = ""
    for index, token in enumerate(tokens):
        gap = source[tokens[index - 1].end : token.start] if index else ""
        text += gap if gap in {"'", "’"} else " " if index else ""
        text += source[token.start : token.end]
    return text
