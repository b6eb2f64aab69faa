"""``why that much``, ``can i just dump it all in now``: what is asked of how much buffer it is."""

from __future__ import annotations

import pytest

from core.message.buffer_asked import buffer_asked
from tests.chat.harness import Talk

MEANT = {
    "sum": "why that much? show me the sum; und warum so viel?; pourquoi autant ?; whats the maths",
    "at_once": (
        "can i just dump it all in now; why not all at once; cant i do it quicker; can i rush it;"
        " do i really have to wait that long; all at once ok?; je peux tout mettre d'un coup ?;"
        " kann ich das schneller machen; just throw 2 kg in?"
    ),
    "total": "just tell me the total; how much in total; insgesamt wie viel?; dime el total",
    "between": "how long between doses; wie lange dazwischen; how many hours between each one",
    "weekly": "one time or each week?; how many times per week; is it just once or every week",
    "tomorrow": "how much more tmrw; wie viel morgen; how much for tomorrow",
    "need": (
        "so do i need any?; do i still need some; do i need to add any bicarb;"
        " brauche ich was davon"
    ),
    "another": "another half tsp ok?; can i add another teaspoon; one more spoon?",
    "what_do": "ok what do i do about it; was kann ich dagegen tun; how do i sort it out",
    "spoons_to": "how many teaspoons for 6 dkh; how many tsp to get to kh 5",
}

UNMEANT = (
    "put it all in at once; i put it all in at once; done, all at once; every week; just once;"
    " do i need any fish; why are they all dead; why so much algae; how much food tomorrow;"
    " can i put in all the fish at once; how many times per week do i feed; i need some sleep;"
    " should i change water every week; why did they die all at once; just 2 g; 2 kg in;"
    " how many teaspoons of food for 6 fish; how much more; another spoon went in"
)


@pytest.mark.parametrize(("meaning", "texts"), MEANT.items())
def test_what_is_asked_is_heard(meaning: str, texts: str) -> None:
    for text in map(str.strip, texts.split(";")):
        assert getattr(buffer_asked(text), "meaning", None) == meaning, text


def test_what_says_more_or_tells_a_deed_is_not() -> None:
    for text in map(str.strip, UNMEANT.split(";")):
        assert buffer_asked(text) is None, text


@pytest.fixture
async def low(talk: Talk) -> Talk:
    """A tank whose KH is low, with no plan."""
    await talk.say("/tank new Hall 200 l fresh")
    await talk.say("kh 3 ph 7")
    await talk.say("ammonia 0")
    return talk


@pytest.fixture
async def planned(low: Talk) -> Talk:
    """The same behind a plan of three parts."""
    await low.say("how much baking soda for kh 6")
    return low


async def test_the_sum_is_shown(planned: Talk) -> None:
    for text in ("why that much? show me the sum", "und warum so viel?", "how did you get that"):
        said = await planned.text(text)
        assert "3 × 200 L × 0.03 g = 18 g" in said, text
        assert "In 3 parts of 6 g" in said, text


async def test_a_sum_that_another_ion_is_of_is_not_made_up(low: Talk) -> None:
    await low.say("dose gh 8")
    assert "The sum" not in await low.text("why that much?")


async def test_who_is_impatient_gets_no_with_the_reason_and_the_total(planned: Talk) -> None:
    for text in ("can i just dump it all in now", "all at once ok?", "just throw 2 kg in?"):
        said = await planned.text(text)
        assert said.startswith("No: give the 3 parts"), text
        assert "18 g of sodium bicarbonate (baking soda) in all" in said, text
        assert "faster than animals may bear" in said, text
    assert (await planned.text("just tell me the total")).startswith("18 g of sodium bicarbonate")
    said = await planned.text("one time or each week?")
    assert said.startswith("Once, not every week: 18 g")
    assert "only where it fell" in said


async def test_the_total_keeps_its_condition(talk: Talk) -> None:
    await talk.say("/tank new Hall 200 l fresh")
    await talk.say("kh 3 ph 7")
    await talk.say("how much baking soda for kh 6")
    assert "Only if total ammonia is under" in await talk.text("just tell me the total")
    assert "18 g" not in await talk.text("can i dump it all in now")


async def test_how_long_and_how_much_tomorrow(planned: Talk) -> None:
    assert "24 h apart" in await planned.text("how long between doses")
    await planned.say("done")
    for text in ("how long between doses", "how much more tmrw", "do i still need some"):
        assert (await planned.text(text)).startswith("2 of 3 parts are left"), text


