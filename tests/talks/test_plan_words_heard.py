"""What is said of a plan in words of any order, in nine languages: what went in, what is next,
whether it is too much. Grams by molar mass (29.96 mg/L of sodium bicarbonate a °dH, from the
formula weight 84.007)."""

from __future__ import annotations

import pytest

from core.message.plan_anew import weighed_anew
from core.message.plan_said import said_of_plan
from core.message.plan_words import telling
from tests.chat.harness import Talk

A_PART = 180 * 29.96e-3


@pytest.fixture
async def planned(talk: Talk) -> Talk:
    """A plan in two parts, KH 2 to 4."""
    await talk.say("/tank new Hall 180 l fresh")
    await talk.say("kh 2 gh 5 ph 7.0 temp 25 ammonia 0")
    facts = await talk.facts("dose kh 4")
    assert facts["parts"] == pytest.approx([A_PART, A_PART], rel=2e-3)
    return talk


MEANT = {
    "end": (
        "whats the ph after; what will the ph be; what will kh be after the first;"
        " will it change gh; does it raise ph; how much will ph rise; und der ph danach;"
        " wie wird der ph; et le ph après; y el ph después; e il ph dopo; en de ph daarna;"
        " jakie będzie ph potem; ph efteråt"
    ),
    "sure": "how sure are you; how exact is that; wie genau ist das; hoe zeker is dat",
    "stop": "can i stop after two; can i stop there; kann ich aufhören; puis-je arrêter",
    "store": (
        "can i store the rest; can i keep the solution; kann ich den rest aufheben;"
        " puis-je garder la poudre; puedo guardar el resto"
    ),
    "hour": "can i give it in the morning; morning or evening; morgens oder abends; a qué hora",
    "gave_double": (
        "oops i gave double; put in twice that; i put in twice as much; gave it twice;"
        " hab das doppelte rein; ich habe doppelt so viel gegeben; j'ai mis le double;"
        " eché el doble;"
        " pus o dobro; ho sbagliato, ne ho messo il doppio; oeps dubbel gegeven;"
        " dałem podwójną dawkę; jag gav dubbelt så mycket; ups war die doppelte menge;"
        " oh je, war das doppelte"
    ),
    "gave_all": (
        "dosed the rest; gave it all; hab alles rein; j'ai tout mis; eché todo de una vez;"
        " pus tudo; ho messo tutto insieme; alles gegeven; dałem wszystko naraz; jag gav allt"
    ),
    "gave_two": "i put both parts in at once; habe beide teile auf einmal rein; dałem dwie porcje",
    "gave_it": "i did it; done it; i gave it; messo; hab ich gegeben; dałem",
    "gave_one": (
        "ok did the first bit; first one in; first one is in; put in the first part;"
        " ok then. first dose is in; pierwsza porcja wsypana;"
        " eerste deel erin gedaan; ya eché la primera parte;"
        " erste portion gegeben; j'ai mis la première dose; pus a primeira parte; dałem porcję;"
        " jag gav första delen"
    ),
    "go_on": (
        "and then; und dann; y luego; am i there yet;"
        "do i carry on; carry on?; und weiter?; verder?; co dalej;"
        " next part; next; and next; whats left; how much is left; what do i give today;"
        " can i add the second part; 2nd part now?; nächster teil; was fehlt noch übrig;"
        " la prochaine dose; cuánto falta; siguiente parte; quanto falta; próxima parte;"
        " quanto manca; prossima parte; volgende deel; ile zostało; następna porcja;"
        " nästa; vad är kvar"
    ),
    "at_once": (
        "can i give it all today; can i do 2 parts at once to catch up; what if i give it all now;"
        " can i do it faster; can i do it all tonight;"
        " geht das auch schneller; isnt that too slow? can i do it faster;"
        " can i give more; kann ich auch mehr auf einmal;"
        " can i give two parts at once today so it is faster;"
        " kann ich das doppelte geben;"
        " je peux tout mettre maintenant; puedo echar el doble; posso pôr tudo hoje;"
        " posso mettere tutto oggi; mag ik alles tegelijk geven; mogę dać wszystko naraz;"
        " kan jag ge allt idag"
    ),
    "safe": (
        "is that safe; is it too much; is that dangerous?; ist das sicher; ist das zu viel?;"
        " c'est grave?; c'est trop?; es seguro?; es peligroso?; é seguro?; è sicuro?;"
        " is dat veilig;"
        " czy to bezpieczne; är det farligt"
    ),
    "litres": (
        "how many litres is that; wie viele liter sind das; ça fait combien de litres;"
        " cuántos litros es eso; quantos litros é isso; quanti litri; hoeveel liter is dat;"
        " ile to litrów; hur många liter är det"
    ),
    "often": "how often; wie oft; à quelle fréquence; cada cuánto; ogni quanto; hoe vaak; co ile",
    "later": "i skipped todays part; den teil vergessen; j'ai oublié la dose; salté la parte",
    "a_day": (
        "how much a day; how much is that; how much of each salt; wie viel pro tag;"
        " c'est combien par jour; cuánto al día; quanto por dia; quanto al giorno; hoeveel per dag;"
        " ile dziennie; hur mycket per dag"
    ),
    "days": (
        "and how long does that take; how many days till im there; cuántos días tarda;"
        " quantos dias demora; hur många dagar tar det;"
        " how long will it take; over how many days; wie lange dauert das; combien de jours;"
        " cuántos días; quantos dias; quanti giorni; hoeveel dagen; ile dni; hur många dagar"
    ),
    "need": (
        "where do i get it; what do i need for that; wo kaufe ich das; où acheter ça;"
        " dónde compro eso; onde compro isso; dove lo compro; waar koop ik dat; gdzie to kupię;"
        " var köper jag det"
    ),
    "weekly": "20% a week enough?; is 20% weekly enough; reichen 20% pro woche; 20% per week?",
    "changed": "i changed it; i did the water change; wasser gewechselt; ververst; podmienione",
}


