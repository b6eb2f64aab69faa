"""Whether a message calls for help, or asks what is refused or warned of."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Final

from bot.chat.turn import Turn
from core.advice import heater_warmth
from core.advice.calls import (
    HEATED,
    OF_PEOPLE,
    ORDER,
    Danger,
    asks,
    behaves_oddly,
    distressed,
    in_water,
    lives,
    recognise,
)
from core.advice.cautions import touched
from core.advice.forbidden import forbidden
from core.advice.inhabitants import is_animal, listed_in
from core.advice.livestock import lookup
from core.message.model import Event, Parsed, Value
from core.message.nearly_done import nearly
from core.substances import ACIDS

ASKS = re.compile(
    r"\?|^\W*(can|could|may|should|shall|how|what|is|are|do|does|will)\b", re.IGNORECASE
)
QUIET = frozenset({"none", "unclear"})

DOSING: Final = frozenset({"dose", "effect", "convert", "co2"})
"""Questions of which an illness is only the reason: their own topics refuse what must be."""

NEARLY: Final = frozenset(
    {"bleach", "contaminated", "chlorine", "copper", "copper_metal", "overdose"}
)
"""Dangers of what goes into the water: nearly put in, nothing went in."""

NO_ANIMALS: Final = frozenset(
    {"heater", "heater_hot", "heater_cold", "power", "filter", "filter_harmed", "leak", "frozen"}
)
"""Dangers of things: what "died" in such a message is the thing."""


@dataclass(frozen=True, slots=True)
class Call:
    """What a message calls for: steps, a refusal or a caution."""

    danger: Danger | None = None
    refused: str | None = None
    caution: str | None = None

    def __bool__(self) -> bool:
        return not (self.danger is None and self.refused is None and self.caution is None)


def is_danger(turn: Turn, parsed: Parsed) -> bool:
    """Whether a message names a danger, which goes before all else that it may say."""
    if not turn.incoming.addressed or parsed.command is not None:
        return False
    return danger_of(turn, parsed) is not None


def is_call(turn: Turn, parsed: Parsed) -> bool:
    """Whether a message calls for help, or asks what the cautions refuse."""
    return turn.incoming.addressed and bool(found(turn, parsed))


def found(turn: Turn, parsed: Parsed) -> Call:
    """The danger, the refusal and the caution that a message touches."""
    text = turn.incoming.text
    danger = danger_of(turn, parsed)
    if danger is not None:
        return Call(danger)
    if not (parsed.intent in QUIET or _is_vague(parsed)):
        beside = parsed.question is None and behaves_oddly(text)
        return Call("general") if beside else Call()
    call = touched_by(text, asked=parsed.question is not None or _asks(text))
    if call.caution == "snail_plague" and forbidden(text) == "bleach":
        return Call(refused="bleach")  # which is what it would be rid of them by
    if call.refused == "medicine" and parsed.question and parsed.question.kind not in OPEN:
        return Call()  # a level of copper is no dose of it; its own topics refuse the dose
    if not call and _means_nothing(parsed):
        half = touched_by(text, asked=True)  # half a sentence asks as well
        call = Call() if {half.refused, half.caution} & OF_TALK else half
    if call.caution == "spawned" and parsed.doubts:
        return Call()  # how many young there are is asked for
    if call:
        return call
    return Call("general") if parsed.intent in QUIET and distressed(text) else Call()


def touched_by(text: str, *, asked: bool) -> Call:
    """The refusal or the caution that a text touches."""
    caution, refused = touched(text, asked=asked), forbidden(text, asked=asked)
    if refused is not None and caution not in FIRST:
        return Call(refused=refused)
    return Call(caution=caution)


def goes_first(turn: Turn, parsed: Parsed) -> bool:
    """Whether a question is refused or warned of before any topic looks at its other words."""
    if not turn.incoming.addressed or parsed.values or parsed.events:
        return False
    asked = parsed.question
    if asked is not None and asked.substance in ACIDS:
        return False  # refused by its name
    call = touched_by(turn.incoming.text, asked=True)
    tanks = [tank.name for tank in turn.tanks]
    if call.caution == "zoanthids" and listed_in(turn.incoming.text, tanks) is not None:
        return False  # who lives there: 2 clowns and some zoas
    return bool({call.refused, call.caution} & BEFORE_ALL)


BEFORE_ALL: Final = frozenset(
    {"mixing", "battery_acid", "caustic", "zoanthids", "weight", "snail_plague"}
)
"""Refusals and cautions whose words mean nothing else, whatever numbers stand with them."""

OF_TALK: Final = frozenset({"electric", "salmonella", "medicine", "wounds", "human"})
"""Those of which people talk without asking: a plug, the kitchen, what somebody drinks."""


def _asks(text: str) -> bool:
    return ASKS.search(text) is not None or asks(text)


FIRST: Final = frozenset(
    {"hands", "dead_fish", "eaten_by_pet", "no_dechlorinator", "pressure", "evaporation"}
)
"""Cautions that say more than the refusal of the same words would."""


def _is_vague(parsed: Parsed) -> bool:
    """Whether something is asked of which no number is named."""
    asked = parsed.question
    return (
        asked is not None
        and not parsed.values
        and not asked.premises
        and all(getattr(asked, name) is None for name in NUMBERS)
    )


OPEN: Final = frozenset({"safe", "why", "keep", "when"})
"""Questions of which no topic refuses anything by itself."""

NUMBERS: Final = (
    "volume_l",
    "start_value",
    "target",
    "delta",
    "grams",
    "millilitres",
    "spoons",
    "percent",
    "litres",
    "value",
)
"""The numbers of a question."""


def _means_nothing(parsed: Parsed) -> bool:
    """Whether nobody understood a message, and no number of it waits to be asked about."""
    return parsed.intent in QUIET and all(doubt.value is None for doubt in parsed.doubts)


def danger_of(turn: Turn, parsed: Parsed) -> Danger | None:
    """The danger that a message is about, by its words and by what was understood of it."""
    if any(event.kind == "note" for event in parsed.events):
        return None
    danger = _worst(recognise(turn.incoming.text), _in_water(turn, parsed))
    asked = parsed.question
    if danger == "illness" and asked is not None and asked.kind in DOSING:
        return None
    if danger == "co2_high" and _asks(turn.incoming.text):
        return None
    if danger == "maybe_dead" and _counted_dead(turn, parsed):
        return None
    if danger in NEARLY and nearly(turn.incoming.text):
        return None
    if danger == "chlorine" and _measured_no_chlorine(parsed):
        return None
    return danger


def _worst(*dangers: Danger | None) -> Danger | None:
    """Which of some dangers is answered first."""
    return min((each for each in dangers if each is not None), key=ORDER.index, default=None)


def _in_water(turn: Turn, parsed: Parsed) -> Danger | None:
    """What few words tell to be in the water; None where it is a dose, judged by its name."""
    if any(each.kind == "dose" and each.substance in ACIDS for each in parsed.events):
        return None
    return in_water(turn.incoming.text, [each.name for each in turn.tanks])


def _counted_dead(turn: Turn, parsed: Parsed) -> bool:
    """Whether so many are told dead, of none of which it is said that it breathes."""
    dead = any(event.kind == "lost" and event.count is not None for event in parsed.events)
    return dead and not lives(turn.incoming.text)


def _measured_no_chlorine(parsed: Parsed) -> bool:
    """Whether a reading says that there is no chlorine, whatever words stand with it."""
    read = [v for v in parsed.values if v.analyte in {"chlorine", "total_chlorine"}]
    return bool(read) and all(not (v.value or v.high) for v in read)


def with_warmth(turn: Turn, parsed: Parsed) -> Parsed:
    """A call about a heater with the warmth that it tells, which counts no dead: `died 18`."""
    warmth = heater_warmth.told(turn.incoming.text)
    if warmth is None or danger_of(turn, parsed) not in HEATED:
        return parsed
    events = tuple(
        event
        for event in parsed.events
        if event.count != warmth.value or not event.start <= warmth.start < event.end
    )
    parsed = replace(parsed, events=events)
    if any(value.analyte == "temperature" for value in parsed.values):
        return parsed
    value = Value(
        "temperature",
        warmth.value,
        unit=warmth.unit,
        canonical=warmth.celsius,
        canonical_unit="°C",
        start=warmth.start,
        end=warmth.end,
    )
    doubts = tuple(doubt for doubt in parsed.doubts if not doubt.start <= warmth.start < doubt.end)
    return replace(parsed, values=(*parsed.values, value), doubts=doubts)


def without_mishap(turn: Turn, parsed: Parsed) -> Parsed:
    """A message without what the mishap itself looks like: doses of nothing known, dead heaters."""
    danger = recognise(turn.incoming.text)
    kept = tuple(event for event in parsed.events if not _is_mishap(event, danger))
    return replace(parsed, events=kept, doubts=())


def doubtful_beside(parsed: Parsed) -> Parsed | None:
    """The doubtful readings told beside a call for help, to be asked about after its answer."""
    doubts = tuple(doubt for doubt in parsed.doubts if doubt.value is not None)
    if not doubts:
        return None
    return Parsed("unclear", parsed.tank, parsed.at, doubts=doubts)


def _is_mishap(event: Event, danger: Danger | None) -> bool:
    if event.kind == "dose":
        return danger in OF_PEOPLE or not (event.grams or event.millilitres or event.spoons)
    if event.kind == "lost" and danger == "maybe_dead":
        return True
    if event.kind == "lost" and danger in {"contaminated", "general"} and event.count is None:
        return not is_animal(lookup(event.species or ""))  # the dog did what it did; dead smell
    if event.kind in {"lost", "added", "moved"}:
        return danger in OF_PEOPLE or (danger in NO_ANIMALS and event.count is None)
    return False
