"""What is said of the plan just given: how it goes in, when to go on, that all of it went in.

The answers are no offers: the plan stays what `done`, `slower` and its buttons are about.
"""

from __future__ import annotations

from typing import Final

from bot.chat import (
    after,
    after_call,
    calls,
    change_talk,
    emergencies,
    forms_talk,
    given_parts,
    misput,
    nameless,
    needed,
    open_told,
    other_way,
    own_plan,
    pair_talk,
    plan_figures,
    plan_how,
    plan_now,
    plan_parts,
    presses,
    still_waits,
    strangers,
    tank_volumes,
    tanks_told,
)
from bot.chat.given_plan import DROPPED, OF_PLAN, Given, given, last_in, running
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, LOOKED_AT, PATIENCE
from bot.chat.turn import Turn
from bot.chat.words import change_talk as change_words
from bot.chat.words import doses as dose_words
from bot.chat.words import plan_figures as figure_words
from bot.chat.words import plan_talk as words
from bot.chat.words import volume_open as open_words
from bot.chat.words.text import _
from bot.store.offers import Offer
from core.advice.scheduling import per_gram
from core.advice.spoons import spoon_grams
from core.message import after as after_words
from core.message import followups
from core.message.anew import exchanged
from core.message.given_beside import tells_value
from core.message.model import Command, Parsed, Question
from core.message.plan_anew import (
    named_alone,
    named_instead,
    regrets,
    weighed_anew,
    without_instead,
)
from core.message.plan_more import one_more
from core.message.plan_said import Amounts, only_asks, substances_named, tells_which
from core.message.plan_talk import About, about
from core.message.plan_when import asks_when, when_of_plan
from core.message.plan_words import Telling, telling
from core.message.reminder_said import chore
from core.message.volume_said import volume_told

A_SPOON: Final = (spoon_grams("sodium bicarbonate", 1.0) or (0.0, 0.0, 0.0))[1:]
"""What a level teaspoon of baking soda may weigh. [g]"""

SAME: Final = 1.05
"""Within this factor the grams of a plan are those of its sum; a scale rounds them."""

CORRECTING: Final = frozenset({"correct", "no"})
"""Commands that begin with a word of regret, which may put grams right."""

GIVEN: Final = frozenset({"gave_all", "gave_two", "gave_double"})
"""More than a part went in."""

TOLD: Final = GIVEN | {"gave_one", "gave_it", "gave_half", "changed"}
"""What is told to be done, which none is who asks when."""

OF_NEWEST: Final = frozenset(
    {
        "safe",
        "effect",
        "days",
        "litres",
        "a_day",
        "changed",
        "often",
        "need",
        "gave_it",
        "warm",
        "lot",
        "check",
    }
)
"""What may be said of anything: of a plan only while nothing else was spoken of since."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer what is said of the newest plan; None where nothing is, or where there is none."""
    if not turn.incoming.addressed:
        return None
    text = turn.incoming.text
    if text.strip().casefold() == _(dose_words.LOG_IT).casefold():
        return None  # the words of a button, which counts once
    of_tanks = parsed.command is None or parsed.command.name in CORRECTING
    if of_tanks and (elsewhere := await misput.answer(turn, parsed)) is not None:
        return elsewhere
    if of_tanks and (held := await tanks_told.of_plan(turn)) is not None:
        return held
    if volume_told(text, turn.chat.us_gallons) is not None:
        return None  # wait its only 30 litres
    if of_tanks and (named := named_instead(text)) is not None and parsed.question is None:
        return await plan_parts.named_anew(turn, parsed, *named)
    told = of_tanks and not parsed.events and not parsed.values and parsed.question is None
    if told and (alone := named_alone(text)) is not None:
        return await plan_parts.named_alone(turn, alone)
    if parsed.command is not None:
        return await _regretted(turn, parsed) if parsed.command.name in CORRECTING else None
    if (steps := await plan_now.what_now(turn)) is not None:
        return steps
    again = await running(turn) if followups.again(text) else None
    if again is not None:
        begun = await last_in(turn, again) is not None
        left = plan_parts.go_on if begun else plan_parts.go_on_today
        if (today := await left(turn, again)) is not None:
            return today
    if await _of_another(turn, parsed):
        return None
    exact = about(text) or when_of_plan(text)
    exact = None if exact in TOLD and (tells_value(text) or only_asks(text)) else exact
    said = telling(text) if exact is None else (exact, Amounts())
    if said is None and one_more(text) and await plan_parts.just_dosed(turn):
        said = ("gave_one", Amounts())  # then the second too
    if said is not None and said[0] in TOLD and asks_when(text):
        return None
    if (
        said is not None and said[0] == "gave_two"
    ):  # in 2 parts: how it is wished, not that it is in
        wished = followups.read(text, turn.context())
        if wished is not None and wished.parts is not None:
            return None
    if parsed.question is None and (anew := weighed_anew(text)) is not None:
        corrected = await _weighed_anew(turn, parsed, anew)
        if corrected is not None or said is None:
            return corrected
    if said is not None and said[0] == "not_given":
        return await _not_given(turn)
    answered = None if said is None else await of_plan(turn, parsed, *said)
    of_safety = said is not None and said[0] == "safe" and answered is not None
    return await strangers.beside(turn, answered or []) if of_safety else answered


