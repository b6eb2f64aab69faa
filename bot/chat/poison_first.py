"""No dose while a poison stands in a tank, or what went in is untold: that goes before a plan."""

from __future__ import annotations

from typing import Final

from bot.chat import emergencies, off_record, outside_calls, what_now
from bot.chat.in_vessel import is_apart
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import poison_first as words
from bot.chat.words import refusals
from bot.chat.words.emergencies import WHAT_NOW
from bot.chat.words.text import _
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.advice.alarm_words import named as named_in
from core.advice.plan import Refusal
from core.advice.poison_first import DIED, TOLD_FIRST, no_dose
from core.message.gave_told import would_give
from core.message.model import Parsed, Question
from core.message.waters import names_pure


async def refused(turn: Turn, stored: StoredTank | None) -> Reply | None:
    """Refuse a dose of a tank while a poison stands in it; None where none does, or of no tank."""
    if stored is None or stored.id in turn.poison_free:
        return None
    refusal = no_dose(await state_of(turn, stored, turn.now))
    if refusal is None:
        turn.poison_free.add(stored.id)  # a plan asks it before its questions and behind them
        return None
    if refusal.reason == TOLD_FIRST:
        return await off_record.again(turn, stored, str(refusal.facts["said"]))
    lines = refusals.refused(refusal, stored.name)
    danger = refusal.facts["danger"]
    held = {"tank": stored.id, "danger": "general" if danger == DIED else danger}
    facts = {"refused": refusal.reason, "tank": stored.name, **refusal.facts}
    return await turn.reply(
        lines,
        facts=facts,
        choices=[Choice(_(WHAT_NOW), "what_now", "", held)],
        context={"why": lines},
    )


async def against_more(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """No, where a message that nothing else understood asks or plans to put more in.

    None where nothing stands against a dose of the tank in use, or something else is said.
    """
    stored = turn.tank_named(parsed.tank or "") or turn.current_tank
    if stored is None or not turn.incoming.addressed or not would_give(turn.incoming.text):
        return None
    if is_against(turn, turn.incoming.text) or is_apart(turn, turn.incoming.text):
        return None
    if (refusal := await refused(turn, stored)) is not None:
        return [refusal]
    danger, gasping = await what_now.danger_in(turn, stored)
    if danger is None:
        return None
    lead = words.nothing_more()
    return [await emergencies.help_in(turn, stored, danger, gasping=gasping, lead=lead)]


async def of_asked(turn: Turn, question: Question) -> Reply | None:
    """The same for what a question asks a dose for; None where that is another water."""
    named = turn.tank_named(question.tank) if question.tank else None
    stored = named or turn.current_tank
    if not turn.tanks:
        return await _of_no_tank(turn, question)
    if is_against(turn, question.substance or question.text or ""):
        return None
    if stored is None or (named is None and _is_elsewhere(turn, question, stored)):
        return None
    return await refused(turn, stored)


async def _of_no_tank(turn: Turn, question: Question) -> Reply | None:
    """The same of what was told by a chat that has no tank yet: its litres may be that tank's."""
    text = question.text or turn.incoming.text
    if is_against(turn, question.substance or text) or is_apart(turn, text) or names_pure(text):
        return None
    if question.analyte == "salinity":
        return None  # new sea water is mixed apart
    danger = await outside_calls.no_dose(turn)
    if danger is None:
        said = await off_record.open_words(turn, None, (), (), turn.now)
        return None if said is None else await off_record.again(turn, None, said)
    refusal = Refusal("poison_first", {"danger": danger})
    lines = refusals.refused(refusal, None)
    facts = {"refused": refusal.reason, **refusal.facts}
    return await turn.reply(lines, facts=facts, context={"why": lines})


def is_against(turn: Turn, said: str) -> bool:
    """Whether what is named takes out chlorine: a dechlorinator, or a bought product that does."""
    if "dechlorinated" in named_in(said).get("deed", ()):
        return True
    plain = said.casefold()
    takes_out = (each for each in turn.products if each.label.analyte in CHLORINE)
    return any(each.name.casefold() in plain for each in takes_out)


CHLORINE: Final = frozenset({"chlorine", "total_chlorine"})


def _is_elsewhere(turn: Turn, question: Question, stored: StoredTank) -> bool:
    """Whether a dose is for a bucket, pure water or another volume than the tank's."""
    text = question.text or turn.incoming.text
    if is_apart(turn, text) or names_pure(text):
        return True
    return question.volume_l is not None and question.volume_l != stored.tank.volume_l
