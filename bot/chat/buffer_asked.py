"""``why that much?``, ``can i just dump it all in now``: what is asked of how much buffer it is.

Of a plan that stands it is answered by its own figures, behind its own gates; where none stands it
is of the KH that was told or asked about last. Nothing is stored.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any, Final

from bot.chat import given_plan, how_much, plan_asked, plan_now, plan_talk, poison_first
from bot.chat.asked_anew import Again, anew
from bot.chat.it_moved import values_of
from bot.chat.model import Line, Reply
from bot.chat.patience import GROUP_PATIENCE, LOOKED_AT, PATIENCE
from bot.chat.state import state_of
from bot.chat.turn import ASKED, Turn
from bot.chat.words import buffer_asked as words
from bot.chat.words import doses as dose_words
from bot.chat.words import pace as pace_words
from bot.chat.words import plan_talk as plan_words
from bot.store.offers import Offer
from core.advice.buffers import BUFFERS
from core.advice.findings import stands
from core.advice.most_a_day import MOST
from core.advice.spoons import spoon_grams
from core.message import parse
from core.message.buffer_asked import Asked, buffer_asked
from core.message.model import Parsed
from core.message.plan_said import Amounts
from core.message.plan_talk import About
from core.message.plan_words import Telling
from core.message.raise_asked import needs_buffer

NEAR: Final = 3
"""Answers back to which the KH is still what is spoken of."""

SODA: Final = "sodium bicarbonate"

OF_PLAN: Final[dict[str, About | Telling]] = {
    "sum": "worked_out",
    "at_once": "at_once",
    "between": "often",
}
"""What of a plan is asked by each meaning."""


async def answer(turn: Turn, parsed: Parsed, again: Again) -> list[Reply] | None:
    """Answer such a question; None where it is none, or no buffer was spoken of."""
    if not turn.incoming.addressed or parsed.values or parsed.events or parsed.command is not None:
        return None
    said = buffer_asked(turn.incoming.text)
    if said is None or turn.current_tank is None or needs_buffer(turn.incoming.text):
        return None  # does my tank need buffer: its KH tells
    if said.meaning == "spoons_to":
        return await _by_spoon(turn, said, again)
    offers = await _of_late(turn)
    plan = await given_plan.running(turn)
    if plan is not None and "kh" in plan.analytes and plan.salts:
        if not await plan_now.is_newest(turn, plan.offer, offers) and not _of_kh(turn, offers):
            return None
        return await _of_the_plan(turn, parsed, said, plan, again)
    if said.grams is not None:
        return None  # what so much would do
    return await _of_none(turn, said, again) if _of_kh(turn, offers) else None


async def _of_late(turn: Turn) -> list[Offer]:
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    latest = await turn.uow.offers.latest(turn.chat.id, LOOKED_AT)
    return [offer for offer in latest if turn.now - offer.made_at <= patience]


def _of_kh(turn: Turn, offers: Sequence[Offer]) -> bool:
    """Whether KH, or what raises it, was told or asked about last."""
    for offer in offers[:NEAR]:
        facts = offer.context.get("facts", {})
        found = {str(each.get("id")) for each in facts.get("findings", [])}
        dosed = {event.get("substance") for event in facts.get("events", [])}
        if "low_kh" in found or "kh" in values_of(facts) or dosed & BUFFERS:
            return True
        asked = offer.context.get(ASKED)
        question = None if asked is None else parse(asked["text"], turn.context()).question
        if question is not None and (question.analyte == "kh" or question.substance in BUFFERS):
            return True
    return False


# Of a plan ----------------------------------------------------------------------------------


async def _of_the_plan(
    turn: Turn, parsed: Parsed, said: Asked, plan: given_plan.Given, again: Again
) -> list[Reply] | None:
    if said.meaning in OF_PLAN:
        asked = OF_PLAN[said.meaning]
        if said.meaning != "at_once" and (first := await plan_asked.first(turn, plan)) is not None:
            return first
        if said.meaning == "between" and await given_plan.last_in(turn, plan):
            return await anew(turn, "what is left", again)
        told = "safe" if said.grams is not None else asked
        return await plan_talk.of_plan(turn, parsed, told, Amounts(grams=said.grams))
    if said.meaning in {"total", "weekly"}:
        if (first := await plan_asked.first(turn, plan)) is not None:
            return first
        return [await _in_all(turn, plan, weekly=said.meaning == "weekly")]
    if said.meaning == "tomorrow":
        return await anew(turn, "what is left", again)
    if said.meaning == "need":
        return await plan_talk.of_plan(turn, parsed, "more_needed", Amounts())
    if said.meaning == "another":
        if (first := await plan_asked.first(turn, plan)) is not None:
            return first
        return _led(await anew(turn, "what is left", again), _not_by_spoon(plan.salts[0][0]))
    return await anew(turn, "what now", again)


async def _in_all(turn: Turn, plan: given_plan.Given, *, weekly: bool) -> Reply:
    """What a plan takes in all, and in which parts; of one that raises KH that it is no routine."""
    masses = [(name, mass, mass * plan.count) for name, mass in plan.salts]
    told = plan_words.so_in_all(masses, plan.count, plan.every_hours)
    lines = words.not_weekly(told) if weekly else [told]
    facts: dict[str, Any] = {"parts": list(plan.parts), "every_hours": plan.every_hours}
    if (below := plan.facts.get("only_if_ammonia_below")) is not None:
        lines = [dose_words.only_below(below), *lines]  # no amount without its condition
        facts["only_if_ammonia_below"] = below
    if plan.count > 1 and not weekly:
        lines.append(plan_words.kept_apart(plan.count, plan.every_hours)[1])
    return await turn.reply(lines, facts=facts)


# Of no plan ---------------------------------------------------------------------------------


async def _of_none(turn: Turn, said: Asked, again: Again) -> list[Reply] | None:
    stored = turn.current_tank
    if (poisoned := await poison_first.refused(turn, stored)) is not None:
        return [poisoned]
    if (held := await plan_now.held_back(turn, "when_next", None)) is not None:
        return [held]
    if said.meaning == "sum":
        return None  # of no amount: why it is low
    if said.meaning == "weekly":
        return [await turn.reply([words.no_routine(), *await _ask(turn)])]
    if said.meaning in {"between", "tomorrow"}:
        return [await _at_most(turn, words.a_day_apart())]
    if said.meaning == "at_once":
        return [await _at_most(turn, words.not_at_once())]
    if said.meaning == "another":
        return [await turn.reply([_not_by_spoon(SODA), *await _ask(turn)])]
    of_finding = await how_much.of_what_stands(turn, adding=True)
    if of_finding is not None or said.meaning not in {"need", "what_do"}:
        return of_finding
    return await anew(turn, "is that ok?" if said.meaning == "need" else "what now", again)


async def _at_most(turn: Turn, lead: str) -> Reply:
    """How fast KH may rise, and how its parts are asked for."""
    lines = [lead, *pace_words.told("kh", MOST["kh"], None), *await _ask(turn)]
    return await turn.reply(lines, facts={"analyte": "kh", "most": MOST["kh"]})


async def _ask(turn: Turn) -> list[str]:
    """How an amount is asked for, where a low KH stands that one is told for."""
    stored = turn.current_tank
    if stored is None:
        return []
    state = await state_of(turn, stored, turn.now)
    low = [each for each in stands(state, frozenset(state.readings)) if each.id == "low_kh"]
    text = how_much.to_ask(low[0]) if low else None
    return [] if text is None or text == how_much.CHANGE else [words.ask(text)]


# By spoons ----------------------------------------------------------------------------------


async def _by_spoon(turn: Turn, said: Asked, again: Again) -> list[Reply]:
    """The grams to a KH, where spoons are asked for, and why it is no spoon."""
    replies = await anew(turn, f"how much baking soda for kh {said.goal}", again)
    planned = bool(replies) and "parts" in replies[0].facts
    return _led(replies, _not_by_spoon(SODA), behind=planned)


def _not_by_spoon(salt: str) -> str:
    return plan_words.not_by_spoon(salt, spoon_grams(salt, 1.0))


def _led(replies: list[Reply], told: str, *, behind: bool = False) -> list[Reply]:
    """The same with a line before the first one, or right behind it."""
    if not replies:
        return replies
    one, *others = replies
    at = 1 if behind else 0
    lines = (*one.lines[:at], Line(told), *one.lines[at:])
    return [replace(one, lines=lines), *others]
