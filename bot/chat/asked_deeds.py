"""``is a 100% water change ok``: what is asked about was not done, and is not stored."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from bot.chat.turn import Turn
from core.message import deed_opened, parse
from core.message.doubts import UNSURE_EVENT
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Event, Parsed, Question
from core.message.tokens import cut

OPENERS: Final = frozenset({"may", "does", "whether"})
"""Marks of the parser's words that open a question in any language: can I, does, is it true."""

OPENED: Final = "opened"
"""Words of one's own deed open a question in front of it: do I, have we."""

IS: Final = "link"
"""The mark of "is": it opens a question too, but "sono morti due pesci" tells a loss."""

BY_HAND: Final = frozenset({"water_change", "top_up", "dose", "filter"})
LOOKED_AT: Final = 6
SHARE: Final = re.compile(r"(\d{1,3}(?:[.,]\d+)?)\s*(?:%|percent|pct|prozent|procent|por ?cento)")
"""How a share of the water is told."""


def as_question(text: str, parsed: Parsed) -> Parsed:
    """What a message says, without the deeds that it only asks about.

    A change of water with its amount becomes the question what it would do.
    """
    if parsed.question is not None or parsed.command is not None:
        return parsed
    doubts = {doubt.reason for doubt in parsed.doubts}
    if not parsed.values and doubts <= {UNSURE_EVENT} and deed_opened.asks_change(text):
        return Parsed("question", question=Question("change", tank=parsed.tank, text=text))
    unsure = not (parsed.values or parsed.events) and doubts == {UNSURE_EVENT}
    if unsure and deed_opened.asks_by_end(text):
        (share,) = SHARE.findall(text)[:1] or [None]
        if share is not None:
            percent = float(share.replace(",", "."))
            return Parsed(
                "question",
                question=Question("change", tank=parsed.tank, percent=percent, text=text),
            )
    if not parsed.events:
        return parsed
    opening = OPENED if deed_opened.opened(text) else _opening(text)
    asked = [event for event in parsed.events if _is_asked(event, opening)]
    if not asked:
        return parsed
    told = tuple(event for event in parsed.events if event not in asked)
    change = next((e for e in asked if e.kind == "water_change" and (e.percent or e.litres)), None)
    if change is not None:
        question = Question(
            "change",
            tank=change.tank or parsed.tank,
            percent=change.percent,
            litres=change.litres,
            text=text,
        )
        return replace(parsed, intent="question", events=told, question=question)
    quiet = not told and not parsed.values
    return replace(parsed, intent="none" if quiet else parsed.intent, events=told)


def _is_asked(event: Event, opening: str | None) -> bool:
    return opening in {OPENED, *OPENERS} or (opening == IS and event.kind in BY_HAND)


def _opening(text: str) -> str | None:
    """The mark that a message opens with, past words without weight."""
    for token in cut(fold(text), lexicon(), text, most=LOOKED_AT):
        if token.kind != "fill" and any(map(str.isalnum, token.text)):
            return str(token.value) if token.kind == "mark" else None
    return None


_DO_I: Final = re.compile(r"^\W*do (?=(?:i|we)\b)", re.IGNORECASE)
"""English asks with "do" what other languages ask with "should"."""


_SHOULD_BE: Final = re.compile(
    r"^\W*(?:should|sollte|soll|moet) (?P<name>[^\W\d]{2,20}(?: [^\W\d]{1,20})?)"
    r"(?: be)? (?P<value>\d{1,5}(?:[.,]\d{1,3})?(?: ?[a-z°/%]{1,6})?)(?: sein| zijn)?\W*$",
    re.IGNORECASE,
)
"""Whether a value should be so much, which asks about the value: `should nitrate be 40`."""


def as_should(turn: Turn, parsed: Parsed) -> Parsed:
    """`do i add salt` as it is asked otherwise, where nothing was heard in it."""
    text = turn.incoming.text
    if (should := _SHOULD_BE.match(text)) is not None and parsed.doubts:
        anew = parse(f"is {should['name']} {should['value']} ok?", turn.context())
        if anew.question is not None and anew.question.premises and not anew.doubts:
            return anew
    if parsed.intent not in {"none", "unclear"} or (do := _DO_I.match(text)) is None:
        return parsed
    anew = parse(f"should {text[do.end() :]}", turn.context())
    return anew if anew.question is not None and not anew.values else parsed
