from __future__ import annotations

import asyncio

import pytest

from bot.inbox.together import Together


async def test_what_comes_while_a_write_is_under_way_is_written_with_the_next() -> None:
    batches: list[list[int]] = []
    gate = asyncio.Event()

    async def write(items: list[int]) -> None:
        batches.append(items)
        await gate.wait()

    together = Together(write)
    adding = [asyncio.create_task(together.add(number)) for number in range(3)]
    while not batches:  # noqa: ASYNC110 - the first write starts by itself
        await asyncio.sleep(0)
    adding += [asyncio.create_task(together.add(number)) for number in range(3, 6)]
    adding[4].cancel()
    gate.set()
    await asyncio.gather(*adding, return_exceptions=True)
    assert sorted(number for batch in batches for number in batch)[:4] == [0, 1, 2, 3]
    assert len(batches) <= 3
    await together.add(9)
    assert batches[-1] == [9]


async def test_everybody_hears_of_a_failure_and_the_next_write_is_new() -> None:
    failures = [ConnectionError("gone")]

    async def write(_items: list[int]) -> None:
        if failures:
            raise failures.pop()

    together = Together(write)
    results = await asyncio.gather(together.add(1), together.add(2), return_exceptions=True)
    assert [type(result) for result in results] == [ConnectionError, ConnectionError]
    await together.add(3)
    failures.append(ConnectionError("again"))
    with pytest.raises(ConnectionError, match="again"):
        await together.add(4)
