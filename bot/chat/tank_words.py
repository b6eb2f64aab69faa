"""The words of ``/tank``: a name, a volume or three lengths, and the kind of water."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Final

from core.advice.introduced_by_name import is_article
from core.advice.introduction_parts import is_aside
from core.analytes import ANALYTES
from core.message.amounts import volume_litres
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.numbered import SHORTEST
from core.message.other_tank import theirs
from core.message.tokens import Token, cut
from core.message.volume_said import only_tells
from core.tank import FILLED, Box, Setup, TankKind

KIND_WORDS: Final[dict[str, TankKind]] = {
    "fresh": "fresh",
    "freshwater": "fresh",
    "planted": "fresh",
    "brackish": "brackish",
    "marine": "marine",
    "saltwater": "marine",
    "salt": "marine",
    "sea": "marine",
    "reef": "marine",
    "riff": "marine",
    "recif": "marine",
    "arrecife": "marine",
    "recife": "marine",
    "rif": "marine",
    "pond": "pond",
}
SETUP_WORDS: Final[dict[str, Setup]] = {
    "planted": "planted",
    "unplanted": "unplanted",
    "reef": "reef",
    "fish-only": "fish_only",
}
SOFT_WORDS: Final = frozenset({"soft", "blackwater"})
HARD_WORDS: Final = frozenset({"hard", "rift", "rift-lake"})
"""What a keeper says of hard fresh water; they begin no details, since names have them too."""
PLAIN_WORDS: Final = frozenset({"water", "tank", "net", "lake", "community"})
"""Words that say nothing more."""
POND_WORDS: Final = frozenset(
    {"pond", "teich", "bassin", "estanque", "lago", "laghetto", "vijver", "staw", "damm"}
)
TANK_WORDS: Final = POND_WORDS | {
    "tank", "aquarium", "becken", "bac", "acuario", "pecera", "aquário", "aquario", "acquario",
    "akwarium", "akvarium", "bak", "vasca", "zbiornik", "kar", "cuve", "tanque",
}  # fmt: skip
"""Words for the thing itself, in the languages of the messages."""
NOUNS: Final = TANK_WORDS | {"reef", "riff", "recif", "arrecife", "recife", "rif", "nano", "cube"}
"""Those and what stands for them: `a 200 l reef`, `a 30 l nano`."""
CALLED: Final = frozenset(
    {"called", "named", "namens", "genannt", "appele", "nomme", "llamado", "chamado", "chiamato",
     "genaamd", "nazwany"}
)  # fmt: skip
HOLDS: Final = frozenset(
    {"holds", "contains", "takes", "volume", "size", "total", "capacity", "fasst", "hat", "enthalt",
     "groß", "inhalt", "volumen", "contient", "contenance", "contiene", "tiene", "capacidad", "tem",
     "capacidade", "contem", "ha", "capacita", "bevat", "inhoud", "ma", "miesci", "pojemnosc",
     "rymmer", "innehaller", "volym", "only", "nur"}
)  # fmt: skip
"""Words between a tank and its volume that are no name, as they are folded."""
TALK: Final = frozenset({"word", "event", "ask", "command"})
"""Kinds of words that say something else of a tank than what it holds."""
NAMING: Final = frozenset({"word", "ask", "fill"})
"""Kinds of words that a name with a capital in the middle of a line may be: tank Hall 180 l."""
TOLD: Final = NAMING | {"count", "substance"}
"""Kinds of words besides that a name is where the line says all else of a tank: tank Otto 240 l."""
CALENDAR: Final = frozenset({"mon", "tue", "wed", "thu", "fri", "sat", "sun", "one"}) | {
    f"month{number}" for number in range(1, 13)
}
"""Times that are names as well: tank Juni 30 l."""
RESERVED: Final = frozenset({"new", "rename", "delete", "kit", "all", "help"})
LONGEST_NAME: Final = 40
NAME_WORDS: Final = 3
"""Words of a name that is told in talk."""

_NUMBER = r"(\d{1,6}(?:[.,]\d{1,3})?)"
_BY = r"\s{0,3}(?:x|×|\*|by)\s{0,3}"
_UNIT = r"\s{0,3}(mm|cm|m|in|inch|inches|\"|ft)?\b"
_LENGTHS = re.compile(_NUMBER + _BY + _NUMBER + _BY + _NUMBER + _UNIT, re.IGNORECASE)
_DEPTH = re.compile(
    r"\b(?:water|depth|deep|filled|filled to)\s{0,3}(?:depth\s{0,3})?" + _NUMBER, re.IGNORECASE
)
_FISH_ONLY: Final = re.compile(r"\bfish only\b", re.IGNORECASE)
_CM: Final = {"mm": 0.1, "cm": 1.0, "m": 100.0, "ft": 30.48}
_INCH: Final = 2.54


@dataclass(frozen=True, slots=True)
class Described:
    """A tank as a line describes it; what was not said is None."""

    name: str
    volume_l: float | None = None
    box: Box | None = None
    kind: TankKind | None = None
    soft: bool | None = None
    setup: Setup | None = None
    rest: str = ""
    """Words that were not understood."""


def describe(text: str, *, us_gallons: bool) -> Described:
    """Read ``NAME 90 l fresh`` or ``NAME 60x30x36 cm water 32 marine``, details in any order.

    The name goes up to the first number, or to the first word of a kind.
    """
    text = _FISH_ONLY.sub("fish-only", text)
    words = text.split()
    cut = next((n for n, word in enumerate(words) if n and _begins_details(word)), len(words))
    name, details = " ".join(words[:cut]), " ".join(words[cut:])
    box, details = _box(details)
    kind: TankKind | None = None
    soft: bool | None = None
    setup: Setup | None = None
    amount: list[str] = []
    for word in details.split():
        plain = word.casefold().strip(",.;")
        setup = SETUP_WORDS.get(plain, setup)
        if plain in KIND_WORDS:
            kind = KIND_WORDS[plain]
        elif plain in SETUP_WORDS:
            continue
        elif plain in SOFT_WORDS:
            soft = True
        elif plain in HARD_WORDS:
            kind = kind or "fresh"
        elif plain not in PLAIN_WORDS:
            amount.append(word)
    said = " ".join(amount)
    volume = volume_litres(said, us_gallons=us_gallons) if said else None
    rest = "" if volume is not None else said
    return Described(name, volume, box, kind, soft, setup, rest)


_UNTOLD: Final = TANK_WORDS | {"nano", "cube", "long", "tall", "high", "breeder", "rimless"}
"""Words that say no more of a tank than that it is one."""


def own(text: str, *, us_gallons: bool) -> Described | None:
    """Read ``my tank is 120 litres`` or ``i have a 60x30x36 cm reef tank``; None for other talk.

    It names a tank in general and says how large it is, and nothing that is not understood.
    """
    words = {plain(word) for word in text.split()}
    number = re.search(r"\d", text)
    if number is None or not words & NOUNS or _else_said(text[: number.start()]) or is_aside(text):
        return None
    if theirs(text) is not None:
        return None  # my dads tank 200 l
    if _BELOW_NOTHING.search(text[: number.start()]):
        return Described("tank", -1.0) if _of_volume(text[number.start() :], us_gallons) else None
    details = " ".join(
        word for word in text[number.start() :].split() if word.casefold() not in _UNTOLD
    )
    said = describe(f"tank {details}", us_gallons=us_gallons)
    asked_back = said.box is not None and only_tells(said.rest)  # 60x30x35 cm i think
    if (said.rest and not asked_back) or (said.volume_l is None and said.box is None):
        return None
    kinds = [KIND_WORDS[word] for word in words if word in KIND_WORDS and word not in TANK_WORDS]
    made = [SETUP_WORDS[word] for word in words if word in SETUP_WORDS]
    pond: TankKind | None = "pond" if words & POND_WORDS else None
    setup = said.setup or next(iter(made), None)
    return replace(said, kind=said.kind or next(iter(kinds), pond), setup=setup)


def has_other_name(text: str) -> bool:
    """Whether a word that nothing is known of stands right before the word for a tank.

    Examples
    --------
    >>> has_other_name("my shed tank is 60 l"), has_other_name("my den tank is 60 l")
    (True, True)
    >>> has_other_name("my tank is 60 l"), has_other_name("der tank hat 60 l")
    (False, False)
    """
    tokens = cut(fold(text), lexicon(), text)
    place = next((n for n, token in enumerate(tokens) if plain(token.text) in TANK_WORDS), 0)
    before = tokens[place - 1] if place else None
    if before is None or plain(before.text) in {*KIND_WORDS, *SETUP_WORDS, *_UNTOLD, *PLAIN_WORDS}:
        return False
    return before.kind == "word" or (place > 1 and is_article(before.text))


def has_box(text: str) -> bool:
    """Whether a text has three lengths, which no other thing is told in."""
    return _LENGTHS.search(text) is not None


def _of_volume(text: str, us_gallons: bool) -> bool:
    return describe(f"tank {text}", us_gallons=us_gallons).volume_l is not None


def _else_said(head: str) -> bool:
    """Whether more than holding stands between a tank and a number: `my tank lost 20 l`."""
    words = [word.strip(",.;!:") for word in head.casefold().split()]
    last = max((n for n, word in enumerate(words) if word in NOUNS), default=len(words))
    between = " ".join(words[last + 1 :])
    tokens = cut(fold(between), lexicon(), between)
    if between and only_tells(between):
        return False  # the tank is actually 80 l
    tells = {"link", "approx"}
    return any(
        (token.kind in TALK and token.text not in HOLDS)
        or (token.kind == "mark" and token.value not in tells)
        for token in tokens
    )


def of_a_day(text: str) -> bool:
    """Whether a day stands before the number, as if so much was so or was done then."""
    number = re.search(r"\d", text)
    head = text[: number.start()] if number is not None else ""
    return any(
        token.kind == "time" and token.value in _DAYS for token in cut(fold(head), lexicon(), head)
    )


_DAYS: Final = frozenset({"today", "yesterday", "before_yesterday", "tomorrow"})
_BELOW_NOTHING: Final = re.compile(r"(?:^|\s)(?:[-−–]|minus\s{1,2})$")
"""A minus sign that touches the number behind it."""


def named(text: str) -> str | None:
    """Read ``tank fern 90 l marine`` as what ``/tank`` takes, ``fern 90 l marine``; None for other.

    A word for a tank goes first; what stands between it and the details is the tank's name where
    none of it means anything else.
    """
    first, _space, line = text.strip().partition(" ")
    if first.casefold().strip(",:") not in TANK_WORDS:
        return None
    head, _space, after = line.strip().partition(" ")
    if fold(head) in CALLED:
        line = after
    name = name_in(line)
    words = cut(fold(name), lexicon(), name)
    if not 0 < len(words) <= NAME_WORDS or name == line.strip():
        return None
    capital = name[0].isupper() and all(map(_may_name, words))
    if any(token.text in HOLDS for token in words):
        return None
    homes = [token.kind == "mark" and token.value == "home" for token in words]
    means_nothing = not all(homes) and all(
        home or _means_no_deed(token) for home, token in zip(homes, words, strict=True)
    )
    article = len(words) == 1 and _is_no_article(words[0])
    means_nothing = means_nothing or (article and not describe(line, us_gallons=True).rest)
    return line if means_nothing or capital else None


def _means_no_deed(token: Token) -> bool:
    """Whether a word, small as it is, may be a name: tank otto 240 l, tank juni 30 l."""
    month = token.kind == "time" and str(token.value).startswith("month")
    return token.kind in {"word", "count"} or month


def _is_no_article(token: Token) -> bool:
    """Whether a word that is an article elsewhere is a name here: none stands before a volume.

    So `tank den 60 l` tells of Den, where `bac de 60 l` names nothing.
    """
    return token.kind == "fill" and len(token.text) >= SHORTEST and is_article(token.text)


def _may_name(token: Token) -> bool:
    """Whether a word with a capital, in a line that tells of a tank, may be its name."""
    calendar = token.kind == "time" and token.value in CALENDAR
    more = token.kind == "command" and token.value == "more"  # mer is the sea in French
    home = token.kind == "mark" and token.value == "home"
    return token.kind in TOLD or calendar or more or home or token.kind == "number"


def whole(text: str, *, us_gallons: bool) -> str | None:
    """A line that tells of a tank by a word for one, its name and its volume, and nothing else."""
    line = named(text)
    if line is None:
        return None
    said = describe(line, us_gallons=us_gallons)
    return line if not said.rest and said.volume_l is not None else None


def name_in(line: str) -> str:
    """The words before the details in what ``/tank`` takes."""
    return describe(line, us_gallons=True).name


def name_problem(name: str) -> str | None:
    """Why a name cannot be a tank's, as an id; None where it can."""
    if not name.strip():
        return "empty"
    if len(name) > LONGEST_NAME or not name.isprintable():
        return "too_long"
    folded = name.casefold()
    labels = {row.label.casefold() for row in ANALYTES.values()}
    if folded in RESERVED or folded in ANALYTES or folded in labels or folded.isdigit():
        return "reserved"
    return None


def plain(word: str) -> str:
    """A word of a line as the tables here spell it."""
    return word.casefold().strip("/,.;:!")


def _begins_details(word: str) -> bool:
    plain = word.casefold().strip(",.;")
    return word[0].isdigit() or plain in KIND_WORDS | SETUP_WORDS or plain in SOFT_WORDS


def _box(details: str) -> tuple[Box | None, str]:
    """Three lengths with an optional water depth, and what is left of the text."""
    found = _LENGTHS.search(details)
    if found is None:
        return None, details
    unit = (found[4] or "cm").casefold()
    factor = _CM.get(unit, _INCH)
    length, width, height = (_float(found[group]) * factor for group in (1, 2, 3))
    left = details[: found.start()] + " " + details[found.end() :]
    depth = _DEPTH.search(left)
    if depth is None:
        return Box(length, width, height * FILLED, depth_said=False), left
    left = left[: depth.start()] + " " + left[depth.end() :].removeprefix(unit)
    water = min(_float(depth[1]) * factor, height)
    return Box(length, width, water, depth_said=True), re.sub(r"\bcm|mm|in\b", " ", left)


def _float(text: str) -> float:
    return float(text.replace(",", "."))
