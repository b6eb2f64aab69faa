"""``can i add air``: extra air drives CO2 off, which frees ammonia where there is any."""

from __future__ import annotations

from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import aerating as words
from core.advice import limits
from core.advice.asked_company import asks_for_air
from core.advice.findings import seen
from core.message.model import Parsed


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Whether air may go into a tank; None where that is not asked."""
    if parsed.values or parsed.events or parsed.command is not None:
        return None
    if not turn.incoming.addressed:
        return None
    named = asks_for_air(turn.incoming.text, [tank.name for tank in turn.tanks])
    stored = turn.current_tank if not named else turn.tank_named(named)
    if named is None or stored is None:
        return None
    state = await state_of(turn, stored, turn.now)
    ph, ammonia = state.fresh("ph"), state.fresh("ammonia")
    acid = ph is None or ph.value < limits.AIRING_BELOW_PH
    if acid and seen(ammonia) is not None:
        lines, verdict = words.only_if_gasping(), "no"
    elif acid and ammonia is None:
        lines, verdict = words.test_first(), "test"
    elif seen(ammonia) is not None:
        lines, verdict = words.with_care(stored.name), "yes"
    else:
        lines, verdict = words.harmless(stored.name, injected=bool(state.tank.co2)), "yes"
    facts = {"tank": stored.name, "verdict": verdict}
    return [await turn.reply([*lines, words.plug()], facts=facts)]
