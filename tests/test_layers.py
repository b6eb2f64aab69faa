"""Imports point one way: the core is pure, and each foreign library has its place."""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
CORE = sorted((ROOT / "core").rglob("*.py"))
BOT = sorted((ROOT / "bot").rglob("*.py"))

FORBIDDEN_STDLIB = {"os", "socket", "sqlite3", "asyncio", "time", "pathlib", "subprocess"}
LIBRARIES_OF_CORE = {"numpy", "rapidfuzz", "pint"}
CLOCK_READERS = {"now", "today", "utcnow"}


def imports(source: str) -> Iterator[str]:
    """Every module that a source imports, wherever in it, with what it takes from packages."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, "relative imports hide the direction"
            yield from (f"{node.module}.{alias.name}" for alias in node.names)


def top(name: str) -> str:
    return name.partition(".")[0]


def wrong_in_core(source: str, *, units: bool) -> list[str]:
    allowed = (LIBRARIES_OF_CORE if units else LIBRARIES_OF_CORE - {"pint"}) | {"core"}
    return [
        name
        for name in imports(source)
        if top(name) not in allowed
        and (top(name) not in sys.stdlib_module_names or top(name) in FORBIDDEN_STDLIB)
    ]


def clock_readings(source: str) -> list[str]:
    """Calls such as `datetime.now()`, `date.today()`, whatever the module is called."""
    return [
        node.func.attr
        for node in ast.walk(ast.parse(source))
        if isinstance(node, ast.Call)
        and isinstance(node.func, ast.Attribute)
        and node.func.attr in CLOCK_READERS
    ]


def relative(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


def test_there_is_something_to_check() -> None:
    assert CORE
    assert BOT


@pytest.mark.parametrize(
    ("source", "why"),
    [
        ("import os", "reads the machine"),
        ("import os.path", "the same by its submodule"),
        ("from time import monotonic", "reads a clock"),
        ("def f():\n    import sqlite3", "late imports count"),
        ("if TYPE_CHECKING:\n    from bot.chat.model import Reply", "and those for types"),
        ("import telegram", "a messenger"),
        ("import pint", "belongs into units.py"),
        ("from sqlalchemy import select", "a database"),
    ],
)
def test_the_check_sees_a_wrong_import(source: str, why: str) -> None:
    assert wrong_in_core(source, units=False), why


@pytest.mark.parametrize(
    "source",
    ["import math", "from datetime import datetime", "import numpy as np", "from core import tank"],
)
def test_the_check_lets_a_right_import_pass(source: str) -> None:
    assert not wrong_in_core(source, units=False)


@pytest.mark.parametrize("source", ["datetime.now(UTC)", "date.today()", "dt.datetime.utcnow()"])
def test_the_check_sees_a_clock(source: str) -> None:
    assert clock_readings(source)


@pytest.mark.parametrize("path", CORE, ids=relative)
def test_core_is_pure(path: Path) -> None:
    source = path.read_text(encoding="utf-8")
    assert wrong_in_core(source, units=path == ROOT / "core" / "units.py") == []
    assert clock_readings(source) == []


@pytest.mark.parametrize(
    ("library", "home"),
    [
        ("telegram", "bot/telegram/"),
        ("httpx", "bot/telegram/"),
        ("apscheduler", "bot/reminders/"),
        ("prompt_toolkit", "bot/terminal/"),
        ("click", "bot/cli.py"),
        ("pydantic_settings", "bot/settings.py"),
        ("alembic", "bot/store/"),
    ],
)
def test_a_library_stays_in_its_place(library: str, home: str) -> None:
    strays = [
        relative(path)
        for path in BOT
        if not relative(path).startswith(home)
        and library in map(top, imports(path.read_text(encoding="utf-8")))
    ]
    assert strays == []


def test_the_chat_knows_no_messenger() -> None:
    outer = ("bot.telegram", "bot.terminal", "bot.cli", "bot.settings", "bot.app")
    strays = [
        (relative(path), name)
        for path in BOT
        if relative(path).startswith(("bot/chat/", "bot/store/", "bot/reminders/"))
        for name in imports(path.read_text(encoding="utf-8"))
        if name.startswith(outer) and relative(path) != "bot/reminders/waker.py"
    ]
    assert strays == []
