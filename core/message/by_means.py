"""Values told together with what shall bring them: `gh 12 with epsom salt`, `for 4 dkh 9 g`.

means = value with { light } [ amount ] substance | with { light } substance value | for value grams

Such a value is wished for, in whatever language; told of a deed, of a time, or of what is in the
water already (`ph 6.8 with peat in the filter`) it was measured. The words stand in
``by_means.txt``.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from itertools import islice
from typing import Final

from core.message import bought, doubts, quantities
from core.message.amounts import GRAMS, MILLILITRES, SPOONS
from core.message.candidates import Candidate
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Context
from core.message.state import Line, Statement
from core.message.tokens import cut
from core.message.waters import mentioned, one_of
from core.message.wordfile import spelt

_SECTIONS: Final = ("with", "light", "for", "held")
_BRINGS: Final = {
    "calcium": "calcium chloride dihydrate",
    "magnesium": "magnesium sulfate heptahydrate",
    "potassium": "",
    "iron": "",
}
"""Names of what is measured that a keeper also calls a salt by, where no number follows: ours."""
_WEIGHED: Final = frozenset({*GRAMS, *MILLILITRES, *SPOONS})
_LOOKED_AT: Final = 12
"""Tokens behind a value among which its means stand."""
_MOST: Final = 8
"""Words that may lead to the means in one line which are looked at."""
_BEFORE: Final = 20
"""Characters before a value among which a word of its purpose stands."""


@dataclass(frozen=True, slots=True)
class Means:
    """The thing that shall bring a value, as said, and where all of it stands in a text.

    `name` is our name of it; both are empty where an element stands for a salt that was not told.
    """

    said: str
    start: int
    end: int
    name: str = ""

    def is_behind(self, candidate: Candidate) -> bool:
        """Whether it is named behind a value."""
        return candidate.start < self.start


@cache
def _words() -> dict[str, str]:
    """Each section's words as one pattern, the longest first.

    Raises
    ------
    ValueError
        If a line has no ``=`` or stands in no section.
    """
    found: dict[str, list[str]] = {section: [] for section in _SECTIONS}
    for section, _language, ways in spelt("by_means.txt", found):
        found[section] += ways
    return {section: one_of(ways) for section, ways in found.items()}


@cache
def _patterns() -> tuple[re.Pattern[str], re.Pattern[str], re.Pattern[str]]:
    """What leads to the means, what tells of now, and a word of purpose right before a value."""
    words = _words()
    lead = rf"(?<!\w)(?:{words['with']})(?!\w)/?(?:[\s']+(?:{words['light']})(?!\w))*[\s']*"
    return (
        re.compile(lead),
        re.compile(rf"(?<!\w)(?:{words['held']})(?!\w)"),
        re.compile(rf"(?<!\w)(?:{words['for']})\s+$"),
    )


def without(text: str, context: Context | None = None) -> tuple[str, Means] | None:
    """A text without its words of means, and those; None where it names none.

    `context` has the products that the chat knows by name.

    Examples
    --------
    >>> without("and gh 12 with epsom salt?")[0], without("kh 5 mit Natron")[1].said
    ('and gh 12 ?', 'Natron')
    >>> without("gh 12 with kh 4") is None, without("gh 12") is None
    (True, True)
    """
    plain = fold(text)
    for lead in islice(_patterns()[0].finditer(plain), _MOST):
        if (means := _at(text, plain, lead.start(), lead.end(), context)) is not None:
            return f"{text[: means.start]}{text[means.end :].lstrip(' ')}", means
    return None


def without_water(text: str) -> tuple[str, Means] | None:
    """A text without the water at its end that shall bring a value, and that; None without one.

    Examples
    --------
    >>> without_water("and gh 6 with ro?")[1].said, without_water("tap kh 6 with it") is None
    ('ro', True)
    """
    plain = fold(text)
    for lead in islice(_patterns()[0].finditer(plain), _MOST):
        named = mentioned(text[lead.end() :])
        if named and not named[0][0] and not text[lead.end() + named[-1][1] :].strip(" ?!."):
            end = lead.end() + named[-1][1]
            return text[: lead.start()] + text[end:], Means(
                text[lead.end() : end], lead.start(), end
            )
    return None


def _at(text: str, plain: str, start: int, place: int, context: Context | None) -> Means | None:
    """The means that are named at a place, behind their amount at most."""
    tokens = cut(plain[place:], lexicon(), text[place:], most=_LOOKED_AT)
    if context is not None and (context.products or context.spoken_of):
        tokens = bought.mark(tokens, plain[place:], context.products, context.spoken_of)
    amount = quantities.read(tokens, 0) if tokens else None
    first = 0
    if amount is not None and amount.unit in _WEIGHED:
        first = amount.last
        while first < len(tokens) and tokens[first].kind == "fill":
            first += 1
    if first >= len(tokens):
        return None
    thing, behind = tokens[first], tokens[first + 1 : first + 2]
    element = str(thing.value).partition("@")[0]
    named = element in _BRINGS and thing.kind == "analyte"
    if named and behind and (behind[0].kind in {"number", "count"} or behind[0].value == "link"):
        return None  # with calcium 40: a reading
    if thing.kind != "substance" and not named:
        return None
    name = _BRINGS[element] if named else str(thing.value)
    said = name if named else text[place + thing.start : place + thing.end]
    return Means(said, start, place + thing.end, name)


def mark(line: Line, candidates: list[Candidate], state: Statement) -> None:
    """Make wishes of the values of a line that are told with what shall bring them."""
    if not candidates or line.moments:
        return
    if any(found.purpose for _, found in line.events):  # kh 4 for a 20 l change
        for candidate in candidates:
            candidate.problem, candidate.choices = doubts.WISH, ()
        return
    if any(found.later for _, found in line.events):  # kh was 9 before the water change
        for candidate in candidates:
            candidate.problem, candidate.choices = doubts.PAST, ()
        return
    first, last = _span(candidates, state.source)
    said = state.source[first:last]
    plain = fold(said)
    if _patterns()[1].search(plain) is not None:
        return
    if not line.events:
        for lead in islice(_patterns()[0].finditer(plain), _MOST):
            means = _at(said, plain, lead.start(), lead.end(), state.context)
            if means is not None:
                placed = Means(means.said, first + means.start, first + means.end)
                _bring(line, candidates, placed)
    grams = any(_is_mass(each, state) for clause in line.clauses for each in clause.trouble)
    if grams or line.events:
        for candidate in candidates:
            before = state.source[max(candidate.start - _BEFORE, 0) : candidate.start]
            if _patterns()[2].search(fold(before)) is not None:
                candidate.problem, candidate.choices = doubts.WISH, ()
                for clause in line.clauses:
                    clause.trouble = [each for each in clause.trouble if not _is_mass(each, state)]


def _span(candidates: list[Candidate], source: str) -> tuple[int, int]:
    """Where the line of some values begins and ends."""
    first = min(candidate.start for candidate in candidates)
    last = max(candidate.end for candidate in candidates)
    end = source.find("\n", last)
    return source.rfind("\n", 0, first) + 1, len(source) if end < 0 else end


def _is_mass(trouble: tuple[int, int, str], state: Statement) -> bool:
    """Whether a number without a name is so much of a thing."""
    said = state.source[trouble[0] : trouble[1]]
    tokens = cut(fold(said), lexicon(), said)
    quantity = quantities.read(tokens, 0) if tokens else None
    return quantity is not None and quantity.unit in _WEIGHED


def _bring(line: Line, candidates: list[Candidate], means: Means) -> None:
    """Mark the values right before the means, else those right behind."""
    for clause in line.clauses:
        clause.trouble = [t for t in clause.trouble if not means.start <= t[0] < means.end]
        for each in [c for c in clause.candidates if means.start <= c.start < means.end]:
            clause.candidates.remove(each)  # the amount of the thing
            candidates.remove(each)
    before = [c for c in line.clauses if any(map(means.is_behind, c.candidates))]
    behind = [c for c in line.clauses if any(each.start >= means.end for each in c.candidates)]
    for clause in before[-1:] or behind[:1]:
        for candidate in clause.candidates:
            candidate.problem, candidate.choices = doubts.WISH, ()
            candidate.means = means.said if len(clause.candidates) == 1 else ""
