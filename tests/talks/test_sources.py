"""Source waters: kept from the same short messages, apart from the tanks."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def test_a_source_is_kept_and_is_no_tank(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    facts = await talk.facts("/source tap ph 7.6 kh 8 gh 12 no3 10 temp 12")
    assert [value["analyte"] for value in facts["values"]] == [
        "ph",
        "kh",
        "gh",
        "nitrate",
        "temperature",
    ]
    assert await talk.app.names(talk.address) == ["Fern"]
    assert (await talk.facts("dose kh 9"))["refused"] == "kh_unknown"


async def test_several_sources_listed_shown_and_corrected(talk: Talk) -> None:
    await talk.say("/source tap kh 8 ph 7.6")
    await talk.say("/source rain barrel kh 0.5 ph 6")
    listed = await talk.text("/source")
    assert "tap: " in listed
    assert "rain barrel: " in listed
    await talk.say("/source tap kh 9")
    shown = await talk.text("/source tap")
    assert "KH 9" in shown
    assert "pH 7.6" in shown
    await talk.say("undo")
    assert "KH 8" in await talk.text("/source tap")


async def test_a_tank_is_filled_from_the_chosen_source(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/source tap kh 8")
    await talk.say("/source ro kh 0")
    assert "filled from ro" in await talk.text("/source ro for fern")
    assert "no tank called" in await talk.text("/source ro for nobody")
    assert "no source called" in await talk.text("/source well")


@pytest.mark.parametrize(
    "text",
    [
        "from the water company: gh 12, ph 7.9",
        "source tap ph 7.9 gh 12",
        "from the tap: ph 7.9, gh 12",
        "vom wasserwerk: gh 12, ph 7.9",
        "de la compagnie des eaux: gh 12, ph 7.9",
        "van het waterbedrijf: gh 12, ph 7.9",
    ],
)
async def test_what_the_supplier_says_is_the_sources(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    facts = await talk.facts(text)
    assert facts["source"] == "tap"
    assert {value["analyte"]: value["value"] for value in facts["values"]} == {"gh": 12, "ph": 7.9}
    assert "pH" not in await talk.text("my readings")


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("tap nitrate 55", "infant"),
        ("tap ammonia 1", "Ammonia 1 mg/L comes in"),
        ("tap copper 0.5", "harms shrimps"),
        ("tap chlorine 2", "only dechlorinated"),
        ("tap ph 11", "no drinking water"),
        ("tap nitrite 1", "drinking limit of 0.5"),
    ],
)
async def test_each_bad_value_of_a_source_has_its_own_warning(
    talk: Talk, text: str, word: str
) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    assert word in await talk.text(text)
    later = await talk.text("tap gh 9")
    assert word not in later


@pytest.mark.parametrize(
    "text", ["tap nitrate 44", "tap ammonia 0.1", "tap copper 0.02", "tap ph 9.4", "rain ph 5.6"]
)
async def test_a_source_within_the_limits_gets_no_warning(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    (reply,) = await talk.say(text)
    assert len(reply.lines) == 1


async def test_a_source_is_put_right_in_few_words(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("kh 4")
    await talk.say("tap is now kh 7 gh 9")
    assert "Corrected: KH 8" in await talk.text("no, tap kh 8")
    values = (await talk.facts("/source tap"))["values"]
    assert {value["analyte"]: value["value"] for value in values} == {"kh": 8, "gh": 9}
    assert (await talk.facts("no, tap ph 7.6"))["values"]
    assert "KH 4" in await talk.text("whats my kh")


@pytest.mark.parametrize(
    "text",
    [
        "heavy rain kh dropped to 2",
        "after the rain kh 2",
        "nach dem regen kh 2",
        "après la pluie kh 2",
        "na de regen kh 2",
        "po deszczu kh 2",
    ],
)
async def test_rain_that_fell_is_the_ponds_and_no_source(talk: Talk, text: str) -> None:
    await talk.say("/tank new Koi 5000 l pond")
    facts = await talk.facts(text)
    assert facts["tank"] == "Koi"
    assert facts["values"][0]["value"] == 2
    assert "rain" in await talk.text("rain kh 0")


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("is my tap water ok for neons", "no"),
        ("is tap ok for neons", "no"),
        ("is my tap ok for guppies", "yes"),
        ("is rain ok for neons", "no"),
        ("rain water safe?", "no"),
    ],
)
async def test_a_named_water_is_judged_itself(talk: Talk, text: str, verdict: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("added 8 neons")
    await talk.say("fern: kh 3 gh 5 ph 7 temp 25")
    await talk.say("/source tap ph 8 kh 12 gh 15 temp 22")
    facts = await talk.facts(text)
    assert facts["source"] in text
    assert facts["verdict"] == verdict


async def test_a_water_of_which_nothing_is_known_is_not_judged(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("fern: kh 3 gh 5 ph 7 temp 25")
    assert "I cannot judge" in await talk.text("is my tap water ok for neons")
