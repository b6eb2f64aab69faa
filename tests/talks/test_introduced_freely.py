"""Tanks introduced among other words: greetings, equipment, how long it has been running."""

from __future__ import annotations

from typing import Any

import pytest

from bot.chat.model import Reply
from tests.chat.harness import Talk


async def living(talk: Talk) -> dict[str, dict[str, int | None]]:
    """Who lives in each tank; None where nobody told how many."""
    (reply,) = await talk.say("/stock")
    held: dict[str, dict[str, int | None]] = {
        name: dict(each) for name, each in reply.facts["stock"].items()
    }
    for name, kinds in reply.facts.get("uncounted", {}).items():
        held[name] |= dict.fromkeys(kinds)
    return held


async def tanks(talk: Talk) -> list[dict[str, Any]]:
    (listed,) = await talk.say("/tank")
    return list(listed.facts["tanks"])


def values(replies: list[Reply]) -> dict[str, float]:
    return {
        value["analyte"]: value["canonical"]
        for reply in replies
        for value in reply.facts.get("values", ())
    }


@pytest.mark.parametrize(
    ("text", "volume", "kind", "animals"),
    [
        (
            "got a betta for my daughter, 20l with heater and a little sponge filter",
            20.0, "fresh", {"betta": 1},
        ),
        ("hi just set up a 20 litre for a betta", 20.0, "fresh", {"betta": 1}),
        ("20l betta tank new 5 days", 20.0, "fresh", {"betta": None}),
        ("120l planted, 12 neons and 6 corys", 120.0, "fresh", {"neons": 12, "corys": 6}),
        (
            "2 fancy goldfish in 100l, filter is an internal one",
            100.0, "fresh", {"fancy goldfish": 2},
        ),
        ("reef 200l, mostly lps", 200.0, "marine", {"lps": None}),
        (
            "200 l reef, torch and hammers",
            200.0, "marine", {"torch coral": None},
        ),
        (
            "bonsoir, j'ai un bac planté de 100 litres avec des néons et des corydoras",
            100.0, "fresh", {"néons": None, "corydoras": None},
        ),
        ("moin, 60l pflanzenbecken läuft seit 2 wochen", 60.0, "fresh", {}),
        ("cześć, mam krewetkarium 30 litrów, neocaridina", 30.0, "fresh", {"neocaridina": None}),
        ("hola, acuario de 80 litros con calentador, 6 guppies", 80.0, "fresh", {"guppies": 6}),
        ("ciao, ho un acquario da 60 litri avviato da 3 settimane, 5 guppy", 60.0, "fresh",
         {"guppy": 5}),
        ("boa noite, tenho um aquário de 100 litros (filtro externo), 8 neons", 100.0, "fresh",
         {"neons": 8}),
        ("goedenavond, bak van 120 liter met verwarming, 10 neons", 120.0, "fresh", {"neons": 10}),
        ("hejsan, 60 liter akvarium igång sedan 2 veckor, 6 guppies", 60.0, "fresh",
         {"guppies": 6}),
        ("hallo, 200 l riffbecken mit abschäumer, 2 clownfische", 200.0, "marine",
         {"clownfische": 2}),
        ("450 l discus tank, 6 adults", 450.0, "fresh", {"discus": 6}),
        ("i've got a 100 l with 6 corys, hob filter and sand", 100.0, "fresh", {"corys": 6}),
        ("nano reef 60 l, 2 clowns, some zoas", 60.0, "marine", {"clowns": 2, "zoas": None}),
        ("tanganyika tank 240 l", 240.0, "fresh", {}),
    ],
)  # fmt: skip
async def test_volume_water_and_animals_are_kept_whatever_stands_beside(
    talk: Talk, text: str, volume: float, kind: str, animals: dict[str, int | None]
) -> None:
    await talk.say(text)
    (tank,) = await tanks(talk)
    (shown,) = await talk.say(f"/tank {tank['tank']}")
    assert (shown.facts["volume_l"], shown.facts["kind"]) == (volume, kind)
    assert (await living(talk))[tank["tank"]] == animals


