"""What a terminal chat was asked for: the command line first, then the configuration."""

from __future__ import annotations

import os
import sys
from dataclasses import dataclass, replace
from datetime import UTC, datetime, tzinfo
from pathlib import Path

from bot.config_file import environment_names, find
from bot.database_url import data_folder, default_url
from bot.defaults import Defaults
from bot.zones import machine_zone, zone_named


@dataclass(frozen=True, slots=True)
class Options:
    """What was asked for, checked.

    `database` is a URL in our drivers' form, None for a temporary file; `clock` is where a
    simulated clock starts, None for the machine's; `zone` is where moments are written;
    `folder` keeps what was typed and what went wrong, None to keep neither after this sitting;
    `chosen_zone` is the zone that the command line names, which a chat on record then takes.
    """

    database: str | None
    zone: tzinfo
    defaults: Defaults
    clock: datetime | None = None
    demo: bool = False
    group: bool = False
    json: bool = False
    ansi: bool = False
    folder: Path | None = None
    chosen_zone: str | None = None


@dataclass(frozen=True, slots=True)
class Asked:
    """The command line as it was given."""

    database: str | None
    timezone: tzinfo | None
    clock: datetime | None
    demo: bool
    group: bool
    json: bool
    config: Path | None


def choose(asked: Asked) -> Options:
    """Fill in what the command line left open.

    Raises
    ------
    StartError
        If the configuration is not valid, or the data folder cannot be made.
    """
    url, defaults = _configured(asked.config)
    name = defaults.timezone or machine_zone()
    zone = asked.timezone or (zone_named(name) if name else UTC)
    known = str(asked.timezone) if asked.timezone else name
    temporary = asked.database is None and (asked.demo or asked.clock is not None)
    return Options(
        database=None if temporary else asked.database or url or default_url(),
        zone=zone,
        defaults=replace(defaults, timezone=known),
        clock=_aware(asked.clock, zone),
        demo=asked.demo,
        group=asked.group,
        json=asked.json,
        ansi=shows_emphasis(),
        folder=None if temporary else data_folder(),
        chosen_zone=str(asked.timezone) if asked.timezone else None,
    )


def shows_emphasis() -> bool:
    """Tell whether standard output is a terminal that may be sent escape sequences."""
    plain = os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb"
    return sys.stdout is not None and sys.stdout.isatty() and not plain


def _configured(config: Path | None) -> tuple[str | None, Defaults]:
    """Give the configured database and defaults.

    Where nothing is configured, which is most chats, the library that validates is not loaded:
    it would take a third of a cold start.
    """
    if find(config) is None and not environment_names():
        return None, Defaults()
    from bot.settings import load

    settings = load(config)
    return settings.database.url, Defaults(**settings.defaults.model_dump())


def _aware(moment: datetime | None, zone: tzinfo) -> datetime | None:
    if moment is None or moment.tzinfo is not None:
        return moment
    return moment.replace(tzinfo=zone)
