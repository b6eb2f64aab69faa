"""What the readings of a tank mean together: never that all is well of what is not known."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace

from bot.chat import still_in, unheard
from bot.chat.turn import Turn
from bot.chat.words import after_dose as dose_words
from bot.chat.words import findings as finding_words
from bot.chat.words import off_record as off_words
from bot.chat.words import standing as words
from bot.chat.words import strangers as stranger_words
from bot.chat.words.readings import event
from bot.store.tanks import StoredTank
from core.advice import limits
from core.advice import untested as untested_deeds
from core.advice.findings import DEEDS, Finding, find, is_kept_soft, stands, unknown_in
from core.advice.nobodys import is_nobodys
from core.advice.outlook import with_premises
from core.advice.state import Measured, State
from core.advice.strangers import strangers


async def verdict(
    turn: Turn, stored: StoredTank, state: State, readings: Collection[Measured]
) -> tuple[list[str], list[Finding], still_in.StillIn]:
    """What readings mean, the findings behind it, and what may still be in the water."""
    left = await unheard.left(turn, stored)
    lines, found, still = await _judged(turn, stored, state, readings, left)
    still.facts = {**still.facts, **facts_of(state, left)}
    if left is not None and left.dose:
        first = off_words.before_verdict(left.text)
        lines = [first, *(line for line in lines if line != first)]
        still.facts = {**still.facts, "said": left.text}
    return lines, found, still


async def _judged(
    turn: Turn,
    stored: StoredTank,
    state: State,
    readings: Collection[Measured],
    left: unheard.Left | None,
) -> tuple[list[str], list[Finding], still_in.StillIn]:
    found = stands(state, frozenset(reading.analyte for reading in readings))
    unknown = strangers(state.tank)
    lines = [finding_words.line(finding) for finding in found]
    still = await still_in.found(turn, stored, state, deeds=False)
    if found:
        lines[0] = words.lead(stored.name, lines[0])
        lines[1:1] = still.lines
    elif still.too_much:
        lines = [words.lead(stored.name, still.lines[0]), *still.lines[1:]]
    elif done := untested_deeds.since(state, readings):
        lines = words.done_since(stored.name, [event(each.what) for each in done])
    elif any(reading.is_fresh(state.now) for reading in readings):
        is_all = len(readings) == len(state.readings)
        lines = _nothing_off(turn, stored, state, still, left, is_all=is_all)
        if unknown:
            lines.append(stranger_words.not_judged(unknown))
        return lines, found, still
    else:
        lines = [words.only_old(stored.name)]
    lost = _losses(state)
    if lost and not untested_deeds.since(state, readings):
        lines[1:1] = [words.lost_since(*lost)]
    else_told = any(f.id in DEEDS or "substance" in f.facts for f in found) or still.lines
    dosed, of_dose = ([], {}) if else_told else still_in.moved(stored, state)
    still.facts = of_dose
    lines[1:1] = [*dosed, *not_heard(state, left)]
    return lines, found, still


def _nothing_off(
    turn: Turn,
    stored: StoredTank,
    state: State,
    still: still_in.StillIn,
    left: unheard.Left | None,
    *,
    is_all: bool,
) -> list[str]:
    """That no reading is off; but of what went in since nothing is known to be well.

    `is_all` where the whole record is judged: then what is missing in it is named.
    """
    unread = not_heard(state, left)
    unknown = unknown_in(state)
    known = {each.name.casefold() for each in turn.products}
    if unknown is not None and unknown.casefold() not in known:
        return [dose_words.unknown_in(stored.name, unknown), *unread]
    dosed, still.facts = still_in.moved(stored, state)
    if dosed:
        return [words.lead(stored.name, dosed[0]), *dosed[1:], *unread]
    if lost := _losses(state):
        return [words.lead(stored.name, words.lost_since(*lost)), *unread]
    missing = untested(state) if is_all else []
    if (doubted := in_doubt(stored, state, left)) is not None:
        return [*doubted, *missing]
    soft = _soft_by_choice(state) if is_all else []
    if missing or unread:
        return [words.within(stored.name), *soft, *unread, *missing]
    return [words.nothing_off(stored.name), *soft]


def _soft_by_choice(state: State) -> list[str]:
    """Why a KH that is low for most is none to raise here: else it is read as forgotten."""
    kh = state.last("kh")
    low = kh is not None and limits.KH_SOFT <= kh.value < limits.KH_LOW_FRESH
    if kh is None or not low or state.tank.is_sea or not is_kept_soft(state):
        return []
    return [words.kept_soft(kh.value)]


def _losses(state: State) -> tuple[list[str], list[str]] | None:
    """Who died of late, in words, and what was not measured after it; None where nothing is so."""
    lost, missing = untested_deeds.losses(state)
    return ([event(each.what) for each in lost], missing) if lost else None


def not_heard(state: State, left: unheard.Left | None) -> list[str]:
    """What was sent before and not understood: no answer of the water leaves it out."""
    if left is None:
        return []
    if left.kit or left.values:
        return [words.doubted(left.text, kit=left.kit), *_if_so(state, left), *_others(state, left)]
    if left.dose:
        return [off_words.before_verdict(left.text), *_others(state, left)]
    return [words.not_understood(left.text), *_others(state, left)]


def _others(state: State, left: unheard.Left) -> list[str]:
    """The numbers that were asked about before and not answered either."""
    told = (not_heard(state, replace(each, others=())) for each in left.others)
    return [line for lines in told for line in lines]


def in_doubt(stored: StoredTank, state: State, left: unheard.Left | None) -> list[str] | None:
    """That nothing can be told while a number or a test is in doubt; None where none is.

    What such a number would mean is told as if it were true.
    """
    if left is None or not left.open:
        return None
    if left.kit or left.values:
        first = words.cannot_tell(stored.name, left.text, kit=left.kit)
        return [first, *_if_so(state, left), *_others(state, left)]
    return [words.cannot_tell_yet(stored.name), *not_heard(state, left)]


def facts_of(state: State, left: unheard.Left | None) -> dict[str, object]:
    """What a number that is in doubt would mean, as facts; nothing where that is not bad."""
    every = (left, *left.others) if left is not None else ()
    found = [f for each in every if (f := _supposed(state, each)) is not None]
    told = [{"id": each.id, "severity": each.severity, **each.facts} for each in found]
    return {"supposed": told} if told else {}


def _if_so(state: State, left: unheard.Left) -> list[str]:
    found = _supposed(state, left)
    return [] if found is None else [words.if_so(finding_words.line(found))]


def _supposed(state: State, left: unheard.Left | None) -> Finding | None:
    """The worst that values which nobody answered for would mean."""
    if left is None or not left.values:
        return None
    found = find(with_premises(state, left.values), frozenset(left.values))
    return next((each for each in found if each.severity != "note"), None)


def untested(state: State) -> list[str]:
    """Which poisons nothing of late is known of; none where it was told that nobody lives there."""
    missing = [each for each in ("ammonia", "nitrite") if state.fresh(each) is None]
    return [words.untested(missing)] if missing and not is_nobodys(state) else []
