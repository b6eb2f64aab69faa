"""Calls for help: answered at once, whatever else a message says."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any, Final

from bot.chat import dose_reply
from bot.chat.model import Reply
from bot.chat.state import CALLED, state_of
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from bot.chat.words import causes, cautions
from bot.chat.words import emergencies as words
from bot.chat.words.text import _
from bot.countries import country_of
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.advice.cautions import touched
from core.advice.emergencies import (
    OF_PEOPLE,
    Danger,
    Help,
    asks,
    distressed,
    gasps,
    help_for,
    lives,
    recognise,
)
from core.advice.findings import Finding, stands
from core.advice.first_aid import NewWater
from core.advice.forbidden import forbidden
from core.advice.plan import Refusal
from core.advice.state import State
from core.message.model import Event, Parsed
from core.substances import ACIDS

ASKS = re.compile(
    r"\?|^\W*(can|could|may|should|shall|how|what|is|are|do|does|will)\b", re.IGNORECASE
)
QUIET = frozenset({"none", "unclear"})

DOSING: Final = frozenset({"dose", "effect", "convert", "co2"})
"""Questions of which an illness is only the reason: their own topics refuse what must be."""

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
    return turn.incoming.addressed and parsed.command is None and _danger(turn, parsed) is not None


def is_call(turn: Turn, parsed: Parsed) -> bool:
    """Whether a message calls for help, or asks what the cautions refuse."""
    return turn.incoming.addressed and bool(_found(turn, parsed))


async def answer(turn: Turn, parsed: Parsed) -> Reply:
    """Answer a call for help, refuse what the cautions refuse, or say the caution itself."""
    first = goes_first(turn, parsed) and _danger(turn, parsed) is None
    call = _touched(turn.incoming.text, asked=True) if first else _found(turn, parsed)
    if call.danger is not None:
        return await _help(turn, parsed, call.danger)
    if call.refused is not None:
        return await dose_reply.refuse(turn, Refusal(call.refused), None)
    name = call.caution or "storage"
    lines = cautions.caution(name)
    return await turn.reply(
        lines, facts={"caution": name}, context={"why": lines}, expects="followup"
    )


def _found(turn: Turn, parsed: Parsed) -> Call:
    """The danger, the refusal and the caution that a message touches."""
    text = turn.incoming.text
    danger = _danger(turn, parsed)
    if danger is not None:
        return Call(danger)
    if not (parsed.intent in QUIET or _is_vague(parsed)):
        return Call()
    call = _touched(text, asked=parsed.question is not None or _asks(text))
    if call.refused == "medicine" and parsed.question and parsed.question.kind not in OPEN:
        return Call()  # a level of copper is no dose of it; its own topics refuse the dose
    if not call and _means_nothing(parsed):
        half = _touched(text, asked=True)  # half a sentence asks as well
        call = Call() if {half.refused, half.caution} & OF_TALK else half
    if call.caution == "spawned" and parsed.doubts:
        return Call()  # how many young there are is asked for
    if call:
        return call
    return Call("general") if parsed.intent in QUIET and distressed(text) else Call()


def _touched(text: str, *, asked: bool) -> Call:
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
    call = _touched(turn.incoming.text, asked=True)
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


def _danger(turn: Turn, parsed: Parsed) -> Danger | None:
    if any(event.kind == "note" for event in parsed.events):
        return None
    danger = recognise(turn.incoming.text)
    asked = parsed.question
    if danger == "illness" and asked is not None and asked.kind in DOSING:
        return None
    if danger == "co2_high" and _asks(turn.incoming.text):
        return None
    if danger == "maybe_dead" and _counted_dead(turn, parsed):
        return None
    if danger == "chlorine" and _measured_no_chlorine(parsed):
        return None
    return danger


def _counted_dead(turn: Turn, parsed: Parsed) -> bool:
    """Whether so many are told dead, of none of which it is said that it breathes."""
    dead = any(event.kind == "lost" and event.count is not None for event in parsed.events)
    return dead and not lives(turn.incoming.text)


def _measured_no_chlorine(parsed: Parsed) -> bool:
    """Whether a reading says that there is no chlorine, whatever words stand with it."""
    read = [v for v in parsed.values if v.analyte in {"chlorine", "total_chlorine"}]
    return bool(read) and all(not (v.value or v.high) for v in read)


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
    if event.kind in {"lost", "added", "moved"}:
        return danger in OF_PEOPLE or (danger in NO_ANIMALS and event.count is None)
    return False


async def _help(turn: Turn, parsed: Parsed, danger: Danger) -> Reply:
    stored = turn.tank_named(parsed.tank) if parsed.tank else turn.current_tank
    gasping = gasps(turn.incoming.text)
    unnamed = not parsed.tank and danger in SHOWING
    if danger not in OF_PEOPLE:
        await remember(turn, stored, danger, gasping=gasping)
    beside = await _others_poisoned(turn, stored) if unnamed else []
    return await help_in(turn, stored, danger, gasping=gasping, beside=beside)


async def remember(
    turn: Turn, stored: StoredTank | None, danger: Danger, *, gasping: bool = False
) -> None:
    """Keep that a danger was called out, for what is asked or found in the tank that day."""
    held = {"tank": stored.id if stored else None, "danger": danger, "gasping": gasping}
    await turn.uow.offers.add(turn.chat.id, Offer((), turn.now, context={CALLED: held}))


async def _others_poisoned(turn: Turn, stored: StoredTank | None) -> list[str]:
    """What stands in the chat's other tanks, where a call for help names none of them."""
    for tank in turn.tanks:
        if stored is not None and tank.id != stored.id:
            worst = cause(await state_of(turn, tank, turn.now))
            if worst is not None:
                return [words.or_there(tank.name, worst)]
    return []


