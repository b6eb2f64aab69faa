"""The HTTP face: requests in, answers out, and the faults that tests ask for."""

from __future__ import annotations

import asyncio
import json
from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager, suppress
from typing import Any, Literal

from aiohttp import web

from tests.botapi.limits import Limits
from tests.botapi.methods import BY_LOWER, METHODS
from tests.botapi.model import Call, Fault, Person, Refusal
from tests.botapi.updates import Updates
from tests.botapi.world import World

TOKEN = "424242:local-test-token-that-opens-nothing"  # noqa: S105 - opens only this server
Stage = Literal["arrived", "accepted", "answered"]
Hook = Callable[[Stage, Call], None]


class BotApi:
    """A Bot API server for one bot.

    Parameters
    ----------
    token : str
        The only token it takes.
    privacy : bool
        Telegram's privacy mode in groups.
    press_expiry : float or None
        After how many seconds a press can no longer be answered; Telegram's is 150.

    Attributes
    ----------
    world : World
        People, chats and messages; what people do.
    calls : list of Call
        Every request in order, with what became of it.
    faults : list of Fault
        What goes wrong next.
    hooks : list of callables
        Told of each call as it arrives, is accepted and has been answered.
    """

    def __init__(
        self, token: str = TOKEN, *, privacy: bool = True, press_expiry: float | None = None
    ) -> None:
        self.token = token
        self.press_expiry = press_expiry
        self.updates = Updates()
        bot = Person(int(token.split(":")[0]), "Meniscus", "meniscus_test_bot", None, True)
        self.world = World(bot, self.updates, privacy=privacy)
        self.limits = Limits()
        self.faults: list[Fault] = []
        self.calls: list[Call] = []
        self.hooks: list[Hook] = []
        self.commands: list[dict[str, str]] = []
        self.webhook: dict[str, str] = {}
        self.url = ""
        self._changed = asyncio.Event()

    # -- for tests -------------------------------------------------------------------------

    def accepted(self, method: str = "sendMessage", chat: int | None = None) -> list[Call]:
        """The calls of a method that had their effect, in order."""
        return [
            call
            for call in self.calls
            if call.accepted
            and call.method == method
            and (chat is None or str(call.params.get("chat_id")) == str(chat))
        ]

    def texts(self, chat: int | None = None) -> list[str]:
        """Plain text of every message the bot sent, in order."""
        return [call.result["text"] for call in self.accepted(chat=chat)]

    async def until(self, condition: Callable[[], Any], timeout: float = 10.0) -> None:  # noqa: ASYNC109
        """Wait until the condition holds; it is looked at as calls come and go."""
        async with asyncio.timeout(timeout):
            while not condition():
                await self._changed.wait()

    async def next_call(self, within_s: float) -> None:
        """Wait for the next step of any call, or at most that long."""
        with suppress(TimeoutError):
            async with asyncio.timeout(within_s):
                await self._changed.wait()

    # -- HTTP ------------------------------------------------------------------------------

    def application(self) -> web.Application:
        """The aiohttp application."""
        from tests.botapi.control import add_control  # it names this class

        app = web.Application(client_max_size=50 * 2**20)
        app.router.add_route("*", "/bot{token}/{method}", self._handle)
        add_control(app, self)
        return app

    @asynccontextmanager
    async def running(self, port: int = 0, host: str = "127.0.0.1") -> AsyncIterator[BotApi]:
        """Serve on a port of this machine (0: any free one) while the context lasts."""
        runner = web.AppRunner(self.application(), access_log=None, shutdown_timeout=0.5)
        await runner.setup()
        site = web.TCPSite(runner, host, port)
        await site.start()
        self.url = f"http://{host}:{runner.addresses[0][1]}"
        try:
            yield self
        finally:
            self.updates.close()
            await runner.cleanup()

    async def _handle(self, request: web.Request) -> web.StreamResponse:
        try:
            return await self._serve(request)
        except ConnectionResetError:
            return _hang_up(request)  # the bot was killed, or gave up waiting

    async def _serve(self, request: web.Request) -> web.StreamResponse:
        if request.match_info["token"] != self.token:
            return _answer(Refusal(401, "Unauthorized"))
        method = BY_LOWER.get(request.match_info["method"].lower())
        if method is None:
            return _answer(Refusal(404, "Not Found"))
        params = await _params(request)
        call = Call(len(self.calls) + 1, method, params, self.world.clock())
        self.calls.append(call)
        self._tell("arrived", call)
        fault = self._fault(method, params)
        if fault and fault.drop == "before":
            return _hang_up(request)
        response = await self._perform(call, fault)
        self._tell("accepted", call)
        if fault and fault.stall:
            await asyncio.sleep(fault.stall)
        if fault and fault.drop == "after":
            return _hang_up(request)
        await response.prepare(request)
        await response.write_eof()
        self._tell("answered", call)
        return response

    async def _perform(self, call: Call, fault: Fault | None) -> web.Response:
        if fault and fault.body is not None:
            return web.Response(text=fault.body, status=fault.code or 200)
        try:
            if fault and (refusal := fault.refusal()):
                raise refusal
            call.result = await METHODS[call.method](self, call.params)
        except Refusal as refusal:
            call.code, call.description = refusal.code, refusal.description
            return _answer(refusal)
        call.accepted = True
        return web.json_response({"ok": True, "result": call.result})

    def _fault(self, method: str, params: dict[str, Any]) -> Fault | None:
        for fault in self.faults:
            if fault.meets(method, params):
                if fault.times is not None:
                    fault.times -= 1
                return fault
        return None

    def _tell(self, stage: Stage, call: Call) -> None:
        for hook in self.hooks:
            hook(stage, call)
        self._changed.set()
        self._changed = asyncio.Event()


def _answer(refusal: Refusal) -> web.Response:
    return web.json_response(refusal.as_json(), status=refusal.code)


def _hang_up(request: web.Request) -> web.Response:
    if request.transport is not None:
        request.transport.abort()
    return web.Response()


async def _params(request: web.Request) -> dict[str, Any]:
    """Parameters from query, form, upload or JSON, as the real server takes them all."""
    params: dict[str, Any] = dict(request.query)
    if request.content_type == "application/json":
        params.update(json.loads(await request.read() or b"{}"))
        return params
    for key, value in (await request.post()).items():
        if isinstance(value, web.FileField):
            params[key] = {"name": value.filename, "size": len(value.file.read())}
        else:
            params[key] = value
    for key, value in list(params.items()):
        if isinstance(value, str) and value.startswith("attach://"):
            params[key] = params.pop(value.removeprefix("attach://"), None)
    return params
