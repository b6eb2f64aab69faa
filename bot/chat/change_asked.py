"""Which tank and which new water a question of a change is about, or what is missing."""

from __future__ import annotations

from dataclasses import dataclass

from bot.chat import new_water, said_water
from bot.chat.model import Reply
from bot.chat.said_water import Said
from bot.chat.state import state_of
from bot.chat.supply import Supply, Unclear, pure_supply
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from bot.chat.words import change_verdict as verdict
from bot.chat.words import changes as words
from bot.chat.words import waters as water_words
from bot.chat.words.cautions import caution
from bot.store.tanks import StoredTank
from core.advice.by_now import by_now
from core.advice.outlook import with_premises
from core.advice.state import State
from core.message.model import Question


@dataclass(frozen=True, slots=True)
class Asked:
    """A tank and the new water that is asked about."""

    stored: StoredTank
    tank: State
    supply: Supply
    dosed: bool = False
    """True where what went in since its last test moved the tank's readings."""

    @property
    def source(self) -> State:
        """The new water's readings."""
        return self.supply.state

    @property
    def source_name(self) -> str:
        """The new water as the keeper calls it."""
        return self.supply.name


async def asked_of(
    turn: Turn, question: Question, said: Said | None = None, held: Waters | None = None
) -> Asked | Reply:
    """The tank and the new water that a question is about, or what is missing."""
    stored = turn.tank_named(question.tank) if question.tank else turn.current_tank
    if stored is None:
        return await turn.reply(words.no_tank())
    held = held or await Waters.of(turn)
    state = await state_of(turn, stored, turn.now, held)
    counted = by_now(state)
    tank = with_premises(counted, question.premises)
    held = held.as_warm_as(tank.last("temperature"))
    if said is not None and (strange := _unknown_kind(held, question, said, stored)) is not None:
        lines = water_words.unclear("unknown", (strange,), None)
        lines += [] if said.caution is None else caution(said.caution)[:1]
        facts = {"tank": stored.name, "refused": "source_unknown"}
        return await turn.reply([verdict.unknown_water(stored.name), *lines], facts=facts)
    found = await held.asked(question.substance, question.text or "", stored)
    if isinstance(found, Unclear):
        lines = water_words.unclear(found.reason, found.names, found.total)
        return await turn.reply(lines, facts={"refused": f"source_{found.reason}"})
    if found is None and question.analyte == "salinity" and tank.tank.is_sea:
        found = pure_supply(turn, "ro")
    if found is None and (source := held.default_for(stored)) is not None:
        found = await held.supply(source)
    if found is None and question.analyte in {"kh", "gh"} and question.target is not None:
        found = pure_supply(turn, "ro")  # hardness is lowered by nothing else
    if said is not None:
        found = said_water.as_said(turn, found, said)
    if found is None:
        return await turn.reply(words.no_source(stored.name), facts={"refused": "source_unknown"})
    return Asked(stored, tank, new_water.stricter(tank, found), counted is not state)


def _unknown_kind(held: Waters, question: Question, said: Said, stored: StoredTank) -> str | None:
    """A water that the question names and nobody knows."""
    if question.substance is not None:
        return None
    default = held.default_for(stored)
    names = [each.name for each in held.sources]
    default_name = None if default is None else default.name
    return said_water.unknown_kind(said, question.text or "", names, default_name)
