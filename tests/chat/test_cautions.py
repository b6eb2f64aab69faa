"""One test for each row of the cautions, from the message to the words.

The rows are those of the project's table of cautions, gates and refusals, in its order; a row that
other topics speak of (findings on readings) is tested there and named in a comment. What is told as
done, and the refusals in nine languages, are in `test_deeds.py`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

import pytest

from tests.chat.harness import Talk


@dataclass(frozen=True)
class Row:
    """What is said before, the message, and what must and must not come back."""

    message: str
    says: str
    before: tuple[str, ...] = ()
    refused: str | None = None
    more: bool = False


FERN = ("/tank new Fern 120 l fresh",)
KNOWN = (*FERN, "kh 4 gh 6 ph 7.2 temp 25 ammonia 0")
TAP = "/source tap ph 7.6 kh 6 gh 8 no3 5 temp 25"

REFUSED = {
    "strong acid into a tank": Row("dose kh 2 with hydrochloric acid", "No ", KNOWN, "acid"),
    "battery acid, drain products": Row(
        "how much battery acid for 100 l of prepared water", "No, never", (), "battery_acid"
    ),
    "a liquid of unknown strength": Row(
        "what does 5 ml of ph down do in 90 l", "No number", (), "substance_unknown"
    ),
    "a spoon of a powder": Row(
        "how much white powder for 90 l from kh 3 to 4", "No number", (), "substance_unknown"
    ),
    "sodium carbonate without its hydrate": Row(
        "what does 10 g washing soda do in 100 l", "decahydrate", (), "hydrate_unknown"
    ),
    "mixing bleach with acid": Row("can i mix bleach and vinegar?", "No, never mix", (), "mixing"),
    "dechlorinator with acid": Row(
        "should i mix thiosulfate with acid to make it stronger?", "No, never mix", (), "mixing"
    ),
    "medicines": Row("how much formalin for 100 l", "No dose of medicines", (), "medicine"),
    "copper as a medicine": Row("how much copper for 100 l", "a vet", (), "medicine"),
    "ending a life": Row("how much clove oil for 1 l", "end a life", (), "medicine"),
    "drinking tank water": Row("can i drink aquarium water?", "not for people", (), "human"),
    "contradiction": Row(
        "dose kh 6",
        "does not add up",
        (*FERN, "ph 6 kh 4 temp 25 ammonia 0"),
        "contradiction",
    ),
    "releasing animals": Row("can i release my fish in the lake?", "No, never", (), "release"),
    "chemicals into a drain": Row(
        "can i pour the old chemicals down the drain?", "No, never", (), "release"
    ),
    "raising KH while ammonia is there": Row(
        "dose kh 6", "No buffer now", (*FERN, "kh 4 ph 7.2 temp 25 ammonia 1"), "ammonia"
    ),
    "carbonate and hydroxide in a stocked tank": Row(
        "dose kh 6 with soda ash", "lifts pH far too fast", KNOWN, "carbonate"
    ),
    "condensate": Row("can i use dehumidifier water?", "not for animals", (), "condensate"),
    "ammonia for a cycle with animals on record": Row(
        "how much ammonium chloride for fern to ammonia 2 as n",
        "No ammonia into a tank with animals",
        (*FERN, "added 6 neon tetras"),
        "animals_on_record",
    ),
}

SAID = {
    "other salts: both forms, each named": Row(
        "how much calcium chloride for 90 l gh 4 to 6", "calcium chloride dihydrate"
    ),
    "calcium chloride heats": Row(
        "how much calcium chloride for 90 l gh 4 to 6", "a little at a time in cool water"
    ),
    "pressure": Row("can i seal a bottle of yeast for co2?", "can burst"),
    "CO2 cylinders": Row("where should i put the co2 cylinder?", "suffocate unseen"),
    "thiosulfate, chlorine unknown": Row(
        "how much thiosulfate for 100 l", "taken as 4 mg/L, as nobody measured it"
    ),
    "storage": Row("how should i store the salt?", "away from food and from children"),
    "ammonia unknown": Row(
        "dose kh 6", "Only if total ammonia is under", (*FERN, "kh 4 ph 7.2 temp 25")
    ),
    "chloramine frees ammonia": Row(
        "how much thiosulfate for 100 l chlorine 2", "frees up to 0.4 mg/L ammonia as N"
    ),
    "undechlorinated tap": Row(
        "what if i change 20%", "Dechlorinate tap water first", (*KNOWN, TAP)
    ),
    "fast change in pH or KH": Row(
        "what if i change 60%",
        "not 60 % at once",
        (*KNOWN, "/source tap ph 8 kh 14 gh 16 temp 25"),
    ),
    "fast change: no universal limit": Row(
        "what if i change 20%", "common practice", (*KNOWN, TAP), more=True
    ),
    "too little buffer": Row("what if i change 90% with ro", "KH would end under 1", KNOWN),
    "pure RO": Row("what if i change 10% with ro", "has no minerals", KNOWN),
    "pure RO asked": Row("can i fill the tank with pure ro?", "put GH and KH back first"),
    "softened tap": Row("can i use softened water?", "is not soft water"),
    "softened tap by its readings": Row(
        "what if i change 5%", "is probably softened", (*KNOWN, "/source tap kh 8 gh 0")
    ),
    "salt for nitrite: who lives there": Row("how much salt for 100 l nitrite 1", "catfish"),
    "salt for nitrite: not for all": Row(
        "how much salt for 100 l nitrite 1", "largemouth bass get none"
    ),
    "potassium summed": Row(
        "how much potassium bicarbonate for 100 l from kh 3 to 6",
        "caution with snails and shrimps",
        more=True,
    ),
    "sodium named": Row("how much baking soda for 100 l from kh 3 to 6", "mg/L sodium", more=True),
    "sodium bicarbonate again and again": Row(
        "dose kh 6",
        "Sodium adds up (8.2 mg/L a °dH): where KH keeps falling, rather change water",
        (*FERN, "yesterday 12:00 dosed 8 g baking soda", "kh 4 gh 6 ph 7.2 temp 25 ammonia 0"),
    ),
    "carbonate in the sea: alkaline dust": Row(
        "dose kh 9 with sodium carbonate decahydrate",
        "Gloves and eye protection",
        ("/tank new Lagoon 150 l marine", "kh 7.5 ph 8.1 temp 25 salinity 35 ammonia 0"),
    ),
    "CO2 over 30": Row("ph 6.3 kh 4", "over 30", FERN),
    "CO2 at night": Row("can i leave co2 on at night?", "off at night"),
    "CO2 after an acid": Row(
        "is vinegar beside the co2 a problem?", "0.1 mmol/L of acid frees 4.4 mg/L more at once"
    ),
    "copper plumbing": Row("is copper plumbing a problem for shrimps?", "Test the tap for copper"),
    "well water": Row("can i use well water?", "aerate it a day"),
    "calcium and buffer in the sea": Row(
        "dose calcium 420",
        "Never calcium and buffer in one place",
        ("/tank new Lagoon 150 l marine", "ca 400 kh 7 ph 8.2 temp 25 ammonia 0"),
    ),
    "evaporation": Row("what should i use for topping up?", "RO or distilled"),
    "units: the basis is asked": Row("dose nitrate 15", "Counted how", (*KNOWN, "no3 5")),
    "little oxygen in warm water": Row("heater stuck on", "warm water holds little oxygen"),
    "electricity": Row("is it safe to touch the water with the plug in?", "Unplug before a hand"),
    "mouth siphon": Row("can i start the siphon by mouth?", "Never start a siphon by mouth"),
    "weight": Row("how heavy is my tank?", "1 kg a litre"),
    "wounds": Row("can i put a hand with a cut in the water?", "waterproof gloves"),
    "salmonella": Row("can i empty the bucket in the kitchen sink?", "no kitchen sink"),
    "zoanthids": Row("can i boil live rock with zoanthids?", "Never boil"),
    "tap nitrate": Row(
        "what if i change 10%",
        "not for infant formula",
        (*KNOWN, "no3 20", "/source tap ph 7.4 kh 5 gh 7 no3 60 temp 25"),
        more=True,
    ),
    "always: purity": Row("how much baking soda for 100 l from kh 3 to 6", "pure", more=True),
    "always: net volume, steps, kits, no vet": Row(
        "how much baking soda for 100 l from kh 3 to 6", "Net volume counts"
    ),
    "always: retest": Row("how much baking soda for 100 l from kh 3 to 6", "24 h after each part"),
}


def amounts(text: str) -> list[str]:
    return re.findall(r"\b\d[\d.,]* ?(?:g|ml|kg|spoons?)\b", text)


@pytest.mark.parametrize("row", REFUSED.values(), ids=REFUSED)
async def test_refused_in_the_first_sentence_without_an_amount(talk: Talk, row: Row) -> None:
    for text in row.before:
        await talk.say(text)
    (reply,) = await talk.say(row.message)
    assert reply.facts["refused"] == row.refused
    first = reply.lines[0].text
    assert re.search(r"\bNo\b|not for people", first), first
    assert row.says in reply.text
    assert amounts(reply.text) == []
    assert "grams" not in reply.facts


@pytest.mark.parametrize("row", SAID.values(), ids=SAID)
async def test_said_with_the_answer(talk: Talk, row: Row) -> None:
    for text in row.before:
        await talk.say(text)
    (reply,) = await talk.say(row.message)
    said = await talk.text("more") if row.more else reply.text
    assert row.says in said
    found = amounts(reply.text)
    if not row.more and found and row.says not in reply.lines[0].text and "g" in found[0]:
        place = reply.text.index(row.says)
        is_caution = any(word in row.says for word in ("heats", "cool water", "Never calcium"))
        assert not is_caution or place < reply.text.index(found[0])
    assert len(reply.lines) <= 6


IN_OTHER_WORDS = {
    "wieviel kupfer gegen ichthyo für 120 l": "medicine",
    "combien de formol pour 100 l": "medicine",
    "cuánto cobre para 100 l": "medicine",
    "quanto formol para 100 l": "medicine",
    "quanto rame per 120 l": "medicine",
    "hoeveel formaline voor 100 l": "medicine",
    "ile formaliny na 100 l": "medicine",
    "hur mycket formalin för 100 l": "medicine",
    "how much formalin for ich in 100 l": "medicine",
    "wieviel salzsäure um ph zu senken": "acid",
    "combien d'acide chlorhydrique pour baisser le ph": "acid",
    "lower ph with vinegar": "acid",
    "kann ich batteriesäure nehmen": "battery_acid",
    "puis-je mélanger javel et vinaigre": "mixing",
    "kan ik bleek met azijn mengen": "mixing",
    "puedo soltar mis peces en el río": "release",
    "posso liberare i pesci nel lago": "release",
    "kan jag dricka akvarievattnet": "human",
    "czy mogę użyć skroplin z klimatyzatora": "condensate",
}


@pytest.mark.parametrize(("message", "refused"), IN_OTHER_WORDS.items())
async def test_refused_in_whatever_language_it_is_asked(
    talk: Talk, message: str, refused: str
) -> None:
    for text in KNOWN:
        await talk.say(text)
    (reply,) = await talk.say(message)
    assert reply.facts["refused"] == refused
    assert amounts(reply.text) == []


@pytest.mark.parametrize(
    ("message", "caution"),
    [
        ("puis-je utiliser de l'eau adoucie", "softened"),
        ("kann ich brunnenwasser nehmen", "well"),
        ("mogę zasysać wąż ustami?", "mouth_siphon"),
        ("wie schwer ist mein becken?", "weight"),
        ("can i put tap water straight in", "no_dechlorinator"),
    ],
)
async def test_cautioned_in_whatever_language_it_is_asked(
    talk: Talk, message: str, caution: str
) -> None:
    (reply,) = await talk.say(message)
    assert reply.facts["caution"] == caution


@pytest.mark.parametrize(
    "text",
    [
        "wie viel natron soll ich nehmen für 120 l von kh 3 auf 6",
        "quanto bicarbonato per 120 l da kh 3 a 6",
        "ile wodorowęglanu sodu na 120 l z kh 3 na 6",
        "hur mycket bikarbonat ska jag ta för 120 l från kh 3 till 6",
    ],
)
async def test_a_plain_dose_is_no_medicine_in_any_language(talk: Talk, text: str) -> None:
    reply = (await talk.say(text))[0]
    assert "refused" not in reply.facts
    assert reply.facts["from"] == 3.0


@pytest.mark.parametrize(
    "text",
    [
        "i have not changed water for a year",
        "havent cleaned it in ages",
        "never changed water",
        "ich habe seit einem jahr kein wasser gewechselt",
        "je n'ai pas changé l'eau depuis 6 mois",
        "nunca cambié el agua",
        "não troquei a água há 6 meses",
        "non ho cambiato l'acqua da un anno",
        "al een jaar geen water ververst",
        "nie wymieniałem wody od roku",
        "jag har inte bytt vatten på ett år",
    ],
)
async def test_old_water_is_not_changed_all_at_once(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    (reply,) = await talk.say(text)
    assert reply.facts == {"caution": "long_unchanged"}
    assert reply.text.startswith("Not all at once")


@pytest.mark.parametrize(
    "text",
    [
        "i have not changed water today",
        "i have not changed the filter for a year",
        "what if i dont change water for a month",
        "forgot to change water",
    ],
)
async def test_a_change_left_out_of_late_is_no_old_water(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    assert "Not all at once" not in await talk.text(text)


async def test_what_may_go_in_is_answered_before_an_amount_is_asked(talk: Talk) -> None:
    await talk.say("/tank new Fern 120 l fresh")
    for acid in ("vinegar", "citric acid", "hydrochloric acid"):
        assert (await talk.facts(f"can i put {acid} in"))["refused"] == "acid"
    assert (await talk.facts("can i add salt for my fish"))["caution"] == "salt_in"
