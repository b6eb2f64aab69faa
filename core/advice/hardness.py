"""Hardness and buffer classes. Published schemes disagree, so a class goes with its scheme only."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from dataclasses import dataclass
from typing import Final

MG_CACO3_PER_DEGREE = 17.848
"""From atomic weights: 10 mg/L CaO as CaCO3. [mg/L per °dH]"""

MEQ_PER_DEGREE = 0.356652
"""From atomic weights: 10 mg/L CaO. [meq/L per °dH]"""

MMOL_PER_DEGREE = MEQ_PER_DEGREE / 2.0
"""Of calcium and magnesium. [mmol/L per °dH]"""


@dataclass(frozen=True, slots=True)
class HardnessClass:
    """A word for a hardness or an alkalinity, whose word it is, and of what it is said there."""

    word: str
    scheme: str
    band: str


_USGS_ENDS = (60.0, 120.0, 180.0)
_USGS = (
    HardnessClass("soft", "USGS", "0 to 60 mg/L"),
    HardnessClass("moderately hard", "USGS", "61 to 120 mg/L"),
    HardnessClass("hard", "USGS", "121 to 180 mg/L"),
    HardnessClass("very hard", "USGS", "over 180 mg/L"),
)


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
    return _USGS[bisect_left(_USGS_ENDS, round(gh * MG_CACO3_PER_DEGREE))]


_WRMG_ENDS = (1.5, 2.5)
_WRMG = (
    HardnessClass("soft", "WRMG 2007", "under 1.5 mmol/L"),
    HardnessClass("medium", "WRMG 2007", "1.5 to 2.5 mmol/L"),
    HardnessClass("hard", "WRMG 2007", "over 2.5 mmol/L"),
)


def detergent_law_class(gh: float) -> HardnessClass:
    """Class of a general hardness by the German detergents law of 2007 (WRMG).

    Parameters
    ----------
    gh : float
        General hardness. [°dH]

    Returns
    -------
    HardnessClass
        soft under 1.5, medium to 2.5, hard over 2.5 mmol/L (8.4 and 14 °dH).

    Examples
    --------
    >>> detergent_law_class(8.0).word
    'soft'

    References
    ----------
    Wasch- und Reinigungsmittelgesetz 2007, classes as read in two secondary pages (grade B).
    """
    amount = gh * MMOL_PER_DEGREE
    place = (amount >= _WRMG_ENDS[0]) + (amount > _WRMG_ENDS[1])
    return _WRMG[place]


_TRADE: Final = (
    ("very soft", 0.0, 3.0),
    ("soft", 3.0, 6.0),
    ("medium", 6.0, 11.0),
    ("fairly hard", 8.0, 12.0),
    ("hard", 11.0, 22.0),
)
"""The trade's bands, which overlap; common practice, no source. [°dH]"""


def trade_classes(gh: float) -> list[HardnessClass]:
    """Every band of the aquarium trade that holds a general hardness.

    Parameters
    ----------
    gh : float
        General hardness. [°dH]

    Returns
    -------
    list of HardnessClass
        One, or two where the bands overlap; very hard over 22 °dH. Common practice, no source.

    Examples
    --------
    >>> [held.word for held in trade_classes(9.0)]
    ['medium', 'fairly hard']
    """
    held = [
        HardnessClass(word, "the trade", f"{low:g} to {high:g} °dH")
        for word, low, high in _TRADE
        if low <= gh < high or (gh == high == _TRADE[-1][2])
    ]
    return held or [HardnessClass("very hard", "the trade", "over 22 °dH")]


def hardness_classes(gh: float) -> list[HardnessClass]:
    """The class of a general hardness by every scheme that we know. [°dH]."""
    return [hardness_class(gh), detergent_law_class(gh), *trade_classes(gh)]


_BUFFER_ENDS = (20.0, 60.0, 200.0)
_BUFFER = (
    HardnessClass("too low for most fish", "EPA", "under 20 mg/L"),
    HardnessClass("low", "common practice", "20 to 60 mg/L"),
    HardnessClass("enough", "common practice", "60 to 200 mg/L"),
    HardnessClass("high", "pond texts", "over 200 mg/L"),
)
_SEA_ENDS = (7.0, 12.0)
_SEA = (
    HardnessClass("low", "common practice", "under 7 °dH in the sea"),
    HardnessClass("enough", "common practice", "7 to 12 °dH in the sea"),
    HardnessClass("high", "common practice", "over 12 °dH in the sea"),
)


def buffer_class(kh: float, *, sea: bool = False) -> HardnessClass:
    """How well a carbonate hardness holds pH.

    Parameters
    ----------
    kh : float
        Carbonate hardness. [°dH]
    sea : bool, optional
        True for marine tanks, judged by 7 and 12 °dH.

    Returns
    -------
    HardnessClass
        In fresh water by 20, 60 and 200 mg/L as CaCO3.

    Examples
    --------
    >>> buffer_class(1.0).word, buffer_class(2.0).word, buffer_class(5.0).word
    ('too low for most fish', 'low', 'enough')

    References
    ----------
    EPA criterion of 20 mg/L alkalinity, as in Oregon DEQ table 30 (grade A; a minimum); 75 to
    200 mg/L for fish culture, text after SRAC 464 (grade B); 60 mg/L and the marine band are
    common practice; Boyd gives 100 to 130 mg/L for sea water (grade A).
    """
    if sea:
        return _SEA[(kh >= _SEA_ENDS[0]) + (kh > _SEA_ENDS[1])]
    return _BUFFER[bisect_right(_BUFFER_ENDS, kh * MG_CACO3_PER_DEGREE)]
