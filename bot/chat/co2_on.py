"""``turned co2 back on``, ``turned it down a bit`` while pH and KH show far too much of it."""

from __future__ import annotations

from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import emergency_talk as words
from bot.chat.words import findings as finding_words
from core.advice.calls import TOO_HOT
from core.advice.findings import stands
from core.advice.jumps import unheated
from core.advice.state import State
from core.message.co2_on import turned_down, turned_on
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


def _is_of_another(state: State) -> bool:
    """Whether it is too warm as well, so that what was turned down may be the heater."""
    warm = state.fresh("temperature")
    return unheated(state) or (warm is not None and warm.value >= TOO_HOT)
