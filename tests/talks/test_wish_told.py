"""`gh up to 12`, `kh 6 please`: a wish is no reading, in nine languages; words ours, no source.

Grams by molar mass: 29.96 mg/L of sodium bicarbonate a °dH of KH (C).
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

SODIUM = 2.996e-2
TANK = ("/tank new Fern 90 l fresh", "kh 4 gh 6 ph 7.2 ammonia 0 temp 24 no3 5")


async def with_tank(talk: Talk) -> None:
    for line in TANK:
        await talk.say(line)


@pytest.mark.parametrize(
    "line",
    [
        "kh up to 6", "kh up to 6 maybe", "kh 6 please", "Fern: kh 6 please", "kh at least 6",
        "kh 6 wanted", "kh 6 would be nice", "kh hoch auf 6", "kh bitte 6", "kh mindestens 6",
        "kh jusqu'à 6", "kh 6 s'il te plaît", "kh au moins 6", "kh subir a 6", "kh 6 por favor",
        "kh al menos 6", "kh subir para 6", "kh pelo menos 6", "kh fino a 6", "kh 6 per favore",
        "kh almeno 6", "kh omhoog naar 6", "kh 6 graag", "kh minstens 6", "kh podnieść do 6",
        "kh 6 proszę", "kh co najmniej 6", "kh upp till 6", "kh 6 tack", "kh minst 6",
    ],
)  # fmt: skip
async def test_a_wish_for_more_is_planned(talk: Talk, line: str) -> None:
    await with_tank(talk)
    facts = await talk.facts(line)
    assert (facts["tank"], facts["from"], facts["to"]) == ("Fern", 4.0, 6.0)
    assert facts["grams"] == pytest.approx(90 * 2 * SODIUM, rel=2e-3)


async def test_two_wishes_are_planned_together(talk: Talk) -> None:
    await with_tank(talk)
    goals = (await talk.facts("kh up to 6 and gh up to 8"))["goals"]
    assert {goal["analyte"]: goal["to"] for goal in goals} == {"kh": 6.0, "gh": 8.0}


@pytest.mark.parametrize(
    "line",
    [
        "kh down to 3", "kh runter auf 3", "kh omlaag naar 3", "kh up to 3", "kh up to 4",
        "kh 6 then", "kh 6 dann", "no3 down to 2", "no3 up to 20", "temp up to 26", "ph down to 7",
    ],
)  # fmt: skip
async def test_what_may_be_measured_as_well_is_asked(talk: Talk, line: str) -> None:
    await with_tank(talk)
    (reply,) = await talk.say(line)
    assert "may be wished for or measured" in reply.text
    assert "values" not in reply.facts


async def test_only_the_button_of_the_reading_stores_it(talk: Talk) -> None:
    await with_tank(talk)
    await talk.say("kh down to 3")
    wished = await talk.press(1)
    assert all("values" not in reply.facts for reply in wished)
    await talk.say("kh down to 3")
    (stored,) = await talk.press(2)
    assert stored.facts["values"][0]["canonical"] == 3.0


async def test_after_a_dose_a_rise_may_be_what_it_did(talk: Talk) -> None:
    await with_tank(talk)
    await talk.say("dosed 5 g baking soda")
    await talk.say("temp 24")
    (reply,) = await talk.say("kh up to 6")
    assert "may be wished for or measured" in reply.text


async def test_without_a_value_on_record_it_is_asked(talk: Talk) -> None:
    await talk.say(TANK[0])
    (reply,) = await talk.say("gh up to 12")
    assert [button.label for button in reply.buttons][:2] == ["dose gh 12", "gh 12"]


@pytest.mark.parametrize(
    ("line", "canonical"),
    [
        ("no3 went up to 40", 40.0), ("ph is down to 6.5", 6.5), ("kh dropped to 3", 3.0),
        ("no3 up to 80", 80.0), ("ammonia up to 1", 1.0),
        ("kh up to 6 now", 6.0), ("kh up to 6 already", 6.0), ("kh descendu à 3", 3.0),
        ("kh up to 6 after water change", 6.0), ("kh subió a 6", 6.0),
    ],
)  # fmt: skip
async def test_what_was_measured_is_kept(talk: Talk, line: str, canonical: float) -> None:
    await with_tank(talk)
    (value,) = (await talk.facts(line))["values"]
    assert value["canonical"] == canonical


@pytest.mark.parametrize("line", ["nitrite at least 5", "no3 at least 100", "no3 up to 80"])
async def test_the_end_of_a_scale_and_bad_news_are_readings_after_a_plan_too(
    talk: Talk, line: str
) -> None:
    await with_tank(talk)
    await talk.say("dose kh 6")
    assert (await talk.facts(line))["values"]


async def test_in_a_group_nothing_is_stored_of_it(talk: Talk) -> None:
    await with_tank(talk)
    await talk.say("kh 6 please", group=True, addressed=False)
    (value,) = (await talk.facts("what is kh now"))["values"]
    assert value["canonical"] == 4.0


@pytest.mark.parametrize(
    "text",
    [
        "i want the kh at 6", "want the kh up to 6", "want to be at kh 6", "i'd like the kh at 6",
        "hoping to hit kh 6", "looking for kh of 6", "je veux un kh de 6", "quiero el kh en 6",
    ],
)  # fmt: skip
async def test_a_value_behind_a_word_of_wanting_is_planned(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 3 ph 7 ammonia 0 temp 25")
    plan = await talk.facts(text)
    assert plan["to"] == pytest.approx(6.0)
    assert len(plan["parts"]) == 3


async def test_what_is_at_a_value_now_is_no_wish(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert (await talk.facts("the kh is up to 6"))["values"][0]["canonical"] == 6.0
