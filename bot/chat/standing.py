"""How a tank stands and where it is going, from its own record: is my water ok, why, when."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from datetime import timedelta
from typing import Any, Final

from bot.chat import call_stands, emergencies, first_share, still_in, unheard, verdicts, why_values
from bot.chat.model import Reply
from bot.chat.reminding import said
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import aid_change, refusals
from bot.chat.words import findings as finding_words
from bot.chat.words import off_record as off_words
from bot.chat.words import questions as asked_words
from bot.chat.words import standing as words
from bot.chat.words.numbers import when as at_time
from bot.store.tanks import StoredTank
from core.advice.ammonia_gate import shown
from core.advice.call_over import open_in
from core.advice.calls import Danger
from core.advice.emergencies import help_for, standing_call
from core.advice.findings import (
    BY_ID,
    STEADY,
    Finding,
    find,
    stands,
)
from core.advice.plan import Refusal
from core.advice.recent_change import outdated
from core.advice.scheduling import ammonia_facts
from core.advice.state import State
from core.advice.strangers import strangers
from core.advice.trends import FEWEST_POINTS, long_trend, series, trend
from core.advice.upkeep import USED_UP, used_up
from core.advice.used_up import acid_of_nitrate
from core.message.model import Question

DAY: Final = timedelta(days=1)

SHOWN: Final = 3
"""Findings on one screen."""

ORDER: Final = ("ph", "kh", "gh", "ammonia", "nitrite", "nitrate", "temperature", "salinity")
"""Analytes that are told first."""


def about(turn: Turn, question: Question) -> StoredTank | None:
    """The tank that a question is about: the one it names, else the one in use."""
    named = turn.tank_named(question.tank) if question.tank else None
    return named or turn.current_tank


async def status(turn: Turn, question: Question) -> list[Reply]:
    """``is my water ok``: what its last readings mean, what they are, and what is due next."""
    record = await _record(turn, question)
    if isinstance(record, Reply):
        return [record]
    stored, state = record
    danger = standing_call(state) if question.analyte is None else None
    if danger is not None:
        return [await emergencies.help_in(turn, stored, danger)]
    of_all = question.analyte is None
    if of_all and (calls := await call_stands.instead(turn, stored, state)) is not None:
        return [calls]
    called = await call_stands.before(turn, stored, state) if of_all else []
    if not state.readings:
        return [await _unmeasured(turn, stored, state, called)]
    looked_at = state.readings
    if question.analyte is not None:
        looked_at = {a: r for a, r in state.readings.items() if a == question.analyte}
        if not looked_at:
            return [await turn.reply(asked_words.no_history(stored.name, question.analyte))]
    lines, found, still = await verdicts.verdict(turn, stored, state, looked_at.values())
    unknown = strangers(state.tank)
    told = sorted(looked_at.values(), key=lambda reading: _place(reading.analyte))
    values = words.measured(told, state.now)
    if (made := outdated(state)) is not None:
        share = made.share or 0.0
        ill = [finding_words.line(f) for f in found if f.id in emergencies.CAUSES]
        told_before = words.before_change(stored.name, share, ill=ill[:1])
        facts = {"tank": stored.name, "changed": {"share": share}, **_facts(state, found)}
        return [await turn.reply([*called, *told_before, *values], more=lines, facts=facts)]
    due = await _due_next(turn, stored)
    more = [*lines[SHOWN:], *(line for finding in found for line in finding_words.why(finding))]
    facts = {"tank": stored.name, **still.facts, **_facts(state, found)}
    if still.names:
        facts["still_in"] = still.names
    if called:
        facts["called"] = open_in(state)
    if not found and unknown:
        facts["not_judged"] = list(unknown)
    return [await turn.reply([*called, *lines[:SHOWN], *values, *due], more=more, facts=facts)]


async def _unmeasured(turn: Turn, stored: StoredTank, state: State, called: Sequence[str]) -> Reply:
    """What deeds tell of a tank that nothing was measured in, the worst first."""
    found = [each for each in stands(state, frozenset()) if each.severity != "note"]
    lines = [finding_words.line(finding) for finding in found[:SHOWN]]
    lines[:1] = [words.lead(stored.name, line) for line in lines[:1]]
    went_in = None if found else still_in.untested(stored, state)
    lines = [*called, *([went_in] if went_in else []), *lines]
    lines += words.nothing_measured(stored.name)
    facts = {"tank": stored.name, **_facts(state, found)}
    if state.went_in is not None:
        lines = [off_words.before_verdict(state.went_in), *lines]
        facts["said"] = state.went_in
    return await turn.reply(lines, facts=facts)


async def why(turn: Turn, question: Question) -> list[Reply]:
    """``why is my ph dropping``: what the tank's own record speaks of, and the usual causes."""
    record = await _record(turn, question)
    if isinstance(record, Reply):
        usual = why_values.causes(question, None)
        return [await turn.reply(usual)] if usual else [record]
    stored, state = record
    found = [f for f in find(state, frozenset(state.readings)) if f.id not in STEADY.ids]
    bearing = [each for each in found if why_values.bears_on(each, question)]
    usual = why_values.causes(question, state, judged=bool(bearing))
    if usual:  # beside what is asked about only what cannot wait
        found = [each for each in found if each in bearing or each.severity == "alarm"]
    if not found and not usual:
        return [await turn.reply(asked_words.no_reason(stored.name))]
    found.sort(key=lambda finding: finding not in bearing)
    lines = [finding_words.line(finding) for finding in found[:SHOWN]]
    lines[:1] = [words.lead(stored.name, line) for line in lines[:1]]
    lines = [*lines[: SHOWN - 1], *usual] if usual else lines
    reasons = [line for finding in found[:SHOWN] for line in finding_words.why(finding)]
    return [await turn.reply(lines, more=reasons, facts=_facts(state, found))]


