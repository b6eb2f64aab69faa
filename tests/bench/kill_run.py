"""Kill `meniscus run` 50 times while updates are in flight, and count what was lost.

python -m tests.bench.kill_run --kills 50 --engine sqlite
"""

from __future__ import annotations

import argparse
import asyncio
import itertools
import json
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from bot.database_url import async_url
from bot.store.database import Database
from bot.store.migrate import bring_up_to_date
from tests.botapi import BotApi
from tests.engines import new_postgres_database, postgres_server
from tests.telegram.killing import PHASES, Killer, Outcome
from tests.telegram.process import BotProcess


async def kill_often(url: str, kills: int, log: Path) -> Outcome:
    """Kill a bot on a database that many times, in all phases in turn; count at the end."""
    database = Database(async_url(url))
    await bring_up_to_date(database)
    try:
        async with BotApi().running() as server:
            bot = BotProcess(server, url, log)
            await bot.start()
            try:
                killer = Killer(server, bot, database)
                for number, phase in enumerate(itertools.islice(itertools.cycle(PHASES), kills)):
                    await killer.kill_in(phase)
                    print(f"kill {number + 1}: {phase}", flush=True)
                outcome = await killer.settle()
                assert await bot.stop() == 0
                return outcome
            finally:
                bot.kill()
                await bot.wait()
    finally:
        await database.close()


@contextmanager
def a_database(engine: str, folder: Path) -> Iterator[str]:
    """A new database, by the URL that an operator would write."""
    if engine == "sqlite":
        yield f"sqlite:///{folder / 'meniscus.sqlite3'}"
        return
    for server in postgres_server():
        made = asyncio.run(new_postgres_database(server))
        yield made.render_as_string(hide_password=False)


def main() -> None:
    """Read the options, kill, and print the counts."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--kills", type=int, default=50)
    parser.add_argument("--engine", choices=("sqlite", "postgresql"), default="sqlite")
    options = parser.parse_args()
    started = time.monotonic()
    with tempfile.TemporaryDirectory() as name, a_database(options.engine, Path(name)) as url:
        log = Path(name) / "bot.log"
        outcome = asyncio.run(kill_often(url, options.kills, log))
        troubles = [line for line in log.read_text().splitlines() if " ERROR " in line]
    counts = {**vars(outcome), "lost": outcome.lost, "errors_logged": len(troubles)}
    print(json.dumps(counts, indent=2))
    for line in troubles[:5]:
        print(line)
    print(
        f"{options.engine}: {outcome.lost} of {outcome.said} messages lost over "
        f"{sum(outcome.kills.values())} kills in {time.monotonic() - started:.0f} s"
    )


if __name__ == "__main__":
    main()
