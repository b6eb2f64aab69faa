"""What is asked after an answer: does it harm the animals that are there, may the next part go in.

A question about animals that already live in the tank is about its water, or the plan, change or
dose just spoken of; whether others may join is asked otherwise. What is dangerous and what is safe
are asked with a yes of opposite meaning, so no answer here begins with yes or no.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bot.chat import (
    after_call,
    after_why,
    asked_water,
    dosing,
    eased,
    emergencies,
    for_kinds,
    own_plan,
    plants,
    standing,
    strangers,
    that_value,
    treatment_answers,
)
from bot.chat.after_why import Spoken
from bot.chat.calls_kept import CALLED, EASED
from bot.chat.emergencies import CAUSES
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, LOOKED_AT, PATIENCE
from bot.chat.state import state_of
from bot.chat.turn import ASKED, Turn
from bot.chat.words import after as words
from bot.chat.words import findings as finding_words
from bot.store.offers import Offer
from bot.store.tanks import StoredTank
from core.advice.findings import Finding, find, stands
from core.advice.findings._buffer import low_kh_limit
from core.advice.outlook import with_premises
from core.advice.poison_first import poison_standing
from core.advice.state import State
from core.message.after import Asked, asked, water_alone
from core.message.model import Parsed, Question
from core.message.plants import for_plants, only_plants
from core.message.waters import PURE


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer what is asked of the answer before; None where nothing is, or it fits none."""
    if not turn.incoming.addressed or parsed.values or parsed.events or parsed.command is not None:
        return None
    if for_plants(turn.incoming.text):
        return await _plants(turn, await _of_late(turn))
    if (said := asked(turn.incoming.text)) is None:
        return None
    offers = await _of_late(turn)
    if said.meaning == "add_part":
        return await _next_part(turn, offers)
    if said.meaning in after_call.MEANINGS:
        return await after_call.answer(turn, said, offers)
    if said.meaning == "fill":
        kind = water_alone(said.rest or "")
        if kind is None or kind in PURE:  # untreated, softened, pure: cautions have their say
            return None
        return await asked_water.judged(turn, Question("safe", text=turn.incoming.text))
    if said.meaning in after_why.MEANINGS:
        return None  # looked at before
    if said.meaning == "crash":
        return await _crash(turn, offers)
    return await _harm(turn, said, offers)


