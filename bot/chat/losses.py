"""Animals died: the cause that the readings show, and what nobody looked at yet."""

from __future__ import annotations

from collections.abc import Mapping

from bot.chat import emergencies
from bot.chat.told import Told
from bot.chat.turn import Turn
from bot.chat.words import losses as words
from bot.chat.words.cautions import caution
from bot.chat.words.emergency_steps import after_change
from bot.chat.words.emergency_steps import dosed_lately as dosed_words
from bot.chat.words.text import _
from bot.store.offers import Choice
from core.advice.alarm_words import named
from core.advice.dosed_lately import dosed_lately, rose_by_doses
from core.advice.emergencies import Help, missing
from core.advice.livestock import lookup
from core.advice.recent_change import changed_lately
from core.advice.state import State
from core.advice.stock import GOING, Came, all_meant, meant, names_no_kind, tally


def lines(state: State, text: str) -> list[str]:
    """What is known to be wrong, what to measure, and what to do with the rest.

    Pipes named in the `text` of the message are a likely source of copper.
    """
    cause = emergencies.cause(state)
    told = words.lost(cause, [each for each in missing(state) if each != "kh"])
    changed = after_change(Help("general", changed=changed_lately(state, None)))
    if "pipes" in named(text).get("deed", ()):
        told.insert(0, _(words.PIPES))
    if "eaten_by_pet" in named(text).get("caution", ()):
        told.append(caution("eaten_by_pet")[0])
    told = told if changed is None else [changed, *told]
    return [*_by_doses(state), *told]


def _by_doses(state: State) -> list[str]:
    """That the doses of these days may be the cause, and that no more of them goes in."""
    if (rise := rose_by_doses(state)) is not None:
        return [words.rose_by_doses(rise.before, rise.now, rise.substance, rise.grams)]
    dosed = dosed_lately(state)
    if dosed is None:
        return []
    return [dosed_words(dosed.substance or "", dosed.grams)]


async def on_record_before(turn: Turn, told: Told) -> dict[str, int]:
    """What a tank had on record before the animals left that are told of now."""
    came = await turn.uow.log.stock(told.tank.id, until=told.at)
    for event in (each.what for each in told.events if each.what.kind in GOING):
        gone = Came(event.kind, event.species, event.count)
        if gone in came:
            came.reverse()
            came.remove(gone)  # the latest of its like is the one just told
            came.reverse()
    return tally(came)


async def unrecorded(
    turn: Turn, told: Told, before: Mapping[str, int]
) -> tuple[list[str], list[Choice]]:
    """Animals gone that a tank has not on record, or not so many; and who has them elsewhere."""
    lost = [e.what for e in told.events if e.what.kind in GOING]
    of_kinds = [event for event in lost if not names_no_kind(event.species)]
    if not of_kinds:
        return [], []
    for event in of_kinds:
        species, many = event.species or "", event.count or 1
        held = sum(before[name] for name in all_meant(before, species, every=True))
        if held >= many or _may_be_among(species, before):
            continue
        elsewhere = [
            tank.name
            for tank in turn.tanks
            if tank.id != told.tank.id
            and meant(tally(await turn.uow.log.stock(tank.id, until=told.at)), species)
        ]
        lines = [words.unrecorded(held, species, told.tank.name, elsewhere)]
        choices = [
            Choice(words.it_was(tank), "say_again", "", {"text": f"that was {tank}"})
            for tank in elsewhere[:OFFERED]
            if event.kind == "lost"
        ]
        return lines, choices
    return [], []


def counted_as_one(told: Told, before: Mapping[str, int]) -> list[str]:
    """That one was taken off, where several were on record and no number was told."""
    for event in (each.what for each in told.events if each.what.kind == "lost"):
        kinds = all_meant(before, event.species, every=True)
        several = sum(before[name] for name in kinds) > 1
        if event.count is None and event.text is None and several:
            return [words.counted_as_one(event.species or kinds[0])]
    return []


def _may_be_among(species: str, held: Mapping[str, int]) -> bool:
    """Whether a kind may be one of those that are on record by a name of several: snails."""
    row = lookup(species).species
    return row is not None and any(row in lookup(name).candidates for name in held)


OFFERED = 3
"""Tanks that a loss may have been in."""