async def _of_another(turn: Turn, parsed: Parsed) -> bool:
    """Whether `20 g of it` is of a thing that was told since the plan."""
    put_in = {event.substance for event in parsed.events if event.kind == "dose"}
    if turn.spoken_of is None or put_in != {turn.spoken_of}:
        return False
    plan = await running(turn)
    return plan is not None and bool(plan.salts) and turn.spoken_of not in dict(plan.salts)


async def _not_given(turn: Turn) -> list[Reply] | None:
    """`i didnt dose it` right after a dose was put on record: it is taken back."""
    if turn.route is None or not await plan_parts.just_dosed(turn):
        return None
    return await turn.route(turn, Parsed("command", command=Command("undo", "")))


async def _regretted(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """`no, 8 g`, `oops, i gave double`: what begins as a correction may tell of a plan."""
    text = turn.incoming.text
    if (grams := weighed_anew(text)) is not None:
        return await _weighed_anew(turn, parsed, grams)
    said = telling(text)
    if said is not None and said.meaning == "not_given":
        return await _not_given(turn)
    if said is None or said.meaning not in {*GIVEN, "gave_it", "gave_half", "gave_too_much"}:
        return None
    if said.amounts.grams is not None and said.meaning == "gave_it":
        return await _weighed_anew(turn, parsed, said.amounts.grams)
    return await of_plan(turn, parsed, *said)


async def _weighed_anew(turn: Turn, parsed: Parsed, grams: float) -> list[Reply] | None:
    """The part on record put right; where none is, `9 g instead of 3` of the plan went in. [g]"""
    if await given_parts.asks_how_much(turn) is not None:
        return await of_plan(turn, parsed, "gave_it", Amounts(grams=grams))
    corrected = await plan_parts.weighed_anew(turn, grams)
    text = turn.incoming.text
    if corrected is not None or not (without_instead(text)[1] or regrets(text)):
        return corrected
    pair, plan = exchanged(turn.incoming.text), await running(turn)
    if pair is not None and plan is not None and other_way.aims_at(plan.offer, pair[1]):
        return None  # 5 instead of 6, where 6 was wished
    return await of_plan(turn, parsed, "gave_it", Amounts(grams=grams))


async def of_plan(
    turn: Turn, parsed: Parsed, said: About | Telling, amounts: Amounts
) -> list[Reply] | None:
    """Answer what is said of the newest plan, as it was heard; None where none is meant."""
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    offers = await turn.uow.offers.latest(turn.chat.id, LOOKED_AT)
    of_late = [offer for offer in offers if turn.now - offer.made_at <= patience]
    if said == "gave_too_much":
        await emergencies.remember(turn, turn.current_tank, "overdose")
        return await open_told.how_much(turn)
    if said == "safe" and _is_after_call(turn):
        return None
    if said == "more_needed":
        return await _more_needed(turn, of_late)
    if said == "needed":
        return await needed.answer(turn, of_late)
    if said == "drop":
        return await _dropped(turn, of_late[0]) if of_late else None
    if said == "weekly" and amounts.percent is not None:
        return await change_talk.other_share(turn, {}, amounts.percent)
    if said == "safe" and (warned := await after.warned_of(turn, of_late)) is not None:
        return warned
    if said == "safe" and of_late and after.tells_harm(of_late[0]):
        return None  # that is what was told since, which is no part of the plan
    if said == "a_day" and (named := substances_named(turn.incoming.text)):
        plan_of = next((found for each in of_late if (found := forms_talk.substances_in(each))), ())
        if not forms_talk.is_of(named, plan_of):
            return None  # of another salt it is asked
    if (formed := await forms_talk.answer(turn, said, of_late)) is not None:
        return formed
    if (pair := await pair_talk.answer(turn, said, of_late)) is not None:
        return pair
    for offer in of_late:
        if given(offer) is not None:
            break
        facts = offer.context.get("facts", {})
        if "largest_safe_share" in facts:
            newest = await plan_now.is_newest(turn, offer, of_late)
            return await change_talk.answer(turn, said, facts, amounts, newest=newest)
    plan = await running(turn)
    if plan is None and (missing := await still_waits.again(turn, said, of_late)) is not None:
        return missing
    if said == "first" and plan is not None:
        said = "go_on"  # of one salt it is asked which part
    if said not in TOLD and (first := await plan_now.held_back(turn, said, plan)) is not None:
        return [first]
    if said in {"worked_out", "label_says", "filled"}:
        return await _filled(turn, said) if plan is None else await _doubted(turn, said, plan)
    if said == "for_us":
        return None if plan is None else [await given_parts.by_your_hand(turn, plan)]
    if said in {"gave_it", "to_come"} and not amounts.of_dose and plan is not None:
        if not await plan_now.is_newest(turn, plan.offer, of_late):
            if said == "gave_it":
                return await given_parts.done(turn, sure=False)
            return [await turn.reply(words.tell_when_done())]
        return await _about(turn, said, plan, amounts)
    if plan is None and said in GIVEN and not calls.is_call(turn, parsed):
        await emergencies.remember(turn, turn.current_tank, "overdose")
        return await open_told.how_much(turn)
    if plan is None and said == "gave_one" and tells_which(turn.incoming.text):
        return await open_told.how_much(turn)
    told = said == "gave_it" and amounts.of_dose
    free = said not in OF_NEWEST or told
    if plan is not None and (free or await plan_now.is_newest(turn, plan.offer, of_late)):
        if said == "go_on" and (steps := await plan_now.danger_first(turn, plan)) is not None:
            return [steps]
        return await _about(turn, said, plan, amounts)
    if told and parsed.question is None and telling(turn.incoming.text) is not None:
        return await nameless.told(turn, of_late, amounts)
    if said == "at_once" and plan is None and when_of_plan(turn.incoming.text) == "at_once":
        return [await turn.reply(words.double_of_what())]
    if said == "spoons" and plan is None:
        return [await turn.reply(words.ask_for_a_dose(), facts={"spoon_grams": list(A_SPOON)})]
    planned = said in {"so_much", "to_come"} and not parsed.events and parsed.question is None
    if planned and chore(turn.incoming.text, turn.local_now, turn.chat.zone, deed=False) is None:
        return [await turn.reply(words.tell_when_done())]
    return await plan_figures.judged(turn) if said == "safe" and amounts == Amounts() else None


async def _filled(turn: Turn, said: About | Telling) -> list[Reply] | None:
    """How much water stones and wood leave in the tank in use, where no plan stands."""
    stored = turn.current_tank
    if said != "filled" or stored is None or stored.tank.volume_l is None:
        return None
    return [await tank_volumes.ask_room(turn, stored, {}, planned=False)]


async def _doubted(turn: Turn, said: About | Telling, plan: Given) -> list[Reply]:
    """What a plan rests on, where it is doubted; where things take room, how much water it is."""
    volume = plan.held.get("volume_l")
    if said == "filled" and volume is not None:
        stored = None if plan.tank_id is None else turn.tank_by_id(plan.tank_id)
        if stored is not None and stored.tank.volume_l is not None:
            return [await tank_volumes.ask_room(turn, stored, {}, {OF_PLAN: plan.offer.id})]
        return [await turn.reply(open_words.takes_room(volume))]
    lines = [*(_sum(plan) or figure_words.much(plan.facts)), words.worked_out()]
    if said == "label_says":
        lines = [*lines, *words.label_says()]
    return [await turn.reply(lines)]


def _sum(plan: Given) -> list[str]:
    """The sum of a plan that raises KH alone, by one salt; none of another."""
    facts, volume = plan.facts, plan.facts.get("volume_l") or plan.held.get("volume_l")
    start, end = facts.get("from"), facts.get("to")
    if len(plan.salts) != 1 or list(plan.analytes) != ["kh"]:
        return []
    if start is None or end is None or volume is None:
        return []
    salt, whole = plan.salts[0][0], sum(plan.parts)
    a_degree = 1.0 / per_gram(salt, "kh")
    reckoned = (end - start) * volume * a_degree
    if not whole / SAME < reckoned < whole * SAME:
        return []  # it rests on more than that
    faster = plan.facts.get("emergency", False)
    return figure_words.reckoned(start, end, volume, salt, a_degree, plan.parts, faster=faster)


async def _more_needed(turn: Turn, of_late: list[Offer]) -> list[Reply] | None:
    """Whether more goes in: what is next of a plan that is begun, else by the readings."""
    plan = await running(turn)
    if plan is not None and await last_in(turn, plan) is not None:
        return await plan_parts.go_on(turn, plan)
    found = await needed.answer(turn, of_late)
    return await plan_figures.judged(turn) if found is None and turn.current_tank else found


def _is_after_call(turn: Turn) -> bool:
    """Whether `è troppo tardi` is asked of a call for help."""
    asked = after_words.asked(turn.incoming.text)
    return asked is not None and asked.meaning in after_call.MEANINGS


def names_nothing(question: Question) -> bool:
    """Whether an amount or what it does is asked for, of nothing that is named or numbered."""
    untold = Question(question.kind, tank=question.tank, text=question.text)
    return question.kind in {"dose", "effect"} and question == untold


async def hint(turn: Turn) -> list[str] | None:
    """What can be said of the plan or the change that was answered last; None where none was."""
    latest = await turn.uow.offers.latest(turn.chat.id)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or turn.now - latest[0].made_at > patience:
        return None
    newest = latest[0]
    if given(newest) is not None:
        return words.hint_of_plan()
    of_change = "largest_safe_share" in newest.context.get("facts", {})
    return change_words.hint_of_change() if of_change else None


async def _about(
    turn: Turn, said: About | Telling, plan: Given, amounts: Amounts
) -> list[Reply] | None:
    if (told := await plan_parts.answer(turn, said, plan, amounts)) is not None:
        return told
    if said not in {"how", "dry", "spoons"} or not plan.salts:
        return None  # how a bought product goes in stands on its label
    besides = own_plan.dosed_besides
    if plan.tank_id is not None and await besides(
        turn, plan.offer.id, plan.tank_id, plan.offer.made_at
    ):  # the plan knows nothing of it: none may go in
        return await plan_parts.answer(turn, "when_next", plan, Amounts())
    if said == "spoons":
        return [await plan_how.without_scale(turn, plan)]
    return [await plan_how.how(turn, plan, dry=said == "dry")]


async def _dropped(turn: Turn, newest: Offer) -> list[Reply]:
    """Let it be: what we asked is left out, a plan is none; what is on record stays there."""
    no = next((each for each in newest.choices if each.meaning == "no"), None)
    if no is not None and newest.used is None:
        return await presses.take(turn, newest, no)
    if newest.entry_id is None:
        plan = await running(turn)
        if plan is not None and plan.offer.id == newest.id and await last_in(turn, plan) is None:
            await turn.uow.offers.take(newest.id, DROPPED)
        return [await turn.reply(words.nothing_stored())]
    undo = [each for each in newest.choices if each.verb == "undo"]
    return [await turn.reply(words.still_on_record(), choices=undo)]
