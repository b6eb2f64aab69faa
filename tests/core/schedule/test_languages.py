"""Basic words of time in other languages. It is Wednesday, 4 March 2026, 15:00 in Berlin.

Everyday phrases from memory (grade M), the same six or so in each language.
"""

from datetime import datetime
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.schedule import Problem, Request, parse_moment, parse_quiet, parse_request, to_text
from core.schedule.words import languages

BERLIN = ZoneInfo("Europe/Berlin")
NOW = datetime(2026, 3, 4, 15, tzinfo=BERLIN)

EVERY_7 = "every 7 days at 19:00"
SUNDAY = "every sunday at 10:00"
FIRST = "day 1 of every month at 09:00"
IN_24 = "once 2026-03-05T15:00+01:00"
TOMORROW = "once 2026-03-05T20:00+01:00"
MAY = "once 2026-05-04T10:00+02:00"
EVENING = "once 2026-03-04T19:00+01:00"

ROWS = [
    ("Fern testen alle 7 Tage um 19:00", "Fern testen", EVERY_7, "test"),
    ("jeden Sonntag um 10 Uhr Wasser wechseln", "Wasser wechseln", SUNDAY, "change"),
    ("Filter reinigen am 1. des Monats", "Filter reinigen", FIRST, "filter"),
    ("KH in 24 Stunden messen", "KH messen", IN_24, "test"),
    ("Fern morgen um 20 Uhr testen", "Fern testen", TOMORROW, "test"),
    ("Sonde am 4. Mai um 10 Uhr kalibrieren", "Sonde kalibrieren", MAY, "calibrate"),
    ("jeden zweiten Tag füttern", "füttern", "every 2 days", "feed"),
    ("täglich um 9 füttern", "füttern", "every day at 09:00", "feed"),
    ("heute Abend düngen", "düngen", EVENING, "dose"),
    ("tester fern tous les 7 jours à 19h", "tester fern", EVERY_7, "test"),
    ("changer l'eau chaque dimanche à 10h", "changer l'eau", SUNDAY, "change"),
    ("nettoyer le filtre le 1er du mois", "nettoyer le filtre", FIRST, "filter"),
    ("tester kh dans 24 h", "tester kh", IN_24, "test"),
    ("tester fern demain à 20h", "tester fern", TOMORROW, "test"),
    ("étalonner la sonde le 4 mai à 10h", "étalonner la sonde", MAY, "calibrate"),
    ("nourrir ce soir", "nourrir", EVENING, "feed"),
    ("probar fern cada 7 días a las 19:00", "probar fern", EVERY_7, "test"),
    ("cambiar agua todos los domingos a las 10:00", "cambiar agua", SUNDAY, "change"),
    ("limpiar el filtro el 1 de cada mes", "limpiar el filtro", FIRST, "filter"),
    ("probar kh en 24 horas", "probar kh", IN_24, "test"),
    ("probar fern mañana a las 20:00", "probar fern", TOMORROW, "test"),
    ("calibrar el 4 de mayo a las 10", "calibrar", MAY, "calibrate"),
    ("testar fern a cada 7 dias às 19:00", "testar fern", EVERY_7, "test"),
    ("trocar água todos os domingos às 10:00", "trocar água", SUNDAY, "change"),
    ("limpar o filtro dia 1 de cada mês", "limpar o filtro", FIRST, "filter"),
    ("testar kh em 24 horas", "testar kh", IN_24, "test"),
    ("testar fern amanhã às 20:00", "testar fern", TOMORROW, "test"),
    ("calibrar dia 4 de maio às 10:00", "calibrar", MAY, "calibrate"),
    ("testare fern ogni 7 giorni alle 19:00", "testare fern", EVERY_7, "test"),
    ("cambiare acqua ogni domenica alle 10", "cambiare acqua", SUNDAY, "change"),
    ("pulire il filtro il 1 di ogni mese", "pulire il filtro", FIRST, "filter"),
    ("testare kh tra 24 ore", "testare kh", IN_24, "test"),
    ("testare fern domani alle 20", "testare fern", TOMORROW, "test"),
    ("tarare la sonda il 4 maggio alle 10:00", "tarare la sonda", MAY, "calibrate"),
    ("fern testen elke 7 dagen om 19:00", "fern testen", EVERY_7, "test"),
    ("water verversen elke zondag om 10 uur", "water verversen", SUNDAY, "change"),
    ("filter schoonmaken op de 1e van de maand", "filter schoonmaken", FIRST, "filter"),
    ("kh testen over 24 uur", "kh testen", IN_24, "test"),
    ("fern testen morgen om 20:00", "fern testen", TOMORROW, "test"),
    ("ijken op 4 mei om 10:00", "ijken", MAY, "calibrate"),
    ("testuj fern co 7 dni o 19:00", "testuj fern", EVERY_7, "test"),
    ("podmiana wody w każdą niedzielę o 10:00", "podmiana wody", SUNDAY, "change"),
    ("testuj kh za 24 godziny", "testuj kh", IN_24, "test"),
    ("testuj fern jutro o 20:00", "testuj fern", TOMORROW, "test"),
    ("kalibracja 4 maja o 10:00", "kalibracja", MAY, "calibrate"),
    ("testa fern var 7:e dag kl 19:00", "testa fern", EVERY_7, "test"),
    ("byt vatten varje söndag kl 10:00", "byt vatten", SUNDAY, "change"),
    ("rengör filtret den 1:a varje månad", "rengör filtret", FIRST, "filter"),
    ("testa kh om 24 timmar", "testa kh", IN_24, "test"),
    ("testa fern imorgon kl 20:00", "testa fern", TOMORROW, "test"),
    ("kalibrera den 4 maj kl 10:00", "kalibrera", MAY, "calibrate"),
]


