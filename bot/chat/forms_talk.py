"""A plan of a salt that is sold in two forms: how much of each it is, for either form."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Any, Final

from bot.chat import plan_now
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import plan_talk as words
from bot.store.offers import Offer
from core.message.plan_talk import About
from core.message.plan_words import Telling

OF_AMOUNTS: Final = frozenset({"a_day", "need", "often"})
"""What is answered by the grams of each form."""


async def answer(turn: Turn, said: About | Telling, of_late: Sequence[Offer]) -> list[Reply] | None:
    """How much of each salt goes in each time, a line a form; None of any other plan."""
    offer = next((each for each in of_late if _forms(each)), None)
    if offer is None or said not in OF_AMOUNTS:
        return None
    if not await plan_now.is_newest(turn, offer, list(of_late)):
        return None
    forms = _forms(offer)
    lines = [_line(form, whole=said == "need") for form in forms]
    return [await turn.reply(lines, facts={"forms": [dict(form) for form in forms]})]


def is_of(named: Collection[str], substances: Collection[str]) -> bool:
    """Whether all that is named is of a plan, whichever of its forms is meant."""
    return all(
        any(of.startswith(name) or name.startswith(of) for of in substances) for name in named
    )


def substances_in(offer: Offer) -> set[str]:
    """All salts of an offer's plan."""
    facts = offer.context.get("facts", {})
    plans = _forms(offer) or [facts]
    salts = [salt for plan in plans for salt in plan.get("salts") or [plan]]
    return {str(salt["substance"]) for salt in salts if salt.get("substance")}


def _forms(offer: Offer) -> list[Mapping[str, Any]]:
    forms = offer.context.get("facts", {}).get("forms", [])
    return [form for form in forms if isinstance(form, Mapping) and "every_hours" in form]


def _line(form: Mapping[str, Any], *, whole: bool) -> str:
    salts = form.get("salts") or [form]
    count = len(salts[0]["parts"])
    of = [(each["substance"], each["parts"][0], each["parts"][0] * count) for each in salts]
    if whole:
        return words.so_in_all(of, count, form["every_hours"])
    part = words.salts([(name, grams) for name, grams, _whole in of])
    return words.a_part(part, form["every_hours"], count)[0]
