"""The configuration: where it is found, what wins, and what stops the start."""

from __future__ import annotations

import os
import stat
import tomllib
from pathlib import Path

import pytest

from bot import settings
from bot.config_file import SettingsError, find
from bot.database_url import DatabaseUrlError, async_url, prepare, sqlite_file
from bot.defaults import Defaults
from bot.settings import load

EXAMPLE = Path(__file__).parents[1] / "config.example.toml"
TOKEN = "123456:AbC-dEf_secret"  # noqa: S105 - made up


@pytest.fixture(autouse=True)
def _bare_machine(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Start in an empty folder, with no configuration anywhere."""
    for name in [name for name in os.environ if name.upper().startswith("MENISCUS_")]:
        monkeypatch.delenv(name)
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.chdir(tmp_path)


def write(path: Path, text: str) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return path


def refused(config: Path | None = None) -> str:
    with pytest.raises(SettingsError) as caught:
        load(config)
    return str(caught.value)


def test_nothing_is_needed() -> None:
    found = load()
    assert found.telegram.token is None
    assert found.telegram.api_url == "https://api.telegram.org"
    assert found.access.mode == "open"
    assert found.database.url is None
    assert Defaults(**found.defaults.model_dump()) == Defaults()


def test_files_are_looked_for_in_order(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert find() is None
    user = write(tmp_path / "config" / "meniscus" / "config.toml", "")
    assert find() == user
    write(tmp_path / "config.toml", "")
    assert find() == Path("config.toml")
    named = write(tmp_path / "other.toml", "")
    monkeypatch.setenv("MENISCUS_CONFIG", str(named))
    assert find() == named
    explicit = write(tmp_path / "explicit.toml", "")
    assert find(explicit) == explicit


@pytest.mark.parametrize("source", ["--config", "MENISCUS_CONFIG"])
def test_a_named_file_must_exist(source: str, monkeypatch: pytest.MonkeyPatch) -> None:
    if source == "MENISCUS_CONFIG":
        monkeypatch.setenv(source, "nowhere.toml")
    message = refused(Path("nowhere.toml") if source == "--config" else None)
    assert source in message
    assert "nowhere.toml" in message


def test_the_environment_wins_over_the_file_key_by_key(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write(
        tmp_path / "config.toml",
        '[defaults]\ntimezone = "Europe/Lisbon"\nlanguage = "de"\n[telegram]\napi_url = "http://a"\n',
    )
    monkeypatch.setenv("MENISCUS_DEFAULTS__LANGUAGE", "fr")
    found = load()
    assert found.defaults.timezone == "Europe/Lisbon"
    assert found.defaults.language == "fr"
    assert found.telegram.api_url == "http://a"


def test_every_key_can_come_from_the_environment(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    given = {
        "telegram.token": TOKEN,
        "telegram.token_file": str(tmp_path / "token"),
        "telegram.api_url": "http://127.0.0.1:8081/",
        "telegram.mode": "webhook",
        "database.url": "sqlite:///here.sqlite3",
        "access.mode": "invited",
        "defaults.timezone": "Asia/Tokyo",
        "defaults.units": "us",
        "defaults.language": "es",
    }
    assert set(given) == set(settings.KEYS)
    for key, value in given.items():
        monkeypatch.setenv("MENISCUS_" + key.upper().replace(".", "__"), value)
    found = load()
    assert found.telegram.token is not None
    assert found.telegram.token.get_secret_value() == TOKEN
    assert found.telegram.token_file == tmp_path / "token"
    assert found.telegram.api_url == "http://127.0.0.1:8081"
    assert found.telegram.mode == "webhook"
    assert found.database.url == "sqlite+aiosqlite:///here.sqlite3"
    assert found.access.mode == "invited"
    assert found.defaults.timezone == "Asia/Tokyo"
    assert found.defaults.units == "us"
    assert found.defaults.language == "es"


@pytest.mark.parametrize(
    ("name", "nearest"),
    [
        ("MENISCUS_TELEGRAM__TOKN", "MENISCUS_TELEGRAM__TOKEN"),
        ("MENISCUS_TELEGRAM_TOKEN", "MENISCUS_TELEGRAM__TOKEN"),  # one underscore
        ("MENISCUS_DATABASE__URI", "MENISCUS_DATABASE__URL"),
        ("MENISCUS_DATABASE", "MENISCUS_DATABASE__URL"),  # a section alone, even as JSON
        ("meniscus_default__units", "MENISCUS_DEFAULTS__UNITS"),  # case is no excuse
        ("MENISCUS_CONFG", "MENISCUS_CONFIG"),
    ],
)
def test_a_misspelt_name_stops_the_start(
    name: str, nearest: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv(name, '{"url": "sqlite:///x"}')
    message = refused()
    assert name in message
    assert nearest in message


def test_names_of_others_are_none_of_our_business(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TELEGRAM__TOKEN", "x")
    monkeypatch.setenv("DATABASE_URL", "x")
    monkeypatch.setenv("MENISCUS_DATABASE__URL", "")  # empty: as a shell leaves it unset
    assert load().database.url is None


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ('[telegram]\ntokn = "x"', ["telegram.tokn", "telegram.token"]),
        ('[telegran]\ntoken = "x"', ["telegran", "telegram"]),
        ("telegram = 1", ["[telegram]"]),
        ('[defaults]\nunits = "imperal"', ["defaults.units", "'imperial'"]),
        ('[defaults]\ntimezone = "Europe/Lisbonn"', ["defaults.timezone", "Europe/Lisbon"]),
        ('[defaults]\ntimezone = "../../etc/passwd"', ["defaults.timezone"]),
        ('[defaults]\nlanguage = "english"', ["defaults.language"]),
        ('[telegram]\napi_url = "127.0.0.1:8081"', ["telegram.api_url", "http://127.0.0.1:8081"]),
        ('[telegram]\napi_url = "http://h/bot1:x"', ["telegram.api_url", "root"]),
        ('[telegram]\nmode = "pull"', ["telegram.mode", "'polling'"]),
        ('[database]\nurl = "mysql://h/d"', ["database.url", "postgresql://"]),
        ("[telegram\n", ["config.toml", "line 1"]),
        ("[telegram]\ntoken = 5", ["telegram.token"]),
    ],
)
def test_what_is_wrong_is_named(tmp_path: Path, text: str, words: list[str]) -> None:
    message = refused(write(tmp_path / "config.toml", text))
    for word in words:
        assert word in message


def test_all_problems_are_told_at_once(tmp_path: Path) -> None:
    message = refused(write(tmp_path / "config.toml", "[telegram]\nx = 1\n[databse]\n"))
    assert len(message.splitlines()) == 2


@pytest.mark.parametrize("token", ["two words secret", "secret/../x", "secret\n", ""])
def test_a_wrong_token_is_refused_and_not_repeated(
    tmp_path: Path, token: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("MENISCUS_DEFAULTS__LANGUAGE", "123")  # a second problem beside it
    escaped = token.replace("\n", "\\n")
    path = write(tmp_path / "config.toml", f'[telegram]\ntoken = "{escaped}"')
    with pytest.raises(SettingsError) as caught:
        load(path)
    assert "telegram.token" in str(caught.value)
    assert "secret" not in "".join(map(str, (caught.value, caught.value.__cause__)))
    assert caught.value.__suppress_context__


def test_secrets_are_never_shown(tmp_path: Path) -> None:
    text = f'[telegram]\ntoken = "{TOKEN}"\n[database]\nurl = "postgresql://u:hunter2@h/d"'
    found = load(write(tmp_path / "config.toml", text))
    shown = f"{found} {found!r} {found.model_dump()['telegram']}"
    assert "secret" not in shown
    assert "hunter2" not in shown


def test_run_names_a_missing_token() -> None:
    with pytest.raises(SettingsError, match=r"telegram\.token .*MENISCUS_TELEGRAM__TOKEN"):
        load().ready_to_run()


def test_a_token_file_is_counted_from_the_configuration(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write(tmp_path / "etc" / "token", f"{TOKEN}\n")
    path = write(tmp_path / "etc" / "my.toml", '[telegram]\ntoken_file = "token"')
    token = load(path).ready_to_run().telegram.token
    assert token is not None
    assert token.get_secret_value() == TOKEN
    monkeypatch.setenv("MENISCUS_TELEGRAM__TOKEN", TOKEN)
    with pytest.raises(SettingsError, match="both set"):
        load(path).ready_to_run()


@pytest.mark.parametrize("content", [None, "", "two words", b"\xff\xfe"])
def test_a_token_file_that_holds_none(tmp_path: Path, content: str | bytes | None) -> None:
    if content is not None:
        (tmp_path / "token").write_bytes(
            content if isinstance(content, bytes) else content.encode()
        )
    path = write(tmp_path / "config.toml", '[telegram]\ntoken_file = "token"')
    with pytest.raises(SettingsError, match="token_file"):
        load(path).ready_to_run()


@pytest.mark.parametrize(
    ("key", "value"),
    [("access.mode", "listed"), ("access.mode", "invited"), ("telegram.mode", "webhook")],
)
def test_run_refuses_what_is_not_built(
    key: str, value: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("MENISCUS_TELEGRAM__TOKEN", TOKEN)
    monkeypatch.setenv("MENISCUS_" + key.upper().replace(".", "__"), value)
    with pytest.raises(SettingsError, match="not built yet"):
        load().ready_to_run()


def test_the_example_shows_every_key_with_its_default_and_its_comment(tmp_path: Path) -> None:
    lines = EXAMPLE.read_text(encoding="utf-8").splitlines()
    shown = tomllib.loads("\n".join(line.removeprefix("#") for line in lines[3:] if "= " in line
                                    or line.startswith("[")))  # fmt: skip
    for section, model in settings.SECTIONS.items():
        assert list(shown[section]) == list(model.model_fields)
        for key, field in model.model_fields.items():
            assert shown[section][key] == ("" if field.default is None else field.default)
            at = next(n for n, line in enumerate(lines) if line.startswith(f"#{key} = ")
                      and n > lines.index(f"[{section}]"))  # fmt: skip
            assert lines[at - 1] == f"# {field.description}"
    assert set(shown) == set(settings.SECTIONS)
    assert load(EXAMPLE) == load(write(tmp_path / "empty.toml", ""))


@pytest.mark.parametrize(
    ("given", "used"),
    [
        ("sqlite:///x.db", "sqlite+aiosqlite:///x.db"),
        ("sqlite:////var/x.db", "sqlite+aiosqlite:////var/x.db"),
        ("sqlite+aiosqlite:///x.db", "sqlite+aiosqlite:///x.db"),
        ("SQLite:///X.db ", "sqlite+aiosqlite:///X.db"),
        ("postgresql://u:p%40@h:1/d", "postgresql+asyncpg://u:p%40@h:1/d"),
        ("postgres://h/d", "postgresql+asyncpg://h/d"),  # a form that hosting services hand out
        ("postgresql+asyncpg://h/d", "postgresql+asyncpg://h/d"),
        ("postgresql:///d?host=/run/pg", "postgresql+asyncpg:///d?host=/run/pg"),
        ("postgresql://h/d?a=b&sslmode=require", "postgresql+asyncpg://h/d?a=b&ssl=require"),
    ],
)
def test_database_forms(given: str, used: str) -> None:
    assert async_url(given) == used


@pytest.mark.parametrize(
    ("given", "word"),
    [
        ("sqlite://", "memory"),
        ("sqlite:///", "memory"),
        ("sqlite:///:memory:", "memory"),
        ("sqlite:///file:x?mode=memory&uri=true", "memory"),
        ("sqlite://x.db", "three slashes"),
        ("sqlite:///x.db?timeout=1", "options"),
        ("x.db", "sqlite:///x.db"),
        ("mysql://u:hunter2@h/d", "postgresql://"),
        ("postgresql+psycopg2://u:hunter2@h/d", "postgresql://"),
        ("", "sqlite:///"),
    ],
)
def test_other_forms_are_refused_kindly(given: str, word: str) -> None:
    with pytest.raises(DatabaseUrlError, match=word) as caught:
        async_url(given)
    assert "hunter2" not in str(caught.value)


def test_a_file_at_home(tmp_path: Path) -> None:
    assert sqlite_file(async_url("sqlite:///~/x.db")) == tmp_path / "x.db"
    assert sqlite_file(async_url("postgresql://h/d")) is None


def test_a_new_file_is_its_owners_alone(tmp_path: Path) -> None:
    old = os.umask(0)
    try:
        prepare(async_url(f"sqlite:///{tmp_path}/x.db"))
    finally:
        os.umask(old)
    assert stat.S_IMODE((tmp_path / "x.db").stat().st_mode) == 0o600


def test_a_file_that_cannot_be_made_is_named(tmp_path: Path) -> None:
    with pytest.raises(DatabaseUrlError, match=r"none/x\.db"):
        prepare(async_url(f"sqlite:///{tmp_path}/none/x.db"))
