"""Wishes that name a water: `how much tap to reach kh 4`, `60 l of tap to kh 12 gh 14`.

The first is a change whose share is sought, the second salts for new water made of a source.
"""

from __future__ import annotations

import re
from typing import Final

from bot.chat.buckets import MAKING
from bot.chat.supply import Supply
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Question
from core.message.tokens import cut
from core.message.waters import PURE, mentioned

_TOLD: Final = re.compile(
    r"\s*(?:[=:\d]|(?:is|has|at|ist|hat|est|a|es|tiene|e|tem|ha|heeft|jest|ma|ar|har|[kgp]h)\b)"
)
"""Behind a water's name: what it measures is told, it is no means."""

_AMOUNT: Final = re.compile(r"\b(?:l|lit\w+|gal\w*)\s+(?:(?:of|my|our|the|d[eiou]s?|van|av)\s+)*$")
"""Before a water's name: so much of it."""

_MADE: Final = re.compile(rf"\b(?:{'|'.join(MAKING)})\b")


def is_means(question: Question) -> bool:
    """Whether the water that a wish names is to fulfil it, and no salt."""
    if question.volume_l is not None or question.start_value is not None:
        return False
    text = fold(question.text or "")
    named = [end for _, end, kind in mentioned(text) if kind not in PURE]
    return any(_TOLD.match(text, end) is None for end in named) or _of_a_change(text)


def _of_a_change(text: str) -> bool:
    """`how much water do i change to get kh 4`: the verb alone may be of the value."""
    values = [str(token.value) for token in cut(text, lexicon(), text)]
    return "water_change" in values or ("changing" in values and _WATER.search(text) is not None)


_WATER: Final = re.compile(r"\b(?:water|wasser|eau|agua|acqua|wod[ay]|wode|vatten)\b")


async def made_of(turn: Turn, question: Question) -> Supply | None:
    """The source that so much new water is made of; None where none is named as that."""
    if question.volume_l is None or question.start_value is not None:
        return None
    text = fold(question.text or "")
    named = [start for start, _, kind in mentioned(text) if kind not in PURE]
    is_made = _MADE.search(text) is not None
    if not any(is_made or _AMOUNT.search(text[:start]) for start in named):
        return None
    found = await (await Waters.of(turn)).all_named(question.text or "")
    return found[0] if len(found) == 1 else None
