"""``should i do 80% now``, ``is topping off the same as a wc``, ``do it in 4 days not 2``.

What is asked in other words than those of a topic is asked again in its words; what no topic has
is answered here. Nothing is stored but a reminder that is told with its days and its share.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Any, Final

from bot.chat import calls, dose_reply, first_evening
from bot.chat.asked_anew import Again
from bot.chat.model import Reply
from bot.chat.reckoned import MOVING
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import first_evening as evening_words
from bot.chat.words import how_asked as words
from core.advice.plan import Refusal
from core.advice.state import State
from core.message import parse
from core.message.how_asked import Asked, how_asked
from core.message.model import Parsed
from core.substances import MEDIA

BY_CHANGE: Final = {
    "nitrate": "get nitrate under {number:g}",
    "gh": "lower gh to {number:g} with water change",
    "kh": "lower kh to {number:g} with water change",
}
"""What is lowered by new water, and how a plan of it is asked for."""

ANEW: Final = {
    "share": "what if i change {number:g}%",
    "change_back": "should i change water",
    "spread": "how many days",
    "what_does": "what does {substance} do",
    "every": "every {other:g} days wc {number:g}%",
    "fed_yesterday": "yesterday added {number:g} ml ammonia",
    "week": "what's due this week",
}
"""The same in the words of its topic."""

TOLD: Final = {
    "top_up": words.top_up,
    "bacteria": words.bacteria,
    "air_off": words.air_off,
    "keep": words.keep,
    "pace": words.pace,
}
"""What is answered the same for every tank."""


async def answer(turn: Turn, parsed: Parsed, again: Again) -> list[Reply] | None:
    """Answer what is asked in one of these ways; None where nothing is, or a topic has it."""
    whole = turn.incoming
    if not whole.addressed or parsed.values or parsed.command is not None:
        return None
    asked = how_asked(whole.text)
    if asked is None or calls.is_danger(turn, parsed) or calls.is_call(turn, parsed):
        return None  # who calls for help is helped
    if asked.meaning in TOLD:
        return [await turn.reply(TOLD[asked.meaning]())]
    if asked.meaning == "acid":
        return [await dose_reply.refuse(turn, Refusal("acid", {}), None)]
    if asked.meaning in ANEW:
        return await _anew(turn, again, ANEW[asked.meaning], asked)
    if asked.meaning == "reach":
        return await _reach(turn, again, asked)
    if asked.meaning == "by_now":
        return await _by_now(turn, again, asked)
    if asked.meaning in {"in_days", "half_part"}:
        return await _slower(turn, again, asked)
    return await _of_tank(turn, again, asked)


async def _of_tank(turn: Turn, again: Again, asked: Asked) -> list[Reply] | None:
    if asked.meaning == "medium":
        known = asked.substance in MEDIA
        return await _anew(turn, again, "can i use {substance}", asked) if known else None
    if asked.meaning == "nitrate_salt":
        if asked.substance != "potassium nitrate":
            return None
        return await _anew(turn, again, "how much {substance} for +{number:g} nitrate", asked)
    if asked.meaning == "conditioner":
        facts = {"refused": "substance_unknown", "substance": "conditioner"}
        lines = words.conditioner()
        return None if _bought(turn) else [await turn.reply(lines, facts=facts)]
    if asked.meaning == "away":
        day = (turn.local_now + timedelta(days=asked.number or 0.0)).strftime("%d %B").lstrip("0")
        return [await turn.reply(words.away(day))]
    stored = turn.current_tank
    if stored is None:
        return [await turn.reply(evening_words.no_tank("how_long"))]
    state = await state_of(turn, stored, turn.now)
    is_new = asked.meaning in {"new_tank", "cycling"}
    far = await first_evening.how_far(turn, stored, state, asks_long=is_new)
    if is_new:
        return [far]
    return [await turn.reply([evening_words.proof(), *far.lines[:5]], facts=far.facts)]


def _bought(turn: Turn) -> bool:
    """Whether a bought product may be what is called so: its label is known then."""
    text = turn.incoming.text.casefold()
    return any(name.casefold() in text for name in turn.context().products)


async def _anew(turn: Turn, again: Again, template: str, asked: Asked) -> list[Reply] | None:
    """Ask the same in a topic's words."""
    whole = turn.incoming
    text = template.format(
        number=asked.number,
        other=asked.other,
        substance=asked.substance,
        analyte=asked.analyte,
    )
    turn.incoming = replace(whole, text=text)
    replies = await again(turn, parse(text, turn.context()))
    turn.incoming = whole
    return replies


async def _reach(turn: Turn, again: Again, asked: Asked) -> list[Reply] | None:
    """By how large a change a value gets down to a number: the only one that stands over it."""
    stored = turn.current_tank
    if stored is None or asked.number is None:
        return None
    state = await state_of(turn, stored, turn.now)
    over = [name for name in BY_CHANGE if _is_over(state, name, asked.number)]
    if not over:
        return None
    if len(over) > 1:
        ways = [BY_CHANGE[name].format(number=asked.number) for name in over]
        return [await turn.reply(words.of_which(ways), facts={"tank": stored.name})]
    return await _anew(turn, again, BY_CHANGE[over[0]], asked)


def _is_over(state: State, name: str, number: float) -> bool:
    reading = state.fresh(name)
    return reading is not None and reading.value > number


async def _by_now(turn: Turn, again: Again, asked: Asked) -> list[Reply] | None:
    """Where a deed on record leaves the water; what a plan just answered leads to is the plan's."""
    facts = await _facts(turn)
    stored = turn.current_tank
    if stored is None or not facts.keys().isdisjoint({"parts", "steps", "grams", "share"}):
        return None
    state = await state_of(turn, stored, turn.now)
    if not any(each.what.kind in MOVING for each in state.events or ()):
        return None
    template = "what would {analyte} be now" if asked.analyte else "what do i have now roughly"
    return await _anew(turn, again, template, asked)


async def _facts(turn: Turn) -> dict[str, Any]:
    """The facts of the newest reply that waits for anything."""
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    facts: dict[str, Any] = latest[0].context.get("facts", {}) if latest else {}
    return facts


async def _slower(turn: Turn, again: Again, asked: Asked) -> list[Reply] | None:
    """The plan of a dose just answered in more parts; half a part is twice as many of them."""
    facts = await _facts(turn)
    told = facts.get("parts")
    parts = len(told) if isinstance(told, list) else told
    if not isinstance(parts, int) or parts < 1:
        if asked.meaning == "in_days" and facts.get("steps"):
            return [await turn.reply(words.smaller_changes())]
        return None
    count = asked.number if asked.meaning == "in_days" else 2.0 * parts
    return await _anew(turn, again, "in {number:g} parts", replace(asked, number=count))
