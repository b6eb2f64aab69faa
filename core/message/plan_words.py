"""Words that tell in any order what is said of the plan just given: `oops i gave it twice`.

Beside `plan_talk`, which knows whole sentences. Every word must be one of a class, or light: of
what says more, nothing is known.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final, Literal, NamedTuple

from core.message import beside_dose
from core.message.beside_dose import together
from core.message.fold import fold
from core.message.obliged import is_obliged
from core.message.once import once
from core.message.plan_said import Amounts, Said, behind_lead, said_of_plan

Telling = Literal[
    "at_once", "gave_all", "gave_two", "gave_double", "gave_one", "gave_it", "go_on", "a_day",
    "days", "litres", "effect", "need", "changed", "safe", "often", "later", "weekly",
    "first", "warm", "end", "sure", "stop", "store", "hour",
    "not_given", "gave_too_much", "when_next", "lot", "check", "spoons", "gave_half", "so_much",
    "to_come", "for_us",
]  # fmt: skip
"""To give more than one part together; that all, two parts, twice a part, a part or just "it" went
in; what is next or left; how much a day; over how many days; how many litres; what it does; what is
needed for it and where that is had; that the change was made; whether it is safe; how often; that a
part was missed; whether so much a week will do; which of two goes in first; how warm
the new water should be; where it leads, how sure that is; that it may end before, how what is left
is kept, at which hour it goes in; that it did not go in; that too much of it did; whether to go on
testing, or to give the same tomorrow; that it is much, or little; whether so many grams are right;
that there is no scale; that half of it went in; that so much and no more shall go in, or that it
will; that we shall put it in, who only tell."""

_DEEDS: Final = frozenset(
    {"gave_all", "gave_two", "gave_one", "gave_it", "gave_half", "changed", "not_given"}
)
_TOLD: Final = _DEEDS | {"gave_double", "gave_too_much"}
_MORE: Final = frozenset({"gave_all", "gave_two", "gave_double"})
_MANY: Final = frozenset({"all", "two", "double", "rest"})
_SAFE: Final = frozenset({"safe", "harm"})


class Heard(NamedTuple):
    """What a text says of a plan, and the amounts that it tells."""

    meaning: Telling
    amounts: Amounts = Amounts()


_SO_MUCH: Final = frozenset({"half", "double", "two"})
_MORE_OR_LESS: Final = frozenset({"gave_half", "gave_double", "gave_two"})
"""What opens a deed put right may tell: actually i gave double."""


@once
def telling(text: str) -> Heard | None:
    """What a text says of a plan by its words; None where nothing.

    Examples
    --------
    >>> telling("oops i gave double").meaning, telling("can I give both parts today?").meaning
    ('gave_double', 'at_once')
    >>> telling("what do I give today").meaning, telling("is 20 g safe").amounts.grams
    ('go_on', 20.0)
    >>> telling("what did i dose") is None
    True
    >>> telling("2nd part now?").meaning, telling("I gave it").meaning, telling("it is")
    ('go_on', 'gave_it', None)
    >>> telling("i only put half in").meaning, telling("just 1 g").amounts.grams
    ('gave_half', 1.0)
    >>> telling("actually i only gave half of it").meaning, telling("i didnt put half in")
    ('gave_half', None)
    >>> telling("ok in").meaning, telling("done, all at once").meaning, telling("in") is None
    ('gave_it', 'gave_all', True)
    >>> telling("n again bc i forgot").meaning, telling("gave it twice because i forgot").meaning
    ('gave_double', 'gave_double')
    >>> telling("ill put it in tonight").meaning, telling("ill only do 10 l").meaning
    ('to_come', 'so_much')
    >>> telling("didnt do it, ill do both tomorrow").meaning
    'at_once'
    >>> telling("put the first bit in, fish look fine").meaning
    'gave_one'
    >>> telling("is 20% a week enough?").meaning, telling("is 20% a week enough?").amounts.percent
    ('weekly', 20.0)
    """
    if _too_many(text):
        return Heard("at_once")
    said = said_of_plan(text) or said_of_plan(beside_dose.without(text))
    said = said or said_of_plan(beside_dose.without_well(text))
    if said is None:
        return None
    asks = "?" in text or said.asks or said.classes >= {"is", "was"}  # was ist das doppelte
    if said.orders:
        deed = said.classes & {"put", "give", "inside"} and not said.classes - _OF_ORDER
        return Heard("for_us") if deed and not (said.asks or said.queries) else None
    if _checked(said, asks=asks):
        return Heard("check", said.amounts)
    if _unweighed(said):
        return Heard("spoons")
    if "unaware" in said.classes and not (asks or said.queries):
        twice = said.classes & {"again", "double"} and not said.classes - _OF_TWICE
        if not twice or said.amounts.of_dose:
            return Heard("gave_it", _doubled(said.amounts)) if twice else None
        return Heard("gave_double")
    said = said._replace(classes=said.classes - {"only_own"})
    if said.amounts.of_dose and "put" in said.classes and not (asks or said.queries):
        said = said._replace(classes=said.classes - {"need"})  # put in 10 g total
    if said.amounts.of_dose and not (asks or said.queries) and is_obliged(text):
        said = said._replace(classes=said.classes | {"shall"})  # need to put 3 g in
    if not (asks or said.queries) and (coming := _to_come(said)) is not None:
        return Heard(coming, said.amounts)
    found = _of(said.classes - {"is"}, asks=asks)
    if found == "weekly" and "double" in said.classes and said.amounts.percent is None:
        return None  # how often something is done, nobody knows what
    if found is None and said.amounts.of_dose and not asks and said.classes == {"inside"}:
        found = "gave_it"  # 12 g went in
    if found is None and said.led and {"inside"} <= said.classes <= _IS_IN:
        found = None if asks or _MYSELF.search(fold(text)) else "gave_it"  # ok in
    if found is None and "no" in said.classes and said.classes & _SO_MUCH:
        behind = telling(behind_lead(text, "anew") or "")  # no, i only gave half; not: didnt give
        found = behind.meaning if behind is not None and behind.meaning in _MORE_OR_LESS else None
    alone = not asks and not said.classes and not said.names and not said.queries
    if found is None and alone and said.amounts.grams is not None:
        found = "so_much"  # 1 g, and no more
    if found in {"gave_it", "gave_one"} and not said.amounts.of_dose and together(text):
        found = "gave_all"  # done, all at once
    if found == "not_given" and said.amounts.of_dose:
        found = "gave_it"  # no i put in 9 g
    if found is None or (said.names and said.amounts.of_dose):  # says all by itself
        return None
    if found == "a_day" and said.amounts.litres is not None:
        return None  # how much of it for 200 l
    if said.queries and found in _TOLD:
        return None  # what did i dose
    if said.inverts and found in _TOLD:  # so have you put it all in: nothing is told
        many = found in _MORE and ("may" in said.classes or "?" in text)
        return Heard("at_once" if many else "go_on")
    return Heard(found, said.amounts)


def _too_many(text: str) -> bool:
    """Whether more than a part is meant to go in together: nothing of that is in.

    Examples
    --------
    >>> _too_many("ill do both tomorrow"), _too_many("forgot yesterdays so im doing double today")
    (True, True)
    >>> _too_many("did both yesterday"), _too_many("ill do it in two parts")
    (False, False)
    """
    said = said_of_plan(_YESTERDAY.sub(" ", fold(text).replace("’", "'")))
    if said is None or said.names or said.amounts != Amounts() or said.queries or said.orders:
        return False
    classes = said.classes
    if not classes & {"two", "double", "all"} or classes - _MEANT or "unaware" in classes:
        return False
    if {"part", "inside"} <= classes and not classes & {"put", "give"}:
        return False  # in two parts
    if not classes & {"two", "double", "put", "give", "inside"}:
        return False  # tout va bien?
    if classes & {"shall", "will"} or classes >= {"missed", "double", "now"}:
        return True
    return "double" in classes and "now" in classes and not classes & {"put", "give"}


def _checked(said: Said, *, asks: bool) -> bool:
    """Whether it is asked if so many grams are meant: so 5.4g total right?"""
    classes = said.classes
    asked = "right" in classes or (asks and "need" in classes)
    return asked and said.amounts.grams is not None and not classes - _OF_CHECK


def _unweighed(said: Said) -> bool:
    """Whether there is no scale, or only a spoon: only got a teaspoon no scale."""
    spoon = "spoon" in said.classes or said.amounts.spoons is not None
    told = "scale" in said.classes or ("only_own" in said.classes and spoon)
    return told and not said.names and not said.classes - _OF_SPOON


def _doubled(amounts: Amounts) -> Amounts:
    return Amounts(*(None if each is None else 2 * each for each in amounts))


def _to_come(said: Said) -> Telling | None:
    """What is meant to be done: so much and no more, or what was planned."""
    told = any(amount is not None for amount in said.amounts)
    will = "shall" in said.classes
    if told and not said.names and not said.classes - (_WILL if will else _NO_MORE):
        return "so_much" if will or said.only else None
    deed = said.classes & {"put", "give", "rise", "test", "now", "later"} and will
    return "to_come" if deed and not told and not said.classes - _WILL else None


def _of(said: frozenset[str], *, asks: bool) -> Telling | None:
    """The meaning of the classes of a text's words."""
    if (asks or "may" in said) and said in _OF_NOW:
        return "go_on"
    if asks and said == {"two", "now"}:
        return "at_once"  # both today?
    if "ask" in said:  # how much do i put in today: nothing is told
        said = said - {"ask"}
        if said & {"put", "inside", "give"} and not said - _OF_INTENT:
            return "at_once" if said & {"all", "two", "double"} else "go_on"
    if (of_test := _tested_on(said, asks=asks)) is not None or said >= {"test"}:
        return of_test
    said = said - {"again", "right", "spoon"}
    if "over" in said:  # so finished?
        return "go_on" if asks and not said - _OF_OVER else None
    if "lot" in said:  # thats a lot, u sure
        if not said - _OF_LOT:
            return "lot"
        if "may" not in said:
            return None
        said = said - {"lot"}  # thats a lot can i put it all in
    if "warm" not in said:
        said = said - {"water"}
    if "value" in said:  # whats the ph after, will it change gh
        return "end" if said & _LEADS_ON and not said - _OF_END else None
    if "will" in said and said & {"put", "inside"} and not said - _OF_INTENT:
        return "at_once" if said & {"all", "two", "double"} else "go_on"  # i will put it in
    said = said - {"after", "will"} - (set() if "store" in said else {"thing"})
    wishes = "may" in said or (asks and "put" not in said)
    if "later" in said and wishes:  # can i do 2 tomorrow
        said = said - {"later"}
    if "missed" in said:
        return "later" if not said - _OF_MISSED - ({"may"} if wishes else set()) else None
    if "weekly" in said:  # twice a week is no double of it
        return "weekly" if not said - _OF_WEEK else None
    if free := said & _FREE:
        return _free(said, free) if asks or "may" in said or "hour" in said else None
    is_in = "inside" in said
    if "half" in said:
        deed = said & {"put", "inside"} and not (asks or wishes)
        return "gave_half" if deed and not said - _OF_HALF else None
    said = said - {"inside"} | ({"put"} if is_in and "harm" in said else set())
    if _at_once(said, asks=asks):
        return "at_once"
    said = said - {"now", "more"} | ({"once"} if "now" in said else set())
    if "changed" in said:
        return None if wishes or said - {"changed", "once", "put"} else "changed"
    if said >= {"where", "buy"}:
        said = said - {"where", "buy"} | {"need"}
    said = said - {"was"} if "double" not in said else said
    for only, beside in _ALONE.items():
        if only in said:
            return only if not said - {only} - beside - _BESIDE else None
    if "harm" in said and not asks and said & {"put", "inside"} and not said - _TOO_MUCH:
        return "gave_too_much"
    if said & _SAFE:
        return "safe" if asks and not said - _OF_SAFE else None
    if "no" in said:  # i didnt dose it
        plain = not asks and not said - {"no", "put", "give", "part", "once"}
        return "not_given" if plain and said & {"put", "give"} else None
    if "put" in said and not wishes:
        given = _given(said)
        return "go_on" if asks and given in {"gave_it", "gave_one"} else given  # put it in?
    if is_in and not wishes and said & {"part", "place", "next", "two", "all", "rest"}:
        return _given(said)  # first one in
    if "double" in said and "was" in said and not wishes:
        return "gave_double"
    said = said - {"was", "may"}
    if "a_day" in said:
        return "a_day" if not said - {"a_day", "give", "part"} else None
    of_part = said >= {"part", "place"} or said >= {"give", "once"}
    going_on = said & {"next", "left", "onward"} or of_part
    return "go_on" if going_on and not said & (_MANY - {"rest"}) else None


