"""No English reaches a keeper past gettext: conversations in a language made up for that."""

from __future__ import annotations

import re
from collections.abc import AsyncIterator, Mapping
from pathlib import Path

import pytest

from bot.chat.model import Reply
from bot.chat.words import refusals
from bot.chat.words import text as catalogues
from bot.chat.words.cautions import CAUTIONS, caution
from bot.chat.words.findings import line, why
from bot.chat.words.glossary import explained
from core.advice.findings import Finding
from core.advice.plan import Refusal
from core.analytes import ANALYTES
from tests.chat import pseudo
from tests.chat.harness import Talk, talking
from tests.chat.test_finding_words import every_finding

PLANS = Path(__file__).parent / "golden" / "plans_said.txt"


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("locale")
    pseudo.write_catalogue(made)
    return made


@pytest.fixture
async def talk(
    tmp_path: Path, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> AsyncIterator[Talk]:
    monkeypatch.setattr(catalogues, "FOLDER", folder)
    async with talking(tmp_path, language=pseudo.LANGUAGE) as opened:
        yield opened


async def told(talk: Talk, said: str) -> list[Reply]:
    """Send a message, and look behind "more" and "why" of what comes back."""
    replies = await talk.say(said)
    for name in ("more", "why"):
        if any(button.meaning == "more" for reply in replies for button in reply.buttons):
            replies += await talk.say(name)
    return replies


def english(replies: list[Reply], data: str) -> dict[str, list[str]]:
    """Every line and label that says something past gettext, with what it says."""
    shown = [line.text for reply in replies for line in reply.lines]
    shown += [button.label for reply in replies for button in reply.buttons]
    found = {text: pseudo.leaks(text, data.split()) for text in shown}
    return {text: words for text, words in found.items() if words}


CONVERSATIONS = {
    "readings": (
        "fern tap kh pH",
        "ph 7.2 kh 4 gh 8 no3 20 temp 24",
        "ammonia 0.5 ph 8.2 temp 26",
        "/tank new fern 90 l fresh",
        "fern: kh <1 ph ~7 oxygen 8",
        "yesterday 19:00 kh 5",
        "no, kh 6",
        "undo",
        "kh 4 5 6, ph 99",
        "iodine 0.06 kh 5 drops",
        "changed 30%",
        "dosed 3.6 g baking soda",
        "cleaned filter",
        "history of kh",
        "is my water ok?",
        "what is gh?",
        "convert 8 dkh to ppm",
        "co2",
    ),
    "doses": (
        "fern my buffer kh tap",
        "/tank new fern 120 l fresh",
        "ph 6.8 kh 3 gh 6 ammonia 0 temp 25",
        "dose kh 6",
        "dose gh 8",
        "kh +2",
        "what does 10 g baking soda do in 120 l",
        "will crushed coral do anything",
        "how much salt for 20 l ro to gh 6 kh 4",
        "how much thiosulfate for 100 l",
        "how much salt for 100 l nitrite 1",
        "my buffer: 5 g per 80 l raises kh 1",
        "what if i change 30%",
        "/source tap ph 7.6 kh 8 gh 12 no3 5 temp 15",
        "what if i change 50%",
        "nitrate under 20",
        "how much hot water for 30 l at 25 from 12 and 55",
    ),
    "refusals": (
        "fern dose kh by to",
        "dose kh 6",
        "how many litres",
        "/tank new fern 90 l fresh",
        "dose kh 6",
        "kh 4 ph 7",
        "dose kh 4",
        "dose kh 60",
        "dose ph 7",
        "dose kh 6 with soda ash",
        "how much muriatic acid for ph 6.5",
        "how much white powder to raise kh by 2",
        "can i release my fish in the river?",
        "can i mix bleach and vinegar?",
        "what medicine should i use?",
        "ammonia 4 ph 8",
        "dose kh 8",
    ),
    "emergencies": (
        "fern",
        "/tank new fern 90 l fresh",
        "help my fish are gasping",
        "help ammonia spike",
        "ammonia 3 ph 8.2 temp 26 kh 4",
        "help ammonia spike",
        "my child drank the test kit",
        "power is out",
        "the heater is stuck on",
        "i forgot the dechlorinator",
        "ph crash!",
        "can i keep zoanthids boiled?",
    ),
    "findings": (
        "fern neon neons tetra tetras guppies oscar",
        "/tank new fern 90 l fresh",
        "added 6 neon tetras",
        "added 1 oscar",
        "ph 8.6 kh 0.5 gh 0.5 no3 80 temp 31",
        "nitrite 1",
        "copper 0.1 chlorine 0.2 oxygen 3",
        "lost 2 neon tetras",
        "can i keep guppies?",
        "should i change water?",
        "why is my ph dropping",
    ),
    "reminders": (
        "fern test feed look at the heater",
        "/tank new fern 90 l fresh",
        "/remind",
        "remind me to test fern every 7 days at 19:00",
        "remind me to feed fern every monday and thursday at 8:00",
        "remind me to look at the heater on the 31st of every month at 9:00",
        "remind me to test fern yesterday",
        "/remind",
        "done",
        "quiet hours 22:00-07:00",
        "quiet hours",
        "holiday until 4 May",
        "holiday off",
        "stop reminding me to feed fern",
    ),
    "arrivals": (
        "fern Quarantine quarantine guppies cherry shrimps",
        "/tank new fern 90 l fresh",
        "ph 7.8 kh 8 gh 12 temp 25 ammonia 0 nitrite 0",
        "brought home 6 cherry shrimps, bag kh 7 gh 11, closed 1 h",
        "shrimps came by post, bag ph 6.2 ammonia 3 temp 18 kh 7",
        "new fish home, bag ph 6.4 kh 2 temp 22",
        "⟦ｑｕａｒａｎｔｉｎｅ ｗｉｔｈ ｒｅｍｉｎｄｅｒｓ⟧",
        "quarantine",
        "/remind",
        "ammonia 1",
        "bringing home 6 guppies",
    ),
    "animals": (
        "fern quarry tap neon neons tetra tetras angelfish freshwater dwarf scalare Pterophyllum"
        " Centropyge Paracheirodon innesi corydoras guppies tetar",
        "/tank new fern 90 l fresh",
        "/tank new quarry 240 l fresh",
        "fern: ph 6.6 kh 2 gh 4 temp 25",
        "fern: added 10000 neons",
        "no",
        "fern: added 6 neon tetras",
        "added 6 neon tetar",
        "added 2 angelfish",
        "fern: moved 2 neon tetras to quarry",
        "fern: lost 2",
        "/tank fern",
        "can i keep angelfish with neon tetras",
        "can i keep corydoras",
        "/source tap ph 7.2 gh 3 kh 1",
    ),
    "questions": (
        "fern tap well",
        "/tank new fern 120 l fresh",
        "should i do a water change?",
        "kh 4.5 gh 6 ph 7.4 temp 25 ammonia 0 no3 42",
        "/source tap ph 7.6 kh 5 gh 7 no3 5 temp 25",
        "get nitrate under 35",
        "when will nitrate reach 50",
        "is ammonia 0.02 safe at ph 7 and 24 c?",
        "is ammonia 0.5 safe at ph 8.2 and 26 c?",
        "is 30 c too warm?",
        "what if i change 33% every week",
        "raise gh by 2 and kh by 1, ca:mg 4:1",
        "how much salt for 20 l ro to 35 ppt",
        "what does 10 g calcium chloride do in 100 l",
        "dose nitrate 15",
        "how much is a teaspoon of baking soda in g",
        "convert 1",
        "/source",
        "/source well",
        "/source tap for fern",
    ),
    "settings": (
        "fern moss tank Tank Europe Europa Berlin Helsinki Dublin kh en eo",
        "/start",
        "/help",
        "/privacy",
        "/settings",
        "/zone Europe/Berlin",
        "/zone Europa/Berlin",
        "/settings fahrenheit",
        "/tank",
        "my tank is 60 x 30 x 36 cm",
        "/tank new fern 90 l fresh",
        "/tank fern",
        "/tank kit kh 0.5 per drop",
        "/tank rename fern moss",
        "moss was set up on 3 march 2025",
        "/tank delete moss",
        "yes",
        "hello there",
    ),
}


@pytest.mark.parametrize("topic", CONVERSATIONS)
async def test_a_conversation(talk: Talk, topic: str) -> None:
    data, *messages = CONVERSATIONS[topic]
    for message in messages:
        replies = await told(talk, message)
        assert replies, message
        assert not english(replies, data), message


@pytest.mark.parametrize("finding", every_finding(), ids=lambda finding: finding.id)
def test_findings(folder: Path, finding: Finding) -> None:
    names = [value for value in finding.facts.values() if isinstance(value, str)]
    data = [word for name in names for word in re.findall("[A-Za-z]+", name)]
    with catalogues.speaking(pseudo.LANGUAGE, folder):
        for text in [line(finding), *why(finding)]:
            assert not pseudo.leaks(text, data), text


REFUSED: Mapping[str, float | str] = {
    "each": 0.6, "least": 17.0, "most": 75.0, "measure": "mg/L",
    "analyte": "gh", "from": 3.0, "to": 5.0, "highest": 40.0, "kh": 4.1, "ph": 7.25,
    "volume_l": 12.5, "ammonia": 1.2, "saturation": 12.3, "chlorine": 9.0, "nitrite": 50.0,
    "chloride": 300.0, "substance": "potassium nitrate", "species": "loach",
    "danger": "bleach", "was": 4.0, "step": 1.0, "hours": 23.0, "days": 4.0, "expected": 9.9,
    "said": "fern",
}  # fmt: skip
"""All facts that any refusal tells."""


@pytest.mark.parametrize("reason", refusals.REASONS)
def test_refusals(folder: Path, reason: str) -> None:
    with catalogues.speaking(pseudo.LANGUAGE, folder):
        for text in refusals.refused(Refusal(reason, REFUSED), "fern"):
            assert not pseudo.leaks(text, ["fern", "gh", "loach"]), text


def test_cautions_and_explanations(folder: Path) -> None:
    with catalogues.speaking(pseudo.LANGUAGE, folder):
        for text in (line for name in CAUTIONS for line in caution(name)):
            assert not pseudo.leaks(text), text
        for text in (line for analyte in ANALYTES for line in explained(analyte)):
            assert not pseudo.leaks(text), text


async def test_plans(talk: Talk) -> None:
    for message in PLANS.read_text(encoding="utf-8").splitlines():
        replies = await told(talk, message.removeprefix("~"))
        assert not english(replies, "fern reef meadow brook tap"), message


async def test_what_is_due(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("remind me to feed fern every day at 19:00")
    await talk.say("remind me to test fern every day at 19:00")
    replies = await talk.wait(hours=8)
    assert replies
    assert not english(replies, "fern feed test")
    assert not english(await talk.press(1, replies[0]), "fern feed test")


async def test_a_label_can_be_typed_in_the_language_in_which_it_was_given_out(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("ph 7.2 kh 4 ammonia 0 temp 24")
    (reply,) = await talk.say("dose kh 6")
    (label,) = [button.label for button in reply.buttons if "ｌｏｇ" in button.label]
    (logged,) = await talk.say(label)
    assert [event["kind"] for event in logged.facts["events"]] == ["dose"]


async def test_the_command_behind_more_is_a_label_in_another_language(talk: Talk) -> None:
    await talk.say("/tank new fern 90 l fresh")
    await talk.say("ph 7.2 kh 4 ammonia 0 temp 24")
    (reply,) = await talk.say("dose kh 6")
    (more,) = [button for button in reply.buttons if button.meaning == "more"]
    (typed,) = await talk.say(more.label)
    (pressed,) = await talk.press(len(reply.buttons), reply)
    assert typed.text == pressed.text != ""


@pytest.mark.parametrize(
    ("text", "found", "why"),
    [
        ("⟦Fern: ｌｏｇｇｅｄ 2.7 g⟧", [], "a name, a symbol"),
        ("⟦Fern: logged 2.7 g⟧", ["logged"], "within the brackets"),
        ("⟦Fern⟧ ｌｏｇｇｅｄ", ["ｌｏｇｇｅｄ"], "outside of them"),
        ("8 °dH = 143 ppm", [], "symbols alone"),
    ],
)
def test_leaks_are_seen(text: str, found: list[str], why: str) -> None:
    assert pseudo.leaks(text, ["fern"]) == found, why
