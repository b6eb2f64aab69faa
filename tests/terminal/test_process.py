"""What only a process of its own can show: what it loads, how it ends, how it waits."""

from __future__ import annotations

import fcntl
import json
import os
import pty
import select
import signal
import subprocess
import sys
import termios
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
CLOCK = ("--clock", "2026-03-01T09:00+00:00", "--timezone", "Europe/Lisbon")
PATIENCE_S = 20.0
Start = Callable[..., subprocess.Popen[bytes]]


@pytest.fixture
def start(home: Path) -> Iterator[Start]:
    """Start `meniscus` beside this process; whatever still runs at the end is ended."""
    around = {**os.environ, "PYTHONPATH": str(ROOT), "TERM": "xterm"}
    running: list[subprocess.Popen[bytes]] = []

    def begin(*arguments: str, **options: object) -> subprocess.Popen[bytes]:
        pipes = {"stdin": subprocess.PIPE, "stdout": subprocess.PIPE, "stderr": subprocess.PIPE}
        process = subprocess.Popen(  # type: ignore[call-overload]
            [sys.executable, "-m", "bot", *arguments],
            cwd=home / "here",
            **{"env": around, **pipes, **options},
        )
        running.append(process)
        return process  # type: ignore[no-any-return]

    yield begin
    for process in running:
        if process.poll() is None:
            process.kill()
        with process:
            pass


def loaded_by(start: Start, home: Path, given: bytes, *arguments: str) -> set[str]:
    """The top-level modules, and those of our own, that a command has loaded at its end."""
    (home / "sitecustomize.py").write_text(
        "import atexit, sys\n"
        "def tell():\n"
        "    print('LOADED', *sys.modules, file=sys.stderr)\n"
        "atexit.register(tell)\n"
    )
    around = {**os.environ, "PYTHONPATH": f"{home}{os.pathsep}{ROOT}"}
    process = start(*arguments, env=around)
    out, err = process.communicate(given, timeout=PATIENCE_S)
    assert process.returncode == 0, err.decode()
    assert out
    names = next(line for line in err.decode().splitlines() if line.startswith("LOADED"))
    modules = names.split()[1:]
    return {name.partition(".")[0] for name in modules} | {n for n in modules if n[:4] == "bot."}


def test_parse_loads_what_it_needs(start: Start, home: Path) -> None:
    loaded = loaded_by(start, home, b"ph 7.2 kh 4\nfern: kh 5 yesterday\n", "parse")
    heavy = {
        "sqlalchemy",
        "telegram",
        "numpy",
        "pint",
        "alembic",
        "matplotlib",
        "pydantic",
        "pydantic_settings",
        "prompt_toolkit",
        "apscheduler",
        "asyncio",
    }
    assert loaded & heavy == set()
    assert "bot.app" not in loaded


def test_chat_loads_what_it_needs(start: Start, home: Path) -> None:
    command = ("chat", "--json", "--database", f"sqlite:///{home}/x.sqlite3", *CLOCK)
    start(*command).communicate(b"kh 4\n", timeout=PATIENCE_S)  # makes the tables, with alembic
    loaded = loaded_by(start, home, b"ph 7.2 kh 4\nremind me to test in 24h\n+1d\n", *command)
    heavy = {
        "telegram",
        "httpx",
        "numpy",
        "pint",
        "alembic",
        "matplotlib",
        "pydantic",
        "pydantic_settings",
        "prompt_toolkit",
        "apscheduler",  # a simulated clock needs none
        "asyncpg",
    }
    assert loaded & heavy == set()
    assert "sqlalchemy" in loaded


def first_line(process: subprocess.Popen[bytes]) -> bytes:
    """Wait for a line, however long the start takes."""
    assert process.stdout is not None
    ready, _, _ = select.select([process.stdout], [], [], PATIENCE_S)
    assert ready, "it said nothing"
    return process.stdout.readline()


def say(process: subprocess.Popen[bytes], line: bytes) -> None:
    assert process.stdin is not None
    process.stdin.write(line)
    process.stdin.flush()


@pytest.mark.parametrize(("number", "status"), [(signal.SIGTERM, 143), (signal.SIGINT, 130)])
def test_a_signal_ends_a_simulated_chat_without_leavings(
    start: Start, home: Path, number: signal.Signals, status: int
) -> None:
    process = start("chat", "--json", *CLOCK)
    say(process, b"+0m\n")
    assert json.loads(first_line(process)) == {"line": 1, "kind": "done"}
    assert list((home / "tmp").iterdir())
    process.send_signal(number)
    # Its input stays open: an end of input that comes first is an end in good order.
    assert process.wait(timeout=PATIENCE_S) == status
    _, err = process.communicate()
    assert b"Traceback" not in err
    assert list((home / "tmp").iterdir()) == []


