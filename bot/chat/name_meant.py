"""``i mean gh 4`` right after ``kh 4``: the number was told under another name."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat import corrections
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.regretted import with_doubted
from bot.chat.turn import Turn
from core.message import doubts, parse
from core.message.amends import renamed
from core.message.model import Parsed, Value
from core.message.regrets import behind_regret, firmly_regrets

LONGEST: Final = 60
"""A longer text says more than what was wrong. [characters]"""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Put the value that was answered last under the name that was meant; else None."""
    text = turn.incoming.text
    if not turn.incoming.addressed or "?" in text or len(text) > LONGEST:
        return None
    if parsed.events or parsed.question or parsed.tank is not None or parsed.at is not None:
        return None
    if (named := _named_behind(text, parsed)) is not None and turn.route is not None:
        turn.incoming = replace(turn.incoming, text=named)
        return await turn.route(turn, parse(named, turn.context()))
    value = _meant(turn, parsed)
    if value is None:
        return None
    found = await _under_another(turn, value)
    if found is None and parsed.doubts and parsed.values and turn.route is not None:
        turn.incoming = replace(turn.incoming, text=text[value.start : value.end])
        return await turn.route(turn, parse(turn.incoming.text, turn.context()))
    return found


async def _under_another(turn: Turn, value: Value) -> list[Reply] | None:
    """Put right the name of the same number in what was answered last; None where it has none."""
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or latest[0].entry_id is None or turn.now - latest[0].made_at > patience:
        return None
    entry = await turn.uow.log.current(turn.chat.id, latest[0].entry_id)
    same = [r.what for r in entry.readings if r.what.value == value.value] if entry else []
    if entry is None or len(same) != 1 or same[0].analyte == value.analyte:
        return None
    return await corrections.under_name(turn, entry, value.analyte, same[0].analyte)


def _meant(turn: Turn, parsed: Parsed) -> Value | None:
    """The only value of a text that else has words of regret, and at most one name before them."""
    text, shift = turn.incoming.text, 0
    if not parsed.values and (rest := behind_regret(text)) is not None:
        parsed, _doubted = with_doubted(parse(rest, turn.context()))
        shift = len(text) - len(rest)
    if len(parsed.values) != 1 or parsed.values[0].value is None:
        return None
    (value,) = parsed.values
    first = value.start + shift
    beside = f"{text[:first]} {text[value.end + shift :]}"
    if parsed.doubts:  # kh i mean gh 4
        (doubt, *more) = parsed.doubts
        if more or doubt.reason != doubts.NO_VALUE or text[: doubt.start].strip():
            return None
        beside = beside[doubt.end :]
    return value if firmly_regrets(beside) else None


def _named_behind(text: str, parsed: Parsed) -> str | None:
    """``kh 4 oops i mean gh``: the number under the name behind it; None for any other text."""
    if len(parsed.values) != 1 or len(parsed.doubts) != 1:
        return None
    value = parsed.values[0]
    other = renamed(text[value.end :])
    if other is None or text[: value.start].strip() or other[1] not in {None, value.analyte}:
        return None
    return None if value.value is None else f"{other[0].replace('_', ' ')} {value.value:.10g}"
