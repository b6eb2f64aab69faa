"""Doses of bought products: to a wish, by their labels alone, and what an amount of one does."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from rapidfuzz.distance import OSA

from bot.chat import dose_reply
from bot.chat.model import Reply
from bot.chat.products import MOMENT, SPOKEN_OF, about, facts_of, is_of
from bot.chat.state import state_of
from bot.chat.told import Told
from bot.chat.turn import Turn
from bot.chat.words import doses as dose_words
from bot.chat.words import product_doses as words
from bot.chat.words import products as product_words
from bot.chat.words import refusals
from bot.chat.words.text import _
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.advice.plan import Refusal
from core.advice.product_plans import (
    ProductPlan,
    ProductWish,
    days_dose,
    days_of,
    effect_of,
    in_water,
    plan_product,
)
from core.advice.products import HARDNESS, Product, given_since
from core.advice.state import State
from core.message.model import Question
from core.substances import SUBSTANCES
from core.tank import Tank

LONG_NAME: Final = 6
"""Letters from which on a name may have two slips, as a tank's."""

_IN_ML: Final = re.compile(r"\b(?:ml|mls|millilit\w{0,5}|mililit\w{0,5})\b", re.IGNORECASE)

_WITH = re.compile(
    r"\b(?:with|using|mit|avec|con|com|met|med|z|ze)\s+(?:my\s+|the\s+)?(.+?)\s*[.!?]*$",
    re.IGNORECASE,
)


async def dose(turn: Turn, question: Question) -> list[Reply] | None:
    """``dose kh 6 with my buffer``, ``how much of it``; None where no product is meant."""
    meant = meant_by(question, turn.products) or _by_unit(question, turn.products)
    if not meant:
        said = with_unknown(turn, question)
        said = said or _unheard_of(question)
        if said is not None:
            return [await _unknown(turn, said)]
        return await _after_product(turn, question)
    stored, state, volume = await _water(turn, question)
    name = stored.name if stored is not None else None
    if volume is None:
        return [await dose_reply.refuse(turn, Refusal("volume_unknown"), name)]
    known_tank = stored is not None
    effects = in_water(meant, state)
    wished = question.target is not None or question.delta is not None
    if not wished:
        given = days_dose(effects, volume, state, known_tank=known_tank)
        if isinstance(given, Refusal):
            return [await dose_reply.refuse(turn, given, name)]
        return [await by_label(turn, given, stored, question.analyte)]
    analyte = question.analyte or effects[0].label.analyte
    if all(each.label.analyte != analyte for each in effects):
        if any(each.label.analyte == analyte for each in meant):  # hardness is what counts there
            return [await dose_reply.refuse(turn, Refusal("use_gh", {"analyte": analyte}), name)]
        return [await turn.reply(product_words.other_analyte(meant, analyte))]
    wish = ProductWish(
        analyte, question.target, question.delta, question.start_value, volume,
        question.premises, turn.parts or 1,
    )  # fmt: skip
    plan = plan_product(effects, wish, state, known_tank=known_tank)
    if isinstance(plan, Refusal):
        return [await dose_reply.refuse(turn, plan, name)]
    return [await _planned(turn, plan, stored)]


def _by_unit(question: Question, products: Sequence[Product]) -> list[Product]:
    """`how many ml to gh 6`: the only liquid that raises it, as no salt is measured so."""
    if question.substance is not None or question.analyte is None:
        return []
    if _IN_ML.search(question.text or "") is None:
        return []
    liquids = [each for each in products if each.label.unit == "ml"]
    raising = {each.name for each in liquids if each.label.analyte == question.analyte}
    return [each for each in liquids if each.name in raising] if len(raising) == 1 else []


