"""After a call for help: is it gone, is it too late, which form is it; vinegar, and table salt."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final

from bot.chat import dose_reply
from bot.chat.calls_kept import CALLED
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import after_call as words
from bot.store.offers import Offer
from core.advice.plan import Refusal
from core.message.after import Asked
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut

MEANINGS: Final = frozenset(
    {"gone", "too_late", "hydrate", "anhydrous", "acid", "iodine", "use_salt"}
)


async def answer(turn: Turn, said: Asked, offers: Sequence[Offer]) -> list[Reply] | None:
    """Answer what is asked after a call for help; None where none was."""
    if said.meaning == "acid":
        acid = "vinegar" if _names_vinegar(turn.incoming.text) else "citric acid"  # lemon juice
        return [await dose_reply.refuse(turn, Refusal("acid", {"substance": acid}), None)]
    if said.meaning in {"iodine", "use_salt"}:
        stored = turn.current_tank
        is_salty = stored is not None and stored.tank.kind not in {"fresh", "pond"}
        if said.meaning == "use_salt" and not is_salty and not _of_salt(offers):
            return None
        return [await turn.reply(words.table_salt(is_salty=is_salty))]
    if said.meaning in {"hydrate", "anhydrous"}:
        return await _form(turn, offers, hydrate=said.meaning == "hydrate")
    danger = next((d for each in offers if (d := _danger(each)) is not None), None)
    if danger is None:
        return None
    lines = words.gone(danger) if said.meaning == "gone" else words.too_late()
    return [await turn.reply(lines, facts={"emergency": danger})]


def _names_vinegar(text: str) -> bool:
    return any(token.value == "vinegar" for token in cut(fold(text), lexicon(), text))


def _facts(offer: Offer) -> Mapping[str, Any]:
    facts: Mapping[str, Any] = offer.context.get("facts", {})
    return facts


def _danger(offer: Offer) -> str | None:
    """What a call for help was about; a dechlorinator reckoned is chlorine."""
    if CALLED in offer.context:
        danger: str = offer.context[CALLED]["danger"]
        return danger
    return "chlorine" if "ammonia_freed" in _facts(offer) else None


def _of_salt(offers: Sequence[Offer]) -> bool:
    """Whether table salt was asked about or planned just now."""
    for offer in offers[:1]:
        planned = offer.context.get("facts", {}).get("substance") == "sodium chloride"
        return planned or any(each.verb == "confirm_salt" for each in offer.choices)
    return False


async def _form(turn: Turn, offers: Sequence[Offer], *, hydrate: bool) -> list[Reply] | None:
    """The one form of two that the keeper has."""
    for offer in offers[:1]:
        facts = _facts(offer)
        for form in facts.get("forms", ()):
            name, grams = form.get("substance"), form.get("grams")
            if name is None or grams is None or name.endswith("hydrate") != hydrate:
                continue
            told = {"substance": name, "grams": grams}
            parts = form.get("parts") or [grams]
            if len(parts) > 1:
                told |= {"parts": parts}
            return [await turn.reply(words.form(name, grams, parts), facts=told)]
    return None
