"""The table of substances against `periodictable`, the balance of charges and known figures."""

from __future__ import annotations

import periodictable
import pytest

from core.water.atoms import ATOMIC_WEIGHT, UnreadableFormula, molar_mass
from core.water.substances import (
    ION_FORMULA,
    SEA_SALT,
    SUBSTANCES,
    UnknownSubstance,
    substance,
)

CHARGE = {
    "calcium": 2,
    "magnesium": 2,
    "sodium": 1,
    "potassium": 1,
    "ammonia": 1,  # ammonium is the zero level of alkalinity
    "chloride": -1,
    "sulfate": -2,
    "nitrate": -1,
    "nitrite": -1,
    "phosphate": -1,  # so is H2PO4-
    "thiosulfate": -2,
    "borate": 0,  # and B(OH)3
    "carbon": 0,  # and CO2
}
PURE = [each for each in SUBSTANCES.values() if each is not SEA_SALT]


@pytest.mark.parametrize("element", sorted(ATOMIC_WEIGHT))
def test_atomic_weights_agree_with_periodictable(element):
    theirs = periodictable.elements.symbol(element).mass
    assert ATOMIC_WEIGHT[element] == pytest.approx(theirs, rel=4e-5)


@pytest.mark.parametrize("each", PURE, ids=lambda each: each.name)
def test_molar_masses_agree_with_periodictable(each):
    theirs = sum(
        periodictable.formula(part.lstrip("0123456789")).mass
        * int(part[: len(part) - len(part.lstrip("0123456789"))] or 1)
        for part in each.formula.split(".")
    )
    assert each.molar_mass == pytest.approx(theirs, rel=2e-5)


@pytest.mark.parametrize("each", PURE, ids=lambda each: each.name)
def test_alkalinity_is_the_charge_that_the_conservative_ions_leave(each):
    # Dickson 1981: alkalinity is what balances the ions at their zero levels.
    charge = sum(CHARGE[ion] * amount for ion, amount in each.ions.items())
    assert each.alkalinity == charge


@pytest.mark.parametrize("each", PURE, ids=lambda each: each.name)
def test_ions_hold_every_atom_of_the_formula(each):
    elements = {
        "calcium": "Ca",
        "magnesium": "Mg",
        "sodium": "Na",
        "potassium": "K",
        "ammonia": "N",
        "nitrate": "N",
        "phosphate": "P",
        "chloride": "Cl",
        "sulfate": "S",
        "thiosulfate": "S",
        "carbon": "C",
    }
    counted: dict[str, float] = {}
    for ion, amount in each.ions.items():
        atoms = amount * (2 if ion == "thiosulfate" else 1)
        counted[elements[ion]] = counted.get(elements[ion], 0) + atoms
    formula: dict[str, float] = {}
    for part in each.formula.split("."):
        for atom, count in periodictable.formula(part.lstrip("0123456789")).atoms.items():
            if atom.symbol not in {"H", "O"}:
                formula[atom.symbol] = formula.get(atom.symbol, 0) + count
    assert counted == formula


@pytest.mark.parametrize(
    ("name", "mg_per_litre_for_one_dkh", "source"),
    [
        ("sodium bicarbonate", 29.96, "check values R12, computed from atomic weights"),
        ("potassium bicarbonate", 35.7, "100.115 g/eq times 0.35665 meq/L"),
        ("sodium carbonate", 18.9, "105.988 / 2 g/eq times 0.35665 meq/L"),
    ],
)
def test_mass_for_one_german_degree(name, mg_per_litre_for_one_dkh, source):
    grams = 0.356652 / substance(name).alkalinity_per_gram
    assert 1000.0 * grams == pytest.approx(mg_per_litre_for_one_dkh, abs=0.05), source


@pytest.mark.parametrize(
    ("name", "ion", "mg_for_one_dkh"),
    [
        ("sodium bicarbonate", "sodium", 8.2),
        ("potassium bicarbonate", "potassium", 13.9),
    ],
)
def test_what_one_degree_of_bicarbonate_carries_along(name, ion, mg_for_one_dkh):
    each = substance(name)
    grams = 0.356652 / each.alkalinity_per_gram
    assert grams * each.milligrams_per_gram(ion) == pytest.approx(mg_for_one_dkh, abs=0.06)