async def effect(turn: Turn, question: Question) -> list[Reply] | None:
    """``what does 20 ml of it do``; None where no product is meant."""
    meant = meant_by(question, turn.products)
    amount = question.grams if meant and meant[0].label.unit == "g" else question.millilitres
    if not meant:
        return None
    if amount is None:
        told = question.grams or question.millilitres or question.spoons
        if not told:
            return await about(turn, meant[0].name)
        return [await turn.reply(words.in_its_unit(meant[0]))]
    stored, state, volume = await _water(turn, question)
    if volume is None:
        name = stored.name if stored is not None else None
        return [await dose_reply.refuse(turn, Refusal("volume_unknown"), name)]
    effects = in_water(meant, state)
    plan, problem = effect_of(effects, amount, volume, state, known_tank=stored is not None)
    against = [] if problem is None else refusals.refused(problem, None)[:1]
    shown = facts(plan, stored) | {"days": plan.count}
    if problem is not None:
        shown |= dose_reply.refused_facts(problem)
    lines = words.effect(plan, against)
    return [await turn.reply(lines, facts=shown, context={SPOKEN_OF: meant[0].name})]


@dataclass(frozen=True, slots=True)
class OverADay:
    """So much of a product that went in at once, what it raises and how many days it belongs to."""

    product: Product
    amount: float
    rises: Mapping[str, float]
    days: int


async def too_much(turn: Turn, told: Told) -> Reply | None:
    """Right after a dose of a product: that it was more than one day's, by its label."""
    if (over := await over_a_day(turn, told)) is None:
        return None
    shown = {"product": facts_of(over.product), "rises": dict(over.rises), "days": over.days}
    lines = words.too_much(over.product, over.amount, over.rises)
    return await turn.reply(lines, facts={"tank": told.tank.name, **shown})


async def over_a_day(turn: Turn, told: Told) -> OverADay | None:
    """The first dose told of a product that was more than one day's, by its label."""
    volume = told.tank.tank.volume_l
    for event in told.events if volume is not None else ():
        meant = [each for each in turn.products if is_of(event.what, each)]
        unit = meant[0].label.unit if meant else ""
        amount = event.what.grams if unit == "g" else event.what.millilitres
        if not meant or amount is None or volume is None:
            continue
        state = await state_of(turn, told.tank, event.at - MOMENT)
        rises, days = days_of(meant, amount, volume, state)
        if days > 1:
            return OverADay(meant[0], amount, rises, days)
    return None


async def by_label(
    turn: Turn, plan: ProductPlan, stored: StoredTank | None, analyte: str | None = None
) -> Reply:
    """What a label gives for a water, a day's step of hardness at most."""
    lines = words.by_label(plan, stored.name if stored is not None else None, analyte)
    held = {SPOKEN_OF: plan.product.name}
    return await turn.reply(
        lines,
        choices=_log_it(plan, stored, retest=plan.product.label.analyte in HARDNESS),
        facts=facts(plan, stored),
        context=held,
    )


async def _water(turn: Turn, question: Question) -> tuple[StoredTank | None, State, float | None]:
    """The tank that is asked about, or any water, with its state and volume.

    A wish for a volume begins, unless it says where, at what the tank in use has.
    """
    named = turn.tank_named(question.tank) if question.tank else None
    begins_here = question.target is not None and question.start_value is None
    about_any = named is None and question.volume_l is not None and not begins_here
    stored = None if about_any else named or turn.current_tank
    empty = State(Tank(name=""), turn.local_now)
    state = empty if stored is None else await state_of(turn, stored, turn.now)
    volume = question.volume_l or question.litres or state.tank.volume_l
    if question.percent is not None and volume is not None:
        volume *= question.percent / 100.0
    return stored, state, volume


async def _after_product(turn: Turn, question: Question) -> list[Reply] | None:
    """Refuse a salt on a reading from before a product that raises the same."""
    raising = [each for each in turn.products if each.label.analyte == question.analyte]
    named = turn.tank_named(question.tank) if question.tank else None
    stored = named or turn.current_tank
    if not raising or stored is None or question.start_value is not None:
        return None
    state = await state_of(turn, stored, turn.now)
    reading = state.last(str(question.analyte))
    for product in raising:
        if (problem := given_since(product.name, state, reading)) is not None:
            return [await dose_reply.refuse(turn, problem, stored.name)]
    return None


