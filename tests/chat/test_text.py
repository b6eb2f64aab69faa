"""Templates in the language of a turn: looked up where they are said, English where none is."""

from __future__ import annotations

import logging
from pathlib import Path

import pytest

from bot.chat.words.text import N_, _, ngettext, speaking

LATE = N_("{tank} is late")
GERMAN = """
msgid ""
msgstr ""
"Content-Type: text/plain; charset=UTF-8\\n"
"Plural-Forms: nplurals=2; plural=(n != 1);\\n"

msgid "{tank} is late"
msgstr "{tank} ist zu spät"

msgid "in {count} part"
msgid_plural "in {count} parts"
msgstr[0] "in {count} Teil"
msgstr[1] "in {count} Teilen"

msgid "{mass} of {name}"
msgstr "{mass} von {nmae}"

msgid "not yet"
msgstr ""
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    place = tmp_path / "de" / "LC_MESSAGES"
    place.mkdir(parents=True)
    (place / "meniscus.po").write_text(GERMAN, encoding="utf-8")
    return tmp_path


def parts(count: int) -> str:
    return ngettext("in {count} part", "in {count} parts", count).format(count=count)


def test_english_needs_no_catalogue() -> None:
    assert _(LATE) == LATE
    assert [parts(1), parts(2)] == ["in 1 part", "in 2 parts"]


def test_a_catalogue_speaks_within_and_not_after(folder: Path) -> None:
    with speaking("de", folder):
        assert _(LATE).format(tank="Fern") == "Fern ist zu spät"
        assert [parts(1), parts(2)] == ["in 1 Teil", "in 2 Teilen"]
        assert _("not yet") == "not yet"  # an empty translation is none
    assert _(LATE) == LATE


@pytest.mark.parametrize("language", ["xx", "../", "DE", "deu"])
def test_a_language_without_a_catalogue_is_english(folder: Path, language: str) -> None:
    with speaking(language, folder):
        assert _(LATE) == LATE


def test_another_set_of_fields_stays_in_english(
    folder: Path, caplog: pytest.LogCaptureFixture
) -> None:
    with caplog.at_level(logging.WARNING), speaking("de", folder):
        assert _("{mass} of {name}") == "{mass} of {name}"
    assert "{mass} of {name}" in caplog.text
