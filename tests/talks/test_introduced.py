"""A tank told together with what is in it, in one message."""

from __future__ import annotations

import pytest

from bot.chat.model import Reply
from tests.chat.harness import Talk


def stock(replies: list[Reply]) -> dict[str, dict[str, int]]:
    (reply,) = replies
    return dict(reply.facts["stock"])


@pytest.mark.parametrize(
    ("text", "name", "volume", "animals"),
    [
        ("tank Fern 90 l, 6 guppies", "Fern", 90.0, {"guppies": 6}),
        ("tank Fern 90 l with 6 guppies and 2 corys", "Fern", 90.0, {"guppies": 6, "corys": 2}),
        ("tank Hall 180 l, 6 guppies", "Hall", 180.0, {"guppies": 6}),
        ("new tank Attic 54 l 10 neons", "Attic", 54.0, {"neons": 10}),
        ("/tank new Attic 54 l fresh, 10 neons", "Attic", 54.0, {"neons": 10}),
        ("my tank is 180 l with 6 guppies", "Tank", 180.0, {"guppies": 6}),
        ("i have a 60 l tank with 10 neons", "Tank", 60.0, {"neons": 10}),
        ("neues Becken Flur 180 l, 6 Guppys", "Flur", 180.0, {"guppys": 6}),
        ("nouvel aquarium Salon 180 litres avec 6 guppys", "Salon", 180.0, {"guppys": 6}),
        ("acuario Sala 100 l con 10 guppies", "Sala", 100.0, {"guppies": 10}),
        ("aquário Sala 100 l com 4 guppies", "Sala", 100.0, {"guppies": 4}),
        ("acquario Studio 60 l con 5 guppy", "Studio", 60.0, {"guppy": 5}),
        ("bak Zolder 60 l met 10 guppies", "Zolder", 60.0, {"guppies": 10}),
        ("akwarium 112 l z 10 gupikami", "Tank", 112.0, {"gupikami": 10}),
        ("akwarium Salon 112 l i 10 guppy", "Salon", 112.0, {"guppy": 10}),
        ("akvarium Hallen 180 l med 6 guppys", "Hallen", 180.0, {"guppys": 6}),
        ("80 l mit Leitungswasser, 10 Neons", "Tank", 80.0, {"Neons": 10}),
    ],
)
async def test_it_is_made_and_its_animals_are_kept(
    talk: Talk, text: str, name: str, volume: float, animals: dict[str, int]
) -> None:
    made, kept = await talk.say(text)
    assert (made.facts["tank"], made.facts["volume_l"]) == (name, volume)
    assert kept.buttons
    assert stock(await talk.say("/stock")) == {name: animals}


@pytest.mark.parametrize(
    ("text", "name", "volume", "animals"),
    [
        (
            "hi, got a 54 litre tank, its called Window, with 8 ember tetras and 10 cherry shrimps",
            "Window", 54.0, {"ember tetras": 8, "cherry shrimps": 10},
        ),
        (
            "ich habe ein 112 Liter Becken namens Diele mit 10 Neons und 6 Panzerwelsen",
            "Diele", 112.0, {"neons": 10, "panzerwelsen": 6},
        ),
        (
            "ho un acquario da 120 litri con 8 scalari giovani e 10 cardinali",
            "Tank", 120.0, {"scalari": 8, "cardinali": 10},
        ),
        (
            "ik heb een bak van 200 liter met 20 neons en 6 guppies",
            "Tank", 200.0, {"neons": 20, "guppies": 6},
        ),
        ("we have 2 fancy goldfish in a 120 l tank", "Tank", 120.0, {"fancy goldfish": 2}),
        ("new tank: Lagoon, 200 l, marine, 2 clownfish", "Lagoon", 200.0, {"clownfish": 2}),
    ],
)  # fmt: skip
async def test_a_free_sentence_makes_it_too(
    talk: Talk, text: str, name: str, volume: float, animals: dict[str, int]
) -> None:
    made, *_kept = await talk.say(text)
    assert (made.facts["tank"], made.facts["volume_l"]) == (name, volume)
    assert stock(await talk.say("/stock")) == {name: animals}