async def test_no_grams_over_the_gate(planned: Talk) -> None:
    await planned.say("ammonia 2")
    for text in ("just tell me the total", "one time or each week?", "how much more tmrw"):
        assert " g of sodium" not in await planned.text(text), text


async def test_with_no_plan_the_pace_is_told_and_no_grams(low: Talk) -> None:
    for text in ("why not all at once", "can i just dump it all in now", "cant i do it quicker"):
        said = await low.text(text)
        assert said.startswith("No, not all at once"), text
        assert "At most 1 °dH a day" in said, text
        assert "dose kh 4" in said, text
        assert " g of " not in said, text
    assert (await low.text("how long between doses")).startswith("24 h from part to part")
    assert (await low.text("one time or each week?")).startswith("Not by the week")


@pytest.mark.parametrize("text", ["so do i need any?", "ok what do i do about it"])
async def test_what_low_kh_needs_is_planned(low: Talk, text: str) -> None:
    (reply,) = await low.say(text)
    assert reply.facts["to"] == 4.0
    assert "sodium bicarbonate" in reply.text


async def test_enough_kh_needs_none(talk: Talk) -> None:
    await talk.say("/tank new Hall 200 l fresh")
    await talk.say("kh 6 ph 7.4 ammonia 0")
    said = await talk.text("so do i need any?")
    assert " g of " not in said
    assert "within the limits" in said


async def test_ammonia_goes_first(talk: Talk) -> None:
    await talk.say("/tank new Hall 200 l fresh")
    await talk.say("kh 2 ph 7.4")
    await talk.say("ammonia 2")
    for text in ("so do i need any?", "ok what do i do about it", "why not all at once"):
        assert " g of " not in await talk.text(text), text


async def test_spoons_get_grams_and_why(low: Talk) -> None:
    (reply,) = await low.say("how many teaspoons for 6 dkh")
    assert reply.facts["to"] == 6.0
    assert "Not by spoon" in reply.text
    assert "6 g of sodium bicarbonate" in reply.text


async def test_stones_ask_for_the_net_volume(low: Talk) -> None:
    said = await low.text("theres gravel and rocks in it")
    assert "How many litres of water are in it" in said
    assert "plan" not in said


async def test_of_nothing_of_kh_nothing_is_answered(talk: Talk) -> None:
    await talk.say("/tank new Hall 200 l fresh")
    await talk.say("no3 20")
    for text in ("why not all at once", "so do i need any?", "how long between doses"):
        said = await talk.text(text)
        assert "dose kh" not in said, text
        assert "a day for KH" not in said, text


@pytest.mark.parametrize(
    "text",
    ["My KH is 3, I like to have 6", "kh is 3, i would love to have 6", "kh 3, i love to have 6"],
)
async def test_a_wish_in_plain_words(talk: Talk, text: str) -> None:
    await talk.say("/tank new Hall 200 l fresh")
    replies = await talk.say(text)
    assert replies[-1].facts["to"] == 6.0
    assert replies[-1].facts["from"] == 3.0


@pytest.mark.parametrize("text", ["i have baking soda", "i got some bicarb"])
async def test_what_is_at_hand_is_dosed_for_a_low_kh(low: Talk, text: str) -> None:
    (reply,) = await low.say(text)
    assert reply.facts["to"] == 4.0
    assert "6 g of sodium bicarbonate" in reply.text


async def test_washing_soda_at_hand_is_refused(low: Talk) -> None:
    said = await low.text("i have soda crystals")
    assert "No carbonate or hydroxide" in said


async def test_what_is_at_hand_where_no_kh_is_low(talk: Talk) -> None:
    await talk.say("/tank new Hall 200 l fresh")
    await talk.say("kh 6 ph 7.4")
    assert " g of " not in await talk.text("i have baking soda")


async def test_what_is_at_hand_where_ammonia_is_high(talk: Talk) -> None:
    await talk.say("/tank new Hall 200 l fresh")
    await talk.say("kh 2 ph 7.4")
    await talk.say("ammonia 2")
    assert (await talk.text("i have baking soda")).startswith("Hall: No buffer now")


async def test_what_is_at_hand_right_behind_a_dose_is_no_wish(low: Talk) -> None:
    await low.say("dosed 5 g baking soda")
    assert " g of sodium" not in await low.text("i have baking soda")
