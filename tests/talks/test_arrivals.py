"""New animals home, by conversation: the order of work, nothing stored of the bag, quarantine."""

from __future__ import annotations

from pathlib import Path

import pytest

from bot.chat.words.arrivals import arrival, more
from core.advice.arrivals import arrive
from tests.chat.harness import Talk, talking
from tests.core.advice.waters import by_kit, read, state, tank

HOME = state(by_kit("gh", 6), by_kit("ph", 6.8), read("temperature", 25.0), by_kit("kh", 4))


async def with_fern(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ph 7.2 kh 8 gh 12 temp 25 ammonia 0 nitrite 0")


async def test_the_bags_water_is_never_the_tanks(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        facts = await talk.facts("new fish home, bag ph 6.4 kh 2 temp 22")
        assert facts["bag"] == {"ph": 6.4, "kh": 2.0, "temperature": 22.0}
        assert facts["tank"] == "Fern"
        assert facts["days"] == 1.0
        told = (await talk.facts("history of ph"))["values"]
        assert [each["value"] for each in told] == [7.2]


async def test_what_is_told_of_the_tank_beside_it_is_kept(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        stored, plan = await talk.say("fern ph 7.0, bag of guppies ph 7.0 kh 8, 1 h")
        assert stored.facts["values"][0]["value"] == 7.0
        assert "hold_in_quarantine" not in plan.facts["steps"]


async def test_a_bag_by_post_stays_closed_and_says_why(tmp_path: Path) -> None:
    """3 mg/L at pH 6.2 is harmless in the bag, far over 0.05 mg/L NH3-N once its CO2 has left."""
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        (reply,) = await talk.say("shrimps came by post, bag ph 6.2 ammonia 3 temp 18 kh 7")
        assert reply.facts["keep_closed"] is True
        assert reply.facts["nh3_n"] < 0.01 < 0.05 < reply.facts["nh3_n_open"]
        assert "Keep the bag closed" in reply.text


@pytest.mark.parametrize(
    "said",
    [
        "how do i add the new fish",
        "bringing home 6 neon tetras",
        "comment acclimater des crevettes",
        "wie setze ich neue fische ein",
        "new guppies arrived",
    ],
)
async def test_ways_to_ask(tmp_path: Path, said: str) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        (reply,) = await talk.say(said)
        assert "float_closed" in reply.facts["steps"]
        assert "quarantine with reminders" in [button.label for button in reply.buttons]


@pytest.mark.parametrize(
    "said", ["how do i add baking soda", "bag of salt 5 kg", "the new filter came today", "kh 4"]
)
async def test_what_is_something_else(tmp_path: Path, said: str) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        assert all("steps" not in reply.facts for reply in await talk.say(said))


async def test_they_are_in_logs_them_once(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        (reply,) = await talk.say("brought home 6 cherry shrimps, bag kh 7 gh 11, closed 1 h")
        await talk.press(1, reply)
        await talk.press(1, reply)
        assert (await talk.facts("/tank fern"))["stock"] == {"cherry shrimps": 6}


async def test_not_into_poisoned_water(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        await talk.say("nitrite 1 as NO2")
        assert (await talk.text("bringing home 6 guppies")).startswith("Not into Fern yet")


async def test_quarantine_is_a_tank_with_reminders_of_its_own(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        (reply,) = await talk.say("quarantine")
        assert reply.text.startswith("Quarantine: 4 weeks")
        await talk.press(1, reply)
        assert "already" in (await talk.press(1, reply))[0].text.lower()
        told = (await talk.facts("/remind"))["reminders"]
        assert [each["tank"] for each in told] == ["Quarantine"] * 4
        assert [each["due"][:10] for each in told] == [
            "2026-03-02", "2026-03-03", "2026-03-04", "2026-03-29",
        ]  # fmt: skip
        assert (await talk.facts("kh 8"))["tank"] == "Fern"
        assert (await talk.facts("quarantine: ammonia 0 nitrite 0"))["tank"] == "Quarantine"
        assert len(await talk.wait(days=1)) == 1
        await talk.say("/tank delete quarantine")
        await talk.press(1)
        assert (await talk.facts("/remind"))["reminders"] == []
        assert await talk.wait(days=40) == []


def test_six_lines_are_enough_and_the_first_decides() -> None:
    foul = {
        "ammonia": read("ammonia", 3.0), "ph": read("ph", 6.4), "kh": read("kh", 4.0),
        "temperature": read("temperature", 24.0),
    }  # fmt: skip
    salt = state(read("salinity", 35.0), of=tank(kind="marine"))
    plans = {
        "Warm the closed bag": arrive(foul, HOME, hours=10),
        "Warm the bag, mix in": arrive({"kh": read("kh", 4.0)}, HOME, hours=1),
        "Not straight into Fern: KH 1 → 4 °dH. A day": arrive({"kh": read("kh", 1.0)}, HOME),
        "Not straight into Fern: salinity 30 → 35 g/kg. 5 days": arrive(
            {"salinity": read("salinity", 30.0)}, salt
        ),
        "Not into Fern yet: there is nitrite": arrive({}, state(read("nitrite", 1.0, basis="ion"))),
    }
    for first, plan in plans.items():
        lines = arrival(plan, "Fern")
        assert lines[0].startswith(first), lines[0]
        assert 4 <= len(lines) <= 7
        assert more(plan, hours_known=False)


def test_unknown_hardness_is_said_where_they_go_over_at_once() -> None:
    assert any("KH and GH: ask the seller" in line for line in arrival(arrive({}, HOME), "Fern"))
    known = arrive({"kh": read("kh", 4.0)}, HOME)
    assert not any("ask the seller" in line for line in arrival(known, "Fern"))


async def test_in_the_sea_the_bag_s_salinity_comes_first(talk: Talk) -> None:
    """1 g/kg a day with invertebrates: common practice; SG 1.020 at 25/25 °C is 26.7 g/kg."""
    await talk.say("/tank new Sea 200 l marine")
    await talk.say("salinity 35 ph 8.2 kh 8 temp 25 ammonia 0")
    (reply,) = await talk.say("new shrimp home, bag sg 1.020 temp 22 ph 8 kh 8")
    assert reply.facts["bag"]["salinity"] == pytest.approx(26.7, abs=0.1)
    assert reply.lines[0].text.startswith("Not straight into Sea")
    (reply,) = await talk.say("new fish home, bag ph 8 kh 8 temp 24")
    assert reply.lines[0].text.startswith("Measure the bag's salinity first")


@pytest.mark.parametrize(
    "said",
    [
        "bringing home 2 clownfish in a bag with salt water",
        "new fish, the bag is salt water",
        "bag sg 1.020 temp 24",
        "neue fische, beutel mit meerwasser",
    ],
)
async def test_from_the_sea_no_steps_lead_into_fresh_water(tmp_path: Path, said: str) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        (reply,) = await talk.say(said)
        assert reply.text.startswith("Not into Fern: it is down as fresh")
        assert reply.facts["steps"] == ["not_this_water"]
        assert reply.facts["refused"] == "other_water"
        assert not reply.buttons


async def test_copper_of_the_bag_stays_out(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        (reply,) = await talk.say("bag copper 0.3 ph 7 temp 24")
        assert "none of that water into Fern" in reply.text


async def test_they_go_to_the_only_tank_of_their_water(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Reef 200 l reef")
        await talk.say("/tank new Fern 90 l fresh")
        (reply,) = await talk.say("new clownfish home")
        assert reply.facts["tank"] == "Reef"
        assert reply.text.startswith("Measure the bag's salinity first.")
        (reply,) = await talk.say("fern: new clownfish home")
        assert reply.text.startswith("Not into Fern")


async def test_the_first_line_says_what_the_steps_do(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        await talk.say("ph 6.8 kh 3 gh 9 temp 24")
        (reply,) = await talk.say("6 neons home, bag ph 6.2 temp 20 kh 2 gh 4, 20 h in the post")
        assert "add_tank_water" in reply.facts["steps"]
        first = reply.text.splitlines()[0]
        assert "clean water like the bag's" in first
        assert "at once" not in first


async def test_copper_of_the_shop_s_water_is_the_bag_s(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        (reply,) = await talk.say("new neons home, shop water copper 0.2")
        assert reply.facts["bag"] == {"copper": 0.2}
        assert "none of that water into Fern" in reply.text


async def test_who_would_eat_them_is_told_before_the_steps(talk: Talk) -> None:
    await talk.say("/tank new Main 180 l fresh")
    await talk.say("added 6 oscars")
    await talk.say("ph 7 kh 5 gh 8 temp 25 ammonia 0 nitrite 0")
    text = await talk.text("bringing home 10 guppies, bag ph 7 kh 5 gh 8 temp 25")
    assert text.startswith("Better not into Main:")
    assert "oscar" in text.splitlines()[0].casefold()


async def test_a_bag_that_tells_its_solids_is_believed(talk: Talk) -> None:
    await talk.say("/tank new Main 180 l fresh")
    await talk.say("ph 7 temp 25 ammonia 0 nitrite 0 tds 120")
    (reply,) = await talk.say("bag tds 600 how to acclimate cherry shrimp")
    assert reply.facts["days"] == 4.0
    assert "TDS 600 → 120" in reply.lines[0].text


async def test_nobody_is_made_out_of_common_words(talk: Talk) -> None:
    await talk.say("/tank new Main 180 l fresh")
    await talk.say("ph 7 kh 5 gh 8 temp 29 ammonia 0 nitrite 0")
    assert "outside" not in await talk.text("new fish home what do i do")


@pytest.mark.parametrize(
    "said",
    [
        "how long should i float the bag",
        "wie lange muss der beutel schwimmen",
        "combien de temps laisser flotter le sac",
        "cuánto tiempo dejo flotar la bolsa",
        "quanto tempo deixo o saco a boiar",
        "per quanto tempo faccio galleggiare il sacchetto",
        "hoe lang moet het zakje drijven",
        "jak długo worek ma pływać",
        "hur länge ska påsen flyta",
    ],
)
async def test_a_bag_that_floats_holds_animals(talk: Talk, said: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "float the closed bag 15 min" in await talk.text(said)


@pytest.mark.parametrize("said", ["my plants float", "the pump floats", "a bag of salt, 2 kg"])
async def test_what_else_floats_comes_home_with_nobody(talk: Talk, said: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "float the closed bag" not in await talk.text(said)


@pytest.mark.parametrize(
    ("told", "count"),
    [
        ("brother brought 6 mollies as a gift theyre in the tank now", 6),
        ("my wife bought 5 guppies and put them in already", 5),
        ("dad gave me two new guppies, they are swimming in there already", 2),
    ],
)
async def test_who_is_told_to_be_in_is_kept_and_the_poison_said(
    tmp_path: Path, told: str, count: int
) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        await talk.say("ammonia 2 nitrite 5")
        text = await talk.text(told)
        assert f"added {count} " in text
        assert "Nitrite 5 mg/L" in text


@pytest.mark.parametrize(
    "told",
    [
        "bought 6 mollies, theyre in a bucket",
        "brought 6 mollies home, should they be in the tank now",
        "will put them in tomorrow, got 6 mollies",
    ],
)
async def test_who_is_not_in_is_not_kept(tmp_path: Path, told: str) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        assert "Fern: added" not in await talk.text(told)


async def test_no_buffer_goes_into_the_bag(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        await talk.say("new fish home, bag ph 6.2 ammonia 3")
        for asked in (
            "should i get bag ph up with bicarb first, how much for 2 litres",
            "can i raise the kh in the bag?",
        ):
            (reply,) = await talk.say(asked)
            assert reply.facts["refused"] == "bag_buffer"
            assert "(3 mg/L)" in reply.text
        (dosed,) = await talk.say("how much bicarb for fern to kh 9")
        assert dosed.facts.get("refused") != "bag_buffer"


async def test_a_bag_of_powder_is_none_of_animals(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        replies = await talk.say("can i put a bag of crushed coral in to raise kh")
        assert not any(reply.facts.get("refused") == "bag_buffer" for reply in replies)
