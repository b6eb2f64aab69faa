"""A message that nothing understood, put in plain words: what it names, said as we would read it.

``did 50 % cold`` names a share and a deed done: ``changed 50 %``. Whoever wrote it says whether it
was meant so; nothing is stored, and no amount answered, on such a reading alone.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache
from typing import Final, NamedTuple

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.token import Token, is_number
from core.message.tokens import cut
from core.message.wordfile import patterns

_MOODS: Final = ("did", "asks", "not_yet", "now", "went")
_MASSES: Final = frozenset({"g", "kg", "mg", "tsp", "tbsp", "cup", "oz"})
_LITRES: Final = frozenset({"L", "gal"})
_WATERS: Final = _LITRES | {"%"}
_HALF: Final = "half"
_GOALS: Final = frozenset({"to", "wish", "at_to"})
_LOWERED: Final = frozenset({"nitrate", "nitrite", "ammonia", "phosphate"})
"""What only a change of water brings down."""
_LONGEST: Final = 200
_MOST: Final = 60
"""Letters, and tokens, of a text that is looked at."""


class Restated(NamedTuple):
    """A plain sentence, whether it tells what it would store or only asks, and if it is a wish."""

    text: str
    stores: bool
    wish: bool = False


class _Amount(NamedTuple):
    """A number as it was typed, with its unit."""

    said: str
    unit: str


@cache
def _patterns() -> dict[str, re.Pattern[str]]:
    return patterns("restated.txt", _MOODS)


def restated(text: str, tanks: Sequence[str] = ()) -> tuple[Restated, ...]:
    """What a text may say in plain words, the likeliest first; empty where it names too little.

    Every number of the text stands in each sentence: where one would be left over, there is none.

    Parameters
    ----------
    text : str
        A message of which nothing was understood.
    tanks : sequence of str
        Names of the keeper's tanks; one that is said goes before each sentence.

    Examples
    --------
    >>> [each.text for each in restated("did 50 % cold")]
    ['changed 50 %']
    >>> restated("gave kitchen 5 g baking soda", ["Kitchen", "Hall"])
    (Restated(text='Kitchen: added 5 g baking soda', stores=True, wish=False),)
    >>> [each.text for each in restated("baking soda 2 kg ok?")]
    ['what does 2 kg baking soda do']
    >>> restated("kh 3 and get it to 5")[0].text, restated("did it twice, 5 g soda 3")
    ('kh 3, dose kh 5', ())
    """
    if len(text) > _LONGEST or "\n" in text.strip():
        return ()
    named, rest = _tank(text, tanks)
    plain = fold(rest)
    tokens = cut(plain, lexicon(), rest, most=_MOST)
    moods = {mood for mood in _MOODS if _patterns()[mood].search(plain)}
    if "?" in text:
        moods.add("asks")
    found = _of_substance(rest, tokens, moods) or _of_water(tokens, moods)
    if not found and "went" not in moods:
        found = _of_goal(rest, tokens)
    before = f"{named}: " if named else ""
    return tuple(each._replace(text=before + each.text) for each in found)


def _tank(text: str, tanks: Sequence[str]) -> tuple[str, str]:
    """The one tank that a text names, and the text without it."""
    said = [
        (tank, match)
        for tank in tanks
        if (match := re.search(rf"(?<!\w){re.escape(tank)}(?!\w):?", text, re.IGNORECASE))
    ]
    if len(said) != 1:
        return "", text
    ((tank, match),) = said
    return tank, f"{text[: match.start()]} {text[match.end() :]}"


def _amounts(tokens: Sequence[Token]) -> list[_Amount] | None:
    """Every number with the unit behind it; None where one is none that can be said again."""
    found = []
    for i, token in enumerate(tokens):
        if token.value == _HALF:
            found.append(_Amount("half", "%"))
        if not is_number(token):
            continue
        if getattr(token.value, "problem", None):
            return None
        behind = tokens[i + 1] if i + 1 < len(tokens) else None
        unit = str(behind.value) if behind is not None and behind.kind == "unit" else ""
        said = f"{token.text} {behind.text}" if unit and behind is not None else token.text
        found.append(_Amount(said, unit))
    return found


def _of_substance(text: str, tokens: Sequence[Token], moods: set[str]) -> list[Restated]:
    """So much of one substance, put in or asked about."""
    names = [token for token in tokens if token.kind == "substance"]
    amounts = _amounts(tokens)
    if len({token.value for token in names}) != 1 or amounts is None or len(amounts) > 1:
        return []
    if any(token.kind == "analyte" or token.value == "for" for token in tokens):
        return []  # grams a litre are another question
    name = text[names[0].start : names[0].end]
    if not amounts:
        spoon = next((t.text for t in tokens if t.kind == "unit" and t.value in _MASSES), None)
        amounts = [] if spoon is None else [_Amount(f"1 {spoon}", "tsp")]
    if not amounts or amounts[0].unit not in _MASSES:
        return []
    so_much = f"{amounts[0].said} {name}"
    when = "".join(f" {token.text}" for token in tokens if token.kind == "time")
    put_in = Restated(f"added {so_much}{when}", stores=True)
    asked = Restated(f"what does {so_much} do", stores=False)
    return _by_mood(put_in, asked, moods) if moods else []  # 500 g may be what was bought


def _of_water(tokens: Sequence[Token], moods: set[str]) -> list[Restated]:
    """A share or litres of the water, changed or asked about."""
    amounts = _amounts(tokens)
    event = any(token.value in {"water_change", "changing"} for token in tokens)
    others = any(token.kind in {"analyte", "substance"} for token in tokens)
    if others or amounts is None or len(amounts) != 1 or amounts[0].unit not in _WATERS:
        return []
    if not event and "did" not in moods:
        return []  # a bucket holds as much, a tank is half full
    when = "".join(f" {token.text}" for token in tokens if token.kind == "time")
    did = Restated(f"changed {amounts[0].said}{when}", stores=True)
    asked = Restated(f"what if i change {amounts[0].said}", stores=False)
    return _by_mood(did, asked, moods)


def _by_mood(did: Restated, asked: Restated, moods: set[str]) -> list[Restated]:
    """A deed where one is told, a question where one is asked or only meant; both where neither."""
    if moods & {"asks", "not_yet"}:
        return [asked]
    return [did] if "did" in moods else [did, asked]


def _of_goal(text: str, tokens: Sequence[Token]) -> list[Restated]:
    """One analyte with a wish, and what it is now where that is said as well."""
    names = [token for token in tokens if token.kind == "analyte"]
    if len({token.value for token in names}) != 1:
        return []
    if any(token.kind in {"substance", "event"} for token in tokens):
        return []
    amounts = _amounts(tokens)
    places = [i for i, token in enumerate(tokens) if is_number(token)]
    if amounts is None or len(amounts) != len(places):
        return []
    told = dict(zip(places, amounts, strict=True))
    litres = [i for i in places if told[i].unit in _LITRES]
    values = [i for i in places if i not in litres]
    wished = [i for i in values if any(_is_goal(t) for t in tokens[max(0, i - 3) : i])]
    now = [i for i in values if i not in wished]
    if len(wished) != 1 or len(now) > 1 or len(litres) > 1 or not _is_wished(tokens):
        return []
    if any(told[i].unit in _MASSES | _WATERS for i in values):
        return []
    if any(not _is_now(tokens, i) for i in now) or (litres and not now):
        return []
    name, analyte = text[names[0].start : names[0].end], str(names[0].value).partition("@")[0]
    target = told[wished[0]].said
    if litres:
        span = f"from {told[now[0]].said} to {target} for {told[litres[0]].said}"
        return [Restated(f"dose {name} {span}", stores=False, wish=True)]
    wish = f"get {name} under {target}" if analyte in _LOWERED else f"dose {name} {target}"
    before = f"{name} {told[now[0]].said}, " if now else ""
    return [Restated(before + wish, stores=bool(now), wish=True)]


def _is_wished(tokens: Sequence[Token]) -> bool:
    """Whether a word wishes it: `kh to 4` alone may be where it went."""
    return any(token.value in {"wish", "reach"} for token in tokens)


def _is_goal(token: Token) -> bool:
    return token.kind == "mark" and token.value in _GOALS


def _is_now(tokens: Sequence[Token], place: int) -> bool:
    """Whether a number stands right behind a name, or a word that tells how it is now."""
    behind = tokens[place + 1] if place + 1 < len(tokens) else None
    if behind is not None and behind.kind in {"time", "count"} and behind.value != "now":
        return False  # in 2 days
    before = [t for t in tokens[max(0, place - 2) : place] if t.kind != "p"]
    return any(t.kind == "analyte" or _patterns()["now"].search(t.text) for t in before)
