"""Every finding in words: one short line, and why in a few; kept in a golden file.

`python -m tests.chat.test_finding_words` writes the file anew, to be read before it is committed.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from bot.chat.words.findings import line, why
from core.advice.findings import BY_ID, Finding
from core.advice.state import State
from core.tank import Tank
from tests.core.advice.test_rules import CASES
from tests.core.advice.waters import NOON, by_kit, done, findings, read, state, tank

GOLDEN = Path(__file__).parent / "golden" / "findings.txt"
GUIDE = (Path(__file__).parents[2] / "DEVELOPERS.md").read_text(encoding="utf-8")
LONGEST = 170
"""A line still fits a phone's screen in three rows. [characters]"""

NIGHT = NOON.replace(hour=3)
WARM = read("temperature", 25.0)
SEA = tank(kind="marine")


def _night() -> State:
    ph, kh = read("ph", 9.6, low=9.4, high=9.8, at=NIGHT), read("kh", 4.0, at=NIGHT)
    return State(Tank("Fern"), NIGHT, {"ph": ph, "kh": kh})


MORE: tuple[tuple[str, State], ...] = (
    ("ammonia", state(read("ammonia", 1.0), read("ph", 8.0), WARM)),
    ("ammonia", state(read("ammonia", 5.0), read("ph", 6.5))),
    ("ammonia_without_ph", state(read("ammonia", 0.5))),
    ("chlorine", state(read("total_chlorine", 0.1))),
    ("unlike_the_sea", state(read("salinity", 25.0), of=SEA)),
    ("unlike_the_sea", state(read("temperature", 31.0), of=SEA)),
    ("low_oxygen", state(read("oxygen", 4.0), WARM)),
    ("low_oxygen", state(read("oxygen", 2.0))),
    ("nitrite", state(read("nitrite", 0.5, basis="ion"))),
    ("nitrite", state(read("nitrite", 1.25), read("ammonia", 2.0), read("ph", 6.8))),
    ("nitrite_with_chloride", state(read("nitrite", 1.0, basis="ion"), read("chloride", 20))),
    ("nitrite_in_salt_water", state(read("nitrite", 1.0), of=SEA)),
    ("nitrate", state(read("nitrate", 50))),
    ("nitrate", state(read("nitrate", 50), of=tank("acropora", kind="marine"))),
    ("contradiction", state(by_kit("ph", 6.0), by_kit("kh", 6))),
    ("contradiction", state(by_kit("ph", 3.9), by_kit("kh", 6))),
    ("contradiction_low", _night()),
    ("low_kh", state(by_kit("kh", 2))),
    ("low_kh", state(by_kit("kh", 2), source=[by_kit("kh", 6)])),
    ("low_kh", state(read("kh", 2.0), read("kh", 6.0, 1), events=())),
    (
        "sudden_jump",
        state(
            read("kh", 8.0),
            read("kh", 1.0, 1),
            read("ammonia", 3.0),
            read("ph", 8.0),
            WARM,
            events=(),
        ),
    ),
    (
        "sudden_jump",
        state(read("ph", 8.0), read("ph", 6.5, 1e-4), read("ammonia", 3.0), WARM, events=()),
    ),
    (
        "sudden_jump",
        state(
            by_kit("kh", 3, 1),
            by_kit("kh", 9),
            of=tank(volume_l=120.0),
            events=(done("dose", 0.5, substance="sodium bicarbonate", grams=3.0),),
        ),
    ),
    ("ph_extreme", state(by_kit("ph", 4.5))),
    ("does_not_suit", state(read("temperature", 0.5), of=tank("koi", kind="pond"))),
    ("does_not_suit", state(read("temperature", 34.0), of=tank("koi", kind="pond"))),
    ("ph_extreme", state(by_kit("ph", 10.0))),
    ("low_gh", state(by_kit("gh", 0.5))),
    ("ph_fell", state(by_kit("ph", 6.2), by_kit("ph", 7.4, 1), by_kit("kh", 1))),
    ("ph_fell", state(by_kit("ph", 7.0), by_kit("ph", 8.0, 1), by_kit("kh", 6))),
    ("ph_fell", state(by_kit("ph", 6.2), by_kit("ph", 7.4, 1), by_kit("kh", 6))),
    (
        "ph_fell",
        state(by_kit("ph", 6.2), by_kit("ph", 7.4, 0.4), by_kit("kh", 4, 0.4), injected=True),
    ),
    (
        "ph_fell",
        state(by_kit("ph", 6.7), by_kit("ph", 7.8, 0.2), events=(done("water_change", 0.1),)),
    ),
    (
        "ph_rose",
        state(by_kit("ph", 8.2), by_kit("ph", 7.0, 0.2), events=(done("water_change", 0.1),)),
    ),
    ("ph_rose", state(by_kit("ph", 7.9), by_kit("ph", 6.8, 0.2), read("ammonia", 1.0))),
    ("ph_rose", state(by_kit("ph", 8.6), by_kit("ph", 7.0, 1), injected=True)),
    ("ph_moved", state(by_kit("ph", 6.6), by_kit("ph", 7.2, 1))),
    ("ph_moved_other_hour", state(by_kit("ph", 6.6), by_kit("ph", 7.2, 0.5))),
    ("does_not_suit", state(read("temperature", 31.0), of=tank("goldfish", "koi"))),
    ("does_not_suit", state(read("salinity", 28.0), of=tank("clownfish", kind="marine"))),
    ("does_not_suit", state(by_kit("ph", 8.2), of=tank("neon tetra", "discus"))),
    ("do_not_go_together", state(of=tank("pea puffer", "cherry shrimp"))),
    ("do_not_go_together", state(of=tank("betta", "cherry shrimp"))),
    ("do_not_go_together", state(of=tank("oscar", "guppy"))),
    ("do_not_go_together", state(of=tank("betta", "guppy"))),
    ("unknown_animal", state(of=tank("neon tetar"))),
    ("much_co2", state(read("co2", 40), read("ammonia", 0.2))),
    (
        "neglected",
        state(by_kit("nitrate", 120), by_kit("kh", 1), by_kit("ph", 6.0), read("ammonia", 0.5)),
    ),
    ("neglected", state(by_kit("nitrate", 120), by_kit("kh", 1), by_kit("ph", 6.0))),
    (
        "neglected",
        state(
            by_kit("nitrate", 120),
            by_kit("kh", 0.5),
            by_kit("ph", 5.2),
            source=[by_kit("kh", 18), by_kit("ph", 7.6)],
        ),
    ),
)


