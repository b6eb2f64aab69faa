"""The plainest messages read in one pass, since they are most of what is sent.

plain    = [ tank [ ":" ] ] [ time ] { name [ link ] quantity [ separator ] }

Nothing else may stand in it, and every value must be sound; anything else is left to
`core.message.statements`, which gives the same answer for what is read here (a test compares them
over the whole corpus).
"""

from __future__ import annotations

from core.analytes import ANALYTES
from core.message import naming, quantities, times
from core.message.candidates import Candidate
from core.message.hardness import FRENCH
from core.message.model import Context, Parsed, Value
from core.message.numbers import Number
from core.message.settling import bare, settle
from core.message.tokens import Token

_ODD_NAMES = frozenset({"k", "no2 -", "no3 -", "th", "tac"})
_SEPARATORS = frozenset({",", ";", "|", "\n"})
_TIMES = frozenset({"time", "iso", "clock", "dotted"})


def read(tokens: list[Token], source: str, context: Context) -> Parsed | None:
    """The readings of a plain message; None where it is not plain."""
    index = 0
    tank: str | None = None
    when = None
    count = len(tokens)
    first = tokens[0]
    if first.kind == "tank":
        tank = str(first.value)
        index = 2 if count > 1 and tokens[1].text == ":" else 1
    if index < count and tokens[index].kind in _TIMES:
        if first.kind == "time" and context.tanks and naming.poses(tokens, context):
            return None
        moment = times.find(tokens, index, context)
        if moment is None or moment.problem is not None:
            return None
        index, when = moment.end, moment.at
    values: list[Value] = []
    seen: set[str] = set()
    while index < count:
        token = tokens[index]
        if token.kind != "analyte" or token.text in _ODD_NAMES or index + 1 >= count:
            return None
        analyte, _, basis = str(token.value).partition("@")
        following = tokens[index + 1]
        place = index + 2 if following.kind == "mark" and following.value == "link" else index + 1
        if analyte in seen or analyte not in ANALYTES or place >= count:
            return None
        seen.add(analyte)
        number = tokens[place]
        if isinstance(number.value, Number) and not basis and (after := _next(tokens, place + 1)):
            value = bare(analyte, number.value, context)
            if value is not None:
                unit = ANALYTES[analyte].unit
                values.append(
                    Value(
                        analyte, value, None, None, "=", None, value, unit,
                        None, tank, None, token.start, number.end,
                    )
                )  # fmt: skip
                index = after
                continue
        if number.kind not in {"number", "mark"} or number.value == "under":
            return None  # "nitrate under 20" may be a wish
        quantity = quantities.read(tokens, place)
        if quantity is None or quantity.sign or quantity.arrow or quantity.problem is not None:
            return None
        index = _next(tokens, quantity.last)
        if not index:
            return None
        candidate = Candidate(
            analyte, basis or None, quantity, token.start, quantity.end, token.text
        )
        candidate.tank = tank
        settled = settle(candidate, context, source)
        if not isinstance(settled, Value) or settled.unit == FRENCH:
            return None
        values.append(settled)
    if not values:
        return None
    return Parsed("reading", tank, when, tuple(values))


def _next(tokens: list[Token], index: int) -> int:
    """The index of the name that follows a value, the end, or 0 where something else follows."""
    if index >= len(tokens):
        return index
    token = tokens[index]
    if token.kind == "analyte":
        return index
    if token.text in _SEPARATORS:
        index += 1
        if index >= len(tokens) or tokens[index].kind == "analyte":
            return index
    return 0
