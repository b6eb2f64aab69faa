"""How much a tank holds, told in nine languages with nothing else; the words are ours."""

from __future__ import annotations

import pytest

from core.message.how_full import how_full, may_tell_volume
from core.message.volume_said import gallons_told, volume_alone, volume_told


@pytest.mark.parametrize(
    "text",
    [
        "its only 70 l actually",
        "it's 70 l",
        "it only holds 70 l",
        "there are only 70 l in it",
        "the volume is 70 l",
        "it's 70 l, not 90",
        "not 90 but 70 l",
        "actually 70 l",
        "no, 70 l",
        "70 l net",
        "es sind eigentlich nur 70 Liter",
        "nicht 90 sondern 70 l",
        "ce n'est que 70 l",
        "en fait 70 l",
        "solo son 70 l",
        "en realidad 70 l",
        "são só 70 litros",
        "na verdade são 70 l",
        "in realtà sono 70 l",
        "het is maar 70 l",
        "eigenlijk 70 liter",
        "to tylko 70 l",
        "właściwie 70 l",
        "det är bara 70 l",
        "egentligen 70 l",
    ],
)
def test_it_is_told_to_be_so(text: str) -> None:
    assert volume_told(text) == 70.0


@pytest.mark.parametrize("text", ["70 l", "about 70 l", "ungefähr 70 l", "cerca de 70 l"])
def test_a_volume_that_is_only_named_is_not_told_to_be_so(text: str) -> None:
    assert volume_alone(text) == 70.0
    assert volume_told(text) is None


@pytest.mark.parametrize(
    "text",
    ["for 70 l", "is it 70 l?", "i changed 70 l", "it lost 20 l", "only 70", "no, 7.4", "70"],
)
def test_other_talk_is_none(text: str) -> None:
    assert volume_told(text) is None


@pytest.mark.parametrize(
    ("text", "litres"),
    [
        ("actually its only 110 litres with the rock", 110.0),
        ("net water is more like 60 l", 60.0),
        ("eigentlich nur 60 l mit den steinen", 60.0),
        ("en fait 60 l avec les pierres", 60.0),
        ("en realidad 60 l con las piedras", 60.0),
        ("é 60 l com as pedras", 60.0),
        ("eigenlijk 60 l met de stenen", 60.0),
        ("i put 10 l with the rock", None),
        ("is it 60 l with the rock?", None),
    ],
)
def test_how_much_is_left_beside_rock(text: str, litres: float | None) -> None:
    assert volume_told(text) == litres


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("oh its uk gallons", "uk"),
        ("es sind britische gallonen", "uk"),
        ("ce sont des gallons impériaux", "uk"),
        ("son galones imperiales", "uk"),
        ("no sorry, us gallons", "us"),
        ("are they uk gallons?", None),
        ("30 uk gallons", None),
        ("added 5 uk gallons", None),
    ],
)
def test_which_gallons_were_meant(text: str, meant: str | None) -> None:
    assert gallons_told(text) == meant


@pytest.mark.parametrize(
    ("text", "share"),
    [
        ("tank is half drained", 0.5),
        ("tank only filled 2/3", 2 / 3),
        ("its only 3/4 full", 0.75),
        ("filled to 70% right now", 0.7),
        ("water level is down by half", 0.5),
        ("the tank is drained to a quarter", 0.25),
        ("about a third is missing rn", 2 / 3),
        ("das Becken ist nur zu zwei Dritteln voll", 2 / 3),
        ("Becken ist halb leer", 0.5),
        ("il est rempli aux deux tiers", 2 / 3),
        ("el acuario está a la mitad lleno", 0.5),
        ("o aquário está dois terços cheio", 2 / 3),
        ("la vasca è piena per due terzi", 2 / 3),
        ("de bak is driekwart vol", 0.75),
        ("akwarium jest w połowie puste", 0.5),
        ("akvariet är halvt tömt", 0.5),
    ],
)
def test_how_full_it_is(text: str, share: float) -> None:
    assert how_full(text) == pytest.approx(share)


@pytest.mark.parametrize(
    "text",
    [
        "is it half full?", "is it half full", "drained half", "down by 20%", "full", "half",
        "half of the fish are missing", "bag is half empty", "changed half", "kh is down by half",
        "its 3/4 full of fish", "did 2/3", "tank is 120% full",
    ],
)  # fmt: skip
def test_what_is_said_of_else_is_no_share(text: str) -> None:
    assert how_full(text) is None


@pytest.mark.parametrize(
    ("text", "tells"),
    [
        ("id say 70 l once you take off the stones", True), ("i took out 30 l", True),
        ("90 is the label, really 75", True), ("drained half of it", True),
        ("der Wasserstand ist ziemlich weit unten", True), ("the fish eat 5 flakes", False),
        ("changed 20 l with weird stuff", False), ("how much is 60 l?", False),
        ("put 20 ml of stuff in", False),
    ],
)  # fmt: skip
def test_what_may_tell_a_volume(text: str, *, tells: bool) -> None:
    assert may_tell_volume(text, 90.0) is tells
