from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from datetime import datetime, timedelta

import pytest

from bot.chat.model import Address, Incoming, Reply
from bot.clock import SystemClock
from bot.delivery import Unreachable
from bot.terminal.lines import LineError
from tests.terminal.fakes import START, Table, reply

H = timedelta(hours=1)


async def test_words_come_in_as_a_message() -> None:
    table = Table()
    await table.take("", "; a comment", "kh 4")
    (heard,) = table.app.heard
    assert heard.kind == "message"
    assert heard.text == "kh 4"
    assert heard.at == START
    assert heard.address == Address("terminal", "private")
    assert heard.addressed
    assert not heard.group
    assert table.shown.all == [(3, "heard kh 4", START)]


async def test_each_reply_is_noted_under_an_id_of_its_own() -> None:
    table = Table()
    table.app.answer = lambda _: [reply("a"), reply("b")]
    await table.take("x", "y")
    refs = [ref for _, _, ref in table.app.noted]
    assert len(set(refs)) == 4


async def test_ids_are_new_in_every_sitting() -> None:
    first, second = Table(), Table()
    for table in (first, second):
        await table.take("a", "b")
    heard = [*first.app.heard, *second.app.heard]
    assert len({said.update_id for said in heard}) == 4
    assert len({said.message_ref for said in heard}) == 4


async def test_a_press_is_of_the_latest_reply_that_has_buttons() -> None:
    table = Table()
    answers = {"dose": [reply("old", "x"), reply("dose", "log it", "remind me")]}
    table.app.answer = lambda said: answers.get(said.text, [reply("no buttons")])
    await table.take("dose", "thanks", "#2")
    pressed = table.app.heard[-1]
    assert pressed.kind == "press"
    assert pressed.action == "1:7:1"
    assert pressed.message_ref == table.app.noted[1][2]
    assert pressed.address == table.session.address


async def test_a_reminder_can_be_pressed_too() -> None:
    table = Table()
    table.app.answer = lambda said: [reply("dose", "log it") if said.text else reply("pressed")]
    table.schedule(START + H, "test fern", "done", "skip")
    await table.take("dose", "+1h", "#2", "#2")
    first, second = table.app.heard[1:]
    assert first.message_ref == second.message_ref == table.app.refs[0]
    assert first.action == "1:7:1"
    assert first.update_id != second.update_id


@pytest.mark.parametrize(("line", "word"), [("#0", "0"), ("#3", "3"), ("#999", "999")])
async def test_a_button_that_is_not_there_is_said(line: str, word: str) -> None:
    table = Table()
    table.app.answer = lambda _: [reply("dose", "log it", "more")]
    await table.take("dose", line)
    assert table.shown.texts[-1] == f"There is no button {word}; the latest reply has 2."
    assert len(table.app.heard) == 1


async def test_a_press_before_there_is_a_button() -> None:
    table = Table()
    await table.take("#1")
    assert table.shown.all == [(1, "There is no button to press yet.", START)]
    assert table.app.heard == []


async def test_the_clock_stops_at_every_due_time_on_its_way() -> None:
    table = Table()
    table.schedule(START + 5 * H, "second")
    table.schedule(START + 2 * H, "first")
    table.schedule(START + 7 * H, "later")
    await table.take("+6h")
    assert table.shown.all == [
        (1, "first", START + 2 * H),
        (1, "second", START + 5 * H),
    ]
    assert table.clock.now() == START + 6 * H
    await table.take("+1h")
    assert table.shown.all[2:] == [(2, "later", START + 7 * H)]


async def test_what_falls_due_by_a_delivery_on_the_way_is_delivered_as_well() -> None:
    table = Table()
    original = table.session.send

    async def and_again(address: Address, said: Reply) -> str:
        if len(table.shown.all) < 3:
            table.schedule(table.clock.now() + 2 * H, "again")
        return await original(address, said)

    table.session.send = and_again  # type: ignore[method-assign]
    table.schedule(START + H, "once")
    await table.take("+1d")
    assert [at - START for _, _, at in table.shown.all] == [H, 3 * H, 5 * H, 7 * H]


async def test_what_was_overdue_is_delivered_at_the_moment_it_can_be() -> None:
    table = Table()
    table.schedule(START - 48 * H, "overdue")
    await table.take("+0m")
    assert table.shown.all == [(1, "overdue", START), (1, "<done>", START)]


