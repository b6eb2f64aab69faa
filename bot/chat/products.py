"""A product by its label: what one day's step takes for the tank at hand; never a reading."""

from __future__ import annotations

from typing import Any

from bot.chat import dose_reply
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import salts as words
from core.advice import limits
from core.advice.dosing import Wish, plan_kh
from core.advice.plan import Refusal
from core.advice.products import Label, read_label
from core.message.model import Command, Parsed

DAILY = {"kh": limits.KH_STEP, "gh": limits.GH_STEP}


def is_label(turn: Turn, parsed: Parsed) -> bool:
    """Whether a message tells the words of a label; its "kh 1" is no reading."""
    return parsed.command is None and read_label(turn.incoming.text) is not None


async def command(turn: Turn, told: Command, parsed: Parsed) -> list[Reply]:
    """A label in any of the parser's languages; only what raises hardness can be reckoned."""
    if read_label(told.arguments) is None:
        return [await turn.reply(words.label_of_another_thing())]
    return await answer(turn, parsed, told.arguments)


async def answer(turn: Turn, parsed: Parsed, text: str | None = None) -> list[Reply]:
    """Say what the label comes to in the tank at hand, a day's step at most."""
    label = read_label(turn.incoming.text if text is None else text)
    if not isinstance(label, Label):
        return [await dose_reply.refuse(turn, Refusal("label_implausible"), None)]
    stored = turn.tank_named(parsed.tank) if parsed.tank else turn.current_tank
    volume = None if stored is None else stored.tank.volume_l
    if stored is None or volume is None:
        return [await turn.reply(words.label_without_tank(label))]
    rise, below, keep = DAILY[label.analyte], None, False
    if label.analyte == "kh":
        # As so much bicarbonate: the same gates, and the same small part where KH is too low.
        state = await state_of(turn, stored, turn.now)
        plan = plan_kh(Wish(delta=rise), state, known_tank=True)
        if isinstance(plan, Refusal):
            return [await dose_reply.refuse(turn, plan, stored.name)]
        rise = plan.goals[0].change / plan.count
        if plan.gate is not None:
            below, keep = plan.gate.only_below, plan.gate.keep_co2
    facts: dict[str, Any] = {
        "tank": stored.name,
        "volume_l": volume,
        "analyte": label.analyte,
        "raises": rise,
        "grams" if label.unit == "g" else "millilitres": label.needed(rise, volume),
    }
    if below is not None:
        facts["only_if_ammonia_below"] = below
    told = words.label(label, stored.name, volume, rise, below, keep_co2=keep)
    return [await turn.reply(told, facts=facts)]
