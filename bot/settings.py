"""The configuration: ``config.toml`` and the environment, validated before anything starts.

Every key is also an environment variable, ``MENISCUS_SECTION__KEY``, which wins over the file.
A key or a name with our prefix that means nothing stops the start, with the nearest name: a
misspelt one would otherwise be ignored, and the keeper's data would go to another place.
"""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Annotated, Any, Literal

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, SecretStr, ValidationError
from pydantic_settings import BaseSettings, PydanticBaseSettingsSource, SettingsConfigDict

from bot.config_file import CONFIG_VARIABLE, PREFIX, SettingsError, environment_names, find
from bot.database_url import async_url
from bot.zones import zone_named

BOT_API = "https://api.telegram.org"


def _zone(name: str) -> str:
    return zone_named(name).key


def _token(token: SecretStr) -> SecretStr:
    """Refuse what cannot be part of an address, without repeating it."""
    text = token.get_secret_value()
    if not text or any(c.isspace() or c in "/?#" or not c.isprintable() for c in text):
        raise ValueError("this is no bot token: it is one word such as 123456:letters-and-digits")
    return token


def _api_root(url: str) -> str:
    if not url.startswith(("http://", "https://")):
        raise ValueError("a root such as http://127.0.0.1:8081 is wanted")
    if "/bot" in url.partition("://")[2]:
        raise ValueError("only the root is wanted, without /bot and the token")
    return url.rstrip("/")


class _Section(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, hide_input_in_errors=True)


class Telegram(_Section):
    """How the bot reaches Telegram."""

    token: Annotated[SecretStr, AfterValidator(_token)] | None = Field(
        default=None,
        description="The bot's token, as BotFather gave it; the one key that `run` needs.",
    )
    token_file: Path | None = Field(
        default=None, description="A file that holds the token instead, such as a mounted secret."
    )
    api_url: Annotated[str, AfterValidator(_api_root)] = Field(
        default=BOT_API, description="The root of the Bot API server."
    )
    mode: Literal["polling", "webhook"] = Field(
        default="polling", description='How updates come in: "polling" or "webhook".'
    )


class Database(_Section):
    """Where everything is remembered."""

    url: Annotated[str, AfterValidator(async_url)] | None = Field(
        default=None,
        repr=False,  # it may hold a password
        description="sqlite:///file or postgresql://user@host/name; "
        "unset: a file in the user's data folder.",
    )


class Access(_Section):
    """Who may talk to the bot."""

    mode: Literal["open", "listed", "invited"] = Field(
        default="open", description='Who may talk to the bot: "open", "listed" or "invited".'
    )


class Defaults(_Section):
    """What a new chat starts with."""

    timezone: Annotated[str, AfterValidator(_zone)] | None = Field(
        default=None,
        description="A new chat's time zone, such as Europe/Lisbon; unset: the chat asks.",
    )
    units: Literal["metric", "us", "imperial"] = Field(
        default="metric",
        description='Of bare numbers: "metric", "us" (degrees F) or "imperial" (UK gallons).',
    )
    language: Annotated[str, Field(pattern=r"^[a-z]{2}$")] = Field(
        default="en", description="A new chat's language, two letters."
    )


class Settings(BaseSettings):
    """The whole configuration; make it with `load`."""

    model_config = SettingsConfigDict(
        env_prefix=PREFIX,
        env_nested_delimiter="__",
        env_ignore_empty=True,
        extra="forbid",
        frozen=True,
        hide_input_in_errors=True,
    )

    telegram: Telegram = Telegram()
    database: Database = Database()
    access: Access = Access()
    defaults: Defaults = Defaults()

    @classmethod
    def settings_customise_sources(
        cls,
        settings_cls: type[BaseSettings],  # noqa: ARG003 - the signature is the library's
        init_settings: PydanticBaseSettingsSource,
        env_settings: PydanticBaseSettingsSource,
        dotenv_settings: PydanticBaseSettingsSource,  # noqa: ARG003
        file_secret_settings: PydanticBaseSettingsSource,  # noqa: ARG003
    ) -> tuple[PydanticBaseSettingsSource, ...]:
        """Let the environment win over the file, which comes in as arguments."""
        return env_settings, init_settings

    def ready_to_run(self) -> Settings:
        """Give the configuration with the token in its place, as the Telegram bot needs it.

        Raises
        ------
        SettingsError
            If there is no token, if its file cannot be read, or if a mode is asked for that this
            version does not have: running open where a list was wanted would let strangers in.
        """
        problems = []
        if self.access.mode != "open":
            problems.append(f'access.mode "{self.access.mode}" is not built yet; only "open" is')
        if self.telegram.mode != "polling":
            problems.append(f'telegram.mode "{self.telegram.mode}" is not built yet')
        if problems:
            raise SettingsError(*problems)
        telegram = self.telegram.model_copy(update={"token": _find_token(self.telegram)})
        return self.model_copy(update={"telegram": telegram})


