"""Whether a keeper said that no animal at all lives in a tank."""

from __future__ import annotations

from typing import Final

from core.advice.state import State
from core.advice.stock import COMING

NOBODY: Final = "no animals"
"""The note that no animal at all lives in a tank, which was asked for and confirmed."""


def is_nobodys(state: State) -> bool:
    """Whether it was told so, and nobody came since: then ammonia feeds a filter, harms nobody."""
    if state.tank.stock:
        return False
    events = state.events or ()
    told = [e.at for e in events if e.what.kind == "note" and e.what.text == NOBODY]
    came = [e.at for e in events if e.what.kind in COMING]
    return bool(told) and (not came or max(came) < max(told))
