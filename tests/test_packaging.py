"""The wheel holds all that the program needs, which an editable install would hide."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PACKAGES = ("bot", "core")


def run(*command: str | Path, cwd: Path, given: str = "", **environment: str) -> str:
    done = subprocess.run(
        command,
        cwd=cwd,
        input=given,
        env={**os.environ, **environment},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return done.stdout


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("dist")
    build = ("-m", "build", "--wheel", "--no-isolation", "--outdir", str(folder), str(ROOT))
    run(sys.executable, *build, cwd=folder)
    (found,) = folder.glob("*.whl")
    return found


@pytest.fixture(scope="module")
def installed(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Where the wheel alone is installed; what it depends on comes from this environment."""
    folder = tmp_path_factory.mktemp("installed")
    pip = ("-m", "pip", "install", "--quiet", "--no-deps", "--no-index", "--no-compile")
    flags = ("--disable-pip-version-check", "--target", str(folder))
    run(sys.executable, *pip, *flags, str(wheel), cwd=folder)
    return folder


def test_every_file_of_the_packages_is_in_it_and_nothing_else(wheel: Path) -> None:
    expected = {
        path.relative_to(ROOT).as_posix()
        for package in PACKAGES
        for path in (ROOT / package).rglob("*")
        if path.is_file() and "__pycache__" not in path.parts
    }
    with zipfile.ZipFile(wheel) as archive:
        names = {name for name in archive.namelist() if ".dist-info/" not in name}
    assert names == expected


def test_it_runs_from_an_empty_folder(installed: Path, tmp_path: Path) -> None:
    empty = tmp_path / "empty"
    empty.mkdir()
    around = {
        "PYTHONPATH": str(installed),
        "PYTHONDONTWRITEBYTECODE": "1",
        "XDG_DATA_HOME": str(tmp_path / "data"),
        "XDG_CONFIG_HOME": str(tmp_path / "config"),
    }
    where = run(sys.executable, "-c", "import bot; print(bot.__file__)", cwd=empty, **around)
    assert Path(where.strip()).is_relative_to(installed)

    meniscus = (sys.executable, installed / "bin" / "meniscus")
    parsed = json.loads(run(*meniscus, "parse", cwd=empty, given="ph 7.2 kh 4\n", **around))
    assert [value["analyte"] for value in parsed["values"]] == ["ph", "kh"]

    line = run(*meniscus, "chat", "--json", cwd=empty, given="ph 7.2 kh 4\n", **around)
    answer = json.loads(line.splitlines()[0])
    assert [value["analyte"] for value in answer["facts"]["values"]] == ["ph", "kh"]
    assert (tmp_path / "data" / "meniscus" / "meniscus.sqlite3").is_file()
    assert list(empty.iterdir()) == []
