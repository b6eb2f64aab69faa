"""What words a text has that may be said of a plan: their classes, its amounts, what it names.

Every word must be one of a class of ``plan_words.txt``, or light: of what says more, nothing is
known.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from typing import Final, NamedTuple

from core.message import quantities
from core.message.amounts import GRAMS, LITRES, MILLILITRES, SHARES, SPOONS
from core.message.deed_told import without_person
from core.message.fold import fold
from core.message.lexicon import lexicon, meanings
from core.message.once import once
from core.message.tokens import Token, cut
from core.message.wordfile import spelt

LONGEST: Final = 14
"""More words than these say more than one thing of a plan."""

LONGEST_TEXT: Final = 240
"""Characters of so many words at most."""

PHRASE: Final = 6
"""Words of the longest entry."""

_DEED: Final = frozenset({"put", "give", "inside"})
"""Classes of words that tell that something went in; part and place may stand before them."""

_OPENERS: Final = re.compile(
    r"^(?:(?:ok|okay|and|so|but|then|well|right|hmmm|hmm|hm|wait|hang on|hold on|sorry|oh|ah|yes"
    r"|yeah|yep|no|thanks|lol|now|next|just|also|but|um|uh|und|also|aber|dann|et|alors|mais|entonces"
    r"|então|allora|ma|en|dus|maar|więc|och|så|men) )+"
)
_INVERTED: Final = re.compile(
    r"(?:(?:is|are|isn'?t|aren'?t|was|were|must|should|shall|can|could|may|might|would|will)"
    r" (?:i|we|you|u|it|they|he|she|both|all|that|this|these|the|my)"
    r"|am i|(?:have|has|had|do|does|did|havent|haven't|didnt|didn't) (?:i|we|you|u|they|he|she)"
    r"|(?:soll|sollte|kann|darf|muss|ist|sind|bin) (?:ich|wir|es|das|alles|beide)"
    r"|(?:dois|puis|dois-je|puis-je|est-ce)|(?:moet|mag|kan|zal) ik|czy|(?:ska|kan|far) jag)\b"
)
"""How a question begins by turning its verb and the one who does it round; `did it` is told."""

_ORDERED: Final = re.compile(r"(?:put|add|give|dose|tip|chuck|throw|pour|dump|log)\b")
"""How a question of no person begins: `put it all in?`; of one's own deed it is told."""

_WORD: Final = re.compile(r"[^\s,.;:!?¿¡()\"]+")
_MEASURES: Final[Mapping[str, tuple[str, float]]] = {
    **{unit: ("grams", factor) for unit, factor in GRAMS.items()},
    **{unit: ("litres", factor) for unit, factor in LITRES.items() if unit != "gal"},
    **{unit: ("spoons", factor) for unit, factor in SPOONS.items()},
    **{unit: ("millilitres", factor) for unit, factor in MILLILITRES.items()},
    "%": ("percent", 1.0),
}
"""Which of `Amounts` a unit is of, and how much of it one is; a millilitre is no litre here.

A bare gallon is left out: which one it is only the chat knows."""

_LEADS: Final = frozenset(
    {
        "ok",
        "okay",
        "okey",
        "oke",
        "okej",
        "k",
        "kk",
        "alright",
        "cool",
        "great",
        "nice",
        "super",
        "toll",
    }
)
"""Words that say no more than that what follows is an answer."""

_AS_IT: Final = " it "
_OF_WATER: Final = frozenset({"ph", "kh", "gh", "salinity", "nitrate", "ammonia"})
"""What is asked about by its name; the others are short words of some language."""

_AS_VALUE: Final = " \u2039value\u203a "
"""In the place of what is measured."""


class Amounts(NamedTuple):
    """What a text tells by number; spoons in teaspoons, a share of the water in percent."""

    grams: float | None = None
    percent: float | None = None
    litres: float | None = None
    millilitres: float | None = None
    spoons: float | None = None

    @property
    def of_dose(self) -> bool:
        """Whether an amount of something that was put in is told."""
        return any(each is not None for each in (self.grams, self.millilitres, self.spoons))


