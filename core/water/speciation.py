"""What a water holds at one guess of hydrogen and bicarbonate: every species, and the slopes.

Total alkalinity and total inorganic carbon follow from the hydrogen activity `h` (as a meter
reads it) and free bicarbonate; their slopes against ``x = ln h`` and ``y = ln [HCO3-]`` feed
Newton's steps.
"""

from __future__ import annotations

from typing import NamedTuple

from core.water._elementwise import PLAIN_TYPES
from core.water.conditional import Acids, Conditional, Sulfates


class Totals(NamedTuple):
    """Amounts that speciation does not change. [mol/kg]."""

    calcium: float
    magnesium: float
    sodium: float
    potassium: float
    sulfate: float
    anions: float  # charge of chloride, nitrate, nitrite, thiosulfate: they pair with nothing
    ammonia: float
    phosphate: float
    borate: float
    organic: float


class Species(NamedTuple):
    """One evaluation: free concentrations [mol/kg], the two totals and their slopes."""

    co2: float
    co3: float
    calcium: float
    magnesium: float
    sulfate: float  # a better value of the free one than that given
    strength: float
    alkalinity: float
    carbonate_alkalinity: float
    carbon: float
    alkalinity_x: float
    alkalinity_y: float
    carbon_x: float
    carbon_y: float
    strength_x: float  # of the free metals, carbonate and bicarbonate, the bulk of it
    strength_y: float


_Parts = tuple[float, float, float, float]
"""Total of a metal, and its bicarbonate, carbonate and hydroxide pairs per free ion."""


def absent(total: float) -> bool:
    """Tell whether a total is a plain zero, so that its part of the work can be left out."""
    return isinstance(total, PLAIN_TYPES) and total == 0.0


def evaluate(
    k: Conditional,
    sulfates: Sulfates | None,
    acids: Acids | None,
    t: Totals,
    h: float,
    hco3: float,
    sulfate: float,
) -> Species:
    """Compute all species; `sulfate` is the free sulfate of the step before."""
    per_h, k1, k2, kw, ca_hco3, ca_co3, ca_oh, mg_hco3, mg_co3, mg_oh, na_hco3, na_co3 = k
    co3 = hco3 * k2 / h
    co2 = hco3 * h / k1
    hydroxide = kw / h
    hydrogen = h * per_h
    calcium = (t.calcium, ca_hco3 * hco3, ca_co3 * co3, ca_oh / h)
    magnesium = (t.magnesium, mg_hco3 * hco3, mg_co3 * co3, mg_oh / h)
    ca_s = mg_s = 0.0
    if sulfates is not None:
        sulfate = _free_sulfate(sulfates, t, h, sulfate, calcium, magnesium)
        ca_s, mg_s = sulfates.ca_so4 * sulfate, sulfates.mg_so4 * sulfate
        hydrogen = hydrogen + h * sulfates.hso4 * sulfate
    ca, ca_b, ca_c, ca_o, ca_x, ca_y = _metal(*calcium, ca_s)
    mg, mg_b, mg_c, mg_o, mg_x, mg_y = _metal(*magnesium, mg_s)
    # Everything that holds one bicarbonate, one carbonate, one hydroxide:
    sodium, b, c = 0.0, hco3 + ca_b + mg_b, co3 + ca_c + mg_c
    if not absent(t.sodium):
        sodium = t.sodium / (1.0 + na_hco3 * hco3 + na_co3 * co3)
        b, c = b + hco3 * na_hco3 * sodium, c + co3 * na_co3 * sodium
    o = hydroxide + ca_o + mg_o
    carbonate_alkalinity = b + c + c
    carbon = co2 + b + c
    alkalinity = carbonate_alkalinity + o - hydrogen
    # A pair follows its free metal; `_x` and `_y` are the metals' relative slopes.
    ca_held, mg_held = ca_b + ca_c, mg_b + mg_c
    ca_bases, mg_bases = ca_held + ca_c + ca_o, mg_held + mg_c + mg_o
    alkalinity_x = ca_bases * ca_x + mg_bases * mg_x - c - c - o - hydrogen
    alkalinity_y = carbonate_alkalinity + ca_bases * ca_y + mg_bases * mg_y
    carbon_x = co2 - c + ca_held * ca_x + mg_held * mg_x
    carbon_y = carbon + ca_held * ca_y + mg_held * mg_y
    charges = (
        4.0 * (ca + mg + co3 + sulfate) + (hco3 + hydroxide + hydrogen)
        + (sodium + t.potassium + t.anions) + (ca_b + mg_b + ca_o + mg_o)
    )  # fmt: skip
    if acids is not None:
        bases, bases_x, squares = _minor(acids, t, h, ca, mg)
        alkalinity = alkalinity + bases
        alkalinity_x = alkalinity_x + bases_x
        charges = charges + squares
    return Species(
        co2,
        co3,
        ca,
        mg,
        sulfate,
        0.5 * charges,
        alkalinity,
        carbonate_alkalinity,
        carbon,
        alkalinity_x,
        alkalinity_y,
        carbon_x,
        carbon_y,
        2.0 * (ca * ca_x + mg * mg_x - co3),
        2.0 * (ca * ca_y + mg * mg_y + co3) + 0.5 * hco3,
    )


