"""What is said of the water change that was just answered."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, Final

from bot.chat import emergencies, typed, what_now
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import change_talk as words
from bot.chat.words import changes as change_words
from bot.chat.words import emergency_talk as called_words
from bot.chat.words.aid_change import change
from core.advice.emergencies import help_for
from core.message import parse
from core.message.model import Parsed
from core.message.plan_said import Amounts
from core.message.plan_talk import About
from core.message.plan_words import Telling
from core.message.share_asked import whole_change

OFTEN: Final = "how often should i change water"
"""The question that `how often?` behind a change stands for."""


OF_SHARE: Final = frozenset({"safe", "at_once", "go_on", "when_next"})
"""What is asked of another share with its number: `is 40% ok`, `can i do 80% at once`."""


async def answer(
    turn: Turn, said: About | Telling, facts: Mapping[str, Any], amounts: Amounts, *, newest: bool
) -> list[Reply] | None:
    """What is asked or told of a change; None where it fits none, or none is safe.

    A change that was refused without smaller ones has no way to be done. `newest` is whether it
    is the last thing that was spoken of.
    """
    if said == "lot":
        said = "safe"
    if newest and amounts.percent is not None and said in OF_SHARE:
        return await other_share(turn, facts, amounts.percent)
    if newest and amounts.litres is not None and said in {*OF_SHARE, "so_much"}:
        return await _so_many_litres(turn, facts, amounts.litres)
    if newest and said == "so_much":
        of_share = amounts.percent is not None
        return await other_share(turn, facts, amounts.percent or 0.0) if of_share else None
    if newest and said == "to_come":
        return [await turn.reply(words.change_to_come(facts["share"], facts.get("litres")))]
    if newest and said in {"changed", "gave_it"}:
        return await _changed(turn, facts, amounts)
    if newest and said == "weekly":
        steps = facts["steps"] or [facts["share"]]
        return await other_share(turn, facts, 100.0 * steps[0])
    if newest and said == "warm":
        return [await _warm(turn, facts)]
    if newest and said == "safe":
        return [await turn.reply(words.safe(facts["share"], facts["steps"]))]
    if not facts.get("steps"):
        return None
    emergency = facts.get("emergency", False)
    share, count = facts["steps"][0], len(facts["steps"])
    volume = facts["litres"] / facts["share"] if "litres" in facts else None
    told = {"share": share, "litres": None if volume is None else share * volume}
    if said == "how" or (newest and said == "need"):
        warm = facts["before"].get("temperature")
        lines = words.how_to_change(share, volume, warm)
        return [await turn.reply(lines, facts=_known(told | {"temperature": warm}))]
    if newest and said in {"litres", "a_day"}:
        if volume is None:
            return [await turn.reply(words.no_volume(share))]
        return [await turn.reply(words.so_much(share, volume, count), facts=_known(told))]
    if newest and said == "often":
        return await _often(turn, facts)
    if newest and said == "days":
        return [await turn.reply(words.so_long(count), facts={"count": count})]
    if newest and said in {"effect", "end"}:
        return [await turn.reply(_effect(facts), facts=dict(facts))]
    if said in {"when_next", "go_on", "at_once"}:
        return [await turn.reply(words.next_change(emergency=emergency))]
    return [await turn.reply(words.change_later(emergency=emergency))] if said == "later" else None


async def whole(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``can i just change all the water``: never of a tank, whatever plan was spoken of before.

    None where nothing of it is asked, or of no tank on record.
    """
    if not turn.incoming.addressed or parsed.values or parsed.events or parsed.command is not None:
        return None
    named = turn.tank_named(parsed.tank or (parsed.question.tank if parsed.question else "") or "")
    stored = named or turn.current_tank
    if stored is None or not whole_change(turn.incoming.text):
        return None
    danger, gasping = await what_now.danger_in(turn, stored)
    if danger is not None:
        lead = words.not_whole()
        return [await emergencies.help_in(turn, stored, danger, gasping=gasping, lead=lead)]
    state = await state_of(turn, stored, turn.now)
    new = await emergencies.new_water(turn, stored, state)
    found = help_for("general", state, new)
    lines = called_words.of(stored.name, [words.not_whole(), change(found)])
    facts: dict[str, Any] = {"tank": stored.name}
    if found.share is not None:
        facts["largest_safe_share"] = found.share.most
    return [await turn.reply([*lines, words.watch_it()], facts=facts)]


