"""``my corys lie still at night``: how fish of the bottom rest, where nothing else is told.

With any other word, any other fish, by day, or while something is wrong, it stays a call for help.
"""

from __future__ import annotations

from bot.chat import what_now
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import resting as words
from core.message.model import Parsed
from core.message.word_classes import said

FILE = "resting.txt"


async def answer(turn: Turn, parsed: Parsed) -> Reply | None:
    """Say calmly what tells rest from need; None for anything else."""
    told = parsed.values or parsed.events or parsed.command is not None
    if told or not turn.incoming.addressed or not rests(turn.incoming.text):
        return None
    stored = turn.current_tank
    if stored is not None and (await what_now.danger_in(turn, stored))[0] is not None:
        return None
    return await turn.reply(words.at_night(), facts={} if stored is None else {"tank": stored.name})


def rests(text: str) -> bool:
    """Whether a text tells of fish of the bottom that lie still at night, and nothing else.

    Examples
    --------
    >>> rests("my corys are lying still on the bottom at night"), rests("corys lying still")
    (True, False)
    >>> rests("loaches lie on their side at night"), rests("corys lie on their side at night")
    (True, False)
    >>> rests("my guppies lie still at night"), rests("corys lie still at night and gasp")
    (False, False)
    """
    told = said(FILE, text)
    if told is None or told.numbers or not told.has("still", "night"):
        return False
    return told.has("loach") or (told.has("bottom") and not told.has("side"))
