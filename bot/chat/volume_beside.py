"""How much water it is, told beside the first readings without a word for the tank.

`60 l kh 2 ph 6.8`, `kh 3 want 5, 90 l`: the tank gets its volume, and the rest is answered as if it
had been typed alone.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from bot.chat import free_tank, tank_words, tanks_told
from bot.chat.model import Reply
from bot.chat.turn import Turn
from core.message import doubts, parse, plain_tail, signs
from core.message.how_full import left_beside
from core.message.model import Parsed
from core.message.volume_casually import casually

LEAST: Final = 5.0
"""Less water beside readings is a jug or a vial more often than a tank; ours. [L]"""

_OF_WATER: Final = frozenset({"change", "keep", "why", "when", "safe"})
"""Questions whose answer rests on what was measured, not on litres that they name."""
_NOT_NOW: Final = frozenset({doubts.WISH, doubts.PAST})
"""Doubts of what is said beside the readings, and is none of now."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Set the volume of a chat's first tank and answer the rest; None where it tells no such."""
    known = any(each.tank.volume_l is not None for each in turn.tanks)
    asked = parsed.question.kind in _OF_WATER if parsed.question is not None else parsed.doubts
    told = asked and not (parsed.events or parsed.command)
    if known or not told or turn.incoming.group or turn.typed is None:
        return None
    text, behind = plain_tail.parted(turn.incoming.text) or (turn.incoming.text, "")
    if parsed.question is not None and not behind:
        return None
    tank = free_tank.read(text, us_gallons=turn.chat.us_gallons, nouns=0)
    if tank is None or tank.volume_l < LEAST:
        return None
    if tank_words.plain(tank.rest.split(" ")[0].strip(" ,;.")) in tank_words.NOUNS:
        return None  # 60 l nano, ph 7: told with a word for the tank
    both = replace(tank, rest=f"{tank.rest} {behind}".strip())
    if _is_clear(rest := parse(both.rest, turn.context())) and (rest.values or behind):
        return await _apart(turn, both)
    rest = parse(tank.rest, turn.context())
    if not (behind and rest.values and _is_clear(rest)):
        return None
    replies = await _apart(turn, tank)  # `betta kh 3`, and then `does it need buffer`
    turn.incoming = replace(turn.incoming, text=behind)
    return None if replies is None else [*replies, *await turn.typed(turn)]


def _is_clear(rest: Parsed) -> bool:
    return not {each.reason for each in rest.doubts} - _NOT_NOW


async def beside_sign(turn: Turn, _parsed: Parsed) -> list[Reply] | None:
    """Set the volume of a chat's first tank that is told with a sight: `60 l, water is yellow`."""
    known = any(each.tank.volume_l is not None for each in turn.tanks)
    if (
        known
        or turn.incoming.group
        or turn.typed is None
        or _DIGIT.search(turn.incoming.text) is None
    ):
        return None
    for nouns in (0, 1):
        tank = free_tank.read(turn.incoming.text, us_gallons=turn.chat.us_gallons, nouns=nouns)
        if tank is not None and tank.volume_l >= LEAST and signs.seen(tank.beside):
            return await _apart(turn, replace(tank, rest=tank.beside))
    return None


async def casually_told(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """`its a 240 l`, `20l no heater`: answered as the volume alone."""
    told = parsed.values or parsed.events or parsed.question or parsed.command
    if told or turn.incoming.group or turn.typed is None or len(turn.tanks) > 1:
        return None
    text, us_gallons = turn.incoming.text, turn.chat.us_gallons
    alone = casually(text, us_gallons=us_gallons)
    known = any(each.tank.volume_l is not None for each in turn.tanks)
    if alone is None and not known and (left := left_beside(text)) is not None:
        alone = f"tank {left:g} l"
    if alone is None or tank_words.own(text, us_gallons=us_gallons) is not None:
        return None  # the tank is 40 l: told for sure
    turn.incoming = replace(turn.incoming, text=alone)
    return await turn.typed(turn)


_DIGIT: Final = re.compile(r"\d")


async def _apart(turn: Turn, tank: free_tank.FreeTank) -> list[Reply] | None:
    whole = turn.incoming
    assert turn.typed is not None  # noqa: S101 - narrows for the type checker
    turn.incoming = replace(whole, text=tank.line)
    made = await tanks_told.told(turn, parse(tank.line, turn.context()))
    turn.incoming = replace(whole, text=tank.rest)
    return None if made is None else [*made, *await turn.typed(turn)]
