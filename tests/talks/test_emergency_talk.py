"""What is told and asked after a call for help. Rates and waits: common practice, no source;
1 °C an hour and half the water at once are the limits."""

from __future__ import annotations

import pytest

from core.message.emergency_talk import meant
from tests.chat.harness import Talk

SAID = {
    "worse": (
        "now he looks worse", "es geht ihm schlechter", "ça va pas mieux", "los peces están peor",
        "o peixe piorou", "stanno peggio", "de vissen gaan achteruit", "coraz gorzej",
        "fiskarna mår sämre",
    ),
    "better": (
        "better?", "it stopped gasping", "fische schnappen nicht mehr",
        "fische wieder ok", "les poissons vont mieux", "los peces ya están bien",
        "os peixes estão bem", "i pesci stanno meglio", "vissen weer ok", "ryby już dobrze",
        "fiskarna mår bra igen", "he's much better", "theyre fine again", "geht wieder besser",
        "ça va beaucoup mieux", "está mucho mejor", "gaat veel beter",
    ),
    "feed": (
        "should i feed him", "kann ich füttern", "good to feed?", "puis-je nourrir les poissons",
        "puedo alimentar", "posso dar comida aos peixes", "posso dare da mangiare", "mag ik voeren",
        "czy mogę nakarmić ryby", "kan jag mata fiskarna",
    ),
    "no_kit": (
        "no test kit", "i have no test kit", "hab keinen test", "pas de test", "no tengo kit",
        "não tenho kit", "non ho test", "geen test", "nie mam testów", "har inget test",
    ),
    "test_when": (
        "how often do i test now", "muss ich morgen wieder messen?", "cuando mido otra vez",
        "quand est-ce que je teste", "quando meço outra vez", "quando misuro di nuovo",
        "wanneer meet ik weer", "kiedy mierzyć znowu", "när mäter jag igen",
    ),
    "survive": (
        "how long do the fish survive", "wie lange überleben die fische",
        "combien de temps les poissons tiennent", "cuánto tiempo aguantan los peces",
        "quanto tempo os peixes aguentam", "quanto resistono i pesci",
        "hoe lang overleven de vissen",
        "jak długo przeżyją ryby", "hur länge överlever fiskarna",
    ),
    "power_back": (
        "power is back", "filter läuft wieder", "power's back on",
        "strom ist wieder da", "le courant est revenu", "ya volvió la luz",
        "a luz voltou", "la corrente è tornata", "stroom is terug", "prąd wrócił",
        "strömmen är tillbaka",
    ),
    "filter_on": (
        "can i turn the filter on again", "soll ich den filter wieder anschalten",
        "puis-je rallumer le filtre", "puedo encender el filtro", "posso ligar o filtro",
        "posso riaccendere il filtro", "mag ik de filter weer aanzetten", "mogę włączyć filtr",
        "kan jag starta filtret",
    ),
    "co2_on": (
        "can i turn the co2 back on", "kann ich co2 wieder anmachen", "puis-je remettre le co2",
        "puedo abrir el co2", "posso ligar o co2", "posso riaprire la co2",
        "mag ik de co2 weer aanzetten", "czy mogę włączyć co2", "kan jag slå på co2",
    ),
    "co2_off": (
        "turned co2 off", "hab co2 abgedreht und sprudelstein an", "co2 coupé", "co2 cerrado",
        "desliguei o co2", "ho spento la co2", "co2 uitgezet", "wyłączyłem co2", "stängt av co2",
    ),
    "scooped": (
        "i scooped most out", "hab fast alles abgesaugt", "j'ai enlevé presque tout",
        "saqué casi todo", "tirei quase tudo", "ho tolto quasi tutto", "bijna alles eruit gehaald",
        "usunąłem prawie wszystko", "tog bort nästan allt",
    ),
    "cold_new": (
        "temp of new water was cold", "das neue wasser war zu kalt", "l'eau neuve était froide",
        "el agua nueva estaba fría", "a água nova estava fria", "l'acqua nuova era fredda",
        "het nieuwe water was te koud", "nowa woda była zimna", "nya vattnet var kallt",
    ),
    "cool_rate": (
        "how fast can i cool it down", "wie schnell darf ich abkühlen",
        "à quelle vitesse refroidir", "qué tan rápido puedo enfriarlo",
        "quão rápido posso arrefecer",
        "quanto velocemente posso raffreddare", "hoe snel mag ik afkoelen", "jak szybko schłodzić",
        "hur fort kan jag kyla",
    ),
    "will_live": (
        "will they survive", "is he going to be ok", "werden sie überleben", "vont-ils survivre",
        "van a sobrevivir", "vão sobreviver?", "zullen ze overleven",
    ),
    "milky": (
        "tank is milky white after dosing", "wasser ist milchig nach der zugabe",
        "eau laiteuse après le dosage", "agua lechosa después de dosificar",
        "água leitosa depois de dosar", "acqua lattiginosa dopo la dose",
        "water troebel na de dosis",
        "woda mętna po dawce", "vattnet är mjölkigt efter doseringen",
    ),
    "conditioned": (
        "added conditioner double dose", "habe wasseraufbereiter rein", "j'ai mis du conditionneur",
        "eché acondicionador dosis doble", "coloquei condicionador", "ho messo biocondizionatore",
        "waterverbeteraar erin gedaan", "dodałem uzdatniacza", "hällde i vattenberedning",
    ),
}  # fmt: skip
"""Meaning → a way to say it in each language."""

