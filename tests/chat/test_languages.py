"""Which language a chat is spoken to in: the operator's, the person's own, or as it was set."""

from __future__ import annotations

from collections.abc import AsyncIterator
from pathlib import Path

import pytest

from bot.chat.words import text as catalogues
from tests.chat.harness import Talk, talking

POLISH = """
msgid "undo"
msgstr "cofnij"

msgid "Language: {code}. Change: /settings language {other} ({known})"
msgstr "Język: {code}. Zmiana: /settings language {other} ({known})"
"""


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    place = tmp_path / "locale" / "pl" / "LC_MESSAGES"
    place.mkdir(parents=True)
    (place / "meniscus.po").write_text(POLISH, encoding="utf-8")
    monkeypatch.setattr(catalogues, "FOLDER", tmp_path / "locale")
    return tmp_path


@pytest.fixture
async def talk(folder: Path) -> AsyncIterator[Talk]:
    async with talking(folder) as opened:
        yield opened


async def undo_label(talk: Talk, **parts: str | bool) -> str:
    (reply,) = await talk.say("kh 4", **parts)
    return reply.buttons[-1].label


@pytest.mark.parametrize(
    ("parts", "label", "why"),
    [
        ({"language": "pl"}, "cofnij", "the person's own"),
        ({"language": "sv"}, "undo", "no catalogue of it"),
        ({"language": "en"}, "undo", "English"),
        ({}, "undo", "the messenger does not tell"),
        ({"language": "pl", "group": True, "addressed": True}, "undo", "a group is many people's"),
    ],
)
async def test_a_new_chat_begins_in_a_language(
    talk: Talk, parts: dict[str, str | bool], label: str, why: str
) -> None:
    assert await undo_label(talk, **parts) == label, why
    expected = "pl" if label == "cofnij" else "en"
    assert await talk.app.language(talk.address) == expected


async def test_a_chat_keeps_its_language_whoever_writes(talk: Talk) -> None:
    await talk.say("kh 4")
    assert await undo_label(talk, language="pl") == "undo"


async def test_the_operators_language_stands_where_the_person_has_none(folder: Path) -> None:
    async with talking(folder, language="pl") as talk:
        assert await talk.app.language(talk.address) == "pl"
        assert await undo_label(talk) == "cofnij"


async def test_a_keeper_chooses_and_goes_back(talk: Talk) -> None:
    assert "Język: pl. Zmiana: /settings language en" in await talk.text("/settings language pl")
    assert await undo_label(talk) == "cofnij"
    assert "Language: en" in await talk.text("/settings language en")
    assert await undo_label(talk) == "undo"


@pytest.mark.parametrize("wanted", ["sv", "", "pl en", "../pl"])
async def test_a_language_that_is_not_there_changes_nothing(talk: Talk, wanted: str) -> None:
    assert "I speak en, pl" in await talk.text(f"/settings language {wanted}")
    assert await talk.app.language(talk.address) == "en"


async def test_without_a_choice_nothing_is_said_of_it(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        assert "anguage" not in await talk.text("/settings")
