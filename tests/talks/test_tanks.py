"""Tanks: added, shown, changed, renamed, deleted; volumes from litres, gallons and lengths."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("text", "volume", "kind"),
    [
        ("/tank new Fern 90 l fresh", 90.0, "fresh"),
        ("/tank new Fern 20 gal fresh", 75.7, "fresh"),
        ("/tank new Fern 20 uk gal fresh", 90.9, "fresh"),
        ("/tank new Fern marine 150l", 150.0, "marine"),
        ("/tank new Fern 1,5 m3 pond", None, None),
        ("new tank Fern 90 litres fresh", 90.0, "fresh"),
        ("/tank new Fern brackish", None, "brackish"),
    ],
    ids=["litres", "US gallons", "imperial gallons", "any order", "unknown unit", "spoken", "none"],
)
async def test_adding(talk: Talk, text: str, volume: float | None, kind: str | None) -> None:
    (reply,) = await talk.say(text)
    if kind is None:
        assert "nothing was changed" in reply.text
        assert await talk.app.names(talk.address) == []
        return
    assert reply.facts.get("volume_l") == (None if volume is None else pytest.approx(volume, 1e-3))
    assert reply.facts["kind"] == kind
    assert await talk.app.names(talk.address) == ["Fern"]


async def test_lengths_give_a_volume_that_the_keeper_confirms(talk: Talk) -> None:
    """100 × 50 × 40 cm of water are 200 L; 15 % allowance is common practice, no source."""
    (reply,) = await talk.say("/tank new Fern 100x50x45 cm water 40 fresh")
    assert reply.facts["gross_l"] == pytest.approx(200.0)
    assert reply.facts["net_l"] == pytest.approx(170.0)
    assert "volume not told yet" in await talk.text("/tank Fern")
    await talk.say("yes")
    assert "170 L" in await talk.text("/tank Fern")


async def test_the_keeper_may_know_better_than_the_lengths(talk: Talk) -> None:
    await talk.say("/tank new Fern 100x50x45 cm fresh")
    assert "160 L" in await talk.text("160 l")
    assert "160 L" in await talk.text("/tank Fern")


async def test_the_tank_made_on_the_fly_gets_its_name_with_all_it_holds(talk: Talk) -> None:
    await talk.say("kh 4")
    (reply,) = await talk.say("/tank new Fern 90 l fresh")
    assert await talk.app.names(talk.address) == ["Fern"]
    assert (await talk.facts("kh +2"))["from"] == 4
    await talk.press(1, reply)
    assert await talk.app.names(talk.address) == ["Tank", "Fern"]
    assert (await talk.facts("dose kh 6"))["refused"] == "kh_unknown"


async def test_changing_renaming_and_showing(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "95 L" in await talk.text("/tank fern 95 l")
    assert "soft on purpose" in await talk.text("/tank fern soft")
    assert "now called Deep Moss" in await talk.text("/tank rename fern Deep Moss")
    assert "95 L" in await talk.text("/tank deep moss")
    assert "now called Fern" in await talk.text("rename deep moss to Fern")


async def test_deleting_asks_first_and_keeps_history(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4")
    await talk.say("remind me to test fern every 7 days at 19:00")
    (asked,) = await talk.say("/tank delete fern")
    assert [asked.buttons[0].meaning, asked.buttons[-1].meaning] == ["yes", "no"]
    assert "stays" in await talk.text("no")
    await talk.say("/tank delete fern")
    assert "is deleted" in await talk.text("yes")
    assert await talk.app.names(talk.address) == []
    assert await talk.wait(days=30) == []
    async with talk.app.database.read() as uow:
        assert len(await uow.log.readings(1)) == 1
    await talk.say("/tank new Fern 60 l fresh")
    assert "60 L" in await talk.text("/tank fern")


@pytest.mark.parametrize(
    "text",
    [
        "/tank new",
        "/tank new kh 90 l fresh",
        "/tank new Fern 0 l fresh",
        "/tank new Fern 0.3 ml fresh",
        "/tank new Fern 3000000 l fresh",
        "/tank new " + "x" * 200 + " 90 l fresh",
        "/tank rename",
        "/tank rename Nobody Moss",
        "/tank delete Nobody",
        "/tank kit",
        "/tank Nobody",
    ],
)
async def test_what_cannot_be_done_says_what_to_send(talk: Talk, text: str) -> None:
    (reply,) = await talk.say(text)
    assert reply.text
    assert await talk.app.names(talk.address) == []


async def test_two_tanks_never_share_a_name(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/tank new Quarry 240 l fresh")
    assert "already" in await talk.text("/tank new FERN 60 l fresh")
    assert "already" in await talk.text("/tank rename quarry fern")
    assert await talk.app.names(talk.address) == ["Fern", "Quarry"]


async def test_the_stock_is_kept_from_what_was_added_and_lost(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("added 6 neon tetras")
    assert "Test ammonia" in await talk.text("lost 2 neon tetras")
    await talk.say("added 4 amano shrimps")
    facts = await talk.facts("/tank fern")
    assert facts["stock"] == {"neon tetras": 4, "amano shrimps": 4}
    await talk.say("undo")
    assert (await talk.facts("/tank fern"))["stock"] == {"neon tetras": 4}


async def test_a_tank_is_told_in_plain_words(talk: Talk) -> None:
    facts = await talk.facts("my tank is 120 litres")
    assert (facts["kind"], facts["volume_l"]) == ("fresh", 120)
    assert (await talk.facts("i have a 40 gallon reef tank"))["kind"] == "marine"
    assert (await talk.facts("kh 7"))["tank"] == "Tank"
    assert "did not find" in await talk.text("my tank is a mess")
    assert (await talk.facts("my tank is 25 c"))["values"][0]["analyte"] == "temperature"


async def test_lengths_answer_how_much_water_and_the_wish_goes_on(talk: Talk) -> None:
    await talk.say("kh 4 temp 25")
    await talk.say("dose kh 5")
    await talk.say("60x30x36 cm")
    replies = await talk.say("yes")
    assert replies[-1].facts["substance"] == "sodium bicarbonate"
    assert replies[-1].facts["volume_l"] == pytest.approx(0.6 * 0.3 * 0.324 * 1e3 * 0.85, abs=0.1)


async def test_the_way_to_name_a_tank_is_said_once(talk: Talk) -> None:
    assert "/tank rename" in await talk.text("kh 4")
    assert "/tank rename" not in await talk.text("kh 5")


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ("tank quarry 200 l marine", "quarry"),
        ("becken moos 200 liter", "moos"),
        ("bac mousse 200 litres", "mousse"),
        ("acuario musgo 200 litros", "musgo"),
        ("aquário musgo verde 200 litros", "musgo verde"),
        ("vasca muschio 200 litri", "muschio"),
        ("bak mos 200 liter", "mos"),
        ("akwarium mech 200 litrów", "mech"),
        ("akvarium mossa 200 liter", "mossa"),
        ("tank called quarry 200 l", "quarry"),
    ],
)
async def test_a_tank_told_by_name_never_changes_another(talk: Talk, line: str, name: str) -> None:
    """Litres put to the wrong tank would make every dose for it wrong."""
    await talk.say("/tank new Fern 90 l fresh")
    facts = await talk.facts(line)
    assert (facts["tank"], facts["volume_l"]) == (name, 200.0)
    assert (await talk.facts("/tank fern"))["volume_l"] == 90.0


async def test_one_of_several_tanks_is_told_by_its_name(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/tank new Quarry 200 l fresh")
    assert (await talk.facts("fern holds 100 l"))["volume_l"] == 100.0
    assert (await talk.facts("actually the quarry tank is 170 l"))["volume_l"] == 170.0
    assert (await talk.facts("/tank fern"))["volume_l"] == 100.0


@pytest.mark.parametrize("line", ["fern lost 20 l", "my tank needs 20 l", "fern wants 20 l"])
async def test_litres_that_are_not_what_it_holds_change_nothing(talk: Talk, line: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say(line)
    assert (await talk.facts("/tank fern"))["volume_l"] == 90.0


async def test_a_correction_of_the_volume_is_none_of_the_reading(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4")
    (reply,) = await talk.say("actually the tank is 70 l")
    assert reply.facts["volume_l"] == 70.0
    assert "Corrected" not in reply.text


@pytest.mark.parametrize(
    ("line", "litres", "kind"),
    [
        ("i have a 200 l reef", 200.0, "marine"), ("my reef is 200 l", 200.0, "marine"),
        ("i have a 30 l nano", 30.0, "fresh"),
    ],
)  # fmt: skip
async def test_a_reef_and_a_nano_are_tanks(talk: Talk, line: str, litres: float, kind: str) -> None:
    facts = await talk.facts(line)
    assert (facts["volume_l"], facts["kind"]) == (litres, kind)


async def test_what_is_told_beside_a_reef_is_of_the_sea(talk: Talk) -> None:
    """Seas hold 2.3 to 4 meq/L: 2.8 without a unit is asked about, never taken for °dH."""
    replies = await talk.say("i have a 200 l reef, alk 2.8")
    assert any("2.8 meq/L" in reply.text for reply in replies)