class Said(NamedTuple):
    """The classes of a text's words, its amounts, and whether it names a substance."""

    classes: frozenset[str]
    amounts: Amounts
    names: bool = False
    asks: bool = False
    """Whether its first word opens a question."""
    regrets: bool = False
    """Whether it has a word of regret: oops."""
    only: bool = False
    """Whether it has a word for no more than so much: only, just."""
    begins: bool = False
    """Whether it has a word for the first one."""
    queries: bool = False
    """Whether it begins with a word that asks what or how much: then no deed is told."""
    orders: bool = False
    """Whether it bids the one who is asked do something: please put it in."""
    led: bool = False
    """Whether it begins with no more than that what follows is an answer: ok."""
    also: bool = False
    """Whether it has a word for one more beside what was told: too."""
    inverts: bool = False
    """Whether it is a question by its first words or those before its deed: so have you put."""


@cache
def _classes() -> dict[str, frozenset[str]]:
    """Plain words → the classes that they are of."""
    found: dict[str, set[str]] = {}
    for section, meaning, told in spelt("plan_words.txt"):
        if section == "word":
            for way in told:
                found.setdefault(way, set()).add(meaning)
    return {way: frozenset(of) for way, of in found.items()}


@once
def said_of_plan(text: str) -> Said | None:
    """The classes of all its words; None where one is of none, or there are too many.

    Examples
    --------
    >>> sorted(said_of_plan("Oops, I put in twice as much").classes)
    ['double', 'give', 'inside', 'put']
    >>> said_of_plan("is 20 g safe?").amounts.grams, said_of_plan("I put in my hand") is None
    (20.0, True)
    """
    if len(text) > LONGEST_TEXT:
        return None
    plain = without_person(" ".join(fold(text).split()))
    tokens = cut(plain, lexicon(), plain)
    named = [(token.start, token.end) for token in tokens if token.kind == "substance"]
    of_water = [(token.start, token.end) for token in tokens if token.value in _OF_WATER]
    amounts, spans = _amounts(tokens)
    for start, end in sorted([*named, *of_water, *spans], reverse=True):
        as_ = _AS_VALUE if (start, end) in of_water else _AS_IT
        plain = plain[:start] + as_ + plain[end:]
    words = _WORD.findall(plain)
    led = len(words) > 1 and words[0] in _LEADS
    words = words[1:] if led else words
    if not 0 < len(words) <= LONGEST:
        return None
    classes: set[str] = set()
    place, of_part = 0, False
    opening: frozenset[str] = frozenset()
    queries, wonders = "query" in _at(words, 0)[1], False
    begun = _OPENERS.sub("", " ".join(words))
    inverts = _INVERTED.match(begun) is not None
    inverts = inverts or ("?" in text and _ORDERED.match(begun) is not None)
    told = False
    while place < len(words):
        size, of = _at(words, place)
        if of_part and not size and words[place].isdigit():
            size = 1
        if not size:
            return None
        if of_part and (of & {"two"} or words[place].isdigit()):
            of = frozenset({"place"})  # part 2, dose two: no two parts
        of_part = "part" in of
        opening = opening or of - {"light", "regret", "also"}
        if not told:  # so how much more do i put in: whatever asks before the deed
            plainly = size > 1 or "query" in of  # do i; not: ill only do 10 l
            wonders = wonders or ("ask" in of and plainly and not (queries and "query" in of))
            queries = queries or "query" in of
        told = told or bool(of & _DEED)
        classes |= of
        place += size
    asks = "is" in _at(words, 0)[1]  # no c'est dedans
    flags = ("regret", "only", "begin", "order", "also", "anew")
    asking = frozenset({"ask"} if wonders or "ask" in opening else ())
    of = frozenset(classes - {"light", "wait", "query", "ask", *flags} | asking)
    asks = asks or bool(asking)
    regrets, begins, orders = (each in classes for each in ("regret", "begin", "order"))
    only = bool(classes & {"only", "only_own"})
    also = "also" in classes
    inverts = inverts or wonders
    asks = asks or (inverts and "order" not in classes)
    return Said(
        of, amounts, bool(named), asks, regrets, only, begins, queries, orders, led, also, inverts
    )


def only_asks(text: str) -> bool:
    """Whether words that ask stand before the deed that a text names: then none is told.

    Examples
    --------
    >>> only_asks("so which part is in"), only_asks("both parts in"), only_asks("so i put it in")
    (True, False, False)
    """
    said = said_of_plan(text)
    return said is not None and (said.queries or said.inverts)


def behind_lead(text: str, *leads: str) -> str | None:
    """What stands behind openings of some classes, folded; None where it begins with none.

    Examples
    --------
    >>> behind_lead("Oh no, I gave it", "regret"), behind_lead("i gave it", "regret")
    ('i gave it', None)
    """
    words = _WORD.findall(" ".join(fold(text).split()))
    place = 0
    while place < len(words):
        size, of = _at(words, place)
        if not of & {*leads}:
            break
        place += size
    return " ".join(words[place:]) if place else None


