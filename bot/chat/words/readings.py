"""What was understood of a message, said back."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import Final

from bot.chat.words import moves, names, numbers
from bot.chat.words.derived import class_words
from bot.chat.words.text import N_, _, ngettext
from core.advice.hardness import HardnessClass
from core.message.doubts import (
    AIM,
    AMBIGUOUS_DATE,
    AMBIGUOUS_NAME,
    AMBIGUOUS_TANK,
    AMBIGUOUS_UNIT,
    BAD_NUMBER,
    BAD_TIME,
    CHANGE,
    CONFLICT,
    FREE_AMMONIA,
    FUTURE,
    IMPLAUSIBLE,
    INCOMPLETE_QUESTION,
    INVISIBLE,
    LAST_UNIT,
    NEGATED,
    NEGATIVE,
    NO_NUMBER,
    NO_VALUE,
    OTHER_WATER,
    PAST,
    PLANNED,
    PRICE,
    QUESTIONED,
    SEA_ALKALINITY,
    STRAY_NUMBER,
    TOO_LONG,
    TRACE,
    UNKNOWN_NAME,
    UNKNOWN_TANK,
    UNKNOWN_UNIT,
    UNKNOWN_WORD,
    UNSURE_EVENT,
    WISH,
    WRONG_UNIT,
)
from core.message.model import Event, Value
from core.tank import TankKind

_REASONS = {
    BAD_NUMBER: N_("{texts} makes no one number"),
    IMPLAUSIBLE: N_("{texts} is outside what a tank can have"),
    NEGATIVE: N_("{texts} has a minus, which may be a dash or mean a fall"),
    STRAY_NUMBER: N_("{texts} belongs to no name"),
    NO_VALUE: N_("{texts} has no number"),
    NO_NUMBER: N_("{texts} does not tell how many"),
    UNKNOWN_NAME: N_("{texts} is no name that I know"),
    AMBIGUOUS_NAME: N_("{texts} could be two things"),
    UNKNOWN_WORD: N_("{texts} has a word beside it that I do not know"),
    UNKNOWN_UNIT: N_("{texts} is no unit that I know"),
    WRONG_UNIT: N_("{texts} is not a unit for this"),
    AMBIGUOUS_UNIT: N_("{texts} could be two units"),
    SEA_ALKALINITY: N_("{texts} has no unit: seas have 7 to 11 °dH, which is 2.5 to 4 meq/L"),
    LAST_UNIT: N_("{texts} has no unit, and this tank's was told in another than °dH before"),
    UNKNOWN_TANK: N_("{texts} is not one of your tanks"),
    AMBIGUOUS_TANK: N_("{texts} could be two of your tanks"),
    CONFLICT: N_("{texts} was told twice with two numbers"),
    CHANGE: N_("{texts} reads as a change, not a value"),
    WISH: N_("{texts} reads as a wish, not a value"),
    AIM: N_("{texts} may be wished for or measured"),
    OTHER_WATER: N_("{texts} is another water's value, not this tank's"),
    PAST: N_("{texts} reads as an earlier value without its time"),
    FUTURE: N_("{texts} is still to come"),
    PLANNED: N_("{texts} is still to come"),
    BAD_TIME: N_("{texts}: that day or time is none, and without one it would be of now"),
    AMBIGUOUS_DATE: N_("{texts} could be of two days"),
    QUESTIONED: N_("{texts} has a question mark"),
    TRACE: N_("{texts} is more than nothing and no number: which step of the kit is nearest"),
    NEGATED: N_("{texts} reads as what it is not"),
    FREE_AMMONIA: N_("{texts} says un-ionised ammonia; kits read total ammonia"),
    PRICE: N_("{texts} may be a price, not a value"),
    INVISIBLE: N_("{texts} has hidden characters in its digits"),
    UNSURE_EVENT: N_("{texts} may be done or only planned"),
    INCOMPLETE_QUESTION: N_("{texts} has no clear place in your question"),
    TOO_LONG: N_("{texts} is too long to read in one message"),
}

_UNCLEAR = N_("{texts} is not clear to me")

FRAGMENTS = 4
"""Fragments named in one line."""

LEAVE_OUT, TYPE_AGAIN = N_("leave it out"), N_("type it again")

_EVENTS = {
    "water_change": N_("changed"),
    "top_up": N_("topped up"),
    "dose": N_("dosed"),
    "filter": N_("filter cleaned"),
    "media": N_("media"),
    "added": N_("added"),
    "lost": N_("lost"),
    "moved": N_("moved"),
    "fed": N_("fed"),
    "note": N_("note"),
}


def values(told: Sequence[Value], classes: Mapping[str, Sequence[HardnessClass]]) -> str:
    """All values of a tank in one line, hardness converted once and classed."""
    parts = []
    for value in told:
        told_as = " = ".join([numbers.entered(value), *numbers.also(value)])
        if held := classes.get(value.analyte):
            told_as = _("{value} ({hardness})").format(
                value=told_as, hardness=class_words(value.analyte, held[0])
            )
        parts.append(told_as)
    return ", ".join(parts)


def event(told: Event) -> str:
    """An event with its amounts, in a few words."""
    amounts = [
        f"{numbers.plain(told.percent, 1)} %" if told.percent is not None else "",
        numbers.litres(told.litres) if told.litres is not None else "",
        numbers.grams(told.grams) if told.grams is not None else "",
        f"{numbers.plain(told.millilitres, 1)} mL" if told.millilitres is not None else "",
        _spooned(told.spoons) if told.spoons is not None else "",
        str(told.count) if told.count is not None else "",
        names.said(told.substance or ""),
        told.species or "",
    ]
    amounts = [amount for amount in amounts if amount]
    if told.kind in {"moved_out", "moved_in"}:
        moved = moves.moved_out if told.kind == "moved_out" else moves.moved_in
        return moved(" ".join(amounts), told.text)
    if told.kind == "note" or (not amounts and told.text):
        amounts.append(told.text or "")
    said = _(_EVENTS.get(told.kind, told.kind))
    told_of = " ".join(amounts).strip()
    return _("{event} {amounts}").format(event=said, amounts=told_of) if told_of else said


def _spooned(count: float) -> str:
    told = ngettext("{count} teaspoon", "{count} teaspoons", count)
    return told.format(count=numbers.plain(count, 2))


def line(tank: str, parts: Sequence[str], at: datetime, now: datetime) -> str:
    """What was stored, for which tank, and when it was if not now."""
    told = "; ".join(part for part in parts if part)
    if abs((now - at).total_seconds()) < 60:
        return names.of_tank(tank, told)
    dated = _("{tank} ({when}): {told}")
    return dated.format(tank=tank, when=numbers.when(at, now), told=told)


def then(told: str, at: datetime, now: datetime) -> str:
    """What was told, and when it was."""
    return _("{told} ({when})").format(told=told, when=numbers.when(at, now))


def spoons() -> str:
    """Spoons are taken down, never worked with."""
    return _("A spoon is no measure: weigh it next time, and tell me the grams.")


def litres_first() -> str:
    """Grams went into a tank of no known volume: whether too many cannot be told."""
    return _(
        "How many litres does it hold? Without them I cannot tell whether that was too much: send"
        " for example 90 l, and test before you add more."
    )


_MADE: Final = {
    "fresh": N_("Kept under “{name}” until you name it: /tank rename {name} Fern"),
    "marine": N_(
        "Kept under “{name}”, as a sea, until you name it: /tank rename {name} Fern. Is it fresh"
        " water? Send: /tank {name} fresh"
    ),
    "brackish": N_("Kept under “{name}”, as brackish, until you name it: /tank rename {name} Fern"),
    "pond": N_("Kept under “{name}”, as a pond, until you name it: /tank rename {name} Fern"),
}


def made_tank(name: str, kind: TankKind) -> str:
    """The tank was made on the fly, and of which water."""
    return _(_MADE[kind]).format(name=name)


def basis_assumed(analyte: str) -> str:
    """The basis was not said, and it matters."""
    return _(
        "Your kit may count {analyte} as nitrogen or as the ion; I judge it as nitrogen (worse)."
    ).format(analyte=names.said(analyte))


def doubt(fragments: Sequence[str], reason: str) -> str:
    """Fragments that were not stored, and the one reason why."""
    texts = ", ".join(f"“{_cut(fragment, 60)}”" for fragment in fragments[:FRAGMENTS])
    if (rest := len(fragments) - FRAGMENTS) > 0:
        texts = ngettext("{texts} and {count} more", "{texts} and {count} more", rest).format(
            texts=texts, count=rest
        )
    if len(fragments) > 1:
        texts = _("{texts}: each").format(texts=texts)
    told = _(_REASONS.get(reason, _UNCLEAR)).format(texts=texts)
    if reason == INCOMPLETE_QUESTION:
        return _("{told}.").format(told=told)
    return _("Not stored: {told}.").format(told=told)


def meant(labels: Sequence[str], *, together: bool, tank: str | None = None) -> str:
    """Ask whether a guess is right, and of which of several tanks."""
    told = labels[0] if together else names.either(list(labels))
    if tank is not None:
        return _("{tank}: did you mean {told}?").format(told=told, tank=tank)
    return _("Did you mean {told}?").format(told=told)


def guess(texts: Sequence[str]) -> str:
    """The button of one guess, or of several together."""
    return _cut(", ".join(texts), 60)


def _cut(text: str, most: int) -> str:
    return text if len(text) <= most else text[: most - 1] + "…"


def how_many_came(text: str, name: str) -> list[str]:
    """Ask for the number of animals that came without one."""
    told = _("How many? Not stored yet: “{text}”. Send the number, or for example: added 6 {name}")
    return [told.format(text=_cut(text, 60), name=name)]


def of_which(tank: str, told: Sequence[str]) -> list[str]:
    """Numbers behind a tank, which name nothing that was measured."""
    texts = names.listed([f"“{_cut(each, 60)}”" for each in told])
    said = ngettext(
        "{tank}: of which value is {texts}? Not stored yet. Send it with its name, for example:"
        " {tank} kh 4",
        "{tank}: of which values are {texts}? Not stored yet. Send them with their names, for"
        " example: {tank} ph 7 kh 4",
        len(told),
    )
    return [said.format(tank=tank, texts=texts)]


def told_as_wrong(text: str, name: str) -> list[str]:
    """A value that is said to be wrong in the same breath."""
    said = _("Not stored: “{text}”, which you say is wrong. What is the right number of {name}?")
    return [said.format(text=_cut(text, 60), name=name)]


def ask_for_reminder() -> str:
    """How to be told of what is planned for a later time."""
    return _("To be reminded, send for example: remind me on friday to test")


def send_instead() -> str:
    """What to do about doubts that we have no guess for."""
    return _("Send it again the way the kit shows it, for example: kh 4")


def send_with_tank() -> str:
    """What to do about values that may be of several tanks, whose names nobody knows."""
    return _("Of which tank is each? Send each with its tank: fern kh 4. A new one: fern is 90 l")


def taken_off(what: str) -> str:
    """A reading that was of another tank is taken off the one that it was told of."""
    return _("Taken off: {what}").format(what=what)


def no_such_tank(name: str) -> list[str]:
    """A reading of a tank that is not on record."""
    return [_("There is no tank “{name}”, so that is not stored yet.").format(name=name[:40])]


def add_tank(name: str) -> str:
    """The button that adds the tank and keeps the reading."""
    return _("add {name}").format(name=name)


def it_is(name: str) -> str:
    """The button that gives the reading to a tank on record."""
    return _("it is {name}").format(name=name)


def which_tank(tanks: Sequence[str]) -> list[str]:
    """Ask for the tank."""
    return [_("Which tank is that? {tanks}. Nothing is stored yet.").format(tanks=", ".join(tanks))]


def tank_meant(tanks: Sequence[str]) -> list[str]:
    """Ask which tank it was that was told; what is stored stays where it is until then."""
    told = _("Which tank did you mean: {tanks}? Send for example: that was {tank}")
    return [told.format(tanks=", ".join(tanks), tank=tanks[0])]


def undone(what: str) -> str:
    """What an undo took back."""
    return _("Taken back: {what}. History keeps it.").format(what=what)


def which_to_forget() -> list[str]:
    """That several readings of a day are on record, and it is open which is to go."""
    return [
        _("There are several of that day; nothing is taken back. Put the one right, for example:"
          " no, ph 7.2 yesterday 8:00")
    ]  # fmt: skip


def stands_again(what: str) -> str:
    """What stood before a correction that was taken back."""
    return _("This stands again: {what}.").format(what=what)


def nothing_to_undo() -> list[str]:
    """Nothing on record to take back."""
    return [_("There is nothing to take back.")]


def corrected(before: str, after: str) -> str:
    """A correction."""
    return _("Corrected: {after} (was {before}).").format(after=after, before=before)


def of_what(said: str) -> list[str]:
    """A number that may put right what was not understood, and not what is older."""
    told = _("{said} of what? Nothing is changed. Send it with its name.")
    return [told.format(said=said)]


def nothing_to_put_right() -> list[str]:
    """That a correction does not tell what is to be put right."""
    return [_("I cannot tell what to put right. Send it with its number, for example: no, kh 5")]


def edit_not_understood() -> list[str]:
    """An edited message that no longer reads as anything; what it said before stays."""
    return [
        _("I cannot read your edited message, so what it said before still counts."),
        _("Send undo to take it back."),
    ]


def so_it_is_of(tank: str) -> str:
    """What is asked about is of a tank that was named after it."""
    return _("For {tank}:").format(tank=tank)


def moved(tank: str, what: str) -> str:
    """A correction of the tank."""
    return _("Moved to {tank}: {what}.").format(tank=tank, what=what)


def there_already(tank: str, what: str) -> str:
    """It was to be moved to the tank that it is of."""
    return _("It is of {tank} already: {what}.").format(tank=tank, what=what)


def left_out() -> list[str]:
    """The keeper let a doubtful part go."""
    return [_("Left out.")]


def type_again() -> list[str]:
    """The keeper wants to type a doubtful part anew."""
    return [_("Go ahead, send it again.")]
