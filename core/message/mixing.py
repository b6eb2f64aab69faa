"""Which share of which water: `how much ro for gh 8`, `match tap to tank`.

mixing  = amount pure-water [ wish ] | mix pure-water other-water wish | match other-water
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from core.message import slots
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Context
from core.message.tokens import Token, cut
from core.message.waters import PURE, mentioned

_MIX: Final = re.compile(
    r"\b(?:mix|mixing|blend|cut|misch\w*|verschneid\w*|melang\w*|coup(?:er|e)|mezcl\w*|mistur\w*"
    r"|mescol\w*|tagli(?:are|o)|meng\w*|miesz\w*|zmiesz\w*|wymiesz\w*|bland\w*)\b"
)
_MATCH: Final = re.compile(
    r"\b(?:match|matching|angleich\w*|anpass\w*|passend machen|adapter|ajuster|igualar|ajustar"
    r"|adattare|adeguare|aanpassen|afstemmen|dopasow\w*|matcha|anpassa)\b"
)
_NEAR: Final = 12
"""Characters between the word of asking and the water that is asked for."""

_AMOUNTS: Final = frozenset({"how_much", "change"})
"""Words of asking that an amount of water stands behind; combien d'eau is one of change."""


@dataclass(frozen=True, slots=True)
class Mixing:
    """Two waters that are to make a third.

    Attributes
    ----------
    pure : str
        The one without minerals, as it was named; "ro" where only a match is wished.
    other : str or None
        The other one, as it was named.
    analyte, target : str and float, or None
        What the mix is to have, in canonical units; None where nothing is said: as the tank.
    litres : float or None
        How much of it. [L]
    """

    pure: str
    other: str | None
    analyte: str | None
    target: float | None
    litres: float | None


def asked(text: str, context: Context) -> Mixing | None:
    """What two waters are to make; None where a text asks for no shares, or tells more than that.

    Examples
    --------
    >>> from datetime import UTC, datetime
    >>> here = Context(now=datetime(2026, 3, 1, tzinfo=UTC), zone=UTC)
    >>> asked("how much ro for a 10 l can", here)
    Mixing(pure='ro', other=None, analyte=None, target=None, litres=10.0)
    >>> asked("mix ro and tap to gh 6", here)
    Mixing(pure='ro', other='tap', analyte='gh', target=6.0, litres=None)
    >>> asked("how much salt for 20 l ro to gh 6", here) is None
    True
    """
    plain = fold(text)
    waters = mentioned(text)
    tokens = cut(plain, lexicon(), text)
    pure = [(start, end) for start, end, kind in waters if kind in PURE]
    others = [text[start:end] for start, end, kind in waters if kind not in PURE]
    if len(pure) > 1 or len(others) > 1 or any(token.kind == "substance" for token in tokens):
        return None
    match = _MATCH.search(plain) is not None and bool(others)
    mixed = _MIX.search(plain) is not None and bool(pure) and bool(others)
    wanted = bool(pure) and any(_stands_before(token, pure[0]) for token in tokens)
    if not (match or mixed or wanted):
        return None
    bare = [token for token in tokens if token.kind not in {"ask", "event"}]
    found = slots.read(bare, context, text)
    numbers = found.numbers
    if len(numbers) > 1 or found.percent is not None or found.grams is not None or found.unplaced:
        return None
    wish = numbers[0] if numbers else None
    if wish is not None and (wish.analyte is None or wish.role in {"by", "from"}):
        return None
    if wish is None and not match and found.volume_l is None:
        return None
    name = text[pure[0][0] : pure[0][1]] if pure else "ro"
    return Mixing(
        name,
        others[0] if others else None,
        wish.analyte if wish is not None else None,
        wish.value if wish is not None else None,
        found.volume_l,
    )


def _stands_before(token: Token, water: tuple[int, int]) -> bool:
    """Whether a word asks how much of a water: right before it, or with its first word in it."""
    asks = token.kind == "ask" and token.value in _AMOUNTS
    return (
        asks
        and token.start < water[0] + _NEAR
        and water[0] - token.end <= _NEAR
        and (token.start <= water[0])
    )
