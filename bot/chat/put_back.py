"""``how do i get it back down``: out again with what was put in too much of, or is too high."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat import changes, lowering
from bot.chat.change_asked import asked_of
from bot.chat.model import Line, Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import findings as finding_words
from bot.chat.words import lowering as words
from bot.chat.words import standing as standing_words
from bot.store.tanks import StoredTank
from core.advice.findings import OVERDOSES, Finding, stands
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Question
from core.message.tokens import cut

MOVED: Final = ("salinity", "kh", "gh", "calcium", "magnesium")
"""What an overdose finding tells of, by the names of its facts."""


MOST: Final = 6
"""Lines on one screen."""


async def how(turn: Turn, question: Question, stored: StoredTank) -> list[Reply] | None:
    """Tell why it is high and how much may be changed now; None where nothing is.

    What was put in too much of comes before what was read, and of that only what is asked about.
    """
    text = question.text or ""
    if changes.asks_how_much(text):
        return None
    state = await state_of(turn, stored, turn.now)
    late = [f for f in stands(state, frozenset()) if f.id in OVERDOSES]
    dosed = next((f for f in late if question.analyte in {None, *_moved(f)}), None)
    if dosed is not None:
        lowers = question.analyte is not None or _lowers(text)
        cause = [words.out_again(dosed.facts)] if lowers else []
        first, *rest = await _out(turn, question, stored, dosed, cause)
        if not lowers:  # should i change water
            yes = standing_words.change_now(stored.name, [finding_words.line(dosed)])
            first = replace(first, lines=(*map(Line, yes), *first.lines)[:MOST])
        return [replace(first, facts={**first.facts, "findings": [_told(dosed)]}), *rest]
    if question.analyte is not None or not _lowers(text):
        return None
    high = next((f for f in stands(state, frozenset(state.readings)) if _is_high(f)), None)
    if high is None:
        return None
    analyte = str(high.facts.get("analyte", high.id))
    if analyte not in lowering.ANALYTES:
        return [await turn.reply([finding_words.line(high)], facts=_facts(stored, high))]
    return await lowering.how(turn, question, analyte)


async def _out(
    turn: Turn, question: Question, stored: StoredTank, dosed: Finding, beside: list[str]
) -> list[Reply]:
    """The largest change that is safe now; salt in the sea a little a day."""
    if "salinity" in _moved(dosed) and stored.tank.is_sea:
        return await lowering.salinity(turn, question, stored, beside)
    asked = await asked_of(turn, question)
    if isinstance(asked, Reply) and asked.facts.get("refused") == "source_unknown":
        lines = [words.usual_water(stored.name), *beside]
        return [replace(asked, lines=(*map(Line, lines), *asked.lines[1:]))]
    if isinstance(asked, Reply):
        return [replace(asked, lines=(*map(Line, beside), *asked.lines))]
    share = changes.largest_of(asked)
    whole = replace(question, percent=100.0 * share)
    return [await changes.answer(turn, whole, asked, share, beside=beside)]


def _moved(finding: Finding) -> tuple[str, ...]:
    """The analytes that too much went in of."""
    if "analyte" in finding.facts:
        return (str(finding.facts["analyte"]),)
    return tuple(name for name in MOVED if name in finding.facts)


def _is_high(finding: Finding) -> bool:
    """Whether a finding says that something is too high, or a poison is there."""
    facts = finding.facts
    if "value" in facts and "high" in facts:
        return float(facts["value"]) > float(facts["high"])
    return finding.id in {"nitrate", "sea_ion_high", "potassium_high", "potassium_sum"}


def _lowers(text: str) -> bool:
    """Whether a message asks how something is lowered, not whether water is to be changed."""
    tokens = cut(fold(text), lexicon(), text)
    return any(token.kind == "ask" and token.value == "change" for token in tokens)


def _told(finding: Finding) -> dict[str, object]:
    return {"id": finding.id, "severity": finding.severity, **finding.facts}


def _facts(stored: StoredTank, finding: Finding) -> dict[str, object]:
    return {"tank": stored.name, "findings": [_told(finding)]}
