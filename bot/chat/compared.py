"""The last value against the one before it, and against the goal that was wished."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from bot.chat import standing, verdicts
from bot.chat.given_plan import Given
from bot.chat.model import Reply
from bot.chat.past import is_within
from bot.chat.state import state_of
from bot.chat.turn import ASKED, Turn
from bot.chat.words import short_asked as words
from bot.store.offers import Offer
from core.advice.findings import limit_of_nitrate
from core.advice.state import Measured, State
from core.message import parse
from core.message.past import Past

POISONS: Final = frozenset({"ammonia", "nitrite", "copper", "chlorine"})
"""Of these less is better, whatever the number."""
MOVING: Final = frozenset({"water_change", "dose", "top_up"})
"""What makes a reading from before it say nothing of the goal."""
SHOWN: Final = 3


async def is_called(turn: Turn) -> bool:
    """Whether help was called for of late: worse is a call then, and better no comparison."""
    stored = turn.current_tank
    return stored is not None and bool((await state_of(turn, stored, turn.now)).called)


async def answer(turn: Turn, names: Sequence[str], span: str | None = None) -> list[Reply] | None:
    """Each of some values against the one before, or the last of a `span`; then what they mean.

    None where there is none before it.
    """
    stored = turn.current_tank
    if stored is None:
        return None
    state = await state_of(turn, stored, turn.now)
    lines, moved = [], {}
    for name in sorted(names, key=lambda each: each not in POISONS):
        pair = _last_two(state, name) if span is None else _since(turn, state, name, span)
        if pair is None:
            continue
        before, now = pair
        lines.append(words.course(name, before.value, now.value, _course(state, before, now)))
        moved[name] = [before.value, now.value]
    if not lines:
        return None
    measured = [state.readings[name] for name in names if name in state.readings]
    judged, found, _still = await verdicts.verdict(turn, stored, state, measured)
    told = [{"id": f.id, "severity": f.severity, **f.facts} for f in found]
    facts = {"tank": stored.name, "compared": moved, "findings": told}
    return [await turn.reply([*lines[:SHOWN], *judged[:SHOWN]], facts=facts)]


def _last_two(state: State, name: str) -> tuple[Measured, Measured] | None:
    """The last value and the one before it, both of them numbers of the scale."""
    told = [each for each in state.history.get(name, ()) if not each.is_limit]
    newest = state.last(name)
    if newest is None or len(told) < 2 or told[-1] != newest:
        return None
    return told[-2], told[-1]


def _since(turn: Turn, state: State, name: str, span: str) -> tuple[Measured, Measured] | None:
    """The last value and the newest of a span before it, both of them numbers of the scale."""
    told = [each for each in state.history.get(name, ()) if not each.is_limit]
    newest, then = state.last(name), Past("what", span=span)
    if newest is None or not told or told[-1] != newest:
        return None
    before = [each for each in told[:-1] if is_within(turn, then, each.at)]
    return (before[-1], newest) if before else None


def _course(state: State, before: Measured, now: Measured) -> words.Course:
    """Which way a value went; better or worse only where less of it is known to be better."""
    if before.value == now.value:
        return "same"
    rose = now.value > before.value
    limit = limit_of_nitrate(state) if now.analyte == "nitrate" else None
    over = limit is not None and max(before.value, now.value) > limit
    if now.analyte in POISONS or over:
        return "worse" if rose else "better"
    return "up" if rose else "down"


async def back(turn: Turn, name: str) -> str | None:
    """How it is asked to bring a value to where it was before; None where it did not move."""
    stored = turn.current_tank
    if stored is None:
        return None
    pair = _last_two(await state_of(turn, stored, turn.now), name)
    if pair is None or pair[0].value == pair[1].value:
        return None
    rose = pair[1].value > pair[0].value
    if name == "temperature":
        return "how do i cool it" if rose else "how do i warm it"
    shown = name.replace("_", " ")
    if name == "salinity" and rose:
        return f"lower salinity to {pair[0].value:.3g}"
    return f"how do i {'lower' if rose else 'raise'} {shown}"


async def fell(turn: Turn, name: str) -> list[Reply]:
    """That a value fell, where the record shows it."""
    stored = turn.current_tank
    if stored is None:
        return []
    state = await state_of(turn, stored, turn.now)
    pair = _last_two(state, name)
    if pair is None or pair[1].value >= pair[0].value:
        return []
    before, now = pair
    line = words.course(name, before.value, now.value, _course(state, before, now))
    facts = {"tank": stored.name, "compared": {name: [before.value, now.value]}}
    return [await turn.reply([line], facts=facts)]


async def movement(turn: Turn, name: str) -> list[Reply]:
    """How much a value moves in a day, where the record shows it for sure."""
    stored = turn.current_tank
    if stored is None:
        return []
    lines, facts = await standing.movement(turn, stored, name)
    return [await turn.reply(lines, facts={"tank": stored.name, **facts})] if facts else []


async def of_plan(turn: Turn, plan: Given) -> Reply | None:
    """The goal of a plan against what was measured since; None where nothing was, or of several."""
    stored = None if plan.tank_id is None else turn.tank_by_id(plan.tank_id)
    goals = plan.facts.get("goals") or [{"analyte": "kh", "to": plan.facts.get("to")}]
    if stored is None or len(goals) != 1 or goals[0].get("to") is None:
        return None
    state = await state_of(turn, stored, turn.now)
    reading = state.last(goals[0]["analyte"])
    if reading is None or reading.at < plan.offer.made_at:
        return None
    return await _held(turn, state, reading, float(goals[0]["to"]), up=True)


async def of_wish(turn: Turn, offer: Offer) -> Reply | None:
    """The goal of a change that was asked for against the last value; None where none is named."""
    asked = offer.context[ASKED]
    question = parse(str(asked["text"]), turn.context()).question
    stored = turn.current_tank
    if question is None or stored is None or question.kind != "change":
        return None
    goal, name = question.target, question.analyte
    if goal is None or name is None:
        return None
    state = await state_of(turn, stored, turn.now)
    reading = state.last(name)
    return None if reading is None else await _held(turn, state, reading, goal, up=False)


async def _held(
    turn: Turn, state: State, reading: Measured, goal: float, *, up: bool
) -> Reply | None:
    """A value against a goal; None where the water was moved since it was measured."""
    if reading.is_limit or any(
        each.what.kind in MOVING and each.at > reading.at for each in state.events or ()
    ):
        return None
    there = reading.value >= goal if up else reading.value <= goal
    tell = words.reached if there else words.not_reached
    facts = {
        "tank": state.tank.name,
        "values": {reading.analyte: reading.value},
        "to": goal,
        "reached": there,
    }
    return await turn.reply(
        [tell(state.tank.name, reading.analyte, reading.value, goal)], facts=facts
    )
