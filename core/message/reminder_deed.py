"""What is told or asked of the deed that a reminder waits for: `tom did it`, `did 10`."""

from __future__ import annotations

import re
from collections.abc import Collection
from typing import Final

from core.message.fold import fold
from core.message.reminder_when import EDGES, pattern, without_verb
from core.message.reminder_when import LONGEST as LONGEST_TALK
from core.schedule import names_task, split_time

LONGEST: Final = 40
"""A longer text says more. [characters]"""

MOST: Final = 2
"""Words of a name."""

_EDGES: Final = " \t.!,;:"
_AMOUNT: Final = re.compile(r"(?P<number>\d{1,3}(?:[.,]\d)?) ?(?P<unit>%|percent|l|lit\w+)?")
_OTHER_COUNT: Final = re.compile(
    r"(?:no )?not (?:every )?(?P<was>\d{1,3}) (?P<unit>days?|weeks?|months?|hours?)[, ]+"
    r"(?:but )?(?:every )?(?P<count>\d{1,3})(?: (?P<again>\w+))?"
)
_LESS: Final = re.compile(r"(?P<number>\d{1,4}(?:[.,]\d)?) ?(?P<unit>%|l\b|lit\w+)?$")
_ASKS: Final = re.compile(r"(?:has |have )?did (?P<who>[^\W\d_]{2,}) (?P<deed>[^\W\d_]+)\b")


def doing(text: str) -> str | None:
    """Who is told to be doing it at the moment, "" where only a pronoun is; None where nobody is.

    Examples
    --------
    >>> doing("my daughter is doing it now, so skip that"), doing("she is doing it")
    ('my daughter', '')
    >>> doing("what is doing it now"), doing("is he doing it") is None
    (None, True)
    """
    plain = _plain(text, LONGEST_TALK)
    said = " ".join(text.strip(_EDGES).split())
    found = None if plain is None or "?" in text else _DOING.search(plain)
    if plain is None or found is None or len(plain) != len(said):
        return None
    if _LET_GO.fullmatch(plain[found.end() :].strip(_EDGES)) is None:
        return None
    return _who(said[: found.start()].strip(_EDGES))


_DOING: Final = re.compile(
    r"(?:'s| is|s| will be| are|'re)? (?:doing|adding|dosing|handling|taking care of|on)"
    r" (?:it|that|this|the dose)(?: right now| now| today| tonight| already| instead)?(?!\w)"
)


def done_amount(text: str) -> tuple[float, str] | None:
    """How much was done, and its unit (%, l or ""), where nothing else is told; else None.

    Examples
    --------
    >>> done_amount("did 10"), done_amount("did 10 l"), done_amount("did the sponge")
    ((10.0, ''), (10.0, 'l'), None)
    """
    plain = _plain(text)
    found = None if plain is None else pattern("did").match(_unlit(plain))
    if plain is None or found is None:
        return None
    amount = _AMOUNT.fullmatch(_unlit(_unlit(plain)[found.end() :].strip(_EDGES)))
    if amount is None:
        return None
    unit = amount["unit"] or ""
    shown = "%" if unit in {"%", "percent"} else unit[:1]
    return float(amount["number"].replace(",", ".")), shown


def done_number(text: str) -> str | None:
    """The bare number behind a word for done, as typed; None where anything else is told.

    Examples
    --------
    >>> done_number("done 25.5"), done_number("erledigt, 7,2"), done_number("done, its 25")
    ('25.5', '7,2', '25')
    >>> done_number("done"), done_number("25.5"), done_number("done 30%")
    (None, None, None)
    """
    plain = _plain(text)
    rest = None if plain is None or "?" in text else without_verb("did", plain)
    found = None if rest is None else _READ.fullmatch(rest)
    return None if found is None else found["number"]


_READ: Final = re.compile(
    r"(?:(?:its|it's|it is|it was|is|was|at|and|reads|shows|es|est|ist|son|e) ){0,2}"
    r"(?P<number>\d{1,4}(?:[.,]\d{1,3})?)"
)


def other_count(text: str) -> tuple[int, str] | None:
    """How many it was, and the words of a rhythm with so many in their place; None where none is.

    Examples
    --------
    >>> other_count("not 3 days, 4"), other_count("not friday, saturday")
    ((3, 'every 4 days'), None)
    """
    plain = _plain(text)
    found = None if plain is None else _OTHER_COUNT.fullmatch(plain)
    if found is None or (found["again"] and found["again"][:3] != found["unit"][:3]):
        return None
    return int(found["was"]), f"every {found['count']} {found['unit']}"


