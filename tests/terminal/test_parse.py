from __future__ import annotations

import io
import json
from datetime import UTC, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bot.clock import SimulatedClock
from bot.terminal.parse import contexts, parse_lines

NOW = datetime(2026, 3, 4, 12, 0, tzinfo=UTC)
LISBON = ZoneInfo("Europe/Lisbon")
FIXED = contexts(SimulatedClock(NOW), now=NOW, zone=UTC, tanks=("Fern", "Quarry"))


class Sink(io.BytesIO):
    """A file that counts how often it was flushed."""

    flushes = 0

    def flush(self) -> None:
        self.flushes += 1


def run(*lines: bytes, json_input: bool = False) -> tuple[int, list[dict[str, Any]], int]:
    sink = Sink()
    status = parse_lines(lines, sink, context=FIXED, json_input=json_input)
    return status, [json.loads(line) for line in sink.getvalue().splitlines()], sink.flushes


def test_an_object_a_message_flushed_each() -> None:
    status, objects, flushes = run(b"ph 7.2\n", b"\n", b"hello\r\n")
    assert status == 0
    assert len(objects) == flushes == 3
    assert list(objects[0]) == [
        "intent",
        "tank",
        "at",
        "values",
        "events",
        "question",
        "command",
        "doubts",
    ]
    assert objects[0]["values"][0]["canonical"] == 7.2
    assert objects[1]["intent"] == "none"


def test_an_object_can_hold_line_breaks() -> None:
    status, objects, _ = run(b'{"text": "ph 7.2\\nkh 4"}\n', json_input=True)
    assert status == 0
    assert [value["analyte"] for value in objects[0]["values"]] == ["ph", "kh"]


@pytest.mark.parametrize(
    ("line", "why"),
    [
        (b"ph 7.2", "a bare message"),
        (b"{", "cut off"),
        (b"[]", "no object"),
        (b'{"txt": "ph 7"}', "another key"),
        (b'{"text": 7}', "no text"),
        (b'{"text": null}', "nothing"),
        (b"[" * 100_000, "nested without end"),
        (b'{"text": ' + b"9" * 5_000 + b"}", "a number without end"),
        (b"\xff\xfe", "undecodable"),
    ],
)
def test_a_line_that_is_no_object_is_named_and_the_rest_goes_on(
    line: bytes, why: str, capsys: pytest.CaptureFixture[str]
) -> None:
    good = b'{"text": "kh 4"}\n'
    status, objects, _ = run(good, line + b"\n", b"\n", good, json_input=True)
    assert status == 1, why
    assert len(objects) == 2, why
    assert capsys.readouterr().err.startswith("meniscus parse: line 2: "), why


def test_half_a_surrogate_pair_comes_back_escaped() -> None:
    status, objects, _ = run(b'{"text": "kh 4 \\ud800"}', json_input=True)
    assert status == 0
    assert objects[0]["values"][0]["analyte"] == "kh"


@settings(suppress_health_check=[HealthCheck.too_slow], max_examples=50)
@given(st.lists(st.binary(max_size=60).filter(lambda line: b"\n" not in line), max_size=5))
def test_any_bytes_give_an_object_a_line(lines: list[bytes]) -> None:
    status, objects, _ = run(*(line + b"\n" for line in lines))
    assert status == 0
    assert len(objects) == len(lines)


def test_a_tank_is_spelt_as_the_chat_spells_it() -> None:
    _, objects, _ = run(b"quarry: kh 9\n")
    assert objects[0]["tank"] == "Quarry"


def test_without_a_fixed_moment_the_clock_is_read_for_every_message() -> None:
    clock = SimulatedClock(NOW)
    context = contexts(clock, now=None, zone=LISBON, tanks=())
    first = context()
    clock.move_by(timedelta(hours=1))
    assert (first.now, context().now) == (NOW, NOW + timedelta(hours=1))
    assert first.zone is LISBON
