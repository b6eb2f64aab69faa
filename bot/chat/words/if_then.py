"""Words for a keeper's own plan: what will be done once a value comes so far."""

from __future__ import annotations

from bot.chat.words.text import _


def own_plan() -> list[str]:
    """A plan is no reading and no dose."""
    return [_("Fine, as a plan: nothing is stored. Once it is measured, send the value.")]
