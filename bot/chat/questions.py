"""Questions that need no plan: help, what is due, units, carbon dioxide, is it safe."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from bot.chat import (
    about_values,
    agenda,
    animals,
    asked_water,
    days_to,
    dosing,
    for_kinds,
    levels,
    nearest,
    plants,
    put_asked,
    routines,
    settings,
    signs,
    standing,
    still_in,
    tank_use,
    that_value,
)
from bot.chat.model import Reply
from bot.chat.standing import about
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import findings as finding_words
from bot.chat.words import questions as words
from bot.chat.words.glossary import explained
from bot.chat.words.names import label
from bot.chat.words.numbers import entered, plain
from bot.chat.words.numbers import when as at_time
from bot.store.tanks import StoredTank
from core.advice.carbon import carbon_dioxide
from core.advice.findings import Finding, find, judge_ammonia, seen
from core.advice.livestock import named_in
from core.advice.state import State, measured
from core.analytes import ANALYTES
from core.message import plants as plant_words
from core.message import value_asked
from core.message.after import is_of_harm, means_them
from core.message.fold import fold
from core.message.model import Basis, Command, Parsed, Question, Value
from core.message.themes import themes
from core.message.wire import to_json
from core.tank import Stock, Tank

SHOWN, KEPT_BACK = 8, 30
"""Readings of a history on one screen, and in all with "more"."""

USED_UP = frozenset({"kh", "gh", "calcium", "magnesium"})
"""What a tank uses up: it is kept by dosing, what piles up by changing water."""


async def help_(turn: Turn, question: Question, parsed: Parsed) -> list[Reply]:
    """A spoken call for help; ``what is kh`` is answered by what it is."""
    if question.substance is not None:
        stored = about(turn, question)
        is_sea = stored is not None and stored.tank.is_sea
        return [await turn.reply(words.topping_up(is_sea=is_sea))]
    if question.analyte in ANALYTES and levels.is_of_safety(question):
        state = await _state(turn, about(turn, question), question.premises)
        return [await turn.reply(levels.told(question.analyte, state))]
    if question.analyte in ANALYTES and named_in(fold(question.text or "")):
        suits = await about_values.answer(turn, parsed)  # what's the right temp for a betta
        if suits is not None:
            return suits
    if question.analyte in ANALYTES:
        return [await turn.reply(explained(question.analyte))]
    if (cared := await signs.answer(turn, parsed)) is not None:
        return cared  # how do i clean the filter
    if themes(turn.incoming.text):
        return [await nearest.answer(turn)]  # how do i stock it
    return await settings.help_(turn, Command("help"), parsed)


async def when(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    """``when is … due``: the list of what is due; ``when will nitrate reach 40``: by its trend."""
    if question.analyte is not None and question.target is not None:
        return await days_to.answer(turn, question, question.analyte, question.target)
    return await agenda.listed(turn)


async def keep(turn: Turn, question: Question, parsed: Parsed) -> list[Reply]:
    """``keep nitrate under 20`` is about a routine, ``can i keep tetras`` about animals."""
    held = question.premises.get(question.analyte or "")
    if question.target is None and held is not None and question.species is None:
        question = replace(question, target=held)  # keep kh at 8
    if question.target is None:
        return await animals.keep(turn, question, parsed)
    if (dosed := await tank_use.how_often(turn, question)) is not None:
        return dosed
    topic = dosing.dose if question.analyte in USED_UP else routines.keep
    return await topic(turn, question, parsed)


async def co2(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    """``co2``: from the tank's own pH and KH, or from those of the question."""
    stored = about(turn, question)
    state = await _state(turn, stored, question.premises)
    ph, kh, temperature = state.fresh("ph"), state.fresh("kh"), state.fresh("temperature")
    name = stored.name if stored is not None else None
    if ph is None or kh is None:
        return [await turn.reply(words.carbon_dioxide_needs(name))]
    found = carbon_dioxide(ph, kh, temperature.value if temperature else None, state.salinity)
    if found is None:
        return [await turn.reply(words.no_such_water())]
    lines = words.carbon_dioxide(
        name, ph.value, kh.value, found, ammonia=seen(state.fresh("ammonia")) is not None
    )
    facts = {"co2_mg_l": found.mg_l, "co2_span": [found.least, found.most], "ph": ph.value}
    return [await turn.reply(lines, facts=facts | {"kh": kh.value})]


