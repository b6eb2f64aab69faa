"""A part of the day told beside a value: `ph 7.3 in the morning`, said in the evening.

timed = value part | name part number | part value

The value is of that part of today, or of now while it lasts; one that is still to come is asked
about. Two parts of one day are left to `core.message.halves`, and one alone
at the head of a message is a greeting (`morning, ph 7`).
"""

from __future__ import annotations

from datetime import UTC
from typing import Final

from core.message.clockwords import may_be_part, part_of_day
from core.message.model import Context
from core.message.token import Token, is_number

_LASTS: Final = {"morning": (4, 12), "afternoon": (12, 18), "evening": (17, 24)}
"""Local hours of each part; common practice, no source."""
_NIGHT: Final = (21, 6)
_USUAL: Final = {"morning": 8, "afternoon": 15, "evening": 20}
"""Local hour that a part told with its day stands for, as in `core.message.times`."""
_DEEDS: Final = frozenset({"event", "ask"})
_SAID_AS: Final = {"night": "last_night"}
_TIMES: Final = frozenset({"time", "iso", "clock", "dotted"})
_LINKS: Final = frozenset({"link", "was", "approx", "formerly"})
_PLANNED: Final = frozenset({"wish", "if", "may", "does", "whether", "changing", "adding", "got"})
_UNTOLD: Final = frozenset({"wish", "if", "may", "does", "whether"})


def timed(tokens: list[Token], context: Context) -> list[Token]:
    """The tokens with such parts as times, or as light words where they are now."""
    tokens = _of_now(tokens, context)
    places = [place for place, token in enumerate(tokens) if may_be_part(token.text)]
    parts = {part_of_day(tokens, place, of_day=True)[0] for place in places} - {""}
    if len(parts) != 1 or not any(token.kind in {"analyte", "unit"} for token in tokens):
        return tokens
    if any(token.kind == "ask" or token.value in _UNTOLD for token in tokens):
        return tokens
    hour = context.now.astimezone(context.zone or context.now.tzinfo or UTC).hour
    out = list(tokens)
    for place in reversed(places):
        part, used = part_of_day(tokens, place, of_day=_behind_value(tokens, place))
        if not used or not _is_beside(tokens, place, used):
            continue
        first, last = tokens[place], tokens[place + used - 1]
        said = " ".join(token.text for token in tokens[place : place + used])
        now = ("time", "now") if _tells_times(tokens) else ("fill", "fill")
        kind, value = now if _is_now(part, hour) else ("time", _SAID_AS.get(part, part))
        out[place : place + used] = [Token(kind, value, said, first.start, last.end)]
    return out


def _of_now(tokens: list[Token], context: Context) -> list[Token]:
    """Likewise of this evening that has begun: a value told with it is of now, a deed may be meant.

    `tonight: ph 7.2` at six.
    """
    if all(token.kind != "time" or token.value not in _USUAL for token in tokens):
        return tokens
    told = [token for token in tokens if token.kind in _DEEDS or token.value in _PLANNED]
    if told or any(token.kind == "time" and token.value in {"at", "at_hour"} for token in tokens):
        return tokens
    hour = context.now.astimezone(context.zone or context.now.tzinfo or UTC).hour
    now = ("time", "now") if _tells_times(tokens) else ("fill", "fill")
    return [
        Token(*now, token.text, token.start, token.end)
        if token.kind == "time" and _is_begun(str(token.value), hour)
        else token
        for token in tokens
    ]


def _tells_times(tokens: list[Token]) -> bool:
    """Whether two numbers are told and a time beside the part: then now is one of the times."""
    times = sum(token.kind in _TIMES for token in tokens)
    times += sum(may_be_part(token.text) for token in tokens if token.kind != "time")
    return times > 1 and sum(map(is_number, tokens)) > 1


def _is_begun(part: str, hour: int) -> bool:
    """Whether a part lasts and its usual hour is still to come."""
    return hour < _USUAL.get(part, 0) and _is_now(part, hour)


def _is_now(part: str, hour: int) -> bool:
    if part == "night":
        return hour >= _NIGHT[0] or hour < _NIGHT[1]
    begins, ends = _LASTS[part]
    return begins <= hour < ends


def _is_beside(tokens: list[Token], place: int, used: int) -> bool:
    """Whether a part stands where the time of a value does."""
    behind = place + used
    while behind < len(tokens) and (
        tokens[behind].kind == "fill" or tokens[behind].value in _LINKS
    ):
        behind += 1
    following = tokens[behind] if behind < len(tokens) else None
    if _behind_value(tokens, place):
        return following is None or following.kind != "time"
    before = tokens[place - 1] if place else None
    if before is not None and before.kind == "analyte":
        return following is not None and following.kind == "number"
    opens = before is None or before.kind in {"nl", "tank"} or before.text in {",", ";", ":"}
    greets = used == 1 and tokens[place].kind in {"fill", "several"}
    return opens and not greets and following is not None and following.kind == "analyte"


def _behind_value(tokens: list[Token], place: int) -> bool:
    """Whether a value, and no hour, stands right before a token."""
    if place < 2:
        return False
    last, name = tokens[place - 1], tokens[place - 2]
    if last.kind == "unit" and "@" not in str(last.value):
        return name.kind == "number"
    named = name.kind in {"analyte", "fill"} or name.value in _LINKS
    return last.kind == "number" and named
