"""Message to reply in one process, beside the bare commit that it cannot do without.

Both write to the same SQLite file (WAL, synchronous FULL), in turn, so that a slow disk slows
both. Run: python -m tests.bench.message_reply [--count N]
"""

from __future__ import annotations

import argparse
import asyncio
import sqlite3
import statistics
import tempfile
import time
from pathlib import Path

from tests.chat.harness import Talk, talking

MESSAGES = {
    "a reading": "ph 7.2 kh 4 gh 8 no3 20",
    "a dose": "how much baking soda for 120 l from kh 3 to 6",
    "a reminder": "remind me to test fern every 7 days at 19:00",
    "chatter": "hello there",
}


def bare_commit(connection: sqlite3.Connection) -> float:
    start = time.perf_counter()
    connection.execute("BEGIN IMMEDIATE")
    connection.execute("INSERT INTO bare (text) VALUES ('kh 4')")
    connection.execute("COMMIT")
    return time.perf_counter() - start


async def timed(talk: Talk, text: str) -> float:
    start = time.perf_counter()
    await talk.say(text)
    return time.perf_counter() - start


async def measure(folder: Path, count: int) -> None:
    async with talking(folder) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        bare = sqlite3.connect(folder / "chat.sqlite3", isolation_level=None)
        bare.execute("PRAGMA synchronous = FULL")
        bare.execute("CREATE TABLE bare (id INTEGER PRIMARY KEY, text TEXT)")
        for name, text in MESSAGES.items():
            whole, commit = [], []
            for _ in range(count):
                whole.append(await timed(talk, text))
                commit.append(bare_commit(bare))
            reply, alone = statistics.median(whole), statistics.median(commit)
            worst = sorted(whole)[int(len(whole) * 0.95)]
            print(
                f"{name:12} reply {reply * 1e3:6.2f} ms (95 % under {worst * 1e3:6.2f}),"
                f" bare commit {alone * 1e3:5.2f} ms, ratio {reply / alone:5.1f}"
            )
        bare.close()


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--count", type=int, default=200)
    count = parser.parse_args().count
    with tempfile.TemporaryDirectory() as folder:
        asyncio.run(measure(Path(folder), count))


if __name__ == "__main__":
    main()
