"""First-minute steps where people or pets are in danger: out of it first, then whom to call.

Nothing here judges an illness; what a layman may do while help comes is common practice, from
memory, where the cautions name no source: rinsing for 15 minutes, no vomiting, fresh air, nobody
back into gas, warm water for a fish's sting only as the poison line says.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words.poison_lines import emergency_number, whom_to_call
from bot.chat.words.text import N_, _
from core.advice.calls import Danger

CALL: Final = "call"
POISON: Final = "poison"
"""Places of a line with the keeper's own emergency number, and with the poison line."""

STEPS: Final[Mapping[Danger, tuple[str, ...]]] = {
    "electric": (
        N_(
            "Touch neither the water nor metal. Switch the power off at the fuse box, standing dry."
        ),
        N_("Do not touch anybody who hangs on the current before it is off."),
        CALL,
        N_(
            "Anybody who got a shock sees a doctor today, even if well: the heart can follow later."
        ),
        N_("With the power off: out with heater, pump and lamp; use none again before a check."),
        N_(
            "Then air from a battery pump, no food. A ground-fault switch (RCD, GFCI) saves"
            " lives: have one fitted."
        ),
    ),
    "heater_dry": (
        N_("Pull its plug now, with a dry hand. Do not touch the glass: it burns and can burst."),
        N_("Never put it back hot. Let it cool for half an hour, away from all that burns."),
        N_("No hand into the water while it is plugged in. Cracked or blackened: throw it away."),
        N_("Fire or a shock: switch off at the fuse box, leave the room."),
        CALL,
        N_("Then send the temperature of the tank."),
    ),
    "fumes": (
        N_("Out of the room now, all of you, pets too, into fresh air. Nobody goes back to it."),
        CALL,
        POISON,
        N_("Eyes or skin: running water for 15 minutes. Add nothing to it, pour nothing away."),
        N_(
            "Bleach with acid, vinegar, ammonia or another cleaner makes a poisonous gas; the"
            " fumes of formalin or acid burn the lungs too."
        ),
    ),
    "co_air": (
        N_(
            "Out of the room now, all of you, pets too: exhaust of an engine, a grill or a flame"
            " kills, and you cannot smell it."
        ),
        CALL,
        N_("Headache, dizzy, sick or sleepy from it is an emergency: say “carbon monoxide”."),
        N_("Windows open only on your way out; nobody goes back in, not for the fish either."),
        N_("No generator, grill, camping stove or gas heater indoors, in a garage or by a window."),
        N_("Once the room is cleared for you: a battery pump, or water poured back from a jug."),
    ),
    "co2_air": (
        N_(
            "Out of the room now, all of you, pets too: CO2 makes you faint, and you cannot"
            " smell it."
        ),
        CALL,
        N_("Open doors and windows only on your way out. Nobody goes back in after anybody."),
        N_("Turn the valve off only after long airing, and not alone."),
        N_("Later: secure it upright, leak-test it with soapy water, air the room."),
    ),
    "drowning": (
        N_("Out of the water now, and look: awake, breathing?"),
        N_("Wires in that water: power off at the fuse box before you reach in."),
        CALL,
        N_("Not breathing: begin resuscitation at once; they tell you how on the telephone."),
        N_("Breathing: on the side, wet clothes off, warm, never alone."),
        N_("A doctor today even if all seems well: lungs can fail hours later."),
    ),
    "collapsed": (
        N_("Call for help now; gas or fumes: out into fresh air first, and nobody goes back in."),
        CALL,
        N_("Wires in the water: touch nobody before the power is off at the fuse box."),
        N_("Not breathing: resuscitation at once, they tell you how. Breathing: on the side."),
        N_("Tell them what was used at the tank: CO2, bleach, acid, formalin, electricity."),
    ),
    "breath": (
        N_(
            "You or another person: out into fresh air now, all of you; nobody goes back in. Fish:"
            " air stone now, outlet to the surface."
        ),
        CALL,
        POISON,
        N_("Tell them what was used: bleach, acid, formalin, CO2, corals. Sit up, loosen clothes."),
        N_("If it is the fish, send: fish gasping"),
    ),
    "splashed": (
        N_(
            "Rinse now under running water, for 15 minutes: an eye with its lids held open,"
            " contact lenses out; skin with the wet clothes off."
        ),
        POISON,
        N_("An eye is seen by a doctor today, even if it feels better; lye, lime: emergency care."),
        N_("No rubbing, no drops, no vinegar or soda against it."),
        N_("Keep the bottle or bag at hand: they will ask what it was."),
    ),
    "bleeding": (
        N_("Press hard on the wound with a clean cloth now, keep pressing, hold it high."),
        CALL,
        N_("It spurts, soaks through, or fingers go numb: the emergency number at once."),
        N_("Glass that sticks in it stays in: press beside it, a doctor takes it out."),
        N_("Tell the doctor about the aquarium: its germs show only after weeks."),
        N_("Wet plugs: power off at the fuse box. A broken pane: keep others away."),
    ),
    "toxin": (
        N_(
            "Rinse eye, mouth or skin with clean running water now, and go on for 15 minutes;"
            " contact lenses out."
        ),
        N_("Emergency care at once, even if it is mild: say “palytoxin, from a coral”."),
        CALL,
        POISON,
        N_("All others and pets out of the room; air it. Never boil, scrub or scrape that rock."),
    ),
    "sting": (
        N_("Short of breath, face swelling, faint, or a child: emergency care now."),
        CALL,
        POISON,
        N_("Sit down, hold it still, rings off. Do not cut, suck or tie it off."),
        N_(
            "Ask them about warm water: for a fish's sting as warm as the other hand bears it"
            " well, never scalding."
        ),
    ),
    "wound": (
        N_(
            "Wash it now with soap under clean running water, cover it, and keep it out of the"
            " tank."
        ),
        N_("Red streaks, fever, swelling or much pain: a doctor today."),
        N_(
            "A lump or sore that does not heal: a doctor, and tell them about the aquarium; a"
            " germ of tanks shows only after weeks."
        ),
        N_("Next time waterproof gloves. I cannot judge a wound."),
    ),
    "pet": (
        N_("Call your vet now, an emergency vet if yours is closed; I cannot judge it."),
        N_("Tell them what was in the water or bag (salts, medicine, doses), how much and when."),
        N_("Do not make it vomit. Fresh drinking water, and a lid on the tank."),
        N_("Keep the bottle or bag at hand."),
    ),
}


def lines(danger: Danger, country: str | None) -> list[str]:
    """The steps for people or pets, six lines at most."""
    if danger == "swallowed":
        return swallowed(country)
    told = {CALL: emergency_number(country), POISON: whom_to_call(country)}
    return [told[step] if step in told else _(step) for step in STEPS[danger]]


def swallowed(country: str | None) -> list[str]:
    """Somebody swallowed something."""
    return [
        whom_to_call(country),
        _("Cannot breathe, chokes, or does not wake: that is the emergency number, first."),
        _(
            "Do not make them vomit. Rinse the mouth, wash the hands; rinse eyes or skin with"
            " running water for 15 minutes."
        ),
        _("Which powder or product was it? Keep its bottle: they ask what, how much and when."),
        _("A pet: an emergency vet. I cannot judge it."),
    ]
