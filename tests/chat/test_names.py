"""Every name of the core that a keeper hears is marked for translation."""

from __future__ import annotations

import pytest

from bot.chat.words import marks, names
from core import substances
from core.advice.findings import BY_ID
from core.advice.hardness import buffer_class, hardness_classes
from core.advice.iron_salts import FORMULA
from core.advice.livestock import table
from core.advice.plan import Weighed
from core.advice.scheduling import added_ions
from core.analytes import MEASURABLE
from core.tank import KINDS
from core.water import SUBSTANCES

IONS = {ion for name in SUBSTANCES for ion in added_ions([Weighed(name, 1.0)], 1.0)}


@pytest.mark.parametrize(
    ("kind", "spoken"),
    [
        ("labels of analytes", {row.label for row in MEASURABLE.values()}),
        ("salts that are weighed", set(SUBSTANCES) | set(FORMULA)),
        ("what a message can name", set(substances.SUBSTANCES)),
        ("ions that a salt brings", IONS),
    ],
)
def test_no_name_is_left_out(kind: str, spoken: set[str]) -> None:
    assert not spoken - names.MARKED, kind


@pytest.mark.parametrize(
    ("parts", "said"),
    [(["a"], "a"), (["a", "b"], "a and b"), (["a", "b", "c"], "a and b and c")],
)
def test_joining_by_and(parts: list[str], said: str) -> None:
    assert names.both(parts) == said


CLASSES = [
    *(held for gh in range(60) for held in hardness_classes(float(gh))),
    *(buffer_class(float(kh), sea=sea) for kh in range(40) for sea in (False, True)),
]


@pytest.mark.parametrize(
    ("kind", "spoken", "marked"),
    [
        ("classes", {held.word for held in CLASSES}, marks.CLASSES),
        ("schemes", {held.scheme for held in CLASSES}, marks.SCHEMES),
        ("bands", {held.band for held in CLASSES}, marks.BANDS),
        ("groups of animals", {row.group for row in table().species}, marks.GROUPS),
        ("waters", {row.water for row in table().species} | set(KINDS), marks.WATERS),
        (
            "sources",
            {rule.source for rule in BY_ID.values()} | set(table().sources.values()),
            marks.SOURCES,
        ),
    ],
)
def test_all_that_the_core_says_and_nothing_else_is_marked(
    kind: str, spoken: set[str], marked: frozenset[str]
) -> None:
    assert spoken == marked, kind


def test_what_the_keeper_named_stays_as_it_is() -> None:
    assert names.said("my buffer") == "my buffer"
