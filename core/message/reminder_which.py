"""Which reminder is meant by its time, and what is to become of it: ``the morning one``.

which = [ "the" ] ( part | clock | weekday ) ( "one" | "reminder" )
"""

from __future__ import annotations

import re
from typing import Final

from core.message.fold import fold
from core.message.reminder_when import EDGES, names_part, pattern, without_verb
from core.message.reminder_words import patterns
from core.schedule import names_weekday, split_time

MOST: Final = 3
"""Words of the time that names one: the monday morning one."""

_CLOCK: Final = re.compile(r"(?:at )?\d{1,2}(?:[.:]\d{2})?(?: ?[ap]\.?m\.?| o ?'?clock)?")
_REASON: Final = 8
"""Words of a reason behind the one that is named."""
_SIGNS: Final = re.compile(r"[,;.!]\s|\s(?:but|so|because|cos|cause|since|and)\s")


def which(plain: str) -> tuple[str, str] | None:
    """A text without the time that names which one is meant, and that time; None without one.

    Examples
    --------
    >>> which("only weekdays for the morning one"), which("make the 8am one 9")
    (('only weekdays for the one', 'morning'), ('make the one 9', '8am'))
    >>> which("move the sunday one to friday"), which("move the filter one to friday")
    (('move the one to friday', 'sunday'), None)
    """
    for name in ("one", "noun"):
        for found in pattern(name).finditer(plain):
            front = plain[: found.start()].split()
            word = found.group().removeprefix("the ").strip()
            for size in range(min(MOST, len(front)), 0, -1):
                said = " ".join(front[-size:])
                if front[-size] in {"the", "that", "my"} or not _tells(said):
                    continue
                rest = [*front[:-size], word, plain[found.end() :].strip()]
                return " ".join(" ".join(rest).split()), said
    return None


def _tells(said: str) -> bool:
    """Whether words are a weekday, a part of any day or an hour, and nothing else."""
    if any(letter.isdigit() for letter in said):
        return _CLOCK.fullmatch(said) is not None
    timed = split_time(said)
    return timed is not None and not timed[0] and (names_weekday(said) or names_part(said))


def made_instead(plain: str) -> tuple[str, str] | None:
    """What is let be, and behind it to when it is put: `scrap the kh one, make it 11`.

    A reason behind the one that is named is left out.

    Examples
    --------
    >>> made_instead("scrap the morning one i'll be asleep, make it 11")
    ('scrap the morning one', '11')
    >>> made_instead("make it 11") is None
    True
    """
    for found in reversed(list(pattern("put").finditer(plain))):
        behind = plain[found.end() :].strip().split()
        front = plain[: found.start()].strip(EDGES)
        if len(behind) < 2 or pattern("light").fullmatch(behind[0]) is None or not front:
            continue
        ends = [each for name in ("one", "noun") for each in pattern(name).finditer(front)]
        last = max((each.end() for each in ends), default=len(front))
        reason = front[last:].strip(EDGES).split()
        if len(reason) > _REASON or any(letter.isdigit() for letter in front[last:]):
            return None
        return front[:last], " ".join(behind[1:])
    return None


def clauses(plain: str) -> tuple[str, str] | None:
    """What stands in front of a sign, or of asking to be reminded, and what behind it.

    Examples
    --------
    >>> clauses("cant do next sat, remind me the sunday instead")
    ('cant do next sat', 'the sunday instead')
    """
    asked = patterns()["ask", "ask"].search(plain)
    sign = _SIGNS.search(plain)
    cut = sign or asked
    if cut is None:
        return None
    front, behind = plain[: cut.start()].strip(EDGES), plain[cut.end() :].strip(EDGES)
    asks = patterns()["ask", "ask"].match(behind)
    behind = behind if asks is None else behind[asks.end() :].strip(EDGES)
    return (front, behind) if front and behind else None


def needless(plain: str) -> str | None:
    """What needs no reminder any more: `the small tank doesnt need it anymore`; None if not told.

    Examples
    --------
    >>> needless("the small tank doesnt need it anymore"), needless("it doesnt need light")
    ('the small tank', None)
    """
    rest = without_verb("needless", plain)
    ends = [each for each in pattern("needless").finditer(plain) if each.end() == len(plain)]
    return rest if rest and ends and len(rest.split()) <= _REASON else None


def added(text: str) -> str | None:
    """What is told to be of the reminder as well: `oh and the heater too its off`; None if not.

    Examples
    --------
    >>> added("oh and the heater too its unplugged while i clean"), added("and feed too")
    ('the heater', 'feed')
    >>> added("the heater is broken too") is None, added("and the heater") is None
    (True, True)
    """
    said = " ".join(text.strip(EDGES).split())
    plain = fold(said)
    if len(plain) != len(said):
        return None
    joins = pattern("joins_thing").match(plain)
    too = None if joins is None else pattern("too").search(plain, joins.end())
    if joins is None or too is None:
        return None
    thing, behind = plain[joins.end() : too.start()].strip(EDGES), plain[too.end() :].strip(EDGES)
    told = not behind or pattern("for_it").match(behind) is not None
    spoken = pattern("no_thing").search(thing) or any(letter.isdigit() for letter in plain)
    if not thing or len(thing.split()) > MOST or spoken or not told:
        return None
    return said[joins.end() : too.start()].strip(EDGES)


def with_thing(task: str, thing: str) -> str:
    """A task with one thing more beside the first that it names.

    Examples
    --------
    >>> with_thing("switch the filter back on", "the heater"), with_thing("filter on", "heater")
    ('switch the filter and the heater back on', 'filter on, and heater')
    """
    first = _FIRST.search(task)
    if first is None:
        return f"{task}, and {thing}"
    return f"{task[: first.end()]} and {thing}{task[first.end() :]}"


_FIRST: Final = re.compile(r"\b(?:the|my) [^\W\d_]+", re.IGNORECASE)
