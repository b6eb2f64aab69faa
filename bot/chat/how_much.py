"""``how much``, of nothing that was asked for: of what the worst that stands asks for."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat.first_share import CALL_FOR_CHANGE
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words.finding_parts import wish_of_kh
from core.advice.findings import BY_ID, Finding, stands
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut

CHANGE: Final = "how much can i change"
"""How it is asked for the largest change."""

LIGHT: Final = frozenset({"fill", "p"})
"""Kinds of tokens without weight."""

PUT: Final = frozenset({"adding", "added", "dose", "got"})
"""Words that something goes in."""

BESIDE_IT: Final = frozenset({"wish", "home", "g", "do", "tank"})
"""Words beside them that name nothing of it."""

NO_BUFFER: Final = frozenset({"ammonia_first", "retest_first", "substance"})
"""What a low KH is told with where none is to be dosed for it now."""


def is_bare(text: str) -> bool:
    """Whether a text asks how much and says nothing else.

    Examples
    --------
    >>> is_bare("how much?"), is_bare("how many days"), is_bare("how much salt")
    (True, False, False)
    """
    tokens = cut(fold(text), lexicon(), text)
    return all(token.value == "how_much" or token.kind in LIGHT for token in tokens)


def is_of_adding(text: str) -> bool:
    """Whether a text asks how much goes in, and of nothing that is named.

    Examples
    --------
    >>> is_of_adding("how much should i add"), is_of_adding("how many grams must i put in the tank")
    (True, True)
    >>> is_of_adding("how much food should i add"), is_of_adding("how much"), is_of_adding("add it")
    (False, False, False)
    """
    tokens = cut(fold(text), lexicon(), text)
    values = {token.value for token in tokens if token.kind not in LIGHT}
    return "how_much" in values and bool(values & PUT) and values <= {"how_much", *PUT, *BESIDE_IT}


async def of_what_stands(turn: Turn, *, adding: bool = False) -> list[Reply] | None:
    """How much is to be done for the worst of what stands in the tank in use.

    None where nothing stands that has an amount; `adding` is where no change of water is meant.
    """
    stored = turn.current_tank
    if stored is None or turn.typed is None:
        return None
    state = await state_of(turn, stored, turn.now)
    found = [f for f in stands(state, frozenset(state.readings)) if f.severity != "note"]
    text = to_ask(found[0]) if found else None
    if text is None or (adding and text == CHANGE):
        return None
    said = turn.incoming
    turn.incoming = replace(said, text=text)
    replies = await turn.typed(turn)
    turn.incoming = said
    return replies


def to_ask(finding: Finding) -> str | None:
    """The question that tells how much is to be done for a finding; None where it has none."""
    if finding.id != "low_kh":
        return CHANGE if BY_ID[finding.id].first in CALL_FOR_CHANGE else None
    if NO_BUFFER & finding.facts.keys():
        return None
    return CHANGE if "source_kh" in finding.facts else f"dose kh {wish_of_kh(finding.facts)}"
