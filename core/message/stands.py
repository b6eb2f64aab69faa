"""Which of two numbers of a dose is wished, and which tells where the water stands."""

from __future__ import annotations

from collections.abc import Sequence

from core.message.slot import Number
from core.message.tokens import Token


def aim(numbers: Sequence[Number], main: str | None, inside: Sequence[Token]) -> None:
    """Give two plain numbers of what is dosed their roles: `my tap is kh 12, what for kh 4`.

    The wish is what stands behind a "for", else the last of them; the other is where it stands.
    Nitrite beside salt, which has no wish, is left to its own rule.
    """
    plain = [each for each in numbers if each.analyte == main and not each.role]
    if main in {None, "nitrite"} or len(plain) != 2 or plain[0].value == plain[1].value:
        return
    if any(each.role in {"from", "to", "by"} for each in numbers if each.analyte == main):
        return
    first, last = plain
    if _behind_for(first, inside) and not _behind_for(last, inside):
        first, last = last, first
    first.role, last.role = "from", "to"


def stand(numbers: Sequence[Number], main: str | None, inside: Sequence[Token]) -> None:
    """Let a number before a word of wishing tell where it stands: `je suis à kh 3, je veux 5`."""
    wish = next((token.start for token in inside if token.value == "wish"), None)
    ends = [each for each in numbers if each.role == "to" and each.analyte in {None, main}]
    if wish is None or main is None or len(ends) != 2:
        return
    first, last = ends
    if first.analyte == main and first.quantity.start < wish < last.quantity.start:
        first.role = "from"


def _behind_for(number: Number, inside: Sequence[Token]) -> bool:
    before = [token for token in inside if token.end <= number.quantity.start]
    while before and before[-1].kind in {"analyte", "fill"}:
        before.pop()
    return bool(before) and before[-1].kind == "mark" and before[-1].value in {"in", "for"}
