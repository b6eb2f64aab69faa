"""The deed that a reminder's task names: what is logged when it is done, and too much to be set."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import reminder_talk as talk_words
from bot.store.tanks import StoredTank
from core.message import parse
from core.message.model import Parsed, Question
from core.message.plan_said import substances_named

_AMOUNT: Final = re.compile(
    r"\d+(?:[.,]\d+)?\s?(?:g|mg|ml|kg|gr?|grams?|gramm|tsp|tbsp)\b.*", re.IGNORECASE
)
_SHARE: Final = re.compile(r"\d+(?:[.,]\d+)?\s?(?:%|(?:l|litres?|liters?|liter)\b)", re.IGNORECASE)


def told(turn: Turn, what: str, kind: str) -> tuple[str, Parsed] | None:
    """The message that puts a task's deed on record, and its meaning; None without an amount.

    `2.7 g sodium bicarbonate` is told as `dosed 2.7 g sodium bicarbonate`.
    """
    share, amount = _SHARE.search(what), _AMOUNT.search(what)
    if kind == "change":
        text = None if share is None else f"changed {share[0]}"
    else:
        text = None if amount is None else f"dosed {_with_substance(amount[0], what)}"
    parsed = None if text is None else parse(text, turn.context())
    if text is None or parsed is None or not parsed.events or parsed.doubts or parsed.values:
        return None
    expected = "water_change" if kind == "change" else "dose"
    return (text, parsed) if all(e.kind == expected for e in parsed.events) else None


def _with_substance(amount: str, what: str) -> str:
    """An amount with what it is of, where that stands in front: `second bicarb dose 5g`."""
    named = list(substances_named(what))
    return f"{amount} {named[0]}" if len(named) == 1 and not substances_named(amount) else amount


async def too_much(turn: Turn, what: str, kind: str, tank: StoredTank | None) -> list[Reply] | None:
    """Refuse to remind of a dose that is more than may go in within a day; None where it may."""
    found = None if kind not in {"dose", "other"} else told(turn, what, "dose")
    if found is None or turn.route is None or len(found[1].events) != 1:
        return None
    event = found[1].events[0]
    if event.grams is None or event.substance is None:
        return None
    text = f"what does {event.grams:g} g {event.substance} do"
    question = Question(
        "effect",
        tank=None if tank is None else tank.name,
        substance=event.substance,
        grams=event.grams,
        text=text,
    )
    said, asked = turn.incoming, turn.asked
    turn.incoming = replace(said, text=text)
    effect = await turn.route(turn, Parsed("question", question=question))
    turn.incoming, turn.asked = said, asked
    if len(effect) == 1 and effect[0].facts.get("days", 0.0) > 1.0:
        return [await turn.reply(talk_words.too_much(what)), *effect]
    return None
