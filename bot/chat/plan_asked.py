"""What is asked of the amounts of the plan just given: in cups, of a bag, of which water and day.

Asked in the words of `core.message.plan_asked`, before those words are taken for less. What a plan
has an answer for already is answered so; nothing is stored.
"""

from __future__ import annotations

from typing import Any, Final

from bot.chat import own_plan, plan_gate, plan_now, plan_parts, plan_talk, poison_first
from bot.chat.given_plan import Given, last_in, running
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, LOOKED_AT, PATIENCE
from bot.chat.plan_figures import ROUNDING, part_of
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import doses as dose_words
from bot.chat.words import plan_figures as words
from bot.chat.words import plan_talk as plan_words
from bot.chat.words.numbers import grams
from core.message.model import Parsed
from core.message.plan_asked import Asked, plan_asked
from core.message.plan_said import Amounts, substances_named

OF_NEWEST: Final = frozenset({"enough", "scope", "drop"})
"""What is said of a plan only while nothing else was spoken of since."""

OF_AMOUNT: Final = frozenset({"spoons", "dry", "how", "enough", "scope"})
"""What nothing more is told of once all parts are in."""

REFUSING: Final = frozenset({"correct", "no"})
"""Commands that begin with a word of refusal: no, leave it at 3."""

NEAR: Final = 0.05
"""So near a value told is the one on record. [its unit]"""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer what is asked of the newest plan's amounts; None where nothing is, or no plan is."""
    if not turn.incoming.addressed or parsed.values or parsed.events:
        return None
    said = plan_asked(turn.incoming.text)
    refuses = parsed.command is not None and parsed.command.name in REFUSING
    if said is None or (parsed.command is not None and not (refuses and said.meaning == "drop")):
        return None
    plan = await running(turn)
    if plan is None or not _is_of(turn, plan):
        return None
    offers = await turn.uow.offers.latest(turn.chat.id, LOOKED_AT)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    of_late = [offer for offer in offers if turn.now - offer.made_at <= patience]
    if said.meaning in OF_NEWEST and not await plan_now.is_newest(turn, plan.offer, of_late):
        return None
    if said.meaning == "drop":
        return await _left(turn, parsed, plan, said)
    left = plan.count - await own_plan.parts_logged(turn, plan.offer.id, plan.held)
    if left < 1 and said.meaning in OF_AMOUNT:
        told = await turn.reply(plan_words.all_logged(plan.count))
        return await first(turn, plan) or [told]
    if said.meaning != "enough" and said.meaning != "scope":
        return await plan_talk.of_plan(turn, parsed, said.meaning, Amounts())
    if (gated := await first(turn, plan)) is not None:
        return gated
    if said.meaning == "scope":
        return [await _scope(turn, plan)]
    return [await _enough(turn, plan, said, left)]


def _is_of(turn: Turn, plan: Given) -> bool:
    """Whether no other substance is named than the plan's."""
    named = substances_named(turn.incoming.text)
    return not named or named <= {*dict(plan.salts), "soda"}


async def _left(turn: Turn, parsed: Parsed, plan: Given, said: Asked) -> list[Reply] | None:
    """Let the water be as it is; a value is the one on record, or behind a no under the goal."""
    if said.value is not None:
        goal = plan.facts.get("to")
        if goal is None or len(plan.analytes) != 1:
            return None
        stored = turn.tank_by_id(plan.tank_id)
        read = None if stored is None else await state_of(turn, stored, turn.now)
        held = None if read is None else read.last(plan.analytes[0])
        start = plan.facts.get("from") if held is None else held.value
        stands = start is not None and abs(start - said.value) <= NEAR
        begun = await last_in(turn, plan) is not None
        if not stands and (begun or not said.refuses or said.value >= goal):
            return None  # it may end there instead
    return await plan_talk.of_plan(turn, parsed, "drop", Amounts())


async def first(turn: Turn, plan: Given) -> list[Reply] | None:
    """What goes before any amount: a danger, ammonia over the gate, something else that went in."""
    stored = turn.tank_by_id(plan.tank_id)
    if stored is None:
        return None
    told = (
        await plan_now.danger_first(turn, plan)
        or await poison_first.refused(turn, stored)
        or await plan_gate.refused(turn, stored)
    )
    if told is not None:
        return [told]
    besides = own_plan.dosed_besides
    if await besides(turn, plan.offer.id, stored.id, plan.offer.made_at):
        return await plan_parts.answer(turn, "when_next", plan, Amounts())
    return None


async def _scope(turn: Turn, plan: Given) -> Reply:
    """That an amount is of the whole water, and what it is in all."""
    part, single = part_of(plan), len(plan.salts) == 1
    whole = grams(plan.salts[0][1] * plan.count) if single else _whole(plan, plan.count)
    volume = plan.facts.get("volume_l") or plan.held.get("volume_l")
    lines = [words.of_all_water(part, whole, volume, plan.count, plan.every_hours)]
    facts: dict[str, Any] = {"parts": list(plan.parts), "every_hours": plan.every_hours}
    return await _below(turn, plan, lines, facts)


async def _enough(turn: Turn, plan: Given, said: Asked, left: int) -> Reply:
    """What is at hand against what the parts that are left take."""
    need = plan.parts[0] * left
    whole = _whole(plan, left)
    facts: dict[str, Any] = {"needed": need, "parts": list(plan.parts)}
    if said.grams is None or len(plan.salts) != 1:
        return await _below(turn, plan, [words.takes(whole)], facts)
    facts |= {"at_hand": said.grams, "enough": said.grams * ROUNDING >= need}
    return await _below(turn, plan, [words.against(whole, said.grams, need, ROUNDING)], facts)


async def _below(turn: Turn, plan: Given, lines: list[str], facts: dict[str, Any]) -> Reply:
    """No amount without the condition that its plan has."""
    if (below := plan.facts.get("only_if_ammonia_below")) is not None:
        lines.append(dose_words.only_below(below))
        facts["only_if_ammonia_below"] = below
    return await turn.reply(lines, facts=facts)


def _whole(plan: Given, count: int) -> str:
    """So many parts together, as they are told."""
    if not plan.salts:
        return plan_words.of_product(plan.parts[0] * count, plan.held["substance"])
    return plan_words.salts([(name, mass * count) for name, mass in plan.salts])
