"""In which order a message is looked at, behind what its intent is: whole sentences.

Each look gives replies, or None where the message is about something else; a look stands before
those that would take its words for less. What stands before the intent is in
`bot/chat/first_looks.py`.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Mapping, Sequence
from typing import Final

from bot.chat import (
    about_kinds,
    about_values,
    aerating,
    arrivals,
    converting,
    daily,
    dosing,
    first_evening,
    first_things,
    gallons,
    introduced,
    labels,
    lone_value,
    mixes,
    next_change,
    open_basis,
    pace,
    poison_by_ph,
    products,
    pure_tds,
    questions,
    raising,
    room,
    sources,
    tank_use,
    tanks_told,
    tap_told,
    traits,
    under,
    warming,
    well_asked,
    wish_filled,
)
from bot.chat.model import Reply
from bot.chat.turn import Turn
from core.message.model import Parsed, Question

QuestionTopic = Callable[[Turn, Question, Parsed], Awaitable[list[Reply]]]
Look = Callable[[Turn, Parsed], Awaitable[Sequence[Reply] | Reply | None]]

QUESTIONS: Final[Mapping[str, QuestionTopic]] = {
    "dose": open_basis.dose,
    "effect": dosing.effect,
    "change": dosing.change,
    "help": questions.help_,
    "when": questions.when,
    "convert": converting.convert,
    "co2": questions.co2,
    "keep": questions.keep,
    "safe": questions.safe,
    "why": questions.why,
    "history": questions.history,
}
"""The topic of each kind of question."""


async def first(looks: Sequence[Look], turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """The replies of the first look that a message is for."""
    for look in looks:
        found = await look(turn, parsed)
        if found is not None:
            return [found] if isinstance(found, Reply) else list(found)
    return None


async def _trait(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    trait = traits.trait_of(turn, parsed)
    return None if trait is None else await traits.answer(turn, trait)


async def _arrival(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    coming = arrivals.coming_in(turn, parsed)
    return None if coming is None else await arrivals.answer(turn, coming)


async def _source(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    return await sources.spoken(turn) if sources.may_be_told(parsed) else None


BEFORE_READINGS: Final[tuple[Look, ...]] = (
    next_change.answer,
    traits.with_readings,
    lambda turn, parsed: gallons.answer(turn, parsed, QUESTIONS),
    tanks_told.whole,
    first_evening.answer,
    pure_tds.answer,
    lambda turn, _parsed: introduced.told(turn),
    introduced.beside,
    _trait,
    _arrival,
    well_asked.answer,
    under.answer,
    raising.answer,
    pace.answer,
    poison_by_ph.answer,
    about_values.hard_or_soft,
    about_values.judged,
    first_things.answer,
    lone_value.warmed,
    lone_value.answer,
    lambda turn, parsed: wish_filled.beside(turn, parsed, QUESTIONS),
    lambda turn, _parsed: warming.answer(turn),
    products.manage,
    lambda turn, _parsed: labels.called(turn),
    _source,
    tap_told.answer,
    about_kinds.answer,
    aerating.answer,
    mixes.answer,
    tank_use.answer,
    daily.told,
    room.answer,
)
"""Whole sentences whose values are no readings of the tank, or whose question is none of a kind."""
