"""May this animal join this tank?"""

from __future__ import annotations

import pytest

from core.advice.keeping import can_keep
from core.advice.livestock import NOBODY_TOLD, Sexes, species
from core.advice.state import State
from core.tank import Tank, TankKind
from tests.core.advice.waters import by_kit, read, state, tank

WARM = read("temperature", 25.0)
GOOD = (by_kit("gh", 6), by_kit("ph", 6.8), WARM)


@pytest.mark.parametrize(
    ("asked", "held", "verdict"),
    [
        ("neon tetra", state(*GOOD, of=tank("corydoras")), "yes"),
        ("neon tetra", state(by_kit("gh", 20), WARM), "no"),
        ("neon tetra", state(by_kit("gh", 11), WARM), "retest"),
        ("neon tetra", state(), "unmeasured"),
        ("neon tetra", state(*GOOD, of=tank("oscar")), "no"),
        ("tropheus", state(WARM, of=tank("neon tetra")), "no"),
        ("clownfish", state(WARM), "no"),
        ("clownfish", state(WARM, of=tank(kind="marine")), "yes"),
        ("betta", state(*GOOD, of=tank("guppy")), "care"),
    ],
    ids=[
        "suits", "too hard", "one drop over", "nothing measured", "would be eaten",
        "their pH does not meet", "salt water", "a reef", "fights",
    ],
)  # fmt: skip
def test_verdict(asked: str, held: State, verdict: str) -> None:
    assert can_keep(species(asked), held).verdict == verdict


def test_what_is_not_known_is_said() -> None:
    answer = can_keep(species("neon tetra"), state(WARM, of=tank("gryphon")))
    assert set(answer.unmeasured) == {"ph", "gh"}
    assert answer.unknown == ("gryphon",)


def test_conflicts_of_others_among_themselves_are_not_its_own() -> None:
    answer = can_keep(species("corydoras"), state(*GOOD, of=tank("betta", "guppy")))
    assert {c.one.name for c in answer.conflicts} <= {"Siamese fighting fish"}
    assert all("corydoras" in {c.one.name, c.other.name} for c in answer.conflicts)


def test_a_fish_that_outgrows_the_tank_is_care_only() -> None:
    """Common practice, no source; the length is from memory."""
    held = state(*GOOD, of=tank(volume_l=200.0))
    answer = can_keep(species("oscar"), held)
    assert answer.verdict == "care"
    assert can_keep(species("oscar"), state(*GOOD, of=tank(volume_l=90.0))).verdict == "no"
    assert answer.cramped == pytest.approx(256.0)
    assert can_keep(species("oscar"), state(*GOOD, of=tank(volume_l=300.0))).cramped is None
    assert can_keep(species("oscar"), state(*GOOD)).cramped is None


def test_the_keepers_own_words_are_kept() -> None:
    held = state(*GOOD, of=tank("Neonsalmler"))
    answer = can_keep(species("oscar"), held, "Pfauenaugen")
    assert answer.name_of(species("oscar")) == "Pfauenaugen"
    assert answer.name_of(species("neon tetra")) == "Neonsalmler"


@pytest.mark.parametrize(
    ("asked", "count", "sexes", "of", "verdict"),
    [
        ("betta", 1, Sexes(male=1), tank(), "yes"),
        ("betta", 2, Sexes(male=2), tank(), "no"),
        ("betta", 2, NOBODY_TOLD, tank(), "no"),
        ("betta", 2, Sexes(female=2), tank(), "care"),
        ("betta", 1, Sexes(male=1), tank("betta"), "no"),
        ("dwarf gourami", 2, Sexes(male=2), tank(), "no"),
        ("dwarf gourami", 2, NOBODY_TOLD, tank(), "care"),
        ("dwarf gourami", 2, Sexes(1, 1), tank(), "yes"),
        ("neon tetra", 2, NOBODY_TOLD, tank(), "care"),
        ("neon tetra", 6, NOBODY_TOLD, tank(), "yes"),
        ("neon tetra", None, NOBODY_TOLD, tank(), "yes"),
        ("neon tetra", 10, NOBODY_TOLD, tank(volume_l=15.0), "care"),
        ("neon tetra", 20, NOBODY_TOLD, tank(volume_l=20.0), "no"),
        ("neon tetra", 20, NOBODY_TOLD, tank(), "yes"),
        ("cherry shrimp", 50, NOBODY_TOLD, tank(volume_l=20.0), "yes"),
        ("pea puffer", 1, NOBODY_TOLD, tank("cherry shrimp"), "no"),
        ("cherry shrimp", 5, NOBODY_TOLD, tank("pea puffer"), "no"),
        ("betta", 1, Sexes(male=1), tank("cherry shrimp"), "care"),
        ("figure eight puffer", 1, NOBODY_TOLD, tank(), "no"),
        ("clown loach", 6, NOBODY_TOLD, tank("nerite snail"), "no"),
    ],
)  # fmt: skip
def test_number_sex_and_manners_common_practice(
    asked: str, count: int | None, sexes: Sexes, of: Tank, verdict: str
) -> None:
    held = state(*GOOD, of=of)
    assert can_keep(species(asked), held, count=count, sexes=sexes).verdict == verdict


def test_a_number_is_held_against_all_fish_on_record() -> None:
    held = state(*GOOD, of=tank("neon tetra", "guppy", volume_l=10.0))
    alone = state(*GOOD, of=tank(volume_l=10.0))
    crowded = can_keep(species("ember tetra"), held, count=8).crowded
    assert crowded is not None
    assert crowded > 10.0
    assert can_keep(species("ember tetra"), alone, count=8).crowded is None


@pytest.mark.parametrize(
    ("asked", "kind", "foreign"),
    [
        ("clownfish", "fresh", ("marine", "fresh")),
        ("green spotted puffer", "pond", ("brackish", "fresh")),
        ("neon tetra", "marine", ("fresh", "marine")),
        ("neon tetra", "brackish", ("fresh", "brackish")),
        ("molly", "brackish", None),
        ("clownfish", "marine", None),
        ("neon tetra", "fresh", None),
    ],
)
def test_water_of_another_kind(asked: str, kind: TankKind, foreign: tuple[str, str] | None) -> None:
    answer = can_keep(species(asked), state(of=tank(kind=kind)))
    assert answer.foreign == foreign
    assert (answer.verdict == "no") == (foreign is not None)


def test_nobody_comes_while_the_buffer_is_gone() -> None:
    """KH under 1 °dH is an alarm of its own; common practice, no source."""
    gone = state(by_kit("kh", 0), *GOOD)
    assert can_keep(species("neon tetra"), gone).verdict == "no"
    assert can_keep(species("neon tetra"), gone).spent
    soft = state(by_kit("kh", 0), *GOOD, of=tank(soft=True))
    assert can_keep(species("neon tetra"), soft).verdict == "yes"
    assert not can_keep(species("anubias"), gone).spent
