"""What went in of late and was not tested since: no answer of the readings leaves it out."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Final

from bot.chat import product_doses
from bot.chat.effects import facts_of
from bot.chat.products import is_of
from bot.chat.told import Told
from bot.chat.turn import Turn
from bot.chat.words import effects as effect_words
from bot.chat.words import findings as finding_words
from bot.chat.words import product_doses as product_words
from bot.chat.words import readings as readings_words
from bot.chat.words import still_in as words
from bot.store.log import Stored
from bot.store.tanks import StoredTank
from core.advice.effects import effects_of
from core.advice.emergencies import standing_call
from core.advice.findings import DEEDS, LOOKED_BACK, Finding, newest_test, stands, unknown_in
from core.advice.plan import Refusal
from core.advice.scheduling import per_gram
from core.advice.spoons import least_grams
from core.advice.state import Happening, State
from core.message.model import Event
from core.water import SUBSTANCES

MOVED: Final = ("kh", "gh", "salinity")
"""What salts move that a verdict rests on."""


@dataclass(slots=True)
class StillIn:
    """Lines, and what they rest on: findings, bought products, things of which nothing is known."""

    lines: list[str] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)
    names: list[str] = field(default_factory=list)
    too_much: bool = False
    """Whether any of it is too much, beside the findings."""
    facts: dict[str, object] = field(default_factory=dict)
    """Numbers of a dose that no limit is against."""


async def found(turn: Turn, stored: StoredTank, state: State, *, deeds: bool = True) -> StillIn:
    """All of it, the most serious first; without `deeds` what no finding tells.

    `state` holds the readings as they were measured.
    """
    still = StillIn()
    if deeds:
        still.findings = [f for f in stands(state, frozenset()) if f.id in DEEDS]
        still.lines = [finding_words.line(finding) for finding in still.findings]
    for event in state.events or ():
        if event.what.kind == "dose" and _is_open(turn, event, state):
            at_once = Stored(event.what, stored.id, event.at)
            over = await product_doses.over_a_day(turn, Told(stored, (), (at_once,)))
            if over is not None:
                still.lines += product_words.too_much(over.product, over.amount, over.rises)
                still.names.append(over.product.name)
                still.too_much = True
    unknown = unknown_in(state)
    known = {each.name.casefold() for each in turn.products}
    if unknown is not None and unknown.casefold() not in known:
        still.lines.append(words.unknown(unknown))
        still.names.append(unknown)
    if not still.lines and standing_call(state) == "overdose":
        still.lines.append(words.called())
        still.names.append("overdose")
        still.too_much = True
    return still


def moved(stored: StoredTank, state: State) -> tuple[list[str], dict[str, object]]:
    """What the last dose of a salt did that a reading is older than, with its facts.

    Nothing where it is told of otherwise: too much of it is a finding.
    """
    dose = _last_unread(state)
    if dose is None:
        return [], {}
    lines = [words.read_before(dose.substance or "")]
    volume, grams = dose.litres or stored.tank.volume_l, least_grams(dose)
    effects = None
    if volume is not None and grams is not None:
        effects = effects_of(dose.substance or "", grams, volume, state)
    if effects is None or isinstance(effects, Refusal):
        return [*lines, words.not_told()], {}
    lines += [effect_words.head(each, in_tank=False) for each in effects]
    return lines, {"dosed": facts_of(effects)}


def untested(stored: StoredTank, state: State) -> str | None:
    """A salt that went in of late where nothing that it moves was read after; None where none."""
    dose = _last_unread(state)
    if dose is None:
        return None
    return words.untested(stored.name, readings_words.event(dose))


def _last_unread(state: State) -> Event | None:
    """The last dose of late of which something that it moves was not read since; else None."""
    doses = [
        event
        for event in state.events or ()
        if event.what.kind == "dose"
        and state.now - LOOKED_BACK < event.at <= state.now
        and _moves_any(event, state)
    ]
    return max(doses, key=lambda each: each.at).what if doses else None


def _moves_any(event: Happening, state: State) -> bool:
    """Whether a salt moves what was read before it, or what was never read."""
    name = event.what.substance or ""
    if name not in SUBSTANCES:
        return False
    read = {analyte: state.last(analyte) for analyte in MOVED if per_gram(name, analyte)}
    return any(last is None or event.is_after(last) for last in read.values())


def _is_open(turn: Turn, event: Happening, state: State) -> bool:
    """Whether a dose of a product is late, and nothing that it moves was read after it."""
    if not event.at <= state.now < event.at + LOOKED_BACK:
        return False
    moved = {each.label.analyte for each in turn.products if is_of(event.what, each)}
    read = [newest_test(state), *(r.at for name in moved if (r := state.last(name)) is not None)]
    return bool(moved) and all(at is None or at <= event.at for at in read)
