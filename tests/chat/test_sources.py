"""Source waters: kept from the same short messages, apart from the tanks."""

from __future__ import annotations

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
