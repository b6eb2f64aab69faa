"""What is asked where a wish does not tell to which value, or of what."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import names
from bot.chat.words.doses import UNITS
from bot.chat.words.numbers import plain
from bot.chat.words.text import _
from core.message.model import Question


def of_soda() -> str:
    """A buffer of no contents was asked for: what is worked out is baking soda."""
    return _("I work it out with baking soda; a bought buffer goes by its label.")


def incomplete() -> list[str]:
    """The wish is missing."""
    return [_("How much of what? Send for example: dose kh 6, dose gh 8, or: kh +2")]


def wishes_of(question: Question, analytes: Sequence[str]) -> list[str]:
    """A wish that names nothing, as it may have been meant of each analyte: to be sent so."""
    if question.target is None:
        by = plain(question.delta or 0.0, 2)
        told = _("dose {analyte} +{number}")
        return [told.format(analyte=name, number=by) for name in analytes]
    to = plain(question.target, 2)
    told = (
        _("get {analyte} under {number}") if question.bound == "<" else _("dose {analyte} {number}")
    )
    return [told.format(analyte=name, number=to) for name in analytes]


def of_what(question: Question) -> list[str]:
    """A wish that names nothing."""
    wish = (wishes_of(question, ["nitrate" if question.bound == "<" else "kh"]))[0]
    told = _("{number} of what? Send for example: {wish}")
    number = question.target if question.target is not None else question.delta
    return [told.format(number=plain(number or 0.0, 2), wish=wish)]


def low_enough(kh: float, wish: str) -> str:
    """Which KH is enough where it is low and nobody said how high it shall be. [°dH]"""
    told = _("KH {kh} is low: {wish} is enough for most fish. Press it, or send another value.")
    return told.format(kh=plain(kh, 1), wish=wish)


def asks_for_none(kh: float) -> str:
    """That a KH which is not low needs no dose. [°dH]"""
    return _("KH {kh} needs none: leave it, unless your animals want more.").format(kh=plain(kh, 1))


def which_value(analyte: str, step: float) -> list[str]:
    """The wished value is missing; how fast it may rise is known already. [canonical unit]"""
    name = names.label(analyte)
    told = _("{name} may rise by {step} {unit} a day at most. To which value? Send: dose {wish}")
    wish = _("{name} and the value").format(name=name)
    unit = UNITS.get(analyte, "mg/L")
    return [told.format(name=names.capital(name), step=plain(step, 1), unit=unit, wish=wish)]