NEAR = (
    "should i feed flakes or pellets",
    "how often should i test kh",
    "my neighbour's fish look worse",
    "is the power back",
    "did i add conditioner",
    "no conditioner",
    "added conditioner to the new water",
    "co2 off?",
    "better filter for 90 l?",
    "i fed them",
    "the new filter is on",
    "wasser ist kalt im see",
    "how fast does kh drop",
    "tank is cloudy",
    "can i turn the light back on",
    "i scooped most of the plants out",
)


@pytest.mark.parametrize(("meaning", "line"), [(m, line) for m in SAID for line in SAID[m]])
def test_it_is_heard_in_nine_languages(meaning: str, line: str) -> None:
    assert meant(line) == meaning


@pytest.mark.parametrize("line", NEAR)
def test_what_is_near_is_not_heard(line: str) -> None:
    assert meant(line) is None


@pytest.fixture
async def fern(talk: Talk) -> Talk:
    await talk.say("/tank new Fern 90 l fresh")
    return talk


@pytest.mark.parametrize(
    ("call", "line", "part"),
    [
        ("fish gasping", "now he looks worse", "Worse means act now"),
        ("fish gasping", "should i feed him", "Not today"),
        ("fish gasping", "no test kit", "take the water itself as the cause: Change a tenth"),
        ("fish gasping", "fische wieder ok", "Good. Leave the air on"),
        ("fish gasping", "temp of new water was cold", "bring it back by 1 °C an hour"),
        ("i spilled the whole food can in the tank", "i scooped most out", "No food for two days"),
        ("i spilled the whole food can in the tank", "kann ich füttern", "No food for two days"),
        ("power cut since 3 hours", "strom ist wieder da", "stood for over two hours"),
        ("power cut since 3 hours", "wie lange überleben die fische", "Oxygen goes first"),
        ("power cut since 3 hours", "que hago con los peces", "Air is first"),
        ("too much co2 fish gasping", "kann ich co2 wieder anmachen", "Not today"),
        ("too much co2 fish gasping", "co2 abgedreht", "no buffer"),
        (
            "heater stuck, 33 degrees",
            "how fast can i cool it down",
            "1 °C an hour and 2 °C a day at most",
        ),
        ("heater stuck, 33 degrees", "is 31 ok overnight", "31 °C is too warm for most"),
    ],
)
async def test_the_next_step(fern: Talk, call: str, line: str, part: str) -> None:
    await fern.say(call)
    assert part in await fern.text(line)


@pytest.mark.parametrize("line", ["should i feed him", "worse", "no test kit", "power is back"])
async def test_without_anything_wrong_it_is_not_answered_so(fern: Talk, line: str) -> None:
    assert "emergency" not in await fern.facts(line)


