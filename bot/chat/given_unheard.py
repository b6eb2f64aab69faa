"""What is told to have gone in, by whoever, in words that nothing understood: it is asked about.

`my dad chucked in a full 1 kg bag already`, `someone else dosed it too`: what it may have been is
on buttons, a bare amount answers as well (`typo 3 g`), and until then no amount is told
(`bot/chat/off_record.py`).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from typing import Any, Final

from bot.chat import (
    doses,
    emergencies,
    given_logged,
    given_parts,
    in_vessel,
    nameless,
    off_record,
    open_told,
)
from bot.chat.calls_kept import CALLED
from bot.chat.given_plan import LOG_SOME, Given, running
from bot.chat.model import Reply
from bot.chat.nameless import amount_of
from bot.chat.off_record import LINES, NAMELESS
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.state import SHOWS, state_of
from bot.chat.turn import Turn
from bot.chat.words import given_parts as given_words
from bot.chat.words import names
from bot.chat.words import off_record as words
from bot.chat.words.numbers import plain
from bot.store.offers import BESIDE, Choice, Offer
from bot.store.tanks import StoredTank
from core.advice.calls import asks
from core.advice.danger import would_be_too_much
from core.message import acid_in, parse, times
from core.message.fold import fold
from core.message.gave_told import Gave, denies, gave, holds, tells_of_each, tells_test_beside
from core.message.lexicon import lexicon
from core.message.model import Parsed
from core.message.plan_said import Amounts, amounts_in, said_of_plan, substances_named
from core.message.tokens import cut
from core.substances import ACIDS
from core.water.substances import SUBSTANCES

OF_PART: Final = frozenset({"left", "rest", "jugs", "stock", "test_at"})
"""Facts of an answer that tells what is next of a plan."""

KEEPS: Final = frozenset({"events", "values", "emergency", "tank"})
"""Facts of what was understood of a message."""

ANSWERED: Final = frozenset({"caution", "refused", "ask"})
"""Facts of a reply that says itself what to do about it."""

OWN: Final = ANSWERED | {"events", "values", "product", "solution", "total", "parts", "said"}
"""Facts of a reply that stored what was told, or that is of a thing of its own."""

UNWEIGHED: Final = "substance_unknown"
"""The refusal to reckon with a spoon of something."""

FEW: Final = 6
"""Words of an answer that is an amount."""

WORDS_OF_IT: Final = 10
"""Words of one that tells nothing but how much it was."""

OF_IT: Final = frozenset({"was", "is", "put", "give", "inside", "all", "once", "spoon", "right"})
"""Classes of its words."""

A_SPOON_ML: Final = 5.0
"""A level teaspoon. [mL]"""

A_THIRD: Final = 1.0 / 3.0
"""Of a part: a bare number that is less is none of its amounts; ours."""


async def asked(
    turn: Turn, parsed: Parsed, replies: Sequence[Reply], *, lost: bool
) -> list[Reply] | None:
    """The replies and the question what went in; None where nothing of that is told.

    `lost` is whether a part of the message was not understood; a salt that was topped up is no
    water either. One that was answered as a question,
    or as another thing, may tell a dose all the same, where so much of a substance is named.
    """
    if not turn.incoming.addressed:
        return None
    if any("emergency" in each.facts for each in replies):
        await _keep_acid(turn, parsed, replies)
        return None
    told = gave(_untold(turn, parsed, replies))
    lost = lost or any(e.kind == "top_up" and e.substance in SUBSTANCES for e in parsed.events)
    if told is None or in_vessel.is_apart(turn, turn.incoming.text):
        return None
    warned = _is_measured(told) and any(_is_no_answer(each, told) for each in replies)
    if not lost and not warned and not (_is_measured(told) and _is_other(parsed, replies)):
        return None
    stored = turn.tank_named(parsed.tank or "") or turn.current_tank
    plan = await running(turn)
    tank_id = None if stored is None else stored.id
    plan = plan if plan is not None and plan.tank_id == tank_id else None
    if not told.sure and not _of_plan(plan, told):
        return None
    held = await off_record.held_of(turn, tank_id, " ".join(turn.incoming.text.split()))
    held["substance"] = _substance(told, plan)
    held["when"] = None if (when := _when(turn, parsed)) is None else when.isoformat()
    held["volume_l"] = _litres(told, parsed) if plan is None else plan.held["volume_l"]
    guessed = any("dosed" in button.label for each in replies for button in each.buttons)
    if warned:
        replies, lost = [], True  # how it is done or weighed is of no use to who has done it
    if guessed or any(ANSWERED & each.facts.keys() for each in replies):
        unheard = {NAMELESS: held}
        await turn.uow.offers.add(
            turn.chat.id, Offer(choices=(), made_at=turn.now, expects=BESIDE, context=unheard)
        )
        return None
    choices = _may_be(turn, stored, plan, told, parsed)
    lines = words.which(held["said"], [each.label for each in choices])
    if told.counted is not None and not choices and not told.amounts.of_dose:
        held["count"] = told.counted
        lines = words.what_one_holds(held["said"])
    if len(choices) == 1:
        choices = [replace(choices[0], meaning="yes")]
    choices.append(off_record.none_of_it(tank_id))
    if stored is not None and len(turn.tanks) > 1:
        lines[0] = names.of_tank(stored.name, lines[0])
    question = await turn.reply(
        [*await _aid(turn, stored, held["substance"], told), *lines],
        choices=choices,
        facts={"said": held["said"]} | ({} if stored is None else {"tank": stored.name}),
        context={NAMELESS: held, LINES: lines},
        expects="followup",
    )
    if not lost:
        return [*replies, question]
    tested = tells_test_beside(turn.incoming.text)  # what was measured is on no record either
    kept = [each for each in replies if _keeps(each) or (tested and "doubts" in each.facts)]
    return [*kept, question]


async def _aid(
    turn: Turn, stored: StoredTank | None, substance: str | None, told: Gave
) -> list[str]:
    """What cannot wait for the answer, where it is far too much that may have gone in."""
    grams = told.amounts.grams
    if stored is None or substance is None or grams is None:
        return []
    state = await state_of(turn, stored, turn.now)
    if not would_be_too_much(state, substance, grams):
        return []
    return await emergencies.aid_untold(turn, stored, state)


async def _keep_acid(turn: Turn, parsed: Parsed, replies: Sequence[Reply]) -> None:
    """Keep an acid that was called out and is on no record: of how much of it, is asked.

    `i poured vinegar in, maybe a cup`: the doubt is of its amount alone. No test of that hour
    settles it, as one of a salt does: an acid goes on taking KH.
    """
    if not any(each.facts.get("emergency") == "overdose" for each in replies):
        return
    if any(event.kind == "dose" for event in parsed.events) or acid_in.named(_said(turn)) is None:
        return
    stored = turn.tank_named(parsed.tank or "") or turn.current_tank
    held = await off_record.held_of(turn, None if stored is None else stored.id, _said(turn))
    held["substance"] = next(iter(substances_named(_said(turn)) & ACIDS), None)
    await turn.uow.offers.add(
        turn.chat.id,
        Offer(choices=(), made_at=turn.now, expects=BESIDE, context={NAMELESS: held}),
    )


def _said(turn: Turn) -> str:
    return " ".join(turn.incoming.text.split())


def _keeps(reply: Reply) -> bool:
    """Whether a reply tells more than that something was not understood."""
    asks = bool(reply.buttons) and "doubts" in reply.facts
    return asks or bool(KEEPS & reply.facts.keys())


def _is_measured(told: Gave) -> bool:
    """Whether so much of a named substance is told to have gone in."""
    return told.sure and told.amounts.of_dose and bool(told.substances)


def _is_no_answer(reply: Reply, told: Gave) -> bool:
    """Whether a reply tells how it is done, or that a spoon cannot be reckoned with."""
    spoons = told.amounts.spoons is not None or told.amounts.millilitres is not None
    return "caution" in reply.facts or (spoons and reply.facts.get("refused") == UNWEIGHED)


def _is_other(parsed: Parsed, replies: Sequence[Reply]) -> bool:
    """Whether a message was answered by no more than what an amount does, or as another thing."""
    if parsed.command is not None or not replies:
        return False
    return not any(each.buttons or each.facts.keys() & OWN for each in replies)


def _untold(turn: Turn, parsed: Parsed, replies: Sequence[Reply]) -> str:
    """What of a message may tell a dose that is not on record: beside one that is, its doubts."""
    stored = any((KEEPS | OWN) & each.facts.keys() for each in replies)
    if stored and any(event.kind == "dose" for event in parsed.events):
        return " ".join(doubt.text for doubt in parsed.doubts)
    return turn.incoming.text


def _substance(told: Gave, plan: Given | None) -> str | None:
    """The one salt that went in: as named, else that of the plan."""
    if told.other and not told.substances:
        return None
    if told.substances:
        (first, *others) = sorted(told.substances)
        return first if not others and first in SUBSTANCES else None
    salts = () if plan is None else plan.salts
    return salts[0][0] if len(salts) == 1 else None


def _of_plan(plan: Given | None, told: Gave) -> list[float]:
    """Which bare numbers may be of a plan."""
    if plan is None:
        return []
    least, most = A_THIRD * plan.parts[0], sum(plan.parts) * 2.0
    return [each for each in told.numbers if least <= each <= most]


def _may_be(
    turn: Turn, stored: StoredTank | None, plan: Given | None, told: Gave, parsed: Parsed
) -> list[Choice]:
    """What it may have been: the amount that is told, else a part of the plan."""
    substance = _substance(told, plan)
    base: dict[str, Any] = {
        "tank_id": None if stored is None else stored.id,
        "volume_l": _litres(told, parsed) if stored is None else stored.tank.volume_l,
    }
    may_be: list[dict[str, Any]] = []
    if told.other and not told.substances:
        return []  # of another thing than the plan's: never put on record as that
    if told.amounts.of_dose:
        amount = None if substance is None else _weighed(base, told.amounts, substance)
        may_be += [] if amount is None else [amount]
    elif plan is not None and not told.vessel and not told.substances - dict(plan.salts).keys():
        of_plan = _of_plan(plan, told)[: 2 if told.either else 1]
        shares = [each / plan.parts[0] for each in of_plan]
        if not told.numbers:  # put 30 too, where a part is 3: of no part
            shares = sorted({told.parts or 1.0, 1.0})
        may_be += [doses.so_much_of(plan.held, each) for each in shares]
    of = plan.offer.id if plan is not None and substance in dict(plan.salts) else 0
    when = _when(turn, parsed)
    at = {} if when is None else {"at": when.isoformat()}
    return [Choice(_shown(each), LOG_SOME, "", _logging(turn, of, each) | at) for each in may_be]


def _litres(told: Gave, parsed: Parsed) -> float | None:
    """How much water it went into, where that is told of it: in my 20 gallon. [L]"""
    asked = parsed.question
    return told.amounts.litres if asked is None else asked.volume_l or told.amounts.litres


def _when(turn: Turn, parsed: Parsed) -> datetime | None:
    """When it went in, where an earlier day is told: `he dumped some in on friday`."""
    if parsed.at is not None:
        return parsed.at if parsed.at < turn.now else None
    text = turn.incoming.text
    tokens = cut(fold(text), lexicon(), text)
    found = (times.find(tokens, place, turn.context()) for place in range(len(tokens)))
    told = [each.at for each in found if each is not None and each.at is not None]
    return next((at for at in told if at < turn.now), None)


def _logging(turn: Turn, of: int, held: dict[str, Any]) -> dict[str, Any]:
    """What a button needs to put it on record, once however often it is asked."""
    return {"of": of, "held": held, "id": turn.incoming.update_id}


def _weighed(base: dict[str, Any], amounts: Amounts, substance: str) -> dict[str, Any] | None:
    """So much of a salt, as a plan's button holds it; None in a measure that weighs nothing."""
    if amounts.grams is not None:
        grams = amounts.grams
        return {**base, "substance": substance, "grams": grams, "salts": [[substance, grams]]}
    if amounts.spoons is None:
        return None
    return {**base, "substance": substance, "spoons": amounts.spoons}


