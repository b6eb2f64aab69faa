"""Quick readings in eight languages: what beside a value says nothing of it, and what does."""

from __future__ import annotations

from datetime import datetime

import pytest

from core.message import parse
from core.message.fold import fold
from core.message.kinds import is_kind
from core.message.lexicon import lexicon
from core.message.model import Context, Value
from core.message.wordfile import spelt

NOW = datetime.fromisoformat("2026-03-10T15:00:00+01:00")
LANGUAGES = ("de", "fr", "es", "pt", "it", "nl", "pl", "sv")


def read(text: str, *tanks: str) -> list[str]:
    """The values that are told without a doubt; empty where there is one."""
    parsed = parse(text, Context(now=NOW, tanks=tanks))
    return [] if parsed.doubts else [_said(value) for value in parsed.values]


def _said(value: Value) -> str:
    sign = "" if value.qualifier == "=" else value.qualifier
    return f"{value.analyte} {sign}{value.value:g}"


TAKEN = {
    "de": """
        leider kh 2 | naja kh nur 2 > kh 2 | mist kh 1 | kh ist leider nur 2 | kh 2 leider
        kh hängt bei 3 fest | kh steht auf 4 | kh ist auf 4 | kh bleibt bei 4
        kh ist 4 geworden | kh sitzt nach wie vor bei 3 | kh ergibt 4 | kh genau 4
        kh weiterhin 4 | kh um die 4 rum > kh ~4 | kh pendelt um 4 > kh ~4
        kh vielleicht 4 > kh ~4 | kh so ca 4 > kh ~4 | kh grob 4 > kh ~4 | zum glück kh 4
        ehrlich gesagt kh 3 | hmm kh 3 | wie auch immer kh 4 | im moment kh 4
        kh ziemlich niedrig 2 | kh leicht hoch 9 | kh 4 laut test | kh 4 mit dem tröpfchentest
        meine frau hat kh 4 gemessen | kh 4, nicht so toll | kh 4 nicht perfekt
        kh 4 ziemlich gut | kh 2 katastrophe | kh 4 wie immer | wie immer kh 4
        kh unverändert 4 | test ergab kh 4""",
    "fr": """
        malheureusement kh 2 | kh 2 malheureusement | bah kh 4 | bref kh 4 | du coup kh 4
        hélas kh 2 | kh bloqué à 3 | kh donne 4 | kh reste à 4 | kh se situe à 4 | kh vaut 4
        kh figé à 3 | kh exactement 4 | kh tourne autour de 4 > kh ~4
        kh aux alentours de 4 > kh ~4 | kh genre 4 > kh ~4 | kh à peine 2 > kh ~2
        kh seulement 2 | de toute façon kh 4
        pour l'instant kh 4 | hmm kh 3 | kh un peu bas 2 | kh plutôt bas 2
        kh 4 d'après le test | test gouttes kh 4 | j'obtiens kh 4 | ma femme a mesuré kh 4
        kh 4 pas mal | kh 4 pas terrible | kh 2 catastrophe | kh 4 parfait
        kh 4 comme d'habitude | comme d'habitude kh 4 | kh inchangé 4 | je viens de tester kh 4""",
    "es": """
        lamentablemente kh 2 | kh 2 lamentablemente | bueno kh 4 | pues kh 4 | uy kh 1
        menos mal kh 4 | kh atascado en 3 | kh se mantiene en 4 | kh salió 4 | kh me salió 4
        kh queda en 4 | me da kh 4 | kh anda por 4 > kh ~4 | kh ronda los 4 > kh ~4
        kh por ahí de 4 > kh ~4 | kh tipo 4 > kh ~4 | kh parece 4 > kh ~4 | kh solo 2
        kh exactamente 4 | kh otra vez 4 | por desgracia kh 2 | de todas formas kh 4
        en fin kh 4 | de momento kh 4 | kh alto 9 | kh un poco alto 9 | kh 4 según el test
        kh 4 con el test de gotas | mi mujer midió kh 4 | kh 4 no está mal | kh 4 nada mal
        kh 4 perfecto | kh 2 pésimo | kh 4 como siempre | como siempre kh 4""",
    "pt": """
        infelizmente kh 2 | kh 2 infelizmente | pois é kh 4 | enfim kh 4 | eita kh 9
        ainda bem kh 4 | kh parado em 3 | kh continua em 4 | kh ficou em 4 | kh saiu 4
        kh registrou 4 | me deu kh 4 | kh anda nos 4 > kh ~4 | kh gira em torno de 4 > kh ~4
        kh tipo 4 > kh ~4 | kh talvez 4 > kh ~4 | kh parece 4 > kh ~4 | kh apenas 2
        kh exatamente 4 | kh ainda 4 | na verdade kh 3 | de qualquer forma kh 4
        no momento kh 4 | por enquanto kh 4 | kh baixo 2 | kh um pouco baixo 2
        kh 4 segundo o teste | kh 4 com teste de gotas | minha esposa mediu kh 4 | kh 4 nada mal
        kh 4 perfeito | kh 2 péssimo | kh 4 como sempre | como sempre kh 4 | hj kh 4""",
    "it": """
        purtroppo kh 2 | kh 2 purtroppo | beh kh 4 | boh kh 4 | insomma kh 4 | meno male kh 4
        oddio kh 9 | kh fermo a 3 | kh resta a 4 | kh si attesta a 4 | kh viene 4
        kh è venuto 4 | mi viene kh 4 | kh si aggira sui 4 > kh ~4 | kh attorno a 4 > kh ~4
        kh tipo 4 > kh ~4 | kh sembra 4 > kh ~4 | kh all'incirca 4 > kh ~4 | kh solo 2
        kh appena 2 | kh esattamente 4 | kh di nuovo 4 | in ogni caso kh 4 | al momento kh 4
        a dire il vero kh 3 | kh basso 2 | kh un po' basso 2 | kh 4 secondo il test
        kh 4 col test a gocce | mia moglie ha misurato kh 4 | kh 4 niente male | kh 4 non male
        kh 4 perfetto | kh 2 pessimo | kh 4 come al solito | come sempre kh 4""",
    "nl": """
        helaas kh 2 | kh 2 helaas | nou kh 4 | dus kh 4 | tja kh 3 | gelukkig kh 4 | jammer kh 2
        kh zit op 4 | kh staat nog steeds op 4 | kh blijft hangen op 3 | kh komt uit op 4
        kh zit op 3 vast | kh hangt rond 4 > kh ~4 | kh lijkt 4 > kh ~4 | kh zeg maar 4 > kh ~4
        kh misschien 4 > kh ~4 | kh pakweg 4 > kh ~4 | kh maar 2 | kh precies 4 | kh slechts 2
        kh gewoon 4 | eerlijk gezegd kh 3 | hoe dan ook kh 4 | op dit moment kh 4 | kh laag 2
        kh een beetje laag 2 | ik meet kh 4 | kh aan de lage kant 2 | kh 4 volgens de test
        kh 4 met de druppeltest | mijn vrouw mat kh 4 | kh 4 niet slecht | kh 4 valt mee
        kh 2 waardeloos | kh 4 zoals altijd | kh onveranderd 4""",
    "pl": """
        niestety kh 2 | kh 2 niestety | no cóż kh 3 | więc kh 4 | kurde kh 1 | na szczęście kh 4
        hm kh 3 | kh stoi na 4 | kh jest na 4 | kh utrzymuje się na 4 | kh wyszło 4
        wyszło kh 4 | kh pokazuje 4 | kh waha się około 4 > kh ~4 | kh jakieś 4 > kh ~4
        kh gdzieś koło 4 > kh ~4 | kh może 4 > kh ~4 | kh wydaje się 4 > kh ~4 | kh tylko 2
        kh dokładnie 4 | kh wciąż 4 | kh znowu 4 | na razie kh 4 | tak czy inaczej kh 4
        w tej chwili kh 4 | szczerze mówiąc kh 3 | kh niskie 2 | kh trochę niskie 2
        kh 4 według testu | kh 4 testem kropelkowym | żona zmierzyła kh 4 | kh 4 nieźle
        kh 4 może być | kh 2 słabo | kh 2 tragedia | kh 4 jak zwykle | jak zwykle kh 4
        szybki test kh 4""",
    "sv": """
        tyvärr kh 2 | kh 2 tyvärr | jaha kh 4 | nja kh 3 | alltså kh 4 | som tur är kh 4
        usch kh 1 | kh står på 4 | kh har fastnat på 3 | kh håller sig på 4 | kh landade på 4
        kh uppmätt till 4 | kh ligger runt 4 > kh ~4 | kh verkar vara 4 > kh ~4
        kh typ 4 > kh ~4 | kh kanske 4 > kh ~4 | kh kring 4 > kh ~4 | kh endast 2 | kh precis 4
        kh ännu 4 | mätte kh 4 | till slut kh 4 | hur som helst kh 4 | för tillfället kh 4
        ärligt talat kh 3 | kh lågt 2 | kh lite lågt 2 | kh 4 enligt testet | kh 4 med dropptest
        min fru mätte kh 4 | kh 4 inte illa | kh 4 perfekt | kh 2 uselt | kh 4 helt ok
        kh 4 som vanligt | som vanligt kh 4 | kh oförändrat 4""",
}
"""What is told, and behind ``>`` what it means where that is not the name and number as written."""


