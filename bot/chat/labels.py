"""The words of a bought product's label: refused, asked about or kept; never a reading."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import asdict, replace
from typing import Any, Final

from bot.chat import dose_reply, poison_first, product_doses, products
from bot.chat.just_told import UNDO, UNNAMED
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.wished import TABLE_SALT
from bot.chat.words import general, refusals
from bot.chat.words import product_doses as dose_words
from bot.chat.words import products as words
from bot.chat.words.text import _
from bot.store.offers import Choice, Offer
from core.advice.label_doubt import doubt_of
from core.advice.plan import Refusal
from core.advice.poison_first import no_dose
from core.advice.product_plans import days_dose, in_water
from core.advice.products import Label, Product, never, read_labels, salt_in, salt_of
from core.advice.scheduling import per_gram
from core.message import bought, parse
from core.message.label_names import Name, name_of, named, question_behind
from core.message.model import Command, Parsed
from core.water.substances import SUBSTANCES

LONGEST: Final = 40
"""Characters of a product's name."""


async def command(turn: Turn, told: Command, parsed: Parsed) -> list[Reply]:
    """A label in any of the parser's languages; what it does is kept where it has a name.

    What is asked behind it is answered as if it had been typed next.
    """
    text = turn.incoming.text
    place = question_behind(text, turn.context())
    if place is not None and turn.typed is not None:
        label, turn.incoming = text[:place], replace(turn.incoming, text=text[:place])
        only = parse(label, turn.context())
        if only.command is not None and only.command.name == told.name and only.command.arguments:
            replies = await command(turn, only.command, only)
            turn.incoming = replace(turn.incoming, text=text[place:])
            return [*replies, *await turn.typed(turn)]
        turn.incoming = replace(turn.incoming, text=text)
    if (refusal := never(text)) is not None:
        return [await dose_reply.refuse(turn, refusal, None)]
    if not told.arguments:
        return [await turn.reply([words.how_to_keep()])]
    labels = read_labels(told.arguments)
    if labels is None:
        return [await turn.reply(words.label_of_another_thing())]
    if isinstance(labels, Refusal):
        return [await dose_reply.refuse(turn, labels, None)]
    name = named(text, turn.context())
    salt = salt_of(name.said) if name is not None and name.sure else salt_in(text)
    if salt == TABLE_SALT and not any(_raises(salt, each) for each in labels):
        # "my salt" of another kind: no name, since salt alone is table salt everywhere
        name = None if name is not None and salt_of(name.said) is not None else name
        salt = None
    if salt is not None:
        return [await turn.reply(words.salt_is_known(salt, labels[0]))]
    if name is not None and (len(name.said) > LONGEST or turn.tank_named(name.said)):
        name = None
    if (doubt := doubt_of(labels)) is not None:
        return [await _doubtful(turn, labels, doubt, name)]
    if name is None or not name.sure:
        return [await _unnamed(turn, labels, name, parsed.tank)]
    return [await _kept(turn, labels, name.said, parsed.tank)]


async def _kept(turn: Turn, labels: Sequence[Label], name: str, tank: str | None) -> Reply:
    """Keep a label under its name, and say what it comes to."""
    kept = [Product.of_label(name, label) for label in labels]
    stood = [each for each in turn.products if any(_is_same(each, new) for new in kept)]
    was = next((each for each in stood if _is_same(each, kept[0])), None)
    for each in kept:
        await turn.uow.products.keep(turn.chat.id, each, turn.now)
    await turn.know_products()
    held = {
        products.SPOKEN_OF: name,
        UNDO: {
            "analytes": [each.label.analyte for each in kept],
            "stood": [
                {
                    "label": asdict(each.label),
                    "low": each.rise_low,
                    "high": each.rise_high,
                    "learned": each.learned,
                }
                for each in stood
            ],
        },
    }
    return await _told(turn, kept, tank, [words.kept(kept, was)], held)


async def _unnamed(
    turn: Turn, labels: Sequence[Label], name: Name | None, tank: str | None
) -> Reply:
    """Say what a label comes to that has no name of its own, and how it is kept."""
    told = [asdict(each) for each in labels]
    if name is None:
        meant = [Product.of_label(_("it"), each) for each in labels]
        lines = [words.not_stored(), words.how_to_keep()]
        return await _told(turn, meant, tank, lines, {UNNAMED: told})
    keep = Choice(
        words.offer_name(name.said), "keep_label", "yes", {"name": name.said, "labels": told}
    )
    meant = [Product.of_label(name.said, each) for each in labels]
    return await _told(turn, meant, tank, [words.not_stored()], {UNNAMED: told}, [keep])


