"""What is logged stays logged, and what must be said of it stands in the first two lines."""

from __future__ import annotations

import re
from dataclasses import dataclass

import pytest

from tests.chat.harness import Talk

FERN = ("/tank new Fern 120 l fresh", "kh 4 gh 6 ph 7.2 temp 25 ammonia 0")
SHRIMPS = (*FERN, "added 10 cherry shrimp")
KOI = ("/tank new Koi 2000 l pond", "added 5 koi")
REEF = ("/tank new Reef 300 l marine", "kh 8 ph 8.2 temp 25 salinity 35 ammonia 0")


@dataclass(frozen=True)
class Deed:
    """What is told before, the deed in several wordings, and what stands in the first two lines."""

    before: tuple[str, ...]
    told: tuple[str, ...]
    finding: str
    severity: str
    says: str


DEEDS = {
    "vinegar": Deed(
        FERN,
        ("dosed 5 ml of vinegar", "added 5 ml vinegar", "5 ml Essig dosiert"),
        "acid_dosed",
        "warn",
        "No second dose today",
    ),
    "strong acid": Deed(
        FERN,
        ("added 5 ml hydrochloric acid", "dosed 10 ml muriatic acid"),
        "acid_dosed",
        "alarm",
        "Give air now",
    ),
    "caustic": Deed(
        FERN,
        ("dosed 5 ml lye", "5 ml Natronlauge dosiert", "dosé 5 ml soude caustique"),
        "caustic_dosed",
        "alarm",
        "Add no more",
    ),
    "carbonate in fresh water": Deed(
        FERN, ("added 5 g soda ash",), "caustic_dosed", "warn", "lifts pH fast"
    ),
    "copper beside shrimps": Deed(
        SHRIMPS,
        ("dosed 5 ml copper medicine", "5 ml Kupfermittel dosiert", "dosificado 5 ml de cobre"),
        "medicine_dosed",
        "alarm",
        "Copper kills invertebrates (cherry shrimp): take them out now",
    ),
    "copper beside fish": Deed(
        FERN, ("dosed 5 ml copper medicine",), "medicine_dosed", "note", "I cannot judge that dose"
    ),
    "formalin": Deed(
        FERN,
        ("dosed formalin", "dosed 5 ml formalin", "5 ml formalin dosiert", "dosé 5 ml formol"),
        "medicine_dosed",
        "note",
        "strong air now",
    ),
    "potassium beside shrimps": Deed(
        SHRIMPS,
        (
            "dosed 20 g potassium sulfate",
            "20 g Kaliumsulfat dosiert",
            "dosé 20 g de sulfate de potassium",
            "dosificado 20 g de sulfato de potasio",
            "dosei 20 g de sulfato de potássio",
            "dosato 20 g di solfato di potassio",
            "20 g kaliumsulfaat gedoseerd",
            "dodałem 20 g siarczanu potasu",
            "doserade 20 g kaliumsulfat",
        ),
        "nutrient_overdose",
        "alarm",
        "potassium +75 mg/L by potassium sulfate (caution over 20)",
    ),
    "nitrate beside fish": Deed(
        (*FERN, "added 8 guppies", "nitrate 20"),
        ("dosed 10 g potassium nitrate",),
        "nutrient_overdose",
        "warn",
        "nitrate +51 mg/L by potassium nitrate, about 71 in all (caution over 44)",
    ),
    "calcium in the sea": Deed(
        (*REEF, "calcium 400"),
        ("put in 60 g calcium chloride", "60 g Calciumchlorid dosiert"),
        "overdose",
        "alarm",
        "calcium +54.5 mg/L, at most 20 a day",
    ),
    "salt water for what evaporated": Deed(
        REEF,
        (
            "topped up 5 l with salt water",
            "5 l Salzwasser nachgefüllt",
            "uzupełniłem 5 l słoną wodą",
        ),
        "salt_topped_up",
        "warn",
        "Salinity rises, to about 35.6 g/kg",
    ),
    "another medicine": Deed(
        FERN,
        (
            "dosed 5 ml methylene blue",
            "5 ml Methylenblau dosiert",
            "dosé 5 ml bleu de méthylène",
            "dosato 5 ml blu di metilene",
            "5 ml methyleenblauw gedoseerd",
        ),
        "medicine_dosed",
        "note",
        "label, ask a fish vet",
    ),
    "half a percent of salt in a pond": Deed(
        KOI,
        ("added salt 0.5%", "added salt to 0.5%", "dosed 0.5% salt"),
        "overdose",
        "alarm",
        "Too much for one day",
    ),
    "tap water into a reef": Deed(
        REEF,
        ("changed 20% with tap", "20% wasserwechsel mit Leitungswasser"),
        "tap_in_sea",
        "warn",
        "it falls to about 28 g/kg",
    ),
    "a reef topped up with tap": Deed(
        REEF,
        ("top up with tap", "topped up 5 l with tap water"),
        "tap_topped_up",
        "note",
        "Top up with RO",
    ),
    "softened water": Deed(
        FERN,
        (
            "changed 30% with softened water",
            "topped up 5 l with softened water",
            "30% wasserwechsel mit enthärtetem wasser",
            "changé 30% avec eau adoucie",
        ),
        "softened_in",
        "warn",
        "not soft water",
    ),
    "condensate": Deed(
        FERN,
        (
            "changed 30% with dehumidifier water",
            "30% wasserwechsel mit Kondenswasser",
            "podmiana 30% skropliny",
        ),
        "condensate_in",
        "warn",
        "Not for animals",
    ),
    "pure water": Deed(
        FERN,
        ("changed 80% with ro", "changed 90% with distilled water"),
        "pure_in",
        "warn",
        "pH can crash",
    ),
}


