"""Facts told in passing: a bag's numbers, the true volume, and what was a long time ago."""

from __future__ import annotations

import pytest

from core.advice.bags import bag_ammonia
from core.advice.state import Measured, State
from core.tank import Tank
from core.water.ammonia import un_ionised_fraction
from tests.chat.harness import START, Talk

LONG_AGO = (
    "last year it had kh 12",
    "it used to have kh 12",
    "back then kh 12",
    "two years ago kh 12",
    "letztes jahr hatte es kh 12",
    "damals kh 12",
    "l'an dernier kh 12",
    "el año pasado kh 12",
    "o ano passado kh 12",
    "l'anno scorso kh 12",
    "vorig jaar kh 12",
    "w zeszłym roku kh 12",
    "förra året kh 12",
)

VOLUME = (
    "tank is really 80 l of water",
    "das becken fasst eigentlich 80 l",
    "le bac contient en fait 80 l",
    "el acuario tiene en realidad 80 l",
    "o aquário tem na verdade 80 l",
    "l'acquario contiene in realtà 80 l",
    "eigenlijk zit er 80 l in",
    "tak naprawdę jest 80 l",
    "egentligen är det 80 l",
)


@pytest.fixture
async def home(talk: Talk) -> Talk:
    await talk.say("/tank new Home 100 l fresh")
    await talk.say("ph 7.8 kh 6 gh 10 tds 400 temp 25 ammonia 0")
    return talk


@pytest.mark.parametrize("line", LONG_AGO)
async def test_what_was_long_ago_is_never_of_now(home: Talk, line: str) -> None:
    (reply,) = await home.say(line)
    assert "values" not in reply.facts
    assert all("12" not in button.label for button in reply.buttons)
    (seen,) = await home.say("history of kh")
    assert [value["value"] for value in seen.facts["values"]] == [6.0]


@pytest.mark.parametrize("line", VOLUME)
async def test_how_much_it_holds_in_truth(home: Talk, line: str) -> None:
    (reply,) = await home.say(line)
    assert "80 L" in reply.text
    in_truth = "80 L, fresh" in reply.text  # put right at once, and can be taken back
    assert in_truth == line.startswith(("das becken", "le bac", "el acuario", "o aquário"))
    assert reply.buttons[0].label == ("undo" if in_truth else "yes, 80 L")


@pytest.mark.parametrize(
    "line", ["bag ammonia 2", "ammonia 2 in the bag", "Beutel ammoniak 2", "sac ammoniaque 2"]
)
async def test_ammonia_of_a_bag_is_judged_without_its_ph(home: Talk, line: str) -> None:
    """What it comes to once the carbon dioxide has left decides, whatever it is in the bag."""
    (reply,) = await home.say(line)
    share = un_ionised_fraction(reply.facts["ph_open"], 25.0, 0.0)
    assert reply.facts["nh3_n_open"] == pytest.approx(2.0 * share, rel=0.02)
    assert "nh3_n" not in reply.facts
    assert "Keep the bag closed" in reply.text


async def test_what_was_told_of_the_bag_before_still_counts(home: Talk) -> None:
    await home.say("bag tds 150")
    (reply,) = await home.say("bag ammonia 2 ph 6.5")
    assert "TDS 150" in reply.text
    assert reply.facts["days"] > 0
    assert reply.facts["bag"] == {"tds": 150.0, "ammonia": 2.0, "ph": 6.5}
    await home.wait(hours=5)
    (other,) = await home.say("bag ammonia 1")
    assert other.facts["bag"] == {"ammonia": 1.0}


def test_of_an_open_bag_nothing_is_known_without_a_kh() -> None:
    bag = {"ammonia": Measured("ammonia", 2.0, 2.0, 2.0, START)}
    assert bag_ammonia(bag, State(Tank(name=""), START)) is None


FORMER = (
    "ammonia was 3 two years ago",
    "nitrate was 60 last year",
    "ph was 8.5 back then",
    "ammonia was 4 when i started years ago",
    "ammonia was 2 when it cycled",
    "gh was 3 when i was on ro",
    "nitrate was 100 before i got the new filter",
    "ph was 8 at first",
    "kh was 3 years ago",
    "kh war 3 vor 5 jahren",
    "kh war 3 als ich anfing",
    "kh était 3 l'an dernier",
    "ph était 8 quand j'étais à l'osmose",
    "el ph era 8 cuando empecé",
    "il kh era 3 due anni fa",
    "o kh era 3 há dois anos",
    "kh was 3 vorig jaar",
    "ph było 8 kiedy zaczynałem",
    "ph var 8 när jag började",
)


@pytest.mark.parametrize("line", FORMER)
async def test_a_vague_time_behind_a_value_makes_it_an_earlier_one(talk: Talk, line: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    (reply,) = await talk.say(line)
    assert "values" not in reply.facts
    assert "events" not in reply.facts
    assert reply.facts["doubts"][0]["reason"] == "past"


async def test_what_is_told_of_now_beside_it_is_kept(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    replies = await talk.say("kh was 3 last year, kh 5 now")
    told = [value["value"] for each in replies for value in each.facts.get("values", ())]
    assert told == [5.0]


@pytest.mark.parametrize("line", ["kh was 2 before i added 5 g soda", "kh 3 last night"])
async def test_a_time_that_is_known_is_no_vague_one(talk: Talk, line: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    (kept, *_) = await talk.say(line)
    assert kept.facts["values"]
