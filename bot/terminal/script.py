"""The piped conversation: one message a line in, one reply an object or a paragraph out."""

from __future__ import annotations

import sys
from collections.abc import AsyncIterable
from contextlib import aclosing

from bot.terminal.lines import LineError
from bot.terminal.session import Session


async def follow(session: Session, lines: AsyncIterable[str]) -> int:
    """Answer line after line until the input ends or it is time to.

    Overdue reminders come first, before anything is read.

    Returns
    -------
    int
        The exit status: 2 at a line that is wrong usage, which ends it; at the end of the input 0,
        or 1 if a fault of ours kept a line from being answered.
    """
    await session.deliver_due()
    async with aclosing(session.until_over(aiter(lines))) as given:
        async for line in given:
            try:
                await session.take(line)
            except LineError as error:
                sys.stderr.write(f"meniscus chat: line {session.line}: {error}\n")
                return 2
    return int(session.failed)
