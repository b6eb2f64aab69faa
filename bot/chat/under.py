"""``ph under 6``: a kit's low end, which is a reading, where it can be no wish that is safe."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import under as words
from bot.store.tanks import StoredTank
from core.advice import limits
from core.advice.findings import low_kh_limit
from core.message import parse
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Parsed
from core.message.tokens import cut

LOWEST: Final[dict[str, float]] = {"ph": limits.PH_CRASHED, "kh": 3.0}
"""Up to here a kit's lower end is told, not a wish; common practice, no source. [pH, °dH]"""
HELD: Final = 7.5
"""Up to here with a KH that holds no pH."""

_PLAIN: Final = frozenset({"analyte", "number", "unit", "fill"})


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Keep what is told so, as ``ph < 6`` is; None for a wish, a question, and all else."""
    asked = parsed.question
    if asked is None or turn.route is None or "?" in turn.incoming.text:
        return None
    if asked.kind != "change" or asked.bound != "<" or asked.target is None:
        return None
    if parsed.values or parsed.events or not _says_no_more(turn.incoming.text):
        return None
    stored = turn.tank_named(asked.tank or "") or turn.current_tank
    spent = asked.analyte == "ph" and stored is not None and await _is_spent(turn, stored)
    if asked.target > (HELD if spent else LOWEST.get(asked.analyte or "", 0.0)):
        return None
    of = "" if asked.tank is None else f"{asked.tank}: "
    text = f"{of}{asked.analyte} < {asked.target:g}"
    told = parse(text, turn.context())
    if not told.values or told.doubts:
        return None
    turn.incoming = replace(turn.incoming, text=text)
    replies = await turn.route(turn, told)
    if not spent or stored is None or asked.target > LOWEST["ph"]:
        return replies
    return [*replies, await turn.reply(words.crashed(stored.name))]


async def _is_spent(turn: Turn, stored: StoredTank) -> bool:
    """Whether the KH of late holds no pH in such a water."""
    state = await state_of(turn, stored, turn.now)
    kh = state.fresh("kh")
    return kh is not None and kh.value < low_kh_limit(state)


def _says_no_more(text: str) -> bool:
    """Whether a text is a name, a word for under and a number: no wish, no question."""
    tokens = cut(fold(text), lexicon(), text)
    others = [token for token in tokens if token.kind not in _PLAIN and token.value != "under"]
    names = [token for token in tokens if token.kind == "analyte"]
    return all(re.fullmatch(r"[\W_]*", token.text) for token in others) and len(names) == 1
