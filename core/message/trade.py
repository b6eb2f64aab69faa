"""Names of bought things that begin with what they move: `kh plus`, `gh up`, `ph down`."""

from __future__ import annotations

from core.message import quantities
from core.message.tokens import Token

_SIGNED = frozenset({"plus", "minus", "+"})
_MOVED = frozenset({"up", "down"})


def spelt(tokens: list[Token], place: int, *, words: bool = False) -> int:
    """How many tokens from `place` on are such a name; 0 where none begins there.

    With `words` a word that we do not know may stand for the sign as well (`gh booster`).
    """
    if place + 1 >= len(tokens) or tokens[place].kind != "analyte":
        return 0
    sign = tokens[place + 1]
    known = sign.text in _SIGNED or sign.value in _MOVED or (words and sign.kind == "word")
    if not known:
        return 0
    following = tokens[place + 2] if place + 2 < len(tokens) else None
    if following is None:
        return 2
    if following.kind == "analyte" or (quantities.is_number(following) and sign.text != "plus"):
        return 0
    return 2


def given(tokens: list[Token], index: int, place: int) -> int:
    """How many tokens of a name stand at `place` as what an event's word at `index` put in.

    It stands behind the amount (`dosed 6 g of kh plus`), or before it (`dosed kh plus 6 g`).
    """
    length = spelt(tokens, place, words=True)
    if not length:
        return 0
    before = place - 1
    while before > index and tokens[before].kind in {"fill", "mark"}:
        before -= 1
    if before > index:
        return length if tokens[before].kind == "unit" else 0
    amount = tokens[place + length : place + length + 2]
    weighed = len(amount) == 2 and quantities.is_number(amount[0]) and amount[1].kind == "unit"
    return length if before == index and weighed else 0
