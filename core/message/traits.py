"""What a keeper tells of a tank for good: its first day, CO2, plants, reef, a kit's last day.

trait  = first | made | expiry
first  = [tank] word-of-setting-up moment  |  tank "is" number unit "old"
made   = words of nothing but a tank, CO2, plants, a reef, fish only, having or not having it
expiry = kit analyte word-of-expiry ( day | month )
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date, datetime
from typing import Final, Literal, cast

from core.message import doubts, kit_days, times
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Context
from core.message.tanks import marked
from core.message.tokens import Token, cut
from core.tank import Setup

LONGEST: Final = 160
"""A longer text tells more than one such thing. [characters]"""

_SET_UP: Final = re.compile(
    r"\b(?:(?:was|is|got|been) (?:just )?started|set ?up|started up|running since|runs since"
    r"|eingerichtet|aufgesetzt|lauft seit|mis en (?:route|eau)|montad[oa]|avviat[oa]"
    r"|allestit[oa]|opgestart|ingericht|zalozon[yae]|startades|startad|uppstartad)\b"
)
_OLD: Final = re.compile(
    r"\b(?:is|ist) (?:about |etwa |only |erst )?(\d{1,3}|a|an|one|two|three|four|five|six|seven"
    r"|eight|nine|ten|eine?|einen|zwei|drei|vier|funf|sechs)"
    r" (days?|weeks?|months?|tage?|wochen?|monate?) (?:old|alt)\b"
)
_YEARS: Final = re.compile(
    r"\b(\d{1,2}|a|one|two|three|four|five|six|seven|eight|nine|ten|einem|zwei|drei|vier|funf)"
    r" (?:years?|jahren?)\b"
)
_TANK: Final = re.compile(r"\b(?:tank|aquarium|becken)\b")
_NUMBERS: Final = {
    "a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7,
    "eight": 8, "nine": 9, "ten": 10, "ein": 1, "eine": 1, "einen": 1, "einem": 1, "zwei": 2,
    "drei": 3, "vier": 4, "funf": 5, "sechs": 6,
}  # fmt: skip
_UNITS: Final = {"d": "days", "t": "days", "w": "weeks", "m": "months"}
_BETWEEN: Final = frozenset(
    "on in at since the from seit am im dem der le en depuis el de desde em no desde il dal op in"  # noqa: SIM905
    " sinds od w den sedan i just was is wurde ist".split()
)
"""Words that may stand between the word of setting up and its day."""

_CARBON: Final = re.compile(r"\b(?:co2|carbon dioxide|kohlendioxid|koldioxid|kooldioxide)\b")
_HAVING: Final = frozenset(
    "has have gets uses runs with inject injects injected injecting injection adds on hat haben"  # noqa: SIM905
    " bekommt mit avec tiene con tem com ha con heeft met ma z har med".split()
)
_LACKING: Final = frozenset(
    "no not without off stopped keine kein ohne sans pas sin sem senza geen zonder bez nie ingen"  # noqa: SIM905
    " utan".split()
)
_PLANTED: Final = frozenset(
    "planted bepflanzt plante plantee plantado plantada piantumato piantumata beplant obsadzone"  # noqa: SIM905
    " obsadzony planterat planterad plants plant pflanzen plantes plantas piante planten rosliny"
    " vaxter".split()
)
_UNPLANTED: Final = frozenset({"unplanted", "unbepflanzt", "plantless"})
_REEF: Final = frozenset(
    "reef riff recif arrecife recife barriera rif rafa korallrev corals coral korallen coraux"  # noqa: SIM905
    " corales corais coralli koralen koralowce koraller".split()
)
_FISH_ONLY: Final = re.compile(
    r"\b(?:fish[ -]only|only fish|nur fische?|poissons seulement|solo (?:peces|pesci)|so peixes"
    r"|alleen vissen|tylko ryby|bara fisk)\b"
)
_BESIDE: Final = frozenset(
    "is a an the i my in into to for now longer anymore any more more pressurised pressurized"  # noqa: SIM905
    " system bottle cylinder kit diffuser tank aquarium planted eine die das du de un une une el"
    " la o il een jest et ett ist est es esta e ar anlage flasche becken system".split()
)

_KIT: Final = re.compile(r"\b(?:kits?|tests?|testkit|reagents?|strips|tropfchentest)\b")
_EXPIRY: Final = re.compile(
    r"\b(?:expir(?:es|ed|y|y date)|exp|good until|good till|best before|use by|valid until"
    r"|runs out|until|haltbar bis|gultig bis|lauft ab|ablaufdatum|expire|valable jusqu'?a?|perime"
    r"|caduca|vence|expira|validade|scade|houdbaar tot|verloopt|wazny do|hallbar till|gar ut)\b"
)

_MADE: Final = re.compile(
    "|".join([_CARBON.pattern, _FISH_ONLY.pattern, *sorted(_PLANTED | _UNPLANTED | _REEF)])
)


@dataclass(frozen=True, slots=True)
class Trait:
    """One thing told of a tank or a kit for good.

    Attributes
    ----------
    kind : str
        set_up, co2, setup or kit_expiry.
    tank : str or None
        The tank's own spelling; None where none was named.
    at : datetime or None
        When the tank was set up.
    has : bool
        Whether carbon dioxide is injected.
    setup : str or None
        planted, unplanted, reef or fish_only, alone or beside carbon dioxide.
    analyte : str or None
        Whose kit it is.
    until : date or None
        The last day on which the kit is good.
    problem : str or None
        An id of `core.message.doubts` where the day must be asked about.
    """

    kind: Literal["set_up", "co2", "setup", "kit_expiry"]
    tank: str | None = None
    at: datetime | None = None
    has: bool = True
    setup: Setup | None = None
    analyte: str | None = None
    until: date | None = None
    problem: str | None = None


def read(text: str, context: Context) -> Trait | None:
    """What a message tells of a tank for good; None where it tells no such thing.

    Examples
    --------
    >>> from datetime import UTC
    >>> here = Context(datetime(2026, 3, 9, 12, tzinfo=UTC), tanks=("Fern",))
    >>> read("fern was set up on 3 march", here).at.date()
    datetime.date(2026, 3, 3)
    >>> read("fern has co2", here).has, read("fern has no co2", here).has
    (True, False)
    >>> read("fern is planted", here).setup
    'planted'
    >>> read("kh kit expires 05/2026", here).until
    datetime.date(2026, 5, 31)
    """
    if len(text) > LONGEST or "?" in text:
        return None
    folded = _YEARS.sub(_in_months, fold(text))
    said = (_SET_UP.search(folded), _OLD.search(folded), _MADE.search(folded))
    expiry = _EXPIRY.search(folded) if _KIT.search(folded) else None
    if not any(said) and expiry is None:
        return None
    tokens = cut(folded, lexicon())
    tokens = marked(tokens, folded, context)
    if not tokens or tokens[0].kind == "ask" or tokens[0].value == "remind":
        return None
    if expiry is not None:
        return _expiry(folded, expiry, tokens)
    set_up, old, _ = said
    if set_up is not None:
        return _first_day(set_up, tokens, context)
    return _made(tokens, folded) if old is None else _by_age(old, tokens, context)


_AGED: Final = re.compile(
    r"[,;.]?\s*\b(?:(?:in a|and|und|my|the|our|this|mein|meine|das|unser) )*"
    rf"(?:(?:tank|aquarium|becken) {_OLD.pattern[2:]}"
    r"|(?:it'?s |its )?(?:an? )?\d{1,3}[ -](?:day|week|month)s?[ -]old (?:tank|aquarium)\b)"
)


def without_age(text: str) -> tuple[str, str] | None:
    """A text without how old the tank is, and those words; None where it tells no such.

    Examples
    --------
    >>> without_age("ammonia 0.5 nitrite 1 tank is 3 weeks old")
    ('ammonia 0.5 nitrite 1', 'tank is 3 weeks old')
    >>> without_age("the test is 2 days old") is None
    True
    """
    found = _AGED.search(fold(text)) if len(fold(text)) == len(text) else None
    if found is None:
        return None
    left = (text[: found.start()].strip(), text[found.end() :].strip(" ,;."))
    count = re.search(r"(\d{1,3})[ -](day|week|month)s?[ -]old", found[0])
    age = found[0].strip(" ,;.") if count is None else f"tank is {count[1]} {count[2]}s old"
    return ", ".join(each for each in left if each), age


def _in_months(years: re.Match[str]) -> str:
    """Years as months, which a message's times know."""
    return f"{12 * (_NUMBERS.get(years[1]) or int(years[1]))} months"


