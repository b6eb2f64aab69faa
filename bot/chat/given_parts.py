"""What of a plan went in, or shall: a part or more, half of one, so much; and whether twice.

A deed that may be one that is on record already is asked about, never logged again.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime, timedelta
from typing import Any, Final

from bot.chat import doses, given_logged, given_tests, moved_on, off_record, own_plan, unheard
from bot.chat.given_plan import LOG_SOME, OF_PLAN, Given, last_in, running
from bot.chat.model import Reply
from bot.chat.off_record import LINES, NAMELESS
from bot.chat.patience import LOOKED_AT, PATIENCE
from bot.chat.plan_figures import ROUNDING, part_of
from bot.chat.turn import ABOUT, ASKED, Turn
from bot.chat.words import doses as dose_words
from bot.chat.words import given_parts as words
from bot.chat.words import plan_talk as plan_words
from bot.chat.words.numbers import when
from bot.chat.words.text import _
from bot.store.offers import Choice, Offer
from core.message.plan_more import names_later
from core.message.plan_said import Amounts
from core.message.plan_talk import About
from core.message.plan_words import Telling

GIVEN: Final = frozenset(
    {"gave_all", "gave_two", "gave_double", "gave_one", "gave_it", "gave_half", "so_much"}
)
"""What is told of what went in, or of how much shall."""

OF_WHICH: Final = "of_which"
"""Under which the question of which salt so many grams are keeps them."""

OF_HALF: Final = "of_half"
"""Which the question of what a half is of keeps."""

WAITS: Final = timedelta(hours=72)
"""So long after a plan was given `done` may be of it; our judgement."""
SOON: Final = timedelta(hours=1)

SHORT: Final = 0.5
"""Of the time between two parts: what is told sooner may be the part before, told twice."""


async def answer(
    turn: Turn, said: About | Telling, plan: Given, amounts: Amounts
) -> list[Reply] | None:
    """Put on record what is told to be in: a part or more, all that is left, or so much."""
    if said == "gave_it" and await turn.uow.reminders.of_chat(turn.chat.id, only_open=True):
        return None  # it may be what a reminder waits for
    if said == "so_much":
        return await _so_much(turn, plan, amounts)
    if said == "gave_half":
        return await _half(turn, plan)
    said_by = f"{own_plan.log_id(plan.offer.id)}:{turn.incoming.update_id}"
    share = await own_plan.share_logged(turn, plan.offer.id, plan.held)
    logged = await own_plan.parts_logged(turn, plan.offer.id, plan.held)
    left = plan.count - logged
    if amounts.of_dose and not (said == "gave_all" and _is_all(plan, amounts.grams or 0.0)):
        if len(plan.salts) > 1 and amounts.grams is not None:
            salts = [name for name, _grams in plan.salts]
            lines = plan_words.grams_of_which(amounts.grams, salts)
            kept = {OF_PLAN: plan.offer.id, OF_WHICH: amounts.grams}
            return [await turn.reply(lines, context=kept, expects="followup")]
        held = _held(plan, amounts)
        if held is not None and await moved_on.since(turn, plan):
            of_which = {OF_WHICH: held["grams"]} if "grams" in held else {OF_HALF: True}
            kept = {OF_PLAN: plan.offer.id, **of_which}
            return [await moved_on.ask(turn, held, to_log(plan, held, shown(held)), kept)]
        return None if held is None else await doses.log_parts(turn, said_by, held)
    if said == "gave_double":
        count = 1 if await _just_in(turn, plan, logged) else 2
        return await doses.log_parts(turn, said_by, plan.held, count)
    if left < 1:
        return [await turn.reply(plan_words.all_logged(plan.count))]
    asked = await _asked_last(turn, plan) if said in {"gave_it", "gave_one"} else None
    if asked is not None:
        if OF_WHICH not in asked:
            return await _half(turn, plan)
        return await answer(turn, "gave_it", plan, Amounts(grams=asked[OF_WHICH]))
    if said in {"gave_it", "gave_one"} and (meant := await _so_much_meant(turn, plan)) is not None:
        return await given_logged.log_some(turn, *meant)
    if said in {"gave_it", "gave_one"} and not share:
        tested = await given_tests.tested(turn, plan)
        if tested is not None and given_tests.shows_it(plan, tested):
            return [await given_tests.before_test(turn, plan, tested)]
    begun = max(share - logged, 0.0)  # of the next part
    if begun > 0.0 and (said in {"gave_it", "gave_one"} or left == 1):
        return await doses.log_parts(turn, said_by, doses.so_much_of(plan.held, 1.0 - begun))
    if said in {"gave_it", "gave_one"} and logged and not names_later(turn.incoming.text):
        at = await last_in(turn, plan)
        if at is not None and turn.now - at < timedelta(hours=SHORT * plan.every_hours):
            return [await _twice(turn, plan, at)]
    count = {"gave_all": left, "gave_two": min(left, 2)}.get(said, 1)
    return await doses.log_parts(turn, said_by, plan.held, count)


async def done(turn: Turn, *, sure: bool = True) -> list[Reply] | None:
    """``done`` of a plan that is not the newest answer: a part of it, or it is asked.

    `sure` is whether it tells by itself that something was done. None where no plan waits for it,
    or a reminder may.
    """
    if await turn.uow.reminders.of_chat(turn.chat.id, only_open=True):
        return None
    plan = await running(turn, WAITS)
    if plan is None:
        return None
    newer = []
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        if offer.id == plan.offer.id:
            break
        newer.append(offer)
    quiet = [await is_quiet(turn, offer, plan.offer.id) for offer in newer]
    quiet.append(not await unheard.passed_over(turn, plan.offer))
    spoken_of = bool(newer) and newer[0].context.get(OF_PLAN) == plan.offer.id
    recent = turn.now - plan.offer.made_at <= PATIENCE or spoken_of
    if all(quiet) and (recent or names_later(turn.incoming.text)):
        return await answer(turn, "gave_it", plan, Amounts())
    logged = await own_plan.share_logged(turn, plan.offer.id, plan.held)
    tank = turn.tank_by_id(plan.tank_id)
    if logged or tank is None or not sure:
        return None
    if any(offer.entry_id is not None and turn.now - offer.made_at <= SOON for offer in newer[:1]):
        return None  # of what was just told
    at = when(plan.offer.made_at.astimezone(turn.chat.zone), turn.local_now)
    yes = Choice(words.yes_log(), LOG_SOME, "yes", {"of": plan.offer.id, "held": plan.held})
    choices = [yes, Choice(words.no_other(), "log_none", "no", {"other": True})]
    lines = words.of_plan_then(part_of(plan), tank.name, at)
    kept = {OF_PLAN: plan.offer.id}
    return [await turn.reply(lines, choices=choices, facts={"parts": [*plan.parts]}, context=kept)]


async def is_quiet(turn: Turn, offer: Offer, plan_id: int) -> bool:
    """Whether an answer leaves a plan what is spoken of: about it, or to readings alone."""
    if offer.context.get(OF_PLAN) == plan_id:
        return True
    if offer.entry_id is None:
        return not (offer.choices or set(offer.context) - {ABOUT, ASKED}) and offer.expects in {
            None,
            "followup",
        }
    entry = await turn.uow.log.get(turn.chat.id, offer.entry_id)
    return entry is not None and (not entry.events or await own_plan.is_part(turn, entry, plan_id))


async def rest_today(turn: Turn, plan: Given) -> dict[str, Any] | None:
    """What is missing from the part that was begun today; None where none was, or more went in.

    Where anything else was dosed since, nothing is left of it that may go in; nor where a test
    since tells no more of that day, or a spoon of it may have been more than the part.
    """
    share = await own_plan.share_logged(turn, plan.offer.id, plan.held)
    begun = share - await own_plan.parts_logged(turn, plan.offer.id, plan.held)
    at = await last_in(turn, plan)
    day = timedelta(hours=plan.every_hours)
    if begun <= 0.0 or at is None or turn.now - at >= day:
        return None
    today = await own_plan.share_logged(turn, plan.offer.id, plan.held, since=turn.now - day)
    if today >= own_plan.A_PART:
        return None  # what is over of it begins no part of the next day
    if await own_plan.dosed_besides(turn, plan.offer.id, plan.tank_id or 0, plan.offer.made_at):
        return None
    if await given_tests.since_last(turn, plan) or await own_plan.by_spoon(turn, plan.offer.id):
        return None
    return doses.so_much_of(plan.held, 1.0 - begun)


def shown(held: Mapping[str, Any]) -> str:
    """So much of a plan as it is told."""
    if "millilitres" in held:
        return plan_words.of_product(held["millilitres"], held["substance"])
    return plan_words.salts(doses.salts_of(held))


def to_log(plan: Given, held: Mapping[str, Any], label: str | None = None) -> Choice:
    """The button that puts so much of a plan on record; the word `done` takes it as well."""
    arguments = {"of": plan.offer.id, "held": dict(held)}
    return Choice(label or _(dose_words.LOG_IT), LOG_SOME, "", arguments)


async def waiting(
    turn: Turn, plan: Given, held: Mapping[str, Any], lines: list[str], **facts: Any
) -> Reply:
    """A reply after which `done` puts so much of a plan on record; the plan stays spoken of."""
    return await turn.reply(
        lines, choices=[to_log(plan, held)], facts=facts, context={OF_PLAN: plan.offer.id}
    )


async def by_your_hand(turn: Turn, plan: Given) -> Reply:
    """`please put it in`: we only tell what goes in; and of what is in, that it is."""
    if await last_in(turn, plan) is not None:
        return await turn.reply(words.you_put_it_in())
    facts = {"parts": list(plan.parts), "every_hours": plan.every_hours}
    return await turn.reply(words.you_put_it_in(part_of(plan)), facts=facts)


async def _so_much_meant(turn: Turn, plan: Given) -> tuple[Offer, Choice] | None:
    """So much of a plan as the newest answer waits for, where that is no whole part."""
    latest = await turn.uow.offers.latest(turn.chat.id)
    for offer in latest[:1]:
        if offer.context.get(OF_PLAN) == plan.offer.id:
            meant = [each for each in offer.choices if each.verb == LOG_SOME]
            return (offer, meant[0]) if len(offer.choices) == len(meant) == 1 else None
    return None


async def _just_in(turn: Turn, plan: Given, logged: int) -> bool:
    """Whether a part that was put on record is the one that `gave double` tells of, once more.

    One of a day before is none of it: then two parts went in together.
    """
    at = await last_in(turn, plan) if logged else None
    return at is not None and turn.now - at < timedelta(hours=SHORT * plan.every_hours)


async def _asked_last(turn: Turn, plan: Given) -> dict[str, Any] | None:
    """What the newest answer keeps where it asks how much of a plan went in: it is open still."""
    latest = await turn.uow.offers.latest(turn.chat.id)
    if not latest or turn.now - latest[0].made_at > PATIENCE:
        return None
    kept = latest[0].context
    return (
        kept if kept.get(OF_PLAN) == plan.offer.id and kept.keys() & {OF_WHICH, OF_HALF} else None
    )


async def asks_how_much(turn: Turn) -> Offer | None:
    """The newest answer, where it asks how much of a plan went in."""
    latest = await turn.uow.offers.latest(turn.chat.id)
    if not latest or OF_PLAN not in latest[0].context or turn.now - latest[0].made_at > PATIENCE:
        return None
    return latest[0] if sum(each.verb == LOG_SOME for each in latest[0].choices) > 1 else None


async def _so_much(turn: Turn, plan: Given, amounts: Amounts) -> list[Reply] | None:
    """`just 1 g`, `ill only do 1 g`: less than a part is within the plan, more is not."""
    held = _held(plan, amounts)
    if held is None or "spoons" in held:
        return None
    a_part = plan.parts[0]
    told = held["millilitres"] if "millilitres" in held else held["grams"]
    if told > a_part * ROUNDING:
        facts = {"parts": list(plan.parts), "every_hours": plan.every_hours}
        lines = plan_words.no_more_than(part_of(plan), plan.every_hours)
        return [await turn.reply(lines, facts=facts)]
    lines = words.so_much(shown(held), part_of(plan))
    return [await waiting(turn, plan, held, lines, parts=[told])]


async def _half(turn: Turn, plan: Given) -> list[Reply]:
    """Half of it: of the only part, or of a plan of two parts, which it is is asked."""
    half = doses.so_much_of(plan.held, 0.5)
    share = await own_plan.share_logged(turn, plan.offer.id, plan.held)
    logged = await own_plan.parts_logged(turn, plan.offer.id, plan.held)
    said_by = f"{own_plan.log_id(plan.offer.id)}:{turn.incoming.update_id}"
    later = names_later(turn.incoming.text)
    if plan.count - logged < 1:
        return [await turn.reply(plan_words.all_logged(plan.count))]
    if later and share > logged:  # the other half of a part
        rest = doses.so_much_of(plan.held, 1.0 - (share - logged))
        return await doses.log_parts(turn, said_by, rest)
    if plan.count == 2 and later and logged == 1:
        return await doses.log_parts(turn, said_by, plan.held)
    if plan.count == 1 and not later and not await moved_on.since(turn, plan):
        return await doses.log_parts(turn, said_by, half)
    both = [to_log(plan, each, shown(each)) for each in (half, plan.held)]
    told = words.half_of_what([each.label for each in both])
    said = " ".join(turn.incoming.text.split())
    held = await off_record.held_of(turn, plan.tank_id, said)
    kept = {OF_PLAN: plan.offer.id, OF_HALF: True, NAMELESS: held, LINES: told}
    return [await turn.reply(told, choices=both, context=kept)]


async def _twice(turn: Turn, plan: Given, at: datetime) -> Reply:
    """Ask whether what is told is a second part, or the one that is on record."""
    moment = when(at.astimezone(turn.chat.zone), turn.local_now)
    second = Choice(
        words.second_one(),
        LOG_SOME,
        "yes",
        {"of": plan.offer.id, "held": plan.held, "id": turn.incoming.update_id},
    )
    same = Choice(words.same_one(), "log_none", "no", {"tank": plan.tank_id, "once": True})
    lines = words.told_twice(part_of(plan), moment)
    facts = {"parts": list(plan.parts), "every_hours": plan.every_hours}
    told = " ".join(turn.incoming.text.split())
    held = {NAMELESS: await off_record.held_of(turn, plan.tank_id, told), LINES: lines}
    context = {OF_PLAN: plan.offer.id, **held}
    return await turn.reply(lines, choices=[second, same], facts=facts, context=context)


def _is_all(plan: Given, grams: float) -> bool:
    whole = sum(plan.parts) if len(plan.salts) == 1 else 0.0
    return whole / ROUNDING < grams < whole * ROUNDING


def _held(plan: Given, amounts: Amounts) -> dict[str, Any] | None:
    """So much of the plan's only substance as is told; None in another measure, or of several."""
    if amounts.spoons is not None and len(plan.salts) < 2:
        return {**plan.held, "spoons": amounts.spoons}
    if "millilitres" in plan.held:
        told = amounts.millilitres
        return None if told is None else {**plan.held, "millilitres": told}
    if amounts.grams is None or len(plan.salts) != 1:
        return None
    grams = amounts.grams
    return {**plan.held, "grams": grams, "salts": [[plan.salts[0][0], grams]]}
