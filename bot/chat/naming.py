"""Whom a name of animals means, asked with the answer that stores it; nothing is guessed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from bot.chat.told import Told
from bot.chat.words import animals as words
from bot.store.offers import Choice
from core.advice._livestock_words import is_young, kind_alone, plain_name
from core.advice.livestock import Found, likeliest, lookup
from core.advice.stock import GOING, all_meant, names_no_kind
from core.message.model import Event
from core.tank import Tank

OFFERED = 4


def asked(
    told: Told, tank: Tank, before: Mapping[str, int], entry_id: int, language: str
) -> tuple[list[str], list[Choice], str | None]:
    """Ask about the first name that is no one kind's, or can be several on record.

    `before` is what was on record before animals left.

    Returns
    -------
    tuple of lines, choices and str or None
        The question, a button a candidate, and the name that is asked about.
    """
    for each in told.events:
        event = each.what
        if event.kind not in {"added", "lost", "moved_out"}:
            continue
        lines, names = _question(event, tank, before, language)
        if lines:
            held = {"entry_id": entry_id, "tank_id": told.tank.id, "said": event.species}
            choices = [
                Choice(label, "name_animal", "", {**held, "name": name}) for label, name in names
            ]
            return lines, choices, event.species
    return [], [], None


def _question(
    event: Event, tank: Tank, before: Mapping[str, int], language: str
) -> tuple[list[str], list[tuple[str, str]]]:
    """The question about one name, with the label and the name of each answer."""
    if names_no_kind(event.species):
        kinds = [held.species for held in tank.stock]
        if event.kind == "added" or len(kinds) < 2:
            return [], []
        return words.lost_which(event.count), [(kind, kind) for kind in kinds[:OFFERED]]
    said = event.species or ""
    if event.kind == "added" and is_young(said) and not kind_alone(plain_name(said)):
        kinds = [held.species for held in tank.stock if not is_young(held.species)]
        return words.born_of_whom(), [(kind, f"{kind} ({said})") for kind in kinds[:OFFERED]]
    found = lookup(said)
    if event.kind in GOING and found.species is not None:
        return _sexes(event, before)
    if found.species is not None or not found.candidates:
        return [], []
    if event.kind in GOING and found.shared:
        kinds = _on_record(found, before)
        if len(kinds) == 1:
            return [], []
        if kinds:
            return words.lost_which(event.count), [(kind, kind) for kind in kinds[:OFFERED]]
    found = replace(found, candidates=likeliest(found, tank))
    names = [row.name_in(language) for row in found.candidates]
    return words.which(said, found, language), [(name, name) for name in names]


def _sexes(event: Event, before: Mapping[str, int]) -> tuple[list[str], list[tuple[str, str]]]:
    """Ask whether males or females left, where both are on record and some stay."""
    kinds = all_meant(before, event.species)
    if len(kinds) < 2 or (event.count or 1) >= sum(before[kind] for kind in kinds):
        return [], []
    return words.lost_which(event.count), [(kind, kind) for kind in kinds[:OFFERED]]


def _on_record(found: Found, held: Iterable[str]) -> list[str]:
    """The kinds on record that a shared name can mean, as the keeper calls them."""
    wanted = {row.scientific for row in found.candidates}
    rows = [(name, lookup(name).species) for name in held]
    return [name for name, row in rows if row is not None and row.scientific in wanted]
