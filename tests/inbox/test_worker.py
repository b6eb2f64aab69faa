"""What becomes of one row, whatever the conversation and the messenger do."""

from __future__ import annotations

import logging
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from sqlalchemy import func, select
from sqlalchemy.exc import OperationalError

from bot.chat.words import text as catalogues
from bot.clock import SimulatedClock
from bot.delivery import ChatGone, DeliveryError, MaybeSent, Refused, Throttled, Unreachable
from bot.inbox.model import Arrival, Job
from bot.inbox.rows import LEASE, Inbox
from bot.inbox.worker import MOST_ATTEMPTS, MOST_REPEATS, Worker
from bot.store.database import Database
from bot.store.models import EntryRow, InboxRow, OfferRow
from tests.inbox.fakes import MESSENGER, Echo, Post, arrival

REPEAT = "You may see this answer twice: the line broke as I sent it."


@dataclass
class House:
    """Everything around one worker."""

    database: Database
    clock: SimulatedClock
    inbox: Inbox
    post: Post
    echo: Echo
    worker: Worker

    async def take(self, *arrivals: Arrival) -> Job:
        await self.inbox.receive(arrivals)
        (job,) = await self.inbox.claim(1)
        return job

    async def work(self, *arrivals: Arrival) -> None:
        await self.worker.work(await self.take(*arrivals))

    async def again(self, after: timedelta) -> Job | None:
        """What can be claimed after a while, None where nothing can."""
        self.clock.move_by(after)
        jobs = await self.inbox.claim(1)
        return jobs[0] if jobs else None

    async def row(self) -> InboxRow:
        async with self.database.read() as uow:
            found = await uow.session.scalars(select(InboxRow).order_by(InboxRow.id).limit(1))
            return found.one()

    async def entries(self) -> int | None:
        async with self.database.read() as uow:
            return await uow.session.scalar(select(func.count()).select_from(EntryRow))


@pytest.fixture
def house(sqlite_database: Database) -> House:
    return make_house(sqlite_database, "one")


def make_house(database: Database, owner: str, clock: SimulatedClock | None = None) -> House:
    clock = clock or SimulatedClock(datetime(2026, 3, 1, 12, tzinfo=UTC))
    inbox = Inbox(database, clock, messenger=MESSENGER, owner=owner)
    post, echo = Post(), Echo(database)
    return House(database, clock, inbox, post, echo, Worker(inbox, post, echo))


async def test_a_message_is_handled_and_every_reply_sent(house: House) -> None:
    await house.work(arrival(1, "a", "kh 4|kh 5"))
    assert house.post.texts() == ["heard kh 4", "heard kh 5"]
    row = await house.row()
    assert (row.state, row.sent, row.owner, row.error) == ("answered", 2, None, None)
    async with house.database.read() as uow:
        refs = await uow.session.scalars(select(OfferRow.message_ref))
        assert refs.all() == ["2"], "the last page has the buttons"


async def test_silence_is_an_answer(house: House) -> None:
    await house.work(arrival(1, "a", "quiet"))
    assert not house.post.sent
    assert (await house.row()).state == "answered"


async def test_an_exception_answers_kindly_and_is_parked(
    house: House, caplog: pytest.LogCaptureFixture
) -> None:
    house.echo.errors["my secret"] = ValueError("my secret cannot be understood")
    with caplog.at_level(logging.DEBUG, "bot"):
        await house.work(arrival(1, "a", "my secret"))
    row = await house.row()
    assert row.state == "parked"
    assert row.error is not None
    assert len(row.error) == 8
    assert row.error in house.post.texts()[0]
    assert row.error in caplog.text
    assert "ValueError" in caplog.text
    assert "secret" not in caplog.text
    assert await house.entries() == 0, "what the failed message stored is rolled back"
    await house.work(arrival(2, "a", "kh 4"))
    assert house.post.texts()[-1] == "heard kh 4"


async def test_a_failure_on_a_line_not_meant_for_us_is_met_with_silence(house: House) -> None:
    house.echo.errors["chatter"] = ValueError()
    await house.work(arrival(1, "a", "chatter", addressed=False))
    assert not house.post.sent
    assert (await house.row()).state == "parked"


async def test_a_busy_database_is_no_fault_of_the_message(house: House) -> None:
    house.echo.errors["kh 4"] = OperationalError("insert", {}, Exception("database is locked"))
    await house.work(arrival(1, "a"))
    assert (await house.row()).state == "taken"
    assert not house.post.sent
    house.echo.errors.clear()
    job = await house.again(timedelta(seconds=1))
    assert job is not None
    await house.worker.work(job)
    assert house.post.texts() == ["heard kh 4"]
    assert (await house.row()).state == "answered"


async def test_a_message_that_nobody_comes_to_the_end_of_is_parked(house: House) -> None:
    job = await house.take(arrival(1, "a"))
    while job.attempts <= MOST_ATTEMPTS:
        job = await house.inbox.count_trial(job)
    await house.worker.work(job)
    assert (await house.row()).state == "parked"
    assert not house.echo.handled
    assert "stored nothing" in house.post.texts()[0]


