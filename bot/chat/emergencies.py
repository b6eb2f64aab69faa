"""Calls for help: answered at once, whatever else a message says."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any, Final

from bot.chat import dose_reply
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.told import Told
from bot.chat.turn import Turn
from bot.chat.words import cautions
from bot.chat.words import emergencies as words
from bot.chat.words.text import _
from bot.countries import country_of
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.advice.cautions import touched
from core.advice.emergencies import Danger, help_for, recognise
from core.advice.findings import Finding
from core.advice.forbidden import forbidden
from core.advice.plan import Refusal
from core.message.model import Parsed

ASKS = re.compile(
    r"\?|^\W*(can|could|may|should|shall|how|what|is|are|do|does|will)\b", re.IGNORECASE
)
URGENT = re.compile(r"^\W*(help|emergency|urgent|sos)\b|\bgasp|\bcrash", re.IGNORECASE)
QUIET = frozenset({"none", "unclear"})

BESIDE_EVENTS: Final = frozenset({"chlorine", "overdose", "swallowed", "gasping"})
"""Dangers that are told beside what was done: "changed 30% and forgot the dechlorinator"."""

OF_ALARM: Final[Mapping[str, Danger]] = {
    "ammonia": "ammonia",
    "nitrite": "nitrite",
    "chlorine": "chlorine",
    "low_oxygen": "gasping",
    "copper": "overdose",
    "overdose": "overdose",
}
"""The steps that belong to the alarm of a finding."""


def is_call(turn: Turn, parsed: Parsed) -> bool:
    """Whether a message calls for help, or asks what the cautions refuse."""
    if not turn.incoming.addressed:
        return False
    danger, refused, caution = _found(turn, parsed)
    return not (danger is None and refused is None and caution is None)


async def answer(turn: Turn, parsed: Parsed) -> Reply:
    """Answer a call for help, refuse what the cautions refuse, or say the caution itself."""
    danger, refused, caution = _found(turn, parsed)
    if danger is not None:
        return await _help(turn, parsed, danger)
    if refused is not None:
        return await dose_reply.refuse(turn, Refusal(refused), None)
    return await turn.reply(cautions.caution(caution or "storage"), facts={"caution": caution})


def _found(turn: Turn, parsed: Parsed) -> tuple[Danger | None, str | None, str | None]:
    """The danger, the refusal and the caution that a message touches."""
    text = turn.incoming.text
    danger = _danger(turn, parsed)
    quiet = parsed.intent in QUIET or _is_vague(parsed)
    if danger is not None or not quiet or not ASKS.search(text):
        return danger, None, None
    refused = forbidden(text)
    return None, refused, None if refused is not None else touched(text)


def _is_vague(parsed: Parsed) -> bool:
    """Whether something is asked of which no number and no analyte is named."""
    asked = parsed.question
    return (
        asked is not None
        and asked.kind in {"safe", "why", "keep"}
        and not asked.premises
        and asked.analyte in {None, "copper"}
    )


def _danger(turn: Turn, parsed: Parsed) -> Danger | None:
    text = turn.incoming.text
    asked_help = parsed.question is not None and parsed.question.kind == "help"
    if parsed.intent in QUIET or asked_help or _is_vague(parsed) or URGENT.search(text):
        return recognise(text)
    danger = recognise(text) if parsed.events else None
    return danger if danger in BESIDE_EVENTS else None


def without_mishap(parsed: Parsed) -> Parsed:
    """A message without the doses of nothing known: the mishap itself is no dose to keep."""
    kept = tuple(
        event
        for event in parsed.events
        if event.kind != "dose" or event.grams or event.millilitres or event.spoons
    )
    return replace(parsed, events=kept)


async def _help(turn: Turn, parsed: Parsed, danger: Danger) -> Reply:
    stored = turn.tank_named(parsed.tank) if parsed.tank else turn.current_tank
    return await help_in(turn, stored, danger)


def what_now(told: Told, found: Sequence[Finding]) -> list[Choice]:
    """The button that leads from an alarm to its first-minute steps, if there is any."""
    for finding in found:
        danger = OF_ALARM.get(finding.id) if finding.severity == "alarm" else None
        if danger is not None:
            held = {"tank": told.tank.id, "danger": danger}
            return [Choice(_(words.WHAT_NOW), "what_now", "", held)]
    return []


async def press_what_now(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Give the steps for an alarm, with what the tank's readings say by now."""
    stored = turn.tank_by_id(choice.arguments["tank"])
    return [await help_in(turn, stored, choice.arguments["danger"])]


async def help_in(turn: Turn, stored: StoredTank | None, danger: Danger) -> Reply:
    """Give the first-minute steps for a danger in a tank."""
    state = None if stored is None else await state_of(turn, stored, turn.now)
    found = help_for(danger, state)
    name = stored.name if stored is not None else None
    held = {"ph": found.ph, "ammonia": found.total_n, "nh3_n": found.nh3_n, "tank": name}
    facts: dict[str, Any] = {"emergency": danger}
    facts |= {key: value for key, value in held.items() if value is not None}
    return await turn.reply(words.lines(found, name, country_of(turn.chat.zone_name)), facts=facts)