async def safe(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    """``is ammonia 0.5 safe at ph 8.2 and 26 c?``: the findings that the premises would give.

    A number of the question is judged itself, beside the tank's own last readings, and stored
    nowhere; it is never answered by what the tank has on record of it.
    """
    stored = about(turn, question)
    state = await _state(turn, stored, {})
    if question.species is not None and means_them(question.species):
        question = replace(question, species=None)  # too high for him: who lives there
    whom = animals.meant(question, state.tank)
    if question.substance is not None:
        return await dosing.effect(turn, replace(question, kind="effect"), _parsed)
    if (of_source := await asked_water.judged(turn, question)) is not None:
        return of_source
    if question.species and (of_thing := await put_asked.answer(turn, question)) is not None:
        return [of_thing]
    if question.premises and not whom and plant_words.named(question.text or ""):
        borne = await plants.of_numbers(turn, question, stored)
        return [await _judged(turn, question, whom) if borne is None else borne]
    if question.premises and (whom or not animals.is_for_someone(question)):
        return [await _judged(turn, question, whom)]
    newcomers = animals.to_come(question.text or "")
    if whom and stored is not None and question.analyte is None and not newcomers:
        if for_kinds.live_there(whom, state.tank):
            return await standing.status(turn, replace(question, species=None))
        if is_of_harm(question.text or ""):
            return [await for_kinds.in_water(turn, state, stored, whom)]
    if animals.is_about(question) or (whom and newcomers):
        return await animals.keep(turn, question, _parsed)
    if question.analyte == "co2" and not levels.is_asked(question):
        return await co2(turn, question, _parsed)
    if question.analyte is not None:
        return await _of_analyte(turn, question, question.analyte)
    replies = await standing.status(turn, question)
    return await that_value.beside(turn, question.text or "", stored, state, replies)


async def _of_analyte(turn: Turn, question: Question, analyte: str) -> list[Reply]:
    """How an analyte stands; its limit where that is asked for or nothing was measured of it."""
    stored = about(turn, question)
    state = await _state(turn, stored, question.premises)
    if question.species is not None and not levels.is_asked(question):
        return [await turn.reply(explained(analyte))]  # is kh important
    if levels.is_asked(question) or analyte not in state.readings:
        return [await turn.reply(levels.told(analyte, state))]
    replies = await standing.status(turn, question)
    suits = levels.for_kept(analyte, state) if analyte in levels.OF_ANIMALS else None
    return replies if suits is None else that_value.behind_first(replies, [suits])


async def _judged(turn: Turn, question: Question, whom: Sequence[str]) -> Reply:
    """Judge the question's own numbers, for the tank's animals and those that it names."""
    limit_of = question.analyte if levels.is_asked(question) else None
    stored = None if {"ammonia", "ph"} <= set(question.premises) else about(turn, question)
    state = await _state(turn, stored, question.premises, question.basis)
    if whom:
        kept = tuple(Stock(name, 1) for name in whom)
        state = replace(state, tank=replace(state.tank, stock=kept))
    if limit_of is not None and limit_of not in question.premises:
        return await turn.reply(levels.told(limit_of, state))  # safe ammonia level at ph 8
    found = [f for f in find(state, frozenset(question.premises)) if f.id != "salt_in_fresh"]
    judged = judge_ammonia(state) if "ammonia" in question.premises else None
    facts: dict[str, object] = {
        "findings": [{"id": f.id, "severity": f.severity, **f.facts} for f in found]
    }
    if judged is not None:
        facts["nh3_n"] = judged["nh3_n"]
    lines = _judgement(question, state, found, judged)
    of_animals = [each for each in levels.OF_ANIMALS if each in question.premises]
    lines += [suits for each in of_animals if (suits := levels.for_kept(each, state)) is not None]
    there = about(turn, question)
    if there is not None:
        measured_now = await state_of(turn, there, turn.now)
        if (still := await still_in.found(turn, there, measured_now)).lines:
            facts["still_in"] = [f.id for f in still.findings] + still.names
            well = all(finding.severity == "note" for finding in found)
            lines = [*still.lines, *lines] if well else [*lines, *still.lines]
    return await turn.reply(lines, facts=facts)


def _judgement(
    question: Question,
    state: State,
    found: Sequence[Finding],
    judged: Mapping[str, float | str] | None,
) -> list[str]:
    told = [finding_words.line(finding) for finding in found[:3]]
    if any(finding.severity != "note" for finding in found):
        return words.not_safe(told)
    if set(question.premises) == {"temperature"} and not state.tank.stock:
        return words.warmth(question.premises["temperature"])
    within = judged is not None and all(finding.id == "ammonia_seen" for finding in found)
    if judged is not None and within and question.premises["ammonia"] > 0:
        warmth = judged.get("temperature", judged.get("temperature_assumed", 0.0))
        return words.ammonia_within(
            float(judged["total_n"]), float(judged["nh3_n"]), float(judged["ph"]), float(warmth)
        )
    if told:
        return told
    return levels.for_all(question.premises, state) or words.within_limits(_said(question))


async def why(turn: Turn, question: Question, parsed: Parsed) -> list[Reply]:
    """``why is my ph dropping``: by the record, by what a value is for, or by a sign."""
    named = question.analyte
    if named is not None and value_asked.is_of_use(question.text or ""):
        return [await turn.reply(explained(named))]
    sign = await signs.answer(turn, parsed) if named is None and not question.premises else None
    return sign or await standing.why(turn, question)


async def history(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    """``history of kh``: the newest readings of an analyte, or of all, newest first."""
    stored = about(turn, question)
    if stored is None:
        return [await turn.reply(words.which_tank([tank.name for tank in turn.tanks]))]
    analytes = (question.analyte,) if question.analyte else ()
    found = await turn.uow.log.readings(stored.id, analytes=analytes, limit=KEPT_BACK)
    zone, now = turn.chat.zone, turn.local_now
    told = [f"{at_time(row.at.astimezone(zone), now)}: {entered(row.what)}" for row in found]
    if not told:
        return [await turn.reply(words.no_history(stored.name, question.analyte))]
    values = to_json(Parsed("reading", values=tuple(row.what for row in found[:SHOWN])))["values"]
    dated = [
        {**value, "at": row.at.astimezone(zone).isoformat()}
        for value, row in zip(values, found[:SHOWN], strict=True)
    ]
    lines = [f"{stored.name}:", *told[:SHOWN]]
    facts: dict[str, object] = {"values": dated}
    if question.analyte is not None:
        moves, of_it = await standing.movement(turn, stored, question.analyte)
        lines[1:1] = moves
        facts |= of_it
    return [await turn.reply(lines, more=told[SHOWN:], facts=facts)]


async def _state(
    turn: Turn,
    stored: StoredTank | None,
    premises: Mapping[str, float],
    basis: Basis | None = None,
) -> State:
    """The state of a tank with the question's premises in the place of its readings.

    `basis` is what ammonia counts; the others are in their own unit already.
    """
    if stored is None:
        held = State(Tank(name=""), turn.local_now)
    else:
        held = await state_of(turn, stored, turn.now)
    supposed = {
        analyte: measured(_supposed(analyte, number, basis), turn.local_now, held.tank)
        for analyte, number in premises.items()
    }
    told = {analyte: reading for analyte, reading in supposed.items() if reading is not None}
    return replace(held, readings={**held.readings, **told}, earlier=())


def _supposed(analyte: str, number: float, basis: Basis | None) -> Value:
    counted = basis if analyte == "ammonia" else None
    return Value(analyte, number, canonical=number, basis=counted)


def _said(question: Question) -> str:
    return ", ".join(
        f"{label(analyte)} {plain(number, 2)}" for analyte, number in question.premises.items()
    )
