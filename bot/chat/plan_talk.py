"""What is said of the plan just given: how it goes in, when to go on, that all of it went in.

The answers are no offers: the plan stays what `done`, `slower` and its buttons are about.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import timedelta
from typing import Any

from bot.chat import doses, own_plan, presses
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.typed import GROUP_PATIENCE, LOOKED_AT, PATIENCE
from bot.chat.words import doses as dose_words
from bot.chat.words import plan_talk as words
from bot.chat.words.numbers import when
from bot.store.offers import Offer
from core.advice import limits
from core.advice.dissolving import jug_litres, stock_for
from core.advice.spoons import spoon_grams
from core.message.model import Parsed
from core.message.plan_talk import About, about


@dataclass(frozen=True, slots=True)
class Given:
    """A plan that was given, as its offer keeps it.

    Attributes
    ----------
    offer : Offer
        Of its answer.
    held : dict
        What its button to log a part holds.
    salts : tuple of (str, float)
        Each salt with its grams a part; empty for a bought product. [g]
    parts : tuple of float
        Of its first substance, what goes in each time. [g], of a product [mL]
    every_hours : float
        Between them. [h]
    """

    offer: Offer
    held: dict[str, Any]
    salts: tuple[tuple[str, float], ...]
    parts: tuple[float, ...]
    every_hours: float

    @property
    def count(self) -> int:
        """In how many parts."""
        return len(self.parts)

    @property
    def facts(self) -> dict[str, Any]:
        """The numbers of its answer."""
        facts: dict[str, Any] = self.offer.context.get("facts", {})
        return facts

    @property
    def analytes(self) -> list[str]:
        """What it is to raise."""
        goals = self.facts.get("goals")
        return [goal["analyte"] for goal in goals] if goals else ["kh"]


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer what is said of the newest plan; None where nothing is, or where there is none."""
    if not turn.incoming.addressed or parsed.command is not None:
        return None
    if (said := about(turn.incoming.text)) is None:
        return None
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    offers = await turn.uow.offers.latest(turn.chat.id, LOOKED_AT)
    of_late = [offer for offer in offers if turn.now - offer.made_at <= patience]
    if said == "drop":
        return await _dropped(turn, of_late[0]) if of_late else None
    for offer in of_late:
        if (plan := _given(offer)) is not None:
            return await _about(turn, said, plan)
        facts = offer.context.get("facts", {})
        if "largest_safe_share" in facts:
            return await _about_change(turn, said, facts)
    return None


async def _about_change(turn: Turn, said: About, facts: Mapping[str, Any]) -> list[Reply] | None:
    """What is asked of a water change that was answered; None where it fits none, or none is safe.

    A change that was refused without smaller ones has no way to be done.
    """
    if not facts.get("steps"):
        return None
    emergency = facts.get("emergency", False)
    if said == "how":
        share = facts["steps"][0]
        volume = facts["litres"] / facts["share"] if "litres" in facts else None
        warm = facts["before"].get("temperature")
        told = {
            "share": share,
            "litres": None if volume is None else share * volume,
            "temperature": warm,
        }
        shown = {name: value for name, value in told.items() if value is not None}
        return [await turn.reply(words.how_to_change(share, volume, warm), facts=shown)]
    if said == "when_next":
        return [await turn.reply(words.next_change(emergency=emergency))]
    return [await turn.reply(words.change_later(emergency=emergency))] if said == "later" else None


def _given(offer: Offer) -> Given | None:
    held = next((each.arguments for each in offer.choices if each.verb == "log_dose"), None)
    if held is None:
        return None
    facts = offer.context.get("facts", {})
    parts = (facts.get("salts") or [facts])[0].get("parts", (0.0,))
    every = facts.get("every_hours", limits.DOSE_EVERY_HOURS)
    return Given(offer, held, tuple(doses.salts_of(held)), tuple(parts), every)


