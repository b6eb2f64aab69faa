"""A tank in a keeper's own words: `my tank is 120 litres`, `tank fern 90 l`, `fern is 120 l`."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from bot.chat import replanned, resizing, standing, tank_meant, tank_words, tanks
from bot.chat.model import Reply
from bot.chat.tank_volumes import ask_volume_or_change, ask_whether, confirm_box, facts
from bot.chat.turn import Turn
from bot.chat.words import tanks as words
from bot.chat.words.names import first_tank
from bot.store.tanks import StoredTank
from core.advice import limits
from core.advice.kind_told import kind_told
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Command, Parsed, Question
from core.message.same_deed import same_deed
from core.message.tank_talk import tank_talk
from core.message.tokens import Token, cut
from core.message.volume_said import (
    gallons_told,
    of_now,
    unit_told,
    volume_alone,
    volume_told,
    without_other,
)
from core.tank import Tank
from core.units import UK_GALLON_L, US_GALLON_L

_EDGES: Final = " ?!.,:@"
_MOST: Final = 12
"""Tokens that are looked at of a volume alone."""
_ALONE: Final = {*tank_words.KIND_WORDS, *tank_words.SETUP_WORDS, *tank_words.SOFT_WORDS, "x", "cm"}
"""Words that may stand beside it."""


async def told(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """A tank by its name, the only one, or the first one; None where it is other talk."""
    if turn.incoming.group:
        return None
    if (alone := turn.tank_named(turn.incoming.text.strip(_EDGES))) is not None:
        asked = await tank_meant.offered(turn, alone)
        return [*await shown(turn, alone), *asked]
    said = tank_talk(turn.incoming.text, [tank.name for tank in turn.tanks])
    asked_of = said is not None and said.meaning == "one" and "?" in turn.incoming.text
    if said is not None and asked_of and (alone := turn.tank_named(said.tank or "")):
        return await shown(turn, alone)  # and qt?
    if (line := tank_words.named(turn.incoming.text)) is not None:
        known = turn.tank_named(tank_words.name_in(line)) is not None
        return await tanks.command(turn, Command("tank", line if known else f"new {line}"), parsed)
    own_told = await own(turn) or await _first(turn)
    return own_told or await _kind_alone(turn) or await _volume_alone(turn)


def _of_volume(token: Token) -> bool:
    """Whether a piece of a text tells how much water there is, or of which kind."""
    if token.kind in {"number", "unit", "fill", "p"}:
        return True
    words = re.sub(r"x?\d+", " ", token.text).split()
    return token.kind == "word" and all(word in _ALONE for word in words)


async def _first(turn: Turn) -> list[Reply] | None:
    """`54 l fresh`, `60x30x35 cm` before there is any tank: of the first one.

    The sides are also of the only tank whose volume is not known.
    """
    tokens = cut(fold(turn.incoming.text), lexicon(), turn.incoming.text, most=_MOST)
    boxed = tank_words.has_box(turn.incoming.text)
    sized = boxed or all(map(_of_volume, tokens))
    unsized = len(turn.tanks) == 1 and turn.tanks[0].tank.volume_l is None
    if not sized or (turn.tanks and not (boxed and unsized)):
        return None  # 20 l fresh water, in a bucket maybe
    whole = turn.incoming
    turn.incoming = replace(whole, text=f"{whole.text.strip(_EDGES)} tank")
    made = await own(turn)
    turn.incoming = whole
    return made


async def whole(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """`tank Sol 60 l`: a name that means something else too is kept where the line is of a tank."""
    if turn.incoming.group or not turn.incoming.addressed:
        return None
    line = tank_words.whole(turn.incoming.text, us_gallons=turn.chat.us_gallons)
    if line is None or turn.tank_named(tank_words.name_in(line)) is not None:
        return None
    return await tanks.command(turn, Command("tank", f"new {line}"), parsed)


FAR_OFF: Final = 3.0
"""So many times more or less water than a tank has on record may be of something else."""


_OF_SEA: Final = frozenset({"reef", "fish_only"})
"""Set-ups that only the sea has."""

NEAR: Final = 1e-3
"""Half a gallon, to this share of one, is told in gallons."""


async def of_plan(turn: Turn) -> list[Reply] | None:
    """`it's only 70 l actually` after a plan for a tank: so much it holds, and the plan anew.

    None where nothing of that is said, or where the volume is so far off that it is asked first.
    """
    volume = volume_told(turn.incoming.text, turn.chat.us_gallons)
    gallons = gallons_told(turn.incoming.text) if volume is None else None
    if (volume is None and gallons is None) or turn.incoming.group or of_now(turn.incoming.text):
        return None
    stored = await replanned.planned(turn)
    held = None if stored is None else stored.tank.volume_l
    if stored is None or held is None:
        return None
    volume = in_gallons(held, gallons) if volume is None else volume
    if volume is None:
        return None
    if not limits.VOLUME_SMALLEST <= volume <= limits.VOLUME_LARGEST:
        return [await turn.reply(words.volume_implausible(volume))]
    if not held / FAR_OFF <= volume <= held * FAR_OFF:
        return [await ask_whether(turn, stored, volume)]
    if gallons is not None:
        await turn.change_chat(us_gallons=gallons == "us")  # so it is meant from now on
        stored = turn.tank_by_id(stored.id) or stored
    return await resizing.changed(turn, await turn.change_tank(stored, volume_l=volume), held)


def in_gallons(held: float, meant: str | None) -> float | None:
    """What a tank holds where so many gallons of the other kind were meant; None for no gallons."""
    told, instead = (US_GALLON_L, UK_GALLON_L) if meant == "uk" else (UK_GALLON_L, US_GALLON_L)
    count = held / told
    whole = abs(2.0 * count - round(2.0 * count)) < NEAR
    return instead * round(2.0 * count) / 2.0 if whole else None


def _in_other_unit(held: float, unit: str | None, *, us_gallons: bool) -> float | None:
    """What a tank holds whose number was meant in another unit; None where it is in that already.

    A number that is whole in both may be in either: then it is asked.
    """
    gallon = US_GALLON_L if us_gallons else UK_GALLON_L
    count = held / gallon
    if unit == "gallon" and abs(count - round(count)) > NEAR and abs(held - round(held)) < NEAR:
        return held * gallon
    if unit == "litre" and abs(count - round(count)) < NEAR:
        return float(round(count))
    return None


async def _volume_alone(turn: Turn) -> list[Reply] | None:
    """`it's 120 litres`: asked whether the tank in use holds so much; nothing is set before."""
    text, us_gallons = turn.incoming.text, turn.chat.us_gallons
    stored = turn.current_tank
    volume = volume_alone(text, us_gallons) or volume_told(text, us_gallons)
    if volume is None and stored is not None and stored.tank.volume_l is not None:
        volume = _in_other_unit(stored.tank.volume_l, unit_told(text), us_gallons=us_gallons)
    if volume is None or stored is None or volume == stored.tank.volume_l:
        return None
    if not limits.VOLUME_SMALLEST <= volume <= limits.VOLUME_LARGEST:
        return [await turn.reply(words.volume_implausible(volume))]
    return [await ask_whether(turn, stored, volume)]


async def _kind_alone(turn: Turn) -> list[Reply] | None:
    """`its freshwater sorry`: the water of the tank that is named, or of the one in use."""
    stored, text = spoken_of(turn, turn.incoming.text)
    stored, kind = stored or turn.current_tank, kind_told(text)
    if stored is None or kind is None:
        return None
    of_sea = kind != "marine" and stored.tank.setup in _OF_SEA
    setup = None if of_sea else stored.tank.setup
    stored = await turn.change_tank(stored, kind=kind, setup=setup)
    await turn.use_tank(stored)
    return [await turn.reply(words.changed(stored.tank), facts=facts(stored))]


async def shown(turn: Turn, stored: StoredTank) -> list[Reply]:
    """A tank by its bare name: what it is and how it stands; from now on it is the one in use."""
    await turn.use_tank(stored)
    return [await tanks.show(turn, stored), *await standing.status(turn, Question("safe"))]


async def own(turn: Turn) -> list[Reply] | None:
    """What is said of a tank without ``/tank``: how much water, and of which kind."""
    stored, text = spoken_of(turn, without_other(turn.incoming.text))
    said = tank_words.own(text, us_gallons=turn.chat.us_gallons)
    if said is None or (stored is None and len(turn.tanks) > 1):
        return None
    volume = said.volume_l
    if volume is not None and volume < 0.0:
        return [await turn.reply(words.negative())]
    if volume is not None and not limits.VOLUME_SMALLEST <= volume <= limits.VOLUME_LARGEST:
        return [await turn.reply(words.volume_implausible(volume))]
    before = None
    if stored is None and not turn.tanks:
        kind = said.kind or "fresh"
        stored = await turn.add_tank(Tank(first_tank(), kind=kind, volume_l=volume, named=False))
    else:
        other = stored is None and turn.tanks[0].tank.named and tank_words.has_other_name(text)
        stored = stored or turn.tanks[0]
        before = stored.tank.volume_l
        if other and volume is not None and before not in {None, volume}:
            return [await ask_whether(turn, stored, volume)]  # my shed tank is 60 l, beside big
        if volume is not None and before is not None and tank_words.of_a_day(text):
            return [await ask_whether(turn, stored, volume)]  # tank today 30 l
        if volume is not None and before not in {None, volume} and _is_bare(turn):
            return [await ask_volume_or_change(turn, stored, volume)]  # fern 10 l
        changes = {"volume_l": volume, "kind": said.kind}
        known = {name: value for name, value in changes.items() if value is not None}
        stored = await turn.change_tank(stored, **known) if known else stored
    if said.box is not None:
        return [await confirm_box(turn, stored, said)]
    if volume is None:
        return [await turn.reply(words.changed(stored.tank), facts=facts(stored))]
    return await resizing.changed(turn, stored, before)


def _is_bare(turn: Turn) -> bool:
    """Whether a tank's name and litres are all that is said: no telling of what it holds."""
    names = [tank.name for tank in turn.tanks]
    said = same_deed(turn.incoming.text, names, us_gallons=turn.chat.us_gallons)
    return said is not None and said.litres is not None


def spoken_of(turn: Turn, text: str) -> tuple[StoredTank | None, str]:
    """The one tank whose name a text has, and the text with a word for it in that place."""
    found = [
        (stored, place)
        for stored in turn.tanks
        if stored.tank.named and (place := _place_of(stored.name, text)) is not None
    ]
    if len(found) != 1:
        return None, text
    stored, (start, end) = found[0]
    return stored, f"{text[:start]} tank {text[end:]}"


def _place_of(name: str, text: str) -> tuple[int, int] | None:
    """Where a name stands as words of its own, before the first number."""
    plain, folded = fold(name), fold(text)
    digits = [place for place, character in enumerate(folded) if character.isdigit()]
    start = folded.find(plain)
    if start < 0 or len(folded) != len(text):
        return None
    end = start + len(plain)
    if folded[max(0, start - 1) : start].isalnum() or folded[end : end + 1].isalnum():
        return None
    return (start, end) if not digits or end <= digits[0] else None
