"""Who lives in a tank: told as a list, which is asked about, and shown."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import asdict
from datetime import UTC
from typing import Any, Final

from bot.chat import held as shown
from bot.chat import joining
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import animals as words
from bot.chat.words import questions as question_words
from bot.chat.words.text import _
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.advice.asked_company import ASKING
from core.advice.inhabitants import LONGEST, Counted, listed_in
from core.advice.livestock import plain_name
from core.advice.stock import meant, tally
from core.message import vacated
from core.message.model import Command, Event, Parsed
from core.message.tanks import match

_THERE: Final = re.compile(
    r"\s*(?:sind|zitten|sont|son|sono|são|sao|są|sa|är|ar)\s+\d+\s[^?]*"
    r"\b(?:drin|darin|im becken|erin|dedans|dentro|w środku|i)\W*$",
    re.IGNORECASE,
)
"""So many are in it, told without its subject: `sind 4 guppys drin`."""


async def show(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``who lives in quarry``: the animals on record, of one tank or of all."""
    said = match(command.arguments, [tank.name for tank in turn.tanks]).candidates
    words_ = f" {plain_name(command.arguments)} "  # the nano
    named = [tank for tank in turn.tanks if f" {plain_name(tank.name)} " in words_]
    asked = [tank for tank in turn.tanks if tank.name in said] or named or turn.tanks
    if not asked:
        return [await turn.reply(question_words.which_tank([]))]
    held = {tank.name: await shown.held_in(turn, tank) for tank in asked}
    return [await turn.reply(words.living(held), facts=shown.facts(held))]


async def told(turn: Turn) -> list[Reply] | None:
    """Ask whether animals that are told as a list live in the tank; None where it is no list."""
    if not turn.incoming.addressed:
        return None
    if (left := await _nobody_left(turn)) is not None:
        return left
    text, tanks = turn.incoming.text, [tank.name for tank in turn.tanks]
    if plain_name(text).partition(" ")[0] in ASKING and not _THERE.match(text):
        return None  # is 26 fine for shrimp
    listed = listed_in(text, tanks)
    if listed is None and any(map(str.isdigit, text)) and len(text) <= LONGEST:
        held_all = [name for tank in turn.tanks for name in await _held(turn, tank)]
        listed = listed_in(text, tanks, held_all)
    if listed is None:
        return None
    counted = listed.kinds
    tank = turn.tank_named(listed.tank) if listed.tank else turn.current_tank
    if listed.recount and listed.tank is None:  # only 7 corys now, where they live elsewhere
        homes = [await joining.only_home(turn, each.said) for each in counted]
        same = {None if home is None else home.id for home in homes}
        tank = (homes[0] if len(same) == 1 else None) or tank
    if tank is None:
        return [await turn.reply(question_words.which_tank([each.name for each in turn.tanks]))]
    held = await _held(turn, tank)
    known = [meant(held, each.said) for each in counted]
    numbered = await shown.held_in(turn, tank)
    on_record = {name: held[name] for name in known if name and numbered.get(name) is not None}
    told_anew = _anew(counted, known, held)
    if listed.recount and on_record and not told_anew:
        return [await turn.reply(words.as_on_record(tank.name, on_record))]
    came = [
        event
        for each, name in zip(counted, known, strict=True)
        for event in _coming(each, name, untold=name is not None and name not in on_record)
    ]
    choices = []
    if not (listed.recount and on_record):
        choices.append(choice(turn, tank, words.all_new(bool(on_record)), came, "yes"))
    if on_record and told_anew and not listed.further:
        verb = "" if choices else "yes"
        choices.append(choice(turn, tank, _(words.IN_ALL), told_anew, verb))
    choices.append(Choice(_(words.NOT_THERE), "leave_out", "no"))
    names = [(each.many, each.said) for each in counted]
    facts = {"tank": tank.name, "animals": {each.said: each.many for each in counted}}
    lines = words.live_there(tank.name, names, on_record)
    return [await turn.reply(lines, choices=choices, facts=facts)]


async def _nobody_left(turn: Turn) -> list[Reply] | None:
    """``all sold``, ``fern is empty``: ask whether all on record are gone; None where none are."""
    found = vacated.told(turn.incoming.text, turn.context())
    if found is None:
        return None
    tank = turn.tank_named(found.tank) if found.tank else turn.current_tank
    held = {} if tank is None else await _held(turn, tank)
    if tank is None or not held:
        return None
    gone = [Event("moved_out", count=count, species=name) for name, count in held.items()]
    choices = [
        choice(turn, tank, _(words.NOBODY), gone, "yes"),
        Choice(_(words.STILL_THERE), "leave_out", "no"),
    ]
    facts = {"stock": {tank.name: held}}
    return [await turn.reply(words.nobody_left(tank.name, held), choices=choices, facts=facts)]


def _coming(each: Counted, name: str | None, *, untold: bool) -> list[Event]:
    """What came; of a kind on record without a number, which counts as one, so many in all."""
    if not untold or each.many is None:
        return [Event("added", count=each.many, species=each.said)]
    gone = [Event("moved_out", count=1, species=name)] if each.many == 1 else []
    return [*gone, Event("added", count=max(1, each.many - 1), species=name)]


def _anew(
    counted: Sequence[Counted], known: Sequence[str | None], held: dict[str, int]
) -> list[Event]:
    """What came, or is there no more, for the record to say as many."""
    events = []
    for each, name in zip(counted, known, strict=True):
        if each.many is None:
            if name is None:
                events.append(Event("added", count=None, species=each.said))
            continue
        more = each.many - (held[name] if name is not None else 0)
        if more > 0:
            events.append(Event("added", count=more, species=name or each.said))
        elif more < 0:
            events.append(Event("moved_out", count=-more, species=name))
    return events


def choice(turn: Turn, tank: StoredTank, label: str, events: Sequence[Event], verb: str) -> Choice:
    """A button that keeps events of a tank, told at this moment."""
    arguments: dict[str, Any] = {
        "tank_id": tank.id,
        "values": [],
        "events": [asdict(event) for event in events],
        "at": turn.now.astimezone(UTC).isoformat(),
        "text": turn.incoming.text,
    }
    return Choice(label, "keep_stray", verb, arguments)


async def _held(turn: Turn, tank: StoredTank) -> dict[str, int]:
    return tally(await turn.uow.log.stock(tank.id, until=turn.now))
