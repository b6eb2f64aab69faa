"""Numbers and names inside a finding's line."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words import names
from bot.chat.words.numbers import plain, small
from core.analytes import ANALYTES

Facts = Mapping[str, float | str]

SMALL: Final = -1
"""To two figures instead of so many decimals."""


def number(facts: Facts, name: str) -> float:
    """A fact as a number; KeyError where the finding lacks it."""
    return float(facts[name])


def label(facts: Facts) -> str:
    """The analyte's name in the middle of a line."""
    return names.label(str(facts["analyte"]))


def analyte(facts: Facts) -> str:
    """The analyte's name where the line begins with it."""
    name = label(facts)
    return name if facts["analyte"] == "ph" else names.capital(name)


def amount(facts: Facts, name: str) -> str:
    """A number of the finding's analyte, as fine as the analyte is shown."""
    known = ANALYTES.get(str(facts["analyte"]))
    return plain(number(facts, name), known.decimals if known else 2)


def with_unit(facts: Facts, name: str) -> str:
    """A number of the finding's analyte with its unit."""
    known = ANALYTES.get(str(facts["analyte"]))
    unit = "" if known is None or known.unit == "pH" else f" {known.unit}"
    return f"{amount(facts, name)}{unit}"


def filled(template: str, facts: Facts, **decimals: int) -> str:
    """A template with numbers of a finding, each to so many decimals."""
    numbers = {
        name: small(number(facts, name)) if fine == SMALL else plain(number(facts, name), fine)
        for name, fine in decimals.items()
    }
    return template.format(**numbers)


def wish_of_kh(facts: Facts) -> str:
    """The KH that is to be asked for where it is under its limit. [°dH]"""
    return plain(max(round(number(facts, "limit") + 0.5), 1), 1)
