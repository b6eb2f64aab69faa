"""Every name of the core that a keeper hears is marked for translation."""

from __future__ import annotations

import pytest

from bot.chat.words import names
from core import substances
from core.advice.iron import FORMULA
from core.advice.plan import Weighed
from core.advice.scheduling import added_ions
from core.analytes import ANALYTES
from core.water import SUBSTANCES

IONS = {ion for name in SUBSTANCES for ion in added_ions([Weighed(name, 1.0)], 1.0)}


@pytest.mark.parametrize(
    ("kind", "spoken"),
    [
        ("labels of analytes", {row.label for row in ANALYTES.values()}),
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


def test_what_the_keeper_named_stays_as_it_is() -> None:
    assert names.said("my buffer") == "my buffer"
