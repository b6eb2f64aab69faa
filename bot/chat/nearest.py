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
from core.message.first_evening import behind_greeting
from core.message.fold import fold
from core.message.gave_told import gave
from core.message.parser import parse
from core.message.restated import Restated, restated
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


async def restate(
    turn: Turn, *, of_plan: bool = False, in_doubt: bool = False
) -> list[Reply] | None:
    """Answer what a message asks in plain words, or ask whether it tells what it names.

    A deed is none before it is confirmed; beside a plan a share may be one of the dose, so that
    no deed is read into it. Where something was understood but is in doubt, its own question goes
    before, but for a wish: `kh should go to 6`.
    """
    said = turn.incoming.text
    greeted = (
        None if gave(said) is not None else behind_greeting(said)
    )  # a dose is asked about whole
    if turn.typed is not None and (rest := greeted) is not None:
        turn.incoming, turn.unheard = replace(turn.incoming, text=rest), False
        return await turn.typed(turn)
    meant = [
        each
        for each in restated(said, [tank.name for tank in turn.tanks])
        if fold(each.text) != fold(said)
        and (each.wish or not in_doubt)
        and _is_understood(turn, each)
    ]
    if not meant or (of_plan and any(each.stores for each in meant)):
        return None
    if turn.typed is not None and len(meant) == 1 and not meant[0].stores:
        turn.incoming = replace(turn.incoming, text=meant[0].text)
        return await turn.typed(turn)
    choices = [
        Choice(each.text, "say_again", "yes" if len(meant) == 1 else "", {"text": each.text})
        for each in meant
    ]
    return [await turn.reply(words.restated([each.text for each in meant]), choices=choices)]


def _is_understood(turn: Turn, each: Restated) -> bool:
    """Whether the sentence is one, so that it never comes back here."""
    parsed = parse(each.text, turn.context())
    told = bool(parsed.values or parsed.events)
    return not parsed.doubts and told is each.stores and (told or parsed.question is not None)


async def press(turn: Turn, _offer: Offer, choice: Choice) -> list[Reply]:
    """Answer a question as if it had been typed; nothing is stored, so it may be asked again."""
    turn.incoming = replace(turn.incoming, text=choice.arguments["text"], kind="message")
    return [] if turn.typed is None else await turn.typed(turn)