@pytest.mark.parametrize(
    ("text", "meaning"),
    [(text.strip(), of) for of, texts in MEANT.items() for text in texts.split(";")],
)
def test_it_is_heard(text: str, meaning: str) -> None:
    found = telling(text)
    assert found is not None, text
    assert found.meaning == meaning


@pytest.mark.parametrize(
    "text",
    [
        "kh 4", "what now", "ok", "fine", "all good", "both dead", "i fed them", "hello",
        "how long until i can add fish", "i put in 5 new fish", "dosed 5 g soda", "next week",
        "is everything ok", "all good now?",
        "ist jetzt alles ok", "was ist das doppelte", "water change today", "can i add fish",
        "remind me to dose it twice",
        "i put my hand in", "what if i change 30%", "is ammonia safe", "twice a week",
    ],
)  # fmt: skip
def test_other_talk_is_none_of_it(text: str) -> None:
    assert telling(text) is None
    assert weighed_anew(text) is None


@pytest.mark.parametrize(
    "text", ["oops i gave double", "j'ai mis le double", "hab doppelt gegeben"]
)
async def test_twice_a_part_is_on_record_and_warned_of(planned: Talk, text: str) -> None:
    (reply,) = await planned.say(text)
    assert "logged 10.8 g" in reply.text
    assert "Too much for one day" in reply.text
    assert "within the limits" not in await planned.text("is that safe?")


async def test_twice_after_the_log_is_the_part_once_more(planned: Talk) -> None:
    await planned.say("log it")
    (reply,) = await planned.say("i put in twice as much")
    assert "logged 5.4 g" in reply.text
    assert "Too much for one day: 10.8 g" in reply.text


@pytest.mark.parametrize("text", ["no i gave 8 g", "no, 8 g", "it was 8 g", "i gave 8 g not 5.4"])
async def test_the_grams_of_a_logged_part_are_put_right(planned: Talk, text: str) -> None:
    await planned.say("log it")
    (reply,) = await planned.say(text)
    assert reply.lines[0].text.startswith("Corrected:")
    assert "Too much for one day: 8 g" in reply.text


async def test_grams_without_a_word_of_regret_are_one_more_dose(planned: Talk) -> None:
    await planned.say("log it")
    assert "Too much for one day: 11.4 g" in await planned.text("i put in 6 g")


