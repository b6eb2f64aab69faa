"""``i put in 2 tablespoons``: a deed that names no thing is salt where salt was asked about.

Else it is asked what it was; until that is told, no first aid offers a thing that it may have been.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta
from typing import Final

from bot.chat import open_told
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import plan_talk as words
from bot.store.offers import Offer
from core.advice.salted import SALTS
from core.advice.state import State
from core.message import parse
from core.message.model import Parsed
from core.message.plan_said import Amounts, said_of_plan, substances_named

NAMELESS: Final = "nameless"
"""The key of what is kept with the question what it was."""

QUOTED: Final = 60
"""Characters of what was told that are said back."""
AMONG: Final = 12
A_DAY: Final = timedelta(days=1)
NEAR: Final = 4
"""Replies behind which salt is no longer what was spoken of."""


async def told(turn: Turn, of_late: Sequence[Offer], amounts: Amounts) -> list[Reply]:
    """Put it on record as the salt that was spoken of, or ask what it was."""
    if any(_of_salt(offer) for offer in of_late[:NEAR]) and turn.route is not None:
        amount = _amount(amounts)
        parsed = parse(f"dosed {amount} salt", turn.context()) if amount else None
        if parsed is not None and parsed.events:
            return await turn.route(turn, parsed)
    stored = turn.current_tank
    said = " ".join(turn.incoming.text.split())[:QUOTED]
    of = {"tank": None if stored is None else stored.id, "amount": _amount(amounts)}
    held = {NAMELESS: {**of, "said": said}}
    await open_told.keep(turn)
    return [await turn.reply(words.what_went_in(), context=held, expects="followup")]


async def named(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``it was baking soda`` right after that was asked: so much of it went in; else None."""
    text = turn.incoming.text
    if parsed.values or parsed.events or parsed.question or parsed.command or "?" in text:
        return None
    newest = await turn.uow.offers.latest(turn.chat.id, 1)
    held = newest[0].context.get(NAMELESS) if newest else None
    said, names = said_of_plan(text), substances_named(text)
    if not held or turn.now - newest[0].made_at > A_DAY or said is None or len(names) != 1:
        return None
    amount, (substance,) = held.get("amount"), names
    if amount is None or said.asks or said.queries or said.amounts != Amounts():
        return None
    if said.classes - {"was", "is"} or turn.route is None:
        return None
    dosed = f"dosed {amount} {substance}"
    turn.incoming = replace(turn.incoming, text=dosed)
    return await turn.route(turn, parse(dosed, turn.context()))


async def is_open(turn: Turn, state: State) -> bool:
    """Whether within the day a thing went in of which nobody has told since what it was."""
    return await open_words(turn, state) is not None


async def open_words(turn: Turn, state: State) -> str | None:
    """The keeper's own words of such a thing, the last told; None where nothing is open."""
    since = [
        (made_at, str((held or {}).get("said", "")))
        for made_at, held in await turn.uow.offers.told_of(turn.chat.id, NAMELESS, AMONG)
        if turn.now - A_DAY < made_at <= turn.now
    ]
    if not since:
        return None
    last, said = max(since)
    named = [each.at for each in state.events or () if each.what.kind == "dose"]
    return None if any(at >= last for at in named) else said


def _of_salt(offer: Offer) -> bool:
    """Whether a reply asked whether the animals bear salt, told how much, or put some on record."""
    if any(choice.verb == "confirm_salt" for choice in offer.choices):
        return True
    facts = offer.context.get("facts", {})
    return facts.get("substance") in SALTS


def _amount(amounts: Amounts) -> str | None:
    if amounts.grams is not None:
        return f"{amounts.grams:g} g"
    return None if amounts.spoons is None else f"{amounts.spoons:g} tsp"
