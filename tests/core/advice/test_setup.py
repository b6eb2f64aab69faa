"""What a tank is made for, by word and by record, and what plans make of it."""

from __future__ import annotations

import pytest

from core.advice.changes import waters_of
from core.advice.setup import holds_only_fish, is_reef, plants_grow
from core.tank import Tank
from tests.core.advice.waters import by_kit, read, state, tank


@pytest.mark.parametrize(
    ("of", "grow", "reason"),
    [
        (tank(), None, "nobody said"),
        (tank(setup="planted"), True, "told"),
        (tank("anubias"), True, "on record"),
        (tank(kind="pond"), True, "algae"),
        (tank(setup="unplanted"), False, "told"),
        (tank("anubias", setup="unplanted"), True, "the record gainsays it"),
    ],
)
def test_plants(of: Tank, grow: bool | None, reason: str) -> None:
    assert plants_grow(of) is grow, reason


@pytest.mark.parametrize(
    ("of", "reef", "reason"),
    [
        (tank(kind="marine"), False, "a sea of which nothing is known"),
        (tank(kind="marine", setup="reef"), True, "told"),
        (tank("acropora", kind="marine"), True, "a coral on record"),
        (tank("clownfish", kind="marine"), False, "fish"),
        (tank(setup="reef"), False, "fresh water has none"),
    ],
)
def test_reefs(of: Tank, reef: bool, reason: str) -> None:
    assert is_reef(of) is reef, reason


@pytest.mark.parametrize(
    ("of", "only", "reason"),
    [
        (tank(kind="marine"), False, "nobody on record: the stricter step"),
        (tank("clownfish", kind="marine"), True, "known fish"),
        (tank("clownfish", kind="marine", setup="reef"), False, "told a reef"),
        (tank("clownfish", "acropora", kind="marine"), False, "a coral"),
        (tank(kind="marine", setup="fish_only"), True, "told"),
        (
            tank("gryphon", kind="marine", setup="fish_only"),
            True,
            "told, though the name is unknown",
        ),
        (tank("gryphon", kind="marine"), False, "may be anything"),
        (tank("turbo snail", kind="marine", setup="fish_only"), False, "the record gainsays it"),
    ],
)
def test_fish_only(of: Tank, only: bool, reason: str) -> None:
    """Salinity down by 2 g/kg a day with fish only, by 1 else: common practice, no source."""
    assert holds_only_fish(of) is only, reason
    waters = waters_of(
        state(by_kit("kh", 8), read("salinity", 36), of=of), state(by_kit("kh", 8), of=of)
    )
    assert waters is not None
    assert waters.invertebrates is not only
