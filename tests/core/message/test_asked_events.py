"""Deeds that are only asked about: nothing of them is stored."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from core.message import parse
from core.message.model import Context

NOW = Context(now=datetime(2026, 3, 1, 12, tzinfo=UTC))

ASKED = [
    ("is a 100% water change ok", "change", 100.0, "the verb stands first"),
    ("ist ein 90% wasserwechsel ok", "change", 90.0, "likewise in German"),
    ("would a 90% water change be too much", "change", 90.0, "an auxiliary first"),
    ("should i change half the water", "change", 50.0, "a wish turned round"),
    ("puedo cambiar 50%", "change", 50.0, "may I, in Spanish"),
    ("is it ok to change 50%", "change", 50.0, "a change still to be made"),
    ("is a 50% water change safe", "change", 50.0, "the word of asking at the end"),
    ("can i top up with tap water", "help", None, "what to top up with"),
]


@pytest.mark.parametrize(("text", "kind", "percent", "_why"), ASKED)
def test_a_deed_that_is_asked_about_is_a_question(
    text: str, kind: str, percent: float | None, _why: str
) -> None:
    parsed = parse(text, NOW)
    assert parsed.events == ()
    assert parsed.question is not None
    assert (parsed.question.kind, parsed.question.percent) == (kind, percent)


@pytest.mark.parametrize(
    "text", ["can i flush a dead fish", "will do 30% wc tonight", "wc 30%?", "may i lose 2 fish"]
)
def test_what_is_only_thought_of_is_not_stored(text: str) -> None:
    assert parse(text, NOW).events == ()


@pytest.mark.parametrize(
    ("text", "percent"),
    [
        ("water is fine, 30% wc", 30.0),
        ("is everything fine? did 30% wc", 30.0),
        ("the water was ok, changed 30%", 30.0),
        ("i changed 50%", 50.0),
    ],
)
def test_a_deed_that_is_told_is_still_stored(text: str, percent: float) -> None:
    (event,) = parse(text, NOW).events
    assert (event.kind, event.percent) == ("water_change", percent)
