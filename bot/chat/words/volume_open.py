"""What is said of an amount while it is open how much water a tank holds."""

from __future__ import annotations

from bot.chat.words.numbers import litres
from bot.chat.words.text import _


def which_volume(tank: str, used: float, told: float) -> list[str]:
    """That an amount is for the volume on record, and not for the one that was told."""
    line = _(
        "That is for {used}, the volume of {tank} on record. You told of {told}: with so much in"
        " it, give nothing of this before you have answered which one counts."
    )
    return [line.format(used=litres(used), tank=tank, told=litres(told))]


def perhaps_other(tank: str, used: float, said: str) -> list[str]:
    """That an amount is for the volume on record, where what was told may be another."""
    line = _(
        "That is for {used}, the volume of {tank} on record. I did not understand “{said}”: if it"
        " tells how much water is in it, give nothing of this before you have sent it again, for"
        " example: there are only {fewer} in it"
    )
    fewer = litres(round(used / 2.0))
    return [line.format(used=litres(used), tank=tank, said=said, fewer=fewer)]


def open_first(tank: str, used: float, told: float) -> list[str]:
    """Before a part of a plan is told again: which of two volumes counts."""
    line = _("First: does {tank} hold {told} of water? The plan is for {used}.")
    return [
        line.format(tank=tank, told=litres(told), used=litres(used)),
        _("Give nothing of it before you have answered."),
    ]


def unheard_first(tank: str, used: float, said: str) -> list[str]:
    """Likewise, where what was told may be another volume and was not understood."""
    line = _(
        "The plan is for {used}, the volume of {tank} on record. I did not understand “{said}”: if"
        " it tells how much water is in it, give nothing before you have sent it again, for"
        " example: there are only {fewer} in it"
    )
    fewer = litres(round(used / 2.0))
    return [line.format(used=litres(used), tank=tank, said=said, fewer=fewer)]


def ask_anew(was: float, tank: str, used: float, ask: str) -> list[str]:
    """A plan was reckoned for another volume than its tank holds by now; `ask` gives it anew."""
    told = _("That plan was for {was}, {tank} holds {used} by now: give nothing of it. Send: {ask}")
    return [told.format(was=litres(was), tank=tank, used=litres(used), ask=ask)]


def takes_room(used: float, *, planned: bool = True) -> list[str]:
    """What lies in a tank leaves less water in it than is on record. [L]"""
    told = _("Then less than {used} of water may be in it: gravel, stones and wood take room.")
    return [
        told.format(used=litres(used)),
        _("Give none of the plan yet: for less water it would be too much.")
        if planned
        else _("A dose is reckoned by the water that is in it: for less water it is less."),
        _("How many litres of water are in it? Send for example: {fewer}").format(
            fewer=litres(round(used * 0.85))
        ),
    ]


def stays(used: float) -> str:
    """A button: what was told is no other volume. [L]"""
    return _("it is {used}").format(used=litres(used))


def so_it_stays(tank: str, used: float) -> list[str]:
    """The volume on record counts on."""
    return [_("All right: {tank} holds {used}.").format(tank=tank, used=litres(used))]
