"""Doses of bought products in words: to a wish, by their labels, and what an amount does."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from bot.chat.words import names
from bot.chat.words.doses import keep_co2, only_below, where
from bot.chat.words.levels import unit
from bot.chat.words.numbers import age, litres, plain, small
from bot.chat.words.products import mass
from bot.chat.words.text import _, ngettext
from core.advice.product_plans import ProductPlan
from core.advice.products import CHLORINE, HARDNESS, Product


def dose(plan: ProductPlan, tank: str | None) -> list[str]:
    """How much of a product, in which parts; what it holds besides is not known."""
    product = plan.product
    name = names.analyte(product.label.analyte)
    told = {
        "where": where(tank, plan.volume_l),
        "way": _way(plan),
        "count": plan.count,
        "product": product.name,
    }
    conditions = _conditions(plan, tank)
    if plan.reading_age is not None:
        retest = _("Retest first: the {name} reading is {age}.")
        conditions.insert(0, retest.format(name=name, age=age(plan.reading_age)))
    head = (
        _("{where}: {way} in one part, with {product}.")
        if plan.count == 1
        else _("{where}: {way} in {count} parts, one a day, with {product}.")
    )
    after = (
        _("Retest {name}, pH and ammonia 24 h after each part, before the next.")
        if product.label.analyte in HARDNESS
        else _("Retest {name} 24 h after each part, before the next.")
    )
    lines = [
        " ".join([*conditions, head.format(**told)]),
        first_time(product.label.analyte),
        _each(plan),
        after.format(name=name),
        _unknown_rest(),
    ]
    if (beside := _beside(plan)) is not None:
        lines.insert(3, beside)
    return lines


def by_label(plan: ProductPlan, tank: str | None, asked: str | None = None) -> list[str]:
    """What a label gives for a water, a day's step of hardness at most."""
    product = plan.product
    analyte = asked if asked in plan.rises else product.label.analyte
    shown = mass(plan.amount, product.label.unit)
    told = {"where": where(tank, plan.volume_l), "product": product.name, "amount": shown}
    if analyte == CHLORINE:
        return [
            _("{where}: {amount} of {product}, by its label.").format(**told),
            _("Into the new water before it goes in; with a hose, for the whole tank."),
            _("How strong it is I do not know: test chlorine, and ammonia for chloramine."),
            _("An estimate, not veterinary advice."),
        ]
    if analyte in HARDNESS:
        rise = plan.rises[analyte]
        name = names.analyte(analyte)
        head = _("{where}: by that label at most {name} +{rise} °dH a day.").format(
            **told | {"name": name, "rise": plain(rise, 2)}
        )
        lines = [
            " ".join([*_conditions(plan, tank), head]),
            first_time(analyte),
            _("{amount} of {product} for +{rise} °dH.").format(**told, rise=plain(rise, 2)),
        ]
        if (beside := _beside(plan, analyte)) is not None:
            lines.append(beside)
        return [*lines, _unknown_rest()]
    lead = _("{where}: {amount} of {product}, one dose by its label: {moves}.")
    return [
        " ".join([*_conditions(plan, tank), lead.format(**told, moves=moves(plan.rises))]),
        _unknown_rest(),
    ]


def effect(plan: ProductPlan, against: Sequence[str]) -> list[str]:
    """What an amount of a product does by its label, behind what stands against it."""
    product = plan.product
    told = {
        "amount": mass(plan.amount, product.label.unit),
        "product": product.name,
        "volume": litres(plan.volume_l),
    }
    if product.label.analyte == CHLORINE:
        treats = product.label.litres * plan.amount / product.label.amount
        lead = _("{amount} of {product} is for {treats} by its label: it takes chlorine out.")
        return [lead.format(**told, treats=litres(treats)), _unknown_rest()]
    template = (
        _("{amount} of {product} in {volume}: {moves} at most, as seen here.")
        if product.learned
        else _("{amount} of {product} in {volume}: {moves} by its label.")
    )
    lead = template.format(**told, moves=moves(plan.rises))
    if plan.count > 1:
        days = ngettext(
            "Too much for one day with animals: spread it over at least {days} day.",
            "Too much for one day with animals: spread it over at least {days} days.",
            plan.count,
        ).format(days=plan.count)
        lead = f"{days} {lead}"
    return [lead, *against, _unknown_rest()]


def too_much(product: Product, amount: float, rises: Mapping[str, float]) -> list[str]:
    """More of a product went in than a day bears."""
    told = _("Too much for one day: {amount} of {product} ({moves} by its label).")
    if product.learned:
        told = _("Too much for one day: {amount} of {product} ({moves} at most, as seen here).")
    return [
        told.format(
            amount=mass(amount, product.label.unit), product=product.name, moves=moves(rises)
        ),
        _("Add nothing more, test pH, KH and ammonia now, and watch the animals."),
    ]


def in_its_unit(product: Product) -> list[str]:
    """An amount in another measure than the label's."""
    unit = product.label.unit
    return [
        _("No number for {product} so: its label counts in {unit}, and no spoon or cap is one.")
        .format(product=product.name, unit=unit),
        _("Send the amount in {unit}, for example: what does 5 {unit} {product} do").format(
            product=product.name, unit=unit
        ),
    ]  # fmt: skip


def moves(rises: Mapping[str, float]) -> str:
    """What is raised by how much, each with its unit."""
    return ", ".join(
        _("{name} +{rise}{unit}").format(
            name=names.analyte(analyte),
            rise=plain(rise, 2) if analyte in HARDNESS else small(rise),
            unit=unit(analyte),
        )
        for analyte, rise in rises.items()
    )


def first_time(analyte: str) -> str:
    """How to begin with a product whose contents are not known."""
    if analyte == "kh":
        return _("Only half the first time, then pH after an hour.")
    return _("Only half the first time, then {name} after a day.").format(
        name=names.analyte(analyte)
    )


def _unknown_rest() -> str:
    return _("What else is in it I do not know. An estimate, not veterinary advice.")


def _beside(plan: ProductPlan, asked: str | None = None) -> str | None:
    """What else the label says that comes with it."""
    lead = asked or plan.product.label.analyte
    rest = {analyte: rise for analyte, rise in plan.rises.items() if analyte != lead}
    return _("With it comes {moves}.").format(moves=moves(rest)) if rest else None


def _way(plan: ProductPlan) -> str:
    analyte = plan.product.label.analyte
    change = plan.rises[analyte]
    if plan.start is None:
        return moves({analyte: change})
    return _("{name} {start} → {target}{unit}").format(
        name=names.analyte(analyte),
        start=plain(plan.start, 1),
        target=plain(plan.start + change, 1),
        unit=unit(analyte),
    )


def _conditions(plan: ProductPlan, tank: str | None) -> list[str]:
    """What must be so before the dose: a sentence each."""
    if "kh" not in plan.rises:
        return []
    gate = plan.gate
    below = gate.only_below if gate is not None and tank is not None else None
    only = [] if below is None else [only_below(below)]
    only.append(_("Only if its label names no carbonate and no hydroxide: pH would jump."))
    return [*only, keep_co2()] if gate is not None and gate.keep_co2 else only


def _each(plan: ProductPlan) -> str:
    """How much a part is, and by which knowledge of the product."""
    product = plan.product
    if plan.count == 1:
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
    return template.format(
        each=mass(plan.each, product.label.unit),
        product=product.name,
        count=plan.count,
        whole=mass(plan.amount, product.label.unit),
    )
