"""What a tank should have by now: a reading carried through what was changed and dosed since.

By amount alone, as `core.advice.blending` mixes: nothing that lives, feeds or settles is counted.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from core.advice.scheduling import per_gram
from core.advice.state import Measured
from core.water.substances import SUBSTANCES

RECKONED: Final = ("kh", "gh", "nitrate", "phosphate", "calcium", "magnesium", "potassium",
                   "salinity")  # fmt: skip
"""What may be reckoned on: no poison, which is tested, and no pH, which is no sum."""


@dataclass(frozen=True, slots=True)
class Deed:
    """What was done to the water: new water of a share, or a salt in grams.

    Attributes
    ----------
    share : float or None
        New water, 0 to 1; None for a dose.
    new : float or None
        What the new water has of the analyte; None where nobody knows.
    substance : str or None
        What was dosed; None for a change.
    grams : float or None
        Of it; None where that is not known.
    """

    share: float | None = None
    new: float | None = None
    substance: str | None = None
    grams: float | None = None


def reckoned(reading: Measured, deeds: Sequence[Deed], volume_l: float | None) -> float | None:
    """Carry a reading through what was done since; None where one of it is not known.

    Parameters
    ----------
    reading : Measured
        The last one of an analyte of `RECKONED`.
    deeds : sequence of Deed
        Since then, the oldest first.
    volume_l : float or None
        Net volume. [L]

    Examples
    --------
    >>> from datetime import UTC, datetime
    >>> nitrate = Measured("nitrate", 40.0, 35.0, 45.0, datetime(2026, 3, 1, tzinfo=UTC))
    >>> reckoned(nitrate, [Deed(share=0.3, new=10.0)], 100.0)
    31.0
    >>> reckoned(nitrate, [Deed(share=0.3)], 100.0) is None
    True
    """
    if reading.is_limit or reading.analyte not in RECKONED:
        return None
    value = reading.value
    for deed in deeds:
        if deed.substance is not None:
            if deed.substance not in SUBSTANCES or deed.grams is None or not volume_l:
                return None
            value += deed.grams * per_gram(deed.substance, reading.analyte) / volume_l
        elif deed.share is None or deed.new is None:
            return None
        else:
            value += deed.share * (deed.new - value)
    return value
