"""Calls for help: answered at once, whatever else a message says."""

from __future__ import annotations

import re
from typing import Any

from bot.chat import dose_reply
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import emergencies as words
from bot.chat.words.cautions import CAUTIONS
from core.advice.cautions import touched
from core.advice.emergencies import Danger, help_for, recognise
from core.advice.forbidden import forbidden
from core.advice.plan import Refusal
from core.message.model import Parsed

ASKS = re.compile(
    r"\?|^\W*(can|could|may|should|shall|how|what|is|are|do|does|will)\b", re.IGNORECASE
)
URGENT = re.compile(r"^\W*(help|emergency|urgent|sos)\b|\bgasp|\bcrash", re.IGNORECASE)
QUIET = frozenset({"none", "unclear"})

_NORTH_AMERICA = (
    "America/New_York", "America/Chicago", "America/Denver", "America/Los_Angeles",
    "America/Phoenix", "America/Detroit", "America/Toronto", "America/Vancouver",
    "America/Edmonton", "America/Winnipeg", "America/Halifax", "America/Anchorage",
)  # fmt: skip


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
    return await turn.reply(CAUTIONS[caution or "storage"], facts={"caution": caution})


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
    return None


async def _help(turn: Turn, parsed: Parsed, danger: Danger) -> Reply:
    stored = turn.tank_named(parsed.tank) if parsed.tank else turn.current_tank
    state = None if stored is None else await state_of(turn, stored, turn.now)
    found = help_for(danger, state)
    name = stored.name if stored is not None else None
    held = {"ph": found.ph, "ammonia": found.total_n, "nh3_n": found.nh3_n, "tank": name}
    facts: dict[str, Any] = {"emergency": danger}
    facts |= {key: value for key, value in held.items() if value is not None}
    return await turn.reply(words.lines(found, name, region(turn)), facts=facts)


def region(turn: Turn) -> str | None:
    """The part of the world whose emergency number is told, from the chat's zone."""
    zone = str(turn.chat.zone)
    if zone.startswith("Europe/"):
        return "europe"
    if zone in _NORTH_AMERICA:
        return "north_america"
    if zone.startswith("Australia/"):
        return "australia"
    return "new_zealand" if zone == "Pacific/Auckland" else None
