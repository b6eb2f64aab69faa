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
from core.schedule import split_time

LONGEST: Final = 80
"""A longer text says more than what becomes of a reminder. [characters]"""

Verb = Literal["stop", "move", "late", "another_day", "skip", "did", "when", "list"]
_VERBS: Final[tuple[Verb, ...]] = ("another_day", "late", "skip", "stop", "move", "did")
_EDGES: Final = " \t.!,;:?¿¡"


@dataclass(frozen=True, slots=True)
class Talk:
    """What is to become of a reminder.

    Attributes
    ----------
    verb : str
        stop, move, late (not now), another_day, skip, did, list; when: nothing but a time is said.
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
    """

    verb: Verb
    target: tuple[str, ...] = ()
    named: bool = False
    noun: bool = False
    every: bool = False
    plan: bool = False
    when: str = ""


def talk(text: str) -> Talk | None:
    """What a text says of a reminder, if it is about one; None where it cannot be.

    Examples
    --------
    >>> said = talk("move the filter one to friday")
    >>> said.verb, said.target, said.named, said.when
    ('move', ('filter',), True, 'friday')
    >>> talk("lösch die erinnerung").noun, talk("snooze 2h").when
    (True, 'in 2h')
    >>> talk("what is my kh") is None
    True
    """
    plain = " ".join(fold(text).strip(_EDGES).split())
    if not plain or len(text) > LONGEST or "\n" in text.strip():
        return None
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
    for verb in _VERBS:
        if (rest := _without(verb, plain)) is not None:
            return _told(verb, rest)
    if _alone("drop", plain):
        noun = _has("noun", plain)
        return Talk("stop", named=noun, noun=noun)
    said = _told("when", plain)
    return said if said.when else None


def _told(verb: Verb, rest: str) -> Talk:
    rest = " ".join(_pattern("until").sub(" ", rest).split())
    timed = split_time(rest)
    if timed is None and verb == "late" and rest:
        timed = split_time(f"in {rest}")
    words, when = (rest, "") if timed is None else timed
    noun = _has("noun", words)
    named = noun or _has("one", words)
    every = _has("all", words)
    for name in ("noun", "one", "all", "light"):
        words = _pattern(name).sub(" ", fold(words))
    target = tuple(re.findall(r"[^\W_]+", words))
    plan = bool(target) and _pattern("plan").fullmatch(" ".join(target)) is not None
    return Talk(verb, target, named, noun, every, plan, when)


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
