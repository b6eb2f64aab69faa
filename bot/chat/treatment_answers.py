"""What follows the question before salt or ammonia: the grams after a yes, what else after a no."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Any, TypeVar

from bot.chat import dose_reply
from bot.chat.model import Line, Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.wished import TABLE_SALT
from bot.chat.words import doses as dose_words
from bot.chat.words import salts as words
from bot.chat.words.text import _
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.advice.livestock import lookup
from core.advice.plan import Refusal
from core.advice.state import State
from core.advice.treatments import Cycling, NitriteSalt, cycle, minds_salt, salt_for_nitrite
from core.message.none_live import none_live
from core.tank import Stock, Tank

Found = TypeVar("Found", Cycling, NitriteSalt)


async def confirm_salt(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """The keeper says that all in it bear salt."""
    held = choice.arguments
    return await _confirmed(
        turn, offer, choice,
        lambda state: salt_for_nitrite(held["nitrite"], held["volume_l"], state),
        lambda found, name: words.salt_answer(found, name, unsaid=bool(held.get("unsaid"))),
        _salt_facts, _log_salt,
    )  # fmt: skip


async def decline_salt(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Not all in it bear salt, or nobody knows."""
    return await _declined(turn, offer, choice, words.salt_declined(), "salt_species")


async def confirm_cycle(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """The keeper says that there are no animals."""
    held = choice.arguments
    return await _confirmed(
        turn, offer, choice,
        lambda state: cycle(held["target"], held["volume_l"], state),
        words.cycle_answer, _cycle_facts,
    )  # fmt: skip


async def decline_cycle(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """There are animals after all."""
    return await _declined(turn, offer, choice, words.cycle_declined(), "animals_on_record")


async def typed(turn: Turn, newest: Offer) -> list[Reply] | None:
    """Take ``no animals at all`` as the button that says so; None where it was not asked."""
    verbs = {choice.verb: choice for choice in newest.choices}
    if "confirm_cycle" not in verbs or newest.used is not None:
        return None
    heard = none_live(turn.incoming.text)
    if heard is None:
        return None
    if heard == "unsure":
        return [await turn.reply(words.cycle_ask(), choices=newest.choices)]
    if heard == "none":
        return await confirm_cycle(turn, newest, verbs["confirm_cycle"])
    return await decline_cycle(turn, newest, verbs["decline_cycle"])


async def _confirmed(
    turn: Turn,
    offer: Offer,
    choice: Choice,
    plan: Callable[[State], Found | Refusal],
    told: Callable[[Found, str | None], list[str]],
    facts: Callable[[Found], dict[str, Any]],
    log: Callable[[Found, StoredTank | None], list[Choice]] = lambda _found, _stored: [],
) -> list[Reply]:
    """Plan on the water as it is by now, which may refuse after all."""
    await turn.uow.offers.take(offer.id, choice.verb)  # a later yes is about something else
    stored = turn.tank_by_id(choice.arguments["tank_id"])
    state = State(Tank(name=""), turn.local_now)
    if stored is not None:
        state = await state_of(turn, stored, turn.now)
    name = stored.name if stored is not None else None
    found = plan(state)
    if isinstance(found, Refusal):
        return [await dose_reply.refuse(turn, found, name)]
    return [await turn.reply(told(found, name), facts=facts(found), choices=log(found, stored))]


async def _declined(
    turn: Turn, offer: Offer, choice: Choice, lines: Sequence[str | Line], reason: str
) -> list[Reply]:
    await turn.uow.offers.take(offer.id, choice.verb)  # a later yes is about something else
    return [await turn.reply(lines, facts={"refused": reason})]


def _salt_facts(found: NitriteSalt) -> dict[str, Any]:
    return {
        "substance": TABLE_SALT,
        "volume_l": found.volume_l,
        "nitrite": found.nitrite,
        "chloride_mg_l": found.chloride,
        "grams": found.grams,
        "parts": [found.grams / found.count] * found.count,
        "every_hours": 24,
        "goals": [
            {
                "analyte": "chloride",
                "from": found.chloride_now,
                "to": found.chloride_now + found.chloride,
            }
        ],
    }


def _log_salt(found: NitriteSalt, stored: StoredTank | None) -> list[Choice]:
    """The buttons of its plan: a part put on record, a retest."""
    grams = found.grams / found.count
    held = {
        "tank_id": stored.id if stored is not None else None,
        "grams": grams,
        "substance": TABLE_SALT,
        "volume_l": found.volume_l,
        "salts": [[TABLE_SALT, grams]],
        "cautions": [],
    }
    return [
        Choice(_(dose_words.LOG_IT), "log_dose", "", held),
        Choice(_(dose_words.RETEST), "retest", "", held),
    ]


def _cycle_facts(found: Cycling) -> dict[str, Any]:
    return {
        "substance": "ammonium chloride",
        "volume_l": found.volume_l,
        "from": found.start,
        "to": found.target,
        "grams": found.grams,
        "parts": [found.grams],
    }


async def for_kinds(turn: Turn, offers: Sequence[Offer], named: Sequence[str]) -> Reply | None:
    """Whether animals that are named bear the salt that was asked about; None where none was.

    `named` are their names in the words of a keeper.
    """
    asked = next((each for each in offers[:1] if _asks_of_salt(each)), None)
    if asked is None:
        return None
    rows = [row for name in named for row in (lookup(name).species, *lookup(name).candidates)]
    kept = tuple(Stock(row.name, 1) for row in rows if row is not None)
    if minds := minds_salt(State(Tank(name="", stock=kept), turn.now)):
        found = Refusal("salt_species", {"species": ", ".join(dict.fromkeys(minds))})
        return await dose_reply.refuse(turn, found, None)
    return await turn.reply(words.salt_ask(), choices=asked.choices, facts={"ask": "bears_salt"})


def _asks_of_salt(offer: Offer) -> bool:
    return any(choice.verb == "confirm_salt" for choice in offer.choices)
