"""Which of two numbers of a dose is wished, and which tells where the water stands."""

from __future__ import annotations

from collections.abc import Sequence

from core.message.asked_words import is_word
from core.message.slot import Number
from core.message.slot_numbers import VOLUMES
from core.message.tokens import Token
from core.message.waters import names_pure


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


def tell(numbers: Sequence[Number], main: str | None, inside: Sequence[Token]) -> None:
    """Let the only KH tell where it stands: `my kh is 1, how much soda`.

    It is told where a word says that it is so, or that the water has it (`a tank with kh 3`), and
    where it stands with how much water there is before it is asked how much (`pond 3000 l kh 2`).
    """
    if main != "kh" or len(numbers) != 1 or numbers[0].analyte != main:
        return
    made = any(is_word("making", token.text) for token in inside)
    if made or names_pure(" ".join(token.text for token in inside)):
        return  # 20 l of ro with kh 4, make 60 l with kh 12: so it is to be
    number = numbers[0]
    if number.role not in {"", "premise"}:
        return
    before = [token for token in inside if token.end <= number.quantity.start]
    is_so = bool(before) and before[-1].value == "link"
    while before and before[-1].kind in {"analyte", "fill"} and not _holds(before[-1]):
        before.pop()
    volumes = [token.start for token in inside if token.value in VOLUMES]
    of_water = bool(volumes) or any(token.value == "home" for token in inside)
    held = of_water and bool(before) and _holds(before[-1])
    asking = next((token.start for token in inside if token.value == "how_much"), -1)
    told_first = any(max(start, number.quantity.start) < asking for start in volumes)
    if number.role == "premise" or is_so or held or told_first:
        number.role = "from"


def _holds(token: Token) -> bool:
    return is_word("holding", token.text)


def _behind_for(number: Number, inside: Sequence[Token]) -> bool:
    before = [token for token in inside if token.end <= number.quantity.start]
    while before and before[-1].kind in {"analyte", "fill"}:
        before.pop()
    return bool(before) and before[-1].kind == "mark" and before[-1].value in {"in", "for"}
