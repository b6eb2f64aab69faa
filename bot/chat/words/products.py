"""Bought products in words: kept, listed, dosed by what they do, learned from before and after."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta

from bot.chat.words import names
from bot.chat.words.doses import keep_co2 as keep
from bot.chat.words.doses import only_below, where
from bot.chat.words.numbers import age, grams, litres, plain
from bot.chat.words.text import N_, _
from core.advice.products import Label, Product

KEEP_IT, LEAVE_IT = N_("keep it as its effect"), N_("leave it")
IT_SAYS_SO = N_("its label says so")


def kept(product: Product, was: Product | None) -> str:
    """A label was kept under a name, in the place of another perhaps."""
    name = names.analyte(product.label.analyte)
    wish = "6" if product.label.analyte == "kh" else "8"
    if was is not None and was.label != product.label:
        return _(
            "“{product}” now: {effect} (it was: {was}). Ask: dose {analyte} {wish} with {product}"
        ).format(
            product=product.name,
            effect=effect(product),
            was=effect(was),
            analyte=names.said(product.label.analyte),
            wish=wish,
        )
    return _(
        "Kept as “{product}”. Ask: dose {analyte} {wish} with {product} · products lists what I"
        " know ({name})."
    ).format(product=product.name, analyte=names.said(product.label.analyte), wish=wish, name=name)


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


def listing(products: Sequence[Product]) -> list[str]:
    """All products that the chat knows."""
    if not products:
        return [
            _("No products yet. Send what a label says, with a name in front:"),
            _("my buffer: 5 g per 80 l raises kh 1"),
        ]
    return [
        _("{product}: {effect}").format(product=each.name, effect=effect(each)) for each in products
    ]


def effect(product: Product) -> str:
    """What a product does, and how that is known."""
    label = product.label
    name = names.analyte(label.analyte)
    told = {
        "amount": mass(label.amount, label.unit),
        "volume": litres(label.litres),
        "name": name,
        "low": plain(product.rise_low, 1),
        "high": plain(product.rise_high, 1),
    }
    if not product.learned:
        template = _("{amount} in {volume} raises {name} {rise} °dH by its label")
        return template.format(rise=plain(label.rise, 2), **told)
    template = _("{amount} in {volume} raises {name} about {rise} °dH ({low} to {high}, seen here)")
    return template.format(rise=plain(label.rise, 1), **told)


def forgotten(name: str) -> list[str]:
    """A product was forgotten."""
    return [_("Forgotten: {name}.").format(name=name)]


def unknown(said: str, known: Sequence[Product]) -> list[str]:
    """A product that the chat does not know: no number without what is in it or does."""
    lines = [
        _("No number for “{said}”: I do not know what is in it or what it does.").format(said=said)
    ]
    lines.append(_("Send what its label says, for example: my buffer: 5 g per 80 l raises kh 1"))
    if known:
        listed = ", ".join(product.name for product in known)
        lines.append(_("I know: {listed}.").format(listed=listed))
    return lines


def other_analyte(product: Product, analyte: str) -> list[str]:
    """A product that is known for something else."""
    return [
        _("No number: of {product} I know only what it does to {known}, not to {wanted}.").format(
            product=product.name,
            known=names.analyte(product.label.analyte),
            wanted=names.analyte(analyte),
        )
    ]


def dose(
    product: Product,
    tank: str | None,
    volume_l: float,
    start: float | None,
    change: float,
    parts: int,
    each: float,
    below: float | None,
    *,
    keep_co2: bool,
    old: timedelta | None,
) -> list[str]:
    """How much of a product, in which parts; what it holds besides is not known."""
    name = names.analyte(product.label.analyte)
    told = {
        "where": where(tank, volume_l),
        "way": _way(name, start, change),
        "count": parts,
        "product": product.name,
        "name": name,
        "age": "" if old is None else age(old),
    }
    conditions = _conditions(
        product.label.analyte, below if tank is not None else None, keep_co2=keep_co2
    )
    if old is not None:
        conditions.insert(0, _("Retest first: the {name} reading is {age}.").format(**told))
    head = (
        _("{where}: {way} in one part, with {product}.")
        if parts == 1
        else _("{where}: {way} in {count} parts, one a day, with {product}.")
    )
    return [
        " ".join([*conditions, head.format(**told)]),
        _first_time(product.label.analyte),
        _each(product, parts, each),
        _("Retest {name}, pH and ammonia 24 h after each part, before the next.").format(name=name),
        _("What else is in it I do not know. An estimate, not veterinary advice."),
    ]


def _first_time(analyte: str) -> str:
    """How to begin with a product whose contents are not known."""
    if analyte == "kh":
        return _("Only half the first time, then pH after an hour.")
    return _("Only half the first time, then {name} after a day.").format(
        name=names.analyte(analyte)
    )


def _way(name: str, start: float | None, change: float) -> str:
    if start is None:
        return _("{name} +{change} °dH").format(name=name, change=plain(change, 2))
    told = _("{name} {start} → {target} °dH")
    return told.format(name=name, start=plain(start, 1), target=plain(start + change, 1))


def _conditions(analyte: str, below: float | None, *, keep_co2: bool) -> list[str]:
    """What must be so before the dose: a sentence each."""
    only = [] if below is None else [only_below(below)]
    if analyte == "kh":
        only.append(_("Only if its label names no carbonate and no hydroxide: pH would jump."))
    return [*only, keep()] if keep_co2 else only


def _each(product: Product, parts: int, each: float) -> str:
    """How much a part is, and by which knowledge of the product."""
    if parts == 1:
        template = (
            _("{each} of {product}, by the strongest effect that was seen here.")
            if product.learned
            else _("{each} of {product}, by its label.")
        )
    else:
        template = (
            _(
                "{each} of {product} a part, {count} parts 24 h apart ({whole} in all), by the"
                " strongest effect that was seen here."
            )
            if product.learned
            else _(
                "{each} of {product} a part, {count} parts 24 h apart ({whole} in all), by its"
                " label."
            )
        )
    unit = product.label.unit
    return template.format(
        each=mass(each, unit), product=product.name, count=parts, whole=mass(each * parts, unit)
    )


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


def label(
    found: Label,
    tank: str,
    volume_l: float,
    rise: float,
    below: float | None,
    *,
    keep_co2: bool,
) -> list[str]:
    """What a label comes to in a tank, a day's step at most."""
    name = names.analyte(found.analyte)
    head = _("{where}: by that label at most {name} +{rise} °dH a day.").format(
        where=where(tank, volume_l), name=name, rise=plain(rise, 2)
    )
    shown = mass(found.needed(rise, volume_l), found.unit)
    return [
        " ".join([*_conditions(found.analyte, below, keep_co2=keep_co2), head]),
        _first_time(found.analyte),
        _("{shown} of it for +{rise} °dH.").format(shown=shown, rise=plain(rise, 2)),
        _("Not stored as a reading. An estimate, not veterinary advice."),
    ]


def label_of_another_thing() -> list[str]:
    """A label that raises neither GH nor KH, or counts in a measure that is none."""
    return [
        _("Not stored as a reading: that is a label."),
        _("I reckon only with labels in grams or millilitres that raise KH or GH, one of the two."),
    ]


def label_without_tank(found: Label) -> list[str]:
    """The label alone, without a tank to reckon for."""
    name = names.analyte(found.analyte)
    return [
        _("Not stored as a reading: that is a label ({name}). For which tank?").format(name=name),
        _("Make one first, for example: /tank new Fern 90 l fresh"),
    ]
