"""What a salt is for, where only its name is said: `can i use epsom salt`, `i only have gypsum`.

Right after a plan the plan is answered with it (`followups`); here is what it raises, and what not.
"""

from __future__ import annotations

from bot.chat import dose_reply
from bot.chat.model import Reply
from bot.chat.products import SPOKEN_OF
from bot.chat.turn import Turn
from bot.chat.words import cautions
from bot.chat.words import what_for as words
from core.advice.buffers import STRONG
from core.advice.dosing import refused_substance
from core.advice.plan import Refusal
from core.advice.salts import HIGHEST, IN_SEA_ONLY
from core.advice.scheduling import per_gram
from core.advice.state import State
from core.message import followups, raise_asked
from core.message.model import Parsed, Question
from core.substances import ACIDS, MEDIA
from core.tank import Tank
from core.water.substances import SUBSTANCES

PARTS = {"gh": ("calcium", "magnesium")}
"""What GH is of: a salt may bring one of them only."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """What a named salt raises; None where more is said, or where none is named."""
    if not turn.incoming.addressed or parsed.values or parsed.events or parsed.command is not None:
        return None
    if parsed.question is not None or turn.products:
        return None
    if turn.current_tank is not None and raise_asked.asked(turn.incoming.text) is not None:
        return None  # whether it may go in: the gate comes first
    said = followups.read(turn.incoming.text, turn.context())
    name = None if said is None else said.substance
    if name in MEDIA and turn.route is not None:
        asked = Question("effect", substance=name, text=turn.incoming.text)
        return await turn.route(turn, Parsed("question", question=asked))
    return None if name is None else await of(turn, name)


async def of(turn: Turn, name: str) -> list[Reply] | None:
    """What a salt raises; a refusal where it is none for a tank, None where it raises nothing."""
    if name in ACIDS:
        return [await dose_reply.refuse(turn, Refusal("acid", {"substance": name}), None)]
    if name in STRONG:
        stored = turn.current_tank
        tank = Tank(name="") if stored is None else stored.tank
        refused = refused_substance(name, State(tank, turn.local_now))
        if refused is not None:
            return [await dose_reply.refuse(turn, refused, None)]
    if name == "sodium chloride":
        lines, facts = cautions.caution("salt_in"), {"caution": "salt_in"}
        return [await turn.reply(lines, facts=facts)]
    raised = raises(name)
    if not raised:
        return None
    first = raised[0]
    missing = [part for part in PARTS.get(first, ()) if per_gram(name, f"{first}_{part}") <= 0.0]
    lines = words.raises(name, raised, missing[:1], kh="kh" in raised)
    shown = {"substance": name, "raises": raised}
    held = {SPOKEN_OF: name}
    return [await turn.reply(lines, facts=shown, context=held, expects="followup")]


def raises(name: str) -> list[str]:
    """The analytes that a salt raises and that can be planned, hardness first."""
    if name not in SUBSTANCES:
        return []
    goals = [analyte for analyte in HIGHEST if analyte not in IN_SEA_ONLY]
    return [analyte for analyte in goals if per_gram(name, analyte) > 0.0]
