"""Words of the first evening and of small talk. The waits are common practice, no source."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words.text import N_, _
from core.message.first_evening import Talk


def begin() -> list[str]:
    """Where to begin with a first tank."""
    return [
        _("First the tank with filter, heater and treated water; animals only weeks later."),
        _("Test your tap: pH, GH, KH decide who can live in it. Send: tap ph 7.4 kh 8 gh 12"),
        _("Let the filter grow without animals: a little ammonia or food, test it twice a week."),
        _("Then few at a time, and ask before you buy: can i keep 6 neons"),
        _("Tell me your tank to start, for example: tank Fern 54 l"),
    ]


def first_steps() -> list[str]:
    """What follows after a first tank is on record."""
    return [
        _("Give it a name if you like: tank Fern 54 l. Tell me the day: set up today"),
        _("No animals before its filter has grown: weeks, by test. Ask: how far am i"),
    ]


def rename(tank: str) -> list[str]:
    """How another tank gets the name that the keeper wants."""
    return [
        _("Another name: /tank rename {tank} Moss. It is the one spoken of now.").format(tank=tank)
    ]


_CALLED: Final[Mapping[str, str]] = {
    "reef": N_("Reef"),
    "big": N_("Big"),
    "small": N_("Small"),
    "second": N_("Second"),
}


def called(trait: str) -> str:
    """A name for another tank, by what was said of it."""
    return _(_CALLED[trait])


def is_given(name: str) -> bool:
    """Whether a tank's name is one that it got because its keeper told none."""
    return name in {called(trait) for trait in _CALLED}


def no_tank(meaning: str) -> list[str]:
    """No tank is on record that a question could be of."""
    if meaning in {"how_long", "how_far"}:
        return [how_long(), _("Tell me your tank, and I say how far it is: tank Fern 54 l")]
    return [_("Which tank, and how many litres? Send for example: tank Fern 54 l")]


def how_long() -> str:
    """How long a new filter takes."""
    return _("Three to eight weeks, mostly four to six: no day tells it, only the test does.")


def proof() -> str:
    """What proves a filter without animals."""
    return _("It is ready when 1 mg/L ammonia is gone in a day, with nitrite at 0 too.")


def bacteria() -> list[str]:
    """Bottled bacteria."""
    return [
        _("Some help and some do nothing: none makes a filter ready at once."),
        _("What helps surely is used filter medium from a healthy tank, kept wet."),
        _("They need ammonia to live on; go by ammonia and nitrite, as without them."),
    ]


def ask_nobody(tank: str, *, is_cycling: bool) -> list[str]:
    """Whether nobody at all lives in a tank."""
    lines = [_("Is there no animal at all in {tank}, no snail and no shrimp?").format(tank=tank)]
    if is_cycling:
        lines.append(_("Then I judge ammonia and nitrite for the filter, not for fish."))
    return lines


def none_at_all() -> str:
    """The answer that nobody lives there."""
    return _("yes, no animal at all")


def some_live() -> str:
    """The answer that somebody does."""
    return _("no, some live there")


def still_there(tank: str) -> list[str]:
    """Animals are on record of a tank that is told to be without."""
    return [
        _("{tank} has animals on record, so ammonia stays judged for them.").format(tank=tank),
        _("Are they gone? Tell me, for example: all moved out"),
    ]


def too_much_ammonia() -> list[str]:
    """More than a growing filter bears; from memory, as in the limits."""
    return [
        _("Too much: over 4 mg/L as N the filter stalls. Change water until it reads 1 to 2."),
        _("Then a reading each day: ammonia 2 nitrite 0"),
    ]


def ammonia_dosed(*, is_nobodys: bool) -> list[str]:
    """After ammonia went in to feed a filter."""
    lines = [
        _("Noted. Test ammonia in an hour and send it: only the test tells what is in it."),
        _("Ready is it when 1 mg/L is gone in a day, nitrite too. Then feed it until fish come."),
    ]
    if not is_nobodys:
        lines.insert(0, _("Only without any animal, snails and shrimps too: it kills them."))
    return lines


TALK: Final[Mapping[Talk, str]] = {
    "hello": N_("Hello. Tell me your tank (tank Fern 54 l) or send readings: ph 7.2 kh 4"),
    "thanks": N_("You are welcome. I am here if something changes."),
    "oops": N_("No harm. To take the last thing back: undo"),
    "fine": N_("Good."),
}


def welcome() -> str:
    """An answer to thanks, where more follows."""
    return _("You are welcome, but this still stands:")


def not_over(tank: str) -> list[str]:
    """A call for help or a loss of the day stands, and no reading says that it is over."""
    return [
        _("{tank} is not known to be well: what you told today still stands.").format(tank=tank),
        _("Finish the steps, send ammonia, nitrite, pH and temperature, and how they breathe."),
    ]


def talk(meaning: Talk) -> list[str]:
    """A short answer to small talk."""
    return [_(TALK[meaning])]
