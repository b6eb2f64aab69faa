"""``/source mix 60% ro 40% tap``: a source that is mixed of others, worked out when used."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Any, Final

from bot.chat.model import Reply
from bot.chat.supply import Supply, Unclear
from bot.chat.tank_words import name_problem
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from bot.chat.words import sources as words
from bot.chat.words import waters as water_words
from bot.chat.words.text import _
from bot.store.tanks import Share, StoredTank
from core.advice.blending import BY_AMOUNT
from core.advice.outlook import with_premises
from core.advice.state import State
from core.advice.tapped import softened
from core.message import blends
from core.message.fold import fold
from core.message.model import Question
from core.message.share_asked import of_water
from core.message.waters import PURE, kind_of, mentioned
from core.tank import Tank

LONGEST = 4
"""Most words that a source's name may have."""

SHOWN: Final = ("ph", "kh", "gh", "nitrate", "temperature", "conductivity")
"""What is told of a blend, in this order."""

_BEHIND: Final = "30% with "
"""Said before the parts of a blend, so that they can be nothing else."""

MIX: Final = "mix"
"""Under which an offer keeps the mix that it tells, for what is said of it next."""


def find(said: str, names: Sequence[str]) -> tuple[str, blends.Blend] | None:
    """A name and the blend that is all the rest of a line; None where there is none."""
    parts = said.split()
    for cut in range(1, min(len(parts), LONGEST + 1)):
        rest = " ".join(parts[cut:]).lstrip("=: ").removeprefix("of ")
        blend = blends.find(_BEHIND + rest, names)
        whole = blend is not None and len(_BEHIND) == blend.start
        if blend is not None and whole and blend.end == len(_BEHIND + rest):
            return " ".join(parts[:cut]).strip(" :="), blend
    return None


_FILLED: Final = re.compile(
    r"(?:(?:my|our|the|mein|meine|unser|mon|mi|minha|la mia|mijn|moja|mitt)\s+)?"
    r"(?:(?:new|change|tank|neues|wechsel|nouvelle|nueva|nova|nuova|nieuwe|nowa|nytt)\s+)?"
    r"(?:water|wechselwasser|wasser|eau|agua|acqua|woda|vatten)\s+"
    r"(?:is|is now|ist|est|es|e|to|ar)\s+"
    r"|(?:(?:i|we|ich|wir|je|yo|eu|io|ik|ja|jag)\s+)?"
    r"(?:use|nehme|nutze|benutze|verwende|utilise|uso|usamos|gebruik|uzywam|anvander)\s+"
    r"|j'utilise\s+"
)
"""What a keeper says before the waters that a tank is filled with; plain."""

MIXED: Final = "mix"
"""The name of a blend that was told without one."""


async def spoken(turn: Turn, held: Waters) -> Reply | None:
    """``i use half rain half tap``: the blend that the tank is filled with from now on."""
    text = turn.incoming.text.strip(" .!")
    head = _FILLED.match(fold(text))
    if head is None:
        return None
    said = _BEHIND + text[head.end() :]
    blend = blends.find(said, held.names)
    if blend is None or (blend.start, blend.end) != (len(_BEHIND), len(said)):
        return None
    reply = await keep(turn, held, MIXED, blend)
    made = (await Waters.of(turn)).named(MIXED)
    if made is not None and made.blend and turn.current_tank is not None:
        await turn.change_tank(turn.current_tank, source_id=made.id)
    return reply


async def keep(turn: Turn, held: Waters, name: str, blend: blends.Blend) -> Reply:
    """Keep a source that is mixed of others, by name, so that their new readings carry through."""
    if not name or name_problem(name) is not None or blend.rest:
        return await turn.reply(words.how_to_blend())
    found = await held.of_blend(blend, None)
    if isinstance(found, Unclear):
        lines = water_words.unclear(found.reason, found.names, found.total)
        return await turn.reply(lines, facts={"refused": f"source_{found.reason}"})
    source = _exactly(held.sources, name)
    if source is not None and not source.blend and await held.is_measured(source):
        return await turn.reply(words.is_measured(source.name))
    parts = [_share(held, part.name, part.share or 0.0) for part in blend.parts]
    if source is not None and any(_leads_to(held, part, source.id) for part in parts):
        return await turn.reply(words.cycle(source.name), facts={"refused": "source_cycle"})
    if kind_of(name) in PURE:
        return await turn.reply(words.how_to_blend())
    if source is None:
        source = await turn.uow.tanks.add(turn.chat.id, Tank(name), turn.now, role="source")
    whole = sum(part.share for part in parts)
    await turn.uow.tanks.set_blend(
        source.id, [replace(part, share=part.share / whole) for part in parts]
    )
    turn.uow.session.expire_all()
    held = await Waters.of(turn)
    return await show(turn, held, held.by_id(source.id))


def _share(held: Waters, name: str, share: float) -> Share:
    source = held.named(name)
    if source is not None:
        return Share(share, source_id=source.id)
    return Share(share, pure=kind_of(name))


def _leads_to(held: Waters, part: Share, source_id: int) -> bool:
    """Whether a part of a blend is, or is mixed of, the source that is to be blended."""
    if part.source_id is None:
        return False
    by_id = {source.id: source for source in held.sources}
    open_, seen = [part.source_id], set[int]()
    while open_:
        here = open_.pop()
        if here == source_id:
            return True
        if here not in seen and here in by_id:
            seen.add(here)
            open_ += [each.source_id for each in by_id[here].blend if each.source_id is not None]
    return False


