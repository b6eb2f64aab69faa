"""What the animals of an event are called: the keeper's words without those of something else."""

from __future__ import annotations

from core.message import herd, kinds
from core.message.animal_words import tells
from core.message.event_parts import Parts, source_words
from core.message.fold import fold
from core.message.tokens import Token


def parents(tokens: list[Token], floor: int, first: int, source: str) -> str | None:
    """The kind that is named before a birth: `my guppies gave birth to 20`."""
    if floor >= first:
        return None
    named = kinds.animals_in(source[tokens[floor].start : tokens[first - 1].end])
    return named[-1] if named else None


def species(parts: Parts, source: str) -> str | None:
    """The animals of an event as the keeper calls them; of the new-born it is said."""
    words = parts.unknown
    counts_dead = parts.spared is None and parts.kind in {"lost", "missing", "given"}
    if counts_dead and parts.before < len(words):
        words = _of_the_dead(words, parts.before, source)
    if parts.kind == "lost" and counts_dead:
        words = _up_to_gap(words, source)
    said = source_words(words, source) if words else None
    if said is not None and parts.kind == "lost":
        return _without_tail(said)
    if said is not None and parts.kind in {"given", "missing"}:
        return _without_takers(said)
    if parts.kind != "born":
        return said
    young = [token for token in parts.unknown if herd.saying(token.text) == "young"]
    if young and len(young) < len(parts.unknown):
        return said
    kind = said if said is not None and not young else parts.parents
    word = source_words(young, source) if young else herd.young_as_said(parts.word)
    return f"{kind} ({word})" if kind is not None else said


def _of_the_dead(words: list[Token], before: int, source: str) -> list[Token]:
    """The words that name who died: behind the event, or before it where only those name any."""
    behind = words[before:]  # found one neon dead
    named = kinds.names_animal(source_words(words[:before], source)) if before else False
    return words[:before] if named and not _names(source_words(behind, source)) else behind


def _names(said: str) -> bool:
    return kinds.names_animal(said) or any(kinds.names_any(word) for word in said.split())


def _without_tail(said: str) -> str:
    """Fish of no kind without what is told behind them: fish others gasping."""
    first, *rest = said.split()
    return first if rest and kinds.names_any(first) and not _names(" ".join(rest)) else said


def _up_to_gap(words: list[Token], source: str) -> list[Token]:
    """The words of who died, without those told behind a word of another kind: over winter."""
    for place in range(1, len(words)):
        between = source[words[place - 1].end : words[place].start]
        apart = any(letter.isalnum() for letter in between)
        if apart and not tells(words[place]):
            named = kinds.names_animal(source_words(words[:place], source))
            return words[:place] if named else words
    return words


def _without_takers(said: str) -> str:
    """The kind alone, where words of whom it went to stand behind: verkauft 2 Guppys an Max."""
    named = kinds.animals_in(said)
    if len(named) != 1:
        return said
    from core.advice.livestock import plain_name

    kind = named[0].split()
    kept = (
        word
        for word in said.split()
        if plain_name(word) in kind or herd.saying(fold(word)) in herd.OF_A_KIND
    )
    return " ".join(kept)
