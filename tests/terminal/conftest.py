from __future__ import annotations

import io
import os
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from bot.cli import main


@pytest.fixture
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty folder to start in, with the user's data and configuration folders in it."""
    for name in [name for name in os.environ if name.upper().startswith("MENISCUS_")]:
        monkeypatch.delenv(name)
    for name in ("data", "config", "tmp"):
        (tmp_path / name).mkdir()
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    monkeypatch.setenv("TMPDIR", str(tmp_path / "tmp"))
    monkeypatch.setenv("TZ", "Europe/Lisbon")
    monkeypatch.setattr("tempfile.tempdir", str(tmp_path / "tmp"))
    (tmp_path / "here").mkdir()
    monkeypatch.chdir(tmp_path / "here")
    return tmp_path


@dataclass(frozen=True)
class Ran:
    """What a command left behind."""

    status: int
    out: str
    err: str


Meniscus = Callable[..., Ran]


@pytest.fixture
def meniscus(
    home: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> Iterator[Meniscus]:
    """The command, run in this process: `meniscus("chat", "--json", given="kh 4\\n")`."""
    opened: list[io.TextIOWrapper] = []

    def run(*arguments: str, given: str | bytes | Path = "") -> Ran:
        path = given if isinstance(given, Path) else home / "input"
        if not isinstance(given, Path):
            path.write_bytes(given if isinstance(given, bytes) else given.encode())
        stdin = path.open(encoding="utf-8")
        opened.append(stdin)
        monkeypatch.setattr(sys, "stdin", stdin)
        capfd.readouterr()
        status = main(list(arguments))
        return Ran(status, *capfd.readouterr())

    yield run
    for stdin in opened:
        stdin.close()
