"""An acid, peroxide or bleach that few words tell to be in the tank is a call for help."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

SOUR = [
    "acid 10 ml in", "h2o2 20 ml went in", "put some vinegar in", "put vinegar in",
    "vinegar 10 ml went in", "10 ml vinegar in", "added acid",
    "put some vinegar in what now", "put a splash of vinegar in to lower ph",
    "my kid poured acid into the big tank", "lemon juice went in by mistake",
    "acid 10 ml in fern", "etwas essig reingekippt", "10ml säure rein",
    "un peu de vinaigre dedans", "un poco de vinagre dentro", "vinagre 10 ml dentro",
    "un po' di aceto dentro", "scheutje azijn erin", "wlałem trochę octu",
    "20 ml wody utlenionej wlałem", "hällde i lite ättika",
]  # fmt: skip

BLEACH = [
    "a splash of bleach went in", "in went 10 ml of bleach", "bleach 5 ml in",
    "ein schuss chlorbleiche ist rein", "un peu de javel dedans", "un poco de lejía dentro",
    "foi um pouco de lixívia para dentro", "un po' di candeggina dentro", "scheutje bleek erin",
    "trochę wybielacza wlałem", "hällde i lite klorin",
]  # fmt: skip

NOT_TOLD = [
    "no acid in", "no vinegar went in", "put some vinegar in the kettle", "put acid in tomorrow",
    "will put some vinegar in", "almost put some vinegar in", "10 ml vinegar in 90 l", "vinegar",
    "acid buffer 5 g in", "amino acids 5 ml in", "soaked the heater in vinegar",
    "vinegar in the bucket", "my neighbour put vinegar in", "put vinegar in or not",
    "can i put some vinegar in", "put some vinegar in?", "morgen essig rein", "keine säure rein",
    "pas de vinaigre dedans", "niet azijn erin", "if vinegar went in",
]  # fmt: skip


@pytest.mark.parametrize(
    ("told", "danger"),
    [*((told, "overdose") for told in SOUR), *((told, "bleach") for told in BLEACH)],
)
async def test_what_went_in_is_a_call_that_stands(talk: Talk, told: str, danger: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("ammonia 0 nitrite 0 ph 7 temp 25")
    reply = (await talk.say(told))[-1]
    assert reply.facts["emergency"] == danger
    reply = (await talk.say("all good?"))[-1]
    assert reply.facts.get("emergency", reply.facts.get("called")) == danger


@pytest.mark.parametrize("told", NOT_TOLD)
async def test_what_did_not_go_in_is_no_call(talk: Talk, told: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    replies = await talk.say(told)
    assert not any("emergency" in reply.facts for reply in replies)


async def test_an_amount_of_what_is_no_known_acid_is_kept_beside_the_call(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    kept, called = await talk.say("dosed 20 ml h2o2")
    assert [event["millilitres"] for event in kept.facts["events"]] == [20]
    assert called.facts["emergency"] == "overdose"


@pytest.mark.parametrize("told", ["added some vinegar", "pus vinagre no aquário"])
async def test_a_dose_of_a_known_acid_is_judged_by_its_name(talk: Talk, told: str) -> None:
    await talk.say("/tank new fern 90 l fresh")
    (reply,) = await talk.say(told)
    assert [finding["id"] for finding in reply.facts["findings"]] == ["acid_dosed"]


async def test_an_acid_beside_another_thing_is_not_lost(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    called = (await talk.say("added salt and vinegar"))[-1]
    assert called.facts["emergency"] == "overdose"