async def reason(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer why a plan is as it is; it goes first, since what was given at once is told so too."""
    if not turn.incoming.addressed or parsed.values or parsed.events:
        return None
    said = asked(turn.incoming.text)
    if said is None or said.meaning not in after_why.MEANINGS:
        return None
    return await after_why.answer(turn, said, _spoken(turn, await _of_late(turn)))


async def _of_late(turn: Turn) -> list[Offer]:
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    offers = await turn.uow.offers.latest(turn.chat.id, LOOKED_AT)
    return [offer for offer in offers if turn.now - offer.made_at <= patience]


def _facts(offer: Offer) -> Mapping[str, Any]:
    facts: Mapping[str, Any] = offer.context.get("facts", {})
    return facts


def tells_harm(offer: Offer) -> bool:
    """Whether an answer to a deed on record warned of it: washing soda for baking soda."""
    found = _facts(offer).get("findings", ()) if _facts(offer).get("events") else ()
    return offer.entry_id is not None and any(each["severity"] != "note" for each in found)


def _spoken(turn: Turn, offers: Sequence[Offer]) -> Spoken | None:
    """What was spoken of last; None where something else was told since, or help called for."""
    for offer in offers:
        facts = _facts(offer)
        if CALLED in offer.context or (offer.entry_id is not None and facts.get("events")):
            return None
        planned = any(each.verb == "log_dose" for each in offer.choices)
        tank = turn.tank_named(facts.get("tank") or "")
        if tank is not None and (planned or facts.get("forms") or facts.get("steps")):
            return Spoken(tank, facts, offer.context.get(ASKED))
        if offer.entry_id is not None or "refused" in facts:
            return None
    return None


# Does it harm those that are there ------------------------------------------------------------


async def _harm(turn: Turn, said: Asked, offers: Sequence[Offer]) -> list[Reply] | None:
    if _called(offers) is not None or await _is_eased(turn):
        return await warned_of(turn, offers)
    spoken = _spoken(turn, offers)
    stored = turn.current_tank if spoken is None else spoken.tank
    if stored is None:
        return None
    if said.rest is not None and only_plants(said.rest):
        return await _plants(turn, offers)
    state = await state_of(turn, stored, turn.now)
    others = for_kinds.not_there(said.rest, state)
    if others is None:
        return None  # nobody that we know
    if others and (salted := await treatment_answers.for_kinds(turn, offers, others)) is not None:
        return [salted]
    about = _about(spoken, offers)
    if said.meaning == "whom" and (about is None or not said.rest):
        return None
    if (not others or about is not None) and (warned := await warned_of(turn, offers)) is not None:
        return warned
    if others and about is not None:
        poison = _poison(state)
        return [await for_kinds.judged(turn, stored, state, about, others, poison)]
    if others and said.meaning == "well":
        return None  # may they join
    if not others and offers and (amount := _amount(_facts(offers[0]))) is not None:
        facts = dict(_facts(offers[0]))
        lines = words.amount(stored.name, *amount)
        return await strangers.beside(turn, [await turn.reply(lines, facts=facts)])
    if others:
        return [await for_kinds.in_water(turn, state, stored, others)]
    if spoken is not None and not _poison(state):
        return await strangers.beside(turn, [await _judge(turn, state, spoken)])
    if said.meaning == "hurts" and spoken is None and not _just_dosed(offers):
        return None
    text = turn.incoming.text
    replies = await standing.status(turn, Question("safe", stored.name, text=text))
    return await that_value.beside(turn, text, stored, state, replies)


async def _plants(turn: Turn, offers: Sequence[Offer]) -> list[Reply] | None:
    """What plants bear of what was spoken of last; a danger or a refusal is said again."""
    if (warned := await warned_of(turn, offers)) is not None:
        return warned
    latest = _facts(offers[0]) if offers else {}
    spoken = None if "days" in latest else _spoken(turn, offers)
    facts = latest if spoken is None else spoken.facts
    stored = turn.current_tank if spoken is None else spoken.tank
    if stored is None or not plants.is_of(turn.incoming.text, facts):
        return None
    return [await plants.answer(turn, stored, facts)]


async def warned_of(turn: Turn, offers: Sequence[Offer]) -> list[Reply] | None:
    """Of a danger called out, a refusal or a caution that was answered last: its words again."""
    stored = turn.current_tank
    if stored is not None and (eased_ := await eased.stands(turn, stored.id)) is not None:
        return [eased_]
    if stored is not None and (stands_ := await _poison_standing(turn, stored)) is not None:
        return [stands_]
    if (called := _called(offers)) is not None:
        there = turn.tank_by_id(called["tank"])  # its steps are what is asked about
        help_ = emergencies.help_in
        return [await help_(turn, there, called["danger"], gasping=called["gasping"])]
    if (against := _against(offers)) is not None:
        return [await turn.reply(against, facts=dict(_facts(offers[0])))]
    return None


async def _poison_standing(turn: Turn, stored: StoredTank) -> Reply | None:
    """The steps of a poison that stands in the tank, whatever was answered last; None of none."""
    danger = poison_standing(await state_of(turn, stored, turn.now))
    return None if danger is None else await emergencies.help_in(turn, stored, danger)


async def _is_eased(turn: Turn) -> bool:
    """Whether a call of the tank in use was eased since, which an unnamed "all ok?" is about."""
    stored = turn.current_tank
    return stored is not None and await eased.is_eased(turn, stored.id)


def _called(offers: Sequence[Offer]) -> dict[str, Any] | None:
    """The call for help that was answered last, where nothing was told since."""
    for offer in offers[:2]:
        if offer.entry_id is not None or EASED in offer.context:
            return None
        if CALLED in offer.context:
            called: dict[str, Any] = offer.context[CALLED]
            return called
    return None


def _amount(facts: Mapping[str, Any]) -> tuple[float, Mapping[str, Any] | None] | None:
    """Of an amount whose effect was told: over how many days it belongs, and whom it passes."""
    told = facts.get("effects") or [facts]
    if any("grams" not in each or "volume_l" not in each or "parts" in each for each in told):
        return None
    past = next((each["past_animals"] for each in told if each.get("past_animals")), None)
    return max(each.get("days", 1) for each in told), past


def _against(offers: Sequence[Offer]) -> list[str] | None:
    """What was said just now against what was asked for, which is what is asked about."""
    for offer in offers[:1]:
        why: list[str] | None = offer.context.get("why")
        if why and "refused" in _facts(offer):
            return words.none_given(why)
        if why and "caution" in _facts(offer):
            return why
    return None


def _poison(state: State) -> list[Finding]:
    """What makes animals ill in the water as it is now: that comes before every plan."""
    found = stands(state, frozenset(state.readings))
    return [f for f in found if f.severity != "note" and f.id in CAUSES]


def _about(spoken: Spoken | None, offers: Sequence[Offer]) -> Mapping[str, Any] | None:
    """The facts of what was spoken of last, or put in: a plan, an amount, a change, a dose."""
    if _just_dosed(offers) or (offers and _amount(_facts(offers[0])) is not None):
        return _facts(offers[0])
    return None if spoken is None else spoken.facts


def _just_dosed(offers: Sequence[Offer]) -> bool:
    told = (event for offer in offers[:1] for event in _facts(offer).get("events", ()))
    return any(event.get("kind") == "dose" for event in told)


async def _judge(turn: Turn, state: State, spoken: Spoken) -> Reply:
    """Whether where a plan or a change leads passes a limit of the animals."""
    if not spoken.is_plan:
        broken = bool(spoken.facts.get("broken"))
        unsuited = spoken.facts.get("unsuited") is not None
        lines = words.change(spoken.tank.name, broken=broken, unsuited=unsuited)
        return await turn.reply(lines, facts={"tank": spoken.tank.name})
    goals = spoken.goals
    potassium = spoken.facts.get("potassium_mg_l")
    if potassium is not None and "potassium" not in goals:
        before = state.last("potassium")
        goals["potassium"] = potassium + (before.value if before is not None else 0.0)
    known = {_what(finding) for finding in find(state, frozenset(goals))}
    found = [
        finding
        for finding in find(with_premises(state, goals), frozenset(goals))
        if finding.id in for_kinds.SUITING and _what(finding) not in known
    ]
    parts = len(spoken.facts.get("parts", (0,)))
    against = [finding_words.line(finding) for finding in found[:3]]
    lines = words.plan(spoken.tank.name, against, parts, unknown=not state.tank.stock)
    return await turn.reply(lines, facts=_found_facts(spoken.tank, found))


def _what(finding: Finding) -> tuple[object, ...]:
    return finding.id, finding.facts.get("species"), finding.facts.get("analyte")


def _found_facts(stored: StoredTank, found: Sequence[Finding]) -> dict[str, Any]:
    told = [{"id": f.id, "severity": f.severity, **f.facts} for f in found]
    return {"tank": stored.name, "findings": told}


# May the next part go in ------------------------------------------------------------------------


async def _next_part(turn: Turn, offers: Sequence[Offer]) -> list[Reply]:
    """Work the rest of the plan out anew, from what was measured since: the gates look again."""
    stored = turn.current_tank
    own = None if stored is None else await own_plan.of(turn, stored.id)
    goals: dict[str, float] = {} if own is None else {own.analyte: own.target}
    if not goals and (spoken := _spoken(turn, offers)) is not None and spoken.is_plan:
        stored, goals = spoken.tank, spoken.goals
    if stored is None or len(goals) != 1:
        return [await turn.reply(words.which_part())]
    ((analyte, target),) = goals.items()
    if poison := _poison(await state_of(turn, stored, turn.now)):
        lines = words.no_part_now([finding_words.line(finding) for finding in poison[:2]])
        return [await turn.reply(lines, facts=_found_facts(stored, poison))]
    question = Question("dose", stored.name, analyte, target=target, text=f"dose {analyte}")
    return await dosing.dose(turn, question, Parsed("question", question=question))


# May pH crash -----------------------------------------------------------------------------------


async def _crash(turn: Turn, offers: Sequence[Offer]) -> list[Reply] | None:
    """What holds pH is KH: as it is, or as it would be after the plan or change spoken of."""
    spoken = _spoken(turn, offers)
    stored = turn.current_tank if spoken is None else spoken.tank
    if stored is None:
        return None
    state = await state_of(turn, stored, turn.now)
    limit = low_kh_limit(state)
    kh = None
    if spoken is not None and spoken.is_plan:
        kh = spoken.goals.get("kh")
    elif spoken is not None:
        after = spoken.facts.get("end") or spoken.facts.get("stood") or {}
        kh = after.get("kh")
    later = kh is not None
    now = state.last("kh")
    kh = kh if kh is not None or now is None else now.value
    facts: dict[str, Any] = {"tank": stored.name, "limit": limit}
    if kh is not None:
        facts["kh"] = kh
    return [await turn.reply(words.crash(stored.name, kh, limit, later=later), facts=facts)]