@pytest.mark.parametrize(
    ("deed", "text"),
    [
        pytest.param(deed, text, id=f"{name}: {text}")
        for name, deed in DEEDS.items()
        for text in deed.told
    ],
)
async def test_a_deed_is_kept_and_its_caution_comes_first(
    talk: Talk, deed: Deed, text: str
) -> None:
    for before in deed.before:
        await talk.say(before)
    await talk.wait(hours=1)
    (reply,) = await talk.say(text)
    assert reply.facts["events"], "logged"
    found = {each["id"]: each["severity"] for each in reply.facts["findings"]}
    assert found[deed.finding] == deed.severity
    assert deed.says in "\n".join(line.text for line in reply.lines[:2])
    assert len(reply.lines) <= 6


QUIET = {
    "a usual dose": (FERN, "dosed 3 g baking soda"),
    "plant food": (FERN, "dosed 5 ml fertilizer"),
    "a usual change": (FERN, "changed 30% with tap"),
    "ro where the buffer stays": (FERN, "changed 20% with ro"),
    "a reef topped up with ro": (REEF, "topped up 5 l with ro"),
    "lime water in a reef": (REEF, "dosed 2 g kalkwasser"),
}


@pytest.mark.parametrize(("before", "text"), QUIET.values(), ids=QUIET)
async def test_a_usual_deed_brings_no_warning(
    talk: Talk, before: tuple[str, ...], text: str
) -> None:
    for each in before:
        await talk.say(each)
    await talk.wait(hours=1)
    (reply,) = await talk.say(text)
    ids = {each["id"] for each in reply.facts.get("findings", [])}
    assert ids.isdisjoint({deed.finding for deed in DEEDS.values()})


