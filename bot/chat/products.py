"""Bought products: a label kept once, doses by it, and what doses showed; never a reading."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import asdict
from datetime import timedelta
from typing import Any, Final

from bot.chat import dose_reply
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.told import Told
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import products as words
from bot.chat.words import readings as reading_words
from bot.chat.words.text import _
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.advice import limits
from core.advice.dosing import Wish, plan_kh
from core.advice.plan import Refusal
from core.advice.products import LEARNED_WITHIN, SETTLED_AFTER, Label, Product, learn, read_label
from core.advice.state import DISTURBING, State
from core.message.lexicon import lexicon
from core.message.model import Command, Event, Parsed, Question
from core.substances import SUBSTANCES
from core.tank import Tank

DAILY: Final = {"kh": limits.KH_STEP, "gh": limits.GH_STEP}
MOMENT: Final = timedelta(microseconds=1)
"""A reading told together with a dose is the one before it."""

_WITH = re.compile(
    r"\b(?:with|using|mit|avec|con|com|met|med)\s+(?:my\s+|the\s+)?(.+?)\s*[.!?]*$", re.IGNORECASE
)
_NAMED = re.compile(r"\s*([^\d:=]{1,40}?)\s*[:=]\s*\d")
_ACTING: Final = frozenset({"ask", "command", "event"})
_FORGET = re.compile(r"\s*(?:forget|delete|remove)\s+(?:the\s+)?(.+?)[.!]*\s*", re.IGNORECASE)
_LIST = frozenset({"products", "my products", "/products", "list products", "what products"})


async def command(turn: Turn, told: Command, parsed: Parsed) -> list[Reply]:
    """A label in any of the parser's languages; only what raises hardness can be reckoned."""
    label = read_label(told.arguments)
    if label is None:
        return [await turn.reply(words.label_of_another_thing())]
    if isinstance(label, Refusal):
        return [await dose_reply.refuse(turn, Refusal("label_implausible"), None)]
    name = _name(turn.incoming.text)
    product = Product.of_label(name or "it", label)
    lines = [words.how_to_keep()]
    if name is not None:
        await turn.uow.products.keep(turn.chat.id, product, turn.now)
        lines = [words.kept(product)]
    stored = turn.tank_named(parsed.tank) if parsed.tank else turn.current_tank
    if stored is None or stored.tank.volume_l is None:
        said = words.label_without_tank(label) if name is None else []
        facts = {"product": _facts(product)} if name is not None else {}
        return [await turn.reply([*said, *lines], facts=facts)]
    return [await _days_step(turn, label, stored, stored.tank.volume_l, lines)]


async def _days_step(
    turn: Turn, label: Label, stored: StoredTank, volume: float, lines: list[str]
) -> Reply:
    """Say what a label comes to in the tank at hand, a day's step at most."""
    rise, below, keep = DAILY[label.analyte], None, False
    if label.analyte == "kh":
        # As so much bicarbonate: the same gates, and the same small part where KH is too low.
        state = await state_of(turn, stored, turn.now)
        plan = plan_kh(Wish(delta=rise), state, known_tank=True)
        if isinstance(plan, Refusal):
            return await dose_reply.refuse(turn, plan, stored.name)
        rise = plan.goals[0].change / plan.count
        if plan.gate is not None:
            below, keep = plan.gate.only_below, plan.gate.keep_co2
    facts: dict[str, Any] = {
        "tank": stored.name,
        "volume_l": volume,
        "analyte": label.analyte,
        "raises": rise,
        "grams" if label.unit == "g" else "millilitres": label.needed(rise, volume),
    }
    if below is not None:
        facts["only_if_ammonia_below"] = below
    told = words.label(label, stored.name, volume, rise, below, keep_co2=keep)
    return await turn.reply([*told, *lines], facts=facts)


def is_label(turn: Turn, parsed: Parsed) -> bool:
    """Whether a message tells the words of a label; its "kh 1" is no reading."""
    return parsed.command is None and read_label(turn.incoming.text) is not None


