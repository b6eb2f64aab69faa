"""What a line of a water report comes to: an amount, or the ways in which it can be read."""

from __future__ import annotations

from dataclasses import dataclass

from core.analytes import ANALYTES
from core.message.model import Basis, Qualifier, Value

APART = 0.15
"""Share by which two ways to the same hardness may differ; our judgement."""


@dataclass(frozen=True, slots=True)
class Amount:
    """A value of a report.

    Attributes
    ----------
    analyte : str
        Id of the analyte that it is, or leads to.
    value : float or None
        As written; None for a range and where nothing was found.
    low, high : float or None
        A range's ends.
    unit : str or None
        Our spelling of the unit.
    canonical : float or tuple of float, or None
        In the analyte's canonical unit.
    qualifier, basis : str
        As of a reading.
    how : str or None
        What a derived value follows from: bicarbonate, acid_capacity, alkalinity, ions.
    at_20 : bool
        True for a conductivity at 20 °C, made one at 25.
    """

    analyte: str
    value: float | None
    canonical: float | tuple[float, float] | None
    low: float | None = None
    high: float | None = None
    unit: str | None = None
    qualifier: Qualifier = "="
    basis: Basis | None = None
    how: str | None = None
    at_20: bool = False

    def as_value(self) -> Value:
        """As a reading that can be stored: a derived one in canonical units."""
        row = ANALYTES[self.analyte]
        written = self.how is None and not self.at_20
        number = self.value if written else _rounded(_one(self.canonical), row.decimals)
        ends = (self.low, self.high)
        if not written:
            low, high = _ends(self.canonical)
            ends = (_rounded(low, row.decimals), _rounded(high, row.decimals))
        return Value(
            self.analyte,
            number,
            *ends,
            qualifier=self.qualifier,
            unit=self.unit if written else row.unit,
            canonical=self.canonical,
            canonical_unit=row.unit,
            basis=self.basis,
        )

    def differs(self, other: Amount) -> bool:
        """Whether two ways to the same amount lead too far apart."""
        one, two = middle(self.canonical), middle(other.canonical)
        return one is not None and two is not None and abs(one - two) > APART * max(one, two, 1.0)


@dataclass(frozen=True, slots=True)
class Unclear:
    """A line that can be read in several ways.

    Attributes
    ----------
    name : str
        Its name's id.
    reason : str
        unit or number.
    options : tuple of (str, Amount)
        Each answer with what it makes of the line.
    said : str
        The name as the report has it.
    """

    name: str
    reason: str
    options: tuple[tuple[str, Amount], ...]
    said: str = ""

    def fitting(self, canonical: float | tuple[float, float] | None) -> Amount | None:
        """The only reading that agrees with a value got in another way; None where not one."""
        other = Amount("gh", None, canonical)
        fit = [amount for _, amount in self.options if not amount.differs(other)]
        return fit[0] if len(fit) == 1 else None


def _one(canonical: float | tuple[float, float] | None) -> float | None:
    return None if isinstance(canonical, tuple) else canonical


def _rounded(number: float | None, decimals: int) -> float | None:
    """A figure that was worked out, no finer than a hundredth of a degree deserves."""
    return None if number is None else round(number, decimals)


def _ends(canonical: float | tuple[float, float] | None) -> tuple[float | None, float | None]:
    return canonical if isinstance(canonical, tuple) else (None, None)


def middle(canonical: float | tuple[float, float] | None) -> float | None:
    """The middle of a range, or the number itself."""
    if isinstance(canonical, tuple):
        return (canonical[0] + canonical[1]) / 2.0
    return canonical
