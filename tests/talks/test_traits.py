"""What is told of a tank for good is kept, shown, and used by the findings."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.chat.harness import talking


async def test_a_young_tank_is_told_its_stage(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        await talk.say("ammonia 1 as N nitrite 0")
        assert "cycling_ammonia" in {f["id"] for f in await found(talk, "ammonia 1 nitrite 0")}
        await talk.say("fern was set up 2 years ago")
        assert "cycling_ammonia" not in {f["id"] for f in await found(talk, "ammonia 1 nitrite 0")}
        facts = await talk.facts("fern was set up on 20 february")
        assert facts == {"tank": "Fern", "set_up": "2026-02-20"}
        assert "cycling_ammonia" in {f["id"] for f in await found(talk, "ammonia 1 nitrite 0")}
        assert "set up 20 Feb 2026" in await talk.text("/tank fern")


async def found(talk, text: str) -> list[dict]:
    return (await talk.facts(text))["findings"]


@pytest.mark.parametrize("said", ["fern has co2", "/tank fern co2"])
async def test_injected_carbon_dioxide_is_allowed_for(tmp_path: Path, said: str) -> None:
    """60 mg/L by pH and KH contradicts itself, unless carbon dioxide is injected."""
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        water = "ph 6.2 kh 6"
        assert "contradiction" in {f["id"] for f in await found(talk, water)}
        await talk.say(said)
        assert "contradiction" not in {f["id"] for f in await found(talk, water)}
        assert "CO2 injected" in await talk.text("/tank fern")
        await talk.say("fern has no co2")
        assert "contradiction" in {f["id"] for f in await found(talk, water)}


async def test_an_old_kit_is_said_beside_its_readings(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        await talk.say("/tank new Quarry 240 l fresh")
        assert "ended on 31 Jan 2026" in await talk.text("/tank kit kh expires 2026-01")
        for tank in ("fern", "quarry"):  # the keeper's kit, whichever tank it tests
            assert "expired_kit" in {f["id"] for f in await found(talk, f"{tank}: kh 6")}
        await talk.wait(hours=1)
        assert "expired_kit" not in {f["id"] for f in await found(talk, "fern: gh 6")}


async def test_a_kit_is_reminded_of_in_time_once(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        (reply,) = await talk.say("kh kit expires 05/2026")
        assert "good until 31 May 2026" in reply.text
        await talk.press(1, reply)
        assert "already" in (await talk.press(1, reply))[0].text.lower()
        arrived = await talk.wait(days=90)
        assert len(arrived) == 1
        assert "renew the KH kit (good until 31 May 2026)" in arrived[0].text
        assert arrived[0].at is not None
        assert f"{arrived[0].at:%m-%d %H:%M}" == "05-17 10:00"


async def test_a_day_to_come_keeps_nothing(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        assert "nothing was kept" in await talk.text("fern was set up tomorrow")
        assert "set up" not in await talk.text("/tank fern")


@pytest.mark.parametrize("said", ["/tank lagoon reef", "lagoon is a reef", "lagoon has corals"])
async def test_a_reef_is_judged_for_corals(tmp_path: Path, said: str) -> None:
    """Copper kills corals, and they bear 20 mg/L nitrate: common practice, no source."""
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Lagoon 150 l marine")
        assert await found(talk, "no3 30") == []
        assert (await talk.facts(said))["setup"] == "reef"
        told = await found(talk, "no3 30 copper 0.05")
        assert {(f["id"], f["severity"]) for f in told} == {
            ("copper", "alarm"),
            ("nitrate", "warn"),
        }
        assert "150 L, marine, reef" in await talk.text("/tank lagoon")


async def test_a_tank_is_made_for_something_from_the_start(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        for line, kind, setup in (
            ("/tank new Lagoon 150 l marine reef", "marine", "reef"),
            ("/tank new Bay 400 l marine fish only", "marine", "fish_only"),
            ("/tank new Fern 90 l planted", "fresh", "planted"),
        ):
            made = await talk.facts(line)
            assert (made["kind"], made["setup"]) == (kind, setup)
        (low,) = await found(talk, "oxygen 6 temp 25")
        assert low["id"] == "oxygen_by_day"


async def test_a_fresh_water_tank_is_no_reef(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        (reply,) = await talk.say("fern is a reef")
        assert "/tank Fern marine" in reply.text
        assert "setup" not in (await talk.facts("/tank fern"))


async def test_salinity_falls_faster_with_fish_only(tmp_path: Path) -> None:
    """2 g/kg down a day with fish only, 1 with any invertebrate: common practice, no source."""
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Lagoon 150 l marine")
        await talk.say("lagoon: kh 8 ph 8.2 temp 25 salinity 36 ammonia 0")
        await talk.say("/source sea ph 8.2 kh 8 salinity 30 temp 25")
        largest = {}
        for said in ("lagoon is a reef", "lagoon is fish only"):
            await talk.say(said)
            largest[said] = (await talk.facts("what if i change 50%"))["largest_safe_share"]
        assert 0.10 <= largest["lagoon is a reef"] <= 0.17
        assert largest["lagoon is fish only"] > 1.5 * largest["lagoon is a reef"]


async def test_injected_carbon_dioxide_is_told_to_be_turned_down(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        assert "move the surface" in await talk.text("co2 45")
        await talk.say("fern is planted with co2")
        await talk.wait(days=40)
        assert "turn injection down, off at night" in await talk.text("co2 45")