def _tested_on(said: frozenset[str], *, asks: bool) -> Telling | None:
    """Whether it is asked to go on testing, or to give the same tomorrow: should i keep testing."""
    if "test" in said:
        asked = asks or "may" in said
        return "when_next" if asked and not said - _OF_TEST else None
    same = said >= {"again", "later"} and not said - _OF_SAME and "put" not in said
    return "when_next" if same else None


def _free(said: frozenset[str], free: frozenset[str]) -> Telling | None:
    """What is asked of what a plan leaves free: to end it, to keep the rest, the hour."""
    found: tuple[Telling, ...] = ("stop", "store", "hour")
    of = next(each for each in found if each in free)
    return of if not said - {of} - _OF_FREE else None


_BESIDE: Final = frozenset({"put", "give", "once", "part", "safe"})
_ALONE: Final[Mapping[Telling, frozenset[str]]] = {
    "sure": frozenset(),
    "first": frozenset({"may"}),
    "warm": frozenset({"may", "water"}),
    "effect": frozenset(),
    "need": frozenset(),
    "litres": frozenset(),
    "days": frozenset(),
    "often": frozenset({"may"}),
}
"""Classes whose word says all, and what may stand beside it as well as `_BESIDE`."""

_OF_NOW: Final = (
    frozenset({"after"}),
    frozenset({"now"}),
    frozenset({"all", "put"}),
    frozenset({"again"}),
    frozenset({"rest"}),
    frozenset({"rest", "part"}),
    frozenset({"rest", "now"}),
    frozenset({"place"}),
    frozenset({"place", "now"}),
    frozenset({"place", "now", "may"}),
    frozenset({"place", "now", "may", "give"}),
    frozenset({"place", "may", "give"}),
    frozenset({"may", "give"}),
    frozenset({"may", "give", "now"}),
)
"""Whole questions that ask where it stands: so now?, all done?, third one now?, rest of it?"""

