"""What was just said, another way: `with potassium bicarbonate?`, `in 3 parts`, `and for quarry?`.

What was asked is kept with the answer as it was typed, and what has been changed of it since; a
follow-up reads it again, changes one thing more and lets the same topic answer. Right after a
reading it puts the number right, right after a reminder its time.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Mapping
from dataclasses import replace
from typing import Any, Final

from bot.chat import animals, corrections, doubts, other_way, reminders, unheard
from bot.chat.given_plan import OF_PLAN
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import ASKED, Turn
from bot.chat.words import readings as words
from bot.store.offers import AT_HAND, Offer
from core.message import amends, anew, followups, parse, raise_asked, water_asked
from core.message.doubts import NEGATED, NO_VALUE, STRAY_NUMBER, WISH
from core.message.followups import Followup
from core.message.gave_told import gave
from core.message.model import Parsed, Question

SLOWER: Final = 2
"""Who wants it slower gets so many times the parts."""

LOOKED_AT: Final = 8
"""Latest offers among which a wish without a name finds what it is of."""

UNTOLD: Final = frozenset({STRAY_NUMBER, NO_VALUE, WISH, NEGATED})
"""Doubts of a message that may tell a part of a question: of all others it tells a reading."""

OF_SALT: Final = frozenset({"carbonate", "acid", "raises_none", "hydrate_unknown"})
"""Refusals of the salt that was named, whatever else was asked."""

Topics = Mapping[str, Callable[[Turn, Question, Parsed], Awaitable[list[Reply]]]]


def begin(turn: Turn, question: Question) -> None:
    """Keep a question with the replies that answer it."""
    named = question.analyte or question.substance or question.kind not in other_way.AMOUNTS
    if question.kind in other_way.KINDS and (named or _wishes(question)):
        turn.asked = {"text": turn.incoming.text, "changes": {}}


async def answer(turn: Turn, parsed: Parsed, topics: Topics) -> list[Reply] | None:
    """Answer the newest question another way; None where that is not what was said."""
    may_be = _is_bare(parsed.question) or other_way.is_partial(parsed.question)
    pair = anew.exchanged(turn.incoming.text) if parsed.values else None
    if not turn.incoming.addressed or (parsed.values and pair is None) or not may_be:
        return None
    wishes = parsed.question is not None and _wishes(parsed.question)
    once_more = followups.again(turn.incoming.text)
    looked_at = LOOKED_AT if wishes or once_more else AT_HAND
    latest = await turn.uow.offers.latest(turn.chat.id, looked_at)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    latest = [
        offer
        for offer in latest
        if turn.now - offer.made_at <= patience and OF_PLAN not in offer.context
    ]
    if parsed.question is not None and wishes:
        return await _of_what_was_asked(turn, parsed.question, latest, topics)
    if not latest:
        return None
    if pair is not None:  # kh 5 instead of 6: a wish where 6 was wished
        of_target = ASKED in latest[0].context and other_way.aims_at(latest[0], pair[1])
        return await _anew(turn, parsed, latest[0], topics) if of_target else None
    if once_more:
        return await _once_more(turn, latest, topics)
    offer = latest[0]
    if offer.entry_id is not None:
        number = amends.number_anew(turn.incoming.text)
        if number is not None and await unheard.since(turn, offer):
            return [await turn.reply(words.of_what(number))]
        put_right = await corrections.renumber(turn, offer.entry_id)
        return await _elsewhere(turn, offer.entry_id) if put_right is None else put_right
    if (doubted := await doubts.renumbered(turn, offer)) is not None:
        return doubted
    if reminders.MADE in offer.context:
        return await reminders.anew(turn, offer.context[reminders.MADE])
    if ASKED not in offer.context:
        return None
    if raise_asked.asked(turn.incoming.text) is not None and _asks_effect(turn, offer):
        return None  # should i add soda / should i add baking soda: the gate goes first
    followup = followups.read(turn.incoming.text, turn.context())
    if followup is not None and _is_bare(parsed.question):
        otherwise = await _again(turn, offer, followup, topics)
        if otherwise is not None:
            return otherwise
    if parsed.events or parsed.command or any(d.reason not in UNTOLD for d in parsed.doubts):
        return None  # kh from 3 to 6: it may have risen; kh 4??: it may be read so
    if parsed.question is None and (told := gave(turn.incoming.text)) is not None and told.sure:
        return None  # did the first dose, kh tested 3: it is in
    return await _anew(turn, parsed, offer, topics)


def _asks_effect(turn: Turn, offer: Offer) -> bool:
    """Whether an answer was to what a thing does, not to how much of it."""
    question = parse(offer.context[ASKED]["text"], turn.context()).question
    return question is not None and question.kind == "effect"


async def _elsewhere(turn: Turn, entry_id: int) -> list[Reply] | None:
    """``and in the office?`` right behind a value: what stands of the same in another tank."""
    if "?" not in turn.incoming.text or turn.route is None:
        return None
    said = followups.read(turn.incoming.text, turn.context())
    entry = await turn.uow.log.current(turn.chat.id, entry_id)
    analytes = [] if entry is None else [each.what.analyte for each in entry.readings]
    if said is None or said.tank is None or len(analytes) != 1:
        return None
    turn.incoming = replace(turn.incoming, text=f"{analytes[0]} {said.tank}?")
    return await turn.route(turn, parse(turn.incoming.text, turn.context()))


async def by_water(turn: Turn, topics: Topics) -> list[Reply] | None:
    """The wish of the newest plan by a water change, or by the water that is named."""
    text = turn.incoming.text
    water = "a water change" if water_asked.by_change(text) else water_asked.how_much_of(text)
    if water is None or not turn.incoming.addressed:
        return None
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or ASKED not in latest[0].context or turn.now - latest[0].made_at > patience:
        return None
    return await _again(turn, latest[0], Followup(water=water), topics)


async def _once_more(turn: Turn, latest: list[Offer], topics: Topics) -> list[Reply] | None:
    """The newest plan that was asked for, of the water as it is now."""
    for offer in latest:
        again = (
            await _again(turn, offer, Followup(again=True), topics)
            if ASKED in offer.context
            else None
        )
        if again is not None:
            return again
    return None


def _is_bare(question: Question | None) -> bool:
    """Whether nothing is asked, or `how much of it for 40 l` of what was spoken of.

    `what if i only have gypsum` asks what a thing does, and of no amount.
    """
    if question is None:
        return True
    told = (question.analyte, question.target, question.delta, question.grams)
    amounts = (*told, question.a_litre, question.millilitres, question.spoons, question.volume_l)
    of_salt = question.kind == "effect" and all(each is None for each in amounts)
    bare = question.kind == "dose" and all(each is None for each in told)
    return bare or of_salt or _wishes(question)


def _wishes(question: Question) -> bool:
    """Whether a question wishes for a value of it knows not what: `how much to get to 10`."""
    named = (question.analyte, question.substance, question.also, question.start_value)
    wished = question.target is not None or question.delta is not None
    return (
        question.kind in {"dose", "change"}
        and wished
        and not question.premises
        and all(each is None for each in named)
    )


async def _of_what_was_asked(
    turn: Turn, question: Question, latest: list[Offer], topics: Topics
) -> list[Reply] | None:
    """A wish without a name: of what was asked about last, be it asked for or only judged.

    Where nothing was, None: the topic of the wish asks what it is of.
    """
    for offer in latest:
        if ASKED not in offer.context:
            continue
        asked = offer.context[ASKED]
        first = animals.asked(turn, parse(asked["text"], turn.context())).question
        about = None if first is None else replace(first, **asked["changes"])
        if about is None or about.kind not in other_way.KINDS:
            continue
        named = about.analyte or next(iter(about.premises), None)
        if named is None:
            continue
        plainly = question.bound is None and question.delta is None and question.volume_l is None
        if about.kind in other_way.PLANS and plainly:
            said = Followup(analyte=named, target=question.target)
            return await _again(turn, offer, said, topics)
        kind = "change" if question.bound == "<" else "dose"
        changes: dict[str, Any] = {"kind": kind, "analyte": named, "tank": about.tank}
        turn.asked = {"text": turn.incoming.text, "changes": changes}
        meant = replace(question, **changes)
        return await topics[kind](turn, meant, Parsed("question", question=meant))
    return None


async def _again(
    turn: Turn, offer: Offer, followup: Followup, topics: Topics
) -> list[Reply] | None:
    """The question of an offer with what the follow-up says in its place."""
    asked = _wished_in(offer)
    first = animals.asked(turn, parse(asked["text"], turn.context())).question
    if first is None or first.kind not in (other_way.PLANS if followup.again else other_way.KINDS):
        return None
    before = replace(first, **asked["changes"])
    if followup.water is not None:
        before = replace(before, text=first.text)  # with the water of no follow-up before
    changes = other_way.changes(before, followup, offer)
    if changes is None:
        return None
    turn.parts = followup.parts
    if followup.slower:
        turn.parts = SLOWER * len(other_way.facts_of(offer).get("parts", [0]))
    return await changed(turn, asked, before, changes, topics)


def _wished_in(offer: Offer) -> Mapping[str, Any]:
    """What was asked and is changed of it; a salt that was refused in its place is none of it."""
    asked: Mapping[str, Any] = offer.context[ASKED]
    of_salt = other_way.facts_of(offer).get("refused") in OF_SALT
    if not of_salt or "substance" not in asked["changes"]:
        return asked
    kept = {key: each for key, each in asked["changes"].items() if key not in {"substance", "text"}}
    return {**asked, "changes": kept}


async def _anew(turn: Turn, parsed: Parsed, offer: Offer, topics: Topics) -> list[Reply] | None:
    """The question of an offer with those parts that a message tells anew, as a question would."""
    asked = _wished_in(offer)
    first = parse(asked["text"], turn.context()).question
    if first is None or first.kind not in other_way.PLANS:
        return None
    before = replace(first, **asked["changes"])
    text, context, told = turn.incoming.text, turn.context(), parsed.question
    if told is not None:
        said: anew.Anew | None = anew.Anew(told)
    else:
        if (pair := anew.exchanged(text)) is not None:
            meant, wrong = pair
            changes = other_way.exchanged(before, meant, wrong)
            if changes is not None:
                return await changed(turn, asked, before, changes, topics)
            text = f"{meant}?"
        said = anew.read(text, before.kind, before.analyte, context)
    changes = None if said is None else other_way.told_anew(before, said, offer)
    return None if changes is None else await changed(turn, asked, before, changes, topics)


async def supposed(turn: Turn, offer: Offer, topics: Topics) -> list[Reply] | None:
    """What an amount does in such water: `at kh 2 ph 6.5`, right after an effect was told."""
    return await _anew(turn, Parsed("none"), offer, topics)


async def changed(
    turn: Turn, asked: Mapping[str, Any], before: Question, changes: dict[str, Any], topics: Topics
) -> list[Reply]:
    """Let the topic answer a question with some parts of it changed."""
    question = replace(before, **changes)
    turn.asked = {"text": asked["text"], "changes": {**asked["changes"], **changes}}
    if (named := turn.tank_named(question.tank or "")) is not None:
        await turn.use_tank(named)
    return await topics[question.kind](turn, question, Parsed("question", question=question))
