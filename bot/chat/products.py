"""Bought products: a label kept once, doses by it, and what doses showed; never a reading."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import asdict
from datetime import timedelta
from typing import Any, Final

from rapidfuzz.distance import OSA

from bot.chat import dose_reply
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.told import Told
from bot.chat.turn import Turn
from bot.chat.words import doses as dose_words
from bot.chat.words import general
from bot.chat.words import products as words
from bot.chat.words import readings as reading_words
from bot.chat.words.text import _
from bot.store.offers import Choice, Offer
from core.advice import limits
from core.advice.dosing import Wish, plan_kh
from core.advice.plan import Plan, Refusal
from core.advice.products import (
    LEARNED_WITHIN,
    SETTLED_AFTER,
    Label,
    Product,
    given_since,
    learn,
    never,
)
from core.advice.salts import SaltWish, plan_salts
from core.advice.state import DISTURBING, State
from core.message.model import Event, Question
from core.substances import SUBSTANCES
from core.tank import Tank

DAILY: Final = {"kh": limits.KH_STEP, "gh": limits.GH_STEP}
LONG_NAME: Final = 6
"""Letters from which on a name may have two slips, as a tank's."""

MOMENT: Final = timedelta(microseconds=1)
"""A reading told together with a dose is the one before it."""

_WITH = re.compile(
    r"\b(?:with|using|mit|avec|con|com|met|med)\s+(?:my\s+|the\s+)?(.+?)\s*[.!?]*$", re.IGNORECASE
)
_FORGET = re.compile(r"\s*(?:forget|delete|remove)\s+(?:the\s+)?(.+?)[.!]*\s*", re.IGNORECASE)
_LIST = frozenset({"products", "my products", "/products", "list products", "what products"})


async def known(turn: Turn) -> list[Product]:
    """The chat's products, but none that by its name is nothing for animals."""
    kept = await turn.uow.products.of_chat(turn.chat.id)
    return [product for product in kept if never(product.name) is None]


async def manage(turn: Turn) -> list[Reply] | None:
    """``products`` lists, ``forget my buffer`` forgets; None where it is other talk."""
    text = turn.incoming.text.strip().casefold()
    if text.rstrip(".!?") in _LIST:
        kept = await known(turn)
        facts = {"products": [facts_of(product) for product in kept]}
        return [await turn.reply(words.listing(kept), facts=facts)]
    found = _FORGET.fullmatch(turn.incoming.text)
    for name in (found[1], found[1].removeprefix("my ")) if found is not None else ():
        if await turn.uow.products.forget(turn.chat.id, name):
            return [await turn.reply(words.forgotten(name))]
    return None


async def dose(turn: Turn, question: Question) -> list[Reply] | None:
    """``dose kh 6 with my buffer``; None where no product is meant."""
    kept = await known(turn)
    meant = _meant(question.text or "", kept)
    if not meant:
        said = _with(turn, question)
        if said is not None:
            return [await _unknown(turn, said, kept)]
        return await _after_product(turn, question, kept)
    analyte = question.analyte or meant[0].label.analyte
    product = next((each for each in meant if each.label.analyte == analyte), None)
    if product is None:
        return [await turn.reply(words.other_analyte(meant[0], analyte))]
    if question.target is None and question.delta is None:
        return None
    return [await _planned(turn, question, product)]


async def _after_product(
    turn: Turn, question: Question, kept: Sequence[Product]
) -> list[Reply] | None:
    """Refuse a salt on a reading from before a product that raises the same."""
    raising = [product for product in kept if product.label.analyte == question.analyte]
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


async def _planned(turn: Turn, question: Question, product: Product) -> Reply:
    named = turn.tank_named(question.tank) if question.tank else None
    about_any = named is None and question.volume_l is not None
    stored = None if about_any else named or turn.current_tank
    empty = State(Tank(name=""), turn.local_now)
    state = empty if stored is None else await state_of(turn, stored, turn.now)
    name = stored.name if stored is not None else None
    volume = question.volume_l or state.tank.volume_l
    reading = state.last(product.label.analyte)
    start = question.start_value
    if start is None and reading is not None and not reading.is_limit:
        start = reading.value
    old = None
    if question.start_value is None and reading is not None and not reading.is_fresh(state.now):
        old = reading.age(state.now)
    if volume is None:
        return await dose_reply.refuse(turn, Refusal("volume_unknown"), name)
    if (problem := given_since(product.name, state, reading)) is not None:
        return await dose_reply.refuse(turn, problem, name)
    plan = _as_salts(product.label.analyte, question, state, known_tank=stored is not None)
    if isinstance(plan, Refusal):
        return await dose_reply.refuse(turn, plan, name)
    change, parts = plan.goals[0].change, plan.count
    below, keep = None, False
    if plan.gate is not None and product.label.analyte == "kh":
        below, keep = plan.gate.only_below, plan.gate.keep_co2
    each = product.needed(change / parts, volume)
    unit = "grams" if product.label.unit == "g" else "millilitres"
    facts: dict[str, Any] = {
        "product": facts_of(product), "volume_l": volume, "analyte": product.label.analyte,
        "delta": change, unit: each * parts, "parts": [each] * parts, "every_hours": 24,
    }  # fmt: skip
    if name is not None:
        facts["tank"] = name
    if below is not None:
        facts["only_if_ammonia_below"] = below
    lines = words.dose(
        product, name, volume, start, change, parts, each, below, keep_co2=keep, old=old
    )
    held: dict[str, Any] = {
        "tank_id": stored.id if stored is not None else None,
        "volume_l": volume,
        "substance": product.name,
        unit: each,
    }
    choices = [
        Choice(_(dose_words.LOG_IT), "log_dose", "", held),
        Choice(_(dose_words.RETEST), "retest", "", held),
    ]
    return await turn.reply(lines, choices=choices, facts=facts)


