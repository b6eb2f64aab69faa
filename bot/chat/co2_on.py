"""``turned co2 back on``, ``turned it down a bit`` while pH and KH show far too much of it."""

from __future__ import annotations

from datetime import timedelta
from typing import Final

from bot.chat import emergencies, what_now
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import emergency_talk as words
from bot.chat.words import findings as finding_words
from bot.chat.words import questions as question_words
from core.advice.calls import TOO_HOT
from core.advice.carbon import carbon_dioxide
from core.advice.findings import seen, stands
from core.advice.jumps import CO2_OFF, unheated
from core.advice.state import State
from core.message.co2_on import asks_more, asks_on, turned_down, turned_on
from core.message.model import Parsed

TOO_MUCH = frozenset({"much_co2", "contradiction"})


async def answer(turn: Turn, parsed: Parsed) -> Reply | None:
    """Warn where the last pH and KH show too much CO2; None otherwise, or for other talk."""
    stored = turn.current_tank
    if parsed.values or parsed.events or stored is None or not turn.incoming.addressed:
        return None
    is_on, is_down = turned_on(turn.incoming.text), turned_down(turn.incoming.text)
    if not is_on and not is_down:
        return None
    state = await state_of(turn, stored, turn.now)
    fresh = frozenset(name for name in ("ph", "kh") if state.fresh(name) is not None)
    found = next((f for f in stands(state, fresh) if f.id in TOO_MUCH), None)
    if found is None:
        return None
    told = {"id": found.id, "severity": found.severity, **found.facts}
    if is_down and "co2" not in turn.incoming.text.casefold() and _is_of_another(state):
        return None
    of_co2 = words.co2_back_off if is_on else words.co2_down
    lines = of_co2(stored.name, finding_words.line(found))
    return await turn.reply(lines, facts={"tank": stored.name, "findings": [told]})


async def more(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """No, where more CO2 is asked for while animals suffer; None of others."""
    stored = turn.current_tank
    if parsed.values or parsed.events or stored is None or not turn.incoming.addressed:
        return None
    if not asks_more(turn.incoming.text):
        return None
    danger, gasping = await what_now.danger_in(turn, stored)
    if danger not in OF_AIR:
        return None
    lead = words.no_co2()
    return [await emergencies.help_in(turn, stored, danger, gasping=gasping, lead=lead)]


OF_AIR: Final = frozenset({"gasping", "general", "co2_high", "maybe_dead", "ph_crash", "overdose"})
"""What is wrong where CO2 makes it worse, or may be it."""


async def may_be_on(turn: Turn, parsed: Parsed) -> Reply | None:
    """``can i turn it on again`` after CO2 was shut off: by pH and KH read since; None else."""
    stored = turn.current_tank
    if parsed.values or parsed.events or stored is None or not turn.incoming.addressed:
        return None
    if not asks_on(turn.incoming.text):
        return None
    state = await state_of(turn, stored, turn.now)
    off = [e.at for e in state.events or () if e.what.kind == "note" and e.what.text == CO2_OFF]
    if not off or state.now - max(off) > PATIENCE_OFF:
        return None
    if "co2" not in turn.incoming.text.casefold() and _is_of_another(state):
        return None
    ph, kh, warm = state.fresh("ph"), state.fresh("kh"), state.fresh("temperature")
    facts: dict[str, object] = {"tank": stored.name}
    if ph is None or kh is None or ph.at <= max(off):
        return await turn.reply(words.on_when_tested(stored.name), facts=facts)
    found = carbon_dioxide(ph, kh, warm.value if warm else None, state.salinity)
    if found is None:
        return await turn.reply(question_words.no_such_water(), facts=facts)
    facts |= {"co2_mg_l": found.mg_l, "co2_span": [found.least, found.most]}
    facts |= {"ph": ph.value, "kh": kh.value}
    much = found.most > HIGHEST or found.is_high
    lines = question_words.carbon_dioxide(
        stored.name, ph.value, kh.value, found, ammonia=seen(state.fresh("ammonia")) is not None
    )
    return await turn.reply([*lines, *words.on_again(not_yet=much)], facts=facts)


PATIENCE_OFF: Final = timedelta(days=3)
"""So long after it was shut off it is asked about without its name."""

HIGHEST: Final = 30.0
"""CO2 over which more of it is warned of; common practice, no source. [mg/L]"""


def _is_of_another(state: State) -> bool:
    """Whether it is too warm as well, so that what was turned down may be the heater."""
    warm = state.fresh("temperature")
    return unheated(state) or (warm is not None and warm.value >= TOO_HOT)
