"""``how is my water``, ``is the pond ok``: how a whole tank stands."""

from __future__ import annotations

from typing import Final

from core.message.word_classes import said

FILE: Final = "tank_asked.txt"


def tank_asked(text: str) -> bool:
    """Whether a text asks nothing but how a tank stands, which is called a tank or what it is.

    Examples
    --------
    >>> tank_asked("how is my water"), tank_asked("is the pond ok"), tank_asked("reef ok?")
    (True, True, True)
    >>> tank_asked("is ok?"), tank_asked("tank is ok"), tank_asked("is it big")
    (False, False, False)
    >>> tank_asked("wie geht's dem Teich"), tank_asked("is the tank big"), tank_asked("water?")
    (True, False, False)
    """
    told = said(FILE, text)
    if told is None or told.numbers or not told.has("noun"):
        return False
    if told.has("how"):
        return True
    opens = told.classes[0] == "be"  # it is ok: told
    return told.has("ok") and ("?" in text or (told.has("be") and opens))
