"""A change between waters of which a KH is unknown: what to measure, and how much meanwhile."""

from __future__ import annotations

from typing import Any

from bot.chat import first_share
from bot.chat.change_asked import Asked
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import changes as words
from core.advice.blind_change import largest_unmeasured

MIXED = ("kh", "gh", "nitrate", "temperature")
"""What mixes by amounts alone."""


async def told(turn: Turn, asked: Asked, share: float) -> Reply:
    """What to measure, and the largest share until then; no larger one is named.

    In an emergency the share is that of first aid.
    """
    waters = {"tank": asked.tank, "source": asked.source}
    unknown = [of for of, water in waters.items() if water.last("kh") is None]
    first = words.unknown_kh(asked.stored.name, unknown)
    aid = first_share.line(asked.tank)
    if aid is not None:
        return await turn.reply([aid, first], facts={"tank": asked.stored.name})
    most = largest_unmeasured(asked.tank, asked.source)
    facts: dict[str, Any] = {"tank": asked.stored.name, "largest_safe_share": most}
    lines = [first, words.until_measured(most)]
    if share <= most:
        facts |= {"share": share, **_sums(asked, share)}
        if asked.stored.tank.volume_l is not None:
            facts["litres"] = share * asked.stored.tank.volume_l
        lines += [words.would_give(share, facts["at_once"])] if facts["at_once"] else []
    return await turn.reply(lines, facts=facts)


def _sums(asked: Asked, share: float) -> dict[str, dict[str, float]]:
    before, at_once = {}, {}
    for name in MIXED:
        now, new = asked.tank.last(name), asked.source.last(name)
        if now is not None:
            before[name] = now.value
            if new is not None:
                at_once[name] = now.value + (new.value - now.value) * share
    return {"before": before, "at_once": at_once}
