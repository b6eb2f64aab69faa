"""What was just said, another way: `with potassium bicarbonate?`, `in 3 parts`, `and for quarry?`.

What was asked is kept with the answer as it was typed, and what has been changed of it since; a
follow-up reads it again, changes one thing more and lets the same topic answer. Right after a
reading it puts the number right, right after a reminder its time.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Mapping
from dataclasses import replace
from typing import Any, Final

from bot.chat import animals, corrections, doubts, reminders
from bot.chat.model import Reply
from bot.chat.turn import ASKED, Turn
from bot.chat.typed import GROUP_PATIENCE, PATIENCE
from bot.store.offers import AT_HAND, Offer
from core.message import blends, followups, parse, water_asked
from core.message.fold import fold
from core.message.followups import Followup
from core.message.lexicon import lexicon
from core.message.model import Parsed, Question
from core.message.tokens import cut
from core.message.waters import mentioned

SLOWER: Final = 2
"""Who wants it slower gets so many times the parts."""

PLANS: Final = frozenset({"dose", "effect", "change"})
"""Questions whose numbers are a wish or an amount."""

ABOUT_ONE: Final = frozenset({"history", "when", "why", "help", "safe"})
"""Questions that are about a named analyte, and may be about another."""

KINDS: Final = PLANS | ABOUT_ONE | {"keep", "co2"}

LOOKED_AT: Final = 8
"""Latest offers among which a wish without a name finds what it is of."""

Topics = Mapping[str, Callable[[Turn, Question, Parsed], Awaitable[list[Reply]]]]


def begin(turn: Turn, question: Question) -> None:
    """Keep a question with the replies that answer it."""
    if question.kind in KINDS:
        turn.asked = {"text": turn.incoming.text, "changes": {}}


async def answer(turn: Turn, parsed: Parsed, topics: Topics) -> list[Reply] | None:
    """Answer the newest question another way; None where that is not what was said."""
    if not turn.incoming.addressed or parsed.values or not _is_bare(parsed.question):
        return None
    wishes = parsed.question is not None and _wishes(parsed.question)
    anew = followups.again(turn.incoming.text)
    latest = await turn.uow.offers.latest(turn.chat.id, LOOKED_AT if wishes or anew else AT_HAND)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    latest = [offer for offer in latest if turn.now - offer.made_at <= patience]
    if parsed.question is not None and wishes:
        return await _of_what_was_asked(turn, parsed.question, latest, topics)
    if not latest:
        return None
    if anew:
        return await _once_more(turn, latest, topics)
    offer = latest[0]
    if offer.entry_id is not None:
        return await corrections.renumber(turn, offer.entry_id)
    if (doubted := await doubts.renumbered(turn, offer)) is not None:
        return doubted
    if reminders.MADE in offer.context:
        return await reminders.anew(turn, offer.context[reminders.MADE])
    if ASKED not in offer.context:
        return None
    followup = followups.read(turn.incoming.text, turn.context())
    return None if followup is None else await _again(turn, offer, followup, topics)


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
        if about is None or about.kind not in KINDS:
            continue
        named = about.analyte or next(iter(about.premises), None)
        if named is None:
            continue
        plainly = question.bound is None and question.delta is None and question.volume_l is None
        if about.kind in PLANS and plainly:
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
    asked = offer.context[ASKED]
    first = animals.asked(turn, parse(asked["text"], turn.context())).question
    if first is None or first.kind not in (PLANS if followup.again else KINDS):
        return None
    before = replace(first, **asked["changes"])
    if followup.water is not None:
        before = replace(before, text=first.text)  # with the water of no follow-up before
    changes = _changes(before, followup, offer)
    if changes is None:
        return None
    question = replace(before, **changes)
    turn.asked = {"text": asked["text"], "changes": {**asked["changes"], **changes}}
    turn.parts = followup.parts
    if followup.slower:
        turn.parts = SLOWER * len(_facts(offer).get("parts", [0]))
    if (named := turn.tank_named(question.tank or "")) is not None:
        await turn.use_tank(named)
    return await topics[question.kind](turn, question, Parsed("question", question=question))


def _facts(offer: Offer) -> Mapping[str, Any]:
    facts: Mapping[str, Any] = offer.context.get("facts", {})
    return facts


def _changes(asked: Question, said: Followup, offer: Offer) -> dict[str, Any] | None:
    """What of the question becomes another; None where the follow-up does not fit it."""
    if said.again:
        return {}
    if said.tank is not None:  # another water: what the question said of the first one is not its
        kept = asked.premises if asked.kind == "safe" else {}
        return {"tank": said.tank, "volume_l": None, "start_value": None, "premises": kept}
    if said.name is not None:
        return _animals(asked, said.name)
    if said.water is not None:
        mixed = said.water if blends.find(f"30% with {said.water}") is not None else None
        changes = {"text": _by(asked, said.water), "substance": mixed}
        if asked.kind == "dose" and mixed is None:  # the wish by water in the place of a salt
            return changes | {"text": f"change {changes['text']}"}
        return changes if asked.kind == "change" else None
    if said.number is not None:
        return _number(asked, said.number)
    if said.analyte is not None and said.target is None:
        bare = asked.kind in ABOUT_ONE and asked.target is None and not asked.premises
        return {"analyte": said.analyte} if bare and asked.analyte else None
    if asked.kind == "safe" and said.analyte is not None:
        return {"premises": {said.analyte: said.target}}
    if asked.kind not in PLANS:
        return None
    if said.substance is not None:
        return {"substance": said.substance, "text": _with(asked, said.substance)}
    if said.parts is not None or said.slower:
        return {} if asked.kind == "dose" else None
    if said.factor is not None:
        return _times(asked, said.factor, offer)
    if said.volume_l is not None:
        return {"volume_l": said.volume_l, "tank": None}
    if said.percent is not None:
        return {"percent": said.percent, "litres": None} if asked.kind == "change" else None
    if said.grams is not None:
        return _of_grams(asked, said.grams, _facts(offer).get("substance"))
    return _wish(asked, said)


def _of_grams(asked: Question, grams: float, substance: str | None) -> dict[str, Any] | None:
    """So much in the place of another amount; of a plan's substance, what so much would do."""
    if asked.kind == "effect":
        return {"grams": grams}
    if asked.kind != "dose" or substance is None:
        return None
    unwished = dict.fromkeys(("analyte", "start_value", "target", "delta"))
    return unwished | {
        "kind": "effect", "grams": grams, "substance": substance,
        "text": f"what does {grams:g} g {substance} do",
    }  # fmt: skip


