"""A change's doubt, from the words to the words."""

from __future__ import annotations

from tests.chat.harness import Talk


async def test_the_figures_have_their_ends_and_more_tells_them(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("ph 7.2 kh 4.5 gh 8 no3 40 temp 25 ammonia 0.25")
    await talk.say("/source tap ph 7.6 kh 8.5 gh 10 no3 5 temp 25")
    facts = await talk.facts("what if i change 20%")
    for stage, between in facts["interval"].items():
        if stage == "largest_safe_share":
            assert between[0] < facts["largest_safe_share"] < between[1]
        else:
            # A drop is counted whole: what was read is the upper end of KH, so of open air's pH.
            assert between["ph"][0] < facts[stage]["ph"] < between["ph"][1] + 0.01
            assert set(between) == {"ph", "kh", "gh", "nitrate", "nh3_n"}
    assert "retest_first" not in facts
    more = await talk.text("more")
    assert "nine times in ten" in more
    assert "The largest safe share then is" in more


async def test_where_the_kits_doubt_decides_it_says_to_retest_first(talk: Talk) -> None:
    """PH 8.2 at 26 °C: 0.5 mg/L N is 0.044 of poison; with pH and ammonia a step up 0.08."""
    await talk.say("/tank new Quarry 240 l fresh")
    await talk.say("kh 10 gh 12 ph 8.2 temp 26 ammonia 0.5")
    await talk.say("/source tap ph 8.2 kh 10 gh 12 temp 26 total chlorine 0")
    (reply,) = await talk.say("what if i change 5%")
    assert reply.facts["retest_first"] == ["ammonia", "ph"]
    assert reply.lines[0].text.startswith("Retest ammonia and pH first")
