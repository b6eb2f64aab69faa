"""A dose told to be in a tank, be it the right one: `i poured the small tank's dose in Big`.

telling = deed with tank of it, tank that got it
deed = a word for putting in, or how it got there

What stands before a tank tells whose the dose was and where it went; of two tanks the one tells
the other. Every other word must be one that is said of a plan's parts, or light.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache, lru_cache
from typing import Final, Literal, NamedTuple

from core.message import deed_asked
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.meant import sizes
from core.message.plan_said import behind_lead, said_of_plan
from core.message.tokens import cut
from core.message.waters import one_of
from core.message.wordfile import spelt

LONGEST: Final = 160
"""Longer messages tell more than one thing."""

Role = Literal["of", "into"]

_ALLOWED: Final = frozenset(
    {"put", "give", "part", "place", "was", "is", "inside", "now", "all", "rest", "two", "double",
     "no"}
)  # fmt: skip
_MANY: Final = ("double", "two", "all", "rest")
_REGRET: Final = re.compile(
    r"^(?:(?:nein|nee|nej)\b[ ,.!]*|(?:no|non|nao|nie)(?:[,.!]+ *| (?=(?:i|we|it|that)\b)))"
)
"""A no before the deed; in some languages the word alone tells that it was not done."""

_DID: Final = re.compile(r"did (?:it|that|this) (?:in|into|to|on)\b")
"""The deed of `did it in quarry`, where `did it go in` asks."""

_SENTENCES: Final = re.compile(r"(?<=[.!;\n])\s+|\n")
_NOT: Final = frozenset({"not", "order"})

_THERE: Final = "\x00"
_NEGATED: Final = re.compile(
    r"\b(?:(?:not|nicht|pas|non|nao|niet|nie|inte|never|jamais)\b|no\b(?! *\x00))"  # pt: in the
)
_UNDONE: Final = frozenset({"if", "wish", "not", "may", "does", "whether", "why", "when"})
SIZED: Final = "size:"
"""Before a tank that is told by its size, or as the other one."""

_A_DOSE: Final = "the dose "


class Misput(NamedTuple):
    """A dose that is in a tank: each tank by its name, or big, small, other behind `size:`.

    `many` is double, two or all where more than a part is told; `later` where it is the second or
    a later one; `was` where no word for the deed stands, so that it puts right what was told;
    `regretted` where it begins with a word of regret.
    """

    of: str | None = None
    into: str | None = None
    wrong: bool = False
    grams: float | None = None
    substance: str | None = None
    many: str | None = None
    later: bool = False
    was: bool = False
    regretted: bool = False

    @property
    def tells_both(self) -> bool:
        """Whether it went elsewhere than it was meant to go."""
        return self.wrong or (self.of is not None and self.into not in {None, self.of})


@cache
def _ways(meaning: str) -> frozenset[str]:
    told = spelt("misput.txt", {"word"})
    return frozenset(way for _section, of, these in told if of == meaning for way in these)


@cache
def _any(*meanings: str) -> re.Pattern[str]:
    words = one_of(way for meaning in meanings for way in _ways(meaning))
    return re.compile(rf"(?<![\w'])(?:{words})(?!\w)")


@lru_cache(maxsize=512)
def _mentions(tanks: tuple[str, ...]) -> re.Pattern[str]:
    """A tank by its name or its size, with a word for it and a genitive."""
    names = "|".join(
        re.escape(plain) for each in sorted(tanks, key=len, reverse=True) if (plain := fold(each))
    )
    kinds = one_of(_ways("tank"))
    sized = one_of(sizes())
    lead = rf"(?:(?:{kinds}) )?"
    genitive = r"'s|s|es"
    return re.compile(
        rf"(?<![\w'-])(?:{lead}(?P<name>{names})(?P<own>{genitive})?"
        rf"(?:[ -](?:{kinds})(?P<its>{genitive})?)?"
        rf"|(?P<size>{sized}) (?:{kinds})(?P<of>{genitive})?)(?!\w)"
    )


def misput(text: str, tanks: Sequence[str]) -> Misput | None:
    """What a text tells of a dose and the tank that got it; None where that is not all it tells.

    Examples
    --------
    >>> said = misput("i poured the small tanks dose in Big", ["Small", "Big"])
    >>> said.of, said.into, misput("gave ferns dose to quarry by mistake", ["Fern", "Quarry"])[:2]
    ('Small', 'Big', ('Fern', 'Quarry'))
    >>> misput("oh no i gave it to quarry not fern", ["Fern", "Quarry"])[:2]
    ('Fern', 'Quarry')
    >>> misput("i put it in the wrong tank", ["Fern", "Quarry"]).wrong
    True
    >>> misput("ok put it in. oh no wait i put it in quarry!!", ["Fern", "Quarry"]).into
    'Quarry'
    >>> misput("can i put ferns dose in quarry?", ["Fern", "Quarry"]) is None
    True
    """
    if len(text) > LONGEST or "?" in text or not tanks:
        return None
    return _of_sentence(text, tanks) or _put_right(text, tanks)


def _put_right(text: str, tanks: Sequence[str]) -> Misput | None:
    """Of a deed and a sentence that regrets it, what that one tells: where it really went."""
    *told, last = [each for each in _SENTENCES.split(text.strip()) if each.strip(" .!,")] or [""]
    if not told or _regret_of(last) is None:
        return None
    before = " ".join(told)
    said = said_of_plan(before)
    plainly = said is not None and "put" in said.classes and not (said.asks or said.classes & _NOT)
    return _of_sentence(last, tanks) if plainly and not _mentioned(before, tanks) else None


def _regret_of(text: str) -> str | None:
    """What stands behind a word of regret; None where a text begins with none."""
    return behind_lead(text, "regret", "wait")


def _mentioned(text: str, tanks: Sequence[str]) -> bool:
    return _mentions(tuple(tanks)).search(fold(text)) is not None


def _of_sentence(text: str, tanks: Sequence[str]) -> Misput | None:
    """What one sentence tells of a dose and the tank that got it."""
    asks = deed_asked.begins_as_question(text) and not _DID.match(fold(text).lstrip())
    if asks:
        return None
    regret = _regret_of(text)
    plain = regret or " ".join(fold(text).split())
    plain = _REGRET.sub("", plain)
    mentions = _mentions(tuple(tanks))
    bare = _any("wrong").sub(_THERE, plain)
    wrong, plain = bare != plain, bare
    found = list(mentions.finditer(plain))
    if not found and not wrong:
        return None
    rest = plain
    for each in reversed(found):
        own = _dose_behind(plain, each)  # `dos` is two in another language
        rest = f"{rest[: each.start()]} {_A_DOSE if own else ''}{rest[own or each.end() :]}"
    told = _told(rest.replace(_THERE, ""), wrong=wrong)
    if told is None or not _done(mentions.sub(_THERE, plain)):
        return None
    by_plain = {fold(each): each for each in tanks}
    named = [
        by_plain[each["name"]] if each["name"] else SIZED + sizes()[each["size"]] for each in found
    ]
    placed = _placed(named, [_role(plain, each) for each in found])
    if placed is None:
        return None
    told = told._replace(of=placed[0], into=placed[1], regretted=regret is not None)
    other = told.of is not None and told.of != told.into
    if other and (not _is_dose(rest) or (told.into is None and _any("instead").search(plain))):
        return None  # i put fern in quarry, not in fern
    return told


def _done(plain: str) -> bool:
    """Whether it is no question, no wish and not what was left undone."""
    plain = _not_there().sub(" ", plain)
    if _NEGATED.search(plain):
        return False
    return not any(
        token.value in _UNDONE or (token.kind == "ask" and token.value != "dose")
        for token in cut(plain, lexicon(), plain)
    )


def _dose_behind(plain: str, found: re.Match[str]) -> int | None:
    """Where a word for a dose ends that stands right behind a tank; None where none does."""
    behind = _patterns().dose.match(plain, found.end())
    return None if behind is None else behind.end()


def _is_dose(rest: str) -> bool:
    """Whether a dose, a substance or where it did not go is told beside the tanks."""
    said_so = _any("dose", "instead").search(rest) is not None or _A_DOSE in rest
    return said_so or any(token.kind == "substance" for token in cut(rest, lexicon(), rest))


def _role(plain: str, found: re.Match[str]) -> Role | None:
    """Whether the dose was a tank's or went into it, by the words at its sides."""
    if found["own"] or found["its"] or found["of"]:
        return "of"
    if _dose_behind(plain, found):
        return "of"
    before = plain[: found.start()].rstrip(" -")
    run = _patterns().run.search(before + " ")
    if run is None:
        return "of" if _patterns().dose_last.search(before) else None
    first = _patterns().place.search(run[0])
    if first is None:
        return None
    return "of" if first["of"] else "into"


