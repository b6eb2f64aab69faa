"""Whether the tap water that was just told of may have gone in with its chlorine."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.told import Told
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from core.advice.alarm_words import named
from core.advice.findings import Finding


async def without_treated(turn: Turn, told: Told, found: Sequence[Finding]) -> list[Finding]:
    """The findings, without the question after chlorine where the keeper has answered it.

    A dechlorinator that the message names answers it, and so does a source on record that holds
    no chlorine: by its reading, or because no supplier treats it.
    """
    if all(each.id != "tap_in" for each in found):
        return list(found)
    if "dechlorinated" in named(turn.incoming.text).get("deed", ()):
        return [each for each in found if each.id != "tap_in"]
    waters = await Waters.of(turn)
    for event in told.events:
        source = waters.named(event.what.substance or "")
        if source is not None and not (await waters.supply(source)).treated:
            return [each for each in found if each.id != "tap_in"]
    return list(found)
