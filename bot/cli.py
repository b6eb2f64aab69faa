"""The command `meniscus`. What a subcommand needs is loaded when it is asked for."""

from __future__ import annotations

import sys
from collections.abc import Callable
from datetime import datetime, tzinfo
from pathlib import Path
from typing import Any, TypeVar

import click

from bot.starting import StartError
from bot.streams import leave_output, stand_in_for_closed

FAILED, WRONG_USAGE, INTERRUPTED = 1, 2, 130

_Command = TypeVar("_Command", bound=Callable[..., Any])
_HELP = {"help_option_names": ["-h", "--help"]}


def _moment(text: str) -> datetime:
    """Read an ISO 8601 date and time; without an offset it is naive."""
    try:
        return datetime.fromisoformat(text)
    except ValueError:
        raise click.BadParameter(
            f"{text!r} is no date and time such as 2026-03-01T09:00+01:00"
        ) from None


def _zone(name: str) -> tzinfo:
    from bot.zones import UnknownZone, zone_named

    try:
        return zone_named(name)
    except UnknownZone as error:
        raise click.BadParameter(str(error)) from None


def _database(url: str) -> str:
    from bot.database_url import DatabaseUrlError, async_url

    try:
        return async_url(url)
    except DatabaseUrlError as error:
        raise click.BadParameter(str(error)) from None


def _show_version(ctx: click.Context, _option: click.Parameter, wanted: bool) -> None:
    if not wanted:
        return
    from importlib.metadata import PackageNotFoundError, version

    try:
        click.echo(f"meniscus {version('meniscus')}")
    except PackageNotFoundError:
        click.echo("meniscus, not installed: run from its source")
    ctx.exit()


def _config_option(command: _Command) -> _Command:
    return click.option(
        "--config",
        type=click.Path(path_type=Path),
        help="The configuration file, instead of config.toml in the usual places.",
    )(command)


@click.group(context_settings=_HELP)
@click.option(
    "--version",
    is_flag=True,
    is_eager=True,
    expose_value=False,
    callback=_show_version,
    help="Show the version and exit.",
)
def cli() -> None:
    """Keep aquarium water right: send readings, ask what to do, be reminded in time.

    \b
    Examples:
      meniscus chat                      talk in this terminal, nothing to set up
      meniscus chat --demo               the same with three invented tanks
      echo "ph 7.2 kh 4" | meniscus parse
      meniscus run                       the Telegram bot; needs a token
    """  # noqa: D301 - \b is click's mark for lines that stay as they are


@cli.command(context_settings=_HELP)
@click.option("--database", type=_database, metavar="URL", help="sqlite:///file or postgresql://…")
@click.option(
    "--timezone", type=_zone, metavar="ZONE", help="Else the configuration's, else the machine's."
)
@click.option(
    "--clock", type=_moment, metavar="ISO", help="A simulated clock, moved by lines: +6h."
)
@click.option("--demo", is_flag=True, help="Three invented tanks with a season of history.")
@click.option("--group", is_flag=True, help="A group chat: `>anna: kh 4` is said by Anna.")
@click.option("--json", is_flag=True, help="One JSON object a reply.")
@_config_option
def chat(
    database: str | None,
    timezone: tzinfo | None,
    clock: datetime | None,
    demo: bool,
    group: bool,
    json: bool,
    config: Path | None,
) -> int:
    """Talk in this terminal, or answer the lines of a pipe.

    \b
    Examples:
      meniscus chat
      meniscus chat --demo
      printf 'ph 7.2 kh 4\\n#1\\n' | meniscus chat --database sqlite:///try.sqlite3
      printf 'remind me to test in 24h\\n+1d\\n' | meniscus chat --clock 2026-03-01T09:00

    \b
    Into a pipe:
      #2      presses the second button of the latest reply that has buttons
      +90m    moves a simulated clock (m, h, d, w) and delivers what falls due
      ; …     is a comment
    """  # noqa: D301
    from bot.terminal.chat import DemoRefused
    from bot.terminal.chat import chat as hold
    from bot.terminal.options import Asked, choose

    asked = Asked(database, timezone, clock, demo, group, json, config)
    try:
        return hold(choose(asked))
    except DemoRefused as error:
        raise click.UsageError(str(error)) from error


@cli.command(context_settings=_HELP)
@click.option("--now", type=_moment, metavar="ISO", help="What relative dates count from.")
@click.option(
    "--timezone", type=_zone, metavar="ZONE", help="Else --now's offset, or the machine's."
)
@click.option("--tank", "tanks", multiple=True, metavar="NAME", help="A tank; may be repeated.")
@click.option("--json-input", is_flag=True, help='Lines are objects: {"text": "ph 7.2"}.')
def parse(
    now: datetime | None, timezone: tzinfo | None, tanks: tuple[str, ...], json_input: bool
) -> int:
    """Read messages from standard input and print what each means, one JSON object a line.

    \b
    Examples:
      echo "fern: kh 4 no3 20 ppm" | meniscus parse --tank Fern
      echo "kh 5 yesterday 20:00" | meniscus parse --now 2026-03-04T12:00+01:00
      echo '{"text": "ph 7.2\\nkh 4"}' | meniscus parse --json-input
    """  # noqa: D301
    from bot.clock import SystemClock
    from bot.terminal.parse import contexts, parse_lines
    from bot.zones import local_zone

    zone = timezone or (now and now.tzinfo) or local_zone()
    if now is not None and now.tzinfo is None:
        now = now.replace(tzinfo=zone)
    source = () if sys.stdin is None else sys.stdin.buffer
    context = contexts(SystemClock(), now=now, zone=zone, tanks=tanks)
    return parse_lines(source, sys.stdout.buffer, context=context, json_input=json_input)


@cli.command(context_settings=_HELP)
@_config_option
def run(config: Path | None) -> int:
    """Run the Telegram bot until it is stopped; it needs nothing but a token.

    \b
    Examples:
      MENISCUS_TELEGRAM__TOKEN=… meniscus run
      meniscus run --config /etc/meniscus/config.toml
    """  # noqa: D301
    from bot.running import serve
    from bot.settings import load

    return serve(load(config).ready_to_run())


def main(arguments: list[str] | None = None) -> int:
    """Run the command and give its exit status: 0 well, 1 failed, 2 wrong usage."""
    stand_in_for_closed()
    try:
        return int(cli.main(arguments, prog_name="meniscus", standalone_mode=False) or 0)
    except click.ClickException as error:
        error.show()
        return error.exit_code
    except StartError as error:
        click.echo(f"meniscus: {error}", err=True)
        return FAILED
    except BrokenPipeError:
        leave_output()
        return FAILED
    except OSError as error:  # such as a full disk
        click.echo(f"meniscus: {error}", err=True)
        return FAILED
    except (click.Abort, KeyboardInterrupt):
        return INTERRUPTED
