"""Words that do what a button does: more, yes, no, done, later, skip, why."""

from __future__ import annotations

import math

from bot.chat import presses, reminder_answers
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, LOOKED_AT, PATIENCE
from bot.chat.replanned import LOGGING
from bot.chat.turn import Turn
from bot.chat.words import general as words
from bot.store.offers import Choice, Offer
from core.message.model import Command, Parsed

COMMANDS = frozenset({"more", "undo", "done"})
"""Meanings of buttons whose English words are commands of their own."""

REASONS = 8
"""Lines of reasons on one screen."""


async def yes(turn: Turn, _command: Command, _parsed: Parsed) -> list[Reply]:
    """Take the latest choice that means yes."""
    return await _latest(turn, "yes")


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
    if not command.arguments and (given := await plan_given(turn)) is not None:
        return given
    return await reminder_answers.by_number(turn, "done", command.arguments)


async def plan_given(turn: Turn) -> list[Reply] | None:
    """Log the plan that was answered last, where no reminder waits for the word."""
    latest = await turn.uow.offers.latest(turn.chat.id)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or turn.now - latest[0].made_at > patience:
        return None
    choice = next((each for each in latest[0].choices if each.verb in LOGGING), None)
    changed = _changes(turn, latest[0])
    if not (choice or changed) or await turn.uow.reminders.of_chat(turn.chat.id, only_open=True):
        return None
    if choice is not None:
        return await presses.take(turn, latest[0], choice)
    if len(changed) == 1:
        return await presses.take(turn, latest[0], changed[0])
    lines = [words.which_was_done([each.label for each in changed])]
    return [await turn.reply(lines, choices=changed)]


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
    return [
        Choice(
            words.changed_so_much(share),
            "for_tank",
            "",
            {"text": f"changed {100 * share:.3g}%{new}", "at": at, "tank_id": tank.id},
        )
        for share in shares
    ]


async def later(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``later`` or ``later 2``: ask again in an hour."""
    return await reminder_answers.by_number(turn, "later", command.arguments)


async def skip(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``skip`` or ``skip 2``: let this occurrence go."""
    return await reminder_answers.by_number(turn, "skip", command.arguments)


async def by_label(turn: Turn) -> list[Reply] | None:
    """Take the choice whose button says just what was typed; None where none does.

    So every button has words that do the same. Labels that are commands too are left to those.
    """
    said = turn.incoming.text.strip().casefold()
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    for offer in await turn.uow.offers.latest(turn.chat.id):
        if offer.used is not None or turn.now - offer.made_at > patience:
            continue
        for choice in offer.choices:
            command = choice.meaning in COMMANDS and said == choice.meaning
            if choice.label.casefold() == said and not command:
                return await presses.take(turn, offer, choice)
    return None


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
