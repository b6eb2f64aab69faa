"""Names that a blank or another language tears: `no 3 20`, `no3 ca 10`.

A formula typed with a blank is asked about as a misspelt name is, since `no` and a number are also
words of their own. `ca` between a name that waits for its number and a small number is "circa".
"""

from __future__ import annotations

from core.message.lexicon import lexicon
from core.message.numbers import Number
from core.message.tokens import Token

_LETTERS = frozenset({"no", "nh", "po", "so", "co"})
_SEEN = _LETTERS | {"ca"}
_DIGITS = frozenset({"2", "3", "4"})
_FEW = 100.0
"""Up to here a number behind `ca` is no calcium, where another name waits for it."""


def mend(tokens: list[Token]) -> list[Token]:
    """The tokens with torn formulas as one unknown word each, and "ca" as what it means."""
    if _SEEN.isdisjoint([token.text for token in tokens]):
        return tokens
    out: list[Token] = []
    index = 0
    while index < len(tokens):
        token = tokens[index]
        if token.text in _LETTERS and _torn(tokens, index):
            digit = tokens[index + 1]
            token = Token("word", None, token.text + digit.text, token.start, digit.end)
            index += 1
        elif token.text == "ca" and token.kind == "analyte" and _about(tokens, index):
            token = Token("mark", "approx", token.text, token.start, token.end)
        out.append(token)
        index += 1
    return out


def _torn(tokens: list[Token], index: int) -> bool:
    """Whether letters, a blank and a digit are a formula with its number behind (`no 3 20`)."""
    if index + 2 >= len(tokens) or tokens[index + 1].text not in _DIGITS:
        return False
    letters, digit, number = tokens[index : index + 3]
    if digit.start != letters.end + 1 or digit.end == number.start:
        return False
    known = lexicon().words.get(letters.text + digit.text, ("", ""))
    behind = tokens[index + 3] if index + 3 < len(tokens) else None
    other = behind is not None and (behind.value == "%" or behind.kind in {"time", "word"})
    return known[0] == "analyte" and number.kind == "number" and not other


def _about(tokens: list[Token], index: int) -> bool:
    """Whether the name before waits for the number behind."""
    if not index or index + 1 >= len(tokens):
        return False
    before, number = tokens[index - 1], tokens[index + 1].value
    waits = before.kind == "analyte" or (
        before.value == "link" and index > 1 and tokens[index - 2].kind == "analyte"
    )
    if not waits or not isinstance(number, Number) or number.value is None:
        return False
    return number.value <= _FEW
