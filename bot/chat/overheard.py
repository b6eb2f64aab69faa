"""What people tell each other in a group: only what is of animals or salts that we know is ours."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace

from bot.chat.turn import Turn
from core.message import kinds
from core.message.bought import plain_name
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Event, Parsed
from core.message.tokens import cut
from core.substances import SUBSTANCES

_OF_ANIMALS = kinds.OF_ANIMALS | {"moved_in", "moved_out"}
_WITHOUT_NAME = frozenset({"fed", "filter", "top_up"})
"""Events that name no thing: any other word beside them tells that they are of something else."""


async def of_tanks(turn: Turn, parsed: Parsed) -> Parsed:
    """What a message in a group tells of tanks; all of it where it names one.

    ``dosed my kid 5 ml ibuprofen``, ``added 2 beers to the fridge`` and ``fed the cat`` are talk.
    """
    if not parsed.events or parsed.tank is not None:
        return parsed
    known = {plain_name(product.name) for product in turn.products}
    text = turn.incoming.text
    events = tuple(e for e in parsed.events if e.tank is not None or _is_ours(e, text, known))
    return replace(parsed, events=events)


def _is_ours(event: Event, text: str, known: Collection[str]) -> bool:
    if event.kind in _OF_ANIMALS:
        return event.species is None or _names_animal(event.species)
    if event.kind in {"dose", "media"}:
        said = event.substance or ""
        return said in SUBSTANCES or plain_name(said) in known
    return event.kind not in _WITHOUT_NAME or not _other_words(text)


def _names_animal(species: str) -> bool:
    return kinds.names_animal(species) or kinds.names_any(species)


def _other_words(text: str) -> bool:
    """Whether a text has words that we do not know and that name no animal."""
    tokens = cut(fold(text), lexicon(), text)
    return any(token.kind == "word" and not _names_animal(token.text) for token in tokens)
