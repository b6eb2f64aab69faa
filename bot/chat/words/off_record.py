"""What is said of a thing that went in and is on no record: what was it, before any amount."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.text import _


def first_told(said: str) -> list[str]:
    """What went in is asked before anything else goes in."""
    told = _("“{said}” is not on record, so no amount yet: what went in, and how much of it?")
    return [told.format(said=said), *_how()]


def which(said: str, amounts: Sequence[str]) -> list[str]:
    """What went in is asked, with what it may have been; `amounts` are on its buttons."""
    if not amounts:
        return first_told(said)
    told = _("Did {amount} go in? “{said}” is not on record yet, so no amount until you say.")
    first = told.format(amount=_(" or ").join(amounts), said=said)
    return [first, *_how()]


def what_one_holds(said: str) -> list[str]:
    """So many caps or scoops went in: what one of them holds is asked."""
    told = _(
        "“{said}” is not on record, so no amount yet: how many grams was it, or what does one hold?"
    )
    (_example, until) = _how()
    return [
        told.format(said=said),
        _("Send for example: one holds 5 ml. If nothing went in, send: nothing went in"),
        until,
    ]


def _how() -> list[str]:
    return [
        _("Send for example: dosed 5 g baking soda. If nothing went in, send: nothing went in"),
        _(
            "Until then put in nothing more, no acid against it; if they gasp, air at once. A test"
            " of KH and pH a day after counts it in."
        ),
    ]


def so_it_stands() -> list[str]:
    """Nothing went in after all."""
    return [_("All right: nothing of it went in, and nothing is stored.")]


def before_verdict(said: str) -> str:
    """Before what the readings mean: it is not known what went in."""
    told = _("First: “{said}” is not on record: what went in, how much? No more until then.")
    return told.format(said=said)


def spoons(count: str, substance: str) -> str:
    """So many level teaspoons of a thing. [teaspoons]"""
    return _("{count} tsp {substance}").format(count=count, substance=substance)
