"""The buffer question: for any water, or for a tank on record."""

from __future__ import annotations

from typing import Any

from bot.chat import tanks
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import doses as words
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.advice.dosing import Plan, Refusal, Wish, plan_kh
from core.advice.state import State
from core.message.model import Parsed, Question
from core.tank import Tank


async def dose(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    """Answer how much raises KH."""
    if question.analyte not in {None, "kh"}:
        return [await turn.reply(words.only_kh())]
    if question.target is None and question.delta is None:
        return [await turn.reply(words.incomplete())]
    wish = Wish(
        target=question.target,
        delta=question.delta,
        start=question.start_value,
        volume_l=question.volume_l,
        substance=question.substance or "sodium bicarbonate",
        premises=question.premises,
    )
    named = turn.tank_named(question.tank) if question.tank else None
    return [await answer(turn, wish, named)]


async def answer(turn: Turn, wish: Wish, named: StoredTank | None) -> Reply:
    """Plan a wish for a tank on record, or for any water where the question itself says it all."""
    about_any = named is None and wish.volume_l is not None and wish.start is not None
    stored = None if about_any else named or turn.current_tank
    state = (
        State(Tank(name=""), turn.local_now)
        if stored is None
        else await state_of(turn, stored, turn.now)
    )
    plan = plan_kh(wish, state, known_tank=stored is not None)
    name = stored.name if stored is not None else None
    if isinstance(plan, Plan):
        return await _planned(turn, plan, stored, name)
    if plan.reason == "volume_unknown" and stored is not None:
        return await tanks.ask_volume(turn, stored, words.refused(plan, name), _kept(wish))
    return await turn.reply(words.refused(plan, name), facts=refused_facts(plan))


async def _planned(turn: Turn, plan: Plan, stored: StoredTank | None, name: str | None) -> Reply:
    lines = [words.head(plan, name), words.caution(), words.amount(plan)]
    if (ammonia := words.ammonia(plan, name)) is not None:
        lines.append(ammonia)
    lines.append(words.within_kit() if plan.within_kit else words.afterwards(plan))
    held: dict[str, Any] = {
        "tank_id": stored.id if stored is not None else None,
        "grams": plan.parts[0],
        "substance": plan.substance,
        "volume_l": plan.volume_l,
    }
    choices = [
        Choice(words.LOG_IT, "log_dose", "", held),
        Choice(words.RETEST, "retest", "", held),
    ]
    return await turn.reply(
        lines, choices=choices, more=words.more(plan), facts=_plan_facts(plan, name)
    )


def _plan_facts(plan: Plan, name: str | None) -> dict[str, Any]:
    goal = plan.goals[0]
    facts: dict[str, Any] = {
        "substance": plan.substance,
        "volume_l": plan.volume_l,
        "from": goal.start,
        "to": goal.target,
        "grams": plan.grams,
        "parts": list(plan.parts),
        "every_hours": plan.every_hours,
        "ph_stood": [plan.last.expected, plan.last.leaves],
        **{f"{ion}_mg_l": amount for ion, amount in plan.added.items()},
    }
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
    return facts


def refused_facts(refusal: Refusal) -> dict[str, Any]:
    """The facts of a refusal: its reason and the numbers that decided."""
    return {"refused": refusal.reason, **refusal.facts}


def _kept(wish: Wish) -> dict[str, Any]:
    """A wish as an offer keeps it until the volume is known."""
    return {
        "target": wish.target,
        "delta": wish.delta,
        "start": wish.start,
        "substance": wish.substance,
        "premises": dict(wish.premises),
    }
