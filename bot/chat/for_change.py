"""Deeds that are only named: `want gh 6 for a 40 l water change`, `filter clean how often`.

The first wishes for new water, and gets its recipe; nothing of either is put on record.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from bot.chat.words import for_change as words
from bot.chat.words.text import _
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.message import amounts, doubts, parse, quantities
from core.message.deed_doubted import asked_often, of_filter, of_tests
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Parsed
from core.message.tokens import Token, cut

_OF_WISH: Final = frozenset({doubts.WISH, doubts.UNSURE_EVENT})
_DOSE: Final = "dose "
_CHANGE: Final = frozenset({"water_change", "changing"})


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer for the new water, or how often; None where a deed or a reading is told."""
    if not turn.incoming.addressed or parsed.values or parsed.events or parsed.command is not None:
        return None
    if parsed.question is None and (often := await _often(turn, parsed)) is not None:
        return often
    reasons = {doubt.reason for doubt in parsed.doubts}
    if reasons != _OF_WISH or parsed.question is not None:
        return None
    goals = [each.suggestion or "" for each in parsed.doubts if each.reason == doubts.WISH]
    named = turn.tank_named(parsed.tank) if parsed.tank else None
    litres = _litres(turn, named or turn.current_tank)
    if litres is None or not all(goal.startswith(_DOSE) for goal in goals):
        return None
    return await _recipe(turn, litres, " ".join(goal.removeprefix(_DOSE) for goal in goals))


async def _often(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    text = turn.incoming.text
    if turn.route is None or not asked_often(text) or any(map(str.isdigit, text)):
        return None
    kinds = {str(token.value) for token in _tokens(text) if token.kind in {"event", "mark"}}
    if {doubt.reason for doubt in parsed.doubts} - {doubts.UNSURE_EVENT}:
        return None
    if kinds & _CHANGE and parsed.doubts:
        asked = parse("how often should i change water", turn.context())
        return await turn.route(turn, replace(asked, tank=parsed.tank))
    if of_filter(text):
        return [await turn.reply(words.clean_filter())]
    if not of_tests(text):
        return None
    stored = turn.tank_named(parsed.tank or "") or turn.current_tank
    sea = stored is not None and stored.tank.is_sea
    return [await turn.reply(words.test_water(sea=sea))]


async def _recipe(turn: Turn, litres: float, goals: str) -> list[Reply]:
    """The recipe of the tank's own source, where one is on record; else ask of which water."""
    waters = await Waters.of(turn)
    source = waters.default_for(turn.current_tank) if turn.current_tank is not None else None
    if source is not None and turn.route is not None:
        said = _said(litres, source.name, goals)
        asked = parse(said, turn.context())
        if asked.question is not None and not asked.doubts and not asked.values:
            turn.incoming = replace(turn.incoming, text=said)
            return await turn.route(turn, asked)
    held = {"text": _said(litres, "ro", goals), "doubt": turn.incoming.text, "tank": None}
    choices = [Choice(_(words.RO_WATER), "take_doubt", "", {"parts": [held]})]
    facts = {"volume_l": litres}
    return [await turn.reply(words.of_which_water(litres, goals), choices=choices, facts=facts)]


def _said(litres: float, water: str, goals: str) -> str:
    return f"recipe for {litres:g} l {water} to {goals}"


def _tokens(text: str) -> list[Token]:
    return cut(fold(text), lexicon(), text)


def _litres(turn: Turn, stored: StoredTank | None) -> float | None:
    """How much new water the change that is spoken of takes. [L]"""
    tokens = _tokens(turn.incoming.text)
    if not any(token.kind == "event" and token.value == "water_change" for token in tokens):
        return None
    for place, token in enumerate(tokens):
        if token.kind not in {"number", "count"}:
            continue
        quantity = quantities.read(tokens, place)
        if quantity is None:
            continue
        litres = amounts.litres(quantity, us_gallons=turn.chat.us_gallons)
        if litres is not None:
            return litres
        if quantity.unit == "%" and quantity.value and stored is not None:
            whole = stored.tank.volume_l
            return None if whole is None else quantity.value / 100.0 * whole
    return None
