"""`meniscus chat`, wired: database, application, clock, output, and reminders while it lasts."""

from __future__ import annotations

import asyncio
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

    Raises
    ------
    StartError
        If the database is busy or cannot be opened; `DemoRefused` if it holds tanks already.
    BrokenPipeError
        If nobody reads the output any more.
    KeyboardInterrupt
        On Ctrl-C in a piped chat, after everything was put away.
    """
    return asyncio.run(_until_a_signal(_chat(options)))


async def _until_a_signal(conversation: Coroutine[Any, Any, int]) -> int:
    """Let a signal end the conversation in an orderly way, with the status that shells expect."""
    task = asyncio.create_task(conversation)
    caught: list[int] = []

    def stop(number: int) -> None:
        caught.append(number)
        task.cancel()

    for name in ("SIGTERM", "SIGHUP"):
        with suppress(AttributeError, NotImplementedError):  # not on Windows
            number = getattr(signal, name)
            if signal.getsignal(number) is not signal.SIG_IGN:  # such as under nohup
                asyncio.get_running_loop().add_signal_handler(number, stop, number)
    try:
        return await task
    except asyncio.CancelledError:
        if caught:
            return 128 + caught[0]
        raise


async def _chat(options: Options) -> int:
    clock = SystemClock() if options.clock is None else SimulatedClock(options.clock)
    with own_database(options.database) as url:
        async with opened(url, clock, options.defaults) as app:
            if options.demo and await app.holds_tanks():
                raise DemoRefused("this database holds tanks already: --demo is for an empty one")
            talks = _interactive() and not options.json
            session = Session(app, clock, _output(options), group=options.group, show_edits=talks)
            app.add_courier(session)
            if options.demo:
                from bot.demo import build  # a season of history, seldom wanted

                await build(app, session.address)
            talk = _converse(session, app, options) if talks else _follow(session)
            return await _with_reminders(talk, session, app, clock)


async def _with_reminders(
    talk: Coroutine[Any, Any, int], session: Session, app: App, clock: Clock
) -> int:
    """Talk, while reminders come by the wall clock; a simulated clock moves only when told."""
    if isinstance(clock, SimulatedClock):
        return await talk
    try:
        async with asyncio.TaskGroup() as tasks:
            tasks.create_task(_remind(session, app))
            status = await talk
            session.over.set()
    except ExceptionGroup as group:
        raise group.exceptions[0] from None
    return status


async def _remind(session: Session, app: App) -> None:
    with suppress(TimeoutError):
        await asyncio.wait_for(session.over.wait(), WAKER_AFTER_S)
        return
    from bot.reminders.waker import Waker  # APScheduler, for a chat that stays

    await Waker(app).run(session.over)
    session.check()


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
    return TextOutput(_write_text, ansi=options.ansi)


def _write_bytes(data: bytes) -> None:
    sys.stdout.buffer.write(data)
    sys.stdout.buffer.flush()


def _write_text(text: str) -> None:
    sys.stdout.write(text)
    sys.stdout.flush()
