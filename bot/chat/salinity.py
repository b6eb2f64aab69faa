"""``how do i get it down to 35``, ``no animals, in one go``, ``now 1.0264``: a sea's salinity."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any, Final

from bot.chat import buckets, dosing, doubts
from bot.chat.model import Line, Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.state import state_of
from bot.chat.turn import ASKED, Turn
from bot.chat.wished import TABLE_SALT
from bot.chat.words import salinity as words
from bot.store.offers import Offer
from bot.store.tanks import StoredTank
from core.advice import limits
from core.advice.by_now import by_now
from core.advice.scheduling import per_gram
from core.advice.setup import holds_only_fish
from core.message import parse, salinity_talk
from core.message.model import Parsed, Question
from core.message.salinity_talk import SalinityTalk

NEAR: Final = 0.5
"""So little from the wish is there already; common practice. [g/kg]"""

SALT: Final = "sea salt"

MOST: Final = 6
"""Lines on one screen."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer what is asked of the salinity of the tank in use; None where nothing is, or no sea."""
    stored = turn.current_tank
    if not turn.incoming.addressed or stored is None or not stored.tank.is_sea:
        return None
    if (went := salinity_talk.moved(turn.incoming.text)) is not None:
        return await _moved(turn, stored, *went)
    found = salinity_talk.salinity_talk(turn.incoming.text, us_gallons=turn.chat.us_gallons)
    if found is None or (parsed.command is not None and found.asks != "one_go"):
        return None  # new tank, no animals, can i …: names none
    if found.asks == "reading" and found.value is not None:
        return await doubts.say(turn, f"sg {found.value:g}", turn.now, stored)
    if found.asks == "make" and found.value is not None:
        return await _made(turn, found)
    latest = await _latest(turn)
    if found.asks == "straight":
        step = limits.SALINITY_UP
        lines = words.no_dry_salt(step, vessel=found.vessel)
        return [await turn.reply(lines, facts={} if found.vessel else {"step": step})]
    of_it = found.named or (latest is not None and await _of_salinity(turn, latest))
    if not of_it and found.asks != "litres":
        return None
    wish = _salinity(turn, found.value) if found.value is not None else _wished(turn, latest)
    return await _toward(turn, stored, found, wish)


async def _toward(
    turn: Turn, stored: StoredTank, found: SalinityTalk, wish: float | None
) -> list[Reply] | None:
    """How the tank gets to a salinity, a step a day or, without animals, at once."""
    state = by_now(await state_of(turn, stored, turn.now))
    now = state.last("salinity")
    target = limits.SEA_SALINITY if wish is None else wish
    if found.asks == "one_go":
        return [await _one_go(turn, stored, found, None if now is None else now.value, target)]
    if now is None:
        return [await turn.reply(words.measure_first(stored.name))]
    if abs(now.value - target) < NEAR:
        return [await turn.reply(words.as_is(now.value, target))]
    if now.value < target:
        question = Question("dose", analyte="salinity", target=target, text="raise salinity")
        turn.asked = {"text": f"raise salinity to {target:g}", "changes": {}}
        return await dosing.dose(turn, question, Parsed("question", question=question))
    text = f"lower salinity to {target:g} with ro"
    question = Question("change", analyte="salinity", target=target, text=text)
    turn.asked = {"text": text, "changes": {}}
    first, *rest = await dosing.change(turn, question, Parsed("question", question=question))
    if stored.tank.volume_l is None:
        return [first, *rest]
    share = 1.0 - target / now.value
    only_fish = holds_only_fish(stored.tank)
    step = limits.SALINITY_DOWN if only_fish else limits.SALINITY_UP
    days = max(1, math.ceil((now.value - target) / step - 1e-9))
    out = share * stored.tank.volume_l
    lead = words.in_all(now.value, target, out, share, days)
    facts = {**first.facts, "in_all": {"litres": out, "share": share, "days": days}}
    return [replace(first, lines=(Line(lead), *first.lines)[:MOST], facts=facts), *rest]