def _cases(table: dict[str, str]) -> list[str]:
    return [each.strip() for rows in table.values() for row in rows.strip().split("\n")
            for each in row.split("|")]  # fmt: skip


@pytest.mark.parametrize("case", _cases(TAKEN))
def test_talk_beside_a_value_says_nothing_of_it(case: str) -> None:
    text, _, meaning = case.partition(" > ")
    number = next(word for word in text.replace(",", "").split() if word.isdigit())
    assert read(text) == [meaning or f"kh {number}"]


ASKED = {
    "de": """
        leider soll kh 4 sein | kh soll leider auf 4 | kh sollte eigentlich 4 sein
        ich will kh auf 4 | leitung leider kh 4 | kh ist leider um 2 gefallen
        kh 4 unverändert zu gestern | kh hoch 2 | kh 4 genau wie gestern | kh leider nicht 4
        kh nicht wirklich 4 | kh dürfte 4 sein | hoffentlich kh 4 | kh bleibt hoffentlich bei 4
        kh 4 nicht geworden | kh perfekt 4 | laut buch kh 4 | mein mann sagt kh 4
        kh ist auf 4 runter | opa kh 4 | kh 4 knorz | knorz kh 4 | kh steht auf 4 stunden""",
    "fr": """
        malheureusement le kh doit être à 4 | kh devrait rester à 4 | robinet kh 4 hélas
        kh parfait 4 | kh a baissé de 2 malheureusement | kh inchangé 4 depuis hier
        franchement pas kh 4 | kh plus haut 4 | bac du haut kh 4 | selon le livre kh 4
        il reste 4 kh | donne kh 4 | kh 4 schtroumpf | kh 4 comme hier""",
    "es": """
        lamentablemente quiero kh 4 | kh debería estar en 4 | grifo por suerte kh 4
        kh bajó solo 2 | kh subió apenas 2 | kh igual 4 que ayer | kh 4 igual que ayer
        kh no solo 4 | kh perfecto 4 | mi vecino me dio kh 4 | según el libro kh 4
        kh más alto 4 | acuario alto kh 4 | kh 4 zascandil | kh quizás suba 4""",
    "pt": """
        infelizmente quero kh 4 | kh deveria ficar em 4 | torneira infelizmente kh 4
        kh caiu só 2 | kh igual 4 a ontem | kh mais alto 4 | aquário alto kh 4
        segundo o livro kh 4 | kh perfeito 4 | meu irmão mediu kh 4 | kh talvez subir para 4
        kh 4 zonzeira""",
    "it": """
        purtroppo voglio kh 4 | kh dovrebbe stare a 4 | rubinetto purtroppo kh 4
        kh sceso solo di 2 | kh invariato 4 da ieri | kh non è 4 | kh più alto 4
        vasca alta kh 4 | secondo il libro kh 4 | kh perfetto 4 | kh da 4 a 6
        kh forse da alzare a 4 | kh 4 zuzzurellone""",
    "nl": """
        helaas wil ik kh 4 | kh moet op 4 blijven | kraan helaas kh 4 | kh helaas met 2 gezakt
        kh onveranderd 4 sinds gisteren | kh 4 maar gisteren 5 | kh hoger 4 | hoge bak kh 4
        volgens het boek kh 4 | mijn broer mat kh 4 | hopelijk kh 4
        kh zou 4 zijn""",
    "pl": """
        niestety chcę kh 4 | kh powinno być na 4 | kran niestety kh 4 | kh spadło tylko o 2
        kh 4 jak wczoraj | kh jak zwykle 4 wczoraj | kh nie jest 4 | kh wyższe 4 | chcę kh na 4
        według książki kh 4 | mój brat zmierzył kh 4 | kh może wzrośnie do 4 | kh 4 bździągwa""",
    "sv": """
        tyvärr vill jag ha kh 4 | kh bör ligga runt 4 | kranvatten tyvärr kh 4
        kh sjunkit endast 2 | kh oförändrat 4 sedan igår | kh inte 4 | kh högre 4
        höga karet kh 4 | enligt boken kh 4 | min bror mätte kh 4 | kh perfekt 4
        förhoppningsvis kh 4 | kh 4 gurkmeja""",
}


