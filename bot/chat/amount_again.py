"""``how much``, ``how much salt`` right after a plan: what it takes, told again."""

from __future__ import annotations

from typing import Final

from bot.chat import plan_now
from bot.chat.given_plan import Given, given
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.plan_figures import part_of
from bot.chat.turn import Turn
from bot.chat.words import doses as dose_words
from bot.chat.words import plan_talk as words
from bot.chat.words import salts as salt_words
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Parsed
from core.message.tokens import cut

SALTS: Final = frozenset({"sodium chloride", "sea salt"})
"""What "salt" alone is read as."""

HARDNESS: Final = frozenset({"gh", "kh"})

_LONGEST: Final = 40
_LOOKED_AT: Final = 2


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Tell the newest plan's part again; None where more is asked, or no plan was just given."""
    if not turn.incoming.addressed or parsed.values or parsed.events:
        return None
    asked = _asked(turn.incoming.text)
    if asked is None:
        return None
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    offers = list(await turn.uow.offers.latest(turn.chat.id, _LOOKED_AT))
    if not offers or turn.now - offers[0].made_at > patience:
        return None
    plan = given(offers[0])
    if plan is None or not await plan_now.is_newest(turn, plan.offer, offers):
        return None
    own = {name for name, _ in plan.salts}
    lines = words.a_part(part_of(plan), plan.every_hours, plan.count)
    if asked and asked <= own:
        asked = set()
    if asked and not _hardness_by_salt(asked, plan):
        return None  # of another thing it is asked
    if asked:
        lines.append(salt_words.no_table_salt())
    below = plan.facts.get("only_if_ammonia_below")
    lines += [] if below is None else [dose_words.only_below(below)]
    facts = {"parts": list(plan.parts), "every_hours": plan.every_hours}
    return [await turn.reply(lines, facts=facts)]


def _hardness_by_salt(asked: set[str], plan: Given) -> bool:
    """Whether salt is asked for where a hardness is to be raised, which is done by other salts."""
    return asked <= SALTS and bool(plan.salts) and set(plan.analytes) <= HARDNESS


def _asked(text: str) -> set[str] | None:
    """The substances beside "how much", where nothing else is said; None for any other text."""
    if len(text) > _LONGEST:
        return None
    tokens = [t for t in cut(fold(text), lexicon(), text) if t.kind not in {"fill", "p"}]
    if not tokens or tokens[0].kind != "ask" or tokens[0].value != "how_much":
        return None
    rest = tokens[1:]
    if any(token.kind != "substance" for token in rest):
        return None
    return {str(token.value) for token in rest}
