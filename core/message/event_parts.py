"""What one event is made of, and whether that makes sense."""

from __future__ import annotations

from dataclasses import dataclass, field

from core.message import doubts, herd, kinds
from core.message.fold import fold
from core.message.model import Doubt, Event
from core.message.tokens import Token
from core.substances import MEDIA

MOST_ANIMALS = 1_000_000
"""More of them are a slip of the finger in any pond."""


@dataclass(slots=True)
class Found:
    """An event in tokens `first` to `last` (exclusive), or the doubt about it.

    `kind` and `word` are those of the word that told it, of which more may follow; `purpose` tells
    that something is prepared for it, `later` that what stands beside it was before it.
    """

    first: int
    last: int
    kind: str = ""
    word: str = ""
    event: Event | None = None
    doubt: Doubt | None = None
    purpose: bool = False
    later: bool = False


@dataclass(slots=True)
class Parts:
    """The amounts and words of one event."""

    kind: str
    start: int
    end: int
    percent: float | None = None
    litres: float | None = None
    grams: float | None = None
    millilitres: float | None = None
    spoons: float | None = None
    count: int | None = None
    bare: float | None = None
    substance: str | None = None
    unknown: list[Token] = field(default_factory=list)
    named: list[Token] = field(default_factory=list)
    unsure: bool = False
    part: bool = False
    """Whether the percentage is a part in words, half, of nobody knows how much of a thing."""
    share_end: int = 0
    heavy: bool = False
    water: bool = False
    word: str = ""
    """The word that tells the event."""
    before: int = 0
    """How many of the unknown words stand before the number."""
    each: int = 1
    """How many are in what is counted: 2 pairs are four."""
    grouped: bool = False
    all: bool = False
    half: bool = False
    spared: int | None = None
    """How many words stood before that of those who live: all died except 2."""
    whither: bool = False
    """Whether a word for the way was read, so that names of places follow."""
    to_tank: bool = False
    denied: bool = False
    """Whether a word before it says that it was not done."""
    weighed: int = 0
    """How many amounts of a thing that is put in were read."""
    parents: str | None = None
    """Whose young are told of, where that stands before the event."""


_BY_THE_KILO = frozenset({"sea salt", "sodium chloride"})
_BY_SHARE = frozenset({"sea salt", "sodium chloride"})
"""Salts told by their share of the water: salt to 0.3 %."""


def added(parts: Parts) -> str:
    """The kind of what was added, or given: media, a dose or animals."""
    if parts.substance in MEDIA and parts.kind == "added":
        return "media"
    weighed = (parts.grams, parts.millilitres, parts.spoons)
    if parts.substance is not None or any(amount is not None for amount in weighed):
        return "dose"
    return parts.kind


def judge(kind: str, parts: Parts, species: str | None = None) -> str | None:
    """None where the event is sound, "" where it is none at all, else why it is doubtful."""
    amounts = (parts.percent, parts.litres)
    if kind in {"water_change", "top_up"}:
        if parts.bare is not None or parts.unknown:
            asked = parts.water or any(amount is not None for amount in amounts)
            return doubts.UNSURE_EVENT if asked or parts.bare is not None else ""
        if any(a is not None for a in (parts.spoons, parts.grams, parts.millilitres)):
            return doubts.UNSURE_EVENT
        if not parts.water and all(amount is None for amount in amounts):
            return ""
        if parts.percent is not None and not 0 < parts.percent <= 100:
            return doubts.IMPLAUSIBLE
        return None
    if kind in kinds.OF_ANIMALS:
        return _judge_animals(kind, parts, species)
    if kind == "dose":
        if _is_slip(parts) or (parts.heavy and parts.substance not in _BY_THE_KILO):
            return doubts.UNSURE_EVENT  # a letter too many or too few: g, kg, mg, ml, l
        salted = parts.substance in _BY_SHARE and not parts.unknown and not parts.part
        if parts.bare is not None or (parts.percent is not None and not salted):
            return doubts.UNSURE_EVENT
        if parts.substance is None and not parts.unknown:
            return doubts.UNSURE_EVENT
    return None


LEAST_TANK = 10.0
"""Litres from which on so much of a thing went into a tank, not a jug; common practice."""


