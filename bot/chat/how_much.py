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


async def of_what_stands(turn: Turn) -> list[Reply] | None:
    """How much is to be done for the worst of what stands in the tank in use.

    None where nothing stands that has an amount.
    """
    stored = turn.current_tank
    if stored is None or turn.typed is None:
        return None
    state = await state_of(turn, stored, turn.now)
    found = [f for f in stands(state, frozenset(state.readings)) if f.severity != "note"]
    text = to_ask(found[0]) if found else None
    if text is None:
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
