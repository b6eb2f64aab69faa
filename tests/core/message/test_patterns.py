"""No regular expression of the reader can take more than a few looks at one character.

Time beyond the length of a text comes from two shapes: a repetition without end inside another
(``(a+)+``), and one that a search begins with and something must follow (``\\s+to``), which is
tried anew from each of its characters. Both are looked for in the parsed form of every expression
that a module of `core.message` holds. What takes at most a dozen characters is no danger.
"""

from __future__ import annotations

import importlib
import pkgutil
import re
from collections.abc import Iterator
from re import _constants, _parser  # type: ignore[attr-defined]

import pytest

import core.message

REPEATS = {_constants.MAX_REPEAT, _constants.MIN_REPEAT}
"""A possessive repeat never goes back."""
AT_THE_BEGINNING = {"commands._SLASH"}
"""Only ever matched at one place, never searched for."""
FEW = 16


def expressions() -> Iterator[tuple[str, re.Pattern[str]]]:
    for module in pkgutil.iter_modules(core.message.__path__):
        if module.ispkg:
            continue
        held = importlib.import_module(f"core.message.{module.name}")
        for name, value in vars(held).items():
            if isinstance(value, re.Pattern):
                yield f"{module.name}.{name}", value


def parts(item: object) -> Iterator[_parser.SubPattern]:
    """The sequences directly inside one element of a parsed expression."""
    if isinstance(item, _parser.SubPattern):
        yield item
    elif isinstance(item, list | tuple):
        for each in item:
            yield from parts(each)


def endless(element: tuple[object, tuple[int, int, object]]) -> bool:
    return element[0] in REPEATS and element[1][1] > FEW


def nested(sequence: _parser.SubPattern, inside: bool = False) -> bool:
    for element in sequence:
        repeats = endless(element)
        if repeats and inside:
            return True
        if any(nested(part, inside or repeats) for part in parts(element[1])):
            return True
    return False


def led_by_a_repeat(sequence: _parser.SubPattern, followed: bool = False) -> bool:
    """Whether a way through begins with an endless repeat behind which something must follow."""
    first, *rest = sequence or [(None, ())]
    followed = followed or any(not (e[0] in REPEATS and e[1][0] == 0) for e in rest)
    if first[0] in REPEATS and endless(first):
        return followed
    if first[0] in {_constants.BRANCH, _constants.SUBPATTERN}:
        return any(led_by_a_repeat(part, followed) for part in parts(first[1]))
    return False


FOUND = dict(expressions())


@pytest.mark.parametrize("name", FOUND)
def test_no_expression_goes_back_without_end(name: str) -> None:
    parsed = _parser.parse(FOUND[name].pattern, FOUND[name].flags)
    assert not nested(parsed)
    assert name in AT_THE_BEGINNING or not led_by_a_repeat(parsed)


@pytest.mark.parametrize(
    ("bad", "shape"),
    [
        (r"(?:a+)+b", nested),
        (r"x(?:a|b*)*", nested),
        (r"(?:[a-z]{2,}\s?)+!", nested),
        (r"\s+to", led_by_a_repeat),
        (r"a|\d+x|b", led_by_a_repeat),
        (r"(?:\d+|a)x", led_by_a_repeat),
    ],
)
def test_the_check_finds_what_it_looks_for(bad: str, shape: object) -> None:
    assert callable(shape)
    assert shape(_parser.parse(bad))


def test_expressions_are_found() -> None:
    assert "tokens._TOKEN" in FOUND
    assert len(FOUND) > 20
