"""``how much hot water for 30 l at 25 from 12 and 55``: matching the new water's warmth."""

from __future__ import annotations

import re
from typing import Final

from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import warming as words
from core.advice.warming import hot_water
from core.message.amounts import volume_litres

_NUMBER: Final = r"(\d{1,4}(?:[.,]\d{1,2})?)"
_DEGREE: Final = r"\s{0,2}(?:°|deg(?:rees)?)?\s{0,2}([cf])?\b"
_ASKED: Final = re.compile(r"\bhow much\b.{0,20}\bhot\b", re.IGNORECASE)
_LITRES: Final = re.compile(
    _NUMBER + r"\s{0,2}(l|litres?|liters?|gal|gallons?|uk gal)\b", re.IGNORECASE
)
_WANTED: Final = re.compile(r"\b(?:at|to|of)\s+" + _NUMBER + _DEGREE, re.IGNORECASE)
_AND: Final = r"\s*(?:and|&|,|\+)\s*(?:hot\s+)?"
_BOTH: Final = re.compile(
    r"\b(?:from|with|mixing)\s+(?:cold\s+)?" + _NUMBER + _DEGREE + _AND + _NUMBER + _DEGREE,
    re.IGNORECASE,
)


async def answer(turn: Turn) -> list[Reply] | None:
    """How much hot water a mix needs; None where a message asks for no such thing."""
    text = turn.incoming.text
    if _ASKED.search(text) is None:
        return None
    both, amount = _BOTH.search(text), _LITRES.search(text)
    before = text if both is None else text[: both.start()]
    told = (each for each in _WANTED.finditer(before) if not _LITRES.match(before, each.start(1)))
    wanted = next(told, None)
    litres = None
    if amount is not None:
        litres = volume_litres(amount[0].replace(",", "."), us_gallons=turn.chat.us_gallons)
    if both is None or wanted is None or litres is None:
        return [await turn.reply(words.how())]
    fahrenheit = turn.chat.fahrenheit
    target = _celsius(wanted[1], wanted[2], fahrenheit)
    cold, hot = sorted(
        (_celsius(both[1], both[2], fahrenheit), _celsius(both[3], both[4], fahrenheit))
    )
    needed = hot_water(litres, target, cold, hot)
    if needed is None:
        return [await turn.reply(words.impossible(target, cold, hot))]
    facts = {"litres": litres, "temperature": target, "hot_litres": needed}
    return [await turn.reply(words.mix(litres, target, needed, hot), facts=facts)]


def _celsius(number: str, unit: str | None, fahrenheit: bool) -> float:
    value = float(number.replace(",", "."))
    if unit is None:
        unit = "f" if fahrenheit else "c"
    return value if unit.casefold() == "c" else (value - 32.0) / 1.8
