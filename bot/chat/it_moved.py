"""``raise it``, ``want it 8.5`` right after a reading: the same asked by the value's name."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, Final

from bot.chat.asked_anew import Again, anew
from bot.chat.asking import ask
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import ASKED, Turn
from bot.store.offers import Offer
from core.message import doubts, parse
from core.message.it_moved import Moved, bare_number, it_moved
from core.message.model import Doubt, Parsed
from core.units import to_canonical

BESIDE: Final = 3
"""Answers to one message that are looked through, its readings among them."""


UP: Final = frozenset(
    {"kh", "gh", "ph", "calcium", "magnesium", "salinity", "temperature", "potassium", "iron"}
)
"""What a keeper may wish to have more of, among what is measured."""
DOWN: Final = frozenset(
    {
        "kh", "gh", "ph", "nitrate", "phosphate", "ammonia", "nitrite", "tds", "conductivity",
        "salinity", "temperature", "calcium", "magnesium", "potassium", "iron", "copper",
    }
)  # fmt: skip
"""What a keeper may wish to have less of."""


async def answer(turn: Turn, parsed: Parsed, again: Again) -> list[Reply] | None:
    """Ask the same by the name of the value that was just told; None where it is none of that.

    Of several values the one with a finding is meant; where that does not decide, it is asked.
    """
    if not turn.incoming.addressed or parsed.values or parsed.events:
        return None
    moved = it_moved(turn.incoming.text)
    bare = bare_number(turn.incoming.text) if moved is None else None
    offer = None if moved is None and bare is None else await _told_last(turn)
    if offer is None:
        return None
    if offer.entry_id is None:
        return await _wished(turn, offer, moved or Moved(None, bare), again)
    if moved is None:
        return None  # it may as well be measured
    facts = offer.context.get("facts", {})
    standing = values_of(facts)
    ends = _ends(facts, moved.to)
    ways = {
        name: way
        for name in standing
        if (way := _way(name, standing[name], replace(moved, to=ends.get(name))))
    }
    found = {name for each in facts.get("findings", []) for name in each} & set(ways)
    meant = found if len(found) == 1 else set(ways)
    texts = [_asked(name, ways[name], ends.get(name)) for name in standing if name in meant]
    if not texts:
        return None
    if len(texts) > 1 and parsed.question is not None:
        return None  # what went in, or what is worst, tells its topic
    if len(texts) > 1:
        said = turn.incoming.text
        doubt = Doubt(said, 0, len(said), doubts.AMBIGUOUS_WORD, texts[0], choices=tuple(texts))
        return [await ask(turn, [doubt], parsed)]
    return await anew(turn, texts[0], again)


async def _wished(turn: Turn, offer: Offer, moved: Moved, again: Again) -> list[Reply] | None:
    """``to get to 20`` where it was just asked how much to change."""
    nitrate = _by_change(turn, offer, moved)
    return None if nitrate is None else await anew(turn, nitrate, again)


def _by_change(turn: Turn, offer: Offer, moved: Moved) -> str | None:
    """``to get to 20`` right after `how much should i change`: the change that nitrate needs."""
    asked = parse(str(offer.context.get(ASKED, {}).get("text", "")), turn.context()).question
    if asked is None or asked.kind != "change" or moved.to is None or moved.way == "up":
        return None
    nitrate = offer.context.get("facts", {}).get("readings", {}).get("nitrate")
    lower = isinstance(nitrate, int | float) and nitrate > moved.to
    return f"lower nitrate to {moved.to:g}" if lower else None


async def _told_last(turn: Turn) -> Offer | None:
    """The last answer, where it is of late and to readings or asks which value is wished.

    What was said beside it, of the fish or of who lives there, is of the same message.
    """
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    latest = await turn.uow.offers.latest(turn.chat.id, BESIDE)
    for offer in latest:
        late = turn.now - offer.made_at > patience or offer.made_at != latest[0].made_at
        if not late and (offer.entry_id or ASKED in offer.context):
            return offer
    return None


def values_of(facts: Mapping[str, Any]) -> dict[str, float]:
    """The values of an answer to readings, in the order told, that are one number each."""
    told = facts.get("values", [])
    return {
        each["analyte"]: each["canonical"]
        for each in told
        if isinstance(each["canonical"], int | float)
    }


def _ends(facts: Mapping[str, Any], to: float | None) -> dict[str, float]:
    """Where each value is wished: of one told in another unit, the number may be in that as well.

    It is in the one that it is nearer in: 1.8 behind an alkalinity of 1.1 meq/L is 5 °dH.
    """
    ends: dict[str, float] = {}
    if to is None:
        return ends
    for each in facts.get("values", []):
        name, told, now = each["analyte"], each.get("value"), each["canonical"]
        numbers = isinstance(told, int | float) and isinstance(now, int | float)
        nearer = numbers and abs(to - told) < abs(to - now)
        ends[name] = to_canonical(name, to, each["unit"]) if nearer and each.get("unit") else to
    return ends


def _way(name: str, value: float, moved: Moved) -> str | None:
    """Which way a value is wished to go; None where nobody wishes that of it."""
    way = moved.way
    if way is None and moved.to is not None:
        way = "up" if moved.to > value else "down"
    return way if way and name in {"up": UP, "down": DOWN}[way] else None


def _asked(name: str, way: str, to: float | None) -> str:
    """The same in words that name the value."""
    if name == "temperature":  # to no number, but at no more than its pace
        return "how do i warm it" if way == "up" else "how do i cool it"
    verb, said = ("raise" if way == "up" else "lower"), name.replace("_", " ")
    return f"how do i {verb} {said}" if to is None else f"{verb} {said} to {to:g}"
