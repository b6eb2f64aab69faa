"""Chores told with a rhythm or a time to come: `every sunday 10am water change 30%`.

chore = { frame } { ask } when task { frame }

Such a text is no deed. A verb in the first person tells a routine, one in the past what was done
so; all words of time and of tasks are `core.schedule`'s.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime, tzinfo
from typing import Final, Literal

from core.message.fold import fold
from core.message.reminder_words import frames, has, patterns, ways
from core.message.waters import one_of
from core.schedule import (
    Once,
    Problem,
    Request,
    is_chore,
    is_to_come,
    names_things_only,
    parse_request,
    soon,
    split_time,
    tells_rhythm,
)

LONGEST: Final = 140
"""A longer text says more than a chore. [characters]"""

MOST_WORDS: Final = 12
"""Words of a task that nobody asked to be reminded of."""

_JOINS: Final = re.compile(r"[&+]|(?<!\w)(?:and|und|et|y|e|en|i|och)(?!\w)")

How = Literal["asked", "bare", "own", "past", "named"]


@dataclass(frozen=True, slots=True)
class Chore:
    """A chore and when it is due.

    Attributes
    ----------
    how : str
        asked: a reminder is asked for; bare: the chore stands alone; own: told as a routine, or
        as what is meant to be done; past: so it was done; named: perhaps the name of a deed just
        done (`weekly water change`).
    text : str
        The task with its words of time.
    request : Request or Problem
        When it is due, or why that is unclear.
    """

    how: How
    text: str
    request: Request | Problem


def chore(text: str, now: datetime, zone: tzinfo, *, deed: bool = False) -> Chore | None:
    """The chore that a text tells; None where it is none, or may be a deed.

    Parameters
    ----------
    deed : bool
        True where the words beside the time tell a deed by themselves.

    Examples
    --------
    >>> from datetime import UTC
    >>> now = datetime(2026, 3, 2, 18, tzinfo=UTC)
    >>> told = chore("every sunday 10am water change 30%", now, UTC)
    >>> told.how, told.request.what
    ('bare', 'water change 30%')
    >>> chore("i change 30% every sunday", now, UTC).how, chore("changed 30%", now, UTC) is None
    ('own', True)
    """
    plain = text.strip(" \t.!")
    if len(text) > LONGEST or "\n" in plain:
        return None
    asked = _asked(plain.strip(" ?¿"))
    if asked is not None and _handled(plain):
        return None
    if (alone := behind_reason(plain, now, zone)) is not None:
        asked, plain = alone, _from_request(plain)
    if asked is not None:
        request = parse_request(asked, now, zone)
        known = isinstance(request, Request) or request.reason not in {"no_time", "no_what"}
        return Chore("asked", asked, request) if known and not _denied(plain) else None
    if "?" in text or has("told", "no", plain) or has("told", "like", plain):
        return None
    return _told(plain, now, zone, deed)


def asked_behind(text: str) -> tuple[str, str] | None:
    """What a text says before it asks for a reminder, and what it asks; None where nothing is.

    Examples
    --------
    >>> asked_behind("changed 30%, remind me in 7 days"), asked_behind("remind me to feed")
    (('changed 30%', 'in 7 days'), None)
    """
    found = patterns()["ask", "ask"].search(fold(text))
    if found is None or "\n" in text.strip():
        return None
    before = patterns()["ask", "and"].sub("", text[: found.start()].strip(" ,;.")).strip(" ,;.")
    asked = _asked(text[found.start() :].strip(" .!?"))
    return (before, asked) if before and asked else None


def behind_reason(text: str, now: datetime, zone: tzinfo) -> str | None:
    """What is asked for behind a reason that has a time of its own; None where it has none.

    A chore in front, or a thing that has one, is asked for as well.

    Examples
    --------
    >>> from datetime import UTC
    >>> now = datetime(2026, 3, 2, 18, tzinfo=UTC)
    >>> behind_reason("im away today, remind me to feed on friday", now, UTC)
    'feed on friday'
    >>> behind_reason("feed today, remind me to test on friday", now, UTC) is None
    True
    """
    split = asked_behind(text)
    timed = None if split is None else split_time(split[0])
    if split is None or timed is None:
        return None
    task, asked = timed[0], split[1]
    if is_chore(task) or names_things_only(task) or not _tells_why(task, text):
        return None
    request = parse_request(asked, now, zone)
    untold = isinstance(request, Problem) and request.reason in {"no_time", "no_what"}
    return None if untold else asked


def _tells_why(task: str, text: str) -> bool:
    """Whether words in front of a request tell how it is: by a verb of them, or a word for so."""
    because = patterns()["ask", "because"].search(fold(text[: _request_at(text)]))
    verb = any(has("told", name, task) for name in ("why", "own", "no"))
    return verb or because is not None or any(w.endswith("ing") for w in fold(task).split())


def _request_at(text: str) -> int:
    found = patterns()["ask", "ask"].search(fold(text))
    return len(text) if found is None else found.start()


def _from_request(text: str) -> str:
    """The text from the words on that ask for a reminder."""
    return text[_request_at(text) :]


def is_no_task(text: str) -> bool:
    """Tell whether a text asks, denies, or tells what was done or is done now and then.

    Examples
    --------
    >>> is_no_task("in the evening i test kh"), is_no_task("in the evening to test kh")
    (True, False)
    """
    return any(has("told", name, text) for name in ("no", "own", "past"))


def let_be(text: str) -> bool:
    """Tell whether a text begins with what is not to be done after all.

    Examples
    --------
    >>> [let_be(f"{said} the soda") for said in ("ok forget", "nah, leave", "i forgot")]
    [True, True, False]
    """
    plain = _framed(fold(text))
    front = patterns()["change", "corrects"].match(plain)
    plain = plain[front.end() :].strip(" ,") if front is not None else plain
    return patterns()["ask", "let_be"].match(plain) is not None


def intended(text: str) -> str | None:
    """The text without the words at its start for what somebody means to do; None without them.

    Examples
    --------
    >>> intended("ok i'll do it in 2 days"), intended("do it in 2 days")
    ('do it in 2 days', None)
    """
    plain = _framed(text)
    found = patterns()["told", "intend"].match(fold(plain))
    return None if found is None else plain[found.end() :].strip(" ,")


def parted(text: str) -> list[tuple[str, str]]:
    """What stands before a sign or a joining word of a text and what behind it, for each of them.

    Examples
    --------
    >>> parted("kh 4, wc 30% tomorrow"), parted("kh 4 and wc tonight")
    ([('kh 4', 'wc 30% tomorrow')], [('kh 4', 'wc tonight')])
    """
    joint = one_of(ways()["ask", "and"])
    signs = re.finditer(rf"(?<!\d)[,.](?!\d)|(?<=\d)[,.](?=\s)|[;\n]|\s(?:{joint})\s", fold(text))
    pairs = [(text[: sign.start()].strip(), text[sign.end() :].strip()) for sign in signs]
    return [(before, behind) for before, behind in pairs if before and behind]


def of_task_before(text: str, *, nameless: bool = False) -> bool:
    """Whether a reminder is asked for right behind its task, of which nothing is told done.

    So it is behind the word for a reminder, behind a rhythm, and, where the request is `nameless`,
    behind any task that neither a sign nor a time parts from it.

    Examples
    --------
    >>> of_task_before("water change reminder sunday"), of_task_before("wc 30%, reminder sunday")
    (True, False)
    >>> of_task_before("changed 30% reminder in 7 days"), of_task_before("wc 30% remind me to feed")
    (False, False)
    >>> of_task_before("wc 30% weekly, remind me sundays"), of_task_before("did wc, remind me")
    (True, False)
    >>> [of_task_before(f"wc{at} remind me sunday", nameless=True) for at in ("", " today", ",")]
    [True, False, False]
    """
    found = patterns()["ask", "ask"].search(fold(text))
    if found is None:
        return False
    before = text[: found.start()].rstrip()
    if not before or has("told", "past", before):
        return False
    if tells_rhythm(before):
        return True
    parted = before.endswith((",", ";", ".", "!", ":", "-")) or (
        patterns()["ask", "and"].search(before) is not None
    )
    bare = nameless and split_time(before) is None
    return not parted and (bare or has("change", "noun", found.group()))


def joins(text: str) -> bool:
    """Tell whether a text has a word or sign that joins two alike: `8am and 8pm`.

    Examples
    --------
    >>> joins("at 8am and 8pm"), joins("at 8am or 8pm")
    (True, False)
    """
    return bool(_JOINS.search(fold(text)))


def nameless(text: str, now: datetime, zone: tzinfo) -> str | None:
    """When a reminder is asked for that names no task: `ricordamelo domani`; None where not so."""
    asked = None if len(text) > LONGEST or "\n" in text.strip() else _asked(text.strip(" .!?¿"))
    if asked is None or _denied(text):
        return None
    request = parse_request(asked, now, zone)
    return asked if isinstance(request, Problem) and request.reason == "no_what" else None


_OF: Final = re.compile(r"^(?:about|of|an|uber|de|des|di|delle|over|om|o|sobre) ")


def only_asks(text: str) -> bool:
    """Tell whether a text asks for a reminder and says nothing else.

    Examples
    --------
    >>> only_asks("please remind me"), only_asks("what is due"), only_asks("remind me at 9")
    (True, False, False)
    >>> only_asks("can you remind me of stuff?"), only_asks("remind me of algae stuff")
    (True, False)
    """
    asked = None if _denied(text) else _asked(text.strip(" .!?¿"))
    if not asked:
        return asked == ""
    return patterns()["ask", "vague"].fullmatch(_OF.sub("", fold(asked))) is not None


def until_next(text: str) -> bool:
    """Tell whether a text asks to be reminded of what is next, when that is due.

    Examples
    --------
    >>> until_next("please remind me when the next one is due"), until_next("when is it due")
    (True, False)
    """
    asked = _asked(text.strip(" .!?¿"))
    return bool(asked) and patterns()["ask", "when_due"].fullmatch(fold(asked or "")) is not None


def without_request(text: str) -> str:
    """The text without what asks for a reminder, and the words around it.

    Examples
    --------
    >>> without_request("can you remind me daily at 9pm"), without_request("friday")
    ('daily at 9pm', 'friday')
    """
    return _asked(text.strip(" .!?¿")) or text


def at_same_time(text: str, at: datetime) -> str:
    """The text with a clock time in the place of `same time`.

    Parameters
    ----------
    at : datetime
        The time that is meant; local.

    Examples
    --------
    >>> at_same_time("tomorrow same time please", datetime(2026, 3, 2, 18))
    'tomorrow 18:00 please'
    """
    for found in reversed(list(patterns()["ask", "same_time"].finditer(fold(text)))):
        text = f"{text[: found.start()]}{at:%H:%M}{text[found.end() :]}"
    return text


def without_same_time(text: str) -> str:
    """The text without the words for the same time, which is what is not said.

    Examples
    --------
    >>> without_same_time("move the sunday one to saturday, same time")
    'move the sunday one to saturday'
    """
    for found in reversed(list(patterns()["ask", "same_time"].finditer(fold(text)))):
        text = f"{text[: found.start()].rstrip(' ,')}{text[found.end() :]}"
    return text


def _told(plain: str, now: datetime, zone: tzinfo, deed: bool) -> Chore | None:
    """The chore of a text that asks for nothing."""
    meant = has("told", "intend", plain)
    how: How = "past" if not meant and has("told", "past", plain) else "bare"
    if how == "bare" and (meant or has("told", "own", plain) or has("told", "verb", plain)):
        how = "own"
    said = " ".join(_without_owner(plain).split()) if how == "own" else plain
    request = parse_request(said, now, zone)
    if isinstance(request, Problem):
        vague = request.reason == "ambiguous" and is_chore(plain)
        unclear = request.reason in {"unclear", "ends"} and deed and tells_rhythm(plain)
        return Chore(how, plain, request) if how == "bare" and (vague or unclear) else None
    repeats = not isinstance(request.rule, Once)
    if how == "past":
        return (
            Chore(how, plain, request)
            if repeats and deed and not has("told", "named", plain)
            else None
        )
    thing = repeats and names_things_only(request.what)
    if not (deed or thing or is_chore(request.what)) or len(request.what.split()) > MOST_WORDS:
        return None
    if not (meant or is_to_come(plain, now, zone)) or (how == "own" and not (meant or repeats)):
        return None
    return Chore(
        "named" if how == "bare" and deed and has("told", "named", plain) else how, said, request
    )


def _asked(text: str) -> str | None:
    """The text without what asks for a reminder; None where nothing does."""
    ask = patterns()["ask", "ask"]
    if ask.search(fold(text)) is None:
        return None
    for _again in range(2):
        found = ask.search(fold(text))
        if found is not None:
            text = f"{text[: found.start()]} {soon(text[found.end() :].strip())}"
    return _framed(" ".join(text.split()))


def _handled(text: str) -> bool:
    """Tell whether what is told in front of a word for a reminder is what became of one."""
    found = patterns()["ask", "ask"].search(fold(text))
    if found is None or not has("change", "noun", found.group()):
        return False
    front = re.split(r"[,;.!?:]", fold(text)[: found.start()])[-1].split()
    return has("ask", "handled", " ".join(front[-3:]))


def _denied(text: str) -> bool:
    """Tell whether what is asked for is asked about, denied or told as done.

    The reason in front may say so of anything else: `the fish are gasping, remind me in an hour`.
    """
    plain = fold(text)
    asks = patterns()["ask", "ask"].search(plain)
    front, behind = (plain[: asks.start()].strip(), plain[asks.end() :]) if asks else ("", plain)
    if any(has("told", name, behind) for name in ("no", "past")):
        return True
    edges = [e for name in ("no", "past") for e in patterns()["told", name].finditer(front)]
    return any(not edge.start() or edge.end() == len(front) for edge in edges)


def _framed(text: str) -> str:
    """The text without the words of a request at its ends."""
    start, end = frames()
    while (found := start.match(fold(text))) is not None and found.end():
        text = text[found.end() :]
    while (found := end.search(fold(text))) is not None and found.group():
        text = text[: found.start()]
    return text.strip(" ,:;.")


def _without_owner(text: str) -> str:
    """The text without its pronouns; a plain text is as long as its source."""
    for meaning in ("intend", "own"):
        for found in reversed(list(patterns()["told", meaning].finditer(fold(text)))):
            text = text[: found.start()] + text[found.end() :]
    return text
