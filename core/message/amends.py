"""What puts right the message before: another number, another time, another name.

amend = "sorry" number [ unit ]         no, 7.4 · make that 30 % · wait 5 · 7.4 i mean
      | number "not" number             7.4 not 7.2 · not 7.2 but 7.4
      | "sorry" time                    no, that was yesterday
      | "sorry" name [ "not" name ]     i meant gh
      | name "not" name                 gh not kh · not kh, gh

It is read only right after what it may be about; alone none of it says what is meant.
"""

from __future__ import annotations

from typing import Final

from core.message import quantities
from core.message.commands import command_of, is_not, only_time
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.numbers import Number
from core.message.tokens import Token, cut

LONGEST: Final = 70
"""A longer text says more than what was wrong. [characters]"""


def corrected(text: str) -> str | None:
    """The number, with its unit if it has one, that puts one right that was told.

    Examples
    --------
    >>> corrected("no, 7.4"), corrected("sorry 30 %"), corrected("7.4")
    ('7.4', '30 %', None)
    >>> corrected("no that was 2.5"), corrected("nein, das war 2,5"), corrected("no, 4 nov")
    ('2.5', '2,5', None)
    """
    said = put_right(text)
    found = quantities.read(said, 0) if said else None
    if found is None or found.value is None or found.last != len(said) or found.problem:
        return None
    return text[said[0].start : said[-1].end]


def exchanged(text: str) -> tuple[str, float] | None:
    """The number that was meant, as typed, and the one that was told for it.

    Examples
    --------
    >>> exchanged("7.4 not 7.2"), exchanged("nicht 7,2, sondern 7,4"), exchanged("7.4")
    (('7.4', 7.2), ('7,4', 7.2), None)
    """
    said = _weighty(_tokens(text))
    while said and _leads(said[0]) and not is_not(said[0]):
        said.pop(0)
    shape = "".join("n" if t.kind == "number" else "-" if is_not(t) else "?" for t in said)
    if "?" in text or shape not in {"n-n", "-nn"}:
        return None
    meant, told = (said[0], said[2]) if shape == "n-n" else (said[2], said[1])
    number = told.value
    sound = isinstance(number, Number) and number.problem is None and number.grouped is None
    if not isinstance(number, Number) or not sound or number.value is None:
        return None
    return meant.text, number.value


def number_anew(text: str) -> str | None:
    """The number that was meant, as typed, where nothing else is put right.

    Examples
    --------
    >>> number_anew("no, 7.4"), number_anew("7.4 not 7.2"), number_anew("no, yesterday")
    ('7.4', '7.4', None)
    """
    other = exchanged(text)
    return corrected(text) if other is None else other[0]


def retimed(text: str) -> bool:
    """Whether nothing but a time puts one right that was told, or was taken to be now.

    Examples
    --------
    >>> retimed("no, 4 nov"), retimed("sorry, that was yesterday at 9"), retimed("no, 7.4")
    (True, True, False)
    """
    return only_time(put_right(text))


def put_right(text: str) -> list[Token]:
    """What follows `no`, `sorry that was` and the like, or stands before `i mean`; else nothing."""
    tokens = _tokens(text)
    if tokens and tokens[0].kind == "number" and command_of(tokens[-1]) == "correct":
        return _weighty(tokens[:-1])  # 7.4 i mean
    if not tokens or not _regrets(tokens[0]):
        return []
    said = _weighty(tokens[1:])
    while said and _leads(said[0]):
        said.pop(0)
    return said


def renamed(text: str) -> tuple[str, str | None] | None:
    """The analyte that was meant, and the one that was told for it where that is said.

    Examples
    --------
    >>> renamed("i meant gh"), renamed("sorry gh not kh"), renamed("nicht kh, gh")
    (('gh', None), ('gh', 'kh'), ('gh', 'kh'))
    >>> renamed("no gh"), renamed("gh"), renamed("gh not kh 5")
    (None, None, None)
    """
    tokens = _tokens(text)
    said = _weighty(tokens)
    regrets = len(said) > 1 and _leads(said[0]) and (command_of(said[0]) != "no" or "," in text)
    while len(said) > 1 and _leads(said[0]) and not (is_not(said[0]) and _names(said[1:]) > 1):
        said.pop(0)
    if "?" in text or not said:
        return None
    names = [str(token.value).partition("@")[0] for token in said if token.kind == "analyte"]
    shape = "".join("n" if t.kind == "analyte" else "-" if is_not(t) else "?" for t in said)
    if shape == "n":
        return (names[0], None) if regrets else None
    if shape == "n-n" and names[0] != names[1]:
        return names[0], names[1]
    return (names[1], names[0]) if shape == "-nn" and names[0] != names[1] else None


def substance_meant(text: str) -> str | None:
    """The substance that was meant, where nothing else is said.

    Examples
    --------
    >>> substance_meant("i meant baking soda"), substance_meant("baking soda, i mean")
    ('sodium bicarbonate', 'sodium bicarbonate')
    >>> substance_meant("baking soda"), substance_meant("no baking soda")
    (None, None)
    """
    said = _weighty(_tokens(text))
    regrets = [t for t in said if command_of(t) == "correct" or (_regrets(t) and "," in text)]
    things = [token for token in said if token.kind == "substance"]
    if "?" in text or not regrets or len(things) != 1 or len(said) != len(regrets) + 1:
        return None
    return str(things[0].value)


def _names(tokens: list[Token]) -> int:
    return sum(token.kind == "analyte" for token in tokens)


def _tokens(text: str) -> list[Token]:
    return cut(fold(text), lexicon(), text) if len(text) <= LONGEST else []


def _weighty(tokens: list[Token]) -> list[Token]:
    return [
        token
        for token in tokens
        if token.text not in ".,;:!" and token.kind != "fill" and token.text not in _BUT
    ]


def _regrets(token: Token) -> bool:
    return command_of(token) in _WRONG or token.text == "no"  # Portuguese for "in the" as well


def _leads(token: Token) -> bool:
    return token.value in _IT_WAS or command_of(token) in _IT_WAS or _regrets(token)


_WRONG: Final = frozenset({"no", "correct", "wait", "make"})
_IT_WAS: Final = frozenset({"was", "its", "link"})
_BUT: Final = frozenset({"sondern", "sino", "utan", "lecz", "bensi"})
"""Words for "but" behind what it is not."""
