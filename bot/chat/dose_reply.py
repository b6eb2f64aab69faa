"""A plan or a refusal as a reply: words, facts, and the buttons that follow a dose."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from bot.chat import own_plan, plan_gate, poison_first, tank_volumes
from bot.chat.how_much import CHANGE, to_ask
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.supply import read
from bot.chat.turn import WAITS, Turn
from bot.chat.words import dose_grounds as grounds
from bot.chat.words import dose_wishes as wish_words
from bot.chat.words import doses as words
from bot.chat.words import raising, refusals
from bot.chat.words.finding_parts import wish_of_kh
from bot.chat.words.glossary import explained
from bot.chat.words.text import _
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.advice import limits
from core.advice.ammonia_gate import shown
from core.advice.dosing import first_parts, is_blind
from core.advice.findings import is_kept_soft, stands
from core.advice.kit_doubt import KitDoubt, doubt_of
from core.advice.may_rise import raising_refused
from core.advice.plan import Plan, Refusal, Upkeep
from core.advice.scheduling import steps_of
from core.advice.state import State
from core.message.dose_words import names_buffer
from core.message.model import Question

WISHED: Final = ("kh", "gh", "nitrate", "calcium", "magnesium", "potassium", "salinity")
"""What a number without a name may be wished of, in the order in which it is offered."""

MOST_OFFERED: Final = 4

OF_DEED: Final = frozenset({"substance", "volume_l", "from", "to", "goals", "grams", "tank"})
"""The facts of a plan that hold for what went in already: nothing is to be given."""

NEEDED: Final = {
    "volume_unknown": ["litres"],
    "kh_unknown": ["start"],
    "reading_unknown": ["start"],
    "target_implausible": ["target"],
}
"""Refusals of what is not known, and what may be said to have the plan."""

OF_AMMONIA: Final = frozenset({"ammonia", "ammonia_already", "ammonia_unmeasured"})
"""Refusals whose reason is what ammonia is."""


async def ask_value(turn: Turn, question: Question) -> Reply:
    """Ask what is wished; where the analyte is known, how fast it may rise is told at once."""
    stored = turn.tank_named(question.tank) if question.tank else turn.current_tank
    step = steps_of(stored.tank if stored is not None else None).get(question.analyte or "")
    waits = {WAITS: ["target"]}
    if step is None:
        return await turn.reply(wish_words.incomplete(), context=waits)
    facts = {"analyte": question.analyte, "step": step}
    lines = wish_words.which_value(str(question.analyte), step)
    choices: list[Choice] = []
    if question.analyte == "kh" and stored is not None and not stored.tank.is_sea:
        state = await state_of(turn, stored, turn.now)
        if (kh := state.last("kh")) is not None and is_blind(kh):
            return await _one_small_part(turn, state, stored.name)
        advised, choices = _advised(state)
        lines = [*advised, *lines]
    if question.substance == "sodium bicarbonate" and names_buffer(turn.incoming.text):
        lines.insert(0, wish_words.of_soda())
    return await turn.reply(lines, choices=choices, facts=facts, context=waits)


def _advised(state: State) -> tuple[list[str], list[Choice]]:
    """What a fresh KH asks for where nobody said how high it shall be, and a button for that."""
    kh = state.fresh("kh")
    if kh is None:
        return [], []
    found = [each for each in stands(state, frozenset({"kh"})) if each.severity != "note"]
    if not found:
        return [wish_words.asks_for_none(kh.value)], []
    order = to_ask(found[0]) if found[0].id == "low_kh" else None
    if order is None or order == CHANGE:
        return [], []
    wish = wish_of_kh(found[0].facts)
    choice = Choice(order, "say_again", "yes", {"text": order})
    return [wish_words.low_enough(kh.value, wish)], [choice]


async def _one_small_part(turn: Turn, state: State, name: str) -> Reply:
    """Where KH is too low to plan: what stands before a part, and how small the one part is."""
    part = first_parts(state)[0]
    ammonia = shown(state)
    lines = []
    if ammonia is not None and ammonia.is_fresh(state.now):
        lines.append(raising.ammonia_first(name, ammonia.value))
    elif is_kept_soft(state):
        lines.append(raising.leave_soft(name))
    lines.append(raising.one_small_part(part))
    return await turn.reply(lines, facts={"tank": name, "analyte": "kh", "step": part})


async def ask_analyte(turn: Turn, question: Question) -> Reply:
    """Ask what a wished number is of: what was measured, and can go that way, is offered."""
    stored = turn.tank_named(question.tank) if question.tank else turn.current_tank
    latest = {}
    if stored is not None:
        rows = await turn.uow.log.last_of_each(stored.id, WISHED, until=turn.now)
        latest = {reading.analyte: reading.value for reading in read(turn, rows, stored.tank)}
    wishes = wish_words.wishes_of(
        question, [name for name in WISHED if _fits(question, latest, name)]
    )
    choices = [Choice(wish, "say_again", "", {"text": wish}) for wish in wishes]
    return await turn.reply(wish_words.of_what(question), choices=choices[:MOST_OFFERED])


def _fits(question: Question, latest: Mapping[str, float], name: str) -> bool:
    """Whether a wish can be of an analyte: known, and on the side of it that is told."""
    if name not in latest:
        return False
    if question.target is None or question.bound is None:
        return True
    above = latest[name] > question.target
    return above if question.bound == "<" else not above


async def refuse(turn: Turn, refusal: Refusal, name: str | None) -> Reply:
    """Say why there is no dose; a tank's unknown volume is asked for."""
    stored = turn.tank_named(name) if name else None
    if refusal.reason == "volume_unknown" and stored is not None:
        return await tank_volumes.ask_volume(turn, stored, refusals.refused(refusal, name))
    lines = refusals.refused(refusal, name)
    if refusal.reason == "ammonia" and stored is not None:
        state = await state_of(turn, stored, turn.now)
        lines += [] if state.tank.stock else refusals.unless_nobody()
    reasons = [lines[0], *explained("ammonia")] if refusal.reason in OF_AMMONIA else lines
    context = {"why": reasons, WAITS: NEEDED.get(refusal.reason, [])}
    return await turn.reply(
        lines, facts=refused_facts(refusal), context=context, expects="followup"
    )


