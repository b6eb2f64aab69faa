"""A million random tanks and wishes against the second opinion of `tests.core.advice.never_harm`.

    python tests/bench/never_harm.py [cases] [seed]

Prints how many got a plan, how many were refused and why, and every harm found; ends with 1 if
there is any.
"""

from __future__ import annotations

import os
import sys
import time
from collections import Counter
from multiprocessing import Pool
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.core.advice import never_harm_changes
from tests.core.advice.never_harm import Verdict, cases, judge, planned

BATCH = 2000


def batch(seed: int) -> Verdict:
    answers = [(case, answer) for case in cases(BATCH, seed) for answer in planned(case)]
    return judge(answers)


def main() -> int:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 1_000_000
    first = int(sys.argv[2]) if len(sys.argv) > 2 else 1000
    began = time.perf_counter()
    whole, reasons = Verdict(), Counter[str]()
    with Pool(os.cpu_count()) as pool:
        for one in pool.imap_unordered(batch, range(first, first + -(-count // BATCH))):
            whole.planned += one.planned
            whole.safe += one.safe
            whole.safe_planned += one.safe_planned
            whole.harms += one.harms
            reasons.update(one.refused)
    asked = whole.planned + sum(reasons.values())
    print(f"{asked} answers in {time.perf_counter() - began:.0f} s: {whole.planned} plans")
    for reason, number in reasons.most_common():
        print(f"  refused {number:8d}  {reason}")
    print(f"built to be safe: {whole.safe_planned} of {whole.safe} planned")
    print(f"harms: {len(whole.harms)}")
    for harm in whole.harms[:20]:
        print("  ", harm)
    return 1 if whole.harms or changes(max(200, count // 50), first) else 0


def changes(count: int, seed: int) -> int:
    """One water change for every fifty doses; each is carried out step by step."""
    seeds = range(seed, seed + -(-count // 200))
    with Pool(os.cpu_count()) as pool:
        found = pool.starmap(never_harm_changes.judge, [(200, each) for each in seeds])
    print(f"water changes: {sum(one.as_asked for one in found)} as asked,", end=" ")
    print(f"{sum(one.in_steps for one in found)} in steps")
    reasons = sum((one.refused for one in found), Counter[str]())
    for reason, number in reasons.most_common(12):
        print(f"  none {number:8d}  {reason}")
    safe = sum(one.safe for one in found)
    print(f"built to be safe: {sum(one.safe_planned for one in found)} of {safe} planned")
    harms = [harm for one in found for harm in one.harms]
    print(f"harms: {len(harms)}")
    for harm in harms[:20]:
        print("  ", harm)
    return len(harms)


if __name__ == "__main__":
    sys.exit(main())