async def manage(turn: Turn) -> list[Reply] | None:
    """``products`` lists, ``forget my buffer`` forgets; None where it is other talk."""
    text = turn.incoming.text.strip().casefold()
    if text.rstrip(".!?") in _LIST:
        known = await turn.uow.products.of_chat(turn.chat.id)
        facts = {"products": [_facts(product) for product in known]}
        return [await turn.reply(words.listing(known), facts=facts)]
    found = _FORGET.fullmatch(turn.incoming.text)
    for name in (found[1], found[1].removeprefix("my ")) if found is not None else ():
        if await turn.uow.products.forget(turn.chat.id, name):
            return [await turn.reply(words.forgotten(name))]
    return None


async def dose(turn: Turn, question: Question) -> list[Reply] | None:
    """``dose kh 6 with my buffer``; None where no product is meant."""
    known = await turn.uow.products.of_chat(turn.chat.id)
    meant = _meant(question.text or "", known)
    if not meant:
        said = _with(turn, question)
        return None if said is None else [await _unknown(turn, said, known)]
    analyte = question.analyte or meant[0].label.analyte
    product = next((each for each in meant if each.label.analyte == analyte), None)
    if product is None:
        return [await turn.reply(words.other_analyte(meant[0], analyte))]
    if question.target is None and question.delta is None:
        return None
    return [await _planned(turn, question, product)]


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
    below, keep = None, False
    if product.label.analyte == "kh":
        # What the product holds is not known: it is bound as so much bicarbonate is.
        wish = Wish(
            target=question.target,
            delta=question.delta,
            start=question.start_value,
            volume_l=question.volume_l,
            premises=question.premises,
        )
        plan = plan_kh(wish, state, known_tank=stored is not None)
        if isinstance(plan, Refusal):
            return await dose_reply.refuse(turn, plan, name)
        change, parts = plan.goals[0].change, plan.count
        if plan.gate is not None:
            below, keep = plan.gate.only_below, plan.gate.keep_co2
    else:
        if question.target is not None and start is None:
            return await dose_reply.refuse(
                turn, Refusal("reading_unknown", {"analyte": "gh"}), name
            )
        change = question.delta or (question.target or 0.0) - (start or 0.0)
        if change <= 0.0:
            ways: dict[str, float | str] = {
                "analyte": "gh",
                "from": start or 0.0,
                "to": question.target or 0.0,
            }
            return await dose_reply.refuse(turn, Refusal("target_reached", ways), name)
        parts = math.ceil(change / DAILY["gh"] - 1e-9)
    each = product.needed(change / parts, volume)
    unit = "grams" if product.label.unit == "g" else "millilitres"
    facts: dict[str, Any] = {
        "product": _facts(product), "volume_l": volume, "analyte": product.label.analyte,
        "delta": change, unit: each * parts, "parts": [each] * parts, "every_hours": 24,
    }  # fmt: skip
    if name is not None:
        facts["tank"] = name
    if below is not None:
        facts["only_if_ammonia_below"] = below
    lines = words.dose(
        product, name, volume, start, change, parts, each, below, keep_co2=keep, old=old
    )
    return await turn.reply(lines, facts=facts)


async def _unknown(turn: Turn, said: str, known: Sequence[Product]) -> Reply:
    facts = {"refused": "substance_unknown", "substance": said}
    return await turn.reply(words.unknown(said, known), facts=facts)


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
    if name is None or amount is None:
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
                facts={"product": _facts(product)},
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
    return [await turn.reply(words.kept_as_seen(product), facts={"product": _facts(product)})]


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


def _name(text: str) -> str | None:
    """What stands before a colon and the label's first number, as the product's name.

    A name of words that mean something in a message (`kh`, `dose kh`) would be found in each of
    them; several that end in no analyte are a name all the same (`kh plus`).
    """
    found = _NAMED.match(text)
    if found is None:
        return None
    known = lexicon().words
    kinds = [known.get(word.casefold(), ("own", ""))[0] for word in found[1].split()]
    joined = len(kinds) > 1 and kinds[-1] != "analyte" and not _ACTING & set(kinds)
    return found[1] if "own" in kinds or joined else None


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


def _facts(product: Product) -> dict[str, Any]:
    return {
        "name": product.name, **asdict(product.label),
        "rise_span": [product.rise_low, product.rise_high], "learned": product.learned,
    }  # fmt: skip