async def no_ph(turn: Turn, named: str | None) -> Reply:
    """Say why there is no dose to a pH; what raises it is named only where the gate lets it."""
    stored = turn.tank_named(named) if named else turn.current_tank
    gated = stored is not None and raising_refused(await state_of(turn, stored, turn.now))
    reason = "ph_target_gated" if gated else "ph_target"
    return await refuse(turn, Refusal(reason), None if stored is None else stored.name)


async def planned(
    turn: Turn, plan: Plan, stored: StoredTank | None, name: str | None, *notes: str
) -> Reply:
    """Word a plan and offer to log its first part and to remind of the retest.

    `notes` stand with the rest that is told on request.
    """
    doubt = doubt_of(plan)
    if turn.put_in:
        told = {key: fact for key, fact in plan_facts(plan, name).items() if key in OF_DEED}
        return await turn.reply(words.went_in(plan, name), facts=told)
    of_tank = stored if stored is not None and stored.tank.volume_l == plan.volume_l else None
    if (poisoned := await poison_first.refused(turn, of_tank)) is not None:
        return poisoned
    goes_on = stored is not None and await own_plan.is_next_part(turn, plan, stored.id)
    lines = [words.head(plan, name, doubt, next_part=goes_on), words.caution(plan)]
    if (ammonia := words.ammonia(plan, name)) is not None:
        lines.append(ammonia)
    if not goes_on and of_tank is not None and await _needs_none(turn, plan, of_tank):
        lines.insert(1, raising.leave_soft(of_tank.name))
    lines.append(words.amount(plan))
    if (one_sided := words.one_sided(plan)) is not None:
        lines.append(one_sided)
    lines.append(words.afterwards(plan, doubt))
    if turn.parts is not None and turn.parts < plan.count:
        lines[0] = f"{words.fewest(plan.count, turn.parts)} {lines[0]}"
    if plan.upkeep is not None:
        lines.append(words.upkeep(plan.upkeep))
    held = held_of(plan, stored)
    choices = [
        Choice(_(words.LOG_IT), "log_dose", "", held),
        Choice(_(words.RETEST), "retest", "", held),
    ]
    return await turn.reply(
        lines,
        choices=choices,
        more=[*grounds.more(plan, doubt), *notes],
        facts=plan_facts(plan, name, doubt, next_part=goes_on),
    )


