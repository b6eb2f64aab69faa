"""Bought products by the words of their label: so many grams for so many litres raise so much."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, replace
from datetime import timedelta
from typing import Final

from core.advice import limits
from core.advice.alarm_words import named
from core.advice.buffers import STRONG
from core.advice.plan import Refusal
from core.advice.state import Measured, State
from core.analytes import FREE
from core.message.bought import plain_name
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.substances import ACIDS, SALTS

_LABEL: Final = re.compile(
    r"(\S+) (\S+) per (\S+)(?: l)?(?: (raises|lowers|removes) (.+))?", re.IGNORECASE
)
"""A label in the usual order of its words, as `core.message.labels` puts it."""
_NEVER: Final = ("battery_acid", "caustic", "medicine", "condensate", "bleach", "carbonate", "acid")
"""What a product may not be by its name, the worst first."""

ITS_OWN: Final = (1.0, math.inf)
"""What is told in mg/L takes at least its own mass of a product. [mg/L per mg/L]"""

SALT_NEEDED: Final = {
    "kh": (17.0, 75.0), "gh": (16.0, 80.0),
    **dict.fromkeys(("calcium", "magnesium", "nitrate", "phosphate", "potassium", "iron"), ITS_OWN),
}  # fmt: skip
"""Least and most of a product that raise by one, of what a label may tell. Of hardness as a salt,
with some room for rounding, computed from formulas (grade C): anhydrous sodium carbonate 18.9 and
magnesium chloride 17.0; a mixture of bicarbonate with as much again of something else 60, calcium
gluconate 76.8. [mg/L per °dH or mg/L]"""

HARDNESS: Final = frozenset({"kh", "gh"})
"""What a day's step is known of, whatever a label gives at a time."""

CHLORINE: Final = "chlorine"
"""What a conditioner is told to take out; how much of it, its label hardly ever says."""

CONDITIONS: Final = (0.0005, 10.0)
"""Least and most of a conditioner a litre that is believed: from a fifth of what the weakest
chlorination needs of thiosulfate to a hundredth of the water; common practice. [g/L or mL/L]"""

SALT_IN_ML: Final = 1000.0
"""No solution holds more of a salt; from memory (potassium carbonate 0.8 g/mL). [mg/mL]"""

MOST_ML: Final = 10.0
"""A solution of which more is needed for a degree is hardly sold: a hundredth of the water;
common practice, no source. [mL/L per °dH]"""

FILLED: Final = 4.0
"""Times as much as any salt that may be believed when it is said again: the rest is filler."""


@dataclass(frozen=True, slots=True)
class Label:
    """What a label promises: `amount` [`unit`] in `litres` raises `analyte` by `rise`.

    The rise is in the analyte's canonical unit, °dH or mg/L; of chlorine, which is taken out, it is
    0 and not known.
    """

    amount: float
    unit: str
    litres: float
    analyte: str
    rise: float

    def needed(self, rise: float, litres: float) -> float:
        """How much raises a volume by so much, in the label's unit."""
        return self.dose(litres) * rise / self.rise

    def dose(self, litres: float) -> float:
        """How much its label gives for a volume, in its unit."""
        return self.amount * litres / self.litres

    def given(self, amount: float, litres: float) -> float:
        """By how much an amount in its unit raises a volume."""
        return self.rise * amount / self.dose(litres)

    @property
    def doubt(self) -> Refusal | None:
        """What no salt can do: ``label_past_salts``, believed if said again where `again` is 1."""
        if self.analyte == CHLORINE:
            low, high = CONDITIONS
            return None if low <= self.dose(1.0) <= high else Refusal("label_implausible")
        low, high = SALT_NEEDED[self.analyte]
        each = self.needed(1.0, 1.0)
        if self.unit == "g":
            each *= 1000.0
        else:
            low, high = low / SALT_IN_ML, MOST_ML if math.isfinite(high) else high
        if low <= each <= high:
            return None
        facts: dict[str, float | str] = {
            "analyte": self.analyte, "each": each, "least": low, "most": high,
            "measure": "mg/L" if self.unit == "g" else "ml/L",
        }  # fmt: skip
        return Refusal("label_past_salts", facts | {"again": float(high < each <= high * FILLED)})


@dataclass(frozen=True, slots=True)
class Product:
    """A product of a name, by its label or by what it did here.

    Attributes
    ----------
    name : str
        As the keeper calls it.
    label : Label
        What so much of it does.
    rise_low, rise_high : float
        Ends of the rise that the kits leave open; both the rise itself by a label. [°dH]
    learned : bool
        True where it was seen here, False where the label says so.
    """

    name: str
    label: Label
    rise_low: float
    rise_high: float
    learned: bool = False

    @classmethod
    def of_label(cls, name: str, label: Label) -> Product:
        """A product by the words of its label."""
        return cls(name, label, label.rise, label.rise)

    def needed(self, rise: float, litres: float) -> float:
        """How much raises a volume by so much at most, in the label's unit.

        By the strongest effect that is left open, so that no step is longer than was wished.
        """
        return replace(self.label, rise=self.rise_high).needed(rise, litres)


