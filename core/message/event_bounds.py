"""Where an event begins and ends in its line, and whether the words before make it unsure.

An event ends at a comma, a line break, a full stop, the name of an analyte or another event; its
amount may stand before its word (`30% wc`, `2 tetras died`).
"""

from __future__ import annotations

from itertools import pairwise

from core.message import deed_asked, herd, kinds, quantities, second_dose, sentences, trade
from core.message.amounts import SHARES, SPOONS
from core.message.animal_events import the_dead
from core.message.dose_words import dose_words
from core.message.lexicon import lexicon
from core.message.tokens import Token
from core.message.waters import words

STOPS = frozenset({",", ";", "|", ".", "!", "?", "(", ")", "•"})
_SMALL = frozenset({"one", "link", "some", "new", "fish", "half"})
_BY_HAND = frozenset({"water_change", "top_up", "filter", "dose"})
_NAMED = kinds.OF_ANIMALS | {"dose"}
"""Events of things whose name may hold an analyte's word."""
GIVEN = second_dose.GIVEN
_REACH = 12
"""How many words before an event are looked at."""
_LABEL = 3
"""Words of a tank's name before a colon."""
UNSURE = frozenset({"wish", "if", "not", "every", "nd", "zero", "may", "does", "whether"})


def left(tokens: list[Token], index: int, floor: int, kind: str) -> int:
    """Where the event begins: its amount may stand before it (`30% wc`, `2 tetras died`)."""
    place = index
    floor = max(floor, index - _REACH)
    while place > floor:
        token = tokens[place - 1]
        if token.text in STOPS or token.kind in {"analyte", "tank", "nl", "iso", "dotted"}:
            break
        further = herd.saying(token.text) == "further" and kind in kinds.OF_ANIMALS
        if token.kind in {"clock", "event", "ask", "command"} and not further:
            break
        if token.value in {"ago", "at"}:
            break
        place -= 1
    before = tokens[place:index]
    if before and tokens[place - 1].kind == "analyte" and place > floor and _bare(before):
        before = before[1:]  # kh 5 dosed 5 ml: the first five is the name's
    if kind == "lost" and _ends(tokens, index):
        joint = max((n for n, t in enumerate(before) if t.value == "and"), default=-1)
        before = the_dead(before[joint + 1 :])  # the heater broke and 2 neons died
        while before and not _opens_loss(before[0]):
            before = before[1:]
        animals = all(
            t.kind in {"word", "number", "count", "fill"}
            or t.value in _SMALL
            or t.text == "'"
            or _of_herd(t)
            for t in before
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
            one
            for one, of in pairwise(before)
            if one.value in {"one", *SHARES} and of.value in SPOONS
        ]  # un cucchiaino di bicarbonato aggiunto
    if kind == "lost" and before and before[-1].value == "one":
        counted.append(before[-1])
    if kind in kinds.OF_ANIMALS and not counted:
        counted = [t for t in before if t.value == "one" or herd.saying(t.text) in _WHOLE][-1:]
    if kind == "water_change" and not any(t.kind == "unit" for t in before):
        counted = [t for t in before if share(t) or t.value in SHARES]
    if not counted and kind == "top_up" and before and before[-1].text in words().salted:
        return index - 1  # mit salzwasser aufgefuellt
    if not counted:
        return _named_before(tokens, index, place) if kind in kinds.OF_ANIMALS else index
    first = index - len(before) + before.index(counted[-1])
    thing = first > floor and kind == "dose" and tokens[first - 1].kind == "substance"
    return first - 1 if thing else first  # vinegar 5 ml dosed


def _named_before(tokens: list[Token], index: int, floor: int) -> int:
    """Where an animal without its number begins that stands right before its verb."""
    last = index
    while last > floor and tokens[last - 1].value == "link":
        last -= 1  # il pleco è sparito
    first = last
    while first > floor and (tokens[first - 1].kind == "word" or _plural(tokens, first - 1)):
        first -= 1
    while first < last and tokens[first].text == "'":
        first += 1
    alone = first < last and _ends(tokens, index)
    said = " ".join(token.text for token in tokens[first:last]).replace(" ' ", "'")
    return first if alone and kinds.is_kind(said) else index


