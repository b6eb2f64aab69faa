"""Words that do what a button does: more, yes, no, done, later, skip, why."""

from __future__ import annotations

import math
from datetime import timedelta
from typing import Final

from bot.chat import (
    given_parts,
    given_plan,
    given_unheard,
    open_told,
    presses,
    reminder_answers,
    unheard,
)
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, LOOKED_AT, PATIENCE
from bot.chat.replanned import LOGGING
from bot.chat.turn import Turn
from bot.chat.words import general as words
from bot.store.offers import Choice, Offer
from core.message import parse
from core.message.answer_words import answer_words
from core.message.model import Command, Parsed

COMMANDS = frozenset({"more", "undo", "done"})
"""Meanings of buttons whose English words are commands of their own."""

REASONS = 8
"""Lines of reasons on one screen."""


async def yes(turn: Turn, _command: Command, _parsed: Parsed) -> list[Reply]:
    """Take the latest choice that means yes."""
    return await _latest(turn, "yes")


async def agreed(turn: Turn) -> list[Reply] | None:
    """``ok do that``: take what the latest answer offered to ask; None where it offered none.

    Nothing is stored by that, so it is no yes to a question whether a thing was done or read.
    """
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    for offer in await turn.uow.offers.latest(turn.chat.id, 1):
        orders = [each for each in offer.choices if each.verb == ORDER]
        if offer.used is None and turn.now - offer.made_at <= patience and len(orders) == 1:
            return await presses.take(turn, offer, orders[0])
    return None


ORDER: Final = "say_again"
"""What a button does that asks a question in the keeper's place."""


async def no(turn: Turn, _command: Command, _parsed: Parsed) -> list[Reply]:
    """Take the latest choice that means no."""
    return await _latest(turn, "no")


async def more(turn: Turn, _command: Command, _parsed: Parsed) -> list[Reply]:
    """Show what the latest reply kept back."""
    return await _latest(turn, "more")


async def why(turn: Turn, _command: Command, _parsed: Parsed) -> list[Reply]:
    """Show what the latest answer rested on: a reading's reasons, or what is behind "more"."""
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        turn.asked = turn.asked or offer.context.get("asked")  # still what is spoken of
        if reasons := offer.context.get("why"):
            facts = offer.context.get("facts")
            return [await turn.reply(reasons[:REASONS], more=reasons[REASONS:], facts=facts)]
        if any(choice.meaning == "more" for choice in offer.choices):
            break
    replies = await _take(turn, "more")
    return [await turn.reply(words.why_unknown())] if replies is None else replies