def _as_salts(
    analyte: str, question: Question, state: State, *, known_tank: bool
) -> Plan | Refusal:
    """The same wish by the usual salts: their bounds are a product's, whose salts nobody told."""
    if analyte == "kh":
        wish = Wish(
            target=question.target,
            delta=question.delta,
            start=question.start_value,
            volume_l=question.volume_l,
            premises=question.premises,
        )
        return plan_kh(wish, state, known_tank=known_tank)
    start = question.start_value
    salts = SaltWish(
        targets={} if question.target is None else {analyte: question.target},
        deltas={} if question.delta is None else {analyte: question.delta},
        starts={} if start is None else {analyte: start},
        volume_l=question.volume_l,
        premises=question.premises,
    )
    plans = plan_salts(salts, state, known_tank=known_tank)
    return plans if isinstance(plans, Refusal) else plans[0]


async def _unknown(turn: Turn, said: str, known: Sequence[Product]) -> Reply:
    facts = {"refused": "substance_unknown", "substance": said}
    near = [product.name for product in known if _is_slip(said, product.name)]
    text = turn.incoming.text
    choices = [
        Choice(name, "say_again", "", {"text": text.replace(said, name)}) for name in near[:3]
    ]
    return await turn.reply(words.unknown(said, known), choices=choices, facts=facts)


def _is_slip(said: str, name: str) -> bool:
    """Whether a name is another one with a slip or two of the finger."""
    most = 1 if len(name) < LONG_NAME else 2
    return OSA.distance(said.casefold(), name.casefold(), score_cutoff=most) <= most


async def offer_to_learn(turn: Turn, told: Told) -> Reply | None:
    """After a reading of KH or GH: what the dose of a product before it seems to have done."""
    volume = told.tank.tank.volume_l
    read = {each.what.analyte for each in told.readings} & DAILY.keys()
    if volume is None or not read:
        return None
    lately = await turn.uow.log.events(told.tank.id, since=told.at - LEARNED_WITHIN)
    done = [e for e in lately if e.at <= told.at and e.what.kind in DISTURBING]
    dosed = [e for e in done if e.what.kind == "dose"]
    if len(done) != 1 or len(dosed) != 1 or told.at - dosed[0].at < SETTLED_AFTER:
        return None
    name, amount, unit = _dosed(dosed[0].what)
    if name is None or amount is None or never(name) is not None:
        return None
    state = await state_of(turn, told.tank, told.at)
    for analyte in sorted(read):
        before, after = state.past.before(analyte, dosed[0].at + MOMENT), state.last(analyte)
        if before is None or after is None:
            continue
        product = learn(name, amount, unit, volume, before, after)
        if product is not None:
            held = {"name": name, "label": asdict(product.label), "low": product.rise_low}
            keep = Choice(
                _(words.KEEP_IT), "keep_effect", "yes", held | {"high": product.rise_high}
            )
            return await turn.reply(
                [words.learned(product, before.value, after.value)],
                choices=[keep, Choice(_(words.LEAVE_IT), "leave_effect", "no")],
                facts={"product": facts_of(product)},
            )
    return None


async def press_keep(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Keep what a product was seen to do."""
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    held = choice.arguments
    label = Label(**held["label"])
    product = Product(held["name"], label, held["low"], held["high"], learned=True)
    await turn.uow.products.keep(turn.chat.id, product, turn.now)
    return [await turn.reply(words.kept_as_seen(product), facts={"product": facts_of(product)})]


async def press_leave(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Keep nothing of it."""
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    return [await turn.reply(reading_words.left_out())]


def _dosed(event: Event) -> tuple[str | None, float | None, str]:
    """The product of a dose with its amount; no name where it is a salt that is known."""
    if event.substance is None or event.substance in SUBSTANCES:
        return None, None, ""
    if event.grams:
        return event.substance, event.grams, "g"
    return event.substance, event.millilitres, "ml"


def _meant(text: str, known: Sequence[Product]) -> list[Product]:
    """The products whose name stands in a text, the longest first."""
    folded = text.casefold()
    found = [p for p in known if re.search(rf"(?<!\w){re.escape(p.name.casefold())}(?!\w)", folded)]
    return [product for product in found if product.name == found[0].name]


def _with(turn: Turn, question: Question) -> str | None:
    """What a dose is to be made with, where that is nothing that is known."""
    if question.substance is not None or question.analyte not in DAILY:
        return None
    found = _WITH.search(question.text or "")
    if found is None or turn.tank_named(found[1]) is not None:
        return None
    return None if re.search(r"\d|\bro\b|water", found[1], re.IGNORECASE) else found[1]


def facts_of(product: Product) -> dict[str, Any]:
    """A product with what it does and between which ends."""
    return {
        "name": product.name, **asdict(product.label),
        "rise_span": [product.rise_low, product.rise_high], "learned": product.learned,
    }  # fmt: skip
