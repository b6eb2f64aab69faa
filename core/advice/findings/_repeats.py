"""What need not be said again."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final

from core.advice import limits
from core.advice.findings._model import RANK, Finding, Severity

AGAIN_AFTER: Final[Mapping[Severity, timedelta]] = {
    "alarm": timedelta(),
    "warn": timedelta(days=14),
    "note": timedelta(days=30),
}
"""A finding that still holds is said again after this; an alarm always. Common practice."""

PATIENCE: Final = 4
"""Each time that it is said and nothing came of it, the wait doubles, up to so many times: a keeper
who was told thrice knows it. Common practice."""

REMEMBERED: Final = 2 * PATIENCE * max(AGAIN_AFTER.values())
"""What was told longer ago decides nothing."""

WORSE_BY: Final = 0.2
"""Its number must have grown by this share to count as worse; common practice."""

WORSENS: Final = {
    "ammonia": ("nh3_n", 1),
    "ammonia_without_ph": ("total_n", 1),
    "ammonia_seen": ("total_n", 1),
    "nitrite": ("nitrite", 1),
    "nitrite_seen": ("nitrite", 1),
    "nitrite_with_chloride": ("nitrite", 1),
    "nitrate": ("nitrate", 1),
    "neglected": ("nitrate", 1),
    "low_kh": ("kh", -1),
    "low_gh": ("gh", -1),
    "sea_kh_high": ("kh", 1),
    "low_oxygen": ("oxygen", -1),
    "chlorine": ("chlorine", 1),
    "copper": ("copper", 1),
    "much_co2": ("co2_mg_l", 1),
    "potassium_sum": ("potassium", 1),
    "potassium_high": ("potassium", 1),
    "potassium_with_mussels": ("potassium", 1),
}
"""The fact that tells how bad a finding is, and whether more (1) or less (-1) is worse."""


@dataclass(frozen=True, slots=True)
class Told:
    """A finding as it was told before, when, and whether it was surely seen."""

    finding: Finding
    at: datetime
    seen: bool = True


def key_of(finding: Finding) -> tuple[str, ...]:
    """What makes two findings the same one: the rule, and of what and whom it speaks.

    A jump is another one wherever it leads.
    """
    about: tuple[str, ...] = ("analyte", "species", "species_2", "said", "substance")
    if finding.id == "sudden_jump":
        about = (*about, "value")
    return (finding.id, *(str(finding.facts[part]) for part in about if part in finding.facts))


def fresh_only(
    findings: Sequence[Finding],
    told_before: Iterable[Told],
    now: datetime,
    read: Collection[str] = (),
) -> list[Finding]:
    """Leave out what was told lately, was seen, and is no worse.

    Parameters
    ----------
    findings : sequence of Finding
        What holds now, in the order to keep.
    told_before : iterable of Told
        What this chat was told of this tank, in any order.
    now : datetime
        The moment of the answer.
    read : collection of str, optional
        The analytes that were just read: poison that was read again is told again.

    Returns
    -------
    list of Finding
        An alarm always stays: who is told of poison once must not be left to think it is gone.
    """
    before: dict[tuple[str, ...], list[Told]] = {}
    for told in sorted(told_before, key=lambda t: t.at):
        if told.seen:
            before.setdefault(key_of(told.finding), []).append(told)
    return [
        f
        for f in findings
        if POISON_OF.get(f.id) in read or _is_news(f, before.get(key_of(f)), now)
    ]


POISON_OF: Final = {"ammonia": "ammonia", "ammonia_without_ph": "ammonia"}
"""Poison told as a danger, by the analyte: a reading of it that says nothing would tell that it is
gone."""


CO2_DEADLY: Final = 2.0 * limits.CO2_WARN
"""So much carbon dioxide is said each time, though it is read of two kits; ours. [mg/L]"""


def _is_news(finding: Finding, before: Sequence[Told] | None, now: datetime) -> bool:
    if not before or finding.severity == "alarm" or _is_deadly_co2(finding):
        return True
    if _is_otherwise(finding, before[-1]):
        return True
    if _side(finding) * _side(before[-1].finding) < 0:
        return True  # from too cold to too warm is no repeat
    episode, wait = _episode(before)
    return now - before[-1].at >= wait or _is_worst(finding, episode)


def _is_otherwise(finding: Finding, last: Told) -> bool:
    """Whether nitrate that fell is still too much: silence would tell that it is well."""
    if finding.id != "nitrate":
        return False
    if ("left" in finding.facts) != ("left" in last.finding.facts):
        return True
    now, then = _number(finding, "nitrate"), _number(last.finding, "nitrate")
    return then - now > WORSE_BY * then


def _is_deadly_co2(finding: Finding) -> bool:
    return finding.id == "much_co2" and float(finding.facts["co2_mg_l"]) >= CO2_DEADLY


def _episode(before: Sequence[Told]) -> tuple[list[Told], timedelta]:
    """What was told since a finding last came up, and how long it is left in peace after that.

    It had gone where it was not said when it was due; the wait begins anew where it got worse than
    it ever was.
    """
    episode, times = [before[0]], 1
    for told in before[1:]:
        due = AGAIN_AFTER[episode[-1].finding.severity] * times
        if told.at - episode[-1].at > 2 * due:
            episode, times = [], 1
        elif _is_worst(told.finding, episode):
            times = 1
        else:
            times = min(2 * times, PATIENCE)
        episode.append(told)
    return episode, AGAIN_AFTER[episode[-1].finding.severity] * times


def _is_worst(finding: Finding, told: Iterable[Told]) -> bool:
    """Whether a finding is graver than it was at any telling: kits waver by a step."""
    return all(is_worse(finding, each.finding) for each in told)


def is_worse(finding: Finding, before: Finding) -> bool:
    """Whether a finding is graver than it was, by rank or by its number."""
    if RANK[finding.severity] != RANK[before.severity]:
        return RANK[finding.severity] < RANK[before.severity]
    if finding.id in MOVES:
        further = _number(finding, "ph") - _number(before, "ph")
        way = math.copysign(1.0, _number(finding, "change"))
        went = way * _number(before, "change") > 0.0
        return went and further * way >= limits.PH_MOVED - 1e-9
    if finding.id == "overdose":  # one more of it, on the same day
        return _number(finding, "grams") > limits.WEIGHED * _number(before, "grams")
    if finding.id == "does_not_suit":
        return _outside(finding) >= FAR_WORSE * _outside(before) > 0.0
    fact, direction = WORSENS.get(finding.id, ("", 1))
    now, then = finding.facts.get(fact), before.facts.get(fact)
    if not isinstance(now, int | float) or not isinstance(then, int | float):
        return False
    change = (now - then) * direction
    return change > WORSE_BY * abs(then) and change > 0.0


FAR_WORSE: Final = 2.0
"""A value is worse where it is so many times as far outside of what suits; common practice."""


MOVES: Final = frozenset({"ph_moved", "ph_moved_other_hour", "ph_fell", "ph_rose"})
"""Findings of a move: one that went on the same way from where it was told is no repeat."""


def _number(finding: Finding, fact: str) -> float:
    value = finding.facts.get(fact)
    return float(value) if isinstance(value, int | float) else 0.0


def _outside(finding: Finding) -> float:
    """How far a value lies outside of what suits; 0 where that is not told."""
    return abs(_side(finding))


def _side(finding: Finding) -> float:
    """The same with its side: above 0 over what suits, under 0 below it."""
    value, low, high = (finding.facts.get(part) for part in ("value", "low", "high"))
    if not isinstance(value, int | float):
        return 0.0
    if isinstance(high, int | float) and value > high:
        return value - high
    return value - low if isinstance(low, int | float) and value < low else 0.0
