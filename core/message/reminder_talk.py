"""What is said of a reminder that stands: `move the filter one to friday`, `cancel the kh one`.

talk = { light } verb { light } [target] { light } ["one" | "reminder"] [when]

Which reminder the target means, and whether one was just spoken of, the chat knows.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import cache
from typing import Final, Literal

from core.message.fold import fold
from core.message.reminder_said import FILE
from core.message.waters import one_of
from core.message.wordfile import spelt
from core.schedule import names_weekday, split_time

LONGEST: Final = 80
"""A longer text says more than what becomes of a reminder. [characters]"""

Verb = Literal[
    "stop", "move", "late", "another_day", "skip", "did", "when", "list", "pause", "undone"
]
_VERBS: Final[tuple[Verb, ...]] = ("another_day", "late", "skip", "stop", "move", "pause", "did")
_EDGES: Final = " \t.!,;:?¿¡"
_HOUR: Final = re.compile(r"(?<!\d)(?P<hour>[01]?\d|2[0-3])(?: (?:draus|daraus))?$")
_LESS: Final = re.compile(r"(?P<number>\d{1,4}(?:[.,]\d)?) ?(?P<unit>%|l\b|lit\w+)?$")


@dataclass(frozen=True, slots=True)
class Talk:
    """What is to become of a reminder.

    Attributes
    ----------
    verb : str
        stop, move, late (not now), another_day, skip, did, list, pause, undone (not done after
        all); when: nothing but a time is said.
    target : tuple of str
        The plain words that name its task; empty where none is named.
    named : bool
        True where it is called a reminder, or one of several.
    noun : bool
        True where it is called a reminder.
    every : bool
        True where all of them are meant.
    plan : bool
        True where a plan of doses is meant.
    when : str
        The words of time, "" where there are none.
    later : bool
        True where it is pushed or put off, and so not to the day that it is due.
    day : str
        The weekday that names which one is moved, "" where none does: the sunday one.
    """

    verb: Verb
    target: tuple[str, ...] = ()
    named: bool = False
    noun: bool = False
    every: bool = False
    plan: bool = False
    when: str = ""
    later: bool = False
    day: str = ""


def talk(text: str, *, standing: bool = True) -> Talk | None:
    """What a text says of a reminder, if it is about one; None where it cannot be.

    A time alone says something only where one is `standing`.

    Examples
    --------
    >>> said = talk("move the filter one to friday")
    >>> said.verb, said.target, said.named, said.when
    ('move', ('filter',), True, 'friday')
    >>> talk("lösch die erinnerung").noun, talk("snooze 2h").when
    (True, 'in 2h')
    >>> said = talk("move the sunday one to saturday")
    >>> said.day, said.when
    ('sunday', 'saturday')
    >>> talk("what is my kh") is None
    True
    """
    plain = " ".join(fold(text).strip(_EDGES).split())
    if not plain or len(text) > LONGEST or "\n" in text.strip():
        return None
    if (rest := _without("unremind", plain)) is not None:
        return replace(_told("stop", rest), named=True, noun=True)
    if _alone("undone", plain):
        return Talk("undone")
    if (rest := _without("cancel", plain)) is not None:
        told = _told("stop", rest)
        return replace(told, named=told.named or bool(told.target))
    if _alone("list", plain):
        return Talk("list", noun=True)
    if (rest := _without("put", plain)) is not None:
        told = _told("move", rest)
        return None if told.noun else told
    if (rest := _without("change", plain)) is not None:
        told = _told("move", rest)
        return told if told.named else None
    if (rest := _without("moved", plain)) is not None:
        told = _told("move", rest)
        return told if told.noun and not _has("put", rest) and "," not in rest else None
    for verb in _VERBS:
        if (rest := _without(verb, plain)) is not None:
            return replace(_told(verb, rest), later=_has("push", plain))
    if _alone("drop", plain):
        noun = _has("noun", plain)
        return Talk("stop", named=noun, noun=noun)
    said = _told("when", plain) if standing and not _has("none", plain) else None
    return said if said is not None and said.when else None


def _told(verb: Verb, rest: str) -> Talk:
    if verb == "move" and (days := _two_days(rest)) is not None:
        task, day, when = days
        return replace(_told(verb, task), when=when, day=day)
    rest = " ".join(_pattern("until").sub(" ", rest).split())
    timed = split_time(rest)
    if timed is None and verb == "late" and rest:
        timed = _so_long(rest)
    if timed is None and verb == "move" and (hour := _HOUR.search(rest)) is not None:
        timed = rest[: hour.start()], f"at {hour['hour']}"
    words, when = (rest, "") if timed is None else timed
    noun = _has("noun", words)
    named = noun or _has("one", words)
    every = _has("all", words)
    for name in ("noun", "one", "all", "light"):
        words = _pattern(name).sub(" ", fold(words))
    target = tuple(re.findall(r"[^\W_]+", words))
    plan = bool(target) and _pattern("plan").fullmatch(" ".join(target)) is not None
    return Talk(verb, target, named, noun, every, plan, when)


def _two_days(rest: str) -> tuple[str, str, str] | None:
    """The words of a task, the weekday beside them, and to when that goes: `the sunday one to`."""
    for found in _pattern("onto").finditer(rest):
        first = split_time(_pattern("off").sub(" ", rest[: found.start()]))
        to = split_time(rest[found.end() :])
        if first is None or to is None or to[0] or not names_weekday(first[1]):
            continue
        return first[0], first[1], to[1]
    return None


def _so_long(rest: str) -> tuple[str, str] | None:
    """The words in front of a span at the end, and it; of the whole text where it is all."""
    words = rest.split()
    for size in (2, 3, len(words)):
        timed = split_time(f"in {' '.join(words[-size:])}")
        if timed is not None and not timed[0]:
            return " ".join(words[:-size]), timed[1]
    return None


def denies(text: str) -> bool:
    """Tell whether a text asks not to be reminded: `erinnere mich nicht mehr an kh`.

    Examples
    --------
    >>> denies("erinnere mich nicht mehr an kh"), denies("remind me to test kh")
    (True, False)
    """
    return _without("unremind", " ".join(fold(text).strip(_EDGES).split())) is not None


def halts(text: str) -> bool:
    """Tell whether a text is to stop something, in words for nothing else.

    Examples
    --------
    >>> halts("stop iron"), halts("remove the dead fish")
    (True, False)
    """
    return _without("halt", " ".join(fold(text).strip(_EDGES).split())) is not None


def renaming(text: str) -> tuple[str, str] | None:
    """The words of a reminder's task and those that it is to have; "" where it is only `it`.

    Examples
    --------
    >>> renaming("call it gravel vac instead"), renaming("rename water change to Big Change")
    (('', 'gravel vac'), ('water change', 'Big Change'))
    """
    said = " ".join(text.strip(_EDGES).split())
    plain = fold(said)
    if len(said) > LONGEST or len(plain) != len(said):
        return None
    front = _pattern("light").match(plain)
    begin = 0 if front is None or _pattern("name").match(plain) else front.end()
    begin += len(plain[begin:]) - len(plain[begin:].lstrip(_EDGES))
    if (found := _pattern("name").match(plain, begin)) is not None:
        return "", _without_light_end(said[found.end() :].strip(_EDGES))
    found = _pattern("rename").match(plain, begin)
    into = None if found is None else _pattern("into").search(plain, found.end() + 2)
    if found is None or into is None:
        return None
    task = _pattern("light").sub(" ", plain[found.end() : into.start()])
    return " ".join(task.split()), _without_light_end(said[into.end() :].strip(_EDGES))


def _without_light_end(said: str) -> str:
    ends = [each for each in _pattern("light").finditer(fold(said)) if each.end() == len(said)]
    return said[: ends[0].start()].strip(_EDGES) if ends and ends[0].start() else said


def only(text: str) -> tuple[float, str] | None:
    """How much less was done, and its unit (%, l or ""): `done but only 10`; None where none is.

    Examples
    --------
    >>> only("done but only 10"), only("erledigt, aber nur 10%"), only("done 2")
    ((10.0, ''), (10.0, '%'), None)
    """
    plain = " ".join(fold(text).strip(_EDGES).split())
    rest = None if len(text) > LONGEST else _without("did", plain)
    found = None if rest is None else _LESS.search(rest)
    if rest is None or found is None:
        return None
    left = _pattern("light").sub(" ", rest[: found.start()])
    less = _pattern("only").search(left)
    if less is None or _pattern("only").sub(" ", left).strip(_EDGES):
        return None
    unit = found["unit"] or ""
    return float(found["number"].replace(",", ".")), "l" if unit[:1] == "l" else unit


def _without(verb: str, plain: str) -> str | None:
    """The text without a verb at its start, past light words, or at its end; None without one."""
    rest = plain
    while True:
        found = _pattern(verb).match(rest)
        if found is not None:
            return rest[found.end() :].strip(_EDGES)
        light = _pattern("light").match(rest)
        if light is None or light.end() == len(rest):
            break
        rest = rest[light.end() :].strip(_EDGES)
    ending = list(_pattern(verb).finditer(plain))
    if ending and ending[-1].end() == len(plain):
        return plain[: ending[-1].start()].strip(_EDGES)
    return None


def _alone(name: str, plain: str) -> bool:
    left = _pattern(name).sub(" ", plain, count=1)
    for other in ("have", "noun", "light"):
        left = _pattern(other).sub(" ", left)
    return _has(name, plain) and not left.strip(_EDGES)


def _has(name: str, text: str) -> bool:
    return _pattern(name).search(fold(text)) is not None


@cache
def _ways() -> dict[str, set[str]]:
    found: dict[str, set[str]] = {}
    for section, meaning, ways in spelt(FILE):
        if section == "change":
            found.setdefault(meaning, set()).update(ways)
    return found


@cache
def _pattern(name: str) -> re.Pattern[str]:
    return re.compile(rf"(?<![\w'])(?:{one_of(_ways()[name])})(?!\w)")
