"""What is told to be in behind a plan and may be no part of it: then nothing is logged.

`its 20 g in 500 ml` tells a solution's strength; `used epsom instead` another salt; and `its in`
behind `or a whole cup?`, which was not understood, may be of the cup.
"""

from __future__ import annotations

from bot.chat import daily_talk
from bot.chat.given_plan import Given
from bot.chat.model import Reply
from bot.chat.plan_figures import ROUNDING
from bot.chat.turn import Turn
from bot.chat.words import plan_talk as words
from core.message.plan_said import Amounts


async def strength(turn: Turn, plan: Given, amounts: Amounts) -> list[Reply] | None:
    """So many grams in so much water that is not the tank's: a solution, and no deed.

    The part is told in its millilitres, where it may be one; else what went in is asked.
    None where no water is told, or where it is the tank's own.
    """
    litres = amounts.litres
    if litres is None and amounts.millilitres is not None:
        litres = amounts.millilitres / 1000.0
    if amounts.grams is None or not litres:
        return None
    stored = turn.tank_by_id(plan.tank_id)
    volume = None if stored is None else stored.tank.volume_l
    if volume is not None and volume / ROUNDING <= litres <= volume * ROUNDING:
        return None
    told = await daily_talk.in_its_millilitres(turn, amounts.grams / litres)
    return told or [await turn.reply(words.how_much_of_what())]
