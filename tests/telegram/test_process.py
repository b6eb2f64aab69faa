"""The real process `meniscus run` from outside: a first evening, bad input, stops and kills."""

from __future__ import annotations

import signal
import sqlite3
from collections.abc import AsyncIterator
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from bot.store.database import Database
from tests.botapi import BotApi
from tests.botapi.model import Chat, Person
from tests.telegram.killing import PHASES, Killer, states_when_done
from tests.telegram.process import BotProcess, running_bot


class Talk:
    """A chat with the running bot: say, wait for the answer, press."""

    def __init__(self, server: BotApi, chat: Chat, person: Person) -> None:
        self._server = server
        self.chat = chat
        self._person = person

    async def say(self, text: str, **more: Any) -> dict[str, Any]:
        """Say a line and give the message that answers it."""
        return await self.after(
            lambda: self._server.world.say(self.chat, self._person, text, **more)
        )

    async def after(self, act: Any) -> dict[str, Any]:
        """Do something and give the message that answers it."""
        before = len(self._answers())
        act()
        await self._server.until(lambda: len(self._answers()) > before, timeout=60)
        answer: dict[str, Any] = self._answers()[-1]
        return answer

    async def press(self, message: dict[str, Any], label: str) -> dict[str, Any]:
        """Press the button with a label; give what it led to, a new message or an edited one."""
        rows = message["reply_markup"]["inline_keyboard"]
        buttons = [button for row in rows for button in row]
        data = next(button["callback_data"] for button in buttons if button["text"] == label)
        return await self.after(lambda: self._server.world.press(message, self._person, data))

    def _answers(self) -> list[dict[str, Any]]:
        sent = [
            call
            for method in ("sendMessage", "editMessageText")
            for call in self._server.accepted(method, self.chat.id)
        ]
        return [call.result for call in sorted(sent, key=lambda call: call.number)]


@pytest.fixture
async def server() -> AsyncIterator[BotApi]:
    async with BotApi(privacy=False).running() as server:
        yield server


@pytest.fixture
async def bot(server: BotApi, tmp_path: Path) -> AsyncIterator[BotProcess]:
    url = f"sqlite:///{tmp_path / 'bot.sqlite3'}"
    async with running_bot(server, url, tmp_path / "bot.log") as bot:
        yield bot


def _talk(server: BotApi, name: str = "Anna") -> Talk:
    person = server.world.person(name)
    return Talk(server, server.world.private(person), person)


async def test_a_first_evening(server: BotApi, bot: BotProcess) -> None:
    talk = _talk(server)
    assert "/help" in (await talk.say("/start"))["text"]
    assert "Fern" in (await talk.say("/tank new Fern 90 l fresh"))["text"]
    reading = await talk.say("kh 4 ph 7.2")
    assert "KH 4" in reading["text"]
    dose = await talk.say("dose kh 6")
    labels = [b["text"] for row in dose["reply_markup"]["inline_keyboard"] for b in row]
    assert labels[:2] == ["log it", "remind me to retest in 24 h"]
    reminded = await talk.press(dose, "remind me to retest in 24 h")
    assert reminded["text"]
    await server.until(lambda: server.accepted("answerCallbackQuery"))
    assert await bot.stop() == 0
    assert server.token not in bot.log.read_text()
    assert " ERROR " not in bot.log.read_text()


async def test_a_group_in_its_topic(server: BotApi, bot: BotProcess) -> None:
    anna, forum = server.world.person("Anna"), server.world.group("Forum", topics=True)
    topic = server.world.topic(forum)
    talk = Talk(server, forum, anna)
    answer = await talk.say("/w@meniscus_test_bot kh 4", thread=topic)
    assert answer["message_thread_id"] == topic
    assert "KH 4" in answer["text"]
    server.world.say(forum, anna, "has anybody seen the net?", thread=topic)
    plain = await talk.say("kh 5", thread=topic)
    assert "KH 5" in plain["text"]
    assert bot.alive


