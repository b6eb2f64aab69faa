"""Two readings of one day by its parts: `morning ph 7 evening ph 7.4`.

A part of the day alone is no time in most talk (`morning, ph 7`); where two different parts stand
beside two numbers of one thing, each tells when its own was measured today.
"""

from __future__ import annotations

from core.message.clockwords import part_of_day
from core.message.tokens import Token

_OF_TODAY = frozenset({"morning", "afternoon", "evening"})


def timed(tokens: list[Token]) -> list[Token] | None:
    """The tokens with two or more parts of the day as times of today; None where they are not."""
    out: list[Token] = []
    found: set[str] = set()
    place = 0
    while place < len(tokens):
        part, used = ("", 0)
        if tokens[place].kind != "time":
            part, used = part_of_day(tokens, place, of_day=True)
        if not used:
            out.append(tokens[place])
            place += 1
            continue
        if part not in _OF_TODAY or part in found:
            return None
        found.add(part)
        first, last = tokens[place], tokens[place + used - 1]
        out.append(Token("time", part, first.text, first.start, last.end))
        place += used
    return out if len(found) > 1 else None
