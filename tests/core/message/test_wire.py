"""The JSON of the contract."""

from __future__ import annotations

import json
from typing import Any

import pytest

from core.message import parse
from core.message.wire import to_json, to_text
from tests.messages.corpus import cases, context

KEYS = {"intent", "tank", "at", "values", "events", "question", "command", "doubts"}
VALUE = {
    "analyte", "value", "low", "high", "qualifier", "unit", "canonical", "canonical_unit",
    "basis", "tank",
}  # fmt: skip


def sent(text: str) -> dict[str, Any]:
    parsed = parse(text, context())
    found: dict[str, Any] = json.loads(to_text(parsed))
    assert to_text(parsed) == json.dumps(to_json(parsed), ensure_ascii=False)
    return found


def test_a_reading_has_every_key_of_the_contract() -> None:
    assert sent("quarry: kh 71 ppm")["values"] == [
        {
            "analyte": "kh", "value": 71.0, "low": None, "high": None, "qualifier": "=",
            "unit": "ppm", "canonical": pytest.approx(3.978, abs=1e-3), "canonical_unit": "°dH",
            "basis": None, "tank": "Quarry",
        }
    ]  # fmt: skip


def test_a_range_has_ends_and_no_value() -> None:
    value = sent("no3 20-40")["values"][0]
    assert (value["value"], value["low"], value["high"]) == (None, 20.0, 40.0)
    assert value["canonical"] == [20.0, 40.0]


def test_not_detected_is_less_than_nothing_said() -> None:
    value = sent("no2 nd")["values"][0]
    assert (value["qualifier"], value["value"], value["canonical"]) == ("<", None, None)


def test_times_are_iso_with_offset() -> None:
    found = sent("yesterday 20:00 kh 4")
    assert found["at"] == "2026-03-09T20:00:00+01:00"
    assert "at" not in found["values"][0]


def test_a_value_of_another_time_carries_it() -> None:
    now, then = sent("ph 7.2, was 6.8 yesterday")["values"]
    assert "at" not in now
    assert then["at"] == "2026-03-09T12:00:00+01:00"


def test_a_question_has_from_and_to_and_its_premises_beside_them() -> None:
    found = sent("how much baking soda at ph 8.2 from kh 3 to 6 for 120 l")["question"]
    found.pop("text")
    assert found == {
        "kind": "dose", "analyte": "kh", "volume_l": 120.0, "from": 3.0, "to": 6.0,
        "substance": "sodium bicarbonate", "ph": 8.2,
    }  # fmt: skip


def test_an_event_leaves_out_what_it_does_not_have() -> None:
    assert sent("changed 30%")["events"] == [{"kind": "water_change", "percent": 30.0}]


@pytest.mark.parametrize("case", list(cases())[::7], ids=lambda case: case.place)
def test_every_message_has_the_keys_of_the_contract(case: Any) -> None:
    found = sent(case.text)
    assert set(found) == KEYS
    for value in found["values"]:
        assert set(value) - {"at"} == VALUE
    for doubt in found["doubts"]:
        assert set(doubt) == {"text", "start", "end", "reason", "suggestion"}
        assert case.text[doubt["start"] : doubt["end"]] == doubt["text"]