@pytest.mark.parametrize("text", _cases(ASKED))
def test_what_bears_on_a_value_is_still_asked(text: str) -> None:
    assert read(text) == []


_WEIGHTY = {"wish", "other", "not", "up", "down", "was", "formerly"}


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_talk_hides_a_word_that_bears_on_a_value(language: str) -> None:
    """Whatever is asked with such a word alone is asked with the language's own talk around it."""
    held = lexicon()
    weighty = sorted(
        word for word, (category, meaning) in held.words.items()
        if category == "mark" and meaning in _WEIGHTY and language in held.languages[word]
    )  # fmt: skip
    told = {section: ways[0] for section, of, ways in spelt("quick_talk.txt", SECTIONS)
            if of == language}  # fmt: skip
    verb, aside = f"{told['verb']} {told['at']}", told["aside"]
    hidden = []
    for word in weighty:
        if not read(f"kh {word} 4"):
            hidden += [t for t in (f"{aside} kh {verb} {word} 4", f"kh {word} {verb} 4") if read(t)]
        if not read(f"{word} kh 4"):
            hidden += [t for t in (f"{aside} {word} kh 4", f"{word} {aside} kh 4") if read(t)]
    assert hidden == []


SECTIONS = {
    "aside", "told", "verb", "shown", "at", "around", "only", "degree", "high", "about", "found",
    "closes", "stuck", "no", "same", "kit",
}  # fmt: skip


