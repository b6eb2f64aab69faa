"""How much of what: the dose question finds its topic here; buffer alone is answered here."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

from bot.chat import (
    buckets,
    by_water,
    changes,
    daily,
    dose_reply,
    effects,
    just_told,
    lowering,
    poison_first,
    product_doses,
    put_back,
    routines,
    salts,
    source_blends,
    tank_volumes,
    treatments,
    which_soda,
)
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.supply import read
from bot.chat.turn import Turn
from bot.chat.wished import TABLE_SALT, of_the_sea
from bot.chat.words import refusals
from bot.store.tanks import StoredTank
from core.advice.buffers import STRONG
from core.advice.dosing import Wish, plan_kh, refused_substance
from core.advice.forbidden import forbidden
from core.advice.may_rise import raising_refused
from core.advice.plan import Plan, Refusal
from core.advice.salts import HIGHEST
from core.advice.scheduling import per_gram
from core.advice.state import State
from core.message import acid_in, put_in
from core.message.doubts import INCOMPLETE_QUESTION
from core.message.fold import fold
from core.message.model import Parsed, Question
from core.message.part_words import parts_in
from core.message.waters import names_pure
from core.substances import ACIDS, MEDIA
from core.tank import Tank
from core.water.substances import SUBSTANCES

CALLED = re.compile(r"\b(emergency|urgent|crash(ed|ing)?)\b", re.IGNORECASE)
"""The keeper calls it an emergency."""


def has_stray_number(parsed: Parsed) -> bool:
    """Whether a number of the question was not understood: it was asked about, nothing is dosed."""
    return any(doubt.reason == INCOMPLETE_QUESTION for doubt in parsed.doubts)


def _raises_none(question: Question) -> bool:
    """Whether it is asked to raise what a salt does not: kh with epsom salt, to no value yet."""
    salt, analyte = question.substance, question.analyte
    if salt is None or salt not in SUBSTANCES or analyte not in {"kh", "gh"}:
        return False
    wished = question.target is not None or question.delta is not None
    return not wished and per_gram(salt, analyte) <= 0.0


def _forbidden(question: Question) -> Refusal | None:
    """The refusal of what the cautions refuse; an acid by its name, where it is known."""
    reason = forbidden(f"{question.text or ''} {question.substance or ''}")
    if reason is None:
        peroxide = acid_in.thing_named(question.text or "") == "peroxide"
        return Refusal("harmful", {"substance": "hydrogen peroxide"}) if peroxide else None
    known = reason == "acid" and question.substance in ACIDS
    return Refusal(reason, {"substance": question.substance or ""} if known else {})


def _raises_no_kh(substance: str) -> bool:
    """Whether a salt is known, and is for something else: what its number is must be asked."""
    return substance in SUBSTANCES and per_gram(substance, "kh") <= 0.0


async def effect(turn: Turn, question: Question, parsed: Parsed) -> list[Reply]:
    """Answer what an amount or a medium does; a wish in such words is a dose."""
    if (refusal := _forbidden(question)) is not None:
        return [await dose_reply.refuse(turn, refusal, None)]
    if (blend := await source_blends.gives(turn, question)) is not None:
        return [blend]
    if has_stray_number(parsed):
        return []
    wished = question.target is not None or question.delta is not None
    if wished and question.substance not in MEDIA:
        return await dose(turn, question, parsed)
    return await effects.effect(turn, question, parsed)


async def change(turn: Turn, question: Question, parsed: Parsed) -> list[Reply]:
    """Answer what a change does, or reaches; what can only rise by dosing is a dose."""
    stored = turn.tank_named(question.tank) if question.tank else turn.current_tank
    wished, analyte = question.target, question.analyte or ""
    if has_stray_number(parsed) and not (question.percent or question.litres or wished):
        return []  # what if i change -10%
    told = (question.percent, question.litres, wished, question.delta)
    if question.substance == TABLE_SALT and all(each is None for each in told):
        return await dose(turn, replace(question, kind="dose"), parsed)  # how much salt to replace
    bound = question.percent or question.litres or question.bound
    text = fold(question.text or "")
    by_salt = not (bound or by_water.is_means(question))
    if stored is not None and wished is not None and analyte in HIGHEST and by_salt:
        rows = await turn.uow.log.last_of_each(stored.id, [analyte], until=turn.now)
        if any(reading.value < wished for reading in read(turn, rows, stored.tank)):
            return await dose(turn, replace(question, kind="dose"), parsed)
    if stored is not None and question.delta is not None and analyte in lowering.ANALYTES:
        reading = (await state_of(turn, stored, turn.now)).last(analyte)
        if reading is not None and not bound:  # lower kh by 1
            question = replace(question, target=reading.value + question.delta, delta=None)
    if stored is not None and (by_salt_water := await lowering.in_sea(turn, question, stored)):
        return [by_salt_water]
    wished = question.target is not None or question.delta is not None
    if stored is not None and not (bound or wished) and routines.HOW_OFTEN.search(text):
        return await routines.often(turn, question, parsed, stored.tank)
    unsaid = None if bound or wished else stored
    if unsaid and (back := await put_back.how(turn, question, unsaid)) is not None:
        return back
    if not (bound or wished) and question.kind == "change" and analyte in lowering.ANALYTES:
        return await lowering.how(turn, question, analyte)
    return await changes.change(turn, question, parsed)


async def dose(turn: Turn, question: Question, parsed: Parsed) -> list[Reply]:
    """Answer how much of what: the topic of a dose by what is asked for."""
    if has_stray_number(parsed):
        return []
    text = question.text or ""
    if (refusal := _forbidden(question)) is not None:
        return [await dose_reply.refuse(turn, refusal, None)]
    if put_in.is_asked(text) and None not in (question.start_value, question.target):
        stored = turn.tank_named(question.tank or "") or turn.current_tank
        volume = None if stored is None else stored.tank.volume_l
        question, turn.put_in = replace(question, volume_l=question.volume_l or volume), True
    if _raises_none(question):
        asked = Question("effect", tank=question.tank, substance=question.substance, text=text)
        return await effect(turn, asked, parsed)
    question = daily.as_wish(question)
    if (used := await daily.answer(turn, question)) is not None:
        return used
    if question.bound == "<" and question.substance is None:
        return await change(turn, replace(question, kind="change"), parsed)
    question = of_the_sea(question, turn.tank_named(question.tank or "") or turn.current_tank)
    if question.volume_l is None and question.millilitres is not None:
        # Millilitres of a tank are a slip; of a product they are no amount that we know.
        small = {"volume_l": question.millilitres / 1000.0}
        return [await dose_reply.refuse(turn, Refusal("volume_implausible", small), None)]
    if (question.target or question.delta) and by_water.is_means(question) and not names_pure(text):
        by_change = replace(question, kind="change", substance=None)
        return await change(turn, by_change, parsed)
    poisoned = None
    if salts.is_for_upkeep(question) and not turn.put_in:
        poisoned = await poison_first.of_asked(turn, question)
    if poisoned is not None and await by_water.made_of(turn, question) is None:
        return [poisoned]
    turn.parts = turn.parts or parts_in(text)
    question = just_told.with_soda(turn, await just_told.of_label(turn, question))
    if (by_product := await product_doses.dose(turn, question)) is not None:
        return by_product
    if question.substance in MEDIA:
        return [await effects.medium(turn, question, question.substance)]
    if question.substance == which_soda.SODA and question.analyte == "kh":
        return await which_soda.planned(turn, question, parsed, dose)
    if (share := await source_blends.share_of(turn, question)) is not None:
        return [share]
    if (source := await by_water.made_of(turn, question)) is not None:
        return [await buckets.of_source(turn, question, source)]
    if names_pure(text) and (mixed := await source_blends.reach(turn, question)) is not None:
        return [mixed]
    if names_pure(text) and (question.target is not None or question.volume_l):
        return await buckets.with_pure_water(turn, question, parsed)
    if (new_sea := await buckets.sea_water_asked(turn, question)) is not None:
        return [new_sea]
    if (topic := salts.topic_of(question)) is not None:
        return await topic(turn, question, parsed)
    substance = question.substance or ""
    if substance.endswith(" acid") or substance == "vinegar":
        acid = Refusal("acid", {"substance": substance})
        return [await dose_reply.refuse(turn, acid, question.tank)]
    if question.target is None and question.delta is None:
        if substance == TABLE_SALT:
            return await treatments.nitrite(turn, question, parsed)
        unsaid = State(Tank(name=""), turn.local_now)
        problem = refused_substance(substance, unsaid) if substance in STRONG else None
        if problem is not None:  # how much lime
            return [await dose_reply.refuse(turn, problem, question.tank)]
        return [await dose_reply.ask_value(turn, question)]
    if question.analyte is None and _raises_no_kh(substance):
        return [await dose_reply.ask_value(turn, question)]
    if question.analyte is None and question.substance is None:
        return [await dose_reply.ask_analyte(turn, question)]
    wish = Wish(
        target=question.target,
        delta=question.delta,
        start=question.start_value,
        volume_l=question.volume_l,
        substance=question.substance or "sodium bicarbonate",
        premises=question.premises,
        called=CALLED.search(turn.incoming.text) is not None,
        parts=turn.parts or 1,
    )
    named = turn.tank_named(question.tank) if question.tank else None
    if (both := salts.one_at_a_time(question, named or turn.current_tank)) is not None:
        return [await dose_reply.refuse(turn, both, question.tank)]
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
        return await dose_reply.planned(turn, plan, stored, name)
    if plan.reason == "volume_unknown" and stored is not None:
        if (gate := raising_refused(state)) is not None:
            return await dose_reply.refuse(turn, gate, name)
        return await tank_volumes.ask_volume(
            turn, stored, refusals.refused(plan, name), _kept(wish)
        )
    gate = raising_refused(state) if plan.reason == "kh_unknown" and stored is not None else None
    return await dose_reply.refuse(turn, gate or plan, name)


def _kept(wish: Wish) -> dict[str, Any]:
    """A wish as an offer keeps it until the volume is known."""
    return {
        "target": wish.target,
        "delta": wish.delta,
        "start": wish.start,
        "substance": wish.substance,
        "premises": dict(wish.premises),
    }
