"""Deeds that are only named: what is asked how often, chosen between, or prepared for.

named = deed often | deed "or" thing | thing "or" deed | "for" deed | fed less

`water change how often`, `water change or salt` and `gh 6 for a 40 l water change` tell no deed,
and are asked about; `fed less` is no feeding, but is kept as the note that it is. The words stand
in ``deed_doubted.txt``.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message import doubts
from core.message.bagged import without_bag
from core.message.event_parts import Found
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Doubt, Event
from core.message.plan_said import said_of_plan
from core.message.tokens import Token
from core.message.waters import one_of
from core.message.wordfile import spelt

OF_HAND: Final = frozenset({"water_change", "top_up", "filter", "fed", "media", "dose"})
"""Deeds that a keeper asks about before they are done."""
_WATER: Final = frozenset({"water_change", "top_up"})
_ENDS: Final = re.compile(r"[.!?;\n]")
_SECTIONS: Final = (
    "for", "before", "light", "often", "or", "or_thing", "was_it", "so", "less", "filter", "tests",
    "noun", "weekday", "day", "also",
)  # fmt: skip


@cache
def _patterns() -> dict[str, re.Pattern[str]]:
    """Where each kind of word stands beside a deed: right before it, or right behind.

    Raises
    ------
    ValueError
        If a line has no ``=`` or stands in no section.
    """
    found: dict[str, list[str]] = {section: [] for section in _SECTIONS}
    for section, _language, ways in spelt("deed_doubted.txt", found):
        found[section] += ways
    words = {section: one_of(ways) for section, ways in found.items()}
    light = rf"(?:[\s']+(?:{words['light']}))?[\s']+$"
    things = one_of(_things())
    either = rf"(?:{words['or']})\s+(?!(?:{words['so']})(?!\w)|\d|$)(?=\w)"
    either = rf"(?:{either}|(?:{words['or_thing']})\s+(?:{things})(?!\w))"
    return {
        "for": re.compile(rf"(?<!\w)(?:{words['for']}){light}"),
        "before": re.compile(rf"(?<!\w)(?:{words['before']}){light}"),
        "filter": re.compile(rf"(?<!\w)(?:{words['filter']})(?!\w)"),
        "to_come": re.compile(
            rf"^\W*(?:(?:{words['also']})\W+)?(?:\d+ ?%\W*)?(?:{words['noun']})(?:\W*\d+ ?%)?\W+"
            rf"(?:{words['weekday']})\W*(?:(?:{words['also']})\W*)?$"
            rf"|^\W*(?:(?:{words['also']})\W+)?(?:{words['weekday']}|{words['day']})\W+"
            rf"(?:\d+ ?%\W*)?(?:{words['noun']})(?:\W*\d+ ?%)?\W*(?:(?:{words['also']})\W*)?$"
        ),
        "tests": re.compile(rf"(?<!\w)(?:{words['tests']})(?!\w)"),
        "often": re.compile(rf"[\s,:\-]*(?:{words['often']})(?!\w)"),
        "often_told": re.compile(rf"\s*(?:{words['often']})(?!\w)"),
        "or_amount": re.compile(
            rf"(?<!\w)(?:(?:{words['or']})(?:\s+(?:{words['was_it']}))?"
            rf"|(?:{words['or_thing']})\s+(?:{words['was_it']}))"
            rf"\s+(?P<number>{_AMOUNT})(?:\s*(?:g|gr|gramm?e?s?))?(?![\w%/]|[.,]\d)"
        ),
        "or_before": re.compile(rf"\w[\s,]+(?:{words['or']})\s+$"),
        "or_behind": re.compile(rf"[\s,]+{either}"),
        "or_inside": re.compile(rf"(?<!\w){either}"),
        "less": re.compile(rf"(?<!\w)(?:{words['less']})(?!\w)"),
    }


def _things() -> list[str]:
    """The names of what is put into the water, and of deeds."""
    known = lexicon().words
    return [way for way, entry in known.items() if entry[0] in {"substance", "event"}]


def asked_often(text: str) -> bool:
    """Whether a text asks how often something is done.

    Examples
    --------
    >>> asked_often("water change how often"), asked_often("wechsel"), asked_often("filtr co ile")
    (True, False, True)
    """
    return any(_patterns()["often"].match(fold(text), place) for place in _places(fold(text)))


def of_filter(text: str) -> bool:
    """Whether a text is about a filter or what is in it.

    Examples
    --------
    >>> of_filter("how often rinse the sponge"), of_filter("how often change water")
    (True, False)
    """
    return _patterns()["filter"].search(fold(text)) is not None


def of_tests(text: str) -> bool:
    """Whether a text is about testing the water.

    Examples
    --------
    >>> of_tests("how often should i test"), of_tests("how often change water")
    (True, False)
    """
    return _patterns()["tests"].search(fold(text)) is not None


def _places(plain: str) -> list[int]:
    return [0, *(found.start() for found in re.finditer(r"(?<=\w)[\s,:\-]+", plain))]


def settle(found: list[Found], tokens: list[Token], source: str) -> list[Found]:
    """The same events, those that are only named as doubts."""
    return [_settled(each, tokens, source) for each in found]


def _settled(found: Found, tokens: list[Token], source: str) -> Found:
    event = found.event
    if event is None and found.doubt is not None and found.kind in _WATER:
        before, _ = _around(source, found.doubt.start, found.doubt.end)
        found.later = _patterns()["before"].search(before) is not None
    if event is None or event.kind not in OF_HAND:
        return found
    start, end = event.start, max(event.end, tokens[found.last - 1].end)
    before, behind = _around(source, start, end)
    if event.kind == "dose":
        other = _patterns()["or_amount"].search(fold(source), start)
        if other is not None and not source[end : other.start()].strip(" \t,.…-–"):
            return _either(found, event, tokens, source, other)
    if event.kind == "fed":
        said = fold(source[start:end]) + behind[:_NEAR]
        less = _patterns()["less"].search(said) or _patterns()["less"].search(before[-_NEAR:])
        if less is not None:
            first = source.rfind("\n", 0, start) + 1
            text = source[first : end + len(behind)].strip(" .!,;")
            found.event = Event("note", text=text, start=first, end=end)
            return found
    if _is_named(event, before, without_bag(fold(source[start:end])), behind):
        found.event = None
        found.purpose = _patterns()["for"].search(before) is not None
        found.later = _patterns()["before"].search(before) is not None
        found.doubt = Doubt(source[start:end], start, end, doubts.UNSURE_EVENT)
    return found


def _either(
    found: Found, event: Event, tokens: list[Token], source: str, other: re.Match[str]
) -> Found:
    """A dose that may have been so much or so much: neither is sure (`3 g soda or was it 5`)."""
    end = other.end()
    found.last = max(found.last, sum(token.start < end for token in tokens))
    numbers = re.findall(_AMOUNT, fold(source[event.start : end]))
    choices = tuple(
        f"dosed {number.replace(',', '.')} g {event.substance}"
        for number in dict.fromkeys([*numbers[:1], other["number"]])
        if event.grams and event.substance and len(numbers) == 2
    )
    found.event = None
    found.doubt = Doubt(
        source[event.start : end], event.start, end, doubts.UNSURE_EVENT, choices=choices
    )
    return found


_AMOUNT: Final = r"\d{1,4}(?:[.,]\d{1,3})?"
_NEAR: Final = 12
"""Characters beside a feeding in which it is told that there was less of it."""


def _is_named(event: Event, before: str, said: str, behind: str) -> bool:
    words = _patterns()
    weighed = (event.grams, event.millilitres, event.spoons)
    told = event.kind == "dose" or any(amount is not None for amount in weighed)
    led = words["for"].search(before) or words["before"].search(before)
    if event.kind in _WATER and led is not None:
        return True
    if words["to_come"].match(before + said + behind) is not None:
        return True  # on friday: the last, or the next?
    if event.kind == "dose" and not any(amount is not None for amount in weighed):
        return _is_part(event.substance or "")
    if told:
        return False
    shared = event.percent is not None or event.litres is not None
    if words["often_told" if shared else "often"].match(behind) is not None:
        return True  # but: changed 30%, how often should i do that
    if words["or_before"].search(before) is not None:
        return True
    chosen = words["or_inside"].search(said + behind)
    first = words["or_behind"].match(behind)
    return first is not None or (chosen is not None and chosen.start() < len(said))


_OF_PART: Final = frozenset({"part", "place", "rest", "all", "next", "more", "two"})


def _is_part(substance: str) -> bool:
    """Whether the name of a thing only tells which part of it: `the second part`, not `part a`."""
    if re.search(r"(?<!\w)\w(?!\w)", fold(substance).replace("la ", "")):
        return False
    said = said_of_plan(substance)
    return said is not None and bool(said.classes & {"part", "rest"}) and said.classes <= _OF_PART


def _around(source: str, start: int, end: int) -> tuple[str, str]:
    """What stands before an event and behind it in its sentence, plain."""
    before, behind = source[:start], source[end:]
    begins = [found.end() for found in _ENDS.finditer(before)]
    ending = _ENDS.search(behind)
    before = before[begins[-1] if begins else 0 :]
    return fold(before[-_SEEN:]), fold(behind[: ending.start() if ending else _SEEN])


_SEEN: Final = 40
"""Characters on either side of an event that are looked at."""
