"""Readings and events: stored at once, said back once, judged; what is doubtful is asked."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, dataclass, replace
from datetime import UTC, datetime
from typing import Any

from bot.chat import reminding
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import findings as finding_words
from bot.chat.words import readings as words
from bot.store.log import Entry, Stored
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.advice.carbon import carbon_dioxide
from core.advice.findings import Finding, find, judge_ammonia
from core.advice.hardness import hardness_class
from core.advice.state import State
from core.message.doubts import UNKNOWN_TANK
from core.message.model import Doubt, Event, Parsed, Value
from core.message.wire import to_json
from core.tank import Tank

ASKED = 3
"""Doubts in one question."""

SHOWN = 3
"""Findings on one screen."""

FIRST_NAME = "Tank"
"""Name of the tank that a first reading makes."""


@dataclass(frozen=True, slots=True)
class Told:
    """What a message says of one tank."""

    tank: StoredTank
    readings: tuple[Stored[Value], ...]
    events: tuple[Stored[Event], ...]

    @property
    def at(self) -> datetime:
        """The latest moment that is spoken of."""
        moments = [reading.at for reading in self.readings]
        return max(moments + [event.at for event in self.events])


async def keep(turn: Turn, parsed: Parsed, chosen: StoredTank | None = None) -> list[Reply]:
    """Store what a message says and answer for each tank; ask about what is doubtful.

    `chosen` is the tank for all that names none.
    """
    known, strays = await _split(turn, parsed)
    replies: list[Reply] = []
    if known.values or known.events:
        default = chosen or await _default_tank(turn, known)
        if default is None:
            return [await _ask_tank(turn)]
        told = place(turn, known, default)
        entry_id = await turn.uow.log.add(turn.chat.id, entry_of(turn, told))
        made = not default.tank.named and len(told) == 1 and told[0].tank.id == default.id
        replies = [await answer_for(turn, each, entry_id, made=made) for each in told]
        await turn.use_tank(told[-1].tank)
    replies += [await _ask_stray(turn, name, stray) for name, stray in strays.items()]
    if doubts := _worth_asking(known, turn):
        replies.append(await ask(turn, doubts, known))
    return replies


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
        await turn.add_tank(Tank(name=_as_name(next(iter(names)))))
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


def _as_name(said: str) -> str:
    """A tank's name from how it was first typed: a lower-case word gets its capital."""
    return said[:40].capitalize() if said.islower() else said[:40]


async def _ask_stray(turn: Turn, name: str, parsed: Parsed) -> Reply:
    """Ask what to do with readings of a tank that the chat does not have; nothing is stored yet."""
    at = (parsed.at or turn.now).astimezone(UTC).isoformat()
    held: dict[str, Any] = {
        "values": [_packed(value) for value in parsed.values],
        "events": [{**asdict(event), "at": None} for event in parsed.events],
        "at": at,
    }
    new = _as_name(name)
    choices = [Choice(words.add_tank(new), "keep_stray", "yes", {**held, "new": new})]
    choices += [
        Choice(words.it_is(tank.name), "keep_stray", "", {**held, "tank_id": tank.id})
        for tank in turn.tanks[:4]
    ]
    choices.append(Choice(words.LEAVE_OUT, "leave_out", "no"))
    return await turn.reply(
        words.no_such_tank(name),
        choices=choices,
        facts={"doubts": [{"reason": UNKNOWN_TANK, "text": name}]},
    )


def place(turn: Turn, parsed: Parsed, default: StoredTank) -> list[Told]:
    """Sort what a message says by tank, in the order in which the tanks are named."""
    at = (parsed.at or turn.now).astimezone(UTC)
    readings: dict[int, list[Stored[Value]]] = {}
    events: dict[int, list[Stored[Event]]] = {}
    tanks: dict[int, StoredTank] = {}

    def tank_for(name: str | None) -> StoredTank:
        stored = turn.tank_named(name) if name else None
        stored = stored or (turn.tank_named(parsed.tank) if parsed.tank else None) or default
        return tanks.setdefault(stored.id, stored)

    for value in parsed.values:
        tank = tank_for(value.tank)
        moment = (value.at or at).astimezone(UTC)
        readings.setdefault(tank.id, []).append(Stored(value, tank.id, moment))
    for event in parsed.events:
        tank = tank_for(event.tank)
        moment = (event.at or at).astimezone(UTC)
        events.setdefault(tank.id, []).append(Stored(event, tank.id, moment))
    return [
        Told(tank, tuple(readings.get(tank.id, ())), tuple(events.get(tank.id, ())))
        for tank in tanks.values()
    ]