def test_decahydrate_of_soda_weighs_2_7_times_the_anhydrous():
    ratio = (
        substance("sodium carbonate").alkalinity_per_gram
        / substance("sodium carbonate decahydrate").alkalinity_per_gram
    )
    assert ratio == pytest.approx(2.7, abs=0.01)


def test_dihydrate_of_calcium_chloride_weighs_1_3_times_the_anhydrous():
    ratio = (
        substance("calcium chloride").hardness_per_gram
        / substance("calcium chloride dihydrate").hardness_per_gram
    )
    assert ratio == pytest.approx(1.32, abs=0.01)


def test_reference_composition_of_sea_salt_millero_2008_grade_m():
    # The fractions are from memory; three sums that the paper states hold them to it.
    left_out = {"strontium": 0.0000810, "bromide": 0.0007520, "fluoride": 0.0000610}
    hydroxide = 0.0000071
    total = sum(SEA_SALT.ions.values()) + sum(left_out.values()) + hydroxide
    assert total == pytest.approx(1.0, abs=1e-9)
    charge = sum(CHARGE[ion] * amount for ion, amount in SEA_SALT.ions.items())
    charge += 2 * left_out["strontium"] - left_out["bromide"] - left_out["fluoride"]
    assert charge == pytest.approx(SEA_SALT.alkalinity, abs=1e-9)
    mass = sum(
        molar_mass(ION_FORMULA[ion]) * amount
        for ion, amount in SEA_SALT.ions.items()
        if ion not in {"carbon", "borate"}
    )
    mass += molar_mass("Sr") * left_out["strontium"] + molar_mass("Br") * left_out["bromide"]
    mass += molar_mass("F") * left_out["fluoride"]
    mass += 0.0015340 * molar_mass("HCO3") + 0.0002134 * molar_mass("CO3")
    mass += 0.0000086 * molar_mass("CO2") + hydroxide * molar_mass("OH")
    mass += 0.0000900 * molar_mass("B(OH)4") + 0.0002807 * molar_mass("B(OH)3")
    # The paper took 35.453 for chlorine; the 2021 weight is 0.003 less.
    assert mass == pytest.approx(SEA_SALT.molar_mass - 0.003 * 0.4875, abs=2e-4)


@pytest.mark.parametrize(
    ("ion", "milligrams_per_kg", "within"),
    [
        ("calcium", 412.0, 1.0),
        ("magnesium", 1284.0, 3.0),
        ("potassium", 399.0, 2.0),
    ],
)
def test_ions_of_sea_water_at_35_grade_m(ion, milligrams_per_kg, within):
    ours = 35.16504 * SEA_SALT.milligrams_per_gram(ion)
    assert ours == pytest.approx(milligrams_per_kg, abs=within)


def test_alkalinity_of_sea_water_boyd_grade_a():
    # Boyd, "Typical chemical characteristics of full-strength seawater": mean 116 mg/L as CaCO3.
    milligrams = 35.16504 * SEA_SALT.alkalinity_per_gram * molar_mass("CaCO3") / 2.0 * 1.0234
    assert milligrams == pytest.approx(116.0, abs=3.0)


@pytest.mark.parametrize("name", ["sodium", "", "Sodium bicarbonate"])
def test_unknown_names_are_refused_by_name(name):
    with pytest.raises(UnknownSubstance) as caught:
        substance(name)
    assert caught.value.name == name


@pytest.mark.parametrize(
    ("formula", "position", "why"),
    [
        ("Xx2", 0, "no such element"),
        ("Ca(OH2", 6, "bracket never closed"),
        ("Ca)2", 2, "bracket never opened"),
        ("", 0, "nothing"),
        ("NaCl.", 5, "nothing after the full stop"),
        ("Na-Cl", 2, "no such sign"),
    ],
)
def test_unreadable_formulas_name_the_place(formula, position, why):
    with pytest.raises(UnreadableFormula) as caught:
        molar_mass(formula)
    assert caught.value.position == position, why
