"""`betta nitrite 0.1`, `the shrimp tank has kh 4`: a tank called by its animals is found by them.

Where none or several have them it is asked which is meant; nothing goes to the tank in use.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat import calls, held, other_tank
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.store.tanks import StoredTank
from core.advice.livestock import lookup
from core.advice.stock import all_meant
from core.advice.tank_by_kind import Place, place
from core.message import parse
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Parsed
from core.message.right_pieces import says_nothing
from core.message.tank_asked import tank_asked

LONGEST: Final = 200
"""Longer texts tell more than of one tank. [characters]"""

_SIGNS: Final = " ,:;-–—."
_IS: Final = ("mark", "link")


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Read the message of the tank that has the animals; None where it names none by them."""
    said = turn.incoming
    if not said.addressed or len(turn.tanks) < 2:
        return None
    if (alone := await _alone(turn)) is not None or parsed.command is not None:
        return alone
    told = parsed.values or parsed.events or parsed.question is not None
    if (told and parsed.tank is not None) or len(said.text) > LONGEST or turn.route is None:
        return None  # is the shrimp tank ok: Shrimps is named, and nothing was read of it
    named = [*(each.tank for each in parsed.values), *(each.tank for each in parsed.events)]
    if any(named) or calls.is_danger(turn, parsed):
        return None
    found = place(said.text)
    called = None if found is None else turn.tank_named(found.kind)
    if found is None or (called is not None and not found.is_tank):
        return None
    if (of_any := _of(turn, found, turn.tanks[0].name)) is None:
        return None
    tanks = await _homes(turn, found.kind) if called is None else [called]
    if not tanks and not found.is_tank:
        return None
    if len(tanks) != 1:
        return await other_tank.ask(turn, found.start, found.end)
    meant = of_any if tanks[0] is turn.tanks[0] else _of(turn, found, tanks[0].name)
    if meant is None:
        return None
    text, read = meant
    await turn.use_tank(tanks[0])
    turn.incoming = replace(said, text=text)
    return await turn.route(turn, read)


async def _alone(turn: Turn) -> list[Reply] | None:
    """`no i meant the shrimp one`: read again with the name of the one tank that has them."""
    text = turn.incoming.text
    found = place(text) if len(text) <= LONGEST and "?" not in text else None
    if found is None or not found.is_tank or turn.typed is None:
        return None
    rest = f"{text[: found.start]} {text[found.end :]}"
    if rest.strip(_SIGNS) and not says_nothing(rest):
        return None
    tanks = await _homes(turn, found.kind)
    if len(tanks) != 1:
        return await other_tank.ask(turn, found.start, found.end)
    lead, name = text[: found.start].strip(_SIGNS), tanks[0].name
    turn.incoming = replace(turn.incoming, text=f"{lead} {name}" if lead else f"the {name}")
    return await turn.typed(turn)


def _of(turn: Turn, found: Place, name: str) -> tuple[str, Parsed] | None:
    """The message with a tank's name in the place; None where so it tells or asks nothing sure."""
    text = turn.incoming.text
    before, behind = text[: found.start].strip(_SIGNS), text[found.end :].strip(_SIGNS)
    if found.is_tank:
        line = f"{text[: found.start]}{name}{text[found.end :]}"
        read = parse(line, turn.context())
        whole = tank_asked(f"{text[: found.start]}tank{text[found.end :]}")
        told = read.values or read.events or (read.question and read.question.tank) or whole
        return (line, read) if told and not read.doubts else None
    rest = before or _told(behind)
    if (before and behind) or "?" in text:
        return None
    alone = parse(rest, turn.context())
    if not alone.values or alone.events or alone.doubts or alone.question or alone.command:
        return None
    line = f"{name}: {rest}"
    return line, parse(line, turn.context())


def _told(behind: str) -> str:
    """What stands behind the animals, without the word that says it of them: `is kh 8`, `'s kh`."""
    rest = behind.removeprefix("'s ").removeprefix("’s ")
    first, _space, others = rest.partition(" ")
    return others if others and lexicon().words.get(fold(first)) == _IS else rest


async def _homes(turn: Turn, kind: str) -> list[StoredTank]:
    """The tanks that have such animals on record."""
    by_name: list[StoredTank] = []
    by_kind: list[StoredTank] = []
    wanted = _rows(kind)
    for tank in turn.tanks:
        stock = {name: many or 1 for name, many in (await held.held_in(turn, tank)).items()}
        if all_meant(stock, kind):
            by_name.append(tank)
        elif any(wanted & _rows(name) for name in stock):
            by_kind.append(tank)
    return by_name or by_kind


def _rows(said: str) -> frozenset[str]:
    """The kinds that a word means, by their scientific names; several that share it are all."""
    found = lookup(said)
    rows = (found.species,) if found.species is not None else found.candidates
    return frozenset(row.scientific for row in rows if found.species is not None or found.shared)
