from __future__ import annotations

import json
from datetime import UTC, datetime
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.chat.model import Button, Line, Reply
from bot.terminal.render import as_object, as_text, encode

LISBON = ZoneInfo("Europe/Lisbon")
NOON = datetime(2026, 7, 1, 12, 0, 0, 987654, tzinfo=UTC)
REPLY = Reply(
    lines=(Line("KH 4", "strong"), Line("low for fern"), Line("said by Anna", "quiet")),
    buttons=(Button("log it", "1:1:0"), Button("more", "1:1:1", "more")),
    facts={"values": [{"analyte": "kh", "value": 4.0}], "at": NOON},
)


def test_an_object_has_the_keys_of_the_contract_in_their_order() -> None:
    shown = as_object(REPLY, line=3, now=NOON, zone=LISBON)
    assert list(shown) == ["line", "kind", "at", "text", "buttons", "picture", "document", "facts"]
    assert shown["line"] == 3
    assert shown["kind"] == "reply"
    assert shown["at"] == "2026-07-01T13:00:00+01:00"
    assert shown["text"] == "KH 4\nlow for fern\nsaid by Anna"
    assert shown["buttons"] == ["log it", "more"]
    assert shown["picture"] is None
    assert shown["document"] is None


def test_a_reminder_keeps_its_own_moment() -> None:
    at = datetime(2026, 7, 1, 19, 0, tzinfo=ZoneInfo("Asia/Tokyo"))
    reminder = Reply((Line("due"),), kind="reminder", at=at)
    shown = as_object(reminder, line=0, now=NOON, zone=LISBON)
    assert shown["at"] == "2026-07-01T19:00:00+09:00"
    assert shown["kind"] == "reminder"


def test_moments_among_the_facts_are_written_as_iso() -> None:
    shown = json.loads(encode(as_object(REPLY, line=1, now=NOON, zone=UTC)))
    assert datetime.fromisoformat(shown["facts"]["at"]) == NOON


@pytest.mark.parametrize("number", [float("nan"), float("inf")])
def test_a_fact_that_is_no_number_is_a_fault(number: float) -> None:
    with pytest.raises(ValueError, match="JSON compliant"):
        encode({"facts": {"ph": number}})


def test_a_fact_of_a_foreign_type_is_a_fault() -> None:
    with pytest.raises(TypeError, match="object"):
        encode({"facts": {"ph": object()}})


@given(st.dictionaries(st.text(), st.text(st.characters()) | st.integers()))
def test_any_text_survives_on_one_line(value: dict[str, Any]) -> None:
    data = encode(value)
    assert data.count(b"\n") == 1
    assert data.endswith(b"\n")
    assert json.loads(data) == value


def test_half_a_surrogate_pair_is_escaped() -> None:
    assert encode({"text": "é\ud800"}) == b'{"text": "\\u00e9\\ud800"}\n'


def test_plain_text() -> None:
    assert as_text(REPLY, ansi=False) == (
        "KH 4\nlow for fern\nsaid by Anna\n[1] log it  [2] more\n\n"
    )


def test_emphasis_on_a_terminal() -> None:
    assert as_text(REPLY, ansi=True) == (
        "\x1b[1mKH 4\x1b[0m\nlow for fern\n\x1b[2msaid by Anna\x1b[0m\n"
        "\x1b[2m[1] log it  [2] more\x1b[0m\n\n"
    )


def test_what_is_enclosed_is_named() -> None:
    reply = Reply((Line("see"),), picture="/tmp/a.png", document="/tmp/b.csv")  # noqa: S108
    assert as_text(reply, ansi=False) == "see\nPicture: /tmp/a.png\nFile: /tmp/b.csv\n\n"


@given(st.text())
def test_a_message_cannot_steer_the_terminal(text: str) -> None:
    said = Reply((Line(text),), (Button(text, "1:1:0"),))
    shown = as_text(said, ansi=False)
    controls = {c for c in shown if (ord(c) < 0x20 or 0x7F <= ord(c) < 0xA0) and c not in "\n\t"}
    assert controls == set()


def test_a_reply_to_a_title_sequence_shows_it() -> None:
    assert as_text(Reply((Line("\x1b]0;x\x07"),)), ansi=True) == "␛]0;x␇\n\n"
