"""``how much does it use a day``, ``how much soda a day to keep alk 8``: use in the sea.

What is used is read from the last two readings that nothing was done between; what holds it is the
plan of one day's use.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any, Final

from bot.chat import dose_reply
from bot.chat.model import Line, Reply
from bot.chat.standing import about
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import daily as words
from bot.chat.words import questions as question_words
from bot.store.tanks import StoredTank
from core.advice.dosing import Wish, plan_kh
from core.advice.plan import Plan, Refusal
from core.advice.salts import SaltWish, plan_salts
from core.advice.scheduling import per_gram, steps_of
from core.advice.state import State
from core.advice.upkeep import USED_UP, used_up
from core.advice.used_up import Consumption
from core.message import daily
from core.message.doubts import CHANGE
from core.message.model import Parsed, Question
from core.message.paces import ends_with_pace
from core.water.substances import SUBSTANCES

ORDER: Final = ("kh", "calcium", "magnesium")
"""What is told where nothing is named; the last only where it moved."""


async def answer(turn: Turn, question: Question) -> list[Reply] | None:
    """Answer a dose question that is about a day's use; None for any other, or no sea."""
    asked = daily.asked(question.text or "")
    stored = about(turn, question)
    if asked is None or stored is None or not stored.tank.is_sea:
        return None
    named = question.analyte or raised(question.substance)
    if named is not None and named not in USED_UP:
        return None
    state = await state_of(turn, stored, turn.now)
    if asked == "use":
        return [await use_of(turn, stored, state, named)]
    analyte = named or "kh"
    now, wish = state.last(analyte), question.target
    if now is not None and wish is not None and now.value < wish:
        return None  # a plan first, which says what holds it then
    used = used_up(state, analyte)
    if used is None or not used.is_sure:
        lines = [question_words.used_up(analyte, used)] if used is not None else []
        lines = lines or words.unknown(stored.name, analyte)
        return [await turn.reply(lines, facts={"tank": stored.name} | _facts(used))]
    told = question_words.used_up(analyte, used)
    if now is not None and wish is not None and now.value > wish:
        facts = {"tank": stored.name, "from": now.value, "to": wish} | _facts(used)
        lines = [told, words.first_down(analyte, now.value, wish)]
        return [await turn.reply(lines, facts=facts)]
    lead, facts = words.to_hold(told), _facts(used)
    return [await _hold(turn, question, stored, state, analyte, used.per_day, lead, facts)]


def as_wish(question: Question) -> Question:
    """``how much soda a day, kh 8 to hold``: the value that is to be held is the one wished."""
    held = question.premises.get(question.analyte or "")
    if held is None or question.target is not None or daily.asked(question.text or "") != "hold":
        return question
    others = {name: value for name, value in question.premises.items() if name != question.analyte}
    return replace(question, target=held, premises=others)


async def told(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``it uses 0.5 dkh a day``, ``kh fell from 8 to 7 in 2 days``: what a day holds that."""
    stored = turn.current_tank
    if parsed.values or parsed.events or not turn.incoming.addressed:
        return None
    doubted = [doubt.text for doubt in parsed.doubts if doubt.reason == CHANGE]
    changed = not all(map(ends_with_pace, doubted))  # a reading in it: asked
    if stored is None or not stored.tank.is_sea or changed:
        return None
    found = daily.told(turn.incoming.text, turn.context())
    if found is None or found[0] not in USED_UP:
        return None
    analyte, per_day = found
    state = await state_of(turn, stored, turn.now)
    lead = words.as_told(stored.name, analyte, per_day)
    asked, facts = parsed.question, {"consumption": {"per_day": per_day}}
    question = Question("dose", analyte=analyte, substance=asked.substance if asked else None)
    return [await _hold(turn, question, stored, state, analyte, per_day, lead, facts)]


def raised(substance: str | None) -> str | None:
    """What of all that a reef uses up a salt brings, by its name; None where none of it."""
    known = substance if substance in SUBSTANCES else None
    return None if known is None else next((a for a in ORDER if per_gram(known, a) > 0.0), None)


async def use_of(turn: Turn, stored: StoredTank, state: State, named: str | None) -> Reply:
    """What is used a day, of what is named or of all."""
    found = {name: used_up(state, name) for name in ((named,) if named else ORDER)}
    known = {name: used for name, used in found.items() if used is not None}
    if not known:
        lines = words.unknown(stored.name, named or ORDER[0])
        return await turn.reply(lines, facts={"tank": stored.name})
    lines = [question_words.used_up(name, used) for name, used in known.items()]
    lines[0] = f"{stored.name}: {lines[0]}"
    used = {name: _facts(each)["consumption"] for name, each in known.items()}
    return await turn.reply(lines, facts={"tank": stored.name, "uses": used})


async def _hold(
    turn: Turn,
    question: Question,
    stored: StoredTank,
    state: State,
    analyte: str,
    per_day: float,
    lead: str,
    facts: dict[str, Any],
) -> Reply:
    """The plan of one day's use, with all that a plan looks at: ammonia, pH, saturation."""
    step = steps_of(stored.tank)[analyte]
    if per_day > step:
        facts |= {"tank": stored.name, "step": step}
        return await turn.reply([lead, words.too_much(step, analyte)], facts=facts)
    salt = question.substance if raised(question.substance) == analyte else None
    planned: Plan | Refusal
    if analyte == "kh":
        wish = Wish(delta=per_day, substance=salt or "sodium bicarbonate")
        planned = plan_kh(wish, state, known_tank=True)
    else:
        deltas = SaltWish({}, {analyte: per_day}, substances=(salt,) if salt else ())
        plans = plan_salts(deltas, state, known_tank=True)
        planned = plans if isinstance(plans, Refusal) else plans[0]
    if isinstance(planned, Refusal):
        return await dose_reply.refuse(turn, planned, stored.name)
    reply = await dose_reply.planned(turn, replace(planned, upkeep=None), stored, stored.name)
    return replace(reply, lines=(Line(lead), *reply.lines), facts={**reply.facts, **facts})


def _facts(used: Consumption | None) -> dict[str, Any]:
    if used is None:
        return {}
    return {"consumption": {"per_day": used.per_day, "between": [used.low, used.high]}}
