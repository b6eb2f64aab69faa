"""A product that is called by its job is asked for: its label is asked, and no number given."""

from __future__ import annotations

from typing import Final

from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import named_for_job as words
from bot.store.offers import Choice
from core.message.fold import fold
from core.message.model import Parsed
from core.message.named_for_job import asked

WITH_SALT: Final = {
    "buffer": "dose kh +1",
    "kh_up": "dose kh +1",
    "ph_up": "dose kh +1",
    "gh_up": "dose gh +1",
}
"""What the job is done with where its salts are known, as it is asked for."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """What a label must say, and what holds pH; None where a product is known or more is said."""
    if not turn.incoming.addressed or parsed.values or parsed.events:
        return None
    said = asked(turn.incoming.text, [tank.name for tank in turn.tanks])
    if said is None or any(fold(each.name) in fold(turn.incoming.text) for each in turn.products):
        return None
    facts = {"refused": "substance_unknown", "substance": said.name}
    choices = []
    if (wish := WITH_SALT.get(said.job)) is not None and turn.current_tank is not None:
        choices = [Choice(words.with_salt(said.job), "say_again", "", {"text": wish})]
    lines = words.ask_label(said.name, said.job)
    return [await turn.reply(lines, choices=choices, facts=facts)]