def other_amount(text: str, task: str) -> str | None:
    """A task with another amount, told as the right one: `not 5, 2.5 ml`; None where none is.

    The amount that is called wrong is the task's, and so is a unit that is told.

    Examples
    --------
    >>> other_amount("not 5, 2.5 ml sorry", "dose 5 ml"), other_amount("no 3 g", "dose 5 ml")
    ('dose 2.5 ml', None)
    >>> other_amount("sorry 2.5 ml", "dose 5 ml"), other_amount("not 4, 2 ml", "dose 5 ml")
    ('dose 2.5 ml', None)
    >>> other_amount("2.5 ml", "dose 5 ml") is None, other_amount("sorry 30", "wc 25%") is None
    (True, True)
    """
    plain = _plain(text)
    plain = None if plain is None else pattern("sorry").sub(" ", f" {plain} ").strip(_EDGES)
    amounts = list(_OF_TASK.finditer(task))
    if not plain or len(amounts) != 1:
        return None
    (of_task,) = amounts
    found = _NOT_BUT.fullmatch(plain) or _BUT_NOT.fullmatch(plain)
    if found is None and (plain != _plain(text) or plain.startswith(("make it ", "make that "))):
        found = _ONLY_THAT.fullmatch(_unlit(plain))
    front = pattern("corrects").match(plain)
    if found is None and front is not None:
        found = _ONLY_THAT.fullmatch(plain[front.end() :].strip(_EDGES))
    if found is None:
        return None
    told = found.groupdict()
    units = {_unit(each) for each in (told["unit"], told.get("of")) if each}
    was = told.get("was")
    number = told["number"]
    if units - {_unit(of_task["unit"])} or (was and _number(was) != _number(of_task["number"])):
        return None
    if _number(number) == _number(of_task["number"]):
        return None
    return f"{task[: of_task.start('number')]}{number}{task[of_task.end('number') :]}"


def put_number(text: str) -> str | None:
    """The number of a text that puts another one in place of what was said: `make it 30`.

    Examples
    --------
    >>> put_number("make it 30"), put_number("no, 30"), put_number("make it 30%") is None
    ('30', '30', True)
    """
    plain = _plain(text)
    found = None if plain is None else _PUT.fullmatch(_unlit(plain))
    front = None if plain is None else pattern("corrects").match(plain)
    if found is None and plain is not None and front is not None:
        found = _PUT.fullmatch(f"make it {plain[front.end() :].strip(_EDGES)}")
    return None if found is None else found["number"]


def with_number(task: str, number: str) -> tuple[str, str] | None:
    """A task with another number for its only amount, and that amount; None where it has none.

    Examples
    --------
    >>> with_number("change 20%", "30"), with_number("feed", "30")
    (('change 30%', '30%'), None)
    """
    amounts = list(_OF_TASK.finditer(task))
    if len(amounts) != 1:
        return None
    (of_task,) = amounts
    after = f"{number}{task[of_task.end('number') : of_task.end()]}"
    return f"{task[: of_task.start()]}{after}{task[of_task.end() :]}", after


_UNITS: Final = (
    r"mls?|mg|g|gr|grams?|gramm|gramos|drops?|tropfen|tsps?|teaspoons?|tbsps?|tablespoons?|%|percent"
    r"|l|litres?|liters?|caps?|pumps?"
)
_SAME: Final = (
    ("ml", "ml"), ("mg", "mg"), ("g", "g"), ("l", "l"), ("%", "%"), ("perc", "%"), ("drop", "drop"),
    ("tropf", "drop"), ("ts", "tsp"), ("tea", "tsp"), ("tb", "tbsp"), ("table", "tbsp"),
    ("cap", "cap"), ("pump", "pump"),
)  # fmt: skip
_COUNT: Final = r"\d{1,4}(?:[.,]\d{1,2})?"
_OF_TASK: Final = re.compile(
    rf"(?<![\d.,:])(?P<number>{_COUNT}) ?(?P<unit>{_UNITS})(?!\w)", re.IGNORECASE
)
_NOT_BUT: Final = re.compile(
    rf"(?:no,? )?(?:not|nicht|pas|no|não|non|niet|nie|inte) (?P<was>{_COUNT}) ?(?P<of>{_UNITS})?"
    rf"(?:,| but| sondern|)(?: its| it's| make it)? (?P<number>{_COUNT}) ?(?P<unit>{_UNITS})?"
)
_BUT_NOT: Final = re.compile(
    rf"(?:(?:no,? )?(?:its|it's|it is|make it|make that) )?"
    rf"(?P<number>{_COUNT}) ?(?P<unit>{_UNITS})?,?"
    rf" (?:not|nicht|pas|niet|nie|inte) (?P<was>{_COUNT}) ?(?P<of>{_UNITS})?"
)
_ONLY_THAT: Final = re.compile(
    rf"(?:i meant |meant |its |it's |make it |make that )?(?P<number>{_COUNT}) ?(?P<unit>{_UNITS})"
)