async def test_the_whole_of_it_by_its_grams_is_what_is_left(planned: Talk) -> None:
    await planned.say("log it")
    (reply,) = await planned.say("i put the whole 10.8 g in")
    assert "logged 5.4 g" in reply.text


async def test_twice_of_nothing_is_asked_about(talk: Talk) -> None:
    await talk.say("/tank new Hall 180 l fresh")
    for text in ("i put in twice as much", "dosed the rest", "hab doppelt gegeben"):
        (reply,) = await talk.say(text)
        assert reply.lines[0].text.startswith("How much of what went in?")
    (events,) = await talk.say("/stock")
    assert "dosed" not in events.text


async def test_what_is_left_leads_on_over_days(planned: Talk) -> None:
    (none_yet,) = await planned.say("whats left")
    assert none_yet.text.startswith("None of the 2 parts is on record yet")
    await planned.say("done")
    assert "1 of 2 parts is left." in await planned.text("next part")
    await planned.wait(hours=25)
    assert "send them, then ask: dose kh 4" in await planned.text("what do i give today")
    await planned.say("kh 3 ph 7.1 ammonia 0")
    facts = await planned.facts("next part")
    assert facts["parts"] == pytest.approx([A_PART], rel=2e-3)
    await planned.say("done")


async def test_with_ammonia_no_next_part_is_led_on_to(planned: Talk) -> None:
    await planned.say("log it")
    await planned.wait(hours=25)
    text = await planned.text("ammonia 2 ph 6.9 kh 3")
    assert "do not raise pH" in text
    assert "next part" not in text
    assert (await planned.text("next part")).startswith("Hall: No buffer now")


async def test_is_it_safe_is_about_the_plan(planned: Talk) -> None:
    (within,) = await planned.say("is that safe?")
    assert "every 24 h is within the limits" in within.text
    for text in ("is 20 g safe", "is 10.8 g at once ok", "can i give it all today"):
        assert (await planned.say(text))[0].lines[0].text.startswith("No: give the 2 parts 24 h")
    await planned.say("nitrate 60")  # what was spoken of last
    assert "within the limits" not in await planned.text("is that safe?")


async def test_a_plan_without_ammonia_says_so_first(talk: Talk) -> None:
    await talk.say("/tank new Hall 180 l fresh")
    await talk.say("kh 2 gh 5 ph 7.0 temp 25")
    await talk.say("dose kh 3")
    (reply,) = await talk.say("is that safe?")
    assert reply.lines[0].text.startswith("Only if total ammonia is under")


async def test_it_is_the_plans_only_while_nothing_else_was_spoken_of(planned: Talk) -> None:
    await planned.say("cleaned filter")
    assert "logged" not in await planned.text("i did it")
    await planned.say("dose kh 4")
    assert "logged 5.4 g" in await planned.text("i did it")


async def test_how_long_how_much_and_where_from(planned: Talk) -> None:
    (days,) = await planned.say("how long will it take")
    assert "the last tomorrow" in days.text
    assert "5.4 g" in await planned.text("how much a day")
    (need,) = await planned.say("where do i get it?")
    assert need.facts["salts"][0]["grams"] == pytest.approx(2 * A_PART, rel=2e-3)
    assert "Baking powder is something else." in need.text
    assert "KH +1 °dH" in await planned.text("what will that do")


@pytest.fixture
async def changing(talk: Talk) -> Talk:
    """A change of 20 % that is within the limits."""
    await talk.say("/tank new Hall 180 l fresh")
    await talk.say("ph 7.4 kh 4 gh 8 no3 60 temp 25 ammonia 0")
    await talk.say("/source tap ph 7.6 kh 4 gh 8 no3 10 temp 25")
    facts = await talk.facts("what if i change 20%")
    assert facts["steps"] == [pytest.approx(0.2)]
    return talk


async def test_a_change_in_litres_and_whether_it_is_safe(changing: Talk) -> None:
    assert await changing.text("how many litres is that?") == "20 % of 180 L is 36 L."
    assert "20 % at once is within the limits" in await changing.text("is that safe?")
    assert "After standing" in await changing.text("what will that do")
    assert await changing.text("how many days") == "It is one change."