BIG: Final = re.compile(
    r"\b(?:big|bigger|large|larger|huge|massive|major|full|complete|whole)\b", re.IGNORECASE
)
"""A change of no told share that is plainly a large one."""

OF_AMMONIA: Final = frozenset({"ammonia"})
"""Findings that name ammonia themselves, and how much to change for it."""

SHOWN_BY_NONE: Final[Mapping[str, Danger]] = {
    "gasping": "gasping",
    "co2_high": "co2_high",
    "general": "general",
    "overfed": "overfed",
    "contaminated": "contaminated",
    "illness": "illness",
}
"""Calls of the day whose steps tell of a change, though no reading shows what is wrong."""


async def change_needed(turn: Turn, question: Question) -> list[Reply]:
    """``should i change water``: whether a reading asks for it, and when it was last done."""
    record = await _record(turn, question)
    if isinstance(record, Reply):
        return [record]
    stored, state = record
    if (danger := standing_call(state)) is not None:
        return [await emergencies.help_in(turn, stored, danger)]
    if not state.readings:
        return [await turn.reply(words.nothing_measured(stored.name))]
    if (made := outdated(state)) is not None and made.is_enough:
        told = words.before_change(stored.name, made.share or 0.0, ill=())
        changed = {"tank": stored.name, "changed": {"share": made.share}}
        return [await turn.reply(told, facts=changed)]
    found = [
        finding
        for finding in stands(state, frozenset(state.readings))
        if finding.severity != "note" and _wants_new_water(finding)
    ]
    open_ = (each for each in state.called if each not in state.called_over)
    called = next((each for each in open_ if each in SHOWN_BY_NONE), None)
    if not found and called is not None:
        return [await emergencies.help_in(turn, stored, SHOWN_BY_NONE[called])]
    facts: dict[str, Any] = {"tank": stored.name, **_facts(state, found)}
    if (of_ammonia := await _for_ammonia(turn, stored, state, found)) is not None:
        return [of_ammonia]
    if not found and (aid := first_share.line(state)) is not None:
        litres, added = first_share.in_litres(state)
        lines = [words.lead(stored.name, aid), *litres, *verdicts.untested(state)]
        return [await turn.reply(lines, facts=facts | added)]
    if found:
        told = [finding_words.line(finding) for finding in found[:SHOWN]]
        if BIG.search(question.text or ""):
            return [await turn.reply(words.change_small(stored.name, told), facts=facts)]
        if first_share.line(state) is not None:
            litres, added = first_share.in_litres(state)
            told, facts = [told[0], *litres, *told[1:]], facts | added
        return [
            await turn.reply(
                words.change_now(stored.name, told, asked_when=question.kind == "when"), facts=facts
            )
        ]
    changes = [each.at for each in state.events or () if each.what.kind == "water_change"]
    last = state.now - max(changes) if changes else None
    lines = [*words.change_unneeded(stored.name, last), words.keep_routine()]
    left = await unheard.left(turn, stored)
    facts |= verdicts.facts_of(state, left)
    if (doubted := verdicts.in_doubt(stored, state, left)) is not None:
        lines = doubted
    else:
        lines[1:1] = [*verdicts.not_heard(state, left), *verdicts.untested(state)]
    if not any(reading.is_fresh(state.now) for reading in state.readings.values()):
        lines = [words.only_old(stored.name)]
    return [await turn.reply([*lines, *await _due_next(turn, stored)], facts=facts)]


