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
from bot.chat.off_record import LINES, NAMELESS, held_of, none_of_it
from bot.chat.patience import PATIENCE
from bot.chat.products import SPOKEN_OF
from bot.chat.turn import ASKED, Turn
from bot.chat.words import plan_talk as words
from bot.store.offers import Offer
from core.advice.salted import SALTS
from core.message import parse
from core.message.model import Parsed
from core.message.plan_said import Amounts, said_of_plan, substances_named
from core.water.substances import SUBSTANCES

A_DAY: Final = timedelta(days=1)
NEAR: Final = 4
"""Replies behind which salt is no longer what was spoken of."""


async def told(turn: Turn, of_late: Sequence[Offer], amounts: Amounts) -> list[Reply]:
    """Put it on record as the salt that was spoken of, or ask what it was."""
    if any(_of_salt(offer) for offer in of_late[:NEAR]) and turn.route is not None:
        amount = amount_of(amounts)
        parsed = parse(f"dosed {amount} salt", turn.context()) if amount else None
        if parsed is not None and parsed.events:
            return await turn.route(turn, parsed)
    amount, spoken = amount_of(amounts), await spoken_of(turn, of_late)
    if amount is not None and spoken is not None and turn.route is not None:
        turn.incoming = replace(turn.incoming, text=f"dosed {amount} {spoken}")
        return await turn.route(turn, parse(turn.incoming.text, turn.context()))
    stored = turn.current_tank
    said = " ".join(turn.incoming.text.split())
    tank_id = None if stored is None else stored.id
    held = await held_of(turn, tank_id, said, amount_of(amounts))
    await open_told.keep(turn)
    lines = words.what_went_in()
    none = [none_of_it(tank_id)]
    kept = {NAMELESS: held, LINES: lines}
    return [await turn.reply(lines, choices=none, context=kept, expects="followup")]


async def spoken_of(turn: Turn, of_late: Sequence[Offer] | None = None) -> str | None:
    """The one salt that was asked about right before; None where it was none, or several."""
    latest = await turn.uow.offers.latest(turn.chat.id, NEAR) if of_late is None else of_late
    for offer in latest[:NEAR]:
        asked = offer.context.get(ASKED)
        if turn.now - offer.made_at > PATIENCE or offer.entry_id is not None:
            return None
        kept = offer.context.get(SPOKEN_OF)
        if isinstance(kept, str) and (
            kept in SUBSTANCES or kept in {each.name for each in turn.products}
        ):
            return kept
        if asked is None:
            continue
        instead = asked.get("changes", {}).get("substance")
        named = {instead} if instead else set(substances_named(asked.get("text", "")))
        (first, *others) = [*named, None]
        return first if others == [None] and first in SUBSTANCES else None
    return None


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


def _of_salt(offer: Offer) -> bool:
    """Whether a reply asked whether the animals bear salt, told how much, or put some on record."""
    if any(choice.verb == "confirm_salt" for choice in offer.choices):
        return True
    facts = offer.context.get("facts", {})
    return facts.get("substance") in SALTS


def amount_of(amounts: Amounts) -> str | None:
    """So much as it is sent, by weight or spoon; None where it is told by neither."""
    if amounts.grams is not None:
        return f"{amounts.grams:g} g"
    return None if amounts.spoons is None else f"{amounts.spoons:g} tsp"
