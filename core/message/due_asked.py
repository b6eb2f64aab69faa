"""``what's due today``, ``que tengo pendiente``: what asks for the list of all that is due."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, NamedTuple

from core.message.fold import fold
from core.message.word_classes import said

FILE: Final = "due_asked.txt"

SPANS: Final = {"today": 1, "tomorrow": 2, "week": 8}
"""Days from today on asked about: of tomorrow only the second, a week to its own day."""


class Due(NamedTuple):
    """Which days are asked about (None: all), and whether it may also be asked of what is wrong.

    `anything` is whether it is asked if there is anything at all: `nothing to do?`; `reminders`
    whether by the name of reminders.
    """

    span: str | None = None
    may_be_a_call: bool = False
    anything: bool = False
    reminders: bool = False


def due_asked(text: str, tanks: Sequence[str] = ()) -> Due | None:
    """Whether a text asks for what is due; None where it asks of something, or tells something.

    Examples
    --------
    >>> due_asked("what's due today").span, due_asked("que tengo pendiente").span
    ('today', None)
    >>> due_asked("do i have anything tomorrow?").span, due_asked("what's coming up").span
    ('tomorrow', None)
    >>> due_asked("what should i do tomorrow").span, due_asked("anything this week?").span
    ('tomorrow', 'week')
    >>> due_asked("what did i have to do").may_be_a_call, due_asked("what do i have") is None
    (True, True)
    >>> due_asked("what reminders have i got").reminders, due_asked("what's due").reminders
    (True, False)
    >>> due_asked("water change due tomorrow") is None, due_asked("due") is None
    (True, True)
    """
    plain = fold(text)
    for name in sorted(tanks, key=len, reverse=True):
        plain = plain.replace(fold(name), " ")
    told = said(FILE, plain)
    if told is None or told.numbers:
        return None
    classes = set(told.classes)
    span = next((each for each in SPANS if each in classes), None)
    asks = bool(classes & {"what", "any", "list"})
    if "reminder" in classes:
        named = asks or "have" in classes or classes <= {"reminder", *SPANS}
        return Due(span, reminders=True) if named else None
    if "made" in classes:
        return None  # was set up tomorrow
    if "due" in classes:
        return Due(span) if asks or ("have" in classes and "?" in text) else None
    if "todo" in classes:
        anything = "any" in classes and "what" not in classes
        return Due(span, may_be_a_call=True, anything=anything) if asks else None
    of_days = asks and span is not None
    return Due(span, may_be_a_call="have" not in classes) if of_days else None
