"""Every message of the corpus means what its line says, and spans lie in the text."""

from __future__ import annotations

import pytest

from core.message import parse
from core.message.doubts import REASONS
from tests.messages import corpus

CASES = list(corpus.cases())


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.place)
def test_message_means_what_the_corpus_says(case: corpus.Case) -> None:
    parsed = parse(case.text, corpus.context(group=case.group))
    assert corpus.differences(case, parsed) == [], case.text
    for doubt in parsed.doubts:
        assert case.text[doubt.start : doubt.start + len(doubt.text)] == doubt.text
        assert doubt.reason in REASONS
    for value in parsed.values:
        assert 0 <= value.start < value.end <= len(case.text)


def test_corpus_is_large_and_a_third_of_it_is_errors_or_nothing() -> None:
    wrong = [c for c in CASES if "doubt" in c.meaning or c.meaning == "none"]
    assert len(CASES) >= 600
    assert len(wrong) * 3 >= len(CASES)


def test_each_language_has_its_messages() -> None:
    for language in ("de", "fr", "es", "pt", "it", "nl", "pl", "sv"):
        assert sum(c.place.startswith(f"lang_{language}.txt") for c in CASES) >= 25
