"""Whether a part told is one more, behind the first: `second half in`, `then the second too`."""

from __future__ import annotations

from typing import Final

from core.message.plan_said import said_of_plan

_LATER: Final = frozenset({"place", "next", "rest", "more"})


def names_later(text: str) -> bool:
    """Whether a text names a part that is not the first: so it is no deed that is told twice.

    Examples
    --------
    >>> names_later("second half in"), names_later("first half in"), names_later("its in")
    (True, False, False)
    """
    said = said_of_plan(text)
    return said is not None and bool(said.classes & _LATER) and not said.begins


def one_more(text: str) -> bool:
    """Whether a text without a deed names one more part beside one that is in.

    Examples
    --------
    >>> one_more("then the second too"), one_more("the second?"), one_more("and the second")
    (True, False, False)
    """
    said = None if "?" in text else said_of_plan(text)
    if said is None or not said.also or said.asks or said.queries or said.begins:
        return False
    return bool(said.classes & _LATER) and not said.classes - _LATER - {"part", "now"}
