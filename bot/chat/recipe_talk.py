"""``i only have epsom and gypsum``, ``how much ca does that give``: of the plan that was given."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat import dosing, followups, given_plan, other_way
from bot.chat.followups import Topics
from bot.chat.given_plan import Given
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import ASKED, Turn
from bot.chat.words import recipe_talk as words
from core.advice.buffers import STRONG
from core.advice.scheduling import per_gram
from core.message import blend_talk, parse
from core.message.model import Parsed, Question
from core.message.recipe_talk import Cupboard, cupboard
from core.message.waters import PURE, kind_of
from core.water.substances import SUBSTANCES

IONS: Final = frozenset({"calcium", "magnesium", "kh", "gh", "sodium", "potassium", "chloride"})
"""What is told of a plan's salts."""


async def answer(turn: Turn, parsed: Parsed, topics: Topics) -> list[Reply] | None:
    """Plan with the salts that are there, tell what a plan brings, or put it into a bucket."""
    if not turn.incoming.addressed or parsed.values or parsed.events:
        return None  # "no gypsum" may be a no
    text = turn.incoming.text
    held = cupboard(text)
    asked = blend_talk.blend_talk(text, us_gallons=turn.chat.us_gallons) if held is None else None
    figure = asked is not None and asked.asks == "figure"
    bucket = blend_talk.bucket_of(text, us_gallons=turn.chat.us_gallons)
    if held is None and not figure and bucket is None:
        return None
    plan = await given_plan.running(turn)
    if plan is None or ASKED not in plan.offer.context or not plan.salts:
        return None
    if held is not None:
        return await _with(turn, plan, held, topics)
    if bucket is not None:
        return await _bucket(turn, plan, *bucket)
    return await _gives(turn, plan, asked.analytes if asked is not None else ())


def _question(turn: Turn, plan: Given) -> Question | None:
    """What the plan was asked with."""
    asked = plan.offer.context[ASKED]
    first = parse(asked["text"], turn.context()).question
    return None if first is None else replace(first, **asked["changes"])


async def _with(turn: Turn, plan: Given, held: Cupboard, topics: Topics) -> list[Reply] | None:
    """The same wish with those of the salts at home that serve it."""
    before = _question(turn, plan)
    if before is None or before.kind not in other_way.PLANS or before.target is None:
        return None
    goals = other_way.goals_of(before) or plan.analytes
    useful = [
        salt
        for salt in held.has
        if salt in SUBSTANCES
        and salt not in STRONG
        and any(per_gram(salt, name) > 0.0 for name in goals)
    ]
    if not useful:
        lines = words.none_serves(list(held.has), goals)
        return [await turn.reply(lines, facts={"substances": list(held.has)})]
    changes = {
        "kind": "dose",
        "substance": useful[0],
        "text": other_way.with_salt(before, " and ".join(useful)),
    }
    asked = plan.offer.context[ASKED]
    return await followups.changed(turn, asked, before, changes, topics)


async def _gives(turn: Turn, plan: Given, analytes: tuple[str, ...]) -> list[Reply] | None:
    """What the salts of a plan bring in all, by their formulas."""
    volume = plan.facts.get("volume_l")
    names = [name for name in analytes if name in IONS]
    if not volume or not names or (plan.tank_id is not None and set(names) <= set(plan.analytes)):
        return None  # of the tank's own value the record tells
    brings = {
        name: sum(
            per_gram(salt, name) * grams * plan.count / volume
            for salt, grams in plan.salts
            if salt in SUBSTANCES
        )
        for name in names
    }
    turn.asked = plan.offer.context[ASKED]
    facts = {"volume_l": volume, "brings": brings}
    return [await turn.reply(words.brings(brings, volume), facts=facts)]


async def _bucket(turn: Turn, plan: Given, litres: float, water: str) -> list[Reply] | None:
    """The same value in so much pure water apart."""
    before = _question(turn, plan)
    if before is None or kind_of(water) not in PURE or before.target is None:
        return None
    analyte = before.analyte or plan.analytes[0]
    tank = None if plan.tank_id is None else turn.tank_by_id(plan.tank_id)
    kh = None if tank is None else (await state_of(turn, tank, turn.now)).last("kh")
    beside = {"kh": kh.value} if kh is not None and analyte != "kh" else {}
    wish = " ".join(
        f"{name} {value:g}" for name, value in {analyte: before.target, **beside}.items()
    )
    question = Question(
        "dose",
        analyte=analyte,
        target=before.target,
        volume_l=litres,
        premises=beside,
        text=f"how much salt for {litres:g} l {water} to {wish}",
    )
    return await dosing.dose(turn, question, Parsed("question", question=question))