def test_no_word_names_an_animal() -> None:
    words = {way for _, _, ways in spelt("quick_talk.txt", SECTIONS) for way in ways}
    assert [word for word in sorted(words) if is_kind(word)] == []
    assert len(words) == len({fold(word) for word in words})


def test_a_word_that_begins_a_tanks_name_may_be_the_tank() -> None:
    assert read("mist kh 1") == ["kh 1"]
    parsed = parse("mist kh 1", Context(now=NOW, tanks=("Mistral", "Fern")))
    assert parsed.doubts or parsed.tank == "Mistral"


def test_a_misspelt_word_that_bears_is_asked_for() -> None:
    assert read("kh mist be 4") == []  # must be


def test_parts_of_the_day_are_kept() -> None:
    for text, hour in {
        "heute morgen früh kh 4": 8, "kh 4 heut morgen": 8, "ce matin tôt kh 4": 8,
        "hoy temprano kh 4": 8, "stamattina presto kh 4": 8, "oggi a pranzo kh 4": 12,
        "hoje ao meio-dia kh 4": 12, "hoje cedinho kh 4": 8, "vanmorgen vroeg kh 4": 8,
        "tussen de middag kh 4": 12, "z samego rana kh 4": 8, "i förmiddags kh 4": 8,
    }.items():  # fmt: skip
        parsed = parse(text, Context(now=NOW))
        assert parsed.at is not None, text
        assert (parsed.at.hour, parsed.doubts) == (hour, ()), text
    assert read("ph ist hoch auf 7.8") == ["ph 7.8"]
    at = parse("kh liegt um 4 uhr bei 5", Context(now=NOW))
    assert at.at is not None
    assert (at.at.hour, [_said(v) for v in at.values]) == (4, ["kh 5"])


def test_an_animal_or_a_deed_beside_it_is_kept() -> None:
    parsed = parse("leider 2 neons gestorben, kh 4", Context(now=NOW))
    assert [event.kind for event in parsed.events] == ["lost"]
    assert [_said(value) for value in parsed.values] == ["kh 4"]
    parsed = parse("me dio 4 neones, kh 5", Context(now=NOW))
    assert [event.kind for event in parsed.events] == ["added"]
