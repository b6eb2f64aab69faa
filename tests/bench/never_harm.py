"""A million random tanks and wishes against the second opinion of `tests.core.advice.never_harm`.

    python tests/bench/never_harm.py [cases] [seed] [processes]

Prints how many got a plan, how many were refused and why, how many of those built to be safe were
planned (each plan is held to reach its target), and every harm found; then the same of water
changes, one for every fifty doses. Ends with 1 if there is any harm or fewer than 95 in a hundred
of the safe ones were planned.
"""

from __future__ import annotations

import os
import sys
import time
from collections import Counter
from multiprocessing import Pool
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.core.advice import never_harm_change_cases, never_harm_changes
from tests.core.advice.never_harm import Verdict, judge
from tests.core.advice.never_harm_cases import cases, planned

BATCH = 2000
CHANGES = 200
SAFE = 0.95
SHOWN = 20


def batch(seed: int) -> Verdict:
    return judge([(case, answer) for case in cases(BATCH, seed) for answer in planned(case)])


def doses(pool: object, count: int, first: int) -> bool:
    began = time.perf_counter()
    whole = Verdict()
    seeds = range(first, first + -(-count // BATCH))
    for number, one in enumerate(pool.imap_unordered(batch, seeds), 1):  # type: ignore[attr-defined]
        whole.add(one)
        if number % 25 == 0:
            print(f"  {number * BATCH} cases, {time.perf_counter() - began:.0f} s", flush=True)
    asked = whole.planned + sum(whole.refused.values())
    print(f"{len(seeds) * BATCH} cases, {asked} answers in {time.perf_counter() - began:.0f} s")
    print(f"  planned {whole.planned:8d}")
    for goal, number in whole.goals.most_common():
        print(f"          {number:8d}  to {goal}")
    print(f"          {whole.emergencies:8d}  at an emergency's pace")
    print(f"          {whole.upkeeps:8d}  with a daily need")
    for reason, number in whole.refused.most_common():
        print(f"  refused {number:8d}  {reason}")
    return told(whole.safe_planned, whole.safe, whole.harms)


def batch_of_changes(seed: int) -> never_harm_changes.Verdict:
    return never_harm_changes.judge(never_harm_change_cases.cases(CHANGES, seed))


def changes(pool: object, count: int, first: int) -> bool:
    began = time.perf_counter()
    whole = never_harm_changes.Verdict()
    seeds = range(first, first + -(-count // CHANGES))
    for number, one in enumerate(pool.imap_unordered(batch_of_changes, seeds), 1):  # type: ignore[attr-defined]
        whole.add(one)
        if number % 50 == 0:
            print(f"  {number * CHANGES} changes, {time.perf_counter() - began:.0f} s", flush=True)
    print(f"{len(seeds) * CHANGES} water changes in {time.perf_counter() - began:.0f} s")
    print(f"  as asked {whole.as_asked:8d}\n  in steps {whole.in_steps:8d}")
    print(f"           {whole.emergencies:8d}  by an emergency's limits")
    print(
        f"  none     {sum(whole.refused.values()):8d}, by each limit that the whole change breaks:"
    )
    limits = Counter[str]()
    for reason, number in whole.refused.items():
        limits.update(dict.fromkeys(reason.split(", "), number))
    for reason, number in limits.most_common():
        print(f"           {number:8d}  {reason}")
    return told(whole.safe_planned, whole.safe, whole.harms)


def told(planned_safe: int, safe: int, harms: list[str]) -> bool:
    """Print the verdict; True where it is good."""
    print(f"built to be safe: {planned_safe} of {safe} planned ({100 * planned_safe / safe:.2f} %)")
    print(f"harms: {len(harms)}")
    for kind, number in Counter(harm.split(":")[0] for harm in harms).most_common():
        print(f"  {number:8d}  {kind}")
    for harm in harms[:SHOWN]:
        print("  ", harm)
    return not harms and planned_safe >= SAFE * safe


def main() -> int:
    count, first, processes = (
        int(sys.argv[place]) if len(sys.argv) > place else usual
        for place, usual in ((1, 1_000_000), (2, 1000), (3, os.cpu_count() or 1))
    )
    with Pool(processes) as pool:
        well = doses(pool, count, first)
        well = changes(pool, max(CHANGES, count // 50), first) and well
    return 0 if well else 1


if __name__ == "__main__":
    sys.exit(main())
