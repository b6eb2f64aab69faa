"""One sitting at the terminal: its lines become Incoming, its replies are shown and remembered."""

from __future__ import annotations

import asyncio
import logging
import uuid
from collections.abc import AsyncGenerator, AsyncIterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from bot.chat.model import Address, Button, Incoming, IncomingKind, Line, Reply
from bot.clock import Clock, SimulatedClock
from bot.delivery import Unreachable
from bot.terminal.lines import LineError, Move, Press, Say, read_line

if TYPE_CHECKING:
    from bot.app import App
    from bot.terminal.output import Output

MESSENGER = "terminal"
OWNER = "Owner"
LOG = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True)
class _Pressable:
    """The latest reply with buttons: which chat it was for, its id and what can be pressed."""

    address: Address
    ref: str
    buttons: tuple[Button, ...]


class Session:
    """A conversation in progress; also the courier that brings reminders to the terminal.

    Parameters
    ----------
    app : App
        Who answers.
    clock : Clock
        What time it is; lines can move it if it is simulated.
    output : Output
        Where replies are shown.
    over : asyncio.Event
        Set by a signal, or here when nobody reads the output any more: it is time to end.
    group : bool
        Whether the lines are said in a group, by several people.
    show_edits : bool
        Whether a message that only gives an earlier one fresh buttons is shown.

    Attributes
    ----------
    line : int
        How many lines were taken; 0 at the start.
    failed : bool
        Whether a fault of ours kept a line from being answered.
    """

    messenger = MESSENGER

    def __init__(
        self,
        app: App,
        clock: Clock,
        output: Output,
        *,
        over: asyncio.Event,
        group: bool = False,
        show_edits: bool = False,
    ) -> None:
        self.address = Address(MESSENGER, "group" if group else "private")
        self.line = 0
        self.failed = False
        self.over = over
        self._app = app
        self._clock = clock
        self._output = output
        self._group = group
        self._show_edits = show_edits
        self._id = uuid.uuid4().hex  # ids are new in every sitting on the same database
        self._count = 0
        self._latest: _Pressable | None = None
        self._broken: BrokenPipeError | None = None

    async def take(self, text: str) -> None:
        """Act on one input line.

        Raises
        ------
        LineError
            If the line is wrong usage.
        BrokenPipeError
            If nobody reads the output any more.
        """
        self.line += 1
        asked = read_line(text, group=self._group)
        if isinstance(asked, Move):
            await self._move(asked.span)
        elif isinstance(asked, Press):
            await self._press(asked)
        elif asked is not None:
            await self._say(asked)

    async def until_over(self, lines: AsyncIterator[str]) -> AsyncGenerator[str, None]:
        """Give lines until they end or it is time to, which then cuts off the wait for the next.

        Raises
        ------
        BrokenPipeError
            If it is time because nobody reads the output any more.
        """
        ending = asyncio.ensure_future(self.over.wait())
        try:
            while not self.over.is_set():
                line = asyncio.ensure_future(anext(lines, None))
                await asyncio.wait({line, ending}, return_when=asyncio.FIRST_COMPLETED)
                if not line.done():
                    line.cancel()
                    await asyncio.wait({line})
                elif (text := line.result()) is None:
                    return
                else:
                    yield text
        finally:
            ending.cancel()
        self._check()

    async def deliver_due(self) -> int:
        """Deliver what is due now; give how many messages that were."""
        count = await self._app.deliver_due()
        self._check()
        return count

    def _check(self) -> None:
        """Raise the `BrokenPipeError` of a reminder that nobody reads any more, if any."""
        if self._broken is not None:
            raise self._broken

    async def send(self, address: Address, reply: Reply) -> str:
        """Bring one reminder to the terminal, and give the id that it has there.

        Raises
        ------
        Unreachable
            If nobody reads the output any more: it stays due, and the sitting ends.
        """
        if reply.edits is not None and not self._show_edits:
            return reply.edits
        try:
            return self._show(address, reply)
        except BrokenPipeError as error:
            self._broken = error
            self.over.set()
            raise Unreachable("nobody reads the output any more") from error

    def note(self, text: str) -> None:
        """Say something about the terminal itself, which the chat knows nothing of."""
        self._output.show(Reply((Line(text),)), line=self.line, now=self._clock.now())

    async def _move(self, span: timedelta) -> None:
        if isinstance(self._clock, SimulatedClock):
            await self._walk(self._clock, _later(self._clock.now(), span))
        elif span:
            raise LineError(
                "only a simulated clock can be moved: start with --clock 2026-03-01T09:00"
            )
        await self.deliver_due()
        if not span:
            self._output.done(line=self.line)

    async def _walk(self, clock: SimulatedClock, target: datetime) -> None:
        """Move from one due time to the next, so that each is delivered at its own moment."""
        before = None
        while (due := await self._app.next_due()) is not None and due <= target:
            if due == before or self.over.is_set():
                break  # it stays due though it was tried, and the clock need not wait for ever
            clock.move_to(due)
            before = None if await self.deliver_due() else due
        clock.move_to(target)

    async def _press(self, press: Press) -> None:
        latest = self._latest
        if latest is None or not 1 <= press.number <= len(latest.buttons):
            self.note(_no_such_button(press.number, latest))
            return
        action = latest.buttons[press.number - 1].action
        await self._handle(
            self._incoming(
                "press", author=press.author, address=latest.address, ref=latest.ref, action=action
            )
        )

    async def _say(self, said: Say) -> None:
        await self._handle(
            self._incoming("message", author=said.author, address=self.address, text=said.text)
        )

    async def _handle(self, incoming: Incoming) -> None:
        try:
            replies = await self._app.handle(incoming)
        except Exception:
            self.failed = True
            reference = uuid.uuid4().hex[:8]
            LOG.exception("a message could not be answered, reference %s", reference)
            self.note(f"That went wrong on our side, and nothing was stored ({reference}).")
            return
        for reply in replies:
            await self._app.sent(incoming.address, reply, self._show(incoming.address, reply))

    def _incoming(
        self,
        kind: IncomingKind,
        *,
        author: str | None,
        address: Address,
        text: str = "",
        ref: str | None = None,
        action: str | None = None,
    ) -> Incoming:
        name = author or (OWNER if self._group else "")
        return Incoming(
            address=address,
            update_id=f"{self._id}-{self._next()}",
            kind=kind,
            at=self._clock.now(),
            text=text,
            author_id=name.casefold() or OWNER.casefold(),
            author_name=name,
            message_ref=ref or self._ref(),
            action=action,
            group=self._group,
            addressed=not self._group or kind == "press" or text.startswith("/"),
        )

    def _show(self, address: Address, reply: Reply) -> str:
        self._output.show(reply, line=self.line, now=self._clock.now())
        ref = self._ref()
        if reply.buttons:
            self._latest = _Pressable(address, ref, reply.buttons)
        return ref

    def _ref(self) -> str:
        return f"{self._id[:8]}-{self._next()}"

    def _next(self) -> int:
        self._count += 1
        return self._count


def _later(moment: datetime, span: timedelta) -> datetime:
    try:
        return moment + span
    except OverflowError:
        raise LineError("the clock ends with the year 9999") from None


def _no_such_button(number: int, latest: _Pressable | None) -> str:
    if latest is None:
        return "There is no button to press yet."
    return f"There is no button {number}; the latest reply has {len(latest.buttons)}."
