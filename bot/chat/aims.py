"""A value said right after a plan, a recipe or a change: what is wished, not what was measured.

``and gh to 9`` asks the same for another goal; ``and gh 9`` may be either, and is asked about.
Nothing of it is stored unasked: a wish on record would be where the next plan begins.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from bot.chat import followups, orders, other_way
from bot.chat.asking import ask
from bot.chat.corrections import STILL_MEANT
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE
from bot.chat.turn import ASKED, Turn
from bot.store.offers import Offer
from bot.store.tanks import StoredTank
from core.advice import limits
from core.message import aims, by_means, doubts, parse
from core.message.aims import Aim
from core.message.followups import Followup
from core.message.model import Doubt, Parsed, Question
from core.message.waters import names_pure

OPEN = frozenset({doubts.UNKNOWN_WORD, doubts.AMBIGUOUS_WORD, doubts.QUESTIONED})
"""Doubts whose value may be one that was measured."""

UNTOLD = OPEN | {doubts.WISH, doubts.OTHER_WATER}
"""Doubts of a message that a wish may have."""


async def answer(turn: Turn, parsed: Parsed, topics: followups.Topics) -> list[Reply] | None:
    """Answer for the goals that are wished now; None where none is, or nothing was asked for."""
    if parsed.command is not None:
        return await _meant(turn, parsed, topics)
    told = parsed.values or any(doubt.reason in UNTOLD for doubt in parsed.doubts)
    if turn.incoming.addressed and (named := await _for_tank(turn, parsed)) is not None:
        return named
    beside = parsed.events or parsed.command or parsed.question or parsed.at or parsed.tank
    if not turn.incoming.addressed or not told or beside:
        return None
    text = turn.incoming.text
    if (brought := await _by_means(turn, parsed, topics)) is not None:
        return brought
    asks = any(doubt.reason == doubts.QUESTIONED for doubt in parsed.doubts)
    if asks and (again := await followups.answer(turn, parsed, topics)) is not None:
        return again
    wished = aims.read(text, turn.context())
    if any(unwished(turn.current_tank, aim.analyte, aim.target) for aim in wished):
        return None
    if not wished:
        return await _may_be_wished(turn, parsed)
    offer = await _spoken_of(turn, ahead=all(aim.ahead for aim in wished))
    if offer is None:
        return await _which(turn, parsed, wished) if aims.is_for(text) else None
    asked = _asked(turn, offer)
    if asked is None:
        return await orders.answer(turn, parsed) or await _which(turn, parsed, wished)
    of_effect = asked.kind == "effect" and all(aim.ahead for aim in wished)
    supposed = await followups.supposed(turn, offer, topics) if of_effect else None
    if supposed is not None:
        return supposed
    if asked.kind == "dose" and all(aim.sure for aim in wished):
        if asked.volume_l is not None and names_pure(asked.text or ""):
            return await _of_recipe(turn, offer, asked, wished, topics)
        if len(wished) == 1 and (again := await _of_dose(turn, wished[0], topics)) is not None:
            return again
    if asked.volume_l is None and (planned := await orders.answer(turn, parsed)) is not None:
        return planned
    turn.asked = offer.context[ASKED]  # still what is spoken of
    return await _which(turn, parsed, wished)


def unwished(stored: StoredTank | None, analyte: str, target: float) -> bool:
    """Whether nobody wishes such a value, so that it was measured: more nitrate than is good."""
    sea = stored is not None and stored.tank.is_sea
    most = limits.NITRATE_REEF if sea else limits.NITRATE_FRESH
    return analyte == "nitrate" and target > most


async def _for_tank(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """`kh 5 for fern` right after a plan: measured in it, or wished for it, is asked."""
    text = turn.incoming.text
    if not parsed.values or parsed.tank is None or parsed.events or parsed.at or parsed.doubts:
        return None
    said = " ".join(text[value.start : value.end] for value in parsed.values)
    _before, at, behind = text.partition(said)
    named = behind.casefold().strip(" .!").removesuffix(parsed.tank.casefold())
    if not at or not named.strip() or not aims.is_for(f"{named} {said}"):
        return None
    wished = aims.read(f"to {said}", turn.context())
    offer = await _spoken_of(turn, ahead=False) if len(wished) == len(parsed.values) else None
    return None if offer is None else await _which(turn, parsed, wished)


async def _by_means(turn: Turn, parsed: Parsed, topics: followups.Topics) -> list[Reply] | None:
    """`gh 6 with gypsum`, `gh 6 with ro` right after a wish or its plan: the wish anew, by that."""
    text, context = turn.incoming.text, turn.context()
    split = by_means.without(text, context)
    by_water = split is None and {doubt.reason for doubt in parsed.doubts} == {doubts.OTHER_WATER}
    if by_water:
        split = by_means.without_water(text)
    wished = aims.read(split[0], context, sure=True) if split is not None else ()
    offer = await _spoken_of(turn, ahead=True) if wished else None
    asked = None if offer is None else _asked(turn, offer)
    if split is None or offer is None or asked is None:
        return None
    means = split[1].said
    of_salts = all(aim.analyte not in aims.UNSALTED for aim in wished)
    of_bucket = asked.volume_l is not None and names_pure(asked.text or "")
    if asked.kind == "dose" and of_bucket and of_salts:
        if by_water:
            return await _of_recipe(turn, offer, asked, wished, topics)
        return await _of_recipe(turn, offer, asked, wished, topics, means=split[1].name)
    named = " ".join(aim.said for aim in wished)
    by = f" with {means}" if means else ""
    amount = "" if asked.volume_l is None else f" for {asked.volume_l:g} l"
    (first, *more) = wished
    anew = f"get {named} with {means}" if by_water else f"dose {named}{by}{amount}"
    if first.analyte == "ph" and not more:
        anew = f"get ph to {first.target:g}{by}"
    order = parse(anew, context)
    if turn.route is None or order.question is None or order.doubts or order.values:
        return await _which(turn, parsed, wished)
    turn.incoming = replace(turn.incoming, text=anew)
    return await turn.route(turn, order)


async def _may_be_wished(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """`kh 8 next week`, `too much, make gh 11` right after a plan: the goal is offered first."""
    told = [doubt.value for doubt in parsed.doubts if doubt.reason in OPEN]
    values = [value for value in told if value is not None]
    if parsed.values or not values or len(values) < len(parsed.doubts):
        return None
    wished = [
        aims.Aim(value.analyte, value.canonical, doubt.suggestion or doubt.text)
        for value, doubt in zip(values, parsed.doubts, strict=True)
        if value.analyte in aims.WISHED - aims.UNSALTED and isinstance(value.canonical, float)
    ]
    offer = await _spoken_of(turn, ahead=False) if len(wished) == len(values) else None
    if offer is None:
        return None
    if ASKED in offer.context:
        turn.asked = offer.context[ASKED]  # still what is spoken of
    return await _which(turn, parsed, wished)


async def _meant(turn: Turn, parsed: Parsed, topics: followups.Topics) -> list[Reply] | None:
    """`i meant gh 5 kh 3` right after a wish or its plan: the wish anew; None after all else."""
    text, told = turn.incoming.text, parsed.values
    correcting = parsed.command is not None and parsed.command.name == "correct"
    if not (correcting and told) or parsed.events or parsed.tank or not aims.is_meant(text):
        return None
    said = " ".join(text[value.start : value.end] for value in told)
    wished = aims.read(f"to {said}", turn.context()) if turn.incoming.addressed else ()
    offer = await _spoken_of(turn, ahead=False) if len(wished) == len(told) else None
    if offer is None:
        return None
    asked = _asked(turn, offer)
    if asked is not None and asked.kind == "dose":
        if asked.volume_l is not None and names_pure(asked.text or ""):
            return await _of_recipe(turn, offer, asked, wished, topics)
        if len(wished) == 1 and (again := await _of_dose(turn, wished[0], topics)) is not None:
            return again
    order = parse(f"dose {' '.join(aim.said for aim in wished)}", turn.context())
    if asked is not None and asked.kind != "dose":
        return await _which(turn, parsed, wished)
    if turn.route is None or order.question is None or order.doubts:
        return await _which(turn, parsed, wished)
    return await turn.route(turn, order)


async def _spoken_of(turn: Turn, *, ahead: bool) -> Offer | None:
    """The newest answer, where it is of a plan or a wish; None for all else.

    With words that no reading has `ahead` of its name, readings told since are passed over.
    """
    patience = GROUP_PATIENCE if turn.incoming.group else STILL_MEANT
    for offer in await turn.uow.offers.latest(turn.chat.id, followups.LOOKED_AT):
        if turn.now - offer.made_at > patience:
            return None
        asked = _asked(turn, offer)
        if _of_wishes(offer) or (asked is not None and asked.kind in other_way.PLANS):
            return offer
        if not ahead or offer.entry_id is None:
            return None
    return None


def _asked(turn: Turn, offer: Offer) -> Question | None:
    """The question that an offer answered, with what was changed of it since."""
    if ASKED not in offer.context:
        return None
    asked = offer.context[ASKED]
    first = parse(asked["text"], turn.context()).question
    return None if first is None else replace(first, **asked["changes"])


def _of_wishes(offer: Offer) -> bool:
    """Whether an offer asks about what was wished, or is of new water."""
    parts = [each.arguments.get("parts", ()) for each in offer.choices if each.verb == "take_doubt"]
    texts = [str(part["text"]) for told in parts for part in told]
    return any(text.startswith(("dose ", "get ", "/source ")) for text in texts)


async def _of_recipe(
    turn: Turn,
    offer: Offer,
    asked: Question,
    wished: Sequence[Aim],
    topics: followups.Topics,
    *,
    means: str = "",
) -> list[Reply]:
    """The same bucket with these goals in the place of those that it had, or beside them.

    `means` is the salt that shall bring them.
    """
    changes: dict[str, Any] = {"premises": dict(asked.premises)}
    if means:
        changes |= other_way.changes(asked, Followup(substance=means), offer) or {}
    for aim in wished:
        if aim.analyte == asked.analyte and asked.target is not None:
            changes |= {"target": aim.target, "delta": None}
        elif aim.analyte == asked.also:
            changes |= {"also_target": aim.target, "also_delta": None}
        else:
            changes["premises"][aim.analyte] = aim.target
    held = offer.context[ASKED]
    turn.asked = {"text": held["text"], "changes": {**held["changes"], **changes}}
    question = replace(asked, **changes)
    return await topics["dose"](turn, question, Parsed("question", question=question))


async def _of_dose(turn: Turn, aim: Aim, topics: followups.Topics) -> list[Reply] | None:
    """The same plan for another goal, as the plainest follow-up would ask for it."""
    said = turn.incoming
    turn.incoming = replace(said, text=f"to {aim.said}")
    again = await followups.answer(turn, Parsed("none"), topics)
    if again is None:
        turn.incoming = said
    return again


async def _which(turn: Turn, parsed: Parsed, wished: Sequence[Aim]) -> list[Reply]:
    """Ask of each value whether it is wished or was measured."""
    end = len(turn.incoming.text)
    asked = [
        Doubt(aim.said, 0, end, doubts.AIM, aim.said)
        if aim.analyte in aims.UNSALTED
        else Doubt(aim.said, 0, end, doubts.AIM, choices=(f"dose {aim.said}", aim.said))
        for aim in wished
    ]
    return [await ask(turn, asked, replace(parsed, values=()))]
