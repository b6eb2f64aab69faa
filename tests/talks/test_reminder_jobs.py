"""What a reminder is of: several jobs in one message, the topic just named, no joining words."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    return talk


async def listed(talk: Talk) -> list[tuple[str, str]]:
    held = (await talk.facts("/remind"))["reminders"]
    return [(each["what"], each["rule"]) for each in held]


@pytest.mark.parametrize(
    ("text", "whats"),
    [
        ("remind me saturday ferts and sunday water", ["ferts", "water"]),
        ("erinner mich samstag düngen und sonntag wasser", ["düngen", "wasser"]),
        ("rappelle moi samedi engrais et dimanche eau", ["engrais", "eau"]),
        ("every sunday water change 30% and every wednesday ferts", ["ferts", "water change 30%"]),
    ],
)
async def test_each_job_has_its_day(fern: Talk, text: str, whats: list[str]) -> None:
    told = [each.facts["reminder"]["what"] for each in await fern.say(text)]
    assert sorted(told) == sorted(whats)
    held = await listed(fern)
    assert sorted(what for what, _rule in held) == sorted(whats)
    assert len({rule for _what, rule in held}) == 2


async def test_the_same_task_twice_a_day_stays_two_when_one_is_moved(fern: Talk) -> None:
    await fern.say("remind me to feed every day at 8:00 and again at 20:00")
    await fern.say("no, 21:00")
    assert sorted(await listed(fern)) == [
        ("feed", "every day at 08:00"),
        ("feed", "every day at 21:00"),
    ]


async def test_none_is_set_where_one_cannot_be(fern: Talk) -> None:
    await fern.say("remind me to test saturday and change water 31 february")
    await fern.say("remind me to test friday and dose 900 g baking soda sunday")
    assert await listed(fern) == []


@pytest.mark.parametrize(
    ("number", "whats"),
    [(1, ["feed", "lights"]), (2, ["feed and 20 lights"])],
)
async def test_a_number_that_may_be_an_hour_is_asked(
    fern: Talk, number: int, whats: list[str]
) -> None:
    (asked,) = await fern.say("remind me tomorrow at 8 feed and 20 lights")
    assert await listed(fern) == []
    await fern.press(number, asked)
    assert [what for what, _rule in await listed(fern)] == whats


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("erinner mich in einer woche wieder", "water change 30%"),
        ("herinner me over 3 dagen", "water change 30%"),
        ("remind me sunday same again", "water change 30%"),
        ("rappelle-moi dans 3 jours", "water change 30%"),
        ("remind me in 3 days to feed", "feed"),
    ],
)
async def test_one_without_a_task_is_of_what_was_just_told(
    fern: Talk, text: str, what: str
) -> None:
    await fern.say("changed 30%")
    assert (await fern.facts(text))["reminder"]["what"] == what


async def test_what_was_told_before_is_no_topic(fern: Talk) -> None:
    await fern.say("changed 30%")
    await fern.say("is ammonia 0.1 safe at ph 8")
    await fern.say("remind me in 3 days")
    assert await listed(fern) == []


async def test_a_question_is_no_task(fern: Talk) -> None:
    await fern.say("remind me in 3 days")
    for text in ("cuando fue el ultimo cambio", "quando foi a última troca"):
        assert "water change on record" in await fern.text(text)
    assert await listed(fern) == []


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("remind me in 7 days, und an nitrat messen", "nitrat messen"),
        ("erinner mich morgen und an nitrat messen", "nitrat messen"),
        ("remind me tomorrow and to feed", "feed"),
        ("herinneren kh testen vrijdag", "kh testen"),
        ("rem me test no3 friday", "test no3"),
        ("remind me je retest lundi", "retest"),
        ("rappelle-moi vendredi aussi 20%", "20%"),
        ("recuérdame mañana y también medir kh", "medir kh"),
        ("przypomnij mi jutro i też zmierzyć kh", "zmierzyć kh"),
    ],
)
async def test_joining_words_are_no_part_of_a_task(fern: Talk, text: str, what: str) -> None:
    assert (await fern.facts(text))["reminder"]["what"] == what


async def test_a_day_that_is_not_read_is_not_lost(fern: Talk) -> None:
    await fern.say("remind me monday and thirdsday feed")
    assert await listed(fern) == []


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("remind me to dose ferts every 12 hours for 3 days", 6),
        ("remind me to feed every day at 19:00 until friday", 6),
        ("erinnere mich alle 12 stunden für 2 tage zu düngen", 4),
    ],
)
async def test_a_rhythm_with_an_end_is_set_as_its_times_or_without(
    fern: Talk, text: str, count: int
) -> None:
    (asked,) = await fern.say(text)
    assert await listed(fern) == []
    await fern.press(2, asked)
    await fern.press(2, asked)
    assert [rule.split()[0] for _what, rule in await listed(fern)] == ["once"] * count


async def test_many_times_are_only_set_without_an_end(fern: Talk) -> None:
    (asked,) = await fern.say("remind me to feed every day for 8 weeks")
    assert len(asked.buttons) == 1
    await fern.press(1, asked)
    assert [what for what, _rule in await listed(fern)] == ["feed"]


@pytest.mark.parametrize(
    "text", ["and the cube on friday", "und cube am freitag", "et le cube vendredi"]
)
async def test_the_same_for_another_tank(fern: Talk, text: str) -> None:
    await fern.say("/tank new Cube 20 l")
    await fern.say("remind me to change 50% in fern on thursday")
    told = (await fern.facts(text))["reminder"]
    assert (told["tank"], told["due"][:10]) == ("Cube", "2026-03-06")
    assert "fern" not in told["what"].casefold()
    assert len(await listed(fern)) == 2
    for other in ("cube kh 4", "cube on friday", "fern on friday"):
        await fern.say(other)
    assert len(await listed(fern)) == 2
