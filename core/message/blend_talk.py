"""What is asked of a mix of two waters: `half and half what do i get`, `which gh does that give`.

All words of a text must be of ``blend_talk.txt`` or without weight: a text that says more is none.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from core.message.amounts import volume_litres
from core.message.reduced import reduced
from core.message.word_classes import Said, said

FILE: Final = "blend_talk.txt"

Asks = Literal["shares", "litres", "reach", "figure", "zero"]


@dataclass(frozen=True, slots=True)
class BlendTalk:
    """What a text asks of a mix.

    Attributes
    ----------
    asks : str
        ``shares``: what two shares give; ``litres``: how much of each for so much; ``reach``: which
        shares make what is wished; ``figure``: what the mix holds; ``zero``: pure water was said
        to hold nothing.
    waters : tuple of str
        As they were named.
    analytes : tuple of str
        By their ids.
    shares : tuple of float
        Of the two waters in the order said; they come to one.
    target : float or None
        What the mix is to have of the one analyte.
    litres : float or None
        How much of it. [L]
    match : bool
        Whether it is to be as the tank is.
    bucket : bool
        Whether a vessel is spoken of.
    plainly : bool
        Whether a word for mixing or asking says so without anything said before.
    """

    asks: Asks
    waters: tuple[str, ...] = ()
    analytes: tuple[str, ...] = ()
    shares: tuple[float, float] | None = None
    target: float | None = None
    litres: float | None = None
    match: bool = False
    bucket: bool = False
    plainly: bool = False


def blend_talk(text: str, *, us_gallons: bool = True) -> BlendTalk | None:
    """What a text asks of a mix of waters; None where nothing, or it says more.

    Examples
    --------
    >>> blend_talk("mix half half what do i get").shares, blend_talk("and 30/70?").shares
    ((0.5, 0.5), (0.3, 0.7))
    >>> blend_talk("i need 60 litres, how many of each").litres
    60.0
    >>> blend_talk("wie muss ich verschneiden für kh 4").target
    4.0
    >>> blend_talk("what gh does that give").analytes
    ('gh',)
    >>> blend_talk("if i mix 20 l ro with 60 l tap what do i get").shares
    (0.25, 0.75)
    >>> blend_talk("changed half with ro") is None, blend_talk("kh 4 gh 8") is None
    (True, True)
    """
    found = reduced(text)
    told = said(FILE, found.text, small=True)
    if told is None or found.substances or len(found.waters) > 2 or len(found.analytes) > 3:
        return None
    if (both := _two_volumes(told, found.waters, us_gallons)) is not None:
        whole = both[0] + both[1]
        parts = both[0] / whole, both[1] / whole
        return BlendTalk("shares", found.waters, (), parts, litres=whole, plainly=True)
    litres = _litres(told, us_gallons)
    bare = [each.value for each in told.numbers if each.unit in {None, "part", "percent"}]
    sizes = len([each for each in told.numbers if each.unit in _VOLUMES])
    if sizes > 1 or sizes + len(bare) != len(told.numbers):
        return None
    shares = _shares(told, bare, text)
    waters, analytes = found.waters, found.analytes
    match, bucket = told.has("match"), told.has("bucket")
    if shares is not None:
        if analytes and not told.has("which"):
            return None
        plainly = not _PLAIN.isdisjoint(told.classes) or (told.has("rest") and "?" in text)
        return BlendTalk("shares", waters, analytes, shares, litres=litres, plainly=plainly)
    if not bare and len(waters) == 1 and told.has("zero") and set(told.classes) <= _OF_ZERO:
        return BlendTalk("zero", waters)
    if _is_zero(told, bare) and len(waters) == 1 and set(told.classes) <= _OF_ZERO | {"number"}:
        return BlendTalk("zero", waters)
    if len(bare) == 1 and len(analytes) == 1 and _asks_shares(told):
        return BlendTalk("reach", waters, analytes, None, bare[0], litres, match, bucket)
    if bare or told.has("zero"):
        return None
    if (match and (told.has("how_much") or litres is not None)) or _wants_pure(told, waters):
        return BlendTalk("reach", waters, analytes, None, None, litres, match, bucket)
    if litres is not None and not analytes and not waters and _wants_litres(told):
        return BlendTalk("litres", litres=litres, bucket=bucket)
    if litres is None and analytes and not waters and _asks_figure(told, "?" in text):
        return BlendTalk("figure", (), analytes)
    return None


_VOLUMES: Final = {"litre": "l", "gallon": "gal"}
_PLAIN: Final = frozenset({"mix", "get", "what_if", "which"})
_OF_ZERO: Final = frozenset({"water", "zero", "fit", "new"})


def _litres(told: Said, us_gallons: bool) -> float | None:
    found = [each for each in told.numbers if each.unit in _VOLUMES]
    if len(found) != 1:
        return None
    unit = _VOLUMES[found[0].unit or "litre"]
    return volume_litres(f"{found[0].value:g} {unit}", us_gallons=us_gallons)


def _shares(told: Said, bare: list[float], text: str) -> tuple[float, float] | None:
    """Two shares that come to the whole: two halves, 30/70, 1:3, two parts and one."""
    if not bare and (told.has("halves") or told.classes.count("half") == 2):
        return 0.5, 0.5
    if told.has("rest") and len(bare) == 1 and told.of("percent") is not None:
        return (bare[0] / 100.0, 1.0 - bare[0] / 100.0) if 0.0 < bare[0] < 100.0 else None
    if len(bare) != 2 or told.has("half") or told.has("rest") or min(bare) <= 0.0:
        return None
    counted = all(each.unit == "part" for each in told.numbers if each.unit not in _VOLUMES)
    whole = sum(bare)
    ratio = max(bare) <= _MOST_PARTS and (counted or _is_ratio(text, bare))
    return (bare[0] / whole, bare[1] / whole) if whole == 100.0 or ratio else None


_MOST_PARTS: Final = 20.0


def _is_ratio(text: str, bare: list[float]) -> bool:
    plain = "".join(text.split())
    return any(f"{bare[0]:g}{joint}{bare[1]:g}" in plain for joint in (":", "/"))


def _is_zero(told: Said, bare: list[float]) -> bool:
    return bare == [0.0] and len(told.numbers) == 1


def _asks_shares(told: Said) -> bool:
    """Whether shares are asked for; `mix has kh 4` tells of a water."""
    asks = {"how", "how_much", "which", "want", "recipe"} & set(told.classes)
    return told.has("mix") and bool(asks)


def _wants_pure(told: Said, waters: tuple[str, ...]) -> bool:
    """`how much rain water`, `cuánta ósmosis pongo`: nothing else is said."""
    only = {"how_much", "water", "put", "get", "want", "mix", "bucket", "number", "new", "match"}
    return told.has("how_much") and len(waters) == 1 and set(told.classes) <= only


def _wants_litres(told: Said) -> bool:
    """`for 30 l`, `i need 60 litres, how many of each`, `recipe for a 10 l bucket`."""
    only = {
        "number", "how_much", "each", "mix", "bucket", "want", "recipe", "which", "put", "new",
    }  # fmt: skip
    return set(told.classes) <= only


def _asks_figure(told: Said, marked: bool) -> bool:
    only = {"analyte", "which", "get", "mix", "how_much", "new", "what_if"}
    asks = told.has("which") or told.has("how_much") or told.has("get") or marked
    return asks and set(told.classes) <= only


def _two_volumes(
    told: Said, waters: tuple[str, ...], us_gallons: bool
) -> tuple[float, float] | None:
    """The litres of two waters that are mixed: `20 l ro with 20 l tap what do i get`."""
    named = [each for each in told.numbers if each.unit in _VOLUMES]
    if len(named) != 2 or len(told.numbers) != 2 or len(waters) != 2:
        return None
    if not {"get", "mix", "what_if", "which"} & set(told.classes):
        return None
    both = [
        volume_litres(f"{each.value:g} {_VOLUMES[each.unit or 'litre']}", us_gallons=us_gallons)
        for each in named
    ]
    return (both[0], both[1]) if both[0] and both[1] else None


def asks_if_it_suits(text: str) -> bool:
    """Whether a text, without the animals that it names, asks if what was told of suits.

    Examples
    --------
    >>> asks_if_it_suits("will that fit for"), asks_if_it_suits("will my filter fit")
    (True, False)
    """
    told = said(FILE, text, small=True)
    only = {"fit", "match", "mix", "new", "want", "put", "may"}
    if told is None or not set(told.classes) <= only:
        return False
    return told.has("fit") or told.has("match") or told.has("put")


def bucket_of(text: str, *, us_gallons: bool = True) -> tuple[float, str] | None:
    """So many litres of which water in a bucket: `and for a bucket of 10 l ro?`.

    Examples
    --------
    >>> bucket_of("and for a bucket of 10 l ro?"), bucket_of("a bucket of ro")
    ((10.0, 'ro'), None)
    """
    found = reduced(text)
    told = said(FILE, found.text, small=True)
    if told is None or len(told.numbers) != 1 or len(found.waters) != 1 or found.analytes:
        return None
    litres = _litres(told, us_gallons)
    only = {"number", "bucket", "water", "what_if", "new", "recipe", "want", "how_much"}
    if litres is None or not told.has("bucket") or not set(told.classes) <= only:
        return None
    return litres, found.waters[0]