async def help_in(
    turn: Turn,
    stored: StoredTank | None,
    danger: Danger,
    *,
    gasping: bool = False,
    beside: Sequence[str] = (),
) -> Reply:
    """Give the first-minute steps for a danger in a tank."""
    of_tank = stored is not None and danger not in OF_PEOPLE
    state = await state_of(turn, stored, turn.now) if of_tank and stored is not None else None
    new = await _new_water(turn, stored, state)
    found = help_for(danger, state, new, gasping=gasping)
    name = stored.name if stored is not None and of_tank else None
    country = country_of(turn.chat.zone_name)
    lines = words.lines(found, name, country, None if state is None else known(state, danger))
    lines = [*lines[:1], *beside, *lines[1:]][: words.MOST]
    share = found.share
    held = {
        "ph": found.ph,
        "ammonia": found.total_n,
        "nh3_n": found.nh3_n,
        "tank": name,
        "largest_safe_share": None if share is None else share.most,
        "ro_share": None if share is None else share.ro_share or None,
        "copper": found.copper if found.danger == "copper" else None,
        "changed": _changed_facts(found),
    }
    facts: dict[str, Any] = {"emergency": found.danger}
    facts |= {key: value for key, value in held.items() if value is not None}
    return await turn.reply(lines, facts=facts, choices=_sides(stored, found.danger))


def _changed_facts(found: Help) -> dict[str, float] | None:
    """The numbers of a change of the last day, where the steps name it."""
    made = found.changed
    if made is None or found.danger not in {"gasping", "general"}:
        return None
    told = {"share": made.share, "chlorine": made.chlorine}
    return {name: number for name, number in told.items() if number is not None} or None


def _sides(stored: StoredTank | None, danger: Danger) -> list[Choice]:
    """Which way a heater failed, where nobody said it."""
    if danger != "heater":
        return []
    held = None if stored is None else stored.id
    return [
        Choice(label, "what_now", "", {"tank": held, "danger": side})
        for label, side in ((_("too hot"), "heater_hot"), (_("too cold"), "heater_cold"))
    ]


SHOWING: Final[frozenset[Danger]] = frozenset(
    {"gasping", "maybe_dead", "general", "illness", "jumped"}
)
"""Dangers whose cause may be known from the readings."""


def known(state: State, danger: Danger) -> str | None:
    """What the fresh readings show to be wrong, where that may be the cause of a danger."""
    return cause(state) if danger in SHOWING else None


CAUSES: Final = frozenset(
    "ammonia ammonia_without_ph nitrite chlorine low_oxygen copper copper_before ph_extreme"  # noqa: SIM905
    " overdose nutrient_overdose acid_dosed caustic_dosed medicine_dosed".split()
)
"""Findings that make animals ill."""


def cause(state: State) -> str | None:
    """The worst that the fresh readings show, of what can make animals ill; None where nothing."""
    alarms = (f for f in what_stands(state) if f.severity == "alarm" and f.id in CAUSES)
    worst = next(alarms, None)
    return None if worst is None else causes.cause(worst)


def what_stands(state: State) -> list[Finding]:
    """What is found in only what was read or put in lately."""
    fresh = {name: each for name, each in state.readings.items() if each.is_fresh(state.now)}
    return stands(replace(state, readings=fresh), frozenset(fresh))


async def _new_water(turn: Turn, stored: StoredTank | None, state: State | None) -> NewWater | None:
    """The water that a tank is filled from, as far as it is on record."""
    if stored is None or state is None:
        return None
    warmth = state.last("temperature")
    waters = await Waters.of(turn, None if warmth is None else warmth.value)
    source = waters.default_for(stored)
    if source is None:
        return None
    supply = await waters.supply(source)
    return NewWater(supply.name, supply.state, chlorinated=supply.treated > 0.0)