async def test_a_change_that_was_made_is_on_record(changing: Talk) -> None:
    (reply,) = await changing.say("i did the change")
    assert reply.lines[0].text.startswith("Hall: changed 20 %")
    assert "test pH, KH and ammonia" in await changing.text("what did that do")


@pytest.mark.parametrize("text", ["ok 10% then", "10% instead", "and 10%?", "plutôt 10%"])
async def test_another_share_is_the_same_question(changing: Talk, text: str) -> None:
    assert (await changing.facts(text))["share"] == pytest.approx(0.1)


@pytest.mark.parametrize(("text", "told"), [("ok i did 30%", "30 %"), ("i did 40 l", "40 L")])
async def test_another_amount_that_was_changed_is_on_record(
    changing: Talk, text: str, told: str
) -> None:
    assert (await changing.text(text)).startswith(f"Hall: changed {told}")


async def test_whether_so_much_a_week_will_do(changing: Talk) -> None:
    assert (await changing.facts("20% a week enough?"))["share"] == pytest.approx(0.2)
    assert (await changing.facts("weekly?"))["share"] == pytest.approx(0.2)


async def test_again_is_worked_out_anew(changing: Talk) -> None:
    await changing.say("again")
    assert (await changing.facts("otra vez"))["share"] == pytest.approx(0.2)


async def test_how_much_more_is_of_the_water_as_it_is_now(planned: Talk) -> None:
    await planned.say("kh 3")
    assert (await planned.facts("how much more?"))["from"] == 3.0


async def test_what_is_not_understood_behind_a_plan_is_told_what_is(planned: Talk) -> None:
    assert "i gave double" in await planned.text("flurble the wug")
    await planned.say("kh 2")
    assert "i gave double" not in await planned.text("flurble the wug")


async def test_how_often_and_a_missed_part(planned: Talk) -> None:
    assert "24 h apart" in await planned.text("how often?")
    assert "Never give two in one day" in await planned.text("i skipped todays part")
    assert "logged 5.4 g" in await planned.text("log first part")


async def test_without_a_plan_no_spoon_either(talk: Talk) -> None:
    await talk.say("/tank new Jar 30 l fresh")
    (reply,) = await talk.say("i dont have a scale")
    assert reply.facts["spoon_grams"] == [3.2, 6.0]


@pytest.mark.parametrize("text", ["is that too much", "c'est grave?", "ist das schlimm?"])
async def test_without_a_plan_the_tank_is_judged(talk: Talk, text: str) -> None:
    await talk.say("/tank new Hall 180 l fresh")
    await talk.say("kh 4 gh 8 ph 7.2 temp 24 ammonia 0")
    await talk.say("dosed 30 g baking soda")
    assert "Too much for one day" in await talk.text(text)


async def test_a_change_over_the_limits_is_not_called_within_them(changing: Talk) -> None:
    await changing.say("/source tap kh 12")
    facts = await changing.facts("what if i change 50%")
    assert len(facts["steps"]) > 1
    (reply,) = await changing.say("is that safe")
    assert reply.lines[0].text.startswith("Not 50 % at once:")
    assert "each time" in await changing.text("how many litres is that")
    (asked,) = await changing.say("i changed it")
    assert asked.lines[0].text.startswith("Which was done:")


@pytest.mark.parametrize(
    ("line", "share"),
    [
        ("can i do 80% at once", 0.8),
        ("is 40% ok", 0.4),
        ("kann ich auch 60% auf einmal machen", 0.6),
        ("sind 35% in ordnung", 0.35),
        ("what if i do 25% twice a week", 0.25),
        ("30% zweimal die woche?", 0.3),
        ("¿está bien 40%?", 0.4),
    ],
)
async def test_of_another_share_that_one_is_judged(changing: Talk, line: str, share: float) -> None:
    facts = await changing.facts(line)
    assert facts["share"] == pytest.approx(share)
    assert facts["source"]


