"""Bought products in words: kept, listed, dosed by what they do, learned from before and after."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from bot.chat.words import names
from bot.chat.words.levels import unit
from bot.chat.words.numbers import grams, litres, plain
from bot.chat.words.text import N_, _
from core.advice.products import CHLORINE, Label, Product

KEEP_IT, LEAVE_IT = N_("keep it as its effect"), N_("leave it")
IT_SAYS_SO = N_("its label says so")


def kept(products: Sequence[Product], was: Product | None) -> str:
    """A label was kept under a name, in the place of another perhaps."""
    first = products[0]
    name = names.said(first.label.analyte)
    told = {"product": first.name, "analyte": name, "wish": _WISHES.get(first.label.analyte, "")}
    if was is not None and was.label != first.label:
        now = _("“{product}” now: {effect} (it was: {was}).").format(
            product=first.name, effect=effect(first), was=effect(was)
        )
    else:
        now = _("Kept as “{product}”: {effects}.").format(
            product=first.name, effects=effects(products)
        )
    if first.label.analyte in _WISHES:
        ask = _("Ask: dose {analyte} {wish} with {product} · products lists what I know.")
    else:
        ask = _("Ask: how much {product} for this tank · products lists what I know.")
    return f"{now} {ask.format(**told)}"


_WISHES: Final = {"kh": "6", "gh": "8"}
"""What is asked for in an example."""


def how_to_keep() -> str:
    """A label without a name."""
    return _("To keep it, send it with a name in front: my buffer: 5 g per 80 l raises kh 1")


def salt_is_known(salt: str, found: Label) -> list[str]:
    """The label of a salt that we know by its chemistry."""
    wish = "6" if found.analyte == "kh" else "8"
    return [
        _("No label needed for {salt}: I know what it does. Nothing is stored.").format(
            salt=names.said(salt)
        ),
        _("Ask: dose {analyte} {wish} with {salt}").format(
            analyte=names.said(found.analyte), wish=wish, salt=names.said(salt)
        ),
    ]


def about(meant: Sequence[Product]) -> list[str]:
    """What is known of one product, and what is not."""
    name = meant[0].name
    return [
        _("{product}: {effect}").format(product=name, effect=effects(meant)),
        _("Whether it is safe I cannot tell: what else is in it I do not know."),
        _("Ask: how much {product} for this tank").format(product=name),
    ]


def listing(products: Sequence[Product]) -> list[str]:
    """All products that the chat knows."""
    if not products:
        return [
            _("No products yet. Send what a label says, with a name in front:"),
            _("my buffer: 5 g per 80 l raises kh 1"),
        ]
    named = {
        product.name: [each for each in products if each.name == product.name]
        for product in products
    }
    return [
        _("{product}: {effect}").format(product=name, effect=effects(of))
        for name, of in named.items()
    ]


def effects(products: Sequence[Product]) -> str:
    """All that one product does; what one amount of it does by its label in one phrase."""
    first = products[0].label
    same = [
        each
        for each in products
        if not each.learned
        and (each.label.amount, each.label.litres) == (first.amount, first.litres)
    ]
    if len(same) < len(products) or first.analyte == CHLORINE:
        return ", ".join(map(effect, products))
    moved = [
        _("{name} {rise}{unit}").format(
            name=names.analyte(each.label.analyte),
            rise=plain(each.label.rise, 2),
            unit=unit(each.label.analyte),
        )
        for each in same
    ]
    return _("{amount} in {volume} raises {moved} by its label").format(
        amount=mass(first.amount, first.unit), volume=litres(first.litres), moved=", ".join(moved)
    )


def effect(product: Product) -> str:
    """What a product does, and how that is known."""
    label = product.label
    told = {
        "amount": mass(label.amount, label.unit),
        "volume": litres(label.litres),
        "name": names.analyte(label.analyte),
        "unit": unit(label.analyte),
        "low": plain(product.rise_low, 1),
        "high": plain(product.rise_high, 1),
    }
    if label.analyte == CHLORINE:
        return _("{amount} in {volume} takes chlorine out by its label").format(**told)
    if not product.learned:
        return effects([product])
    template = _(
        "{amount} in {volume} raises {name} about {rise}{unit} ({low} to {high}, seen here)"
    )
    return template.format(rise=plain(label.rise, 1), **told)


def forgotten(name: str) -> list[str]:
    """A product was forgotten."""
    return [_("Forgotten: {name}.").format(name=name)]


def taken_back(name: str, stood: Sequence[Product]) -> list[str]:
    """A label that was just kept was taken back."""
    if stood:
        told = _("Taken back. “{product}” again: {effect}.")
        return [told.format(product=name, effect=effects(stood))]
    return [_("Taken back: “{product}” is no longer kept.").format(product=name)]


def unknown(said: str, known: Sequence[str]) -> list[str]:
    """A product that the chat does not know: no number without what is in it or does."""
    lines = [
        _("No number for “{said}”: I do not know what is in it or what it does.").format(said=said)
    ]
    lines.append(_("Send what its label says, for example: my buffer: 5 g per 80 l raises kh 1"))
    if known:
        lines.append(_("I know: {listed}.").format(listed=", ".join(known)))
    return lines


def other_analyte(meant: Sequence[Product], analyte: str) -> list[str]:
    """A product that is known for something else."""
    return [
        _("No number: of {product} I know only what it does to {known}, not to {wanted}.").format(
            product=meant[0].name,
            known=names.both([names.analyte(each.label.analyte) for each in meant]),
            wanted=names.analyte(analyte),
        )
    ]


def learned(product: Product, before: float, after: float) -> str:
    """What a dose of a product seems to have done, offered to be kept."""
    name = names.analyte(product.label.analyte)
    return _(
        "{name} went from {before} to {after} °dH after {amount} of {product}. Shall I keep that as"
        " its effect?"
    ).format(
        name=name,
        before=plain(before, 1),
        after=plain(after, 1),
        amount=mass(product.label.amount, product.label.unit),
        product=product.name,
    )


def kept_as_seen(product: Product) -> list[str]:
    """A learned effect was kept."""
    return [_("Kept. {product}: {effect}.").format(product=product.name, effect=effect(product))]


def mass(amount: float, unit: str) -> str:
    """An amount in the label's unit."""
    return grams(amount) if unit == "g" else f"{plain(amount, 1)} ml"


