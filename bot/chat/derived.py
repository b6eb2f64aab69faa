"""What readings tell by themselves, bad or not: classes of hardness and buffer, ammonia, CO2."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from core.advice.carbon import CarbonDioxide, carbon_dioxide
from core.advice.findings import judge_ammonia
from core.advice.hardness import HardnessClass, buffer_class, hardness_classes
from core.advice.state import State
from core.message.model import Value
from core.tank import Tank

Classes = Mapping[str, Sequence[HardnessClass]]
"""Of GH and KH, by analyte: the class by each scheme, the one that is shown first."""

OFF_SCALE = 1000.0
"""Harder than any water that is kept: the far end of "over 20". [°dH]"""


@dataclass(frozen=True, slots=True)
class Derived:
    """What follows from the values just told of a tank.

    Attributes
    ----------
    classes : Classes
        Of the GH and the KH just told.
    ammonia : mapping or None
        As `judge_ammonia` gives it, where ammonia, pH or temperature was told.
    carbon : CarbonDioxide or None
        Where pH and KH were told together.
    """

    classes: Classes
    ammonia: Mapping[str, float | str] | None = None
    carbon: CarbonDioxide | None = None

    @classmethod
    def of(cls, values: Iterable[Value], state: State) -> Derived:
        """Work out what follows from values, with what else is known of the tank."""
        told = {value.analyte: value for value in values}
        judged = judge_ammonia(state) if told.keys() & {"ammonia", "ph", "temperature"} else None
        carbon = _carbon(state) if {"ph", "kh"} <= told.keys() else None
        return cls(classes_of(told.values(), state.tank), judged, carbon)

    def facts(self) -> dict[str, Any]:
        """The same under the names of a reading's facts."""
        facts: dict[str, Any] = {}
        if gh := self.classes.get("gh"):
            facts["hardness_class"] = _named(gh[0])
            facts["hardness_classes"] = [_named(held) for held in gh]
        if kh := self.classes.get("kh"):
            facts["buffer_class"] = _named(kh[0])
        if self.ammonia is not None:
            facts["nh3_n"] = self.ammonia["nh3_n"]
        if self.carbon is not None:
            facts["co2_mg_l"] = self.carbon.mg_l
            facts["co2_span"] = [self.carbon.least, self.carbon.most]
        return facts


def classes_of(values: Iterable[Value], tank: Tank) -> Classes:
    """The classes of a GH and a KH; none of a range that lies in two, none of GH in the sea."""
    found: dict[str, Sequence[HardnessClass]] = {}
    for value in values:
        if value.analyte == "gh" and not tank.is_sea:
            held = [hardness_classes(end) for end in _ends(value)]
        elif value.analyte == "kh":
            held = [[buffer_class(end, sea=tank.is_sea)] for end in _ends(value)]
        else:
            continue
        if held and held[0] == held[-1]:
            found[value.analyte] = held[0]
    return found


def _ends(value: Value) -> list[float]:
    """Between which a value lies, as far as it is told; empty where it is not told at all."""
    if value.canonical is None:
        return []
    if isinstance(value.canonical, tuple):
        return list(value.canonical)
    number = float(value.canonical)
    return {"<": [0.0, number], ">": [number, OFF_SCALE]}.get(value.qualifier, [number])


def _carbon(state: State) -> CarbonDioxide | None:
    ph, kh, temperature = state.last("ph"), state.last("kh"), state.fresh("temperature")
    if ph is None or kh is None or ph.is_limit or kh.is_limit:
        return None
    warm = temperature.value if temperature else None
    return carbon_dioxide(ph, kh, warm, state.salinity)


def _named(held: HardnessClass) -> str:
    return f"{held.word} ({held.scheme})"