@pytest.mark.parametrize(
    "line",
    [
        "how warm should the new water be",
        "how warm must the water be",
        "what temperature should the water have",
        "wie warm muss das neue wasser sein",
        "quelle température pour l'eau neuve",
        "qué temperatura tiene que tener el agua",
        "hoe warm moet het water zijn",
        "che temperatura deve avere l'acqua",
        "jaka temperatura wody",
        "hur varmt ska vattnet vara",
    ],
)
async def test_how_warm_the_new_water_should_be(talk: Talk, line: str) -> None:
    await talk.say("/tank new Hall 180 l fresh")
    await talk.say("ph 7.4 kh 4 gh 8 no3 60 temp 25 ammonia 0")
    await talk.say("/source tap ph 7.6 kh 4 gh 8 no3 10 temp 10")
    await talk.say("what if i change 20%")
    (reply,) = await talk.say(line)
    assert "As warm as the tank: 25 °C." in reply.text
    assert "For 20 % at once it must be 15 °C or more." in reply.text  # 2 °C a day, of a fifth 10
    assert reply.facts == {"temperature": 25.0, "new_water_from": pytest.approx(15.0, abs=0.1)}


@pytest.mark.parametrize(
    ("line", "spoons"),
    [
        ("i put in 2 tablespoons", 6.0),
        ("put 1/4 cup in", 12.0),
        ("a teaspoon went in", 1.0),
        ("zwei Teelöffel rein", 2.0),
        ("j'ai mis une cuillère à café", 1.0),
        ("eché 2 cucharadas", 6.0),
    ],
)
async def test_spoons_after_a_plan_are_of_its_salt_and_judged(
    planned: Talk, line: str, spoons: float
) -> None:
    (reply,) = await planned.say(line)
    (event,) = reply.facts["events"]
    assert (event["spoons"], event["substance"]) == (spoons, "sodium bicarbonate")
    assert "weigh it next time" in reply.text


async def test_so_much_in_is_of_the_plan_whatever_was_told_since(planned: Talk) -> None:
    await planned.say("log it")
    await planned.wait(days=1)
    await planned.say("kh 3 ph 7.1 ammonia 0")
    (reply,) = await planned.say("put 5.4 g in")
    assert [each["grams"] for each in reply.facts["events"]] == [5.4]
    await planned.say("so how much now")  # asked what is meant: no answer
    assert (await planned.facts("gave 2.7 g"))["events"][0]["grams"] == 2.7


async def test_a_word_of_regret_puts_the_part_right_else_it_went_in(planned: Talk) -> None:
    assert (await planned.facts("oops i put in 60 g"))["events"][0]["grams"] == 60.0
    told = await planned.text("no only 6 g")
    assert "dosed 6 g sodium bicarbonate (was" in told
    assert "dosed 4 g sodium bicarbonate (was" in await planned.text("actually it was 4 g soda")


async def test_another_amount_behind_a_dose_is_one_more(planned: Talk) -> None:
    await planned.say("dosed 5 g baking soda")
    for line in ("oh and 20 g epsom salt", "und noch 5 g Bittersalz"):
        (event,) = (await planned.facts(line))["events"]
        assert event["substance"] == "magnesium sulfate heptahydrate"
    await planned.say("kh 4")
    assert "events" not in await planned.facts("and 20 g epsom salt")


async def test_millilitres_are_of_the_product_of_the_plan(talk: Talk) -> None:
    await talk.say("/tank new Hall 180 l fresh")
    await talk.say("kh 2 gh 5 ph 7.0 temp 25 ammonia 0")
    await talk.say("alk boost: 10 ml per 50 l raises kh 2")
    await talk.say("how much alk boost for kh 4")
    assert "18 ml alk boost" in await talk.text("i put in 18 ml")
    logged, warned = await talk.say("oops put in 180 ml")
    assert logged.facts["events"][0]["millilitres"] == 180.0
    assert "Too much for one day" in warned.text
    assert "within the limits" not in await talk.text("is that bad")


@pytest.mark.parametrize("line", ["put 150 g", "i put in 2 tablespoons", "put in 20 ml of it"])
async def test_so_much_of_nothing_is_asked_of_what(talk: Talk, line: str) -> None:
    await talk.say("/tank new Hall 180 l fresh")
    (reply,) = await talk.say(line)
    assert "What was it that went in?" in reply.text
    assert "events" not in reply.facts