@pytest.mark.parametrize(
    ("text", "day"),
    [
        ("20l betta tank new 5 days", "2026-02-24"),
        ("moin, 60l pflanzenbecken läuft seit 2 wochen", "2026-02-15"),
        ("hi just set up a 20 litre for a betta", "2026-03-01"),
        ("60 l planted tank, 2 weeks old, some odd plant", "2026-02-15"),
    ],
)
async def test_how_long_it_has_been_running_is_kept(talk: Talk, text: str, day: str) -> None:
    made, *_rest = await talk.say(text)
    assert made.facts["set_up"] == day


@pytest.mark.parametrize(
    ("text", "read", "animals"),
    [
        ("450 l discus tank, 6 adults, 29c", {"temperature": 29.0}, {"discus": 6}),
        (
            "shrimp nano 30l, neocaridina, gh 7 kh 3",
            {"gh": 7.0, "kh": 3.0}, {"neocaridina": None},
        ),
    ],
)  # fmt: skip
async def test_readings_beside_are_kept_with_the_animals(
    talk: Talk, text: str, read: dict[str, float], animals: dict[str, int | None]
) -> None:
    assert values(await talk.say(text)) == read
    assert await living(talk) == {"Tank": animals}


async def test_what_carries_a_number_and_is_not_understood_is_named(talk: Talk) -> None:
    *_kept, left = await talk.say("hi, 60l planted, 3 wibbles, 6 neons")
    assert "3 wibbles" in left.text
    text = await talk.text("20l betta tank for my daughter")
    assert "daughter" not in text