@pytest.mark.parametrize(("text", "what", "rule", "kind"), ROWS)
def test_request(text, what, rule, kind):
    request = parse_request(text, NOW, BERLIN)
    assert isinstance(request, Request), request
    assert (request.what, to_text(request.rule), request.kind) == (what, rule, kind)


SIX = "every sunday at 18:00"


@pytest.mark.parametrize(
    ("text", "what", "rule"),
    [
        ("jeden sonntag um 18 uhr 30% wechseln", "30% wechseln", SIX),
        ("jeden sonntag 18 uhr 10-20% wechseln", "10-20% wechseln", SIX),
        ("jeden sonntag 18 uhr 10 g salz", "10 g salz", SIX),
        ("jeden sonntag 18 uhr 30 wechseln", "wechseln", "every sunday at 18:30"),
        ("chaque dimanche à 18h 30% changer", "30% changer", SIX),
        ("cada domingo a las 18 horas 30% cambiar", "30% cambiar", SIX),
        ("todos os domingos às 18h 30% trocar", "30% trocar", SIX),
        ("ogni domenica alle ore 18 30% cambiare", "30% cambiare", SIX),
        ("elke zondag 18 uur 20 l verversen", "20 l verversen", SIX),
        ("w każdą niedzielę o 18 30% podmienić", "30% podmienić", SIX),
        ("varje söndag kl 18 30% byta", "30% byta", SIX),
        ("varje söndag kl 18 30 byta", "byta", "every sunday at 18:30"),
    ],
)
def test_a_number_with_a_unit_is_no_hour(text, what, rule):
    request = parse_request(text, NOW, BERLIN)
    assert isinstance(request, Request), request
    assert (request.what, to_text(request.rule)) == (what, rule)


def test_other_languages_write_the_day_first():
    """No language but English writes the month first, so that 4/5 is the fourth of May there."""
    found = parse_request("füttern am 4/5 um 9 Uhr", NOW, BERLIN)
    assert to_text(found.rule) == "once 2026-05-04T09:00+02:00"


@pytest.mark.parametrize(
    ("text", "suggested"),
    [
        ("Wasser wechseln zweimal pro Woche", "Wasser wechseln jeden Montag und Donnerstag"),
        ("changer l'eau deux fois par semaine", "changer l'eau chaque lundi et jeudi"),
        ("byt vatten två gånger i veckan", "byt vatten varje måndag och torsdag"),
    ],
)
def test_what_is_suggested_is_understood_in_its_language(text, suggested):
    problem = parse_request(text, NOW, BERLIN)
    assert isinstance(problem, Problem)
    assert problem.suggestion == suggested
    request = parse_request(suggested, NOW, BERLIN)
    assert to_text(request.rule) == "every monday, thursday at 09:00"


@pytest.mark.parametrize("text", ["demain", "mañana", "domani", "amanhã", "jutro", "imorgon"])
def test_moment(text):
    assert parse_moment(text, NOW, BERLIN) == datetime(2026, 3, 5, 9, tzinfo=BERLIN)


def test_quiet_hours():
    assert str(parse_quiet("22 Uhr bis 7 Uhr")) == "22:00-07:00"


PHRASES = {
    " ".join(words)
    for vocabulary in languages()
    for entries in vocabulary.phrases.values()
    for words, _ in entries
}
NUMBERS = "fern 1 2 7 12 19:00 31 4.5. 4/5 , 24"
phrases = st.sampled_from([*sorted(PHRASES), *NUMBERS.split()])


@given(st.lists(phrases, max_size=8).map(" ".join))
@settings(max_examples=150)
def test_any_words_of_time_give_a_request_to_come_or_a_problem(text):
    found = parse_request(text, NOW, BERLIN)
    assert isinstance(found, Problem) or (found.first > NOW and found.what)
