"""Lines of standard input, read beside the event loop so that reminders need not wait for them.

A thread reads, because a pipe, a file, an empty device and a terminal have no other way in
common. It reads the descriptor itself: a buffered reader would hold a lock that the interpreter
needs when it ends, while the thread still waits for a line that never comes.
"""

from __future__ import annotations

import asyncio
import os
import select
import threading
from collections.abc import AsyncIterator, Iterator

CHUNK = 65_536
AHEAD = 4
"""How many chunks are read before the first of them is answered."""


class InputLines:
    """The lines of a descriptor, without their ends; undecodable bytes become U+FFFD.

    Parameters
    ----------
    descriptor : int or None
        What is read; None where there is no input at all.
    """

    def __init__(self, descriptor: int | None) -> None:
        self._descriptor = descriptor
        self._chunks: asyncio.Queue[list[str] | OSError | None] = asyncio.Queue()
        self._room = threading.Semaphore(AHEAD)
        self._lines: list[str] = []

    async def __aiter__(self) -> AsyncIterator[str]:
        """Give line after line until the input ends.

        Raises
        ------
        OSError
            If the input cannot be read, such as a folder.
        """
        if self._descriptor is None:
            return
        loop = asyncio.get_running_loop()
        threading.Thread(target=self._read, args=(loop, self._descriptor), daemon=True).start()
        while (chunk := await self._chunks.get()) is not None:
            if isinstance(chunk, OSError):
                raise chunk
            for line in chunk:
                yield line
            self._room.release()

    def _read(self, loop: asyncio.AbstractEventLoop, descriptor: int) -> None:
        try:
            for lines in _chunks_of_lines(descriptor):
                self._room.acquire()
                loop.call_soon_threadsafe(self._chunks.put_nowait, lines)
            loop.call_soon_threadsafe(self._chunks.put_nowait, None)
        except OSError as error:
            loop.call_soon_threadsafe(self._chunks.put_nowait, error)
        except RuntimeError:
            if not loop.is_closed():  # else the chat is over, and nobody waits for lines
                raise


def _chunks_of_lines(descriptor: int) -> Iterator[list[str]]:
    rest: list[bytes] = []  # the pieces of a line that has not ended yet
    while data := _read_some(descriptor):
        *ends, last = data.split(b"\n")
        if ends:
            ends[0] = b"".join(rest) + ends[0]
            rest = []
            yield [_decoded(line) for line in ends]
        rest.append(last)
    if any(rest):
        yield [_decoded(b"".join(rest))]


def _read_some(descriptor: int) -> bytes:
    while True:
        try:
            return os.read(descriptor, CHUNK)
        except BlockingIOError:  # another program left the descriptor non-blocking
            select.select([descriptor], [], [])


def _decoded(line: bytes) -> str:
    return line.removesuffix(b"\r").decode("utf-8", errors="replace").removeprefix("\ufeff")
