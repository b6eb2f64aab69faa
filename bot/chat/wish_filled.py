"""A wish is told piece by piece: `dose kh 6`, `90 l`, `kh 4`; or all at once: `kh 3 want 5, 90 l`.

A question whose plan still needs something keeps what that is with its answer. What is said next
fills it, and the plan follows at once; a value is stored as the reading that it is.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta
from typing import Any, Final

from bot.chat import followups, readings, tank_volumes, which_soda, wish_goal
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import ASKED, WAITS, Turn
from bot.chat.words import names
from bot.chat.words import tanks as words
from bot.chat.words.finding_parts import wish_of_kh
from bot.store.offers import Offer
from core.advice.scheduling import per_gram
from core.message import doubts, parse
from core.message.aims import UNSALTED, WISHED
from core.message.lone_number import Lone, lone_number
from core.message.model import Parsed, Question
from core.message.other_tank import water_told
from core.message.salt_alone import is_only_had, salt_alone
from core.message.volume_said import volume_alone
from core.tank import Tank
from core.water.substances import SUBSTANCES

_MOVED: Final = WISHED - UNSALTED
"""What a salt or a water change brings to a value that is wished."""

LOOKED_AT: Final = 3
"""Answers back to which a low KH is still what is spoken of."""

SOON: Final = timedelta(hours=1)
"""So long what names nothing (a number, litres) is of what was asked; ours."""


async def answer(turn: Turn, parsed: Parsed, topics: followups.Topics) -> list[Reply] | None:
    """Go on with the newest question by what was said of it; None where nothing was."""
    if (by_salt := await _with_salt(turn, parsed, topics)) is not None:
        return by_salt
    said = None if parsed.values else lone_number(turn.incoming.text)
    wished = said is not None and said.wished
    offer = await _waiting(turn, measured=bool(parsed.values), wished=wished)
    if offer is None or parsed.events or parsed.question or parsed.command is not None:
        return None
    asked = offer.context[ASKED]
    first = parse(asked["text"], turn.context()).question
    if first is None:
        return None
    before, waits = replace(first, **asked["changes"]), offer.context[WAITS]
    analyte = before.analyte or "kh"
    changes = None if parsed.values else await _alone(turn, said, waits, analyte)
    if changes is not None:
        return await followups.changed(turn, asked, before, changes, topics)
    if said is not None and not (said.wished or said.rather) and waits[0] in {"start", "target"}:
        turn.incoming = replace(turn.incoming, text=f"{analyte} {said.number:.10g} {said.unit}")
        parsed = parse(turn.incoming.text, turn.context())
    value = wish_goal.measured(parsed, analyte)
    if value is None or _is_of_another(turn, before.tank, offer, value.tank or parsed.tank):
        return None
    rest = wish_goal.wished_beside(turn, parsed, analyte)
    if rest is None:
        return None
    if (wish := rest.pop("wish", None)) is not None:
        goal = wish_goal.in_canonical(
            turn, analyte, wish, wish.unit or wish_goal.carried(value, wish.number)
        )
        if goal is None:
            return None
        rest["target"] = goal
    first_tank = not turn.tanks
    if first_tank and turn.first is None and (water := water_told(asked["text"])) is not None:
        turn.first = Tank(names.first_tank(), kind=water, named=False)  # soda for my reef
    kept = await readings.keep(turn, replace(parsed, doubts=()))
    volume = rest.get("volume_l", before.volume_l)
    if first_tank and volume is not None and (held := await _holds(turn, volume)) is not None:
        kept, rest = [*kept, held], rest | {"volume_l": None}
    return kept + await followups.changed(turn, asked, before, rest, topics)


def _is_of_another(turn: Turn, wished: str | None, offer: Offer, told: str | None) -> bool:
    """Whether a value is told of another tank than the wish was for: no goal goes with it there."""
    named = None if told is None else turn.tank_named(told)
    if named is None or len(turn.tanks) == 1:
        return False
    asked = wished or offer.context.get("facts", {}).get("tank")
    of = None if asked is None else turn.tank_named(asked)
    return of is None or of.id != named.id


async def _with_salt(turn: Turn, parsed: Parsed, topics: followups.Topics) -> list[Reply] | None:
    """`yep bicarb`, `bicarb then how much`: what KH is raised with, in the water asked about."""
    told = parsed.values or parsed.events
    if told or not turn.incoming.addressed or turn.incoming.reply_to is not None:
        return None
    salt = salt_alone(turn.incoming.text)
    if parsed.question is not None:
        salt = parsed.question.substance if _names_salt_only(parsed.question) else None
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    if salt is None or not _raises_kh(salt) or not latest:
        return None
    if ASKED not in latest[0].context:
        return await _for_low(turn, salt, topics) if parsed.question is None else None
    patience = GROUP_PATIENCE if turn.incoming.group else SOON
    if not latest[0].context.get(WAITS) and is_only_had(turn.incoming.text):
        return None  # a plan is made: what else there is asks for nothing
    asked = latest[0].context[ASKED]
    first = parse(asked["text"], turn.context()).question
    if first is None or turn.now - latest[0].made_at > patience:
        return None
    before = replace(first, **asked["changes"])
    if before.kind != "dose" or before.analyte != "kh":
        return None
    return await followups.changed(turn, asked, before, {"substance": salt}, topics)


async def _for_low(turn: Turn, salt: str, topics: followups.Topics) -> list[Reply] | None:
    """`i have baking soda` right behind a low KH: the dose of it to the KH that is enough."""
    patience = GROUP_PATIENCE if turn.incoming.group else SOON
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        facts = offer.context.get("facts", {})
        if turn.now - offer.made_at > patience or offer.entry_id is None or facts.get("events"):
            return None
        low = next((each for each in facts.get("findings", []) if each["id"] == "low_kh"), None)
        stored = turn.tank_named(facts.get("tank") or "") or turn.current_tank
        if low is None or stored is None:
            continue
        if await turn.uow.log.current(turn.chat.id, offer.entry_id) is None:
            return None  # taken back
        text = f"dose kh {wish_of_kh(low)}"
        question = parse(text, turn.context()).question
        if question is None:
            return None
        turn.incoming = replace(turn.incoming, text=text)
        asked = {"text": text, "changes": {}}
        changes = {"tank": stored.name, "substance": salt}
        return await followups.changed(turn, asked, question, changes, topics)
    return None


async def _holds(turn: Turn, volume: float) -> Reply | None:
    """Keep the volume that was told for a wish with the tank that the first reading made."""
    stored = turn.current_tank
    changed = None if stored is None else await tank_volumes.set_volume(turn, stored, volume)
    if changed is None:
        return None
    return await turn.reply([words.volume_set(changed.tank)], facts=tank_volumes.facts(changed))


async def beside(turn: Turn, parsed: Parsed, topics: followups.Topics) -> list[Reply] | None:
    """Keep a reading and plan what is wished of it in the same breath; None where nothing is.

    How much of what is asked beside it is of the wish: `kh is 2. i'd like 5. how much soda`.
    """
    by = parsed.question
    if by is not None:
        if not _asks_how_much(by):
            return None
        parsed = replace(parsed, question=None)
    named = parsed.values[0].analyte if len(parsed.values) == 1 else _named(turn, parsed)
    value, changes = wish_goal.measured(parsed, named), wish_goal.wished_beside(turn, parsed, named)
    if value is None or named not in _MOVED or changes is None or "wish" not in changes:
        return None
    if not turn.incoming.addressed or parsed.at is not None:
        return None
    if by is not None and by.analyte not in {None, named}:
        return None
    text = wish_goal.order(value, changes.pop("wish"))
    question = parse(text, turn.context()).question
    if question is None:
        return None
    first_tank = not turn.tanks
    kept = await readings.keep(turn, replace(parsed, doubts=()))
    turn.incoming = replace(turn.incoming, text=text)
    if first_tank and "volume_l" in changes:
        held = await _holds(turn, changes.pop("volume_l"))
        kept += [] if held is None else [held]
    if by is not None and by.substance is not None:
        changes["substance"] = by.substance
    if "volume_l" not in changes:
        changes["tank"] = value.tank or parsed.tank
    asked = {"text": text, "changes": {}}
    return kept + await followups.changed(turn, asked, question, changes, topics)


def _asks_how_much(question: Question) -> bool:
    """Whether nothing is asked but how much of something: to where is told beside it."""
    of = Question("dose", tank=question.tank, analyte=question.analyte)
    return question == replace(of, substance=question.substance, text=question.text)


def _named(turn: Turn, parsed: Parsed) -> str:
    """What the one wish of a message names, beside several values: `kh 2 ph 7, want kh 5`."""
    wishes = [doubt for doubt in parsed.doubts if doubt.reason == doubts.WISH]
    values = parse(wishes[0].text, turn.context()).values if len(wishes) == 1 else ()
    return values[0].analyte if len(values) == 1 else ""


async def wished(turn: Turn, parsed: Parsed, topics: followups.Topics) -> list[Reply] | None:
    """`want 80 ppm` right behind one reading or question: a wish; None where it is none."""
    said = None if parsed.values or parsed.events else lone_number(turn.incoming.text)
    if said is None or not said.wished or not turn.incoming.addressed:
        return None
    for offer in await turn.uow.offers.latest(turn.chat.id):
        if turn.now - offer.made_at > SOON:
            return None
        if offer.entry_id is None and (about := _asked_of(turn, offer)) is not None:
            used = turn.current_tank
            order = f"dose {about} {said.number:.10g} {said.unit}".strip()
            return None if used is None else await _planned(turn, order, used.name, topics)
        if offer.entry_id is None:
            return None
        entry = await turn.uow.log.current(turn.chat.id, offer.entry_id)
        if entry is None or entry.events or len(entry.readings) != 1:
            return None
        (reading,) = entry.readings
        stored = turn.tank_by_id(reading.tank_id)
        if reading.what.analyte in _MOVED and stored is not None:
            return await _planned(turn, wish_goal.order(reading.what, said), stored.name, topics)
    return None


def _names_salt_only(question: Question) -> bool:
    """Whether so much of a salt is asked for, and nothing of which water or to what."""
    named = Question("dose", analyte=question.analyte, substance=question.substance)
    return question == replace(named, text=question.text)


def _raises_kh(salt: str) -> bool:
    """Whether a salt is one that raises KH; which soda it is may have to be asked yet."""
    return salt == which_soda.SODA or (salt in SUBSTANCES and per_gram(salt, "kh") > 0.0)


def _asked_of(turn: Turn, offer: Offer) -> str | None:
    """What of the water was asked about, where it may be wished."""
    asked = offer.context.get(ASKED, {})
    question = parse(asked.get("text", ""), turn.context()).question
    analyte = None if question is None else asked["changes"].get("analyte", question.analyte)
    return analyte if analyte in _MOVED else None


async def _planned(
    turn: Turn, text: str, tank: str, topics: followups.Topics
) -> list[Reply] | None:
    question = parse(text, turn.context()).question
    if question is None:
        return None
    turn.incoming = replace(turn.incoming, text=text)
    asked = {"text": text, "changes": {}}
    return await followups.changed(turn, asked, question, {"tank": tank}, topics)


async def _waiting(turn: Turn, *, measured: bool, wished: bool) -> Offer | None:
    """The newest answer, where it was to a question whose plan needs something yet.

    Before what names its value, or is told to be wished, others may have been told or asked.
    """
    if not turn.incoming.addressed or turn.incoming.reply_to is not None:
        return None
    alone = GROUP_PATIENCE if turn.incoming.group else SOON
    for offer in await turn.uow.offers.latest(turn.chat.id):
        if turn.now - offer.made_at > (PATIENCE if measured else alone):
            return None
        if ASKED in offer.context and offer.context.get(WAITS):
            return offer
        if not wished and (offer.entry_id is None or not measured):
            return None
    return None


async def _alone(
    turn: Turn, said: Lone | None, waits: Sequence[str], analyte: str
) -> dict[str, Any] | None:
    """A volume, or a number of what was asked for, and nothing else.

    A number with its unit is what was measured where that is not known: `40 ppm`.
    """
    asked = waits[0]
    volume = volume_alone(turn.incoming.text, turn.chat.us_gallons)
    if volume is not None:
        return {"volume_l": volume, "tank": None}
    if said is None:
        return None
    if asked == "litres":
        return None if said.unit else {"volume_l": said.number, "tank": None}
    as_read = said.unit and not (said.wished or said.rather) and "start" in waits
    if asked != "target" or said.stated or as_read:
        return None  # mine is 40 ppm: it was measured
    return await wish_goal.goal(turn, said, analyte)
