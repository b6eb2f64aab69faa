"""What was put into a bucket or a new water is put on no tank's record, and that is said."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from bot.chat import calls, readings
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import in_vessel as words
from core.message import vessel
from core.message.lexicon import lexicon
from core.message.model import Event, Parsed
from core.message.plan_words import telling
from core.water.substances import SUBSTANCES

HOME: Final = "home"
"""The mark of words for the keeper's own tank."""


async def told(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Say that a dose of a vessel or another place counts for no tank, and keep the rest.

    None for any other.
    """
    doses = [event for event in parsed.events if event.kind == "dose"]
    if parsed.question is not None or parsed.command is not None:
        return None
    text = turn.incoming.text
    if len(doses) > 1:  # each by its own words: 5 g salt in the sink and 3 g soda in the tank
        doses = [event for event in doses if is_apart(turn, text[event.start : event.end])]
        if not doses:
            return None
    elif not is_apart(turn, text) or not (doses or _gave(text)):
        return None
    if calls.is_danger(turn, parsed) or not turn.incoming.addressed:
        return None
    rest = replace(parsed, events=tuple(e for e in parsed.events if e not in doses))
    replies = await readings.keep(turn, rest) if rest.events or rest.values else []
    stored = turn.current_tank
    name = None if stored is None else stored.name
    vessels = any(vessel.named(each) for each in _said_of(doses, text))
    lines = words.not_of_tank(name, _sum_of(doses)) if vessels else words.elsewhere(name)
    facts = {"not_stored": [{"kind": "dose", "substance": each.substance} for each in doses]}
    return [*replies, await turn.reply(lines, facts=facts)]


def is_apart(turn: Turn, text: str) -> bool:
    """Whether a text puts a thing into a vessel or place apart, and into none of the tanks."""
    named = vessel.named(text) or vessel.elsewhere(text)
    if named is None or turn.tank_named(named) is not None:
        return False
    into_tank = any(vessel.leads_to(text, tank.name) for tank in turn.tanks)
    return not into_tank and not any(vessel.leads_to(text, home) for home in _homes(text))


def _said_of(doses: Sequence[Event], text: str) -> list[str]:
    """The words of each dose; the whole text where it is one."""
    return [text[each.start : each.end] for each in doses] if len(doses) > 1 else [text]


def _homes(text: str) -> list[str]:
    """The words of a text that mean the keeper's own tank."""
    known = lexicon().words
    said = re.findall(r"\w+", text.casefold())
    return [word for word in said if known.get(word) == ("mark", HOME)]


def _gave(text: str) -> bool:
    """Whether a text tells that so much was put in, of a thing that it need not name."""
    said = telling(f"{vessel.without(text)} in") or telling(vessel.without(text))
    return said is not None and said.meaning == "gave_it" and said.amounts.of_dose


def _sum_of(doses: Sequence[Event]) -> str | None:
    """What asks for the effect of the first dose, where its grams and its thing are known."""
    dose = next((each for each in doses if each.grams and each.substance in SUBSTANCES), None)
    return None if dose is None else f"what does {dose.grams:g} g {dose.substance} do in 20 l"
