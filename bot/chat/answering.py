"""The answer to what was told of a tank: said back, judged, reminders settled."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import Any

from bot.chat import (
    change_done,
    chlorinated,
    emergencies,
    joining,
    losses,
    naming,
    newcomers,
    own_plan,
    plan_gate,
    poisoned,
    reminding,
    what_now,
)
from bot.chat.derived import Derived
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.told import Told, summary, values_json
from bot.chat.turn import Turn
from bot.chat.words import buttons, effects
from bot.chat.words import derived as derived_words
from bot.chat.words import findings as finding_words
from bot.chat.words import lime as lime_words
from bot.chat.words import readings as words
from bot.chat.words.text import _
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.advice.findings import (
    CHANGE,
    DOSE,
    REMEMBERED,
    STOCK,
    Finding,
    find,
    fresh_only,
)
from core.advice.media import LIME, Lime, lime_in
from core.advice.state import State
from core.advice.stock import COMING, GOING
from core.message.model import Parsed
from core.message.wire import to_json

SHOWN = 3
"""Findings on one screen."""


async def answer_for(
    turn: Turn,
    told: Told,
    entry_id: int,
    *,
    made: bool = False,
    lead: str | None = None,
    used: StoredTank | None = None,
) -> Reply:
    """Say back what was stored for a tank, warn, and close the reminders that it satisfies.

    `used` is the tank in use, where what was told went to another one, as only that can be meant.
    """
    state = await state_of(turn, told.tank, told.at)
    found = find(state, _woken(told) - await _superseded(turn, told))
    found = await chlorinated.without_treated(turn, told, found)
    derived = Derived.of((reading.what for reading in told.readings), state)
    before_told = await turn.uow.findings.told(told.tank.id, _lately(told))
    read = {reading.what.analyte for reading in told.readings}
    news = fresh_only(found, before_told, told.at, read)
    gone = {event.what.kind for event in told.events} & GOING
    before = await losses.on_record_before(turn, told) if gone else {}
    whom, names, unclear = naming.asked(told, state.tank, before, entry_id, turn.chat.language)
    misplaced = newcomers.unsuited(told, state)
    news = newcomers.without_advice_for(misplaced, news)
    shown = [finding for finding in news if not _asks_of(finding, unclear)][:SHOWN]
    said = [finding for finding in news if finding in shown or _asks_of(finding, unclear)]
    await turn.uow.findings.add(entry_id, told.tank.id, said, told.at)
    lines = [lead or summary(turn, told), *joining.lines(told, used)]
    told_of = [finding_words.line(finding) for finding in shown]
    lost = "lost" in gone
    none_there, moves = await losses.unrecorded(turn, told, before) if not whom else ([], [])
    if lost:
        many = losses.counted_as_one(told, before)
        lines += [*losses.lines(state, turn.incoming.text), *told_of, *many, *none_there, *whom]
    else:
        lines += [*newcomers.lines(misplaced, told.tank.name), *none_there, *whom, *told_of]
    lines[1:1] = [*poisoned.beside(told, state), *_lime(told, state)]
    lines[1:1] = await change_done.lines(turn, told, found)
    lines[1:1] = await plan_gate.beside(turn, told, state)
    lines += _beside(told, derived, found)
    lines += await own_plan.lead_on(turn, told, state, found)
    lines += await reminding.satisfied(turn, told)
    more = [
        finding_words.line(finding)
        for finding in found
        if finding not in shown and not _asks_of(finding, unclear)
    ]
    more += await _asides(turn, told)
    if made:
        lines.append(words.made_tank(told.tank.name, told.tank.tank.kind))
    if any(event.what.spoons for event in told.events):
        lines.append(words.spoons())
    weighed = any(event.what.kind == "dose" and event.what.grams for event in told.events)
    if weighed and told.tank.tank.volume_l is None:
        lines.append(words.litres_first())
    return await turn.reply(
        lines,
        choices=[
            *names,
            *moves,
            *joining.choices(used),
            Choice(buttons.undo(), "undo", "undo", {"entry_id": entry_id}),
            *what_now.button(told, [*found, *emergencies.what_stands(state)] if lost else found),
        ],
        more=more,
        facts=_facts(told, found) | derived.facts(),
        entry_id=entry_id,
        context={"why": [*_reasons(found), *derived_words.behind(derived)]},
    )


def _lime(told: Told, state: State) -> list[str]:
    """What lime that went in will do to the water."""
    limes = [e.what.substance or "" for e in told.events if e.what.kind == "media"]
    for name in limes:
        if name in LIME:
            found = lime_in(name, state)
            if isinstance(found, Lime) and not found.is_for_it:
                return lime_words.went_in(found)
            full = isinstance(found, Lime) and not found.acts
            return [_(effects.LIME_FULL if full else effects.LIME_IN)]
    return []


def _reasons(found: Sequence[Finding]) -> list[str]:
    """The reasons of all findings, each line once."""
    return list(dict.fromkeys(line for finding in found for line in finding_words.why(finding)))


ON_AMMONIA = frozenset({"ammonia", "ammonia_without_ph"})
ON_CARBON = frozenset({"much_co2", "perhaps_much_co2", "contradiction", "contradiction_low"})


def _beside(told: Told, derived: Derived, found: Sequence[Finding]) -> list[str]:
    """What is told although nothing is wrong with it: ammonia that is there, CO2 that is added."""
    said = {finding.id for finding in found}
    lines: list[str] = []
    if not said & ON_AMMONIA and any(r.what.analyte == "ammonia" for r in told.readings):
        lines += derived_words.ammonia(derived)
    if not said & ON_CARBON and told.tank.tank.co2:
        lines += derived_words.carbon(derived)
    return lines


def _asks_of(finding: Finding, unclear: str | None) -> bool:
    """Whether a finding only says what is asked about anyway."""
    return finding.id == "unknown_animal" and finding.facts.get("said") == unclear


def _lately(told: Told) -> datetime:
    """From when on something told is not news."""
    return told.at - REMEMBERED


def _woken(told: Told) -> frozenset[str]:
    """What the rules are woken by: the analytes told, animals that came or went, doses."""
    woken = {reading.what.analyte for reading in told.readings}
    kinds = {event.what.kind for event in told.events}
    if kinds & (COMING | GOING):
        woken.add(STOCK)
    if "dose" in kinds:
        woken.add(DOSE)
    if kinds & {"water_change", "top_up"}:
        woken.add(CHANGE)
    return frozenset(woken)


async def _superseded(turn: Turn, told: Told) -> frozenset[str]:
    """The analytes of an older day that were measured again since: no advice for now is in them."""
    if told.at >= turn.now:
        return frozenset()
    analytes = sorted({reading.what.analyte for reading in told.readings})
    newest = await turn.uow.log.last_of_each(told.tank.id, analytes, until=turn.now)
    return frozenset(row.what.analyte for row in newest if row.at > told.at)


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


def _facts(told: Told, found: Sequence[Finding]) -> dict[str, Any]:
    values = tuple(reading.what for reading in told.readings)
    facts: dict[str, Any] = {"tank": told.tank.name}
    if values:
        facts["values"] = values_json(told)
    if values or found:
        facts["findings"] = [
            {"id": finding.id, "severity": finding.severity, **finding.facts} for finding in found
        ]
    if told.events:
        events = tuple(event.what for event in told.events)
        facts["events"] = to_json(Parsed("event", events=events))["events"]
    return facts
