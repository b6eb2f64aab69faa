"""Which kind of question it is: by its word of asking, and by what it asks about."""

from __future__ import annotations

from core.message.amounts import GRAMS, SPOONS
from core.message.slot import Slots
from core.message.tokens import Token

_MEASURES = frozenset({*GRAMS, *SPOONS, "mL"})
"""Units in which the answer to "how much" can be wished."""


def of_safety(inside: list[Token]) -> bool:
    """Whether "how much" asks for a limit, not for a dose: `how much ammonia is safe`."""
    asked = any(token.kind == "ask" and token.value == "safe" for token in inside)
    return asked and all(token.kind not in {"substance", "number"} for token in inside)


_PLAIN = {
    "safe": "safe", "convert": "convert", "why": "why", "when": "when", "keep": "keep",
    "history": "history", "help": "help", "co2": "co2", "dose": "dose", "raise": "dose",
    "status": "safe", "renew": "change", "explain": "help", "often": "keep",
    "reach": "change", "warm": "safe", "join": "safe", "suits": "keep", "ready": "keep",
}  # fmt: skip

_AMOUNT = "amount"
"""What a dose is called too."""


def _of_dose(inside: list[Token]) -> bool:
    """Whether a question names a dose, and what it is to bring a value to."""
    nouns = (n for n, token in enumerate(inside) if token.value == "dose" or token.text == _AMOUNT)
    behind = inside[next(nouns, len(inside)) + 1 :]
    return any(token.value in {"to", "rose_to"} or token.text == "for" for token in behind)


def kind_of(words: str, found: Slots, inside: list[Token]) -> str:
    """The kind of question, from the word of asking and what is asked about."""
    if words == "top_up":
        return "help"
    spooned = found.substance is not None and any(unit in SPOONS for unit, _ in found.units)
    if words == "how_much" and spooned and found.volume_l is None:
        return "convert"  # how many grams are in a spoon of it
    given = found.grams or found.a_litre or found.millilitres or found.spoons
    if words == "help" and found.substance == "sodium thiosulfate":
        return "dose"  # how do i dechlorinate 10 l
    moves = words in {"raise", "change"}
    if found.uses and found.names and not found.numbers and not moves:
        return "history"  # how much alk do my corals use up
    aimed = moves and found.substance is not None
    if (aimed or words in {"dose", "how_much"}) and given and not found.numbers:
        return "effect"  # the amount is there: what it does is asked
    if words == "current":
        return "co2" if found.names[:1] == [("co2", None)] else "history"
    bare = bool(found.names) and not (found.numbers or found.units)
    of_thing = given or found.substance or found.volume_l or found.events
    if bare and (words == "convert" or (words == "effect" and not of_thing)):
        return "help"  # what is kh, what does gh mean
    if words == "effect" and found.names and found.numbers and not of_thing:
        return "safe"  # what does gh 10 mean
    if words == "convert" and found.names and found.numbers and not given and _of_dose(inside):
        return "dose"  # what's the dose to get to kh 9
    if words == "join" and found.substance is None:
        return "keep"
    if words in _PLAIN:
        return _PLAIN[words]
    if words in {"what_if", "effect"}:
        changes = found.percent is not None or "water_change" in found.events
        return "change" if changes and found.substance is None else "effect"
    if words == "change":
        return "dose" if found.substance is not None else "change"
    told = found.names or found.numbers or found.substance or found.units or found.unknown
    of_change = any(t.kind == "ask" and t.value in {"what_if", "change", "renew"} for t in inside)
    if "water_change" in found.events or (words == "how_much" and of_change and not told):
        return "change"  # how much can i change
    if spooned:
        return "convert"
    wanted = [unit for unit, of in found.units if unit in _MEASURES and of is None]
    if wanted and found.names and found.numbers:
        return "dose"  # how many ml of something for kh 6
    nameless = not found.names and found.substance is None and not found.numbers
    if found.units and nameless and found.amount is not None and found.volume_l is not None:
        return "convert"
    if found.units and (found.numbers or found.amount is not None) and found.volume_l is None:
        return "convert"
    if found.substance is None and any(name == "co2" for name, _ in found.names):
        return "co2"
    return "dose"