class _Patterns(NamedTuple):
    """What stands before a tank: words for a place in a row, the first of them, a dose; behind."""

    run: re.Pattern[str]
    place: re.Pattern[str]
    dose_last: re.Pattern[str]
    dose: re.Pattern[str]


@cache
def _patterns() -> _Patterns:
    of, into, dose = _ways("of") | _ways("instead"), _ways("into"), one_of(_ways("dose"))
    before = one_of(of | into | _ways("tank") | _light())
    return _Patterns(
        re.compile(rf"(?:(?:^|(?<=[ ,]))(?:{before})[ ,]+)+$"),
        re.compile(rf"(?<!\w)(?:(?P<of>{one_of(of)})|(?P<into>{one_of(into)}))(?!\w)"),
        re.compile(rf"(?:{dose})$"),
        re.compile(rf"[ -]?(?:{dose})(?!\w)"),
    )


@cache
def _not_there() -> re.Pattern[str]:
    """A tank, behind what says that it went elsewhere."""
    between = one_of(_ways("into") | _light())
    return re.compile(rf"(?<!\w)(?:{one_of(_ways('instead'))}) (?:(?:{between}) ?)*{_THERE}")


@cache
def _light() -> frozenset[str]:
    """Articles, and prepositions that may be both."""
    return frozenset(
        {"the", "my", "der", "die", "das", "den", "dem", "le", "la", "l'", "el", "lo", "o", "il",
         "het", "de", "do", "para", "min", "mitt", "one", "mein", "meinem", "mijn", "mon", "mi"}
    )  # fmt: skip