_MYSELF: Final = re.compile(r"\bi'?m\b")
_IS_IN: Final = frozenset({"inside", "now"})
_OF_INTENT: Final = frozenset(
    {
        "will", "put", "inside", "give", "part", "place", "next", "now", "once", "is", "later",
        "two", "all", "rest", "double", "after", "more",
    }
)  # fmt: skip
_YESTERDAY: Final = re.compile(
    r"\b(?:yesterday(?:'?s)?|gestern|gestrigen?|hier|ayer|ontem|ieri|gisteren|wczoraj\w{0,4}|igar)\b"
)
_MEANT: Final = frozenset(
    {
        "shall", "will", "two", "double", "all", "later", "now", "put", "give", "inside", "part",
        "no", "missed", "once", "is", "may", "again", "safe", "after", "rest",
    }
)  # fmt: skip
"""Classes of what tells that more than a part shall go in together."""

_OF_OVER: Final = frozenset({"over", "now", "is", "part", "all", "two", "place", "safe", "after"})
_OF_SAME: Final = frozenset({"again", "later", "give", "part", "may", "is", "now"})
_OF_TEST: Final = frozenset(
    {"test", "may", "store", "onward", "again", "now", "after", "is", "more"}
)
_OF_SPOON: Final = frozenset({"ask", "scale", "spoon", "only_own", "may", "is", "part", "no"})
_OF_ORDER: Final = frozenset(
    {"put", "give", "inside", "part", "place", "next", "once", "now", "later", "all", "is"}
)
_NO_MORE: Final = frozenset({"give", "part", "once", "now", "later"})
_WILL: Final = _NO_MORE | {
    "shall", "will", "put", "inside", "rise", "place", "next", "is", "test", "water",
}  # fmt: skip
_OF_TWICE: Final = frozenset(
    {"unaware", "again", "double", "put", "inside", "give", "once", "part"}
)
_OF_HALF: Final = frozenset(
    {"half", "put", "inside", "give", "once", "part", "place", "now", "more", "rest", "is"}
)
_TOO_MUCH: Final = frozenset({"harm", "put", "inside", "give", "once", "part"})
_OF_SAFE: Final = frozenset({*_SAFE, "once", "part", "give", "put", "a_day"})
_FREE: Final = frozenset({"stop", "store", "hour"})
_OF_FREE: Final = frozenset(
    {"may", "rest", "left", "thing", "part", "place", "two", "is", "give", "put", "once", "now"}
)
_OF_MISSED: Final = frozenset({"missed", "part", "place", "once", "give", "now", "more", "was"})
_OF_WEEK: Final = frozenset({"weekly", "enough", "once", "double", "may", "give", *_SAFE})
_OF_END: Final = frozenset(
    {"value", "after", "will", "rise", "part", "place", "once", "is", "more", "give", "effect"}
)
_LEADS_ON: Final = frozenset({"after", "will", "effect"})
_OF_LOT: Final = frozenset(
    {"lot", "sure", "give", "part", "no", "a_day", "now", "safe", "may", "need", "once"}
)
_OF_CHECK: Final = frozenset({"need", "right", "is", "part", "all", "a_day", "give", "once", "now"})


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
    if said - {"put", "give", "once", "part", "place", "next"}:
        return None
    return "gave_one" if said & {"part", "place", "next"} else "gave_it"
