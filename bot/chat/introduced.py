"""A tank told together with what is in it: `tank fern 90 l, 6 guppies, kh 4`.

The message is parted where the longest beginning tells of a tank and all that follows is animals
in it, or is read as any message is. Where it cannot be parted so, the tank's volume, name and kind
are taken out of the sentence, and what is left must be such (`bot.chat.free_tank`).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from bot.chat import free_tank, inhabitants, readings, tank_words, tanks, tanks_told
from bot.chat.asked_behind import moved_behind
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import tanks as words
from core.advice.asked_company import ASKING
from core.advice.livestock import plain_name
from core.advice.loose_lists import animals_in, clauses_of, counted
from core.advice.tank_by_kind import place
from core.message import parse
from core.message.asking_words import asks
from core.message.doubts import WISH
from core.message.model import Event, Parsed
from core.message.place_by_kind import is_place

_CLAUSES: Final = re.compile(r"[,;.!](?=\s)|\n")

LONGEST: Final = 40
"""More words than these introduce no tank."""


@dataclass(frozen=True, slots=True)
class _Introduced:
    """The words of a tank, and what else was told of it."""

    head: str
    rest: Parsed
    left: tuple[str, ...] = ()
    """What nobody understood of it."""
    said: str = ""
    """The words behind it, where they are to be read as a message of their own."""


async def told(turn: Turn) -> list[Reply] | None:
    """Make or change the tank, and keep what lives and was measured in it; None for other talk."""
    said = None if turn.incoming.group else _introduced(turn) or _freely(turn) or _asked(turn)
    if said is None:
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
    if said.said:
        turn.incoming = replace(whole, text=said.said)
        return [*made, *await turn.typed(turn)] if turn.typed is not None else made
    kept = await readings.keep(turn, said.rest, stored)
    if said.left:
        kept.append(await turn.reply(words.told_apart(list(said.left))))
    return [*made, *kept]


def reads_whole(turn: Turn) -> bool:
    """Whether all of a message is read here, with nothing left that nobody understood."""
    said = _introduced(turn) or _freely(turn)
    return said is not None and not said.left


def _introduced(turn: Turn) -> _Introduced | None:
    text = turn.incoming.text
    if not _may_introduce(text):
        return None
    said = text.split()
    for cut in range(len(said) - 1, 1, -1):
        head = " ".join(said[:cut]).rstrip(",;.:")
        if _tells_of_tank(turn, head) and (rest := _rest(turn, said[cut:])) is not None:
            wishes = any(doubt.reason == WISH for doubt in rest.doubts) and not rest.events
            behind = " ".join(said[cut:])
            wishes = wishes or (bool(rest.values) and moved_behind(behind, rest) is not None)
            return _Introduced(head, rest, said=behind if wishes else "")
    return None


def _asked(turn: Turn) -> _Introduced | None:
    """`i have a 180 litre tank, kh is 3. how much soda for kh 6?`: the tank, then what is asked."""
    text = turn.incoming.text
    if len(text.split()) > LONGEST or turn.typed is None:
        return None
    for mark in _CLAUSES.finditer(text):
        head, rest = text[: mark.start()].strip(), text[mark.end() :].strip()
        if "?" in head or not _may_introduce(head) or not _tells_of_tank(turn, head):
            continue
        if parse(head, turn.context()).values or not rest:
            return None
        return _Introduced(head, Parsed("none"), said=rest) if asks(rest) or "?" in rest else None
    return None


def _may_introduce(text: str) -> bool:
    """Whether a text has a number and a word for a tank: the cheapest look at it."""
    said = text.split()
    if len(said) > LONGEST or "?" in text or not any(map(str.isdigit, text)):
        return False
    return any(tank_words.plain(word) in tank_words.NOUNS for word in said)


def _freely(turn: Turn) -> _Introduced | None:
    """`we have 2 goldfish in a 30 gallon tank`: the tank's own words taken out of a sentence."""
    text = turn.incoming.text
    if not _may_introduce(text) or _tells_of_tank(turn, text):
        return None
    tank = free_tank.read(text, us_gallons=turn.chat.us_gallons)
    if tank is None or (tank.name is None and turn.tanks and turn.tanks[0].tank.named):
        return None  # which of the tanks on record it is stays open
    return _by_clause(turn, tank)