LEARNED_WITHIN: Final = timedelta(days=3)
"""Longest time from the reading before a dose to the one after it; our judgement."""

SETTLED_AFTER: Final = timedelta(hours=1)
"""Time that a dose takes to spread before a reading tells of it; common practice, no source."""


def learn(
    name: str, amount: float, unit: str, litres: float, before: Measured, after: Measured
) -> Product | None:
    """What a product does, by a reading before and one after a dose of it.

    Parameters
    ----------
    name, amount, unit : str, float, str
        What was dosed, in g or ml.
    litres : float
        Net volume of the tank. [L]
    before, after : Measured
        Of one analyte, with the kit's doubt.

    Returns
    -------
    Product or None
        None where the two readings are too far apart, at the ends of a scale, or leave open
        whether anything rose at all.
    """
    if (
        before.is_limit
        or after.is_limit
        or not timedelta() < after.at - before.at <= LEARNED_WITHIN
    ):
        return None
    # Both readings' doubts add up in the difference.
    rise = after.value - before.value
    low, high = after.low - before.high, after.high - before.low
    if rise <= 0.0 or low <= 0.0 or amount <= 0.0 or litres <= 0.0:
        return None
    return Product(name, Label(amount, unit, litres, after.analyte, rise), low, high, learned=True)


def never(text: str) -> Refusal | None:
    """Refuse a product that by its name is none for water with animals, whatever its label says.

    Examples
    --------
    >>> never("household bleach").reason, never("slaked lime").reason
    ('bleach', 'carbonate')
    """
    said = named(text)
    found = {*said.get("refuse", ()), *said.get("asked", ()), *said.get("label", ())}
    if (reason := next((each for each in _NEVER[:-1] if each in found), None)) is not None:
        return Refusal(reason)
    substances = _substances(text)
    if acids := ACIDS.intersection(substances):
        return Refusal("acid", {"substance": min(acids)})
    if not STRONG.isdisjoint(substances):
        return Refusal("carbonate")
    return Refusal("label_refused") if _NEVER[-1] in found else None


def salt_of(name: str) -> str | None:
    """The salt that a product's name is, where it names nothing else."""
    tokens = [token for token in cut(fold(name), lexicon(), name) if token.kind != "fill"]
    if len(tokens) == 1 and tokens[0].kind == "substance" and tokens[0].value in SALTS:
        return str(tokens[0].value)
    return None


def salt_in(text: str) -> str | None:
    """The one salt that a text names, None where it names none or several.

    Examples
    --------
    >>> salt_in("my bag of baking soda says 99% pure, 30 g per 100 l")
    'sodium bicarbonate'
    """
    named = set(_substances(text)) & set(SALTS)
    return named.pop() if len(named) == 1 else None


def _substances(text: str) -> list[str]:
    return [str(t.value) for t in cut(fold(text), lexicon(), text) if t.kind == "substance"]


def given_since(product: str, state: State, reading: Measured | None) -> Refusal | None:
    """Refuse another dose on a reading from before one of a product."""
    name = plain_name(product)
    for event in (state.events or ()) if reading is not None else ():
        if event.what.kind != "dose" or plain_name(event.what.substance or "") != name:
            continue
        if reading is not None and reading.at <= event.at <= state.now:
            return Refusal("dosed_since", {"analyte": reading.analyte, "substance": product})
    return None


def read_labels(text: str) -> tuple[Label, ...] | Refusal | None:
    """Read the words of a label, put in the usual order; None where it does another thing.

    Parameters
    ----------
    text : str
        As `core.message.labels` writes it.

    Returns
    -------
    tuple of Label, Refusal or None
        One label for each analyte that is raised. Refused: ``label_lowers``, ``label_unmeasured``
        (in caps, drops or spoons that hold no amount, or with a unit left out) and
        ``label_implausible``.

    Examples
    --------
    >>> read_labels("5 g per 80 l raises kh 1")
    (Label(amount=5.0, unit='g', litres=80.0, analyte='kh', rise=1.0),)
    >>> read_labels("10 drop per 10 l raises kh 1").reason
    'label_unmeasured'
    """
    found = _LABEL.fullmatch(text)
    if found is None:
        return None
    amount, unit, litres, way, effects = found.groups()
    if way == "lowers":
        only = all(part.split()[0] in {"kh", "ph"} for part in effects.split(", "))
        return Refusal("label_lowers") if only else None
    if unit not in _UNITS or litres == "?":
        return Refusal("label_unmeasured")
    if effects is None:
        return None
    if not all(0.0 < float(each) < limits.VOLUME_LARGEST for each in (amount, litres)):
        return Refusal("label_implausible")
    labels = []
    for part in effects.split(", "):
        analyte, _, rise = part.partition(" ")
        if analyte in FREE:
            continue  # a trace of manganese is nothing that is reckoned with
        if analyte not in SALT_NEEDED and way != "removes":
            return None
        rises = float(rise or 0.0)
        labels.append(Label(float(amount), _UNITS[unit], float(litres), analyte, rises))
    return tuple(labels) or None


_UNITS: Final = {"g": "g", "mL": "ml"}
