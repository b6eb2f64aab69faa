"""``nitrite 2, can i feed them``: what is asked behind values that were told in the same breath.

The values go on record first, so the question is answered with them, as if it came next.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from bot.chat import after_dose, how_much
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words.general import not_heard
from core.advice.asked_company import asked_company
from core.message import kinds, parse, plain_tail
from core.message.it_moved import it_moved
from core.message.model import Parsed

_MEASURED: Final = frozenset({"ammonia", "nitrite"})
"""What nobody names before a question unless a test showed it."""
_BEHIND_VALUES: Final = frozenset({"why", "keep", "when", "safe"})
TESTED: Final = 2
"""So many values side by side are what was read off; one may be supposed: is kh 8 ok."""
_OF_RECORD: Final = frozenset({"why", "keep", "when"})


async def told_first(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Keep values that are read as no more than what a question supposes, then answer it.

    ``ammonia 0.5 why``, ``ammonia 0 nitrite 0 can i add fish``, ``ph 7.1 kh 4 ok?``. None where
    they may be supposed.
    """
    question = parsed.question
    if question is None or turn.route is None or not turn.incoming.addressed:
        return None
    both = plain_tail.parted(turn.incoming.text) if question.kind in _BEHIND_VALUES else None
    told = None if both is None else parse(both[0], turn.context())
    if both is None or told is None or told.intent != "reading" or told.doubts:
        return None
    if len(told.values) <= len(parsed.values):
        return None  # nothing is lost that the question took: `now 6.6 why`
    if question.kind == "safe" and (len(told.values) < TESTED or question.species):
        return None
    if question.kind == "keep" and _MEASURED.isdisjoint(value.analyte for value in told.values):
        return None
    said = turn.incoming
    turn.incoming = replace(said, text=both[0])
    replies = await turn.route(turn, told)
    turn.incoming = said
    return replies + await _asked(turn, both[1])


async def answer(turn: Turn, parsed: Parsed) -> list[Reply]:
    """What answers a question behind the values of a message, nothing where none is asked."""
    if (steps := await after_dose.now(turn, parsed)) or parsed.question is not None:
        return steps
    if not parsed.values or not turn.incoming.addressed:
        return []
    both = plain_tail.parted(turn.incoming.text)
    asked = moved_behind(turn.incoming.text, parsed) if both is None else both[1]
    if asked is None:
        return []
    stands = await how_much.of_what_stands(turn) if _adds_what(turn, asked) else None
    return await _asked(turn, asked) if stands is None else stands


def moved_behind(text: str, parsed: Parsed) -> str | None:
    """A wish behind the last value that names none: `kh is 3 i want it higher`."""
    tail = text[max(value.end for value in parsed.values) :].strip(" ,.;:-")
    tail = re.sub(
        r"^(?:and|but|so|und|aber|et|mais|y|pero|e|mas|ma|en|maar|i|ale|och|men) ", "", tail
    )
    return tail if tail and it_moved(tail) is not None else None


def _adds_what(turn: Turn, asked: str) -> bool:
    """Whether it is asked what to add, and no animal is named: of what was measured, then."""
    context = turn.context()
    found = asked_company(asked, context.tanks, us_gallons=context.us_gallons)
    found = found or parse(asked, context).question
    if found is None or found.kind != "keep" or found.species not in {None, "what"}:
        return False
    return not any(kinds.names_any(word) or kinds.is_kind(word) for word in asked.split())


async def _asked(turn: Turn, asked: str) -> list[Reply]:
    """The answer to a question as if it were typed now; which words were not understood."""
    if turn.typed is None:
        return []
    said = turn.incoming
    turn.incoming = replace(said, text=asked)
    replies = await turn.typed(turn)
    turn.incoming = said
    if not turn.unheard:
        return replies
    turn.unheard = False
    return [await turn.reply(not_heard(asked))]
