"""``now it's 45``, ``und heute 5``: a number alone, which is probably of the value told before."""

from __future__ import annotations

from datetime import timedelta
from typing import Final

from bot.chat import readings
from bot.chat.model import Reply
from bot.chat.turn import Turn
from core.message import doubts
from core.message.fold import fold
from core.message.guesses import believable, name_for
from core.message.lexicon import lexicon
from core.message.model import Doubt, Parsed
from core.message.token import is_number
from core.message.tokens import Token, cut

OF_LATE: Final = timedelta(days=2)
"""So long the value told before is still what a number is about; ours."""
MOST: Final = 6
"""Tokens of such a message, at most."""
_LIGHT: Final = frozenset(
    {"link", "and", "one", "today", "now", "approx", "its", "ago", "at"}
)  # fmt: skip


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Ask whether the number is of the value told last; None where it says more, or none was."""
    told = parsed.values or parsed.events or parsed.question or parsed.command
    if told or not turn.incoming.addressed:
        return None
    number = _alone(turn.incoming.text)
    if number is None:
        return None
    entry = await turn.uow.log.latest(turn.chat.id, turn.incoming.author_id)
    if entry is None or turn.now - entry.at > OF_LATE or entry.events:
        return None
    named = {(stored.what.analyte, stored.tank_id) for stored in entry.readings}
    if len(named) != 1:
        return None
    ((analyte, tank_id),) = named
    value = float(number.text.replace(",", "."))
    if not believable(analyte, value, None):
        return None
    stored = turn.tank_by_id(tank_id)
    of = "" if stored is None or stored is turn.current_tank else f"{stored.name}: "
    meant = f"{of}{name_for(analyte)} {value:.6g}"
    doubt = Doubt(number.text, number.start, number.end, doubts.STRAY_NUMBER, meant)
    return await readings.keep(turn, Parsed("unclear", doubts=(doubt,)))


def _alone(text: str) -> Token | None:
    """The one plain number of a message that says nothing else."""
    tokens = cut(fold(text), lexicon(), text, most=MOST + 1)
    numbers = [token for token in tokens if is_number(token)]
    if len(tokens) > MOST or len(numbers) != 1 or "?" in text:
        return None
    rest = [token for token in tokens if token is not numbers[0]]
    light = all(token.kind in {"fill", "p"} or token.value in _LIGHT for token in rest)
    plain = numbers[0].text.replace(",", ".").replace(".", "", 1).isdigit()
    return numbers[0] if light and plain else None
