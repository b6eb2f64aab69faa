"""Numbers in words: the words are those of each language's own grammar, from memory (M)."""

from __future__ import annotations

import pytest

from core.message import parse
from core.message.lexicon import lexicon
from tests.messages import corpus

SAID = {
    "nitrate": {
        13: "thirteen", 25: "twenty five", 31: "thirty-one", 99: "ninety nine", 100: "a hundred",
        120: "one hundred and twenty", 250: "two hundred fifty",
    },
    "nitrat": {
        13: "dreizehn", 21: "einundzwanzig", 36: "sechsunddreißig", 77: "siebenundsiebzig",
        100: "hundert", 200: "zweihundert", 25: "fünfundzwanzig", 42: "zweiundvierzig",
    },
    "nitrates": {
        17: "dix-sept", 21: "vingt et un", 45: "quarante-cinq", 71: "soixante et onze",
        76: "soixante-seize", 80: "quatre-vingts", 93: "quatre-vingt-treize",
        99: "quatre-vingt-dix-neuf", 120: "cent vingt", 200: "deux cents",
    },
    "nitratos": {
        16: "dieciséis", 23: "veintitrés", 31: "treinta y uno", 68: "sesenta y ocho", 100: "cien",
        150: "ciento cincuenta",
    },
    "nitrato": {
        16: "dezesseis", 22: "vinte e dois", 47: "quarenta e sete", 100: "cem",
        130: "cento e trinta",
    },
    "nitrati": {
        17: "diciassette", 21: "ventuno", 28: "ventotto", 33: "trentatré", 56: "cinquantasei",
        100: "cento", 200: "duecento",
    },
    "nitraat": {
        14: "veertien", 22: "tweeëntwintig", 38: "achtendertig", 65: "vijfenzestig",
        100: "honderd", 300: "driehonderd",
    },
    "azotany": {
        15: "piętnaście", 21: "dwadzieścia jeden", 54: "pięćdziesiąt cztery", 100: "sto",
        200: "dwieście", 125: "sto dwadzieścia pięć",
    },
    "nitrat ": {18: "arton", 21: "tjugoett", 43: "fyrtiotre", 79: "sjuttionio", 200: "tvåhundra"},
}  # fmt: skip
CASES = [(name, number, word) for name, rows in SAID.items() for number, word in rows.items()]


@pytest.mark.parametrize(("name", "number", "word"), CASES)
def test_a_number_in_words_is_that_number(name: str, number: int, word: str) -> None:
    (value,) = parse(f"{name.strip()} {word}", corpus.context()).values
    assert (value.analyte, value.canonical) == ("nitrate", number)


def test_every_number_below_a_hundred_has_a_word_where_they_are_written_in_one() -> None:
    words = lexicon()
    for language in ("de", "it", "nl", "sv"):
        known = {
            int(entry[1])
            for word, entry in words.words.items()
            if entry[0] == "count" and language in words.languages[word]
        }
        ambiguous = {
            int(meaning)
            for entries in words.several.values()
            for spoken, (category, meaning) in entries
            if category == "count" and spoken == language
        }
        assert set(range(2, 100)) <= known | ambiguous, language
