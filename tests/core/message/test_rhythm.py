"""How often something is done, as it is told; days of a month as a routine counts them (30,
common practice, no source)."""

from __future__ import annotations

import pytest

from core.message.rhythm import days_between


@pytest.mark.parametrize(
    ("days", "lines"),
    [
        (
            3.5,
            "30% twice a week;30 % zweimal pro Woche;30 % deux fois par semaine;2x per week;"
            "30% dos veces por semana;30% duas vezes por semana;30% due volte a la settimana;"
            "30% twee keer per week;30% dwa razy na tydzień;30% två gånger i veckan",
        ),
        (
            7.0,
            "20% weekly;20% a week;every week;jede Woche 20%;wöchentlich;chaque semaine;"
            "cada semana;20% por semana;ogni settimana;elke week;co tydzień;varje vecka;i veckan",
        ),
        (
            14.0,
            "every 2 weeks;every other week;alle zwei Wochen;toutes les 2 semaines",
        ),
        (
            10.0,
            "every 10 days;alle 10 Tage;tous les 10 jours;cada 10 días;ogni 10 giorni",
        ),
        (1.0, "10% daily;10% a day;täglich 10%;10% par jour;10% al día;10% per dag;om dagen"),
        (30.0, "50% monthly;once a month;einmal im Monat;chaque mois"),
    ],
)
def test_how_often(days: float, lines: str) -> None:
    for line in lines.split(";"):
        assert days_between(line) == pytest.approx(days), line


@pytest.mark.parametrize(
    "line",
    ["change 50%", "change 50% today", "byt 50% i dag", "in a day", "in 2 days", "on day 3", ""],
)
def test_once(line: str) -> None:
    assert days_between(line) is None
