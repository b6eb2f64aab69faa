"""What was told to have gone in and is on no record yet: nothing more goes in before it is told.

A dose that is lost is a second dose. Until it is answered, put on record, or counted in by a test,
the state of its tank names it: no plan, no part, no reminder of one tells an amount.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta
from typing import Any, Final

from bot.chat import open_told
from bot.chat.model import Reply
from bot.chat.turn import ASKED, Turn
from bot.chat.words import off_record as words
from bot.chat.words.given_parts import none_of_it as none_words
from bot.chat.words.plan_talk import what_went_in
from bot.store.offers import BESIDE, Choice, Offer
from bot.store.tanks import StoredTank
from core.advice.poison_first import TOLD_FIRST
from core.advice.state import Happening

NAMELESS: Final = "nameless"
"""The key of what is kept with the question what it was."""

LINES: Final = "question"
"""Of such a question its own words, for when it is asked again."""

QUOTED: Final = 60
"""Characters of what was told that are said back."""

LOOKED_AT: Final = 40
"""Newest answers among which the question is sought, with its buttons."""

STANDS: Final = timedelta(hours=72)
"""So long it stands unanswered: then the water has gone its own way."""

SETTLES: Final = timedelta(hours=20)
"""A test so long after it counts it in: about a day, as between two parts."""


async def held_of(
    turn: Turn, tank_id: int | None, said: str, amount: str | None = None
) -> dict[str, Any]:
    """What is kept of a thing that went in and is not on record, with the newest entry by then."""
    entry = await open_told.newest(turn)
    shown = said if len(said) <= QUOTED else f"{said[: QUOTED - 1]}…"
    at = turn.now.isoformat()
    once = turn.incoming.update_id
    return {
        "tank": tank_id, "said": shown, "amount": amount, "entry": entry, "at": at, "id": once,
    }  # fmt: skip


async def open_words(
    turn: Turn,
    tank_id: int | None,
    events: Iterable[Happening],
    tested: Iterable[datetime],
    at: datetime,
) -> str | None:
    """The keeper's words of the first thing told to be in that is on no record; else None."""
    return next(iter(await all_open(turn, tank_id, events, tested, at)), None)


async def all_open(
    turn: Turn,
    tank_id: int | None,
    events: Iterable[Happening],
    tested: Iterable[datetime],
    at: datetime,
) -> list[str]:
    """The keeper's words of all that is told to be in and is on no record, the oldest first.

    Each is settled by an answer, by a dose put on record since, or by a test (`tested`) about as
    long after it as a plan waits between two parts: that counts it in.
    """
    told = await turn.uow.offers.told_of(turn.chat.id, NAMELESS)
    ours = [each for _at, each in reversed(told) if each and each["tank"] in {tank_id, None}]
    asked: dict[str, dict[str, Any]] = {}
    for each in ours:
        if not each.get("over"):
            asked.setdefault(each["id"], dict(each))
    standing = [
        each
        for each in asked.values()
        if (made_at := datetime.fromisoformat(each["at"])) <= at < made_at + STANDS
        and not any(test >= made_at + SETTLES for test in tested)
    ]
    if not standing:
        return []
    since = standing[0]
    over = sum(bool(each.get("over")) and each["at"] >= since["at"] for each in ours)
    logged = {e.order for e in events if e.what.kind == "dose" and e.order > since["entry"]}
    left = standing[over + len(logged) :]
    return [str(each["said"]) for each in left]


async def of_what(turn: Turn, held: dict[str, Any], amount: str | None) -> Reply:
    """Ask what it was, of which only the amount was told; it stays the one thing that it was."""
    lines = what_went_in()
    kept = {NAMELESS: {**held, "amount": amount}, LINES: lines}
    none = [none_of_it(held["tank"])]
    return await turn.reply(lines, choices=none, context=kept, expects="followup")


def none_of_it(tank_id: int | None) -> Choice:
    """The button that nothing of it went in."""
    return Choice(none_words(), "log_none", "no", {"tank": tank_id})


async def settle(turn: Turn, tank_id: int | None) -> None:
    """Let go of what was told to be in: it was answered, and is no dose that is lost."""
    over = {NAMELESS: {"tank": tank_id, "over": True, "at": turn.now.isoformat()}}
    await turn.uow.offers.add(
        turn.chat.id, Offer(choices=(), made_at=turn.now, expects=BESIDE, context=over)
    )


async def again(
    turn: Turn, stored: StoredTank | None, said: str, *, before: Sequence[str] = ()
) -> Reply:
    """Ask once more what it was that is told to be in, with the buttons of its question.

    `stored` is None where no tank was told yet, `before` are lines that cannot wait for the answer.
    """
    facts = {"refused": TOLD_FIRST, "said": said} | (
        {} if stored is None else {"tank": stored.name}
    )
    for offer in await turn.uow.offers.latest(turn.chat.id, LOOKED_AT):
        held = offer.context.get(NAMELESS)
        if held and held.get("said") == said:
            kept = {key: offer.context[key] for key in offer.context if key not in ("facts", ASKED)}
            lines = offer.context.get(LINES) or words.first_told(said)
            kept |= {LINES: lines}
            return await turn.reply(
                [*before, *lines],
                choices=offer.choices,
                facts=facts,
                context=kept,
                expects="followup",
            )
    return await turn.reply([*before, *words.first_told(said)], facts=facts)
