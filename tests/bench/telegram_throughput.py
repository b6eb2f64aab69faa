"""Updates per second through the real bot and the local server, beside a bare echo bot.

    python -m tests.bench.telegram_throughput

Every update is a reading that is parsed, stored (SQLite, synchronous FULL) and answered; the
echo bot says it back and keeps nothing. `limited` is the bot as it ships, under Telegram's limit
of 30 messages a second.
"""

from __future__ import annotations

import argparse
import asyncio
import tempfile
import time
from pathlib import Path

import psutil

from tests.botapi import BotApi
from tests.telegram.process import BotProcess

COMMANDS = {
    "echo": ("-m", "tests.bench.bots", "echo"),
    "ours": ("-m", "tests.bench.bots", "ours"),
    "limited": ("-m", "bot", "run"),
}


async def rate(kind: str, updates: int, chats: int, folder: Path) -> tuple[float, float]:
    """Updates answered per second, and the bot's processor time for each. [1/s, ms]"""
    async with BotApi().running() as server:
        people = [server.world.person(f"Keeper{number}") for number in range(chats)]
        bot = BotProcess(server, f"sqlite:///{folder / kind}.sqlite3", folder / f"{kind}.log")
        await bot.start(*COMMANDS[kind])
        try:
            server.world.say(server.world.private(people[0]), people[0], "kh 4")
            await server.until(lambda: len(server.accepted()) == 1, timeout=120)
            before = psutil.Process(bot.pid).cpu_times()
            started = time.perf_counter()
            for number in range(updates):
                person = people[number % chats]
                server.world.say(server.world.private(person), person, f"kh {number % 9 + 1}")
            await server.until(lambda: len(server.accepted()) == updates + 1, timeout=300)
            spent = time.perf_counter() - started
            after = psutil.Process(bot.pid).cpu_times()
            await bot.stop()
        finally:
            bot.kill()
            await bot.wait()
    busy = after.user + after.system - before.user - before.system
    return updates / spent, 1000 * busy / updates


async def measure(updates: int, chats: int, repeats: int) -> None:
    """Measure all bots in turn, several times, and print the best of each and the ratio."""
    best: dict[str, tuple[float, float]] = {}
    for _ in range(repeats):
        for kind in COMMANDS:
            with tempfile.TemporaryDirectory() as folder:
                found = await rate(kind, updates, chats, Path(folder))
            best[kind] = max(best.get(kind, found), found)
    for kind, (per_second, cost) in best.items():
        print(f"{kind:8} {per_second:7.1f} updates/s  {cost:6.2f} ms of processor an update")
    print(f"ours / echo: {best['ours'][0] / best['echo'][0]:.2f}")


def main() -> None:
    """Read the options and measure."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--updates", type=int, default=400)
    parser.add_argument("--chats", type=int, default=100)
    parser.add_argument("--repeats", type=int, default=3)
    options = parser.parse_args()
    asyncio.run(measure(options.updates, options.chats, options.repeats))


if __name__ == "__main__":
    main()
