"""What of a plan is told to be in where its rest is: `put the rest in`, `all the rest is in`."""

from __future__ import annotations

from typing import Final, Literal

from core.message.plan_said import said_of_plan

Rest = Literal["rest", "all_rest", "all"]
"""What is left of what was begun; expressly all that is left of all; all of it."""

_ALL: Final = frozenset({"all", "two"})


def rest_told(text: str) -> Rest:
    """Which rest a text tells that is known to tell that all of a plan, or its rest, went in.

    Parameters
    ----------
    text : str
        A text that `telling` reads as ``gave_all``.

    Examples
    --------
    >>> rest_told("put the rest in"), rest_told("all the rest is in"), rest_told("put it all in")
    ('rest', 'all_rest', 'all')
    >>> rest_told("all parts are in")
    'all_rest'
    """
    said = said_of_plan(text)
    classes = frozenset[str]() if said is None else said.classes
    if "rest" in classes:
        return "all_rest" if classes & _ALL else "rest"
    return "all_rest" if classes & _ALL and "part" in classes else "all"
