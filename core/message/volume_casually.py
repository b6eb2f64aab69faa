"""How much water a tank holds, told in passing: `its a 240 l`, `100l community`, `its my 60`.

volume = { head } number unit { tail } | bare number ( { tail } | with who lives there )

What stands around the number says no more of it, so it is read as the volume alone.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message.amounts import volume_litres
from core.message.fold import fold
from core.message.volume_said import gallon_before
from core.message.waters import one_of
from core.message.wordfile import spelt

LONGEST: Final = 60
"""A longer text says more. [characters]"""

LEAST_BARE: Final = 40.0
"""A smaller number without a unit may be the warmth of the water; ours."""

_NUMBER: Final = r"(?P<number>\d{1,5}(?:[.,]\d{1,2})?)"
_UNIT: Final = r"(?P<unit>[a-z]{1,9}(?: gal)?)"


@cache
def _patterns() -> tuple[re.Pattern[str], re.Pattern[str]]:
    """Of a volume with its unit, and of a number that needs none."""
    told: dict[str, list[str]] = {"head": [], "tail": [], "bare": [], "with": []}
    for section, _language, ways in spelt("volume_casually.txt", told):
        told[section] += ways
    head, tail, bare, beside = map(one_of, told.values())
    behind = rf"(?P<tail>(?:[\s,]+(?:{tail})){{0,3}})"
    return (
        re.compile(rf"(?P<head>(?:(?:{head})\s+){{0,4}}){_NUMBER}[\s-]?{_UNIT}{behind}"),
        re.compile(rf"(?:{bare})\s+{_NUMBER}(?:{behind}|(?P<beside> (?:{beside}) .+))"),
    )


def casually(text: str, *, us_gallons: bool = True) -> str | None:
    """The volume of a text as it would be typed alone; None where the text says more, or only it.

    Examples
    --------
    >>> casually("its a 240 l"), casually("100l community"), casually("its my 60")
    ('240 l', '100 l', '60 l')
    >>> casually("its my 60 with betta"), casually("tank is 25"), casually("its a 20 l bucket")
    ('60 l with betta', None, None)
    """
    plain = fold(gallon_before(text)).strip(" \t.,;:!")
    if "?" in text or len(plain) > LONGEST:
        return None
    sure, bare = _patterns()
    if (found := sure.fullmatch(plain)) is not None and (found["head"] or found["tail"]):
        said = f"{found['number']} {found['unit']}"
        return said if volume_litres(said, us_gallons) is not None else None
    found = bare.fullmatch(plain)
    if found is None or float(found["number"].replace(",", ".")) < LEAST_BARE:
        return None
    return f"{found['number']} l{found['beside'] or ''}"