@pytest.mark.parametrize(
    ("text", "animals"),
    [
        ("12 goldfish in there, 5 shubunkins", {"goldfish": 17}),
        ("2 goldies", {"goldies": 2}),
    ],
)
async def test_animals_of_no_tank_yet_are_kept_and_the_volume_is_asked(
    talk: Talk, text: str, animals: dict[str, int | None]
) -> None:
    await talk.say(text)
    await talk.say("100 l")
    assert await living(talk) == {"Tank": animals}
    assert (await talk.facts("/tank Tank"))["volume_l"] == 100.0


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("2 becken: das große hat 200 liter und das kleine 54", {"Big": 200.0, "Small": 54.0}),
        (
            "ich hab zwei becken, wohnzimmer 200 l und büro 54 l",
            {"wohnzimmer": 200.0, "büro": 54.0},
        ),
        ("dos acuarios: grande 120 l y gambario 25 l", {"grande": 120.0, "gambario": 25.0}),
        ("two tanks, 60l shrimp and 180l community", {"Shrimp": 60.0, "Community": 180.0}),
        ("two tanks: reef 200l and planted 90 l", {"Reef": 200.0, "Planted": 90.0}),
        ("two tanks: betta tank 20 l and guppy 60 l", {"Betta": 20.0, "Guppy": 60.0}),
        (
            "i have 3 tanks. reef 200l, planted 90 l, shrimp 30l",
            {"Reef": 200.0, "Planted": 90.0, "Shrimp": 30.0},
        ),
        (
            "ich hab 3 becken: riff 200 l, pflanzen 90 l, garnelen 30 l",
            {"Riff": 200.0, "Pflanzen": 90.0, "Garnelen": 30.0},
        ),
        (
            "j'ai 3 bacs: recifal 200 l, plante 90 l, crevettes 30 l",
            {"Recifal": 200.0, "Plante": 90.0, "Crevettes": 30.0},
        ),
        ("deux bacs, salon 200 l et bureau 54 l", {"salon": 200.0, "bureau": 54.0}),
        ("due acquari: salotto 120 l e studio 30 l", {"salotto": 120.0, "studio": 30.0}),
        ("dois aquários: sala 120 l e quarto 30 l", {"sala": 120.0, "quarto": 30.0}),
        ("twee bakken, woonkamer 200 l en kantoor 54 l", {"woonkamer": 200.0, "kantoor": 54.0}),
        ("dwa akwaria: salon 200 l i biuro 54 l", {"salon": 200.0, "biuro": 54.0}),
        ("två akvarier, hallen 200 l och köket 54 l", {"hallen": 200.0, "köket": 54.0}),
        ("kitchen 200 l and bedroom 54 l", {"kitchen": 200.0, "bedroom": 54.0}),
        (
            "i have 2 tanks, a 200 litre rift tank called Lake and a 40 l one called Shrimpy",
            {"Lake": 200.0, "Shrimpy": 40.0},
        ),
        ("2 ponds: front 2000l back 6000l", {"front": 2000.0, "back": 6000.0}),
        ("i have two ponds, upper 900 l and lower 4000 l", {"upper": 900.0, "lower": 4000.0}),
        ("2 tanks: kitchen 100 l hall 50 l", {"kitchen": 100.0, "hall": 50.0}),
        ("tank 1 60 l, tank 2 90 l", {"tank 1": 60.0, "tank 2": 90.0}),
        ("tanks: A 100l, B 100l", {"A": 100.0, "B": 100.0}),
        ("tank Tang 300 l and tank Shell 90 l", {"Tang": 300.0, "Shell": 90.0}),
        ("in der küche 200 l und im wohnzimmer 54 l", {"küche": 200.0, "wohnzimmer": 54.0}),
    ],
)
async def test_two_tanks_of_one_sentence_have_their_names(
    talk: Talk, text: str, names: dict[str, float]
) -> None:
    await talk.say(text)
    assert {each["tank"]: each["volume_l"] for each in await tanks(talk)} == names
    await talk.say(text)
    assert len(await tanks(talk)) == len(names)


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("i have 3 tanks, 100 l, 90 l and 80 l", ["Tank", "Tank 2", "Tank 3"]),
        (
            "i have 4 tanks: betta 20 l, betta 30 l, guppies 60l and a 300 l reef",
            ["Tank", "Tank 2", "Guppies", "Reef"],
        ),
        ("two tanks: fern 90 l and fern 60 l", ["fern", "fern 2"]),
    ],
)
async def test_no_two_tanks_of_one_sentence_get_one_name(
    talk: Talk, text: str, names: list[str]
) -> None:
    await talk.say(text)
    assert [each["tank"] for each in await tanks(talk)] == names


async def test_a_tank_told_by_its_place_or_number_is_one_of_its_own(talk: Talk) -> None:
    for line in ("rack 2 300 l", "rack 3 300 l", "left tank 60 l", "the right tank is 250 l"):
        await talk.say(line)
    held = {each["tank"]: each["volume_l"] for each in await tanks(talk)}
    assert held == {"left": 60.0, "right": 250.0, "rack 2": 300.0, "rack 3": 300.0}


@pytest.mark.parametrize(
    "text", ["tank Coral 100 l kh 5", "tank Malawi 100 l", "tank Lake 100l", "tank Shrimpy 100 l"]
)
async def test_a_capital_makes_a_name_of_a_word_for_animals_or_water(talk: Talk, text: str) -> None:
    await talk.say(text)
    (held,) = await tanks(talk)
    assert (held["tank"], held["volume_l"], held["kind"]) == (text.split()[1], 100.0, "fresh")
    assert not (await living(talk))[held["tank"]]


async def test_how_much_water_it_is_counts_no_animals(talk: Talk) -> None:
    await talk.say("tank is 240 l goldfish")
    assert await living(talk) == {"Tank": {"goldfish": None}}


@pytest.mark.parametrize(
    "text", ["kitchen tank 90 l", "school tank 90 l ph 7", "kitchen 90 l, bedroom 54 l"]
)
async def test_beside_a_tank_without_a_name_it_is_asked(talk: Talk, text: str) -> None:
    await talk.say("200 l tank")
    assert "Nothing is stored yet" in await talk.text(text)
    assert [each["volume_l"] for each in await tanks(talk)] == [200.0]


