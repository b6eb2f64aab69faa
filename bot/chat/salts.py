"""Doses other than buffer: hardness, plant food, the sea; and which topic a dose is."""

from __future__ import annotations

from collections.abc import Awaitable, Callable

from bot.chat import dose_reply, own_plan, treatments
from bot.chat.bases import ask_basis, basis_missing
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.wished import CONDITION, TABLE_SALT, goals, second_goal, water_of
from bot.chat.words import dose_grounds as grounds
from bot.chat.words import doses as dose_words
from bot.chat.words import general, names
from bot.chat.words import salts as words
from bot.chat.words.text import _
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.advice import limits
from core.advice.buffers import BUFFERS, STRONG
from core.advice.iron import plan_iron
from core.advice.outlook import with_premises
from core.advice.plan import Plan, Refusal
from core.advice.salts import CALCIUM_TO_MAGNESIUM, USUAL, SaltWish, plan_salts
from core.advice.scheduling import per_gram
from core.advice.state import State
from core.analytes import FREE
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Parsed, Question
from core.message.tokens import cut
from core.substances import ACIDS
from core.water.substances import SUBSTANCES

Topic = Callable[[Turn, Question, Parsed], Awaitable[list[Reply]]]

OF_THE_SEA = frozenset({"kh", "calcium", "magnesium"})
"""What is dosed in the sea, one at a time."""

THIOSULFATE = {"sodium thiosulfate", "sodium thiosulfate pentahydrate"}


def topic_of(question: Question) -> Topic | None:
    """The topic of a dose that is not buffer alone; None for that."""
    analyte, substance = question.analyte, question.substance
    if analyte in {"chlorine", "total_chlorine"} or substance in THIOSULFATE:
        return treatments.dechlorination
    if analyte == "nitrite" or (substance == TABLE_SALT and "nitrite" in question.premises):
        return treatments.nitrite
    if analyte == "ammonia" or substance == "ammonium chloride":
        return treatments.cycling
    if analyte == "ph":
        return _ph
    if analyte in {None, "kh"} and not second_goal(question):
        return None
    return _salts


def is_for_upkeep(question: Question) -> bool:
    """Whether a dose is none against a poison: those belong to the call for help itself."""
    return topic_of(question) not in {treatments.dechlorination, treatments.nitrite}


