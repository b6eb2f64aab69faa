"""What tells, of whoever did it, that something went in: `my dad chucked in a full bag`.

told = dosed | put ( thing | vessel | amount | substance ) | put_it end
       | amount substance ( when | "in the tank" )
       | ( did_it | put number ) too
where nothing asks, wishes or denies, and what was put in is no `other` thing and no animals.

It is asked only of a message that nothing else understood. A dose that is lost is a second dose:
so little is enough to ask about it. The words stand in ``gave_told.txt``.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from typing import Final, NamedTuple

from core.message import kinds
from core.message.asking_words import asks
from core.message.deed_told import without_person
from core.message.deed_unsure import is_unsure
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.once import once
from core.message.plan_said import (
    Amounts,
    amounts_in,
    classes_in,
    only_asks,
    said_of_plan,
    substances_named,
)
from core.message.plan_words import telling
from core.message.tokens import cut
from core.message.wordfile import patterns, spelt

FILE: Final = "gave_told.txt"
_SECTIONS: Final = (
    "dosed",
    "put",
    "put_it",
    "thing",
    "vessel",
    "when",
    "none",
    "not",
    "other",
    "did_it",
    "too",
    "unaware",
    "got",
    "measure",
    "each",
    "or",
    "water",
    "undone",
    "who",
    "both",
)
_END: Final = 18
"""Characters at the end of a text that tell `put it in`."""
_OF_ONE: Final = 10
"""Words of what one cap holds, at most."""
_NUMBERS: Final[Mapping[str, float]] = {
    "a": 1.0, "one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0, "six": 6.0,
    "half a": 0.5, "a couple of": 2.0, "eine": 1.0, "ein": 1.0, "zwei": 2.0, "drei": 3.0,
    "vier": 4.0, "une": 1.0, "un": 1.0, "deux": 2.0, "trois": 3.0, "dos": 2.0, "tres": 3.0,
    "dois": 2.0, "duas": 2.0, "due": 2.0, "tre": 3.0, "twee": 2.0, "drie": 3.0, "dwie": 2.0,
    "trzy": 3.0, "en": 1.0, "två": 2.0, "tva": 2.0,
}  # fmt: skip
LONGEST: Final = 200
"""A longer text says more. [characters]"""

_ALONE: Final = re.compile(
    r"(?<![\w.,:#])(?<!part )(?<!at )\d{1,4}(?:[.,]\d{1,3})?"
    r"(?!\s?(?:%|/|l\b|am\b|pm\b|h\b|days?\b|parts?\b|of\b)|[\w:]|[.,]\d)"
)

_LED: Final = re.compile(r"^(?:no|nein|non|nee|nie|nej)[\s,.!]+")
"""What only answers: no, he put another bag in."""


class Gave(NamedTuple):
    """What a text tells of what went in."""

    amounts: Amounts
    substances: frozenset[str]
    numbers: tuple[float, ...] = ()
    """Bare ones, which may be of the unit of what was spoken of."""
    sure: bool = True
    """False where a bare number is all that was put in: gave 2.7."""
    vessel: bool = False
    """Whether it was a bag, a scoop or the like: nobody knows how much."""
    parts: float | None = None
    """How many parts of a plan it was: half of one, two; None where nothing of that is told."""
    other: bool = False
    """Whether it was so much of a thing that no word for a part of a plan names: of the ash."""
    counted: float | None = None
    """How many caps, scoops or the like it was, of which each may hold anything."""
    either: bool = False
    """Whether one of the numbers is meant, and it is not known which: 4 or 6."""


@cache
def _patterns() -> Mapping[str, re.Pattern[str]]:
    return patterns(FILE, _SECTIONS)


@once
def gave(text: str) -> Gave | None:
    """What a text tells to have gone in; None where it tells none of that.

    Examples
    --------
    >>> gave("my dad chucked in a full 1 kg bag already").amounts.grams
    1000.0
    >>> gave("someone else dosed it too") is None, gave("gave a bit less, 2.5").numbers
    (False, (2.5,))
    >>> gave("my wife put plants in"), gave("did she dose it?"), gave("i will put a spoon in")
    (None, None, None)
    >>> gave("husband did it too") is None, gave("put a bag in not knowing") is None
    (False, False)
    >>> gave("10g soda in the tank") is None, gave("10 g soda in the tank tomorrow")
    (False, None)
    >>> gave("he put a bag of shrimps in"), gave("my dad dosed the fish tank") is None
    (None, False)
    >>> gave("added 4 caps of it").numbers, gave("added 4 caps of it").counted
    ((), 4.0)
    >>> gave("not sure if i added 4 or 6").numbers, gave("not sure if i added 4 or 6").either
    ((4.0, 6.0), True)
    >>> gave("put half of it in, kh test was 3 drops before that").numbers
    ()
    >>> gave("put a test in, kh 3") is None
    True
    >>> gave("i already put a tablespoon in yesterday, should have said").amounts.spoons
    3.0
    >>> gave("put half in will do the other half tomorrow").parts, gave("put 3 g in, almost")
    (0.5, None)
    >>> gave("i chucked in 2 tsp this morning, is it still that much?").amounts.spoons
    2.0
    >>> gave("chuck 2 tsp in, is that too much?"), gave("i put 2 tsp in, ok?")
    (None, None)
    """
    if len(text) > LONGEST:
        return None
    return _gave(text) or ((deed := deed_alone(text)) and _gave(deed)) or None


def deed_alone(text: str) -> str | None:
    """A text without what stands behind its last deed, which is of what comes next or is asked.

    None where nothing does, or where what does undoes the deed.

    Examples
    --------
    >>> deed_alone("i put some in at nine, should have said. can i give more?")
    'i put some in at nine'
    >>> deed_alone("i put some in, not really"), deed_alone("i put some in")
    (None, None)
    """
    words = _patterns()
    plain = words["unaware"].sub(" ", " ".join(fold(text).replace("’", "'").split()))
    joints = [each.span() for each in _BEHIND.finditer(plain)]
    starts, ends = [0, *(end for _, end in joints)], [*(start for start, _ in joints), len(plain)]
    deeds = [
        place
        for place, (start, end) in enumerate(zip(starts, ends, strict=True))
        if words["put"].search(plain[start:end]) or words["dosed"].search(plain[start:end])
        if not (words["not"].search(plain[start:end]) or asks(plain[start : end + 1]))
    ]
    if not deeds or deeds[-1] == len(joints):
        return None
    deed, behind = plain[: ends[deeds[-1]]], plain[starts[deeds[-1] + 1] :]
    if words["undone"].search(behind) or is_unsure(behind):
        return None
    if not asks(behind):
        return deed
    own = plain[starts[deeds[-1]] : ends[deeds[-1]]]
    by_whom = without_person(own) != own or words["who"].search(own) or words["when"].search(own)
    return deed if by_whom and len(behind.split()) >= _A_QUESTION else None


_BEHIND: Final = re.compile(
    r"[.;,!?]\s+|\s(?:and|but|und|aber|et|mais|y|pero|e|mas|ma|en|maar|ale|och|men)\s"
    r"|(?<=\bin)\s(?=(?:and |so |i )?(?:will|ill|i'll|gonna|going to|remind|should|shall)\b)"
)
"""Where what comes next, or is asked, may begin behind a deed."""

_A_QUESTION: Final = 3
"""Words of a question of its own: `ok?` asks for the deed before it."""


def _gave(text: str) -> Gave | None:
    """What a text tells to have gone in, where all of it is of that."""
    if asks(text) or only_asks(text):
        return None
    plain = _LED.sub("", " ".join(fold(text).replace("’", "'").replace("'s in", " is in").split()))
    words = _patterns()
    plain = _untested(" ".join(words["unaware"].sub(" ", plain).split()))
    if not is_unsure(text) and words["not"].search(plain):
        return None
    substances = frozenset(substances_named(text))
    amounts = amounts_in(text)
    if not substances and words["other"].search(plain):
        return None
    put = words["put"].search(plain) is not None
    counted, plain_rest = _counted(plain)
    vessel = counted is not None or words["vessel"].search(plain) is not None
    thing = words["thing"].search(plain)
    dosed = words["dosed"].search(plain) or amounts.of_dose or substances or (put and thing)
    if not dosed and kinds.said_in(without_person(plain)):
        return None  # put a bag of shrimps in
    told = put and (substances or amounts.of_dose or vessel or thing)
    measured = bool(substances) and amounts.of_dose
    told = told or (measured and words["when"].search(plain))
    told = told or (measured and words["water"].search(plain) is not None and not _is_meant(text))
    told = told or words["dosed"].search(plain) or words["put_it"].search(plain[-_END:])
    too = words["too"].search(plain)
    told = told or (too and words["did_it"].search(plain))
    bare = [float(found.group().replace(",", ".")) for found in _ALONE.finditer(plain_rest)]
    if not (told or (put and bare)):
        return None
    bare = [] if amounts.of_dose else bare
    sure = bool(told or too)
    other = amounts.of_dose and not vessel and _of_a_thing(plain)
    either = len(bare) == 2 and _either().search(plain) is not None
    return Gave(
        amounts, substances, tuple(bare), sure, vessel, _parts(plain), other, counted, either
    )


def names_other(plain: str) -> bool:
    """Whether a folded text names a thing that is no dose: food, a filter, a water change."""
    return _patterns()["other"].search(plain) is not None


def _is_meant(text: str) -> bool:
    """Whether a text is of what is to come, or of a share of what is wished."""
    said = classes_in(text)
    tokens = cut(fold(text), lexicon(), text)
    later = any(token.value in {"tomorrow", "wish", "may", "if", "ask"} for token in tokens)
    asked = any(token.kind in {"ask", "analyte"} for token in tokens)
    return later or asked or bool(said & {"may", "shall", "will", "ask", "query"})


def tells_test_beside(text: str) -> bool:
    """Whether a text tells a deed, and a test beside it.

    Examples
    --------
    >>> tells_test_beside("added the first part, test was 3 drops"), tells_test_beside("kh was 3")
    (True, False)
    """
    plain = fold(text)
    return _untested(plain) != plain.strip(" .;,!")


def _untested(plain: str) -> str:
    """A text without the clauses that tell only what was tested beside a deed.

    Examples
    --------
    >>> _untested("put the second half in just now, kh test was 3 drops before that")
    'put the second half in just now'
    >>> _untested("kh test was 3, put half in"), _untested("put the test in, it fell, kh 3")
    ('put half in', 'put the test in, it fell')
    """
    parts = _CLAUSE.split(plain)
    deeds = _patterns()["put"], _patterns()["dosed"]
    done = [any(each.search(part) for each in deeds) for part in parts[::2]]
    if not any(done):
        return plain
    joints = ["", *parts[1::2]]
    told = zip(joints, parts[::2], done, strict=True)
    kept = [joint + part for joint, part, deed in told if deed or not _tells_test(part)]
    return "".join(kept).strip(" .;,!")


def _tells_test(clause: str) -> bool:
    tokens = cut(clause, lexicon(), clause)
    measured = {"analyte", "number"} <= {token.kind for token in tokens}
    return measured or "test" in classes_in(clause)


_CLAUSE: Final = re.compile(r"([.;,!]\s|\s(?:and|und|et|y|e|en|i|och)\s)")


@cache
def _counts() -> re.Pattern[str]:
    measures = _patterns()["measure"].pattern
    numbers = "|".join([r"\d{1,3}(?:[.,]\d{1,2})?", *sorted(_NUMBERS, key=len, reverse=True)])
    return re.compile(rf"(?<![\w.,])({numbers}) (?:\w+ )?{measures}")


@cache
def _either() -> re.Pattern[str]:
    return re.compile(rf"\d (?:g )?{_patterns()['or'].pattern} \d")


def _counted(plain: str) -> tuple[float | None, str]:
    """How many caps, scoops or the like are told, and the text without them.

    Examples
    --------
    >>> _counted("added 4 caps of it"), _counted("put two big scoops in"), _counted("put 4 in")
    ((4.0, 'added  of it'), (2.0, 'put  in'), (None, 'put 4 in'))
    """
    found = _counts().search(plain)
    if found is None:
        return None, plain
    told = found.group(1)
    count = _NUMBERS[told] if told in _NUMBERS else float(told.replace(",", "."))
    return count, f"{plain[: found.start()]}{plain[found.end() :]}"


def holds(text: str) -> Amounts | None:
    """What one cap or the like holds, as it is told; None where a text tells no such thing.

    Examples
    --------
    >>> holds("the cap is about 5ml").millilitres, holds("each holds a teaspoon").spoons
    (5.0, 1.0)
    >>> holds("5 ml"), holds("does one hold 5 ml?"), holds("i added 4 caps")
    (None, None, None)
    """
    amounts = amounts_in(text)
    if "?" in text or asks(text) or not amounts.of_dose or len(text.split()) > _OF_ONE:
        return None
    words, plain = _patterns(), fold(text)
    return amounts if words["measure"].search(plain) or words["each"].search(plain) else None


def tells_of_each(text: str) -> bool:
    """Whether a text tells no more than how much each of several things was.

    Examples
    --------
    >>> tells_of_each("each was 8 grams"), tells_of_each("both of them were 2 tsp i think")
    (True, True)
    >>> tells_of_each("8 g each?"), tells_of_each("8 grams"), tells_of_each("ill give 8 g each")
    (False, False, False)
    """
    if "?" in text or asks(text) or len(text.split()) > _OF_ONE:
        return False
    words, plain = _patterns(), fold(text).replace("’", "'")
    each = words["both"].search(plain) is not None and words["not"].search(plain) is None
    return each and amounts_in(text).of_dose


def _of_a_thing(plain: str) -> bool:
    """Whether a word that is none of a plan stands where an amount tells what it is of.

    Examples
    --------
    >>> _of_a_thing("put 20 grams of the ash in"), _of_a_thing("put 20 grams of the powder in")
    (True, False)
    >>> _of_a_thing("put 20 grams of it in"), _of_a_thing("put 20 grams in this morning")
    (False, False)
    """
    tokens = cut(plain, lexicon(), plain)
    for place, token in enumerate(tokens):
        if token.kind != "unit" or place == 0 or tokens[place - 1].kind != "number":
            continue
        behind = tokens[place + 1 :]
        while behind and (behind[0].value == "link" or behind[0].kind == "fill"):
            behind = behind[1:]
        if behind == tokens[place + 1 :] or not behind or behind[0].kind != "word":
            continue  # 20 g by mistake: not said to be of it
        return not classes_in(behind[0].text) and behind[0].text.isalpha()
    return False


class OfGot(NamedTuple):
    """What is at hand, what of it went in, and the words of that deed."""

    substance: str
    amounts: Amounts
    deed: str


def of_got(text: str) -> OfGot | None:
    """A thing that is told to be at hand, and so much put in behind it; None where more is said.

    Examples
    --------
    >>> told = of_got("ok got the baking soda now. added 4 grams")
    >>> told.substance, told.amounts.grams, told.deed
    ('sodium bicarbonate', 4.0, 'added 4 grams')
    >>> of_got("got the baking soda. how much do i put in"), of_got("got salt. 4 g of soda in")
    (None, None)
    >>> of_got("got 500 g baking soda. added 4 g"), of_got("got the baking soda. will add 4 g")
    (None, None)
    """
    if "?" in text or len(text) > LONGEST:
        return None
    for joint in _JOINT.finditer(text):
        got, deed = text[: joint.start()], text[joint.end() :].strip()
        heard, named = telling(deed), substances_named(got)
        if heard is None or heard.meaning != "gave_it" or not heard.amounts.of_dose:
            continue
        plain, found = fold(got), _patterns()["got"].search(fold(got))
        if found is None or len(named) != 1 or substances_named(deed):
            continue
        rest = said_of_plan(f"{plain[: found.start()]} {plain[found.end() :]}")
        light = rest is not None and not rest.classes - {"now"} and rest.amounts == Amounts()
        if light and rest is not None and not (rest.asks or rest.queries):
            return OfGot(named.pop(), heard.amounts, deed)
    return None


_JOINT: Final = re.compile(r"[.;!,](?=\s)|\n|\b(?:and|und|et|y|e|en|i|och)\b(?: then\b)?")


def would_give(text: str) -> bool:
    """Whether a text asks or plans to put more in, of nothing that is no dose.

    Read only where nothing else understood it, and something stands against any dose.

    Examples
    --------
    >>> would_give("ok so still put the buffer in?"), would_give("tonight i'll give 6 more, ok?")
    (True, True)
    >>> would_give("so how much more do i add"), would_give("so what's left to give")
    (True, True)
    >>> would_give("should i put an air stone in"), would_give("i gave 6 more"), would_give("more?")
    (False, False, False)
    """
    if len(text) > LONGEST:
        return False
    plain = " ".join(fold(text).replace("’", "'").split())
    if _patterns()["other"].search(plain) or kinds.said_in(without_person(plain)):
        return False
    if asks_bare_amount(text):
        return True
    said = classes_in(text)
    intends = bool(said & {"may", "shall", "will", "ask", "query"}) or asks(text)
    deed = bool(said & {"give", "put"}) or ("may" in said and bool(said & {"part", "spoon"}))
    return intends and deed and not said & {"no", "missed", "stop", "store"}


def asks_bare_amount(text: str) -> bool:
    """Whether an amount, or less of it, is all that a question says: `4 tablespoons?`, `half ok?`.

    Examples
    --------
    >>> asks_bare_amount("4 tablespoons?"), asks_bare_amount("so just 3 spoons then ok?")
    (True, True)
    >>> asks_bare_amount("4 tablespoons"), asks_bare_amount("90% water change ok?")
    (False, False)
    """
    if "?" not in text:
        return False
    told = said_of_plan(text)
    if told is None or told.classes - _OF_AMOUNT:
        return False
    amounts = told.amounts
    return any((amounts.grams, amounts.millilitres, amounts.spoons)) and not told.queries


_OF_AMOUNT: Final = frozenset({"may", "safe", "ask", "now", "give", "put", "part", "half", "more"})
"""Classes of what may stand beside an amount that is asked about."""


def denies(text: str) -> bool:
    """Whether a text answers, with no other word, that nothing went in.

    Examples
    --------
    >>> denies("No, they didn't!"), denies("nothing to say")
    (True, False)
    """
    plain = " ".join(re.sub(r"[^\w\s]", "", fold(text).replace("'", "")).split())
    return plain in _NONE


_NONE: Final = frozenset(
    re.sub(r"[^\w\s]", "", way)
    for section, _language, ways in spelt(FILE, _SECTIONS)
    for way in ways
    if section == "none"
)


def _parts(plain: str) -> float | None:
    """How many parts are told: half of one, or two."""
    said = classes_in(plain)
    if "half" in said:
        return 0.5
    return 2.0 if said & {"two", "double"} else None
