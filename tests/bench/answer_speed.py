"""How long an answer takes in process: text to reply, database on a file, at the 95th percentile.

    python tests/bench/answer_speed.py [rounds]

The issue asks for under 20 ms on an unloaded core. The house is opened as the program does it, and
noting under which id a reply was sent counts with the answer. A reading alone stands first, so that
the share of what is reckoned for the others can be seen.
"""

from __future__ import annotations

import asyncio
import statistics
import sys
import tempfile
import time
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from bot.clock import SimulatedClock
from bot.defaults import Defaults
from bot.opening import opened
from tests.chat.harness import START, Talk

SET_UP = (
    "/tank new Reef 200 l reef",
    "kh 7 ca 400 mg 1280 salinity 35 ph 8.1 temp 25",
    "/tank new Fern 120 l fresh",
    "kh 4 gh 6 ph 7.2 no3 40 temp 25 ammonia 0.25",
    "added 10 neon tetras",
    "/source tap ph 7.6 kh 8 gh 10 no3 5 temp 20",
)
ASKED = (
    "ph 7.2",
    "ph 7.2 kh 4 gh 6 no3 40 temp 25 ammonia 0.25",
    "why",
    "more",
    "dose kh 6",
    "how much baking soda for 120 l from kh 3 to 9",
    "dose kh 6 gh 9",
    "what if i change 50%",
    "get nitrate under 20",
    "get gh 4 with ro",
    "is my water ok",
    "should i change water",
    "can i keep cardinal tetras",
    "can i add fish",
    "what could live in my water",
    "why is my ph low",
    "what does 10 g baking soda do",
    "how much salt for 20 l ro to gh 6 kh 4",
    "when will nitrate be 60",
    "co2",
    "changed 30%",
    "help ammonia",
    "remind me to change water every sunday",
    "Reef: dose kh 8",  # last, as it makes Reef the tank in use
    "Reef: dose ca 430",
)


@asynccontextmanager
async def talking() -> AsyncIterator[Talk]:
    """Open the house on a new file, and a chat in it with what is known before it is asked."""
    with tempfile.TemporaryDirectory() as folder:
        url = f"sqlite+aiosqlite:///{Path(folder) / 'chat.sqlite3'}"
        clock = SimulatedClock(START)
        async with opened(url, clock, Defaults(timezone="UTC")) as app:
            talk = Talk(app, clock)
            for text in SET_UP:
                await talk.say(text)
            yield talk


async def main() -> None:
    rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 40
    async with talking() as talk:
        for text in ASKED:
            times = []
            await talk.say(text)  # what loads at the first use is not an answer's time
            for _ in range(rounds):
                began, worked = time.perf_counter(), time.process_time()
                await talk.say(text)
                times.append((time.perf_counter() - began, time.process_time() - worked))
            wall = statistics.quantiles([each[0] for each in times], n=20)[-1]
            work = statistics.quantiles([each[1] for each in times], n=20)[-1]
            print(f"{1e3 * wall:7.1f} ms p95, {1e3 * work:6.1f} ms of processor  {text}")


if __name__ == "__main__":
    asyncio.run(main())
