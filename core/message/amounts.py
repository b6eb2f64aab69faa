"""Volumes, lengths and masses as typed: 90 l, 20 gal, 20 uk gal, 60 cm, 5 g."""

from __future__ import annotations

from core.message import quantities
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.quantities import Quantity
from core.message.tokens import cut
from core.message.worded import SHARES as SHARES
from core.message.worded import SPOONS as SPOONS
from core.units import UK_GALLON_L, US_GALLON_L

LITRES = {"L": 1.0, "mL": 1e-3, "gal": US_GALLON_L, "uk gal": UK_GALLON_L}
"""Litres in a unit of volume; of `gal` where no chat says that its gallons are British."""
GRAMS = {"g": 1.0, "kg": 1e3, "mg": 1e-3, "oz": 28.349523125, "lb": 453.59237, "grain": 0.06479891}
"""Grams in a unit of mass, those of the avoirdupois exact (NIST Handbook 44, App. C; memory)."""
MILLILITRES = {"mL": 1.0}
_CM = {"cm": 1.0, "mm": 0.1, "m": 100.0, "in": 2.54, "ft": 30.48, "inch": 2.54, "inches": 2.54}
_CM |= {"feet": 30.48, "foot": 30.48, '"': 2.54, "''": 2.54, "'": 30.48, "metre": 100.0}


def litres(quantity: Quantity, *, us_gallons: bool = True) -> float | None:
    """Litres of a quantity in a unit of volume, None in any other."""
    if quantity.value is None or quantity.problem:
        return None
    if quantity.unit == "gal":
        return quantity.value * (US_GALLON_L if us_gallons else UK_GALLON_L)
    factor = LITRES.get(quantity.unit or "")
    return None if factor is None else quantity.value * factor


def _whole(text: str) -> Quantity | None:
    """The one quantity that the text is, None where it is anything else."""
    tokens = cut(fold(text), lexicon())
    if not tokens:
        return None
    found = quantities.read(tokens, 0)
    if found is None or found.last != len(tokens) or found.sign:
        return None
    return found


def volume_litres(text: str, us_gallons: bool = True) -> float | None:
    """A volume in litres; a bare gallon is the US one unless `us_gallons` is false.

    Examples
    --------
    >>> volume_litres("90 l"), round(volume_litres("20 gal"), 2), volume_litres("a lot")
    (90.0, 75.71, None)
    """
    found = _whole(text)
    if found is None:
        return None
    value = _thousands(found)
    if value is None or value <= 0:
        return None
    found.value = value
    return litres(found, us_gallons=us_gallons)


def _thousands(found: Quantity) -> float | None:
    """The number; None where a mark could divide thousands or be a point."""
    return None if found.grouped is not None else found.value


def grams(text: str) -> float | None:
    """A mass in grams, None where the text is no mass.

    Examples
    --------
    >>> grams("1.5 kg"), grams("250mg")
    (1500.0, 0.25)
    """
    found = _whole(text)
    if found is None or found.value is None or found.problem or found.grouped is not None:
        return None
    factor = GRAMS.get(found.unit or "")
    return None if factor is None or found.value <= 0 else found.value * factor


def length_cm(text: str) -> float | None:
    """A length in centimetres; a bare number is centimetres.

    Examples
    --------
    >>> length_cm("60"), length_cm("24 in"), length_cm("1.2 m")
    (60.0, 60.96, 120.0)
    """
    plain = fold(text).strip()
    head = plain.rstrip("abcdefghijklmnopqrstuvwxyz\"' ")
    unit = plain[len(head) :].strip()
    tokens = cut(head, lexicon())
    if len(tokens) != 1:
        return None
    found = quantities.read(tokens, 0)
    factor = _CM.get(unit, None if unit else 1.0)
    if found is None or found.value is None or found.problem or factor is None:
        return None
    if found.grouped is not None or found.value <= 0:
        return None
    return found.value * factor
