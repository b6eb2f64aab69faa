"""What was understood of a message, said back."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime

from bot.chat.words import numbers
from bot.chat.words.derived import class_words
from core.advice.hardness import HardnessClass
from core.message.doubts import (
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
    NEGATED,
    NEGATIVE,
    NO_VALUE,
    OTHER_WATER,
    PAST,
    QUESTIONED,
    STRAY_NUMBER,
    TOO_LONG,
    UNKNOWN_NAME,
    UNKNOWN_TANK,
    UNKNOWN_UNIT,
    UNKNOWN_WORD,
    UNSURE_EVENT,
    WISH,
    WRONG_UNIT,
)
from core.message.model import Event, Value

_REASONS = {
    BAD_NUMBER: "makes no one number",
    IMPLAUSIBLE: "is outside what a tank can have",
    NEGATIVE: "is under zero",
    STRAY_NUMBER: "belongs to no name",
    NO_VALUE: "has no number",
    UNKNOWN_NAME: "is no name that I know",
    AMBIGUOUS_NAME: "could be two things",
    UNKNOWN_WORD: "has a word beside it that I do not know",
    UNKNOWN_UNIT: "is no unit that I know",
    WRONG_UNIT: "is not a unit for this",
    AMBIGUOUS_UNIT: "could be two units",
    UNKNOWN_TANK: "is not one of your tanks",
    AMBIGUOUS_TANK: "could be two of your tanks",
    CONFLICT: "was told twice with two numbers",
    CHANGE: "reads as a change, not a value",
    WISH: "reads as a wish, not a value",
    OTHER_WATER: "is another water's value, not this tank's",
    PAST: "reads as an earlier value without its time",
    FUTURE: "is still to come",
    BAD_TIME: "is no date or time",
    AMBIGUOUS_DATE: "could be of two days",
    QUESTIONED: "has a question mark",
    NEGATED: "reads as what it is not",
    FREE_AMMONIA: "says un-ionised ammonia; kits read total ammonia",
    INVISIBLE: "has hidden characters in its digits",
    UNSURE_EVENT: "may be done or only planned",
    INCOMPLETE_QUESTION: "has no clear place in your question",
    TOO_LONG: "is too long to read in one message",
}

FRAGMENTS = 4
"""Fragments named in one line."""

LEAVE_OUT, TYPE_AGAIN = "leave it out", "type it again"

_EVENTS = {
    "water_change": "changed",
    "top_up": "topped up",
    "dose": "dosed",
    "filter": "filter cleaned",
    "media": "media",
    "added": "added",
    "lost": "lost",
    "moved": "moved",
    "fed": "fed",
    "note": "note",
}


def values(told: Sequence[Value], classes: Mapping[str, Sequence[HardnessClass]]) -> str:
    """All values of a tank in one line, hardness converted once and classed."""
    parts = []
    for value in told:
        told_as = " = ".join([numbers.entered(value), *numbers.also(value)])
        if held := classes.get(value.analyte):
            told_as += f" ({class_words(value.analyte, held[0])})"
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
        told.substance or "",
        told.species or "",
    ]
    words = [_EVENTS.get(told.kind, told.kind), *(amount for amount in amounts if amount)]
    if told.kind == "note" or (len(words) == 1 and told.text):
        words.append(told.text or "")
    return " ".join(word for word in words if word)


def _spooned(count: float) -> str:
    return "1 spoon" if count == 1 else f"{numbers.plain(count, 2)} spoons"


def line(tank: str, parts: Sequence[str], at: datetime, now: datetime) -> str:
    """What was stored, for which tank, and when it was if not now."""
    dated = "" if abs((now - at).total_seconds()) < 60 else f" ({numbers.when(at, now)})"
    return f"{tank}{dated}: {'; '.join(part for part in parts if part)}"


def spoons() -> str:
    """Spoons are taken down, never worked with."""
    return "A spoon is no measure: weigh it next time, and tell me the grams."


def lost() -> str:
    """Animals died: what to look at before anything else."""
    return "Test ammonia, nitrite, pH and temperature now, look at the others, remove the dead."


def made_tank(name: str) -> str:
    """The tank was made on the fly."""
    return f"Kept under “{name}” until you name it: /tank rename {name} Fern"


def basis_assumed(analyte: str) -> str:
    """The basis was not said, and it matters."""
    return (
        f"Your kit may count {analyte} as nitrogen or as the ion; I judge it as nitrogen (worse)."
    )


def doubt(fragments: Sequence[str], reason: str) -> str:
    """Fragments that were not stored, and the one reason why."""
    told = ", ".join(f"“{_cut(fragment, 60)}”" for fragment in fragments[:FRAGMENTS])
    if len(fragments) > FRAGMENTS:
        told += f" and {len(fragments) - FRAGMENTS} more"
    each = ": each" if len(fragments) > 1 else ""
    if reason == INCOMPLETE_QUESTION:
        return f"{told}{each} {_REASONS[reason]}."
    return f"Not stored: {told}{each} {_REASONS.get(reason, 'is not clear to me')}."


def meant(labels: Sequence[str], *, together: bool) -> str:
    """Ask whether a guess is right."""
    return f"Did you mean {labels[0] if together else ' or '.join(labels)}?"


def guess(texts: Sequence[str]) -> str:
    """The button of one guess, or of several together."""
    return _cut(", ".join(texts), 60)


def _cut(text: str, most: int) -> str:
    return text if len(text) <= most else text[: most - 1] + "…"


def send_instead() -> str:
    """What to do about doubts that we have no guess for."""
    return "Send it again the way the kit shows it, for example: kh 4"


def no_such_tank(name: str) -> list[str]:
    """A reading of a tank that is not on record."""
    return [f"There is no tank “{name[:40]}”, so that is not stored yet."]


def add_tank(name: str) -> str:
    """The button that adds the tank and keeps the reading."""
    return f"add {name}"


def it_is(name: str) -> str:
    """The button that gives the reading to a tank on record."""
    return f"it is {name}"


def which_tank(names: Sequence[str]) -> list[str]:
    """Ask for the tank."""
    return [f"Which tank is that? {', '.join(names)}. Nothing is stored yet."]


def undone(what: str) -> str:
    """What an undo took back."""
    return f"Taken back: {what}. History keeps it."


def stands_again(what: str) -> str:
    """What stood before a correction that was taken back."""
    return f"This stands again: {what}."


def nothing_to_undo() -> list[str]:
    """Nothing on record to take back."""
    return ["There is nothing to take back."]


def corrected(before: str, after: str) -> str:
    """A correction."""
    return f"Corrected: {after} (was {before})."


def edit_not_understood() -> list[str]:
    """An edited message that no longer reads as anything; what it said before stays."""
    return [
        "I cannot read your edited message, so what it said before still counts.",
        "Send undo to take it back.",
    ]


def moved(tank: str, what: str) -> str:
    """A correction of the tank."""
    return f"Moved to {tank}: {what}."


def left_out() -> list[str]:
    """The keeper let a doubtful part go."""
    return ["Left out."]


def type_again() -> list[str]:
    """The keeper wants to type a doubtful part anew."""
    return ["Go ahead, send it again."]