async def test_a_double_dose_of_conditioner_is_the_deed_that_was_advised(fern: Talk) -> None:
    await fern.say("i forgot the dechlorinator, fish gasping")
    kept, then = await fern.say("added conditioner double dose")
    assert kept.facts["events"][0]["substance"] == "dechlorinator"
    assert "Stop dosing" not in "".join(line.text for line in then.lines)
    assert "Dechlorinator (thiosulfate) into the tank now" not in await fern.text("what now")


@pytest.mark.parametrize("line", ["overdosed the medicine", "double dose of ferts by mistake"])
async def test_a_double_dose_of_something_else_is_an_overdose(fern: Talk, line: str) -> None:
    await fern.say("i forgot the dechlorinator")
    assert (await fern.facts(line))["emergency"] == "overdose"


async def test_after_a_dechlorinator_a_test_of_chlorine_must_tell(fern: Talk) -> None:
    await fern.say("chlorine 0.5")
    assert "Dechlorinator (thiosulfate) into the tank now" in await fern.text("what now")
    await fern.say("added dechlorinator")
    told = await fern.text("what now")
    assert "into the tank now" not in told
    assert "should read 0" in told


async def test_a_change_in_an_emergency_is_its_step_though_nothing_was_measured(
    fern: Talk,
) -> None:
    await fern.say("too much co2, fish gasping")
    await fern.say("ph 6.9")
    told = await fern.text("should i do a water change too")
    assert "Keep to your routine" not in told
    assert "Change a tenth to a quarter" in told


@pytest.mark.parametrize("line", ["jetzt ph 6,9", "turned it off, ph now 6.9"])
async def test_a_ph_that_rises_after_co2_was_shut_off_is_no_riddle(fern: Talk, line: str) -> None:
    await fern.say("ph 6.2")
    await fern.say("too much co2, fish gasping")
    facts = await fern.facts(line)
    assert not {f["id"] for f in facts["findings"]} & {"sudden_jump", "ph_moved"}


async def test_a_ph_that_falls_or_rises_without_it_is_still_told(fern: Talk) -> None:
    await fern.say("ph 6.2")
    assert (await fern.facts("ph 6.9"))["findings"]
    await fern.say("co2 off")
    await fern.wait(minutes=10)
    assert (await fern.facts("ph 6.0"))["findings"]


@pytest.mark.parametrize("line", ["can i feed", "et nourrir je peux?", "darf ich füttern"])
@pytest.mark.parametrize("read", ["ph 7.5 ammonia 1 temp 25", "nitrite 0.2"])
async def test_no_food_while_ammonia_or_nitrite_is_on_record(
    fern: Talk, line: str, read: str
) -> None:
    await fern.say(read)
    (told,) = await fern.say(line)
    assert "Not today" in told.text


async def test_food_is_not_forbidden_where_nothing_is_wrong(fern: Talk) -> None:
    await fern.say("ph 7.5 ammonia 0 nitrite 0 temp 25")
    (told, *_more) = await fern.say("can i feed")
    assert "Not today" not in told.text


@pytest.mark.parametrize(
    "text",
    ["fish still swimming so fine?", "they look ok so its fine?", "fish are swimming normally",
     "fish look normal so no problem right?", "nobody is gasping so thats ok?",
     "fische schwimmen noch, alles gut?",
     "ils nagent encore", "siguen nadando"],
)  # fmt: skip
async def test_looking_well_after_too_much_is_told_the_call_again(talk: Talk, text: str) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    await talk.say("i put 100 g baking soda in by mistake")
    (reply,) = await talk.say(text)
    assert reply.facts["emergency"] == "overdose"
    assert reply.text.startswith("Looking well does not make it safe")
    assert (await talk.facts("is my water ok"))["emergency"] == "overdose"  # nothing ended it


async def test_swimming_in_a_tank_without_a_call_is_no_emergency(talk: Talk) -> None:
    await talk.say("/tank new Fern 100 l fresh")
    assert "emergency" not in await talk.facts("fish still swimming so fine?")
