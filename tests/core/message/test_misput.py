"""Which tank got a dose that was meant for another, in nine languages; the words are ours."""

from __future__ import annotations

import pytest

from core.message.misput import misput

TANKS = ("Fern", "Quarry")


@pytest.mark.parametrize(
    "text",
    [
        "gave ferns dose to quarry by mistake",
        "put Fern's dose in Quarry",
        "oops put the fern amount in quarry",
        "oops the dose for fern went into quarry",
        "the fern dose went into quarry",
        "quarry got fern's dose by mistake",
        "poured it in quarry, not fern",
        "oh no i gave it to quarry not fern",
        "no, i put the dose of fern in quarry",
        "Ich hab die Dosis von Fern in Quarry gekippt",
        "Ferns Dosis ist in Quarry gelandet",
        "die Dosis für Fern ist aus Versehen in Quarry gelandet",
        "j'ai mis la dose de Fern dans Quarry",
        "j'ai versé la dose du bac Fern dans Quarry par erreur",
        "eché la dosis de Fern en Quarry",
        "puse la dosis de Fern en Quarry por error",
        "coloquei a dose do Fern no Quarry",
        "deitei a dose do Fern no Quarry por engano",
        "ho messo la dose di Fern in Quarry",
        "ho versato la dose di Fern in Quarry per sbaglio",
        "ik heb de dosis van Fern in Quarry gedaan",
        "dawka dla Fern trafiła do Quarry",
        "wsypałem dawkę Fern do Quarry",
        "jag hällde Ferns dos i Quarry",
        "dosen för Fern hamnade i Quarry av misstag",
    ],
)
def test_the_dose_of_one_tank_is_in_the_other(text: str) -> None:
    said = misput(text, TANKS)
    assert said is not None
    assert (said.of, said.into, said.many) == ("Fern", "Quarry", None)
    assert said.tells_both


@pytest.mark.parametrize(
    ("text", "of", "into"),
    [
        ("i poured the small tanks dose in Big", "Small", "Big"),
        ("i gave big the dose of small", "Small", "Big"),
        ("put the dose of the small one into the big one", "Small", "Big"),
        ("i put it in the big tank", None, "Big"),
        ("i put it in the other tank", None, "size:other"),
    ],
)
def test_a_tank_is_told_by_its_size(text: str, of: str | None, into: str) -> None:
    said = misput(text, ("Small", "Big"))
    assert said is not None
    assert (said.of, said.into) == (of, into)


@pytest.mark.parametrize(
    "text",
    [
        "i put it in the wrong tank",
        "ich hab es ins falsche Becken gekippt",
        "je l'ai mis dans le mauvais bac",
        "la puse en el acuario equivocado",
        "pus no aquário errado",
        "l'ho messo nella vasca sbagliata",
        "ik heb het in de verkeerde bak gedaan",
        "wsypałam do złego akwarium",
        "jag hällde i fel akvarium",
    ],
)
def test_the_wrong_tank_has_no_name(text: str) -> None:
    said = misput(text, TANKS)
    assert said is not None
    assert said.wrong
    assert (said.of, said.into) == (None, None)


def test_amounts_and_parts_are_told_beside() -> None:
    own = misput("put 5 g baking soda meant for fern into quarry", TANKS)
    assert own is not None
    assert (own.grams, own.substance) == (5.0, "sodium bicarbonate")
    both = misput("i put both parts of fern in quarry", TANKS)
    assert both is not None
    assert both.many == "two"
    later = misput("i gave quarry the second part", TANKS)
    first = misput("the first part went into quarry", TANKS)
    assert later is not None
    assert first is not None
    assert later.later
    assert not first.later


@pytest.mark.parametrize(
    "text",
    [
        "can i put ferns dose in quarry",
        "what if i put it in quarry",
        "how much did i put in quarry",
        "did i put it in quarry",
        "wie viel hab ich in quarry gegeben",
        "i should have put it in fern",
        "i will put it in quarry",
        "i did not put it in quarry",
        "ich habe es nicht in quarry gegeben",
        "j'ai pas mis la dose dans quarry",
        "no puse la dosis en quarry",
        "nie wsypałem dawki do quarry",
        "put ferns dose in quarry tomorrow",
        "i put fern in quarry",
        "i put ferns in quarry",
        "i got ferns from quarry",
        "i put 2 shrimp in quarry",
        "quarry got a new filter",
        "changed 30% in quarry",
        "quarry: kh 4",
        "fern to quarry",
    ],
)
def test_a_question_a_wish_and_what_is_no_dose_are_none(text: str) -> None:
    assert misput(text, TANKS) is None
