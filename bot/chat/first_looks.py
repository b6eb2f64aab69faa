"""In which order a message is looked at before what its intent is.

What may be said of what was answered, asked or shown before, or of no tank at all; the looks behind
the intent are in `bot/chat/looks.py`.
"""

from __future__ import annotations

from typing import Final

from bot.chat import (
    about_values,
    acid_wished,
    after,
    after_dose,
    after_refusal,
    agenda,
    aims,
    amending,
    amount_again,
    answer_talk,
    arrivals,
    asides,
    asked_water,
    belongs,
    blend_talk,
    brought_in,
    buffer_asked,
    call_over,
    call_with_tank,
    calls,
    change_amount,
    change_talk,
    chores,
    co2_on,
    converting,
    cooling,
    copper_asked,
    copper_told,
    corrections,
    daily_talk,
    dead_total,
    deed_judged,
    denied,
    disowning,
    done_asked,
    dosed_instead,
    drops_told,
    emergency_talk,
    expected,
    followups,
    for_change,
    given_beside,
    given_unheard,
    goal_anew,
    how_asked,
    if_then,
    in_vessel,
    intended,
    introducing,
    it_moved,
    kit_check,
    label_rate,
    logged_asked,
    lone_value,
    mix_measured,
    mix_talk,
    name_meant,
    named_for_job,
    nameless,
    only_tank,
    orders,
    other_tank,
    pauses,
    people_first,
    plan_asked,
    recipe_talk,
    reckoned,
    record,
    regretted,
    reminder_requests,
    reminder_talk,
    reminder_waiting,
    reports,
    resting,
    salinity,
    same_deed,
    short_asked,
    some_died,
    swapped,
    taken_back,
    tank_by_kind,
    tank_by_tank,
    tank_deleted,
    tank_meant,
    tank_talk,
    told_again,
    treatments,
    typed,
    unknown_tanks,
    untested,
    volume_beside,
    volume_right,
    weighed_later,
    what_for,
    what_now,
    wish_filled,
    wish_supposed,
    wish_told,
)
from bot.chat.looks import QUESTIONS, Look, first
from bot.chat.model import Reply
from bot.chat.turn import Turn
from core.message.model import Parsed


async def _refused_at_once(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Battery acid, whatever was asked about before."""
    if turn.route is None or not calls.goes_first(turn, parsed):
        return None
    return await turn.route(turn, parsed)


async def _answering(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """A reading or deed sent as the answer to a message puts that one right."""
    if turn.incoming.reply_to is None or parsed.intent not in {"reading", "event"}:
        return None
    return await corrections.answering(turn, parsed)


async def _how(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """The same in the words of its topic, for all looks but this."""
    return await how_asked.answer(turn, parsed, _again)


async def _it_moved(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    return await it_moved.answer(turn, parsed, _again)


async def _deed_judged(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    return await deed_judged.answer(turn, parsed, _again)


async def _short(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    return await short_asked.answer(turn, parsed, _again)


async def _buffer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    return await buffer_asked.answer(turn, parsed, _again)


async def _dead_total(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    return await dead_total.answer(turn, parsed, _again)


async def _again(turn: Turn, parsed: Parsed) -> list[Reply]:
    found = await first(
        [look for look in BEFORE_INTENT if look not in AGAIN],
        turn,
        parsed,
    )
    if found is None and turn.route is not None:
        return await turn.route(turn, parsed)
    return found or []


BEFORE_INTENT: Final[tuple[Look, ...]] = (
    call_over.answer,
    people_first.answer,
    resting.answer,
    call_with_tank.answer,
    given_unheard.answer,
    tank_meant.told_shortly,
    given_beside.read_early,
    given_beside.then_next,
    intended.answer,
    swapped.answer,
    tank_deleted.answer,
    belongs.stray,
    other_tank.answer,
    same_deed.answer,
    volume_right.answer,
    some_died.answer,
    some_died.in_the,
    brought_in.answer,
    arrivals.into_the_bag,
    volume_beside.beside_sign,
    volume_beside.casually_told,
    introducing.told,
    volume_beside.answer,
    tank_by_kind.answer,
    only_tank.answer,
    acid_wished.answer,
    drops_told.answer,
    drops_told.colour,
    tank_by_tank.answer,
    tank_by_tank.each_apart,
    unknown_tanks.answer,
    _dead_total,
    lambda turn, parsed: tank_talk.answer(turn, parsed, QUESTIONS),
    copper_told.answer,
    _deed_judged,
    plan_asked.answer,
    wish_supposed.answer,
    _short,
    co2_on.answer,
    co2_on.may_be_on,
    if_then.answer,
    copper_asked.may_use,
    copper_asked.answer,
    copper_asked.for_them,
    done_asked.answer,
    logged_asked.answer,
    _how,
    change_amount.answer,
    change_talk.whole,
    expected.answer,
    pauses.answer,
    reminder_waiting.with_value,
    reminder_waiting.answer,
    reminder_talk.answer,
    reminder_requests.completed,
    record.answer,
    agenda.answer,
    disowning.answer,
    lone_value.judged,
    lambda turn, _parsed: kit_check.answer(turn),
    salinity.answer,
    lambda turn, parsed: wish_filled.answer(turn, parsed, QUESTIONS),
    lambda turn, parsed: wish_filled.wished(turn, parsed, QUESTIONS),
    _it_moved,
    cooling.answer,
    converting.answer,
    treatments.ppm,
    after.reason,
    _buffer,
    lambda turn, _parsed: followups.by_water(turn, QUESTIONS),
    lambda turn, _parsed: asked_water.salt_topped_up(turn),
    daily_talk.answer,
    reckoned.answer,
    label_rate.answer,
    named_for_job.answer,
    for_change.answer,
    mix_measured.answer,
    in_vessel.told,
    taken_back.answer,
    emergency_talk.answer,
    co2_on.more,
    after_refusal.answer,
    denied.answer,
    goal_anew.answer,
    answer_talk.answer,
    amending.answer,
    dosed_instead.answer,
    nameless.named,
    belongs.elsewhere,
    name_meant.answer,
    regretted.unmeant,
    regretted.opened,
    regretted.answer,
    told_again.answer,
    lambda turn, parsed: recipe_talk.answer(turn, parsed, QUESTIONS),
    amount_again.answer,
    given_beside.answer,
    untested.answer,
    daily_talk.together,
    _refused_at_once,
    after.answer,
    mix_talk.litres,
    blend_talk.answer,
    lambda turn, parsed: aims.answer(turn, parsed, QUESTIONS),
    wish_told.moved,
    wish_told.answer,
    lambda turn, parsed: followups.answer(turn, parsed, QUESTIONS),
    about_values.ideal,
    what_for.answer,
    lambda turn, _parsed: what_now.typed(turn),
    weighed_later.answer,
    lambda turn, _parsed: after_dose.typed(turn),
    lambda turn, _parsed: reports.spoken(turn),
    chores.answer,
    asides.answer,
    orders.answer,
    lambda turn, _parsed: typed.by_label(turn),
    chores.nameless,
    _answering,
)
"""What a message may say of what was answered, asked or shown before, or of no tank at all."""

AGAIN: Final = frozenset({_how, _it_moved, _short, _buffer, _dead_total})
"""Looks that ask the same in other words, and are not asked once more themselves."""
