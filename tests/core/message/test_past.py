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
