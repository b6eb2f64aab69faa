"""What is next of a plan right after it or its readings, unless something is wrong in its tank."""

from __future__ import annotations

from typing import Final

from bot.chat import (
    emergencies,
    given_tests,
    given_unheard,
    own_plan,
    plan_gate,
    plan_parts,
    poison_first,
)
from bot.chat import what_now as now
from bot.chat.given_plan import DROPPED, OF_PLAN, Given, given, running
from bot.chat.model import Reply
from bot.chat.patience import LOOKED_AT
from bot.chat.state import state_of
from bot.chat.turn import ABOUT, ASKED, Turn
from bot.chat.words import findings as finding_words
from bot.chat.words import names
from bot.store.offers import Offer
from bot.store.tanks import StoredTank
from core.advice.calls import asks_what_now
from core.advice.danger import overdosed
from core.advice.findings import OVERDOSES, stands
from core.message.plan_said import Amounts, said_of_plan
from core.message.plan_talk import About
from core.message.plan_words import Telling, telling

NOTHING_SAID: Final = frozenset({None, "followup"})
"""What a reply expects that only asks what was meant."""


OF_PART: Final = frozenset({"give", "put", "part", "place", "next", "inside"})
"""Classes of words that make a question whether it is safe one of a part of a plan."""

OF_AMOUNTS: Final = frozenset(
    "at_once when_next later how dry spoons to_come so_much a_day days go_on hour check".split()  # noqa: SIM905
)
"""What is asked of the parts of a plan, which none is that holds no more."""

WAITED_FOR: Final = frozenset({"when_next", "later", "days", "hour"})
"""What is asked of when more goes in: nothing does after far too much, by a plan or by none."""

TOLD_BY_PLAN: Final = frozenset({"ammonia", "overdose"})
"""What its next part is refused for, in so many words."""


async def what_now(turn: Turn) -> list[Reply] | None:
    """`what now` right after a plan or a part of it: what is next, unless something is wrong."""
    text, named = now.without_tank(turn, turn.incoming.text)
    heard = telling(text)
    is_asked = asks_what_now(text) and (heard is None or heard.meaning != "effect")
    plan = await running(turn) if is_asked else None
    if plan is None or plan.offer.used == DROPPED:
        return None
    if named is not None and named.id != plan.tank_id:
        return None
    stored = turn.tank_by_id(plan.tank_id)
    if stored is not None and (await now.danger_in(turn, stored))[0] is not None:
        return None
    if (untold := await given_unheard.again(turn, plan)) is not None:
        return untold
    offers = await turn.uow.offers.latest(turn.chat.id, LOOKED_AT)
    told_since = [each for each in offers if each.id > plan.offer.id]
    newest = await is_newest(turn, plan.offer, list(offers))
    newest = newest or (bool(told_since) and all(map(_is_reading, told_since)))
    retested = await own_plan.was_retested(turn, plan.tank_id, offers[0])
    return await plan_parts.answer(turn, "go_on", plan, Amounts()) if newest or retested else None


def _is_reading(offer: Offer) -> bool:
    """Whether an answer is to readings alone."""
    facts = offer.context.get("facts", {})
    return offer.entry_id is not None and bool(facts.get("values")) and not facts.get("events")


async def is_newest(turn: Turn, answered: Offer, of_late: list[Offer]) -> bool:
    """Whether nothing else was spoken of since a plan or a change but that it was done."""
    for offer in of_late:
        if offer.id == answered.id:
            return True
        if offer.context.get(OF_PLAN) == answered.id:
            continue
        if offer.entry_id is not None:
            entry = await turn.uow.log.get(turn.chat.id, offer.entry_id)
            changed = [event.what.kind == "water_change" for event in entry.events] if entry else []
            is_part = entry is not None and await own_plan.is_part(turn, entry, answered.id)
            if not is_part and not (changed and all(changed) and given(answered) is None):
                return False
        elif not offer.choices and (ABOUT in offer.context or _is_of_it(offer, answered)):
            continue  # why it is so slow
        elif offer.choices or set(offer.context) - {ASKED} or offer.expects not in NOTHING_SAID:
            return False  # more than which of two was done, or that nothing was understood
    return False


def _is_of_it(offer: Offer, answered: Offer) -> bool:
    """Whether an answer leaves a plan or a change what is spoken of, as it keeps its question."""
    asked = answered.context.get(ASKED)
    numbers = offer.context.get("facts", {}).keys() & {"parts", "steps", "salts", "forms"}
    return asked is not None and offer.context.get(ASKED) == asked and not numbers


async def danger_first(turn: Turn, plan: Given) -> Reply | None:
    """The steps of what is wrong in a plan's tank, where the plan itself does not tell it."""
    stored = turn.tank_by_id(plan.tank_id)
    if stored is None:
        return None
    danger, gasping = await now.danger_in(turn, stored)
    if danger is None or danger in TOLD_BY_PLAN:
        return None
    return await emergencies.help_in(turn, stored, danger, gasping=gasping)


async def held_back(turn: Turn, said: About | Telling, plan: Given | None) -> Reply | None:
    """That none of a plan goes in, where a poison came into its tank since it was given.

    Also where a part is asked for and ammonia was read that is over what the plan bears; what is
    next is worked out anew, which says so as well.
    """
    stored = turn.current_tank if plan is None else turn.tank_by_id(plan.tank_id)
    if stored is None or (plan is None and said not in WAITED_FOR):
        return None
    of_amounts = plan is not None and said in OF_AMOUNTS
    over = await given_tests.reached(turn, plan) if of_amounts and plan is not None else None
    if over is not None:
        return over  # the water is past its goal: it is no plan to send anybody back to
    waited = said in WAITED_FOR or (
        plan is not None
        and said in OF_AMOUNTS
        and plan.count > await own_plan.parts_logged(turn, plan.offer.id, plan.held)
    )
    if waited and overdosed(await state_of(turn, stored, turn.now)):
        return await emergencies.help_in(turn, stored, "overdose")
    if said in WAITED_FOR and (too_much := await _too_much(turn, stored)) is not None:
        return too_much
    if plan is None:
        return None
    if plan.held.get("volume_l") == stored.tank.volume_l:
        poisoned = await poison_first.refused(turn, stored)
        if poisoned is not None:
            return poisoned
    asked_of_part = said in {"to_come", "how", "dry", "spoons"}
    if said == "safe":
        words_of = said_of_plan(turn.incoming.text)
        asked_of_part = words_of is not None and bool(words_of.classes & OF_PART)
    return await plan_gate.refused(turn, stored) if asked_of_part else None


async def _too_much(turn: Turn, stored: StoredTank) -> Reply | None:
    """That nothing more goes in before a test, where too much for one day is in."""
    state = await state_of(turn, stored, turn.now)
    found = stands(state, frozenset())
    late = [each for each in found if each.id in OVERDOSES and each.severity == "alarm"]
    if not late:
        return None
    lines = [names.of_tank(stored.name, finding_words.line(finding)) for finding in late]
    told = [{"id": each.id, "severity": each.severity, **each.facts} for each in late]
    return await turn.reply(lines, facts={"tank": stored.name, "findings": told})
