"""Doses other than buffer: hardness, plant food, the sea, buckets of RO, what must ask first."""

from __future__ import annotations

import re
from collections.abc import Awaitable, Callable, Mapping
from typing import Any

from bot.chat import changes, dose_reply, doubts
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import dose_grounds as grounds
from bot.chat.words import doses as dose_words
from bot.chat.words import general
from bot.chat.words import salts as words
from bot.chat.words.text import _
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.advice import limits
from core.advice.iron import plan_iron
from core.advice.outlook import with_premises
from core.advice.plan import Plan, Refusal
from core.advice.recipes import recipe, sea_water
from core.advice.salts import CALCIUM_TO_MAGNESIUM, HIGHEST, SaltWish, plan_salts
from core.advice.state import State, ammonia_as_n, nitrite_as_no2
from core.advice.treatments import (
    Cycling,
    NitriteSalt,
    cycle,
    dechlorinate,
    minds_salt,
    salt_for_nitrite,
)
from core.message.model import Basis, Parsed, Question
from core.tank import Tank

Topic = Callable[[Turn, Question, Parsed], Awaitable[list[Reply]]]

CONDITION = re.compile(
    r"\b(at|with|if|when|while)\s+(gh|kh|alk\w*|ca|calcium|mg|magnesium)\b", re.IGNORECASE
)
OF_THE_SEA = frozenset({"kh", "calcium", "magnesium"})
"""What is dosed in the sea, one at a time."""

AS_NITRITE = re.compile(r"\bas no2\b|\b(no2|nitrite)-n\b|\bas n\b", re.IGNORECASE)
"""A premise keeps no basis, but is in the ion's unit already where one was said."""

MAKING = ("prepare", "make", "mix", "remineralise", "remineralize")
_MAKING = re.compile(rf"\b({'|'.join(MAKING)}|sea ?water|salt ?water)\b", re.IGNORECASE)
THIOSULFATE = {"sodium thiosulfate", "sodium thiosulfate pentahydrate"}
TABLE_SALT = "sodium chloride"

BASES: Mapping[str, tuple[tuple[str, str], ...]] = {
    "ammonia": (("N", "as N"), ("NH4", "as NH4")),
    "nitrate": (("NO3", "as NO3"), ("N", "as N")),
    "phosphate": (("PO4", "as PO4"), ("P", "as P")),
}
"""What a wish may be counted as, and the words that say so."""

FORMULA = {"ammonia": "nh4", "nitrate": "no3", "phosphate": "po4"}


def topic_of(question: Question) -> Topic | None:
    """The topic of a dose that is not buffer alone; None for that."""
    analyte, substance = question.analyte, question.substance
    if analyte in {"chlorine", "total_chlorine"} or substance in THIOSULFATE:
        return _dechlorination
    if analyte == "nitrite" or (substance == TABLE_SALT and "nitrite" in question.premises):
        return nitrite
    if analyte == "ammonia" or substance == "ammonium chloride":
        return _cycling
    if analyte == "ph":
        return _ph
    if analyte in {None, "kh"} and not _second_goal(question):
        return None
    return _salts


def _goals(question: Question) -> tuple[dict[str, float], dict[str, float]]:
    """What is to be reached, and what is to rise by so much, by analyte."""
    named = (
        (question.analyte, question.target, question.delta),
        (question.also, question.also_target, question.also_delta),
    )
    targets = {name: to for name, to, _by in named if name and to is not None}
    deltas = {name: by for name, to, by in named if name and to is None and by is not None}
    second = _second_goal(question)
    if second is not None and question.also is None:
        targets[second] = question.premises[second]
    return targets, deltas


def _second_goal(question: Question) -> str | None:
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


