"""``/tank`` and its spoken forms: add, show, change, rename, delete, and what a kit reads."""

from __future__ import annotations

import re
from collections.abc import Awaitable, Callable, Mapping
from dataclasses import replace
from typing import Any, Final, cast

from bot.chat import held, resizing
from bot.chat import traits as told
from bot.chat.model import Reply
from bot.chat.tank_volumes import confirm_box, facts
from bot.chat.tank_words import Described, describe, name_problem
from bot.chat.turn import Turn
from bot.chat.words import buttons, general
from bot.chat.words import first_evening as evening_words
from bot.chat.words import tanks as words
from bot.chat.words.names import first_tank
from bot.reminders import planning
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.advice import limits
from core.message import parse, traits
from core.message.model import Basis, Command, Context, Kit, Parsed
from core.message.tanks import match
from core.tank import Tank

_PER_DROP = re.compile(
    r"(\d{1,3}(?:[.,]\d{1,4})?)\s{0,3}(?:°?d[gk]?h)?\s{0,3}(?:per|a|/)\s{0,3}drop"
)
_BASIS = re.compile(r"\b(?:as|basis)\s{1,3}(n|p|nh3|nh4|ion|caco3)\b")
_CO2 = re.compile(r"\bco2$", re.IGNORECASE)
_BASES: Final = {"n": "N", "p": "P", "nh3": "NH3", "nh4": "NH4", "ion": "ion", "caco3": "CaCO3"}


