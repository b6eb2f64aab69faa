"""Kills while updates are in flight, and the count of what was lost or came twice.

In the manner of Jepsen: what people said is written down outside the bot; the process is killed
at chosen moments of its work, seen from the server; at the end every message is looked for in
the database and among the answers that the server accepted.
"""

from __future__ import annotations

import asyncio
import itertools
import re
from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import Any

from sqlalchemy import text as sql

from bot.store.database import Database
from tests.botapi import BotApi, Call
from tests.telegram.process import BotProcess

PHASES = ("fetched", "committed", "answering", "accepted")
"""When a kill falls: a batch has just gone out; it is committed and worked on; an answer is on
its way; an answer was accepted and the bot does not know it."""

CHATS = 40
EACH_TIME = 20
"""How many messages are said before a kill."""
REPEAT = "You may see this answer twice"
_SHOWN = re.compile(r"nitrate (\d+)")


@dataclass
class Outcome:
    """What the counting found."""

    said: int = 0
    kills: Counter[str] = field(default_factory=Counter)
    found: Counter[str] = field(default_factory=Counter)
    """What the inbox held at the moments of the kills, by state; *unkept* were fetched only."""
    not_stored: int = 0
    stored_twice: int = 0
    not_answered: int = 0
    out_of_order: int = 0
    repeats_marked: int = 0
    repeats_unmarked: int = 0
    marked_needlessly: int = 0
    left_open: int = 0

    @property
    def lost(self) -> int:
        """Messages that were not stored or never answered."""
        return self.not_stored + self.not_answered


class Killer:
    """Says things, kills the bot meanwhile, and counts."""

    def __init__(self, server: BotApi, bot: BotProcess, database: Database) -> None:
        self._server = server
        self._bot = bot
        self._database = database
        people = [server.world.person(f"Keeper{number}") for number in range(CHATS)]
        self._chats = [(server.world.private(person), person) for person in people]
        self._said: dict[int, list[int]] = {chat.id: [] for chat, _ in self._chats}
        self._last_offset = 0
        self.outcome = Outcome()

    def say(self, count: int) -> None:
        """Let `count` messages be said, spread over all chats; each is told by its number."""
        for _ in range(count):
            chat, person = self._chats[self.outcome.said % CHATS]
            self.outcome.said += 1
            number = len(self._said[chat.id]) + 1
            self._said[chat.id].append(number)
            self._server.world.say(chat, person, f"no3 {number}")

    async def kill_in(self, phase: str, *, said: int = EACH_TIME, timeout_s: float = 60.0) -> None:
        """Let things be said, kill the bot in the next moment of this phase, start it again."""
        struck = asyncio.Event()
        moment = _MOMENTS[phase]
        known = self._server.updates.last_id

        def strike(stage: str, call: Call) -> None:
            if not struck.is_set() and moment(stage, call, known):
                self._bot.kill()
                struck.set()

        self._server.hooks.append(strike)
        self.say(said)
        async with asyncio.timeout(timeout_s):
            await struck.wait()
        self._server.hooks.remove(strike)
        await self._bot.wait()
        self.outcome.kills[phase] += 1
        await self._look()
        await self._bot.start()

    async def _look(self) -> None:
        """Note what the dead process left: rows by state, and what it had fetched only."""
        states = await row_states(self._database)
        self.outcome.found.update({k: v for k, v in states.items() if k != "answered"})
        unkept = self.outcome.said - sum(states.values())
        self.outcome.found["unkept"] += unkept

    async def settle(self, timeout_s: float = 600.0) -> Outcome:
        """Let everything come to its end, then count."""
        async with asyncio.timeout(timeout_s):
            states: dict[str, int] = {}
            while states.get("answered", 0) < self.outcome.said:
                states = await states_when_done(self._server, self._database, timeout_s)
        await self._count_stored()
        for chat, numbers in self._said.items():
            self._count_answers(chat, numbers)
        self.outcome.left_open = self.outcome.said - (await row_states(self._database)).get(
            "answered", 0
        )
        return self.outcome

    async def _count_stored(self) -> None:
        query = sql(
            "SELECT c.external, e.text, count(*) FROM readings r"
            " JOIN entries e ON e.id = r.entry_id JOIN chats c ON c.id = e.chat_id"
            " GROUP BY c.external, e.text"
        )
        async with self._database.read() as uow:
            stored = {(int(c), t): n for c, t, n in await uow.session.execute(query)}
        for chat, numbers in self._said.items():
            counts = [stored.get((chat, f"no3 {number}"), 0) for number in numbers]
            self.outcome.not_stored += counts.count(0)
            self.outcome.stored_twice += sum(1 for count in counts if count > 1)

    def _count_answers(self, chat: int, numbers: list[int]) -> None:
        shown = list(_numbers(self._server.texts(chat)))
        seen: set[int] = set()
        for number, marked in shown:
            if number in seen:
                self.outcome.repeats_marked += marked
                self.outcome.repeats_unmarked += not marked
            elif marked:
                self.outcome.marked_needlessly += 1
            seen.add(number)
        self.outcome.not_answered += len(set(numbers) - seen)
        order = [number for number, _ in shown]
        self.outcome.out_of_order += sum(b < a for a, b in itertools.pairwise(order))


async def row_states(database: Database) -> dict[str, int]:
    """How many rows of the inbox are in each state that has any."""
    query = sql("SELECT state, count(*) AS rows FROM inbox GROUP BY state")
    async with database.read() as uow:
        return {row.state: row.rows for row in await uow.session.execute(query)}


async def states_when_done(
    server: BotApi, database: Database, timeout_s: float = 60.0
) -> dict[str, int]:
    """Wait until nothing is on its way any more, and tell what the inbox holds then."""
    async with asyncio.timeout(timeout_s):
        while True:
            states = await row_states(database)
            if not server.updates.pending and not states.keys() - {"answered", "parked"}:
                return states
            await server.next_call(within_s=0.5)


def _numbers(texts: Iterable[str]) -> Iterable[tuple[int, bool]]:
    for text in texts:
        found = _SHOWN.search(text.splitlines()[0])
        if found:
            yield int(found[1]), REPEAT in text


def _fetched(stage: str, call: Call, known: int) -> bool:
    new = call.result if call.method == "getUpdates" and stage == "answered" else None
    return bool(new) and max(update["update_id"] for update in call.result) > known


def _committed(stage: str, call: Call, known: int) -> bool:
    offset = int(call.params.get("offset") or 0)
    return stage == "arrived" and call.method == "getUpdates" and offset > known + 1


def _answering(stage: str, call: Call, _known: int) -> bool:
    return stage == "arrived" and call.method == "sendMessage"


def _accepted(stage: str, call: Call, _known: int) -> bool:
    return stage == "accepted" and call.method == "sendMessage" and call.accepted


_MOMENTS: dict[str, Callable[[str, Call, int], Any]] = {
    "fetched": _fetched,
    "committed": _committed,
    "answering": _answering,
    "accepted": _accepted,
}
