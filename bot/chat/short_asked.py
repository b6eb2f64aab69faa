"""``is that worse``, ``was that enough``, ``do another?``: short questions of what was told last.

What a topic has words for is asked again in its words; nothing is stored.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, Final

from bot.chat import compared, given_plan, how_much, other_way, past
from bot.chat.asked_anew import Again, anew
from bot.chat.it_moved import values_of
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, LOOKED_AT, PATIENCE
from bot.chat.state import state_of
from bot.chat.turn import ASKED, Turn
from bot.chat.words import short_asked as words
from bot.store.offers import Offer
from core.advice.salted import SALTS, salted
from core.message import parse
from core.message.model import Parsed
from core.message.past import MEASURED, Past
from core.message.plan_said import substances_named
from core.message.short_asked import Asked, asked
from core.water.substances import substance

NEAR: Final = 3
"""Answers among which the value is sought that is meant."""

OF_VALUE: Final = frozenset({"worse", "better", "back", "number", "meaning", "falls", "slow"})
OF_CHANGE: Final = frozenset({"another", "how_next", "halves", "shares", "daily", "retest"})
MORE: Final = "do i need to change more"
"""How it is asked, behind a change, whether one more is needed."""


async def answer(turn: Turn, parsed: Parsed, again: Again) -> list[Reply] | None:
    """Answer such a question; None where it is none, or of nothing that was told of late."""
    if not turn.incoming.addressed or parsed.values or parsed.command is not None:
        return None
    said = asked(turn.incoming.text)
    if said is None or turn.current_tank is None:
        return None
    if said.meaning == "next":
        return await anew(turn, "what now", again)
    offers = await _of_late(turn)
    if said.meaning in OF_VALUE:
        return await _of_value(turn, said, offers[:NEAR], again)
    if said.meaning == "reached":
        return await _reached(turn, offers, again)
    if said.meaning == "so_much":
        return await _so_much(turn, offers, again)
    if said.meaning == "salt_in":
        return await _salt_in(turn)
    if said.meaning == "of_day":
        plan = await given_plan.running(turn)
        return None if plan is None else await anew(turn, "how much is that", again)
    if said.meaning == "or_wait":
        just_changed = bool(offers) and _changed(offers[0]) is not None
        if just_changed:
            return [await turn.reply([words.wait_for_test()])]
        of_change = await _of_change(turn, replace(said, meaning="another"), offers, again)
        return of_change or await anew(turn, "what now", again)
    return await _of_change(turn, said, offers, again)


async def _so_much(turn: Turn, offers: list[Offer], again: Again) -> list[Reply] | None:
    """How much it is: of what was asked last, else of the worst that stands, else what stands."""
    held = next((offer for offer in offers if _plans(turn, offer)), None)
    if held is not None:
        asked_of = held.context[ASKED]
        of_change = "largest_safe_share" in _facts(held) and not asked_of["changes"]
        return await anew(turn, asked_of["text"] if of_change else "again?", again)
    of_finding = await how_much.of_what_stands(turn)
    is_told = any(offer.entry_id is not None for offer in offers)
    return of_finding or (await anew(turn, "what now", again) if is_told else None)


def _plans(turn: Turn, offer: Offer) -> bool:
    """Whether an answer was to a question of an amount, which may be told once more."""
    asked_of = offer.context.get(ASKED)
    question = None if asked_of is None else parse(asked_of["text"], turn.context()).question
    return question is not None and question.kind in other_way.PLANS


async def _salt_in(turn: Turn) -> list[Reply] | None:
    """The salt that is in by what was told: weighed doses, less what changes took out."""
    stored = turn.current_tank
    named = substances_named(turn.incoming.text)
    if stored is None or stored.tank.is_sea or not set(named) <= SALTS:
        return None
    state = await state_of(turn, stored, turn.now)
    found = salted(state)
    if found is None or found.unweighed or stored.tank.volume_l is None:
        return None
    strength = found.chloride / substance("sodium chloride").milligrams_per_gram("chloride")
    lines = words.salt_in(stored.name, strength, strength * stored.tank.volume_l)
    facts = {"tank": stored.name, "salt": {"g_l": strength, "chloride": found.chloride}}
    return [await turn.reply(lines, facts=facts)]


async def _of_late(turn: Turn) -> list[Offer]:
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    latest = await turn.uow.offers.latest(turn.chat.id, LOOKED_AT)
    return [offer for offer in latest if turn.now - offer.made_at <= patience]


def _facts(offer: Offer) -> Mapping[str, Any]:
    facts: Mapping[str, Any] = offer.context.get("facts", {})
    return facts


# Of the value just told ---------------------------------------------------------------------


def _read(offers: list[Offer]) -> Offer | None:
    """The answer to the last readings of late."""
    for offer in offers:
        if offer.entry_id is not None:
            return offer if values_of(_facts(offer)) else None
    return None


async def _of_value(
    turn: Turn, said: Asked, offers: list[Offer], again: Again
) -> list[Reply] | None:
    offer = _read(offers)
    if offer is None:
        return None
    facts = _facts(offer)
    names = list(values_of(facts))
    if said.meaning in {"worse", "better"}:
        if await compared.is_called(turn):
            return None
        if said.span is not None:
            told = await compared.answer(turn, names, said.span)
            return told or await past.answer(turn, Past("what", MEASURED, span=said.span))
        told = await compared.answer(turn, names)
        return told or await anew(turn, "is that ok?", again)
    if said.meaning == "meaning":
        return await anew(turn, "why?" if facts.get("findings") else "is that ok?", again)
    bad = {str(found.get("analyte", found["id"])) for found in facts.get("findings", [])}
    meant = [name for name in names if name in bad] or names
    if len(meant) > 1:
        return None
    name = meant[0]
    shown = name.replace("_", " ")
    if said.meaning == "number":
        return await anew(turn, f"whats a good {shown}", again)
    if said.meaning == "back":
        text = await compared.back(turn, name)
        return None if text is None else await anew(turn, text, again)
    if said.meaning == "slow" and any(given_plan.given(each) for each in offers):
        return None  # of the plan it is asked why it takes so long
    fell = await compared.fell(turn, name) if said.meaning == "falls" else []
    why = await anew(turn, f"why does {shown} fall", again)
    return [*fell, *why, *(await compared.movement(turn, name) if not fell else [])]


# Of a goal ----------------------------------------------------------------------------------


async def _reached(turn: Turn, offers: list[Offer], again: Again) -> list[Reply] | None:
    """Hold the goal of the plan, or of what was wished, against the last value."""
    plan = await given_plan.running(turn)
    if plan is not None:
        told = await compared.of_plan(turn, plan)
        if told is None or told.facts["reached"]:
            return None if told is None else [told]
        return [told, *await anew(turn, "what is left", again)]
    for offer in offers:
        if ASKED in offer.context and (told := await compared.of_wish(turn, offer)) is not None:
            return [told]
    return None if _read(offers[:NEAR]) is None else await anew(turn, "is that ok?", again)


# Of the change or the plan ------------------------------------------------------------------


def _changed(offer: Offer) -> float | None:
    """The share of a change that was put on record, 0 where it is not known; None of no change."""
    for event in _facts(offer).get("events", []):
        if event.get("kind") == "water_change":
            return float(event.get("percent") or 0.0) / 100.0
    return None


async def _of_change(
    turn: Turn, said: Asked, offers: list[Offer], again: Again
) -> list[Reply] | None:
    if said.meaning == "shares":
        return await _a_day(turn, (said.share or 0.0) / 100.0, again)
    newest = offers[0] if offers else None
    if newest is None:
        return None
    facts = _facts(newest)
    if "largest_safe_share" in facts:
        return await _of_answer(turn, said, facts, again)
    if given_plan.given(newest) is not None:
        text = {"another": "2nd part now?", "halves": "can i do all of it in 2 parts?"}
        return await anew(turn, text[said.meaning], again) if said.meaning in text else None
    share = next((s for each in offers[:2] if (s := _changed(each)) is not None), None)
    if share is None:
        return None
    if said.meaning == "retest":
        return [await turn.reply([words.retest()])]
    if said.meaning == "daily":
        return await _a_day(turn, share, again)
    if said.meaning in {"another", "how_next"}:
        is_newest = _changed(newest) is not None
        return await anew(turn, MORE if is_newest else "should i change water", again)
    return None


async def _of_answer(
    turn: Turn, said: Asked, facts: Mapping[str, Any], again: Again
) -> list[Reply] | None:
    """Of a change that was answered and is not done yet."""
    texts = {
        "another": "when next?",
        "how_next": "how many litres is that",
        "retest": "when do i test again",
    }
    if said.meaning in texts:
        text = texts[said.meaning] if facts.get("steps") else "again?"
        return await anew(turn, text, again)
    share = float(facts.get("share") or 0.0)
    return await _a_day(turn, share / 2.0 if said.meaning == "halves" else share, again)


async def _a_day(turn: Turn, share: float, again: Again) -> list[Reply] | None:
    """A share of the water on each day, by the waters."""
    if not 0.0 < share <= 1.0:
        return None
    return await anew(turn, f"is {100.0 * share:.3g}% a day ok?", again)