def _is_slip(parts: Parts) -> bool:
    """Whether litres are told of a dose that are not those of the tank it went into."""
    place = parts.grams is not None and parts.substance is not None
    return parts.litres is not None and not (place and parts.litres >= LEAST_TANK)


def _judge_animals(kind: str, parts: Parts, species: str | None) -> str | None:
    if kind in kinds.WEAK and not _is_of_animals(species):
        return ""  # people sell, and bear, other things
    if parts.litres is not None or parts.percent is not None:
        return doubts.UNSURE_EVENT
    untold = parts.bare is None and parts.count is None
    if not parts.unknown and untold and not (parts.all and kind != "added"):
        return ""
    if parts.bare is not None and (parts.bare != int(parts.bare) or parts.bare <= 0):
        return doubts.NO_NUMBER if parts.unknown else doubts.UNSURE_EVENT
    if parts.bare is not None and parts.bare > MOST_ANIMALS:
        return doubts.IMPLAUSIBLE
    spared = parts.spared is not None
    if spared and (untold or not parts.all or len(parts.unknown) > (parts.spared or 0)):
        return doubts.UNSURE_EVENT  # all died except the old ones
    if kind in {"lost", "missing"} and species is not None and kinds.names_thing(species):
        return ""  # the heater is dead
    if kind in {"lost", "missing"}:
        return None  # of what kind the dead are may be asked later
    known = _is_of_animals(species) or _are_young(species)
    if kind in {"moved", "given"} and (parts.all or (untold and known)):
        return None  # how many is on record
    if untold and not parts.unsure and (_is_of_animals(species) or nearest_kinds(species)):
        return doubts.NO_NUMBER
    return None if parts.unknown and not untold else doubts.UNSURE_EVENT


def _is_of_animals(species: str | None) -> bool:
    return species is not None and (kinds.names_animal(species) or kinds.names_any(species))


def _are_young(species: str | None) -> bool:
    """Whether only the age is told: the fry."""
    words = fold(species or "").split()
    return bool(words) and all(herd.saying(word) == "young" for word in words)


def nearest_kinds(species: str | None) -> tuple[str, ...]:
    """Names of the animals that a misspelt name is nearest to."""
    return kinds.nearest(species) if species else ()


def doubt(parts: Parts, problem: str, source: str) -> Doubt:
    """The doubt about an event, with what a change of water may have been."""
    fragment = source[parts.start : parts.end]
    choices: tuple[str, ...] = ()
    bare = parts.bare is not None and parts.substance is None
    if parts.denied:
        return Doubt(fragment, parts.start, parts.end, problem)  # no button may put it on record
    if parts.kind == "water_change" and bare and not parts.unknown:
        choices = (f"changed {parts.bare:.6g} %", f"changed {parts.bare:.6g} l")
    two = parts.weighed > 1 and len({token.value for token in parts.named}) > 1
    if parts.kind == "dose" and not two and (told := _plainly_dosed(parts)) is not None:
        choices = (told,)
    if problem == doubts.NO_NUMBER:
        said = source_words(parts.unknown, source)
        choices = tuple(fragment.replace(said, name) for name in nearest_kinds(said))
    return Doubt(
        fragment, parts.start, parts.end, problem, choices[0] if choices else None, None, choices
    )


def _plainly_dosed(parts: Parts) -> str | None:
    """A dose of so much of a known substance as it is told beyond doubt; None for any other."""
    if parts.substance is None or parts.unknown or judge("dose", parts) is not None:
        return None
    grams, ml = parts.grams, parts.millilitres
    amount = f"{grams:.6g} g" if grams is not None else f"{ml:.6g} ml" if ml is not None else None
    return None if amount is None else f"dosed {amount} {parts.substance}"


def source_words(tokens: list[Token], source: str) -> str:
    """Words as the keeper wrote them, one blank between; an apostrophe stays (guppy's)."""
    text = ""
    for index, token in enumerate(tokens):
        gap = source[tokens[index - 1].end : token.start] if index else ""
        text += gap if gap in {"'", "’"} else " " if index else ""
        text += source[token.start : token.end]
    return text
