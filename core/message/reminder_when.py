"""The words of time around a reminder that stands: `by 2 days`, `monday instead of sunday`."""

from __future__ import annotations

import re
from datetime import UTC, datetime
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.reminder_words import FILE
from core.message.waters import one_of
from core.message.wordfile import spelt
from core.schedule import (
    names_weekday,
    names_weekdays,
    parse_moment,
    split_time,
    tells_rhythm,
    tells_span,
    weekdays_of,
)

LONGEST: Final = 80
"""A longer text says more than what becomes of a reminder. [characters]"""

_CLOCK: Final = re.compile(r"(?:at )?(\d{1,2})(?:[.:](\d{2}))?")
_ANY: Final = datetime(2026, 3, 2, tzinfo=UTC)
_DAYS: Final = ("tomorrow", "friday")
"""Days that a part of one may stand behind."""

EDGES: Final = " \t.!,;:?¿¡"
"""Signs around a text that tell nothing."""


def two_days(rest: str) -> tuple[str, str, str] | None:
    """The words of a task, the day or part of one beside them, and to when that goes.

    Examples
    --------
    >>> two_days("the sunday one to friday"), two_days("the morning one to 7.30")
    (('', 'the sunday one', 'friday'), ('the', 'morning', 'at 7:30'))
    """
    for found in pattern("onto").finditer(rest):
        first = split_time(pattern("off").sub(" ", rest[: found.start()]))
        hour = _CLOCK.fullmatch(rest[found.end() :].strip(EDGES))
        to = split_time(rest[found.end() :]) if hour is None else ("", _hour(*hour.groups()))
        if first is None or to is None or to[0]:
            continue
        if names_weekday(first[1]):
            return first[0], first[1], to[1]
        part = pattern("one").sub(" ", first[1]).strip()
        if part and names_part(part):
            return first[0], part, to[1]
    return None


def names_part(said: str) -> bool:
    """Tell whether words of time are a part of any day: the morning one.

    Examples
    --------
    >>> names_part("morning"), names_part("tomorrow"), names_part("at 8"), names_part("friday")
    (True, False, False, False)
    """
    if names_weekday(said) or any(letter.isdigit() for letter in said):
        return False
    return all(isinstance(parse_moment(f"{day} {said}", _ANY, UTC), datetime) for day in _DAYS)


def names_day(said: str) -> bool:
    """Tell whether words of time name a single day: next sat, tomorrow.

    Examples
    --------
    >>> names_day("next sat"), names_day("tomorrow"), names_day("at 9"), names_day("every sunday")
    (True, True, False, False)
    """
    day = pattern("one").sub(" ", said).strip()
    if names_part(day):
        return False
    at = [parse_moment(f"{day} {hour}", _ANY, UTC) for hour in ("3:00", "21:00")]
    whole = [each for each in at if isinstance(each, datetime)]
    return len(whole) == 2 and whole[0].date() == whole[1].date() and not tells_rhythm(day)


def bare_span(rest: str) -> str | None:
    """How long, where a text says nothing else; None where it says more: `2 hours`."""
    span = rest.strip(EDGES)
    while not tells_span(span):
        front = pattern("light").match(span)
        if front is None or front.end() == len(span):
            return None
        span = span[front.end() :].strip(EDGES)
    return span


def _hour(hour: str, minute: str | None) -> str:
    return f"at {hour}" if minute is None else f"at {hour}:{minute}"


def is_anew(rest: str) -> bool:
    """Whether a time takes the place of another: a word says so, or one for to right before it."""
    if has("instead", rest):
        return True
    if (timed := split_time(rest)) is None:
        return False
    onto = list(pattern("onto").finditer(timed[0]))
    return bool(onto) and onto[-1].end() == len(timed[0].rstrip())


def without_former(rest: str) -> str:
    """The text without the day that it had: `monday instead of sunday`."""
    for found in pattern("instead_of").finditer(rest):
        former = split_time(rest[found.end() :])
        if former is not None and not former[0] and split_time(rest[: found.start()]):
            return f"{rest[: found.start()].strip()} {min(ways()['instead'])}"
    return rest


