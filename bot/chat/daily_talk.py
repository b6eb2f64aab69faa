"""``whats the daily use``, ``how many ml a day to stay at 8.2``: a sea's use in other words.

A solution that is told (``its 80 g baking soda in 1 l``) is spoken of for a while: what holds a
value is then told in its millilitres as well.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any, Final

from bot.chat import daily, dose_reply, doubts
from bot.chat.model import Line, Reply
from bot.chat.patience import GROUP_PATIENCE, LOOKED_AT, PATIENCE
from bot.chat.state import state_of
from bot.chat.turn import ASKED, Turn
from bot.chat.words import daily_talk as words
from bot.store.offers import Offer
from bot.store.tanks import StoredTank
from core.advice.may_rise import raising_refused
from core.advice.scheduling import per_gram, steps_of
from core.advice.upkeep import USED_UP
from core.message import daily_talk
from core.message.daily_talk import DailyTalk
from core.message.dosed_ml import dosed_ml
from core.message.model import Parsed, Question
from core.message.reduced import reduced
from core.water.substances import SUBSTANCES

STOCK: Final = "stock"
"""Under which an offer keeps the solution that was told: substance and grams in a litre."""

THINNEST, THICKEST = 5.0, 700.0
"""What a stock solution may hold; thinner is a tank's water, thicker a paste. Ours. [g/L]"""

DISSOLVES: Final = {"sodium bicarbonate": 96.0}
"""Most that a litre takes up at 20 °C (CRC Handbook, from memory). [g/L]"""

NEAR: Final = 2.0
"""A bare number so far from the KH on record may be of anything. [°dH]"""

MOST: Final = 6
"""Lines on one screen."""


