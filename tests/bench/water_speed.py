"""How fast the water chemistry is, as ratios to PHREEQC and PyCO2SYS in one run.

    python -m tests.bench.water_speed

Every figure is the best of many short turns, and the programs take turns, so that a busy machine
slows all of them alike.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import time
from collections.abc import Callable

import numpy as np
import PyCO2SYS
from phreeqpython import PhreeqPython

from core.water import Interval, from_readings, in_air, mix, sample, solve
from core.water.water import Water

SHORT_TURNS = 150
LONG_TURNS = 7
MANY = 100_000


def timed(call: Callable[[], object], times: int) -> float:
    start = time.perf_counter()
    for _ in range(times):
        call()
    return (time.perf_counter() - start) / times


def in_turns(calls: dict[str, tuple[Callable[[], object], int]], turns: int) -> dict[str, float]:
    """Best seconds a call of each, measured in turns."""
    rounds: dict[str, list[float]] = {name: [] for name in calls}
    for _ in range(turns):
        for name, (call, times) in calls.items():
            rounds[name].append(timed(call, times))
    return {name: min(seconds) for name, seconds in rounds.items()}


def waters(size: int) -> Water:
    """Fresh waters over the range of tanks: KH 0.5 to 15, GH 1 to 20, pH 6 to 8.5, 10 to 32 °C."""
    rng = np.random.default_rng(20260101)
    given = {
        "ph": rng.uniform(6.0, 8.5, size),
        "kh": rng.uniform(0.5, 15.0, size),
        "gh": rng.uniform(1.0, 20.0, size),
        "temperature": rng.uniform(10.0, 32.0, size),
    }
    return from_readings(**given)


def one_of(water: Water, position: int) -> Water:
    names = ("temperature", "alkalinity", "carbon", "calcium", "magnesium", "sodium", "chloride")
    return Water(**{name: float(np.atleast_1d(getattr(water, name))[position]) for name in names})


def phreeqc_text(water: Water, number: int) -> str:
    return (
        f"SOLUTION {number}\nunits mmol/kgw\ntemp {water.temperature}\n"
        f"Alkalinity {water.alkalinity}\nC(4) {water.carbon}\nCa {water.calcium}\n"
        f"Mg {water.magnesium}\nNa {water.sodium + 1e-6}\nCl {water.chloride + 1e-6}\n"
    )


def scalar(water: Water) -> None:
    engine = PhreeqPython()
    amounts = {
        "units": "mmol/kgw",
        "temp": water.temperature,
        "Alkalinity": water.alkalinity,
        "C(4)": water.carbon,
        "Ca": water.calcium,
        "Mg": water.magnesium,
        "Na": water.sodium + 1e-6,
        "Cl": water.chloride + 1e-6,
    }
    text = phreeqc_text(water, 1)
    steady = engine.add_solution(amounts)

    def interface() -> float:
        solution = engine.add_solution(amounts)
        ph = float(solution.pH)
        solution.forget()
        return ph

    best = in_turns(
        {
            "ours": (lambda: solve(water).ph, 20),
            "phreeqpython, a solution": (interface, 5),
            "phreeqpython, bare input text": (lambda: engine.ip.run_string(text), 10),
            "phreeqpython, a small change": (lambda: steady.change({"NaCl": 1e-9}), 10),
        },
        SHORT_TURNS,
    )
    print("one water, alkalinity + carbon + temperature to pH with ion pairs:")
    report(best)


def arrays() -> None:
    many = waters(MANY)
    few = [one_of(many, position) for position in range(400)]
    engine = PhreeqPython()
    text = "".join(phreeqc_text(water, number + 1) for number, water in enumerate(few))

    def phreeqc() -> None:
        engine.ip.run_string(text)

    micromoles = (1000.0 * many.alkalinity, 1000.0 * many.carbon)

    def pyco2sys() -> object:
        return PyCO2SYS.sys(
            par1=micromoles[0],
            par2=micromoles[1],
            par1_type=1,
            par2_type=2,
            salinity=35.0,
            temperature=many.temperature,
        )

    best = in_turns(
        {
            "ours": (lambda: solve(many).ph, 1),
            "phreeqpython, one batch of 400": (phreeqc, 1),
            "PyCO2SYS, vectorised": (pyco2sys, 1),
        },
        LONG_TURNS,
    )
    per_water = {
        "ours": best["ours"] / MANY,
        "phreeqpython, one batch of 400": best["phreeqpython, one batch of 400"] / len(few),
        "PyCO2SYS, vectorised": best["PyCO2SYS, vectorised"] / MANY,
    }
    print(f"{MANY:,} waters at once, a water:")
    report(per_water)


def report(seconds: dict[str, float]) -> None:
    ours = seconds["ours"]
    for name, value in seconds.items():
        print(f"  {name:32} {1e6 * value:9.2f} µs   {value / ours:8.1f} times ours")


def doubt() -> None:
    def change(ph: float, kh: float, tap_ph: float, tap_kh: float) -> dict[str, float]:
        tank = from_readings(ph=ph, kh=kh, gh=4.0, temperature=25.0)
        tap = from_readings(ph=tap_ph, kh=tap_kh, gh=10.0, temperature=15.0)
        mixed = mix([(tank, 60.0), (tap, 60.0)])
        return {"at once": solve(mixed).ph, "stood": in_air(mixed, 420.0).ph}

    readings = {
        "ph": Interval(6.3, 6.7),
        "kh": Interval(0.5, 1.5),
        "tap_ph": Interval(7.2, 7.8),
        "tap_kh": Interval(7.5, 8.5),
    }
    seconds = [timed(lambda: sample(change, readings), 1) for _ in range(25)]
    print(
        "a change of water with air exchange, 1,000 possibilities: "
        f"best {1e3 * min(seconds):.1f} ms, median {1e3 * statistics.median(seconds):.1f} ms"
    )


def importing() -> None:
    code = (
        "import time, sys; start = time.perf_counter(); import core.water; "
        "print((time.perf_counter() - start) * 1e3, 'numpy' in sys.modules)"
    )
    runs = [
        subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
        for _ in range(7)
    ]
    best = min(float(run.stdout.split()[0]) for run in runs)
    print(f"import core.water: {best:.0f} ms, numpy loaded: {runs[0].stdout.split()[1]}")


def main() -> None:
    scalar(one_of(waters(10), 3))
    arrays()
    doubt()
    importing()


if __name__ == "__main__":
    main()