async def test_unreachable_is_tried_again_and_is_no_repeat(house: House) -> None:
    house.post.trouble = [Unreachable("ConnectError")]
    await house.work(arrival(1, "a"))
    assert (await house.row()).state == "handled"
    job = await house.again(timedelta(seconds=1))
    assert job is not None
    await house.worker.work(job)
    assert house.post.texts() == ["heard kh 4"]
    assert house.echo.handled == ["1"], "what was handled is not handled again"


async def test_a_broken_answer_is_repeated_and_says_so(house: House) -> None:
    house.post.lost = [None, MaybeSent("ReadTimeout")]
    await house.work(arrival(1, "a", "kh 4|kh 5|kh 6"))
    assert house.post.texts() == ["heard kh 4", "heard kh 5"]
    job = await house.again(timedelta(seconds=1))
    assert job is not None
    await house.worker.work(job)
    texts = house.post.texts()
    assert texts[2:] == [f"heard kh 5\n{REPEAT}", "heard kh 6"]
    assert await house.entries() == 1


async def test_an_answer_repeated_often_enough_is_taken_to_have_arrived(house: House) -> None:
    house.post.lost = [MaybeSent("ReadTimeout")] * 100
    await house.work(arrival(1, "a"))
    tries = 1
    while job := await house.again(timedelta(minutes=2)):
        await house.worker.work(job)
        tries += 1
    assert tries == MOST_REPEATS == len(house.post.sent)
    assert (await house.row()).state == "answered"


@pytest.mark.parametrize("before", [Throttled(1), Unreachable("ConnectError")], ids=repr)
async def test_what_was_held_up_and_not_sent_does_not_count_as_sent(
    house: House, before: DeliveryError
) -> None:
    house.post.trouble = [before] * (MOST_REPEATS + 3)
    house.post.lost = [MaybeSent("ReadTimeout")]
    await house.work(arrival(1, "a"))
    while house.post.lost:
        job = await house.again(timedelta(minutes=2))
        assert job is not None
        await house.worker.work(job)
    assert (await house.row()).state == "handled", "sent once and unsure: it may be lost"
    job = await house.again(timedelta(minutes=2))
    assert job is not None
    await house.worker.work(job)
    assert house.post.texts() == ["heard kh 4", f"heard kh 4\n{REPEAT}"]
    assert (await house.row()).state == "answered"


async def test_each_reply_of_a_message_has_its_own_count(house: House) -> None:
    house.post.lost = [
        *[MaybeSent("ReadTimeout")] * (MOST_REPEATS - 1), None, MaybeSent("ReadTimeout"),
    ]  # fmt: skip
    await house.work(arrival(1, "a", "kh 4|kh 5"))
    while (job := await house.again(timedelta(minutes=2))) is not None:
        await house.worker.work(job)
    assert house.post.texts()[-2:] == ["heard kh 5", f"heard kh 5\n{REPEAT}"]
    assert (await house.row()).state == "answered"


async def test_throttled_waits_as_long_as_it_was_told(house: House) -> None:
    house.post.trouble = [Throttled(30)]
    await house.work(arrival(1, "a"))
    assert await house.again(timedelta(seconds=29)) is None
    job = await house.again(timedelta(seconds=1))
    assert job is not None
    await house.worker.work(job)
    assert house.post.texts() == ["heard kh 4"]


async def test_a_chat_that_is_gone_is_not_tried_again(house: House) -> None:
    house.post.trouble = [ChatGone("Forbidden: bot was blocked by the user")]
    await house.work(arrival(1, "a", "kh 4|kh 5"))
    assert house.echo.gone == [("a", None)]
    assert house.post.tried == 1
    row = await house.row()
    assert (row.state, row.error) == ("answered", "chat gone")
    assert await house.again(timedelta(days=1)) is None


async def test_a_chat_that_moved_is_followed(house: House) -> None:
    house.post.trouble = [ChatGone("moved", "b")]
    await house.work(arrival(1, "a", "kh 4|kh 5"))
    assert house.echo.gone == [("a", "b")]
    assert house.post.texts("b") == ["heard kh 4", "heard kh 5"]
    assert (await house.row()).state == "answered"


async def test_a_chat_that_moves_for_ever_is_given_up(house: House) -> None:
    house.post.trouble = [ChatGone("moved", "b"), ChatGone("moved", "a"), ChatGone("moved", "b")]
    await house.work(arrival(1, "a"))
    assert house.post.tried == 2
    assert (await house.row()).error == "chat gone"


async def test_a_refused_answer_is_excused_and_parked(
    house: House, caplog: pytest.LogCaptureFixture
) -> None:
    house.post.trouble = [Refused("Bad Request: BUTTON_DATA_INVALID")]
    await house.work(arrival(1, "a", "kh 4|kh 5"))
    row = await house.row()
    assert row.state == "parked"
    assert row.error is not None
    assert row.error in house.post.texts()[0]
    assert house.post.texts()[1] == "heard kh 5"
    assert "BUTTON_DATA_INVALID" in caplog.text