def by_span(rest: str) -> str:
    """A span behind a word for by, as one from when it is due: `by 2 days`, `a week`."""
    words = rest.split()
    for size in (3, 2):
        if len(words) < size:
            continue
        front, span = words[: len(words) - size], " ".join(words[-size:])
        if pattern("by").fullmatch(words[-size]) and size == 3:
            span = " ".join(words[-2:])
        if tells_span(span) and not tells_span(words[-size - 1] if front else ""):
            return " ".join([*front, f"in {span}"])
    return rest


def for_so_long(rest: str) -> tuple[str, str] | None:
    """The words in front of how long, or until when, a reminder is to rest, and those words."""
    words = rest.split()
    for place in range(len(words)):
        said = " ".join(words[place:])
        ends = pattern("until").match(said) is not None and split_time(said) is not None
        if tells_span(said) or (ends and not (split_time(said) or ("x", ""))[0]):
            return " ".join(words[:place]), said
    return None


def so_long(rest: str) -> tuple[str, str] | None:
    """The words in front of a span at the end, and it; of the whole text where it is all."""
    words = rest.split()
    for size in (2, 3, len(words)):
        timed = split_time(f"in {' '.join(words[-size:])}")
        if timed is not None and not timed[0]:
            return " ".join(words[:-size]), timed[1]
    return None


def has(name: str, text: str) -> bool:
    """Tell whether a text has a word of a meaning under `[change]`."""
    return pattern(name).search(fold(text)) is not None


def without_verb(verb: str, plain: str) -> str | None:
    """The text without a verb at its start, past light words, or at its end; None without one."""
    rest = plain
    while True:
        found = pattern(verb).match(rest)
        if found is not None:
            return rest[found.end() :].strip(EDGES)
        light = pattern("light").match(rest)
        if light is None or light.end() == len(rest):
            break
        rest = rest[light.end() :].strip(EDGES)
    ending = list(pattern(verb).finditer(plain))
    if ending and ending[-1].end() == len(plain):
        return plain[: ending[-1].start()].strip(EDGES)
    return None


def alone(name: str, plain: str) -> bool:
    """Whether a text has a word of a meaning, and nothing beside it but light words."""
    left = pattern(name).sub(" ", plain, count=1)
    for other in ("have", "noun", "light"):
        left = pattern(other).sub(" ", left)
    return has(name, plain) and not left.strip(EDGES)


def asks_when(text: str) -> bool:
    """Tell whether a text asks only when the one just spoken of is told: `what time is that`."""
    return len(text) <= LONGEST and alone("when_is", " ".join(fold(text).strip(EDGES).split()))


def asks_if_missed(text: str) -> bool:
    """Tell whether a text asks only what becomes of one that is missed: `and if i miss a day?`.

    Examples
    --------
    >>> asks_if_missed("and if i miss a day?"), asks_if_missed("what happens if i forget it")
    (True, True)
    >>> asks_if_missed("what if i miss a water change for a month"), asks_if_missed("i missed it")
    (False, False)
    """
    plain = " ".join(fold(text).strip(EDGES).split())
    if len(text) > LONGEST or (found := pattern("if_missed").search(plain)) is None:
        return False
    front, behind = plain[: found.start()].strip(EDGES), plain[found.end() :].strip(EDGES)
    asks = not front or pattern("then_what").fullmatch(front) is not None
    return asks and (not behind or pattern("then_what").fullmatch(behind) is not None)


def before_start_then(text: str) -> str | None:
    """What is told in front of words that one is to begin when it is over; None without those.

    Examples
    --------
    >>> before_start_then("im away till the 12th so start then"), before_start_then("start then")
    ('im away till the 12th', None)
    """
    plain = " ".join(fold(text).strip(EDGES).split())
    found = next((f for f in pattern("start_then").finditer(plain) if f.end() == len(plain)), None)
    front = "" if found is None else plain[: found.start()].strip(EDGES)
    for joint in (" so", " and", " then"):
        front = front.removesuffix(joint).strip(EDGES)
    return front or None if len(text) <= LONGEST else None