async def _one_go(
    turn: Turn, stored: StoredTank, found: SalinityTalk, now: float | None, target: float
) -> Reply:
    """The whole at once, where nothing lives in it."""
    stock = (await state_of(turn, stored, turn.now)).tank.stock
    if found.fishless:
        return await turn.reply(words.fish_only_missing(), facts={"ask": "animals"})
    if stock and not found.vessel:
        return await turn.reply(words.lives_there(stored.name), facts={"tank": stored.name})
    volume = stored.tank.volume_l
    if found.vessel or volume is None or now is None or abs(now - target) < NEAR:
        return await turn.reply(words.one_go_alone())
    facts: dict[str, Any] = {"tank": stored.name, "from": now, "to": target}
    if now > target:
        out = (1.0 - target / now) * volume
        lines = words.one_go_lowered(now, target, out)
        return await turn.reply(lines, facts=facts | {"litres": out})
    grams = (target - now) * volume / per_gram(SALT, "salinity")
    lines = words.one_go_raised(now, target, grams)
    return await turn.reply(lines, facts=facts | {"substance": SALT, "grams": grams})


async def _moved(
    turn: Turn, stored: StoredTank, start: float, end: float, rest: str
) -> list[Reply] | None:
    """``salinity went from 35 to 31``: the second is a reading, where both are of a sea."""
    begin, now = _salinity(turn, start), _salinity(turn, end)
    known = by_now(await state_of(turn, stored, turn.now)).last("salinity")
    if begin is None or now is None or (rest and parse(rest, turn.context()).values):
        return None
    if known is not None and abs(known.value - begin) > limits.SALINITY_DOWN:
        return None  # not the water on record: it is asked about
    name = "sg" if end < salinity_talk.GRAVITIES[1] else "salinity"
    replies = await doubts.say(turn, f"{name} {end:g}", turn.now, stored)
    if now >= begin or not replies:
        return replies
    first, *others = replies
    beside = words.top_off(limits.SALINITY_UP)
    lines = (*first.lines[:1], *(Line(each) for each in beside), *first.lines[1:])
    return [replace(first, lines=lines), *others]


async def _made(turn: Turn, found: SalinityTalk) -> list[Reply] | None:
    """``sg 1.020 for 100 l``: new sea water, and no reading."""
    target = _salinity(turn, found.value or 0.0)
    question = Question(
        "dose",
        analyte="salinity",
        target=target,
        volume_l=found.litres,
        substance=TABLE_SALT,
        text="make salt water",
    )
    reply = await buckets.sea_water_asked(turn, question)
    if reply is None:
        return None
    return [replace(reply, lines=(*reply.lines, Line(words.not_stored())))]


def _salinity(turn: Turn, value: float) -> float | None:
    """A salinity or specific gravity in g/kg; None for what is none of a sea."""
    gravity = value <= salinity_talk.GRAVITIES[1]
    values = parse(f"{'sg' if gravity else 'salinity'} {value:g}", turn.context()).values
    found = values[0].canonical if values else None
    low, high = salinity_talk.SALINITIES
    return found if isinstance(found, float) and low <= found <= high else None


async def _latest(turn: Turn) -> Offer | None:
    """The answer before, while it is still spoken of."""
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    return latest[0] if latest and turn.now - latest[0].made_at <= patience else None


async def _of_salinity(turn: Turn, offer: Offer) -> bool:
    """Whether the answer before was of salinity: a reading of it, or a way to one."""
    if offer.entry_id is not None:
        entry = await turn.uow.log.get(turn.chat.id, offer.entry_id)
        told = [] if entry is None else [each.what.analyte for each in entry.readings]
        return "salinity" in told
    return _wished(turn, offer) is not None


def _wished(turn: Turn, offer: Offer | None) -> float | None:
    """The salinity that was to be reached in the answer before."""
    if offer is None or ASKED not in offer.context:
        return None
    asked = offer.context[ASKED]
    question = parse(asked["text"], turn.context()).question
    analyte = None if question is None else asked["changes"].get("analyte", question.analyte)
    if question is None or analyte != "salinity":
        return None
    target = asked["changes"].get("target", question.target)
    return None if target is None else float(target)
