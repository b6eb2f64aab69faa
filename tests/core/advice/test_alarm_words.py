"""The words of danger in nine languages: what is a call for help, and what is none."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path

import pytest

from bot.chat.words.cautions import CAUTIONS
from core.advice.alarm_words import LANGUAGES, build, named, read
from core.advice.calls import ORDER, asks_what_now, distressed, recognise
from core.advice.cautions import ASKED, SAID
from core.advice.forbidden import REFUSED
from tests.messages import corpus

CALLS = Path(__file__).parent / "calls_for_help.txt"


def calls() -> list[tuple[str, str | None]]:
    rows = []
    for line in CALLS.read_text(encoding="utf-8").splitlines():
        if not line.startswith("#"):
            _, danger, text = line.split("|")
            rows.append((text, None if danger == "None" else danger))
    return rows


@pytest.mark.parametrize(("text", "danger"), calls())
def test_what_a_message_calls_for(text: str, danger: str | None) -> None:
    assert recognise(text) == danger


OF_GROUPS = {"drowning", "collapsed", "breath", "splashed", "bleeding", "maybe_dead"}
OF_GROUPS |= {"copper", "copper_metal", "ph_high", "filter_harmed"}
"""Dangers whose lines stand in the English file, for all languages by groups."""


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_language_knows_every_danger(language: str) -> None:
    text = (files("core.message") / "words" / "danger" / f"{language}.txt").read_text("utf-8")
    _, lines = read(text, language)
    known = {section: {i for s, i, _ in lines if s == section} for section, _, _ in lines}
    assert set(ORDER) - OF_GROUPS <= known["danger"] <= set(ORDER)
    assert known["caution"] == set(SAID)
    assert known["refuse"] - {"bleach", "condensate"} == {"mixing", "human"}
    assert known["whole"] == {"general", "what_now"}


SHARED = {
    "medicine",
    "formalin",
    "copper",
    "pipe",
    "condensate",
    "condenser",
    "softened",
    "plaster",
    "baking_powder",
}
SHARED |= {"battery", "caustic"}
SHARED |= {"child", "pet", "pool", "adult", "relative", "drank", "ate", "harmful", "inhaled"}
SHARED |= {"vapour", "cough", "hard_breath", "my_breath", "fainted", "fell_in", "drowned"}
SHARED |= {
    "bleeding",
    "much_blood",
    "cut_by",
    "limb",
    "in_eye",
    "sore_eye",
    "skin",
    "burnt",
    "alive",
}
SHARED |= {"maybe", "dead", "plant", "animal", "cement", "poured", "mistake", "why", "die"}
SHARED |= {"after_change", "put_in", "cement"}
SHARED |= {"maybe", "dead", "plant", "animal"}
SHARED |= {"bleeding", "much_blood", "cut_by", "limb", "in_eye", "sore_eye", "skin", "burnt"}
SHARED |= {"battery", "caustic", "strong_acid", "carbonates", "cylinder", "well_water"}
SHARED |= {
    "ammonia",
    "sky_high",
    "poisoning",
    "chlorine",
    "home",
    "into",
    "tap",
    "untreated",
    "forgot",
}
SHARED |= {"dechlorinator", "treated_water", "without", "used", "fell", "fell_hard", "much_too"}
SHARED |= {
    "remedy",
    "bottleful",
    "doubled",
    "mistake",
    "stuck_on",
    "mad",
    "strip",
    "damp",
    "shocked",
}
SHARED |= {
    "current",
    "went",
    "all_night",
    "ran",
    "excess",
    "too_high",
    "oxygen",
    "in_mouth",
    "dead",
}
SHARED |= {"all_of", "all_things", "all_dead", "fish_word", "plant", "dieoff", "breathe", "wildly"}
SHARED |= {
    "ingest",
    "tank_water",
    "shed",
    "outdoors",
    "gasmaker",
    "shut",
    "keep_it",
    "stuff",
    "only",
}
SHARED |= {
    "pure_kind",
    "level_drops",
    "heavy",
    "floor",
    "bears",
    "zoa",
    "heat",
    "thio",
    "change_it",
}
SHARED |= {"drink", "peed", "penny", "household", "gone_in", "jumping", "lie_down"}
SHARED |= {"heater_off", "no_mistake", "poorly"}
"""Groups that lines of the English file use: the words of all languages are in them."""


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_language_has_its_words_of_what_is_refused(language: str) -> None:
    text = (files("core.message") / "words" / "danger" / f"{language}.txt").read_text("utf-8")
    groups, _ = read(text, language)
    assert set(groups) >= SHARED


BY_GROUPS = {
    "softened",
    "copper_pipes",
    "mixing",
    "battery_acid",
    "caustic",
    "condensate",
    "plaster",
    "baking_powder",
}
BY_GROUPS |= {"acid", "carbonate", "filter_tap", "filter_off"}
"""What the English file names for all languages, by the groups that they share."""


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_language_knows_every_caution_that_is_asked_about(language: str) -> None:
    text = (files("core.message") / "words" / "danger" / f"{language}.txt").read_text("utf-8")
    _, lines = read(text, language)
    known = {of for section, of, _ in lines if section == "asked"}
    assert known >= {*ASKED, *REFUSED} - BY_GROUPS - {"release"}
    assert {*SAID, *ASKED} <= set(CAUTIONS)


CRIES = {
    "power was out all night tank is 17 degrees now",
    "help ammonia 2 ph 8.2",
    "help",
    "/help",
    "ph crashed to 5.8",
    "nitrite off the chart",
    "why did my ph crash",
    "2 guppies died and 1 neon is sick",
    "my heater broke",
    "dog peed in the tank",
    "all my neons died",
    "alle Neons gestorben",
    "todos los neones murieron",
    "all my fish died once",
    "everybody looks dead",
    "my betta looks dead",
    "2 neons seem dead",
    "tutti sembrano morti",
    "my heater died in the living room",
    "fed too much prob",
    "added half a cup of salt",
    "added a quarter cup of salt",
    "one neon died i guess",
}
"""Messages of the parser's own corpus that are calls for help, or the command's word."""


def test_no_reading_event_question_or_talk_is_a_call_for_help() -> None:
    for case in corpus.cases():
        everyone_died = case.meaning.startswith("event lost") and "text=all" in case.meaning
        if case.text not in CRIES and not everyone_died:
            assert recognise(case.text) is None, case.text


def test_parts_anywhere_near_and_never() -> None:
    rules = build({"en": "[group]\nx = one, two words\n[danger]\na = $x + leak* > tank ! calm\n"})
    assert rules.found("the tank, leaking near my tank, one") == {"danger": {"a"}}
    assert rules.found("two words. leaks. tank") == {}  # a full stop ends what is near
    assert rules.found("one, the tank leaks") == {}  # the order of > counts
    assert rules.found("one leak in the tank, calm") == {}
    assert rules.found("two other words leak in the tank") == {}


@pytest.mark.parametrize("line", ["[danger]\nno equals sign", "[unknown]\na = b"])
def test_a_line_that_cannot_be_read_is_named(line: str) -> None:
    with pytest.raises(ValueError, match=r"danger/xx\.txt line"):
        read(line, "xx")


def test_a_message_is_whole_or_it_is_not() -> None:
    assert asks_what_now("What now?")
    assert asks_what_now("und jetzt")
    assert not asks_what_now("what now, kh 4")
    assert "whole" not in named("help me to choose fish")


def test_distress_counts_only_where_nothing_else_was_understood() -> None:
    assert recognise("he is not eating") is None
    assert distressed("he is not eating")
    assert not distressed("kh 4")


@pytest.mark.parametrize(
    "text",
    [
        "my shrimp look awful",
        "die fische sehen schrecklich aus",
        "les poissons ont une sale tête",
        "los peces se ven fatal",
        "os peixes estão péssimos",
        "i pesci stanno malissimo",
        "de vissen zien er vreselijk uit",
        "ryby wyglądają okropnie",
        "fiskarna ser hemska ut",
    ],
)
def test_who_looks_awful_is_in_distress(text: str) -> None:
    assert distressed(text)


def test_plants_that_look_awful_are_no_distress() -> None:
    assert not distressed("the plants look awful")
    assert not distressed("die pflanzen sehen schrecklich aus")


@pytest.mark.parametrize(
    "text",
    [
        "fish look drunk",
        "fish weird now",
        "cube fish weird",
        "they act strange since the soda",
        "smth wrong with my fish",
        "something off with them",
        "all snails closed up",
        "die fische sind komisch seit dem natron",
        "alle schnecken sind zu",
        "ils sont bizarres depuis le bicarbonate",
        "se comportan raro desde el bicarbonato",
        "eles parecem bêbados",
        "si comportano in modo strano",
        "ze doen raar",
        "dziwnie się zachowują",
        "fiskarna är konstiga",
        "fishes is on ground lying",
        "fish lay on bottom",
        "guppies are a bit wobbly but ok",
        "clowns look weird",
        "fish no swim",
        "bettas breathe fast",
        "die fische schwanken",
        "les poissons vont mal",
        "los peces tiemblan",
        "os peixes não estão bem",
        "i pesci barcollano",
        "de vissen wankelen",
        "ryby się chwieją",
        "fiskarna vinglar",
    ],
)
def test_who_behaves_oddly_is_in_distress(text: str) -> None:
    assert distressed(text)


@pytest.mark.parametrize(
    "text",
    [
        "my fish are funny",
        "the kids act strange",
        "weird, the app froze",
        "weird question about my fish",
        "the fish store guy was weird",
        "something wrong with the heater",
        "snails everywhere",
        "he floats like a leaf in the picture",
        "my fish are weird lol",
        "fish look ok",
        "fish lay eggs on bottom",
        "the wobbly stand of my fish tank",
        "is kh 4 not good for fish",
        "fish are not slow",
        "they calmed down",
        "schnecken zu verschenken",
        "de kinderen doen raar",
        "barnen beter sig underligt",
    ],
)
def test_who_only_looks_odd_in_talk_is_not(text: str) -> None:
    assert recognise(text) is None
    assert not distressed(text)
