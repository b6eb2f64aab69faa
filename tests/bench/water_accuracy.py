"""How right the water chemistry is: worst differences found, as a Markdown table for the README.

python -m tests.bench.water_accuracy          # the whole grid, a few minutes
python -m tests.bench.water_accuracy --thin 9 # every ninth water of it
"""

from __future__ import annotations

import argparse
from collections.abc import Iterable
from dataclasses import dataclass, replace

import gsw
import numpy as np
import PyCO2SYS

from core.water.conductivity import practical_salinity
from core.water.density import density, grams_from_practical
from core.water.minerals import saturation_index
from core.water.oxygen import oxygen_saturation
from core.water.readings import from_readings
from core.water.solution import in_air, solve
from tests.core.water.against_phreeqc import (
    Difference,
    dosing,
    grid,
    mixing,
    resting,
    speciation,
    standing,
)

WATERS_MILLERO_WOOSLEY = 15


@dataclass
class Row:
    """One line of the table."""

    what: str
    against: str
    count: int
    worst: float
    limit: str
    where: str = ""


def collect(differences: Iterable[tuple[str, Difference]], against: str) -> list[Row]:
    rows: dict[str, Row] = {}
    for kind, difference in differences:
        size = difference.relative if kind.startswith("KH") else difference.size
        row = rows.setdefault(kind, Row(LABELS[kind], against, 0, 0.0, LIMITS[kind]))
        row.count += 1
        if size > row.worst:
            row.worst, row.where = size, difference.where
    return list(rows.values())


LABELS = {
    "pH": "pH of fresh water as it is",
    "SI calcite": "its saturation index, calcite",
    "SI aragonite": "its saturation index, aragonite",
    "pH stood": "pH after standing in air, 300 to 5,000 µatm",
    "pH mixed": "pH of two waters mixed",
    "pH dosed": "pH after a dose of one of fourteen salts and acids",
    "pH at rest": "pH where it ends over calcite or aragonite",
    "KH at rest": "KH where it ends over them",
}
LIMITS = {
    "pH": "0.02",
    "SI calcite": "0.03",
    "SI aragonite": "0.03",
    "pH stood": "0.02",
    "pH mixed": "0.02",
    "pH dosed": "0.02",
    "pH at rest": "0.03",
    "KH at rest": "3 %",
}


def fresh(thin: int) -> list[Row]:
    few = list(grid(3 * thin))
    pairs = zip(few, few[::-1], strict=True)
    return [
        *collect(speciation(grid(thin)), "PHREEQC"),
        *collect(standing(grid(3 * thin)), "PHREEQC"),
        *collect(mixing(pairs), "PHREEQC"),
        *collect(dosing(grid(thin)), "PHREEQC"),
        *collect(resting(grid(13 * thin)), "PHREEQC"),
    ]


def sea() -> list[Row]:
    mesh = np.meshgrid(
        np.arange(15.0, 42.1, 3.0),
        np.arange(2.0, 38.1, 3.0),
        (1.5, 2.3, 3.0, 4.5),
        (0.8, 0.9, 0.97),
    )
    practical, celsius, alkalinity, ratio = (axis.ravel() for axis in mesh)
    plain = from_readings(salinity=grams_from_practical(practical), temperature=celsius)
    water = replace(plain, alkalinity=alkalinity, carbon=alkalinity * ratio)
    theirs = PyCO2SYS.sys(
        par1=1000.0 * water.alkalinity,
        par2=1000.0 * water.carbon,
        par1_type=1,
        par2_type=2,
        salinity=practical,
        temperature=celsius,
        total_borate=1000.0 * water.borate,
        total_calcium=1000.0 * water.calcium,
        opt_k_carbonic=WATERS_MILLERO_WOOSLEY,
        opt_pH_scale=1,
    )
    ours = solve(water)
    off = np.abs(ours.ph_total - theirs["pH_total"])
    index = np.abs(saturation_index(ours, "aragonite") - np.log10(theirs["saturation_aragonite"]))
    return [
        Row("pH of sea water, total scale", "PyCO2SYS", off.size, float(off.max()), "0.02"),
        Row("SI aragonite of sea water", "PyCO2SYS", off.size, float(index.max()), "0.03"),
    ]


def hand_over() -> list[Row]:
    salinity = np.arange(4.0, 16.01, 0.1)
    worst = 0.0
    for celsius in (5.0, 15.0, 25.0, 35.0):
        for kh in (2.0, 7.0, 15.0):
            for pressure in (420.0, 2000.0):
                water = from_readings(salinity=salinity, kh=kh, temperature=celsius)
                ph = in_air(water, pressure).ph
                worst = max(worst, float(np.abs(np.diff(ph)).max()))
    label = "step of pH in 0.1 g/kg of salt, fresh to sea (4 to 16 g/kg)"
    return [Row(label, "itself", salinity.size * 24, worst, "0.004")]


def salinity() -> list[Row]:
    celsius, grams = (
        axis.ravel() for axis in np.meshgrid(np.arange(0.0, 40.1, 1.0), np.arange(0.0, 42.1, 1.0))
    )
    dense = np.abs(1000.0 * density(celsius, grams) - gsw.rho_t_exact(grams, celsius, 0.0))
    conductivity, warm = (
        axis.ravel() for axis in np.meshgrid(np.arange(0.5, 60.0, 0.5), np.arange(2.0, 36.0, 1.0))
    )
    theirs = gsw.SP_from_C(conductivity, warm, 0.0)
    usable = theirs < 42.0
    practical = np.abs(practical_salinity(conductivity[usable], warm[usable]) - theirs[usable])
    celsius_o, practical_o = (
        axis.ravel() for axis in np.meshgrid(np.arange(0.0, 38.1, 2.0), np.arange(0.0, 40.1, 4.0))
    )
    grams_o = grams_from_practical(practical_o)
    oxygen = gsw.O2sol_SP_pt(practical_o, celsius_o) * 31.9988e-3 * density(celsius_o, grams_o)
    off = np.abs(oxygen_saturation(celsius_o, grams_o) - oxygen)
    return [
        Row("density, g/L", "gsw (TEOS-10)", dense.size, float(dense.max()), "0.02"),
        Row("practical salinity", "gsw (PSS-78)", practical.size, float(practical.max()), "0.001"),
        Row("oxygen at saturation, mg/L", "gsw", off.size, float(off.max()), "0.05"),
    ]


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--thin", type=int, default=1, help="take every n-th water of the grid")
    parser.add_argument("--where", action="store_true", help="say where the worst case is")
    arguments = parser.parse_args()
    rows = [*fresh(arguments.thin), *sea(), *hand_over(), *salinity()]
    print(
        "Fresh water: KH 0.1 to 25 and GH 0 to 30 °dH, pH 5 to 9.5, 2 to 38 °C, a grid of "
        f"{sum(1 for _ in grid()):,} waters"
        + (f", every {arguments.thin}th of it." if arguments.thin > 1 else ".")
    )
    print()
    print("| what | against | waters | worst difference | allowed |")
    print("|---|---|---|---|---|")
    for row in rows:
        worst = f"{100 * row.worst:.1f} %" if "%" in row.limit else f"{row.worst:.4f}"
        print(f"| {row.what} | {row.against} | {row.count:,} | {worst} | {row.limit} |")
    if arguments.where:
        for row in rows:
            print(f"{row.what}: worst at {row.where or '-'}")


if __name__ == "__main__":
    main()