def _placed(
    named: Sequence[str], roles: Sequence[Role | None]
) -> tuple[str | None, str | None] | None:
    """The tank of the dose and the one that got it; None where more than two are named."""
    if len(set(named)) > 2 or len(named) > 3:
        return None
    of = next((name for name, role in zip(named, roles, strict=True) if role == "of"), None)
    into = next((name for name, role in zip(named, roles, strict=True) if role == "into"), None)
    open_ = [name for name in dict.fromkeys(named) if name not in {of, into}]
    if open_ and into is None:
        into = open_.pop(-1 if of is None else 0)
    if open_ and of is None:
        of = open_.pop(0)
    return of, into


def _told(rest: str, *, wrong: bool) -> Misput | None:
    """What the words beside the tanks tell."""
    substances = [t for t in cut(rest, lexicon(), rest) if t.kind == "substance"]
    went = _any("went").search(rest) is not None
    bare = " ".join(_any("went", "beside", "into", "of", "instead", "tank").sub(" ", rest).split())
    said = said_of_plan(rest) or said_of_plan(bare) if bare.strip(" ,.!") else None
    if bare.strip(" ,.!") and (said is None or said.classes - _ALLOWED):
        return None
    classes = frozenset() if said is None else said.classes
    deed = went or "put" in classes
    if not deed and not classes & {"was", "no"}:
        return None
    names = {str(token.value) for token in substances}
    return Misput(
        wrong=wrong,
        grams=None if said is None else said.amounts.grams,
        substance=names.pop() if len(names) == 1 else None,
        many=next((many for many in _MANY if many in classes), None),
        later="place" in classes and _any("first").search(rest) is None,
        was=not deed,
    )
