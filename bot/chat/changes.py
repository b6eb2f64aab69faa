"""``what if i change 50%``, ``nitrate under 20``: a water change seen before it is done."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict
from typing import Any

from bot.chat import (
    change_bounds,
    change_steps,
    dose_reply,
    first_share,
    mix_talk,
    new_water,
    said_water,
    standing,
    unmeasured,
)
from bot.chat.change_asked import Asked, asked_of
from bot.chat.change_facts import doubt_facts, facts_of, readings_of
from bot.chat.change_share import part_for, share_of
from bot.chat.model import Reply
from bot.chat.said_water import Said
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from bot.chat.words import change_course as course_words
from bot.chat.words import change_doubts as doubt_words
from bot.chat.words import change_verdict as verdict
from bot.chat.words import changes as words
from bot.chat.words import refusals
from bot.chat.words import waters as water_words
from bot.chat.words.sources import softened as softened_water
from core.advice import limits
from core.advice.change_counts import toward
from core.advice.change_doubt import doubt_of_change
from core.advice.change_plan import ChangePlan, largest_safe_share, plan_change
from core.advice.changes import Waters as Mixing
from core.advice.changes import salinity_unknown, waters_of
from core.advice.danger import cut_to_kh, is_acid, is_emergency, poison_in
from core.advice.plan import Refusal
from core.advice.repeated import in_a_day
from core.advice.routine import SawTooth, made_per_day, safe_routine, saw_tooth
from core.advice.scheduling import conflict
from core.advice.since import changed_today, moved_today
from core.advice.state import State
from core.advice.tapped import softened
from core.advice.warming import coldest_safe, warmest_safe
from core.errors import CoreError
from core.message import change_count
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Parsed, Question
from core.message.rhythm import days_between
from core.message.tokens import cut

SHOWN = 6
"""Lines on one screen."""
USUAL = 0.25
"""A share that is looked at where the largest cannot be told."""
NOTES = 2
"""Lines about the new water among them."""


async def change(
    turn: Turn, question: Question, _parsed: Parsed, beside: Sequence[str] = ()
) -> list[Reply]:
    """Answer what a change would do, or how much reaches a wished nitrate.

    `beside` stands behind the first line of a plan.
    """
    question, mix = await mix_talk.changed_with(turn, question)
    beside = beside if mix is None else [water_words.used(mix), *beside]
    amount = question.percent is not None or question.litres is not None
    if question.analyte == "ph" and not amount:
        return [await dose_reply.no_ph(turn, question.tank)]
    largest = not amount and question.target is None and asks_how_much(question.text or "")
    if not amount and question.target is None and not largest:
        return await standing.change_needed(turn, question)
    if question.percent is not None and not 0.0 < question.percent <= 100.0:
        return [await turn.reply(words.share_implausible())]
    held = await Waters.of(turn)
    question, said = said_water.apart(turn, question, [each.name for each in held.sources])
    asked = await asked_of(turn, question, said, held)
    treated = isinstance(asked, Reply) or asked.supply.treated > 0.0
    if said.untreated and treated:
        name = question.tank or (turn.current_tank.name if turn.current_tank else "")
        return [await turn.reply(verdict.untreated(name), facts={"refused": "untreated"})]
    if isinstance(asked, Reply):
        return [await first_share.led(turn, question, asked)]
    share = largest_of(asked) if largest else share_of(question, asked)
    if isinstance(share, list):
        return [await turn.reply(share)]
    if amount and (counts := change_count.counted(question)) is not None:
        whole = part_for(question.analyte or "", counts.target or 0.0, asked)
        if isinstance(whole, list):
            return [await turn.reply(whole)]
        return [await answer(turn, question, asked, share, said, beside, whole)]
    if said.felt is not None:
        return [await _how_warm(turn, asked, share)]
    return [await answer(turn, question, asked, share, said, beside)]


def asks_how_much(text: str) -> bool:
    """`how much can i change`: the largest share is asked for."""
    return any(token.value == "how_much" for token in cut(fold(text), lexicon(), text))


def largest_of(asked: Asked) -> float:
    """The largest share that is safe; where none is, one that the answer then refuses."""
    try:
        waters = waters_of(asked.tank, asked.source)
    except CoreError:
        waters = None
    if waters is None:
        return USUAL
    emergency = is_emergency(asked.tank)
    counted = change_bounds.counted_in(waters, asked.supply, 0.0)
    return largest_safe_share(counted, emergency=emergency) or USUAL


async def _how_warm(turn: Turn, asked: Asked, share: float) -> Reply:
    """Between which temperatures water has to be that only feels cold or hot."""
    tank = asked.tank.fresh("temperature")
    facts: dict[str, Any] = {"tank": asked.stored.name, "refused": "temperature_unknown"}
    between = None
    if tank is not None:
        step = limits.TEMPERATURE_STEP
        between = coldest_safe(tank.value, share, step), warmest_safe(tank.value, share, step)
        facts |= {"new_water_from": between[0], "new_water_to": between[1]}
    return await turn.reply(verdict.how_warm(asked.stored.name, share, between), facts=facts)


async def answer(
    turn: Turn,
    question: Question,
    asked: Asked,
    share: float,
    said: Said | None = None,
    beside: Sequence[str] = (),
    whole: float | None = None,
) -> Reply:
    """Answer one change of a share, or several of it in one day; `beside` is said behind it.

    `whole` is the share of the water that so many of them are to replace, where that is asked.
    """
    name = asked.stored.name
    notes, facts = change_bounds.as_asked(asked.supply, share, said)
    share = share if said is None else in_a_day(share, said.times)
    if (problem := conflict(asked.tank)) is not None:
        return await turn.reply(
            refusals.refused(problem, name), facts=dose_reply.refused_facts(problem)
        )
    try:
        waters = waters_of(asked.tank, asked.source)
    except CoreError:
        problem = Refusal("contradiction", readings_of(asked.tank, "ph", "kh"))
        return await turn.reply(
            refusals.refused(problem, name), facts=dose_reply.refused_facts(problem)
        )
    if waters is None:
        return await unmeasured.told(turn, asked, share)
    if salinity_unknown(asked.tank):
        return await turn.reply(
            [verdict.salinity_first(name)], facts={"tank": name, "refused": "salinity_unknown"}
        )
    emergency = is_emergency(asked.tank)
    ro_share = 0.0
    if emergency and is_acid(waters):
        waters, ro_share = cut_to_kh(waters)
    salting = question.analyte == "salinity"
    counted = change_bounds.counted_in(waters, asked.supply, ro_share)
    plan = plan_change(waters, share, counted=counted, emergency=emergency, salting=salting)
    if whole is not None:
        plan = toward(plan, waters, counted, whole)
    source = None if ro_share else asked.source
    if not emergency and (problem := moved_by_now(asked.tank, waters, plan)) is not None:
        return await dose_reply.refuse(turn, problem, name)
    doubt = doubt_of_change(asked.tank, source, waters, plan, counted)
    facts |= change_bounds.chlorine_facts(plan)
    facts |= facts_of(asked, waters, plan, ro_share) | doubt_facts(doubt)
    instead = change_steps.instead(plan, asked.stored.tank.volume_l, facts)
    litres, overdose = asked.stored.tank.volume_l, poison_in(asked.tank) is None
    lines = [verdict.head(plan, waters, name, litres, doubt, instead, overdose=overdose)]
    if whole is not None and not plan.broken:
        lines = [course_words.enough(plan, name, litres, instead)]
    elif days_between(question.text or "") is not None and not plan.broken:
        lines = change_bounds.again(name, waters, plan, facts) or lines
    lines += change_bounds.since_tested(asked, facts)
    lines += change_bounds.beside(asked.supply, waters, plan, facts)
    prepared = words.prepare(waters, asked.source_name, chlorinated=asked.supply.treated > 0.0)
    place = 1 + ("ro_share" in facts) if plan.steps else len(lines)
    steps = bool(plan.steps) and (whole is not None or bool(plan.broken))
    on_the_way = change_steps.lines(asked, waters, plan, facts, whole) if steps else []
    lines[place:place] = [prepared, *on_the_way]
    lines += notes
    figures = [
        words.at_once(share, facts["at_once"]),
        words.stood(facts["stood"]),
        words.leaves(facts["if_co2_leaves"]["ph"], facts["if_co2_leaves"].get("nh3_n")),
    ]
    if (routine := _routine(question, asked, plan)) is not None:
        facts["routine"] = asdict(routine)
        lines.insert(2, words.routine(routine))
    of_water = new_water.notes(turn, asked.tank, asked.supply, plan, facts)
    shown_figures = plan.steps and not steps
    lines += [*of_water[:NOTES], *(figures if shown_figures else []), *of_water[NOTES:]]
    if (hardness := softened(asked.supply.readings)) is not None:
        facts["source_softened"] = dict(zip(("kh", "gh"), hardness, strict=True))
        lines.insert(1, softened_water(asked.source_name, *hardness))
    lines[1:1] = beside
    told = SHOWN if plan.steps else min(SHOWN, len(lines))
    shown, rest = lines[:told], lines[told:]
    ends = [] if doubt is None else doubt_words.more(doubt)
    more = [
        *rest,
        *([] if shown_figures else figures),
        *words.more(plan, waters, asked.source_name),
        *ends,
    ]
    return await turn.reply(shown, more=more, facts=facts)


def moved_by_now(tank: State, waters: Mixing, plan: ChangePlan) -> Refusal | None:
    """Refuse a change on top of today's: unmeasured since, or past the step of the day with it."""
    if (problem := changed_today(tank)) is not None:
        return problem
    if not plan.steps:
        return None
    after = plan.afters[0].water
    now = waters.tank.water
    moves = {"kh": (now.kh, after.kh), "gh": (now.gh, after.gh)}
    known = {name: ends for name, ends in moves.items() if name in waters.known}
    found = moved_today(tank, {name: end for name, (_, end) in known.items()})
    if found is None or "was" not in found.facts:
        return found
    begin, end = known[str(found.facts["analyte"])]
    was = float(found.facts["was"])
    return found if abs(end - was) > abs(begin - was) else None  # back is no further


def _routine(question: Question, asked: Asked, plan: ChangePlan) -> SawTooth | None:
    """Where a routine ends that was asked about, or the safe one that keeps a wished nitrate."""
    per_day = made_per_day(asked.tank, "nitrate")
    new = asked.source.last("nitrate")
    if per_day is None or new is None:
        return None
    every = days_between(question.text or "")
    if every is not None:
        return saw_tooth(per_day, new.value, plan.share, every)
    if question.analyte != "nitrate" or question.target is None:
        return None
    return safe_routine(question.target, per_day, new.value, plan.largest_safe_share)
