"""What is said of a plan whose gate for ammonia a later reading passed. [mg/L as N]"""

from __future__ import annotations

from bot.chat.words.numbers import plain
from bot.chat.words.text import _


def none_goes_in(ammonia: float, below: float, *, begun: bool) -> list[str]:
    """Beside a part or a reading: none of it, or of what is left of it, goes in."""
    told = (
        _("No further part of the plan: ammonia is {ammonia} mg/L as N, it holds under {below}.")
        if begun
        else _("No part of the plan now: ammonia is {ammonia} mg/L as N, it holds under {below}.")
    )
    return [told.format(ammonia=plain(ammonia, 2), below=plain(below, 2))]


def not_now(ammonia: float, below: float) -> list[str]:
    """It is asked whether a part may go in."""
    told = _("No, not now: ammonia is {ammonia} mg/L as N, the plan holds only under {below}.")
    return [
        told.format(ammonia=plain(ammonia, 2), below=plain(below, 2)),
        _("A higher pH makes ammonia more poisonous. Put nothing in, test ammonia again first."),
    ]
