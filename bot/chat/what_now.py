"""``what now``: the steps for what is wrong by the readings, the record, or a call of the day."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Final

from bot.chat import (
    calls_kept,
    eased,
    emergencies,
    first_evening,
    off_record,
    outside_calls,
    settings,
    standing,
)
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.told import Told
from bot.chat.turn import Turn
from bot.chat.words import after_steps as steps_words
from bot.chat.words import emergency_talk as talk_words
from bot.chat.words import general
from bot.chat.words.emergencies import WHAT_NOW
from bot.chat.words.text import _
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.advice.call_over import HOLDS
from core.advice.calls import Danger, asks_what_now
from core.advice.emergencies import A_DAY, lost_lately, standing_call, treated_since
from core.advice.findings import Finding, stands
from core.advice.nobodys import is_nobodys
from core.advice.state import State
from core.message.model import Command, Parsed, Question
from core.tank import Tank

OF_ALARM: Final[Mapping[str, Danger]] = {
    "ammonia": "ammonia",
    "ammonia_without_ph": "ammonia",
    "nitrite": "nitrite",
    "chlorine": "chlorine",
    "low_oxygen": "gasping",
    "copper": "copper",
    "copper_before": "copper",
    "copper_unknown_stock": "copper",
    "overdose": "overdose",
    "nutrient_overdose": "overdose",
    "acid_dosed": "overdose",
    "caustic_dosed": "overdose",
    "medicine_dosed": "overdose",
}
"""The steps that belong to a finding."""

NOTED: Final = frozenset({"copper_unknown_stock"})
"""Notes that have steps all the same: nobody told who lives there."""

SETTLED: Final = frozenset({"bleach", "chlorine", "copper", "copper_metal"})
"""Calls whose steps are over once a test, or a dechlorinator, says so."""

BESIDE: Final = (
    "in|with|for|about|mit|für|avec|dans|pour|en|con|para|em|com|no|nel|per|met|w|z|i|med"
)
"""Words between a question and the tank that it is of, in nine languages."""


def button(told: Told, found: Sequence[Finding]) -> list[Choice]:
    """The button that leads from poison in the water to its first-minute steps, if there is any."""
    danger = _worst(found, told.tank.tank)
    if danger is None:
        return []
    held = {"tank": told.tank.id, "danger": danger}
    return [Choice(_(WHAT_NOW), "what_now", "", held)]


def _worst(found: Sequence[Finding], tank: Tank) -> Danger | None:
    """The danger of the worst finding that has steps; a note has none."""
    heard = (f for f in found if f.severity != "note" or f.id in NOTED)
    told = (_steps_for(finding, tank) for finding in heard)
    return next((danger for danger in told if danger is not None), None)


def shown_by(found: Sequence[Finding], tank: Tank, danger: Danger) -> Finding | None:
    """The finding that a danger is known by; None where it was only called out."""
    heard = (f for f in found if f.severity != "note" or f.id in NOTED)
    return next((finding for finding in heard if _steps_for(finding, tank) == danger), None)


def _steps_for(finding: Finding, tank: Tank) -> Danger | None:
    """The steps that belong to a finding: of warmth and pH it decides which way it is off.

    A pond's warmth is the weather's: no heater is to blame.
    """
    facts = finding.facts
    if finding.id == "ph_extreme":
        return "ph_crash" if float(facts["ph"]) < float(facts["limit"]) else "ph_high"
    if finding.id == "does_not_suit" and finding.severity == "alarm" and tank.kind != "pond":
        return "heater_hot" if float(facts["value"]) > float(facts["high"]) else "heater_cold"
    if finding.id == "medicine_dosed" and "species" in facts:
        return "copper"  # which kills those that live there
    if finding.id == "ph_fell" and finding.severity == "alarm":
        return "ph_crash"
    return OF_ALARM.get(finding.id)


async def press(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Give the steps for an alarm, with what the tank's readings say by now."""
    stored = turn.tank_by_id(choice.arguments["tank"])
    return [await emergencies.help_in(turn, stored, choice.arguments["danger"])]


BY_SIGN: Final = frozenset({"general", "gasping", "illness"})
"""Calls that rest on what was seen alone: who looks better needs no first steps again."""


async def typed(turn: Turn, said: str | None = None) -> Reply | None:
    """Answer ``what now`` where no button says so: the steps of what is wrong by the readings.

    Where nothing is, how the tank stands; None where nothing is asked so. `said` is the part of a
    message that may ask it, all of it where that is not given.
    """
    text, named = without_tank(turn, turn.incoming.text if said is None else said)
    if not turn.incoming.addressed or not asks_what_now(text):
        return None
    stored = named or turn.current_tank
    if stored is None and not await turn.uow.offers.latest(turn.chat.id, 1):
        return await turn.reply([*general.start(), general.in_trouble()])  # the first words
    if stored is None:
        called, gasping = await outside_calls.newest(turn) or ("general", False)
        return await emergencies.help_in(turn, None, called, gasping=gasping)
    danger, gasping = await danger_in(turn, stored)
    if danger == "general" and (over := await _settled(turn, stored)) is not None:
        return over
    if danger == "chlorine" and treated_since(await state_of(turn, stored, turn.now)):
        facts = {"emergency": danger, "tank": stored.name}
        return await turn.reply(talk_words.conditioned(), facts=facts)
    if danger in BY_SIGN and (better := await eased.stands(turn, stored.id, how="better")):
        return better
    if danger in LOOKS and (how := await _read_since(turn, stored, danger)) is not None:
        return how
    if danger is not None:
        return await emergencies.help_in(turn, stored, danger, gasping=gasping)
    state = await state_of(turn, stored, turn.now)
    if state.went_in is not None:
        aid = await emergencies.aid_untold(turn, stored, state)
        return await off_record.again(turn, stored, state.went_in, before=aid)
    if is_nobodys(state) and state.fresh("ammonia") is not None:
        return await first_evening.how_far(turn, stored, state, asks_long=False)
    (how,) = await standing.status(turn, Question("safe"))
    return how


