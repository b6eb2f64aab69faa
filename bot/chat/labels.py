"""The words of a bought product's label: refused, asked about or kept; never a reading."""

from __future__ import annotations

import re
from dataclasses import asdict
from typing import Any, Final

from bot.chat import dose_reply, products
from bot.chat.model import Reply
from bot.chat.products import DAILY
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import general, refusals
from bot.chat.words import products as words
from bot.chat.words.text import _
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.advice.dosing import Wish, plan_kh
from core.advice.plan import Refusal
from core.advice.products import Label, Product, given_since, never, read_label, salt_of
from core.message.fold import fold
from core.message.labels import MOVING
from core.message.lexicon import lexicon
from core.message.model import Command, Parsed
from core.message.tokens import cut

_NAMED = re.compile(r"\s*([^\d:=]{1,40}?)\s*[:=]\s*\d")
_NEW = re.compile(r"(?:a |my )?(?:new )?product:? +|new +", re.IGNORECASE)
"""What is said before a name, and is no part of it."""
_ACTING: Final = frozenset({"ask", "command", "event"})
_LOWERS: Final = re.compile(r"\blowers (?:kh|ph)\b")


async def command(turn: Turn, told: Command, parsed: Parsed) -> list[Reply]:
    """A label in any of the parser's languages; only what raises hardness can be reckoned."""
    text = turn.incoming.text
    if (refusal := never(text)) is not None:
        return [await dose_reply.refuse(turn, refusal, None)]
    label = read_label(told.arguments) or read_label(text)
    if label is None and _LOWERS.search(told.arguments):
        label = Refusal("label_lowers")
    if label is None:
        return [await turn.reply(words.label_of_another_thing())]
    if isinstance(label, Refusal):
        return [await dose_reply.refuse(turn, label, None)]
    name = _name(text)
    if name is not None and (salt := salt_of(name)) is not None:
        return [await turn.reply(words.salt_is_known(salt, label))]
    if label.doubt is not None:
        return [await _doubtful(turn, label, label.doubt, name)]
    return [await _labelled(turn, label, name, parsed.tank)]


async def _labelled(turn: Turn, label: Label, name: str | None, tank: str | None) -> Reply:
    """Keep a label that has a name, and say what it comes to."""
    product = Product.of_label(name or "it", label)
    lines = [words.how_to_keep()]
    if name is not None:
        kept = await products.known(turn)
        was = next((p for p in kept if _is_same(p, product)), None)
        await turn.uow.products.keep(turn.chat.id, product, turn.now)
        lines = [words.kept(product, was)]
    stored = turn.tank_named(tank) if tank else turn.current_tank
    if stored is None or stored.tank.volume_l is None:
        said = words.label_without_tank(label) if name is None else []
        facts = {"product": products.facts_of(product)} if name is not None else {}
        return await turn.reply([*said, *lines], facts=facts)
    return await _days_step(turn, product, stored, stored.tank.volume_l, lines)


async def _doubtful(turn: Turn, label: Label, doubt: Refusal, name: str | None) -> Reply:
    """Ask about a label that no pure salt can do; what may be filler is kept after a yes."""
    lines = refusals.refused(doubt, None)
    facts = dose_reply.refused_facts(doubt)
    if not doubt.facts["again"] or name is None:
        return await turn.reply(lines, facts=facts)
    held = {"name": name, "label": asdict(label)}
    yes = Choice(_(words.IT_SAYS_SO), "keep_label", "yes", held)
    choices = [yes, Choice(_(words.LEAVE_IT), "leave_effect", "no")]
    return await turn.reply(lines, choices=choices, facts=facts)


async def press_keep_label(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Keep a label that was doubted."""
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    held = choice.arguments
    return [await _labelled(turn, Label(**held["label"]), held["name"], None)]


def _is_same(one: Product, other: Product) -> bool:
    same = one.name.casefold() == other.name.casefold()
    return same and one.label.analyte == other.label.analyte


async def _days_step(
    turn: Turn, product: Product, stored: StoredTank, volume: float, lines: list[str]
) -> Reply:
    """Say what a label comes to in the tank at hand, a day's step at most."""
    label = product.label
    rise, below, keep = DAILY[label.analyte], None, False
    state = await state_of(turn, stored, turn.now)
    reading = state.last(label.analyte)
    if (problem := given_since(product.name, state, reading)) is not None:
        return await dose_reply.refuse(turn, problem, stored.name)
    if label.analyte == "kh":
        # As so much bicarbonate: the same gates, and the same small part where KH is too low.
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


def _name(text: str) -> str | None:
    """What stands before a colon and the label's first number, as the product's name.

    A name of words that mean something in a message (`kh`, `dose kh`) would be found in each of
    them; several that end in no analyte are a name all the same (`kh plus`).
    """
    found = _NAMED.match(text)
    before = _before_effect(text) if found is None else found[1]
    if not before:
        return None
    known = lexicon().words
    said = _NEW.sub("", before)
    kinds = [known.get(word.casefold(), ("own", ""))[0] for word in said.split()]
    joined = len(kinds) > 1 and kinds[-1] != "analyte" and not _ACTING & set(kinds)
    return said if "own" in kinds or joined else None


def _before_effect(text: str) -> str:
    """The words before what a product does, without those that say nothing: `kh plus raises`."""
    tokens = cut(fold(text), lexicon(), text)
    ends = next((i for i, token in enumerate(tokens) if token.value in MOVING), 0)
    first = next((i for i, token in enumerate(tokens[:ends]) if token.kind != "fill"), ends)
    if any(token.kind == "number" for token in tokens[:ends]):
        return ""  # the amount stands first
    return text[tokens[first].start : tokens[ends - 1].end] if first < ends else ""
