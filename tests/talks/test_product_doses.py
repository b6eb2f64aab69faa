"""Bought products in conversation: named, spoken of as "it", dosed, given, forgotten."""

from __future__ import annotations

import pytest

from tests.chat.harness import Talk


async def _fern(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 4 gh 6 ph 7.2 temp 25 ammonia 0 no3 10")


@pytest.mark.parametrize(
    ("label", "how_much", "grams", "given"),
    [
        ("alk boost: 5 g per 80 l raises kh 1", "how much of it for this tank", 7.5,
         "i gave 10 g of it"),
        ("KH Plus: 10 g auf 100 l erhöht die KH um 2 °dH", "wie viel davon für dieses Becken", 6.0,
         "ich habe 10 g KH Plus gegeben"),
        ("minéral gh : 3 g pour 20 l augmente le gh de 2 degrés",
         "combien de minéral gh pour cet aquarium", 18.0, "j'ai mis 10 g de minéral gh"),
        ("sal mineral: 2 cucharaditas (10 g) por 100 l sube gh 2 grados",
         "cuánto sal mineral para este acuario", 12.0, "eché 10 g de sal mineral"),
        ("tampão kh: 6 g para 100 l aumenta o kh em 1", "quanto tampão kh para este aquário", 7.2,
         "coloquei 10 g de tampão kh"),
        ("sale kh: 5 g ogni 50 litri alza il kh di 1,5", "quanto sale kh per questa vasca", 8.0,
         "ho messo 10 g di sale kh"),
        ("gh poeder: 4 gram per 40 liter verhoogt de gh met 2", "hoeveel gh poeder voor deze bak",
         12.0, "ik heb 10 g gh poeder gegeven"),
        ("sól kh: 5 g na 50 l podnosi kh o 2 stopnie", "ile sól kh do tego akwarium", 6.0,
         "dałem 10 g sól kh"),
        ("gh-höjare: 5 g till 50 liter höjer gh med 2", "hur mycket gh-höjare till det här karet",
         12.0, "jag tillsatte 10 g gh-höjare"),
    ],
)  # fmt: skip
async def test_a_product_is_kept_asked_for_and_given(
    talk: Talk, label: str, how_much: str, grams: float, given: str
) -> None:
    """A day's step: KH 1 or GH 2 in 120 L, by the label's own numbers."""
    await _fern(talk)
    (kept,) = await talk.say(label)
    assert kept.lines[0].text.startswith("Kept as")
    assert kept.facts["grams"] == pytest.approx(grams)
    assert (await talk.facts(how_much))["grams"] == pytest.approx(grams)
    logged = (await talk.say(given))[0]
    (event,) = logged.facts["events"]
    assert (event["kind"], event["grams"]) == ("dose", 10.0)
    assert label.startswith(event["substance"])
    analyte = kept.facts["product"]["analyte"]
    assert (await talk.facts(f"dose {analyte} 8"))["refused"] == "dosed_since"


async def test_of_it_is_what_was_last_told_of(talk: Talk) -> None:
    await _fern(talk)
    await talk.say("alk boost: 5 g per 80 l raises kh 1")
    await talk.say("gh mix: 2 g per 40 l raises gh 1")
    assert (await talk.facts("how much of it for 40 l"))["product"]["name"] == "gh mix"
    assert (await talk.facts("what does 20 g alk boost do"))["rises"] == pytest.approx(
        {"kh": 20 / 7.5}
    )
    facts = await talk.facts("dose kh 5 with it")
    assert facts["product"]["name"] == "alk boost"
    (event,) = (await talk.facts("i gave 7 g of it"))["events"]
    assert event["substance"] == "alk boost"
    assert (await talk.facts("what does 7.5 g of it do"))["rises"] == pytest.approx({"kh": 1.0})
    await talk.wait(hours=3)
    assert "product" not in await talk.facts("how much of it for 40 l")


async def test_a_name_of_other_words_is_never_another_thing(talk: Talk) -> None:
    """`gh salt` is no sodium chloride, 8.2 in a name no wish, `sale kh` no salt."""
    await _fern(talk)
    await talk.say("gh salt: 3 g per 40 l raises gh 2")
    assert "salinity" not in await talk.text("what does 30 g gh salt do")
    await talk.say("buffer 8.2: 1,5 g per 40 l raises kh 1,2")
    facts = await talk.facts("dose kh 6 with buffer 8.2")
    assert facts["parts"] == pytest.approx([1.5 * 120 / 40 / 1.2] * 2)


async def test_all_that_a_product_raises_is_told(talk: Talk) -> None:
    await _fern(talk)
    await talk.say("mineral salt: 1 g per 10 l = +3 gh +1.5 kh")
    (reply,) = await talk.say("dose gh 8 with mineral salt")
    assert reply.facts["rises"] == pytest.approx({"gh": 2.0, "kh": 1.0})
    assert "With it comes KH +1 °dH" in reply.text
    assert "carbonate" in reply.lines[0].text
    assert "GH 3 °dH, KH 1.5 °dH" in await talk.text("products")


async def test_plant_food_by_its_label(talk: Talk) -> None:
    await _fern(talk)
    await talk.say("green mix: 10 ml per 100 l adds 5 ppm nitrate and 1 ppm phosphate")
    facts = await talk.facts("how much green mix for this tank")
    assert facts["millilitres"] == pytest.approx(12.0)
    assert facts["rises"] == pytest.approx({"nitrate": 5.0, "phosphate": 1.0})
    wished = await talk.facts("how much green mix for nitrate +10")
    assert wished["parts"] == pytest.approx([12.0, 12.0])
    assert (await talk.facts("what does 24 ml green mix do"))["days"] == 2
    assert "its label counts in ml" in await talk.text("what does 5 g green mix do")


async def test_a_conditioner_is_for_the_water_that_is_changed(talk: Talk) -> None:
    await _fern(talk)
    await talk.say("my conditioner: 5 ml per 40 l removes chlorine and chloramine")
    facts = await talk.facts("how much conditioner for a 30 l water change")
    assert facts["millilitres"] == pytest.approx(3.75)
    half = await talk.facts("how much conditioner for a 50% water change")
    assert half["millilitres"] == pytest.approx(7.5)
    assert (await talk.facts("how much conditioner for this tank"))["millilitres"] == 15.0


@pytest.mark.parametrize(
    "text",
    [
        "kh drops: 10 drops per 10 l raise kh by 1",
        "kh tropfen: 10 tropfen auf 10 l erhöhen kh um 1",
        "my powder: 5 per 100 l raises kh 1",
        "my powder 5 g per 100 raises kh 1",
        "sludge powder: 2 scoops per 50 l",
        "polvo kh: 2 medidas por 50 l sube kh 1",
    ],
)
async def test_without_a_measure_there_is_no_number_and_no_reading(talk: Talk, text: str) -> None:
    await _fern(talk)
    facts = await talk.facts(text)
    assert facts["refused"] == "label_unmeasured"
    assert "No products" in await talk.text("products")
    assert (await talk.facts("dose kh 5"))["from"] == 4


async def test_a_product_without_strength_gets_no_number(talk: Talk) -> None:
    await _fern(talk)
    said = await talk.text("new product: hard mineral, no strength on the bag")
    assert said.startswith("No number for hard mineral")
    assert "No products" in await talk.text("products")


async def test_a_label_without_a_colon_is_kept_after_a_press(talk: Talk) -> None:
    await _fern(talk)
    (asked,) = await talk.say("shrimp mineral 2 g per 10 l raises gh by 6, max twice a week")
    assert "No products" in await talk.text("products")
    (kept,) = await talk.press(1, asked)
    assert "Kept as “shrimp mineral”" in kept.text
    facts = await talk.facts("dose gh 8 with shrimp mineral")
    assert facts["grams"] == pytest.approx(2 * 12 / 6 * 2)


async def test_a_bag_of_a_known_salt_needs_no_label(talk: Talk) -> None:
    await _fern(talk)
    text = "my bag of baking soda says 99% pure, 30 g per 100 l raises kh 10 dkh"
    assert "No label needed for sodium bicarbonate" in await talk.text(text)


async def test_magnesium_is_dosed_as_hardness_in_fresh_water(talk: Talk) -> None:
    await _fern(talk)
    await talk.say("mg salt: 10 g per 100 l raises mg by 10 mg/l")
    assert (await talk.facts("dose gh 8 with mg salt"))["grams"] == pytest.approx(10.4, rel=0.01)
    assert (await talk.facts("dose mg 20 with mg salt"))["refused"] == "use_gh"


@pytest.mark.parametrize("text", ["raise khh to 4", "erhöhe khh auf 6", "raise gg to 8"])
async def test_a_misspelt_name_is_no_product(talk: Talk, text: str) -> None:
    await _fern(talk)
    (asked,) = await talk.say(text)
    assert "Did you mean" in asked.text
    assert "grams" not in asked.facts


@pytest.mark.parametrize(
    "text",
    [
        "forget KH Plus", "vergiss mein KH Plus", "oublie KH Plus", "olvida KH Plus",
        "esquece o KH Plus", "dimentica KH Plus", "vergeet KH Plus", "zapomnij KH Plus",
        "glöm KH Plus", "forget that product",
    ],
)  # fmt: skip
async def test_a_product_is_forgotten(talk: Talk, text: str) -> None:
    await _fern(talk)
    await talk.say("KH Plus: 5 g per 80 l raises kh 1")
    assert await talk.text(text) == "Forgotten: KH Plus."
    assert "No products" in await talk.text("produkte")


async def test_a_label_is_taken_back_by_an_undo(talk: Talk) -> None:
    """What was measured before it stays."""
    await _fern(talk)
    await talk.say("red mix: 5 g per 80 l raises kh 1")
    await talk.say("red mix: 5 g per 80 l raises kh 2, gh 1")
    assert "again: 5 g in 80 L raises KH 1 °dH" in await talk.text("undo")
    assert await talk.text("products") == "red mix: 5 g in 80 L raises KH 1 °dH by its label"
    await talk.say("blue mix: 5 g per 80 l raises kh 1")
    assert "no longer kept" in await talk.text("undo")
    assert "blue" not in await talk.text("products")
    assert (await talk.facts("dose kh 5"))["from"] == 4


async def test_a_label_is_put_right(talk: Talk) -> None:
    await _fern(talk)
    await talk.say("red mix: 5 g per 80 l raises kh 1")
    assert "(it was: 5 g" in await talk.text("no, red mix: 5 g per 80 l raises kh 2")
    assert "(it was: 5 g" in await talk.text("red mix is 6 g per 80 l raises kh 1")
    assert await talk.text("products") == "red mix: 6 g in 80 L raises KH 1 °dH by its label"


@pytest.mark.parametrize(
    "text",
    [
        "call it blue jar", "nenn es blue jar", "appelle-le blue jar", "llámalo blue jar",
        "chama-lhe blue jar", "chiamalo blue jar", "noem het blue jar", "nazwij to blue jar",
        "kalla det blue jar",
    ],
)  # fmt: skip
async def test_a_label_is_named_afterwards(talk: Talk, text: str) -> None:
    await _fern(talk)
    await talk.say("5 g per 80 l raises kh 1")
    assert "Kept as “blue jar”" in await talk.text(text)
    assert (await talk.facts("dose kh 5 with blue jar"))["grams"] == pytest.approx(7.5)


async def test_nothing_is_named_where_no_label_waits(talk: Talk) -> None:
    await _fern(talk)
    await talk.say("5 g per 80 l raises kh 1")
    await talk.say("call it kh")
    await talk.wait(hours=3)
    await talk.say("call it blue jar")
    assert "No products" in await talk.text("products")


@pytest.mark.parametrize("text", ["is red mix safe", "what is red mix", "can i use red mix"])
async def test_of_a_product_is_told_what_is_known(talk: Talk, text: str) -> None:
    await _fern(talk)
    await talk.say("red mix: 5 g per 80 l raises kh 1")
    said = await talk.text(text)
    assert said.startswith("red mix: 5 g in 80 L raises KH 1 °dH by its label")
    assert "Whether it is safe I cannot tell" in said


async def test_two_parts_are_two_doses(talk: Talk) -> None:
    await _fern(talk)
    await talk.say("part a: 10 ml per 100 l raises ca 5 ppm")
    await talk.say("part b: 10 ml per 100 l raises kh 0.3")
    events = (await talk.facts("i gave 10 ml of part a and 12 ml of part b"))["events"]
    told = [(event["substance"], event["millilitres"]) for event in events]
    assert told == [("part a", 10.0), ("part b", 12.0)]


@pytest.mark.parametrize("name", ["kh 5", "guppy", "water", "new"])
async def test_what_means_something_is_no_products_name(talk: Talk, name: str) -> None:
    await _fern(talk)
    await talk.say(f"{name}: 5 g per 80 l raises kh 1")
    assert "No products" in await talk.text("products")


async def test_a_plan_of_a_product_is_had_another_way(talk: Talk) -> None:
    await _fern(talk)
    await talk.say("red mix: 5 g per 80 l raises kh 1")
    assert (await talk.facts("dose kh 6 with red mix"))["parts"] == pytest.approx([7.5, 7.5])
    assert (await talk.facts("half of that"))["parts"] == pytest.approx([7.5])
    assert (await talk.facts("in 3 parts"))["parts"] == pytest.approx([2.5] * 3)
    assert (await talk.facts("with baking soda?"))["substance"] == "sodium bicarbonate"


@pytest.mark.parametrize(
    "text", ["with red mix", "with red-mix?", "mit red mix?", "and with RED MIX"]
)
async def test_a_plan_is_had_with_a_product(talk: Talk, text: str) -> None:
    await _fern(talk)
    await talk.say("RED MIX!!: 5 g per 80 l raises kh 1")
    await talk.say("dose kh 6")
    assert (await talk.facts(text))["parts"] == pytest.approx([7.5, 7.5])


async def test_of_it_goes_past_a_question_of_it_without_an_answer(talk: Talk) -> None:
    await _fern(talk)
    await talk.say("tampon bleu : 4 g pour 50 l augmente le kh de 1,5")
    assert "refused" in await talk.facts("combien de ça pour 60 l")
    facts = await talk.facts("que font 10 g de ce produit")
    assert facts["rises"] == pytest.approx({"kh": 1.5 * 10 * 50 / 4 / 120})
    await talk.say("dose gh 8")
    assert "product" not in await talk.facts("que font 10 g de ce produit")


async def test_new_water_is_no_conditioner(talk: Talk) -> None:
    await _fern(talk)
    await talk.say("my conditioner: 1 ml per 10 l removes chlorine")
    (event,) = (await talk.facts("changed 30% with conditioner"))["events"]
    assert event["percent"] == 30.0
    assert event.get("substance") is None
    assert "new water" in await talk.text("what if i change 40% with conditioner")


@pytest.mark.parametrize(
    "text", ["how much conditioner for 30 l", "wie viel Wasseraufbereiter für 30 l"]
)
async def test_what_was_never_told_of_gets_no_number(talk: Talk, text: str) -> None:
    await _fern(talk)
    facts = await talk.facts(text)
    assert facts["refused"] == "substance_unknown"
    assert not {"grams", "millilitres"} & facts.keys()


async def test_in_a_group_what_is_addressed_is_answered_and_talk_is_left_alone(group: Talk) -> None:
    await group.say("/tank new Fern 120 l fresh", addressed=True)
    await group.say("kh 4 gh 6 ph 7.2 temp 25 ammonia 0", addressed=True)
    await group.say("red mix: 5 g per 80 l raises kh 1", addressed=True)
    (planned,) = await group.say("dose kh 5 with red mix", addressed=True)
    assert planned.facts["grams"] == pytest.approx(7.5)
    for talk in ("i like red mix", "some of it is left", "with that you never know", "products"):
        assert "product" not in str([reply.facts for reply in await group.say(talk)])


@pytest.mark.parametrize(
    ("label", "wish", "given", "effect"),
    [
        ("tonic: 4 g per 40 l raises gh 2", "dose gh 7 with it", "i gave 5 g of it",
         "what does 5 g of it do"),
        ("Pulver: 4 g auf 40 l erhöht die gh um 2", "gh auf 7 damit",
         "ich habe 5 g davon gegeben", "was bewirken 5 g davon"),
        ("poudre: 4 g pour 40 l augmente le gh de 2", "gh à 7 avec ce produit",
         "j'ai mis 5 g de ce produit", "que font 5 g de ce produit"),
        ("polvo: 4 g por 40 l sube el gh 2", "gh a 7 con este producto", "eché 5 g de eso",
         "qué hacen 5 g de eso"),
        ("pó azul: 4 g por 40 l aumenta o gh em 2", "gh a 7 com isso", "dei 5 g disso",
         "o que fazem 5 g disso"),
        ("polvere: 4 g per 40 l alza il gh di 2", "gh a 7 con questo", "ho messo 5 g di questo",
         "cosa fanno 5 g di questo"),
        ("gh poeder: 4 g per 40 l verhoogt de gh met 2", "gh naar 7 hiermee",
         "ik heb 5 g ervan gegeven", "wat doet 5 g daarvan"),
        ("proszek: 4 g na 40 l podnosi gh o 2", "gh do 7 z tym", "dałem 5 g tego produktu",
         "co zrobi 5 g tego produktu"),
        ("gh-höjare: 4 g per 40 l höjer gh med 2", "gh till 7 med den", "jag gav 5 g av den",
         "vad gör 5 g av den"),
    ],
)  # fmt: skip
async def test_of_it_and_with_it_in_nine_languages(
    talk: Talk, label: str, wish: str, given: str, effect: str
) -> None:
    """4 g in 40 L raise GH by 2: 1 degree in 120 L takes 6 g, and 5 g do 5/6 of one."""
    await _fern(talk)
    await talk.say(label)
    assert (await talk.facts(wish))["grams"] == pytest.approx(6.0)
    (event,) = (await talk.facts(given))["events"]
    assert label.startswith(event["substance"])
    assert event["grams"] == 5.0
    assert (await talk.facts(effect))["rises"] == pytest.approx({"gh": 5 / 6})


@pytest.mark.parametrize(
    ("label", "given", "rises", "days"),
    [
        ("5 g per 80 l raises kh 1", "i gave 500 g of red mix", {"kh": 500 / 7.5}, 64),
        ("5 g per 80 l raises gh 1", "i gave 22.5 g of red mix", {"gh": 3.0}, 2),
        ("10 ml per 100 l adds 5 ppm nitrate", "i gave 24 ml red mix", {"nitrate": 10.0}, 2),
    ],
)
async def test_more_than_a_days_dose_is_warned_of(
    talk: Talk, label: str, given: str, rises: dict[str, float], days: int
) -> None:
    await _fern(talk)
    await talk.say(f"red mix: {label}")
    logged, warned = await talk.say(given)
    assert "dosed" in logged.text
    assert warned.text.startswith("Too much for one day")
    assert warned.facts["rises"] == pytest.approx(rises)
    assert warned.facts["days"] == days


@pytest.mark.parametrize(
    "given", ["i gave 7.5 g of red mix", "i gave red mix", "gave 5 ml red mix"]
)
async def test_a_days_dose_is_warned_of_in_no_word(talk: Talk, given: str) -> None:
    await _fern(talk)
    await talk.say("red mix: 5 g per 80 l raises kh 1")
    assert all("Too much" not in reply.text for reply in await talk.say(given))