@pytest.mark.parametrize(
    "text", ["changed 20 l, topped up 5 l", "display 200 l, sump 40 l", "tap 100 l, ro 50 l"]
)
async def test_no_other_list_of_litres_makes_tanks(talk: Talk, text: str) -> None:
    await talk.say("/tank new moss 30 l fresh")
    await talk.say(text)
    assert [each["tank"] for each in await tanks(talk)] == ["moss"]


async def test_tanks_that_are_only_wished_for_are_not_made(talk: Talk) -> None:
    await talk.say("i want 3 tanks. reef 200l, planted 90 l, shrimp 30l")
    assert await talk.app.names(talk.address) == []


async def test_what_is_told_of_either_goes_there(talk: Talk) -> None:
    await talk.say("ich hab zwei becken, wohnzimmer 200 l und büro 54 l")
    assert (await talk.facts("wohnzimmer no3 30 ph 7,2 kh 3"))["tank"] == "wohnzimmer"
    assert (await talk.facts("no3 im büro 20"))["tank"] == "büro"
    assert "boron" not in await talk.text("büro 15")


async def test_what_follows_works_with_the_volume(talk: Talk) -> None:
    await talk.say("got a betta for my daughter, 20l with heater and a little sponge filter")
    assert (await talk.facts("ph 7 kh 4"))["tank"] == "Tank"
    assert (await talk.facts("how much soda to kh 6"))["volume_l"] == 20.0
    assert "harass" in await talk.text("can i add 6 neons")


async def test_a_tank_told_again_is_no_second_one(talk: Talk) -> None:
    await talk.say("120l planted, 12 neons and 6 corys")
    await talk.say("120l planted, 12 neons and 6 corys")
    assert len(await tanks(talk)) == 1
    assert (await living(talk))["Tank"] == {"neons": 12, "corys": 6}


@pytest.mark.parametrize("name", ["/tank new fern 90 l fresh", "90l planted, 6 guppies"])
async def test_a_further_one_is_asked_about(talk: Talk, name: str) -> None:
    await talk.say(name)
    (asked,) = await talk.say("hi, 20l betta cube with heater, 25c")
    assert len(await tanks(talk)) == 1
    replies = await talk.press(1, asked)
    assert values(replies) == {"temperature": 25.0}
    assert [each["volume_l"] for each in await tanks(talk)] == [90.0, 20.0]


async def test_a_typed_undo_takes_the_tank_back(talk: Talk) -> None:
    await talk.say("moin, 60l pflanzenbecken läuft seit 2 wochen")
    await talk.say("undo")
    assert not await tanks(talk)


async def test_with_animals_a_typed_undo_takes_them_and_asks_about_the_tank(talk: Talk) -> None:
    await talk.say("120l planted, 12 neons and 6 corys")
    *_taken, asked = await talk.say("undo")
    assert await living(talk) == {"Tank": {}}
    await talk.press(1, asked)
    assert not await tanks(talk)


async def test_a_reading_since_is_what_undo_is_of_and_the_button_asks(talk: Talk) -> None:
    made, *_kept = await talk.say("120l planted, 12 neons and 6 corys")
    await talk.say("ph 7")
    (asked,) = await talk.press(1, made)
    assert len(await tanks(talk)) == 1
    await talk.press(2, asked)
    await talk.say("ph 7.5")
    assert "pH 7.5" in await talk.text("undo")
    assert len(await tanks(talk)) == 1