async def test_what_of_a_sentence_is_not_understood_is_told(talk: Talk) -> None:
    text = "I keep an axolotl in a 100 l tank, temperature 22C, ph 7.4, kh 6, gh 10, nitrate 60"
    made, kept, left = await talk.say(text)
    assert made.facts["volume_l"] == 100.0
    assert {value["analyte"] for value in kept.facts["values"]} == {
        "temperature", "ph", "kh", "gh", "nitrate"
    }  # fmt: skip
    assert "axolotl" in left.text


@pytest.mark.parametrize(
    "text",
    [
        "i changed 20 l in my tank, kh 4",
        "my tank lost 20 l, kh 4",
        "topped up 10 l in the tank, 6 guppies",
        "my neighbour has a 60 l tank with 6 guppies",
        "i have a 60 l tank with 6 guppies",
        "i poured 5 l into the tank, kh 4",
        "dose 5 g soda in a 60 l tank, kh 4",
    ],
)
async def test_a_tank_on_record_keeps_its_volume_and_its_animals(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say(text)
    assert (await talk.facts("/tank Fern"))["volume_l"] == 90.0
    assert stock(await talk.say("/stock")) == {"Fern": {}}


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("6 corydoras and 10 neons. gh 3, kh 3, ph 7, 25c", "6 corydoras, 10 neons"),
        ("8 Skalare. KH 12, GH 18", "8 skalare"),
        ("kh 3, ph 7, 8 zebra danios", "8 zebra danios"),
        ("10 goudvissen, ph 7,5 kh 6 temp 20", "10 goudvissen"),
    ],
)
async def test_animals_beside_readings_are_asked_about_and_the_readings_kept(
    talk: Talk, text: str, asked: str
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    kept, living = await talk.say(text)
    assert any(value["analyte"] == "kh" for value in kept.facts["values"])
    assert f"Do these live in Fern: {asked}?" in living.text
    await talk.say("yes")
    assert sum(stock(await talk.say("/stock"))["Fern"].values()) > 0


@pytest.mark.parametrize(
    ("text", "animals"),
    [
        ("10 neons, 20 neocaridina shrimps", {"neons": 10, "neocaridina": 20}),
        ("angelfish x4, 10 rummynose", {"angelfish": 4, "rummynose": 10}),
        ("10 neons en 6 guppies", {"neons": 10, "guppies": 6}),
    ],
)
async def test_a_loose_list_is_asked_about(talk: Talk, text: str, animals: dict[str, int]) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert (await talk.facts(text))["animals"] == animals


@pytest.mark.parametrize(
    "text",
    [
        "tank Loft 60 l, kh 4, 8 guppies",
        "tank Loft 60 l, 8 guppies, kh 4",
        "tank Loft 60 l\n8 guppies\nkh 4",
    ],
)
async def test_readings_and_animals_are_kept_in_any_order(talk: Talk, text: str) -> None:
    made, kept = await talk.say(text)
    (value,) = kept.facts["values"]
    assert (made.facts["tank"], value["analyte"]) == ("Loft", "kh")
    assert stock(await talk.say("/stock")) == {"Loft": {"guppies": 8}}


async def test_what_is_told_behind_a_new_tank_is_not_the_old_ones(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("added 6 guppies")
    await talk.say("tank Hall 180 l, lost 2 guppies")
    assert stock(await talk.say("/stock"))["Fern"] == {"guppies": 6}
    await talk.say("tank Den 60 l, kh 3")
    facts = await talk.facts("dose kh 4")
    assert facts["tank"] == "Den"


@pytest.mark.parametrize(
    "text",
    [
        "my tank is 80 l, is that ok for 6 neons",
        "is a 60 l tank enough, 6 guppies?",
        "how many guppies fit a 60 l tank",
        "my 60 l tank lost 2 neons",
    ],
)
async def test_a_question_or_a_loss_adds_no_animal(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("added 9 neons")
    await talk.say(text)
    assert "guppies" not in (held := stock(await talk.say("/stock"))["Fern"])
    assert held.get("neons", 0) <= 9


async def test_what_is_no_tank_keeps_nothing_behind_it(talk: Talk) -> None:
    await talk.say("/tank new Attic 54 l fresh")
    (refused,) = await talk.say("tank Fern 0 l, 6 guppies")
    assert not refused.buttons
    assert stock(await talk.say("/stock")) == {"Attic": {}}


@pytest.mark.parametrize(
    ("text", "name", "volume", "kinds"),
    [
        ("got a 120l community tank, tetras and corys", "Tank", 120.0, ["tetras", "corys"]),
        ("30l shrimp tank called pico", "pico", 30.0, ["shrimp"]),
        ("ich hab ein 200l becken mit skalaren", "Tank", 200.0, ["skalaren"]),
        ("j'ai un bac de 100 litres avec des guppys", "Tank", 100.0, ["guppys"]),
        ("ik heb een 60 liter bak met garnalen", "Tank", 60.0, ["garnalen"]),
        ("tengo un acuario de 80 litros con guppys", "Tank", 80.0, ["guppys"]),
        ("tenho um aquário de 100 litros com camarões", "Tank", 100.0, ["camarões"]),
        ("ho un acquario di 60 litri con guppy", "Tank", 60.0, ["guppy"]),
        ("mam akwarium 112 litrów i gupiki", "Tank", 112.0, ["gupiki"]),
        ("jag har ett 60 liters akvarium med räkor", "Tank", 60.0, ["räkor"]),
    ],
)
async def test_animals_without_a_number_are_kept_as_kinds(
    talk: Talk, text: str, name: str, volume: float, kinds: list[str]
) -> None:
    made, *_kept, asked = await talk.say(text)
    assert (made.facts["tank"], made.facts["volume_l"]) == (name, volume)
    assert kinds[0] in asked.text
    (living,) = await talk.say("/stock")
    assert living.facts["uncounted"] == {name: kinds}
    assert living.facts["stock"] == {name: {}}


@pytest.mark.parametrize(
    ("text", "name", "volume", "kind"),
    [
        ("tank jungle 120l planted with co2", "jungle", 120.0, "fresh"),
        ("aquarium salon 200 l eau douce", "salon", 200.0, "fresh"),
        ("bak zee 200 l zout", "zee", 200.0, "marine"),
        ("zweites becken büro 54l", "büro", 54.0, "fresh"),
    ],
)
async def test_words_for_the_water_may_stand_behind_the_volume(
    talk: Talk, text: str, name: str, volume: float, kind: str
) -> None:
    facts = await talk.facts(text)
    assert (facts["tank"], facts["volume_l"], facts["kind"]) == (name, volume, kind)


async def test_a_kind_that_is_there_counts_as_one_where_one_is_told(talk: Talk) -> None:
    await talk.say("my betta is in 20 litres")
    assert stock(await talk.say("/stock")) == {"Tank": {"betta": 1}}


async def test_a_kind_without_a_number_is_never_called_too_few_and_no_loss_takes_it(
    talk: Talk,
) -> None:
    replies = await talk.say("got a 60l tank with neons")
    found = [each for reply in replies for each in reply.facts.get("findings", ())]
    assert "few_of_a_shoal" not in {each["id"] for each in found}
    await talk.say("lost 1 neon")
    (living,) = await talk.say("/stock")
    assert living.facts["uncounted"] == {"Tank": ["neons"]}


@pytest.mark.parametrize("many", [1, 8])
async def test_a_number_told_later_is_all_that_there_are(talk: Talk, many: int) -> None:
    await talk.say("got a 60l tank with neons")
    await talk.say(f"{many} neons")
    await talk.press(1)
    (living,) = await talk.say("/stock")
    assert stock([living]) == {"Tank": {"neons": many}}
    assert "uncounted" not in living.facts


async def test_two_tanks_are_told_at_once(talk: Talk) -> None:
    await talk.say("i have a 60l planted and a 180l with discus")
    (listed,) = await talk.say("/tank")
    assert [each["volume_l"] for each in listed.facts["tanks"]] == [60.0, 180.0]
    (living,) = await talk.say("/stock")
    assert living.facts["uncounted"] == {"Discus": ["discus"]}


async def test_a_further_tank_is_asked_about_and_made_on_yes(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (asked,) = await talk.say("got a 120l community tank, tetras and corys")
    assert len((await talk.facts("/tank"))["tanks"]) == 1
    made, *_kept = await talk.press(1, asked)
    assert made.facts["volume_l"] == 120.0
    assert [each["volume_l"] for each in (await talk.facts("/tank"))["tanks"]] == [90.0, 120.0]


async def test_an_introduction_is_taken_back_by_its_button(talk: Talk) -> None:
    made, *_kept = await talk.say("30l shrimp tank called pico")
    await talk.press(1, made)
    (listed,) = await talk.say("/tank")
    assert not listed.facts["tanks"]


@pytest.mark.parametrize("text", ["neocaridina in there", "axolotl in there", "drin sind guppys"])
async def test_who_is_in_there_is_kept_in_the_tank_in_use(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say(text)
    (living,) = await talk.say("/stock")
    assert len(living.facts["uncounted"]["Fern"]) == 1


@pytest.mark.parametrize(
    "text",
    [
        "can i keep tetras in a 120 l tank",
        "is a betta ok in 20 l tank",
        "i want to get a 200l tank",
        "thinking about a 60l tank with guppies",
        "ich will ein 200l becken mit skalaren",
        "my friend has a 60l tank with guppies",
        "the shop has a 60l tank with guppies",
        "salt for 60 l betta tank",
        "20 l fresh water",
        "no fish in there",
    ],
)
async def test_questions_plans_and_other_peoples_tanks_make_none(talk: Talk, text: str) -> None:
    await talk.say(text)
    (listed,) = await talk.say("/tank")
    assert not listed.facts["tanks"]


@pytest.mark.parametrize("text", ["akwarium 100 l z gupikami", "there are guppies in 100 l"])
async def test_an_undo_asks_whether_the_tank_goes_as_well(talk: Talk, text: str) -> None:
    await talk.say(text)
    assert (await talk.say("/tank"))[0].facts["tanks"][0]["volume_l"] == 100
    *_taken, asked = await talk.say("undo")
    assert "as well?" in asked.text
    assert (await talk.say("/tank"))[0].facts["tanks"]  # nothing goes before it is answered
    await talk.press(1, asked)
    assert not (await talk.say("/tank"))[0].facts["tanks"]


async def test_an_undo_of_something_later_asks_of_no_tank(talk: Talk) -> None:
    await talk.say("there are guppies in 100 l")
    await talk.wait(minutes=5)
    await talk.say("kh 4")
    assert "as well?" not in await talk.text("undo")


@pytest.mark.parametrize(
    ("text", "litres"),
    [
        ("i have a 20 gallon tank with guppies and tap water", 75.7),
        ("got a 10g shrimp tank cherry shrimp", 37.9),
        ("40l caridina tank, ro water", 40.0),
        ("60 litre planted tank with co2", 60.0),
        ("54 l acquario con acqua del rubinetto, guppy", 54.0),
    ],
)
async def test_what_it_is_filled_with_hides_no_tank(talk: Talk, text: str, litres: float) -> None:
    await talk.say(text)
    (tank,) = await talk.say("/tank Tank")
    assert tank.facts["volume_l"] == pytest.approx(litres, abs=0.05)


@pytest.mark.parametrize(
    "text",
    ["i have 40 l ro water and 2 neons", "my tank got 20 l ro water", "10g soda in the tank"],
)
async def test_so_much_of_a_water_or_a_salt_is_no_tank(talk: Talk, text: str) -> None:
    await talk.say(text)
    assert "undo the tank" not in await talk.text("/tank")
    assert " L" not in await talk.text("/tank")


@pytest.mark.parametrize(
    ("text", "tanks"),
    [
        ("i got discus in 300l and a reef of 120", [(300, "fresh"), (120, "marine")]),
        ("i have discus in 300 l and a reef in 120 l", [(300, "fresh"), (120, "marine")]),
        ("i have a reef of 120 and 300 l discus", [(120, "marine"), (300, "fresh")]),
        ("i have a 54 l tank and a pond of 3000", [(54, "fresh"), (3000, "pond")]),
        ("ich habe diskus in 300 l und ein riff mit 120", [(300, "fresh"), (120, "marine")]),
        ("i have a 60l with neons and corys and a 120 l reef", [(60, "fresh"), (120, "marine")]),
        ("i have 300l discus and 5 corys", [(300, "fresh")]),
        ("i have a 100 l reef of 2 years", [(100, "marine")]),
    ],
)
async def test_each_of_two_has_its_own_water(
    talk: Talk, text: str, tanks: list[tuple[float, str]]
) -> None:
    await talk.say(text)
    made = (await talk.facts("/tank"))["tanks"]
    assert [(tank["volume_l"], tank["kind"]) for tank in made] == tanks


async def test_a_bare_number_is_in_the_unit_of_the_other(talk: Talk) -> None:
    await talk.say("i have discus in 75 gallons and a reef of 20")
    made = (await talk.facts("/tank"))["tanks"]
    assert [round(tank["volume_l"] / 3.785) for tank in made] == [75, 20]


@pytest.mark.parametrize("tail", ["he looks fine", "she is ok", "they look fine"])
async def test_how_it_looks_hides_neither_tank_nor_reading(talk: Talk, tail: str) -> None:
    await talk.say(f"20 litre betta ammonia 4 {tail}")
    (tank,) = (await talk.facts("/tank"))["tanks"]
    assert tank["volume_l"] == 20
    assert "ammonia 4" in await talk.text("tanks")


@pytest.mark.parametrize(
    "text",
    ["lounge 180l kh 6 ph 7.4", "and a qt 40l kh 6", "and a 40l qt, kh 6", "180l kh 6 ph 7.4"],
)
async def test_values_beside_another_volume_are_not_of_the_tank_in_use(
    talk: Talk, text: str
) -> None:
    await talk.say("tank 80l kh 5")
    (asked,) = await talk.say(text)
    assert asked.text.startswith("Is that another tank")
    (made, kept) = await talk.say("yes")
    assert "Added" in made.text
    assert "KH 6" in kept.text
    assert "KH 6" not in " ".join(each.text for each in await talk.say("show tank"))


@pytest.mark.parametrize("text", ["changed 20l kh 6", "yesterday 20 l changed, kh 6"])
async def test_litres_of_a_change_or_its_own_are_of_the_tank_in_use(talk: Talk, text: str) -> None:
    await talk.say("tank 80l kh 5")
    told = " ".join(each.text for each in await talk.say(text))
    assert "another tank" not in told
    assert "KH 6" in told


async def test_two_tanks_are_called_by_their_own_words(talk: Talk) -> None:
    await talk.say("I have 2 tanks. a 200l community and a 54l betta tank")
    told = [e.text for e in await talk.say("community kh 3 ph 6.8, betta kh 2 ph 6.6")]
    assert told[0].startswith("Community: KH 3")
    assert told[1].startswith("Betta: KH 2")


async def test_a_word_that_tells_only_one_of_two_names_none(talk: Talk) -> None:
    told = " ".join(e.text for e in await talk.say("i have 2 tanks, 120l and 60l betta"))
    assert "Added Big" in told


async def test_a_bare_number_behind_a_tank_and_another_ones_value_are_both_kept(
    talk: Talk,
) -> None:
    await talk.say("sons room 60l and quarantine 25l")
    await talk.say("sons room kh 2")
    (kept, asked) = await talk.say("sons room is 3 now, quarantine ammonia 0")
    assert kept.text == "quarantine: ammonia 0 mg/L"
    assert "Did you mean sons room: KH 3?" in asked.text
    (told,) = await talk.say("yes")
    assert "KH 3" in told.text


@pytest.mark.parametrize(
    "text",
    [
        "Ammonia 0.5 nitrite 1 nitrate 5 tank is 3 weeks old",
        "tank is 3 weeks old, ammonia 0.5 nitrite 1",
        "3 week old tank, ammonia 0.5, nitrite 1",
    ],
)
async def test_readings_beside_the_age_of_a_first_tank_are_kept(talk: Talk, text: str) -> None:
    told = [each.text for each in await talk.say(text)]
    assert "Nitrite 1 mg/L" in told[0]
    assert "set up" in told[-1]


async def test_what_went_in_is_of_the_tank_spoken_of_and_of_its_day(talk: Talk) -> None:
    await talk.say("i've got 2 tanks, lounge 180l and kids room 25l")
    await talk.say("lounge kh 5 ph 7.4")
    await talk.say("how much buffer for the lounge to kh 6")
    (asked,) = await talk.say("and the kids one")
    assert asked.text.startswith("kids room: I need the KH")
    (open_,) = await talk.say("my son says he dumped some in there yesterday, half a cup")
    assert open_.text.startswith("kids room:")
    told = await talk.say("6 g baking soda")
    assert told[0].text.startswith("kids room (yesterday")


@pytest.mark.parametrize(
    ("text", "volumes"),
    [
        (
            "i have 3 tanks: Betty 40 l, Cube 30 l and Big one 240 l",
            {"Betty": 40, "Cube": 30, "Big one": 240},
        ),
        ("my tanks are Neo 60 l, Guppy 80 l, Long one 100 l", {"Neo": 60, "Guppy": 80}),
        ("2 tanks: blue 100l, green one 50l", {"blue": 100, "green one": 50}),
        ("my tanks: kitchen, 40 litres; hall, 100 litres", {"kitchen": 40, "hall": 100}),
        ("betty 40 l, cube 30 l", {"betty": 40, "cube": 30}),
        ("2 becken: Küche 54 l, Nano 20 l", {"Küche": 54, "Nano": 20}),
    ],
)
async def test_a_list_of_names_makes_tanks_so_called(
    talk: Talk, text: str, volumes: dict[str, float]
) -> None:
    made = await talk.say(text)
    held = {each.facts["tank"]: each.facts["volume_l"] for each in made}
    assert volumes.items() <= held.items()
    assert not any("added" in each.text for each in made)


@pytest.mark.parametrize(
    "text", ["2 tanks: shrimp 30 l and betta 60 l", "i have 2 tanks, reef 200 l and planted 90 l"]
)
async def test_a_list_of_what_lives_there_keeps_it(talk: Talk, text: str) -> None:
    made = await talk.text(text)
    assert "added" in made or "marine" in made


async def test_each_of_a_list_keeps_its_own_values(talk: Talk) -> None:
    await talk.say("i have 3 tanks: Betty 40 l, Cube 30 l and Big one 240 l")
    kept = await talk.say("betty kh 2, cube kh 4, big one kh 3")
    values = {each.facts["tank"]: each.facts["values"][0]["value"] for each in kept}
    assert values == {"Betty": 2, "Cube": 4, "Big one": 3}
    plan = await talk.text("how much baking soda for big one to get to 6")
    assert "Big one (240 L): KH 3 → 6" in plan