async def _salts(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    if question.analyte in FREE:
        unknown = Refusal("analyte_unknown", {"analyte": question.analyte})
        return [await dose_reply.refuse(turn, unknown, question.tank)]
    if question.analyte is None or (question.target is None and question.delta is None):
        if question.volume_l is None or question.analyte is not None:
            return [await dose_reply.ask_value(turn, question)]
        return [await turn.reply(words.no_recipe())]
    stored, state = await water_of(turn, question)
    if (refusal := one_at_a_time(question, stored)) is not None:
        return [await dose_reply.refuse(turn, refusal, stored.name if stored else None)]
    if question.analyte == "iron":
        return [await _iron(turn, question, stored, state)]
    if question.target is not None and basis_missing(question, stored):
        return [await ask_basis(turn, question)]
    starts = {} if question.start_value is None else {question.analyte: question.start_value}
    second = second_goal(question)
    wish = SaltWish(
        *goals(question),
        starts=starts,
        substances=_salts_named(question, state, second),
        volume_l=question.volume_l,
        premises={k: v for k, v in question.premises.items() if k != second},
        calcium_to_magnesium=question.ratio or CALCIUM_TO_MAGNESIUM,
        parts=turn.parts or 1,
    )
    plans = plan_salts(wish, state, known_tank=stored is not None)
    name = stored.name if stored is not None else None
    if isinstance(plans, Refusal):
        return [await dose_reply.refuse(turn, plans, name)]
    if len(plans) == 1:
        notes = (words.ratio(question.ratio),) if question.ratio else ()
        return [await dose_reply.planned(turn, plans[0], stored, name, *notes)]
    return [await _two_forms(turn, plans, stored, name)]


def _salts_named(question: Question, state: State, second: str | None) -> tuple[str, ...]:
    """The salts that are named; "salt" for the sea is sea salt, never table salt alone.

    Of several those count beside the first that bring what is wished: `gypsum and epsom for gh 8`.
    For a `second` wish the usual ones are added where none that is named brings what is wished.
    """
    if question.substance is None:
        return ()
    saltiest = max(state.salinity, question.target or 0.0, question.start_value or 0.0)
    salting = question.analyte == "salinity" and question.substance == TABLE_SALT
    if salting and saltiest > limits.SALT_WATER:
        return ()
    text = fold(question.text or "")
    others = [str(t.value) for t in cut(text, lexicon(), text) if t.kind == "substance"]
    goals = [question.analyte or "", *([second] if second else [])]
    useful = [s for s in others if s in SUBSTANCES and any(per_gram(s, g) > 0.0 for g in goals)]
    if second is None:
        return tuple(dict.fromkeys([question.substance, *useful]))
    unmet = [g for g in goals if not any(per_gram(s, g) > 0.0 for s in useful)]
    usual = [salt for goal in unmet for salt in USUAL.get(goal, ())]
    return tuple(dict.fromkeys([*useful, *usual]))


def one_at_a_time(question: Question, stored: StoredTank | None) -> Refusal | None:
    """Refuse two wishes for the sea in one question; the second would pass for a reading."""
    if stored is None or not stored.tank.is_sea or question.analyte not in OF_THE_SEA:
        return None
    others = (OF_THE_SEA - {question.analyte}) & {*question.premises, question.also}
    if not others or CONDITION.search(question.text or ""):
        return None
    return Refusal("one_at_a_time", {"analyte": question.analyte})


async def _iron(turn: Turn, question: Question, stored: StoredTank | None, state: State) -> Reply:
    if question.start_value is not None:
        state = with_premises(state, {"iron": question.start_value})
    plans = plan_iron(question.substance, question.target, question.delta, question.volume_l, state)
    name = stored.name if stored is not None else None
    if isinstance(plans, Refusal):
        return await dose_reply.refuse(turn, plans, name)
    if len(plans) == 1:
        return await dose_reply.planned(turn, plans[0], stored, name)
    return await _two_forms(turn, plans, stored, name)


async def _two_forms(
    turn: Turn, plans: tuple[Plan, ...], stored: StoredTank | None, name: str | None
) -> Reply:
    facts = {"forms": [dose_reply.plan_facts(plan, name) for plan in plans]}
    lines = words.two_forms(plans, name)
    lines.insert(2, dose_words.caution(plans[0]))
    lines.append(dose_words.afterwards(plans[0]))
    told = dose_words.one_sided(plans[0])
    more = [*([] if told is None else [told]), *grounds.more(plans[0])]
    forms = [dose_reply.held_of(plan, stored) for plan in plans]
    choices = [Choice(_(dose_words.LOG_IT), "which_form", "", {"forms": forms})]
    return await turn.reply(lines[:6], choices=choices, more=more, facts=facts)


async def which_form(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Of a salt that is sold in two forms it is asked which one went in."""
    if await turn.uow.log.by_update(turn.chat.id, own_plan.log_id(offer.id)) is not None:
        return [await turn.reply(general.already())]
    forms = [{**form, "of": offer.id} for form in choice.arguments["forms"]]
    choices = [Choice(names.said(each["substance"]), "log_form", "", each) for each in forms]
    facts = {"ask": "form", "forms": [each["substance"] for each in forms]}
    return [await turn.reply(words.which_form(), choices=choices, facts=facts)]


async def _ph(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    stored, _state = await water_of(turn, question)
    name = stored.name if stored is not None else None
    substance = question.substance or ""
    reason = "acid" if substance in ACIDS or "acid" in substance else "ph_target"
    if reason == "ph_target" and substance in STRONG:
        reason = "carbonate"
    elif reason == "ph_target" and substance and substance not in BUFFERS:
        reason = "substance_unknown"
    if reason == "ph_target":
        return [await dose_reply.no_ph(turn, name)]
    return [await dose_reply.refuse(turn, Refusal(reason, {"substance": substance}), name)]
