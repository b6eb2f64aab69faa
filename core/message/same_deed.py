"""What was just told of one tank, told of another: `bedroom too 10 l`, `same for the cube`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, NamedTuple

from core.message.amounts import volume_litres
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tanks import mark
from core.message.tokens import Token, cut
from core.message.word_classes import Said, said

_FILE: Final = "same_deed.txt"


class SameDeed(NamedTuple):
    """The tank, how much it was there where that is told, and whether it is the same for sure."""

    tank: str | None
    litres: float | None = None
    percent: float | None = None
    grams: float | None = None
    millilitres: float | None = None
    sure: bool = True
    """Whether a word says that it is the same deed: litres alone may be the tank's volume."""

    @property
    def amount(self) -> dict[str, float]:
        """What is told of how much it was, by its name."""
        told = {
            "litres": self.litres,
            "percent": self.percent,
            "grams": self.grams,
            "millilitres": self.millilitres,
        }
        return {name: value for name, value in told.items() if value is not None}


def same_deed(text: str, tanks: Sequence[str], *, us_gallons: bool = True) -> SameDeed | None:
    """The other tank of a deed just told, and its own amount; None where more or less is said.

    Examples
    --------
    >>> told = same_deed("bedroom too 10 l", ["Kitchen", "Bedroom"])
    >>> told.tank, told.litres, told.sure
    ('Bedroom', 10.0, True)
    >>> same_deed("bedroom 10 l", ["Bedroom"]).sure, same_deed("same again", []).tank
    (False, None)
    >>> same_deed("bedroom is 10 l", ["Bedroom"]), same_deed("bedroom too?", ["Bedroom"])
    (None, None)
    >>> same_deed("bedroom", ["Bedroom"]), same_deed("same", ["Bedroom"])
    (None, None)
    """
    if "?" in text:
        return None
    plain = fold(text)
    named = [
        each for each in mark(cut(plain, lexicon(), text), plain, tuple(tanks)) if _is_tank(each)
    ]
    if len(named) > 1:
        return None
    rest, tank = plain, None
    if named:
        (token,) = named
        rest, tank = f"{plain[: token.start]} {plain[token.end :]}", str(token.value)
    told = said(_FILE, rest) if rest.strip(" .,!:") else None
    if told is None or len(told.numbers) > 1 or any(each.unit is None for each in told.numbers):
        return None
    if tank is None and not (told.has("same", "again") and not told.numbers):
        return None
    sure = told.has("same") or told.has("too") or (told.has("and") and bool(told.numbers))
    if not sure and not told.numbers:
        return None
    return _with_amount(told, tank, sure=sure, us_gallons=us_gallons)


def _is_tank(token: Token) -> bool:
    return token.kind == "tank"


def _with_amount(told: Said, tank: str | None, *, sure: bool, us_gallons: bool) -> SameDeed:
    found = SameDeed(tank, sure=sure)
    for number in told.numbers:
        value = number.value
        if number.unit in {"l", "gal"}:
            return found._replace(litres=volume_litres(f"{value:g} {number.unit}", us_gallons))
        if number.unit == "share":
            return found._replace(percent=value)
        if number.unit == "g":
            return found._replace(grams=value)
        return found._replace(millilitres=value)
    return found


def as_typed(tank: str, kind: str, litres: float) -> str:
    """A deed of so many litres as a message that the parser reads.

    Examples
    --------
    >>> as_typed("Fern", "water_change", 10.0)
    'Fern: changed 10 l'
    """
    verb = "changed" if kind == "water_change" else "topped up"
    return f"{tank}: {verb} {litres:g} l"