_PUT: Final = re.compile(
    rf"(?:make|set|put) (?:it|that|this) (?:to )?(?P<number>{_COUNT})(?: instead| then| please)?"
)


def _number(said: str) -> float:
    return float(said.replace(",", "."))


def _unit(said: str) -> str:
    plain = said.casefold()
    return next((unit for front, unit in _SAME if plain.startswith(front)), plain)


def doer(text: str) -> str | None:
    """Who did it, in the words told, "" where it is only a pronoun; None where nobody is told.

    Examples
    --------
    >>> doer("Tom did it"), doer("she already did it"), doer("who did it"), doer("did it")
    ('Tom', '', None, None)
    >>> doer("my wife did it, no need"), doer("tom did it badly")
    ('my wife', None)
    """
    plain = _plain(text, LONGEST_TALK)
    said = " ".join(text.strip(_EDGES).split())
    if plain is None or len(plain) != len(said):
        return None
    found = list(pattern("did_it").finditer(plain))
    if not found or _LET_GO.fullmatch(plain[found[-1].end() :].strip(_EDGES)) is None:
        return None
    front = said[: found[-1].start()].strip(_EDGES)
    return _who(front)


def _who(front: str) -> str | None:
    """The name of somebody, "" of a pronoun; None of any other words."""
    names = front.split()
    if len(names) == MOST and fold(names[0]) in _MY:
        names = names[1:]  # my daughter
    if not names or len(names) > MOST or not all(name.isalpha() for name in names):
        return None
    if any(pattern("no_doer").fullmatch(fold(name)) for name in names):
        return None
    return "" if pattern("pronoun").fullmatch(fold(front)) else front


_MY: Final = frozenset({"my", "our", "mein", "meine", "mon", "ma", "mi", "mia", "mijn", "min"})
_LET_GO: Final = re.compile(
    r"(?:(?:so|and|now|already|just now|this morning|today|earlier|for me|then|thanks|please|pls)"
    r"[ ,;.]*){0,4}(?:(?:so |and |then )?(?:you can )?"
    r"(?:skip (?:it|that|this|mine|me)|skip|no need|not needed|no reminder needed|forget it"
    r"|forget that|leave it|cancel it|cancel that|drop it|skip today|skip tonight|skip this one"
    r"|never ?mind|dont bother|don't bother"
    r"|no need to remind me|dont remind me|don't remind me))?"
)
"""Behind it: that nothing is to be done any more."""


def asks_of_another(text: str, known: Collection[str]) -> bool:
    """Whether it is asked if somebody did a task: `did tom feed`.

    Parameters
    ----------
    known : collection of str
        The words that are of tanks and tasks, and so no names of somebody; plain.

    Examples
    --------
    >>> asks_of_another("did tom feed", ()), asks_of_another("did weekly change", ())
    (True, False)
    >>> asks_of_another("did reef feed", ("reef",)), asks_of_another("did filter clean", ())
    (False, False)
    """
    plain = _plain(text)
    found = None if plain is None else _ASKS.match(plain)
    if found is None:
        return False
    who = found["who"]
    said = pattern("light").fullmatch(who) or who in known or names_task(who)
    return not said and split_time(who) is None and names_task(found["deed"])


def only(text: str) -> tuple[float, str] | None:
    """How much less was done, and its unit (%, l or ""): `done but only 10`; None where none is.

    Examples
    --------
    >>> only("done but only 10"), only("erledigt, aber nur 10%"), only("done 2")
    ((10.0, ''), (10.0, '%'), None)
    """
    plain = " ".join(fold(text).strip(EDGES).split())
    rest = None if len(text) > LONGEST_TALK else without_verb("did", plain)
    found = None if rest is None else _LESS.search(rest)
    if rest is None or found is None:
        return None
    left = pattern("light").sub(" ", rest[: found.start()])
    less = pattern("only").search(left)
    if less is None or pattern("only").sub(" ", left).strip(EDGES):
        return None
    unit = found["unit"] or ""
    return float(found["number"].replace(",", ".")), "l" if unit[:1] == "l" else unit


def _plain(text: str, longest: int = LONGEST) -> str | None:
    plain = " ".join(fold(text).strip(_EDGES + "?").split())
    return plain if plain and len(text) <= longest and "\n" not in text.strip() else None


def _unlit(plain: str) -> str:
    found = pattern("light").match(plain)
    return plain if found is None else plain[found.end() :].strip(_EDGES)
