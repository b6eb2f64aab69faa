"""What is said of a reminder that stands: `move the filter one to friday`, `cancel the kh one`.

talk = { light } verb { light } [target] { light } ["one" | "reminder"] [when]

Which reminder the target means, and whether one was just spoken of, the chat knows.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Final, Literal

from core.message.fold import fold
from core.message.reminder_when import (
    EDGES,
    LONGEST,
    alone,
    bare_span,
    by_span,
    corrected_hour,
    for_so_long,
    has,
    is_anew,
    names_day,
    only_on,
    pattern,
    so_long,
    two_days,
    without_former,
    without_too,
    without_verb,
)
from core.message.reminder_which import clauses, made_instead, needless, which
from core.schedule import names_weekday, split_time

THIS_WEEK: Final = "this week"
"""The words of time of the days until the week is over."""

Verb = Literal[
    "stop", "move", "late", "another_day", "skip", "did", "when", "list", "pause", "undone"
]
_VERBS: Final[tuple[Verb, ...]] = ("another_day", "late", "skip", "stop", "move", "pause", "did")
_FOR_A_REASON: Final = frozenset({"late", "another_day", "skip", "move", "pause"})
MOST_WHY: Final = 4
"""Words of where somebody is, behind what is to become of a reminder."""
_HOUR: Final = re.compile(r"(?<!\d)(?P<hour>[01]?\d|2[0-3])(?: (?:draus|daraus))?$")
_FROM: Final = re.compile(r"^(?:from|as of|ab|à partir du|desde|a partir de|dal|vanaf|od|från) ")
_ASKS: Final = re.compile(r"(?:hmm |so |and |but )?did (?:i|we|you|he|she|they|anyone|someone)\b")
"""What asks whether it was done, and does not tell it."""


_MINUTES: Final = re.compile(r"(?:for )?(?P<count>2[5-9]|[3-9]\d|1[0-7]\d|180)")
"""So many of nothing named are no hours until it is asked again."""


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
        The weekday, part of the day or hour that names which one is meant, "" where none does:
        the sunday one; where it is moved `once`, the day that it had.
    once : bool
        True where it is moved one time only.
    bare : bool
        True where the time is only how long: 2 hours.
    over : str
        Where it was done, and is told on top not to come: skip, or stop for good.
    anew : bool
        True where words beside the time say that it takes the place of another: instead, to.
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
    once: bool = False
    anew: bool = False
    bare: bool = False
    over: str = ""


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
    >>> said = talk("move it to saturday just this week")
    >>> said.when, said.once, talk("not this week").when
    ('saturday', True, 'this week')
    """
    plain = " ".join(fold(text).strip(EDGES).split())
    if not plain or len(text) > LONGEST or "\n" in text.strip():
        return None
    if alone("not_week", plain):
        return Talk("skip", when=THIS_WEEK)
    if (other := _other_day(plain) or _put_instead(plain)) is not None:
        return other
    if (busy := pattern("busy").search(plain)) is not None and busy.start():
        told = _talk(plain[: busy.start()].strip(EDGES), standing)
        why = plain[busy.end() :].split()
        if len(why) <= MOST_WHY and told is not None and told.verb in _FOR_A_REASON:
            return told
    if (over := _done_and_over(plain)) is not None:
        return over
    if (what := needless(plain)) is not None:
        return replace(_told("stop", what), named=True)
    if (named := which(plain)) is not None:
        rest, day = named
        told = _talk(rest, standing)
        lets = told is not None and not told.when and told.verb in {"stop", "skip"}
        moves = told is not None and told.when and told.verb in {"move", "when", "stop", "skip"}
        if told is not None and not told.day and (moves or (lets and not names_weekday(day))):
            return replace(told, day=day, named=True)
    if has("once", plain):
        rest = " ".join(pattern("once").sub(" ", plain).split())
        told = _talk(rest, standing) if rest else None
        return None if told is None else replace(told, once=True)
    return _talk(plain, standing)


