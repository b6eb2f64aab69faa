"""``ok done``, ``turned it off``, ``its back on``: what is told in answer to steps or advice.

None of it says what was done: the chat looks at what was spoken of last. The words stand in
``acknowledged.txt``.
"""

from __future__ import annotations

from typing import Final, Literal, cast, get_args

from core.message.word_classes import said

FILE: Final = "acknowledged.txt"

Told = Literal["did", "off", "on", "lacks", "untested", "agrees"]
"""It is done; a thing was switched off, or runs again; it is not at hand; nothing was measured; it
shall be as was just offered."""


def told(text: str) -> Told | None:
    """What a text acknowledges; None where it says more, or asks.

    Examples
    --------
    >>> told("ok done"), told("turned it off"), told("Läuft wieder!"), told("no tengo ninguno")
    ('did', 'off', 'on', 'lacks')
    >>> told("ok do that"), told("do that tomorrow")
    ('agrees', None)
    >>> told("havent tested anything"), told("done?"), told("done 30%"), told("did the filter")
    ('untested', None, None, None)
    """
    found = None if "?" in text else said(FILE, text)
    if found is None or len(found.classes) != 1 or found.classes[0] not in get_args(Told):
        return None
    return cast("Told", found.classes[0])
