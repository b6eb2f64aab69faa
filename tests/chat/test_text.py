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


POLISH = """
msgid ""
msgstr ""
"Content-Type: text/plain; charset=UTF-8\\n"
"Plural-Forms: nplurals=3; plural=(n==1 ? 0 : n%10>=2 && n%10<=4 && (n%100<10 || n%100>=20) ? 1"
" : 2);\\n"

msgid "in {count} part"
msgid_plural "in {count} parts"
msgstr[0] "w {count} części"
msgstr[1] "w {count} częściach"
msgstr[2] "na {count} części"

msgid "{tank} is late"
msgstr "{tank} się spóźnia"

#, fuzzy
msgid "not yet"
msgstr "już"
"""


@pytest.fixture
def two(folder: Path) -> Path:
    place = folder / "pl" / "LC_MESSAGES"
    place.mkdir(parents=True)
    (place / "meniscus.po").write_text(POLISH, encoding="utf-8")
    return folder


@pytest.mark.parametrize(
    ("count", "said", "why"),
    [
        (1, "w 1 części", "one"),
        (3, "w 3 częściach", "a few"),
        (12, "na 12 części", "the teens are many"),
        (23, "w 23 częściach", "a few again"),
        (0, "na 0 części", "none is many"),
    ],
)
def test_a_language_with_three_forms(two: Path, count: int, said: str, why: str) -> None:
    with speaking("pl", two):
        assert parts(count) == said, why


def test_a_fraction_is_never_one(two: Path) -> None:
    assert [ngettext("one", "many", count) for count in (0.5, 1.0, 1.5)] == ["many", "one", "many"]
    with speaking("pl", two):
        assert not {ngettext("in {count} part", "in {count} parts", n) for n in (0.5, 1.5)} & {
            "w {count} części"
        }


def test_languages_nest(two: Path) -> None:
    with speaking("de", two):
        with speaking("pl", two):
            assert _(LATE) == "{tank} się spóźnia"
        with speaking("en", two):
            assert _(LATE) == LATE
        assert _(LATE) == "{tank} ist zu spät"


def _fail_within(language: str, folder: Path) -> None:
    with speaking(language, folder):
        raise ZeroDivisionError


def test_a_language_ends_with_an_error(two: Path) -> None:
    with pytest.raises(ZeroDivisionError):
        _fail_within("pl", two)
    assert _(LATE) == LATE


def test_a_fuzzy_translation_is_none(two: Path) -> None:
    with speaking("pl", two):
        assert _("not yet") == "not yet"


@pytest.mark.parametrize(
    ("written", "why"),
    [
        (GERMAN.replace("(n != 1)", "(n !! 1)").encode(), "a plural rule that is none"),
        (GERMAN.replace("nplurals=2", "nplurals=x").encode(), "no number of plural forms"),
        (GERMAN.replace("UTF-8", "UTF-88").encode(), "an unknown encoding"),
        (GERMAN.encode("latin-1"), "another encoding than it says"),
        (b"{tank} is late = {tank} ist zu spaet", "another format"),
    ],
)
def test_a_catalogue_that_cannot_be_read_is_english(
    tmp_path: Path, caplog: pytest.LogCaptureFixture, written: bytes, why: str
) -> None:
    place = tmp_path / "de" / "LC_MESSAGES"
    place.mkdir(parents=True)
    (place / "meniscus.po").write_bytes(written)
    with speaking("de", tmp_path):
        assert _(LATE) == LATE, why
    assert "cannot be read" in caplog.text
