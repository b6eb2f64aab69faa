"""The new water of a change: blends, seasons, and what rises on standing, as a conversation."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

FERN = ("/tank new Fern 90 l fresh", "ph 7.0 kh 4 gh 6 no3 20 temp 24 nh4 0")


async def fern(talk: Talk, *more: str) -> None:
    for text in (*FERN, *more):
        await talk.say(text)


async def test_half_and_half_is_the_mean_of_amounts(talk: Talk) -> None:
    await fern(talk, "/source tap ph 7.6 kh 8 gh 12 no3 10 temp 24")
    facts = await talk.facts("what if i change 30% with 50/50 ro tap")
    assert facts["source_parts"] == [
        {"source": "RO", "share": 0.5},
        {"source": "tap", "share": 0.5},
    ]
    # The blend is KH 4, GH 6, nitrate 5: KH and GH of the tank stay, nitrate is 0.7 * 20 + 0.3 * 5.
    assert facts["share"] == pytest.approx(0.3)
    at_once = facts["at_once"]
    assert at_once["kh"] == pytest.approx(4.0, abs=0.01)
    assert at_once["gh"] == pytest.approx(6.0, abs=0.01)
    assert at_once["nitrate"] == pytest.approx(15.5)


async def test_a_part_alone_leaves_the_rest_to_the_tanks_source(talk: Talk) -> None:
    await fern(talk, "/source tap ph 7.6 kh 8 gh 12 temp 24")
    facts = await talk.facts("what if i change 20 l with half ro")
    assert [part["source"] for part in facts["source_parts"]] == ["RO", "tap"]
    assert facts["litres"] == pytest.approx(20.0)
    (reply,) = await talk.say("changed 40 l with half ro")
    assert reply.facts["events"][0]["litres"] == 40.0
    assert "percent" not in reply.facts["events"][0]


async def test_a_blend_is_worked_out_when_it_is_used(talk: Talk) -> None:
    await fern(talk, "/source tap ph 7.6 kh 8 gh 12 temp 24")
    made = await talk.facts("/source mix 60% ro 40% tap")
    assert made["mixed"]["kh"] == pytest.approx(3.2, abs=0.01)
    await talk.wait(days=1)
    await talk.say("/source tap kh 10")
    assert (await talk.facts("/source mix"))["mixed"]["kh"] == pytest.approx(4.0, abs=0.01)
    await talk.say("/source mix for fern")
    facts = await talk.facts("what if i change 20%")
    assert facts["source"] == "mix"
    assert facts["source_parts"][0] == {"source": "RO", "share": 0.6}


async def test_a_blend_with_tap_in_it_is_dechlorinated(talk: Talk) -> None:
    await fern(talk, "/source tap ph 7.6 kh 8 gh 12 temp 24")
    assert "Dechlorinate" in await talk.text("what if i change 20% with 60% ro 40% tap")
    assert "Dechlorinate" not in await talk.text("what if i change 10% with half ro half rain")


async def test_cycles_and_sums_are_refused_and_nothing_is_lost(talk: Talk) -> None:
    await talk.say("/source tap kh 8 gh 12 ph 7.6")
    await talk.say("/source mix 60% ro 40% tap")
    await talk.say("/source soft 50% mix 50% ro")
    cycle = await talk.facts("/source mix 50% soft 50% tap")
    assert cycle["refused"] == "source_cycle"
    assert (await talk.facts("/source mix 50% mix 50% tap"))["refused"] == "source_cycle"
    assert (await talk.facts("/source mix"))["parts"][0] == {"source": "RO", "share": 0.6}
    assert "120 %" in await talk.text("/source other 60% ro 60% tap")
    assert "readings of its own" in await talk.text("/source tap 50% ro 50% rain")
    assert "is a blend" in await talk.text("/source mix kh 5")
    assert "KH 8" in await talk.text("/source tap")


async def test_what_is_not_told_of_a_blend_is_asked(talk: Talk) -> None:
    await fern(talk)
    unknown = await talk.facts("what if i change 20% with 60% garden 40% ro")
    assert unknown["refused"] == "source_unknown"
    assert (await talk.facts("what if i change 20% with half ro"))["refused"] == "source_rest"
    await talk.say("/source tap kh 8 gh 12 ph 7.6")
    assert "which shares" in await talk.text("what if i change 30% with ro and tap")
    assert "120 %" in await talk.text("what if i change 30% with 60% ro 60% tap")


async def test_names_of_several_words_are_parts_of_a_blend(talk: Talk) -> None:
    await fern(talk, "/source garden mix kh 4 gh 6 ph 7")
    facts = await talk.facts("what if i change 10% with half ro half garden mix")
    assert [part["source"] for part in facts["source_parts"]] == ["RO", "garden mix"]


async def test_a_reading_that_cannot_be_is_named(talk: Talk) -> None:
    assert "ph 72" in await talk.text("/source tap ph 72")
    assert "No source water yet" in await talk.text("/source")


async def test_a_question_names_its_source(talk: Talk) -> None:
    await fern(talk, "/source tap kh 8 gh 12 ph 7.6", "/source garden well kh 4 gh 6 ph 7")
    assert (await talk.facts("what if i change 20% with garden well"))["source"] == "garden well"
    assert (await talk.facts("what if i change 20% with leitungswasser"))["source"] == "tap"
    assert (await talk.facts("what if i change 20% with osmosewasser"))["source"] == "RO"


async def test_how_much_ro_says_litres_for_this_tank(talk: Talk) -> None:
    await fern(talk, "/source tap kh 8 gh 12 ph 7.6")
    facts = await talk.facts("how much ro to reach gh 5")
    # GH 6 to 5 by RO is a sixth of 90 L, in whole percents 17.
    assert facts["source"] == "RO"
    assert facts["litres"] == pytest.approx(0.17 * 90.0)


@pytest.mark.parametrize(
    ("text", "litres"),
    [("how much ro do i mix with tap for gh 6", None), ("mix ro and tap to gh 6 for 40 l", 40.0)],
)
async def test_shares_that_reach_a_wish(talk: Talk, text: str, litres: float | None) -> None:
    await talk.say("/source tap kh 8 gh 12 ph 7.6")
    await talk.say("/source mix 60% ro 40% tap")
    facts = await talk.facts(text)
    assert {part["source"]: part["share"] for part in facts["parts"]} == pytest.approx(
        {"RO": 0.5, "tap": 0.5}
    )
    assert facts["mixed"]["kh"] == pytest.approx(4.0, abs=0.01)
    assert facts.get("volume_l") == litres
    assert "not between" in await talk.text("how much ro and tap for gh 20")


async def test_fresh_water_rises_and_the_stood_reading_answers_apart(talk: Talk) -> None:
    await fern(talk)
    kept = await talk.facts("/source tap fresh ph 6.8 kh 6 gh 8 temp 24")
    assert 28.0 < kept["co2_mg_l"] < 36.0
    fresh = await talk.facts("what if i change 40%")
    assert fresh["rises_to"][0] > 7.6
    told = await talk.facts("tap stood ph 7.9")
    assert [value["canonical"] for value in told["facets"]["stood"]] == [7.9]
    stood = await talk.facts("what if i change 40%")
    assert stood["at_once"]["ph"] == pytest.approx(fresh["at_once"]["ph"])
    assert stood["source_stood"]["ph"] == 7.9
    assert stood["source_stood"]["at_once"] > stood["at_once"]["ph"] + 0.2
    assert "rises_to" not in stood


@pytest.mark.parametrize(
    "text",
    [
        "tap ph 7 from the tap, 7.8 after a day standing",
        "/source tap fresh ph 7, stood ph 7.8",
        "Leitungswasser frisch ph 7, abgestanden ph 7,8",
        "my tap is ph 7 fresh and 7.8 stood",
        "/source fresh ph 7 stood ph 7.8",
    ],
)
async def test_fresh_and_stood_are_told_in_a_breath(talk: Talk, text: str) -> None:
    await talk.say("/source tap kh 6")
    facts = await talk.facts(text)
    assert [value["canonical"] for value in facts["values"]] == [7.0]
    assert [value["canonical"] for value in facts["facets"]["stood"]] == [7.8]
    await talk.say("undo")
    shown = await talk.text("/source tap")
    assert "7.8" not in shown
    assert "KH 6" in shown


async def test_only_the_stood_ph_is_said_to_be_that(talk: Talk) -> None:
    await fern(talk, "/source tap kh 6 gh 8", "/source tap stood ph 7.9")
    assert "Only the stood pH" in await talk.text("what if i change 20%")


async def test_the_season_in_force_is_named(talk: Talk) -> None:
    await fern(talk, "/zone Europe/Berlin")
    await talk.say("/source tap winter kh 4 gh 6 ph 7.4 temp 22")
    await talk.say("/source tap summer kh 9 gh 14 ph 7.4 temp 22")
    winter = await talk.facts("what if i change 40%")
    assert winter["season"] == "winter"
    assert winter["other_season_share"] < winter["largest_safe_share"]
    assert "as in winter" in await talk.text("what if i change 40%")
    await talk.wait(days=120)
    await talk.say("ph 7.0 kh 4 gh 6 temp 22 nh4 0")
    summer = await talk.facts("what if i change 40%")
    assert summer["season"] == "summer"


async def test_the_other_half_of_the_world_has_the_other_season(talk: Talk) -> None:
    await fern(talk, "/zone Australia/Hobart")
    await talk.say("/source tap winter kh 4 gh 6")
    await talk.say("/source tap summer kh 9 gh 14")
    assert (await talk.facts("what if i change 10%"))["season"] == "summer"


async def test_an_unknown_season_is_the_stricter_one(talk: Talk) -> None:
    await fern(talk, "/source tap summer kh 9 gh 14 ph 7.4 temp 24")
    await talk.wait(hours=1)
    await talk.say("/source tap winter kh 4 gh 6 ph 7.4 temp 24")
    facts = await talk.facts("what if i change 40%")
    assert facts["season"] == "summer"
    assert "which season" in await talk.text("what if i change 40%")


async def test_a_profile_of_the_season_that_is_not_now_is_named(talk: Talk) -> None:
    await fern(talk, "/zone Europe/Berlin", "/source tap summer kh 5 gh 7 ph 7.4 temp 24")
    assert "which it is not now" in await talk.text("what if i change 10%")


async def test_an_old_source_is_named_as_old(talk: Talk) -> None:
    await fern(talk, "/source tap kh 8 gh 12 ph 7.6")
    await talk.wait(days=200)
    await talk.say("ph 7.0 kh 4 gh 6 temp 24")
    facts = await talk.facts("what if i change 10%")
    assert facts["source_measured_days"] == 200
    assert "measured about 7 months ago" in await talk.text("/source tap")


async def test_a_sources_reading_is_corrected_where_it_stands(talk: Talk) -> None:
    await fern(talk, "/source tap kh 8 gh 12")
    facts = await talk.facts("no, kh 9")
    assert facts["source"] == "tap"
    assert "KH 9" in await talk.text("/source tap")
    assert (await talk.facts("what if i change 10%"))["before"]["kh"] == 4.0
    await talk.say("/source tap winter kh 3")
    await talk.say("/source tap winter kh 4", kind="edit", message_ref=f"m{talk.count}")
    assert "KH 4" in await talk.text("/source tap")


async def test_seasons_are_told_and_shown_in_plain_words(talk: Talk) -> None:
    facts = await talk.facts("my tap in summer is kh 7 gh 10")
    assert [value["canonical"] for value in facts["facets"]["summer"]] == [7.0, 10.0]
    assert "KH 7" in await talk.text("/source tap summer")


async def test_a_routine_with_a_blend_is_of_the_blend(talk: Talk) -> None:
    await fern(talk, "/source tap kh 8 gh 12 ph 7.6 no3 10 temp 24")
    facts = await talk.facts("what if i change 20% every week with half ro")
    assert [part["source"] for part in facts["source_parts"]] == ["RO", "tap"]


async def test_only_a_source_is_stored_from_plain_talk_of_it(talk: Talk) -> None:
    await fern(talk)
    assert (await talk.facts("my tap is kh 5 gh 8"))["source"] == "tap"
    replies = await talk.say("tap kh 5 and fern kh 6")
    assert all("source" not in reply.facts for reply in replies)


async def test_tap_nitrate_over_the_drinking_limit_is_cautioned(talk: Talk) -> None:
    assert "infant formula" in await talk.text("/source tap no3 50 kh 8")
    assert "infant formula" not in await talk.text("/source tap no3 30 kh 8")