async def command(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """Answer a ``/tank`` line by its first word; a tank's name shows or changes that tank."""
    said = _CO2.sub("has co2", command.arguments, count=1)
    if (trait := traits.read(said, turn.context())) is not None:
        return await told.answer(turn, trait)
    first, _space, rest = command.arguments.strip().partition(" ")
    if not first:
        lines = words.listing([tank.tank for tank in turn.tanks])
        return [await turn.reply(lines, facts=_listing_facts(turn))]
    verb = _VERBS.get(first.casefold())
    if verb is not None:
        return await verb(turn, rest.strip())
    return await _show_or_change(turn, command.arguments.strip())


async def kit(turn: Turn, command: Command, _parsed: Parsed) -> list[Reply]:
    """``kit kh 0.5 per drop`` as a line of its own."""
    if (trait := traits.read(f"kit {command.arguments}", turn.context())) is not None:
        return await told.answer(turn, trait)
    return await _kit(turn, command.arguments)


async def press_separate(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """The readings before a tank was named belong to another tank after all."""
    adopted = turn.tank_by_id(choice.arguments["tank_id"])
    if adopted is None or not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    held = choice.arguments["before"]
    named = adopted.tank
    await turn.change_tank(adopted, **held)
    await turn.add_tank(replace(named, kits={}))
    return [await turn.reply(words.separated(held["name"]))]


async def press_delete(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Take a tank off the list; what it holds stays in the history."""
    stored = turn.tank_by_id(choice.arguments["tank_id"])
    if stored is None or not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    for reminder in await turn.uow.reminders.of_chat(turn.chat.id):
        if reminder.tank_id == stored.id:
            await planning.end(turn.uow, reminder, turn.now)
    await turn.change_tank(stored, deleted_at=turn.now)
    return [await turn.reply(words.deleted(stored.name))]


async def press_keep(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """A tank that was to be deleted stays."""
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    return [await turn.reply(words.kept(choice.arguments["name"]))]


async def _new(turn: Turn, text: str) -> list[Reply]:
    said = describe(text, us_gallons=turn.chat.us_gallons)
    if text[:1].isdigit():  # new tank 90 l: its name is still to come
        name = evening_words.called("second") if turn.tanks else first_tank()
        said = describe(f"{name} {text}", us_gallons=turn.chat.us_gallons)
        said = replace(said, name=turn.free_name(name))
    if problem := await _refused(turn, said):
        return [problem]
    tank = Tank(
        name=said.name,
        kind=said.kind or "fresh",
        volume_l=said.volume_l,
        soft=bool(said.soft),
        setup=said.setup,
    )
    unnamed = [held for held in turn.tanks if not held.tank.named]
    choices: list[Choice] = []
    if len(turn.tanks) == 1 and unnamed:
        stored, choices = await _adopt(turn, unnamed[0], tank)
    else:
        stored = await turn.add_tank(tank)
    if said.box is not None:
        return [await confirm_box(turn, stored, said)]
    lines = words.made(stored.tank, adopted=bool(choices))
    return [await turn.reply(lines, choices=choices, facts=facts(stored))]


async def _adopt(turn: Turn, stored: StoredTank, tank: Tank) -> tuple[StoredTank, list[Choice]]:
    """Give the tank made on the fly its name, and offer to keep the two apart."""
    before = {
        "name": stored.name,
        "named": False,
        "kind": stored.tank.kind,
        "volume_l": stored.tank.volume_l,
        "soft": stored.tank.soft,
        "setup": stored.tank.setup,
    }
    named = await turn.change_tank(
        stored,
        name=tank.name,
        named=True,
        kind=tank.kind,
        volume_l=tank.volume_l if tank.volume_l is not None else stored.tank.volume_l,
        soft=tank.soft,
        setup=tank.setup or stored.tank.setup,
    )
    held = {"tank_id": stored.id, "before": before}
    return named, [Choice(words.adopted_choice(), "separate_tank", "no", held)]


async def _rename(turn: Turn, text: str) -> list[Reply]:
    """``rename A B`` with names of one or more words: A is the longest that is a tank's."""
    parts = text.split()
    for cut in range(len(parts) - 1, 0, -1):
        stored = turn.tank_named(" ".join(parts[:cut]))
        if stored is not None:
            return await _rename_to(turn, stored, " ".join(parts[cut:]).removeprefix("to "))
    if len(parts) < 2:
        return [await turn.reply(words.how_to_rename(turn.example_tank))]
    return [await turn.reply(words.unknown(parts[0], [tank.name for tank in turn.tanks]))]


async def _rename_to(turn: Turn, stored: StoredTank, name: str) -> list[Reply]:
    if reason := name_problem(name):
        return [await turn.reply(words.name_refused(reason))]
    holder = turn.tank_named(name)
    if holder is not None and holder.id != stored.id:
        return [await turn.reply(words.name_taken(holder.name))]
    renamed = await turn.change_tank(stored, name=name, named=True)
    return [await turn.reply(words.renamed(stored.name, renamed.name), facts=facts(renamed))]


async def _delete(turn: Turn, text: str) -> list[Reply]:
    stored = _found(turn, text)
    if stored is None:
        return [await turn.reply(words.unknown(text, [tank.name for tank in turn.tanks]))]
    held = {"tank_id": stored.id, "name": stored.name}
    choices = [
        Choice(buttons.delete(stored.name), "delete_tank", "yes", held),
        Choice(buttons.no(), "keep_tank", "no", held),
    ]
    return [await turn.reply(words.confirm_delete(stored.name), choices=choices)]


async def _kit(turn: Turn, text: str) -> list[Reply]:
    """``kit [TANK] kh 0.5 per drop`` and ``kit [TANK] no3 as N``."""
    first, _space, rest = text.strip().partition(" ")
    stored = turn.tank_named(first)
    if stored is not None:
        first, _space, rest = rest.strip().partition(" ")
    stored = stored or turn.current_tank
    if stored is None:
        return [await turn.reply(words.which())]
    analyte = _analyte(turn, first)
    folded = rest.casefold()
    drop, basis = _PER_DROP.search(folded), _BASIS.search(folded)
    if analyte is None or (drop is None and basis is None):
        return [await turn.reply(words.kit_how())]
    held = Kit(
        basis=cast("Basis", _BASES[basis[1]]) if basis else None,
        per_drop=float(drop[1].replace(",", ".")) if drop else None,
    )
    await turn.uow.tanks.set_kit(stored.id, analyte, held)
    lines = words.kit_set(stored.name, analyte, held.per_drop, held.basis)
    return [await turn.reply(lines, facts={"tank": stored.name, "analyte": analyte})]


async def _show_or_change(turn: Turn, text: str) -> list[Reply]:
    """``NAME`` shows a tank, ``NAME 120 l marine`` changes it."""
    said = describe(text, us_gallons=turn.chat.us_gallons)
    stored = _found(turn, text) or _found(turn, said.name)
    if stored is None:
        return [await turn.reply(words.unknown(text, [tank.name for tank in turn.tanks]))]
    await turn.use_tank(stored)
    if said.box is not None:
        return [await confirm_box(turn, stored, said)]
    changes: dict[str, Any] = {}
    if said.volume_l is not None:
        if not limits.VOLUME_SMALLEST <= said.volume_l <= limits.VOLUME_LARGEST:
            return [await turn.reply(words.volume_implausible(said.volume_l))]
        changes["volume_l"] = said.volume_l
    if said.kind is not None:
        changes["kind"] = said.kind
    if said.soft is not None:
        changes["soft"] = said.soft
    if said.setup is not None:
        changes["setup"] = said.setup
    if said.rest:
        return [await turn.reply(words.not_understood(said.rest))]
    if not changes:
        return [await show(turn, stored)]
    before = stored.tank.volume_l
    stored = await turn.change_tank(stored, **changes)
    if "volume_l" not in changes:
        return [await turn.reply(words.changed(stored.tank), facts=facts(stored))]
    return await resizing.changed(turn, stored, before)


async def show(turn: Turn, stored: StoredTank) -> Reply:
    """What a tank is, and who lives in it."""
    animals = await held.held_in(turn, stored)
    lines = [words.shown(stored.tank, turn.chat.zone), *words.stock(animals)]
    told_of = held.facts({stored.name: animals})
    told_of["stock"] = told_of["stock"][stored.name]
    return await turn.reply(lines, facts=facts(stored) | told_of)


async def _refused(turn: Turn, said: Described) -> Reply | None:
    """Why a new tank cannot be made as described."""
    if reason := name_problem(said.name):
        return await turn.reply(words.name_refused(reason))
    if (holder := turn.tank_named(said.name)) is not None:
        return await turn.reply(words.name_taken(holder.name))
    if said.rest:
        return await turn.reply(words.not_understood(said.rest))
    volume = said.volume_l
    if volume is not None and not limits.VOLUME_SMALLEST <= volume <= limits.VOLUME_LARGEST:
        return await turn.reply(words.volume_implausible(volume))
    return None


def _found(turn: Turn, name: str) -> StoredTank | None:
    found = match(name, [tank.name for tank in turn.tanks])
    return turn.tank_named(found.name) if found.name is not None else None


def _analyte(turn: Turn, word: str) -> str | None:
    """The analyte that a word names, as the messages know it."""
    parsed = parse(f"{word} 1", Context(now=turn.local_now))
    candidates = [*parsed.values, *(doubt.value for doubt in parsed.doubts if doubt.value)]
    return candidates[0].analyte if len(candidates) == 1 else None


def _listing_facts(turn: Turn) -> dict[str, Any]:
    return {"tanks": [facts(tank) for tank in turn.tanks]}


_VERBS: Final[Mapping[str, Callable[[Turn, str], Awaitable[list[Reply]]]]] = {
    "new": _new,
    "rename": _rename,
    "delete": _delete,
    "kit": _kit,
}