def _tank(tokens: list[Token]) -> str | None:
    return next((str(token.value) for token in tokens if token.kind == "tank"), None)


def _first_day(word: re.Match[str], tokens: list[Token], context: Context) -> Trait | None:
    if any(token.kind == "analyte" for token in tokens):
        return None
    before = [token for token in tokens if token.end <= word.start()]
    after = [token for token in tokens if token.start >= word.end()]
    moment = _moment(after[:3], after, context) or _moment(before, before, context)
    if moment is None:
        return None
    if moment.problem is not None and moment.at is None:
        return Trait("set_up", _tank(tokens), problem=moment.problem)
    return Trait("set_up", _tank(tokens), at=moment.at or context.now)


def _moment(places: list[Token], tokens: list[Token], context: Context) -> times.Moment | None:
    """The moment that tokens are of, but for a tank and the small words beside it."""
    for place, token in enumerate(places):
        if (moment := times.find(tokens, place, context)) is not None:
            return moment
        if token.kind != "tank" and token.text not in _BETWEEN:
            return None
    return None


def _by_age(said: re.Match[str], tokens: list[Token], context: Context) -> Trait | None:
    """`fern is 3 weeks old`: of a tank, never of a fish."""
    tank = _tank(tokens)
    if tank is None and not _TANK.search(said.string, 0, said.start()):
        return None
    count = _NUMBERS.get(said[1]) or int(said[1])
    ago = cut(f"{count} {_UNITS[said[2][0]]} ago", lexicon())
    moment = times.find(ago, 0, context)
    return None if moment is None else Trait("set_up", tank, moment.at)


