"""Buttons: a short pointer to an offer's choice; each verb is safe to take twice."""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Mapping
from typing import Final

from bot.chat import (
    arrivals,
    bases,
    chores,
    dosed_instead,
    doses,
    doubts,
    expected,
    given_each,
    given_logged,
    introducing,
    introduction_undo,
    labels,
    nearest,
    pauses,
    plan_reminders,
    products,
    reminder_amend,
    reminder_answers,
    reminder_days,
    reminder_ends,
    reminder_moving,
    reminder_stops,
    reports,
    resizing,
    salts,
    settings,
    soda_was,
    stock,
    taken_back,
    tank_volumes,
    tanks,
    traits,
    treatment_answers,
    undoing,
    unknown_tanks,
    volume_open,
    what_now,
)
from bot.chat.model import Reply
from bot.chat.offering import ACTION_VERSION
from bot.chat.turn import Turn
from bot.chat.words import general as words
from bot.store.offers import Choice, Offer

Verb = Callable[[Turn, Offer, Choice], Awaitable[list[Reply]]]


async def _more(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    return [await turn.reply(choice.arguments["lines"], facts=offer.context.get("facts"))]


VERBS: Final[Mapping[str, Verb]] = {
    "more": _more,
    "undo": undoing.press_undo,
    "keep_effect": products.press_keep,
    "keep_label": labels.press_keep_label,
    "leave_effect": products.press_leave,
    "keep_report": reports.press_keep,
    "leave_report": reports.press_leave,
    "read_report": reports.press_read,
    "what_now": what_now.press,
    "take_doubt": doubts.take,
    "keep_stray": doubts.keep_stray,
    "add_tanks": unknown_tanks.press_add,
    "leave_out": doubts.leave_out,
    "type_again": doubts.type_again,
    "quarantine": arrivals.press_quarantine,
    "name_animal": stock.press_name,
    "for_tank": doubts.for_tank,
    "log_dose": doses.log,
    "which_form": salts.which_form,
    "log_form": doses.log_form,
    "log_some": given_logged.log_some,
    "log_none": given_logged.log_none,
    "call_off": taken_back.press_off,
    "call_stands": taken_back.press_stands,
    "retest": doses.retest,
    given_each.LOG_EACH: given_each.press,
    "say_again": bases.say_again,
    "ask": nearest.press,
    "soda_was": soda_was.press,
    "dose_instead": dosed_instead.press_instead,
    "dose_as_well": dosed_instead.press_as_well,
    "confirm_salt": treatment_answers.confirm_salt,
    "decline_salt": treatment_answers.decline_salt,
    "confirm_cycle": treatment_answers.confirm_cycle,
    "decline_cycle": treatment_answers.decline_cycle,
    "done": reminder_answers.press_done,
    "later": reminder_answers.press_later,
    "skip": reminder_answers.press_skip,
    "open_reminder": reminder_answers.press_open,
    "remind": chores.press,
    "remind_each": reminder_ends.press,
    "pause": pauses.press,
    "quiet": pauses.press_quiet,
    "pause_later": pauses.press_later,
    "stop_reminder": reminder_stops.press_stop,
    "unmove_reminder": reminder_stops.press_unmove,
    "skip_next": reminder_amend.press_skip,
    "move_reminder": reminder_moving.press_move,
    "rest_until": reminder_days.press_rest,
    "move_once": reminder_days.press_once,
    "log_part": plan_reminders.press_log,
    "done_early": reminder_answers.press_early,
    "set_zone": settings.press_zone,
    "set_volume": expected.press_volume,
    "send_volume": tank_volumes.press_send_volume,
    "volume_back": resizing.press_back,
    "volume_stays": volume_open.press_stays,
    "separate_tank": tanks.press_separate,
    "kit_reminder": traits.press_reminder,
    "delete_tank": tanks.press_delete,
    "keep_tank": tanks.press_keep,
    "another_tank": introducing.press_another,
    "unmake_tank": introduction_undo.press,
}


async def press(turn: Turn) -> list[Reply]:
    """Answer a pressed button; one that nobody gave out, or of another chat, does nothing."""
    pointer = _pointer(turn.incoming.action or "")
    if pointer is None:
        return [await turn.reply(words.old_button())]
    offer_id, place = pointer
    offer = await turn.uow.offers.get(offer_id)
    if offer is None or place >= len(offer.choices):
        return [await turn.reply(words.old_button())]
    if offer.chat_id != turn.chat.id:
        return [await turn.reply(words.foreign_button())]
    return await take(turn, offer, offer.choices[place])


async def take(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Do what a choice says, whether it was pressed or typed."""
    verb = VERBS.get(choice.verb)
    if verb is None:  # an offer of a later version
        return [await turn.reply(words.old_button())]
    return await verb(turn, offer, choice)


def _pointer(action: str) -> tuple[int, int] | None:
    """Read ``version:offer:place``; None where it is not one of ours."""
    parts = action.split(":")
    if len(parts) != 3 or parts[0] != ACTION_VERSION:
        return None
    if not all(part.isascii() and part.isdigit() and len(part) <= 12 for part in parts[1:]):
        return None
    return int(parts[1]), int(parts[2])