def _talk(plain: str, standing: bool) -> Talk | None:
    if (rest := without_verb("unremind", plain)) is not None:
        return replace(_told("stop", rest), named=True, noun=True)
    if alone("undone", plain):
        return Talk("undone")
    if (rest := without_verb("undone", plain)) is not None:
        told = _told("late", rest)
        if told.when and not told.target:
            return told
    if (kept := only_on(plain)) is not None:
        return Talk("move", when=kept, anew=True)
    if (hour := corrected_hour(plain)) is not None:
        return Talk("move", when=hour)
    if (rest := without_verb("not_on", plain)) is not None:
        told = _told("stop" if has("no_longer", plain) else "skip", rest)
        if told.when and not told.target and names_weekday(told.when):
            return told
    if (rest := without_verb("unneeded", plain)) is not None:
        told = _told("stop" if has("no_longer", plain) else "skip", rest)
        if told.target or told.named:
            return told if told.when else replace(told, verb="stop")
        return None
    if (rest := without_verb("cancel", plain)) is not None:
        told = _told("stop", rest)
        return replace(told, named=told.named or bool(told.target))
    if (found := pattern("start").match(plain)) is not None:
        told = _told("move", _FROM.sub("on ", plain[found.end() :].strip(EDGES)))
        if told.when and not (told.target or told.named):
            return replace(told, anew=True)
    if (rest := without_verb("give", plain)) is not None:
        told = _told("late", rest)
        if told.when and not told.target:
            return told
    if alone("list", plain):
        return Talk("list", noun=True)
    if (rest := without_verb("put", plain)) is not None:
        told = _told("move", rest)
        return None if told.noun else told
    if (rest := without_verb("change", plain)) is not None:
        told = _told("move", rest)
        timed = told.when and not told.when.removeprefix("at ").isdigit()
        if told.named or (timed and (told.anew or not told.target)):
            return told
    if (rest := without_verb("moved", plain)) is not None:
        told = _told("move", rest)
        if told.noun and not has("put", rest) and "," not in rest:
            return told
        if without_verb("move", plain) is None:
            return None
    if alone("no_more", plain):
        return Talk("stop")
    for verb in _VERBS:
        if verb == "did" and _ASKS.match(plain):
            continue
        told_of = without_too(plain) if verb == "did" else plain
        if (rest := without_verb(verb, told_of)) is not None:
            while verb == "late" and (more := without_verb(verb, rest)) is not None:
                rest = more
            later = has("push", plain)
            rest = " ".join(pattern("back").sub(" ", rest).split()) if later else rest
            if verb == "late" and (minutes := _MINUTES.fullmatch(rest)) is not None:
                return Talk("late", when=f"in {minutes['count']} minutes")
            return replace(_told(verb, by_span(rest) if later else rest), later=later)
    may_have_done = has("did", plain) and not _ASKS.match(plain)
    days = split_time(plain) if may_have_done else None
    if days is not None and days[0] and (rest := without_verb("did", days[0])) is not None:
        return replace(_told("did", rest), when=days[1])
    if alone("drop", plain):
        noun = has("noun", plain)
        return Talk("stop", named=noun, noun=noun)
    said = _told("when", plain) if standing and not has("none", plain) else None
    if said is not None and said.target and not said.anew and (let := _let_go(plain)) is not None:
        return let
    return said if said is not None and said.when else None


def _let_go(plain: str) -> Talk | None:
    """``no ferts today``: the day on which a task is let go; None where none is said."""
    found = pattern("none_of").search(plain)
    if found is None or not (found.start() == 0 or split_time(plain[: found.start()])):
        return None
    told = _told("skip", f"{plain[: found.start()]} {plain[found.end() :]}")
    return told if told.when and told.target else None


def _told(verb: Verb, rest: str) -> Talk:
    if verb == "move" and (days := two_days(rest)) is not None:
        task, day, when = days
        return replace(_told(verb, task), when=when, day=day)
    if verb == "skip" and has("reason", rest):
        return _told(verb, " ".join(pattern("reason").sub(" ", rest).split()))
    if verb == "skip" and has("week", rest):
        kept = _told(verb, " ".join(pattern("week").sub(" ", rest).split()))
        return replace(kept, when=THIS_WEEK) if not kept.when else kept
    if verb == "pause" and (long := for_so_long(rest)) is not None:
        return replace(_told(verb, long[0]), when=long[1])
    if verb == "stop" and has("until", rest) and (long := for_so_long(rest)) is not None:
        return replace(_told("pause", pattern("away").split(long[0])[0].strip()), when=long[1])
    rest = " ".join(pattern("until").sub(" ", rest).split()) if verb != "pause" else rest
    rest = without_former(rest) if verb in {"when", "move"} else rest
    anew = is_anew(rest) if verb in {"when", "move"} else False
    rest = " ".join(pattern("instead").sub(" ", rest).split()) if anew else rest
    timed = split_time(rest)
    if timed is None and verb == "late" and rest:
        timed = so_long(rest)
    hours = verb == "move" or (verb == "when" and anew)
    if timed is None and hours and (hour := _HOUR.search(rest)) is not None:
        timed = rest[: hour.start()], f"at {hour['hour']}"
    if timed is None and verb in {"when", "move"} and (span := bare_span(rest)) is not None:
        return Talk(verb, when=f"in {span}", anew=anew, bare=True)
    words, when = (rest, "") if timed is None else timed
    noun = has("noun", words)
    named = noun or has("one", words)
    every = has("all", words)
    for name in ("noun", "one", "all", "light"):
        words = pattern(name).sub(" ", fold(words))
    target = tuple(re.findall(r"[^\W_]+", words))
    plan = bool(target) and pattern("plan").fullmatch(" ".join(target)) is not None
    return Talk(verb, target, named, noun, every, plan, when, anew=anew)


def _other_day(plain: str) -> Talk | None:
    """``cant do next sat, remind me the sunday instead``: one time of it, on another day."""
    parts = clauses(plain)
    rest = None if parts is None else without_verb("skip", parts[0])
    for name in ("not_on", "reason"):
        rest = without_verb(name, parts[0]) if parts is not None and rest is None else rest
    if parts is None or rest is None:
        return None
    let, to = _told("skip", rest), _told("move", _unput(parts[1]))
    days = let.when and names_day(let.when) and to.when and names_day(to.when)
    if not days or to.target or has("no_longer", parts[0]):
        return None
    return Talk("move", let.target, named=True, when=to.when, day=let.when, once=True)


