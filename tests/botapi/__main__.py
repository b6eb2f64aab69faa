"""``python -m tests.botapi``: the server on its own, for a bot to be tried by hand."""

from __future__ import annotations

import argparse
import asyncio
import json
import signal

from tests.botapi.server import TOKEN, BotApi


async def serve(options: argparse.Namespace) -> None:
    """Serve until SIGINT or SIGTERM; the first line printed is the address as JSON."""
    api = BotApi(options.token, privacy=not options.no_privacy, press_expiry=options.press_expiry)
    stop = asyncio.Event()
    for name in (signal.SIGINT, signal.SIGTERM):
        asyncio.get_running_loop().add_signal_handler(name, stop.set)
    async with api.running(options.port):
        print(json.dumps({"url": api.url, "token": api.token}), flush=True)
        await stop.wait()


def main() -> None:
    """Read the options and serve."""
    parser = argparse.ArgumentParser(prog="python -m tests.botapi", description=__doc__)
    parser.add_argument("--port", type=int, default=0, help="0 takes any free port")
    parser.add_argument("--token", default=TOKEN)
    parser.add_argument("--no-privacy", action="store_true", help="groups without privacy mode")
    parser.add_argument("--press-expiry", type=float, default=150.0)
    asyncio.run(serve(parser.parse_args()))


if __name__ == "__main__":
    main()