def every_finding() -> list[Finding]:
    states = [*MORE, *((rule, held) for rule, _, held, severity in CASES if severity)]
    return [
        findings(held, *held.readings, "stock", "dose", "water_change")[rule]
        for rule, held in states
    ]


def _text() -> str:
    parts = []
    for finding in sorted(every_finding(), key=lambda f: f.id):
        reasons = "".join(f"\n    {reason}" for reason in why(finding))
        parts.append(f"{finding.id} ({finding.severity})\n  {line(finding)}{reasons}\n")
    return "\n".join(parts)


def test_every_finding_is_worded() -> None:
    assert {finding.id for finding in every_finding()} == set(BY_ID)


@pytest.mark.parametrize("finding", every_finding(), ids=lambda finding: finding.id)
def test_a_line_is_short_and_whole(finding: Finding) -> None:
    said = line(finding)
    assert len(said) <= LONGEST
    assert "\n" not in said
    assert said[0].isupper() or said.startswith("pH")
    assert said[-1] in ".?!" or "Ask: " in said
    assert "None" not in said
    assert "inf" not in said.split()


@pytest.mark.parametrize("finding", every_finding(), ids=lambda finding: finding.id)
def test_why_gives_reason_and_source_in_few_lines(finding: Finding) -> None:
    reasons = why(finding)
    assert 2 <= len(reasons) <= 4
    assert reasons[-1].startswith("Source: ")
    measured = [name for name, fact in finding.facts.items() if isinstance(fact, float)]
    if set(measured) - {"stage"}:  # of a cycle, which is no measure
        assert any(reason.startswith("Numbers: ") for reason in reasons)


def test_words_are_as_they_were_read() -> None:
    assert _text() == GOLDEN.read_text(encoding="utf-8")


@pytest.mark.parametrize("finding", every_finding(), ids=lambda finding: finding.id)
def test_its_facts_are_documented(finding: Finding) -> None:
    row = next(row for row in GUIDE.splitlines() if row.startswith(f"| `{finding.id}` |"))
    assert finding.severity in row
    assert {f"`{name}`" for name in finding.facts} <= set(re.findall(r"`\w+`", row))


if __name__ == "__main__":
    GOLDEN.write_text(_text(), encoding="utf-8")
