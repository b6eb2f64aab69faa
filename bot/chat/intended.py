"""``got a 1 kg bag so i'll put half in tonight``: what is meant to go in is judged before it is in.

So is `is it ok to put the other half in`, days later. Nothing of it is stored; far too much is told
no, and what is within a day's step is left to whom it is asked else, if so much was told in grams.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any, Final

from bot.chat import effects, nameless, plan_talk, poison_first
from bot.chat.given_plan import running
from bot.chat.model import Line, Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import intended as words
from bot.store.offers import BAG, BESIDE, Offer
from core.advice.effects import effects_of
from core.advice.plan import Refusal
from core.message.intended import intended
from core.message.model import Parsed, Question
from core.message.plan_said import Amounts
from core.water.substances import SUBSTANCES

SODA: Final = "sodium bicarbonate"
AT_HAND: Final = timedelta(days=14)
"""So long a bag that was told of may be the one whose other half is meant; ours."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Judge what is meant to go in; None where nothing is, or it is no share and not too much."""
    told = intended(turn.incoming.text)
    stored = turn.tank_named(parsed.tank or "") or turn.current_tank
    if told is None or not turn.incoming.addressed or stored is None or parsed.values:
        return None
    asked = parsed.question
    if asked is not None and asked.grams is not None and told.share is None and told.substances:
        return None  # what so much does is told by its own topic
    held = await _bag(turn)
    if told.grams is None and held is None:
        return None
    grams = told.grams
    if grams is None and held is not None and told.share is not None:
        grams = float(held["grams"]) * told.share
    volume = stored.tank.volume_l
    if grams is None or volume is None or len(told.substances) > 1:
        return None
    plan = await running(turn)
    plan = plan if plan is not None and plan.tank_id == stored.id else None
    planned = [name for name, _grams in plan.salts] if plan is not None else []
    spoken = planned[0] if len(planned) == 1 else await nameless.spoken_of(turn)
    kept = None if held is None or told.bag is not None else held["substance"]
    named = next(iter(told.substances), kept or spoken)
    substance = named or SODA
    if substance not in SUBSTANCES:
        return None
    state = await state_of(turn, stored, turn.now)
    found = effects_of(substance, grams, volume, state)
    far = not isinstance(found, Refusal) and any(each.days > 1 for each in found)
    if not far and told.share is None:
        return None
    if told.bag is not None:
        await _keep(turn, told.bag, named)
    if (against := await poison_first.against_more(turn, parsed)) is not None:
        return against
    if plan is not None and planned == [substance]:
        return await plan_talk.of_plan(turn, parsed, "so_much", Amounts(grams=grams))
    turn.asked = {"text": f"what does {grams:g} g {substance} do", "changes": {}}
    question = Question(
        "effect", tank=stored.name, substance=substance, grams=grams, text=turn.incoming.text
    )
    (judged, *others) = await effects.effect(turn, question, parsed)
    lead = words.not_so_much() if far else None
    lines = [*([lead] if lead else []), *([] if named else [words.taken_as(substance)])]
    told_first = tuple(Line(line) for line in lines)
    return [replace(judged, lines=(*told_first, *judged.lines)), *others]


async def _bag(turn: Turn) -> dict[str, Any] | None:
    told = await turn.uow.offers.told_of(turn.chat.id, BAG)
    return dict(told[0][1]) if told and turn.now - told[0][0] <= AT_HAND else None


async def _keep(turn: Turn, grams: float, substance: str | None) -> None:
    held = {BAG: {"grams": grams, "substance": substance}}
    await turn.uow.offers.add(
        turn.chat.id, Offer(choices=(), made_at=turn.now, expects=BESIDE, context=held)
    )
