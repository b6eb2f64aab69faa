"""One name told for several tanks: `ph: fern 7.2, quarry 8.1`, `fern ph 7.2 quarry 8.1`.

line = name [ "is" ] { tank number [ "," ] } | tank name number { [ "," ] tank number }

Two tanks at least, and nothing else in the line; then each number is given the name.
"""

from __future__ import annotations

from core.message import quantities
from core.message.tokens import Token

_SEPARATORS = frozenset({",", ";", "|", "/", "."})


def spread(tokens: list[Token]) -> list[Token]:
    """The tokens of a line with its one name before the number of each tank."""
    names = [token for token in tokens if token.kind == "analyte"]
    if len(names) != 1 or sum(token.kind == "tank" for token in tokens) < 2:
        return tokens
    out: list[Token] = []
    index = told = 0
    if tokens[0] is names[0]:
        index = _past_links(tokens, 1)
    while index < len(tokens):
        if tokens[index].kind != "tank":
            return tokens
        place = _past_links(tokens, index + 1)
        if place < len(tokens) and tokens[place] is names[0] and not told:
            place = _past_links(tokens, place + 1)
        quantity = quantities.read(tokens, place) if place < len(tokens) else None
        if quantity is None:
            return tokens
        start = tokens[place].start
        name = Token("analyte", names[0].value, names[0].text, start, start)
        out += [tokens[index], name, *tokens[place : quantity.last]]
        told += 1
        index = quantity.last
        while index < len(tokens) and (
            tokens[index].text in _SEPARATORS or tokens[index].value == "and"
        ):
            out.append(tokens[index])
            index += 1
    return out


def _past_links(tokens: list[Token], place: int) -> int:
    while place < len(tokens) and tokens[place].value == "link":
        place += 1
    return place