LOOKS: Final = frozenset({"general", "gasping", "illness", "maybe_dead"})
"""Calls of what animals look like, on which a good test says something, if not all."""


async def _read_since(turn: Turn, stored: StoredTank, danger: Danger) -> Reply | None:
    """How it stands, where a poison was read as 0 since the call and nothing is off.

    None where nothing was, or more is known to be wrong: then the steps are for it.
    """
    state = await state_of(turn, stored, turn.now)
    if standing_call(state) is not None or _worst(emergencies.what_stands(state), state.tank):
        return None
    if lost_lately(state):
        return None  # deaths that no reading explains are no calm
    since = [state.called[danger]] if danger in state.called else []
    poisons = [state.fresh(analyte) for analyte in ("ammonia", "nitrite")]
    good = [each for each in poisons if each is not None and each.value == 0.0]
    if not since or not any(each.at >= max(since) for each in good):
        return None
    (how,) = await standing.status(turn, Question("safe"))
    lines = [*(line.text for line in how.lines), steps_words.say_if_worse()]
    return await turn.reply(lines, facts={**how.facts, "called": danger})


async def _settled(turn: Turn, stored: StoredTank) -> Reply | None:
    """What is left to do where a test settled the last call, and nothing else is wrong."""
    state = await state_of(turn, stored, turn.now)
    if standing_call(state) is not None or _worst(emergencies.what_stands(state), state.tank):
        return None
    called = await _called(turn, stored)
    return await eased.settled(turn, stored, state, None if called is None else called.danger)


async def unsettled(turn: Turn, stored: StoredTank) -> Danger | None:
    """The danger that stands in a tank; None where none does, or a test settled it since."""
    danger, _gasping = await danger_in(turn, stored)
    settled = danger == "general" and await _settled(turn, stored) is not None
    return None if settled else danger


async def dismayed(turn: Turn) -> list[Reply] | None:
    """Answer an oath while something is wrong in the tank in use: what to do, once more.

    None where nothing is known to be wrong, or nobody spoke to the bot.
    """
    stored = turn.current_tank
    if stored is None or not turn.incoming.addressed:
        return None
    danger, gasping = await danger_in(turn, stored)
    if danger is not None:
        told = await emergencies.help_in(turn, stored, danger, gasping=gasping)
    elif any(f.severity != "note" for f in stands(*await _all_of(turn, stored))):
        (told,) = await standing.status(turn, Question("safe"))
    else:
        return None
    return [told, await turn.reply([talk_words.take_back()])]


async def _all_of(turn: Turn, stored: StoredTank) -> tuple[State, frozenset[str]]:
    state = await state_of(turn, stored, turn.now)
    return state, frozenset(state.readings)


async def danger_in(turn: Turn, stored: StoredTank) -> tuple[Danger | None, bool]:
    """What is wrong in a tank by its readings, its record or a call; and whether animals gasp."""
    state = await state_of(turn, stored, turn.now)
    called = await _called(turn, stored)
    worst = _worst(emergencies.what_stands(state), state.tank)
    open_call, last_called = standing_call(state), None if called is None else called.danger
    gasping = called is not None and called.gasping
    danger = open_call or worst or last_called
    if danger == last_called and worst is None and open_call is None and danger in SETTLED:
        danger = "gasping" if gasping else "general"  # what was called is settled
    if danger is None and (lost_lately(state) or _changed_much(state)):
        danger = "general"
    return danger, gasping


async def help_(turn: Turn, command: Command, parsed: Parsed) -> list[Reply]:
    """``help`` while something is wrong in the tank in use is a call; else what can be said here.

    ``/help`` is always the latter.
    """
    if turn.incoming.text.lstrip().startswith("/"):
        return await settings.help_(turn, command, parsed)
    stored = turn.current_tank
    if stored is None:
        danger, gasping = await outside_calls.newest(turn) or (None, False)
    else:
        danger, gasping = await danger_in(turn, stored)
    if danger is not None:
        return [await emergencies.help_in(turn, stored, danger, gasping=gasping)]
    return await settings.help_(turn, command, parsed)


def _changed_much(state: State) -> bool:
    """Whether most of the water was changed within a day and nothing was tested since."""
    deeds = {"large_change", "pure_in", "tap_in_sea"}
    return any(finding.id in deeds for finding in stands(state, frozenset()))


def without_tank(turn: Turn, said: str) -> tuple[str, StoredTank | None]:
    """A message without the name of a tank before or behind it, and that tank, if it has one."""
    text = said.strip()
    for tank in sorted(turn.tanks, key=lambda each: -len(each.name)):
        name = re.escape(tank.name)
        before = re.match(rf"{name}\s*[:,]?\s+(.+)", text, re.IGNORECASE | re.DOTALL)
        behind = re.match(
            rf"(.+?)\s+(?:(?:{BESIDE})\s+)?{name}\W*$", text, re.IGNORECASE | re.DOTALL
        )
        if (found := before or behind) is not None:
            return found[1], tank
    return text, None


async def _called(turn: Turn, stored: StoredTank) -> calls_kept.Kept | None:
    """The latest call for help of the last day in a tank: what no reading may show yet.

    Who looks better is asked after by its own words; all else that was told to be over is over.
    """
    for call in await calls_kept.of_tank(turn, stored.id):
        late = turn.now - call.at < HOLDS.get(call.danger, A_DAY)
        if late and (not call.over or call.danger in BY_SIGN):
            return call
    return None
