"""Values told in one breath with a call for help: `nitrite 5 fish gasping` is both.

The message is parted where its numbers end, or begin, and what is left calls for help without any
number. Words that bear on a value (a wish, another water, was, not) keep it in doubt.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from bot.chat.turn import Turn
from core.advice.calls import asks_what_now, distressed, recognise
from core.message import parse
from core.message.doubts import UNKNOWN_WORD
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Parsed
from core.message.tokens import cut

LONGEST: Final = 40
"""More words than these are no cry for help with its numbers."""

LIGHT: Final = frozenset({"word", "fill", "event", "command", "p"})
"""Kinds of words that bear on no value."""


def parted(turn: Turn, parsed: Parsed) -> Parsed:
    """A message whose values only the words of a call made doubtful, with its values sure."""
    if not any(d.value is not None and d.reason == UNKNOWN_WORD for d in parsed.doubts):
        return parsed
    said = turn.incoming.text.split()
    numbered = [place for place, word in enumerate(said) if any(map(str.isdigit, word))]
    if not numbered or len(said) > LONGEST:
        return parsed
    for end in range(len(said), numbered[-1], -1):
        for start in range(numbered[0]):
            before, behind = " ".join(said[:start]), " ".join(said[end:])
            if (before or behind) and all(map(_calls_only, filter(None, (before, behind)))):
                told = parse(" ".join(said[start:end]), turn.context())
                if told.values and not (told.doubts or told.question or told.command):
                    return replace(told, intent="reading", tank=told.tank or parsed.tank)
    return parsed


def _calls_only(said: str) -> bool:
    """Whether words call for help, or say nothing, and none of them bears on a value."""
    if asks_what_now(said):
        return True
    if recognise(said) is None and not distressed(said):
        return not said.strip(" ,.;:!?-")
    return all(
        token.kind in LIGHT or token.value in {"fish", "nl", "link"}
        for token in cut(fold(said), lexicon(), said)
    )
