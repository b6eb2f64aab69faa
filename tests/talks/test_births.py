"""Animals born or eaten: how many, whose young, and where they live."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.chat.harness import Talk, talking


async def stock(talk: Talk) -> dict[str, dict[str, int]]:
    return dict((await talk.facts("who lives where"))["stock"])


@pytest.mark.parametrize(
    ("text", "young"),
    [("guppies had babies", "babies"), ("Guppys haben Junge bekommen", "Junge")],
)
async def test_the_number_of_the_young_is_asked_for(tmp_path: Path, text: str, young: str) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        await talk.say("added 4 guppies")
        assert "How many?" in await talk.text(text)
        await talk.say("12")
        (held,) = (await stock(talk)).values()
        assert sum(held.values()) == 16
        assert any(name.casefold().endswith(f"({young.casefold()})") for name in held)


async def test_it_is_asked_whose_young_were_born(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        await talk.say("added 4 guppies and 8 neons")
        (reply,) = await talk.say("3 born")
        assert "Whose young" in reply.text
        assert [b.label for b in reply.buttons[:2]] == ["guppies", "neons"]
        await talk.press(1, reply)
        assert await stock(talk) == {"Fern": {"guppies": 4, "neons": 8, "guppies (young)": 3}}


@pytest.mark.parametrize(
    ("text", "left"),
    [
        ("the heron ate 3 koi", 4),
        ("2 koi eaten by the cat", 5),
        ("Reiher hat einen Koi gefressen", 6),
    ],
)
async def test_who_was_eaten_is_no_longer_on_record(tmp_path: Path, text: str, left: int) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Pool 5000 l pond")
        await talk.say("added 7 koi")
        await talk.say(text)
        assert await stock(talk) == {"Pool": {"koi": left}}


@pytest.mark.parametrize(
    "text", ["got 5 more corys", "guppies had 12 babies", "added 2 more guppies"]
)
async def test_more_of_a_kind_join_their_like_in_another_tank(tmp_path: Path, text: str) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        await talk.say("fern: added 6 corys and 4 guppies")
        await talk.say("/tank new Quarry 120 l fresh")
        await talk.say("quarry: added 8 neons")
        (reply,) = await talk.say(text)
        assert reply.facts["tank"] == "Fern"
        assert "Noted in Fern" in reply.text
        (moved,) = await talk.press(1, reply)
        assert moved.facts["tank"] == "Quarry"


@pytest.mark.parametrize(
    "text", ["quarry: got 5 more corys", "added 5 corys", "added 3 more discus"]
)
async def test_a_tank_that_is_named_or_no_like_elsewhere_keeps_them(
    tmp_path: Path, text: str
) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        await talk.say("fern: added 6 corys")
        await talk.say("/tank new Quarry 300 l fresh")
        await talk.say("quarry: added 8 neons")
        replies = await talk.say(text)
        assert replies[0].facts["tank"] == "Quarry"
        assert "Noted in" not in replies[0].text


async def test_a_new_count_is_of_the_tank_where_they_live(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        await talk.say("fern: added 9 corys")
        await talk.say("/tank new Quarry 120 l fresh")
        await talk.say("quarry: kh 5")
        (reply,) = await talk.say("only 7 corys now")
        assert reply.facts["tank"] == "Fern"
        await talk.press(1, reply)
        assert (await stock(talk))["Fern"] == {"corys": 7}


async def test_the_fry_are_those_on_record(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Quarry 120 l fresh")
        await talk.say("/tank new Fern 90 l fresh")
        await talk.say("fern: added 4 guppies and 8 neons")
        await talk.say("my guppies had 12 fry")
        await talk.say("moved 5 fry to quarry")
        held = await stock(talk)
        assert held["Fern"]["guppies (fry)"] == 7
        assert list(held["Quarry"].values()) == [5]


@pytest.mark.parametrize("text", ["what lives in the fern", "who lives in fern"])
async def test_a_tank_behind_an_article_is_the_one_shown(tmp_path: Path, text: str) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Quarry 120 l fresh")
        await talk.say("/tank new Fern 90 l fresh")
        assert set((await talk.facts(text))["stock"]) == {"Fern"}


@pytest.mark.parametrize("text", ["20 baby shrimp in fern", "fern 20 baby shrimp"])
async def test_counted_young_are_a_list(tmp_path: Path, text: str) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        assert (await talk.facts(text))["animals"] == {"baby shrimp": 20}


@pytest.mark.parametrize(
    "text", ["fish died", "neons died", "Neons gestorben", "les néons sont morts"]
)
async def test_the_dead_without_a_number_are_one_and_that_is_said(
    tmp_path: Path, text: str
) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        await talk.say("added 20 neons")
        assert "Counted as one" in await talk.text(text)
        await talk.say("no, lost 3 neons")
        assert await stock(talk) == {"Fern": {"neons": 17}}


@pytest.mark.parametrize("text", ["betta died", "lost a neon", "2 neons died", "all my neons died"])
async def test_a_number_that_is_known_is_not_asked_for(tmp_path: Path, text: str) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        await talk.say("added 20 neons and 1 betta")
        assert "Counted as one" not in await talk.text(text)


async def test_a_pet_that_ate_a_fish_may_need_a_vet(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await talk.say("/tank new Fern 90 l fresh")
        await talk.say("added 6 goldfish")
        assert "a vet now" in await talk.text("the cat ate 2 goldfish")
        assert "a vet now" not in await talk.text("2 goldfish died")
        assert await stock(talk) == {"Fern": {"goldfish": 2}}
