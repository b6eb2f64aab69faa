"""Single additions against a poison or for a cycle; salt and ammonia only after a yes."""

from __future__ import annotations

import re
from typing import Any, Final

from bot.chat import dose_reply
from bot.chat.bases import ask_basis, basis_missing, kit_basis
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.wished import TABLE_SALT, water_of
from bot.chat.words import dose_wishes as wish_words
from bot.chat.words import salts as words
from bot.chat.words.text import _
from bot.store.offers import Choice
from bot.store.tanks import StoredTank
from core.advice.outlook import with_premises
from core.advice.plan import Refusal
from core.advice.state import ammonia_as_n, nitrite_as_no2
from core.advice.treatments import (
    cycle,
    dechlorinate,
    minds_salt,
    salt_for_nitrite,
)
from core.message.model import Parsed, Question
from core.message.ppm_asked import ppm_asked

LOOKED_AT: Final = 12
"""Replies among which a cycle that was asked about is sought."""

AS_NITRITE = re.compile(r"\bas no2\b|\b(no2|nitrite)-n\b|\bas n\b", re.IGNORECASE)
"""A premise keeps no basis, but is in the ion's unit already where one was said."""


async def dechlorination(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    """Thiosulfate for so much tap water."""
    stored, state = await water_of(turn, question)
    said = question.premises.get("total_chlorine", question.premises.get("chlorine"))
    if question.analyte in {"chlorine", "total_chlorine"} and said is None:
        said = question.target if question.start_value is None else question.start_value
    if said is None:
        said = await _chlorine_of_tap(turn, stored)
    found = dechlorinate(said, question.volume_l, state)
    name = stored.name if stored is not None else None
    if isinstance(found, Refusal):
        return [await dose_reply.refuse(turn, found, name)]
    facts: dict[str, Any] = {
        "volume_l": found.volume_l,
        "chlorine": found.chlorine,
        "forms": [
            {"substance": "sodium thiosulfate pentahydrate", "grams": found.pentahydrate},
            {"substance": "sodium thiosulfate", "grams": found.anhydrous},
        ],
        "ammonia_freed": found.freed_n,
    }
    if found.freed_nh3_n is not None:
        facts["nh3_n_freed"] = found.freed_nh3_n
    lines = words.dechlorination(found)
    return [await turn.reply(lines, more=words.dechlorination_more(), facts=facts)]


async def _chlorine_of_tap(turn: Turn, stored: StoredTank | None) -> float | None:
    """Total chlorine as the source on record has it; None where none was measured. [mg/L]"""
    tank = stored or turn.current_tank
    if tank is None:
        return None
    tap = (await state_of(turn, tank, turn.now)).source.get("total_chlorine")
    return tap.high if tap is not None and tap.high > 0.0 else None


async def nitrite(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    """Table salt against nitrite, the one of the question or the tank's own."""
    stored, state = await water_of(turn, question)
    name = stored.name if stored is not None else None
    if question.substance not in {None, TABLE_SALT}:
        return [await dose_reply.refuse(turn, Refusal("substance_unknown", _named(question)), name)]
    said = question.premises.get("nitrite", question.target)
    read = state.fresh("nitrite")
    if said is None and question.analyte is None and (read is None or not read.high):
        return [await turn.reply(words.salt_for_what())]
    unsaid = read is not None and read.basis is None
    if said is not None:
        stated = question.basis or ("ion" if AS_NITRITE.search(question.text or "") else None)
        said, unsaid = nitrite_as_no2(said, stated), stated is None
    state = with_premises(
        state, {k: v for k, v in question.premises.items() if k in {"chloride", "salinity"}}
    )
    found = salt_for_nitrite(said, question.volume_l, state)
    if isinstance(found, Refusal):
        return [await dose_reply.refuse(turn, found, name)]
    if kept := minds_salt(state):
        refusal = Refusal("salt_species", {"species": ", ".join(kept)})
        return [await dose_reply.refuse(turn, refusal, name)]
    held = {
        "nitrite": found.nitrite,
        "unsaid": unsaid,
        "volume_l": found.volume_l,
        "tank_id": stored.id if stored is not None else None,
    }
    choices = [
        Choice(_(words.YES_SALT), "confirm_salt", "yes", held),
        Choice(_(words.NO_SALT), "decline_salt", "no", {}),
    ]
    return [await turn.reply(words.salt_ask(), choices=choices, facts={"ask": "bears_salt"})]


async def cycling(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    """Ammonium chloride for a tank without any animals, which is asked first."""
    stored, state = await water_of(turn, question)
    name = stored.name if stored is not None else None
    if question.target is None:
        return [await turn.reply(wish_words.incomplete())]
    if basis_missing(question, stored):
        return [await ask_basis(turn, question)]
    target = ammonia_as_n(question.target, question.basis or kit_basis(question, stored))
    found = cycle(target, question.volume_l, state)
    if isinstance(found, Refusal):
        return [await dose_reply.refuse(turn, found, name)]
    held = {
        "target": target,
        "volume_l": found.volume_l,
        "tank_id": stored.id if stored is not None else None,
    }
    choices = [
        Choice(_(words.YES_NONE), "confirm_cycle", "yes", held),
        Choice(_(words.NO_SOME), "decline_cycle", "no", {}),
    ]
    return [await turn.reply(words.cycle_ask(), choices=choices, facts={"ask": "no_animals"})]


async def ppm(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``can i put 8 ppm`` of a cycle spoken of is of ammonia, else nobody knows of what."""
    asked = ppm_asked(turn.incoming.text) if turn.incoming.addressed else None
    if asked is None:
        return None
    offers = await turn.uow.offers.latest(turn.chat.id, LOOKED_AT)
    cycles = any(choice.verb == "confirm_cycle" for each in offers for choice in each.choices)
    if not cycles and not asked.ammonia:
        return [await turn.reply(words.ppm_of_what(asked.value))]
    text = f"how much ammonium chloride for {asked.value:g} ppm"
    question = Question("dose", analyte="ammonia", target=asked.value, text=text)
    stored, state = await water_of(turn, question)
    found = cycle(ammonia_as_n(asked.value, "NH4"), None, state)
    if isinstance(found, Refusal):  # whatever the kit counts
        facts = {**found.facts, "to": asked.value} if "to" in found.facts else found.facts
        name = None if stored is None else stored.name
        return [await dose_reply.refuse(turn, Refusal(found.reason, facts), name)]
    return await cycling(turn, question, parsed)


def _named(question: Question) -> dict[str, float | str]:
    return {"substance": question.substance or ""}
