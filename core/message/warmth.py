"""``how do i cool it``, ``20 l of 15 c in 100 l at 25 what happens``, how warm for so much."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from core.message.amounts import volume_litres
from core.message.word_classes import Number, Said, said

FILE: Final = "warmth.txt"

OF_WARMTH: Final = frozenset({"celsius", "fahrenheit", "degree", None})
LEAST, MOST = -5.0, 60.0
"""What a bare number may be of water's warmth. [°C]"""


@dataclass(frozen=True, slots=True)
class Warmth:
    """What is asked of the warmth of water.

    Attributes
    ----------
    asks : str
        ``cool``: how it gets cooler; ``warm``: how it gets warmer; ``mix``: how warm a mix gets;
        ``new``: how warm the new water must be for a change to get there.
    ice : bool
        Whether it is with ice.
    share : float or None
        Of the water that is changed.
    litres : tuple of float
        As told, in order. [L]
    warm : tuple of float
        As told, in order. [°C]
    """

    asks: Literal["cool", "warm", "mix", "new"]
    ice: bool = False
    share: float | None = None
    litres: tuple[float, ...] = ()
    warm: tuple[float, ...] = ()


def warmth_asked(text: str, *, fahrenheit: bool = False, us_gallons: bool = True) -> Warmth | None:
    """What a text asks of the warmth of water; None where nothing, or it says more.

    Examples
    --------
    >>> warmth_asked("how do I cool it?")
    Warmth(asks='cool', ice=False, share=None, litres=(), warm=())
    >>> warmth_asked("20 l of 15c water in 100 l at 25 what happens")
    Warmth(asks='mix', ice=False, share=None, litres=(20.0, 100.0), warm=(15.0, 25.0))
    >>> warmth_asked("wie warm muss das neue Wasser sein damit 25% 29 Grad ergeben")
    Warmth(asks='new', ice=False, share=0.25, litres=(), warm=(29.0,))
    >>> warmth_asked("changed 25% at 24 c") is None
    True
    """
    told = said(FILE, text)
    if told is None:
        return None
    warm = tuple(
        value
        for each in told.numbers
        if each.unit in OF_WARMTH and (value := _celsius(each, fahrenheit)) is not None
    )
    litres = tuple(_litres(each, us_gallons) for each in told.numbers if each.unit in _VOLUMES)
    percent = told.of("percent")
    share = None if percent is None or not 0 < percent <= 100 else percent / 100.0
    if len(warm) + len(litres) + (percent is not None) != len(told.numbers):
        return None
    asks = _asks(told, warm, litres, share, marked="?" in text)
    return None if asks is None else Warmth(asks, told.has("ice"), share, litres, warm)


_VOLUMES: Final = {"litre": "l", "gallon": "gal"}


def _asks(
    told: Said,
    warm: tuple[float, ...],
    litres: tuple[float, ...],
    share: float | None,
    *,
    marked: bool,
) -> Literal["cool", "warm", "mix", "new"] | None:
    if not litres and share is None and told.has("warm_up"):
        return "warm" if {"may", "how", "fast"} & set(told.classes) else None
    if not litres and share is None:
        asks = not {"may", "how", "happens"}.isdisjoint(told.classes)
        of_it = not {"cool", "ice", "fan", "too_warm"}.isdisjoint(told.classes)
        by_it = not {"ice", "fan"}.isdisjoint(told.classes)
        asks = asks or told.has("heat") or (by_it and marked and told.has("fine"))
        asks, of_it = asks or told.has("fan", "on"), of_it or told.has("heat")
        return "cool" if asks and of_it else None  # cool! says nothing
    asks_how_warm = told.has("how_warm")
    if len(litres) == 2 and len(warm) == 2:
        return "mix" if asks_how_warm or told.has("happens") else None
    if len(litres) == 1 and len(warm) == 1 and told.has("happens"):
        return "mix"
    part = share is not None or len(litres) == 1
    return "new" if asks_how_warm and part and 1 <= len(warm) <= 2 else None


def _celsius(number: Number, fahrenheit: bool) -> float | None:
    value = number.value
    if number.unit == "fahrenheit" or (fahrenheit and number.unit != "celsius"):
        value = (value - 32.0) / 1.8
    return value if LEAST <= value <= MOST else None


def _litres(number: Number, us_gallons: bool) -> float:
    unit = _VOLUMES[number.unit or "litre"]
    return volume_litres(f"{number.value:g} {unit}", us_gallons=us_gallons) or 0.0
