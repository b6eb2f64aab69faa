"""The parts of a clause: names, quantities, words that we do not know, and words that bear on them.

clause = { name | quantity | word }
"""

from __future__ import annotations

from dataclasses import dataclass, field

from core.message import doubts, glued, prices, quantities
from core.message.candidates import Candidate
from core.message.kinds import is_kind
from core.message.quantities import Quantity
from core.message.tokens import Token
from core.message.word_classes import is_small


class Item:
    """A part of a clause: kind N (name), V (quantity) or U (unknown word)."""

    analyte = ""
    basis: str | None = None
    unit: str | None = None
    ambiguous = False
    bearing = False
    suffixed = False
    wished = False
    quantity: Quantity | None = None
    marks: tuple[str, ...] = ()

    def __init__(self, kind: str, start: int, end: int, text: str = "") -> None:
        self.kind = kind
        self.start = start
        self.end = end
        self.text = text


@dataclass(slots=True)
class Clause:
    """The items of one clause, and the words in it that bear on its numbers.

    `before` are marks that stand before the quantity at that index of `items`, kept on the item;
    `after` are marks behind the last quantity. `loose` are unknown words that bind to nothing.
    `begins` tells that a sentence ended before it.
    """

    items: list[Item] = field(default_factory=list)
    after: list[str] = field(default_factory=list)
    candidates: list[Candidate] = field(default_factory=list)
    trouble: list[tuple[int, int, str]] = field(default_factory=list)
    loose: list[Item] = field(default_factory=list)
    fill: bool = False
    home: bool = False
    other: bool = False
    questioned: bool = False
    bracketed: bool = False
    begins: bool = False


WISHES = frozenset({"wish", "if"})
"""Marks of what is not so, but wanted or supposed."""
_BEARING = WISHES | frozenset(
    {
        "between",
        "up",
        "down",
        "was",
        "formerly",
        "from",
        "not",
        "rose_to",
        "fell_to",
        "to",
        "plus",
        "as",
        "and",
    }
)


_LETTERS = frozenset({"c", "f"})
"""Units of one letter, which name the number before them and no other."""
_BASED = frozenset({"nitrate", "nitrite", "phosphate", "ammonia"})


_ABSENT = frozenset({"ammonia", "nitrite", "nitrate", "phosphate", "copper", "chlorine"})


def _none_of(tokens: list[Token], index: int) -> bool:
    """A name after "no", and nothing behind it: `no nitrite, no ammonia`."""
    if index + 1 >= len(tokens) or tokens[index + 1].value not in _ABSENT:
        return False
    return ends_there(tokens, index + 1)


_WHERE = frozenset({"in", "home", "water"})
_STILL = frozenset({"yet", "at all", "anymore", "today", "left"})
_CLOSES = frozenset({",", ";", ".", "!", ")"})


def ends_there(tokens: list[Token], name: int) -> bool:
    """Whether nothing but where and when it is so stands behind a name: `no ammonia in it`.

    `no copper in it` may be of what went in, so there nothing at all may.
    """
    place = name + 1
    while place < len(tokens) and tokens[place].text not in _CLOSES:
        token = tokens[place]
        if token.value == "and" or token.kind == "nl":
            return True
        if tokens[name].value in {"copper", "chlorine"}:
            return False
        small = token.kind == "fill" and (is_small(token.text) or token.text in _STILL)
        if not small and token.kind not in {"tank", "time"} and token.value not in _WHERE:
            return False
        place += 1
    return tokens[place - 1].value != "in"  # no copper went in


def _absent(tokens: list[Token], index: int, clause: Clause) -> int:
    after = gather(tokens, index + 1, clause)
    quantity = Quantity(index, tokens[index].start)
    quantity.qualifier, quantity.end = "<", tokens[index + 1].end
    item = Item("V", quantity.start, quantity.end)
    item.quantity = quantity
    clause.items.append(item)
    return after


