from __future__ import annotations

import signal
import subprocess
import sys
from pathlib import Path

import pytest

from bot.terminal.lock import DatabaseBusy, held

HOLD = """
import sys
from pathlib import Path
from bot.terminal.lock import held
with held(Path(sys.argv[1])):
    print("held", flush=True)
    sys.stdin.read()
"""


def hold_elsewhere(path: Path) -> subprocess.Popen[str]:
    process = subprocess.Popen(
        [sys.executable, "-c", HOLD, str(path)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    assert process.stdout is not None
    assert process.stdout.readline() == "held\n"
    return process


@pytest.mark.parametrize("end", ["orderly", "killed"])
def test_a_file_is_held_until_its_process_ends(tmp_path: Path, end: str) -> None:
    path = tmp_path / "x.sqlite3"
    with hold_elsewhere(path) as process:
        with pytest.raises(DatabaseBusy, match=r"x\.sqlite3"), held(path):
            pytest.fail("it was held twice")
        if end == "killed":
            process.send_signal(signal.SIGKILL)
        else:
            process.communicate()
    assert (tmp_path / "x.sqlite3-lock").exists() == (end == "killed")
    with held(path):
        pass
    assert list(tmp_path.iterdir()) == []


def test_another_name_of_the_same_file_is_the_same(tmp_path: Path) -> None:
    path, link = tmp_path / "x.sqlite3", tmp_path / "link.sqlite3"
    path.touch()
    link.symlink_to(path)
    with held(path), pytest.raises(DatabaseBusy), held(link):
        pytest.fail("it was held twice")


def test_two_files_are_two(tmp_path: Path) -> None:
    with held(tmp_path / "a"), held(tmp_path / "b"):
        assert len(list(tmp_path.iterdir())) == 2


def test_an_error_inside_gives_the_file_back(tmp_path: Path) -> None:
    with pytest.raises(ZeroDivisionError), held(tmp_path / "a"):
        raise ZeroDivisionError
    with held(tmp_path / "a"):
        pass
