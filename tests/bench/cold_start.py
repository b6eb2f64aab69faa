"""Cold start to the first reply of `meniscus chat`, and what it holds in memory when idle.

Run as `python tests/bench/cold_start.py [runs]`. Each run starts a bare interpreter, one with
SQLAlchemy's asynchronous part (which most of the start goes into), the chat on a new database
and the chat on an existing one, one after the other, so that all see the same machine. Figures
are medians, and ratios to the bare interpreter.
"""

from __future__ import annotations

import json
import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path

import psutil

ROOT = Path(__file__).parents[2]
IDLE_AFTER_S = 1.5
BARE = "import sys; print('ready', flush=True); sys.stdin.readline()"
LIBRARY = "import sqlalchemy.ext.asyncio; " + BARE


def measure(command: Sequence[str], given: str, folder: Path) -> tuple[float, float]:
    """Seconds to the first line of output, and MiB resident a while after it."""
    around = {
        **os.environ,
        "PYTHONPATH": str(ROOT),
        "XDG_DATA_HOME": str(folder),
        "XDG_CONFIG_HOME": str(folder),
    }
    started = time.perf_counter()
    with subprocess.Popen(
        command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, env=around
    ) as process:
        assert process.stdin is not None
        assert process.stdout is not None
        process.stdin.write(given)
        process.stdin.flush()
        first = process.stdout.readline()
        elapsed = time.perf_counter() - started
        assert first, f"{command} said nothing"
        time.sleep(IDLE_AFTER_S)
        resident = psutil.Process(process.pid).memory_info().rss / 2**20
        process.stdin.write("\n")
        process.stdin.close()
        process.stdout.read()
    return elapsed, resident


def main() -> None:
    """Measure and print one JSON object."""
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else 7
    chat = [sys.executable, "-m", "bot", "chat", "--json"]
    kept: dict[str, list[tuple[float, float]]] = {}
    with tempfile.TemporaryDirectory() as name:
        used = Path(name) / "used"
        measure(chat, "kh 4\n", used)
        for run in range(runs):
            fresh = Path(name) / str(run)
            for what, command, given, folder in (
                ("bare", [sys.executable, "-c", BARE], "", fresh),
                ("sqlalchemy", [sys.executable, "-c", LIBRARY], "", fresh),
                ("chat, new database", chat, "kh 4\n", fresh),
                ("chat, existing database", chat, "kh 4\n", used),
            ):
                kept.setdefault(what, []).append(measure(command, given, folder))
    medians = {
        what: tuple(statistics.median(column) for column in zip(*rows, strict=True))
        for what, rows in kept.items()
    }
    seconds, resident = medians["bare"]
    for what, (median_s, median_mib) in medians.items():
        print(
            json.dumps(
                {
                    "what": what,
                    "runs": runs,
                    "first_line_ms": round(median_s * 1000),
                    "start_ratio": round(median_s / seconds, 1),
                    "idle_mib": round(median_mib, 1),
                    "memory_ratio": round(median_mib / resident, 1),
                }
            )
        )


if __name__ == "__main__":
    main()
