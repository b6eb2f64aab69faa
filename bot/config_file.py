"""Where the configuration is looked for, without reading it: cheap enough for every start."""

from __future__ import annotations

import os
from pathlib import Path

from bot.starting import StartError

PREFIX = "MENISCUS_"
CONFIG_VARIABLE = "MENISCUS_CONFIG"


class SettingsError(StartError):
    """The configuration stops the start; `problems` says why, one sentence each."""

    def __init__(self, *problems: str) -> None:
        self.problems = problems
        super().__init__("\n".join(problems))


def find(explicit: Path | None = None) -> Path | None:
    """Find the configuration file; None where there is none.

    Looked for, in this order: `explicit` (``--config``), ``MENISCUS_CONFIG``, ``config.toml`` in
    the current folder, ``config.toml`` in the user's configuration folder.

    Raises
    ------
    SettingsError
        If a file that was named does not exist.
    """
    for source, named in (
        ("--config", explicit),
        (CONFIG_VARIABLE, os.environ.get(CONFIG_VARIABLE)),
    ):
        if named:
            path = Path(named).expanduser()
            if not path.is_file():
                raise SettingsError(f"{source} names {path}, and there is no such file")
            return path
    return next((path for path in _usual_places() if path.is_file()), None)


def environment_names() -> list[str]:
    """Give the environment's names with our prefix, but for the one that names the file."""
    ours = (name for name in os.environ if name.upper().startswith(PREFIX))
    return sorted(name for name in ours if name.upper() != CONFIG_VARIABLE)


def _usual_places() -> tuple[Path, Path]:
    import platformdirs  # not needed where the file is named

    folder = platformdirs.user_config_path("meniscus", appauthor=False)
    return Path("config.toml"), folder / "config.toml"
