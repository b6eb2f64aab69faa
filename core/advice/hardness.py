"""Hardness classes. Published schemes disagree, so a class is only ever given with its scheme."""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass

MG_CACO3_PER_DEGREE = 17.848
"""From atomic weights: 10 mg/L CaO as CaCO3. [mg/L per °dH]"""

MEQ_PER_DEGREE = 0.356652
"""From atomic weights: 10 mg/L CaO. [meq/L per °dH]"""


@dataclass(frozen=True, slots=True)
class HardnessClass:
    """A word for a hardness, and whose word it is."""

    word: str
    scheme: str


_USGS_ENDS = (60.0, 120.0, 180.0)
_USGS_WORDS = ("soft", "moderately hard", "hard", "very hard")


def hardness_class(gh: float) -> HardnessClass:
    """Class of a general hardness by the scheme of the US Geological Survey.

    Parameters
    ----------
    gh : float
        General hardness. [°dH]

    Returns
    -------
    HardnessClass
        soft to 60, moderately hard to 120, hard to 180, very hard over 180 mg/L as CaCO3.

    Examples
    --------
    >>> hardness_class(8.0).word
    'hard'

    References
    ----------
    US Geological Survey, FAQ "Do you have information about water hardness in the United
    States?" (grade A).
    """
    return HardnessClass(
        _USGS_WORDS[bisect_left(_USGS_ENDS, round(gh * MG_CACO3_PER_DEGREE))], "USGS"
    )
