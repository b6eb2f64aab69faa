"""A tank called by its water or its animals, in a chat that has one tank or none."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.mark.parametrize(
    ("line", "told", "kind"),
    [
        ("reef alk 8", "KH 8", "marine"),
        ("my reef is at 1.026 sg", "SG 1.026", "marine"),
        ("alk 8 ca 400 mg 1250 salinity 35", "KH 8", "marine"),
        ("pond is 5 degrees", "temperature 5", "pond"),
        ("malawi kh 9", "KH 9", "fresh"),
    ],
)
async def test_a_first_reading_makes_it_with_its_water(
    talk: Talk, line: str, told: str, kind: str
) -> None:
    assert told in await talk.text(line)
    assert kind in await talk.text("my tanks")


@pytest.mark.parametrize(
    ("made", "line", "kept"),
    [
        ("/tank new Fern 5000 l pond", "pond temp 4", True),
        ("/tank new Fern 90 l fresh", "reef alk 7", False),
        ("/tank new Fern 90 l fresh", "betta nitrite 0.5", True),
        ("tank fern 90 l, 6 guppies", "betta nitrite 0.5", False),
    ],
)
async def test_the_only_tank_is_meant_unless_it_is_another(
    talk: Talk, made: str, line: str, kept: bool
) -> None:
    await talk.say(made)
    answer = await talk.text(line)
    assert ("Not stored" not in answer and "Nothing is stored" not in answer) is kept