async def done(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``done`` or ``done 2``: the task was done; right after a plan, its first part was given."""
    waiting = await turn.uow.reminders.of_chat(turn.chat.id, only_open=True)
    plan = None if command.arguments or waiting else await given_plan.running(turn)
    untold = None if plan is None else await given_unheard.again(turn, plan)
    if untold is not None:
        return untold
    if not command.arguments and (given := await plan_given(turn)) is not None:
        return given
    if not command.arguments and (earlier := await given_parts.done(turn)) is not None:
        return earlier
    return await reminder_answers.by_number(turn, "done", command.arguments)


async def plan_given(turn: Turn) -> list[Reply] | None:
    """Log the plan that was answered last, where no reminder waits for the word.

    Readings that were told since leave it what is waited for; of an older change it is asked.
    """
    offer = await _waiting(turn)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if offer is None or await turn.uow.reminders.of_chat(turn.chat.id, only_open=True):
        return None
    old = turn.now - offer.made_at > patience
    logging = [each for each in offer.choices if each.verb in LOGGING]
    if logging and not old:
        if logging[0].verb in {"log_dose", given_plan.LOG_SOME} and await unheard.passed_over(
            turn, offer
        ):
            return await open_told.how_much(turn)
        asks = given_plan.OF_PLAN in offer.context and len(offer.choices) > 1  # which of both
        return None if asks else await presses.take(turn, offer, logging[0])
    changed = _changes(turn, offer)
    if not changed or (old and (turn.incoming.group or turn.now - offer.made_at > WAITS)):
        return None
    if len(changed) == 1 and not old:
        return await presses.take(turn, offer, changed[0])
    lines = [words.which_was_done([each.label for each in changed])]
    return [await turn.reply(lines, choices=changed)]


WAITS: Final = timedelta(hours=72)
"""So long after a change was spoken of `done` may be of it; our judgement."""


async def _waiting(turn: Turn) -> Offer | None:
    """The newest answer; where that is a change, also behind readings that were told since."""
    latest = await turn.uow.offers.latest(turn.chat.id, LOOKED_AT)
    for offer in latest:
        if "largest_safe_share" in offer.context.get("facts", {}):
            return offer
        if not await given_parts.is_quiet(turn, offer, 0):
            break
    return latest[0] if latest else None


def _changes(turn: Turn, offer: Offer) -> list[Choice]:
    """The changes of water that an answer spoke of: the one asked about, and a step of it."""
    facts = offer.context.get("facts", {})
    tank = turn.tank_named(facts.get("tank", ""))
    if "asked" not in offer.context or tank is None or "largest_safe_share" not in facts:
        return []
    steps = [math.floor(100 * share) / 100 for share in facts.get("steps", [])[:1]]  # as it is said
    shares = dict.fromkeys([facts["share"], *(step for step in steps if step > 0.0)])
    new = f" with {facts['source']}" if facts.get("source", "").isalpha() else ""
    at = turn.now.isoformat()
    litres = _litres_asked(turn, offer)
    told = {share: f"{100 * share:.3g}%" for share in shares}
    if litres is not None:
        told[facts["share"]] = f"{litres:.4g} l"
        if len(told) > 1 and abs(facts["share"] - list(told)[1]) < SAME:
            told.popitem()  # 18.5 %, said as 18 %: the step is what was asked about
    return [
        Choice(
            words.changed_so_much(share)
            if litres is None or "%" in said
            else words.changed_litres(litres),
            "for_tank",
            "",
            {"text": f"changed {said}{new}", "at": at, "tank_id": tank.id},
        )
        for share, said in told.items()
    ]


SAME: Final = 0.01
"""Of the water: shares this near are one, said as a whole number of percent."""


def _litres_asked(turn: Turn, offer: Offer) -> float | None:
    """The litres that the change of an answer was asked in; None where it was a share. [L]"""
    asked = offer.context["asked"]
    changes = asked.get("changes", {})
    if changes.get("percent") is not None:
        return None
    question = parse(asked["text"], turn.context()).question
    told = changes.get("litres", None if question is None else question.litres)
    return None if told is None else float(told)


async def later(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``later`` or ``later 2``: ask again in an hour."""
    return await reminder_answers.by_number(turn, "later", command.arguments)


async def skip(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``skip`` or ``skip 2``: let this occurrence go."""
    return await reminder_answers.by_number(turn, "skip", command.arguments)


async def by_label(turn: Turn) -> list[Reply] | None:
    """Take the choice whose button says just what was typed; None where none does.

    So every button has words that do the same. Labels that are commands too are left to those. Of
    what was just asked the end of one button is enough: `20 l` of changed 20 l.
    """
    said = turn.incoming.text.strip().casefold()
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    latest = await turn.uow.offers.latest(turn.chat.id)
    for offer in latest:
        if offer.used not in {None, given_plan.DROPPED} or turn.now - offer.made_at > patience:
            continue
        for choice in offer.choices:
            command = choice.meaning in COMMANDS and said == choice.meaning
            if choice.label.casefold() == said and not command:
                if choice.meaning in {"yes", "no"}:  # of the latest question, whatever its words
                    return await _take(turn, choice.meaning)
                return await presses.take(turn, offer, choice)
    for offer in latest[:1] if "?" not in said else ():
        asked = offer.used is None and turn.now - offer.made_at <= patience
        ending = [each for each in offer.choices if each.verb == DOUBTED and _ends(each, said)]
        if asked and len(ending) == 1 and turn.incoming.addressed:
            return await presses.take(turn, offer, ending[0])
    return None


DOUBTED: Final = "take_doubt"
"""What a button does that says how a doubtful message was meant."""


def _ends(choice: Choice, said: str) -> bool:
    """Whether a button's words end with what was said, a unit written out or not."""
    told, label = answer_words(said), answer_words(choice.label)
    return bool(told) and len(told) < len(label) and label[-len(told) :] == told


async def _latest(turn: Turn, meaning: str) -> list[Reply]:
    replies = await _take(turn, meaning)
    if replies is not None:
        return replies
    missing = words.nothing_more() if meaning == "more" else words.nothing_to(meaning)
    return [await turn.reply(missing)] if turn.incoming.addressed else []


async def _take(turn: Turn, meaning: str) -> list[Reply] | None:
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if offer.used is not None:
            continue
        if meaning in {"yes", "no"} and turn.now - offer.made_at > patience:
            return None
        for choice in offer.choices:
            if choice.meaning == meaning:
                return await presses.take(turn, offer, choice)
    return None
