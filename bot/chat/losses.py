"""Animals died: the cause that the readings show, and what nobody looked at yet."""

from __future__ import annotations

from bot.chat import emergencies
from bot.chat.words import losses as words
from core.advice.emergencies import missing
from core.advice.state import State


def lines(state: State) -> list[str]:
    """What is known to be wrong, what to measure, and what to do with the rest."""
    cause = emergencies.cause(state)
    return words.lost(cause, [each for each in missing(state) if each != "kh"])
