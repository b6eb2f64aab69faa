"""Animals that come and go: asked about where a name is no one kind's, nothing guessed."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.chat.harness import Talk, talking


async def stock(talk: Talk) -> dict[str, int]:
    return dict((await talk.facts("/tank fern"))["stock"])


async def with_fern(talk: Talk, *lines: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    for line in lines:
        await talk.say(line)


async def test_a_misspelt_kind_is_stored_and_asked(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        (reply,) = await talk.say("added 6 neon tetar")
        assert "Did you mean neon tetra (Paracheirodon innesi)?" in reply.text
        assert [button.label for button in reply.buttons] == ["neon tetra", "undo"]
        assert await stock(talk) == {"neon tetar": 6}
        assert "added 6 neon tetra" in (await talk.press(1, reply))[0].text
        assert await stock(talk) == {"neon tetra": 6}
        assert "already" in (await talk.press(1, reply))[0].text.lower()
        assert await stock(talk) == {"neon tetra": 6}


async def test_the_answer_can_be_typed_and_taken_back(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, "added 6 neon tetar", "neon tetra")
        assert await stock(talk) == {"neon tetra": 6}
        await talk.say("undo")
        assert await stock(talk) == {"neon tetar": 6}


async def test_two_kinds_of_one_name_are_asked(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        (reply,) = await talk.say("added 2 angelfish")
        assert "can be several kinds" in reply.text
        assert reply.buttons[0].label == "freshwater angelfish"
        assert reply.buttons[1].label == "dwarf angelfish"


async def test_ten_thousand_animals_wait_for_a_yes(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        for said in ("added 10,000 neons", "added 10000 neons"):
            (reply,) = await talk.say(said)
            assert "10,000 neons in the 90 L of Fern" in reply.text
            assert await stock(talk) == {}
        assert "Left out" in await talk.text("no")
        (reply,) = await talk.say("added 10000 neons")
        await talk.say("yes")
        assert await stock(talk) == {"neons": 10_000}
        await talk.press(1, reply)
        assert await stock(talk) == {"neons": 10_000}


async def test_what_is_said_beside_a_crowd_is_stored(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        replies = await talk.say("kh 5, added 10000 neons")
        assert replies[0].facts["values"][0]["canonical"] == 5
        assert "10,000" in replies[1].text


@pytest.mark.parametrize("said", ["lost 2", "2 dead", "lost 2 fish"])
async def test_the_dead_of_no_kind_are_stored_and_asked(tmp_path: Path, said: str) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, "added 10 neon tetras", "added 6 corydoras")
        (reply,) = await talk.say(said)
        assert reply.text.splitlines()[1].startswith("Test ammonia")
        assert [button.label for button in reply.buttons][:2] == ["neon tetras", "corydoras"]
        await talk.press(2, reply)
        assert await stock(talk) == {"neon tetras": 10, "corydoras": 4}


async def test_the_dead_of_the_only_kind_need_no_question(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, "added 10 neon tetras")
        (reply,) = await talk.say("lost 2")
        assert "kind" not in reply.text
        assert await stock(talk) == {"neon tetras": 8}


async def test_findings_use_the_keepers_own_word(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, "added 10 Neonsalmler")
        assert "is high for Neonsalmler" in await talk.text("gh 20")


async def test_any_animal_is_no_kind(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        assert "Which kind is “fish”?" in await talk.text("added 2 fish")
        await talk.say("no, added 2 guppies")
        assert await stock(talk) == {"guppies": 2}


async def test_a_shared_name_in_a_question_is_asked_and_answered(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, "ph 6.8 kh 3 gh 6 temp 25")
        (reply,) = await talk.say("can i keep shrimp with neon tetras")
        assert reply.buttons[0].label == "cherry shrimp"
        (answer,) = await talk.press(1, reply)
        assert answer.facts["species"] == "Neocaridina davidi"


@pytest.mark.parametrize(
    "text",
    ["can i keep angelfish with neon tetras", "can i keep angelfish", "kann ich skalare halten"],
)
async def test_a_shared_name_is_the_only_kind_of_the_water_meant(tmp_path: Path, text: str) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, "ph 6.8 kh 3 gh 6 temp 25")
        assert (await talk.facts(text))["species"] == "Pterophyllum scalare"


async def test_what_could_live_here_by_the_tanks_own_water(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        assert "source water" in await talk.text("which fish can i keep")
        await talk.say("gh 18 kh 14 ph 7.8")
        assert (await talk.text("which fish can i keep")).startswith("Fern as it is suits")
        await talk.say("/source tap gh 3 kh 1 ph 6.8")
        assert (await talk.text("which fish can i keep")).startswith("tap as it is suits")


async def test_no_new_animals_while_there_is_poison(talk: Talk) -> None:
    await talk.say("/tank new Old 120 l fresh")
    await talk.say("added 10 neon tetra")
    await talk.say("ammonia 4 ph 8 temp 25")
    for text in ("can i add fish", "can i keep oscar", "can i add 5 neon tetra"):
        assert (await talk.text(text)).startswith("No new animals in Old now: there is ammonia")
    assert "Ammonia is dangerous" in await talk.text("added 5 neon tetra")


async def test_a_swing_to_the_other_side_is_said(talk: Talk) -> None:
    await talk.say("/tank new Sh 30 l fresh")
    await talk.say("added 20 cherry shrimp")
    assert "15 °C is low" in await talk.text("temp 15")
    assert "15 °C is low" not in await talk.text("temp 15")
    assert "30 °C is high" in await talk.text("temp 30")
    assert "15 °C is low" in await talk.text("temp 15")


async def test_a_loss_of_none_on_record_is_said_and_goes_where_they_live(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, "/tank new Quarry 90 l fresh", "quarry: added 8 neons")
        (reply,) = await talk.say("fern: lost 2 neons")
        assert "No neons were on record in Fern. Was it in Quarry?" in reply.text
        (moved,) = await talk.press(1, reply)
        assert "Quarry" in moved.text
        assert (await talk.facts("who lives here"))["stock"] == {"Fern": {}, "Quarry": {"neons": 6}}
        (reply,) = await talk.say("quarry: lost 9 neons")
        assert "Only 6 neons were on record in Quarry." in reply.text
        (reply,) = await talk.say("quarry: lost 1 betta")
        assert "No betta were on record in Quarry, so its list of animals stays." in reply.text


async def test_a_misspelt_kind_in_a_list_is_asked_about(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        (reply,) = await talk.say("fern: 10 neonz, 4 cherry shrimp")
        assert "10 neonz, 4 cherry shrimp?" in reply.text
        (added,) = await talk.press(1, reply)
        assert "Did you mean neon tetra" in added.text


@pytest.mark.parametrize(
    ("said", "verdict", "words"),
    [
        ("can i keep 2 male bettas", "no", "each male needs a tank of his own"),
        ("can i keep 2 bettas", "no", "keep only one in a tank"),
        ("can i keep 1 male and 3 female bettas", "no", "a male hunts the females"),
        ("can i keep 4 female bettas", "care", "females may fight too"),
        ("can i keep 1 male and 2 female dwarf gouramis", "yes", "one male to a tank"),
        ("can i keep 2 male dwarf gouramis", "no", "two males fight"),
        ("can i keep a male betta", "yes", "keep only one in a tank"),
        ("can i keep one neon", "care", "1 is too few"),
        ("can i keep 8 neons", "yes", "What suits"),
        ("can i keep 10 goldfish in 20 l", "no", "391 L at the very least"),
        ("can i keep 2 corydoras with 20 neons in 20 l", "no", "at the very least"),
        ("can i keep 10000 neons", "no", "too small for so many neons"),
        ("can i keep pea puffer with cherry shrimp", "no", "the first eats the other"),
        ("can i keep clownfish with neons", "no", "Fern is down as fresh"),
        ("can i keep a figure eight puffer", "no", "need brackish water"),
    ],
)
async def test_number_sex_and_volume_of_a_question_count(
    tmp_path: Path, said: str, verdict: str, words: str
) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, "ph 7 kh 4 gh 8 temp 25")
        (reply,) = await talk.say(said)
        assert reply.facts["verdict"] == verdict
        assert words in reply.text


async def test_added_to_water_of_another_kind_is_said_at_once(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        (reply,) = await talk.say("added 2 clownfish")
        assert "need marine water, and this tank is down as fresh" in reply.text


@pytest.mark.parametrize(
    ("said", "verdict", "species"),
    [
        ("would neons be ok with discus", "no", "Paracheirodon innesi"),
        ("will a betta eat my cherry shrimp", "care", "Betta splendens"),
        ("is a goldfish ok in 20 l", "no", "Carassius auratus"),
        ("can goldfish live in a bowl", "no", "Carassius auratus"),
        ("how do i keep neons", "yes", "Paracheirodon innesi"),
        ("how many neons can i keep in 90 l", "yes", "Paracheirodon innesi"),
        ("kann ich 2 kampffische halten", "no", "Betta splendens"),
        ("passen neons zu skalaren", "no", "Paracheirodon innesi"),
        ("puis-je mettre 2 combattants mâles", "no", "Betta splendens"),
        ("puedo poner 2 bettas machos juntos", "no", "Betta splendens"),
        ("posso colocar 2 bettas machos juntos", "no", "Betta splendens"),
        ("posso mettere due combattenti maschi", "no", "Betta splendens"),
        ("kan ik 2 kempvissen houden", "no", "Betta splendens"),
        ("czy mogę trzymać 2 bojowniki", "no", "Betta splendens"),
        ("kan jag ha 2 kampfiskar", "no", "Betta splendens"),
        ("puis-je garder un combattant avec des néons", "care", "Betta splendens"),
        ("puedo tener un betta con unos neones", "care", "Betta splendens"),
        ("posso tenere un betta con i neon", "care", "Betta splendens"),
        ("puedo tener un pez dorado en 20 litros", "no", "Carassius auratus"),
        ("posso tenere un pesce rosso in 20 litri", "no", "Carassius auratus"),
        ("puis-je garder un poisson rouge dans 20 l", "no", "Carassius auratus"),
    ],
)
async def test_company_is_asked_about_in_many_words(
    tmp_path: Path, said: str, verdict: str, species: str
) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, "ph 7 kh 4 gh 8 temp 25")
        (reply,) = await talk.say(said)
        assert reply.facts["species"] == species
        assert reply.facts["verdict"] == verdict


@pytest.mark.parametrize(
    "said",
    [
        "are my neons ok",
        "do my bettas look fine",
        "why are my neons pale",
        "do neons need a heater",
    ],
)
async def test_how_they_are_is_no_question_of_company(tmp_path: Path, said: str) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, "ph 7 kh 4 gh 8 temp 25")
        (reply,) = await talk.say(said)
        assert "verdict" not in reply.facts


async def test_a_number_that_is_too_many_is_told(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, "ph 7 kh 4 gh 8 temp 25")
        (reply,) = await talk.say("how many neons can i keep")
        assert reply.facts["most"] == 45
        assert "More than 45 neons are too many for Fern" in reply.text


@pytest.mark.parametrize(
    ("said", "held"),
    [
        ("added 10 cardinals, 6 corys and a bristlenose",
         {"cardinals": 10, "corys": 6, "bristlenose": 1}),
        ("added six guppies and two nerites", {"guppies": 6, "nerites": 2}),
        ("added 2 pairs of kribensis", {"kribensis": 4}),
        ("added a pair of kribensis", {"kribensis": 2}),
        ("6 guppy's toegevoegd", {"guppy's": 6}),
        ("added 1 figure 8 puffer", {"figure 8 puffer": 1}),
        ("added 2 figure eight puffers", {"figure eight puffers": 2}),
        ("added two neons and 8 guppies", {"neons": 2, "guppies": 8}),
    ],
)  # fmt: skip
async def test_each_kind_of_a_row_is_kept_with_its_number(
    tmp_path: Path, said: str, held: dict[str, int]
) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, said)
        assert await stock(talk) == held


async def test_a_loss_may_be_of_those_that_go_by_a_name_of_several(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, "added 5 snails")
        (reply,) = await talk.say("lost 3 nerite snails")
        assert "on record" not in reply.text


@pytest.mark.parametrize("said", ["how many fish can i have in 100 l", "wie viele fische in 60 l"])
async def test_a_number_of_any_fish_asks_for_the_kind(tmp_path: Path, said: str) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        (reply,) = await talk.say(said)
        assert reply.text.startswith("That depends on the kind.")


@pytest.mark.parametrize(
    ("said", "left"),
    [
        ("all my shrimp died except 2", 2),
        ("half of my shrimp died", 5),
        ("shrimp all died after i fixed the pipes", 0),
        ("all shrimp died", 0),
    ],
)
async def test_the_dead_are_counted_by_those_on_record(
    tmp_path: Path, said: str, left: int
) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, "added 10 shrimp")
        (reply,) = await talk.say(said)
        assert ("copper before anything else" in reply.text) == ("pipes" in said)
        assert "except" not in reply.text
        assert (await stock(talk)).get("shrimp", 0) == left


@pytest.mark.parametrize(
    "said",
    [
        "alle Neons gestorben außer 2",
        "tous les néons morts sauf 2",
        "todos los neones murieron menos 2",
        "tutti i neon morti tranne 2",
        "alle neons dood behalve 2",
        "wszystkie neony padły oprócz 2",
        "todos os neons morreram exceto 2",
        "alla neon dog utom 2",
    ],
)
async def test_who_is_left_is_told_in_every_language(tmp_path: Path, said: str) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, "added 10 neons")
        await talk.say(said)
        assert await stock(talk) == {"neons": 2}


@pytest.mark.parametrize("said", ["all my shrimp died except 2", "half of my shrimp died"])
async def test_who_has_no_number_on_record_is_asked_how_many_died(
    tmp_path: Path, said: str
) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, "added 9 shrimp" if "half" in said else "added 6 neons")
        (reply,) = await talk.say(said)
        assert reply.text.startswith("How many shrimp died? Nothing is stored yet")
        assert "lost 4 shrimp" in await talk.text("4")


async def test_what_went_before_a_death_is_no_kind(tmp_path: Path) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        text = await talk.text("fish died after i added the new pleco")
        assert "lost after" not in text
        assert "No after" not in text


@pytest.mark.parametrize("said", ["added limestone", "added crushed coral", "added shells"])
async def test_lime_that_went_in_raises_slowly(tmp_path: Path, said: str) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk)
        assert "KH, GH and pH will rise slowly" in await talk.text(said)
        await talk.say("kh 16 gh 20 ph 8.4 temp 25")
        assert "it will do nothing here" in await talk.text(said)


@pytest.mark.parametrize("said", ["added a filter", "added 5 plants", "added sand"])
async def test_things_are_no_animals(tmp_path: Path, said: str) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, "added 10 neons")
        (reply,) = await talk.say(said)
        assert reply.facts["events"][0]["kind"] == "media"
        assert await stock(talk) == {"neons": 10}


@pytest.mark.parametrize("said", ["how many neons", "how many neons left", "wie viele neons noch"])
async def test_after_a_death_the_number_on_record_is_told_first(tmp_path: Path, said: str) -> None:
    async with talking(tmp_path) as talk:
        await with_fern(talk, "added 10 neons", "2 neons died")
        (reply,) = await talk.say(said)
        assert reply.facts["stock"] == {"Fern": {"neons": 8}}
        assert "8" in reply.text.splitlines()[0]
