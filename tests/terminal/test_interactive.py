"""The prompt, driven by keys into an input of the test's own."""

from __future__ import annotations

import asyncio
import stat
from collections.abc import Iterator
from pathlib import Path

import pytest
from prompt_toolkit.completion import CompleteEvent
from prompt_toolkit.document import Document
from prompt_toolkit.input import PipeInput, create_pipe_input
from prompt_toolkit.output import DummyOutput

from bot.terminal.interactive import Names, converse
from tests.terminal.fakes import START, Table


@pytest.fixture
def keyboard() -> Iterator[PipeInput]:
    with create_pipe_input() as pipe:
        yield pipe


async def talk(table: Table, keyboard: PipeInput, keys: str, history: Path | None = None) -> int:
    keyboard.send_text(keys)
    return await converse(
        table.session,
        table.app,  # type: ignore[arg-type]
        history=history,
        keyboard=keyboard,
        screen=DummyOutput(),
    )


async def test_lines_are_said_until_ctrl_d(keyboard: PipeInput) -> None:
    table = Table()
    assert await talk(table, keyboard, "kh 4\rno3 20\r\x04") == 0
    assert [said.text for said in table.app.heard] == ["kh 4", "no3 20"]


async def test_overdue_reminders_come_first(keyboard: PipeInput) -> None:
    table = Table()
    table.schedule(START, "overdue")
    await talk(table, keyboard, "kh 4\r\x04")
    assert table.shown.texts == ["overdue", "heard kh 4"]


@pytest.mark.parametrize(
    ("keys", "heard", "why"),
    [
        ("kh 4\r\x03", ["kh 4"], "on an empty line it leaves"),
        ("kh 9\x03kh 4\r\x04", ["kh 4"], "on a half-typed line it gives up the line"),
        ("\x03kh 4\r", [], "what is typed after leaving is for the shell"),
    ],
)
async def test_ctrl_c(keyboard: PipeInput, keys: str, heard: list[str], why: str) -> None:
    table = Table()
    assert await talk(table, keyboard, keys) == 0, why
    assert [said.text for said in table.app.heard] == heard, why


async def test_wrong_usage_is_said_and_the_talk_goes_on(keyboard: PipeInput) -> None:
    table = Table()
    await talk(table, keyboard, ">Anna: kh 4\rkh 5\r\x04")
    told, answer = table.shown.texts
    assert told == "A line that starts with > speaks for another person: start with --group."
    assert answer == "heard kh 5"


@pytest.mark.parametrize(
    ("before", "after", "why"),
    [
        ("qua", "Quarry", "a tank, whatever the case"),
        ("kh 4 rea", "kh 4 Reading room", "in the middle of a line"),
        ("@fe", "@Fern", "after a sign"),
        ("/tank reading r", "/tank Reading room", "a name of two words"),
        ("/rem", "/remind", "a command"),
    ],
)
def test_what_is_begun_is_completed(before: str, after: str, why: str) -> None:
    names = Names()
    names.names = ["Fern", "Quarry", "Reading room"]
    first = next(iter(names.get_completions(Document(before), CompleteEvent())))
    assert before[: len(before) + first.start_position] + first.text == after, why


class Screen(DummyOutput):
    """A screen that tells when a text was written on it."""

    def __init__(self, wanted: str) -> None:
        self.seen = asyncio.Event()
        self._wanted = wanted
        self._text = ""

    def write(self, data: str) -> None:
        self._text += data
        if self._wanted in self._text:
            self.seen.set()


async def test_tab_completes_a_tank(keyboard: PipeInput) -> None:
    table, screen = Table(), Screen("Quarry")
    talking = asyncio.create_task(
        converse(
            table.session,
            table.app,  # type: ignore[arg-type]
            history=None,
            keyboard=keyboard,
            screen=screen,
        )
    )
    keyboard.send_text("qua\t")
    async with asyncio.timeout(10):
        await screen.seen.wait()
    keyboard.send_text(" kh 9\r\x04")
    await talking
    assert [said.text for said in table.app.heard] == ["Quarry kh 9"]


def test_commands_are_completed_only_at_the_start() -> None:
    names = Names()
    names.names = ["Undersea"]
    offered = names.get_completions(Document("kh 4 und"), CompleteEvent())
    assert [completion.text for completion in offered] == ["Undersea"]


async def test_pasted_lines_are_one_message(keyboard: PipeInput) -> None:
    table = Table()
    await talk(table, keyboard, "\x1b[200~ph 7.2\nkh 4\x1b[201~\r\x04")
    assert [said.text for said in table.app.heard] == ["ph 7.2\nkh 4"]


async def test_what_was_typed_is_kept_for_its_owner_alone(
    keyboard: PipeInput, tmp_path: Path
) -> None:
    path = tmp_path / "history"
    await talk(Table(), keyboard, "kh 4\r\x04", path)
    assert "+kh 4" in path.read_text().splitlines()
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    table = Table()
    await talk(table, keyboard, "\x1b[A\r\x04", path)  # the arrow up
    assert [said.text for said in table.app.heard] == ["kh 4"]
