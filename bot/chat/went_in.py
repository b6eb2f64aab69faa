"""``its in``, ``gave it all at once`` after no amount was given, or after what an amount would do.

A plan knows what ``it`` is; here the keeper is asked how much it was, before anything is kept.
"""

from __future__ import annotations

from typing import Any, Final

from bot.chat import doses, emergencies, nameless, off_record, open_told, own_plan
from bot.chat.given_plan import LOG_SOME, running
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import after_refusal as words
from bot.chat.words import given_parts, plan_talk
from bot.store.offers import Choice, Offer
from core.message.plan_words import Telling, telling
from core.message.refusal_talk import only_done, put_in

PARTS: Final[dict[Telling, float]] = {
    "gave_it": 1.0, "gave_one": 1.0, "gave_all": 1.0, "gave_half": 0.5, "gave_double": 2.0,
}  # fmt: skip
"""How much of an amount asked about went in, by how it is told."""


TOO_MUCH: Final = frozenset({"gave_all", "gave_double", "gave_two"})
"""What tells by itself that more than a part went in together."""


async def after(turn: Turn, newest: Offer) -> list[Reply] | None:
    """Ask how much went in, after a refusal or after what an amount would do; else None."""
    told = put_in(turn.incoming.text)
    facts: dict[str, Any] = newest.context.get("facts", {})
    if told is None or newest.choices or newest.entry_id is not None:
        return None
    if told == "gave_it" and await turn.uow.reminders.of_chat(turn.chat.id, only_open=True):
        return None  # it may be what a reminder waits for
    if "refused" not in facts:
        share = PARTS.get(told)
        return None if share is None else await _of_amount(turn, newest, facts, share)
    if not newest.context.get("why") or only_done(turn.incoming.text):
        return None  # it may be what was advised
    plan = await running(turn) if telling(turn.incoming.text) is not None else None
    if plan is not None and await own_plan.share_logged(turn, plan.offer.id, plan.held):
        return None  # it may be the part that is on record
    if facts["refused"] == "bleach":  # the rocks that were asked about, or itself
        await emergencies.remember(turn, turn.current_tank, "bleach")
        return [await emergencies.help_in(turn, turn.current_tank, "bleach")]
    if told in TOO_MUCH:
        await emergencies.remember(turn, turn.current_tank, "overdose")
    return await _held(turn)


async def _held(turn: Turn) -> list[Reply]:
    """Ask how much of what went in, and keep it in the way of every amount until it is told.

    Nobody said that it was too much.
    """
    of = None if turn.current_tank is None else turn.current_tank.id
    held = await off_record.held_of(turn, of, " ".join(turn.incoming.text.split()))
    held["substance"] = await nameless.spoken_of(turn)
    lines = plan_talk.how_much_of_what()
    await open_told.keep(turn)
    return [
        await turn.reply(
            lines,
            choices=[off_record.none_of_it(of)],
            context={off_record.NAMELESS: held, off_record.LINES: lines},
            expects="followup",
        )
    ]


async def _of_amount(
    turn: Turn, newest: Offer, facts: dict[str, Any], share: float
) -> list[Reply] | None:
    """Ask whether the amount that was asked about went in; None where none was, or of no tank."""
    grams, substance, stored = (
        facts.get("grams"), facts.get("substance"), turn.tank_named(facts.get("tank") or ""),
    )  # fmt: skip
    if stored is None or substance is None or not isinstance(grams, float | int):
        return None
    if facts.keys() & {"parts", "salts", "forms", "effects"}:
        return None
    so_much = share * float(grams)
    held = {
        "tank_id": stored.id,
        "volume_l": stored.tank.volume_l,
        "substance": substance,
        "grams": so_much,
        "salts": [[substance, so_much]],
    }
    yes = Choice(given_parts.yes_log(), LOG_SOME, "yes", {"of": newest.id, "held": held})
    no = Choice(given_parts.no_other(), "log_none", "no", {"other": True})
    lines = words.whether_in(plan_talk.salts(doses.salts_of(held)), stored.name)
    told = {"tank": stored.name, "substance": substance, "grams": so_much}
    return [await turn.reply(lines, choices=[yes, no], facts=told)]
