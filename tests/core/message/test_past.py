"""What is asked of the past, and what tells something instead."""

from __future__ import annotations

from datetime import date

import pytest

from core.message.past import Past, asked, days_of

TANKS = ("Fern", "Quarry")


@pytest.mark.parametrize(
    ("text", "past"),
    [
        ("when did i last change the water", Past("when", "water_change")),
        ("when was the last water change in fern?", Past("when", "water_change", tank="Fern")),
        ("last water change", Past("last", "water_change")),
        ("did i change the water last week", Past("whether", "water_change", span="last_week")),
        ("what did i dose yesterday", Past("what", "dose", span="yesterday")),
        (
            "did i dose baking soda on monday",
            Past("whether", "dose", substance="sodium bicarbonate", span="mon"),
        ),
        ("when did i last test ammonia", Past("when", "measured", analyte="ammonia")),
        ("how was kh last week", Past("value", analyte="kh", span="last_week")),
        ("wann habe ich zuletzt das Wasser gewechselt?", Past("when", "water_change")),
        ("wie war KH letzte Woche", Past("value", analyte="kh", span="last_week")),
        ("quand ai-je changé l'eau ?", Past("when", "water_change")),
        ("¿cuándo cambié el agua por última vez?", Past("when", "water_change")),
        ("quando troquei a água?", Past("when", "water_change")),
        ("quando ho cambiato l'acqua?", Past("when", "water_change")),
        ("wanneer heb ik voor het laatst het water ververst", Past("when", "water_change")),
        ("kiedy ostatnio podmieniałem wodę", Past("when", "water_change")),
        ("när bytte jag vatten", Past("when", "water_change")),
    ],
)
def test_deeds_and_values_of_the_past_are_asked(text: str, past: Past) -> None:
    assert asked(text, TANKS) == past


@pytest.mark.parametrize(
    "text",
    [
        "last water change yesterday",
        "last water change 30%",
        "changed 30% last week",
        "did i change 30% yesterday",
        "he cambiado el agua",
        "ho cambiato l'acqua",
        "did my water change help",
        "how was your day",
        "what was kh",
        "when will kh reach 3",
        "did i change the water\nkh 4",
        "",
    ],
)
def test_what_is_told_is_no_question(text: str) -> None:
    assert asked(text, TANKS) is None


def test_spans_are_days_of_the_calendar() -> None:
    wednesday = date(2026, 3, 4)
    assert days_of("last_week", wednesday) == (date(2026, 2, 23), date(2026, 3, 1))
    assert days_of("this_week", wednesday) == (date(2026, 3, 2), wednesday)
    assert days_of("last_month", wednesday) == (date(2026, 2, 1), date(2026, 2, 28))
    assert days_of("fri", wednesday) == (date(2026, 2, 27), date(2026, 2, 27))
    assert days_of("today", wednesday) == (wednesday, wednesday)


@pytest.mark.parametrize(
    ("text", "analyte"),
    [
        ("whats the no3 then", "nitrate"),
        ("what should no3 be now", "nitrate"),
        ("so whats the salinity", "salinity"),
        ("how much is no3 now", "nitrate"),
        ("whats ca now", "calcium"),
        ("wie ist nitrat jetzt", "nitrate"),
        ("und wie hoch ist kh", "kh"),
        ("quel est le nitrate maintenant", "nitrate"),
        ("cuánto está el nitrato ahora", "nitrate"),
        ("quanto está o nitrato agora", "nitrate"),
        ("quanto è il nitrato adesso", "nitrate"),
        ("wat is het nitraat nu", "nitrate"),
        ("ile wynosi azotan teraz", "nitrate"),
        ("vad är nitraten nu", "nitrate"),
    ],
)
def test_the_value_that_stands_is_asked_for(text: str, analyte: str) -> None:
    past = asked(text, TANKS)
    assert past is not None
    assert (past.form, past.analyte, past.span) == ("now", analyte, "now")


@pytest.mark.parametrize(
    "text", ["whats the kh", "wie hoch ist kh", "ile wynosi kh", "qual è il kh"]
)
def test_a_number_may_be_asked_for_without_a_word_for_now(text: str) -> None:
    assert asked(text, TANKS) == Past("now", analyte="kh")


@pytest.mark.parametrize(
    "text",
    [
        "what is nitrate",
        "and what is kh",
        "was ist kh",
        "vad är nitrat",
        "what is the best kh now",
        "whats next",
        "what is then",
        "what is the plan now",
        "what is kh 5 in ppm now",
        "how was kh now yesterday",
    ],
)
def test_a_word_is_explained_and_advice_is_no_record(text: str) -> None:
    past = asked(text, TANKS)
    assert past is None or past.form != "now"
