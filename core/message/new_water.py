"""What a question says of the new water itself: `with 10 degree water`, `with softened water`.

said   = ("with" | "of") { word | reading } water { reading }   |   water ("of" | "at") reading
       | "at" temperature
Its readings are the new water's, never the tank's.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final, Literal

from core.message.fold import fold
from core.message.waters import mentioned, one_of

Felt = Literal["cold", "hot"]

_WATER: Final = r"\w*(?:water|wasser|vatten)|eau|agua|acqua|wod[aey]|woda"
_WITH: Final = "with|using|mit|avec|con|com|met|z|ze|med"
_FROM: Final = "from|of|out of|aus|vom|von|de|du|de la|del|da|do|di|dal|van|uit|fran|ur"
_END: Final = re.compile(
    r"[;?!\n]|[.,](?!\d)|\b(?:if|when|while|because|every|daily|weekly|twice|today|tomorrow|now"
    r"|without|instead|per day|a day|wenn|wechsle|wechsel[nt]?"
    r"|what|whats|how|was passiert|que se|que pasa\w*|que va|ca fait|o que|cosa|che succede|wat"
    r"|co (?:sie|bedzie)|vad)\b"
)
_UNIT: Final = r"(?:°|degrees?|degs?|grad|degres?|grados|graus|gradi|graden|stopni|grader)"
_WARMTH: Final = re.compile(
    rf"(\d{{1,3}}(?:[.,]\d{{1,3}})?)\s{{0,3}}(?:{_UNIT}\s*([cf]\b)?(?!\s*d?[kg]?h\b)|([cf])\b)"
)
_HAVING: Final = re.compile(r"\s{0,3}(?:of|with|having|that is|which is)\b(?=[^,;?!]{0,30}\d)")
_BESIDE: Final = re.compile(r"\s{1,3}(?=(?:[kgp]h|[a-z]{2,12}\d?)\s{1,3}\d)")
"""Behind a known water: its readings, without a word between (`wodą z kranu kh 6`)."""
_WHENCE: Final = re.compile(rf"\s{{1,3}}(?:{_FROM})\s+(?:the |my |a |dem |der |la |el )?(\w+)")
_AT_WARMTH: Final = re.compile(
    r"(?<!tank )(?<!aquarium )(?<!pond )(?<!is )(?<!was )(?<!are )\b(?:at|bei|a|om)\s+"
    rf"\d+(?:[.,]\d+)?\s*(?:{_UNIT}(?:\s*[cf]\b)?|[cf]\b)(?:elsius|ahrenheit)?"
)
_FELT: Final[dict[Felt, str]] = {
    "cold": r"(?:ice|icy|stone)?[- ]?cold|cool|icy|ice|freezing|chilled|kalte[mnrs]?|froide?"
    r"|fri[ao]|fredd[ao]|koud|zimn[aej]+|kallt",
    "hot": r"hot|hotter|warm|warmer|lukewarm|tepid|boiling|heisse[mnrs]?|warme[mnrs]?|chaude?"
    r"|caliente|quente|cald[ao]|heet|gorac[aej]+|varmt",
}
_UNTREATED: Final = re.compile(
    r"\b(?:un-?dechlorinated|un-?treated|un-?conditioned|chlorinated|raw tap"
    r"|not (?:dechlorinated|treated|conditioned)"
    r"|(?:without|no) (?:a |any |the |my )?(?:de-?chlorinat\w*|conditioner|water conditioner))\b"
)
_PLAIN: Final = frozenset(
    re.split(
        r"\s+",
        "the a an my our some same this that its own new fresh clean other more of in at and or is"
        " are which be dechlorinated treated conditioned prepared aged matched ordinary normal"
        " plain usual only just all degree degrees deg c f celsius fahrenheit ph kh gh no3 nitrate"
        " salinity sg temp temperature dh dkh dgh ppm mg l grad das dem den der die ein einem"
        " frischem neuem la le les el los de d du une un uma um het een det ett nieuw"
        " about around roughly change changed water litres liters litre liter gallons gal",
    )
)
"""Words before "water" that say nothing of where it is from."""


@dataclass(frozen=True, slots=True)
class NewWater:
    """What a text says of the new water.

    Attributes
    ----------
    start, end : int
        Where it is said.
    told : str
        Its readings in words that `core.message.parse` reads; empty where none are said.
    kind : str or None
        A water that is none of the known ones, as said ("softened water").
    felt : "cold", "hot" or None
        Warmth without a number.
    """

    start: int
    end: int
    told: str = ""
    kind: str | None = None
    felt: Felt | None = None


def untreated(text: str) -> bool:
    """Whether water is meant that still holds its chlorine.

    Examples
    --------
    >>> untreated("50% without dechlorinator"), untreated("30% with dechlorinated water")
    (True, False)
    """
    return _UNTREATED.search(fold(text)) is not None


def find(text: str, names: Iterable[str] = ()) -> NewWater | None:
    """What a question about a change says of its new water; None where it says nothing.

    Parameters
    ----------
    text : str
        The question.
    names : iterable of str
        The keeper's own names of waters.

    Examples
    --------
    >>> find("what if i change 30% with 10 degree water").told
    'with 10 °c water'
    >>> find("what if i change 30% with softened water").kind
    'softened water'
    >>> find("what if i change 30% of the water") is None
    True
    """
    plain = fold(text)
    own = [" ".join(fold(name).split()) for name in names]
    place = _place(plain, own)
    if place is None:
        return None
    start, end, water = place
    said = plain[start:end]
    felt = None if _WARMTH.search(said) else _felt(said)
    kind = _kind(plain, start, end, water, own)
    bare = _nameless(said, [kind, *own] if kind else own)
    told = _readable(bare) if any(map(str.isdigit, bare)) else ""
    return NewWater(start, end, told, kind, felt)


def _place(plain: str, own: list[str]) -> tuple[int, int, tuple[int, int]] | None:
    """From where to where the new water is spoken of, and where its noun stands."""
    spots = sorted({found.span() for found in re.finditer(rf"\b(?:{_WATER})\b", plain)})
    known = [(first, last) for first, last, _ in mentioned(plain)]
    if own:
        known += [f.span() for f in re.finditer(rf"(?<!\w)(?:{one_of(own)})(?!\w)", plain)]
    nouns = sorted({*spots, *known})
    for found in re.finditer(rf"\b(?:{_WITH})\b", plain):
        end = _end_of(plain, found.end())
        within = [spot for spot in nouns if found.end() <= spot[0] < end]
        if within:
            return found.start(), end, within[-1]
    for found in re.finditer(r"\bof\b", plain):
        end = _end_of(plain, found.end())
        spot = next((s for s in spots if found.end() <= s[0] < end), None)
        if spot is not None and any(map(str.isdigit, plain[found.end() : spot[0]])):
            return found.start(), spot[1], spot
    for spot in nouns:
        behind = _HAVING.match(plain, spot[1])
        if behind is None and spot in known:
            behind = _BESIDE.match(plain, spot[1])
        if behind is not None:
            return spot[0], _end_of(plain, spot[1]), spot
    warm = _AT_WARMTH.search(plain)
    return None if warm is None else (warm.start(), warm.end(), (warm.start(), warm.start()))


def _end_of(plain: str, start: int) -> int:
    found = _END.search(plain, start)
    return len(plain) if found is None else found.start()


def _felt(said: str) -> Felt | None:
    for felt, words in _FELT.items():
        if re.search(rf"\b(?:{words})\b", said):
            return felt
    return None


def _readable(said: str) -> str:
    """Readings with their warmth spelt as the parser has it."""
    spelt = _WARMTH.sub(lambda m: f"{m[1]} °{m[2] or m[3] or 'c'} ", said)
    return " ".join(spelt.split())


def _kind(plain: str, start: int, end: int, water: tuple[int, int], own: list[str]) -> str | None:
    """A water that is not one of the known kinds nor of the keeper's own names."""
    behind = _WHENCE.match(plain, water[1], end)
    stop = water[1] if behind is None or behind[1].isdigit() else behind.end()
    phrase = plain[start:stop]
    felt = "|".join(_FELT.values())
    rest = re.sub(rf"\b(?:{felt})\b", " ", _nameless(phrase, own))
    rest = _UNTREATED.sub(" ", _WARMTH.sub(" ", rest))
    words = re.findall(r"[^\W\d_]+", re.sub(rf"\b(?:{_WITH}|{_FROM})\b", " ", rest))
    strange = [word for word in words if word not in _PLAIN and not _is_water(word)]
    if not strange:
        return None
    first = min(plain.index(strange[0], start), water[0])
    return plain[first:stop].strip()


def _nameless(said: str, own: list[str]) -> str:
    """Words without the names of known waters, each blotted out in place."""
    pattern = rf"(?<!\w)(?:{one_of(own)})(?!\w)" if own else r"(?!)"
    said = re.sub(pattern, lambda found: " " * len(found[0]), said)
    for first, last, _ in mentioned(said):
        said = said[:first] + " " * (last - first) + said[last:]
    return said


def _is_water(word: str) -> bool:
    return re.fullmatch(r"water|wasser|vatten|eau|agua|acqua|wod[aey]", word) is not None