async def _warm(turn: Turn, facts: Mapping[str, Any]) -> Reply:
    """How warm the new water should be: as the tank, and what it may be for this share."""
    told = {
        "temperature": facts["before"].get("temperature"),
        "new_water_from": facts.get("new_water_from"),
        "new_water_to": facts.get("new_water_to"),
    }
    warm, least, most = told.values()
    lines = words.how_warm(warm, facts["share"], least, most)
    return await turn.reply(lines, facts=_known(told))


async def _often(turn: Turn, facts: Mapping[str, Any]) -> list[Reply] | None:
    """How often the changes of the plan follow; of one that is within limits, what is usual."""
    steps = facts["steps"]
    if facts.get("emergency", False):
        return [await turn.reply(words.next_change(emergency=True))]
    if len(steps) == 1 and steps[0] >= facts["share"]:
        return await turn.route(turn, parse(OFTEN, turn.context())) if turn.route else None
    told = {"share": steps[0], "count": len(steps)}
    routine = facts.get("as_routine")
    if routine is None:
        return [await turn.reply(words.every_day(steps[0], len(steps)), facts=told)]
    lines = words.every_so_many_days(steps[0], routine["every_days"], routine["weeks"])
    return [await turn.reply(lines, facts=dict(routine))]


async def other_share(turn: Turn, facts: Mapping[str, Any], percent: float) -> list[Reply] | None:
    """The same change of another share, as often as it is asked about. [%]"""
    source = facts.get("source", "")
    water = f" with {source}" if source.isalpha() else ""
    parsed = parse(f"what if i change {percent:.3g}%{water}", turn.context())
    if turn.route is None or parsed.question is None:
        return None
    question = replace(parsed.question, text=f"{turn.incoming.text}{water}")
    return await turn.route(turn, replace(parsed, question=question))


async def _so_many_litres(
    turn: Turn, facts: Mapping[str, Any], litres: float
) -> list[Reply] | None:
    """The same change of so many litres, which `done` then puts on record. [L]"""
    source = facts.get("source", "")
    water = f" with {source}" if source.isalpha() else ""
    told = f"what if i change {litres:.4g} l{water}"
    parsed = parse(told, turn.context())
    if turn.route is None or parsed.question is None:
        return None
    turn.incoming = replace(turn.incoming, text=told)  # kept as what was asked
    return await turn.route(turn, parsed)


async def _changed(turn: Turn, facts: Mapping[str, Any], amounts: Amounts) -> list[Reply] | None:
    """Put on record that the change was made: as it was answered, or of another amount."""
    if amounts == Amounts():
        return await typed.plan_given(turn)
    if turn.route is None or amounts.grams is not None:
        return None
    told = f"{amounts.percent:.3g}%" if amounts.percent is not None else f"{amounts.litres:.4g} l"
    source = facts.get("source", "")
    text = f"changed {told}" + (f" with {source}" if source.isalpha() else "")
    turn.incoming = replace(turn.incoming, text=text)
    return await turn.route(turn, parse(text, turn.context()))


def _effect(facts: Mapping[str, Any]) -> list[str]:
    """The water that the change leads to, as it was told, and that only a test tells."""
    if "first" in facts:
        first, end = facts["first"], facts.get("end", facts["first"])
        return [words.after_first(first), words.after_last(end), words.test_it()]
    lines = [change_words.at_once(facts["share"], facts["at_once"])]
    return [*lines, change_words.stood(facts["stood"]), words.test_it()]


def _known(facts: Mapping[str, Any]) -> dict[str, Any]:
    return {name: value for name, value in facts.items() if value is not None}
