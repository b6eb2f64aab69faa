"""``kh was 5 sorry``, ``78f sorry`` right after a reading of the same: it is put right.

So it is behind an answer that rests on it: ``wrong, it was kh 4``. What is called wrong in the same
breath (``nitrate 30 (sorry, wrong)``) is not stored, and the right number asked for.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat import corrections
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import ABOUT, Turn
from bot.chat.words import readings as words
from core.message import doubts, parse
from core.message.guesses import name_for
from core.message.model import Command, Parsed
from core.message.regrets import behind_regret, called_wrong, only_regrets, tells_slip

LONGEST: Final = 60
"""A longer text says more than what was wrong. [characters]"""


async def opened(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``oh wait cube ph was 6.5 not 6.8``: put right as it is without the words of regret."""
    text = turn.incoming.text
    said_anything = parsed.values or parsed.events or parsed.question or parsed.command
    if not turn.incoming.addressed or said_anything or not parsed.doubts or len(text) > LONGEST:
        return None
    rest = behind_regret(text)
    again = None if rest is None else parse(rest, turn.context())
    if rest is None or again is None or again.command is None or again.command.name != "correct":
        return None
    if not again.values or again.doubts or again.events or again.question:
        return None
    turn.incoming = replace(turn.incoming, text=rest)
    return await corrections.correct(turn, again.command, again)


async def unmeant(turn: Turn, _parsed: Parsed) -> list[Reply] | None:
    """``kh 4, nitrate 30 (sorry, wrong)``: all but the value that is called wrong is read."""
    text = turn.incoming.text
    place = called_wrong(text) if turn.incoming.addressed else None
    if place is None:
        return None
    before = parse(text[: place[0]], turn.context())
    value = next((each for each in before.values if not text[each.end : place[0]].strip()), None)
    if value is None or before.command or before.question:
        return None
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    entry_id = latest[0].entry_id if latest else None
    entry = None if entry_id is None else await turn.uow.log.current(turn.chat.id, entry_id)
    told = () if entry is None else entry.readings
    if any((o.what.analyte, o.what.canonical) == (value.analyte, value.canonical) for o in told):
        return [await turn.reply(words.nothing_to_put_right())]
    facts = {"ask": "value", "analyte": value.analyte}
    lines = words.told_as_wrong(text[value.start : value.end], name_for(value.analyte))
    stored = turn.tank_named(value.tank or before.tank or "") or turn.current_tank
    about = {} if stored is None else {ABOUT: {"analyte": value.analyte, "tank": stored.id}}
    rest = f"{text[: value.start]} {text[place[1] :]}".strip(" ,;.")
    other = parse(rest, turn.context()) if rest else Parsed("none")
    if turn.route is None or not (other.values or other.events or other.question or other.doubts):
        return [await turn.reply(lines, facts=facts, context=about, expects="followup")]
    turn.incoming = replace(turn.incoming, text=rest)
    replies = await turn.route(turn, other)
    return [*replies, await turn.reply(lines, facts=facts, context=about, expects="followup")]


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Put right the reading that was answered last; None where none of the same was."""
    text = turn.incoming.text
    parsed, doubted = with_doubted(parsed)
    beside = parsed.events or parsed.question or parsed.command or parsed.doubts or parsed.at
    if not turn.incoming.addressed or not parsed.values or beside or len(text) > LONGEST:
        return None
    rest, last = [], 0
    for value in sorted(parsed.values, key=lambda each: each.start):
        rest.append(text[last : value.start])
        last = value.end
    rest.append(text[last:])
    beside_it = " ".join(rest)
    if parsed.tank is not None or not only_regrets(beside_it):
        return None
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or turn.now - latest[0].made_at > patience:
        return None
    if latest[0].entry_id is None:
        return await _behind_answer(turn, parsed) if tells_slip(beside_it, text) else None
    if doubted:
        return None
    entry = await turn.uow.log.current(turn.chat.id, latest[0].entry_id)
    told = set() if entry is None else {each.what.analyte for each in entry.readings}
    if not {value.analyte for value in parsed.values} <= told:
        return None
    return await corrections.correct(turn, Command("correct", text), parsed)


def with_doubted(parsed: Parsed) -> tuple[Parsed, bool]:
    """A message whose only doubt is a value beside a word as told, and whether it has one."""
    if parsed.values or len(parsed.doubts) != 1:
        return parsed, False
    (doubt,) = parsed.doubts
    if doubt.value is None or doubt.reason != doubts.UNKNOWN_WORD:
        return parsed, False
    return replace(parsed, intent="reading", values=(doubt.value,), doubts=()), True


async def _behind_answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``wrong, it was kh 4`` behind a plan: the reading of late that it rests on is put right."""
    entry = await corrections.told_of_late(turn, parsed)
    told = set() if entry is None else {each.what.analyte for each in entry.readings}
    if not {value.analyte for value in parsed.values} <= told:
        return None
    return await corrections.correct(turn, Command("correct", turn.incoming.text), parsed)
