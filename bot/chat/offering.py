"""Replies with choices: kept as offers, so that a button is a short pointer and nothing more."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from typing import Any

from bot.chat.model import Button, Line, Reply, ReplyKind
from bot.chat.words import buttons
from bot.store.offers import Choice, Offer
from bot.store.uow import UnitOfWork

ACTION_VERSION = "1"
"""The first part of every button's action; a button of another version is told to be old."""


async def make_reply(
    uow: UnitOfWork,
    chat_id: int,
    now: datetime,
    lines: Iterable[str | Line],
    *,
    choices: Sequence[Choice] = (),
    more: Sequence[str] = (),
    facts: Mapping[str, Any] | None = None,
    expects: str | None = None,
    context: Mapping[str, Any] | None = None,
    entry_id: int | None = None,
    line: Mapping[str, str] | None = None,
    edits: str | None = None,
    kind: ReplyKind = "reply",
    at: datetime | None = None,
) -> Reply:
    """Build a reply; one with choices, or that a plain answer may follow, is kept as an offer.

    Parameters
    ----------
    lines : iterable of str or Line
        What is shown at once.
    choices : sequence of Choice
        The buttons, in order.
    more : sequence of str
        Lines shown on request only, behind a last button "more".
    facts : mapping, optional
        Every number that the text shows.
    expects, context : str and mapping, optional
        What a plain answer would be, and what that answer needs.
    entry_id : int, optional
        The entry that the reply confirms.
    line : mapping, optional
        The message that it answers, and that one's author.
    edits : str, optional
        The message that it replaces.
    """
    told = list(choices)
    if more:
        told.append(Choice(buttons.more(), "more", "more", {"lines": list(more)}))
    held = dict(context or {})
    if facts and (more or "why" in held or "asked" in held):
        held["facts"] = dict(facts)  # of the same numbers that what is kept back shows
    token: int | None = None
    if told or expects is not None or entry_id is not None:
        token = await uow.offers.add(
            chat_id,
            Offer(
                choices=tuple(told),
                made_at=now,
                expects=expects,
                context=held,
                entry_id=entry_id,
                line=dict(line or {}),
            ),
        )
    return Reply(
        lines=tuple(line if isinstance(line, Line) else Line(line) for line in lines),
        buttons=tuple(
            Button(choice.label, f"{ACTION_VERSION}:{token}:{place}", choice.meaning)
            for place, choice in enumerate(told)
        ),
        kind=kind,
        facts=dict(facts or {}),
        edits=edits,
        token=token,
        at=at,
    )