async def _planned(turn: Turn, plan: ProductPlan, stored: StoredTank | None) -> Reply:
    lines = words.dose(plan, stored.name if stored is not None else None)
    delta = plan.rises[plan.product.label.analyte]
    shown = facts(plan, stored) | {
        **({} if plan.start is None else {"from": plan.start, "to": plan.start + delta}),
        "delta": delta,
        "parts": [plan.each] * plan.count,
        "every_hours": 24,
    }
    return await turn.reply(
        lines,
        choices=_log_it(plan, stored),
        facts=shown,
        context={SPOKEN_OF: plan.product.name},
    )


def _log_it(plan: ProductPlan, stored: StoredTank | None, *, retest: bool = True) -> list[Choice]:
    held: dict[str, Any] = {
        "tank_id": stored.id if stored is not None else None,
        "volume_l": plan.volume_l,
        "substance": plan.product.name,
        _measure(plan): plan.each,
    }
    choices = [Choice(_(dose_words.LOG_IT), "log_dose", "", held)]
    if retest:
        choices.append(Choice(_(dose_words.RETEST), "retest", "", held))
    return choices


def _measure(plan: ProductPlan) -> str:
    return "grams" if plan.product.label.unit == "g" else "millilitres"


def facts(plan: ProductPlan, stored: StoredTank | None) -> dict[str, Any]:
    """The numbers of a dose, as shown."""
    told: dict[str, Any] = {
        "product": facts_of(plan.product),
        "volume_l": plan.volume_l,
        "analyte": plan.product.label.analyte,
        _measure(plan): plan.amount,
        "rises": dict(plan.rises),
    }
    if stored is not None:
        told["tank"] = stored.name
        if plan.gate is not None and plan.gate.only_below is not None:
            told["only_if_ammonia_below"] = plan.gate.only_below
    return told


def meant_by(question: Question, known: Sequence[Product]) -> list[Product]:
    """The effects of the product that a question names, of several the longest name."""
    named = [each for each in known if each.name == question.substance]
    if named or question.substance in SUBSTANCES:
        return named
    text = (question.text or "").casefold()
    found = [p for p in known if re.search(rf"(?<!\w){re.escape(p.name.casefold())}(?!\w)", text)]
    return [each for each in found if each.name == found[0].name]


def with_unknown(turn: Turn, question: Question) -> str | None:
    """What a dose is to be made with, where that is nothing that is known."""
    if question.substance is not None or question.analyte not in HARDNESS:
        return None
    found = _WITH.search(question.text or "")
    if found is None or turn.tank_named(found[1]) is not None:
        return None
    return None if re.search(r"\d|\bro\b|water", found[1], re.IGNORECASE) else found[1]


def _unheard_of(question: Question) -> str | None:
    """What so much of is asked for a volume or a change, where that is nothing that is known."""
    told = (question.analyte, question.target, question.delta)
    said = question.substance
    if said is None or said in SUBSTANCES or any(each is not None for each in told):
        return None
    return said if question.volume_l or question.percent else None


async def _unknown(turn: Turn, said: str) -> Reply:
    refused = {"refused": "substance_unknown", "substance": said}
    names = list(dict.fromkeys(product.name for product in turn.products))
    text = turn.incoming.text
    choices = [
        Choice(name, "say_again", "", {"text": text.replace(said, name)})
        for name in [each for each in names if _is_slip(said, each)][:3]
    ]
    return await turn.reply(product_words.unknown(said, names), choices=choices, facts=refused)


def _is_slip(said: str, name: str) -> bool:
    """Whether a name is another one with a slip or two of the finger."""
    most = 1 if len(name) < LONG_NAME else 2
    return OSA.distance(said.casefold(), name.casefold(), score_cutoff=most) <= most