async def test_a_reminder_that_cannot_be_delivered_does_not_hold_the_clock() -> None:
    table = Table()
    table.app.undeliverable = 1
    table.schedule(START + H, "stuck")
    await table.take("+1d")
    assert table.clock.now() == START + 24 * H


async def test_a_day_is_24_hours_across_daylight_saving() -> None:
    table = Table()
    await table.take("+5w")
    assert table.clock.now() - START == timedelta(weeks=5)


async def test_a_clock_of_the_wall_is_not_moved() -> None:
    table = Table(clock=SystemClock())
    with pytest.raises(LineError, match="--clock"):
        await table.take("+1h")


async def test_plus_nothing_delivers_by_the_wall_clock_too() -> None:
    table = Table(clock=SystemClock())
    table.schedule(SystemClock().now(), "due")
    await table.take("+0m")
    assert table.shown.texts == ["due", "<done>"]


async def test_the_end_of_time_is_said() -> None:
    table = Table()
    with pytest.raises(LineError, match="9999"):
        await table.take("+9999999w")
    assert table.clock.now() == START


async def test_a_group_is_several_people_in_one_chat() -> None:
    table = Table(group=True)
    table.app.answer = lambda _: [reply("ok", "done")]
    await table.take("kh 4", ">anna: no3 20", "/tank", ">anna: /tank", ">anna: #1", "#1")
    owner, anna, command, annas, press, owners_press = table.app.heard
    assert {said.address for said in table.app.heard} == {Address("terminal", "group")}
    assert all(said.group for said in table.app.heard)
    assert (owner.author_id, owner.author_name) == ("owner", "Owner")
    assert (anna.author_id, anna.author_name) == ("anna", "Anna")
    assert anna.text == "no3 20"
    assert [said.addressed for said in (owner, anna, command, annas)] == [False, False, True, True]
    assert (press.kind, press.author_id) == ("press", "anna")
    assert press.addressed
    assert owners_press.author_id == "owner"


async def test_fresh_buttons_after_an_outage_are_not_shown_in_a_pipe() -> None:
    table = Table()
    table.schedule(START, "shown before", "done", edits="earlier-1")
    await table.take("+0m")
    assert table.shown.texts == ["<done>"]
    assert table.app.refs == ["earlier-1"]


async def test_an_edit_that_answers_is_shown() -> None:
    table = Table()
    table.app.answer = lambda _: [reply("done by Anna", edits="earlier-1")]
    await table.take("done")
    assert table.shown.texts == ["done by Anna"]


async def test_a_fault_of_ours_ends_neither_the_chat_nor_in_silence(
    caplog: pytest.LogCaptureFixture,
) -> None:
    table = Table()

    def answer(said: Incoming) -> list[Reply]:
        if said.text == "bad":
            raise ZeroDivisionError
        return [reply("fine")]

    table.app.answer = answer
    await table.take("bad", "good")
    told, fine = table.shown.texts
    assert fine == "fine"
    assert table.session.failed
    (record,) = caplog.records
    reference = record.getMessage().rpartition(" ")[2]
    assert reference in told
    assert "ZeroDivision" not in told
    assert record.exc_info is not None


async def test_a_reader_that_left_leaves_a_reminder_due() -> None:
    table = Table()
    table.shown.broken = True
    with pytest.raises(Unreachable):
        await table.session.send(table.session.address, reply("due", kind="reminder"))
    with pytest.raises(BrokenPipeError):
        await table.session.deliver_due()


async def test_when_it_is_over_nobody_waits_for_the_next_line() -> None:
    table = Table()
    stopped = []

    async def lines() -> AsyncIterator[str]:
        yield "kh 4"
        try:
            await asyncio.Event().wait()
        finally:
            stopped.append("stopped")

    heard = []
    async for line in table.session.until_over(lines()):
        heard.append(line)
        asyncio.get_running_loop().call_soon(table.session.over.set)
    assert heard == ["kh 4"]
    assert stopped == ["stopped"]


async def test_when_it_is_over_the_clock_stops_where_it_is() -> None:
    table = Table()
    table.schedule(START + H, "first")
    table.schedule(START + 2 * H, "second")
    original = table.shown.show

    def show(said: Reply, *, line: int, now: datetime) -> None:
        original(said, line=line, now=now)
        table.session.over.set()

    table.shown.show = show  # type: ignore[method-assign]
    await table.take("+90m")
    assert table.shown.texts == ["first"]
