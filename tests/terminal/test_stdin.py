from __future__ import annotations

import asyncio
import os
import threading
from pathlib import Path

import pytest

from bot.terminal.stdin import CHUNK, InputLines


async def read_file(path: Path) -> list[str]:
    descriptor = os.open(path, os.O_RDONLY)
    try:
        return [line async for line in InputLines(descriptor)]
    finally:
        os.close(descriptor)


@pytest.mark.parametrize(
    ("data", "lines", "why"),
    [
        (b"", [], "an empty file"),
        (b"kh 4", ["kh 4"], "the last line without its end"),
        (b"kh 4\n", ["kh 4"], "and with it"),
        (b"a\n\nb\n", ["a", "", "b"], "blank lines count"),
        (b"a\r\nb\r\n", ["a", "b"], "ends of another system"),
        (b"a\rb\n", ["a\rb"], "a lone carriage return is text"),
        ("no₃ 20\u2028x\x0by\n".encode(), ["no₃ 20\u2028x\x0by"], "only \\n ends a line"),
        (b"\xef\xbb\xbfkh 4\n", ["kh 4"], "a byte order mark"),
        (b"kh \xff\xfe 4\nok", ["kh \ufffd\ufffd 4", "ok"], "undecodable bytes"),
        (b"\x00\x1b[2J\n", ["\x00\x1b[2J"], "control characters"),
        (b"x" * (3 * CHUNK) + b"\ny", ["x" * (3 * CHUNK), "y"], "longer than a chunk"),
        (b"\n" * 200_000, [""] * 200_000, "more chunks than are read ahead"),
        ("é".encode() * CHUNK, ["é" * CHUNK], "a character across two chunks"),
    ],
)
async def test_lines_of_a_file(tmp_path: Path, data: bytes, lines: list[str], why: str) -> None:
    path = tmp_path / "input"
    path.write_bytes(data)
    assert await read_file(path) == lines, why


async def test_an_empty_device() -> None:
    assert await read_file(Path(os.devnull)) == []


async def test_no_input_at_all() -> None:
    assert [line async for line in InputLines(None)] == []


async def test_a_folder_is_no_input(tmp_path: Path) -> None:
    with pytest.raises(IsADirectoryError):
        await read_file(tmp_path)


@pytest.mark.parametrize("blocking", [True, False])
async def test_a_pipe_is_read_while_other_things_happen(blocking: bool) -> None:
    reading, writing = os.pipe()
    os.set_blocking(reading, blocking)
    lines = aiter(InputLines(reading))
    first = asyncio.ensure_future(anext(lines))
    meanwhile = [number async for number in _count(50)]
    assert meanwhile == list(range(50))
    assert not first.done()
    os.write(writing, b"kh ")
    os.write(writing, b"4\nph 7")
    assert await first == "kh 4"
    os.close(writing)
    assert [line async for line in lines] == ["ph 7"]
    os.close(reading)


async def _count(end: int):  # type: ignore[no-untyped-def]
    for number in range(end):
        await asyncio.sleep(0)
        yield number


def test_a_reader_left_waiting_does_not_outlive_the_chat() -> None:
    reading, writing = os.pipe()

    async def leave_early() -> None:
        os.write(writing, b"kh 4\n")
        async for line in InputLines(reading):
            assert line == "kh 4"
            break

    before = threading.active_count()
    asyncio.run(leave_early())
    os.close(writing)  # the thread wakes, finds nobody, and ends without a word
    for thread in threading.enumerate():
        if thread is not threading.current_thread() and thread.daemon:
            thread.join(timeout=5)
    assert threading.active_count() <= before
    os.close(reading)
