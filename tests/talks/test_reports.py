"""A water report in the conversation: shown back, kept on a yes, nothing of it before."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

REPORT = """Total hardness 14.2 °dH
Calcium 82 mg/L
Magnesium 12 mg/l
Hydrogencarbonate 240 mg/l
Nitrate 8.5 mg/l (limit 50)
pH value 7.6
Lead < 0.001 mg/l
Sampled 12.01.2026"""


@pytest.mark.parametrize("lead", ["/source tap ", "/source tap\n", "tap water report:\n"])
async def test_a_report_is_kept_only_on_a_yes(talk: Talk, lead: str) -> None:
    await talk.say("/source tap kh 5")
    asked = await talk.facts(lead + REPORT)
    found = {value["analyte"]: value["canonical"] for value in asked["understood"]}
    assert found["gh"] == 14.2
    assert found["kh"] == pytest.approx(11.03, abs=0.01)
    assert asked["passed"] == ["Lead"]
    assert asked["sampled"] == "2026-01-12"
    assert "GH 14.2" not in await talk.text("/source tap")
    (kept,) = await talk.say("yes")
    assert kept.facts["source"] == "tap"
    assert len(kept.facts["values"]) == 6
    assert "GH 14.2" in await talk.text("/source tap")
    await talk.say("undo")
    shown = await talk.text("/source tap")
    assert "GH 14.2" not in shown
    assert "KH 5" in shown


async def test_a_no_keeps_nothing(talk: Talk) -> None:
    await talk.say("/source tap kh 5")
    await talk.say("/source tap\n" + REPORT)
    assert "stays as it was" in await talk.text("no")
    assert "GH" not in await talk.text("/source tap")
    assert "Nothing is waiting" in await talk.text("yes")


async def test_a_unit_that_is_missing_is_asked_first(talk: Talk) -> None:
    asked = await talk.facts("tap water report: hardness 2.5; nitrate 60 mg/l; lead 0.001 mg/l")
    assert asked["ask"] == "unit"
    (shown,) = await talk.press(1)
    assert "infant formula" in shown.text
    (kept,) = await talk.press(1)
    found = {value["analyte"]: value["canonical"] for value in kept.facts["values"]}
    assert found["gh"] == pytest.approx(14.02, abs=0.01)


async def test_a_report_is_announced_behind_the_source(talk: Talk) -> None:
    assert (await talk.facts("/source tap analysis: hardness 2.5"))["ask"] == "unit"


async def test_lines_that_come_one_by_one_are_one_report(talk: Talk) -> None:
    assert "Paste" in await talk.text("tap winter water report:")
    await talk.say("Gesamthärte 8,2 °dH")
    await talk.say("Säurekapazität bis pH 4,3 2,1 mmol/l")
    shown = await talk.facts("Blei <0,001 mg/l")
    assert shown["passed"] == ["Blei"]
    (kept,) = await talk.say("yes")
    assert [v["analyte"] for v in kept.facts["facets"]["winter"]] == ["gh", "kh"]
    assert "Nothing is waiting" in await talk.text("yes")


async def test_a_report_of_nothing_is_answered_kindly(talk: Talk) -> None:
    assert "nothing is kept" in await talk.text("tap water report: blah 5")
    assert "No source water yet" in await talk.text("/source")


async def test_an_old_report_is_old(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ph 7.0 kh 4 gh 6 temp 24 nh4 0")
    await talk.say("/source tap\n" + REPORT.replace("12.01.2026", "2025-03-12"))
    await talk.say("yes")
    assert (await talk.facts("what if i change 10%"))["source_measured_days"] > 300


async def test_plain_readings_of_a_source_need_no_yes(talk: Talk) -> None:
    facts = await talk.facts("/source tap ph 7.6 kh 8 gh 12 no3 10 temp 12")
    assert len(facts["values"]) == 5


async def test_people_in_a_group_may_speak_of_a_report(group: Talk) -> None:
    assert await group.say("tap water report: pH 7.6") == []
