"""``is the water ok for shrimps`` where copper went in or was measured: no, before all else."""

from __future__ import annotations

import re
from datetime import timedelta
from typing import Final

from bot.chat import animals, coppered, given_parts, readings
from bot.chat.model import Reply
from bot.chat.standing import about
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import copper as words
from core.advice.cautions import touched
from core.advice.livestock import Found, kept_in, lookup, named_in
from core.message.copper_told import may_use as asked_to_use
from core.message.fold import fold
from core.message.model import Event, Parsed
from core.message.waters import mentioned

ASKED: Final = "copper_asked"
"""The tank that copper was asked to go into, in a reply's context."""

PATIENCE: Final = timedelta(hours=12)
"""How long ``did it`` is of it."""

AMONG: Final = 4
"""Replies among which it is sought: a line that nothing was kept of may stand between."""


async def may_use(turn: Turn, parsed: Parsed) -> Reply | None:
    """``can i use copper to kill hydra``: no where invertebrates live, else a vet's, no amount.

    None where a reading or a deed is told, or copper is not asked to go in.
    """
    text = turn.incoming.text
    if parsed.values or parsed.events or parsed.command is not None or not turn.incoming.addressed:
        return None
    if not asked_to_use(text):
        return None
    named = parsed.question.tank if parsed.question is not None else parsed.tank
    stored = turn.tank_named(named or "") or turn.current_tank
    said = _invertebrates_named(text)
    tank = None if stored is None else (await state_of(turn, stored, turn.now)).tank
    held = [] if tank is None else kept_in(tank).invertebrates
    is_reef = tank is not None and tank.setup == "reef"
    if held or said or is_reef:
        name = stored.name if stored is not None and held else None
        lines = words.not_used(held or said, name, is_reef=is_reef and not (held or said))
    else:
        lines = words.by_a_vet(known=bool(tank and tank.stock))
    facts = {"verdict": "no" if held or said or is_reef else "care"}
    if stored is None:
        return await turn.reply(lines, facts=facts)
    return await turn.reply(
        lines,
        facts={"tank": stored.name, **facts},
        context={ASKED: stored.name, "why": lines},
        expects="followup",
    )


async def did(turn: Turn) -> list[Reply] | None:
    """``did it`` right after it was asked for: copper is in; None where it was not spoken of."""
    asked = None
    for offer in await turn.uow.offers.latest(turn.chat.id, AMONG):
        if turn.now - offer.made_at > PATIENCE:
            return None
        if (asked := offer.context.get(ASKED)) is not None:
            break
        if not await given_parts.is_quiet(turn, offer, 0):
            return None  # what was spoken of since may be what was done
    if asked is None:
        return None
    put = Event("dose", substance="copper", tank=asked, text=turn.incoming.text)
    return await readings.keep(turn, Parsed(intent="event", events=(put,)))


async def for_them(turn: Turn, parsed: Parsed) -> Reply | None:
    """``is copper safe for shrimp``: what it does to invertebrates that are named.

    None where the copper of a tank's own test may be meant.
    """
    question = parsed.question
    if question is None or question.kind != "safe" or question.analyte != "copper":
        return None
    if question.premises or question.value is not None or not turn.incoming.addressed:
        return None
    said = _invertebrates_named(turn.incoming.text)
    stored = about(turn, question)
    state = None if stored is None else await state_of(turn, stored, turn.now)
    if touched(turn.incoming.text) == "copper_pipes":
        return None  # the tap's copper has its own caution
    if not said or (state is not None and state.last("copper") is not None):
        return None
    return await turn.reply(words.kills(said), facts={"verdict": "no"})


def _invertebrates_named(text: str) -> list[str]:
    """What a text calls kinds without a spine, a shared name too: shrimp, snails."""
    plain = fold(text)
    shared = ((word, lookup(word)) for word in re.findall(r"[^\W\d]{5,}", plain))
    named = [*named_in(plain), *(each for each in shared if each[1].shared)]
    found = {
        word: None
        for word, kinds in named
        if (rows := kinds.candidates if kinds.species is None else (kinds.species,))
        and all(row.is_invertebrate for row in rows)
    }
    return list(found)


async def answer(turn: Turn, parsed: Parsed) -> Reply | None:
    """Say that it is no water for invertebrates; None for any other animals, waters or questions.

    A group of kinds (`snails`) counts where every kind of it that may live there is one.
    """
    question = parsed.question
    if question is None or question.kind not in {"safe", "keep"} or not turn.incoming.addressed:
        return None
    if question.premises or question.substance or not question.species:
        return None
    stored = about(turn, question)
    if stored is None or question.analyte is not None or mentioned(turn.incoming.text):
        return None
    names = animals.meant(question, stored.tank)
    rows = [row for name in names if (row := lookup(name).species) is not None]
    if not any(row.is_invertebrate for row in rows):
        return None
    shared = not animals.named(question)
    harmed = rows if shared else [row for row in rows if row.is_invertebrate]
    state = await state_of(turn, stored, turn.now)
    said = question.species if shared else names[rows.index(harmed[0])]
    return await coppered.refused(turn, said, Found(None, tuple(harmed)), state, stored.name)