def entry_of(turn: Turn, told: Sequence[Told], **changes: Any) -> Entry:
    """The entry that puts on record what was told."""
    incoming = turn.incoming
    entry = Entry(
        update_id=incoming.update_id,
        kind="message",
        text=incoming.text,
        at=turn.now,
        author_id=incoming.author_id,
        author_name=incoming.author_name,
        message_ref=incoming.message_ref,
        readings=tuple(reading for each in told for reading in each.readings),
        events=tuple(event for each in told for event in each.events),
    )
    return replace(entry, **changes)


async def answer_for(
    turn: Turn, told: Told, entry_id: int, *, made: bool = False, lead: str | None = None
) -> Reply:
    """Say back what was stored for a tank, warn, and close the reminders that it satisfies."""
    state = await state_of(turn, told.tank, told.at)
    analytes = frozenset(reading.what.analyte for reading in told.readings)
    found = find(state, analytes)
    lines = [lead or summary(turn, told)]
    lines += [finding_words.line(finding) for finding in found[:SHOWN]]
    lines += await reminding.satisfied(turn, told)
    more = [finding_words.line(finding) for finding in found[SHOWN:]]
    more += await _asides(turn, told)
    if made:
        lines.append(words.made_tank(told.tank.name))
    if any(event.what.spoons for event in told.events):
        lines.append(words.spoons())
    if any(event.what.kind == "lost" for event in told.events):
        lines.append(words.lost())
    return await turn.reply(
        lines,
        choices=[Choice("undo", "undo", "undo", {"entry_id": entry_id})],
        more=more,
        facts=_facts(told, state, found),
        entry_id=entry_id,
    )


def summary(turn: Turn, told: Told) -> str:
    """One line of what is on record for a tank."""
    values = [reading.what for reading in told.readings]
    gh = _number_of(values, "gh")
    parts = [words.values(values, hardness_class(gh) if gh is not None else None)]
    parts += [words.event(event.what) for event in told.events]
    return words.line(told.tank.name, parts, told.at.astimezone(turn.chat.zone), turn.local_now)


def values_json(told: Told) -> list[dict[str, Any]]:
    """What was told of a tank as `meniscus parse` writes it."""
    values = tuple(reading.what for reading in told.readings)
    written: list[dict[str, Any]] = to_json(Parsed("reading", values=values))["values"]
    return written


async def ask(turn: Turn, doubts: Sequence[Doubt], parsed: Parsed) -> Reply:
    """Turn doubts into one question; a guess has its button, and nothing is stored yet."""
    lines = [words.doubt(doubt) for doubt in doubts[:ASKED]]
    choices = [
        Choice(doubt.suggestion, "take_doubt", "yes", _held(turn, doubt, parsed))
        for doubt in doubts[:ASKED]
        if doubt.suggestion
    ]
    if choices:
        lines.append(words.meant([choice.label for choice in choices]))
        choices.append(Choice(words.LEAVE_OUT, "leave_out", "no"))
        choices.append(Choice(words.TYPE_AGAIN, "type_again"))
    else:
        lines.append(words.send_instead())
    facts = {"doubts": [{"reason": d.reason, "text": d.text[:200]} for d in doubts]}
    return await turn.reply(lines, choices=choices, facts=facts)


def _held(turn: Turn, doubt: Doubt, parsed: Parsed) -> dict[str, Any]:
    """What taking a guess needs: the value with its moment and tank, or a text to read again."""
    held: dict[str, Any] = {"text": doubt.suggestion, "doubt": doubt.text}
    if doubt.value is not None:
        held |= {
            "value": _packed(doubt.value),
            "at": _moment(turn, parsed, doubt.value),
            "tank": doubt.value.tank or parsed.tank,
        }
    return held