def _made(tokens: list[Token], folded: str) -> Trait | None:
    """Only where every word is a tank's name, CO2, plants, a reef, having it, or beside."""
    told = _FISH_ONLY.search(folded)
    words = [
        word
        for token in tokens
        if token.kind not in {"tank", "p"} and not _within(token, told)
        for word in _words(token)
    ]
    held = {word for word in words if not _CARBON.fullmatch(word)}
    carbon = len(held) < len(set(words))
    setup = _setup(held, fish_only=told is not None)
    if held - _PLANTED - _UNPLANTED - _REEF - _HAVING - _LACKING - _BESIDE:
        return None
    tank, lacks = _tank(tokens), bool(held & _LACKING)
    if carbon:
        known = held & (_HAVING | _LACKING) or setup is not None
        return Trait("co2", tank, has=not lacks, setup=setup) if known else None
    if tank is None and not _TANK.search(folded):
        return None
    if lacks:
        setup = "unplanted" if setup == "planted" else None
    return None if setup is None else Trait("setup", tank, setup=setup)


def _setup(words: set[str], *, fish_only: bool) -> Setup | None:
    """What a tank is made for, by its words; None where they tell none or two."""
    told: list[Setup] = []
    for of, name in ((_PLANTED, "planted"), (_UNPLANTED, "unplanted"), (_REEF, "reef")):
        if words & of:
            told.append(cast("Setup", name))
    if fish_only:
        told.append("fish_only")
    return told[0] if len(told) == 1 else None


def _within(token: Token, span: re.Match[str] | None) -> bool:
    return span is not None and span.start() <= token.start < span.end()


def _words(token: Token) -> list[str]:
    return [token.text] if _CARBON.fullmatch(token.text) else token.text.split()


def _expiry(folded: str, word: re.Match[str], tokens: list[Token]) -> Trait | None:
    names = [token for token in tokens if token.kind == "analyte"]
    if not names:
        return None
    analyte = str(names[0].value).partition("@")[0]
    found = kit_days.until(folded[word.end() :], [t for t in tokens if t.start >= word.end()])
    if found is None:
        return None
    until = kit_days.day_of(*found)
    if until is None:
        return Trait("kit_expiry", _tank(tokens), analyte=analyte, problem=doubts.BAD_TIME)
    return Trait("kit_expiry", _tank(tokens), analyte=analyte, until=until)
