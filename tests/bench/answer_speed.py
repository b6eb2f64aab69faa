"""How long an answer takes in process: text to reply, database on a file, at the 95th percentile.

    python tests/bench/answer_speed.py [rounds]

The issue asks for under 20 ms on an unloaded core. The time of a reading alone stands beside it,
from the same run, so that the share of the planner can be seen.
"""

from __future__ import annotations

import asyncio
import statistics
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.chat.harness import talking

SET_UP = (
    "/tank new Fern 120 l fresh",
    "kh 4 gh 6 ph 7.2 no3 40 temp 25 ammonia 0.25",
    "/source tap ph 7.6 kh 8 gh 10 no3 5 temp 20",
)
ASKED = (
    "ph 7.2",
    "dose kh 6",
    "how much baking soda for 120 l from kh 3 to 9",
    "dose kh 6 gh 9",
    "what if i change 50%",
    "get nitrate under 20",
    "what does 10 g baking soda do",
    "how much salt for 20 l ro to gh 6 kh 4",
    "help ammonia",
)


async def main() -> None:
    rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 40
    with tempfile.TemporaryDirectory() as folder:
        async with talking(Path(folder)) as talk:
            for text in SET_UP:
                await talk.say(text)
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
