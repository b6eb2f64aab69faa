"""``is that safe for neon tetras``: what was spoken of, judged for the animals that are named."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any, Final

from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import after as after_words
from bot.chat.words import findings as finding_words
from bot.chat.words import for_kinds as words
from bot.chat.words import plants as plant_words
from bot.chat.words import readiness as readiness_words
from bot.store.tanks import StoredTank
from core.advice.by_now import by_now
from core.advice.findings import Finding, find
from core.advice.livestock import Species, fits, kept_in, lookup, may_live_in, named_in
from core.advice.outlook import with_premises
from core.advice.plants import JUDGED, ends
from core.advice.readiness import ready
from core.advice.state import State
from core.advice.stock import names_no_kind
from core.advice.strangers import named as stranger_named
from core.advice.treatments import minds_salt
from core.message.after import means_them
from core.message.fold import fold
from core.tank import Stock, Tank

SUITING: Final = frozenset(
    {"does_not_suit", "potassium_high", "potassium_sum", "potassium_with_mussels", "nitrate"}
)
"""What of where a plan leads is against animals; its steps keep the other limits."""

SALTS: Final = frozenset({"sodium chloride", "sea salt"})


async def judged(
    turn: Turn,
    stored: StoredTank,
    state: State,
    facts: Mapping[str, Any],
    named: Sequence[str],
    poison: Sequence[Finding] = (),
) -> Reply:
    """Judge where a plan, an amount, a change or a dose leads for kinds that are named.

    Parameters
    ----------
    facts : mapping
        Of the answer that was given last, or of the dose that was logged.
    named : sequence of str
        Kinds in the words of a keeper; of a name that several share, each is judged.
    poison : sequence of Finding
        What stands against all animals in the water now: it is said first.
    """
    rows = _rows(named, state.tank)
    done = bool(facts.get("events"))
    values = ends({} if done else facts, by_now(state))
    values = {name: values[name] for name in JUDGED if name in values}
    kept = tuple(Stock(row.name, 1) for row in rows)
    state = replace(state, tank=replace(state.tank, stock=kept))
    there = with_premises(state, values | ({} if done else _potassium(state, facts)))
    found = [f for f in find(there, frozenset(there.readings)) if f.id in SUITING]
    language = turn.chat.language
    kinds = list(dict.fromkeys(_called(name, language) for name in named))
    misfits = {row.scientific: off for row in rows if (off := fits(row, values))}
    suited = [row.name_in(language) for row in rows if row.scientific not in misfits]
    lines = [finding_words.line(finding) for finding in poison[:1]]
    lines += words.judged(stored.name, kinds, suited, values, every=not misfits)
    if misfits:
        lines.append(plant_words.against([off[0] for off in misfits.values()]))
    beside = [finding for finding in found if finding.id != "does_not_suit"]
    lines += [finding_words.line(finding) for finding in beside[:2]]
    lines += _of_pace(facts)
    if _salted(facts) and (minds := minds_salt(state)):
        lines.append(words.salt(minds))
    if not done:
        lines.append(words.watch())
    told = [{"id": f.id, "severity": f.severity, **f.facts} for f in (*poison, *found)]
    held = {"tank": stored.name, "findings": told, "for": kinds, "suited": suited}
    return await turn.reply(lines, facts=held | {"water": values})


def _rows(named: Sequence[str], tank: Tank) -> list[Species]:
    """The kinds of the table that the names mean in such a tank, each once."""
    rows: dict[str, Species] = {}
    water = "fresh" if tank.kind == "pond" else tank.kind
    for name in named:
        found = lookup(name)
        able = tuple(row for row in found.candidates if row.water == water)
        meant = (found.species,) if found.species is not None else able or found.candidates
        for row in meant:
            rows.setdefault(row.scientific, row)
    return list(rows.values())


def _called(name: str, language: str) -> str:
    """What a name is called in an answer: a name that several share as it was said."""
    row = lookup(name).species
    return name if row is None else row.name_in(language)


def _potassium(state: State, facts: Mapping[str, Any]) -> dict[str, float]:
    added = facts.get("potassium_mg_l")
    if added is None:
        return {}
    before = state.last("potassium")
    return {"potassium": added + (before.value if before is not None else 0.0)}


def _of_pace(facts: Mapping[str, Any]) -> list[str]:
    """How slowly what was spoken of goes in."""
    if "largest_safe_share" in facts:
        return [words.in_steps()] if facts.get("broken") else []
    if (days := round(facts.get("days", 1))) > 1:
        return [words.over_days(days)]
    parts = facts.get("parts", ())
    if isinstance(parts, Sequence) and len(parts) > 1:
        return [words.in_parts(len(parts))]
    return []


def _salted(facts: Mapping[str, Any]) -> bool:
    each = (facts, *facts.get("events", ()), *facts.get("salts", ()))
    return any(one.get("substance") in SALTS for one in each)


def not_there(said: str | None, state: State) -> list[str] | None:
    """Those of the animals named that are not in the tank; None where no animal is named."""
    if said is None:
        return []
    plain = fold(said)
    if any(char.isdigit() for char in plain):
        return None  # so many of them are to come
    said_words = plain.split()
    named = named_in(plain)
    if not named and (means_them(plain) or names_no_kind(said_words[-1])):
        return []
    if not named and stranger_named(plain, state.tank) is not None:
        return []  # on record, if known by nothing but a name
    told = {word for words_, _found in named for word in words_.split()}
    others = (word for word in said_words if word not in told)
    named += [(word, found) for word in others if (found := lookup(word)).shared]
    if not named:
        return None
    living = {row.scientific for row in may_live_in(state.tank)}
    unclear = " ".join(fold(stock.species) for stock in kept_in(state.tank).unknown)
    return [
        name
        for name, found in named
        if name not in unclear
        and living.isdisjoint(
            {row.scientific for row in (found.species, *found.candidates) if row is not None}
        )
    ]


def live_there(names: Sequence[str], tank: Tank) -> bool:
    """Whether all of some kinds, by their names, are in a tank already."""
    living = {row.scientific for row in may_live_in(tank)}
    found = [lookup(name).species for name in names]
    return bool(found) and all(row is not None and row.scientific in living for row in found)


async def in_water(turn: Turn, state: State, stored: StoredTank, named: Sequence[str]) -> Reply:
    """Whether the water as it was measured suits animals that are not in it; the filter first."""
    filtered = ready(state)
    growing = readiness_words.before_all(filtered, stored.name)
    first = [growing] if growing is not None and filtered.stands_first else []
    kept = tuple(Stock(name, 1) for name in named)
    state = replace(state, tank=replace(state.tank, stock=kept))
    found = [f for f in find(state, frozenset(state.readings)) if f.id == "does_not_suit"]
    told_of = [finding_words.line(finding) for finding in found[:3]]
    lines = [*first, *after_words.water(stored.name, told_of)]
    told = [{"id": f.id, "severity": f.severity, **f.facts} for f in found]
    return await turn.reply(lines, facts={"tank": stored.name, "findings": told})