async def _told(
    turn: Turn,
    meant: Sequence[Product],
    tank: str | None,
    lines: list[str],
    held: Mapping[str, Any],
    choices: Sequence[Choice] = (),
) -> Reply:
    """What a label comes to in the tank at hand, a day's step at most, and what became of it.

    `held` is what an undo needs where it was kept, else the labels that wait for a name.
    """
    stored = turn.tank_named(tank) if tank else turn.current_tank
    kept = UNDO in held
    facts: dict[str, Any] = {"product": products.facts_of(meant[0])}
    waits: dict[str, Any] = {
        "choices": choices,
        "context": held,
        "expects": "undo" if kept else "followup",
    }
    if stored is None or stored.tank.volume_l is None:
        return await turn.reply(lines, facts=facts, **waits)
    state = await state_of(turn, stored, turn.now)
    takes_out = any(each.label.analyte in poison_first.CHLORINE for each in meant)
    poison = None if takes_out else no_dose(state)
    plan = poison or days_dose(in_water(meant, state), None, state, known_tank=True)
    if isinstance(plan, Refusal):
        told = refusals.refused(plan, stored.name)
        shown = dose_reply.refused_facts(plan)
    else:
        told = dose_words.by_label(plan, stored.name)
        shown = product_doses.facts(plan, stored)
    return await turn.reply(
        [*lines, *told] if kept else [*told, *lines], facts=facts | shown, **waits
    )


async def called(turn: Turn) -> list[Reply] | None:
    """``call it blue jar``: keep the label that was told right before without a name."""
    name = bought.called(turn.incoming.text)
    latest = await turn.uow.offers.latest(turn.chat.id) if name is not None else ()
    late = [each for each in latest if turn.now - each.made_at <= products.PATIENCE]
    held = next((each.context[UNNAMED] for each in late if UNNAMED in each.context), None)
    good = None if name is None else name_of(name, turn.context())
    if (
        name is None
        or held is None
        or good is None
        or never(name) is not None
        or len(name) > LONGEST
    ):
        return None
    return [await _kept(turn, [Label(**each) for each in held], good, None)]


async def take_back(turn: Turn, offer: Offer) -> list[Reply] | None:
    """``undo`` right after a label: what was known of the product before is known again."""
    if not await turn.uow.offers.take(offer.id, "undo"):
        return None
    await turn.uow.offers.close(offer.id)
    held = offer.context[UNDO]
    name = offer.context[products.SPOKEN_OF]
    for analyte in held["analytes"]:
        await turn.uow.products.forget(turn.chat.id, name, analyte)
    stood = [
        Product(name, Label(**each["label"]), each["low"], each["high"], learned=each["learned"])
        for each in held["stood"]
    ]
    for each in stood:
        await turn.uow.products.keep(turn.chat.id, each, turn.now)
    await turn.know_products()
    facts = {"products": [products.facts_of(each) for each in stood]}
    return [await turn.reply(words.taken_back(name, stood), facts=facts)]


async def _doubtful(
    turn: Turn, labels: Sequence[Label], doubt: Refusal, name: Name | None
) -> Reply:
    """Ask about a label that no pure salt can do; what may be filler is kept after a yes."""
    lines = refusals.refused(doubt, None)
    facts = dose_reply.refused_facts(doubt)
    if not doubt.facts.get("again") or name is None:
        return await turn.reply(lines, facts=facts)
    held = {"name": name.said, "labels": [asdict(each) for each in labels]}
    yes = Choice(_(words.IT_SAYS_SO), "keep_label", "yes", held)
    choices = [yes, Choice(_(words.LEAVE_IT), "leave_effect", "no")]
    return await turn.reply(lines, choices=choices, facts=facts)


async def press_keep_label(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Keep a label that was doubted, or had no sure name."""
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    held = choice.arguments
    told = held["labels"] if "labels" in held else [held["label"]]  # of an older version
    return [await _kept(turn, [Label(**each) for each in told], held["name"], None)]


def _raises(salt: str, label: Label) -> bool:
    """Whether a salt raises what a label tells of."""
    return salt in SUBSTANCES and per_gram(salt, label.analyte) > 0.0


def _is_same(one: Product, other: Product) -> bool:
    same = one.name.casefold() == other.name.casefold()
    return same and one.label.analyte == other.label.analyte
