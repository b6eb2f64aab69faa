"""Animals on record of which the table knows nothing, so that no water is sure to suit them."""

from __future__ import annotations

from core.advice.livestock import kept_in, lookup, plain_name
from core.advice.stock import names_no_kind
from core.tank import Tank


def strangers(tank: Tank) -> tuple[str, ...]:
    """The names on a tank's record that are no kind of the table, nor may be several of it.

    Examples
    --------
    >>> from core.tank import Stock
    >>> strangers(Tank(name="", stock=(Stock("axolotl", 2), Stock("guppies", 3), Stock("fish", 1))))
    ('axolotl',)
    """
    return tuple(
        stock.species
        for stock in kept_in(tank).unknown
        if stock.count > 0
        and not lookup(stock.species).candidates
        and not names_no_kind(stock.species)
    )


def named(text: str, tank: Tank) -> str | None:
    """The first of them that a text names, in the singular or with an s; None where it names none.

    Examples
    --------
    >>> from core.tank import Stock
    >>> named("is it dangerous for the axolotls", Tank(name="", stock=(Stock("axolotl", 2),)))
    'axolotl'
    """
    said = f" {_alike(text)} "
    return next((each for each in strangers(tank) if f" {_alike(each)} " in said), None)


def _alike(text: str) -> str:
    return " ".join(word.removesuffix("s") for word in plain_name(text).split())
