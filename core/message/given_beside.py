"""A deed of a plan beside values, or with a bare number: `kh 3.5 ok given`, `gave the 2.7`."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from itertools import pairwise
from typing import Final, NamedTuple

from core.message.asking_words import asks
from core.message.fold import fold
from core.message.gave_told import deed_alone, gave, names_other
from core.message.lexicon import lexicon
from core.message.plan_said import only_asks
from core.message.plan_words import Heard, telling
from core.message.tokens import cut

LONGEST: Final = 120
"""A longer text says more. [characters]"""

DEEDS: Final = frozenset({"gave_it", "gave_one", "gave_two", "gave_half", "gave_all"})

_EDGES: Final = " \t,;.:!-&+"
_NUMBER: Final = re.compile(r"(?<![\w.,])\d{1,5}(?:[.,]\d{1,3})?(?![\w.,%]|\s?%)")


class Beside(NamedTuple):
    """The values of a text, the deed that all its other words tell, and which of both is first."""

    values: str
    deed: str
    heard: Heard
    deed_first: bool = False


def beside_values(text: str) -> Beside | None:
    """The values of a text and the deed that stands before or behind them; else None.

    Examples
    --------
    >>> beside_values("kh 3.5 ok given")[:2], beside_values("gave it, kh is 4 now")[:2]
    (('kh 3.5', 'ok given'), ('kh is 4 now', 'gave it'))
    >>> beside_values("kh 3.5 ok"), beside_values("gave it"), beside_values("kh 4 given?")
    (None, None, None)
    """
    if "?" in text or len(text) > LONGEST or len(plain := fold(text)) != len(text):
        return None
    tokens = cut(plain, lexicon(), plain)
    named = [place for place, each in enumerate(tokens) if each.kind == "analyte"]
    if not named:
        return None
    start = tokens[named[0]].start
    if (heard := _deed(text[:start])) is not None:
        return Beside(text[start:].strip(_EDGES), text[:start].strip(_EDGES), heard, True)
    for before, token in pairwise(tokens):
        if before.kind in {"number", "unit"} and token.kind not in {"number", "unit"}:
            behind = text[token.start :].strip(_EDGES)
            if (heard := _deed(behind)) is not None:
                return Beside(text[: before.end].strip(_EDGES), behind, heard)
    return None


class Early(NamedTuple):
    """A test soon after a dose: its words as a reading, and how long after, where that is told."""

    values: str
    minutes: float | None


def read_early(text: str) -> Early | None:
    """The test of a value that a dose is told to have moved; None where no such is told.

    Examples
    --------
    >>> read_early("kh only went to 3 its been 2 min. how much more to 6")
    Early(values='kh is 3', minutes=2.0)
    >>> read_early("kh is 3.5, been 10 mins"), read_early("its been 20 min and kh 4 now")
    (Early(values='kh is 3.5', minutes=10.0), Early(values='kh 4 now', minutes=20.0))
    >>> read_early("kh is 3"), read_early("how long til kh only gets to 3")
    (None, None)
    >>> read_early("kh was 2 2 hours ago"), read_early("been 20 min since the water change, kh 3")
    (None, None)
    """
    plain = " ".join(fold(text).replace("’", "'").split())
    if len(plain) > LONGEST or _ASKED_FIRST.match(plain) or names_other(plain):
        return None
    found = _MINUTES.search(plain)
    said = None if found is None else found.group("n") or found.group("m")
    minutes = None if said is None else float(said.replace(",", "."))
    if found is not None and (found.group("h") or found.group("i")):
        minutes = minutes and minutes * 60.0
    if minutes is not None and minutes > SOON_MIN:
        return None
    rest = plain if found is None else f"{plain[: found.start()]}. {plain[found.end() :]}"
    told = next(
        (
            part
            for part in re.split(r"[.;,!?]\s+|[?!]$", rest)
            if _names_value(_ROSE.sub(" is ", part))
        ),
        None,
    )
    if told is None or (found is None and _ONLY_ROSE.search(told) is None):
        return None
    return Early(re.sub(r"^(?:and|but|so) ", "", _ROSE.sub(" is ", told).strip(_EDGES)), minutes)


def _names_value(part: str) -> bool:
    """Whether a number stands behind the name of a value, or behind the word that ties both."""
    tokens = cut(part, lexicon(), part)
    return any(
        each.kind == "analyte" and any(near.kind == "number" for near in tokens[at + 1 : at + 3])
        for at, each in enumerate(tokens)
    )


SOON_MIN: Final = 120.0
"""So long after a dose a test of it is too early; ours. [min]"""

_GOT: Final = (
    r"(?:went|gone|got|gets|came|come|climbed|rose|risen|moved|jumped|made it|ist|ging|stieg)"
)
_ROSE: Final = re.compile(
    rf"\s(?:has |have |is )?(?:only |just |barely |nur |erst )?{_GOT}(?: only| just| nur)?"
    r"(?: up| auf)?(?: to| at| auf)?\s(?=\d)"
)
_ONLY_ROSE: Final = re.compile(
    rf"\s(?:only|just|barely|nur|erst) {_GOT}|\s{_GOT} (?:only|just|nur)\s"
)
_TIME: Final = (
    r"(?P<{n}>\d{{1,3}}(?:[.,]\d)?)\s?"
    r"(?:min|mins|minute|minutes|minuten|(?P<{h}>h|hr|hrs|hour|hours))"
)
_MINUTES: Final = re.compile(
    r"[\s,.;]{0,3}(?:\b(?:and|but|so) )?\b(?:"
    r"(?:(?:it's|its|it has|it is|thats|that's) )?(?:(?:only|just) )?(?:been|after|nach)"
    rf" (?:(?:only|just|about|like|etwa) )?{_TIME.format(n='n', h='h')}"
    rf"|{_TIME.format(n='m', h='i')} (?:later|after|in|since|spater))\b"
    r"(?:\s(?:now|later|after|since)\b)?(?:\s(?:the )?(?:dose|it|i put it in)\b)?"
)
_ASKED_FIRST: Final = re.compile(r"(?:how|what|when|will|would|does|do|can|should|if|wait|test)\b")


class Next(NamedTuple):
    """A deed of a plan, and what is told behind it that is of another."""

    deed: str
    heard: Heard
    behind: str


def then_another(text: str) -> Next | None:
    """A part that went in and, behind it, that somebody else put some in too; else None.

    Examples
    --------
    >>> then_another("done. she did too at the same time oops")[::2]
    ('done', 'she did too at the same time oops')
    >>> then_another("done. she did the dishes"), then_another("she did too")
    (None, None)
    >>> then_another("did i put it in") is None
    True
    """
    if asks(text) or only_asks(text) or len(text) > LONGEST:
        return None
    for joint in _JOINT_OR_STOP.finditer(text):
        deed, behind = text[: joint.start()].strip(_EDGES), text[joint.end() :].strip(_EDGES)
        heard = Heard("gave_it") if fold(deed) == "done" else _deed(deed)
        if heard is not None and (other := gave(behind)) is not None and other.sure:
            return Next(deed, heard, behind)
    return None


def then_later(text: str) -> Next | None:
    """A deed of a plan and the reminder that is asked for behind it; else None.

    Examples
    --------
    >>> then_later("put half in will do other half at 6 tomorrow remind me")[::2]
    ('put half in', 'will do other half at 6 tomorrow remind me')
    >>> then_later("remind me to put half in at 6") is None
    True
    """
    plain = " ".join(text.split())
    deed = deed_alone(plain) if "?" not in text and len(text) <= LONGEST else None
    heard = None if deed is None else _deed(deed)
    if deed is None or heard is None or len(fold(plain)) != len(plain):
        return None
    if _REMIND.search(fold(plain[len(deed) :])) is None:
        return None
    return Next(deed, heard, plain[len(deed) :].strip(_EDGES))


_REMIND: Final = re.compile(
    r"\b(?:remind|reminder|erinner\w*|rappelle|recuerdame|lembra|ricorda\w*|herinner|przypomnij|paminn)"
)
_JOINT_OR_STOP: Final = re.compile(
    r"[.,;!&+]\s+|\s(?:and|und|et|y|e|en|och|n|but|aber)\s", re.IGNORECASE
)


def _deed(text: str) -> Heard | None:
    heard = telling(text.strip(_EDGES))
    return heard if heard is not None and heard.meaning in DEEDS else None


def beside_deed(text: str) -> Iterator[Beside]:
    """A deed of a plan and what is told beside it, parted at a joint; each way to part it.

    Examples
    --------
    >>> [each[:2] for each in beside_deed("changed 20% and gave it")]
    [('changed 20%', 'gave it')]
    """
    if "?" in text or len(text) > LONGEST:
        return
    for joint in _JOINT.finditer(text):
        before, behind = text[: joint.start()].strip(_EDGES), text[joint.end() :].strip(_EDGES)
        if (heard := _deed(behind)) is not None:
            yield Beside(before, behind, heard)
        elif (heard := _deed(before)) is not None:
            yield Beside(behind, before, heard, True)


_JOINT: Final = re.compile(r"[,;&+]|\s(?:and|und|et|y|e|en|i|och|n)\s", re.IGNORECASE)


def tells_value(text: str) -> bool:
    """Whether a text has a number right behind the name of a value: `kh 3.5 no part given`.

    Examples
    --------
    >>> tells_value("kh 3.5 no part given"), tells_value("second part for kh given")
    (True, False)
    """
    plain = fold(text)
    tokens = cut(plain, lexicon(), plain)
    return any(name.kind == "analyte" and told.kind == "number" for name, told in pairwise(tokens))


def of_bare(text: str, unit: Callable[[float], str | None]) -> str | None:
    """A deed told with one bare number, or no more than that, given its unit; else None.

    Examples
    --------
    >>> of_bare("gave the 2.7", lambda number: "g" if number == 2.7 else None)
    'gave the 2.7 g'
    >>> of_bare("kh 2.7", lambda number: "g"), of_bare("gave 3", lambda number: None)
    (None, None)
    """
    plain = " ".join(fold(text).split()).strip(".!")
    found = [] if "?" in text or len(plain) > LONGEST else list(_NUMBER.finditer(plain))
    if len(found) != 1 or (said := unit(float(found[0].group().replace(",", ".")))) is None:
        return None
    if found[0].group() == plain:
        return f"{plain} {said}"
    weighed = f"{plain[: found[0].end()]} {said}{plain[found[0].end() :]}"
    heard: Heard | None = telling(weighed)
    return weighed if heard is not None and heard.meaning in DEEDS else None