def _shown(held: dict[str, Any]) -> str:
    if "spoons" in held:
        return words.spoons(plain(held["spoons"], 2), names.substance(held["substance"]))
    return given_parts.shown(held)


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """`typo 3 g`, `1 kg of soda`, `nothing` right behind the question: so it is; else None."""
    if not turn.incoming.addressed or parsed.events or turn.route is None:
        return None
    newest = await turn.uow.offers.latest(turn.chat.id, 2)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not newest or turn.now - newest[0].made_at > patience:
        return None
    text = turn.incoming.text
    held = newest[0].context.get(NAMELESS) or await _called(turn, newest)
    one = holds(text)
    of_it = _tells_of_it(text) or tells_of_each(text)
    if not held and (one is not None or of_it):
        held = await _still_asked(turn)
        held = held if of_it or (held or {}).get("count") else None
    if not held or held.get("over") or newest[0].context.get(given_parts.OF_HALF):
        return None  # of a half the plan's own question takes the answer
    if held.get("count") and one is not None:
        return await _so_many(turn, held, one)
    if denies(text) or fold(text).strip(" .!") == fold(given_words.none_of_it()):
        none = next((each for each in newest[0].choices if each.verb == "log_none"), None)
        return None if none is None else await given_logged.log_none(turn, newest[0], none)
    amounts, named = amounts_in(text), substances_named(text)
    most = WORDS_OF_IT if of_it else FEW
    if "?" in text or asks(text) or len(text.split()) > most:
        return None  # one more dose is wished, none told
    if len(named) > 1 or not amounts.of_dose:
        return None
    said = said_of_plan(text)
    if said is not None and (said.asks or said.queries):
        return None
    if amounts.millilitres is not None:
        return None
    times = await _open_since(turn, held) if tells_of_each(text) else 1
    if held.get("poison"):  # of no record: its steps stand, however much of it
        stored = turn.tank_by_id(held["tank"])
        return [await emergencies.help_in(turn, stored, "overdose", gasping=False)]
    substance = next(iter(named), held.get("substance"))
    if substance is None:
        return [await off_record.of_what(turn, held, amount_of(amounts))]
    if not turn.tanks and held.get("volume_l") is not None:
        await doses.tank_for(turn, {"tank_id": None, "volume_l": held["volume_l"]})
    if times > 1:
        amounts = Amounts(*(None if each is None else times * each for each in amounts))
    dosed = f"dosed {amount_of(amounts)} {substance}"
    turn.incoming = replace(turn.incoming, text=dosed)
    at = held.get("when")
    told = parse(dosed, turn.context())
    replies = await turn.route(
        turn, told if at is None else replace(told, at=datetime.fromisoformat(at))
    )
    for _more in range(1, times):
        await off_record.settle(turn, held["tank"])
    return replies


