"""The way of one message through the conversation: which topic answers it.

Nothing here or below knows on which messenger it is. A topic is a file of this folder; it takes
the turn and what was understood, and gives replies.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Mapping
from dataclasses import replace
from typing import Final

from bot.chat import (
    about_kinds,
    aerating,
    after,
    after_dose,
    aims,
    animals,
    answer_talk,
    arrivals,
    asides,
    asked_deeds,
    asked_water,
    before_deed,
    belongs,
    calls,
    converting,
    cooling,
    corrections,
    daily,
    dosing,
    edits,
    emergencies,
    every_tank,
    expected,
    followups,
    in_vessel,
    inhabitants,
    introduced,
    kit_check,
    labels,
    mix_talk,
    mixes,
    named_for_job,
    orders,
    past,
    pauses,
    plan_talk,
    presses,
    products,
    questions,
    raising,
    readings,
    reminders,
    reports,
    room,
    settings,
    sources,
    tank_use,
    tanks,
    tanks_told,
    traits,
    treatments,
    typed,
    undoing,
    warming,
    weighed_later,
    what_for,
    what_now,
)
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import general as words
from bot.chat.words.terms import explained
from core.advice.calls import HEATED, gasps
from core.message import change_count, deed_opened, parse, terms
from core.message.alone import substance_asked
from core.message.model import Command, Parsed, Question
from core.message.past import Past
from core.message.past import asked as past_asked

CommandTopic = Callable[[Turn, Command, Parsed], Awaitable[list[Reply]]]
QuestionTopic = Callable[[Turn, Question, Parsed], Awaitable[list[Reply]]]

COMMANDS: Final[Mapping[str, CommandTopic]] = {
    "start": settings.start,
    "help": what_now.help_,
    "settings": settings.show,
    "privacy": settings.privacy,
    "zone": settings.zone,
    "tank": tanks.command,
    "kit": tanks.kit,
    "stock": inhabitants.show,
    "source": reports.command,
    "remind": reminders.command,
    "stop_reminding": reminders.stop,
    "quiet": pauses.quiet,
    "holiday": pauses.holiday,
    "done": typed.done,
    "later": typed.later,
    "skip": typed.skip,
    "yes": typed.yes,
    "no": typed.no,
    "more": typed.more,
    "why": typed.why,
    "label": labels.command,
    "undo": undoing.undo,
    "correct": corrections.correct,
    "move": belongs.move,
}

QUESTIONS: Final[Mapping[str, QuestionTopic]] = {
    "dose": dosing.dose,
    "effect": dosing.effect,
    "change": dosing.change,
    "help": questions.help_,
    "when": questions.when,
    "convert": converting.convert,
    "co2": questions.co2,
    "keep": questions.keep,
    "safe": questions.safe,
    "why": questions.why,
    "history": questions.history,
}


FIRST: Final = frozenset({"filter_harmed", *HEATED})
"""Calls whose steps go before what is stored: so it is read as what followed of them."""


async def answer(turn: Turn) -> list[Reply]:
    """Answer one thing that a person did; silence is an empty list."""
    turn.route = by_intent
    kind = turn.incoming.kind
    if kind == "press":
        return await presses.press(turn)
    if kind == "other":
        return [] if turn.incoming.group else [await turn.reply(words.only_text())]
    if kind == "edit":
        return await edits.edited(turn)
    return await _message(turn)


async def _message(turn: Turn) -> list[Reply]:
    turn.spoken_of = await products.spoken_of(turn)
    parsed = parse(turn.incoming.text, turn.context())
    if (awaited := await expected.answer(turn, parsed)) is not None:
        return awaited
    if (of_kit := await kit_check.answer(turn)) is not None:
        return of_kit
    if (cooled := await cooling.answer(turn, parsed)) is not None:
        return cooled
    if (converted := await converting.answer(turn, parsed)) is not None:
        return converted
    if (of_ppm := await treatments.ppm(turn, parsed)) is not None:
        return of_ppm
    if (because := await after.reason(turn, parsed)) is not None:
        return because
    if (by_water := await followups.by_water(turn, QUESTIONS)) is not None:
        return by_water
    if (salted := await asked_water.salt_topped_up(turn)) is not None:
        return [salted]
    if (by_job := await named_for_job.answer(turn, parsed)) is not None:
        return by_job
    if (apart := await in_vessel.told(turn, parsed)) is not None:
        return apart
    if (of_it := await answer_talk.answer(turn, parsed)) is not None:
        return of_it
    if (of_plan := await plan_talk.answer(turn, parsed)) is not None:
        return of_plan
    if calls.goes_first(turn, parsed):  # battery acid, whatever was asked about before
        return await by_intent(turn, parsed)
    if (of_answer := await after.answer(turn, parsed)) is not None:
        return of_answer
    if (mixed := await mix_talk.litres(turn, parsed)) is not None:
        return mixed
    if (aimed := await aims.answer(turn, parsed, QUESTIONS)) is not None:
        return aimed
    if (otherwise := await followups.answer(turn, parsed, QUESTIONS)) is not None:
        return otherwise
    if (use := await what_for.answer(turn, parsed)) is not None:
        return use
    if (steps := await what_now.typed(turn)) is not None:
        return [steps]
    if (weighed := await weighed_later.answer(turn, parsed)) is not None:
        return weighed
    if (did := await after_dose.typed(turn)) is not None:
        return [did]
    if (report := await reports.spoken(turn)) is not None:
        return report
    if (aside := await asides.answer(turn, parsed)) is not None:
        return aside
    if (planned := await orders.answer(turn, parsed)) is not None:
        return planned
    if (typed_out := await typed.by_label(turn)) is not None:
        return typed_out
    if turn.incoming.reply_to is not None and parsed.intent in {"reading", "event"}:
        corrected = await corrections.answering(turn, parsed)
        if corrected is not None:
            return corrected
    return await by_intent(turn, parsed)


async def by_intent(turn: Turn, parsed: Parsed) -> list[Reply]:
    """Let the topic answer that a message's intent belongs to."""
    if parsed.command is not None:
        topic = COMMANDS.get(parsed.command.name)
        if topic is None:
            return [await turn.reply(words.not_yet(parsed.command.name))]
        if topic is tanks.command and (met := await introduced.told(turn)) is not None:
            return met
        return await topic(turn, parsed.command, parsed)
    await _use_named(turn, parsed)
    if turn.incoming.addressed and (term := _word_asked(turn, parsed)) is not None:
        return [await turn.reply(explained(term))]
    before = _past_asked(turn, parsed) if turn.incoming.addressed else None
    if before is not None and (recorded := await past.answer(turn, before)) is not None:
        return recorded
    if turn.incoming.addressed and (both := await past.behind(turn)) is not None:
        return both
    if (spread := await every_tank.told(turn, parsed)) is not None:
        return spread
    parsed = asked_deeds.as_question(turn.incoming.text, parsed)
    parsed = asked_deeds.as_should(turn, parsed)
    if parsed.question is not None and (counts := change_count.counted(parsed.question)):
        parsed = replace(parsed, question=counts)
    if calls.is_danger(turn, parsed) or calls.goes_first(turn, parsed):
        return await _call(turn, parsed)
    if (met := await introduced.told(turn)) is not None:
        return met
    if (living := await introduced.beside(turn, parsed)) is not None:
        return living
    if (trait := traits.trait_of(turn, parsed)) is not None:
        return await traits.answer(turn, trait)
    if (coming := arrivals.coming_in(turn, parsed)) is not None:
        return await arrivals.answer(turn, coming)
    if (raised := await raising.answer(turn, parsed)) is not None:
        return raised
    if (warmed := await warming.answer(turn)) is not None:
        return warmed
    if (managed := await products.manage(turn, parsed)) is not None:
        return managed
    if (named := await labels.called(turn)) is not None:
        return named
    if sources.may_be_told(parsed) and (heard := await sources.spoken(turn)) is not None:
        return heard
    if (about := await about_kinds.answer(turn, parsed)) is not None:
        return about
    if (aired := await aerating.answer(turn, parsed)) is not None:
        return aired
    if (mixed := await mixes.answer(turn, parsed)) is not None:
        return mixed
    if (used := await tank_use.answer(turn, parsed)) is not None:
        return used
    if (used := await daily.told(turn, parsed)) is not None:
        return used
    if (roomy := await room.answer(turn, parsed)) is not None:
        return roomy
    parsed = animals.asked(turn, parsed)
    told = parsed.values or parsed.events or parsed.question is not None
    if not told and (described := await tanks_told.told(turn, parsed)) is not None:
        return described
    if not told and (living := await inhabitants.told(turn)) is not None:
        return living
    if calls.is_call(turn, parsed):
        return await _call(turn, parsed)
    replies: list[Reply] = []
    if parsed.values or parsed.events or parsed.doubts:
        replies += await readings.keep(turn, await before_deed.placed(turn, parsed))
    replies += await after_dose.now(turn, parsed)
    if (did := await after_dose.asked_beside(turn, parsed)) is not None:
        replies += did
    elif parsed.question is not None:
        asked = QUESTIONS.get(parsed.question.kind)
        told_of = await plan_talk.hint(turn) if plan_talk.names_nothing(parsed.question) else None
        if told_of is not None:
            replies.append(await turn.reply(told_of))
        elif asked is None:
            replies.append(await turn.reply(words.question_not_yet()))
        else:
            followups.begin(turn, parsed.question)
            replies += await asked(turn, parsed.question, parsed)
    if not replies and (living := await inhabitants.told(turn)) is not None:
        return living
    if not replies and (loose := await introduced.listed_loosely(turn)) is not None:
        return loose
    alone = substance_asked(turn.incoming.text) if turn.incoming.addressed else None
    if alone is not None and not replies:
        question = Question("effect", substance=alone, text=turn.incoming.text)
        followups.begin(turn, question)
        return await dosing.effect(turn, question, parsed)
    if not replies and turn.incoming.addressed:
        hint = await plan_talk.hint(turn) or words.hint(_example_tank(turn))
        replies.append(await turn.reply(hint))
    return replies


