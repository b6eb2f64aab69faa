"""New animals on their way into a tank: what is told of the bag, the journey and themselves.

message = { tank's water | bag's water | animals | journey }

What stands behind a word for the bag is the bag's water, up to a word for the tank; none of it is
ever a reading of the tank. The words are a list of nine languages'.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Final

from core.message import plants
from core.message.bagged import without_bag
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Context, Parsed, Value
from core.message.parser import parse
from core.message.tanks import marked
from core.message.tokens import cut

LONGEST: Final = 400
"""A longer text is no short message about a bag. [characters]"""

_BAG: Final = re.compile(
    r"\b(?:bags?|bag water|transport (?:bag|water)|tuten?|beutel|transport(?:beutel|wasser)"
    r"|sachets?|sacs?|bolsas?|sacos?|sacchett[oi]|busta|zakk?(?:je)?s?|worek|worecz\w{1,4}|worku"
    r"|pas(?:e|en|ar)|transportpase|(?:shop|store|seller|dealer|breeder)\W?s? water"
    r"|handlerwasser|wasser vom handler)\b"
)
_HOME: Final = re.compile(
    r"\b(?:(?:bring(?:s|ing)?|brought|tak(?:e|es|ing)|took|got|came|coming)(?: \w{1,20}){0,6} home"
    r"|home with|new arrivals?|acclimat\w{1,8}|eingewohn\w{0,6}|aclimat\w{1,8}"
    r"|akklimatis\w{1,8}|ambientar\w{0,6}|aklimatyz\w{1,8}|tillvanj\w{0,6}"
    r"|acklimatis\w{1,8})\b"
)
_GETTING_USED: Final = re.compile(
    r"\b(?:acclimat\w{1,8}|eingewohn\w{0,6}|eingewohnen|gewohne?n?(?: \w{1,20}){1,4} ein"
    r"|aclimat\w{1,8}|akklimatis\w{1,8}|ambientar\w{0,6}|ambient[oi]|aklimatyz\w{1,8}"
    r"|tillvanj\w{0,6}|vanjer|acklimatis\w{1,8}|wen ik|wennen)\b"
)
"""Getting animals used to water, whether they are named or not."""
_FLOATING: Final = re.compile(
    r"\b(?:float(?:s|ing)?|schwimmen|flott\w{1,4}|flot(?:ar|ando|e)|boiar?|flutuar?|galleggi\w{1,4}"
    r"|drijven|dobberen|plywa\w{0,2}|unosi\w{0,2}|flyta)\b"
)
"""A bag that floats in a tank, which holds animals though none are named."""
_ADDING: Final = re.compile(
    r"\b(?:how (?:do|should|can|to)(?: i| we)? (?:add|put|release|introduce|drip|move|get)"
    r"|(?:introduc\w{1,4}|adding|add|releas\w{1,4}) (?:the |my |our |these |some )?new"
    r"|wie setze? ich|wie setzt man|comment (?:introduire|mettre|ajouter)|como (?:meto|introduzco"
    r"|coloco|introduzo|anado|adiciono)|come (?:inserisco|introduco|aggiungo)"
    r"|hoe (?:zet|voeg|laat) ik|jak (?:wpuscic|wprowadzic|dodac)|hur (?:satter|slapper) jag)\b"
)
_ARRIVED: Final = re.compile(
    r"\b(?:new|neuen?|nouve\w{1,4}|nuev[oa]s|nov[oa]s|nuov[ie]|nieuwe|nowe|nya)"
    r" (?:\w{1,20} ){0,2}\w{1,20} (?:home|here|arrived?|are here|came|today|tomorrow|sind da)\b"
)
_QUARANTINE: Final = re.compile(
    r"\b(?:quaranti\w{1,5}|quarantane\w{0,6}|quarantaine\w{0,3}|cuarentena|quarentena|quarantena"
    r"|kwarantann\w{1,3}|karantan\w{0,4})\b"
)
_HERE: Final = r"(?:tank|aquarium|becken|acuario|aquario|acquario|akwarium|akvarium)"
_ANIMALS: Final = re.compile(
    r"\b(?:fish(?:es)?|shrimps?|snails?|corals?|crabs?|animals?|frags?|fische?n?|garnelen?|schnecken?"
    r"|korallen?|tiere|poissons?|crevettes?|escargots?|coraux|peces|pez|gambas?|caracoles|corales"
    r"|peix\w{1,2}|camar\w{2,4}|caramujos|corais|pesc[ei]|gamber\w{1,4}|lumache|coralli|viss?en"
    r"|garna\w{2,3}|slakken|koralen|ryb\w{0,2}|krewet\w{1,3}|slimak\w{0,2}|koral\w{0,3}|fiskar?"
    r"|rakor|snackor|koraller)\b"
)
_ASKING: Final = re.compile(
    r"\b(?:how|what|mine|wie|was|comment|que faire|como|come|cosa|hoe|wat|jak|co|hur|vad)\b"
)
"""Words that begin a question, or tell of the keeper's own water, behind the bag's."""
_HOURS: Final = re.compile(
    r"\b(\d{1,3}(?:[.,]\d)?|an|one|half an) ?(hours?|hrs?|h|std|stunden?|heures?|horas?|ore|uur"
    r"|godzin\w?|timmar|min(?:ute[sn]?|utos|uti|uten|uter|ut)?s?)\b"
)
_POST: Final = re.compile(
    r"\b(?:post(?:ed)?|by mail|mail order|shipp(?:ed|ing)|courier|online|overnight|parcel|versand"
    r"|livraison|envio|paket|przesylk\w|spedizione)\b"
)
BY_POST: Final = 24.0
"""Hours that a parcel is taken to be on its way; common practice, no source."""

_LEADING: Final = re.compile(
    r"^[\s:,;=-]*(?:(?:water|wasser|is|are|was|has|had|with|reads?|at|ist|hat|est|es|tiene|a|e|ha|ma"
    r"|har|now)\b[\s:,;=-]*+)*+"
)


@dataclass(frozen=True, slots=True)
class Coming:
    """New animals on their way, as far as a message tells.

    Attributes
    ----------
    text : str
        The message without the bag's water, in plain letters: the animals' names are in it.
    bag : tuple of Value
        What was measured in the bag.
    about_bag : bool
        Whether a bag is spoken of at all.
    hours : float or None
        Since the bag was closed. [h]
    quarantine : bool
        Whether quarantine is asked about.
    home : bool
        Whether coming home or getting used to water is spoken of.
    adding : bool
        Whether it is asked how something is added: only with an animal's name it is this.
    animals : bool
        Whether a word for animals of any kind is in it, or a bag that floats.
    tank : str or None
        The tank that is named.
    rest : Parsed
        What the message tells of the tank's own water, where it says so.
    """

    text: str
    bag: tuple[Value, ...] = ()
    about_bag: bool = False
    hours: float | None = None
    quarantine: bool = False
    home: bool = False
    adding: bool = False
    animals: bool = False
    tank: str | None = None
    rest: Parsed | None = None


def read(text: str, context: Context) -> Coming | None:
    """What a message tells of new animals; None where it speaks of none.

    Examples
    --------
    >>> from datetime import UTC, datetime
    >>> here = Context(datetime(2026, 3, 9, 12, tzinfo=UTC), tanks=("Fern",))
    >>> found = read("new fish home, bag ph 6.4 kh 2, 3 h in the bag, fern ph 7.2", here)
    >>> [(v.analyte, v.canonical) for v in found.bag], found.hours
    ([('ph', 6.4), ('kh', 2.0)], 3.0)
    >>> [(v.analyte, v.canonical) for v in found.rest.values]
    [('ph', 7.2)]
    """
    if len(text) > LONGEST:
        return None
    folded = without_bag(fold(text))
    bag = _BAG.search(folded)
    words = _HOME.search(folded) or _ARRIVED.search(folded)
    quarantine, adding = _QUARANTINE.search(folded), _ADDING.search(folded)
    if not (bag or words or quarantine or adding):
        return None
    hours, kept = _hours(folded)
    plain, values, rest = _parted(kept, context)
    tokens = cut(folded, lexicon())
    named = [str(t.value) for t in marked(tokens, folded, context) if t.kind == "tank"]
    return Coming(
        plain,
        values,
        bag is not None,
        hours,
        quarantine is not None,
        words is not None,
        adding is not None,
        _ANIMALS.search(folded) is not None or (bag is not None and _floats(folded)),
        named[0] if named else None,
        rest,
    )


def _floats(folded: str) -> bool:
    return _FLOATING.search(folded) is not None


def _hours(folded: str) -> tuple[float | None, str]:
    """How long the bag has been closed, and the text without that."""
    found = _HOURS.search(folded)
    if found is None:
        return (BY_POST if _POST.search(folded) else None), folded
    said = {"an": 1.0, "one": 1.0, "half an": 0.5}.get(found[1])
    number = said if said is not None else float(found[1].replace(",", "."))
    if found[2].startswith("min"):
        number /= 60.0
    return number, folded[: found.start()] + " , " + folded[found.end() :]


def _parted(folded: str, context: Context) -> tuple[str, tuple[Value, ...], Parsed | None]:
    """The text beside the bag's water, the bag's values, and what is told of a tank's water."""
    names = "|".join(re.escape(fold(name)) for name in sorted(context.tanks, key=len, reverse=True))
    here = re.compile(rf"\b(?:{_HERE}{'|' + names if names else ''})\b")
    places = sorted(
        [(m.start(), m.end(), "bag") for m in _BAG.finditer(folded)]
        + [(m.start(), m.end(), "tank") for m in here.finditer(folded)]
    )
    beside = folded[: places[0][0]] if places else folded
    values: list[Value] = []
    rest: Parsed | None = None
    for index, (start, end, whose) in enumerate(places):
        until = places[index + 1][0] if index + 1 < len(places) else len(folded)
        said = folded[end:until]
        if whose == "tank":
            told = parse(folded[start:end] + " " + _LEADING.sub("", said), context)
            rest = told if told.values and told.tank is not None else rest
            beside += " " + said
            continue
        before = "" if values else _last_clause(beside)
        found = max(
            _values(said, context),
            _values(f"{before} {_LEADING.sub('', said)}", context),
            key=len,
        )
        values += found
        beside += " , " if found else " " + said
    return beside, tuple(values), rest


def _values(said: str, context: Context) -> list[Value]:
    """Values from the first name of one on: the words before it are about bag and animals."""
    names = [
        token.start
        for token in cut(said, lexicon())
        if token.kind == "analyte" or (token.kind == "unit" and "SG" in str(token.value))
    ]
    if not names:
        return []
    alone = replace(context, tanks=(), group=False)
    told = _ASKING.split(said[names[0] :], maxsplit=1)[0]
    return list(parse(told, alone).values)


def _last_clause(text: str) -> str:
    """What stands behind the last stop: `ph in the bag` begins before the bag."""
    clause = re.split(r"[,;\n!?]|\.(?!\d)", text)[-1]
    return clause.removesuffix(" in the ").removesuffix(" of the ")


def gets_used(text: str) -> bool:
    """Whether a text asks how animals get used to a tank's water, named or not; plants do not.

    Examples
    --------
    >>> gets_used("how do i acclimate"), gets_used("Wie gewöhne ich sie ein?"), gets_used("kh 4")
    (True, True, False)
    """
    plain = fold(text)
    if len(text) > LONGEST or _GETTING_USED.search(plain) is None or plants.named(text):
        return False
    return "?" in text or _ASKING.search(plain) is not None
