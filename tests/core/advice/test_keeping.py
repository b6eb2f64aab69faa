"""May this animal join this tank?"""

from __future__ import annotations

import pytest

from core.advice.keeping import can_keep
from core.advice.livestock import species
from core.advice.state import State
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
    held = state(*GOOD, of=tank(volume_l=90.0))
    answer = can_keep(species("oscar"), held)
    assert answer.verdict == "care"
    assert answer.cramped == pytest.approx(256.0)
    assert can_keep(species("oscar"), state(*GOOD, of=tank(volume_l=300.0))).cramped is None
    assert can_keep(species("oscar"), state(*GOOD)).cramped is None


def test_the_keepers_own_words_are_kept() -> None:
    held = state(*GOOD, of=tank("Neonsalmler"))
    answer = can_keep(species("oscar"), held, "Pfauenaugen")
    assert answer.name_of(species("oscar")) == "Pfauenaugen"
    assert answer.name_of(species("neon tetra")) == "Neonsalmler"
