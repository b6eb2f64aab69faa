"""Whether animals would do well in a water: `do guppies like hard water`.

liking = ( word-of-asking animals verb | verb animals | animals verb ... "?" ) water

The verb is one of `[mark]` ``likes``. It asks only where water or what can be measured in it is
liked, and in a sentence that is a question by its first word, by its verb in front or by its mark;
"I like my new tank" asks nothing.
"""

from __future__ import annotations

from core.message.model import Question
from core.message.tokens import Token

_ASKING = frozenset({"does", "may", "whether"})
_PERSONS = frozenset({"you", "u", "they", "we", "i", "du", "sie", "tu", "vous", "ihr"})
_MOST = 14


def read(source: str, tokens: list[Token]) -> Question | None:
    """The question that all the tokens ask, or None."""
    place = next((i for i, token in enumerate(tokens) if token.value == "likes"), None)
    if place is None or len(tokens) > _MOST:
        return None
    if any(token.kind in {"number", "count", "nl", "event"} for token in tokens):
        return None
    first = tokens[0]
    asked = (
        first.value in _ASKING
        or first.text == "do"
        or first is tokens[place]
        or tokens[-1].text == "?"
    )
    wet = any(t.value == "water" or t.kind in {"analyte", "substance"} for t in tokens)
    animals = _animals(tokens, place)
    if not asked or not wet or not animals:
        return None
    tank = next((str(token.value) for token in tokens if token.kind == "tank"), None)
    species = source[animals[0].start : animals[-1].end]
    text = source[tokens[0].start : tokens[-1].end]
    return Question("keep", tank=tank, species=species, text=text)


def _animals(tokens: list[Token], place: int) -> list[Token]:
    """The unknown words before the verb, else the first behind it."""
    before = [token for token in tokens[:place] if token.kind == "word"]
    if before and all(token.text not in _PERSONS for token in before):
        return before
    if before:
        return []
    behind = tokens[place + 1 :]
    run: list[Token] = []
    for token in behind:
        if token.kind == "word" and token.text not in _PERSONS and len(run) < 1:
            run.append(token)
        elif run or token.kind not in {"fill", "time"}:
            break
    return run
