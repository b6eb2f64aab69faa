"""``half and half what do i get``, ``for 30 l``, ``what gh does that give``: talk of a mix.

Of the mix that was just told, by its shares; else of RO and the water that the tank is filled with.
"""

from __future__ import annotations

from typing import Any

from bot.chat import asked_water, mix_talk, mixes, source_blends
from bot.chat.model import Reply
from bot.chat.supply import Supply
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from bot.chat.words import sources as words
from bot.chat.words import waters as water_words
from core.advice.livestock import named_in, plain_name
from core.message import blend_talk
from core.message.blend_talk import BlendTalk
from core.message.mixing import Mixing
from core.message.model import Parsed
from core.message.waters import PURE, kind_of

DEFAULT_PURE = "ro"
"""What tap water is thinned with where nothing is named."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer what is asked of a mix of two waters; None where nothing is."""
    if not turn.incoming.addressed or parsed.command is not None or parsed.events:
        return None
    text = turn.incoming.text
    mix = await mix_talk.latest(turn)
    found = blend_talk.blend_talk(text, us_gallons=turn.chat.us_gallons)
    if found is None:
        return await _suits(turn, text, mix)
    if found.asks == "zero":
        is_pure = kind_of(found.waters[0]) in PURE
        return [await turn.reply(words.pure_holds_nothing(found.waters[0]))] if is_pure else None
    stored = turn.current_tank
    in_sea = stored is not None and stored.tank.is_sea
    if in_sea and mix is None and len(found.waters) < 2:
        return None  # there pure water tops up, and is mixed with salt
    if found.asks == "shares":
        return await _shares(turn, found, mix)
    if found.asks == "reach":
        return await _reach(turn, found, mix)
    return None if mix is None else await _of_mix(turn, found, mix)


async def _of_mix(turn: Turn, found: BlendTalk, mix: dict[str, Any]) -> list[Reply] | None:
    """The litres of each, or what the mix holds."""
    if found.asks == "litres" and found.litres is not None:
        reply = await mix_talk.in_litres(turn, mix, found.litres)
        return None if reply is None else [reply]
    supply = await mix_talk.supply_of(turn, mix)
    if supply is None:
        return None
    lacking = [name for name in found.analytes if name not in supply.readings]
    if lacking:
        return [await turn.reply(words.lacks(await _lacks(turn, mix, lacking[0]), lacking[0]))]
    return [await source_blends.tell(turn, supply, first=found.analytes)]


async def _lacks(turn: Turn, mix: dict[str, Any], analyte: str) -> str:
    """The part of a mix of which an analyte is not known."""
    held = await Waters.of(turn)
    for name, _share in mix["parts"]:
        part = await held.of_name(name)
        if part is None or analyte not in part.readings:
            return str(name)
    return str(mix["parts"][0][0])


async def _shares(turn: Turn, found: BlendTalk, mix: dict[str, Any] | None) -> list[Reply] | None:
    """What two shares give: of the waters named, of the last mix, else of RO and the own water."""
    if found.shares is None or (mix is None and not found.plainly):
        return None
    held = await Waters.of(turn)
    if mix is not None and len(mix["parts"]) == 2 and not found.waters:
        supply = await mix_talk.supply_of(turn, mix, found.shares)
        return (
            None
            if supply is None
            else [await source_blends.tell(turn, supply, found.litres, found.analytes)]
        )
    two = await _two(turn, held, found)
    if two is None:
        return [await turn.reply(words.which_waters())]
    parts = list(zip(two, found.shares, strict=True))
    name = water_words.blend([(part.name, share) for part, share in parts])
    supply = await held.mixed(parts, name)
    return [await source_blends.tell(turn, supply, found.litres, found.analytes)]


async def _two(turn: Turn, held: Waters, found: BlendTalk) -> list[Supply] | None:
    """The two waters in the order said; one that is not named is RO, or what the tank is of."""
    named = [await held.of_name(name) for name in found.waters]
    known = [each for each in named if each is not None]
    if len(known) < len(found.waters):
        return None
    if len(known) == 2:
        return known
    if not known:
        pure = await held.of_name(DEFAULT_PURE)
        known = [] if pure is None else [pure]
    other = await mixes.hard_water(turn, held) if known and known[0].pure else None
    if other is None and known and not known[0].pure:
        other = await held.of_name(DEFAULT_PURE)
    return None if other is None or not known else [known[0], other]


async def _reach(turn: Turn, found: BlendTalk, mix: dict[str, Any] | None) -> list[Reply] | None:
    """The shares that make what is wished, or what the tank has."""
    pure = [name for name in found.waters if kind_of(name) in PURE]
    others = [name for name in found.waters if name not in pure]
    if len(pure) > 1 or len(others) > 1:
        return None
    analyte = found.analytes[0] if found.analytes else None
    if mix is not None and found.target is None and not found.match:
        mix = _with(mix, pure[0]) if pure else mix
        if found.litres is not None:
            reply = await mix_talk.in_litres(turn, mix, found.litres)
            return None if reply is None else [reply]
        supply = await mix_talk.supply_of(turn, mix)
        return None if supply is None else [await source_blends.tell(turn, supply)]
    if analyte is not None and found.target is None:
        return None
    water = Mixing(
        pure[0] if pure else DEFAULT_PURE,
        others[0] if others else None,
        analyte,
        found.target,
        found.litres,
    )
    return await mixes.shares_of(turn, water, mixes=True)


def _with(mix: dict[str, Any], pure: str) -> dict[str, Any]:
    """A mix with the pure water that is named in the place of its own."""
    parts = [(pure if kind_of(name) in PURE else name, share) for name, share in mix["parts"]]
    same = [name for name, _ in parts] == [name for name, _ in mix["parts"]]
    kinds = [kind_of(name) for name, _ in mix["parts"]]
    return mix if same or kind_of(pure) in kinds else {"parts": parts, "text": mix["text"]}


async def _suits(turn: Turn, text: str, mix: dict[str, Any] | None) -> list[Reply] | None:
    """``will that fit for cardinals`` of the mix that was just told."""
    whom = named_in(text) if mix is not None else []
    rest = plain_name(text)
    for name, _found in whom:
        rest = f" {rest} ".replace(f" {name} ", " ")
    if mix is None or not whom or not blend_talk.asks_if_it_suits(rest):
        return None
    supply = await mix_talk.supply_of(turn, mix)
    if supply is None:
        return None
    return [
        await asked_water.judge(
            turn, supply, [name for name, _ in whom], text, {source_blends.MIX: mix}
        )
    ]
