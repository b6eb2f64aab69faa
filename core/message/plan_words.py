"""Words that tell in any order what is said of the plan just given: `oops i gave it twice`.

Beside `plan_talk`, which knows whole sentences. Every word must be one of a class, or light: of
what says more, nothing is known.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final, Literal, NamedTuple

from core.message import beside_dose, quantities
from core.message.amounts import GRAMS, LITRES, MILLILITRES, SHARES, SPOONS
from core.message.fold import fold
from core.message.lexicon import lexicon, meanings
from core.message.tokens import Token, cut
from core.message.wordfile import spelt

LONGEST: Final = 14
"""More words than these say more than one thing of a plan."""

PHRASE: Final = 6
"""Words of the longest entry."""

_WORD: Final = re.compile(r"[^\s,.;:!?¿¡()\"]+")
_MEASURES: Final = {
    **dict.fromkeys(GRAMS, "grams"),
    **dict.fromkeys(LITRES, "litres"),
    **dict.fromkeys(SPOONS, "spoons"),
    **dict.fromkeys(MILLILITRES, "millilitres"),
    "%": "percent",
}
"""Which of `Amounts` a unit is of."""

_LEADS: Final = frozenset({"ok", "okay"})
"""Words that say no more than that what follows is an answer."""

_AS_IT: Final = " it "


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


@cache
def _classes() -> dict[str, frozenset[str]]:
    """Plain words → the classes that they are of."""
    found: dict[str, set[str]] = {}
    for section, meaning, told in spelt("plan_words.txt"):
        if section == "word":
            for way in told:
                found.setdefault(way, set()).add(meaning)
    return {way: frozenset(of) for way, of in found.items()}


def said_of_plan(text: str) -> Said | None:
    """The classes of all its words; None where one is of none, or there are too many.

    Examples
    --------
    >>> sorted(said_of_plan("Oops, I put in twice as much").classes)
    ['double', 'put']
    >>> said_of_plan("is 20 g safe?").amounts.grams, said_of_plan("I put in my hand") is None
    (20.0, True)
    """
    plain = " ".join(fold(text).split())
    tokens = cut(plain, lexicon(), plain)
    named = [(token.start, token.end) for token in tokens if token.kind == "substance"]
    amounts, spans = _amounts(tokens)
    for start, end in sorted([*named, *spans], reverse=True):
        plain = plain[:start] + _AS_IT + plain[end:]
    words = _WORD.findall(plain)
    if len(words) > 1 and words[0] in _LEADS:
        words.pop(0)
    if not 0 < len(words) <= LONGEST:
        return None
    classes: set[str] = set()
    place = 0
    while place < len(words):
        size, of = _at(words, place)
        if not size:
            return None
        classes |= of
        place += size
    asks = bool(words) and "is" in _classes().get(words[0], ())
    of = frozenset(classes - {"light", "regret"})
    return Said(of, amounts, bool(named), asks, "regret" in classes)


def _amounts(tokens: list[Token]) -> tuple[Amounts, list[tuple[int, int]]]:
    """What is told by number, the first of each kind, and where it stands."""
    told: dict[str, float] = {}
    spans = []
    place = 0
    while place < len(tokens):
        value, unit, last = _amount(tokens, place)
        kind = _MEASURES.get(unit or "")
        if value is None or kind is None or kind in told:
            place += 1
            continue
        told[kind] = value * {**GRAMS, **LITRES, **SPOONS}.get(str(unit), 1.0)
        if kind == "millilitres":
            told[kind] = value
        spans.append((tokens[place].start, tokens[last - 1].end))
        place = last
    return Amounts(**told), spans


def _amount(tokens: list[Token], place: int) -> tuple[float | None, str | None, int]:
    """The amount that begins here: its number, unit and the token behind it."""
    token = tokens[place]
    if token.kind == "number" or token.kind == "slashed":
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
    return (SHARES[str(token.value)] / 100.0, unit, last) if token.value in SHARES else (
        None, None, place,
    )  # fmt: skip


def _at(words: list[str], place: int) -> tuple[int, frozenset[str]]:
    """How many words the longest entry at a place has, and its classes; 0 where there is none."""
    for size in range(min(PHRASE, len(words) - place), 0, -1):
        classes = _classes().get(" ".join(words[place : place + size]))
        if classes is not None:
            return size, classes
    light = any(kind == "fill" for kind, _name in meanings(words[place]))
    return int(light), frozenset()


Telling = Literal[
    "at_once", "gave_all", "gave_two", "gave_double", "gave_one", "gave_it", "go_on", "a_day",
    "days", "litres", "effect", "need", "changed", "safe", "often", "later", "weekly",
    "first", "warm",
]  # fmt: skip
"""To give more than one part together; that all, two parts, twice a part, a part or just "it" went
in; what is next or left; how much a day; over how many days; how many litres; what it does; what is
needed for it and where that is had; that the change was made; whether it is safe; how often; that a
part was missed; whether so much a week will do; which of two goes in first; how warm
the new water should be."""

_MANY: Final = frozenset({"all", "two", "double", "rest"})
_SAFE: Final = frozenset({"safe", "harm"})


class Heard(NamedTuple):
    """What a text says of a plan, and the amounts that it tells."""

    meaning: Telling
    amounts: Amounts = Amounts()


def telling(text: str) -> Heard | None:
    """What a text says of a plan by its words; None where nothing.

    Examples
    --------
    >>> telling("oops i gave double").meaning, telling("can I give both parts today?").meaning
    ('gave_double', 'at_once')
    >>> telling("what do I give today").meaning, telling("is 20 g safe").amounts.grams
    ('go_on', 20.0)
    >>> telling("2nd part now?").meaning, telling("I gave it").meaning, telling("it is")
    ('go_on', 'gave_it', None)
    >>> telling("is 20% a week enough?")
    Heard(meaning='weekly', amounts=Amounts(grams=None, percent=20.0, litres=None))
    """
    said = said_of_plan(text) or said_of_plan(beside_dose.without(text))
    if said is None:
        return None
    asks = "?" in text or said.asks or said.classes >= {"is", "was"}  # was ist das doppelte
    found = _of(said.classes - {"is"}, asks=asks)
    if found == "weekly" and "double" in said.classes and said.amounts.percent is None:
        return None  # how often something is done, nobody knows what
    if found is None and said.amounts.of_dose and not asks and said.classes == {"inside"}:
        found = "gave_it"  # 12 g went in
    if found is None or (said.names and said.amounts.of_dose):  # says all by itself
        return None
    return Heard(found, said.amounts)


def regrets(text: str) -> bool:
    """Whether all that a text says is of a plan, with a word of regret.

    Examples
    --------
    >>> regrets("oops 30 g"), regrets("30 g")
    (True, False)
    """
    said = said_of_plan(text)
    return said is not None and said.regrets


def weighed_anew(text: str) -> float | None:
    """The grams that were given in truth: `no, 8 g`, `i gave 8 g not 5.4`; None for other talk.

    A dose that is told without a word of regret is one more.

    Examples
    --------
    >>> weighed_anew("no i gave 11 g"), weighed_anew("it was 8 g, not 5.4")
    (11.0, 8.0)
    >>> weighed_anew("is 8 g ok"), weighed_anew("i put in 8 g")
    (None, None)
    """
    plain, instead = without_instead(text)
    said = said_of_plan(plain)
    if said is None or said.names or "?" in text or said.classes - _ANEW:
        return None
    return (
        said.amounts.grams if instead or "no" in said.classes or "put" not in said.classes else None
    )


def named_instead(text: str) -> tuple[float, str, float] | None:
    """So many grams of a substance in the place of others: `9 g baking soda instead of 3`.

    Examples
    --------
    >>> named_instead("9 g Natron statt 3 g"), named_instead("9 g baking soda")
    ((9.0, 'sodium bicarbonate', 3.0), None)
    """
    plain, instead = without_instead(text)
    other = _instead_of().search(" ".join(fold(text).split()).rstrip(".! "))
    said = said_of_plan(plain) if instead and "?" not in text else None
    named = {str(t.value) for t in cut(plain, lexicon(), plain) if t.kind == "substance"}
    if said is None or other is None or len(named) != 1 or said.classes - _ANEW - {"inside"}:
        return None
    grams, number = said.amounts.grams, other["last"] or other["first"]
    return None if grams is None else (grams, named.pop(), float(number.replace(",", ".")))


class Named(NamedTuple):
    """So many grams of a substance, told alone; whether they are said to put others right."""

    grams: float
    substance: str
    anew: bool


def named_alone(text: str) -> Named | None:
    """Grams of a substance that are all that is said: `oh and 20 g epsom salt`.

    Examples
    --------
    >>> named_alone("oh and 20 g epsom salt")
    Named(grams=20.0, substance='magnesium sulfate heptahydrate', anew=False)
    >>> named_alone("actually it was 30 g of baking soda").anew, named_alone("20 g soda?")
    (True, None)
    """
    said = None if "?" in text else said_of_plan(text)
    if said is None or said.asks or not said.names or said.classes - _ANEW - {"inside", "more"}:
        return None
    plain = fold(text)
    named = {str(t.value) for t in cut(plain, lexicon(), plain) if t.kind == "substance"}
    if said.amounts.grams is None or len(named) != 1:
        return None
    anew = said.regrets or bool(said.classes & {"no", "was"})
    return Named(said.amounts.grams, named.pop(), anew)


_ANEW: Final = frozenset({"put", "give", "no", "is", "was", "all"})


def without_instead(text: str) -> tuple[str, bool]:
    """A text, folded, without the amount that did not go in, and whether it had one.

    What went in is grams, where its number stands alone.

    Examples
    --------
    >>> without_instead("9 g statt 3 g"), without_instead("instead of 3 g i gave 9")
    (('9 g', True), ('i gave 9 g', True))
    >>> without_instead("9 g")
    ('9 g', False)
    """
    folded = " ".join(fold(text).split()).rstrip(".! ")
    plain, found = _instead_of().subn("", folded)
    if not found or not plain:
        return folded, False
    return _BARE.sub(r"\1 g", plain), True


_BARE: Final = re.compile(r"((?:^|(?<=[ ,]))\d{1,5}(?:[.,]\d{1,3})?)$")


@cache
def _instead_of() -> re.Pattern[str]:
    nots = r"(?:(?:and|et|y|e|en|i|och|und) )?(?:not|nicht|pas|no|nao|non|niet|nie|inte)"
    ways = f"{nots}|{beside_dose.instead()}"
    number, grams = r"\d{1,5}(?:[.,]\d{1,3})?", r"(?: ?g\w{0,5})?"
    return re.compile(
        rf"[ ,]+(?:{ways}) (?P<last>{number}){grams}$"
        rf"|^(?:{beside_dose.instead()}) (?P<first>{number}){grams}[, ]+"
    )


def _of(said: frozenset[str], *, asks: bool) -> Telling | None:
    """The meaning of the classes of a text's words."""
    if "warm" not in said:
        said = said - {"water"}
    wishes = "may" in said or (asks and "put" not in said)
    if "weekly" in said:  # twice a week is no double of it
        light = {"weekly", "enough", "once", "double", "may", "give", *_SAFE}
        return "weekly" if not said - light else None
    is_in, said = "inside" in said, said - {"inside"}
    if _at_once(said, asks=asks):
        return "at_once"
    said = said - {"now", "more"} | ({"once"} if "now" in said else set())
    if "changed" in said:
        return None if wishes or said - {"changed", "once", "put"} else "changed"
    if said >= {"where", "buy"}:
        said = said - {"where", "buy"} | {"need"}
    said = said - {"was"} if "double" not in said else said
    if "missed" in said:
        told = not wishes and not said - {"missed", "part", "place", "once", "give"}
        return "later" if told else None
    for only in ("first", "warm", "effect", "need", "litres", "days", "often"):
        if only in said:
            beside = {only, "put", "give", "once", "part", "safe"}
            beside |= {"may"} if only in {"first", "often", "warm"} else set()
            beside |= {"water"} if only == "warm" else set()
            return only if not said - beside else None
    if said & _SAFE:
        return "safe" if asks and not said - {*_SAFE, "once", "part", "give", "put"} else None
    if "put" in said and not wishes:
        return _given(said)
    if is_in and not wishes and said & {"part", "place", "two", "all", "rest"}:
        return _given(said)  # first one in
    if "double" in said and "was" in said and not wishes:
        return "gave_double"
    said = said - {"was", "may"}
    if "a_day" in said:
        return "a_day" if not said - {"a_day", "give", "part"} else None
    of_part = said >= {"part", "place"} or said >= {"give", "once"}
    going_on = said & {"next", "left", "onward"} or of_part
    return "go_on" if going_on and not said & (_MANY - {"rest"}) else None


def _at_once(said: frozenset[str], *, asks: bool) -> bool:
    """Whether more than a part at a time is asked for."""
    if said & _SAFE:
        return bool(said & _MANY) and "once" in said
    many = said & (_MANY | {"more"})
    if "may" in said:
        return bool(many) or "once" in said
    if asks and said == {"once"}:
        return True  # same time?
    given = said & {"give", "part", "once"} and "put" not in said
    return bool(asks and given and said & _MANY)


def _given(said: frozenset[str]) -> Telling | None:
    if "double" in said:
        return "gave_double"
    if said & {"all", "rest"}:
        return "gave_all"
    if "two" in said:
        return "gave_two"
    if said - {"put", "give", "once", "part", "place"}:
        return None
    return "gave_one" if said & {"part", "place"} else "gave_it"
