"""A small HTTP path for drivers in another process: what a test does through the object.

Everything takes and gives JSON: ``POST /control/<action>`` with the arguments as an object.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from typing import TYPE_CHECKING, Any

from aiohttp import web

from tests.botapi.model import Chat, Fault, Person

if TYPE_CHECKING:
    from tests.botapi.server import BotApi

Action = Callable[["BotApi", dict[str, Any]], Awaitable[Any]]


def _who(api: BotApi, asked: dict[str, Any]) -> tuple[Chat, Person]:
    """The chat and the author: `chat` (an id), else the private chat of `person` (a name)."""
    name = str(asked.get("person", "Keeper"))
    person = next((known for known in api.world.people.values() if known.first_name == name), None)
    person = person or api.world.person(name)
    chat = api.world.chats[int(asked["chat"])] if "chat" in asked else api.world.private(person)
    return chat, person


async def _group(api: BotApi, asked: dict[str, Any]) -> Any:
    chat = api.world.group(asked.get("title", "Group"), topics=bool(asked.get("topics")))
    topics = [api.world.topic(chat) for _ in range(int(asked.get("topics", 0)))]
    return {"chat": chat.as_json(), "topics": topics}


async def _say(api: BotApi, asked: dict[str, Any]) -> Any:
    chat, person = _who(api, asked)
    keys = ("reply_to", "thread")
    return api.world.say(chat, person, asked["text"], **{k: asked[k] for k in keys if k in asked})


async def _attach(api: BotApi, asked: dict[str, Any]) -> Any:
    chat, person = _who(api, asked)
    return api.world.attach(chat, person, asked["what"], caption=asked.get("caption"))


async def _forward(api: BotApi, asked: dict[str, Any]) -> Any:
    chat, person = _who(api, asked)
    return api.world.forward(chat, person, text=asked["text"])


async def _edit(api: BotApi, asked: dict[str, Any]) -> Any:
    message = api.world.messages[int(asked["chat"]), int(asked["message"])]
    return api.world.edit(message, asked["text"])


async def _press(api: BotApi, asked: dict[str, Any]) -> Any:
    _, person = _who(api, asked)
    message = api.world.messages[int(asked["chat"]), int(asked["message"])]
    return api.world.press(message, person, asked["button"])


async def _update(api: BotApi, asked: dict[str, Any]) -> Any:
    return api.updates.put(asked["update"])


async def _fault(api: BotApi, asked: dict[str, Any]) -> Any:
    api.faults.append(Fault(**asked))
    return len(api.faults)


async def _clear_faults(api: BotApi, _asked: dict[str, Any]) -> Any:
    api.faults.clear()
    return True


async def _standing(api: BotApi, asked: dict[str, Any]) -> Any:
    chat = api.world.chats[int(asked["chat"])]
    chat.standing = asked["standing"]
    return chat.as_json()


async def _limits(api: BotApi, asked: dict[str, Any]) -> Any:
    for name, value in asked.items():
        setattr(api.limits, name, value)
    return True


async def _calls(api: BotApi, asked: dict[str, Any]) -> Any:
    """Calls after number `since`, of one `method` if named; waits up to `wait_s` for one."""
    since = int(asked.get("since", 0))

    def found() -> list[dict[str, Any]]:
        return [
            call.as_json()
            for call in api.calls[since:]
            if asked.get("method") in (None, call.method)
            and (call.accepted or not asked.get("accepted"))
        ]

    try:
        await api.until(found, timeout=float(asked.get("wait_s", 0.001)))
    except TimeoutError:
        return []
    return found()


async def _state(api: BotApi, _asked: dict[str, Any]) -> Any:
    return {
        "token": api.token,
        "pending": api.updates.pending,
        "last_update_id": api.updates.last_id,
        "calls": len(api.calls),
        "refused_by_limits": api.limits.refused,
        "commands": api.commands,
    }


ACTIONS: dict[str, Action] = {
    "group": _group,
    "say": _say,
    "attach": _attach,
    "forward": _forward,
    "edit": _edit,
    "press": _press,
    "update": _update,
    "fault": _fault,
    "clear_faults": _clear_faults,
    "standing": _standing,
    "limits": _limits,
    "calls": _calls,
    "state": _state,
}


def add_control(app: web.Application, api: BotApi) -> None:
    """Serve the actions under ``/control/``."""

    async def handle(request: web.Request) -> web.Response:
        action = ACTIONS.get(request.match_info["action"])
        if action is None:
            return web.json_response({"error": "no such action"}, status=404)
        asked = await request.json() if request.can_read_body else {}
        try:
            return web.json_response(await action(api, asked))
        except (KeyError, IndexError, TypeError, ValueError) as error:
            return web.json_response({"error": repr(error)}, status=400)

    app.router.add_route("*", "/control/{action}", handle)
