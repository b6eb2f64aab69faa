"""``changed 30 l, is that too much?``, ``enough?``: a deed is kept, and the question answered."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Final

from bot.chat import after_dose, calls, change_done, reckoned, standing, verdicts
from bot.chat.asked_anew import Again
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import change_done as done_words
from bot.chat.words import deed_judged as words
from bot.chat.words.changes import percent
from bot.store.tanks import StoredTank
from core.advice.change_done import Overdone
from core.advice.findings import limit_of_nitrate, stands
from core.advice.since import share_of
from core.advice.state import Happening, State
from core.message import parse
from core.message.deed_judged import Judged, asks, is_done, parted
from core.message.model import Parsed, Question

BY_HAND: Final = frozenset({"water_change", "dose", "top_up", "filter"})

MOVING: Final = frozenset({"water_change", "dose"})
"""Deeds that count against the steps of a day."""

DAY: Final = timedelta(days=1)
WEEK: Final = timedelta(days=7)


async def answer(turn: Turn, parsed: Parsed, again: Again) -> list[Reply] | None:
    """Keep a deed and answer what is asked behind it; None where neither is."""
    if not turn.incoming.addressed or turn.current_tank is None or parsed.command is not None:
        return None
    if parsed.values or turn.incoming.reply_to is not None:
        return None
    if (both := await _told_and_asked(turn, parsed, again)) is not None:
        return both
    asked = asks(turn.incoming.text)
    if asked is None or parsed.events or (asked != "sum" and not await _just_told(turn)):
        return None
    return await _judged(turn, asked)


async def _told_and_asked(turn: Turn, parsed: Parsed, again: Again) -> list[Reply] | None:
    """Keep what is told before a question that would swallow it, or be swallowed."""
    parts = parted(turn.incoming.text)
    if parts is None or turn.route is None or calls.is_danger(turn, parsed):
        return None
    told, asked = parts
    if parsed.events and parsed.question is not None:
        return None  # both are read
    deed = parse(told, turn.context())
    if not deed.events or deed.values or deed.doubts or deed.question or deed.command:
        return None
    if any(event.kind not in BY_HAND for event in deed.events):
        return None
    if not parsed.events and not is_done(told):
        return None  # change 40%, what then
    turn.incoming = replace(turn.incoming, text=told)
    replies = await turn.route(turn, deed)
    turn.incoming = replace(turn.incoming, text=asked)
    judged = asks(asked)
    if judged is not None and turn.current_tank is not None:
        return replies + (await _judged(turn, judged, kept=True) or [])
    return replies + await again(turn, parse(asked, turn.context()))


async def _just_told(turn: Turn) -> bool:
    """Whether what was answered last is that a deed was put on record."""
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or latest[0].entry_id is None or turn.now - latest[0].made_at > patience:
        return False
    entry = await turn.uow.log.current(turn.chat.id, latest[0].entry_id)
    kinds = set() if entry is None else {event.what.kind for event in entry.events}
    return bool(kinds) and kinds <= BY_HAND and not (entry and entry.readings)


async def _judged(turn: Turn, asked: Judged, *, kept: bool = False) -> list[Reply] | None:
    """The answer by the record of the tank in use; `kept` where the deed is in this message."""
    stored = turn.current_tank
    if stored is None:
        return None
    state = await state_of(turn, stored, turn.now)
    if asked == "sum":
        return [await _sum(turn, stored, state)]
    late = [e for e in state.events or () if e.what.kind in BY_HAND and state.now - DAY < e.at]
    last = max((e for e in late if e.at <= state.now), key=lambda each: each.at, default=None)
    if last is None:
        return None
    facts: dict[str, object] = {"tank": stored.name}
    if last.what.kind == "filter":
        return [await turn.reply([words.cleaned()], facts=facts)]
    if last.what.kind == "top_up":
        return [await turn.reply([words.topped_up()], facts=facts)]
    if last.what.kind == "dose":
        did = await after_dose.last_did(turn)
        return None if did is None else [did]
    if asked == "med":
        share = share_of(state, last)
        facts |= {} if share is None else {"changed": {"share": share}}
        return [await turn.reply([words.medicine(share)], facts=facts)]
    if asked == "much":
        return await _too_much(turn, stored, state, last, kept=kept)
    return await _enough(turn, stored, state, last)


async def _too_much(
    turn: Turn, stored: StoredTank, state: State, last: Happening, *, kept: bool
) -> list[Reply] | None:
    """Whether a change went past a limit, by the waters as they were before it."""
    share = share_of(state, last)
    facts: dict[str, object] = {"tank": stored.name}
    facts |= {} if share is None else {"changed": {"share": share}}
    found = await change_done.judged(turn, stored, last)
    if isinstance(found, Overdone):
        if kept:
            return []  # said beside the deed
        return [await turn.reply(done_words.overdone(stored.name, found), facts=facts)]
    moved = [e for e in state.events or () if e.what.kind in MOVING and state.now - DAY < e.at]
    if found == "within" and share is not None and len(moved) == 1:
        return [await turn.reply([words.within(stored.name, share)], facts=facts)]
    return [await turn.reply(words.unknown(stored.name, share), facts=facts)]


async def _enough(
    turn: Turn, stored: StoredTank, state: State, last: Happening
) -> list[Reply] | None:
    """Whether a change was enough: by nitrate as it should be now, once nothing worse stands."""
    others = [f for f in stands(state, frozenset(state.readings)) if f.severity != "note"]
    if any(finding.id != "nitrate" for finding in others):
        return await standing.change_needed(turn, Question("change", text=turn.incoming.text))
    facts: dict[str, object] = {"tank": stored.name}
    share = share_of(state, last)
    facts |= {} if share is None else {"changed": {"share": share}}
    found = await reckoned.by_now(turn, stored, state, "nitrate")
    if found is None:
        lines = [words.nitrate_unmeasured(stored.name), *verdicts.untested(state)]
        return [await turn.reply(lines, facts=facts)]
    before = found.reading.value
    limit = limit_of_nitrate(state)
    least = reckoned.at_best(state, found.since, before)
    if not found.since:
        value: float | None = before
        lines = [words.nitrate_now(stored.name, before)]
        facts["readings"] = {"nitrate": before}
    elif (value := found.value) is not None:
        lines = [words.nitrate_by_sum(stored.name, before, value)]
        facts |= {"before": {"nitrate": before}, "reckoned": {"nitrate": value}}
    elif least is not None:
        lines = [words.nitrate_at_best(stored.name, before, least)]
        facts |= {"before": {"nitrate": before}, "least": {"nitrate": least}}
    else:
        lines = [words.nitrate_before(stored.name, before)]
        facts["before"] = {"nitrate": before}
    sure = value if value is not None else least
    if limit is not None and sure is not None and (value is not None or sure > limit):
        lines.append(words.over_limit(limit) if sure > limit else words.under_limit(limit))
        facts["limit"] = limit
    return [await turn.reply([*lines, *verdicts.untested(state)], facts=facts)]


async def _sum(turn: Turn, stored: StoredTank, state: State) -> Reply:
    """How much was changed in a day and in a week, change by change."""
    changes = [
        each
        for each in state.events or ()
        if each.what.kind == "water_change" and state.now - WEEK < each.at <= state.now
    ]
    facts: dict[str, object] = {"tank": stored.name}
    told = []
    for name, span in (("day", DAY), ("week", WEEK)):
        within = sorted((e for e in changes if state.now - span < e.at), key=lambda e: e.at)
        shares = [share_of(state, each) for each in within]
        facts[name] = [share for share in shares if share is not None]
        listed = [words.untold() if share is None else percent(share) for share in shares]
        told.append(" + ".join(listed) or words.nothing())
    return await turn.reply([words.changed(stored.name, *told)], facts=facts)