async def reach(turn: Turn, question: Question) -> Reply | None:
    """Answer in which shares two waters make a wished value; None where not two are named."""
    analyte, target = question.analyte, question.target
    if analyte not in BY_AMOUNT or target is None:
        return None
    held = await Waters.of(turn)
    named = await held.all_named(question.text or "")
    if question.start_value is not None:
        named = [supply for supply in named if supply.pure][:1]
        named.append(_told_water(turn, question))
    if len(named) > 2:  # "mix ro and tap" beside a blend that is called mix
        named = [supply for supply in named if not supply.parts]
    if len(named) != 2 or all(supply.pure for supply in named):
        return None
    one, other = named
    value, rest = one.state.last(analyte), other.state.last(analyte)
    if value is None or rest is None:
        lacking = one if value is None else other
        return await turn.reply(words.lacks(lacking.name, analyte))
    low, high = sorted((value.value, rest.value))
    if not low < target < high:
        return await turn.reply(words.not_between(analyte, target, low, high))
    share = (target - rest.value) / (value.value - rest.value)
    parts = [(one, share), (other, 1.0 - share)]
    mixed = await held.mixed(parts, water_words.blend([(p.name, s) for p, s in parts]))
    values = {name: mixed.readings[name].value for name in SHOWN if name in mixed.readings}
    facts: dict[str, Any] = {
        "to": {analyte: target},
        "parts": [{"source": part.name, "share": each} for part, each in parts],
        "mixed": values,
    }
    litres: list[tuple[str, float]] = []
    if question.volume_l is not None:
        facts["volume_l"] = question.volume_l
        litres = [(part.name, each * question.volume_l) for part, each in parts]
    told = ", ".join(words.figure(name, number) for name, number in values.items())
    lines = words.reached(analyte, target, mixed.parts, litres, told)
    lines += words.before_use(treated=mixed.treated > 0.0)
    lines[1:1] = [words.softened(p.name, *each) for p in named if (each := softened(p.readings))]
    mix = {
        "analyte": analyte,
        "target": target,
        "text": question.text,
        "parts": [(part.name, each) for part, each in parts],
    }
    return await turn.reply(lines, facts=facts, context={MIX: mix}, expects="followup")


async def share_of(turn: Turn, question: Question) -> Reply | None:
    """`how much tap in 100 l for kh 3`: its share of a mix with RO; None where none is asked."""
    text = question.text or ""
    if question.volume_l is None or question.substance is not None or not of_water(text):
        return None
    found = await reach(turn, replace(question, text=f"{text} ro"))
    names = [kind for *__, kind in mentioned(text)]
    if found is not None or question.analyte not in BY_AMOUNT or not names:
        return found
    return await turn.reply(words.lacks(names[0], question.analyte))


def _told_water(turn: Turn, question: Question) -> Supply:
    """The water that a question itself tells the value of: `my tap is kh 12 ...`."""
    text = question.text or ""
    kinds = [kind for *__, kind in mentioned(text) if kind not in PURE]
    name = kinds[0] if kinds else _("your water")
    told = {str(question.analyte): question.start_value or 0.0}
    state = with_premises(State(Tank(name), turn.local_now), told)
    return Supply(name, state, treated=float(bool(kinds)))


async def show(turn: Turn, held: Waters, source: StoredTank) -> Reply:
    """Say what a source is mixed of, and what comes of it today."""
    return await tell(turn, await held.supply(source))


async def gives(turn: Turn, question: Question) -> Reply | None:
    """``what would 50% ro and 50% tap give``: a blend that nothing is done with yet."""
    text = turn.incoming.text  # of a question in which much was unknown the rest is missing
    said = _SHARE.search(text)
    if said is None or question.grams is not None:
        return None
    held = await Waters.of(turn)
    blend = blends.find(_BEHIND + text[said.start() :], held.names)
    if blend is None or blend.start != len(_BEHIND) or len(blend.parts) < 2:
        return None
    found = await held.of_blend(blend, None)
    if isinstance(found, Unclear):
        lines = water_words.unclear(found.reason, found.names, found.total)
        return await turn.reply(lines, facts={"refused": f"source_{found.reason}"})
    return await tell(turn, found)


_SHARE: Final = re.compile(
    r"\b(?:\d|half\b|halb|moiti|mitad|metade|met[aà]\b|helft|po[lł]ow|h[aä]lft)", re.IGNORECASE
)
"""Where the parts of a blend begin."""


async def tell(
    turn: Turn, supply: Supply, litres: float | None = None, first: Sequence[str] = ()
) -> Reply:
    """What a water is mixed of, and what comes of it; `first` of its analytes before the others.

    What is said next is of this mix.
    """
    values = {name: supply.readings[name].value for name in SHOWN if name in supply.readings}
    facts: dict[str, Any] = {
        "source": supply.name,
        "parts": [{"source": name, "share": share} for name, share in supply.parts],
        "mixed": values,
    }
    amounts: list[tuple[str, float]] = []
    if litres is not None:
        facts["volume_l"] = litres
        amounts = [(name, share * litres) for name, share in supply.parts]
    order = sorted(values, key=lambda name: (name not in first, SHOWN.index(name)))
    told = ", ".join(words.figure(name, values[name]) for name in order)
    named = supply.name == water_words.blend(supply.parts)
    line = words.blend_alone(supply.parts, amounts, told) if named or litres else None
    line = line or water_words.blend_of(supply.name, supply.parts, told)
    mix = {"parts": list(supply.parts), "text": supply.name}
    unnamed = named and bool(supply.parts)  # a source by its own name is meant by that name
    waits: dict[str, Any] = {"context": {MIX: mix}, "expects": "followup"} if unnamed else {}
    lines = [line]
    if litres is not None:  # it is to be made
        lines += words.before_use(treated=supply.treated > 0.0)
    return await turn.reply(lines, facts=facts, **waits)


def _exactly(sources: Sequence[StoredTank], name: str) -> StoredTank | None:
    return next((source for source in sources if fold(source.name) == fold(name)), None)
