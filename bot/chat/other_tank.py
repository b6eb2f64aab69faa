"""`how much soda for the big tank`: a tank told without its name that is none for certain is asked.

Till then no reading, volume or deed goes to the tank in use, and no dose is of its water.
"""

from __future__ import annotations

from typing import Final

from bot.chat import calls, tank_words
from bot.chat.introduction_read import by_name, has_volume
from bot.chat.model import Reply
from bot.chat.patience import PATIENCE
from bot.chat.turn import Turn
from bot.chat.words import other_tank as words
from bot.store.offers import Choice
from core.message.doubts import UNKNOWN_TANK, UNSURE_EVENT
from core.message.model import Parsed
from core.message.other_tank import theirs, unknown
from core.message.plan_words import telling
from core.message.volume_said import volume_alone, volume_told

ASKED: Final = "asked_tank"
"""Of an offer: that it asks which tank was told without its name."""

SHOWN: Final = 6
"""Tanks that are offered as buttons."""

OF_A_TANK: Final = frozenset({"dose", "effect", "change", "keep", "safe", "history", "why"})
"""Kinds of questions that are answered from a tank's water."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Ask which tank is meant; None where the message tells none, or calls for help."""
    if not turn.incoming.addressed or parsed.command is not None:
        return None
    if not turn.tanks and theirs(turn.incoming.text) is None:
        return None
    if (again := await _volume(turn)) is not None:
        return again
    text = turn.incoming.text
    if by_name(turn, text):
        return None  # left tank 60 l: it is told
    if telling(text) is not None:
        return None  # can i do the second now: a part of a plan
    place = unknown(text, turn.context()) if _is_of_tank(turn, parsed) else None
    if place is not None and _is_the_only(turn, place):
        return None  # my reef is 200 l: of a tank of which nothing else is known
    if place is None or calls.is_danger(turn, parsed) or calls.goes_first(turn, parsed):
        return None
    return await ask(turn, *place)


async def ask(turn: Turn, start: int, end: int) -> list[Reply]:
    """Ask which tank the words from `start` to `end` of the message mean."""
    text = turn.incoming.text
    said = text[start:end]
    choices = [
        Choice(tank.name, "say_again", "", {"text": f"{text[:start]}{tank.name}{text[end:]}"})
        for tank in turn.tanks[:SHOWN]
    ]
    choices.append(Choice(words.another(), "leave_out", "no"))
    lines = words.which(said, [tank.name for tank in turn.tanks])
    facts = {"ask": "tank", "said": said}
    return [await turn.reply(lines, choices=choices, facts=facts, context={ASKED: said})]


def _is_the_only(turn: Turn, place: tuple[int, int]) -> bool:
    """Whether so much water is told of the one tank without a name, whose volume is not known."""
    text = turn.incoming.text
    own = tank_words.own(text, us_gallons=turn.chat.us_gallons)
    if own is None or own.volume_l is None or len(turn.tanks) != 1 or theirs(text) == place:
        return False
    held = turn.tanks[0].tank
    return not held.named and held.volume_l in {None, own.volume_l}


def _is_of_tank(turn: Turn, parsed: Parsed) -> bool:
    """Whether something is told or asked that rests on a tank's water."""
    if parsed.question is not None:
        return parsed.question.kind in OF_A_TANK
    if any(doubt.reason == UNKNOWN_TANK for doubt in parsed.doubts):
        return False  # it is asked about by itself, and may be added as it is told
    if parsed.values or parsed.events:
        return True
    if any(doubt.reason == UNSURE_EVENT or doubt.value is not None for doubt in parsed.doubts):
        return True
    text, us_gallons = turn.incoming.text, turn.chat.us_gallons
    own = tank_words.own(text, us_gallons=us_gallons)
    sized = own is not None and (own.volume_l is not None or own.box is not None)
    sized = sized or (theirs(text) is not None and has_volume(text))
    return sized or volume_told(text, us_gallons) is not None


async def _volume(turn: Turn) -> list[Reply] | None:
    """`200 l` right after it was asked: of the tank without a name, not of the one in use."""
    newest = await turn.uow.offers.latest(turn.chat.id, 1)
    if not newest or ASKED not in newest[0].context or turn.now - newest[0].made_at > PATIENCE:
        return None
    volume = volume_alone(turn.incoming.text, turn.chat.us_gallons)
    if volume is None:
        return None
    held = {ASKED: newest[0].context[ASKED]}
    facts = {"ask": "tank", "volume_l": volume}
    return [await turn.reply(words.name_it(volume), facts=facts, context=held)]