def unpacked(packed: dict[str, Any]) -> Value:
    """A value as it was before an offer kept it."""
    held = dict(packed)
    if isinstance(held["canonical"], list):
        held["canonical"] = tuple(held["canonical"])
    return Value(**held)


def _packed(value: Value) -> dict[str, Any]:
    return {**asdict(value), "at": None}


def _moment(turn: Turn, parsed: Parsed, value: Value) -> str:
    return (value.at or parsed.at or turn.now).astimezone(UTC).isoformat()


async def _default_tank(turn: Turn, parsed: Parsed) -> StoredTank | None:
    """The tank for what names none: the last used, the only one, or one made on the fly."""
    named = turn.tank_named(parsed.tank) if parsed.tank else None
    current = named or turn.current_tank
    if current is not None:
        return current
    if not turn.tanks:
        return await turn.add_tank(Tank(name=FIRST_NAME, named=False))
    if all(value.tank for value in parsed.values) and all(event.tank for event in parsed.events):
        return turn.tanks[0]
    return None


async def _ask_tank(turn: Turn) -> Reply:
    held = {"text": turn.incoming.text, "at": turn.now.isoformat()}
    choices = [
        Choice(tank.name, "for_tank", "", {**held, "tank_id": tank.id}) for tank in turn.tanks[:8]
    ]
    names = [tank.name for tank in turn.tanks]
    return await turn.reply(
        words.which_tank(names), choices=choices, expects="tank_for_text", context=held
    )


def _worth_asking(parsed: Parsed, turn: Turn) -> Sequence[Doubt]:
    """The doubts to ask about: in a group only those of a message that is surely for us."""
    if turn.incoming.addressed or parsed.values or parsed.events:
        return parsed.doubts
    return [doubt for doubt in parsed.doubts if doubt.value is not None]


async def _asides(turn: Turn, told: Told) -> list[str]:
    """What matters once: an unsaid basis, said with the first such reading of a tank."""
    said = []
    for reading in told.readings:
        value = reading.what
        if value.analyte not in {"ammonia", "nitrite"} or value.basis or not value.canonical:
            continue
        before = await turn.uow.log.readings(told.tank.id, analytes=(value.analyte,), limit=2)
        if len(before) < 2:
            said.append(words.basis_assumed(value.analyte))
    return said


def _facts(told: Told, state: State, found: Sequence[Finding]) -> dict[str, Any]:
    values = tuple(reading.what for reading in told.readings)
    facts: dict[str, Any] = {"tank": told.tank.name}
    if values:
        facts["values"] = values_json(told)
        facts["findings"] = [
            {"id": finding.id, "severity": finding.severity, **finding.facts} for finding in found
        ]
    if told.events:
        events = tuple(event.what for event in told.events)
        facts["events"] = to_json(Parsed("event", events=events))["events"]
    analytes = {value.analyte for value in values}
    judged = judge_ammonia(state) if analytes & {"ammonia", "ph", "temperature"} else None
    if judged is not None:
        facts["nh3_n"] = judged["nh3_n"]
    if {"ph", "kh"} <= analytes and (co2 := _carbon_dioxide(state)) is not None:
        facts["co2_mg_l"] = co2
    gh = _number_of(values, "gh")
    if gh is not None:
        held = hardness_class(gh)
        facts["hardness_class"] = f"{held.word} ({held.scheme})"
    return facts


def _carbon_dioxide(state: State) -> float | None:
    ph, kh, temperature = state.last("ph"), state.last("kh"), state.fresh("temperature")
    if ph is None or kh is None or ph.is_limit or kh.is_limit:
        return None
    found = carbon_dioxide(ph, kh, temperature.value if temperature else None, state.salinity)
    return None if found is None else found.mg_l


def _number_of(values: Sequence[Value], analyte: str) -> float | None:
    for value in values:
        if value.analyte == analyte and isinstance(value.canonical, int | float):
            return float(value.canonical)
    return None
