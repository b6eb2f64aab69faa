"""What is asked of an answer that is no plan, in nine languages; the words are ours, no source."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk

BUCKET = ("20 l ro to gh 6 kh 4",)
EFFECT = ("what does 8 g baking soda do in 90 l",)
TANK = ("/tank new Fern 90 l fresh", "kh 3 gh 4 ph 7 temp 24 ammonia 0")
LIME = (*TANK, "will crushed coral raise kh")
BAG = (*TANK, "new fish in bag ph 6.5 temp 20 long journey")

SAFE = [
    "is that safe", "ist das sicher", "c'est sans danger", "es seguro", "é seguro", "è sicuro",
    "is dat veilig", "czy to bezpieczne", "är det säkert",
]  # fmt: skip
HOW = [
    "how do i dissolve it", "wie löse ich das auf", "comment le dissoudre", "como lo disuelvo",
    "come lo sciolgo", "hoe los ik het op", "jak to rozpuścić", "hur löser jag upp det",
]  # fmt: skip
ORDER = [
    "in which order", "in welcher reihenfolge", "dans quel ordre", "en que orden", "em que ordem",
    "in che ordine", "in welke volgorde", "w jakiej kolejności", "i vilken ordning",
]  # fmt: skip
LONG = [
    "how long", "wie lange", "combien de temps", "cuánto tiempo", "quanto tempo", "hoe lang",
    "jak długo", "hur lång tid tar det",
]  # fmt: skip
LITRES = [
    "how many litres", "wie viele liter", "combien de litres", "cuántos litros", "quantos litros",
    "quanti litri", "hoeveel liter", "ile litrów", "hur många liter",
]  # fmt: skip


async def told(talk: Talk, before: tuple[str, ...], line: str) -> str:
    for each in before:
        await talk.say(each)
    text = await talk.text(line)
    first = text.split()[0].strip(",:.").lower()
    assert first not in {"yes", "no"}
    return text


@pytest.mark.parametrize("line", SAFE)
async def test_safe_is_answered_of_what_was_told(talk: Talk, line: str) -> None:
    assert "That bucket is without animals" in await told(talk, BUCKET, line)
    assert "over at least 3 days" in await told(talk, EFFECT, line)
    assert "leads to about KH" in await told(talk, LIME, line)
    assert "none of the bag's water" in await told(talk, BAG[-1:], line)


@pytest.mark.parametrize("line", HOW)
async def test_how_it_goes_in(talk: Talk, line: str) -> None:
    bucket = await told(talk, BUCKET, line)
    assert "Straight into the 20 L" in bucket
    assert "Calcium chloride gets hot" in bucket
    assert "Stir 2.7 g of sodium bicarbonate" in await told(talk, EFFECT, line)
    assert "in a net" in await told(talk, LIME, line)


@pytest.mark.parametrize("line", ORDER)
async def test_in_which_order(talk: Talk, line: str) -> None:
    """Calcium before the buffer, never in one jug (common practice, no source)."""
    bucket = await told(talk, BUCKET, line)
    assert bucket.index("magnesium") < bucket.index("calcium") < bucket.index("baking soda")
    assert "warmth first" in await told(talk, BAG, line)


@pytest.mark.parametrize("line", LONG)
async def test_how_long(talk: Talk, line: str) -> None:
    assert "aerate a day" in await told(talk, BUCKET, line)
    assert "at least 3 days" in await told(talk, EFFECT, line)
    assert "Days to weeks" in await told(talk, LIME, line)
    assert "About 16 min" in await told(talk, BAG[-1:], line)


@pytest.mark.parametrize("line", LITRES)
async def test_how_many_litres(talk: Talk, line: str) -> None:
    assert "for 20 L in all" in await told(talk, BUCKET, line)
    assert "In 90 L" in await told(talk, EFFECT, line)


async def test_questions_follow_each_other_and_it_can_still_be_had_another_way(talk: Talk) -> None:
    await told(talk, BUCKET, "is that safe")
    assert "Never two in one jug" in await talk.text("in which order")
    assert (await talk.facts("twice that"))["volume_l"] == 40.0
    assert (await talk.facts("and for 30 l"))["volume_l"] == 30.0
    assert "for 30 L" in await talk.text("how many litres")


async def test_gypsum_is_slow_and_gets_not_hot(talk: Talk) -> None:
    await told(talk, BUCKET, "without calcium chloride")
    text = await talk.text("how do i dissolve it")
    assert "Gypsum takes hours" in text
    assert "hot" not in text


@pytest.mark.parametrize("line", ["would that be too fast", "is that too much", "zu viel?"])
async def test_too_much_is_a_question_of_it(talk: Talk, line: str) -> None:
    assert "over at least 3 days" in await told(talk, EFFECT, line)


@pytest.mark.parametrize(
    "line",
    [
        "can i store it a week", "kann ich das lagern?", "je peux le garder ?", "puedo guardarla?",
        "posso guardar isso?", "posso conservarla?", "kan ik het bewaren?",
        "czy mogę to przechować?",
        "kan jag förvara det?",
    ],
)  # fmt: skip
async def test_new_water_keeps(talk: Talk, line: str) -> None:
    assert "it keeps for some weeks" in await told(talk, BUCKET, line)


@pytest.mark.parametrize(
    "line",
    [
        "can i just dump them in",
        "put bag water in the tank?",
        "kann ich sie einfach reinkippen?",
        "puis-je les verser ?",
        "puedo volcar la bolsa?",
        "posso versare tutto?",
        "wlać?",
    ],
)
async def test_a_bag_is_not_tipped_in(talk: Talk, line: str) -> None:
    assert "not just tipped in" in await told(talk, BAG, line)


async def test_why_an_effect_is_told_so(talk: Talk) -> None:
    assert "GH 2 °dH" in await told(talk, EFFECT, "why")


async def test_a_reading_or_a_plan_since_is_what_is_asked_about(talk: Talk) -> None:
    await told(talk, (*TANK, *EFFECT), "kh 4")
    assert "over at least 3 days" not in await talk.text("is that safe")
    assert "Not at once" not in await told(talk, (*EFFECT, "dose kh 5"), "how do i dissolve it")
