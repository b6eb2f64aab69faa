"""What is asked of the answer just given, where that was no plan and no change.

A bucket's recipe, a medium, an amount's effect, a bag: what each is, its facts tell; what is asked
of it is heard as of a plan, in the words of `plan_talk` and `plan_words`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, Final

from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import ASKED, Turn
from bot.chat.words import after as after_words
from bot.chat.words import answer_talk as words
from bot.chat.words import doses as dose_words
from bot.chat.words import plan_talk as plan_words
from core.advice.dissolving import jug_litres
from core.message.answer_talk import beside
from core.message.model import Parsed, Question
from core.message.plan_said import Amounts
from core.message.plan_talk import about
from core.message.plan_words import telling

Facts = Mapping[str, Any]
Told = Callable[[Facts], list[str]]

_HOT: Final = "calcium chloride"


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer what is asked of it; None where the newest answer is another, or nothing is asked."""
    why = parsed.command is not None and parsed.command.name == "why"
    tells = parsed.values or parsed.events or (parsed.command and not why)
    if not turn.incoming.addressed or tells:
        return None
    latest = await turn.uow.offers.latest(turn.chat.id)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or latest[0].entry_id is not None or turn.now - latest[0].made_at > patience:
        return None
    facts: Facts = latest[0].context.get("facts", {})
    answers = OF.get(kind_of(facts) or "")
    if answers is None:
        return None
    text = turn.incoming.text
    said = ("why",) if why else (_said(text, parsed.question), beside(text))
    told = next((answers[each] for each in said if each is not None and each in answers), None)
    if told is None:
        return None
    turn.asked = latest[0].context.get(ASKED)  # still what is spoken of
    return [await turn.reply(told(facts), facts=facts)]


def _said(text: str, question: Question | None) -> str | None:
    """What is said of it: as of a plan, or whether it is safe, too much or too fast."""
    heard = telling(text)
    said = about(text) or (heard.meaning if heard and heard.amounts == Amounts() else None)
    if said is not None or question is None or question.kind != "safe":
        return said
    named = (question.analyte, question.substance, question.species, question.tank)
    return None if question.premises or any(named) else "safe"


def kind_of(facts: Facts) -> str | None:
    """What an answer was, by its facts: recipe, lime, leaves, effect, bag; None for any other."""
    if "refused" in facts or "product" in facts:
        return None
    if isinstance(facts.get("to"), Mapping) and facts.get("salts"):
        return "recipe"
    if "acts" in facts and "end" in facts:
        return "lime" if facts["acts"] else None
    if "ph_before" in facts:
        return "leaves"
    if "bag" in facts and "steps" in facts:
        return "bag"
    told = facts.get("effects") or [facts]
    weighed = all({"substance", "grams", "days", "volume_l"} <= set(each) for each in told)
    return "effect" if weighed else None


def _salts(facts: Facts) -> list[str]:
    """The salts of a recipe as they go in: magnesium, calcium, what else there is, buffer last."""
    ranks = ("magnesium", "calcium", "potassium", "sodium")
    names = [str(each["substance"]) for each in facts["salts"]]

    def place(name: str) -> tuple[bool, int]:
        rank = next((n for n, word in enumerate(ranks) if name.startswith(word)), len(ranks))
        return name.endswith("bicarbonate"), rank

    return sorted(names, key=place)


def _bucket_how(facts: Facts) -> list[str]:
    salts = _salts(facts)
    hot = any(name.startswith(_HOT) for name in salts)
    hazards = [dose_words.CAUTIONS["heats"]] if hot else []
    return words.bucket_how(facts["volume_l"], salts, hazards)


def _bucket_order(facts: Facts) -> list[str]:
    return words.bucket_order(_salts(facts)) or _bucket_how(facts)


def _effect(facts: Facts) -> Facts:
    """The amount of an effect; of two forms the first, which weigh the same."""
    told: list[Facts] = facts.get("effects") or [facts]
    return told[0]


def _days(facts: Facts) -> int:
    return max(int(each["days"]) for each in facts.get("effects") or [facts])


def _amount_days(facts: Facts) -> list[str]:
    return words.amount_days(_days(facts))


def _amount_safe(facts: Facts) -> list[str]:
    """Whether an amount is safe: for the animals of its tank, where they bear less of it."""
    told = facts.get("effects") or [facts]
    past = next((each["past_animals"] for each in told if each.get("past_animals")), None)
    if past is None or "tank" not in facts:
        return _amount_days(facts)
    return after_words.amount(facts["tank"], _days(facts), past)


def _amount_how(facts: Facts) -> list[str]:
    """How a day's share of an amount goes in."""
    told = _effect(facts)
    name, grams = str(told["substance"]), float(told["grams"]) / _days(facts)
    hazards = [dose_words.CAUTIONS["heats"]] if name.startswith(_HOT) else []
    how = plan_words.how([(name, grams, jug_litres(name, grams))], hazards, dry=False)
    return [words.amount_days(_days(facts))[0], *how]


def _end(facts: Facts) -> list[str]:
    return words.lime_safe(facts["end"]["kh"], facts["end"]["ph"])


OF: Final[Mapping[str, Mapping[str, Told]]] = {
    "recipe": {
        "how": _bucket_how,
        "dry": _bucket_how,
        "first": _bucket_order,
        "at_once": _bucket_order,
        "safe": lambda _facts: words.bucket_safe(),
        "litres": lambda facts: words.bucket_litres(facts["volume_l"]),
        "days": lambda _facts: words.bucket_days(),
        "when_next": lambda _facts: words.bucket_days(),
        "store": lambda _facts: words.bucket_days()[1:],
    },
    "lime": {
        "how": lambda _facts: words.lime_how(),
        "dry": lambda _facts: words.lime_how(),
        "days": lambda _facts: words.lime_days(),
        "when_next": lambda _facts: words.lime_days(),
        "at_once": lambda _facts: words.lime_days(),  # faster?
        "safe": _end,
    },
    "leaves": {
        "how": lambda _facts: words.leaves_how(),
        "at_once": lambda _facts: words.leaves_how(),
        "days": lambda _facts: words.leaves_days(),
        "safe": lambda _facts: words.leaves_safe(),
    },
    "effect": {
        "how": _amount_how,
        "dry": _amount_how,
        "days": _amount_days,
        "a_day": _amount_days,
        "at_once": _amount_days,
        "safe": _amount_safe,
        "why": lambda _facts: words.amount_why(),
        "litres": lambda facts: words.amount_litres(_effect(facts)["volume_l"]),
    },
    "bag": {
        "days": lambda facts: words.bag_days(facts["minutes"], facts.get("days")),
        "first": lambda _facts: words.bag_order(),
        "how": lambda _facts: words.bag_order(),
        "safe": lambda facts: words.bag_safe(facts["bag"]),
        "at_once": lambda facts: words.bag_safe(facts["bag"]),
        "tip": lambda facts: words.bag_safe(facts["bag"]),
    },
}
"""What each answer is asked of, by what is said of it."""
