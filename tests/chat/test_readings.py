"""From a message to a stored reading, said back once, judged once."""

from __future__ import annotations

import pytest

from bot.app import App
from bot.store.log import Stored
from core.message.model import Value
from tests.chat.harness import Talk


async def stored(app: App, talk: Talk, tank: str) -> list[Stored[Value]]:
    async with app.database.read() as uow:
        chat = await uow.chats.find(talk.address)
        assert chat is not None
        tanks = {held.name: held.id for held in await uow.tanks.of_chat(chat.id)}
        return await uow.log.readings(tanks[tank])


async def test_a_reading_before_any_set_up_works_at_once(talk: Talk) -> None:
    (reply,) = await talk.say("ph 7.2 kh 4 gh 8 no3 20")
    first = reply.lines[0].text
    assert "KH 4 °dH = 71 ppm CaCO3 = 1.4 meq/L" in first
    assert "hard by USGS" in first
    assert "/tank rename Tank" in reply.text
    assert [button.label for button in reply.buttons] == ["undo"]
    assert reply.facts["hardness_class"] == "hard (USGS)"
    assert [value["analyte"] for value in reply.facts["values"]] == ["ph", "kh", "gh", "nitrate"]
    assert [r.what.canonical for r in await stored(talk.app, talk, "Tank")] == [20, 8, 4, 7.2]


async def test_each_value_keeps_its_raw_text_author_and_moment(talk: Talk) -> None:
    await talk.say("2h ago kh 4")
    async with talk.app.database.read() as uow:
        chat = await uow.chats.find(talk.address)
        assert chat is not None
        entry = await uow.log.latest(chat.id)
    assert entry is not None
    assert (entry.text, entry.author_name) == ("2h ago kh 4", "Anna")
    assert (talk.clock.now() - entry.readings[0].at).total_seconds() == 7200