@dataclass(frozen=True, slots=True)
class Solution:
    """A salt in water: its id, and grams in a litre."""

    substance: str | None
    a_litre: float


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer what is asked or told of a daily use; None where nothing is."""
    if not turn.incoming.addressed or parsed.command is not None:
        return None
    text, stored = turn.incoming.text, turn.current_tank
    found = daily_talk.daily_talk(text)
    if found is None:
        undosed = await _undosed(turn, stored, text)
        return undosed or await _dosed(turn, stored, text)
    if found.asks == "ammonia":
        return [await turn.reply(words.ammonia_is_needed())]
    if found.asks in {"stock", "as_ml", "raises"}:
        return await _of_solution(turn, stored, found)
    if stored is None or not stored.tank.is_sea:
        return None
    if found.asks == "together":
        return None  # of a plan, if one was given
    if found.asks == "undosed":
        return [await turn.reply(words.nothing_dosed(stored.name))]
    state = await state_of(turn, stored, turn.now)
    if found.asks == "use":
        if found.analyte is not None and found.analyte not in USED_UP:
            return None
        return [await daily.use_of(turn, stored, state, found.analyte)]
    return await _hold(turn, stored, found)


async def together(turn: Turn, _parsed: Parsed) -> list[Reply] | None:
    """``can i pour both together`` in a sea, of no plan that was given."""
    stored = turn.current_tank
    if not turn.incoming.addressed or stored is None or not stored.tank.is_sea:
        return None
    found = daily_talk.daily_talk(turn.incoming.text)
    if found is None or found.asks != "together":
        return None
    return [await turn.reply(words.never_together())]


async def _hold(turn: Turn, stored: StoredTank, found: DailyTalk) -> list[Reply] | None:
    """What holds a value, in grams a day; in millilitres too where a solution is spoken of."""
    state = await state_of(turn, stored, turn.now)
    solution = await _spoken_of(turn)
    substance = found.substance or (None if solution is None else solution.substance)
    analyte = found.analyte or daily.raised(substance) or "kh"
    if analyte not in USED_UP:
        return None
    now = state.last(analyte)
    bare = found.target is not None and found.analyte == "kh" and "kh" not in _named(turn)
    if bare and (now is None or abs(now.value - (found.target or 0.0)) > NEAR):
        return None
    if analyte == "kh" and (refusal := raising_refused(state)) is not None:
        return [await dose_reply.refuse(turn, refusal, stored.name)]
    salt = substance if daily.raised(substance) == analyte else None
    wish = f"{analyte} {found.target:g}" if found.target is not None else analyte
    text = f"how much {salt or ''} a day to keep {wish}".replace("  ", " ")
    turn.asked = {"text": text, "changes": {}}
    question = Question("dose", analyte=analyte, target=found.target, substance=salt, text=text)
    replies = await daily.answer(turn, question)
    if replies is None and turn.route is not None:
        plain = f"how much {salt or 'sodium bicarbonate'} for {wish}"
        replies = await doubts.say(turn, plain if analyte == "kh" else f"dose {wish}", turn.now)
    if not replies:
        return None
    return [_in_millilitres(replies[0], solution, asked=found.in_ml), *replies[1:]]


def _named(turn: Turn) -> set[str]:
    """The analytes that the message itself names."""
    return set(reduced(turn.incoming.text).analytes)


def _in_millilitres(reply: Reply, solution: Solution | None, *, asked: bool) -> Reply:
    """A plan with its first part in millilitres of the solution; how to tell one where asked."""
    grams, substance = reply.facts.get("grams"), reply.facts.get("substance")
    if not isinstance(grams, float):
        return reply
    if solution is None:
        return _with(reply, words.tell_the_solution(), {}) if asked else reply
    if solution.substance not in {None, substance}:
        return _with(reply, words.other_salt(), {}) if asked else reply
    parts = reply.facts.get("parts")
    part = grams / len(parts) if isinstance(parts, list | tuple) and parts else grams
    millilitres = 1000.0 * part / solution.a_litre
    line = words.in_millilitres(part, solution.a_litre, millilitres)
    facts = {"solution": {"a_litre": solution.a_litre, "grams": part, "millilitres": millilitres}}
    return _with(reply, line, facts)


def _with(reply: Reply, line: str, facts: dict[str, Any]) -> Reply:
    lines = [*reply.lines[: MOST - 1]]
    lines.insert(min(2, len(lines)), Line(line))
    return replace(reply, lines=tuple(lines), facts={**reply.facts, **facts})


async def _of_solution(
    turn: Turn, stored: StoredTank | None, found: DailyTalk
) -> list[Reply] | None:
    """A solution that is told, the plan before in its millilitres, or what some of it raises."""
    if found.asks == "raises":
        solution = await _spoken_of(turn)
        if solution is None or found.millilitres is None:
            return None
        return await _raises(turn, stored, solution, found.millilitres)
    if found.a_litre is None or not THINNEST <= found.a_litre <= THICKEST:
        return None
    if found.asks == "stock":
        if daily.raised(found.substance) is None:
            return None
        solution = Solution(found.substance, found.a_litre)
        return [await _told(turn, stored, solution)]
    latest = await _latest(turn)
    planned = next((each for each in latest if "grams" in _facts(each)), None)
    if planned is None:
        return None
    facts = _facts(planned)
    substance = found.substance or facts.get("substance")
    if substance != facts.get("substance"):
        return None
    parts = facts.get("parts") or [facts["grams"]]
    part = facts["grams"] / len(parts)
    millilitres = 1000.0 * part / found.a_litre
    solution = Solution(substance, found.a_litre)
    told = {"a_litre": found.a_litre, "grams": part, "millilitres": millilitres}
    context = {**planned.context, STOCK: [substance, found.a_litre]}
    lines = [words.in_millilitres(part, found.a_litre, millilitres), *_thick(solution)]
    turn.asked = planned.context.get(ASKED)
    return [await turn.reply(lines, facts={"solution": told}, context=context, expects="followup")]


async def in_its_millilitres(turn: Turn, a_litre: float) -> list[Reply] | None:
    """The plan before in millilitres of a solution of it; None where it can be none. [g/L]"""
    return await _of_solution(turn, turn.current_tank, DailyTalk("as_ml", a_litre=a_litre))


async def _told(turn: Turn, stored: StoredTank | None, solution: Solution) -> Reply:
    """Say what a millilitre of a solution holds, and what ten raise in the tank in use."""
    analyte = daily.raised(solution.substance) or "kh"
    facts: dict[str, Any] = {
        "solution": {"substance": solution.substance, "a_litre": solution.a_litre}
    }
    rise = _rise(stored, solution, TOLD_ML)
    lines = [words.solution(solution.substance or "", solution.a_litre), *_thick(solution)]
    if stored is not None and rise is not None:
        lines.append(words.raises(TOLD_ML, analyte, rise, stored.name))
        facts |= {"millilitres": TOLD_ML, "rise": {analyte: rise}}
    lines.append(words.ask_with_it())
    context = {STOCK: [solution.substance, solution.a_litre]}
    return await turn.reply(lines, facts=facts, context=context, expects="followup")


TOLD_ML: Final = 10.0


def _thick(solution: Solution) -> list[str]:
    most = DISSOLVES.get(solution.substance or "")
    return [] if most is None or solution.a_litre <= most else [words.too_thick(most)]


def _rise(stored: StoredTank | None, solution: Solution, millilitres: float) -> float | None:
    """What so much of a solution raises in a tank; None without its volume."""
    volume = None if stored is None else stored.tank.volume_l
    analyte = daily.raised(solution.substance)
    if volume is None or analyte is None or solution.substance is None:
        return None
    grams = solution.a_litre * millilitres / 1000.0
    return grams * per_gram(solution.substance, analyte) / volume


async def _raises(
    turn: Turn, stored: StoredTank | None, solution: Solution, millilitres: float
) -> list[Reply] | None:
    analyte = daily.raised(solution.substance)
    rise = _rise(stored, solution, millilitres)
    if stored is None or rise is None or analyte is None:
        return None
    step = steps_of(stored.tank).get(analyte)
    over = step is not None and rise > step
    lines = [words.raises(millilitres, analyte, rise, stored.name)]
    if over and step is not None:
        lines.insert(0, words.past_the_step(step, analyte))
    lines.append(words.nothing_stored())
    facts: dict[str, Any] = {
        "tank": stored.name,
        "millilitres": millilitres,
        "rise": {analyte: rise},
        "solution": {"substance": solution.substance, "a_litre": solution.a_litre},
    }
    facts |= {"step": step} if over else {}
    context = {STOCK: [solution.substance, solution.a_litre]}
    return [await turn.reply(lines, facts=facts, context=context, expects="followup")]


async def _undosed(turn: Turn, stored: StoredTank | None, text: str) -> list[Reply] | None:
    """``alk 7.2 no dosing``: the reading, and nothing went in."""
    rest = daily_talk.without_undosed(text)
    if rest is None or stored is None:
        return None
    context = turn.context()
    told = daily_talk.parse_reading(rest, context)
    return await doubts.say(turn, rest, turn.now) if told else None


async def _dosed(turn: Turn, stored: StoredTank | None, text: str) -> list[Reply] | None:
    """``alk 7.9, dosed 40 ml both days``: the reading; the dose in grams, to be sent once more.

    Of what it was is not said, so that it is not logged; without it no use can be told.
    """
    found = dosed_ml(text)
    if found is None or stored is None or not stored.tank.is_sea:
        return None
    if found.rest and not daily_talk.parse_reading(found.rest, turn.context()):
        return None
    solution = await _spoken_of(turn)
    kept = await doubts.say(turn, found.rest, turn.now) if found.rest else []
    known = solution is not None and solution.substance is not None
    if solution is None or solution.substance is None or found.days == "daily":
        lines = words.dosed_of_what(found.said, known=known)
        return [*kept, await turn.reply(lines)]
    grams = solution.a_litre * found.millilitres / 1000.0
    lines = words.dosed_in_grams(found.said, solution.substance, grams, both=found.days == "both")
    facts = {"solution": {"substance": solution.substance, "a_litre": solution.a_litre}}
    facts["solution"] |= {"millilitres": found.millilitres, "grams": grams}
    context = {STOCK: [solution.substance, solution.a_litre]}
    return [*kept, await turn.reply(lines, facts=facts, context=context, expects="followup")]


async def _latest(turn: Turn) -> list[Offer]:
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    latest = await turn.uow.offers.latest(turn.chat.id, LOOKED_AT)
    return [each for each in latest if turn.now - each.made_at <= patience]


async def _spoken_of(turn: Turn) -> Solution | None:
    """The solution that was told last."""
    for offer in await _latest(turn):
        if (held := offer.context.get(STOCK)) is not None:
            return Solution(*held)
    return None


def _facts(offer: Offer) -> dict[str, Any]:
    facts: dict[str, Any] = offer.context.get("facts", {})
    return facts if facts.get("substance") in SUBSTANCES else {}