@pytest.mark.parametrize(
    "text",
    [
        "can i keep a betta in 20l",
        "hi, can i keep a betta in 20l with heater",
        "thinking of a 200l reef",
        "my friend has a 100l with guppies",
        "my brother has a 60l planted tank, 6 neons",
        "shop tank 60 l on sale",
        "need 20 l of ro",
        "pulled 20 l out of the betta tank",
        "took out 20 l, neons look fine",
        "bucket 20 l for the guppies",
        "would a 60l work for 6 neons and some shrimp",
        "hätte gern ein 200l becken mit skalaren, weiß nicht",
        "peut-être un bac de 60 litres avec des guppys",
        "mein nachbar hat ein 60l becken, 6 neons",
        "brauche 20 l osmose für die garnelen",
        "necesito 20 l para el acuario de guppies",
        "vorrei un acquario da 60 litri, 5 guppy",
        "sold a 60l planted tank",
        "20l for a betta ok",
        "filter does 600 l/h for my guppies",
        "saw a 300l reef with clownfish at work",
        "gave my daughter a 20l betta tank",
        "wylałem 20 l z akwarium, gupiki",
    ],
)
async def test_wishes_questions_deeds_and_other_tanks_make_none(talk: Talk, text: str) -> None:
    await talk.say(text)
    assert not await tanks(talk)


async def test_a_change_is_no_tank(talk: Talk) -> None:
    facts = await talk.facts("changed 20 l")
    assert facts["events"]
    assert "volume_l" not in await talk.facts("/tank Tank")


async def test_bubbles_are_co2_and_no_animals(talk: Talk) -> None:
    facts = await talk.facts("60l planted, co2 2 bubbles")
    assert (facts["kind"], facts["volume_l"]) == ("fresh", 60.0)
    assert "added" not in talk.last[0].text


async def test_readings_of_a_strip_beside_a_tank_are_asked_about(talk: Talk) -> None:
    await talk.say("120l planted community. strip says kh 80 gh 150 ph 7.2 cl 0")
    (tank,) = await tanks(talk)
    assert tank["volume_l"] == 120.0
    told = values(await talk.say("yes"))
    assert told["kh"] == pytest.approx(4.48, abs=0.01)  # 80 mg/L as CaCO3, 17.85 a °dH
    assert told["gh"] == pytest.approx(8.40, abs=0.01)
    assert told["chlorine"] == 0.0


@pytest.mark.parametrize("text", ["my tank is 120 l planted. kh 80", "60 litre betta. kh 90"])
async def test_one_reading_that_may_be_two_things_is_no_bare_yes(talk: Talk, text: str) -> None:
    await talk.say(text)
    assert not values(await talk.say("yes"))


@pytest.mark.parametrize(
    ("text", "volumes"),
    [
        ("ok i got a 10 gallon with a betta", [37.9]),
        ("hello! so i've got a 29 gallon tank with some guppies, had it about two months", [109.8]),
        ("reef tank, 300 litres with the sump", [300.0]),
        ("okay, 60 litre tank with 6 neons in it", [60.0]),
        ("got a 200l called lounge and a 60l called bedroom", [200.0, 60.0]),
    ],
)
async def test_openings_and_parts_beside_a_tank_do_not_hide_it(
    talk: Talk, text: str, volumes: list[float]
) -> None:
    made = [each.facts for each in await talk.say(text)]
    assert [round(each["volume_l"], 1) for each in made if "volume_l" in each] == volumes


@pytest.mark.parametrize(
    "text",
    ["i had a 10 gallon with a betta", "is 20 l ok", "reef tank, 300 litres with sump 40 l"],
)
async def test_what_is_over_or_has_its_own_litres_makes_no_tank(talk: Talk, text: str) -> None:
    assert not any("volume_l" in each.facts for each in await talk.say(text))


async def test_sides_are_of_the_only_tank_whose_volume_is_not_known(talk: Talk) -> None:
    await talk.say("kh 4")
    assert "49.6 L" in await talk.text("its 60 by 30 by 36 cm")


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("100 l tank, nitrite 0.5", {"nitrite": 0.5}),
        ("60 l nano, ph 7.2, nitrite 0", {"ph": 7.2, "nitrite": 0.0}),
        ("60 l tank, chlorine 0.5", {"chlorine": 0.5}),
    ],
)
async def test_a_value_beside_a_tank_is_no_animal(
    talk: Talk, text: str, told: dict[str, float]
) -> None:
    assert values(await talk.say(text)) == told
    assert not (await living(talk))["Tank"]
