"""How much water a tank holds, where a text says nothing else: `it's only 70 l, not 90`.

volume = { is | about } amount { behind } [ "not" number ] | "not" number "but" amount
of now = volume with a word that it is so at the moment, or was lowered to it | { is } "half full"
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final, Literal, NamedTuple

from core.message.amounts import volume_litres
from core.message.fold import fold
from core.message.regrets import behind_regret
from core.message.right_pieces import class_of
from core.message.waters import one_of
from core.message.wordfile import spelt

LONGEST: Final = 70
"""A longer text says more. [characters]"""

_EDGES: Final = " \t\n¿?¡!.,;:"


@cache
def _words(*meanings: str) -> str:
    told = spelt("volume_said.txt", {"word"})
    return one_of(way for _section, meaning, these in told if meaning in meanings for way in these)


@cache
def _head(*meanings: str) -> re.Pattern[str]:
    return re.compile(rf"(?:{_words(*meanings)})(?!\w)[\s,:]*")


@cache
def _tail() -> re.Pattern[str]:
    return re.compile(rf"[\s,]+(?:{_words('behind', 'moment')})$")


_NUMBER: Final = r"\d{1,6}(?:[.,]\d{1,3})?(?: ?[a-z]{1,9}\.?)?"


@cache
def _other() -> re.Pattern[str]:
    light = rf"(?:(?:{_words('regret')})[\s,]+)?"
    return re.compile(rf"[\s,;]+{light}(?:and |und |but )?(?:{_words('not')}) {_NUMBER}$")


@cache
def _other_unit() -> re.Pattern[str]:
    """Finds the unit that a volume is not in, at the end: 45 gallons not litres."""
    unit = _words("gallon", "litre")
    return re.compile(rf"[\s,;]+(?:{_words('not')}) (?P<unit>{unit})$")


@cache
def _light_tail() -> re.Pattern[str]:
    return re.compile(rf"[\s,;]+(?:{_words('regret', 'aside')})$")


@cache
def _noun() -> re.Pattern[str]:
    return re.compile(rf"[\s-]+(?:{_words('noun')})$")


def _plain(text: str) -> str:
    """A text without marks around it and words behind it that say nothing."""
    plain = fold(text).strip(_EDGES)
    while (found := _light_tail().search(plain)) is not None:
        plain = plain[: found.start()].strip(_EDGES)
    return plain


@cache
def _rather() -> re.Pattern[str]:
    return re.compile(
        rf"(?:{_head('is').pattern})*(?:{_words('not')}) {_NUMBER}[\s,;]+(?:{_words('but')}) "
    )


@cache
def _but() -> re.Pattern[str]:
    return re.compile(rf"[\s,;]+(?:{_words('but')}) $")


def without_other(text: str) -> str:
    """A text without a number at its end that is told not to be.

    Examples
    --------
    >>> without_other("fern is 80 l, not 90"), without_other("fern is 80 l")
    ('fern is 80 l', 'fern is 80 l')
    """
    found = _other().search(_plain(text))
    same = len(fold(text).lstrip(_EDGES)) == len(text)
    return text if found is None or not same else text[: found.start()]


class Exchanged(NamedTuple):
    """A number that was meant and the one that it is not, each with its unit as typed or ""."""

    meant: float
    unit: str
    wrong: float
    wrong_unit: str


def exchanged(text: str) -> Exchanged | None:
    """What `it's actually 400 not 4000` says of nobody knows what; None where more is said.

    Examples
    --------
    >>> exchanged("its actually 400 not 4000")
    Exchanged(meant=400.0, unit='', wrong=4000.0, wrong_unit='')
    >>> exchanged("the tank is 80 l, not 100").meant, exchanged("not 100 but 80 l").wrong
    (80.0, 100.0)
    >>> exchanged("actually its a 20 l tank, sorry not 90").meant
    20.0
    >>> exchanged("its 45 gallons btw not litres")
    Exchanged(meant=45.0, unit='gallons', wrong=45.0, wrong_unit='litres')
    >>> exchanged("kh 5 not 4"), exchanged("is it 80 not 100?")
    (None, None)
    """
    plain = _plain(text)
    if "?" in text or len(text) > LONGEST:
        return None
    rather, other = _rather().match(plain), _other().search(plain)
    if rather is None and other is None and (unit := _other_unit().search(plain)) is not None:
        told = re.fullmatch(_PARTS, _headless(_plain(plain[: unit.start()])).strip(_EDGES))
        if told is None or not told[2]:
            return None
        return Exchanged(_number(told[1]), told[2], _number(told[1]), unit["unit"])
    if rather is not None:
        wrong, rest = re.search(_PARTS, _but().sub("", rather[0])), plain[rather.end() :]
    elif other is not None:
        wrong, rest = re.search(_PARTS, other[0]), _headless(plain[: other.start()])
    else:
        return None
    meant = re.fullmatch(_PARTS, _noun().sub("", rest.strip(_EDGES)))
    if wrong is None or meant is None:
        return None
    return Exchanged(_number(meant[1]), meant[2] or "", _number(wrong[1]), wrong[2] or "")


_PARTS: Final = r"(\d{1,6}(?:[.,]\d{1,3})?)(?: ?([a-z%]{1,9}(?: gal)?)\.?)?"


def _number(typed: str) -> float:
    return float(typed.replace(",", "."))


def _headless(plain: str) -> str:
    """A plain text without the words before it that tell only that it is so."""
    while plain:
        found = _head("is", "about", "moment", "article").match(plain)
        size = 0 if found is None else found.end()
        if not size:
            first = re.match(r"[^\s,]+[\s,]*", plain)
            light = first is not None and class_of(first[0].strip(_EDGES)) in _LIGHT
            size = first.end() if first is not None and light else 0
        if not size:
            return plain
        plain = plain[size:]
    return plain


def of_now(text: str) -> bool:
    """Whether a text tells of how it is at the moment.

    Examples
    --------
    >>> of_now("there's only 40 l in it at the moment"), of_now("it's only 40 l")
    (True, False)
    >>> of_now("i drained it to 40 l")
    True
    """
    return re.search(rf"(?<!\w)(?:{_words('moment', 'down')})(?!\w)", fold(text)) is not None


def half_full(text: str) -> bool:
    """Whether a text says nothing but that the tank is half full.

    Examples
    --------
    >>> half_full("its half full though"), half_full("die ist nur halb voll")
    (True, True)
    >>> half_full("is it half full?"), half_full("half full of algae")
    (False, False)
    """
    plain = fold(text).strip(_EDGES)
    found = re.search(rf"(?<!\w)(?:{_words('half')})(?!\w)", plain)
    if "?" in text or len(text) > LONGEST or found is None or plain.startswith("is "):
        return False
    behind = re.sub(rf"(?<!\w)(?:{_words('moment', 'behind')})(?!\w)", " ", plain[found.end() :])
    return not _headless(plain[: found.start()]) and all(
        class_of(word) in _LIGHT or word in _THOUGH for word in re.findall(r"[^\s,.;!]+", behind)
    )


_THOUGH: Final = frozenset({"though", "tho", "aber", "mais", "pero", "mas", "maar", "ale"})


def only_tells(text: str) -> bool:
    """Whether all words of a text tell only that a number behind them is so.

    Examples
    --------
    >>> only_tells("is actually"), only_tells("lost"), only_tells("")
    (True, False, True)
    """
    return not _headless(fold(text).strip(_EDGES))


def volume_alone(text: str, us_gallons: bool = True) -> float | None:
    """A volume that is all that is said, in litres: `it's 120 litres`, `90 l net`.

    Examples
    --------
    >>> volume_alone("it's 120 litres"), volume_alone("90 l netto"), volume_alone("lost 20 l")
    (120.0, 90.0, None)
    """
    said = _read(text, us_gallons)
    return None if said is None else said[0]


def volume_told(text: str, us_gallons: bool = True) -> float | None:
    """A volume that is told to be so, in litres; None where it is only named.

    Examples
    --------
    >>> volume_told("its only 70 l actually"), volume_told("no, 70 l"), volume_told("70 l, not 90")
    (70.0, 70.0, 70.0)
    >>> volume_told("not 90 but 70 l")
    70.0
    >>> volume_told("oh sorry its 54 l"), volume_told("54 l, sorry"), volume_told("oh 54 l cube")
    (54.0, 54.0, None)
    >>> volume_told("70 l"), volume_told("for 70 l"), volume_told("is it 70 l?")
    (None, None, None)
    """
    if "?" in text or len(text) > LONGEST:
        return None
    if (rather := _rather().match(fold(text))) is not None:
        rest = text[rather.end() :]
    else:
        plain = _plain(text)
        behind = behind_regret(plain)
        if behind is not None and plain.removesuffix(behind).split()[-1:] == ["na"]:
            behind = None  # for 60 l, in Polish
        rest = plain if behind is None else _noun().sub("", behind)
    said = _read(rest, us_gallons)
    regretted = len(rest) < len(fold(text).strip(_EDGES))
    return said[0] if said is not None and (said[1] or regretted) else None


def unit_told(text: str) -> Literal["gallon", "litre"] | None:
    """In which unit a volume was meant, where nothing else is told: `gallons`, `no, litres`.

    Examples
    --------
    >>> unit_told("gallons"), unit_told("i meant litres"), unit_told("30 gallons")
    ('gallon', 'litre', None)
    >>> unit_told("sorry its gallons not litres")
    'gallon'
    """
    if "?" in text or len(text) > LONGEST:
        return None
    words = " ".join(re.sub(r"[^\w']+", " ", fold(text)).split())
    words = _other_unit().sub("", words)
    for unit in _UNITS:
        found = re.search(rf"(?<!\w)(?:{_words(unit)})(?!\w)", words)
        if found is not None:
            return unit if _is_light(f"{words[: found.start()]} {words[found.end() :]}") else None
    return None


_UNITS: Final[tuple[Literal["gallon", "litre"], ...]] = ("gallon", "litre")


def _is_light(rest: str) -> bool:
    """Whether words only regret, or tell nothing."""
    light = {
        word
        for of in ("is", "behind", "aside")
        for word in _words(of).replace(r"\s+", "|").split("|")
    }
    return all(word in light or class_of(word) in _LIGHT for word in rest.split())


def gallons_told(text: str) -> Literal["uk", "us"] | None:
    """Which gallons were meant, where nothing else is told.

    Examples
    --------
    >>> gallons_told("oh its uk gallons"), gallons_told("es sind britische Gallonen")
    ('uk', 'uk')
    >>> gallons_told("american gallons, sorry"), gallons_told("30 uk gallons")
    ('us', None)
    """
    if "?" in text or len(text) > LONGEST:
        return None
    words = " ".join(re.sub(r"[^\w']+", " ", fold(text)).split())
    found = re.search(
        rf"(?<!\w)(?:(?P<uk>{_words('imperial')})|(?:{_words('american')}))(?!\w)", words
    )
    if found is None:
        return None
    if not _is_light(f"{words[: found.start()]} {words[found.end() :]}"):
        return None
    return "uk" if found["uk"] else "us"


@cache
def _behind_gallons() -> re.Pattern[str]:
    return re.compile(
        rf"(?P<number>\d) ?(?:{_words('gallon')})[\s,]*\(?"
        rf"(?:(?P<us>{_words('of_us')})|(?:{_words('of_uk')}))\)?(?!\w)"
    )


def gallon_before(text: str) -> str:
    """A text in which the kind of a gallon that stands behind it stands before.

    Examples
    --------
    >>> gallon_before("its about 1200 gallons, uk"), gallon_before("20 gal (us) tank")
    ('its about 1200 uk gal', '20 us gal tank')
    >>> gallon_before("20 gallons")
    '20 gallons'
    """
    plain = fold(text)
    found = _behind_gallons().search(plain)
    if found is None or len(plain) != len(text):
        return text
    kind = "us" if found["us"] else "uk"
    return f"{text[: found.end('number')]} {kind} gal{text[found.end() :]}"


_SHORT_GALLONS: Final = re.compile(
    r"(?<![\w.,])(?P<number>\d{1,4}(?:\.\d)?) ?g(?= (?:tank|aquarium|pond|bowl|cube)\b)"
    r"(?! \w+ (?:salts?|buffer|mix|powder|food|fert\w*|soda|of)\b)"
)
_GRAMS_IN: Final = re.compile(
    r"\b(?:put|puts|add\w*|dos\w*|gave|give|pour\w*|tip\w*|weigh\w*|threw|chuck\w*|into|grams?)\b"
)


def gallons_spelt(text: str) -> str:
    """A text in which `29g` right before a tank is gallons by its word, since no tank weighs that.

    Examples
    --------
    >>> gallons_spelt("my 29g tank kh 3"), gallons_spelt("29 g aquarium")
    ('my 29 gal tank kh 3', '29 gal aquarium')
    >>> gallons_spelt("put 5 g tank salt in"), gallons_spelt("5 g pond salt"), gallons_spelt("5 g")
    ('put 5 g tank salt in', '5 g pond salt', '5 g')
    """
    plain = fold(text)
    found = _SHORT_GALLONS.search(plain)
    if found is None or len(plain) != len(text) or _GRAMS_IN.search(plain[: found.start()]):
        return text
    return f"{text[: found.end('number')]} gal{text[found.end() :]}"


def names_gallons(text: str) -> bool:
    """Whether gallons are named in a text.

    Examples
    --------
    >>> names_gallons("soda for a 20 gallon"), names_gallons("20gal"), names_gallons("20 litres")
    (True, True, False)
    """
    return re.search(rf"(?<![^\W\d_])(?:{_words('gallon')})(?!\w)", fold(text)) is not None


_LIGHT: Final = frozenset({"regret", "light", "was", "is", "only"})


def _read(text: str, us_gallons: bool) -> tuple[float, bool] | None:
    """The litres, and whether they are told to be so; None where more is said."""
    if len(text) > LONGEST:
        return None
    whole = without_other(text := gallon_before(text))
    told = whole != text
    plain = fold(whole).strip(_EDGES)
    digit = re.search(r"\d", plain)
    if digit is None:
        return None
    head, tail = plain[: digit.start()].strip(_EDGES), plain[digit.start() :]
    while head:
        found = _head("is", "about", "moment", "down").match(head)
        if found is None:
            return None
        told = told or _head("is").match(head) is not None
        head = head[found.end() :]
    while (volume := volume_litres(tail, us_gallons)) is None:
        behind = _tail().search(tail)
        if behind is None:
            return None
        told, tail = True, tail[: behind.start()]
    return volume, told
