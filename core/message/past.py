"""Questions of what was done and measured: ``when did i last change the water``.

question = opening { deed | analyte | substance | tank | span | light word } ["?"]

Every word has to be known, so that nothing told is taken for a question; a number makes it none.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.message.waters import one_of
from core.message.wordfile import spelt

LONGEST: Final = 90
"""A longer text tells more than it asks. [characters]"""
WEEK: Final = timedelta(days=7)
DAY: Final = timedelta(days=1)
MEASURED: Final = "measured"
"""The deed of a test, which is no event."""
ANY: Final = "any"
"""Whatever was done or measured."""

_IMPLIED: Final[Mapping[str, tuple[str, str]]] = {
    "what_all": ("what", ANY),
    "what_in": ("total", "dose"),
    "what_read": ("what", MEASURED),
    "has_moved": ("moved", "moved"),
}
"""Openings that say the deed themselves: the form that they are, and the deed."""


@dataclass(frozen=True, slots=True)
class Past:
    """What is asked of the past.

    Attributes
    ----------
    form : str
        when, last, whether, what, total (the sum of what went in), moved (whether it rose
        or fell), value (how high it was), or now (how high it is).
    deed : str or None
        A kind of event, measured, or any of them.
    analyte, substance, tank : str or None
        Of what, and of which tank.
    span : str or None
        An id of the spans of ``past.txt``, or a day of the week (`mon`).
    since : str or None
        The word that tells that the span is from its first day on.
    """

    form: str
    deed: str | None = None
    analyte: str | None = None
    substance: str | None = None
    tank: str | None = None
    span: str | None = None
    since: str | None = None


@cache
def _read() -> Mapping[str, Mapping[str, str]]:
    """Section → plain word → its meaning.

    Raises
    ------
    ValueError
        If a line of ``past.txt`` has no ``=``.
    """
    held: dict[str, dict[str, str]] = {}
    for section, meaning, told in spelt("past.txt"):
        held.setdefault(section, {}).update(dict.fromkeys(told, meaning))
    return held


@cache
def _opening() -> re.Pattern[str]:
    return re.compile(rf"[\s¿]*({one_of(_read()['opening'])})(?!\w)")


@cache
def _known() -> re.Pattern[str]:
    held = _read()
    parts = (f"(?P<{name}>{one_of(held[name])})" for name in ("span", "deed", "light"))
    return re.compile(rf"[\s,?!.:]*(?<!\w)(?:{'|'.join(parts)})(?!\w)")


_THAT: Final = re.compile(r"\bça\b", re.IGNORECASE)


def asked(text: str, tanks: Sequence[str] = ()) -> Past | None:
    """What a text asks of the past; None where it tells something or asks for something else.

    Examples
    --------
    >>> asked("when did i last change the water?").deed
    'water_change'
    >>> asked("wie war kh letzte woche").analyte, asked("wie war kh letzte woche").span
    ('kh', 'last_week')
    >>> asked("what were my last readings").form, asked("what were my readings").deed
    ('what', 'measured')
    >>> asked("what did i do last week").deed, asked("how much soda did i use").form
    ('any', 'total')
    >>> asked("did i change 30%") is None, asked("last water change yesterday") is None
    (True, True)
    """
    if len(text) > LONGEST or "\n" in text:
        return None
    plain = fold(_THAT.sub("cela", text))  # without its mark it would be calcium
    opened = _opening().match(plain)
    if opened is None:
        return None
    form = _read()["opening"][" ".join(opened[1].split())]
    since = _word("since").search(plain, opened.end())
    if since is not None and form not in {"when", "last"}:
        plain = f"{plain[: since.start()]}{' ' * len(since[0])}{plain[since.end() :]}"
        past = _asked(text, plain, opened.end(), form, tanks)
        return None if past is None or past.span is None else replace(past, since=since[0])
    return _asked(text, plain, opened.end(), form, tanks)


@cache
def _word(section: str) -> re.Pattern[str]:
    return re.compile(rf"(?<!\w)(?:{one_of(_read()[section])})(?!\w)")


def than(text: str) -> tuple[str, str] | None:
    """A text without the span that it holds something against, and that span; None without.

    Examples
    --------
    >>> than("is that better than last week?"), than("wie ist das im vergleich zu gestern") is None
    (('is that better', 'last_week'), False)
    >>> than("is that better"), than("worse than ever")
    (None, None)
    """
    plain = fold(text).rstrip(" ?!.")
    found = _than().search(plain) if len(plain) <= len(text) <= LONGEST else None
    if found is None:
        return None
    return plain[: found.start()].strip(" ,"), _read()["span"][" ".join(found[1].split())]


@cache
def _than() -> re.Pattern[str]:
    link, span = one_of(_read()["than"]), one_of(_read()["span"])
    return re.compile(rf"(?<!\w)(?:{link}) ({span})$")


def _asked(text: str, plain: str, start: int, form: str, tanks: Sequence[str]) -> Past | None:
    """What stands behind an opening, by its form."""
    found = _rest(plain, start, tanks)
    if found is None:
        return None
    if form == "marked":  # in languages that ask by the mark alone
        form = "whether" if "?" in text else "told"
    if form in _IMPLIED:
        form, deed = _IMPLIED[form]
        found.setdefault("deed", deed)
    if form in {"much", "much_did"} and found.get("deed") != "moved":
        return _total(form, found)
    if "moved" in {form, found.get("deed")}:  # some languages have both in one word
        return _moved(form, found)
    if found.get("deed") == "put":
        found["deed"] = "dose"
    past = Past("what" if form == "list" else form, **found)
    if form in {"now", "stands", "so"}:
        bare = past.analyte is not None and past.deed is None and past.substance is None
        span = "now" if form == "so" else past.span
        stands = past.span in {None, "now"} and (form != "now" or span == "now")
        return replace(past, form="now", span=span) if bare and stands else None
    unnamed = past.analyte is None and past.substance is None
    if form == "value" and past.deed == MEASURED and unnamed:
        return replace(past, form="what")  # what were my readings
    if form == "value" and unnamed and past.deed is None:  # what was it last week
        pointed = _word("it").search(plain, start) is not None
        is_day = past.span not in {None, "now"}
        return replace(past, form="what", deed=MEASURED) if pointed and is_day else None
    if form == "value":
        return past if past.analyte is not None and past.deed is None and past.span else None
    if past.deed is None or form == "told" or (form == "last" and past.span is not None):
        return None
    return past


def _total(form: str, found: Mapping[str, str]) -> Past | None:
    """The sum of what went in; None of a wish, which has no deed that is past."""
    deeds = {"put"} if form == "much" else {"put", "dose", "added"}
    if found.get("deed") not in deeds or "analyte" in found:
        return None
    return Past("total", **{**found, "deed": "dose"})


def _moved(form: str, found: Mapping[str, str]) -> Past | None:
    """Whether a value rose or fell; None where no value is named, or something else was done."""
    if (
        form not in {"moved", "whether", "much", "much_did"}
        or "analyte" not in found
        or found.get("deed") != "moved"
    ):
        return None
    return Past("moved", **{**found, "deed": MEASURED}) if "substance" not in found else None


def behind(text: str, tanks: Sequence[str] = ()) -> tuple[str, Past] | None:
    """What is told before the value that stands is asked for, and what is asked; else None.

    Examples
    --------
    >>> told, past = behind("changed 30% whats no3 now")
    >>> told, past.analyte
    ('changed 30%', 'nitrate')
    >>> behind("whats no3 now") is None, behind("kh 4, changed 30%") is None
    (True, True)
    """
    plain = fold(text)
    if len(plain) != len(text):
        return None  # where a letter became two, the places are not the same
    for opened in _openings().finditer(plain):
        told = text[: opened.start()].rstrip(" ,.;:!\n")
        past = asked(text[opened.start() :].strip(), tanks) if told else None
        if past is not None and past.form == "now":
            return told, past
    return None


@cache
def _openings() -> re.Pattern[str]:
    return re.compile(rf"(?<!\w)(?:{one_of(_read()['opening'])})(?!\w)")


def _rest(plain: str, place: int, tanks: Sequence[str]) -> dict[str, str] | None:
    """What stands behind the opening, or None with a word that is not known here."""
    names = {fold(name): name for name in tanks}
    held, found = _read(), dict[str, str]()
    while plain[place:].strip(" ?!.,:"):
        word = _known().match(plain, place)
        if word is not None and word.lastgroup is not None:
            kind, place = word.lastgroup, word.end()
            if kind != "light":
                found.setdefault(kind, held[kind][" ".join(word[kind].split())])
            continue
        start = place + len(plain[place:]) - len(plain[place:].lstrip(" ?!.,:"))
        name = next((n for n in names if re.match(rf"{re.escape(n)}(?!\w)", plain[start:])), None)
        if name is not None:
            found.setdefault("tank", names[name])
            place = start + len(name)
            continue
        token = next(iter(cut(plain[start:], lexicon(), plain[start:], most=8)), None)
        if token is None or not _takes(token.kind, str(token.value), found):
            return None
        place = start + token.end
    return found


def _takes(kind: str, value: str, found: dict[str, str]) -> bool:
    """Whether a word of the lexicon has a place in such a question; it is put there."""
    if kind == "analyte":
        return found.setdefault("analyte", value.partition("@")[0]) == value.partition("@")[0]
    if kind == "substance":
        return found.setdefault("substance", value) == value
    if kind == "time" and value in WEEKDAYS:
        return found.setdefault("span", value) == value
    return kind == "fill" or value in {"home", "at", "in"}


WEEKDAYS: Final = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")


HOURS: Final[Mapping[str, tuple[int, int]]] = {"this_morning": (0, 12), "last_night": (17, 6)}
"""Local hours of a span that is a part of a day: of its first day from, of its last day to."""


def days_of(span: str, today: date) -> tuple[date, date]:
    """First and last day of a span.

    Examples
    --------
    >>> days_of("last_week", date(2026, 3, 4))
    (datetime.date(2026, 2, 23), datetime.date(2026, 3, 1))
    >>> days_of("mon", date(2026, 3, 2))[0]
    datetime.date(2026, 3, 2)
    """
    if span in WEEKDAYS:
        day = today - timedelta(days=(today.weekday() - WEEKDAYS.index(span)) % 7)
        return day, day
    if span in {"yesterday", "before_yesterday"}:
        day = today - (DAY if span == "yesterday" else 2 * DAY)
        return day, day
    if span == "last_night":
        return today - DAY, today
    if span == "seven_days":
        return today - 6 * DAY, today
    if span.endswith("week"):
        monday = today - timedelta(days=today.weekday())
        return (monday - WEEK, monday - DAY) if span == "last_week" else (monday, today)
    if span.endswith("month"):
        first = today.replace(day=1)
        ended = first - DAY
        return (ended.replace(day=1), ended) if span == "last_month" else (first, today)
    return today, today