def _plural(tokens: list[Token], place: int) -> bool:
    """Whether a token is of the ending of a Dutch plural (guppy's)."""
    return tokens[place].text == "'" or (
        tokens[place].text == "s" and tokens[place - 1].text == "'"
    )


def tells_of_nothing_else(tokens: list[Token], first: int) -> bool:
    """Whether only words without weight, a time or a tank stand before an event in its sentence."""
    place = first - 1
    while place >= 0 and tokens[place].text not in STOPS:
        timed = tokens[place].kind == "time" and tokens[place].value not in {"at", "one"}
        if not timed and tokens[place].kind not in {"fill", "tank", "nl"}:
            return False
        place -= 1
    return True


def _ends(tokens: list[Token], index: int) -> bool:
    """Whether nothing of weight stands behind an event's word: `our betta died overnight`."""
    behind = tokens[index + 1 : right(tokens, index)]
    return all(token.kind == "fill" or not token.text.isalnum() for token in behind)


def _opens_loss(token: Token) -> bool:
    return token.kind in {"word", "number", "count", "time", "mark"} or _of_herd(token)


def _of_herd(token: Token) -> bool:
    """Whether a word tells more of animals that are named beside it: male, young, all."""
    return herd.saying(token.text) in herd.OF_A_KIND | _WHOLE | {"further", "another"}


_WHOLE = frozenset({"all", "both"})


def _bare(tokens: list[Token]) -> bool:
    """Whether a number without a unit begins here."""
    return quantities.is_number(tokens[0]) and (len(tokens) < 2 or tokens[1].kind != "unit")


def cut_off(tokens: list[Token], first: int) -> bool:
    """Whether signs part a word of a number from another before it (`vingt--cinq`)."""
    place = first - 1
    while place >= max(first - 3, 0) and tokens[place].kind in {"p", "mark"}:
        place -= 1
    return 0 <= place < first - 1 and tokens[place].kind == "count"


def share(token: Token) -> bool:
    """Whether a token is a part of a whole: 1/3, ½."""
    above, slash, below = token.text.partition("/")
    return token.kind == "fraction" or (slash == "/" and above.isdigit() and below in "2 3 4 5 8")


