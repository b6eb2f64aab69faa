"""What came and went, added up by kind whatever it was called."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.advice.livestock import lookup
from core.advice.stock import Came, is_crowd, tally

CASES = [
    ("other words for one kind", [("added", "neon tetras", 10), ("lost", "neons", 2)],
     {"neon tetras": 8}),
    ("another language", [("added", "Neonsalmler", 6), ("added", "neon tetras", 4)],
     {"Neonsalmler": 10}),
    ("the only kind on record", [("added", "guppies", 6), ("lost", None, 2)], {"guppies": 4}),
    ("fish of the only kind", [("added", "guppies", 6), ("lost", "fish", 1)], {"guppies": 5}),
    ("fish of two kinds are not guessed",
     [("added", "guppies", 6), ("added", "mollies", 2), ("lost", "fish", 1)],
     {"guppies": 6, "mollies": 2}),
    ("the only tetra on record", [("added", "neon tetras", 6), ("added", "guppies", 2),
     ("lost", "tetras", 1)], {"neon tetras": 5, "guppies": 2}),
    ("two tetras are not guessed", [("added", "neon tetras", 6), ("added", "cardinal tetras", 6),
     ("lost", "tetras", 1)], {"neon tetras": 6, "cardinal tetras": 6}),
    ("a misspelt name is not guessed", [("added", "neon tetras", 6), ("lost", "neon tetar", 1)],
     {"neon tetras": 6}),
    ("an unknown kind by its own name", [("added", "gryphons", 3), ("lost", "Gryphons", 1)],
     {"gryphons": 2}),
    ("no more than there were", [("added", "guppies", 3), ("lost", "guppies", 50)], {}),
    ("the dead before the living", [("lost", "guppies", 2), ("added", "guppies", 3)],
     {"guppies": 3}),
    ("the sexes by themselves", [("added", "male guppies", 2), ("added", "female guppies", 4),
     ("lost", "guppy males", 1)], {"male guppies": 1, "female guppies": 4}),
    ("another language's word for the sex", [("added", "male guppies", 2),
     ("added", "Guppys (Männchen)", 1)], {"male guppies": 3}),
    ("of males or females is not guessed", [("added", "male guppies", 2),
     ("added", "female guppies", 4), ("lost", "guppies", 1)],
     {"male guppies": 2, "female guppies": 4}),
    ("as many as there are of both", [("added", "male guppies", 2),
     ("added", "female guppies", 4), ("moved_out", "guppies", 6)], {}),
    ("a male of those whose sex nobody told", [("added", "guppies", 6),
     ("lost", "male guppies", 1)], {"guppies": 5}),
    ("those whose sex nobody told go first", [("added", "guppies", 6),
     ("added", "male guppies", 1), ("lost", "guppies", 1)], {"guppies": 5, "male guppies": 1}),
    ("young ones, where there are no others", [("added", "guppies (babies)", 20),
     ("moved_out", "guppies", 15)], {"guppies (babies)": 5}),
    ("no grown one for young ones that nobody told of", [("added", "guppies", 6),
     ("lost", "guppy fry", 2)], {"guppies": 6}),
    ("one where no number was told", [("added", "betta", None)], {"betta": 1}),
]  # fmt: skip


@pytest.mark.parametrize(("told", "held"), [c[1:] for c in CASES], ids=[c[0] for c in CASES])
def test_tally(told: list[tuple[str, str | None, int | None]], held: dict[str, int]) -> None:
    assert tally(Came(*one) for one in told) == held


NAMES = st.sampled_from(["neons", "neon tetra", "fish", "tetras", "guppies", "gryphon", None, "x"])


@given(
    st.lists(
        st.tuples(st.sampled_from(["added", "lost"]), NAMES, st.none() | st.integers(1, 10**6))
    )
)
def test_never_under_zero_and_never_more_than_came(
    told: list[tuple[str, str | None, int | None]],
) -> None:
    held = tally(Came(*one) for one in told)
    assert all(count > 0 for count in held.values())
    came = sum(many or 1 for kind, name, many in told if kind == "added" and name is not None)
    assert sum(held.values()) <= came


@pytest.mark.parametrize(
    ("count", "volume", "crowd"),
    [(10_000, 90.0, True), (10_000, 50_000.0, False), (60, 20.0, False), (501, None, True),
     (500, None, False), (500, 10.0, False)],
)  # fmt: skip
def test_a_crowd_is_more_than_the_water_holds_common_practice(
    count: int, volume: float | None, crowd: bool
) -> None:
    assert is_crowd(count, volume) is crowd


def test_young_animals_are_counted_by_themselves_and_known_as_their_kind() -> None:
    """Their stricter gate would be lost if they were added to the grown ones."""
    told = [
        Came("added", "guppy", 10),
        Came("added", "guppy fry", 40),
        Came("lost", "guppy fry", 5),
    ]
    assert tally(told) == {"guppy": 10, "guppy fry": 35}
    for name in ("guppy fry", "baby guppies", "guppy alevines"):
        found = lookup(name).species
        assert found is not None, name
        assert found.scientific == "Poecilia reticulata"
