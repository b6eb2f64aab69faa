"""``my fert bottle says 5 ml per 50 l daily``, ``how much for my tank``: a label's own rate."""

from __future__ import annotations

from dataclasses import asdict
from typing import Final

from bot.chat import dose_reply
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import Turn
from bot.chat.words import label_rate as words
from bot.store.tanks import StoredTank
from core.advice.products import never
from core.message.label_rate import Rate, label_rate
from core.message.model import Parsed, Question
from core.units import UK_GALLON_L, US_GALLON_L

RATE: Final = "rate"
"""Under which an offer keeps what a label was said to give."""

BELIEVED: Final = 10.0
"""More of a product in a litre is a slip, or no product for a tank; common practice. [mL/L]"""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Scale what a label gives to the tank in use; None where none is told or asked of."""
    told = parsed.command is not None or parsed.values or parsed.events
    if not turn.incoming.addressed or told:
        return None
    gallon = US_GALLON_L if turn.chat.us_gallons else UK_GALLON_L
    rate = label_rate(turn.incoming.text, litres_a_gallon=gallon)
    if rate is None and parsed.question is not None and _is_bare(parsed.question):
        rate = await _told_before(turn)
    if rate is None:
        return None
    if (refusal := never(rate.name)) is not None:
        return [await dose_reply.refuse(turn, refusal, None)]
    if rate.amount / rate.litres > BELIEVED:
        return None
    named = (
        turn.tank_named(parsed.question.tank) if parsed.question and parsed.question.tank else None
    )
    return [await _scaled(turn, rate, named or turn.current_tank)]


def _is_bare(question: Question) -> bool:
    """`so how much for my tank`: nothing is named."""
    told = (
        question.analyte, question.substance, question.target, question.delta, question.grams,
        question.volume_l, question.millilitres, question.percent,
    )  # fmt: skip
    return question.kind == "dose" and all(each is None for each in told) and not question.premises


async def _told_before(turn: Turn) -> Rate | None:
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    if not latest or turn.now - latest[0].made_at > patience:
        return None
    held = latest[0].context.get(RATE)
    return None if held is None else Rate(**held)


async def _scaled(turn: Turn, rate: Rate, stored: StoredTank | None) -> Reply:
    """So much for the tank, by the label alone."""
    volume = None if stored is None else stored.tank.volume_l
    waits = {"context": {RATE: asdict(rate)}, "expects": "followup"}
    if stored is None or volume is None:
        return await turn.reply(words.needs_litres(rate), **waits)
    much = rate.amount * volume / rate.litres
    facts = {
        "tank": stored.name,
        "volume_l": volume,
        "grams" if rate.unit == "g" else "millilitres": much,
    }
    return await turn.reply(words.scaled(rate, much, stored.name, volume), facts=facts, **waits)
