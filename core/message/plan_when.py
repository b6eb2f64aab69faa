"""``when is the second one``, ``when is it done``, ``double dose ok?``: of the plan just given."""

from __future__ import annotations

from typing import Final, Literal

from core.message.word_classes import opens_with, said

FILE: Final = "plan_when.txt"


def when_of_plan(text: str) -> Literal["when_next", "days", "at_once"] | None:
    """What a text asks of a plan's times, or whether double may go in; None where neither.

    Examples
    --------
    >>> when_of_plan("when is the second one"), when_of_plan("wann ist es fertig")
    ('when_next', 'days')
    >>> when_of_plan("double dose ok?"), when_of_plan("when did i give the last part") is None
    ('at_once', True)
    """
    told = said(FILE, text)
    if told is None or told.numbers or told.has("past"):
        return None
    classes = set(told.classes)
    if "when" in classes:
        if "done" in classes:
            return "days" if classes <= {"when", "done", "go", "part"} else None
        return "when_next" if classes & {"next", "part"} and "double" not in classes else None
    if "double" in classes and classes <= {"double", "safe", "part", "go"}:
        return "at_once" if "safe" in classes or "?" in text else None
    return None


def asks_when(text: str) -> bool:
    """Whether a text asks when something is or was: then nothing of it is told to be done.

    Examples
    --------
    >>> asks_when("when did i dose last"), asks_when("I dosed the last part")
    (True, False)
    """
    return opens_with(FILE, text, "when")


def asks_of_first(text: str) -> bool:
    """Whether `when can i dose` is asked of no next one: where none went in, of the first.

    Examples
    --------
    >>> asks_of_first("so when can i dose"), asks_of_first("when is the next dose")
    (True, False)
    """
    told = said(FILE, text)
    return told is not None and told.has("when", "part") and not told.has("next")