def _by_clause(turn: Turn, tank: free_tank.FreeTank) -> _Introduced | None:
    """Each clause by itself: an animal, readings, or what is told back as not understood."""
    rest, left = Parsed("event"), []
    for clause in clauses_of(tank.rest):
        read = parse(clause, turn.context())
        if read.question is not None or read.command is not None:
            return None
        if (kind := None if _asks(clause) else counted(clause)) is not None:
            came = Event("added", count=kind.many, species=kind.said)
            rest = replace(rest, events=(*rest.events, came))
        elif read.values and not read.doubts:
            rest = replace(rest, values=(*rest.values, *read.values))
        elif not free_tank.is_light(clause):
            left.append(clause)
    return _Introduced(tank.line, rest, tuple(left)) if rest.values or rest.events else None


async def listed_loosely(turn: Turn) -> list[Reply] | None:
    """`10 neons, 20 neocaridina shrimps` alone: asked about as any list is."""
    text = turn.incoming.text
    if not turn.incoming.addressed or "?" in text or _asks(text) or animals_in(text) is None:
        return None
    whole = turn.incoming
    turn.incoming = replace(whole, text=_plainly(text))
    living = await inhabitants.told(turn)
    turn.incoming = whole
    return living


async def beside(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Animals told beside readings: the readings are kept, and whether they live there is asked."""
    if turn.incoming.group or not parsed.doubts or parsed.question is not None:
        return None
    said = turn.incoming.text.split()
    if len(said) > LONGEST:
        return None
    for animals, other in _parted(said):
        if not animals or not other or _asks(animals) or animals_in(animals) is None:
            continue
        if is_place(animals):
            continue
        told_beside = parse(other, turn.context())
        if told_beside.values and not (told_beside.doubts or told_beside.question):
            kept = await readings.keep(turn, told_beside)
            called = place(turn.incoming.text)
            if called is not None and called.is_tank:
                return kept  # the shrimp one in the kitchen, kh 3: where it was measured
            whole = turn.incoming
            turn.incoming = replace(whole, text=_plainly(animals))
            living = await inhabitants.told(turn) or []
            turn.incoming = whole
            return [*kept, *living]
    return None


def _plainly(text: str) -> str:
    """A list of animals as `inhabitants` reads it."""
    return ", ".join(f"{each.many} {each.said}" for each in animals_in(text) or ())


def _tells_of_tank(turn: Turn, head: str) -> bool:
    told_first = parse(head, turn.context())
    if (command := told_first.command) is not None:
        verb, _space, line = command.arguments.partition(" ")
        return command.name == "tank" and verb == "new" and _has_volume(turn, line)
    if (named := tank_words.named(head)) is not None:
        return _has_volume(turn, named)
    owned = tank_words.own(head, us_gallons=turn.chat.us_gallons)
    if owned is None or told_first.question is not None or free_tank.is_anothers(head):
        return False
    held = turn.tanks[0].tank if turn.tanks else None  # a named one of another volume is another
    return held is None or not held.named or held.volume_l in {None, owned.volume_l}


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
    kinds = None if not animals or _asks(animals) else animals_in(animals)
    told = parse(other, turn.context()) if other else Parsed("none")
    if (kinds is None) == bool(animals) or told.question is not None or told.command is not None:
        return None
    doubted = any(doubt.value is not None for doubt in told.doubts)
    if other and not (told.values or told.events or doubted):
        return None
    came = [Event("added", count=each.many, species=each.said) for each in kinds or ()]
    return replace(told, intent="event", events=(*told.events, *came))


def _asks(text: str) -> bool:
    return not ASKING.isdisjoint(plain_name(text).split())


def _parted(words: list[str]) -> Iterator[tuple[str, str]]:
    """Each way to part words in two, either part first."""
    for cut in range(len(words), -1, -1):
        yield " ".join(words[:cut]), " ".join(words[cut:])
        yield " ".join(words[cut:]), " ".join(words[:cut])
