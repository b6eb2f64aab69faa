"""``how much ro for a 10 l can``, ``match tap to tank``: the shares of two waters.

Without a wish the mix is to have the tank's own KH, which a change must not move.
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat import dosing, source_blends
from bot.chat.model import Line, Reply
from bot.chat.state import state_of
from bot.chat.supply import Supply
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from bot.chat.words import mixes as words
from bot.chat.words import sources as source_words
from core.advice.state import Measured
from core.message import mixing
from core.message.mixing import Mixing
from core.message.model import Parsed, Question


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer which shares are asked for; None where none are, or the waters are not known."""
    if not turn.incoming.addressed or parsed.command is not None or parsed.events:
        return None
    found = mixing.asked(turn.incoming.text, turn.context())
    return None if found is None else await shares_of(turn, found)


async def shares_of(turn: Turn, found: Mixing, *, mixes: bool = False) -> list[Reply] | None:
    """The shares of two waters; `mixes` where the words say so, and mean no change of the tank."""
    held = await Waters.of(turn)
    other = await _other(turn, held, found)
    stored = turn.current_tank
    kh = None
    if stored is not None:
        kh = (await state_of(turn, stored, turn.now)).last(found.analyte or "kh")
    alone = found.litres is None and found.other is None and not mixes
    if alone and _is_over(kh, found.target):
        text = f"change {found.analyte} {found.target:g} with {found.pure}"
        question = Question("change", analyte=found.analyte, target=found.target, text=text)
        return await dosing.change(turn, question, Parsed("question", question=question))
    if other is None:
        if found.other is None:
            return [await turn.reply(source_words.which_waters())] if mixes else None
        analyte = found.analyte or "kh"
        return [await turn.reply(source_words.lacks(found.other, analyte))]
    analyte, target, lead = found.analyte or "kh", found.target, None
    if target is None:
        if stored is None or kh is None:
            return [await turn.reply(words.to_what(found.pure))]
        target, lead = kh.value, words.as_the_tank(stored.name)
    question = Question(
        "dose",
        analyte=analyte,
        target=target,
        volume_l=found.litres,
        text=f"mix {found.pure} and {other.name}",
    )
    reply = await source_blends.reach(turn, question)
    if reply is None:
        return None
    if lead is not None:
        reply = replace(reply, lines=(Line(lead), *reply.lines))
    return [reply]


def _is_over(now: Measured | None, target: float | None) -> bool:
    """Whether a tank is over what is wished: then pure water is to bring the tank down."""
    return now is not None and target is not None and now.value > target


async def _other(turn: Turn, held: Waters, found: Mixing) -> Supply | None:
    """The water beside the pure one: the one named, else what the tank is filled from."""
    if found.other is not None:
        supply = await held.of_name(found.other)
        return None if supply is None or supply.pure else supply
    return await hard_water(turn, held)


async def hard_water(turn: Turn, held: Waters) -> Supply | None:
    """The water with minerals that the tank is filled from, else the first one known."""
    stored = turn.current_tank
    default = None if stored is None else held.default_for(stored)
    for source in (*([] if default is None else [default]), *held.sources):
        supply = await held.supply(source)
        kh, gh = supply.state.last("kh"), supply.state.last("gh")
        has_minerals = any(each is not None and each.value > 0.5 for each in (kh, gh))
        if has_minerals and not supply.parts:
            return supply
    return None