def left_out(text: str) -> tuple[int, ...]:
    """The days of the week on which a reminder is not to come: `not on sundays`; else none.

    Examples
    --------
    >>> left_out("not on sundays"), left_out("dont remind me at weekends"), left_out("on sundays")
    ((6,), (5, 6), ())
    """
    plain = " ".join(fold(text).strip(EDGES).split())
    found = pattern("not_days").match(plain) if len(text) <= LONGEST else None
    return () if found is None else weekdays_of(plain[found.end() :].strip(EDGES))


def is_both(text: str) -> bool:
    """Tell whether a text names both of two days, and nothing else.

    Examples
    --------
    >>> is_both("both days please"), is_both("on both days"), is_both("both days at 9")
    (True, True, False)
    """
    return alone("both_days", " ".join(fold(text).strip(EDGES).split()))


def without_too(plain: str) -> str:
    """The text without a word at its end that tells of another deed before it: too."""
    ends = [each for each in pattern("too").finditer(plain) if each.end() == len(plain)]
    return plain[: ends[0].start()].strip(EDGES) if ends else plain


def further_time(plain: str) -> str | None:
    """The words of time that are told as one more, beside those that stand; None where none are.

    Examples
    --------
    >>> further_time("and also wednesday"), further_time("on friday too"), further_time("friday")
    ('wednesday', 'on friday', None)
    >>> further_time("and feed on friday") is None, further_time("and every sunday after that")
    (True, 'every sunday')
    """
    more = pattern("more_time")
    rest = plain
    while (found := more.match(rest)) is not None:
        rest = rest[found.end() :].strip(EDGES)
    while ends := [each for each in more.finditer(rest) if each.end() == len(rest)]:
        rest = rest[: ends[0].start()].strip(EDGES)
    told = rest not in ("", plain)
    if ends := [each for each in pattern("after_that").finditer(rest) if each.end() == len(rest)]:
        rest = rest[: ends[0].start()].strip(EDGES)
    timed = split_time(rest) if told and rest else None
    return None if timed is None or timed[0] else timed[1]


def goes_on_after(text: str) -> bool:
    """Tell whether a text ends by telling that a time is behind the one that stands.

    Examples
    --------
    >>> goes_on_after("and every monday after that"), goes_on_after("and every monday")
    (True, False)
    """
    plain = " ".join(fold(text).strip(EDGES).split())
    return any(each.end() == len(plain) for each in pattern("after_that").finditer(plain))


@cache
def ways() -> dict[str, set[str]]:
    """The words of each meaning under `[change]`."""
    found: dict[str, set[str]] = {}
    for section, meaning, told in spelt(FILE):
        if section == "change":
            found.setdefault(meaning, set()).update(told)
    return found


@cache
def pattern(name: str) -> re.Pattern[str]:
    """Any word of a meaning under `[change]`, as whole words of a plain text."""
    return re.compile(rf"(?<![\w'])(?:{one_of(ways()[name])})(?!\w)")


def joined(text: str) -> str | None:
    """What stands behind words at the start that tell of one more; None where none do.

    Examples
    --------
    >>> joined("And also in the morning to feed"), joined("in the morning to feed")
    ('in the morning to feed', None)
    """
    said = " ".join(text.strip(EDGES).split())
    plain, at = fold(said), 0
    if len(plain) != len(said):
        return None
    while (found := pattern("more_time").match(plain, at)) is not None:
        at = found.end() + len(plain[found.end() :]) - len(plain[found.end() :].lstrip(EDGES))
    return said[at:] or None if at else None


def corrected_hour(plain: str) -> str | None:
    """The words of time of nothing but another hour, told as a correction; None where none are.

    Examples
    --------
    >>> corrected_hour("actually 7"), corrected_hour("no, 7 pm"), corrected_hour("actually 7 h")
    ('at 7', 'at 7 pm', None)
    >>> corrected_hour("wait noon i mean noon tomorrow"), corrected_hour("no 8pm i meant")
    ('noon tomorrow', '8pm')
    >>> corrected_hour("no wait i start work at 9, make it 7"), corrected_hour("not 8, 7.30")
    ('at 7', 'at 7.30')
    >>> corrected_hour("i finish at 5 so 6pm"), corrected_hour("not 8, 5 ml")
    ('at 6pm', None)
    """
    if (instead := _not_but(plain) or _behind_reason(plain)) is not None:
        return instead
    if has("sorry", plain):
        return _put_right(plain)
    found = pattern("corrects").match(plain)
    rest = "" if found is None else plain[found.end() :].strip(EDGES)
    hour = rest[:1].isdigit() and not tells_span(rest)
    timed = split_time(f"at {rest}") if hour else None
    return None if timed is None or timed[0].strip(EDGES) else timed[1]


