"""The way of one test is gone again by another, with the same words and the same database."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

import pytest

from bot.app import App
from tests.chat.harness import Talk, talking

LINES = ("/tank new Moss 60 l fresh", "ph 7 kh 4", "remind me to test kh in 2 days", "changed 20%")


@asynccontextmanager
async def walker(folder: Path, name: str) -> AsyncIterator[Talk]:
    (folder / name).mkdir()
    async with talking(folder / name, zone="Europe/Riga", remembering=True) as opened:
        yield opened


async def test_a_known_way_is_gone_without_the_house(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    handled: list[str] = []
    handle = App.handle

    async def counted(self: App, incoming, **parts):  # type: ignore[no-untyped-def]
        handled.append(incoming.text)
        return await handle(self, incoming, **parts)

    monkeypatch.setattr(App, "handle", counted)
    told = []
    for name in ("first", "second", "third"):
        async with walker(tmp_path, name) as talk:
            said = [await talk.text(line) for line in LINES]
            arrived = [reply.text for reply in await talk.wait(days=3)]
            told.append((said, arrived))
            await talk.say(f"kh {len(name)}")
            await talk.say("undo")
    assert told[0] == told[1] == told[2]
    assert told[0][1]
    # Nobody went on from the undo so far: it is answered again.
    assert handled == [*LINES, "kh 5", "undo", "kh 6", "undo", "undo"]


async def test_where_ways_part_each_has_its_own_record(tmp_path: Path) -> None:
    for name, last in (("a", "kh 6"), ("b", "kh 8"), ("c", "kh 9")):
        async with walker(tmp_path, name) as talk:
            for line in LINES[:2]:
                await talk.say(line)
            await talk.say(last)
            history = await talk.text("kh history")
            assert last.removeprefix("kh ") in history
            async with talk.app.database.read() as uow:
                chat = await uow.chats.find(talk.address)
                assert chat is not None
                (tank,) = await uow.tanks.of_chat(chat.id)
                kept = [row.what.canonical for row in await uow.log.readings(tank.id)]
            assert set(kept) == {4.0, float(last.split()[1]), 7.0}


async def test_a_house_that_was_looked_into_goes_its_own_way(tmp_path: Path) -> None:
    for name in ("d", "e"):
        async with walker(tmp_path, name) as talk:
            await talk.say(LINES[0])
            assert talk.app is talk.house
            assert talk.walk is not None
            assert talk.walk.known("anything") is None
            assert "KH 5" in await talk.text("kh 5")