def label_of_another_thing() -> list[str]:
    """A label of what cannot be reckoned with, or that tells no effect."""
    return [
        _("Not stored as a reading: that is a label, and I do not know what it does."),
        _(
            "I reckon with labels in grams or millilitres that raise KH, GH, calcium, magnesium,"
            " nitrate, phosphate, potassium or iron, or take chlorine out."
        ),
        _("Send for example: my food: 5 ml per 50 l raises nitrate 2"),
    ]


def offer_name(name: str) -> str:
    """The button that keeps a label under what stands before it."""
    return _("keep it as “{name}”").format(name=name)


def not_stored() -> str:
    """A label that was given without a name."""
    return _("Not stored as a reading: that is a label without a name.")


def no_strength(name: str) -> list[str]:
    """A new product of which nothing is told."""
    return [
        _(
            "No number for {name} yet: I do not know what so much of it does. Nothing is stored."
        ).format(name=name),
        _("Send what its label says, for example: {name}: 5 g per 80 l raises kh 1").format(
            name=name
        ),
    ]


def label_without_tank(found: Label) -> list[str]:
    """The label alone, without a tank to reckon for."""
    name = names.analyte(found.analyte)
    return [
        _("Not stored as a reading: that is a label ({name}). For which tank?").format(name=name),
        _("Make one first, for example: /tank new Fern 90 l fresh"),
    ]