def _or_so(tokens: list[Token], index: int) -> bool:
    """Whether an "or" stands before no number: `ph 7 or so`."""
    ahead = tokens[index + 1] if index + 1 < len(tokens) else tokens[index]
    return tokens[index].value == "or" and not quantities.is_number(ahead)


def _letter_before(tokens: list[Token], index: int) -> bool:
    following = tokens[index + 1] if index + 1 < len(tokens) else tokens[index]
    return tokens[index].text in _LETTERS and quantities.is_number(following)


def _suffixed(tokens: list[Token], index: int) -> bool:
    """Whether letters hang on a name by a hyphen, where its basis would stand (`no3-m`)."""
    name = tokens[index]
    behind = index + 1 if name.text[-1] == "-" else index + 2  # a dash may be the ion's charge
    if behind >= len(tokens) or (behind > index + 1 and tokens[index + 1].text != "-"):
        return False
    dash, letters = tokens[behind - 1 : behind + 1]
    close = dash.end == letters.start and (dash is name or name.end == dash.start)
    short = letters.text.isalpha() and len(letters.text) < 4 and letters.kind != "analyte"
    return close and short and str(name.value) in _BASED


_SYMBOLS = frozenset({"less", "more", "approx", "plusminus"})
"""Signs that belong to a number; one that stands alone makes the next number doubtful."""


_PLAIN_COMMANDS = frozenset({"its", "correct", "more", "yes", "done", "why", "later"})


def gather(tokens: list[Token], index: int, clause: Clause) -> int:
    """Take what begins at `index` into the clause; the index after it."""
    token = tokens[index]
    kind = token.kind
    if kind == "analyte":
        if clause.after and not clause.items and tokens[index - 1].text == "up to":
            clause.after[-1] = "to"  # up to kh 6; it is kh that went up to 6
        item = Item("N", token.start, token.end, token.text)
        analyte, _, basis = str(token.value).partition("@")
        item.analyte = analyte
        item.basis = basis or None
        item.suffixed = _suffixed(tokens, index)
        item.wished = bool(clause.after) and not WISHES.isdisjoint(clause.after)
        clause.items.append(item)
        return index + 1
    if (token.value == "money" or kind == "number") and (price := prices.costs(tokens, index)):
        first, last = tokens[index], tokens[price - 1]
        text = f"{first.text} {last.text}"
        if clause.items and clause.items[-1].kind == "N":
            clause.items.pop()  # the thing that it is the price of
        clause.items.append(Item("U", first.start, last.end, text))
        return price
    if kind != "word" and kind != "fill":
        quantity = quantities.read(tokens, index)
        if quantity is not None:
            return _quantity(tokens, index, quantity, clause)
    if kind == "unit" and "@" in str(token.value) and not _letter_before(tokens, index):
        item = Item("N", token.start, token.end, token.text)
        item.unit, _, item.analyte = str(token.value).partition("@")
        clause.items.append(item)
        return index + 1
    if kind == "mark" and token.value == "half":
        item = Item("U", token.start, token.end, token.text)
        item.bearing = True  # half of what: a number may have lost it
        clause.items.append(item)
        return index + 1
    if token.value == "likes" and clause.items and is_kind(clause.items[-1].text):
        clause.after.append("wish")  # tetras like ph 6: what is good for them
    elif kind == "mark" and token.value != "likes" and not _or_so(tokens, index):
        if token.text == "=" and clause.items and clause.items[-1].kind == "V":
            clause.after.append("equals")
        symbol = not token.text[0].isalpha() and token.value in _SYMBOLS
        _mark("between" if symbol else str(token.value), clause)
        if token.value == "or" or token.text in {"ro", "od"}:
            clause.after.append("joint")  # a slip away from "to" and from the Polish "do"
    elif kind == "command" and token.value == "was":
        _mark("was", clause)  # kh 4, das war gestern 6
    elif kind == "command" and token.value in _REGRETS and _regretted(tokens, index, clause):
        clause.fill = True
        clause.after.append("instead")
    elif kind == "fill" or token.value == "reach" or _is_plain_command(token):
        clause.fill = True
        if token.value == "kit":
            clause.after.append("kit")
    elif kind == "command" and token.value == "no":
        if _none_of(tokens, index):
            return _absent(tokens, index, clause)
        clause.fill = True
        clause.after += ["not", "joint"]
    elif kind != "p":
        item = Item("U", token.start, token.end, token.text)
        item.ambiguous = kind == "several"
        before = tokens[index - 1] if index else None
        slash = before is not None and before.text == "/" and before.end == token.start
        item.bearing = kind == "unit" or slash or _has_digit(token.text)
        clause.items.append(item)
    elif token.text == "?":
        clause.questioned = True
    elif token.text in glued.ODD or within_word(tokens, index):
        clause.items.append(Item("U", token.start, token.end, token.text))
    return index + 1


