"""What gets no dose at all, by whatever name: the rows of the cautions that must refuse."""

from __future__ import annotations

from typing import Final

from core.advice.alarm_words import named

REFUSED: Final = (
    "mixing",
    "battery_acid",
    "caustic",
    "acid",
    "medicine",
    "human",
    "release",
    "condensate",
    "together",
    "bleach",
    "plaster",
    "baking_powder",
)
"""Rows of the cautions that refuse; of several that a text touches the first is said. Their words
stand in ``core/message/words/danger``, in nine languages."""


def forbidden(text: str, *, asked: bool = True) -> str | None:
    """Name the row of the cautions that a text asks against, None where there is none.

    Parameters
    ----------
    text : str
        The question as written.
    asked : bool, optional
        False for what does not look like a question: only the words of danger are heeded then.

    Returns
    -------
    str or None
        mixing, battery_acid, caustic, acid, medicine, human, release, condensate, together,
        bleach, plaster or baking_powder.

    Examples
    --------
    >>> forbidden("how much formalin for 100 l")
    'medicine'
    """
    found = named(text)
    said = found.get("refuse", frozenset())
    if asked:
        said |= found.get("asked", frozenset())
    return next((reason for reason in REFUSED if reason in said), None)
