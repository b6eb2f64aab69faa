"""Nothing that raises pH beside ammonia: powder, lime, a least part, or what an old reading said.

Un-ionised shares are those of Emerson et al. 1975, which `core/water` is tested against.
"""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def told(talk: Talk, *texts: str) -> None:
    for text in texts:
        await talk.say(text)


@pytest.mark.parametrize("lime", ["crushed coral", "limestone"])
async def test_lime_waits_for_ammonia_as_powder_does(talk: Talk, lime: str) -> None:
    await told(talk, "/tank new Oldie 100 l fresh", "added 10 guppies")
    await told(talk, "ph 6.4 kh 1 gh 8 temp 25 ammonia 3")
    (reply,) = await talk.say(f"can i put {lime} in")
    assert reply.facts["refused"] == "ammonia"
    assert "with this much ammonia" in reply.lines[0].text
    await talk.say("ammonia 0")
    assert (await talk.text(f"can i put {lime} in")).startswith(f"Oldie: {lime} will dissolve")
    await talk.wait(days=20)
    await talk.say("ph 6.4 kh 1 gh 8 temp 25")
    assert (await talk.text(f"can i put {lime} in")).startswith("Only if total ammonia is under")


async def test_the_least_part_waits_while_ammonia_is_warned_of(talk: Talk) -> None:
    await told(talk, "/tank new Oldie 100 l fresh", "added 10 guppies")
    await told(talk, "ph 5.6 kh 0 gh 14 temp 25 ammonia 3")
    assert (await talk.facts("dose kh 4"))["refused"] == "ammonia"


async def test_old_ammonia_over_what_a_plan_bears_is_measured_again_first(talk: Talk) -> None:
    await told(talk, "/tank new Oldie 100 l fresh", "added 10 guppies", "ph 7 kh 4 temp 25")
    await talk.say("ammonia 1")
    await talk.wait(days=4)
    (reply,) = await talk.say("dose kh 6")
    assert reply.facts["refused"] == "ammonia_old"
    assert "the last was 1 mg/L, 4 days ago" in reply.lines[0].text
    await talk.wait(days=12)
    assert "Only if total ammonia is under" in await talk.text("dose kh 6")


async def test_water_cut_against_ammonia_is_not_told_to_get_its_buffer_back(talk: Talk) -> None:
    await told(talk, "/tank new Oldie 100 l fresh", "added 10 guppies")
    await told(talk, "ph 5.2 kh 0 gh 20 temp 22 ammonia 6")
    text = await talk.text("changed 10% with ro")
    assert "No buffer before the ammonia is gone" in text
    assert "put GH and KH" not in text


async def test_without_any_animal_ammonia_stops_no_buffer(talk: Talk) -> None:
    # Fishless cycling: no gate once it is confirmed that nothing lives there; common practice.
    await talk.say("tank Fern 120 l")
    await talk.say("kh 3 ph 6.4 ammonia 2 temp 25")
    (refused,) = await talk.say("dose kh 6")
    assert refused.facts["refused"] == "ammonia"
    assert "Send: no animals at all" in refused.text
    (asked,) = await talk.say("no animals at all")
    assert "no snail and no shrimp" in asked.text
    await talk.say("yes")
    plan = await talk.facts("dose kh 6")
    assert len(plan["parts"]) == 3
    await talk.say("ammonia 5")
    (refused,) = await talk.say("dose kh 6")
    assert refused.facts["refused"] == "ammonia_stalls"
    await talk.say("ammonia 2")
    await talk.say("added 2 guppies")
    (refused,) = await talk.say("dose kh 6")
    assert refused.facts["refused"] == "ammonia"
    assert "no animals at all" not in refused.text


async def test_a_bare_no_tells_of_no_animals(talk: Talk) -> None:
    await talk.say("tank Fern 120 l")
    assert "no snail" not in await talk.text("no")
    assert "no snail and no shrimp" in await talk.text("no animals in there")
