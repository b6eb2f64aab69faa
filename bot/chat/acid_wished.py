"""An acid that is wished beside another thing, or against a pest: refused, whatever else it is."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat import calls
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import cautions, refusals
from core.advice.plan import Refusal
from core.message.acid_wished import wished
from core.message.model import Parsed
from core.message.nearly_done import nearly
from core.message.plan_said import substances_named
from core.message.raise_asked import lowering_asked
from core.substances import ACIDS

LOWERED: Final = "should i lower the ph"
"""A product that is sold to lower pH, asked for in the words of its topic."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Refuse the acid, with what is warned of besides; None where none is wished so."""
    if not turn.incoming.addressed or parsed.values or parsed.events or parsed.command is not None:
        return None
    text = turn.incoming.text
    if lowering_asked(text) and turn.typed is not None and calls.danger_of(turn, parsed) is None:
        turn.incoming = replace(turn.incoming, text=LOWERED)
        return await turn.typed(turn)
    acid = wished(text)
    if acid is None or nearly(text) or calls.danger_of(turn, parsed) is not None:
        return None
    touched = calls.touched_by(text, asked=True)
    if touched.refused is not None or touched.caution not in {None, *BESIDE}:
        return None  # warned of in its own words
    known = sorted(substances_named(text) & ACIDS)
    refusal = Refusal("acid", {"substance": known[0] if known else acid})
    lines = refusals.refused(refusal, None)
    facts = {"refused": refusal.reason, **refusal.facts}
    if touched.caution is not None:
        lines, facts = (
            [*lines, *cautions.caution(touched.caution)],
            facts | {"caution": touched.caution},
        )
    return [await turn.reply(lines, facts=facts, context={"why": lines}, expects="followup")]


BESIDE = frozenset({"snail_plague"})
"""Cautions that are said beside the refusal, as they say nothing of the acid."""
