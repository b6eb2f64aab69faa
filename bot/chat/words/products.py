"""Bought products in words: kept, listed, dosed by what they do, learned from before and after."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta

from bot.chat.words.doses import KEEP_CO2, LABELS
from bot.chat.words.numbers import age, grams, litres, plain
from core.advice.products import Label, Product

KEEP_IT, LEAVE_IT = "keep it as its effect", "leave it"


def kept(product: Product) -> str:
    """A label was kept under a name."""
    name = LABELS.get(product.label.analyte, product.label.analyte)
    wish = "6" if product.label.analyte == "kh" else "8"
    return (
        f"Kept as “{product.name}”. Ask: dose {product.label.analyte} {wish} with {product.name}"
        f" · products lists what I know ({name})."
    )


def how_to_keep() -> str:
    """A label without a name."""
    return "To keep it, send it with a name in front: my buffer: 5 g per 80 l raises kh 1"


def listing(products: Sequence[Product]) -> list[str]:
    """All products that the chat knows."""
    if not products:
        return [
            "No products yet. Send what a label says, with a name in front:",
            "my buffer: 5 g per 80 l raises kh 1",
        ]
    return [f"{product.name}: {effect(product)}" for product in products]


def effect(product: Product) -> str:
    """What a product does, and how that is known."""
    label = product.label
    name = LABELS.get(label.analyte, label.analyte)
    told = f"{mass(label.amount, label.unit)} in {litres(label.litres)} raises {name}"
    if not product.learned:
        return f"{told} {plain(label.rise, 2)} °dH by its label"
    return (
        f"{told} about {plain(label.rise, 1)} °dH ({plain(product.rise_low, 1)} to"
        f" {plain(product.rise_high, 1)}, seen here)"
    )


def forgotten(name: str) -> list[str]:
    """A product was forgotten."""
    return [f"Forgotten: {name}."]


def unknown(said: str, known: Sequence[Product]) -> list[str]:
    """A product that the chat does not know: no number without what is in it or does."""
    lines = [f"No number for “{said}”: I do not know what is in it or what it does."]
    lines.append("Send what its label says, for example: my buffer: 5 g per 80 l raises kh 1")
    if known:
        lines.append(f"I know: {', '.join(product.name for product in known)}.")
    return lines


def other_analyte(product: Product, analyte: str) -> list[str]:
    """A product that is known for something else."""
    wanted = LABELS.get(analyte, analyte)
    return [
        f"No number: of {product.name} I know only what it does to"
        f" {LABELS.get(product.label.analyte, product.label.analyte)}, not to {wanted}."
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
    only = ""
    if below is not None and tank is not None:
        only = f"Only if total ammonia is under {plain(below, 2)} mg/L (measure it). "
    if keep_co2:
        only += KEEP_CO2
    name = LABELS.get(product.label.analyte, product.label.analyte)
    where = f"{tank} ({litres(volume_l)})" if tank else litres(volume_l)
    way = (
        f"{name} +{plain(change, 2)} °dH"
        if start is None
        else f"{name} {plain(start, 1)} → {plain(start + change, 1)} °dH"
    )
    pace = "in one part" if parts == 1 else f"in {parts} parts, one a day"
    head = f"{only}{where}: {way} {pace}, with {product.name}."
    if old is not None:
        head = f"Retest first: the {name} reading is {age(old)}. {head}"
    whole = f", {parts} parts 24 h apart ({mass(each * parts, product.label.unit)} in all)"
    by = "its label" if not product.learned else "the strongest effect that was seen here"
    return [
        head,
        "Not with animals if it holds carbonate or hydroxide (look on the label): pH would jump."
        " Half of the first part, then pH after an hour.",
        f"{mass(each, product.label.unit)} of {product.name}{' a part' if parts > 1 else ''}"
        f"{whole if parts > 1 else ''}, by {by}.",
        f"Retest {name}, pH and ammonia 24 h after each part, before the next.",
        "What else is in it I do not know. An estimate, not veterinary advice.",
    ]


def learned(product: Product, before: float, after: float) -> str:
    """What a dose of a product seems to have done, offered to be kept."""
    name = LABELS.get(product.label.analyte, product.label.analyte)
    return (
        f"{name} went from {plain(before, 1)} to {plain(after, 1)} °dH after"
        f" {mass(product.label.amount, product.label.unit)} of {product.name}. Shall I keep that as"
        " its effect?"
    )


def kept_as_seen(product: Product) -> list[str]:
    """A learned effect was kept."""
    return [f"Kept. {product.name}: {effect(product)}."]


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
    name = LABELS.get(found.analyte, found.analyte)
    needed = found.needed(rise, volume_l)
    shown = grams(needed) if found.unit == "g" else f"{plain(needed, 1)} ml"
    only = (
        f"Only if total ammonia is under {plain(below, 2)} mg/L (measure it). "
        if below is not None
        else ""
    )
    if keep_co2:
        only += KEEP_CO2
    return [
        f"{only}{tank} ({litres(volume_l)}): by that label at most {name} +{plain(rise, 2)} °dH a"
        " day.",
        "Not with animals if it holds carbonate or hydroxide (look on the label): pH would jump."
        " Half the first time, then pH after an hour.",
        f"{shown} of it for +{plain(rise, 2)} °dH.",
        "Not stored as a reading. An estimate, not veterinary advice.",
    ]


def label_of_another_thing() -> list[str]:
    """A label that raises neither GH nor KH, or counts in a measure that is none."""
    return [
        "Not stored as a reading: that is a label.",
        "I reckon with labels in grams or millilitres that raise KH or GH.",
    ]


def label_without_tank(found: Label) -> list[str]:
    """The label alone, without a tank to reckon for."""
    name = LABELS.get(found.analyte, found.analyte)
    return [
        f"Not stored as a reading: that is a label ({name}). For which tank?",
        "Make one first, for example: /tank new Fern 90 l fresh",
    ]
