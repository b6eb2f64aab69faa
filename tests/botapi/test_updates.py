"""getUpdates: "Getting updates" in the Bot API's documentation."""

from __future__ import annotations

import asyncio
import random

from tests.botapi import BotApi
from tests.botapi.client import Caller


def _ids(answer: dict[str, object]) -> list[int]:
    return [update["update_id"] for update in answer["result"]]  # type: ignore[attr-defined]


async def test_unconfirmed_updates_come_again_and_confirmed_ones_never(
    api: BotApi, call: Caller
) -> None:
    anna = api.world.person("Anna")
    for text in ("kh 4", "kh 5", "kh 6"):
        api.world.say(api.world.private(anna), anna, text)
    first = _ids(await call("getUpdates"))
    assert len(first) == 3
    assert _ids(await call("getUpdates")) == first
    assert _ids(await call("getUpdates", offset=first[1])) == first[1:]
    assert _ids(await call("getUpdates", offset=first[0])) == first[1:]
    assert _ids(await call("getUpdates", offset=first[-1] + 1, timeout=0)) == []
    assert api.updates.pending == 0


async def test_limit_and_negative_offset(api: BotApi, call: Caller) -> None:
    ids = [api.updates.put({"message": {}}) for _ in range(150)]
    assert _ids(await call("getUpdates")) == ids[:100]
    assert _ids(await call("getUpdates", limit=7)) == ids[:7]
    assert _ids(await call("getUpdates", offset=-2)) == ids[-2:]
    assert api.updates.pending == 2


async def test_a_long_poll_ends_with_the_first_update(api: BotApi, call: Caller) -> None:
    polling = asyncio.create_task(call("getUpdates", timeout=50))
    await api.until(lambda: api.calls)
    number = api.updates.put({"message": {}})
    assert _ids(await polling) == [number]


async def test_a_second_poller_ends_the_first_with_409(api: BotApi, call: Caller) -> None:
    first = asyncio.create_task(call("getUpdates", timeout=50))
    await api.until(lambda: api.calls)
    second = asyncio.create_task(call("getUpdates", timeout=50))
    answer = await first
    assert answer["error_code"] == 409
    assert "terminated by other getUpdates request" in answer["description"]
    number = api.updates.put({"message": {}})
    assert _ids(await second) == [number]


async def test_a_webhook_forbids_polling(call: Caller) -> None:
    await call("setWebhook", url="https://example.org/hook")
    assert (await call("getWebhookInfo"))["result"]["url"] == "https://example.org/hook"
    assert (await call("getUpdates"))["error_code"] == 409
    await call("deleteWebhook")
    assert (await call("getUpdates", timeout=0))["ok"]


async def test_dropping_pending_updates(api: BotApi, call: Caller) -> None:
    api.updates.put({"message": {}})
    await call("deleteWebhook", drop_pending_updates=True)
    assert (await call("getUpdates", timeout=0))["result"] == []


async def test_identifiers_that_jump_back_are_shown_to_an_old_offset(
    api: BotApi, call: Caller
) -> None:
    last = api.updates.put({"message": {}})
    await call("getUpdates", offset=last + 1, timeout=0)
    api.updates.jump(17)
    api.updates.put({"message": {}})
    assert _ids(await call("getUpdates", offset=last + 1)) == [17]
    assert _ids(await call("getUpdates", offset=18, timeout=0)) == []


async def test_copies_and_shuffling(api: BotApi, call: Caller) -> None:
    api.updates.copies, api.updates.shuffle = 3, random.Random(7)  # noqa: S311
    ids = [api.updates.put({"message": {}}) for _ in range(5)]
    batch = _ids(await call("getUpdates"))
    assert sorted(batch) == sorted(ids * 3)
    assert batch != sorted(batch)


async def test_unreadable_updates_are_handed_out_as_they_are(api: BotApi, call: Caller) -> None:
    api.updates.put({"message": {"message_id": "no number"}})
    api.updates.put({"message": None, "update_id": "text"})
    answer = await call("getUpdates")
    assert answer["result"][0]["message"] == {"message_id": "no number"}
    assert answer["result"][1]["update_id"] == "text"
