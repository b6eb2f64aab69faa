"""The step of first aid that changes water: as much as is safe, and of which water."""

from __future__ import annotations

from typing import Final

from bot.chat.words import names
from bot.chat.words.numbers import at_most, plain
from bot.chat.words.text import _
from core.advice.emergencies import Help

PURE: Final = 0.95
"""Share of pure water from which the new water is called pure."""


UNSEEN: Final = frozenset({"bleach", "contaminated", "sulfide"})
"""Poisons that no kit shows and that only new water thins."""


def change(help_: Help) -> str:
    """How much to change with what; of unknown water only what is like the tank's own.

    After more than half of it within a day none, before a test: cleaners and soap apart, which no
    kit shows.
    """
    made = help_.changed
    if made is not None and made.is_enough and help_.danger not in UNSEEN:
        return _("{percent} % was changed within a day: no more before a new test.").format(
            percent=plain(100.0 * (made.share or 0.0), 0)
        )
    share = help_.share
    if share is None:
        return _matched(help_)
    if share.most <= 0.0:
        return _not_this(help_, share.source)
    most = at_most(share.most)
    percent, litres = plain(100.0 * most, 0 if most >= 0.1 else 1), _litres(help_, most)
    if share.ro_share >= PURE:
        told = _(
            "Change {amount} with RO water, without KH like the tank, as warm as the tank; again"
            " after some hours."
        )
    elif share.ro_share > 0.0:
        told = _(
            "Change {amount} with {source} cut by {ro} % RO, dechlorinated, as warm as the"
            " tank; again after some hours."
        )
    elif help_.poisoned:
        told = _(
            "Change {amount} with {source}, dechlorinated, as warm as the tank, not more at"
            " once; again after some hours."
        )
    else:
        told = _(
            "Change at most {amount} with {source}, dechlorinated, as warm as the tank, once a day."
        )
    return told.format(
        amount=_("{percent} % ({litres} L)").format(percent=percent, litres=litres)
        if litres
        else _("{percent} %").format(percent=percent),
        source=names.water(share.source),
        ro=plain(100.0 * share.ro_share, 0),
    )


def first_litres(least: float, most: float) -> str:
    """How much a tenth is, and a quarter. [L]"""
    digits = 0 if most >= 10.0 else 1
    told = _("That is {least} to {most} L at a time.")
    return told.format(least=plain(least, digits), most=plain(most, digits))


def _matched(help_: Help) -> str:
    if help_.salt:
        return _(
            "Change a tenth to a quarter with dechlorinated water of the tank's own salinity,"
            " pH and KH, as warm as the tank."
        )
    if help_.poisoned:
        return _(
            "Change a tenth to a quarter with dechlorinated water of the tank's own pH and KH,"
            " as warm as the tank; again after some hours."
        )
    return _(
        "Change a tenth to a quarter with dechlorinated water of the tank's own pH and KH, as"
        " warm as the tank."
    )


def _not_this(help_: Help, source: str) -> str:
    if help_.salt:
        return _(
            "No change with {source} as it is, it would harm: only a tenth, with dechlorinated"
            " water of the tank's own salinity, pH and KH."
        ).format(source=names.water(source))
    return _(
        "No change with {source} as it is, it would harm: only a tenth, with dechlorinated"
        " water of the tank's own pH and KH (cut with RO or rain)."
    ).format(source=names.water(source))


def _litres(help_: Help, share: float) -> str | None:
    if help_.volume_l is None:
        return None
    litres = share * help_.volume_l
    return plain(litres, 0 if litres >= 10.0 else 1)