async def test_after_a_crash_no_buffer_while_ammonia_is_there(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("kh 2 gh 6 ph 6.2 temp 25 ammonia 1")
    (reply,) = await talk.say("ph crashed, dose kh 4")
    assert reply.facts["emergency"] == "ph_crash"
    assert reply.lines[0].text.startswith("Fern: Do not raise pH, no buffer")
    assert "ammonia 1 mg/L" in reply.lines[0].text
    assert "grams" not in reply.facts


@pytest.mark.parametrize("text", ["dose iodine", "dose strontium", "how much iodine"])
async def test_a_trace_element_is_refused_by_its_name(talk: Talk, text: str) -> None:
    await talk.say("/tank new Reef 300 l marine")
    (reply,) = await talk.say(text)
    assert reply.facts["refused"] == "analyte_unknown"
    assert reply.lines[0].text.startswith("No dose for")


MEDICINES = (
    "how much formalin for 100 l",
    "wie viel Malachitgrün auf 100 l",
    "wie viel Kupfersulfat auf 100 l",
    "combien de formol pour 100 l",
    "combien de bleu de méthylène pour 100 l",
    "cuánto azul de metileno para 100 l",
    "cuánto sulfato de cobre para 100 l",
    "quanto formalina para 100 l",
    "quanto verde malachite per 100 l",
    "hoeveel formaline voor 100 l",
    "hoeveel koper voor 100 l",
    "ile błękitu metylenowego na 100 l",
    "ile siarczanu miedzi na 100 l",
    "hur mycket kopparsulfat för 100 l",
    "hur mycket malakitgrönt för 100 l",
)
WATERS = (
    "darf ich Kondenswasser nehmen?",
    "puis-je utiliser l'eau du déshumidificateur ?",
    "¿puedo usar agua del aire acondicionado?",
    "posso usar água do ar condicionado?",
    "posso usare l'acqua del deumidificatore?",
    "mag ik condenswater gebruiken?",
    "czy mogę użyć wody z osuszacza?",
    "får jag använda vatten från avfuktaren?",
    "used dehumidifier water",
)
RELEASES = (
    "kann ich die Fische im Fluss aussetzen?",
    "puis-je relâcher mes poissons dans la rivière ?",
    "¿puedo soltar mis peces en el río?",
    "posso soltar os peixes no rio?",
    "posso liberare i pesci nel lago?",
    "mag ik de vissen uitzetten in de sloot?",
    "czy mogę wypuścić ryby do rzeki?",
    "får jag släppa ut fisken i sjön?",
)
REFUSED = (
    *(("medicine", text) for text in MEDICINES),
    *(("condensate", text) for text in WATERS),
    *(("release", text) for text in RELEASES),
    ("caustic", "wie viel Natronlauge auf 100 l"),
    ("caustic", "combien de soude caustique pour 100 l"),
    ("battery_acid", "wie viel Batteriesäure auf 100 l"),
    ("battery_acid", "cuánto ácido de batería para 100 l"),
)


@pytest.mark.parametrize(("reason", "text"), REFUSED)
async def test_refused_in_nine_languages_without_an_amount(
    talk: Talk, reason: str, text: str
) -> None:
    (reply,) = await talk.say(text)
    assert reply.facts["refused"] == reason
    assert reply.lines[0].text.startswith("No")
    assert "grams" not in reply.facts


@pytest.mark.parametrize(
    "text",
    [
        "how much salt for baby guppies in 100 l",
        "how much salt should i pour in my 1000 l pond",
        "can i use my air conditioner near the tank?",
        "darf ich kh messen?",
    ],
)
async def test_words_that_only_look_like_a_refusal(talk: Talk, text: str) -> None:
    replies = await talk.say(text)
    assert all("refused" not in reply.facts for reply in replies)


UNREAD = (
    ("medicine_in", "treated with methylene blue"),
    ("medicine_in", "put formalin in the tank"),
    ("medicine_in", "the shop had copper medicine in the water"),
    ("medicine_in", "mit Methylenblau behandelt"),
    ("medicine_in", "traité au bleu de méthylène"),
    ("acid_in", "Essig Dosierung 5 ml"),
    ("salt_in", "salted the pond to 0.3%"),
    ("unknown_in", "dosed ph down"),
    ("softened", "used softened water"),
    ("softened", "enthärtetes Wasser genommen"),
)


@pytest.mark.parametrize(("caution", "text"), UNREAD)
async def test_a_deed_that_is_no_entry_gets_its_caution(
    talk: Talk, caution: str, text: str
) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    (reply,) = await talk.say(text)
    assert reply.facts["caution"] == caution
    assert "events" not in reply.facts


async def test_shrimps_are_warned_of_copper_that_went_in_before(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("dosed 5 ml copper medicine")
    await talk.wait(days=9)
    (reply,) = await talk.say("added 3 amano shrimps")
    assert "copper_before" in {each["id"] for each in reply.facts["findings"]}
    assert "Copper went in 9 days ago and kills" in reply.lines[1].text


async def test_copper_of_the_same_day_is_told_so(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    await talk.say("dosed 5 ml copper medicine")
    await talk.wait(hours=1)
    assert "Copper went in today and kills" in await talk.text("added 3 amano shrimps")


@pytest.mark.parametrize(
    "dosed", ["dosed 40 g potassium nitrate", "put in 30 g monopotassium phosphate"]
)
async def test_what_is_offered_after_too_many_nutrients_is_within_the_limits(
    talk: Talk, dosed: str
) -> None:
    """The offer names no share of its own: asked, the planner answers with one that it allows."""
    for text in (*FERN, "gh 6 nitrate 10", "/source tap ph 7.6 kh 14 gh 20 no3 5 temp 15"):
        await talk.say(text)
    said = await talk.text(dosed)
    offered = set(re.findall(r"Ask: (.+)$", said, re.MULTILINE))
    assert offered == {"how much can i change"}
    facts = await talk.facts(offered.pop())
    assert "broken" not in facts
    assert 0.0 < facts["share"] <= 0.5


@pytest.mark.parametrize(
    ("readings", "dose", "says"),
    [
        ("kh 4 ph 7.2 25c ammonia 0", "put in 3 g baking soda", "A little over a day's step"),
        ("kh 4 ph 7.2 25c ammonia 0", "put in 3.5 g baking soda", "A little over a day's step"),
        ("kh 4 ph 7.2 25c ammonia 0", "put in 5 g baking soda", "Too much for one day"),
        ("kh 4 ph 7.2 25c ammonia 0", "put in 46 g baking soda", "Too much for one day"),
        ("kh 1 ph 6.8 25c ammonia 0", "put in 3 g baking soda", "Too much for one day"),
        ("kh 4 ph 7.2 25c ammonia 2", "put in 3 g baking soda", "Too much for one day"),
        ("kh 4 ph 7.2 25c", "put in 3 g baking soda", "Too much for one day"),
        ("gh 4", "put in 3 g baking soda", "Too much for one day"),
    ],
)
async def test_a_little_over_the_step_is_told_calmly(
    talk: Talk, readings: str, dose: str, says: str
) -> None:
    """1 °dH takes 2.7 g in 90 L (29.96 mg/L a °dH, by molar mass)."""
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say(readings)
    assert says in await talk.text(dose)


async def test_one_more_on_the_same_day_is_told_in_full(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    await talk.say("kh 4 ph 7.2 25c ammonia 0")
    await talk.say("put in 3 g baking soda")
    assert "Too much for one day: 4.5 g" in await talk.text("put in 1.5 g baking soda")


async def test_two_dead_in_a_word_of_two_languages_are_a_loss(talk: Talk) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (reply,) = await talk.say("2 tot")
    assert [(e["kind"], e["count"]) for e in reply.facts["events"]] == [("lost", 2)]


@pytest.mark.parametrize(
    ("text", "kinds"),
    [
        ("gave the tank a clean", ["note"]),
        ("gave it a gravel vac", ["note"]),
        ("gave the tank a good scrub down there, kh 4", []),
        ("gave them a feed", ["fed"]),
        ("gave the tank a 20% water change", ["water_change"]),
        ("gave the tank a tonic", ["dose"]),
        ("gave the tank a cleaner", ["dose"]),
        ("gave the tank 2 g soda", ["dose"]),
    ],
)
async def test_what_a_verb_of_giving_gave_may_be_no_dose(
    talk: Talk, text: str, kinds: list[str]
) -> None:
    await talk.say("/tank new Fern 90 l fresh")
    (reply, *_) = await talk.say(text)
    told = [event["kind"] for event in reply.facts.get("events", ())]
    assert told == kinds or (not kinds and "dose" not in told)


@pytest.mark.parametrize(
    "text", ["changed 40 litres with pure ro today", "changed 40 l, pure rain water"]
)
async def test_a_change_with_pure_water_is_kept_before_its_caution(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 160 l fresh")
    await talk.say("kh 8")
    first, *others = await talk.say(text)
    (event,) = first.facts["events"]
    assert (event["kind"], event["litres"]) == ("water_change", 40.0)
    assert any(each.facts.get("caution") == "pure_water" for each in others)


@pytest.mark.parametrize(
    ("text", "of"),
    [
        ("put a bag of crushed coral in the filter", "crushed coral"),
        ("put 2 bags of aragonite in the sump", "aragonite"),
    ],
)
async def test_a_bag_of_a_medium_is_no_bag_of_animals(talk: Talk, text: str, of: str) -> None:
    await talk.say("/tank new Fern 160 l fresh")
    await talk.say("kh 4")
    (event,) = (await talk.say(text))[0].facts["events"]
    assert (event["kind"], event["substance"]) == ("media", of)
    assert "float" in await talk.text("got a bag of shrimps home")
