"""What readings tell by themselves is said and stands in the facts: classes, ammonia, CO2."""

from __future__ import annotations

import re

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("text", "shown", "first", "all_"),
    [
        pytest.param(
            "gh 8", "hard by USGS", "hard (USGS)",
            ["hard (USGS)", "soft (WRMG 2007)", "medium (the trade)", "fairly hard (the trade)"],
            id="143 mg/L: USGS FAQ (A); 1.43 mmol/L: WRMG 2007 (B)",
        ),
        pytest.param(
            "gh 60 ppm", "soft by USGS", "soft (USGS)",
            ["soft (USGS)", "soft (WRMG 2007)", "soft (the trade)"],
            id="60 mg/L is still soft: USGS FAQ (A)",
        ),
        pytest.param(
            "gh 2.0 mmol/l", "very hard by USGS", "very hard (USGS)",
            ["very hard (USGS)", "medium (WRMG 2007)", "fairly hard (the trade)",
             "hard (the trade)"],
            id="2.0 mmol/L, 200 mg/L, 11.2 °dH: medium to the WRMG (B), in two bands of the trade",
        ),
    ],
)  # fmt: skip
async def test_a_gh_has_its_class_by_each_scheme(
    talk: Talk, text: str, shown: str, first: str, all_: list[str]
) -> None:
    (reply,) = await talk.say(text)
    assert shown in reply.text
    assert reply.facts["hardness_class"] == first
    assert reply.facts["hardness_classes"] == all_


@pytest.mark.parametrize(
    ("kind", "text", "fact"),
    [
        pytest.param("fresh", "kh 19 ppm", "too low for most fish (EPA)", id="EPA, 20 mg/L (A)"),
        pytest.param("fresh", "kh 21 ppm", "low (common practice)", id="over it, under 60"),
        pytest.param("fresh", "kh 61 ppm", "enough (common practice)", id="60 mg/L: no source"),
        pytest.param("fresh", "kh 201 ppm", "high (pond texts)", id="after SRAC 464 (B)"),
        pytest.param("marine", "kh 6.5", "low (common practice)", id="marine, under 7 °dH"),
        pytest.param("marine", "kh 8", "enough (common practice)", id="marine"),
        pytest.param("fresh", "kh <1", "too low for most fish (EPA)", id="0 to 18 mg/L, both"),
        pytest.param("fresh", "kh 4-6", "enough (common practice)", id="both ends"),
    ],
)
async def test_a_kh_has_its_buffer_class(talk: Talk, kind: str, text: str, fact: str) -> None:
    await talk.say(f"/tank new Fern 90 l {kind}")
    (reply,) = await talk.say(text)
    assert reply.facts["buffer_class"] == fact
    word, scheme = fact.rstrip(")").split(" (")
    assert f"buffer {word} by {scheme}" in reply.text


@pytest.mark.parametrize("text", ["kh 2-6", "kh <4", "kh not detected", "ph 7"])
async def test_no_class_where_it_could_be_two(talk: Talk, text: str) -> None:
    facts = await talk.facts(text)
    assert "buffer_class" not in facts
    assert "hardness_class" not in facts


async def test_the_sea_has_no_hardness_class(talk: Talk) -> None:
    await talk.say("/tank new Lagoon 150 l marine")
    assert "hardness_class" not in await talk.facts("gh 300")


async def test_ammonia_that_is_no_finding_is_told_beside_the_reading(talk: Talk) -> None:
    """Emerson et al. 1975 (B): 0.56 % at pH 7.0, 25 °C; 0.5 mg/L then is 0.0028 mg/L."""
    (reply,) = await talk.say("nh3-n 0.5 ph 7.0 temp 25")
    assert reply.facts["nh3_n"] == pytest.approx(0.0028, abs=0.00005)
    assert "Un-ionised ammonia is 0.003 mg/L as N (warned of over 0.02)." in reply.text


async def test_ammonia_is_told_once(talk: Talk) -> None:
    (bad,) = await talk.say("nh3-n 1 ph 8 temp 25")
    assert "Un-ionised ammonia is" not in bad.text
    (none,) = await talk.say("nh3-n 0 ph 8 temp 25")
    assert "Un-ionised" not in none.text


async def test_carbon_dioxide_is_told_where_it_is_added(talk: Talk) -> None:
    """3 · KH · 10^(7 − pH) is 12 mg/L, common practice, low by 4 to 12 % at 25 °C."""
    await talk.say("/tank new Fern 90 l fresh")
    assert "CO2" not in await talk.text("ph 7.0 kh 4 temp 25")
    await talk.say("fern has co2")
    (reply,) = await talk.say("ph 7.0 kh 4 temp 25")
    assert 12.0 < reply.facts["co2_mg_l"] < 13.7
    least, most = reply.facts["co2_span"]
    assert least < reply.facts["co2_mg_l"] < most
    assert f"CO2 is about {reply.facts['co2_mg_l']:.0f} mg/L" in reply.text


async def test_why_after_a_good_reading_tells_what_it_rested_on(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (reading,) = await talk.say("ph 7.0 kh 4 gh 8 nh3-n 0.1 temp 25")
    (why,) = await talk.say("why")
    for told in ("CO2 is about", "Un-ionised", "WRMG 2007 (under 1.5 mmol/L)", "60 to 200 mg/L"):
        assert told in why.text
    assert why.facts == reading.facts


async def test_more_and_why_carry_the_facts_of_what_they_are_asked_about(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 3")
    await talk.wait(days=1)
    (again,) = await talk.say("kh 3")
    for ask in ("more", "why"):
        (held,) = await talk.say(ask)
        assert held.facts == again.facts
        shown = {float(number) for number in re.findall(r"KH (\d+)", held.text)}
        assert shown == {finding["kh"] for finding in held.facts["findings"]}