async def _for_ammonia(
    turn: Turn, stored: StoredTank, state: State, found: Sequence[Finding]
) -> Reply | None:
    """How much is changed while there is ammonia that no limit warns of; None without any.

    The gate refuses plans for it all the same, and a source of more KH is no help then.
    """
    total = shown(state)
    if total is None or any(each.id in OF_AMMONIA for each in found):
        return None
    if any(each.severity == "alarm" for each in found):
        return None  # worse is there, and says how much to change
    is_fresh = total.is_fresh(state.now)
    if found and not is_fresh:
        return None
    found = [each for each in found if each.id != "low_kh"]
    help_ = help_for("general", state, await emergencies.new_water(turn, stored, state))
    facts = {"tank": stored.name, **_facts(state, found)}
    if help_.share is not None:
        facts["largest_safe_share"] = help_.share.most
    if is_fresh:
        lines = [words.change_for_ammonia(stored.name, total, state.now)]
    else:
        lines = refusals.refused(Refusal("ammonia_old", ammonia_facts(state)), stored.name)[:1]
        lines.append(words.if_ammonia_is_left())
    litres, added = first_share.in_litres(state) if help_.share is None else ([], {})
    facts |= added
    lines += [aid_change.change(help_), *litres]
    lines += [finding_words.line(each) for each in found[: SHOWN - 1]]
    lines += [] if state.tank.stock else [words.none_live_there()]
    return await turn.reply(lines, facts=facts)


def _wants_new_water(finding: Finding) -> bool:
    """Whether a change is what to do first; for a spent buffer where the source has more of it."""
    source_helps = finding.id == "low_kh" and "source_kh" in finding.facts
    return source_helps or BY_ID[finding.id].first in first_share.CALL_FOR_CHANGE


async def movement(
    turn: Turn, stored: StoredTank, analyte: str
) -> tuple[list[str], dict[str, object]]:
    """How an analyte moves, with its facts: what the sea's animals use up, else its sure trend."""
    state = await state_of(turn, stored, turn.now)
    if stored.tank.is_sea and analyte in USED_UP:
        used = used_up(state, analyte)
        if used is None:
            return [], {}
        between = {"per_day": used.per_day, "between": [used.low, used.high]}
        return [asked_words.used_up(analyte, used)], {"consumption": between}
    for found in (trend(state, analyte), long_trend(state, analyte)):
        if found is None or not found.is_sure:
            continue
        lines = [words.movement(found)]
        facts: dict[str, object] = {"per_day": found.per_day}
        explained = acid_of_nitrate(state) if analyte == "kh" and found.per_day < 0.0 else None
        if explained is not None:
            facts["kh_to_nitrate_per_day"] = explained
            lines.append(words.acid_of_nitrate(explained))
        return lines, facts
    told = len(series(state, analyte))
    return ([words.no_movement()] if told >= FEWEST_POINTS else []), {}


async def _record(turn: Turn, question: Question) -> tuple[StoredTank, State] | Reply:
    """The tank that is asked about and what is known of it, or the question which."""
    stored = about(turn, question)
    if stored is None:
        return await turn.reply(asked_words.which_tank([tank.name for tank in turn.tanks]))
    state = await state_of(turn, stored, turn.now)
    return stored, state


async def _due_next(turn: Turn, stored: StoredTank) -> list[str]:
    """One line with the tank's next reminder, if it has any."""
    for reminder in await turn.uow.reminders.of_chat(turn.chat.id):
        due = reminder.open_due or reminder.next_due
        if reminder.tank_id == stored.id and due is not None:
            local = due.astimezone(turn.chat.zone)
            return [words.due_next(said(turn, reminder), at_time(local, turn.local_now))]
    return []


def _place(analyte: str) -> int:
    return ORDER.index(analyte) if analyte in ORDER else len(ORDER)


def _facts(state: State, found: Sequence[Finding]) -> dict[str, Any]:
    return {
        "findings": [{"id": f.id, "severity": f.severity, **f.facts} for f in found],
        "readings": {r.analyte: r.value for r in state.readings.values()},
    }
