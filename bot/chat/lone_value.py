"""``now it's 45``, ``und heute 5``: a number alone, which is probably of the value told before."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Final

from bot.chat import readings
from bot.chat.model import Reply
from bot.chat.reminder_waiting import tested
from bot.chat.turn import ABOUT, Turn
from core.message import doubts, parse
from core.message.fold import fold
from core.message.guesses import believable, name_for
from core.message.lexicon import lexicon
from core.message.lone_number import warmed as warmed_by
from core.message.model import Doubt, Event, Parsed
from core.message.token import is_number
from core.message.tokens import Token, cut
from core.message.word_classes import is_small

OF_LATE: Final = timedelta(days=2)
"""So long the value told before is still what a number is about; ours."""
STILL_ASKED: Final = timedelta(minutes=30)
"""So long a number alone answers what was asked about right before; ours."""
MOST: Final = 6
"""Tokens of such a message, at most."""
_LIGHT: Final = frozenset(
    {"link", "and", "one", "today", "now", "approx", "its", "ago", "at", "likes"}
)  # fmt: skip
_SUPPOSED: Final = frozenset(
    "think guess reckon glaube denke schatze pense crois creo supongo acho penso credo denk"  # noqa: SIM905
    " mysle sadze tror".split()
)
"""Words of a keeper who is not sure, in nine languages, without accents."""
_STILL: Final = frozenset(
    "still noch immer immernoch encore toujours todavia aun ainda ancora nog steeds wciaz nadal"  # noqa: SIM905
    " fortfarande".split()
)
"""Words for as before, likewise."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Ask whether the number is of the value told last; None where it says more, or none was."""
    told = parsed.values or parsed.events or parsed.question or parsed.command
    if told or not turn.incoming.addressed:
        return None
    number, warmth = _alone(turn.incoming.text)
    if number is None:
        return None
    if warmth:
        of_it = None if turn.current_tank is None else ("temperature", turn.current_tank.id)
    else:
        of_it = await _asked_about(turn) or await _due(turn) or await _told_last(turn)
    if of_it is None:
        return None
    analyte, tank_id = of_it
    value = float(number.text.replace(",", "."))
    if not believable(analyte, value, None):
        return None
    stored = turn.tank_by_id(tank_id)
    of = "" if stored is None or stored is turn.current_tank else f"{stored.name}: "
    meant = f"{of}{name_for(analyte)} {value:.6g}"
    doubt = Doubt(number.text, number.start, number.end, doubts.STRAY_NUMBER, meant)
    return await readings.keep(turn, Parsed("unclear", doubts=(doubt,)))


async def warmed(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``put hot water in, its 27 now``: the deed is noted, and how warm the water is kept."""
    told = warmed_by(turn.incoming.text) if turn.incoming.addressed else None
    other = parsed.events or parsed.question or parsed.command
    if told is None or other or any(each.analyte != "temperature" for each in parsed.values):
        return None
    deed, number = told
    read = parse(f"{name_for('temperature')} {number}", turn.context())
    if len(read.values) != 1 or read.doubts:
        return None
    note = Event("note", text=deed)
    values = tuple(replace(each, tank=parsed.tank) for each in read.values)
    both = Parsed("reading", tank=parsed.tank, at=parsed.at, values=values, events=(note,))
    return await readings.keep(turn, both)


async def _told_last(turn: Turn) -> tuple[str, int] | None:
    """The one value of the newest entry of who asks, and its tank."""
    entry = await turn.uow.log.latest(turn.chat.id, turn.incoming.author_id)
    if entry is None or turn.now - entry.at > OF_LATE or entry.events:
        return None
    named = {(stored.what.analyte, stored.tank_id) for stored in entry.readings}
    return next(iter(named)) if len(named) == 1 else None


async def _asked_about(turn: Turn) -> tuple[str, int] | None:
    """The one value that was asked about right before, and its tank."""
    latest = await turn.uow.offers.latest(turn.chat.id)
    if not latest or ABOUT not in latest[0].context or turn.now - latest[0].made_at > STILL_ASKED:
        return None
    held = latest[0].context[ABOUT]
    return str(held["analyte"]), int(held["tank"])


async def _due(turn: Turn) -> tuple[str, int] | None:
    """The one value that the one reminder that waits is to test, and its tank."""
    waiting = await turn.uow.reminders.of_chat(turn.chat.id, only_open=True)
    if len(waiting) != 1 or waiting[0].tank_id is None:
        return None
    analyte = tested(waiting[0])
    return None if analyte is None else (analyte, waiting[0].tank_id)


def _alone(text: str) -> tuple[Token | None, bool]:
    """The one number of a message that says nothing else; whether it is the water's warmth."""
    tokens = cut(fold(text), lexicon(), text, most=MOST + 1)
    numbers = [token for token in tokens if is_number(token)]
    if len(tokens) > MOST or len(numbers) != 1 or "?" in text:
        return None, False
    rest = [token for token in tokens if token is not numbers[0]]
    marks = {token.value for token in rest if token.kind in {"mark", "unit"}}
    warmth = {"water", "°"} <= marks
    light = all(_is_light(token) or (warmth and token.value in {"water", "°"}) for token in rest)
    plain = numbers[0].text.replace(",", ".").replace(".", "", 1).isdigit()
    return (numbers[0] if light and plain else None), warmth


def _is_light(token: Token) -> bool:
    """Whether a word beside the number says nothing of what it is of."""
    if token.kind in {"fill", "p"} or token.value in _LIGHT:
        return True
    light = token.text in _SUPPOSED or token.text in _STILL or is_small(token.text)
    return token.kind == "word" and light
