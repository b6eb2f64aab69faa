"""What is asked and told of a day's use: `how much does it use a day`, `it uses 0.5 dkh a day`."""

from __future__ import annotations

import re
from itertools import pairwise
from typing import Final, Literal

from core.message import quantities, slots
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Context
from core.message.slot import Number
from core.message.tokens import Token, cut

Asked = Literal["use", "hold"]
"""How much is used up a day, or how much a day holds what is there."""

_A_DAY: Final = re.compile(
    r"\b(?:a day|per day|each day|every day|daily|/ ?day|am tag|pro tag|jeden tag|taglich|taeglich"
    r"|par jour|chaque jour|quotidien\w*|al dia|por dia|cada dia|diari\w+|ao dia|al giorno"
    r"|ogni giorno|giornalier\w+|per dag|elke dag|dagelijks\w*|dziennie|na dzien|codzienn\w+"
    r"|per dygn|om dagen|varje dag|daglig\w*)\b"
)
_FALLS: Final = re.compile(
    r"\b(?:drops?|falls?|loses?|lost|going down|goes? down|used|sinkt|fallt|faellt|verliert"
    r"|verbraucht|baisse|perd|descend|tombe|baja|pierde|cae|gasta|desce|perde|cai|gasta|scende"
    r"|cala|daalt|zakt|verliest|spada|traci|ubywa|sjunker|tappar|faller|gar at)\b"
)
_HOLDS: Final = re.compile(
    r"\b(?:keep|hold|maintain|replace|steady|stable|halten|ausgleichen|ersetzen|stabil|maintenir"
    r"|garder|compenser|stable|mantener\w*|compensar|estable|manter|repor|mantener\w*|mantenere"
    r"|mantenerl\w|stabile|houden|stabiel|aanvullen|utrzymac|uzupelnic|stabilne|halla|stabilt"
    r"|ersatta)\b"
)


def asked(text: str) -> Asked | None:
    """Whether a text asks what is used up a day, or how much a day holds it; else None.

    Examples
    --------
    >>> asked("how much does it use a day"), asked("wie viel Natron am Tag um es zu halten")
    ('use', 'hold')
    >>> asked("how much do i feed a day") is None
    True
    """
    plain = fold(text)
    if _A_DAY.search(plain) is None:
        return None
    tokens = cut(plain, lexicon(), text)
    if all(token.value != "how_much" for token in tokens):
        return None
    if _HOLDS.search(plain) or any(token.kind == "substance" for token in tokens):
        return "hold"
    return "use" if _used(plain, tokens) else None


def told(text: str, context: Context) -> tuple[str, float] | None:
    """The analyte and the use a day that a text tells, in canonical units a day.

    Told so, or by how far it fell in so many days; a question may tell it as what it rests on.

    Examples
    --------
    >>> from datetime import UTC, datetime
    >>> now = Context(now=datetime(2026, 3, 1, tzinfo=UTC), zone=UTC)
    >>> told("my reef uses 0.5 dkh a day", now)
    ('kh', 0.5)
    >>> told("how much soda if kh fell from 8 to 7 in two days", now)
    ('kh', 0.5)
    """
    plain = fold(text)
    tokens = cut(plain, lexicon(), text)
    if not _used(plain, tokens):
        return None
    numbers = slots.read(tokens, context, text).numbers
    if (days := _days(tokens)) is not None:
        return _fallen(numbers, days)
    end = _A_DAY.search(plain)
    if end is None:
        return None
    asks = any(token.kind == "ask" for token in tokens)
    told_of = [
        n for n in numbers if not asks or _NEAR.fullmatch(plain, n.quantity.end, end.start())
    ]
    if len(told_of) != 1 or told_of[0].analyte is None or told_of[0].value == 0.0:
        return None
    return told_of[0].analyte, abs(told_of[0].value)


def _fallen(numbers: list[Number], days: float) -> tuple[str, float] | None:
    """What fell from one number to the other, a day."""
    ends = {number.role: number for number in numbers if number.role in {"from", "to"}}
    if len(ends) != 2 or ends["from"].analyte is None:
        return None
    by = ends["from"].value - ends["to"].value
    return (ends["from"].analyte, by / days) if by > 0.0 else None


def _days(tokens: list[Token]) -> float | None:
    """So many days or weeks; None where no number of them is told."""
    for number, unit in pairwise(tokens):
        if unit.kind != "time" or unit.value not in _SPANS:
            continue
        if number.kind == "number" and (found := quantities.read([number], 0)) is not None:
            return (found.value or 0.0) * _SPANS[str(unit.value)] or None
        if number.kind == "count" and str(number.value).isdigit():
            return float(str(number.value)) * _SPANS[str(unit.value)] or None
        if number.value == "one" and unit.value == "week":
            return _SPANS["week"]
    return None


_SPANS: Final = {"day": 1.0, "week": 7.0}
"""Days in each."""

_NEAR: Final = re.compile(r"[^\d,;]{0,12}")
"""Between a number and the words that it is of each day: its unit at most."""


def _used(plain: str, tokens: list[Token]) -> bool:
    named = any(t.kind == "mark" and t.value in {"uses", "down"} for t in tokens)
    return named or _FALLS.search(plain) is not None
