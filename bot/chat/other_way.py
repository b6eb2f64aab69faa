"""What of a question becomes another by what is said after its answer."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any, Final

from bot.chat import animals
from bot.store.offers import Offer
from core.advice.scheduling import per_gram
from core.advice.substitutes import WAYS, holds, without
from core.message import anew, blends
from core.message.fold import fold
from core.message.followups import Followup
from core.message.lexicon import lexicon
from core.message.model import Question
from core.message.tokens import Token, cut
from core.message.waters import mentioned
from core.water.substances import SUBSTANCES

PLANS: Final = frozenset({"dose", "effect", "change"})
"""Questions whose numbers are a wish or an amount."""

AMOUNTS: Final = frozenset({"dose", "effect"})
"""Questions that without a name ask of nothing."""

ABOUT_ONE: Final = frozenset({"history", "when", "why", "help", "safe"})
"""Questions that are about a named analyte, and may be about another."""

KINDS: Final = PLANS | ABOUT_ONE | {"keep", "co2"}


def facts_of(offer: Offer) -> Mapping[str, Any]:
    """The numbers of an answer."""
    facts: Mapping[str, Any] = offer.context.get("facts", {})
    return facts


def changes(asked: Question, said: Followup, offer: Offer) -> dict[str, Any] | None:
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
        return {"substance": said.substance, "text": with_salt(asked, said.substance)}
    if said.parts is not None or said.slower:
        return {} if asked.kind == "dose" else None
    if said.factor is not None:
        return _times(asked, said.factor, offer)
    if said.volume_l is not None and asked.kind == "change":
        return {"litres": said.volume_l, "percent": None}
    if said.volume_l is not None:
        return {"volume_l": said.volume_l, "tank": None}
    if said.percent is not None:
        return {"percent": said.percent, "litres": None} if asked.kind == "change" else None
    if said.grams is not None:
        return _of_grams(asked, said.grams, facts_of(offer).get("substance"))
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
    if isinstance(facts_of(offer).get("to"), Mapping) and facts_of(offer).get("salts"):
        return {"volume_l": facts_of(offer)["volume_l"] * factor}  # so much new water
    if asked.kind == "change" and asked.percent is not None:
        return {"percent": min(asked.percent * factor, 100.0)}
    if asked.delta is not None and asked.target is None:
        return {"delta": asked.delta * factor}
    start, target = facts_of(offer).get("from"), asked.target
    goals = facts_of(offer).get("goals", [])
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


def with_salt(asked: Question, substance: str) -> str:
    """The question's words with another substance in the place of the one that it named."""
    text = asked.text or ""
    for token in reversed(_named_in(text)):
        text = text[: token.start] + text[token.end :]
    return f"{text} {substance}"


def _named_in(text: str) -> list[Token]:
    return [token for token in cut(fold(text), lexicon(), text) if token.kind == "substance"]


def _salts_in(text: str) -> list[str]:
    return [str(token.value) for token in _named_in(text)]


TOLD: Final = (
    ("target", "delta"), ("delta", "target"), ("start_value",), ("ratio",),
    ("grams", "a_litre", "millilitres", "spoons"), ("a_litre", "grams", "millilitres", "spoons"),
    ("millilitres", "grams", "a_litre", "spoons"), ("spoons", "grams", "a_litre", "millilitres"),
    ("percent", "litres"), ("litres", "percent"), ("volume_l", "tank"),
)  # fmt: skip
"""Parts of a question that are told anew, each with those whose place it takes."""


def is_partial(question: Question | None) -> bool:
    """Whether a question says too little to be answered alone: `what if 5 g`, `how much soda`."""
    if question is None or question.premises:
        return False
    if question.kind == "effect":
        amounts = (question.grams, question.a_litre, question.millilitres, question.spoons)
        wished = question.target is not None or question.delta is not None
        weighed = any(each is not None for each in amounts)
        return not wished and (question.substance is None or not weighed)
    wished = question.target is not None or question.delta is not None
    return question.kind == "dose" and not wished and question.start_value is None


def aims_at(offer: Offer, wrong: str) -> bool:
    """Whether a plan's answer leads to the number that is said to be wrong."""
    facts, number = facts_of(offer), anew.number_of(wrong)
    goals = [goal.get("to") for goal in facts.get("goals", ())]
    to = facts.get("to")
    ends = [*to.values()] if isinstance(to, Mapping) else [to]
    return number is not None and number in [*goals, *ends]


def exchanged(asked: Question, meant: str, wrong: str) -> dict[str, Any] | None:
    """A bare number in the place of the one that was asked for; None where it names more."""
    number, before = anew.number_of(meant), anew.number_of(wrong)
    if number is None or not meant.replace(",", ".").replace(".", "", 1).isdigit():
        return None
    for name in ("target", "delta", "start_value", "volume_l", "percent", "litres", "grams"):
        if getattr(asked, name) == before is not None:
            return {name: number}
    return _number(asked, number)


def told_anew(asked: Question, said: anew.Anew, offer: Offer) -> dict[str, Any] | None:
    """The parts that are told anew; None where they are of another thing or change nothing."""
    if said.without is not None:
        return _without(asked, said.without, facts_of(offer))
    told = said.question
    if told is None:
        return None
    if asked.kind == "dose" and told.kind == "effect":
        bare = told.grams is not None and told.substance is None and told.volume_l is None
        substance = facts_of(offer).get("substance")
        return _of_grams(asked, told.grams or 0.0, substance) if bare else None
    if told.kind != asked.kind or told.analyte not in {None, asked.analyte}:
        return None
    changes: dict[str, Any] = {}
    if told.tank is not None:  # what the question said of the first water is not its
        changes |= {"tank": told.tank, "volume_l": None, "start_value": None, "premises": {}}
    for name, *others in TOLD:
        value = getattr(told, name)
        if value is not None:
            changes |= {name: value} | {o: None for o in others if getattr(told, o) is None}
    if told.premises:
        changes["premises"] = {**changes.get("premises", asked.premises), **told.premises}
    if told.substance is not None:
        if not _serves(asked, told.substance):
            return None
        named = " and ".join(said.named) or told.substance
        changes |= {"substance": told.substance, "text": with_salt(asked, named)}
    return changes or None


def goals_of(asked: Question) -> list[str]:
    """What a question wishes to raise."""
    named = [name for name in (asked.analyte, asked.also) if name is not None]
    return [*named, *(name for name in asked.premises if name not in named)]


def _serves(asked: Question, substance: str) -> bool:
    """Whether a salt is what a question may be of instead: for a wish, one that brings it."""
    if asked.kind == "effect":
        return True
    known = substance in SUBSTANCES
    return known and any(per_gram(substance, name) > 0.0 for name in goals_of(asked))


def _without(asked: Question, excluded: str, facts: Mapping[str, Any]) -> dict[str, Any] | None:
    """The same wish with none of some salts, where the answer had one of them."""
    told = [str(each.get("substance")) for each in facts.get("salts") or [facts]]
    if asked.kind != "dose" or not any(holds(salt, excluded) for salt in told):
        return None
    goals = [name for name in goals_of(asked) if name in WAYS]
    salts = without(excluded, goals, _salts_in(asked.text or ""))
    if not salts:
        return None
    return {"substance": salts[0], "text": with_salt(asked, " and ".join(salts))}
