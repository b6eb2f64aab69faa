"""Bought products: a label kept once, doses by it, and what doses showed; never a reading."""

from __future__ import annotations

from dataclasses import asdict
from datetime import timedelta
from typing import Any, Final

from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.told import Told
from bot.chat.turn import ASKED, Turn
from bot.chat.words import general
from bot.chat.words import products as words
from bot.chat.words import readings as reading_words
from bot.chat.words.text import _
from bot.store.offers import Choice, Offer
from core.advice.products import (
    HARDNESS,
    LEARNED_WITHIN,
    SETTLED_AFTER,
    Label,
    Product,
    learn,
    never,
)
from core.advice.state import DISTURBING
from core.message import bought, parse
from core.message.gave_told import gave
from core.message.model import Event, Parsed
from core.message.plan_said import substances_named
from core.substances import SUBSTANCES

SPOKEN_OF: Final = "product"
"""Under which an offer keeps the product that it told of."""

PATIENCE: Final = timedelta(hours=2)
"""Longest time that "of it" means the product that was told of."""

LOOKED_AT: Final = 6
"""Latest offers among which the product is found that was told of."""

MOMENT: Final = timedelta(microseconds=1)
"""A reading told together with a dose is the one before it."""


async def manage(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``products`` lists, ``forget my buffer`` forgets; None where it is other talk.

    Of a message that says nothing else than one's name (``what is red mix``) it tells what is
    known.
    """
    text = turn.incoming.text
    if turn.incoming.addressed and bought.lists(text):
        facts = {"products": [facts_of(product) for product in turn.products]}
        return [await turn.reply(words.listing(turn.products), facts=facts)]
    if (new := bought.introduced(text)) is not None and never(new) is None:
        return [await turn.reply(words.no_strength(new))]
    named = bought.forgotten(text)
    if turn.spoken_of is not None and any(map(bought.means_one, named)):
        named = (turn.spoken_of,)
    known = {bought.plain_name(product.name): product.name for product in turn.products}
    for said in named:
        name = known.get(bought.plain_name(said), said)
        if await turn.uow.products.forget(turn.chat.id, name):
            await turn.know_products()
            return [await turn.reply(words.forgotten(name))]
    if parsed.intent == "none" and turn.incoming.addressed:
        return await about(turn, bought.named_in(text, turn.context()))
    return None


async def about(turn: Turn, name: str | None) -> list[Reply] | None:
    """What is known of a product of a name; None where there is none."""
    meant = [product for product in turn.products if product.name == name]
    if not meant:
        return None
    facts = {"products": [facts_of(product) for product in meant]}
    return [
        await turn.reply(
            words.about(meant), facts=facts, context={SPOKEN_OF: name}, expects="followup"
        )
    ]


async def spoken_of(turn: Turn) -> str | None:
    """The product or salt that "of it" means: the one just answered about, or just given.

    Of a deed it is the one named last, even where it was refused: it went in all the same.
    """
    if not (turn.incoming.addressed and bought.means_one(turn.incoming.text)):
        return None
    is_deed = gave(turn.incoming.text) is not None
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if turn.now - offer.made_at > PATIENCE:
            return None
        names = [offer.context.get(SPOKEN_OF)]
        asked = offer.context.get(ASKED, {}).get("text", "")
        instead = offer.context.get(ASKED, {}).get("changes", {}).get("substance")
        own = {instead} if instead else substances_named(asked)
        if is_deed and len(own) == 1 and own <= SUBSTANCES:
            return next(iter(own))
        other = offer.entry_id is not None
        if offer.entry_id is not None:
            entry = await turn.uow.log.current(turn.chat.id, offer.entry_id)
            events = () if entry is None else entry.events
            names = [each.what.substance for each in events if each.what.kind == "dose"]
        elif asked and (question := parse(asked, turn.context()).question) is not None:
            names.append(question.substance)
            other = question.analyte is not None or question.substance in SUBSTANCES
        said = {bought.plain_name(name) for name in names if name}
        found = next((p.name for p in turn.products if bought.plain_name(p.name) in said), None)
        if found is None:
            found = next((name for name in [*names, _salt(offer)] if name in SUBSTANCES), None)
        if found is not None or (other and not bought.means_one(asked)):
            return found  # what named nothing, or got no number of it, is passed over
    return None


def _salt(offer: Offer) -> str | None:
    """The one salt that an answer was about; what was refused is none."""
    facts = offer.context.get("facts", {})
    if "refused" in facts:
        return None
    told = facts.get("salts") or facts.get("effects") or facts.get("forms") or [facts]
    salt = told[0].get("substance") if len(told) == 1 and isinstance(told[0], dict) else None
    return salt if isinstance(salt, str) else None


async def offer_to_learn(turn: Turn, told: Told) -> Reply | None:
    """After a reading of KH or GH: what the dose of a product before it seems to have done."""
    volume = told.tank.tank.volume_l
    read = {each.what.analyte for each in told.readings} & HARDNESS
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
    await turn.know_products()
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


def is_of(event: Event, product: Product) -> bool:
    """Whether an event is a dose of a product."""
    said = event.substance if event.kind == "dose" else None
    return said is not None and bought.plain_name(said) == bought.plain_name(product.name)


def facts_of(product: Product) -> dict[str, Any]:
    """A product with what it does and between which ends."""
    return {
        "name": product.name, **asdict(product.label),
        "rise_span": [product.rise_low, product.rise_high], "learned": product.learned,
    }  # fmt: skip
