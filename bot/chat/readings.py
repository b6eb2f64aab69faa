"""Readings and events: sorted by tank, stored at once, answered; what is doubtful is asked."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, datetime

from bot.chat import awaited, joining, moves, overheard, product_doses, products, which_soda
from bot.chat.answering import answer_for
from bot.chat.asking import as_name, ask, ask_stray, ask_tank
from bot.chat.model import Reply
from bot.chat.stock import ask_crowd, part_crowds
from bot.chat.told import entry_of, place
from bot.chat.turn import Turn
from bot.chat.words.names import first_tank
from bot.store.tanks import StoredTank
from core.message import parse, sea_slips, unit_before
from core.message.doubts import IMPLAUSIBLE, UNKNOWN_TANK
from core.message.guesses import name_for
from core.message.model import Doubt, Parsed, Value
from core.tank import Tank


async def keep(turn: Turn, parsed: Parsed, chosen: StoredTank | None = None) -> list[Reply]:
    """Store what a message says and answer for each tank; ask about what is doubtful.

    `chosen` is the tank for all that names none.
    """
    if turn.incoming.group and not turn.incoming.addressed:
        parsed = await overheard.of_tanks(turn, parsed)
    known, strays = await _split(turn, moves.named(turn, parsed))
    replies: list[Reply] = []
    before = {tank.id for tank in turn.tanks}
    if known.values or known.events:
        default = chosen or await _default_tank(turn, known)
        if default is None:
            return [await ask_tank(turn)]
        theirs = None if chosen else await joining.only_sea(turn, known, default)
        if chosen is None and theirs is None:
            theirs = await awaited.by_plan(turn, known, default)
        if isinstance(theirs, Reply):
            return [theirs]
        in_use, default = default, theirs or default
        known = await _without_slips(turn, known, default)
        if not (known.values or known.events):
            return [await ask(turn, known.doubts, known)]
        joins = None if chosen else await joining.their_tank(turn, known, default)
        default = joins or default
        used = in_use if default is not in_use else None
        known, asked = await moves.settle(turn, known, default)
        if asked or not (known.values or known.events):
            return asked
        told, crowds = part_crowds(place(turn, known, default))
        replies = [await ask_crowd(turn, each) for each in crowds]
        entry_id = await turn.uow.log.add(turn.chat.id, entry_of(turn, told))
        made = {each.tank.id for each in told if not each.tank.tank.named} - before
        answers = [
            await answer_for(turn, each, entry_id, made=each.tank.id in made, used=used)
            for each in told
        ]
        replies = [*answers, *replies]
        await turn.use_tank((told or crowds)[-1].tank)
        for each in told:
            if (warned := await product_doses.too_much(turn, each)) is not None:
                replies.append(warned)
            if (unclear := await which_soda.ask(turn, each, entry_id)) is not None:
                replies.append(unclear)
            if (seen := await products.offer_to_learn(turn, each)) is not None:
                replies.append(seen)
    replies += [await ask_stray(turn, name, stray) for name, stray in strays.items()]
    if doubts := _worth_asking(known, turn):
        doubts = [await _as_before(turn, known, doubt) for doubt in doubts]
        replies.append(await ask(turn, doubts, known))
    return replies


async def _as_before(turn: Turn, parsed: Parsed, doubt: Doubt) -> Doubt:
    """A number that no tank has, with the unit first that the tank was told in last: `kh 85`."""
    stored = turn.tank_named(doubt.tank or parsed.tank or "") or turn.current_tank
    if doubt.reason != IMPLAUSIBLE or len(doubt.choices) < 2 or stored is None:
        return doubt
    read = parse(doubt.choices[0], turn.context()).values
    last = await turn.uow.log.last_of_each(stored.id, [v.analyte for v in read], until=turn.now)
    unit = last[0].what.unit if len(read) == len(last) == 1 else None
    if unit is None:
        return doubt
    choices = sorted(doubt.choices, key=lambda text: not text.endswith(f" {unit}"))
    return replace(doubt, choices=tuple(choices), suggestion=choices[0])


async def _without_slips(turn: Turn, parsed: Parsed, default: StoredTank) -> Parsed:
    """Ask about what no sea has, where a tank turned out to be one only now.

    So is a hardness without a unit that fits the one which the tank was told in last.
    """
    kept: list[Value] = []
    found: list[Doubt] = []
    for value in parsed.values:
        named = turn.tank_named(value.tank or parsed.tank or "") or default
        doubt = sea_slips.of_value(value, name_for(value.analyte)) if named.tank.is_sea else None
        doubt = doubt or await _in_unit_before(turn, named, value, value.at or parsed.at)
        found += [] if doubt is None else [doubt]
        kept += [value] if doubt is None else []
    return replace(parsed, values=tuple(kept), doubts=(*parsed.doubts, *found)) if found else parsed


async def _in_unit_before(
    turn: Turn, stored: StoredTank, value: Value, at: datetime | None
) -> Doubt | None:
    """What is asked about a bare hardness of a tank that was told in another unit right before."""
    if value.analyte not in unit_before.LOOKED_AT or value.unit is not None:
        return None
    until = (at or turn.now).astimezone(UTC)
    last = await turn.uow.log.last_of_each(stored.id, (value.analyte,), until=until)
    doubt = unit_before.doubted(value, last[0].what) if last else None
    return None if doubt is None else replace(doubt, tank=stored.name, at=at)


async def _split(turn: Turn, parsed: Parsed) -> tuple[Parsed, dict[str, Parsed]]:
    """Part what is said of this chat's tanks from what is said of tanks that it does not have.

    In a private chat without any tank the first name makes one.
    """
    names = dict.fromkeys(
        name
        for name in (
            *(value.tank or parsed.tank for value in parsed.values),
            *(event.tank or parsed.tank for event in parsed.events),
        )
        if name is not None and turn.tank_named(name) is None
    )
    if names and not turn.tanks and not turn.incoming.group:
        await turn.add_tank(Tank(name=as_name(next(iter(names)))))
        names.pop(next(iter(names)))
    if not names:
        return _without_tank_doubts(parsed, turn), {}
    strays = {name: _about(parsed, name) for name in names}
    rest = replace(
        _without_tank_doubts(parsed, turn),
        values=tuple(v for v in parsed.values if (v.tank or parsed.tank) not in names),
        events=tuple(e for e in parsed.events if (e.tank or parsed.tank) not in names),
    )
    return rest, strays


def _about(parsed: Parsed, name: str) -> Parsed:
    return replace(
        parsed,
        values=tuple(v for v in parsed.values if (v.tank or parsed.tank) == name),
        events=tuple(e for e in parsed.events if (e.tank or parsed.tank) == name),
        doubts=(),
    )


def _without_tank_doubts(parsed: Parsed, turn: Turn) -> Parsed:
    """Leave out the doubts about tank names that are answered otherwise."""
    told = {name for name in (parsed.tank, *(v.tank for v in parsed.values)) if name}
    told |= {event.tank for event in parsed.events if event.tank}
    spoken = {name.casefold() for name in told} | {tank.name.casefold() for tank in turn.tanks}
    kept = tuple(
        doubt
        for doubt in parsed.doubts
        if doubt.reason != UNKNOWN_TANK or doubt.text.casefold().strip(" :@") not in spoken
    )
    return replace(parsed, doubts=kept)


async def _default_tank(turn: Turn, parsed: Parsed) -> StoredTank | None:
    """The tank for what names none: the last used, the only one, or one made on the fly."""
    named = turn.tank_named(parsed.tank) if parsed.tank else None
    current = named or turn.current_tank
    if current is not None:
        return current
    if not turn.tanks:
        sea = any(map(joining.tells_sea, parsed.values))
        made = turn.first or Tank(first_tank(), kind="marine" if sea else "fresh", named=False)
        return await turn.add_tank(made)
    if all(value.tank for value in parsed.values) and all(event.tank for event in parsed.events):
        return turn.tanks[0]
    return None


def _worth_asking(parsed: Parsed, turn: Turn) -> Sequence[Doubt]:
    """The doubts to ask about: in a group only those of a message that is surely for us."""
    if turn.incoming.addressed or parsed.values or parsed.events:
        return parsed.doubts
    return [doubt for doubt in parsed.doubts if doubt.value is not None]
