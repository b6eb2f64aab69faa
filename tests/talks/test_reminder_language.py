"""A task that advice made is done by what it names in the language in which it was made."""

from __future__ import annotations

from pathlib import Path

import pytest

from bot.chat.words import text as catalogues
from tests.chat.harness import talking

GERMAN = """
msgid ""
msgstr ""
"Content-Type: text/plain; charset=UTF-8\\n"
"Plural-Forms: nplurals=2; plural=(n != 1);\\n"

msgid "ammonia"
msgstr "Ammoniak"

msgid "retest KH, pH and ammonia"
msgstr "Ammoniak messen"

msgid "remind me to retest in 24 h"
msgstr "in 24 h erinnern"
"""


async def test_a_retest(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    place = tmp_path / "locale" / "de" / "LC_MESSAGES"
    place.mkdir(parents=True)
    (place / "meniscus.po").write_text(GERMAN, encoding="utf-8")
    monkeypatch.setattr(catalogues, "FOLDER", tmp_path / "locale")
    async with talking(tmp_path, language="de") as talk:
        await talk.say("/tank new fern 90 l fresh")
        await talk.say("ph 7.2 kh 4 ammonia 0 temp 24")
        await talk.say("dose kh 6")
        await talk.say("in 24 h erinnern")
        (due,) = await talk.wait(hours=25)
        assert "Ammoniak messen" in due.text
        assert "settles" not in await talk.text("no3 20")
        assert "settles" in await talk.text("ammonia 0")
