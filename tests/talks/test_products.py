"""A product's label is never taken for a reading, and passes the same gates as bicarbonate."""

from __future__ import annotations

import pytest

from core.advice.products import Label, Product
from tests.chat.harness import START, Talk

LABEL = "5 g per 80 l raises kh 1"


async def test_a_label_is_no_reading(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 4 ph 7.2 temp 25 ammonia 0")
    (reply,) = await talk.say(LABEL)
    assert reply.facts["grams"] == pytest.approx(5 * 120 / 80)
    assert "Not stored as a reading" in reply.text
    assert (await talk.facts("dose kh 6"))["from"] == 4


async def test_with_ammonia_there_is_no_amount(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 4 ph 7.2 temp 25 ammonia 1")
    assert "Keep aeration and CO2 as they are" in (await talk.say(LABEL))[0].lines[0].text
    await talk.say("kh 4 ph 8.0 temp 25 ammonia 1")
    facts = await talk.facts(LABEL)
    assert facts["refused"] == "ammonia"
    assert "grams" not in facts


async def test_without_ammonia_the_first_sentence_is_conditional(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 4 ph 7.2 temp 25")
    (reply,) = await talk.say(LABEL)
    assert reply.lines[0].text.startswith("Only if total ammonia is under")


async def test_a_routine_is_told_by_the_tanks_own_nitrate(talk: Talk) -> None:
    """Two a day: 14 a week; a third each week with tap of 5 ends at 5 + 14 / 0.33."""
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("/source tap ph 7.6 kh 5 gh 7 no3 5 temp 25")
    for day in range(0, 16, 2):
        await talk.say(f"kh 4.5 gh 6 ph 7.4 temp 25 ammonia 0 no3 {10 + 2 * day}")
        await talk.wait(days=2)
    await talk.say("kh 4.5 gh 6 ph 7.4 temp 25 ammonia 0 no3 42")
    (reply,) = await talk.say("what if i change 33% every week")
    assert reply.facts["routine"]["per_day"] == pytest.approx(2.0, rel=0.05)
    assert reply.facts["routine"]["high"] == pytest.approx(5 + 14 / 0.33, rel=0.05)
    kept = (await talk.facts("get nitrate under 35"))["routine"]
    assert kept["high"] == pytest.approx(35.0)
    assert kept["share"] == pytest.approx(14 / 30, rel=0.05)


async def test_a_label_is_read_in_other_words_and_never_stored(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 4 ph 7.2 temp 25 ammonia 0 no3 20")
    (reply,) = await talk.say("5 g auf 80 l erhöht die KH um 1")
    assert reply.facts["grams"] == pytest.approx(5 * 120 / 80)
    (other,) = await talk.say("5 ml per 100 l raises no3 2")
    assert "Not stored as a reading" in other.text
    assert "nitrate 20" in (await talk.say("history of nitrate"))[0].text
    assert (await talk.facts("dose kh 6"))["from"] == 4


async def test_a_product_is_kept_and_dosed_by_its_label(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 4 gh 6 ph 7.2 temp 25 ammonia 0")
    assert "Kept as “my buffer”" in await talk.text(f"my buffer: {LABEL}")
    facts = await talk.facts("dose kh 6 with my buffer")
    assert facts["parts"] == pytest.approx([5 * 120 / 80] * 2)
    assert facts["product"]["name"] == "my buffer"
    assert "GH" in await talk.text("dose gh 8 with my buffer")
    assert "grams" not in await talk.facts("dose gh 8 with my buffer")
    assert "my buffer" in await talk.text("products")
    assert "Forgotten" in await talk.text("forget my buffer")
    refused = await talk.facts("dose kh 6 with my buffer")
    assert refused["refused"] == "substance_unknown"
    assert "grams" not in refused


@pytest.mark.parametrize("text", ["dose kh 6 with magic powder", "raise kh to 6 using blue drops"])
async def test_a_dose_with_something_unknown_gets_no_number(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 4 ph 7.2 temp 25 ammonia 0")
    facts = await talk.facts(text)
    assert facts["refused"] == "substance_unknown"
    assert "grams" not in facts


async def test_a_product_passes_the_gates_of_a_buffer(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say(f"my buffer: {LABEL}")
    await talk.say("kh 4 ph 8.0 temp 25 ammonia 1")
    facts = await talk.facts("dose kh 6 with my buffer")
    assert facts["refused"] == "ammonia"
    assert "grams" not in facts


async def test_what_a_dose_did_is_learned_and_kept_only_after_a_yes(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("gh 4 kh 5 ph 7.2 temp 25 ammonia 0")
    await talk.wait(hours=1)
    await talk.say("dosed 10 g mineral mix")
    await talk.wait(hours=20)
    _, offered = await talk.say("gh 7")
    assert "Shall I keep that" in offered.text
    assert "grams" not in await talk.facts("dose gh 9 with mineral mix")
    await talk.press(1, offered)
    await talk.wait(hours=4)
    facts = await talk.facts("dose gh 9 with mineral mix")
    # A whole degree's kit: 7 may be 6 to 7 and 4 be 3 to 4, so 10 g raise 2 to 4 degrees.
    assert facts["product"]["rise_span"] == [2, 4]
    assert facts["grams"] == pytest.approx(10 * 2 / 4)
    assert "settled already" in (await talk.press(1, offered))[0].text


async def test_nothing_is_learned_where_something_else_was_done(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("gh 4")
    await talk.wait(hours=1)
    await talk.say("dosed 10 g mineral mix")
    await talk.say("changed 20%")
    await talk.wait(hours=20)
    assert len(await talk.say("gh 7")) == 1


@pytest.mark.parametrize("head", ["kh: ", "dose: ", "how about ", "i think ", "the kh: ", ""])
async def test_words_of_messages_are_no_products_name(talk: Talk, head: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 4 ph 7.2 temp 25 ammonia 0")
    await talk.say(f"{head}{LABEL}")
    assert "No products" in await talk.text("products")
    await talk.say("is my kh ok")
    assert (await talk.facts("dose kh 6"))["substance"] == "sodium bicarbonate"


@pytest.mark.parametrize("name", ["kh plus", "reef kh plus", "green jar"])
async def test_a_name_may_be_made_of_words_of_the_trade(talk: Talk, name: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 4 ph 7.2 temp 25 ammonia 0")
    assert f"Kept as “{name}”" in await talk.text(f"{name}: {LABEL}")
    facts = await talk.facts(f"dose kh 6 with {name}")
    assert facts["product"]["name"] == name
    assert facts["grams"] == pytest.approx(2 * 5 * 120 / 80)


@pytest.mark.parametrize("name", ["kh", "dose kh", "changed kh"])
async def test_no_product_has_the_name_of_what_is_asked(talk: Talk, name: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say(f"{name}: {LABEL}")
    assert "No products yet" in await talk.text("products")


async def _stocked(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("added 8 guppies")
    await talk.say("kh 3 gh 4 ph 7.2 temp 25 ammonia 0")


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("bleach: 5 ml per 10 l raises kh 1", "bleach"),
        ("household bleach 5 ml per 10 l raises kh 1", "bleach"),
        ("drain cleaner: 5 ml per 10 l raises kh 1", "battery_acid"),
        ("lye: 5 g per 80 l raises kh 2", "caustic"),
        ("slaked lime: 5 g per 80 l raises kh 1", "carbonate"),
        ("washing soda: 5 g per 80 l raises kh 1", "carbonate"),
        ("vinegar: 5 ml per 10 l raises kh 1", "acid"),
        ("muriatic acid: 5 ml per 10 l raises gh 1", "acid"),
        ("ph up: 5 ml per 10 l raises kh 1", "carbonate"),
        ("ammonia: 5 ml per 10 l raises kh 1", "label_refused"),
        ("bleichmittel: 5 ml pro 10 l erhöht kh um 1", "bleach"),
        ("natronlauge: 5 g pro 80 l erhöht kh um 2", "caustic"),
        ("gelöschter kalk: 5 g pro 80 l erhöht kh um 2", "carbonate"),
        ("essig: 5 ml pro 10 l erhöht kh um 1", "acid"),
        ("eau de javel: 5 ml pour 10 l augmente kh de 1", "bleach"),
        ("chaux vive: 5 g pour 80 l augmente kh de 1", "caustic"),
        ("vinaigre: 5 ml pour 10 l augmente kh de 1", "acid"),
        ("lejía: 5 ml por 10 l aumenta kh 1", "bleach"),
        ("cal apagada: 5 g por 80 l aumenta kh 1", "carbonate"),
        ("água sanitária: 5 ml por 10 l aumenta kh 1", "bleach"),
        ("candeggina: 5 ml per 10 l aumenta kh 1", "bleach"),
        ("gootsteenontstopper: 5 ml per 10 l verhoogt kh 1", "battery_acid"),
        ("ocet: 5 ml na 10 l podnosi kh o 1", "acid"),
        ("släckt kalk: 5 g på 80 l höjer kh 1", "carbonate"),
    ],
)
async def test_a_refused_substance_has_no_label(talk: Talk, text: str, reason: str) -> None:
    await _stocked(talk)
    (reply,) = await talk.say(text)
    assert reply.facts["refused"] == reason
    assert not {"grams", "millilitres", "product"} & reply.facts.keys()
    assert "No products" in await talk.text("products")


async def test_what_was_kept_before_it_was_refused_is_no_longer_dosed(talk: Talk) -> None:
    await _stocked(talk)
    label = Label(5.0, "g", 80.0, "kh", 1.0)
    async with talk.app.database.write() as uow:
        await uow.products.keep(1, Product.of_label("washing soda", label), START)
        await uow.commit()
    assert "No products" in await talk.text("products")
    assert "refused" in await talk.facts("dose kh 4 with washing soda")


@pytest.mark.parametrize(
    "text",
    [
        "ph down: 5 ml per 10 l lowers kh 1",
        "kh minus: 5 ml per 100 l lowers kh by 1",
        "mein kh senker: 5 ml pro 100 l senkt kh um 1",
        "drops: 5 ml per 10 l lowers ph by 0.5",
    ],
)
async def test_a_lowering_label_is_refused_and_never_stored(talk: Talk, text: str) -> None:
    await _stocked(talk)
    assert (await talk.facts(text))["refused"] == "label_lowers"
    assert (await talk.facts("dose kh 4"))["from"] == 3


@pytest.mark.parametrize(
    "label",
    [
        "5 g per 80 l raises kh 100",
        "0.001 g per 100 l raises kh 5",
        "500 g per 1 l raises kh 1",
        "0.01 ml per 100 l raises kh 5",
        "500 ml per 1 l raises gh 1",
    ],
)
async def test_a_label_that_no_salt_can_do_is_not_kept(talk: Talk, label: str) -> None:
    await _stocked(talk)
    (reply,) = await talk.say(f"kh plus: {label}")
    assert reply.facts["refused"] == "label_past_salts"
    assert not reply.buttons
    assert "No products" in await talk.text("products")


async def test_a_label_of_much_filler_is_kept_after_a_yes(talk: Talk) -> None:
    await _stocked(talk)
    (asked,) = await talk.say("kh plus: 8 g per 80 l raises kh 1")
    assert asked.facts["each"] == pytest.approx(100.0)
    assert "No products" in await talk.text("products")
    (kept,) = await talk.press(1, asked)
    assert kept.facts["grams"] == pytest.approx(10.0)
    assert "kh plus" in await talk.text("products")


async def test_a_second_label_says_what_it_was(talk: Talk) -> None:
    await _stocked(talk)
    await talk.say("kh plus: 5 g per 80 l raises kh 1")
    said = await talk.text("kh plus: 5 g per 80 l raises kh 2")
    assert "it was: 5 g in 80 L raises KH 1" in said


async def test_a_known_salt_has_no_label(talk: Talk) -> None:
    await _stocked(talk)
    assert "No label needed" in await talk.text(f"baking soda: {LABEL}")
    assert (await talk.facts("dose kh 4 with baking soda"))["grams"] == pytest.approx(3.0, rel=0.02)


async def test_no_second_dose_of_a_product_on_the_old_reading(talk: Talk) -> None:
    await _stocked(talk)
    await talk.say("strong: 10 ml per 100 l raises gh 2")
    (planned,) = await talk.say("dose gh 6 with strong")
    assert planned.facts["millilitres"] == pytest.approx(10.0)
    (logged,) = await talk.press(1, planned)
    assert "logged 10 ml strong" in logged.text
    for text in ("dose gh 6 with strong", "dose gh 6", "strong: 10 ml per 100 l raises gh 2"):
        facts = await talk.facts(text)
        assert facts["refused"] == "dosed_since"
        assert facts["substance"] == "strong"
    await talk.wait(hours=2)
    await talk.say("gh 6 kh 3 ph 7.2 ammonia 0")
    assert (await talk.facts("dose gh 8 with strong"))["refused"] == "moved_today"


async def test_a_dose_of_my_product_is_a_dose_of_it(talk: Talk) -> None:
    await _stocked(talk)
    await talk.say("my tonic: 10 ml per 100 l raises gh 2")
    await talk.say("dosed 10 ml of my tonic")
    assert (await talk.facts("dose gh 6 with my tonic"))["refused"] == "dosed_since"


async def test_a_misspelt_product_is_a_button(talk: Talk) -> None:
    await _stocked(talk)
    await talk.say(f"kh plus: {LABEL}")
    (asked,) = await talk.say("dose kh 4 with kh pluss")
    assert "grams" not in asked.facts
    (planned,) = await talk.press(1, asked)
    assert planned.facts["product"]["name"] == "kh plus"


async def test_a_product_asked_by_name_is_never_another_thing(talk: Talk) -> None:
    await _stocked(talk)
    await talk.say("new product kh plus: 5 g per 80 l raises kh by 1")
    facts = await talk.facts("how much kh plus for kh 4")
    assert facts["product"]["name"] == "kh plus"
    await talk.say("forget kh plus")
    facts = await talk.facts("how much kh plus for kh 4")
    assert facts["refused"] == "substance_unknown"
    assert "grams" not in facts


async def test_nothing_is_learned_of_what_is_refused(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("gh 4 kh 5 ph 7.2 temp 25 ammonia 0")
    await talk.wait(hours=1)
    await talk.say("dosed 10 g slaked lime")
    await talk.wait(hours=20)
    assert "Shall I keep that" not in await talk.text("gh 7")
    await talk.say("/tank new Moss 100 l fresh")
    await talk.say("moss: gh 4 kh 5 ph 7.2 temp 25 ammonia 0")
    await talk.wait(hours=1)
    await talk.say("moss: dosed 10 g lye")
    await talk.wait(hours=20)
    assert "Shall I keep that" not in await talk.text("moss: gh 7")


@pytest.mark.parametrize(
    "text",
    [
        "my kh plus raises kh by 1 with 5 g per 80 l",
        "mein kh plus erhöht die kh um 1 mit 5 g auf 80 l",
        "mon kh plus augmente le kh de 1 avec 5 g pour 80 l",
        "mi kh plus sube el kh 1 con 5 g por 80 l",
        "o meu kh plus aumenta o kh em 1 com 5 g por 80 l",
        "il mio kh plus alza il kh di 1 con 5 g per 80 l",
        "mijn kh plus verhoogt de kh met 1 met 5 g per 80 l",
        "mój kh plus podnosi kh o 1 przy 5 g na 80 l",
        "min kh plus höjer kh med 1 med 5 g per 80 l",
    ],
)
async def test_a_label_may_tell_its_product_first(talk: Talk, text: str) -> None:
    """5 g per 80 L is 7.5 g in 120 L."""
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("ph 7 kh 4 gh 6 ammonia 0 temp 25")
    assert (await talk.facts(text))["grams"] == pytest.approx(7.5)
    assert "kh plus" in (await talk.text("products")).casefold()


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("bleach raises kh by 1 with 5 ml per 10 l", "bleach"),
        ("soude caustique augmente le kh de 1 avec 5 g pour 80 l", "caustic"),
        ("vinagre sube el kh 1 con 5 ml por 80 l", "acid"),
        ("my kh minus lowers kh by 1 with 5 g per 80 l", "label_lowers"),
        ("magic stuff raises kh by 9 with 1 g per 800 l", "label_past_salts"),
    ],
)
async def test_such_a_label_is_refused_like_any_other(talk: Talk, text: str, reason: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    facts = await talk.facts(text)
    assert not {"grams", "millilitres"} & set(facts)
    assert reason in facts["refused"]


async def test_a_deed_is_no_label(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    assert "product" not in await talk.facts("i raised kh by 1 with 5 g in 80 l")


async def test_a_part_of_a_product_that_is_too_much_is_warned_of(talk: Talk) -> None:
    await talk.say("/tank new Shelf 160 l fresh")
    await talk.say("kh 3 gh 6 ph 7 temp 25 ammonia 0")
    await talk.say("my buffer: 10 g per 100 l raises kh 2")
    await talk.say("dose kh 4 with my buffer")
    text = await talk.text("i put the whole 16 g in already")  # +2 °dH by its label
    assert "Too much for one day" in text


async def test_how_many_ml_is_of_the_only_liquid_that_raises_it(talk: Talk) -> None:
    await talk.say("/tank new Bench 75 l fresh")
    await talk.say("kh 2 gh 4 ph 7 temp 25 ammonia 0")
    await talk.say("my mineral: 5 ml per 40 l raises gh 1")
    assert "ml of my mineral" in await talk.text("how many ml to gh 6")
    assert "magnesium sulfate" in await talk.text("dose gh 6")


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ("/label Reef Mix: 5 g per 80 l raises kh 1", "Reef Mix"),
        ("/label X: 5 g per 80 l raises kh 1", "X"),
        ("/label@some_bot Reef Mix: 5 g per 80 l raises kh 1", "Reef Mix"),
        ("/etikett Riffmix: 5 g auf 80 l erhöht kh um 1", "Riffmix"),
        ("/etichetta Miscela: 5 g per 80 l aumenta kh di 1", "Miscela"),
        ("/product Reef Mix: 5 g per 80 l raises kh 1", "Reef Mix"),
        ("label Reef Mix: 5 g per 80 l raises kh 1", "Reef Mix"),
    ],
)
async def test_a_label_as_a_command(talk: Talk, line: str, name: str) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    assert f"Kept as “{name}”" in await talk.text(line)
    assert name in await talk.text("products")


@pytest.mark.parametrize("line", ["/label", "/label fern", "/etikett"])
async def test_a_bare_label_command_says_what_to_send(talk: Talk, line: str) -> None:
    assert await talk.text(line) == (
        "To keep it, send it with a name in front: my buffer: 5 g per 80 l raises kh 1"
    )


async def test_a_label_command_of_an_acid_is_refused(talk: Talk) -> None:
    assert "No vinegar" in await talk.text("/label vinegar: 5 ml per 80 l lowers kh 1")
    assert "vinegar" not in await talk.text("products")


@pytest.mark.parametrize(
    "said",
    [
        ("my buffer says 5 g per 80 l raises kh by 1, how much for kh 5",),
        ("i have a kh powder, label: 5 g per 80 l raises kh 1", "kh to 5"),
        ("5 g per 80 l raises kh 1", "how much to get to 5"),
    ],
)
async def test_a_wish_behind_a_label_is_for_that_product(talk: Talk, said: tuple[str, ...]) -> None:
    await talk.say("/tank new Fern 80 l fresh")
    await talk.say("kh 4 ph 7.2 temp 25 ammonia 0")
    for line in said:
        await talk.say(line)
    plan = talk.last[-1].facts
    assert (plan["grams"], plan["to"]) == (pytest.approx(5.0), 5.0)
    assert "sodium bicarbonate" not in talk.last[-1].text


async def test_a_dose_is_by_the_product_told_of_late(talk: Talk) -> None:
    await talk.say("my buffer: 5 g per 100 l raises kh 1")
    await talk.say("tank 90 l kh 4")
    assert "4.5 g of my buffer" in await talk.text("how much to get to 6")
    await talk.wait(hours=24)
    (event,) = (await talk.say("added 4 g of it"))[0].facts["events"]
    assert event["substance"] == "my buffer"


async def test_a_dose_of_a_named_salt_is_by_that(talk: Talk) -> None:
    await talk.say("my buffer: 5 g per 100 l raises kh 1")
    await talk.say("tank 90 l kh 4")
    assert "my buffer" not in await talk.text("how much baking soda to get to 6")
