"""What a tank should have by now, and what a wished change comes to: `what should kh be now`.

All words of a text must be of ``now_asked.txt`` or without weight: a text that says more is none.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from core.message.reduced import reduced
from core.message.word_classes import Said, said

FILE: Final = "now_asked.txt"


@dataclass(frozen=True, slots=True)
class NowAsked:
    """What is asked of the water as it should be.

    Attributes
    ----------
    asks : str
        ``now``: what it should have; ``rise``: what the last dose raised; ``change``: what so much
        changed would come to.
    analytes : tuple of str
        By their ids; empty for all.
    change : str or None
        So much of which water, as a question that the parser reads.
    """

    asks: Literal["now", "rise", "change"]
    analytes: tuple[str, ...] = ()
    change: str | None = None


def now_asked(text: str) -> NowAsked | None:
    """What a text asks of the water as it should be by now; None where nothing, or it says more.

    Examples
    --------
    >>> now_asked("what should nitrate be now").analytes, now_asked("kh jetzt?").asks
    (('nitrate',), 'now')
    >>> now_asked("how much nitrate should be left").analytes, now_asked("how much is left")
    (('nitrate',), None)
    >>> now_asked("how much did that raise it").asks
    'rise'
    >>> now_asked("wollte 20 liter mit osmose wechseln was kommt raus").change
    'what if i change 20 l with osmose'
    >>> now_asked("what should kh be") is None, now_asked("kh now 4") is None
    (True, True)
    """
    found = reduced(text)
    told = said(FILE, found.text, small=True)
    if told is None or found.substances or len(found.waters) > 1:
        return None
    classes = set(told.classes)
    if told.numbers:
        return _of_change(told, found.waters, found.analytes)
    if found.waters:
        return None
    if (
        told.has("raise")
        and told.has("which")
        and classes
        <= {
            "raise",
            "which",
            "that",
            "analyte",
            "roughly",
        }
    ):
        return NowAsked("rise", found.analytes)
    if not classes <= {
        "which",
        "should",
        "now",
        "roughly",
        "have",
        "that",
        "analyte",
        "water",
        "left",
    }:
        return None
    left = told.has("left") and bool(found.analytes)
    if not (told.has("now") or told.has("roughly") or left):
        return None
    asks = told.has("which") or ("?" in text and bool(found.analytes))
    of_all = told.has("have") or told.has("analyte")
    return NowAsked("now", found.analytes) if asks and (found.analytes or of_all) else None


_OF_CHANGE: Final = frozenset(
    {
        "number",
        "want",
        "change",
        "water",
        "get",
        "which",
        "have",
        "should",
        "analyte",
        "now",
        "that",
    }
)
_UNITS: Final = {"litre": "l", "gallon": "gal", "percent": "%"}


def _of_change(told: Said, waters: tuple[str, ...], analytes: tuple[str, ...]) -> NowAsked | None:
    """`wanted to change 20 l with ro, what comes out`."""
    (number, *others) = told.numbers
    asks = told.has("get") or told.has("which", "have")
    if others or number.unit not in _UNITS or not told.has("change") or not asks:
        return None
    if not told.has("want") or not set(told.classes) <= _OF_CHANGE:
        return None
    much = f"{number.value:g} {_UNITS[number.unit or '']}".replace(" %", "%")
    with_water = f" with {waters[0]}" if waters else ""
    return NowAsked("change", analytes, f"what if i change {much}{with_water}")
