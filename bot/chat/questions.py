"""Questions that need no plan: help, what is due, conversions of units."""

from __future__ import annotations

from bot.chat import reminders, settings
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import questions as words
from core.errors import CoreError
from core.message.model import Command, Parsed, Question
from core.units import convert as convert_units
from core.units import from_canonical, to_canonical

HARDNESS_UNITS = ("°dH", "ppm", "meq/L", "mmol/L", "°fH", "°e", "gpg")
USUAL = {
    "kh": HARDNESS_UNITS,
    "gh": HARDNESS_UNITS,
    "temperature": ("°C", "°F"),
    "salinity": ("g/kg", "PSU", "SG"),
    "conductivity": ("µS/cm", "mS/cm"),
}


async def help_(turn: Turn, _question: Question, parsed: Parsed) -> list[Reply]:
    """A spoken call for help."""
    return await settings.help_(turn, Command("help"), parsed)


async def when(turn: Turn, _question: Question, parsed: Parsed) -> list[Reply]:
    """``when is … due``: the list of what is due."""
    return await reminders.command(turn, Command("remind"), parsed)


async def convert(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    """``convert 8 dkh to ppm``; without a wanted unit, all the usual ones."""
    if question.value is None:
        return [await turn.reply(words.what_to_convert())]
    try:
        answers = _converted(question, question.value)
    except CoreError:
        return [await turn.reply(words.cannot_convert())]
    told = words.converted(question.value, question.unit, answers)
    facts = {
        "value": question.value,
        "unit": question.unit,
        "converted": [{"value": number, "unit": unit} for number, unit in answers],
    }
    return [await turn.reply([told], facts=facts)]


def _converted(question: Question, value: float) -> list[tuple[float, str]]:
    unit, wanted = question.unit, question.to_unit
    if question.analyte is None:
        if unit is None or wanted is None:
            raise CoreError
        return [(convert_units(value, unit, wanted), wanted)]
    analyte = question.analyte
    canonical = to_canonical(analyte, value, unit, question.basis)
    units = (wanted,) if wanted else USUAL.get(analyte, ())
    if not units:
        raise CoreError
    return [(from_canonical(analyte, canonical, each), each) for each in units if each != unit]
