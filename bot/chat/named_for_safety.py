"""Whether it is safe for animals that are named: the words that ask it, and what is against them.

What is dangerous and what is safe are asked with a yes of opposite meaning, so no answer to it
begins with yes or no: it says what was judged.
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat.for_kinds import SUITING
from core.advice.asked_company import asks_safety
from core.advice.findings import Finding, find
from core.advice.keeping import Keeping
from core.advice.livestock import Species
from core.advice.readiness import Readiness, ready
from core.advice.state import State
from core.message.after import asked as asked_after
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut
from core.tank import Stock


def asked(text: str) -> bool:
    """Whether a question is of safety: `are snails safe in there`, `is it dangerous for neons`."""
    plain = fold(text)
    if any(token.kind == "ask" and token.value == "safe" for token in cut(plain, lexicon(), text)):
        return True
    found = asked_after(text)
    return asks_safety(text) or (found is not None and found.meaning in {"harm", "hurts", "well"})


def harms(state: State, kind: Species) -> list[Finding]:
    """What of the water, and of what was put in, stands against a kind beside its ranges."""
    joined = replace(state.tank, stock=(*state.tank.stock, Stock(kind.name, 1)))
    found = find(replace(state, tank=joined), frozenset({*state.readings, "potassium"}))
    return [each for each in found if each.id in SUITING and each.id != "does_not_suit"][:2]


def filtered(state: State, answer: Keeping, *, safety: bool) -> Readiness | None:
    """How the filter stands where the water has nothing against an animal; None where it has.

    Asked about its `safety`, poison is told whatever the water.
    """
    if not answer.asked.is_animal:
        return None
    suits, found = answer.verdict in {"yes", "care"}, ready(state)
    return found if suits or (safety and found.verdict == "cycling") else None