async def test_the_worst_three_findings_and_the_rest_under_more(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (reply,) = await talk.say("ph 8.4 temp 26 ammonia 2 nitrite 1 kh 0.5 no3 80 oxygen 2 gh 0.5")
    findings = reply.facts["findings"]
    assert len(findings) > 3
    assert [f["severity"] for f in findings] == sorted(
        (f["severity"] for f in findings), key=["alarm", "warn", "note"].index
    )
    shown = [line.text for line in reply.lines]
    assert "Ammonia" in shown[1]
    more = await talk.text("more")
    assert "80 mg/L" in more


async def test_un_ionised_ammonia_is_in_the_facts(talk: Talk) -> None:
    """SRAC 463 (Durborow, Crosby & Brunson 1992), worked example, grade A: 0.73 mg/L."""
    facts = await talk.facts("ph 8.6 temp 30 nh3-n 3")
    assert facts["nh3_n"] == pytest.approx(0.73, abs=0.005)


async def test_ammonium_counts_at_low_ph(talk: Talk) -> None:
    """EPA 822-R-13-001: 5 mg/L at pH 6.5, 25 °C is over the chronic value, un-ionised or not."""
    facts = await talk.facts("ph 6.5 temp 25 nh3-n 5")
    assert facts["nh3_n"] < 0.02
    assert facts["findings"][0]["id"] == "ammonia"


async def test_a_doubtful_part_is_asked_and_the_rest_stored_at_once(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    kept, asked = await talk.say("kh 4 ph 72")
    assert [value["analyte"] for value in kept.facts["values"]] == ["kh"]
    assert [button.meaning for button in asked.buttons] == ["yes", "no", ""]
    assert [r.what.analyte for r in await stored(talk.app, talk, "Fern")] == ["kh"]
    await talk.press(1, asked)
    assert {r.what.analyte: r.what.canonical for r in await stored(talk.app, talk, "Fern")} == {
        "kh": 4,
        "ph": 7.2,
    }
    assert "settled already" in (await talk.press(1, asked))[0].text
    assert len(await stored(talk.app, talk, "Fern")) == 2


async def test_a_doubtful_part_left_out_stays_out(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (asked,) = await talk.say("ph 72")
    assert "Left out" in await talk.text("no")
    assert "settled already" in (await talk.press(1, asked))[0].text
    assert await stored(talk.app, talk, "Fern") == []


async def test_a_tank_that_the_chat_does_not_have_is_asked(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (asked,) = await talk.say("quarry: kh 9")
    assert asked.buttons[0].label == "add Quarry"
    assert await stored(talk.app, talk, "Fern") == []
    await talk.press(1)
    assert [r.what.canonical for r in await stored(talk.app, talk, "Quarry")] == [9]
    await talk.press(1, asked)
    assert len(await stored(talk.app, talk, "Quarry")) == 1


async def test_several_tanks_in_one_message(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/tank new Quarry 240 l fresh")
    replies = await talk.say("fern: kh 4\nquarry: kh 12")
    assert [reply.facts["tank"] for reply in replies] == ["Fern", "Quarry"]
    assert [r.what.canonical for r in await stored(talk.app, talk, "Quarry")] == [12]


async def test_the_tank_used_last_is_meant_where_none_is_named(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/tank new Quarry 240 l fresh")
    assert (await talk.facts("kh 12"))["tank"] == "Quarry"
    await talk.say("fern: ph 7")
    assert (await talk.facts("kh 4"))["tank"] == "Fern"


async def test_kit_drops_use_the_tanks_kit(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert (await talk.facts("kh 5 drops"))["values"][0]["canonical"] == 5.0
    await talk.say("/tank kit kh 0.5 per drop")
    assert (await talk.facts("kh 5 drops"))["values"][0]["canonical"] == 2.5


async def test_not_detected_has_no_number(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (reply,) = await talk.say("no2 nd")
    assert reply.lines[0].text == "Fern: nitrite not detected"
    assert reply.facts["values"][0]["canonical"] is None


async def test_a_gravity_is_said_with_its_salinity(talk: Talk) -> None:
    """SG 25/25 °C of 1.0264 is 35.2 g/kg by TEOS-10 (gsw), computed, grade C."""
    await talk.say("/tank new Lagoon 150 l marine")
    assert "SG 1.0264 = salinity 35.2 g/kg" in await talk.text("sg 1.0264")


async def test_an_event_is_stored_beside_the_readings(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    facts = await talk.facts("changed 30% kh 4")
    assert facts["events"][0]["kind"] == "water_change"
    assert facts["events"][0]["percent"] == 30
    assert facts["values"][0]["canonical"] == 4


async def test_an_unsaid_basis_is_said_once(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (first,) = await talk.say("no2-n 0.25")
    assert "more" not in [button.label for button in first.buttons]
    (second,) = await talk.say("ammonia 0.25")
    place = [button.label for button in second.buttons].index("more") + 1
    assert "judge it as nitrogen" in (await talk.press(place, second))[0].text
    (third,) = await talk.say("ammonia 0.25")
    assert "judge it as nitrogen" not in third.text
    assert "judge it as nitrogen" not in await talk.text("more")


@pytest.mark.parametrize(
    "text",
    [
        "good morning everyone",
        "the ph was fine i think",
        "lunch?",
        "yes",
        "no",
        "done",
        "more",
        "ok",
    ],
)
async def test_people_talking_in_a_group_are_met_with_silence(group: Talk, text: str) -> None:
    assert await group.say(text) == []


async def test_a_reading_in_a_group_is_taken_without_being_addressed(group: Talk) -> None:
    (reply,) = await group.say("kh 4 ph 7.2")
    assert reply.facts["values"][0]["canonical"] == 4


async def test_a_yes_between_people_does_not_confirm_an_old_doubt(group: Talk) -> None:
    await group.say("kh 4")
    (asked,) = await group.say("ph 72", addressed=True)
    assert asked.buttons
    await group.wait(minutes=20)
    assert await group.say("yes") == []
    assert "Left out" in (await group.press(2, asked))[0].text


async def test_what_was_told_lately_is_not_said_again_unless_it_got_worse(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "KH 3 is low" in await talk.text("kh 3")
    await talk.wait(days=1)
    (again,) = await talk.say("kh 3")
    assert "is low" not in again.text
    assert again.facts["findings"][0]["id"] == "low_kh"
    assert "KH 3 is low" in await talk.text("more")
    await talk.wait(days=1)
    assert "KH 2 is low" in await talk.text("kh 2")


async def test_an_alarm_is_said_every_time(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    for _ in range(2):
        assert "Ammonia" in (await talk.text("ph 8 temp 26 nh3-n 2")).partition("\n")[2]


async def test_a_finding_taken_back_with_its_reading_is_news_again(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 3")
    await talk.say("undo")
    assert "KH 3 is low" in await talk.text("kh 3")


async def test_why_gives_reasons_numbers_and_source(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 3")
    answer = await talk.text("why")
    assert "Numbers: KH 3" in answer
    assert "Source:" in answer


async def test_a_free_analyte_is_kept_as_given_and_never_advised_on(talk: Talk) -> None:
    await talk.say("/tank new Reef 200 L marine")
    (reply,) = await talk.say("strontium 80 µg/l, iodine 0.9")  # far from seawater's 8 and 0.06
    assert "strontium 80 µg/L, iodine 0.9 mg/L" in reply.text
    assert reply.facts["findings"] == []
    kept = {row.what.analyte: row.what.canonical for row in await stored(talk.app, talk, "Reef")}
    assert kept == {"strontium": pytest.approx(0.08), "iodine": 0.9}
    (history,) = await talk.say("history of strontium")
    assert "strontium 80 µg/L" in history.text


async def test_an_older_reading_told_late_is_kept_without_advice_for_now(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 6")
    (late,) = await talk.say("10 days ago kh 2")
    assert late.facts["findings"] == []
    assert [r.what.canonical for r in await stored(talk.app, talk, "Fern")] == [6, 2]
    (first,) = await talk.say("10 days ago gh 0.5")
    assert "low_gh" in [f["id"] for f in first.facts["findings"]]


async def test_why_begins_with_what_is_asked_about(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("nh3-n 0 nitrite 2 ph 6.2 kh 6")
    (answer,) = await talk.say("why is my ph so low")
    assert "pH 6.2 with KH 6" in answer.lines[0].text
    assert answer.facts["findings"][0]["ph"] == 6.2


async def test_the_animal_told_last_is_the_one_that_is_not_known(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    for name in ("wyverns", "basilisks", "gryphons", "mantikores"):
        (reply,) = await talk.say(f"added 2 {name}")
        assert f"“{name}”" in reply.text
        assert reply.facts["findings"][0]["said"] == name


async def test_each_jump_is_said(talk: Talk) -> None:
    await talk.say("/tank new Reef 400 l marine")
    await talk.say("salinity 35 temp 25.5")
    await talk.wait(days=1)
    assert "from 35 to 30" in await talk.text("salinity 30")
    await talk.wait(hours=1)
    assert "from 30 to 25" in await talk.text("salinity 25")


async def test_a_kits_price_is_asked_about_and_stored_only_on_a_yes(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert "may be a price" in await talk.text("kh test 12.99")
    assert "values" not in await talk.facts("nitrat test 12 €")
    assert await stored(talk.app, talk, "Fern") == []
    await talk.say("kh test 12.99")
    await talk.press(1)
    assert (await talk.facts("how is fern"))["readings"] == {"kh": pytest.approx(12.99)}


async def test_what_is_under_a_kits_first_mark_is_asked_about(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (asked,) = await talk.say("nitratos por debajo de 5")
    (kept,) = await talk.press(1, asked)
    assert kept.facts["values"][0]["qualifier"] == "<"


async def test_rows_that_commas_divide_go_to_their_tanks(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("/tank new Quarry 90 l fresh")
    told = await talk.say("date,tank,kh\n2026-02-01,Fern,5\n2026-02-08,Quarry,6")
    held = {(r.facts["tank"], r.facts["values"][0]["canonical"]) for r in told}
    assert held == {("Fern", 5), ("Quarry", 6)}