SECTIONS: dict[str, type[_Section]] = {
    "telegram": Telegram,
    "database": Database,
    "access": Access,
    "defaults": Defaults,
}
KEYS = tuple(f"{name}.{key}" for name, model in SECTIONS.items() for key in model.model_fields)


def load(config: Path | None = None) -> Settings:
    """Read the configuration file, if there is one, and the environment.

    Parameters
    ----------
    config : Path, optional
        The file that ``--config`` names; else it is looked for in the usual places.

    Raises
    ------
    SettingsError
        If a file that was named is missing, a key is unknown or a value is not valid.
    """
    path = find(config)
    data = {} if path is None else _read(path)
    problems = [*_unknown_keys(data, path), *_unknown_names()]
    if problems:
        raise SettingsError(*problems)
    _anchor_token_file(data, path)
    try:
        return Settings(**data)
    except ValidationError as error:
        raise SettingsError(*_sentences(error)) from None  # the cause may hold a secret


def _read(path: Path) -> dict[str, Any]:
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError, OSError) as error:
        raise SettingsError(f"{path} cannot be read: {error}") from error


def _unknown_keys(data: dict[str, Any], path: Path | None) -> list[str]:
    problems = []
    for section, content in data.items():
        if section not in SECTIONS:
            problems.append(f"{path}: there is no section {section}{_nearest(section, SECTIONS)}")
        elif not isinstance(content, dict):
            problems.append(f"{path}: {section} is a section: write [{section}], then its keys")
        else:
            names = (f"{section}.{key}" for key in content)
            problems += [
                f"{path}: there is no key {name}{_nearest(name, KEYS)}"
                for name in names
                if name not in KEYS
            ]
    return problems


def _unknown_names() -> list[str]:
    known = [PREFIX + key.upper().replace(".", "__") for key in KEYS]
    return [
        f"the environment's {name} means nothing{_nearest(name.upper(), (*known, CONFIG_VARIABLE))}"
        for name in environment_names()
        if name.upper() not in known
    ]


def _nearest(name: str, known: Any) -> str:
    import difflib  # only a mistake needs it

    near = difflib.get_close_matches(name, list(known), n=1, cutoff=0.5)
    return f"; did you mean {near[0]}?" if near else f"; there are: {', '.join(known)}"


def _anchor_token_file(data: dict[str, Any], path: Path | None) -> None:
    """Count a relative path from the file it stands in, wherever the program is started."""
    named = data.get("telegram", {}).get("token_file")
    if path is not None and isinstance(named, str):
        data["telegram"]["token_file"] = path.parent / Path(named).expanduser()


def _sentences(error: ValidationError) -> list[str]:
    return [
        f"{'.'.join(str(part) for part in found['loc'])}: "
        f"{found['msg'].removeprefix('Value error, ')}"
        for found in error.errors(include_url=False, include_input=False, include_context=False)
    ]


def _find_token(telegram: Telegram) -> SecretStr:
    if telegram.token is not None and telegram.token_file is not None:
        raise SettingsError("telegram.token and telegram.token_file are both set; keep one")
    if telegram.token is not None:
        return telegram.token
    if telegram.token_file is None:
        raise SettingsError(
            "telegram.token is missing: put it into config.toml under [telegram], "
            "or set MENISCUS_TELEGRAM__TOKEN"
        )
    path = telegram.token_file.expanduser()
    try:
        return _token(SecretStr(path.read_text(encoding="utf-8").strip()))
    except (OSError, UnicodeDecodeError) as error:
        raise SettingsError(f"telegram.token_file {path} cannot be read: {error}") from None
    except ValueError as error:
        raise SettingsError(f"telegram.token_file {path}: {error}") from None
