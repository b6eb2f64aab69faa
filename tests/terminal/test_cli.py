"""The command line, in this process."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.terminal.conftest import Meniscus


@pytest.mark.parametrize("command", [(), ("chat",), ("parse",), ("run",)])
@pytest.mark.parametrize("flag", ["--help", "-h"])
def test_help_has_examples(meniscus: Meniscus, command: tuple[str, ...], flag: str) -> None:
    ran = meniscus(*command, flag)
    assert ran.status == 0
    assert "Examples:" in ran.out
    assert " ".join(("meniscus", *command)) in ran.out.split("Examples:")[1]
    assert ran.err == ""


def test_the_version_is_told(meniscus: Meniscus) -> None:
    ran = meniscus("--version")
    assert ran.status == 0
    assert ran.out.startswith("meniscus")


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("chatt",), ["chatt"]),
        (("chat", "--jsn"), ["--json"]),
        (("chat", "extra"), ["extra"]),
        (("chat", "--clock", "noon"), ["--clock", "2026-03-01T09:00+01:00"]),
        (("chat", "--timezone", "Europe/Lisbonn"), ["--timezone", "Europe/Lisbon"]),
        (("chat", "--timezone", ""), ["--timezone"]),
        (("chat", "--database", "x.sqlite3"), ["--database", "sqlite:///x.sqlite3"]),
        (("chat", "--database", "sqlite:///:memory:"), ["--database", "memory"]),
        (("parse", "--now", "yesterday"), ["--now"]),
        (("parse", "--tank"), ["--tank"]),
    ],
)
def test_wrong_usage_is_status_2(
    meniscus: Meniscus, arguments: tuple[str, ...], words: list[str]
) -> None:
    ran = meniscus(*arguments)
    assert ran.status == 2
    assert ran.out == ""
    for word in words:
        assert word in ran.err
    assert "Traceback" not in ran.err


def test_run_names_the_missing_token(meniscus: Meniscus) -> None:
    ran = meniscus("run")
    assert ran.status == 1
    assert "telegram.token" in ran.err
    assert "MENISCUS_TELEGRAM__TOKEN" in ran.err


@pytest.mark.parametrize("command", ["chat", "run"])
def test_a_misspelt_setting_stops_the_start(
    meniscus: Meniscus, monkeypatch: pytest.MonkeyPatch, command: str
) -> None:
    monkeypatch.setenv("MENISCUS_DATABASE_URL", "sqlite:///x.sqlite3")
    ran = meniscus(command, given="kh 4\n")
    assert ran.status == 1
    assert ran.out == ""
    assert "MENISCUS_DATABASE__URL" in ran.err
    assert not Path("x.sqlite3").exists()


def test_a_configuration_that_is_named_must_be_there(meniscus: Meniscus) -> None:
    ran = meniscus("chat", "--config", "nowhere.toml")
    assert ran.status == 1
    assert "nowhere.toml" in ran.err


def test_parse_takes_its_zone_from_now(meniscus: Meniscus) -> None:
    at = {}
    for zone in ((), ("--timezone", "Asia/Tokyo")):
        now = ("--now", "2026-03-04T12:00+01:00")
        ran = meniscus("parse", *now, *zone, given="kh 4 yesterday 20:00\n")
        assert ran.status == 0
        at[zone] = json.loads(ran.out)["at"]
    assert at[()] == "2026-03-03T20:00:00+01:00"
    assert at["--timezone", "Asia/Tokyo"] == "2026-03-03T20:00:00+09:00"


def test_parse_knows_the_tanks_that_it_is_told(meniscus: Meniscus) -> None:
    ran = meniscus("parse", "--tank", "Fern", "--tank", "Quarry", given="quarry: kh 9\nfern kh 4\n")
    assert [json.loads(line)["tank"] for line in ran.out.splitlines()] == ["Quarry", "Fern"]


def test_parse_goes_on_after_a_bad_object(meniscus: Meniscus) -> None:
    ran = meniscus("parse", "--json-input", given='{"text": "kh 4"}\nx\n{"text": "ph 7"}\n')
    assert ran.status == 1
    assert len(ran.out.splitlines()) == 2
    assert "line 2" in ran.err


@pytest.mark.parametrize("command", ["chat", "parse"])
def test_no_input_is_no_fault(meniscus: Meniscus, command: str) -> None:
    ran = meniscus(command, given=Path("/dev/null"))
    assert (ran.status, ran.out, ran.err) == (0, "", "")