async def test_an_answer_that_cannot_even_be_made_is_excused_and_parked(house: House) -> None:
    house.post.trouble = [ZeroDivisionError()]
    await house.work(arrival(1, "a", "kh 4|kh 5"))
    row = await house.row()
    assert row.state == "parked"
    assert str(row.error) in house.post.texts()[0]
    assert house.post.texts()[1] == "heard kh 5"


async def test_what_fails_for_ever_is_parked_in_the_end(house: House) -> None:
    async def fail(*_: object) -> None:
        raise ZeroDivisionError

    house.echo.chat_gone = fail  # type: ignore[method-assign]
    await house.work(arrival(1, "a", "left"))
    times = 1
    while job := await house.again(timedelta(minutes=2)):
        await house.worker.work(await house.inbox.count_trial(job))
        times += 1
    assert times <= MOST_ATTEMPTS + 1
    row = await house.row()
    assert (row.state, row.error) == ("parked", "ZeroDivisionError")


async def test_after_a_crash_only_what_is_left_is_sent(house: House) -> None:
    house.post.trouble = [None, KeyboardInterrupt()]  # type: ignore[list-item]
    job = await house.take(arrival(1, "a", "kh 4|kh 5|kh 6"))
    with pytest.raises(KeyboardInterrupt):  # as near to a kill as one process can come
        await house.worker.work(job)
    other = make_house(house.database, "two", house.clock)
    found = await other.again(LEASE)
    assert found is not None
    await other.worker.work(found)
    assert house.post.texts() == ["heard kh 4"]
    assert other.post.texts() == [f"heard kh 5\n{REPEAT}", "heard kh 6"]
    assert other.echo.handled == []
    assert await house.entries() == 1


async def test_a_crash_before_anything_was_stored_handles_it_anew(house: House) -> None:
    await house.take(arrival(1, "a"))
    other = make_house(house.database, "two", house.clock)
    found = await other.again(LEASE)
    assert found is not None
    await other.worker.work(found)
    assert other.post.texts() == ["heard kh 4"], "nothing was sent before, so no repeat"
    assert await house.entries() == 1


async def test_a_row_in_other_hands_stores_nothing(house: House) -> None:
    job = await house.take(arrival(1, "a"))
    other = make_house(house.database, "two", house.clock)
    found = await other.again(LEASE)
    assert found is not None
    await house.worker.work(job)
    assert await house.entries() == 0
    assert not house.post.sent
    await other.worker.work(found)
    assert await house.entries() == 1


async def test_presses_are_acknowledged_once(house: House) -> None:
    house.post.trouble = [Unreachable("ConnectError")]
    await house.work(arrival(1, "a", "kh 4", kind="press"))
    job = await house.again(timedelta(seconds=1))
    assert job is not None
    await house.worker.work(job)
    assert house.post.acknowledged == ["1"]


async def test_a_chat_that_leaves_is_noted(house: House) -> None:
    await house.work(arrival(1, "a", "left"))
    assert house.echo.gone == [("a", None)]
    assert (await house.row()).state == "answered"


async def test_what_cannot_be_read_any_more_is_parked(house: House) -> None:
    await house.work(Arrival("1", "a", '{"chat": "a", "text": "kh 4"}'))
    row = await house.row()
    assert (row.state, row.error) == ("parked", "id is missing")


async def test_replies_of_another_version_are_parked(house: House) -> None:
    job = await house.take(arrival(1, "a"))
    async with house.database.write() as uow:
        await house.inbox.note_handled(uow, job, '{"version": 99}')
        await uow.commit()
    again = await house.again(LEASE)
    assert again is not None
    await house.worker.work(again)
    assert (await house.row()).state == "parked"


GERMAN = """
msgid "I took note of your message, but my answer to it cannot be shown here."
msgstr "Notiert, aber meine Antwort lässt sich hier nicht zeigen."

msgid "Please say it another way, or quote {reference} to whoever runs me."
msgstr "Sag es bitte anders, oder nenne {reference}."

msgid "You may see this answer twice: the line broke as I sent it."
msgstr "Diese Antwort kommt vielleicht zweimal."
"""


async def test_what_the_inbox_says_is_in_the_chats_language(
    house: House, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    place = tmp_path / "de" / "LC_MESSAGES"
    place.mkdir(parents=True)
    (place / "meniscus.po").write_text(GERMAN, encoding="utf-8")
    monkeypatch.setattr(catalogues, "FOLDER", tmp_path)
    house.echo.spoken = "de"
    house.echo.errors["kh 4"] = RuntimeError("broken")
    await house.work(arrival(1, "a"))
    house.post.trouble = [Refused("Bad Request")]
    await house.work(arrival(2, "a", "kh 5"))
    house.post.lost = [MaybeSent("ReadTimeout")]
    await house.work(arrival(3, "a", "kh 6"))
    job = await house.again(timedelta(minutes=2))
    assert job is not None
    await house.worker.work(job)
    failed, undeliverable, _lost, repeated = house.post.texts()
    assert "Sag es bitte anders" in failed
    assert undeliverable.startswith("Notiert")
    assert repeated == "heard kh 6\nDiese Antwort kommt vielleicht zweimal."
