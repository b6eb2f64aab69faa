"""What is said of the plan before it, in nine languages; mostly what is none of it."""

from __future__ import annotations

from importlib.resources import files
from typing import get_args

import pytest

from core.message.plan_talk import About, about
from core.message.wordfile import alternatives, entries

SAID = {
    "how": ("how do I dissolve the baking soda?", "wie löse ich das Natron auf?", "où je le mets ?",
            "¿dónde lo echo?", "onde ponho isso?", "devo scioglierlo?", "waar doe ik het in?",
            "jak to rozpuścić?", "hur löser jag upp det?"),
    "dry": ("can i just pour it in", "in the filter?", "einfach reinkippen?", "direto no aquário?"),
    "spoons": ("how many spoons is that", "I have no scale", "ich habe keine Waage", "sans balance",
               "no tengo báscula", "não tenho balança", "non ho una bilancia",
               "ik heb geen weegschaal", "nie mam wagi", "jag har ingen våg"),
    "when_next": ("and when can I add more?", "wann kommt der zweite Teil?",
                  "when is the next part",
                  "quand la prochaine partie ?", "¿cuándo vuelvo a medir?", "quando meço de novo?",
                  "quanto devo aspettare?", "wanneer meet ik weer?", "kiedy znowu zmierzyć?",
                  "när ska jag mäta igen?"),
    "gave_all": ("i put both parts in", "i tipped it all in at once", "dumped everything in",
                 "alles reingekippt", "j'ai tout mis", "lo eché todo",
                 "pus tudo", "ho messo tutto", "ik heb alles gegeven", "wsypałam wszystko",
                 "jag gav allt"),
    "gave_one": ("i put the second part in too", "den zweiten Teil gegeben", "first part done",
                 "j'ai mis la deuxième partie", "eché la segunda parte", "pus a segunda parte",
                 "ho messo la seconda parte", "ik heb het tweede deel gegeven",
                 "wsypałem drugą część", "jag gav andra delen"),
    "at_once": ("can I put it all at once?", "alles auf einmal", "tout d'un coup?"),
    "later": ("can it wait?", "i forgot the second part", "kann ich das morgen machen?",
              "j'ai oublié la deuxième partie", "se me olvidó un día", "posso fazer amanhã?",
              "ho saltato un giorno", "kan het wachten?", "zapomniałam o części",
              "jag glömde en dag"),
    "drop": ("never mind", "vergiss es", "laisse tomber", "olvídalo", "esquece", "lascia stare",
             "laat maar", "nieważne", "glöm det"),
}  # fmt: skip


@pytest.mark.parametrize(("meaning", "text"), [(of, t) for of, told in SAID.items() for t in told])
def test_it_is_told_what_is_said(meaning: About, text: str) -> None:
    assert about(text) == meaning


@pytest.mark.parametrize(
    "text",
    [
        "how do i add fish", "when do i feed again", "where do i put the heater", "kh 4 ph 7.2",
        "dose kh 4", "i put both tanks on the shelf", "part of the plants died", "no fish",
        "how do i dissolve", "never mind the gap", "cancel the reminder", "wo kommt der fisch hin",
        "when is the next water change", "all", "second", "the first fish is in", "leave it out",
        "how many fish", "no filter", "ho messo tutto il cibo", "i put it in the other tank",
        "i put everything away", "i added all the fish",
    ],
)  # fmt: skip
def test_what_says_more_is_none_of_it(text: str) -> None:
    assert about(text) is None


def test_every_way_in_the_file_is_understood_as_its_own() -> None:
    """A way that reads as another meaning would never be reached."""
    text = (files("core.message") / "plan_talk.txt").read_text(encoding="utf-8")
    seen = set()
    for section, meaning, right in entries(text, "plan_talk.txt"):
        if section != "about":
            continue
        seen.add(meaning)
        for way in alternatives(right):
            said = way.replace("{it}", "it").replace("*", "second")
            said = said.replace("{put}", "tipped").replace("{all}", "the lot")
            said = said.replace("{packet}", "label").replace("{amount}", "way more")
            said = said.replace("{stuff}", "gravel")
            assert about(said) == meaning, way
    assert seen == set(get_args(About))
