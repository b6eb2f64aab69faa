"""A message that nothing understood is asked back by what it names: `i have some crushed coral`.

The questions are offered as buttons and stand beside the talk: what was spoken of before stays so.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat.model import Reply
from bot.chat.tank_volumes import ask_of_other
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import nearest as words
from bot.store.offers import BESIDE, Choice, Offer
from core.message.themes import themes

SHOWN: Final = 3
"""Questions that are offered; ours."""


async def answer(turn: Turn) -> Reply:
    """Offer what can be told of the things that a message names, or say what to send.

    One other volume than the tank in use has on record is asked about: `its 60 l not 100`.
    """
    tank = turn.current_tank
    if (question := await ask_of_other(turn)) is not None:
        return question
    asked = [each for about in themes(turn.incoming.text) for each in words.asked(about)]
    if not asked:
        named = tank.name if tank is not None and tank.tank.named else None
        return await turn.reply(general.hint(named))
    if tank is not None:
        asked = [*asked[: SHOWN - 1], words.how_it_is()]
    choices = [Choice(each, "ask", "", {"text": each}) for each in asked[:SHOWN]]
    return await turn.reply(words.hint(), choices=choices, expects=BESIDE)


async def press(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Answer a question as if it had been typed; nothing is stored, so it may be asked again."""
    turn.incoming = replace(turn.incoming, text=choice.arguments["text"], kind="message")
    return [] if turn.typed is None else await turn.typed(turn)