def right(tokens: list[Token], index: int) -> int:
    """Behind the last token of an event whose word, or first amount, stands at `index`."""
    place = index + 1
    while place < len(tokens):
        token = tokens[place]
        if tokens[index].value == "lost" and herd.saying(token.text) == "since":
            break  # shrimp died after i fixed the pipes: what came before is no kind
        if tokens[index].value in GIVEN and (named := trade.given(tokens, index, place)):
            place += named
            continue
        if token.kind == "analyte" and tokens[index].value in _NAMED and _of_a_name(tokens, place):
            place += 1
            continue
        if token.text in STOPS or token.kind in {
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
        if tokens[index].value == "water_change" and _looks(tokens, index, place):
            break
        beside = _next_group(tokens, index, place) or _adds_one(tokens, index, place)
        if (
            beside
            or second_dose.begins(tokens, index, place)
            or _asked_behind(tokens, index, place)
        ):
            break
        if quantities.is_number(token) and place + 1 < len(tokens):
            following = tokens[place + 1]
            if following.kind == "time" and following.value != "one":
                break
        place += 1
    return place


def _looks(tokens: list[Token], index: int, place: int) -> bool:
    """Whether a change is told whole and animals are spoken of: `changed 30% | fish look off`."""
    before, behind = tokens[place - 1], tokens[place + 1 : place + 2]
    whole = any(token.value in {"%", "L", "gal"} for token in tokens[max(0, index - 2) : place])
    told = before.kind in {"unit", "event"} or before.value in {"water", "today", "now"}
    animal = tokens[place].value == "fish" or kinds.is_kind(tokens[place].text)
    return whole and told and animal and bool(behind) and behind[0].value not in {"home", "water"}


def _asked_behind(tokens: list[Token], index: int, place: int) -> bool:
    """Whether what was put in is told whole and a question begins: `put in 5 g soda what now`."""
    if tokens[index].value not in GIVEN or not deed_asked.opens(tokens, place):
        return False
    first = index
    while first and tokens[first - 1].text not in STOPS and tokens[first - 1].kind != "nl":
        first -= 1
    return deed_asked.is_whole(tokens[first:place])


def _adds_one(tokens: list[Token], index: int, place: int) -> bool:
    """Whether a sign puts another amount beside the first: dosed 5 g soda | + 3 g salt."""
    signed = tokens[place].text in {"+", "&"} and index + 1 < place < len(tokens) - 1
    return signed and quantities.is_number(tokens[place + 1])


def _next_group(tokens: list[Token], index: int, place: int) -> bool:
    """Whether animals of another sex or age are counted here: added 1 male | 3 female guppies."""
    if place + 1 >= len(tokens) or not kinds.counts(tokens[place]):
        return False
    told = herd.saying(tokens[place + 1].text) in herd.OF_A_KIND
    return told and any(map(kinds.counts, tokens[index : place - 1]))


def _of_a_name(tokens: list[Token], place: int) -> bool:
    """Whether an analyte's word stands before a word, as in copper tetra or in kh buffer."""
    following = tokens[place + 1] if place + 1 < len(tokens) else None
    if following is not None and following.text in dose_words()["product"] - _WAYS:
        return True
    if following is None or following.text in STOPS:
        return len(tokens[place].text) > 3 and tokens[place - 1].kind in {"unit", "fill", "word"}
    return len(tokens[place].text) > 3 and following.kind == "word"


_WAYS = frozenset({"up", "down"})
"""Behind an analyte they may tell how it moved, not what a product is called."""

_HELD_BACK = frozenset({"no", "wait", "make"})


def unsure_before(tokens: list[Token], first: int, kind: str, floor: int = 0) -> bool:
    """Whether a word before an event, from `floor` on, makes it a wish, a question or a plan."""
    place = first - 1
    last = max(place - _REACH, floor, _label_end(tokens))
    while place >= last and tokens[place].text not in STOPS and tokens[place].kind != "analyte":
        if tokens[place].kind == "mark" and tokens[place].value in UNSURE:
            return True
        if kind in _BY_HAND and _to_come(tokens[place]):
            return True  # morgen 50% wechseln: tomorrow or in the morning
        if tokens[place].kind == "command" and tokens[place].value in _HELD_BACK:
            return True  # wait with the water change
        if tokens[place].kind == "word" and kind in _BY_HAND and not adds(tokens[place], kind):
            return True  # "after the water change": not told as done now
        if tokens[place].kind == "ask":
            return True  # "what is a water change"
        place -= 1
    if place + 1 >= first:
        return False
    # "is a 30% change ok", "did my water change help", "has the water change been done"
    return sentences.asks_first(tokens[place + 1]) or _asks_of_it(tokens, place + 1, first)


def _label_end(tokens: list[Token]) -> int:
    """The place behind a tank's name with its colon at the head (`den: changed 30%`), else 0."""
    for place, token in enumerate(tokens[: _LABEL + 1]):
        if token.text == ":":
            return place + 1 if place else 0
        if token.kind != "word":
            return 0
    return 0


def denied_before(tokens: list[Token], first: int) -> bool:
    """Whether a word before an event denies it, in its clause: `didnt really put in 5 g soda`."""
    for token in reversed(tokens[max(first - _REACH, 0) : first]):
        if token.text in STOPS or token.kind == "nl":
            return False
        if token.kind == "mark" and token.value == "not":
            return True
    return False


def adds(token: Token, kind: str) -> bool:
    """Whether a word tells that something was done once more: `changed another 50 l`."""
    return kind in _BY_HAND and herd.saying(token.text) in {"further", "another"}


_HAS = frozenset({"has", "have", "had", "hat", "haben"})
_OF_IT = frozenset({"my", "the", "that", "this", "our", "last", "der", "mein", "unser"})
_BROUGHT = frozenset(
    {"help", "work", "do", "make", "fix", "change", "matter", "hurt", "lower", "raise"}
)


def _asks_of_it(tokens: list[Token], opening: int, index: int) -> bool:
    """Whether a sentence asks of what was done before: did the water change help."""
    if tokens[opening].text in _HAS:
        return tokens[opening + 1].text in _OF_IT
    if tokens[opening].text != "did" or tokens[index - 1].text not in _OF_IT:
        return False
    return any(token.text in _BROUGHT for token in tokens[index + 1 : right(tokens, index) + 1])


def _to_come(token: Token) -> bool:
    """Whether a word that means several things may be a day to come."""
    meanings = lexicon().several.get(token.text, ())
    return any(entry == ("time", "tomorrow") for _, entry in meanings)
