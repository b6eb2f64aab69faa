"""Animals that the table does not know: kept by name, and nothing is promised for them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from bot.chat.model import Line, Reply
from bot.chat.turn import Turn
from bot.chat.words import names
from bot.chat.words import standing as standing_words
from bot.chat.words import strangers as words
from core.advice.state import State
from core.advice.stock import tally
from core.advice.strangers import named, strangers
from core.tank import Stock, Tank

COMPARED: Final = ("temperature", "ph", "gh", "kh", "salinity")
"""What a keeper's book gives for an animal."""

WARNED: Final = frozenset({"refused", "emergency", "caution", "danger", "not_judged"})
"""Facts of answers that call nothing well, or that have said it."""


async def beside(turn: Turn, replies: list[Reply]) -> list[Reply]:
    """Put before an answer that calls something well for whom it was not judged."""
    if not replies or not WARNED.isdisjoint(replies[0].facts):
        return replies
    said = replies[0].facts.get("tank")
    stored = turn.tank_named(said) if isinstance(said, str) else turn.current_tank
    if stored is None:
        return replies
    held = tally(await turn.uow.log.stock(stored.id, until=turn.now))
    stock = tuple(Stock(name, count) for name, count in held.items())
    unknown = strangers(Tank(name="", stock=stock))
    if not unknown:
        return replies
    first = replies[0]
    lines = (Line(words.not_judged(unknown)), *first.lines)
    return [replace(first, lines=lines, facts=_facts(first, unknown)), *replies[1:]]


def _facts(reply: Reply, unknown: Sequence[str]) -> dict[str, object]:
    return {**reply.facts, "not_judged": list(unknown)}


async def answer(
    turn: Turn, said: str, state: State, tank: str, company: Sequence[str] = ()
) -> Reply:
    """What can be said of an animal that is asked about and known by nothing but its name.

    `company` are the known kinds that it is asked about with.
    """
    on_record = named(said, state.tank)
    name = said.strip()[:40]
    lines = [words.not_known(name)] if on_record is None else [words.on_record(on_record, tank)]
    if company:
        lines.append(words.company(names.listed(list(company))))
    readings = [state.readings[of] for of in COMPARED if of in state.readings]
    lines += words.compare(standing_words.measured(readings, state.now))
    if on_record is None:
        lines.append(words.no_remedy())
    facts = {"not_judged": [on_record or name]}
    return await turn.reply(lines, facts=facts if on_record is None else {"tank": tank, **facts})