async def _use_named(turn: Turn, parsed: Parsed) -> None:
    """A question that names a tank makes it the one in use, as a reading does."""
    if parsed.question is None:
        return
    named = turn.tank_named(parsed.question.tank or parsed.tank or "")
    if named is not None:
        await turn.use_tank(named)


def _word_asked(turn: Turn, parsed: Parsed) -> str | None:
    """The word of the answers whose meaning is asked, where nothing is told beside it."""
    return None if parsed.values else terms.asked(turn.incoming.text)


def _past_asked(turn: Turn, parsed: Parsed) -> Past | None:
    """What is asked of what was done and measured, where nothing is told beside it."""
    if parsed.values:
        return None
    asked = past_asked(turn.incoming.text, [tank.name for tank in turn.tanks])
    if asked is None and parsed.events and deed_opened.opened(turn.incoming.text) == "done":
        (event, *_) = parsed.events
        return Past("whether", event.kind, substance=event.substance, tank=event.tank)
    return asked


async def _call(turn: Turn, parsed: Parsed) -> list[Reply]:
    """Store what is told beside a call for help, and answer the call."""
    replies: list[Reply] = []
    parsed = calls.with_warmth(turn, parsed)
    await emergencies.remember_heater(turn, parsed)
    told_beside = calls.without_mishap(turn, parsed)
    if told_beside.values or told_beside.events:
        replies += await readings.keep(turn, told_beside)
    steps = await emergencies.answer(turn, parsed)
    # who needs air reads no list of the dead before it, nor a harmed filter that it is clean
    first = gasps(turn.incoming.text) or steps.facts.get("emergency") in FIRST
    replies = [steps, *replies] if first else [*replies, steps]
    if (doubtful := calls.doubtful_beside(parsed)) is not None:
        replies += await readings.keep(turn, doubtful)
    return replies


def _example_tank(turn: Turn) -> str | None:
    tank = turn.current_tank
    return tank.name if tank is not None and tank.tank.named else None