async def _salts(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    if question.analyte is None or (question.target is None and question.delta is None):
        return [await turn.reply(words.no_recipe())]
    stored, state = await water_of(turn, question)
    if (refusal := one_at_a_time(question, stored)) is not None:
        return [await dose_reply.refuse(turn, refusal, stored.name if stored else None)]
    if question.analyte == "iron":
        return [await _iron(turn, question, stored, state)]
    if question.target is not None and basis_missing(question, stored):
        return [await _ask_basis(turn, question)]
    starts = {} if question.start_value is None else {question.analyte: question.start_value}
    second = _second_goal(question)
    wish = SaltWish(
        *_goals(question),
        starts=starts,
        substances=_salts_named(question, state) if second is None else (),
        volume_l=question.volume_l,
        premises={k: v for k, v in question.premises.items() if k != second},
        calcium_to_magnesium=question.ratio or CALCIUM_TO_MAGNESIUM,
    )
    plans = plan_salts(wish, state, known_tank=stored is not None)
    name = stored.name if stored is not None else None
    if isinstance(plans, Refusal):
        return [await dose_reply.refuse(turn, plans, name)]
    if len(plans) == 1:
        notes = (words.ratio(question.ratio),) if question.ratio else ()
        return [await dose_reply.planned(turn, plans[0], stored, name, *notes)]
    return [await _two_forms(turn, plans, name)]


def _salts_named(question: Question, state: State) -> tuple[str, ...]:
    """The salt that is named; "salt" for the sea is sea salt, never table salt alone."""
    if question.substance is None:
        return ()
    saltiest = max(state.salinity, question.target or 0.0, question.start_value or 0.0)
    salting = question.analyte == "salinity" and question.substance == TABLE_SALT
    return () if salting and saltiest > limits.SALT_WATER else (question.substance,)


def one_at_a_time(question: Question, stored: StoredTank | None) -> Refusal | None:
    """Refuse two wishes for the sea in one question; the second would pass for a reading."""
    if stored is None or not stored.tank.is_sea or question.analyte not in OF_THE_SEA:
        return None
    others = (OF_THE_SEA - {question.analyte}) & {*question.premises, question.also}
    if not others or CONDITION.search(question.text or ""):
        return None
    return Refusal("one_at_a_time", {"analyte": question.analyte})


async def _iron(turn: Turn, question: Question, stored: StoredTank | None, state: State) -> Reply:
    if question.start_value is not None:
        state = with_premises(state, {"iron": question.start_value})
    plans = plan_iron(question.substance, question.target, question.delta, question.volume_l, state)
    name = stored.name if stored is not None else None
    if isinstance(plans, Refusal):
        return await dose_reply.refuse(turn, plans, name)
    if len(plans) == 1:
        return await dose_reply.planned(turn, plans[0], stored, name)
    return await _two_forms(turn, plans, name)


def basis_missing(question: Question, stored: StoredTank | None) -> bool:
    """Whether a wish could be as nitrogen or as the ion, and nothing says which."""
    analyte = question.analyte or ""
    if analyte not in BASES or question.basis is not None:
        return False
    if re.search(rf"\b{FORMULA[analyte]}\b", question.text or "", re.IGNORECASE):
        return False
    return _kit_basis(question, stored) is None


def _kit_basis(question: Question, stored: StoredTank | None) -> Basis | None:
    kit = None if stored is None else stored.tank.kits.get(question.analyte or "")
    return None if kit is None else kit.basis


async def _ask_basis(turn: Turn, question: Question) -> Reply:
    analyte = question.analyte or ""
    choices = [
        Choice(words.as_basis(analyte, basis), "say_again", "", {"text": f"{question.text} {said}"})
        for basis, said in BASES[analyte]
    ]
    facts = {"ask": "basis", "analyte": analyte}
    return await turn.reply(words.basis_ask(analyte), choices=choices, facts=facts)


async def say_again(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Take a question again with what was missing in it."""
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    return await doubts.say(turn, choice.arguments["text"], turn.now)


async def _two_forms(turn: Turn, plans: tuple[Plan, ...], name: str | None) -> Reply:
    facts = {"forms": [dose_reply.plan_facts(plan, name) for plan in plans]}
    lines = words.two_forms(plans, name)
    lines.insert(2, dose_words.caution(plans[0]))
    lines.append(dose_words.afterwards(plans[0]))
    return await turn.reply(lines[:6], more=grounds.more(plans[0]), facts=facts)


async def with_pure_water(turn: Turn, question: Question, parsed: Parsed) -> list[Reply]:
    """A bucket of RO with salts, or so much RO into a tank that it reaches a wish."""
    if question.volume_l is None:
        return await changes.change(turn, question, parsed)
    targets = {**question.premises, **_goals(question)[0]}
    targets = {name: value for name, value in targets.items() if name in HIGHEST}
    if not targets:
        return [await turn.reply(words.no_recipe())]
    if set(targets) == {"salinity"}:
        return [await _sea_water(turn, targets["salinity"], question.volume_l)]
    unnamed = question.substance in {None, TABLE_SALT, *MAKING}
    named = () if unnamed else (question.substance or "",)
    ratio = question.ratio or CALCIUM_TO_MAGNESIUM
    found = recipe(targets, question.volume_l, named, ratio)
    if isinstance(found, Refusal):
        return [await dose_reply.refuse(turn, found, None)]
    facts = {
        "volume_l": found.volume_l,
        "to": dict(found.targets),
        "salts": [{"substance": s.substance, "grams": s.grams} for s in found.salts],
        "ph_stood": list(found.ph_stood),
    }
    return [await turn.reply(words.recipe(found), more=words.recipe_more(ratio), facts=facts)]


async def sea_water_asked(turn: Turn, question: Question) -> Reply | None:
    """How much sea salt makes so much new water; None where that is not what is asked.

    `mix 40 l of salt water to sg 1.025`; without a salinity, and beside a tank of the sea, it is
    asked for.
    """
    if question.substance != TABLE_SALT or question.volume_l is None:
        return None
    stored = turn.tank_named(question.tank) if question.tank else turn.current_tank
    made = _MAKING.search(question.text or "") is not None
    if question.analyte == "salinity" and question.target is not None and made:
        return await _sea_water(turn, question.target, question.volume_l)
    in_sea = stored is not None and stored.tank.is_sea
    if question.analyte is None and question.target is None and (made or in_sea):
        return await turn.reply(words.which_salinity(question.volume_l))
    return None


async def _sea_water(turn: Turn, salinity: float, volume: float) -> Reply:
    salt = sea_water(salinity, volume)
    if isinstance(salt, Refusal):
        return await dose_reply.refuse(turn, salt, None)
    facts = {
        "volume_l": volume,
        "to": {"salinity": salinity},
        "salts": [{"substance": salt.substance, "grams": salt.grams}],
    }
    return await turn.reply(words.sea_water(volume, salinity, salt.grams), facts=facts)


async def _ph(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    stored, _state = await water_of(turn, question)
    name = stored.name if stored is not None else None
    substance = question.substance or ""
    reason = "acid" if "acid" in substance else "ph_target"
    if reason == "ph_target" and question.substance is not None:
        reason = "substance_unknown"
    return [await dose_reply.refuse(turn, Refusal(reason, {"substance": substance}), name)]


async def _dechlorination(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
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
    if said is not None:
        stated = question.basis or ("ion" if AS_NITRITE.search(question.text or "") else None)
        said = nitrite_as_no2(said, stated)
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
        "volume_l": found.volume_l,
        "tank_id": stored.id if stored is not None else None,
    }
    choices = [
        Choice(_(words.YES_SALT), "confirm_salt", "yes", held),
        Choice(_(words.NO_SALT), "decline_salt", "no", {}),
    ]
    return [await turn.reply(words.salt_ask(), choices=choices, facts={"ask": "bears_salt"})]


async def _cycling(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    stored, state = await water_of(turn, question)
    name = stored.name if stored is not None else None
    if question.target is None:
        return [await turn.reply(dose_words.incomplete())]
    if basis_missing(question, stored):
        return [await _ask_basis(turn, question)]
    target = ammonia_as_n(question.target, question.basis or _kit_basis(question, stored))
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


async def confirm_salt(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """The keeper says that all in it bear salt."""
    await turn.uow.offers.take(offer.id, "confirm_salt")  # a later yes is about something else
    stored, state = await _held(turn, choice)
    found = salt_for_nitrite(choice.arguments["nitrite"], choice.arguments["volume_l"], state)
    name = stored.name if stored is not None else None
    if isinstance(found, Refusal):
        return [await dose_reply.refuse(turn, found, name)]
    return [await turn.reply(words.salt_answer(found, name), facts=_salt_facts(found))]


async def decline_salt(turn: Turn, offer: Offer, _choice: Choice) -> list[Reply]:
    """Not all in it bear salt, or nobody knows."""
    await turn.uow.offers.take(offer.id, "decline_salt")  # a later yes is about something else
    return [await turn.reply(words.salt_declined(), facts={"refused": "salt_species"})]


async def confirm_cycle(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """The keeper says that there are no animals."""
    await turn.uow.offers.take(offer.id, "confirm_cycle")  # a later yes is about something else
    stored, state = await _held(turn, choice)
    found = cycle(choice.arguments["target"], choice.arguments["volume_l"], state)
    name = stored.name if stored is not None else None
    if isinstance(found, Refusal):
        return [await dose_reply.refuse(turn, found, name)]
    return [await turn.reply(words.cycle_answer(found, name), facts=_cycle_facts(found))]


async def decline_cycle(turn: Turn, offer: Offer, _choice: Choice) -> list[Reply]:
    """There are animals after all."""
    await turn.uow.offers.take(offer.id, "decline_cycle")  # a later yes is about something else
    return [await turn.reply(words.cycle_declined(), facts={"refused": "animals_on_record"})]


async def _held(turn: Turn, choice: Choice) -> tuple[StoredTank | None, State]:
    stored = turn.tank_by_id(choice.arguments["tank_id"])
    if stored is None:
        return None, State(Tank(name=""), turn.local_now)
    return stored, await state_of(turn, stored, turn.now)


def _named(question: Question) -> dict[str, float | str]:
    return {"substance": question.substance or ""}


def _salt_facts(found: NitriteSalt) -> dict[str, Any]:
    return {
        "substance": TABLE_SALT,
        "volume_l": found.volume_l,
        "nitrite": found.nitrite,
        "chloride_mg_l": found.chloride,
        "grams": found.grams,
        "parts": [found.grams / found.count] * found.count,
        "every_hours": 24,
    }


def _cycle_facts(found: Cycling) -> dict[str, Any]:
    return {
        "substance": "ammonium chloride",
        "volume_l": found.volume_l,
        "from": found.start,
        "to": found.target,
        "grams": found.grams,
        "parts": [found.grams],
    }