_NOT_BUT: Final = (
    re.compile(r"not (?:at )?(?P<was>[\w.:]+(?: ?[ap]m)?)(?:,| but|) (?:at )?(?P<to>[^,]+)"),
    re.compile(r"(?:make it |at )?(?P<to>[^,]+?),? not (?:at )?(?P<was>[\w.:]+(?: ?[ap]m)?)"),
)
_SO: Final = re.compile(r"(?:, (?:so )?| so )(?:can you |could you |please |pls |better )*")
_MAKE: Final = re.compile(r"(?:make|set) (?:it|that) (?:to |at |for )?")
_WHY: Final = re.compile(
    r"(?:i|i'm|im|i'll|ill|we|we're|he|she|they|my \w+|school|work|the \w+)(?: [\w'.:]+){1,7}"
)
MOST_REASON: Final = 9
"""Words of a reason in front of the time that is to be had."""


def _at(said: str) -> str | None:
    """The words of time of a time of day and nothing else."""
    rest = said.removeprefix("at ").strip(EDGES)
    if rest[:1].isdigit() and not tells_span(rest):
        timed = split_time(f"at {rest}")
        return None if timed is None or timed[0].strip(EDGES) else timed[1]
    return rest if rest in {"noon", "midnight", "midday"} else None


def _not_but(plain: str) -> str | None:
    """``not 8, 7.30``, ``sorry midnight not noon``: one time of day in the place of another."""
    rest = pattern("sorry").sub(" ", plain).strip(EDGES)
    found = pattern("corrects").match(rest)
    rest = rest if found is None else rest[found.end() :].strip(EDGES)
    for form in _NOT_BUT:
        told = form.fullmatch(" ".join(rest.split()))
        if told is not None and _at(told["was"]) is not None:
            return _at(told["to"])
    return None


def _behind_reason(plain: str) -> str | None:
    """``i finish at 5 so 6pm``: the time behind why; one without a half needs `make it` or so."""
    found = pattern("corrects").match(plain)
    rest = plain if found is None else plain[found.end() :].strip(EDGES)
    for sign in _SO.finditer(rest):
        why, to = rest[: sign.start()].strip(EDGES), rest[sign.end() :].strip(EDGES)
        if len(why.split()) > MOST_REASON or _WHY.fullmatch(why) is None:
            continue
        made = _MAKE.match(to)
        so = "so" in sign.group().split()
        if made is None and not so:
            continue
        if (when := _at(to if made is None else to[made.end() :])) is not None:
            return when
    return None


def _put_right(plain: str) -> str | None:
    """The last time of a text of nothing but times and what puts them right; None of any other."""
    when = None
    for part in pattern("sorry").split(plain):
        rest = part.strip(EDGES)
        while rest and (found := pattern("corrects").match(rest)) is not None:
            rest = rest[found.end() :].strip(EDGES)
        if not rest:
            continue
        timed = split_time(rest) or (split_time(f"at {rest}") if rest[:1].isdigit() else None)
        if timed is None or timed[0].strip(EDGES) or tells_span(rest):
            return None
        when = timed[1]
    return when


def only_on(plain: str) -> str | None:
    """The days of `no only mon wed fri`, on which alone it is to come; None where none are told.

    Examples
    --------
    >>> only_on("no only mon wed fri"), only_on("only 10"), only_on("only feed on monday")
    ('mon wed fri', None, None)
    """
    found = pattern("corrects").match(plain)
    rest = without_verb("only", plain[found.end() :].strip(EDGES) if found else plain)
    timed = None if not rest else split_time(rest)
    beside = "" if timed is None else pattern("one").sub(" ", pattern("light").sub(" ", timed[0]))
    alone_told = timed is not None and not pattern("light").sub(" ", beside).strip(EDGES)
    return timed[1] if timed is not None and alone_told and names_weekdays(timed[1]) else None
