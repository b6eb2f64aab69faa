"""A call for help that also says how much water it is: `got zapped at the tank, 100 l`.

The call is answered first, and the tank that the message tells of is made as well, so that the call
stands in it: nobody sends the litres of a tank twice while its animals die.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Final

from bot.chat import calls, emergencies, free_tank, introducing, tank_words, tanks_told
from bot.chat.introduction_read import told_in
from bot.chat.model import Reply
from bot.chat.turn import Turn
from core.advice.alarm_words import named
from core.advice.calls import OF_PEOPLE, asks, distressed, recognise
from core.advice.inhabitants import is_animal
from core.advice.livestock import lookup
from core.advice.loose_lists import animals_in
from core.message import parse
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Parsed
from core.message.tokens import cut

NEAR: Final = 3
"""Words beside litres within which they are told to be a tank's."""

_PARTS: Final = re.compile(r"[,;\n]\s|[.!]\s")

_OF: Final = frozenset({"of", "von", "de", "d", "di", "van", "av"})
"""Words between litres and what they are of."""


@dataclass(frozen=True, slots=True)
class _Said:
    """The litres of a tank, its kind, and the part of the message that tells of both."""

    volume_l: float
    kind: str
    part: str


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer the call, then what the message tells of the tank; None where it is not both."""
    text = turn.incoming.text
    asks_it = parsed.question is not None and ("?" in text or asks(text))
    if turn.incoming.group or asks_it or turn.route is None:
        return None
    if calls.danger_of(turn, parsed) is None:
        return None
    said = _tank_in(text, us_gallons=turn.chat.us_gallons)
    if said is None:
        is_command = parsed.command is not None
        return None if is_command or not told_in(turn).homes else await turn.route(turn, parsed)
    whole = turn.incoming
    told = await _made(turn, said)
    turn.incoming = whole if not told else replace(whole, update_id=f"{whole.update_id}:call")
    parsed = parse(text, turn.context())
    danger = calls.danger_of(turn, parsed)
    if danger is not None and danger not in OF_PEOPLE and _is_open(turn, said):
        await emergencies.remember(turn, None, danger, said=text)  # of whichever tank it is
    if parsed.command is None:
        steps = await turn.route(turn, parsed)
    else:
        steps = [await emergencies.answer(turn, replace(parsed, command=None))]
    turn.incoming = whole
    return [*steps, *told]


async def _made(turn: Turn, said: _Said) -> list[Reply]:
    """The tank put on record, or used, or asked about where others are; nothing to say: none."""
    same = [each for each in turn.tanks if each.tank.volume_l == said.volume_l]
    if len(same) == 1:
        await turn.use_tank(same[0])
        return []
    if any(each.tank.volume_l is not None for each in turn.tanks):
        return await introducing.told(turn, Parsed("none")) or []
    whole = turn.incoming
    calm = said.part != whole.text and recognise(said.part) is None and not distressed(said.part)
    if calm and turn.typed is not None:
        others = (part for part in _PARTS.split(whole.text) if part.strip() != said.part)
        living = (part for part in others if animals_in(part) is not None)
        turn.incoming = replace(whole, text=", ".join([said.part, *living]))
        made = await turn.typed(turn)
        if turn.tanks:
            return made
    line = f"my tank is {said.volume_l:.4g} l {said.kind}".strip()
    turn.incoming = replace(whole, text=line)
    return await tanks_told.told(turn, parse(line, turn.context())) or []


def _is_open(turn: Turn, said: _Said) -> bool:
    """Whether it is asked yet which tank the litres are of."""
    return all(each.tank.volume_l != said.volume_l for each in turn.tanks)


def _tank_in(text: str, *, us_gallons: bool) -> _Said | None:
    """The one volume of a message, where it is a tank's; None where it is of a deed or unsure."""
    found: list[_Said] = []
    for part in _PARTS.split(text):
        words = part.split()
        for (start, end), volume in free_tank.volumes_in(words, us_gallons=us_gallons):
            head = " ".join(words[:end])
            named = tank_words.named(head) is not None
            found.append(_Said(volume, _kind(words), head if named else part.strip()))
            if not _of_tank(words, start, end):
                return None
    return found[0] if len(found) == 1 else None


def _kind(words: list[str]) -> str:
    """The word for the kind of a tank, where one is told."""
    plain = (tank_words.plain(word) for word in words)
    kinds = {*tank_words.KIND_WORDS, *tank_words.POND_WORDS}
    return next((word for word in plain if word in kinds and word != "salt"), "")


def _of_tank(words: list[str], start: int, end: int) -> bool:
    """Whether litres begin a part of a message, or stand near a word for a tank or an animal.

    Beside a deed or a substance they are of that: changed 20 l, 5 l of bleach.
    """
    before, behind = " ".join(words[max(0, start - 2) : start]), " ".join(words[end : end + 2])
    beside = [*cut(fold(before), lexicon(), before), *cut(fold(behind), lexicon(), behind)]
    if any(token.kind in {"event", "substance"} for token in beside) or named(behind).get("deed"):
        return False
    if fold(behind).split(" ")[0] in _OF:
        return False
    if start == 0:
        return True
    near = [*words[max(0, start - NEAR) : start], *words[end : end + NEAR]]
    if free_tank.is_anothers(" ".join(near)):
        return False
    plain = [tank_words.plain(word) for word in near]
    known = tank_words.NOUNS | {*tank_words.KIND_WORDS} - {"salt"}
    return any(word in known or is_animal(lookup(word)) for word in plain)