def _metal(
    total: float, b: float, c: float, o: float, s: float
) -> tuple[float, float, float, float, float, float]:
    """Share a metal among its free ion and its pairs.

    `b`, `c`, `o`, `s` are bicarbonate, carbonate, hydroxide and sulfate pairs per free ion.
    Returned are the free ion, its first three pairs, and the relative slopes of the free ion
    with x and y: ``free = total / whole``, so ``d ln free / dx = (c + o) / whole``.
    """
    if absent(total):
        return 0.0, 0.0, 0.0, 0.0, 0.0, 0.0
    whole = 1.0 + b + c + o + s
    free = total / whole
    return free, free * b, free * c, free * o, (c + o) / whole, -(b + c) / whole


def _free_sulfate(
    k: Sulfates, t: Totals, h: float, sulfate: float, calcium: _Parts, magnesium: _Parts
) -> float:
    """One step of Newton on the balance of sulfate, with the metals sharing themselves out."""
    present = sulfate * (1.0 + k.na_so4 * t.sodium + k.k_so4 * t.potassium + k.hso4 * h)
    slope = present
    for (total, b, c, o), constant in ((calcium, k.ca_so4), (magnesium, k.mg_so4)):
        whole = 1.0 + b + c + o + constant * sulfate
        pair = total * constant * sulfate / whole
        present = present + pair
        slope = slope + pair * (1.0 - constant * sulfate / whole)
    return sulfate * (1.0 + (t.sulfate - present) / (slope + 1e-30))  # elements without any stay 0


def _minor(k: Acids, t: Totals, h: float, ca: float, mg: float) -> tuple[float, float, float]:
    """Bases that the minor acids hold, the slope of that, and their squared charges.

    For every acid ``d bases / dx`` is minus the variance of the number of protons.
    """
    bases = slope = squares = 0.0
    for total, constant, acid_charge, base_charge in (
        (t.ammonia, k.ammonium, 1.0, 0.0),
        (t.borate, k.boric, 0.0, 1.0),
        (t.organic, k.organic, 0.0, 1.0),
    ):
        if not absent(total):
            share = constant / (constant + h)
            base = total * share
            bases = bases + base
            slope = slope - base * (1.0 - share)
            squares = squares + base_charge * base + acid_charge * (total - base)
    if not absent(t.phosphate):
        # Relative to free H2PO4-: its own level, one proton more, one less, two less.
        level = 1.0 + k.ca_h2po4 * ca + k.mg_h2po4 * mg
        more = h / k.phosphoric_1
        less = k.phosphoric_2 / h * (1.0 + k.ca_hpo4 * ca + k.mg_hpo4 * mg)
        least = k.phosphoric_2 * k.phosphoric_3 / (h * h) * (1.0 + k.ca_po4 * ca + k.mg_po4 * mg)
        zero = 1.0 / (level + more + less + least)
        mean = zero * (less + 2.0 * least - more)
        square = zero * (less + 4.0 * least + more)
        bases = bases + t.phosphate * mean
        slope = slope - t.phosphate * (square - mean * mean)
        squares = squares + t.phosphate * zero * (1.0 + 4.0 * less + 9.0 * least)
    return bases, slope, squares
