"""What is asked of the amounts of the plan just given: in spoons, of a bag, of which water and day.

``whats that in tsp i dont have scales``, ``i have a 1kg bag is that enough``, ``is that per gallon
or all of it``, ``how much tomorrow then``, ``do i put it dry in``, ``how long before i test``; and
``nah leave it at 3``, which drops it. Beside `plan_talk` and `plan_words`: every word must be of a
class.
"""

from __future__ import annotations

from typing import Final, Literal, NamedTuple

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.plan_said import amounts_in
from core.message.tokens import cut
from core.message.word_classes import Said, said

FILE: Final = "plan_asked.txt"
LONGEST: Final = 90
"""A longer text says more. [characters]"""

Meaning = Literal["spoons", "enough", "scope", "go_on", "dry", "how", "when_next", "drop"]
"""By spoon or cup; whether what is at hand is enough; whether so much is for a litre or all of the
water, a day or in all; how much is next; whether it goes in dry, or how; when to test; to leave
it."""

_WITHIN: Final[dict[Meaning, frozenset[str]]] = {
    "spoons": frozenset(
        {"no_scale", "spoon", "heaped", "query", "much", "or", "ask", "enough", "put"}
    ),
    "enough": frozenset({"enough", "bag", "weight", "number", "ask", "put", "or"}),
    "scope": frozenset({"per", "tank", "all", "daily", "total", "or", "ask", "number"}),
    "dry": frozenset({"dry", "water", "dissolve", "put", "or", "ask"}),
    "how": frozenset({"dissolve", "water", "put", "or", "ask"}),
    "when_next": frozenset({"long", "before", "test", "ask", "later", "put", "value"}),
    "go_on": frozenset({"much", "later", "put", "ask"}),
    "drop": frozenset({"leave", "as_is", "no", "number"}),
}
"""All classes that a text with a meaning may have."""


_AMOUNT: Final = frozenset({"query", "much"})


_POINTING: Final = frozenset(
    {"that", "thats", "that's", "those", "these", "this", "it", "das", "c'est", "ca", "dat", "det"}
)
"""Words for what was just told: is that level teaspoons."""


class Asked(NamedTuple):
    """What is asked; what is at hand [g]; the value to leave the water at, and if with a no."""

    meaning: Meaning
    grams: float | None = None
    value: float | None = None
    refuses: bool = False


def plan_asked(text: str) -> Asked | None:
    """What a text asks of a plan's amounts; None where it asks nothing of them, or says more.

    Examples
    --------
    >>> plan_asked("whats that in tsp i dont have scales").meaning
    'spoons'
    >>> [plan_asked(each).grams for each in ("i have a 1kg bag is that enough", "is 5 g enough")]
    [1000.0, 5.0]
    >>> [plan_asked(each).meaning for each in ("is that per gallon or all of it", "how much now")]
    ['scope', 'go_on']
    >>> plan_asked("do i put it dry in").meaning, plan_asked("how long before i test").meaning
    ('dry', 'when_next')
    >>> plan_asked("nah leave it at 3").value, plan_asked("can i leave it at 3?")
    (3.0, None)
    >>> plan_asked("i put it in dry"), plan_asked("how much did i put in"), plan_asked("a 1kg bag")
    (None, None, None)
    """
    if len(text) > LONGEST:
        return None
    told = said(FILE, _with_it(text), small=True)
    if told is None or "past" in told.classes:
        return None
    classes = frozenset(told.classes)
    pointing = not _POINTING.isdisjoint(fold(text).split())
    if "spoon" in classes and not pointing and amounts_in(text).spoons is not None:
        return None  # a heaped tablespoon: so much is judged by what it may weigh
    asks = "?" in text or "ask" in classes
    for meaning, within in _WITHIN.items():
        if classes <= within and _is(meaning, told, asks=asks):
            numbers = [each.value for each in told.numbers]
            if meaning == "enough":
                return Asked(meaning, grams=amounts_in(text).grams)
            if meaning == "drop":
                return Asked(meaning, value=next(iter(numbers), None), refuses="no" in classes)
            return Asked(meaning)
    return None


def _is(meaning: Meaning, told: Said, *, asks: bool) -> bool:
    """Whether the classes of a text, all of which the meaning may have, make it."""
    classes, units = set(told.classes), [each.unit for each in told.numbers]
    if meaning == "spoons":
        if classes & {"no_scale"} or classes >= {"heaped", "or"}:
            return "put" not in classes
        return "spoon" in classes and (
            "ask" in classes or ("put" not in classes and (asks or bool(classes & _AMOUNT)))
        )
    if meaning == "enough":
        at_hand = bool(classes & {"bag", "weight"}) or units == ["mass"]
        does = "bag" in classes and told.classes[-1] == "put"  # will a box do
        said_so = "enough" in classes or (does and asks)
        return at_hand and said_so and units in ([], ["mass"])
    if meaning == "scope":
        one = classes & {"per", "tank", "daily", "total"}
        if units:  # is that for all 75 gallons
            return asks and units == ["volume"] and bool(classes & {"all", "tank"})
        return bool(one) and (asks or "or" in classes)
    if meaning == "dry":
        how = classes & {"put", "water", "dissolve"}
        return "dry" in classes and bool(how) and (asks or "or" in classes)
    if meaning == "how":
        return asks and "dissolve" in classes
    if meaning == "when_next":
        return classes >= {"long", "test"}
    if meaning == "go_on":
        return "much" in classes and bool(classes & {"put", "later"})
    left = "leave" in classes and (bool(classes & {"as_is", "no"}) or bool(units))
    return left and not asks and units in ([], [None], ["degree"])


def _with_it(text: str) -> str:
    """The text with every substance's name as a pronoun."""
    plain = fold(text)
    for token in reversed([t for t in cut(plain, lexicon(), text) if t.kind == "substance"]):
        plain = f"{plain[: token.start]}it{plain[token.end :]}"
    return plain