def tells_which(text: str) -> bool:
    """Whether it is told, not asked, that one part of something went in.

    Examples
    --------
    >>> tells_which("gave the first part"), tells_which("the first part?"), tells_which("gave it")
    (True, False, False)
    """
    said = None if "?" in text else said_of_plan(text)
    return said is not None and not said.asks and said.classes >= {"put", "place"}


def substances_named(text: str) -> set[str]:
    """All substances that a text names.

    Examples
    --------
    >>> sorted(substances_named("how much epsom and gypsum is that"))
    ['calcium sulfate dihydrate', 'magnesium sulfate heptahydrate']
    """
    plain = " ".join(fold(text).split())
    return {str(token.value) for token in cut(plain, lexicon(), plain) if token.kind == "substance"}


def measures(text: str) -> bool:
    """Whether a text names an amount of something: a weight, millilitres, a spoon or a cup.

    Examples
    --------
    >>> measures("or a whole cup?"), measures("would 1 tbsp do"), measures("is it kh 3?")
    (True, True, False)
    """
    plain = " ".join(fold(text).split())
    tokens = cut(plain, lexicon(), plain)
    spoon = any(token.kind == "unit" and token.value in SPOONS for token in tokens)
    return spoon or _amounts(tokens)[0].of_dose


def classes_in(text: str) -> frozenset[str]:
    """The classes of the words of a text that have one, whatever else it says.

    Examples
    --------
    >>> "double" in classes_in("my mum gave it twice, bless her")
    True
    >>> "two" in classes_in("she gave two doses"), "two" in classes_in("Anna gave part 2")
    (True, False)
    """
    words = _WORD.findall(" ".join(fold(text).split()))
    found: set[str] = set()
    before: frozenset[str] = frozenset()
    for place in range(len(words)):
        of = _at(words, place)[1]
        found |= of - {"two"} if "part" in before else of  # part 2: no two parts
        before = of
    return frozenset(found)


def amounts_in(text: str) -> Amounts:
    """What a text tells by number and unit, wherever it stands.

    Examples
    --------
    >>> amounts_in("typo 3 g").grams, amounts_in("two spoons").spoons
    (3.0, 2.0)
    """
    plain = " ".join(fold(text).split())
    return _amounts(cut(plain, lexicon(), plain))[0]


def _amounts(tokens: list[Token]) -> tuple[Amounts, list[tuple[int, int]]]:
    """What is told by number, the first of each kind, and where it stands."""
    told: dict[str, float] = {}
    spans = []
    place = 0
    while place < len(tokens):
        value, unit, last = _amount(tokens, place)
        kind, factor = _MEASURES.get(unit or "", ("", 0.0))
        if value is None or not kind or kind in told:
            place += 1
            continue
        told[kind] = value * factor
        spans.append((tokens[place].start, tokens[last - 1].end))
        place = last
    return Amounts(**told), spans


def _amount(tokens: list[Token], place: int) -> tuple[float | None, str | None, int]:
    """The amount that begins here: its number, unit and the token behind it."""
    token = tokens[place]
    if token.kind in {"number", "slashed"}:
        found = quantities.read(tokens, place)
        return (None, None, place) if found is None else (found.value, found.unit, found.last)
    behind = [t for t in tokens[place + 1 : place + 3] if t.value != "one"]
    unit = str(behind[0].value) if behind else ""
    last = place + 1 if not behind else tokens.index(behind[0], place) + 1
    if unit not in SPOONS:
        return None, None, place
    if token.kind == "count" and str(token.value).isdigit():
        return float(str(token.value)), unit, last
    if token.value == "one":
        return 1.0, unit, last
    if token.value in SHARES:
        return SHARES[str(token.value)] / 100.0, unit, last
    return None, None, place


def _at(words: list[str], place: int) -> tuple[int, frozenset[str]]:
    """How many words the longest entry at a place has, and its classes; 0 where there is none."""
    for size in range(min(PHRASE, len(words) - place), 0, -1):
        classes = _classes().get(" ".join(words[place : place + size]))
        if classes is not None:
            return size, classes
    if words[place] == _AS_VALUE.strip():
        return 1, frozenset({"value"})
    light = any(kind == "fill" for kind, _name in meanings(words[place]))
    return int(light), frozenset()
