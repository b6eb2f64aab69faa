"""``why is ph so high``: the usual causes of a value that is off, and what this record shows."""

from __future__ import annotations

from typing import Final

from bot.chat.words import why_values as words
from bot.chat.words.levels import unit
from bot.chat.words.standing import as_measured
from core.advice.carbon import carbon_dioxide
from core.advice.findings import Finding
from core.advice.state import State
from core.message.model import Question
from core.message.why_way import Way, way_of

LITTLE_CO2: Final = 2.0
MUCH_CO2: Final = 15.0
"""Under and over these carbon dioxide tells why pH is where it is; common practice. [mg/L]"""


def value_of(question: Question) -> str | None:
    """The one value that is asked about, named or told with its number."""
    told = question.analyte
    if told is None and len(question.premises) == 1:
        told = next(iter(question.premises))
    return "conductivity" if told == "tds" else told


def bears_on(finding: Finding, question: Question) -> bool:
    """Whether a finding speaks of the value that is asked about, or of what puts it off."""
    asked_of = value_of(question)
    if asked_of is None:
        return True
    behind = {"kh"} if asked_of == "ph" and way_of(question.text or "") != "high" else set()
    spoken = {*finding.facts, finding.facts.get("analyte")}
    return not spoken.isdisjoint({asked_of, *behind})


def causes(question: Question, state: State | None, *, judged: bool = False) -> list[str]:
    """What makes the value that is asked about high or low; empty where that is not known.

    Parameters
    ----------
    question : Question
        Which value, and in its words which way it is off.
    state : State or None
        The tank whose record is looked at for signs of them; None for none.
    judged : bool
        Whether a finding with the value is said before it.
    """
    analyte, way = value_of(question), way_of(question.text or "")
    if analyte is None or way is None:
        return []
    usual = words.causes(analyte, way, sea=state is not None and state.tank.is_sea)
    if usual is None:
        return []
    if state is None:
        return [usual]
    reading = state.last(analyte)
    lines = []
    if reading is not None and not judged:
        lines = [words.as_measured(state.tank.name, as_measured(reading, state.now))]
    return [*lines, usual, *_signs(analyte, way, state)]


def _signs(analyte: str, way: Way, state: State) -> list[str]:
    """What the record shows of the causes."""
    source = state.source.get(analyte)
    reading = state.last(analyte)
    lines = []
    brought = source is not None and reading is not None and source.value >= reading.value / 2.0
    if way == "high" and source is not None and brought and source.value > 0.0:
        lines.append(words.by_source(analyte, source.value, unit(analyte)))
    ph, kh, warmth = state.fresh("ph"), state.fresh("kh"), state.fresh("temperature")
    if analyte != "ph" or ph is None or kh is None or ph.is_limit or kh.is_limit:
        return lines
    carbon = carbon_dioxide(ph, kh, None if warmth is None else warmth.value, state.salinity)
    if carbon is not None and way == "high" and carbon.mg_l < LITTLE_CO2:
        lines.append(words.by_carbon(carbon.mg_l, little=True))
    if carbon is not None and way == "low" and carbon.mg_l > MUCH_CO2:
        lines.append(words.by_carbon(carbon.mg_l, little=False))
    return lines