async def test_a_dose_of_which_it_is_unsure_is_offered_to_be_stored(talk: Talk) -> None:
    await talk.say("/tank new Hall 180 l fresh")
    (reply,) = await talk.say("mir sind 30 g Natron reingefallen")
    assert reply.buttons[0].label == "dosed 30 g sodium bicarbonate"
    (stored,) = await talk.press(1)
    assert stored.facts["events"][0]["grams"] == 30.0


async def test_where_it_leads_and_how_sure_that_is(planned: Talk) -> None:
    plan = await planned.facts("dose kh 4")
    (reply,) = await planned.say("whats the ph after")
    assert reply.facts["ph_stood"] == plan["ph_stood"]
    assert "KH 2 → 4 °dH." in reply.text
    (reply,) = await planned.say("how sure are you")
    assert reply.facts["interval"] == plan["interval"]
    assert "nine times in ten" in reply.text


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("can i stop after one", "the water then stays where its last part brought it"),
        ("can i keep the rest", "Dry, closed and labelled it keeps"),
        ("in the evening", "each part at the same one: 24 h apart"),
        ("what if i skip a day", "A part may wait a day or two"),
        ("faster way?", "No: give the 2 parts 24 h apart"),
        ("how much in total", "10.8 g"),
    ],
)
async def test_what_is_free_to_choose(planned: Talk, line: str, told: str) -> None:
    assert told in await planned.text(line)


@pytest.mark.parametrize(
    "line", ["how do i raise the ph", "raise ph", "stop it", "keep them apart"]
)
def test_what_asks_for_more_is_none_of_it(line: str) -> None:
    assert telling(line) is None


@pytest.mark.parametrize(
    "line",
    ["i didnt dose it", "no i did not give it", "nicht gegeben", "non l'ho messo", "niet gegeven"],
)
async def test_what_did_not_go_in_is_taken_back(planned: Talk, line: str) -> None:
    assert telling(line).meaning == "not_given"
    await planned.say("log it")
    assert "Taken back: Hall: dosed 5.4 g" in await planned.text(line)
    assert "Taken back" not in await planned.text(line)


@pytest.mark.parametrize("line", ["how much now", "how much is it", "what does it do then"])
async def test_what_names_nothing_leaves_the_plan_as_it_is(planned: Talk, line: str) -> None:
    await planned.say(line)
    assert "logged 5.4 g" in await planned.text("gave it")


async def test_what_went_in_is_asked_until_it_is_told(talk: Talk) -> None:
    await talk.say("/tank new Hall 180 l fresh")
    await talk.say("kh 4 gh 5 ph 7.0 temp 25 ammonia 0")
    await talk.say("i put in 30 g")
    assert "What was it that went in?" in await talk.text("what now")
    await talk.say("dosed 30 g baking soda")
    assert "What was it" not in await talk.text("what now")


@pytest.mark.parametrize("line", ["ok put in part 2", "part 2 is in", "Teil 2 ist drin"])
async def test_the_part_of_a_number_is_one_part(planned: Talk, line: str) -> None:
    await planned.say("log it")
    await planned.wait(days=1)
    (reply,) = await planned.say(line)
    assert reply.facts["events"][0]["grams"] == pytest.approx(A_PART, rel=5e-3)


async def test_oh_no_before_a_deed_is_regret_and_no_denial(planned: Talk) -> None:
    (reply,) = await planned.say("oh no i put in 18 g instead of 2")
    assert reply.facts["events"][0]["grams"] == 18.0
    assert "Too much for one day" in reply.text


@pytest.mark.parametrize("line", ["oh no way too much went in", "i put in too much"])
async def test_too_much_without_a_number_is_an_overdose(planned: Talk, line: str) -> None:
    assert "How much of what went in?" in await planned.text(line)
    assert "Stop dosing" in await planned.text("what now")


def test_what_is_longer_than_so_many_words_is_not_read_word_by_word() -> None:
    assert said_of_plan("i gave it") is not None
    assert said_of_plan("i gave it" + " " * 300) is None