async def _open_since(turn: Turn, held: dict[str, Any]) -> int:
    """Of how many things that went in `each was 8 g` tells: all that are asked about now."""
    stored = turn.tank_by_id(held["tank"])
    if stored is None:
        return 1
    state = await state_of(turn, stored, turn.now)
    tested = [each.at for each in state.readings.values() if each.analyte in SHOWS]
    found = await off_record.all_open(turn, stored.id, state.events or (), tested, turn.now)
    return max(1, len(found))


def _tells_of_it(text: str) -> bool:
    """Whether a text tells no more than how much something was: it was about 5 spoons i think."""
    said = said_of_plan(text)
    of_it = said is not None and not said.classes - OF_IT and not (said.asks or said.queries)
    return of_it and said is not None and "was" in said.classes and amounts_in(text).of_dose


async def _still_asked(turn: Turn) -> dict[str, Any] | None:
    """What was asked some answers ago: how much went in; None where nothing is open of it."""
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    stored = turn.current_tank
    said = None if stored is None else (await state_of(turn, stored, turn.now)).went_in
    for offer in await turn.uow.offers.latest(turn.chat.id, off_record.LOOKED_AT):
        held = offer.context.get(NAMELESS)
        if turn.now - offer.made_at > patience:
            break
        if said is not None and held and held.get("said") == said:
            return dict(held)
    if stored is None or not await open_told.pending(turn):
        return None
    held = await off_record.held_of(turn, stored.id, _said(turn))
    return held | {"substance": await nameless.spoken_of(turn)}


