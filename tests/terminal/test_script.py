from __future__ import annotations

from collections.abc import AsyncIterator

import pytest

from bot.chat.model import Incoming, Reply
from bot.terminal.script import follow
from tests.terminal.fakes import START, Table


async def lines(*text: str) -> AsyncIterator[str]:
    for line in text:
        yield line


@pytest.mark.parametrize("text", [(), ("kh 4",)])
async def test_overdue_reminders_come_before_the_input(text: tuple[str, ...]) -> None:
    table = Table()
    table.schedule(START, "overdue")
    assert await follow(table.session, lines(*text)) == 0
    assert table.shown.all[0] == (0, "overdue", START)
    assert len(table.shown.all) == 1 + len(text)


async def test_lines_are_counted_with_blanks_and_comments() -> None:
    table = Table()
    assert await follow(table.session, lines("kh 4", "", "; no", "no3 20")) == 0
    assert [line for line, _, _ in table.shown.all] == [1, 4]


@pytest.mark.parametrize("wrong", [">anna: kh 4", "+9999999w"])
async def test_wrong_usage_ends_it(wrong: str, capsys: pytest.CaptureFixture[str]) -> None:
    table = Table()
    assert await follow(table.session, lines("kh 4", wrong, "no3 20")) == 2
    assert [said.text for said in table.app.heard] == ["kh 4"]
    assert capsys.readouterr().err.startswith("meniscus chat: line 2: ")


async def test_a_fault_of_ours_is_told_by_the_status() -> None:
    table = Table()

    def answer(said: Incoming) -> list[Reply]:
        raise ZeroDivisionError(said.text)

    table.app.answer = answer
    assert await follow(table.session, lines("kh 4")) == 1
