"""How a part of a plan goes in, and how it is weighed without a fine scale."""

from __future__ import annotations

from typing import Any

from bot.chat.given_plan import Given
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import doses as dose_words
from bot.chat.words import plan_talk as words
from core.advice.dissolving import jug_litres, stock_for
from core.advice.spoons import spoon_grams


async def how(turn: Turn, plan: Given, *, dry: bool) -> Reply:
    """How a part goes in: stirred into a jug; `dry` where it was asked whether it may go in so."""
    jugs = [(name, grams, jug_litres(name, grams)) for name, grams in plan.salts]
    facts = {
        "jugs": [
            {"substance": name, "grams": grams, "litres": litres} for name, grams, litres in jugs
        ]
    }
    hazards = [dose_words.CAUTIONS[each] for each in plan.held.get("cautions", ())]
    return await turn.reply(words.how(jugs, hazards, dry=dry), facts=facts)


async def without_scale(turn: Turn, plan: Given) -> Reply:
    """Why no spoon measures it, and how a kitchen scale does."""
    name, grams = plan.salts[0]
    spoon, stock = spoon_grams(name, 1.0), stock_for(name, grams)
    facts: dict[str, Any] = {"substance": name, "grams": grams}
    if spoon is not None:
        facts["spoon_grams"] = list(spoon[1:])
    lines = [words.not_by_spoon(name, spoon)]
    for salt, part in plan.salts:
        made = stock_for(salt, part)
        lines.append(words.weighed(salt, part, made))
        if made is not None:
            facts.setdefault("stock", []).append(
                {"substance": salt, "grams": made.grams, "millilitres": made.millilitres}
            )
    if stock is not None:
        lines.append(words.keep_stock())
    if len(plan.analytes) == 1 and (target := plan.facts.get("to")) is not None:
        lines.append(words.rather_change(plan.analytes[0], target))
    return await turn.reply(lines, facts=facts)
