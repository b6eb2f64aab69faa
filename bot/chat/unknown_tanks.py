"""Readings of tanks that are not on record: nothing of them is stored unasked."""

from __future__ import annotations

from datetime import datetime

from bot.chat import calls, doubts
from bot.chat.asking import as_name, ask_stray
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import readings as reading_words
from bot.chat.words import unknown_tanks as words
from bot.chat.words.text import _
from bot.store.offers import Choice, Offer
from core.message import parse
from core.message.how_full import part_measured
from core.message.model import Parsed
from core.message.unknown_tanks import unknown_place, unknown_tanks
from core.tank import Tank


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Say how the tanks are told first, or ask which one is meant; None where no such are named."""
    if not turn.incoming.addressed:
        return None
    names = unknown_tanks(turn.incoming.text, turn.context())
    if names:
        made = tuple(map(as_name, names))
        held = {"names": made, "text": turn.incoming.text, "at": turn.now.isoformat()}
        choices = [
            Choice(reading_words.add_tank(", ".join(made)), "add_tanks", "yes", held),
            Choice(_(reading_words.LEAVE_OUT), "leave_out", "no"),
        ]
        return [await turn.reply(words.tell_them_first(made), choices=choices)]
    return None if calls.is_danger(turn, parsed) else await _at_place(turn, parsed)


async def _at_place(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``back kh 3, temp 11`` beside the tank Front: asked whose it is, and nothing is stored.

    So are values of a sump with its own litres: `sump 40l kh 6`.
    """
    text = turn.incoming.text
    told = unknown_place(text, turn.context()) or part_measured(text)
    if told is None or parsed.tank is not None or parsed.command is not None:
        return None
    name, rest = told
    read = parse(rest, turn.context())
    if not read.values or read.doubts or read.question is not None:
        return None
    return [await ask_stray(turn, name, read)]


async def press_add(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Make the tanks, and store what was told of each."""
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    held = choice.arguments
    for name in held["names"]:
        if turn.tank_named(name) is None:
            await turn.add_tank(Tank(name=name))
    return await doubts.say(turn, held["text"], datetime.fromisoformat(held["at"]))
