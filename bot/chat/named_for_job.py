"""A product that is called by its job is asked for: its label is asked, and no number given."""

from __future__ import annotations

from typing import Final

from bot.chat.model import Reply
from bot.chat.turn import WAITS, Turn
from bot.chat.words import named_for_job as words
from bot.store.offers import Choice
from core.message import raise_asked
from core.message.fold import fold
from core.message.model import Parsed
from core.message.named_for_job import asked, volume_in

WITH_SALT: Final = {
    "buffer": "dose kh +1",
    "kh_up": "dose kh +1",
    "ph_up": "dose kh +1",
    "gh_up": "dose gh +1",
}
"""What the job is done with where its salts are known, as it is asked for."""


OF_KH: Final = frozenset({"buffer", "kh_up"})
"""Jobs that baking soda does, to a value that is told next."""

SODA: Final = "how much baking soda"


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """What a label must say, and what holds pH; None where a product is known or more is said."""
    if not turn.incoming.addressed or parsed.values or parsed.events:
        return None
    if raise_asked.needs_buffer(turn.incoming.text):
        return None  # of its KH, whatever that is raised with
    said = asked(turn.incoming.text, [tank.name for tank in turn.tanks])
    if said is None or any(fold(each.name) in fold(turn.incoming.text) for each in turn.products):
        return None
    facts = {"refused": "substance_unknown", "substance": said.name}
    choices = []
    if (wish := WITH_SALT.get(said.job)) is not None and turn.current_tank is not None:
        choices = [Choice(words.with_salt(said.job), "say_again", "", {"text": wish})]
    lines = words.ask_label(said.name, said.job)
    context = {}
    if said.job in OF_KH:  # bicarb, to 5: so it is asked for with baking soda
        volume = volume_in(turn.incoming.text, turn.chat.us_gallons)
        changes = {} if volume is None else {"volume_l": volume}
        turn.asked, context = {"text": SODA, "changes": changes}, {WAITS: ["target"]}
    return [await turn.reply(lines, choices=choices, facts=facts, context=context)]