def _put_instead(plain: str) -> Talk | None:
    """``scrap the morning one i'll be asleep, make it 11``: what was to end is moved."""
    parts = made_instead(plain)
    if parts is None:
        return None
    named = which(parts[0])
    let = _talk(parts[0] if named is None else named[0], standing=False)
    to = _told("move", parts[1])
    former = split_time(without_verb("unfit", parts[0]) or "")
    if former is not None and not former[0] and to.when and not to.target:
        return Talk("move", when=to.when, anew=True)
    ends = let is not None and let.verb in {"stop", "skip", "late"} and not let.when
    if let is None or not ends or not to.when or to.target:
        return None
    day = "" if named is None else named[1]
    told = Talk("move", let.target, named=let.named, when=to.when, day=day)
    return told if let.named or not let.target else None


def _done_and_over(plain: str) -> Talk | None:
    """``did that already so skip it``: done, and told on top that it is not to come any more."""
    last = [each.span() for each in pattern("no_more").finditer(plain) if each.end() == len(plain)]
    cuts = [(start, start) for start, _end in last] + [f.span() for f in _JOINS.finditer(plain)]
    for start, end in cuts:
        front, behind = plain[:start].strip(EDGES), plain[end:].strip(EDGES)
        told_done = has("did", front) and not (has("undone", front) or _ASKS.match(front))
        if not behind or not told_done or any(map(str.isdigit, front)):
            continue
        ends = alone("no_more", behind)
        let = Talk("stop") if ends else _talk(behind, standing=False)
        short = ends or len(behind.split()) <= MOST_WHY
        lets = let is not None and let.verb in {"stop", "skip"} and short
        if let is None or not lets or let.when or let.every or let.plan or let.target:
            continue
        front = " ".join(pattern("already").sub(" ", front).split())
        told = Talk("did") if alone("did", front) else _talk(front, standing=False)
        if told is not None and told.verb == "did" and not told.when:
            return replace(told, over=let.verb)
    return None


_JOINS: Final = re.compile(r"[,;.!] *(?:(?:so|and|then|please) )?| (?:so|and|then) ")


def _unput(rest: str) -> str:
    """The text without a word for to put at its start: `do it sunday`, `make it sunday`."""
    return rest if (put := without_verb("put", rest)) is None else put


def is_other_day(text: str) -> bool:
    """Tell whether one time is told to be on another day, in words that ask for a reminder.

    Examples
    --------
    >>> is_other_day("cant do next sat, remind me the sunday instead")
    True
    >>> is_other_day("remind me sunday to feed")
    False
    """
    if len(text) > LONGEST or "\n" in text.strip():
        return False
    return _other_day(" ".join(fold(text).strip(EDGES).split())) is not None


def denies(text: str) -> bool:
    """Tell whether a text asks not to be reminded: `erinnere mich nicht mehr an kh`.

    Examples
    --------
    >>> denies("erinnere mich nicht mehr an kh"), denies("remind me to test kh")
    (True, False)
    >>> denies("done already no need to remind me"), denies("dont remind me again")
    (True, True)
    """
    plain = " ".join(fold(text).strip(EDGES).split())
    if without_verb("unremind", plain) is not None or alone("no_more", plain):
        return True
    return len(text) <= LONGEST and _done_and_over(plain) is not None


def halts(text: str) -> bool:
    """Tell whether a text is to stop something, in words for nothing else.

    Examples
    --------
    >>> halts("stop iron"), halts("remove the dead fish")
    (True, False)
    """
    return without_verb("halt", " ".join(fold(text).strip(EDGES).split())) is not None


def renaming(text: str) -> tuple[str, str] | None:
    """The words of a reminder's task and those that it is to have; "" where it is only `it`.

    Examples
    --------
    >>> renaming("call it gravel vac instead"), renaming("rename water change to Big Change")
    (('', 'gravel vac'), ('water change', 'Big Change'))
    """
    said = " ".join(text.strip(EDGES).split())
    plain = fold(said)
    if len(said) > LONGEST or len(plain) != len(said):
        return None
    front = pattern("light").match(plain)
    begin = 0 if front is None or pattern("name").match(plain) else front.end()
    begin += len(plain[begin:]) - len(plain[begin:].lstrip(EDGES))
    if (found := pattern("name").match(plain, begin)) is not None:
        return "", _without_light_end(said[found.end() :].strip(EDGES))
    found = pattern("rename").match(plain, begin)
    into = None if found is None else pattern("into").search(plain, found.end() + 2)
    if found is None or into is None:
        return None
    task = pattern("light").sub(" ", plain[found.end() : into.start()])
    return " ".join(task.split()), _without_light_end(said[into.end() :].strip(EDGES))


def _without_light_end(said: str) -> str:
    ends = [each for each in pattern("light").finditer(fold(said)) if each.end() == len(said)]
    return said[: ends[0].start()].strip(EDGES) if ends and ends[0].start() else said
