"""The way of one message through the conversation: which topic answers it.

Nothing here or below knows on which messenger it is. A topic is a file of this folder; it takes
the turn and what was understood, and gives replies.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Mapping
from dataclasses import replace
from typing import Final

from bot.chat import (
    about_values,
    acknowledged,
    after_dose,
    animals,
    asked_behind,
    asked_deeds,
    before_deed,
    belongs,
    beside_call,
    calls,
    change_amount,
    corrections,
    dosing,
    edits,
    emergencies,
    every_tank,
    followups,
    given_unheard,
    how_much,
    inhabitants,
    introduced,
    labels,
    nearest,
    past,
    pauses,
    people_first,
    plan_talk,
    poison_first,
    presses,
    products,
    raising,
    readings,
    reminder_requests,
    reminder_stops,
    reminder_waiting,
    reminders,
    reports,
    settings,
    signs,
    small_talk,
    tanks,
    tanks_told,
    traits,
    typed,
    undoing,
    unheard,
    volume_open,
    what_now,
)
from bot.chat.first_looks import BEFORE_INTENT
from bot.chat.looks import BEFORE_READINGS, QUESTIONS, first
from bot.chat.model import Reply
from bot.chat.tank_volumes import ask_of_other
from bot.chat.turn import Turn
from bot.chat.words import general as words
from bot.chat.words.terms import explained
from core.advice.calls import HEATED, gasps
from core.message import change_count, deed_opened, parse, terms
from core.message.alone import substance_asked
from core.message.gave_told import gave
from core.message.model import Command, Parsed, Question
from core.message.past import Past
from core.message.past import asked as past_asked
from core.message.should_not import as_should
from core.message.signs import seen
from core.message.volume_said import gallons_spelt
from core.message.when_clause import only_tells

CommandTopic = Callable[[Turn, Command, Parsed], Awaitable[list[Reply]]]
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
    "remind": reminder_requests.command,
    "stop_reminding": reminders.stop,
    "quiet": pauses.quiet,
    "holiday": pauses.holiday,
    "done": acknowledged.done,
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

FIRST: Final = frozenset({"bleach", "contaminated", "filter_harmed", *HEATED})
"""Calls whose steps go before what is stored: so it is read as what followed of them."""


async def answer(turn: Turn) -> list[Reply]:
    """Answer one thing that a person did; silence is an empty list."""
    turn.route, turn.typed = by_intent, _message
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
    if (asked := as_should(turn.incoming.text)) is not None:
        turn.incoming = replace(turn.incoming, text=asked)
    turn.incoming = replace(turn.incoming, text=gallons_spelt(turn.incoming.text))
    parsed = parse(turn.incoming.text, turn.context())
    said = turn.incoming
    before = await change_amount.answered_last(turn)
    found = await first(BEFORE_INTENT, turn, parsed)
    replies = await by_intent(turn, parsed) if found is None else found
    doubted = found is None and bool(parsed.doubts)
    amount = None if before is None else await change_amount.unheard(turn, before, doubted=doubted)
    lost = turn.unheard or (found is None and parsed.doubts and not turn.whole)
    doubts = any("doubts" in each.facts for each in replies)
    acted, turn.incoming = turn.incoming, said
    untold = await given_unheard.asked(turn, parsed, replies, lost=bool(lost) or doubts)
    if untold is None and lost:
        await unheard.note(turn, parsed)
        replies = await _with_volume(turn, parsed, replies)
    turn.incoming = said if lost else acted
    replies = replies if untold is None else untold
    replies = replies if amount is None else [amount]
    await undoing.pass_by(turn, parsed, replies)
    replies = await given_unheard.first(turn, replies)
    return await volume_open.settled_first(turn, replies)


async def _with_volume(turn: Turn, parsed: Parsed, replies: list[Reply]) -> list[Reply]:
    """The replies, and what a volume among doubtful words is: it is asked of the tank in use."""
    if turn.unheard or turn.incoming.group or parsed.question is not None:
        return replies
    question = await ask_of_other(turn)
    if question is None:
        return replies
    return [*(replies if parsed.values or parsed.events else []), question]


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
    if (parts := await asked_behind.told_first(turn, parsed)) is not None:
        return parts
    if (spread := await every_tank.told(turn, parsed)) is not None:
        return spread
    parsed = asked_deeds.as_question(turn.incoming.text, parsed)
    parsed = asked_deeds.as_should(turn, parsed)
    parsed = before_deed.formerly(turn.incoming.text, parsed)
    if parsed.question is not None and _only_when(parsed):
        parsed = replace(parsed, question=None)
    if parsed.question is not None and (counts := change_count.counted(parsed.question)):
        parsed = replace(parsed, question=counts)
    if calls.is_danger(turn, parsed) or calls.goes_first(turn, parsed):
        return await _call(turn, parsed)
    if (found := await first(BEFORE_READINGS, turn, parsed)) is not None:
        turn.whole = True
        return found
    parsed = animals.asked(turn, parsed)
    told = parsed.values or parsed.events or parsed.question is not None
    if not told and (described := await tanks_told.told(turn, parsed)) is not None:
        turn.whole = True
        return described
    if not told and (living := await inhabitants.told(turn)) is not None:
        return living
    if calls.is_call(turn, parsed):
        return await _call(turn, parsed)
    replies: list[Reply] = []
    if parsed.doubts and not (parsed.values or parsed.events or parsed.question):
        hinted = await plan_talk.hint(turn) is not None
        if (read := await nearest.restate(turn, of_plan=hinted, in_doubt=True)) is not None:
            return read
    if parsed.values or parsed.events or parsed.doubts:
        replies += await readings.keep(turn, await before_deed.placed(turn, parsed))
        replies += await emergencies.caution_beside(turn, parsed)
    replies += await traits.beside(turn, parsed)
    replies += await signs.beside(turn, parsed)
    replies += await asked_behind.answer(turn, parsed)
    if (did := await after_dose.asked_beside(turn, parsed)) is not None:
        replies += did
    elif parsed.question is not None:
        asked = QUESTIONS.get(parsed.question.kind)
        nameless = plan_talk.names_nothing(parsed.question)
        bare = nameless and how_much.is_bare(turn.incoming.text)
        adds = nameless and how_much.is_of_adding(turn.incoming.text)
        told_of = await plan_talk.hint(turn) if nameless else None
        against = await poison_first.against_more(turn, parsed) if nameless else None
        if against is not None:
            replies += against
        elif told_of is not None:
            turn.unheard = True
            replies.append(await turn.reply(told_of))
        elif nameless and seen(turn.incoming.text) == "feeding":
            replies += await signs.answer(turn, parsed) or []
        elif (bare and (stands := await how_much.of_what_stands(turn)) is not None) or (
            adds and (stands := await how_much.of_what_stands(turn, adding=True)) is not None
        ):
            replies += stands
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
    if not replies and (chatted := await small_talk.answer(turn)) is not None:
        return chatted
    if not replies and turn.incoming.addressed:
        put_in = gave(turn.incoming.text) is not None  # gave the kh buffer: no talk of KH
        if (sign := await signs.answer(turn, parsed)) is not None:
            return sign
        if not put_in and (known := await about_values.answer(turn, parsed)) is not None:
            return known
        if (heard := await acknowledged.answer(turn, parsed)) is not None:
            return heard
        if (against := await poison_first.against_more(turn, parsed)) is not None:
            return against
        if (of_person := await people_first.unheard(turn)) is not None:
            return of_person
        if (stronger := await raising.taken_for_soda(turn)) is not None:
            return stronger
        turn.unheard = True
        if (asked_amount := await change_amount.not_heard(turn)) is not None:
            return asked_amount
        if (waits := await reminder_waiting.again(turn)) is not None:
            return waits
        hint = await plan_talk.hint(turn)
        if (read := await nearest.restate(turn, of_plan=hint is not None)) is not None:
            return read
        replies.append(await (nearest.answer(turn) if hint is None else turn.reply(hint)))
    return replies


def _only_when(parsed: Parsed) -> bool:
    """Whether the question beside a deed or a value only tells when it was: `when i saw the ph`."""
    asked = parsed.question
    told = parsed.values or parsed.events
    return (
        bool(told) and asked is not None and asked.kind == "when" and only_tells(asked.text or "")
    )


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
    parsed = beside_call.parted(turn, calls.with_warmth(turn, parsed))
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
    return replies + await reminder_stops.beside_call(turn)