ASKING = (
    "so how much more do i put in; wait how much do i put in; ok how much did i put in;"
    " so when do i put the next one in; so did i put it in; so which part is in;"
    " ok so do i put all of it in; now do i put in the second part; so have you put it in;"
    " ok must i put in both; so are both in; wait is it all in; right so do i put in both;"
    " put it all in?; u think half is in; und wie viel hab ich reingetan; ok wann hab ich"
    " reingetan; so wieviel noch rein; ok est-ce que j'ai mis tout; och hur mycket har jag gett"
)


@pytest.mark.parametrize("line", [each.strip() for each in ASKING.split(";")])
async def test_what_asks_of_a_plan_logs_nothing(planned: Talk, line: str) -> None:
    await planned.say("what now")
    for reply in await planned.say(line):
        assert "events" not in reply.facts, line
    assert "None of the 2 parts is on record" in await planned.text("what is left")


@pytest.mark.parametrize(
    "line", ["so i put it in", "ok now the first part is in", "right, gave it", "and i put one in"]
)
async def test_what_only_begins_like_a_question_is_a_deed(planned: Talk, line: str) -> None:
    (reply,) = await planned.say(line)
    assert reply.facts["events"][0]["grams"] == pytest.approx(A_PART, rel=5e-3)


WORDED = {
    "chucked in a kilo just now": 1000.0,
    "ok threw in half a kilo": 500.0,
    "put in quarter of a kilo": 250.0,
    "i put a whole kilo in": 1000.0,
    "put in a kilo and a half": 1500.0,
    "put in one and a half kilo": 1500.0,
    "put in a pound": 453.6,
    "ein halbes Kilo reingekippt": 500.0,
    "j'ai mis un demi kilo": 500.0,
    "eché medio kilo": 500.0,
}


@pytest.mark.parametrize("line", WORDED)
async def test_a_weight_told_in_words_is_what_went_in(planned: Talk, line: str) -> None:
    (reply,) = await planned.say(line)
    assert reply.facts["events"][0]["grams"] == pytest.approx(WORDED[line], rel=1e-3)
    assert "Too much for one day" in reply.text
    assert "is within the limits" not in await planned.text("is that too much")


@pytest.mark.parametrize(
    ("line", "teaspoons"),
    [
        ("i tipped in a whole tablespoon instead", 3.0),
        ("i put in a heaped tablespoon", 3.0),
        ("put in 2 heaped teaspoons", 2.0),
        ("gave a level teaspoon", 1.0),
        ("einen gehäuften Teelöffel reingetan", 1.0),
    ],
)
async def test_a_spoon_is_a_spoon_however_full(planned: Talk, line: str, teaspoons: float) -> None:
    (reply,) = await planned.say(line)
    (event,) = reply.facts["events"]
    assert event["spoons"] == teaspoons
    assert event["substance"] == "sodium bicarbonate"
    assert event.get("grams") is None


@pytest.mark.parametrize("line", ["is a heaped tablespoon ok", "is half a kilo ok", "is 1 tbsp ok"])
async def test_so_much_that_is_asked_about_is_judged_itself(planned: Talk, line: str) -> None:
    told = await planned.text(line)
    assert told.startswith("No: give the 2 parts")


async def test_less_than_a_part_that_is_asked_about_is_within_it(planned: Talk) -> None:
    assert "is within the limits" in await planned.text("is half a teaspoon ok")


@pytest.mark.parametrize(
    "text",
    [
        "didnt do it, ill do both tomorrow", "gonna put both in tomorrow",
        "forgot yesterdays dose, so im doing double today ok?", "i'll do two tomorrow",
    ],
)  # fmt: skip
async def test_parts_meant_together_are_told_no_and_logged_never(planned: Talk, text: str) -> None:
    assert "24 h apart" in await planned.text(text)
    assert "dosed" not in await planned.text("what did i do")


async def test_a_part_told_with_that_all_is_well_is_logged(planned: Talk) -> None:
    (event,) = (await planned.facts("put the first bit in, fish look fine"))["events"]
    assert event["kind"] == "dose"