def test_a_kill_is_no_obstacle_to_the_next_chat(start: Start, home: Path) -> None:
    url = ("--database", f"sqlite:///{home}/x.sqlite3")
    killed = start("chat", "--json", *url)
    say(killed, b"+0m\n")
    first_line(killed)
    second = start("chat", *url)
    _, err = second.communicate(b"kh 4\n", timeout=PATIENCE_S)
    assert second.returncode == 1
    assert b"x.sqlite3" in err
    killed.kill()
    killed.wait()
    third = start("chat", *url)
    out, _ = third.communicate(b"kh 4\n", timeout=PATIENCE_S)
    assert third.returncode == 0
    assert b"KH 4" in out


@pytest.mark.parametrize("command", [("chat", "--json", *CLOCK), ("parse",)])
def test_a_reader_that_leaves_is_no_fault_to_shout_about(
    start: Start, home: Path, command: tuple[str, ...]
) -> None:
    process = start(*command)
    say(process, b"kh 4\n")
    first_line(process)
    assert process.stdout is not None
    process.stdout.close()
    say(process, b"kh 4\nkh 5\n" * 2_000)
    assert process.stdin is not None
    assert process.stderr is not None
    process.stdin.close()
    err = process.stderr.read()
    assert process.wait(PATIENCE_S) == 1
    assert b"Traceback" not in err
    assert b"BrokenPipe" not in err
    assert list((home / "tmp").iterdir()) == []


def test_parse_answers_while_the_input_stays_open(start: Start) -> None:
    process = start("parse")
    for line in (b"kh 4\n", b"ph 7.2\n"):
        say(process, line)
        assert json.loads(first_line(process))
    process.communicate(timeout=PATIENCE_S)
    assert process.returncode == 0


@pytest.mark.parametrize("command", [("chat",), ("parse",)])
def test_closed_streams_are_no_place_for_the_database(
    start: Start, home: Path, command: tuple[str, ...]
) -> None:
    def close() -> None:
        os.closerange(0, 3)

    process = start(*command, stdin=None, stdout=None, stderr=None, preexec_fn=close)
    assert process.wait(PATIENCE_S) == 0
    if command == ("chat",):
        path = home / "data" / "meniscus" / "meniscus.sqlite3"
        assert path.read_bytes().startswith(b"SQLite format 3\0")


def test_a_terminal_that_knows_no_degree_sign(start: Start) -> None:
    around = {**os.environ, "PYTHONPATH": str(ROOT), "PYTHONIOENCODING": "ascii"}
    out, err = start("chat", *CLOCK, env=around).communicate(b"kh 4\n", timeout=PATIENCE_S)
    assert b"KH 4 ?dH" in out
    assert b"Traceback" not in err


def test_a_folder_as_input_is_said(start: Start, home: Path) -> None:
    folder = os.open(home, os.O_RDONLY)
    process = start("chat", *CLOCK, stdin=folder)
    os.close(folder)
    _, err = process.communicate(timeout=PATIENCE_S)
    assert process.returncode == 1
    assert b"Traceback" not in err


class Terminal:
    """A terminal that somebody types at."""

    def __init__(self, start: Start, *arguments: str, output: bool = True) -> None:
        self._own, inner = pty.openpty()

        def take_terminal() -> None:
            os.setsid()
            fcntl.ioctl(0, termios.TIOCSCTTY, 0)

        streams = {"stdin": inner, "stderr": inner, "stdout": inner if output else None}
        if not output:
            streams["stdout"] = subprocess.PIPE
        self.process = start(*arguments, preexec_fn=take_terminal, **streams)
        os.close(inner)
        self.seen = b""

    def type(self, keys: bytes) -> None:
        os.write(self._own, keys)

    def until(self, wanted: bytes) -> None:
        end = time.monotonic() + PATIENCE_S
        while wanted not in self.seen:
            ready, _, _ = select.select([self._own], [], [], max(0.0, end - time.monotonic()))
            assert ready, f"{wanted!r} is not in {self.seen!r}"
            data = os.read(self._own, 65_536)
            if b"\x1b[6n" in data:  # where is the cursor? A terminal answers that
                self.type(b"\x1b[1;1R")
            self.seen += data

    def close(self) -> None:
        os.close(self._own)


def test_a_person_at_a_terminal(start: Start, home: Path) -> None:
    terminal = Terminal(start, "chat", "--database", f"sqlite:///{home}/x.sqlite3")
    terminal.until(b"Ctrl-D leaves")
    terminal.type(b"kh 4\r")
    terminal.until(b"[1]")
    terminal.seen = terminal.seen.rpartition(b"[1]")[2]
    terminal.until(b"Ctrl-D leaves")  # before the next prompt stands, the keys are the kernel's
    terminal.type(b"\x04")
    assert terminal.process.wait(PATIENCE_S) == 0
    terminal.close()
    assert (home / "data" / "meniscus" / "history").read_text().splitlines()[-1] == "+kh 4"


def test_a_terminal_with_its_output_piped_is_followed_line_by_line(start: Start) -> None:
    terminal = Terminal(start, "chat", "--json", *CLOCK, output=False)
    terminal.type(b"kh 4\n")
    assert json.loads(first_line(terminal.process))["line"] == 1
    terminal.type(b"\x04")
    assert terminal.process.wait(PATIENCE_S) == 0
    terminal.close()
