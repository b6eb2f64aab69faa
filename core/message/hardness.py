"""French degrees told from German ones that the thumb missed.

The keys D and F are neighbours, so `4 dh` and `4 fh` are one slip apart and a factor of 1.8. A
French degree is taken where it is plainly meant: written out, with its sign (`°f`, `°fH`) or as
`fH`, or where the message has a word of a language whose water reports use it or one of its French
names (TH, TAC). It is asked about where none of these stands.
"""

from __future__ import annotations

import re

from core.message import doubts
from core.message.guesses import name_for
from core.message.lexicon import lexicon
from core.message.model import Doubt, Value
from core.message.state import Statement
from core.message.tokens import Token

FRENCH = "°fH"
DEGREES = frozenset({FRENCH, "°dH"})
_USERS = frozenset({"fr", "it", "es", "pt"})
"""Languages of countries whose water reports count French degrees."""
_NAMES = frozenset({"th", "tac"})
_EITHER = frozenset(
    "hardness harte wasserharte durete dureza durezza hardheid waterhardheid twardosc hardhet"  # noqa: SIM905
    " wasserhaerte haerte".split()
)
"""Names of the hardness of all kinds, in nine languages: another name beside it says of which."""
_OF_EITHER = frozenset({"kh"})
_WRITTEN = re.compile(r"[°º˚]|fH(?!\w)|[Ff]r[ae]n")
"""The sign, the usual capital, or a unit in words; matched against the value as written."""

_BARE = re.compile(r"[°º˚]d?$")


def is_hardness(name: str, *, of: str) -> bool:
    """Whether a name of hardness is that of another analyte, which is named beside it.

    Examples
    --------
    >>> is_hardness("hardness", of="kh"), is_hardness("general hardness", of="kh")
    (True, False)
    """
    return of in _OF_EITHER and name in _EITHER


def slips(state: Statement, tokens: list[Token]) -> None:
    """Turn what may be a slip, in a message that has degrees, into doubts.

    Beside a French degree or name a bare degree (`7 °`, `7 °d`) may have lost its letter.
    """
    meant = _meant(tokens)
    near = any(token.text in _NAMES or token.value == FRENCH for token in tokens)
    near = near or any(value.unit == FRENCH for value in state.values)
    kept = [
        (
            meant
            or value.unit != FRENCH
            or bool(_WRITTEN.search(state.source[value.start : value.end]))
        )
        and not (
            near and value.unit == "°dH" and _BARE.search(state.source[value.start : value.end])
        )
        for value in state.values
    ]
    for value, sound in zip(state.values, kept, strict=True):
        if not sound:
            state.doubts.append(_doubt(value, state.source))
    state.times = [at for at, sound in zip(state.times, kept, strict=True) if sound]
    state.values = [value for value, sound in zip(state.values, kept, strict=True) if sound]


def _meant(tokens: list[Token]) -> bool:
    """Whether a name or a word of the message says that its keeper counts French degrees."""
    known = lexicon().languages
    return any(
        token.text in _NAMES or known.get(token.text, frozenset({""})) <= _USERS for token in tokens
    )


def _doubt(value: Value, source: str) -> Doubt:
    if value.low is not None and value.high is not None:
        number = f"{value.low:.6g}-{value.high:.6g}"
    else:
        number = f"{value.value:.6g}"
    choices = tuple(f"{name_for(value.analyte)} {number} {unit}" for unit in (FRENCH, "°dH"))
    text = source[value.start : value.end]
    return Doubt(text, value.start, value.end, doubts.AMBIGUOUS_UNIT, None, None, choices)
