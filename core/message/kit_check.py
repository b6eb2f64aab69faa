"""``is my kh kit right``, ``make a kh 5 reference 1 l``, ``kit says 6 on it``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from core.message.word_classes import Said, said
from core.units import to_canonical

FILE: Final = "kit_check.txt"

UNITS: Final = {"ppm": "ppm", "meq": "meq/L", "french": "°fH", "degree": "°dH", None: "°dH"}
LITRES: Final = {"litre": 1.0, "millilitre": 1e-3}


@dataclass(frozen=True, slots=True)
class KitAsked:
    """What is asked of a kit.

    Attributes
    ----------
    analyte : str or None
        ``kh``, ``gh``, ``ph`` or ``other``; None where none is named.
    value : float or None
        Told of the reference or of the kit. [°dH of KH and GH]
    litres : float or None
        Of reference water. [L]
    read : bool
        Whether the value is what the kit shows.
    """

    analyte: Literal["kh", "gh", "ph", "other"] | None = None
    value: float | None = None
    litres: float | None = None
    read: bool = False


def kit_asked(text: str) -> KitAsked | None:
    """Whether a test kit is asked to be right, or a reference water is; None where neither.

    Examples
    --------
    >>> kit_asked("is my kh kit right?")
    KitAsked(analyte='kh', value=None, litres=None, read=False)
    >>> kit_asked("make a kh 5 reference 1 l").value, kit_asked("Referenz KH 4, 500 ml").litres
    (5.0, 0.5)
    >>> kit_asked("my gh test shows 9, can I trust it").read, kit_asked("kh test 5") is None
    (True, True)
    """
    told = said(FILE, text)
    if told is None or told.has("range") or not (_is_doubted(told) or told.has("reference")):
        return None
    if told.classes == ("kh", "kit", "number", "right"):
        return None  # kh test 5 ok: a reading, and how it is
    return _asked(told)


def shown(text: str) -> KitAsked | None:
    """What a kit shows of the reference water spoken of: ``kit says 6 on it``, ``it reads 6``.

    Examples
    --------
    >>> shown("the kit says 6 on it").value, shown("zeigt 4").value
    (6.0, 4.0)
    >>> shown("kh 6") is None
    True
    """
    told = said(FILE, text)
    if told is None or not told.has("number") or not told.has("reads"):
        return None
    if _is_doubted(told) and not told.has("reference"):
        return None  # of the tank's water
    found = _asked(told)
    return None if found.value is None or found.litres is not None else found


def _is_doubted(told: Said) -> bool:
    """Whether it asks if a kit is right."""
    return told.has("kit") and not {"right", "check"}.isdisjoint(told.classes)


def _asked(told: Said) -> KitAsked:
    analyte = next((each for each in ("kh", "gh", "ph", "other") if each in told.classes), None)
    values = [each for each in told.numbers if each.unit in UNITS]
    amounts = [each for each in told.numbers if each.unit in LITRES]
    value = None
    if len(values) == 1 and analyte in {"kh", "gh", None}:
        value = to_canonical(analyte or "kh", values[0].value, UNITS[values[0].unit])
    litres = None
    if len(amounts) == 1:
        litres = amounts[0].value * LITRES[amounts[0].unit or "litre"]
    return KitAsked(analyte, value, litres, told.has("reads"))
