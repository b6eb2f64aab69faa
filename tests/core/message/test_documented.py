"""DEVELOPERS.md names every id that a translator or a script meets."""

from __future__ import annotations

import re
from importlib.resources import files
from pathlib import Path

import pytest

from core.message import lexicon
from tests.messages import corpus

TEXT = (Path(__file__).parents[3] / "DEVELOPERS.md").read_text(encoding="utf-8")
TOLD = set(re.findall(r"`([a-z0-9_]+)`", TEXT))


def ids(category: str) -> set[str]:
    """The ids of a section over all languages."""
    folder = files("core.message") / "words"
    return {
        meaning
        for language in lexicon.LANGUAGES
        for kind, meaning, _, _ in lexicon.read(
            (folder / f"{language}.txt").read_text(encoding="utf-8"), language
        )
        if kind == category
    }


@pytest.mark.parametrize("category", ["event", "time", "mark", "ask", "command", "fill"])
def test_every_id_of_the_word_files_is_told(category: str) -> None:
    named = {each for each in ids(category) if not re.fullmatch(r"month\d+|[a-z]{3}", each)}
    short = {each for each in ids(category) if re.fullmatch(r"[a-z]{3}", each)}
    weekdays = {"mon", "tue", "wed", "thu", "fri", "sat", "sun"}
    assert (named | (short - weekdays)) - TOLD == set()


def test_every_key_of_the_corpus_questions_and_events_is_told() -> None:
    asked = re.compile(r"^(ask|event) (\w+)(.*)$")
    told = TOLD | lexicon_analytes()
    for case in corpus.cases():
        for part in case.meaning.split(";"):
            found = asked.match(part.strip())
            if found is not None:
                keys = re.findall(r" (\w+)=", found.group(3))
                assert {found.group(2), *keys} - told == set(), case.place


def lexicon_analytes() -> set[str]:
    return {each.partition("@")[0] for each in ids("analyte")}
