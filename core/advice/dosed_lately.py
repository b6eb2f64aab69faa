"""What went in of late, of which animals that suffer since may suffer."""

from __future__ import annotations

from datetime import timedelta
from typing import Final

from core.advice.alarm_words import named
from core.advice.state import State
from core.message.model import Event

A_DAY: Final = timedelta(days=1)


def dosed_lately(state: State) -> Event | None:
    """Give the last dose of the day before; None where none is on record.

    A dechlorinator is none: it is what helps.
    """
    late = [
        each
        for each in state.events or ()
        if each.what.kind == "dose"
        and each.what.substance
        and state.now - A_DAY < each.at <= state.now
        and "dechlorinated" not in named(each.what.substance).get("deed", ())
    ]
    newest = max(late, key=lambda each: (each.at, each.order), default=None)
    return None if newest is None else newest.what
