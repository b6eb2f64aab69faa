"""The warmth told beside a failed heater; common practice, no source."""

from __future__ import annotations

import pytest

from core.advice.calls import recognise
from core.advice.heater_warmth import in_doubt, told

COLD = [
    "heater broke its 17",
    "heater is broken, tank is cold 17",
    "heater died 17",
    "17 heater broke",
    "heater quit, down to 17 now",
    "heater packed in, went from 26 to 17",
    "heater failed 63 f",
    "heater not working, 63",
    "Heizung kaputt, nur noch 17",
    "Heizstab ausgefallen jetzt 17",
    "17 Grad, Heizer tot",
    "chauffage en panne, 17",
    "le chauffage est mort il fait 17",
    "calentador roto, está a 17",
    "se rompió el calentador y está en 17",
    "aquecedor avariado, 17 agora",
    "o aquecedor queimou, está a 17",
    "riscaldatore rotto, ora 17",
    "riscaldatore morto siamo a 17",
    "verwarming kapot, nog maar 17",
    "verwarming stuk het is 17",
    "grzałka padła jest 17",
    "zepsuła się grzałka, teraz 17",
    "värmaren trasig, bara 17 nu",
    "doppvärmaren dog 17",
]


@pytest.mark.parametrize("text", COLD)
def test_a_bare_number_beside_a_failed_heater_is_the_warmth(text: str) -> None:
    found = told(text)
    assert found is not None
    assert found.celsius == pytest.approx(17.0, abs=0.3)
    assert recognise(text) == "heater_cold"


@pytest.mark.parametrize(
    ("text", "danger"),
    [
        ("heater stuck on 33", "heater_hot"),
        ("heater stuck at 17", "heater_cold"),
        ("thermostat broken 31", "heater_hot"),
        ("heater died, still 31", "heater_hot"),
        ("heater broke 25", "heater"),
        ("heater died 25", "heater_cold"),
        ("tank too hot 20", "heater_hot"),
        ("tank is freezing 15", "heater_cold"),
    ],
)
def test_degrees_go_before_what_the_heater_did(text: str, danger: str) -> None:
    assert recognise(text) == danger


@pytest.mark.parametrize(
    "text",
    [
        "heater died, lost 18",
        "heater broke, 18 dead",
        "heater broke, 18 tetras alive",
        "heater died 18 hours ago",
        "heater died at 18 o'clock",
        "heater broke, it was set to 25",
        "heater broke, it was 25",
        "heater broke, gh 12",
        "heater broke 100 l tank",
        "heater broke, 30 % changed",
        "Heizung kaputt, soll 25",
        "chauffage en panne, 18 guppys",
        "what if the heater breaks at 18",
        "heater broke, one at 18 the other at 31",
        "heater broke 5 times",
    ],
)
def test_other_numbers_are_no_warmth(text: str) -> None:
    assert told(text) is None


def test_a_number_that_may_be_the_warmth_is_in_doubt() -> None:
    assert in_doubt("heater broke, 18 and falling") is False
    assert in_doubt("heater broke, 18 sinking") is True
    assert in_doubt("heater broke") is False
