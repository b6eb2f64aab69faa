"""Hours of the day: 20:00, 8 pm, 20 uhr, 20h30, noon, "kl 20", "at 9" behind a day.

clock = h:mm [am | pm] | h am | h pm | h "o'clock" | h "h" [mm] | noon | midnight | "at" h
      | an hour as spoken (`core.message.clockwords`) | clock part of the day
"""

from __future__ import annotations

from datetime import UTC, datetime, time

from core.message import clockwords
from core.message.days import PARTS
from core.message.timeparts import DIGITS, Parts, said, word_at
from core.message.tokens import Token


def clock_part(tokens: list[Token], place: int, parts: Parts) -> int:
    """How many tokens an hour takes from `place`, with the part of the day behind it."""
    if place >= len(tokens):
        return 0
    used = _spoken(tokens, place, parts) or _clock(tokens, place, parts)
    if used and not parts.part:
        parts.part, more = clockwords.part_of_day(tokens, place + used)
        return used + more
    return used


def _spoken(tokens: list[Token], place: int, parts: Parts) -> int:
    """An hour in the words of a language."""
    behind_at = place > 0 and tokens[place - 1].value in {"at", "at_hour", "at_to"}
    found = clockwords.find(tokens, place, behind_at=behind_at)
    if found is None:
        return 0
    if found.exact:
        parts.clock = time(found.minutes // 60 % 24, found.minutes % 60)
    else:
        parts.spoken, parts.either = found.minutes, found.other
    return found.length


def _clock(tokens: list[Token], place: int, parts: Parts) -> int:
    """h:mm [am|pm], h am|pm, h "o'clock", h "h" [mm], noon, midnight."""
    token = tokens[place]
    if token.kind == "time" and token.value in {"noon", "midnight"}:
        parts.clock = time(12 if token.value == "noon" else 0)
        return 1
    if token.kind == "clock":
        hour, minute = (int(run) for run in DIGITS.findall(token.text)[:2])
        half = word_at(tokens, place + 1)
        used = 2 if half in {"am", "pm"} else 1
        _set_clock(parts, hour, minute, half if used == 2 else "")
        _set_offset(parts, token.text)
        return used
    hour_number = said(token)
    if hour_number is None or not (0 <= hour_number <= 24) or hour_number != int(hour_number):
        return 0
    word = word_at(tokens, place + 1)
    if _bare_hour(tokens, place, hour_number, word, parts):
        return 1
    named = place > 0 and word_at(tokens, place - 1) == "at_hour" and "." not in token.text
    if word not in {"am", "pm", "oclock"} and named and token.kind == "count":
        parts.spoken = int(hour_number) % 12 * 60
        return 1
    if word not in {"am", "pm", "oclock"} and named:
        _set_clock(parts, int(hour_number), 0, "")
        return 1
    short = word == "hour" and tokens[place + 1].text == "h"
    if short and parts.day is not None and not _glued_minutes(tokens, place + 2):
        _set_clock(parts, int(hour_number), 0, "")
        return 2
    if word in {"am", "pm", "oclock"}:
        _set_clock(parts, int(hour_number), 0, word)
        used = 2
        if word == "oclock" and _glued_minutes(tokens, place + 2):
            _set_clock(parts, int(hour_number), int(tokens[place + 2].text), "")
            used = 3
        return used
    if word == "hour" and tokens[place + 1].text == "h" and _glued_minutes(tokens, place + 2):
        _set_clock(parts, int(hour_number), int(tokens[place + 2].text), "")
        return 3
    return 0


def _bare_hour(tokens: list[Token], place: int, hour: float, word: str, parts: Parts) -> bool:
    """An hour after "at" behind a day; up to twelve it may be morning or evening: asked."""
    at = place > 0 and word_at(tokens, place - 1) == "at" and tokens[place - 1].text != "@"
    if not at:
        return False
    part = parts.part or _part_ahead(tokens, place + 1)
    if (parts.day is None and not part) or "." in tokens[place].text:
        return False
    if word in {"am", "pm", "oclock", "hour"} or (word and not part):
        return False
    following = tokens[place + 1].kind if place + 1 < len(tokens) else ""
    if following == "unit":
        return False
    if following == "analyte" and not (
        place + 2 < len(tokens) and tokens[place + 2].kind == "number"
    ):
        return False
    if 1 <= hour <= 12 and part:
        parts.spoken = int(hour) % 12 * 60
    elif 1 <= hour <= 12:
        parts.hours = (int(hour) % 12, int(hour) % 12 + 12)
    else:
        _set_clock(parts, int(hour), 0, "")
    return True


def _part_ahead(tokens: list[Token], place: int) -> bool:
    """Whether a part of the day is told next: at 7 `this morning`, at 7 `in the evening`."""
    return word_at(tokens, place) in PARTS or bool(clockwords.part_of_day(tokens, place)[1])


def _glued_minutes(tokens: list[Token], place: int) -> bool:
    return (
        place < len(tokens)
        and tokens[place].kind == "number"
        and len(tokens[place].text) == 2
        and tokens[place].text.isdigit()
        and tokens[place].start == tokens[place - 1].end
    )


def _set_clock(parts: Parts, hour: int, minute: int, half: str) -> None:
    if half in {"am", "pm"}:
        if not 1 <= hour <= 12:
            parts.bad = True
            return
        hour = hour % 12 + (12 if half == "pm" else 0)
    if hour > 23 or minute > 59:
        parts.bad = True
    else:
        parts.clock = time(hour, minute)


def _set_offset(parts: Parts, text: str) -> None:
    if text.endswith("z"):
        parts.offset = UTC
    elif len(text) > 6 and text[-6] in "+-":
        try:
            parts.offset = datetime.fromisoformat(f"2000-01-01T00:00{text[-6:]}").tzinfo
        except ValueError:
            parts.bad = True