async def _so_many(turn: Turn, held: dict[str, Any], one: Amounts) -> list[Reply] | None:
    """So many caps, by what one holds, put on record; of what, is asked where it is not known."""
    spoons = one.spoons if one.millilitres is None else one.millilitres / A_SPOON_ML
    times: float = held["count"]
    so_much = Amounts(
        grams=None if one.grams is None else times * one.grams,
        spoons=None if one.grams is not None or spoons is None else times * spoons,
    )
    named = substances_named(turn.incoming.text)
    substance = next(iter(named), held.get("substance"))
    if len(named) > 1 or turn.route is None:
        return None
    if substance is None:
        return [await off_record.of_what(turn, held, amount_of(so_much))]
    dosed = f"dosed {amount_of(so_much)} {substance}"
    turn.incoming = replace(turn.incoming, text=dosed)
    told, at = parse(dosed, turn.context()), held.get("when")
    return await turn.route(
        turn, told if at is None else replace(told, at=datetime.fromisoformat(at))
    )


async def _called(turn: Turn, newest: Sequence[Offer]) -> dict[str, Any] | None:
    """Too much of a thing that was just called out, which asked how much; None of other calls."""
    called = next((each.context[CALLED] for each in newest if each.context.get(CALLED)), None)
    if called is None or called["danger"] != "overdose" or not called["said"]:
        return None
    named = substances_named(called["said"])
    known = named <= SUBSTANCES.keys() and len(named) <= 1
    poison = called["of"] is not None or not known
    held = await off_record.held_of(turn, called["tank"], called["said"])
    return held | {"substance": next(iter(named), None), "poison": poison}


async def again(turn: Turn, plan: Given) -> list[Reply] | None:
    """The question once more, where a part is told while it is open; None where none is."""
    stored = turn.tank_by_id(plan.tank_id)
    said = None if stored is None else (await state_of(turn, stored, turn.now)).went_in
    return None if stored is None or said is None else [await off_record.again(turn, stored, said)]


async def first(turn: Turn, replies: Sequence[Reply]) -> list[Reply]:
    """The replies, but the question in the place of what is next of a plan."""
    found = []
    for reply in replies:
        facts = reply.facts.keys()
        of_part = OF_PART & facts and not {"events", "values", "reminders", "said"} & facts
        stored = turn.tank_named(str(reply.facts.get("tank") or "")) or turn.current_tank
        if not of_part or stored is None or reply.kind != "reply":
            found.append(reply)
            continue
        said = (await state_of(turn, stored, turn.now)).went_in
        found.append(reply if said is None else await off_record.again(turn, stored, said))
    return found
