"""Every example in the README is what the program does."""

from __future__ import annotations

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest

README = (Path(__file__).parents[1] / "README.md").read_text(encoding="utf-8")


def block(marker: str) -> list[str]:
    """The lines of the fenced block that follows a marker."""
    found = re.search(rf"<!-- {marker} -->\n```\w*\n(.*?)```", README, re.DOTALL)
    assert found is not None, f"README.md has no block after <!-- {marker} -->"
    return found[1].splitlines()


def meniscus(*arguments: str, lines: list[str]) -> str:
    run = subprocess.run(
        [sys.executable, "-m", "bot", *arguments],
        input="".join(f"{line}\n" for line in lines),
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert run.returncode == 0, run.stderr
    return run.stdout


def test_the_conversation_is_as_the_program_prints_it() -> None:
    shown = block("conversation")
    typed = [line.removeprefix("> ") for line in shown if line.startswith("> ")]
    printed = meniscus(
        "chat", "--clock", "2026-03-01T12:00:00+00:00", "--timezone", "Europe/Lisbon", lines=typed
    )
    said = [line for line in shown if line and not line.startswith("> ")]
    assert [line for line in printed.splitlines() if line] == said


@pytest.mark.parametrize("marker", ["parse"])
def test_the_other_examples(marker: str) -> None:
    command, *expected = block(marker)
    found = re.fullmatch(r"\$ echo '(.*)' \| meniscus (.*)", command)
    assert found is not None
    printed = meniscus(*found[2].split(), lines=[found[1]])
    assert json.loads(printed) == json.loads("\n".join(expected))


def test_the_commands_are_one_line_each() -> None:
    for marker in ("chat command", "test command"):
        assert len(block(marker)) == 1


def test_the_telegram_steps_name_what_the_settings_know() -> None:
    from bot.settings import Settings

    (line,) = block("run command")
    names = re.findall(r"MENISCUS_([A-Z]+)__([A-Z_]+)=", line)
    assert names
    for section, key in names:
        held = Settings.model_fields[section.lower()].annotation
        assert held is not None
        assert key.lower() in held.model_fields


def test_the_accuracy_table_has_the_rows_of_its_script_and_none_over_its_limit() -> None:
    found = re.search(r"<!-- accuracy -->\n(.*?)<!-- end of accuracy -->", README, re.DOTALL)
    assert found is not None
    rows = [line.strip("| ").split(" | ") for line in found[1].splitlines() if line[:2] == "| "][1:]
    script = (Path(__file__).parent / "bench" / "water_accuracy.py").read_text(encoding="utf-8")
    assert len(rows) >= 10
    for what, _, _, worst, allowed in rows:
        assert float(worst.rstrip(" %")) <= float(allowed.rstrip(" %")), what
        assert f'"{allowed}"' in script, what