def _number(asked: Question, number: float) -> dict[str, Any] | None:
    """A number that names nothing takes the place of the one that the question turns on."""
    if asked.kind == "safe" and len(asked.premises) == 1:
        return {"premises": dict.fromkeys(asked.premises, number)}
    for name in ("percent", "target", "delta", "litres", "grams"):
        if getattr(asked, name) is not None:
            return {name: number}
    return None


def _animals(asked: Question, name: str) -> dict[str, Any] | None:
    """Other animals in the place of those that were asked about."""
    meant = replace(asked, species=name)
    known = asked.kind == "keep" and asked.species and animals.named(meant)
    return {"species": name, "text": f"can i keep {name}"} if known else None


def _wish(asked: Question, said: Followup) -> dict[str, Any] | None:
    if asked.kind == "effect":
        return None
    if said.analyte == asked.analyte:
        return {"target": said.target, "delta": None}
    return {
        "analyte": said.analyte, "target": said.target, "delta": None, "start_value": None,
        "substance": None, "also": None, "also_target": None, "also_delta": None,
        "premises": {}, "text": f"{asked.kind} {said.analyte}",
    }  # fmt: skip


def _times(asked: Question, factor: float, offer: Offer) -> dict[str, Any] | None:
    """So much of what was wished: of the way from where the water stands."""
    if asked.kind == "effect":
        return {"grams": asked.grams * factor} if asked.grams is not None else None
    if asked.kind == "change" and asked.percent is not None:
        return {"percent": min(asked.percent * factor, 100.0)}
    if asked.delta is not None and asked.target is None:
        return {"delta": asked.delta * factor}
    start, target = _facts(offer).get("from"), asked.target
    goals = _facts(offer).get("goals", [])
    if start is None and len(goals) == 1:
        start = goals[0]["from"]
    if asked.kind != "dose" or start is None or target is None:
        return None
    return {"target": start + (target - start) * factor}


def _by(asked: Question, water: str) -> str:
    """The question's words with another new water in the place of those that it named."""
    text = asked.text or ""
    for start, end, _kind in reversed(mentioned(text)):
        text = text[:start] + text[end:]
    return f"{text} with {water}"


def _with(asked: Question, substance: str) -> str:
    """The question's words with another substance in the place of the one that it named."""
    text = asked.text or ""
    tokens = cut(fold(text), lexicon(), text)
    for token in reversed([each for each in tokens if each.kind == "substance"]):
        text = text[: token.start] + text[token.end :]
    return f"{text} {substance}"
