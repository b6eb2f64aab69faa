"""``convert 8 dkh to ppm``, ``25 french to german degrees``, ``1 tsp baking soda grams``."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import replace
from typing import Final

from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.turn import Turn
from bot.chat.words import plan_talk as plan_words
from bot.chat.words import questions as words
from core.advice.spoons import spoon_grams
from core.analytes import ANALYTES
from core.errors import CoreError
from core.message import parse
from core.message.amounts import SPOONS
from core.message.model import Parsed, Question, Value
from core.message.unit_asked import unit_asked
from core.units import convert as convert_units
from core.units import from_canonical, to_canonical

HARDNESS_UNITS = ("°dH", "ppm", "meq/L", "mmol/L", "°fH", "°e", "gpg")
CONVERTED: Final = "converted"
"""Of an offer's context: what was told in another unit."""
USUAL = {
    "kh": HARDNESS_UNITS,
    "gh": HARDNESS_UNITS,
    "temperature": ("°C", "°F"),
    "salinity": ("g/kg", "PSU", "SG"),
    "conductivity": ("µS/cm", "mS/cm"),
}


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer a number that is asked for in another unit, however it is said; None where none is."""
    if not turn.incoming.addressed or parsed.command is not None:
        return None
    if parsed.question is not None and parsed.question.kind == "convert" and parsed.question.unit:
        return None  # read as such already
    question = unit_asked(turn.incoming.text)
    return None if question is None else await convert(turn, question, parsed)


async def convert(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    """``convert 8 dkh to ppm``; without a wanted unit, all the usual ones."""
    if question.substance is not None and question.grams is not None:
        return [await _no_spoons(turn, question.substance, question.grams)]
    if question.substance is not None and {question.unit, question.to_unit} & set(SPOONS):
        return [await _spoons(turn, question.substance, question)]
    if question.value is None:
        told_before = None if question.substance else await _told_before(turn, question)
        return told_before or [await turn.reply(words.what_to_convert())]
    if (change := await _litres_to(turn, question, question.value)) is not None:
        return change
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
    held = {
        CONVERTED: {"analyte": question.analyte, "value": question.value, "unit": question.unit}
    }
    return [await turn.reply([told], facts=facts, context=held, expects="followup")]


async def _told_before(turn: Turn, question: Question) -> list[Reply] | None:
    """`whats that in ppm`: what was told, or converted, in the answer before; None where none was.

    Of several values each that can be told in the unit.
    """
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or turn.now - latest[0].made_at > patience:
        return None
    (offer,) = latest
    told: list[Question] = []
    if (held := offer.context.get(CONVERTED)) is not None:
        told = [replace(question, **held)]
    elif offer.entry_id is not None:
        entry = await turn.uow.log.current(turn.chat.id, offer.entry_id)
        values = [each.what for each in entry.readings] if entry is not None else []
        told = [
            _of_value(question, value)
            for value in values
            if value.analyte in USUAL and question.analyte in {None, value.analyte}
        ]
    found: list[Reply] = []
    for each in told:
        own = each.unit or (ANALYTES[each.analyte].unit if each.analyte in ANALYTES else None)
        same = each.to_unit in {"°", own}  # whose degrees is not told: all that are usual
        asked = replace(each, to_unit=None) if same else each
        with suppress(CoreError):
            if asked.value is not None and _converted(asked, asked.value):
                found += await convert(turn, asked, Parsed("question"))
    return found or None


def _of_value(question: Question, value: Value) -> Question:
    """A question for another unit, of a value as it was told; drops as the degrees they are."""
    drops = value.unit == "drops"
    number = value.canonical if drops else value.value
    unit = value.canonical_unit if drops else value.unit or value.canonical_unit
    number = number if isinstance(number, float | int) else None
    return replace(question, analyte=value.analyte, value=number, unit=unit, basis=value.basis)


async def _litres_to(turn: Turn, question: Question, value: float) -> list[Reply] | None:
    """`how many litres to get to 20`: a change of what was measured last; None for a conversion."""
    if question.to_unit != "L" or question.unit is not None or turn.route is None:
        return None
    newest = await turn.uow.log.newest(turn.chat.id, 1)
    if not newest or len(newest[0].readings) != 1:
        return None
    name = newest[0].readings[0].what.analyte.replace("_", " ")
    text = f"how many litres should i change to get {name} to {value:.10g}"
    parsed = parse(text, turn.context())
    if parsed.question is None or parsed.question.kind != "change":
        return None
    turn.incoming = replace(turn.incoming, text=text)
    return await turn.route(turn, parsed)


async def _spoons(turn: Turn, substance: str, question: Question) -> Reply:
    """Spoons in grams, as far as that can be told at all."""
    spoons = question.spoons or SPOONS.get(question.to_unit or "", 1.0)
    weighs = spoon_grams(substance, spoons)
    if weighs is None:
        return await turn.reply(words.spoon_unknown(substance))
    facts = {"substance": substance, "spoons": spoons, "grams": weighs[0], "span": weighs[1:]}
    return await turn.reply(words.spoons(substance, spoons, weighs), facts=facts)


async def _no_spoons(turn: Turn, substance: str, grams: float) -> Reply:
    """Why grams are not told in spoons."""
    weighs = spoon_grams(substance, 1.0)
    facts: dict[str, object] = {"substance": substance, "grams": grams}
    if weighs is not None:
        facts["spoon_grams"] = list(weighs[1:])
    lines = [plan_words.not_by_spoon(substance, weighs), *words.weigh_it()]
    return await turn.reply(lines, facts=facts)


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