HOSTILE = [
    "ph 9**9**9**9",
    "x" * 100_000,
    "\x00\x01\x02",
    "<b>",
    "\u202egnirts\u202c kh 4",
    "\N{TROPICAL FISH}",
    "\ud83d",
    "kh " + "9" * 400,
    "/" * 50,
    "&lt;b&gt; & < >",
]


async def test_anything_may_be_sent(server: BotApi, bot: BotProcess, tmp_path: Path) -> None:
    talk, ben = _talk(server), _talk(server, "Ben")
    anna = server.world.people[talk.chat.id]
    first = await talk.say("kh 4")

    def stranger() -> Chat:
        return server.world.private(server.world.person("Stranger"))

    for text in HOSTILE:
        chat = stranger()
        server.world.say(chat, server.world.people[chat.id], text)
    for what in ("photo", "sticker", "voice", "location", "poll", "document"):
        chat = stranger()
        server.world.attach(chat, server.world.people[chat.id], what)
    server.world.forward(ben.chat, server.world.people[ben.chat.id], text="kh 9")
    for presser in (anna, server.world.people[ben.chat.id], anna):
        server.world.press(first, presser, 0)
    for data in ("9:nonsense", "1:999999:0", "\N{FISH}" * 16):
        server.world.press({**first, "chat": stranger().as_json()}, anna, data)
    for broken in ({"message": None}, {"message": {"chat": {"id": "x"}}}, {"callback_query": 5}):
        server.updates.put(broken)
    said = server.world.say(talk.chat, anna, "kh 5")
    server.world.edit(said, "not a reading any more")
    inbox = Database(f"sqlite+aiosqlite:///{tmp_path / 'bot.sqlite3'}")
    states = await states_when_done(server, inbox)
    await inbox.close()
    assert states == {"answered": states["answered"], "parked": 3}
    assert await bot.stop() == 0
    assert " failed, reference" not in bot.log.read_text()
    assert " refused" not in bot.log.read_text()


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
async def test_signals_end_it_with_nothing_half_done(
    server: BotApi, bot: BotProcess, tmp_path: Path, number: int
) -> None:
    talk = _talk(server)
    await talk.say("kh 4")
    people = [_talk(server, f"Keeper{n}") for n in range(12)]
    for person in people:
        server.world.say(person.chat, server.world.people[person.chat.id], "kh 5")
    await server.until(lambda: len(server.texts()) > 1)
    assert await bot.stop(number) == 0
    with closing(sqlite3.connect(tmp_path / "bot.sqlite3")) as database:
        states = dict(database.execute("SELECT state, count(*) FROM inbox GROUP BY state"))
        assert database.execute("PRAGMA integrity_check").fetchone() == ("ok",)
    assert "handled" not in states
    await bot.start()
    await server.until(lambda: len(server.texts()) >= 13, timeout=60)
    assert not any("twice" in text for text in server.texts())


async def test_kills_lose_nothing(server: BotApi, bot: BotProcess, tmp_path: Path) -> None:
    await server.until(lambda: any(c.method == "getUpdates" for c in server.calls), timeout=60)
    database = Database(f"sqlite+aiosqlite:///{tmp_path / 'bot.sqlite3'}")
    killer = Killer(server, bot, database)
    for phase in PHASES:
        await killer.kill_in(phase, said=8)
    outcome = await killer.settle()
    await database.close()
    assert outcome.lost == 0
    assert outcome.stored_twice == 0
    assert outcome.out_of_order == 0
    assert outcome.repeats_unmarked == 0
    assert outcome.left_open == 0


async def test_a_refused_token_ends_it_with_a_clear_message(server: BotApi, tmp_path: Path) -> None:
    bot = BotProcess(server, f"sqlite:///{tmp_path / 'bot.sqlite3'}", tmp_path / "bot.log")
    token = server.token
    await bot.start()
    server.token = "1:another"  # noqa: S105 - the server knows the bot's own no more
    assert await bot.wait() == 1
    log = bot.log.read_text()
    assert "telegram.token" in log
    assert token not in log
    assert "Traceback" not in log
