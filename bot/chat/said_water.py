"""The new water as a question itself says it: warm, undechlorinated, of a pH, of another kind."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any, Final

from bot.chat.supply import Supply
from bot.chat.turn import Turn
from core.advice.cautions import touched
from core.advice.state import Measured, State, measured
from core.message import parse
from core.message.fold import fold
from core.message.model import Question
from core.message.new_water import Felt, find, untreated
from core.message.waters import PURE, kind_of, mentioned
from core.tank import Tank

TIMES: Final[Mapping[str, int]] = {"twice": 2, "two": 2, "2": 2, "three": 3, "3": 3, "thrice": 3}
_IN_A_DAY: Final = re.compile(
    r"\b(?:(twice|thrice)|(two|three|[23])(?: times|x))"
    r" (?:today|daily|(?:a|per|in a|in one) day)\b",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Said:
    """What a question says of its new water.

    Attributes
    ----------
    readings : mapping of analyte to Measured
        What it measures.
    kind : str or None
        A water that nobody knows, as said.
    felt : "cold", "hot" or None
        Warmth without a number.
    untreated : bool
        True for water that still holds its chlorine.
    times : int
        How often the change is to be made in one day.
    caution : str or None
        The caution that its kind touches.
    """

    readings: Mapping[str, Measured]
    kind: str | None = None
    felt: Felt | None = None
    untreated: bool = False
    times: int = 1
    caution: str | None = None

    @property
    def figures(self) -> dict[str, float]:
        """Its readings as numbers."""
        return {name: reading.value for name, reading in self.readings.items()}


def apart(turn: Turn, question: Question, names: list[str]) -> tuple[Question, Said]:
    """Part a question from what it says of the new water, whose numbers are not the tank's."""
    text = question.text or ""
    repeated = _IN_A_DAY.search(text)
    times = 1 if repeated is None else TIMES[(repeated[1] or repeated[2]).casefold()]
    said = Said({}, untreated=untreated(text), times=times, caution=touched(text))
    found = find(text, names) if question.substance is None else None
    if found is None:
        return question, said
    told = parse(found.told, turn.context_apart()).values if found.told else ()
    read = [measured(value, turn.local_now, Tank("new water")) for value in told]
    readings = {each.analyte: each for each in read if each is not None}
    said = replace(said, readings=readings, kind=found.kind, felt=found.felt)
    if not readings:
        return question, said
    rest = text[: found.start] + text[found.end :]
    again = parse(rest, turn.context()).question
    if again is None or again.kind != question.kind:
        kept = {k: v for k, v in question.premises.items() if k not in readings}
        return replace(question, premises=kept), said
    return replace(again, text=text, tank=again.tank or question.tank), said


def unknown_kind(said: Said, text: str, names: list[str], default: str | None) -> str | None:
    """A water that is named, and that neither the keeper's sources nor general knowledge tell."""
    if said.kind is not None:
        return None if "kh" in said.readings else said.kind
    kinds = {kind_of(name) for name in names}
    plain = fold(text)
    for name in sorted(map(fold, names), key=len, reverse=True):
        plain = plain.replace(name, " " * len(name))
    for start, end, kind in mentioned(plain):
        own_tap = kind == "tap" and default is not None and kind_of(default) is None
        if kind not in PURE and kind not in kinds and not own_tap and "kh" not in said.readings:
            return text[start:end]
    return None


def as_said(turn: Turn, supply: Supply | None, said: Said) -> Supply | None:
    """The new water with the readings that the question gives it.

    Another KH is another water: its pH is then not that of the one on record.
    """
    if not said.readings:
        return supply
    if supply is None or said.kind is not None:
        if "kh" not in said.readings:
            return supply
        state = State(Tank("new water"), turn.local_now, readings=dict(said.readings))
        return Supply(said.kind or "new water", state, treated=1.0)
    held: dict[str, Any] = dict(supply.readings)
    if "kh" in said.readings:
        held.pop("ph", None)
    state = replace(supply.state, readings={**held, **said.readings})
    return replace(supply, state=state, stood=None, other=None)
