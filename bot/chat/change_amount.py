"""``i'll just do 20``, ``done, 25%``: another amount than that of the change just answered.

What was answered stays what `done` logs only while no other amount was named. One that is
understood is answered, or logged; of one that is not, it is asked how much went in.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, Final, Literal

from bot.chat import open_told
from bot.chat.given_plan import given
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import ASKED, Turn
from bot.chat.words import change_amount as words
from bot.chat.words import general
from bot.store.offers import Choice, Offer
from core.message import parse, rhythm
from core.message.amount_named import Named, amount_named, numbers_in
from core.message.model import Parsed

HOW_MUCH: Final = "how_much_changed"
"""Of an offer: that it was asked how much went in, and of which water."""

ANSWERS: Final = frozenset({None, "followup", "undo", "number"})
"""What an offer may expect while `done, 25%` is no answer to it."""

LEAST: Final = 5.0
"""A bare number under this behind `done` may be a reminder's."""

SAME: Final = 0.51
"""So near a number is the one that was answered. [% or L]"""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer or log the amount that is named; None where none is, or nothing bears it."""
    done = parsed.command is not None and parsed.command.name == "done"
    if not turn.incoming.addressed or (parsed.command is not None and not done):
        return None
    if parsed.events or parsed.values or turn.route is None:
        return None
    if parsed.tank is not None and turn.tank_named(parsed.tank) is None:
        return None  # den: …, of a tank that is not on record
    asked = parsed.question
    whole = asked is not None and (asked.percent is not None or asked.litres is not None)
    named = None if whole else amount_named(turn.incoming.text, turn.chat.us_gallons)
    if named is None:
        return None
    if named.mood == "told" and rhythm.days_between(turn.incoming.text) is not None:
        return None  # i change 20% weekly: a routine
    newest = await _newest(turn)
    waiting = await turn.uow.reminders.of_chat(turn.chat.id, only_open=True)
    if newest is not None and HOW_MUCH in newest.context:
        return await _answered(turn, named, newest.context[HOW_MUCH])
    if named.value is None and not named.half:
        return None
    if (facts := _of_change(newest)) is not None and newest is not None:
        if done and named.unit is None and (waiting or (named.value or 0.0) < LEAST):
            return None  # done 2: a reminder's number
        return await _of_answer(turn, named, newest, facts)
    if named.mood == "asked" and await _just_changed(turn, newest):
        return await _asked(turn, named, "")
    if done or named.mood != "told" or named.unit is None or named.value is None:
        return None
    if newest is not None and given(newest) is not None:
        return await open_told.how_much(turn)  # 25% of a dose, or of the water?
    other = newest is not None and newest.expects not in ANSWERS
    if other or turn.current_tank is None or (waiting and all(r.kind != "change" for r in waiting)):
        return None
    return await _log(turn, named, "")


async def not_heard(turn: Turn) -> list[Reply] | None:
    """Ask how much went in where a number was not understood right behind a change; else None."""
    newest = await _newest(turn)
    facts = _of_change(newest)
    if facts is None or not numbers_in(turn.incoming.text):
        return None
    return [await _ask(turn, facts, [])]


async def answered_last(turn: Turn) -> Offer | None:
    """The change answered last, where the message names an amount; None where not."""
    if not turn.incoming.addressed or not numbers_in(turn.incoming.text):
        return None
    newest = await _newest(turn)
    return None if _of_change(newest) is None else newest


async def unheard(turn: Turn, before: Offer, *, doubted: bool) -> Reply | None:
    """Ask how much went in where a number was passed over behind a change, or is in doubt.

    The same change answered again, or a doubt without a button, would leave `done` its old amount.
    """
    newest = await _newest(turn)
    facts = _of_change(newest)
    if newest is None or facts is None or facts != _of_change(before):
        return None  # of other water, or of another amount: it was heard
    if newest.id == before.id:
        return await _ask(turn, facts, []) if doubted else None
    told = [100.0 * share for share in (facts["share"], *facts.get("steps", ()))]
    if "litres" in facts:
        volume = facts["litres"] / facts["share"]
        told += [share * volume / 100.0 for share in told]
    others = [
        number
        for number in numbers_in(turn.incoming.text)
        if number is None or all(abs(number - each) > SAME for each in told)
    ]
    return await _ask(turn, facts, []) if others else None


async def _newest(turn: Turn) -> Offer | None:
    latest = await turn.uow.offers.latest(turn.chat.id)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    return latest[0] if latest and turn.now - latest[0].made_at <= patience else None


def _of_change(offer: Offer | None) -> Mapping[str, Any] | None:
    facts = {} if offer is None else offer.context.get("facts", {})
    told = "largest_safe_share" in facts and "share" in facts
    return facts if offer is not None and told and given(offer) is None else None


async def _just_changed(turn: Turn, newest: Offer | None) -> bool:
    """Whether what was answered last is that a change was put on record."""
    if newest is None or newest.entry_id is None:
        return False
    entry = await turn.uow.log.current(turn.chat.id, newest.entry_id)
    events = [] if entry is None else [event.what.kind for event in entry.events]
    return bool(events) and set(events) == {"water_change"}


async def _of_answer(
    turn: Turn, named: Named, newest: Offer, facts: Mapping[str, Any]
) -> list[Reply] | None:
    """Another amount than a change was answered for: answered, logged, or asked about."""
    source = facts.get("source", "")
    water = f" with {source}" if source.isalpha() else ""
    if named.half:
        half = 50.0 * facts["share"]
        if named.mood == "told":
            shares = (half, *(50.0 * each for each in facts.get("steps", ())[:1]), 50.0)
            return [await _ask(turn, facts, [Named("told", each, "percent") for each in shares])]
        return await _asked(turn, Named("will", half, "percent"), water)
    if named.unit is None and named.value is not None:
        unit = _unit_of(turn, newest)
        if named.mood == "told" and unit is None:
            return [await _ask(turn, facts, _either(named))]
        named = replace(named, unit=unit or "percent")
    if named.unit == "percent" and (named.value or 0.0) > _WHOLE:
        return [await _ask(turn, facts, [])]
    return await (_log if named.mood == "told" else _asked)(turn, named, water)


_WHOLE: Final = 100.0


def _unit_of(turn: Turn, offer: Offer) -> Literal["percent", "litre"] | None:
    """In what the change was asked about; None where in neither."""
    asked = offer.context.get(ASKED, {})
    question = parse(asked.get("text", ""), turn.context()).question
    if question is None:
        return None
    if asked.get("changes", {}).get("percent", question.percent) is not None:
        return "percent"
    litres = asked.get("changes", {}).get("litres", question.litres)
    return None if litres is None else "litre"


def _either(named: Named) -> list[Named]:
    """A bare number as a share and as litres."""
    share = [replace(named, unit="percent")] if (named.value or 0.0) <= _WHOLE else []
    return [*share, replace(named, unit="litre")]


async def _answered(turn: Turn, named: Named, held: Mapping[str, Any]) -> list[Reply] | None:
    """The answer to how much went in: it is logged, or asked for once more."""
    if named.mood == "asked" and named.value is not None:
        return await _asked(turn, named, held["water"])
    if named.value is not None and named.unit is not None:
        return await _log(turn, named, held["water"])
    tank = turn.tank_named(held["tank"])
    facts = {"tank": held["tank"] if tank else "", "source": held["water"].removeprefix(" with ")}
    return [await _ask(turn, facts, [] if named.value is None else _either(named))]


async def _ask(turn: Turn, facts: Mapping[str, Any], amounts: list[Named]) -> Reply:
    """How much went in, with a button for each amount that may be meant."""
    source, tank = facts.get("source", ""), turn.tank_named(facts.get("tank", ""))
    water = f" with {source}" if source.isalpha() else ""
    choices: dict[str, Choice] = {}
    for each in amounts if tank is not None else []:
        text = f"changed {_told(each)}{water}"
        value = each.value or 0.0
        percent = each.unit == "percent"
        label = general.changed_so_much(value / 100.0) if percent else words.changed_litres(value)
        held = {"text": text, "at": turn.now.isoformat(), "tank_id": tank.id if tank else 0}
        choices[label] = Choice(label, "for_tank", "", held)
    turn.asked = None  # what was answered is spoken of no more
    return await turn.reply(
        words.how_much(),
        choices=list(choices.values()),
        expects="amount",
        context={HOW_MUCH: {"tank": facts.get("tank", ""), "water": water}},
    )


def _told(named: Named) -> str:
    value = named.value or 0.0
    return f"{value:.3g}%" if named.unit == "percent" else f"{value:.4g} l"


async def _log(turn: Turn, named: Named, water: str) -> list[Reply] | None:
    """Put on record that so much was changed."""
    return await _said(turn, f"changed {_told(named)}{water}")


async def _asked(turn: Turn, named: Named, water: str) -> list[Reply] | None:
    """Answer a change of so much; a bare number is a share, as the answer then says."""
    meant = named if named.unit is not None else replace(named, unit="percent")
    if meant.unit == "percent" and (meant.value or 0.0) > _WHOLE:
        return None
    return await _said(turn, f"what if i change {_told(meant)}{water}")


async def _said(turn: Turn, text: str) -> list[Reply] | None:
    parsed = parse(text, turn.context())
    if turn.route is None or not (parsed.events or parsed.question):
        return None
    turn.incoming = replace(turn.incoming, text=text)
    turn.asked = None
    return await turn.route(turn, parsed)
