"""A first evening through the whole house, the same on both engines."""

from __future__ import annotations

import asyncio
from pathlib import Path

from sqlalchemy.engine import URL

from tests.chat.harness import Talk, talking


async def test_a_first_evening(url: URL | str, tmp_path: Path) -> None:
    async with talking(tmp_path, url=url) as talk:
        assert "KH 4" in await talk.text("ph 7.2 kh 4 gh 8 no3 20")
        assert "Added Fern" in await talk.text("/tank new Fern 90 l fresh")
        await talk.say("ammonia 0 temp 25")
        (dose,) = await talk.say("dose kh 6")
        assert len(dose.facts["parts"]) == 2
        await talk.press(1, dose)
        await talk.press(2, dose)
        assert "Corrected" in await talk.text("no, temp 24")
        await talk.say("undo")
        await talk.say("remind me to change fern every sunday 10:00")
        retest, change = await talk.wait(days=7)
        assert retest.facts["reminders"][0]["what"].startswith("retest")
        assert "Next: Sun 15 Mar 10:00" in await talk.text("changed 30%")
        await talk.say("/source tap kh 8 ph 7.6")
        await talk.say("/tank rename fern Moss")
        assert await talk.app.names(talk.address) == ["Moss"]
        assert "Due: change fern" in change.text


async def test_chats_side_by_side_do_not_mix(url: URL | str, tmp_path: Path) -> None:
    async with talking(tmp_path, url=url) as first:
        talks = [first] + [Talk(first.app, first.clock, chat=str(n)) for n in range(2, 9)]

        async def evening(talk: Talk) -> None:
            number = int(talk.chat)
            await talk.say("/tank new Fern 90 l fresh")
            for kh in range(1, 6):
                await talk.say(f"kh {number + kh}")

        await asyncio.gather(*(evening(talk) for talk in talks))
        for talk in talks:
            facts = await talk.facts("history of kh")
            told = [value["value"] for value in facts["values"]]
            assert told == [int(talk.chat) + kh for kh in (5, 4, 3, 2, 1)]
