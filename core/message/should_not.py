"""``shouldnt i raise the ph``, ``cant i just add soda``: asked by a no whether to do a thing.

Who asks so wants what ``should i`` asks for, so it is read as that, whatever stands behind it.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.waters import one_of
from core.message.wordfile import spelt

FILE: Final = "should_not.txt"
_SECTIONS: Final = ("way", "marked", "why", "lead", "just")


@cache
def _ways() -> tuple[dict[str, dict[str, str]], dict[str, re.Pattern[str]]]:
    """Section → how it is typed → the plain way; and section → what finds it."""
    plain: dict[str, dict[str, str]] = {name: {} for name in _SECTIONS}
    for section, meaning, ways in spelt(FILE, _SECTIONS):
        plain[section] |= dict.fromkeys(ways, meaning.replace("_", " "))
    lead, just = one_of(plain["lead"]), one_of(plain["just"])
    found = {
        name: re.compile(
            rf"(?:^|[.!?;,\n])[ \t]*(?:(?:{lead})[ \t,]+){{0,2}}"
            rf"(?P<way>{one_of(plain[name])})(?!\w)(?:[ \t]+(?:{just})(?!\w))?"
        )
        for name in ("way", "marked", "why")
    }
    return plain, found


def as_should(text: str) -> str | None:
    """The text with the plain way in the place of the no; None where it asks by none.

    Examples
    --------
    >>> as_should("shouldnt i raise the ph quick?"), as_should("ok but can't I just add soda")
    ('should i raise the ph quick?', 'ok but can i add soda')
    >>> as_should("no puedo subir el ph?"), as_should("no puedo medir el ph")
    ('puedo subir el ph?', None)
    >>> as_should("i cant add it"), as_should("should i feed"), as_should("cant i")
    (None, None, None)
    """
    anew = _anew(text, "way")
    return _anew(text, "marked") if anew is None and "?" in text else anew


def why_not(text: str) -> str | None:
    """The same of what asks it in the guise of a reason; None where none is asked so.

    Examples
    --------
    >>> why_not("why not raise the ph now"), why_not("why cant i just add soda")
    ('should i raise the ph now', 'should i add soda')
    >>> why_not("why is ph low"), why_not("why not?")
    (None, None)
    """
    return _anew(text, "why")


def _anew(text: str, section: str) -> str | None:
    plain, found = _ways()
    folded = fold(text)
    said = found[section].search(folded)
    if said is None or len(folded) != len(text) or not re.search(r"\w", folded[said.end() :]):
        return None
    way = plain[section][" ".join(said["way"].split())]
    return f"{text[: said.start('way')]}{way}{text[said.end() :]}"