async def _about(turn: Turn, said: About, plan: Given) -> list[Reply] | None:
    if said == "at_once":
        return await _kept_apart(turn, plan)
    if said == "when_next":
        return [await _when_next(turn, plan)]
    if said == "later":
        emergency = plan.facts.get("emergency", False)
        tested = dose_words.to_test(plan.analytes)
        return [await turn.reply(words.part_later(tested, emergency=emergency))]
    if said in {"gave_all", "gave_one"}:
        return await _gave(turn, plan, all_of_it=said == "gave_all")
    if not plan.salts:
        return None  # how a bought product goes in stands on its label
    tank_id, since = plan.held["tank_id"], plan.offer.made_at
    besides = own_plan.dosed_besides
    if tank_id is not None and await besides(turn, plan.offer.id, tank_id, since):
        return [await _when_next(turn, plan)]  # the plan knows nothing of it: none may go in
    if said == "spoons":
        return [await _without_scale(turn, plan)]
    return [await _how(turn, plan, dry=said == "dry")]


async def _kept_apart(turn: Turn, plan: Given) -> list[Reply] | None:
    """Refuse to put the parts of a plan together; None where there is but one."""
    if plan.count < 2:
        return None
    facts = {"parts": list(plan.parts), "every_hours": plan.every_hours}
    return [await turn.reply(words.kept_apart(plan.count, plan.every_hours), facts=facts)]


async def _how(turn: Turn, plan: Given, *, dry: bool) -> Reply:
    jugs = [(name, grams, jug_litres(name, grams)) for name, grams in plan.salts]
    facts = {
        "jugs": [
            {"substance": name, "grams": grams, "litres": litres} for name, grams, litres in jugs
        ]
    }
    hazards = [dose_words.CAUTIONS[each] for each in plan.held.get("cautions", ())]
    return await turn.reply(words.how(jugs, hazards, dry=dry), facts=facts)


async def _without_scale(turn: Turn, plan: Given) -> Reply:
    """Why no spoon measures it, and how a kitchen scale does."""
    name, grams = plan.salts[0]
    spoon, stock = spoon_grams(name, 1.0), stock_for(name, grams)
    facts: dict[str, Any] = {"substance": name, "grams": grams}
    if spoon is not None:
        facts["spoon_grams"] = list(spoon[1:])
    lines = [words.not_by_spoon(name, spoon)]
    for salt, part in plan.salts:
        made = stock_for(salt, part)
        lines.append(words.weighed(salt, part, made))
        if made is not None:
            facts.setdefault("stock", []).append(
                {"substance": salt, "grams": made.grams, "millilitres": made.millilitres}
            )
    if stock is not None:
        lines.append(words.keep_stock())
    if len(plan.analytes) == 1 and (target := plan.facts.get("to")) is not None:
        lines.append(words.rather_change(plan.analytes[0], target))
    return await turn.reply(lines, facts=facts)


async def _when_next(turn: Turn, plan: Given) -> Reply:
    """When to test, and with it when the next part may go in."""
    tank_id = plan.held["tank_id"]
    begun = None
    if tank_id is not None:
        put_in = await turn.uow.log.events(tank_id, kinds=["dose"], since=plan.offer.made_at)
        begun = put_in[0].at if put_in else None
    at = (begun or turn.now) + timedelta(hours=plan.every_hours)
    lines = words.when_next(
        dose_words.to_test(plan.analytes),
        plan.every_hours,
        when(at.astimezone(turn.chat.zone), turn.local_now),
        begun=begun is not None,
        goes_on=plan.count > 1,
    )
    facts = {"test_at": at.isoformat(), "every_hours": plan.every_hours}
    return await turn.reply(lines, facts=facts)


async def _gave(turn: Turn, plan: Given, *, all_of_it: bool) -> list[Reply]:
    """Put on record what is told to be in: the next part, or all that is left of the plan."""
    logged = await own_plan.parts_logged(turn, plan.offer.id, plan.held)
    left = plan.count - logged
    if left < 1:
        return [await turn.reply(words.all_logged(plan.count))]
    said = f"{own_plan.log_id(plan.offer.id)}:{turn.incoming.update_id}"
    return await doses.log_parts(turn, said, plan.held, left if all_of_it else 1)


async def _dropped(turn: Turn, newest: Offer) -> list[Reply]:
    """Let it be: what we asked is left out, a plan is none; what is on record stays there."""
    no = next((each for each in newest.choices if each.meaning == "no"), None)
    if no is not None and newest.used is None:
        return await presses.take(turn, newest, no)
    if newest.entry_id is None:
        return [await turn.reply(words.nothing_stored())]
    undo = [each for each in newest.choices if each.verb == "undo"]
    return [await turn.reply(words.still_on_record(), choices=undo)]
