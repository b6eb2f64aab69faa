"""``put in 60 g soda what happens now``: what a dose that is in the water did to it."""

from __future__ import annotations

from dataclasses import replace

from bot.chat import effects, plan_now, what_now
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import after_dose as words
from bot.chat.words import effects as effect_words
from bot.chat.words import findings as finding_words
from bot.store.tanks import StoredTank
from core.advice.effects import effects_of
from core.advice.findings import LOOKED_BACK, OVERDOSES, stands
from core.advice.plan import Refusal
from core.advice.spoons import least_grams
from core.message.beside_value import asks_next
from core.message.deed_asked import what_happens
from core.message.model import Event, Parsed

_NEXT = "what now"
"""How `what_now` is asked."""


async def asked_beside(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """What the dose does that is told in the same message; None where that is not asked.

    What is too much stands in the answer to the dose already.
    """
    question = parsed.question
    if question is None or question.kind != "effect":
        return None
    if question.substance in {product.name for product in turn.products}:
        return None  # by its label
    told = [e for e in parsed.events if e.kind == "dose" and e.substance == question.substance]
    stored = turn.current_tank
    if not told or stored is None:
        return None
    return [await _did(turn, stored, told[0])]


async def now(turn: Turn, parsed: Parsed) -> list[Reply]:
    """``… what now`` behind a dose or a value: the steps of what is wrong, once it is on record."""
    if parsed.values and parsed.question is None and asks_next(turn.incoming.text):
        said = turn.incoming
        turn.incoming = replace(said, text=_NEXT)
        of_plan = await plan_now.what_now(turn)  # kh 4. next?: its next part, where it has one
        turn.incoming = said
        if of_plan is not None:
            return of_plan
        next_ = await what_now.typed(turn, _NEXT)
        return [] if next_ is None else [next_]
    doses = [event for event in parsed.events if event.kind == "dose"]
    if not doses or parsed.question is not None:
        return []
    rest = turn.incoming.text[doses[-1].end :].strip(" \t,.;:-–!")
    steps = await what_now.typed(turn, rest) if rest else None
    return [] if steps is None else [steps]


async def typed(turn: Turn) -> Reply | None:
    """``what did that do``, some time after the dose; None where nothing went in of late."""
    if not turn.incoming.addressed or not what_happens(turn.incoming.text):
        return None
    return await last_did(turn)


async def last_did(turn: Turn) -> Reply | None:
    """What the last dose of late in the tank in use did; None where nothing went in."""
    stored = turn.current_tank
    if stored is None:
        return None
    state = await state_of(turn, stored, turn.now)
    doses = [
        each
        for each in state.events or ()
        if each.what.kind == "dose" and state.now - LOOKED_BACK < each.at <= state.now
    ]
    if not doses:
        return None
    return await _did(turn, stored, max(doses, key=lambda each: each.at).what, judged=True)


async def _did(turn: Turn, stored: StoredTank, dose: Event, *, judged: bool = False) -> Reply:
    """What it moves, by its grams; what is not known of it."""
    name, volume, grams = (
        dose.substance or "",
        dose.litres or stored.tank.volume_l,
        least_grams(dose),
    )
    if volume is None:
        return await turn.reply(
            words.litres_first(stored.name), facts={"refused": "volume_unknown"}
        )
    state = await state_of(turn, stored, turn.now)
    found = None if grams is None else effects_of(name, grams, volume, state)
    facts: dict[str, object] = {"tank": stored.name}
    if found is None or isinstance(found, Refusal):
        return await turn.reply(
            words.unknown(name), facts={**facts, "refused": "substance_unknown"}
        )
    late = [f for f in stands(state, frozenset()) if f.id in OVERDOSES] if judged else []
    lines = [effect_words.head(each, in_tank=False) for each in found]
    lines += [effect_words.two_forms()] if len(found) > 1 else []
    lines += [words.by_spoons()] if dose.grams is None else []
    lines += [finding_words.line(finding) for finding in late]
    if not late:
        lines.append(words.test_later())
    facts |= effects.facts_of(found)
    if late:
        facts["findings"] = [{"id": f.id, "severity": f.severity, **f.facts} for f in late]
    return await turn.reply(lines, facts=facts)
