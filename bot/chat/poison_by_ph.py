"""``does ammonia get worse as ph goes up``: how its poison follows pH and warmth."""

from __future__ import annotations

from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import findings as finding_words
from bot.chat.words import poison_by_ph as words
from core.advice import limits
from core.advice.ammonia_gate import shown
from core.advice.findings import find, judge_ammonia
from core.message.model import Parsed
from core.message.poison_asked import asked, by_low_ph
from core.water.ammonia import un_ionised_fraction

_PH = (6.0, 10.0)
"""Between these pH is looked for at which the poison passes its limit."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Say how the poisonous share moves, and from where it harms by the last readings."""
    if parsed.values or not turn.incoming.addressed:
        return None
    low = by_low_ph(turn.incoming.text)
    by = "ph" if low else asked(turn.incoming.text)
    if by is None:
        return None
    stored = turn.tank_named(parsed.tank or "") or turn.current_tank
    if stored is None:
        return [await turn.reply([words.by_ph() if by == "ph" else words.by_warmth()])]
    state = await state_of(turn, stored, turn.now)
    if low and shown(state) is None:
        return None  # of what, is not known
    lines = [words.by_low_ph() if low else words.by_ph() if by == "ph" else words.by_warmth()]
    found = [each for each in find(state, frozenset({"ammonia"})) if each.id == "ammonia"]
    if low and found:
        said: dict[str, object] = {"tank": stored.name, "findings": [found[0].id]}
        return [await turn.reply([*lines, finding_words.line(found[0])], facts=said)]
    lines += [words.act()] if low else []
    judged = judge_ammonia(state)
    if judged is None or not float(judged["total_n"]):
        return [await turn.reply([*lines, words.measure()])]
    total, warmth = float(judged["total_n"]), state.fresh("temperature")
    degrees = limits.WARMEST_ASSUMED if warmth is None else min(max(warmth.value, 0.0), 50.0)
    lines.append(words.now(stored.name, total, float(judged["ph"]), float(judged["nh3_n"])))
    turning = passing(total, degrees, min(state.salinity, 60.0))
    if turning is not None:
        lines.append(words.passes_at(turning, degrees, known=warmth is not None))
    facts = {"tank": stored.name, "nh3_n": judged["nh3_n"], "ph": turning}
    return [await turn.reply(lines, facts=facts)]


def passing(total_n: float, temperature: float, salinity: float) -> float | None:
    """The pH, to a tenth below, at which un-ionised ammonia passes what is warned of.

    None where it does not between pH 6 and 10.
    """
    low, high = _PH
    if total_n * un_ionised_fraction(high, temperature, salinity) <= limits.NH3_WARN:
        return None
    if total_n * un_ionised_fraction(low, temperature, salinity) > limits.NH3_WARN:
        return None
    tenths = range(round(low * 10), round(high * 10))
    over = (
        tenth
        for tenth in tenths
        if total_n * un_ionised_fraction((tenth + 1) / 10, temperature, salinity) > limits.NH3_WARN
    )
    return next(over) / 10
