"""A product that is called by its job is asked for: its label is asked, and no number given."""

from __future__ import annotations

from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import named_for_job as words
from core.message.fold import fold
from core.message.model import Parsed
from core.message.named_for_job import asked


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """What a label must say, and what holds pH; None where a product is known or more is said."""
    if not turn.incoming.addressed or parsed.values or parsed.events:
        return None
    said = asked(turn.incoming.text, [tank.name for tank in turn.tanks])
    if said is None or any(fold(each.name) in fold(turn.incoming.text) for each in turn.products):
        return None
    facts = {"refused": "substance_unknown", "substance": said.name}
    return [await turn.reply(words.ask_label(said.name, said.job), facts=facts)]