async def _needs_none(turn: Turn, plan: Plan, stored: StoredTank) -> bool:
    """Whether KH is to be raised in water that is kept soft, and has enough of it: only wished."""
    goal = plan.goals[0]
    if len(plan.goals) > 1 or goal.analyte != "kh" or goal.relative or stored.tank.is_sea:
        return False
    kept_soft = is_kept_soft(await state_of(turn, stored, turn.now))
    return kept_soft and goal.start >= limits.KH_SOFT and goal.target > goal.start


def held_of(plan: Plan, stored: StoredTank | None) -> dict[str, Any]:
    """A part of a plan, as its button to log it keeps it."""
    bears = {} if plan.gate is None else {plan_gate.BEARS: plan.gate.bears}
    return {
        **bears,
        "tank_id": stored.id if stored is not None else None,
        "grams": plan.parts[0],
        "substance": plan.substance,
        "volume_l": plan.volume_l,
        "salts": [[salt.substance, salt.grams / plan.count] for salt in plan.salts],
        "cautions": [each for each in plan.cautions if each in words.CAUTIONS],
    }


def plan_facts(
    plan: Plan, name: str | None, doubt: KitDoubt | None = None, *, next_part: bool = False
) -> dict[str, Any]:
    """Every number of a plan, and between which ends the kits leave it."""
    goal = plan.goals[0]
    facts: dict[str, Any] = {
        "substance": plan.substance,
        "volume_l": plan.volume_l,
        "from": goal.start,
        "to": goal.target,
        "grams": plan.grams,
        "parts": list(plan.parts),
        "every_hours": plan.every_hours,
        **{f"{ion}_mg_l": amount for ion, amount in plan.added.items()},
    }
    if goal.relative:
        del facts["from"], facts["to"]
        facts["delta"] = goal.change
    elif goal.analyte != "kh" or len(plan.goals) > 1:
        facts["goals"] = [
            {"analyte": each.analyte, "from": each.start, "to": each.target} for each in plan.goals
        ]
    if len(plan.salts) > 1:
        facts["salts"] = [
            {
                "substance": salt.substance,
                "grams": salt.grams,
                "parts": [salt.grams / plan.count] * plan.count,
            }
            for salt in plan.salts
        ]
        for name_of_one in ("substance", "grams", "parts"):
            del facts[name_of_one]
    if plan.last is not None and plan.outlook is not None:
        facts["ph_stood"] = [plan.last.expected, plan.last.leaves]
        if plan.outlook.co2_known:
            facts["ph_at_once"] = plan.last.at_once
    if name is not None:
        facts["tank"] = name
    if plan.gate is not None and plan.gate.only_below is not None:
        facts["only_if_ammonia_below"] = plan.gate.only_below
    if plan.gate is not None and plan.gate.nh3_n is not None:
        facts["nh3_n_after"] = list(plan.gate.nh3_n)
    if plan.reading_age is not None:
        facts["reading_age_hours"] = plan.reading_age.total_seconds() / 3600
    if plan.emergency:
        facts["emergency"] = True
    if plan.upkeep is not None:
        facts["upkeep"] = _upkeep_facts(plan.upkeep)
    if doubt is not None:
        facts["interval"] = _doubt_facts(doubt)
    retest_all = (plan.within_kit and not next_part) or plan.is_old or plan.changed_since
    if retest := [goal.analyte for goal in plan.goals if retest_all]:
        facts["retest_first"] = retest
    elif doubt is not None and doubt.over_gate:
        facts["retest_first"] = ["ammonia", "ph"]
    return facts


def _upkeep_facts(upkeep: Upkeep) -> dict[str, Any]:
    used = upkeep.used
    facts: dict[str, Any] = {
        "analyte": upkeep.analyte,
        "per_day": used.per_day,
        "between": [used.low, used.high],
    }
    if upkeep.salt is not None:
        facts |= {"substance": upkeep.salt.substance, "grams": upkeep.salt.grams}
    return facts


def _doubt_facts(doubt: KitDoubt) -> dict[str, Any]:
    told = {
        "kh": doubt.kh,
        "gh": doubt.gh,
        "ph_at_once": doubt.ph_at_once,
        "ph_stood": doubt.ph_stood,
        "ph_if_co2_leaves": doubt.ph_leaves,
        "nh3_n": doubt.nh3_n,
    }
    return {name: list(between) for name, between in told.items() if between is not None}


def refused_facts(refusal: Refusal) -> dict[str, Any]:
    """The facts of a refusal: its reason and the numbers that decided."""
    return {"refused": refusal.reason, **refusal.facts}