_REGRETS = frozenset({"correct", "wait", "make"})


def _regretted(tokens: list[Token], index: int, clause: Clause) -> bool:
    """Whether what was told before is put right behind this word: `kh 5 sorry 6`, `oops gh 5`."""
    place = index + 1
    while place < len(tokens) and tokens[place].text == ",":
        place += 1
    if place == len(tokens) or (clause.items and clause.items[-1].kind != "V"):
        return False
    if tokens[place].kind == "analyte":
        return tokens[index].value == "correct"
    behind = tokens[place + 1] if place + 1 < len(tokens) else None
    ends = behind is None or behind.kind in {"p", "nl", "unit", "analyte"}
    return quantities.is_number(tokens[place]) and ends  # no 2 days


def _is_plain_command(token: Token) -> bool:
    return token.kind == "command" and token.value in _PLAIN_COMMANDS


def _has_digit(text: str) -> bool:
    # Most words are letters only, which one call tells.
    return not text.isalpha() and any(map(str.isdigit, text))


def within_word(tokens: list[Token], index: int) -> bool:
    """A slash that touches letters on both sides, as in a unit that we do not know."""
    if tokens[index].text != "/" or not 0 < index < len(tokens) - 1:
        return False
    before, after = tokens[index - 1], tokens[index + 1]
    touching = before.end == tokens[index].start and after.start == tokens[index].end
    letters = before.text[-1:].isalpha() and after.text[:1].isalpha()
    return touching and letters and before.kind != "analyte" and after.kind != "analyte"


def _mark(mark: str, clause: Clause) -> None:
    if mark in {"fish", "water", "got", "money"}:
        clause.fill = True
        if mark == "got":
            clause.after.append(mark)
    elif mark == "link" and "kit" in clause.after:
        clause.after.remove("kit")  # it tells what the kit says
    elif mark == "home":
        clause.home = True
    elif mark == "other":
        clause.other = True
        clause.after.append(mark)
    elif mark in _BEARING:
        clause.after.append(mark)


def _quantity(tokens: list[Token], index: int, quantity: Quantity, clause: Clause) -> int:
    """A quantity as an item; a sign that touches the name before it is a mere dash."""
    before = tokens[index - 1] if index else None
    if quantity.sign == "-" and before is not None and before.end == quantity.start:
        if not quantities.is_number(before):
            quantity.sign = ""
        if before.value == "redox":
            quantity.problem = doubts.NEGATIVE  # a dash or a minus
    item = Item("V", quantity.start, quantity.end)
    item.quantity = quantity
    if clause.after:
        if "kit" in clause.after and _paid(tokens[quantity.first], quantity, clause):
            quantity.problem = quantity.problem or doubts.PRICE
        item.marks = tuple(clause.after)
        clause.after.clear()
    clause.items.append(item)
    after, item.end = glued.run_on(tokens, quantity)
    return after


def _paid(number: Token, quantity: Quantity, clause: Clause) -> bool:
    """Whether a number behind a kit may be what it cost."""
    named = [item.analyte for item in clause.items if item.kind == "N"]
    if not named or quantity.unit is not None or number.kind != "number":
        return False
    return prices.may_be_paid(number, named[-1], bought="got" in clause.after)
