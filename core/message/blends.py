"""New water that is mixed of others: `60% ro 40% tap`, `50/50 ro tap`, `half ro`, `ro/tap 2:1`.

blend   = portion { joint portion } | ratio waters | waters ratio
portion = share water | water share          share = 60% | half | 1/3 | 3 parts | 10 l | the rest
waters  = water { joint water }              ratio = 50/50 | 2:1 | half and half

One portion alone leaves the rest to the water that the tank is filled with. It is a blend only
behind "with" or behind the amount that is changed: in "change 30% ro" the share is that amount.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import islice
from typing import Final

from core.message.fold import fold
from core.message.waters import one_of, words

MOST_PARTS: Final = 6
MOST_ITEMS: Final = 80
"""Words and numbers that are looked at: a blend stands near the beginning of what is said."""
CLOSE: Final = 0.02
"""How far shares may be from coming to one, for rounding: three of 33 %."""


@dataclass(frozen=True, slots=True)
class Part:
    """A water as it was named, and its share; None where none was said."""

    name: str
    share: float | None


@dataclass(frozen=True, slots=True)
class Blend:
    """Waters mixed with each other, as characters `start` to `end` of a text say it.

    Attributes
    ----------
    parts : tuple of Part
        In their order; shares as said, those of litres and of parts already of the whole.
    rest : float
        Share that is left to the water that the tank is filled with; 0 where none is.
    litres : float or None
        All of it, where the parts were said in litres. [L]
    """

    parts: tuple[Part, ...]
    start: int
    end: int
    rest: float = 0.0
    litres: float | None = None

    @property
    def total(self) -> float | None:
        """What all shares come to; None where a water has none."""
        shares = [part.share for part in self.parts]
        told = [share for share in shares if share is not None]
        return math.fsum(told) + self.rest if len(told) == len(shares) else None

    @property
    def adds_up(self) -> bool:
        """Whether every water has its share, and they come to one."""
        return self.total is not None and abs(self.total - 1.0) <= CLOSE


@dataclass(frozen=True, slots=True)
class _Item:
    kind: str
    start: int
    end: int
    numbers: tuple[float, ...] = ()
    name: str = ""


_AMOUNTS: Final = frozenset({"percent", "litres", "share"})


def find(text: str, names: Sequence[str] = ()) -> Blend | None:
    """The blend of a text; None where it speaks of no more than one water.

    Parameters
    ----------
    text : str
        A message, or what stands behind `/source mix`.
    names : sequence of str
        The keeper's own names of waters.

    Examples
    --------
    >>> find("changed 40 l with half ro").parts
    (Part(name='ro', share=0.5),)
    >>> [part.share for part in find("2:1 ro and rain").parts]
    [0.6666666666666666, 0.3333333333333333]
    >>> find("what if i change 30% with ro") is None
    True
    """
    items = _items(text, tuple(names))
    if not any(item.kind == "water" for item in items):
        return None
    for place in range(len(items)):
        ways = (_ratio_first(items, place), _waters_first(items, place), _portions(items, place))
        found = [way for way in ways if way is not None and _is_meant(items, place, way)]
        if found:
            return max(found, key=lambda blend: (blend.adds_up, blend.end))
    return None


def _is_meant(items: list[_Item], place: int, blend: Blend) -> bool:
    """Whether it is said of the new water, and not of how much is changed."""
    behind = next((item.kind for item in reversed(items[:place]) if item.kind != "joint"), "")
    if len(blend.parts) > 1 and blend.total is None:
        return behind == "with"
    if len(blend.parts) > 1:
        return blend.adds_up or behind == "with"
    others = [item for item in items if item.end <= blend.start or item.start >= blend.end]
    amount = any(item.kind in _AMOUNTS for item in others)
    return behind == "with" or (amount and behind in _AMOUNTS)


def _ratio_first(items: list[_Item], place: int) -> Blend | None:
    ratio, next_ = _ratio(items, place)
    if ratio is None:
        return None
    waters, last = _waters(items, next_)
    return _of_ratio(ratio, waters, items[place].start, last)


def _waters_first(items: list[_Item], place: int) -> Blend | None:
    waters, last = _waters(items, place)
    if len(waters) < 2 or last is None:
        return None
    next_ = _skip(items, items.index(last) + 1)
    ratio, end = _ratio(items, next_)
    if ratio is not None and len(ratio) == len(waters):
        return _of_ratio(ratio, waters, items[place].start, items[end - 1])
    parts = tuple(Part(water.name, None) for water in waters)
    return Blend(parts, items[place].start, last.end)


def _ratio(items: list[_Item], place: int) -> tuple[tuple[float, ...] | None, int]:
    """`50/50`, or `half and half`, and where what follows begins."""
    if place >= len(items):
        return None, place
    if items[place].kind == "ratio":
        return items[place].numbers, _skip(items, place + 1)
    if items[place].kind in {"share", "percent"}:
        other = _skip(items, place + 1)
        pair = items[place].numbers + items[other].numbers if other < len(items) else ()
        if sum(pair) == 1.0 and items[other].kind == items[place].kind:
            return pair, _skip(items, other + 1)
    return None, place


def _of_ratio(
    ratio: tuple[float, ...], waters: list[_Item], start: int, last: _Item | None
) -> Blend | None:
    whole = math.fsum(ratio)
    if last is None or whole <= 0.0:
        return None
    if len(waters) == 1 and len(ratio) == 2:
        share = ratio[0] / whole
        return Blend((Part(waters[0].name, share),), start, last.end, 1.0 - share)
    if len(waters) != len(ratio):
        return None
    parts = zip(waters, ratio, strict=True)
    return Blend(tuple(Part(w.name, n / whole) for w, n in parts), start, last.end)


def _waters(items: list[_Item], place: int) -> tuple[list[_Item], _Item | None]:
    """Waters one after the other, joined by "and" and the like."""
    found: list[_Item] = []
    while place < len(items) and items[place].kind == "water" and len(found) < MOST_PARTS:
        found.append(items[place])
        place = _skip(items, place + 1)
    return found, found[-1] if found else None


def _portions(items: list[_Item], place: int) -> Blend | None:
    """`60% ro 40% tap`, or `ro 60% tap 40%`; a part alone leaves the rest."""
    found: list[tuple[_Item, _Item]] = []
    share_first = _shares(items[place])
    next_, end = place, place
    while next_ < len(items) and len(found) < MOST_PARTS:
        other = _skip(items, next_ + 1)
        if other >= len(items):
            break
        pair = (items[next_], items[other])
        share, water = pair if share_first else (pair[1], pair[0])
        if not _shares(share) or not (water.kind == "water" or water.kind == "word"):
            break
        if water.kind == "word" and share_first and not _known_beside(items, other):
            break
        found.append((share, water))
        end = other
        next_ = _skip(items, other + 1)
    if not found or not any(water.kind == "water" for _, water in found):
        return None
    if not share_first and (len(found) == 1 or any(water.kind == "word" for _, water in found)):
        return None
    return _of_portions(found, items[place].start, items[end].end)


def _known_beside(items: list[_Item], place: int) -> bool:
    """Whether a word that we do not know stands where a water would: a share comes next or was."""
    before = any(item.kind == "water" for item in items[:place])
    next_ = _skip(items, place + 1)
    return before or (next_ < len(items) and _shares(items[next_]))


def _shares(item: _Item) -> bool:
    return item.kind in {"percent", "share", "parts", "litres", "rest"} or (
        item.kind == "ratio" and len(item.numbers) == 2 and item.numbers[0] < item.numbers[1]
    )


def _of_portions(found: list[tuple[_Item, _Item]], start: int, end: int) -> Blend | None:
    kinds = {share.kind for share, _ in found} - {"rest"}
    counted = kinds <= {"parts"} or kinds <= {"litres"}
    if (not counted and kinds & {"parts", "litres"}) or (counted and len(found) == 1):
        return None
    sizes = [None if share.kind == "rest" else _size(share) for share, _ in found]
    told = math.fsum(size for size in sizes if size is not None)
    if sizes.count(None) > 1 or told <= 0.0:
        return None
    if counted:
        if None in sizes:
            return None
        shares = [size / told for size in sizes if size is not None]
    else:
        shares = [max(1.0 - told, 0.0) if size is None else size for size in sizes]
    parts = tuple(Part(w.name, share) for (_, w), share in zip(found, shares, strict=True))
    rest = 1.0 - shares[0] if len(parts) == 1 and shares[0] < 1.0 else 0.0
    return Blend(parts, start, end, rest, told if kinds == {"litres"} else None)


def _size(item: _Item) -> float:
    return item.numbers[0] / item.numbers[1] if item.kind == "ratio" else item.numbers[0]


def _skip(items: list[_Item], place: int) -> int:
    while place < len(items) and items[place].kind in {"joint", "with"}:
        place += 1
    return place


def _items(text: str, names: tuple[str, ...]) -> list[_Item]:
    """What of a text can belong to a blend, in order."""
    out = []
    for found in islice(_pattern(names).finditer(fold(text)), MOST_ITEMS):
        kind = found.lastgroup or ""
        said = found[0]
        numbers: tuple[float, ...] = ()
        if kind in {"ratio", "percent", "parts", "litres"}:
            numbers = tuple(float(n.replace(",", ".")) for n in _NUMBER.findall(said))
            numbers = tuple(n / 100.0 for n in numbers) if kind == "percent" else numbers
        elif kind == "share":
            numbers = (words().share[" ".join(said.split())],)
        name = text[found.start() : found.end()] if kind in {"water", "word"} else ""
        out.append(_Item(kind, found.start(), found.end(), numbers, name))
    return out


_NUMBER = re.compile(r"\d{1,4}(?:[.,]\d{1,3})?")


@lru_cache(maxsize=64)
def _pattern(names: tuple[str, ...]) -> re.Pattern[str]:
    held = words()
    number = r"\d{1,4}(?:[.,]\d{1,3})?"
    own = {" ".join(fold(name).split()) for name in names} - {""}
    waters = one_of({*held.water, *own})
    joints = one_of((held.joint["and"] | held.joint["mix"]) - held.joint["with"])
    kinds = {
        "ratio": r"\d{1,3}(?:\s?[/:]\s?\d{1,3}){1,5}(?![\d.,/:])|\d{2}-\d{2}(?!\d)",
        "percent": rf"{number}\s?(?:{one_of(held.joint['percent'])})",
        "parts": rf"{number}\s?(?:{one_of(held.joint['part'])})\b",
        "litres": rf"{number}\s?(?:l|litres?|liters?|litros?|litri|litry|liter)\b",
        "rest": rf"\b(?:{one_of(held.joint['rest'])})\b",
        "share": rf"\b(?:{one_of(held.share)})\b",
        "water": rf"(?<!\w)(?:{waters})(?!\w)",
        "with": rf"\b(?:{one_of(held.joint['with'])})\b",
        "joint": rf"\b(?:{joints})(?!\w)|[,&+/:;-]",
        "word": r"[^\W\d_]+|[\d.]+",
    }
    return re.compile("|".join(f"(?P<{kind}>{pattern})" for kind, pattern in kinds.items()))
