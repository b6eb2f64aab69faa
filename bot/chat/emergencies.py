"""Calls for help: answered at once, whatever else a message says."""

from __future__ import annotations

import re
from typing import Any

from bot.chat import dose_reply
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import emergencies as words
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
    return _danger(turn, parsed) is not None or _refused(turn, parsed) is not None


async def answer(turn: Turn, parsed: Parsed) -> Reply:
    """Answer a call for help, or refuse what the cautions refuse."""
    danger = _danger(turn, parsed)
    if danger is not None:
        return await _help(turn, parsed, danger)
    return await dose_reply.refuse(turn, Refusal(_refused(turn, parsed) or "human"), None)


def _danger(turn: Turn, parsed: Parsed) -> Danger | None:
    text = turn.incoming.text
    asked_help = parsed.question is not None and parsed.question.kind == "help"
    if parsed.intent in QUIET or asked_help or URGENT.search(text):
        return recognise(text)
    return None


def _refused(turn: Turn, parsed: Parsed) -> str | None:
    text = turn.incoming.text
    return forbidden(text) if parsed.intent in QUIET and ASKS.search(text) else None


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
