"""A value that was wrong is put right behind an answer that rests on it, and under the name that
was meant; the words are ours."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

FERN = ("/tank new Fern 90 l fresh", "kh 3 gh 8 ph 7 ammonia 0 temp 25")


async def said(talk: Talk, *lines: str) -> None:
    for line in (*FERN, *lines):
        await talk.say(line)


@pytest.mark.parametrize(
    "line",
    [
        "wrong, it was kh 4", "wrong kh is 4", "wrong, kh 4", "mistake, kh 4", "kh was 4 actually",
        "that was wrong, kh is 4", "i misread, kh is 4", "falsch, kh ist 4", "erreur, kh 4",
        "sorry kh was 4",
    ],
)  # fmt: skip
async def test_the_reading_that_a_plan_rests_on_is_put_right(talk: Talk, line: str) -> None:
    await said(talk, "raise kh to 6")
    assert (await talk.text(line)).startswith("Corrected: KH 4")
    assert (await talk.facts("raise kh to 6"))["from"] == 4.0


@pytest.mark.parametrize(
    "line",
    ["oh kh 4", "damn kh 2", "kh 4 now", "wrong, kh was 4 yesterday", "wrong kh 4 in the tap"],
)
async def test_other_values_put_nothing_right(talk: Talk, line: str) -> None:
    await said(talk, "raise kh to 6")
    assert "Corrected" not in await talk.text(line)


@pytest.mark.parametrize(
    "line",
    [
        "kh i mean gh 4", "i mean gh 4", "gh 4 i mean", "sorry gh 4", "no that's gh 4",
        "ich meine gh 4", "pardon gh 4",
    ],
)  # fmt: skip
async def test_the_same_number_is_put_under_the_name_meant(talk: Talk, line: str) -> None:
    await said(talk, "kh 4")
    corrected = await talk.text(line)
    assert corrected.startswith("Corrected: GH 4")
    assert "(was KH 4" in corrected
    assert (await talk.facts("what is my kh"))["values"][0]["value"] == 3.0


@pytest.mark.parametrize("line", ["kh i mean gh 4", "kh 4 i mean gh 4", "kh 4 oops i mean gh"])
async def test_a_name_put_right_in_one_message_keeps_no_other(talk: Talk, line: str) -> None:
    await said(talk)
    (kept,) = await talk.say(line)
    assert [(each["analyte"], each["value"]) for each in kept.facts["values"]] == [("gh", 4.0)]


@pytest.mark.parametrize("line", ["oh and gh 4", "oh gh 4", "gh 4", "kh and gh 4"])
async def test_one_more_value_renames_none(talk: Talk, line: str) -> None:
    await said(talk, "kh 4")
    assert "was KH 4" not in await talk.text(line)
    assert (await talk.facts("what is my kh"))["values"][0]["value"] == 4.0
