"""Which tank a word means."""

from __future__ import annotations

import pytest

from core.message import parse
from core.message.model import Context
from core.message.tanks import Match, match
from tests.messages.corpus import NOW

TANKS = ("Fern", "Quarry", "Lagoon", "Reef A", "Reef B", "Löwe")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Fern", Match("Fern", ("Fern",))),
        ("fern", Match("Fern", ("Fern",))),
        ("@fern:", Match("Fern", ("Fern",))),
        ("quar", Match("Quarry", ("Quarry",))),  # the only one that begins so
        ("quary", Match("Quarry", ("Quarry",))),  # one letter left out
        ("qaurry", Match("Quarry", ("Quarry",))),  # two letters swapped
        ("lowe", Match("Löwe", ("Löwe",))),  # typed without the dots
        ("reef", Match(None, ("Reef A", "Reef B"))),  # a tie asks
        ("reef c", Match(None, ("Reef A", "Reef B"))),
        ("zz", Match(None, ())),
        ("", Match(None, ())),
        ("x" * 5000, Match(None, ())),
    ],
)
def test_match(text: str, expected: Match) -> None:
    assert match(text, TANKS) == expected


def test_a_tank_may_have_any_name() -> None:
    context = Context(now=NOW, tanks=("20 long", "Tap", "Salt & Co", "ph", "Aß"))
    for name in ("20 long", "Tap", "Salt & Co", "Aß"):
        parsed = parse(f"{name}: kh 4", context)
        assert [(v.analyte, v.canonical, v.tank) for v in parsed.values] == [("kh", 4.0, name)]
    assert [v.analyte for v in parse("ph 7.2", context).values] == ["ph"]


def test_tied_tanks_are_all_offered() -> None:
    parsed = parse("reef: kh 4", Context(now=NOW, tanks=("Reef A", "Reef B")))
    assert parsed.doubts[0].reason == "ambiguous_tank"
    assert parsed.doubts[0].choices == ("Reef A", "Reef B")
