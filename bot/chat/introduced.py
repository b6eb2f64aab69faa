"""A tank told together with what is in it: `tank fern 90 l, 6 guppies, kh 4`.

The message is parted where the longest beginning tells of a tank and all that follows is animals
in it, or is read as any message is; where it cannot be parted so, nothing here is answered.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from bot.chat import readings, tank_words, tanks, tanks_told
from bot.chat.model import Reply
from bot.chat.turn import Turn
from core.advice.asked_company import ASKING
from core.advice.inhabitants import listed_in
from core.advice.livestock import plain_name
from core.message import parse
from core.message.model import Event, Parsed

LONGEST: Final = 40
"""More words than these introduce no tank."""


@dataclass(frozen=True, slots=True)
class _Introduced:
    """The words of a tank, and what else was told of it."""

    head: str
    rest: Parsed


async def told(turn: Turn) -> list[Reply] | None:
    """Make or change the tank, and keep what lives and was measured in it; None for other talk."""
    if turn.incoming.group or (said := _introduced(turn)) is None:
        return None
    whole, told_first = turn.incoming, parse(said.head, turn.context())
    turn.incoming = replace(whole, text=said.head)
    if told_first.command is not None:
        made = await tanks.command(turn, told_first.command, told_first)
    else:
        made = await tanks_told.told(turn, told_first) or []
    turn.incoming = whole
    stored = turn.tank_named(made[0].facts.get("tank", "")) if made else None
    if stored is None:
        return made
    return [*made, *await readings.keep(turn, said.rest, stored)]


def _introduced(turn: Turn) -> _Introduced | None:
    text = turn.incoming.text
    words = text.split()
    if len(words) > LONGEST or "?" in text or not any(map(str.isdigit, text)):
        return None
    if not any(tank_words.plain(word) in tank_words.TANK_WORDS for word in words):
        return None
    for cut in range(len(words) - 1, 1, -1):
        head = " ".join(words[:cut]).rstrip(",;.:")
        if _tells_of_tank(turn, head) and (rest := _rest(turn, words[cut:])) is not None:
            return _Introduced(head, rest)
    return None


def _tells_of_tank(turn: Turn, head: str) -> bool:
    told_first = parse(head, turn.context())
    if (command := told_first.command) is not None:
        verb, _space, line = command.arguments.partition(" ")
        return command.name == "tank" and verb == "new" and _has_volume(turn, line)
    if (named := tank_words.named(head)) is not None:
        return _has_volume(turn, named)
    owned = tank_words.own(head, us_gallons=turn.chat.us_gallons)
    return owned is not None and told_first.question is None


def _has_volume(turn: Turn, line: str) -> bool:
    said = tank_words.describe(line, us_gallons=turn.chat.us_gallons)
    return not said.rest and (said.volume_l is not None or said.box is not None)


def _rest(turn: Turn, words: list[str]) -> Parsed | None:
    """What follows a tank: animals as a list, what else is told, or both; None for other words.

    Where it can be parted in several ways, the first that leaves nothing doubtful.
    """
    found = [rest for parts in _parted(words) if (rest := _read(turn, *parts)) is not None]
    return next((rest for rest in found if not rest.doubts), found[0] if found else None)


def _read(turn: Turn, animals: str, other: str) -> Parsed | None:
    listed = None if _asks(animals) else listed_in(animals)
    told = parse(other, turn.context()) if other else Parsed("none")
    if (listed is None) == bool(animals) or told.question is not None or told.command is not None:
        return None
    doubted = any(doubt.value is not None for doubt in told.doubts)
    if other and not (told.values or told.events or doubted):
        return None
    kinds = listed.kinds if listed is not None else ()
    came = [Event("added", count=each.many, species=each.said) for each in kinds]
    return replace(told, intent="event", events=(*told.events, *came))


def _asks(text: str) -> bool:
    return not ASKING.isdisjoint(plain_name(text).split())


def _parted(words: list[str]) -> Iterator[tuple[str, str]]:
    """Each way to part words in two, either part first."""
    for cut in range(len(words), -1, -1):
        yield " ".join(words[:cut]), " ".join(words[cut:])
        yield " ".join(words[cut:]), " ".join(words[:cut])
