"""The words' way to the keeper's language: marks, plural forms, and catalogues read when asked."""

from __future__ import annotations

import logging
import re
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from contextvars import ContextVar
from functools import lru_cache
from gettext import GNUTranslations, NullTranslations
from io import BytesIO
from math import ceil
from pathlib import Path
from string import Formatter
from typing import Final

FOLDER: Final = Path(__file__).parents[2] / "locale"
_CODE: Final = re.compile(r"[a-z]{2}")
_SPOKEN: ContextVar[NullTranslations | None] = ContextVar("spoken", default=None)
_log = logging.getLogger(__name__)


def _(message: str) -> str:
    """Return a template in the language of this turn; English where it has none."""
    spoken = _SPOKEN.get()
    return message if spoken is None else spoken.gettext(message)


def ngettext(one: str, many: str, count: float) -> str:
    """Return the template that goes with a count in the language of this turn."""
    spoken = _SPOKEN.get()
    if spoken is None:
        return one if count == 1 else many
    # A catalogue counts in whole numbers: a half or one and a half is many.
    whole = int(count) if count == int(count) else max(2, ceil(count))
    return spoken.ngettext(one, many, whole)


def N_(message: str) -> str:  # noqa: N802 - gettext's own name for a mark
    """Mark a template of a table at module level; `_` looks it up where it is said."""
    return message


@contextmanager
def speaking(language: str, folder: Path | None = None) -> Iterator[None]:
    """Say all within in a language, two letters; one without a catalogue is English."""
    token = _SPOKEN.set(None if language == "en" else _catalogue(language, folder or FOLDER))
    try:
        yield
    finally:
        _SPOKEN.reset(token)


def spoken() -> list[str]:
    """The languages that have a catalogue, beside English."""
    return sorted(path.parts[-3] for path in FOLDER.glob("??/LC_MESSAGES/meniscus.po"))


@lru_cache(maxsize=16)
def _catalogue(language: str, folder: Path) -> NullTranslations | None:
    path = folder / language / "LC_MESSAGES" / "meniscus.po"
    if _CODE.fullmatch(language) is None or not path.is_file():
        return None
    # English, which most say, never pays the 150 ms of these.
    from babel.messages.mofile import write_mo
    from babel.messages.pofile import PoFileError, read_po

    packed = BytesIO()
    try:
        with path.open("rb") as file:
            read = read_po(file, locale=language, abort_invalid=True)
        for message in list(read):
            if message.id and not _keeps_fields(_forms(message.id), _forms(message.string)):
                _log.warning("%s: another set of fields in %r; left in English", path, message.id)
                read.delete(message.id, message.context)
        write_mo(packed, read)
        packed.seek(0)
        return GNUTranslations(packed)
    except (PoFileError, ValueError, LookupError):
        # A slip of a translator must not take the keeper's answers away.
        _log.exception("%s cannot be read; all is left in English", path)
        return None


def _forms(message: str | Sequence[str] | None) -> tuple[str, ...]:
    """One template, or one for each plural form."""
    return (message,) if isinstance(message, str) else tuple(message or ())


def _keeps_fields(source: Sequence[str], told: Sequence[str]) -> bool:
    """Tell whether every form that is translated has the fields of one in English."""
    allowed = [_fields(each) for each in source]
    return all(_fields(form) in allowed for form in told if form)


def _fields(template: str) -> frozenset[str] | None:
    try:
        parts = [
            (name, spec, how)
            for _literal, name, spec, how in Formatter().parse(template)
            if name is not None
        ]
    except ValueError:
        return None
    return frozenset(f"{name}!{how}:{spec}" for name, spec, how in parts)
