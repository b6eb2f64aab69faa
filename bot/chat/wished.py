"""What a question of a dose wishes for, and of which water."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from typing import Final

from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.store.tanks import StoredTank
from core.advice.state import State
from core.message.model import Question
from core.tank import Tank

TABLE_SALT = "sodium chloride"

CONDITION = re.compile(
    r"\b(at|with|if|when|while)\s+(gh|kh|alk\w*|ca|calcium|mg|magnesium)\b", re.IGNORECASE
)


def goals(question: Question) -> tuple[dict[str, float], dict[str, float]]:
    """What is to be reached, and what is to rise by so much, by analyte."""
    named = (
        (question.analyte, question.target, question.delta),
        (question.also, question.also_target, question.also_delta),
    )
    targets = {name: to for name, to, _by in named if name and to is not None}
    deltas = {name: by for name, to, by in named if name and to is None and by is not None}
    second = second_goal(question)
    if second is not None and question.also is None:
        targets[second] = question.premises[second]
    return targets, deltas


def second_goal(question: Question) -> str | None:
    """What is wished beside the first; the other hardness also without a word of wishing."""
    if question.also is not None:
        return question.also
    other = {"kh": "gh", "gh": "kh"}.get(question.analyte or "")
    if other is None or other not in question.premises or question.target is None:
        return None
    return None if CONDITION.search(question.text or "") else other


async def water_of(turn: Turn, question: Question) -> tuple[StoredTank | None, State]:
    """The water that a question is about: a tank on record, or any water."""
    named = turn.tank_named(question.tank) if question.tank else None
    current = turn.current_tank
    # Who says the very volume of the tank that is spoken of means that tank and its animals.
    same = current is not None and current.tank.volume_l == question.volume_l
    about_any = named is None and question.volume_l is not None and not same
    stored = None if about_any else named or current
    if stored is None:
        return None, State(Tank(name=""), turn.local_now)
    return stored, await state_of(turn, stored, turn.now)


SEA: Final[Mapping[str, tuple[str, float, float]]] = {
    "magnesium": ("magnesium", 900.0, 1800.0),
    "calcium": ("calcium", 300.0, 650.0),
    "sodium": ("salinity", 25.0, 45.0),
    "sea": ("salinity", 25.0, 45.0),
}
"""First word of a salt → what of the sea it raises, and between which values a bare number beside
it is a wish for that; wide of any reef (common practice). [mg/L], salinity [g/kg]"""


def of_the_sea(question: Question, stored: StoredTank | None) -> Question:
    """``how much magnesium sulfate for 1300`` in a marine tank: the ion that the salt raises.

    A number that nobody has in the sea stays nameless: it may be litres.
    """
    raised = SEA.get((question.substance or "").partition(" ")[0])
    if question.analyte is not None or question.target is None or raised is None:
        return question
    if stored is None or not stored.tank.is_sea or "carbonate" in (question.substance or ""):
        return question
    analyte, low, high = raised
    return replace(question, analyte=analyte) if low <= question.target <= high else question
