"""What is asked of a plan right after it: its total, is it much, slower, by spoon, its end."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


@pytest.fixture
async def planned(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 2 gh 6 ph 7.0 temp 24 ammonia 0")
    await talk.say("dose kh 4")
    return talk


@pytest.mark.parametrize(
    ("text", "answer"),
    [
        ("so 5.4g total right?", "Yes: 5.4 g"), ("insgesamt 5.4 g oder?", "Yes: 5.4 g"),
        ("5.4 g en total?", "Yes: 5.4 g"), ("2.7 g right?", "Yes: 5.4 g"),
        ("so 9 g total right?", "No: 5.4 g"), ("razem 3 g, prawda?", "No: 5.4 g"),
    ],
)  # fmt: skip
async def test_a_total_told_back_is_checked(planned: Talk, text: str, answer: str) -> None:
    told = await planned.text(text)
    assert told.startswith(answer), text
    assert "in 2 parts 24 h apart: 2.7 g" in told, text


@pytest.mark.parametrize(
    "text",
    [
        "is that much?", "es mucho?", "thats not much is it", "thats a lot of bicarb u sure",
        "ist das viel?", "c'est beaucoup ?", "é muito?", "è molto?", "is dat veel?",
        "czy to dużo?", "är det mycket?",
    ],
)  # fmt: skip
async def test_whether_it_is_much_is_told_by_what_it_goes_by(planned: Talk, text: str) -> None:
    told = await planned.text(text)
    assert told.startswith("That is what 90 L takes for KH 2 → 4 °dH"), text
    assert "within the limits" in told, text


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("can i do it in 2 days", 2), ("make it slower then, like a week", 7),
        ("over 2 weeks please", 14), ("kann ich es in 5 tagen machen", 5),
        ("mach es langsamer, über eine woche", 7), ("puedo hacerlo en 4 días", 4),
        ("posso farlo in 3 giorni", 3), ("can i do it in 1 day", 2),
    ],
)  # fmt: skip
async def test_so_many_days_are_so_many_parts(planned: Talk, text: str, count: int) -> None:
    facts = await planned.facts(text)
    assert len(facts["parts"]) == count, text


@pytest.mark.parametrize(
    "text",
    [
        "in teaspoons pls", "only got a teaspoon no scale", "got no scale", "ich hab nur löffel",
        "en cucharaditas por favor", "j'ai que une cuillère", "ho solo un cucchiaino",
    ],
)  # fmt: skip
async def test_no_spoon_measures_it(planned: Talk, text: str) -> None:
    assert (await planned.text(text)).startswith("Not by spoon"), text


@pytest.mark.parametrize(
    ("text", "answer"),
    [
        ("whats the worst that can happen if i double it", "No: give the 2 parts 24 h apart"),
        ("whats the ph gonna be", "pH about 7.3 at once"),
        ("what does that do to the ph", "pH about 7.3 at once"),
        ("warum 2 tage", "KH may rise by 1 °dH a day"),
        ("pourquoi 2 jours", "KH may rise by 1 °dH a day"),
        ("how much does that raise it", "KH +1 °dH"), ("what does that do to it", "KH +1 °dH"),
        ("um wie viel hebt das", "KH +1 °dH"), ("how much each then", "2.7 g"),
        ("wie viel jeweils", "each time, 24 h apart"),
    ],
)  # fmt: skip
async def test_what_it_does_and_why(planned: Talk, text: str, answer: str) -> None:
    assert answer in await planned.text(text), text
    assert answer in await planned.text(text), text


async def test_its_salts_are_named_without_another_plan(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("gh 3 kh 4 ph 7.2 temp 24")
    await talk.say("how much epsom and calcium chloride for gh 6")
    for text in ("how much of epsom and calcium chloride is that", "how much each then"):
        (reply,) = await talk.say(text)
        assert [line.text.count(" g of ") for line in reply.lines] == [2, 2], text
        assert not reply.buttons, text
    await talk.say("how much gypsum and epsom for gh 6")
    told = await talk.text("how much of gypsum and epsom is that")
    assert "calcium sulfate" in told
    assert "magnesium sulfate" in told


async def test_too_much_of_a_change_is_judged(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("tap: kh 3 gh 6 ph 7.4 nitrate 10")
    await talk.say("kh 3 gh 6 ph 7.2 temp 24 nitrate 60")
    await talk.say("how much water to change to get nitrate to 20")
    facts = await talk.facts("isnt 50% every day too much")
    assert facts["largest_safe_share"] < 0.5


@pytest.mark.parametrize(
    "text",
    [
        "5.4 g went in, right?", "thats a lot of fish", "a lot of algae", "i gave a teaspoon",
        "why did it die in 3 days", "i only have gypsum", "how much of it for 200 l",
        "in a week we go on holiday", "right", "my scale is broken", "spoon",
    ],
)  # fmt: skip
async def test_what_only_sounds_like_it_is_not_heard_so(planned: Talk, text: str) -> None:
    told = await planned.text(text)
    assert not told.startswith(("Yes:", "No:", "That is what 90 L", "Not by spoon")), text
    assert "KH may rise by 1 °dH a day" not in told, text
    assert "7 parts" not in told, text


@pytest.mark.parametrize(
    "text",
    [
        "rest of it?", "and the rest?", "rest?", "again?", "another one?", "second one now?",
        "can i do the second now", "how long apart", "when can i do the rest", "what next",
        "y el resto?", "und der rest?", "et le reste?", "e o resto?", "e il resto?", "en de rest?",
        "a reszta?", "och resten?", "encore?", "nochmal?", "otra vez?",
    ],
)  # fmt: skip
async def test_behind_a_part_the_test_comes_first(planned: Talk, text: str) -> None:
    await planned.say("done")
    told = await planned.text(text)
    assert "Test KH, pH and ammonia from tomorrow" in told, text
    assert "2.7 g" not in told, text


@pytest.mark.parametrize("text", ["both today?", "beide heute?", "les deux aujourd'hui?"])
async def test_two_parts_of_a_day_are_none(planned: Talk, text: str) -> None:
    assert (await planned.text(text)).startswith("No: give the 2 parts 24 h apart"), text


@pytest.mark.parametrize("text", ["again?", "what next", "rest of it?", "next one now?"])
async def test_after_the_retest_what_is_left_is_worked_out(planned: Talk, text: str) -> None:
    await planned.say("done")
    await planned.wait(days=1)
    await planned.say("kh 3 ph 7 ammonia 0")
    facts = await planned.facts(text)
    assert (facts["from"], facts["to"]) == (3.0, 4.0), text


@pytest.mark.parametrize(
    "text",
    ["how do i weigh it", "how do i measure so little", "wie wiege ich das ab", "hoe weeg ik dat"],
)
async def test_how_so_little_is_weighed(planned: Talk, text: str) -> None:
    assert "A kitchen scale will do: 27 g" in await planned.text(text), text


@pytest.mark.parametrize("text", ["whats my kh", "what is my kh", "kh?", "last kh?"])
async def test_a_value_is_what_was_measured_and_not_what_the_plan_brings(
    planned: Talk, text: str
) -> None:
    told = await planned.text(text)
    assert "KH 2 °dH" in told, text
    assert "In all" not in told, text
