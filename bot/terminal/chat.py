"""`meniscus chat`, wired: database, application, clock, output, and reminders while it lasts."""

from __future__ import annotations

import asyncio
import io
import logging
import signal
import sys
from collections.abc import Coroutine
from contextlib import suppress
from typing import TYPE_CHECKING, Any

from bot.clock import Clock, SimulatedClock, SystemClock
from bot.opening import opened
from bot.starting import StartError
from bot.terminal.output import JsonOutput, Output, TextOutput
from bot.terminal.place import own_database
from bot.terminal.session import Session

if TYPE_CHECKING:
    from bot.app import App
    from bot.terminal.options import Options

WAKER_AFTER_S = 0.2
"""When the clock of live reminders starts: a chat that is over by then never loads it."""


class DemoRefused(StartError):
    """The demonstration would be mixed into a keeper's own tanks."""


def chat(options: Options) -> int:
    """Hold the conversation and give the exit status.

    A signal ends it as the end of the input does, once the line at hand is answered, with the
    status that shells expect; a second signal does not wait.

    Raises
    ------
    StartError
        If the database is busy or cannot be opened; `DemoRefused` if it holds tanks already.
    BrokenPipeError
        If nobody reads the output any more.
    """
    return asyncio.run(_chat(options))


async def _chat(options: Options) -> int:
    over = asyncio.Event()
    caught = _end_on_signals(over)
    try:
        status = await _hold(options, over)
    except asyncio.CancelledError:
        if not caught:
            raise
    return 128 + caught[0] if caught else status


async def _hold(options: Options, over: asyncio.Event) -> int:
    clock = SystemClock() if options.clock is None else SimulatedClock(options.clock)
    with own_database(options.database) as url:
        async with opened(url, clock, options.defaults) as app:
            if options.demo and await app.holds_tanks():
                raise DemoRefused("this database holds tanks already: --demo is for an empty one")
            talks = _interactive() and not options.json
            session = Session(
                app, clock, _output(options), over=over, group=options.group, show_edits=talks
            )
            app.add_courier(session)
            await app.take_over(session.messenger)  # the file is ours alone
            if options.chosen_zone is not None:
                await app.live_by(session.address, options.chosen_zone)
            if options.demo:
                from bot.demo import build  # a season of history, seldom wanted

                await build(app, session.address)
            talk = _converse(session, app, options) if talks else _follow(session)
            return await _with_reminders(talk, session, app, clock)


def _end_on_signals(over: asyncio.Event) -> list[int]:
    """Set an event at a signal, and give the list in which it will be found."""
    caught: list[int] = []
    task = asyncio.current_task()

    def end(number: int) -> None:
        if caught and task is not None:
            task.cancel()
        caught.append(number)
        over.set()

    for name in ("SIGINT", "SIGTERM", "SIGHUP"):
        with suppress(AttributeError, NotImplementedError):  # not on Windows
            number = getattr(signal, name)
            if signal.getsignal(number) is not signal.SIG_IGN:  # such as under nohup
                asyncio.get_running_loop().add_signal_handler(number, end, number)
    return caught


async def _with_reminders(
    talk: Coroutine[Any, Any, int], session: Session, app: App, clock: Clock
) -> int:
    """Talk, while reminders come by the wall clock; a simulated clock moves only when told."""
    if isinstance(clock, SimulatedClock):
        return await talk
    reminding = asyncio.create_task(_remind(session, app))
    reminding.add_done_callback(lambda _: session.over.set())  # a fault there ends the talk, too
    try:
        return await talk
    finally:
        session.over.set()
        await reminding


async def _remind(session: Session, app: App) -> None:
    with suppress(TimeoutError):
        await asyncio.wait_for(session.over.wait(), WAKER_AFTER_S)
        return
    from bot.reminders.waker import Waker  # APScheduler, for a chat that stays

    await Waker(app).run(session.over)


async def _follow(session: Session) -> int:
    from bot.terminal.script import follow
    from bot.terminal.stdin import InputLines

    descriptor = None if sys.stdin is None else sys.stdin.fileno()
    try:
        return await follow(session, InputLines(descriptor))
    except IsADirectoryError as error:
        raise StartError(f"the input cannot be read: {error.strerror}") from error


async def _converse(session: Session, app: App, options: Options) -> int:
    from bot.terminal.interactive import converse  # prompt_toolkit

    folder = options.folder
    if folder is not None:  # a fault is for the log; the screen shows its reference
        logging.basicConfig(handlers=[logging.FileHandler(folder / "chat.log", delay=True)])
    return await converse(session, app, history=folder and folder / "history")


def _interactive() -> bool:
    streams = (sys.stdin, sys.stdout)
    return all(stream is not None and stream.isatty() for stream in streams)


def _output(options: Options) -> Output:
    if options.json:
        return JsonOutput(_write_bytes, options.zone)
    if isinstance(sys.stdout, io.TextIOWrapper):
        sys.stdout.reconfigure(errors="replace")  # for a terminal that knows no degree sign
    return TextOutput(_write_text, ansi=options.ansi)


def _write_bytes(data: bytes) -> None:
    sys.stdout.buffer.write(data)
    sys.stdout.buffer.flush()


def _write_text(text: str) -> None:
    sys.stdout.write(text)
    sys.stdout.flush()
