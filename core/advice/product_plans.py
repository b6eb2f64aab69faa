"""Doses of bought products: as much as is wished in the parts that each of its effects bears."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import timedelta

from core.advice import limits
from core.advice.ammonia_gate import Gate
from core.advice.dosing import Wish, plan_kh, volume_for
from core.advice.iron import plan_iron
from core.advice.plan import Plan, Refusal
from core.advice.products import CHLORINE, HARDNESS, Product, given_since
from core.advice.salts import SaltWish, plan_salts
from core.advice.scheduling import steps_of
from core.advice.state import State
from core.units import to_canonical
from core.water.atoms import molar_mass

IRON_SALT = "ferrous gluconate dihydrate"
"""By whose plan iron is bound; any of known strength would do."""


@dataclass(frozen=True, slots=True)
class ProductWish:
    """What is asked of a product: an analyte to a value or by so much, in the canonical unit."""

    analyte: str
    target: float | None = None
    delta: float | None = None
    start: float | None = None
    volume_l: float | None = None
    premises: Mapping[str, float] = field(default_factory=dict)
    parts: int = 1
    """In how many it is wished at least."""


@dataclass(frozen=True, slots=True)
class ProductPlan:
    """A dose of a product in equal parts, a day apart.

    Attributes
    ----------
    product : Product
        By the effect that was asked for.
    volume_l : float
        Net volume. [L]
    amount : float
        All parts together, in the label's unit.
    count : int
        Parts.
    rises : mapping of str to float
        What all parts together raise, by analyte, the one asked for first. [canonical unit]
    gate : Gate or None
        What total ammonia it bears, where it raises KH and something lives there.
    start : float or None
        Where the water stands now, where that is known. [canonical unit]
    reading_age : timedelta or None
        Age of the reading that it starts from, where that is old.
    """

    product: Product
    volume_l: float
    amount: float
    count: int
    rises: Mapping[str, float]
    gate: Gate | None = None
    start: float | None = None
    reading_age: timedelta | None = None

    @property
    def each(self) -> float:
        """A part, in the label's unit."""
        return self.amount / self.count


def in_water(products: Sequence[Product], state: State) -> tuple[Product, ...]:
    """The effects of one product that count in a tank's water.

    In fresh water calcium and magnesium are hardness: 1 °dH is 7.15 mg/L of the one, 4.34 of the
    other (10 mg/L CaO, from the atomic masses); where its GH is told too, it holds them already.
    """
    if state.tank.is_sea:
        return tuple(products)
    ions = [each for each in products if each.label.analyte in _IONS]
    rest = [each for each in products if each.label.analyte not in _IONS]
    if not ions or any(each.label.analyte == "gh" for each in rest):
        return tuple(rest)
    first = ions[0]
    rise = sum(
        _degrees(each.label.analyte, each.label.given(first.label.dose(1.0), 1.0)) for each in ions
    )
    label = replace(first.label, analyte="gh", rise=rise)
    return (*rest, Product(first.name, label, rise, rise, learned=first.learned))


_IONS = frozenset({"calcium", "magnesium"})


def _degrees(ion: str, amount: float) -> float:
    """The hardness that so much of an ion makes. [°dH]"""
    symbol = {"calcium": "Ca", "magnesium": "Mg"}[ion]
    return to_canonical("gh", amount / molar_mass(symbol), "mmol/L")


def plan_product(
    products: Sequence[Product], wish: ProductWish, state: State, *, known_tank: bool
) -> ProductPlan | Refusal:
    """Work out a dose of a product to a wish, or say why there is none.

    Parameters
    ----------
    products : sequence of Product
        The effects of one product, as `in_water` gives them; one is of the wish's analyte.
    wish : ProductWish
        What is wanted.
    state : State
        The tank and its last readings; an empty one for a question without set-up.
    known_tank : bool
        False where the question is about any water.

    Notes
    -----
    Its salts nobody told: each of its effects is bound as the usual salts for it would be, and of
    what is no hardness no part is more than its label gives at a time.
    """
    volume = volume_for(wish.volume_l, state)
    if isinstance(volume, Refusal):
        return volume
    product = next(each for each in products if each.label.analyte == wish.analyte)
    if (problem := _dosed_since(products, wish, state)) is not None:
        return problem
    plan = _as_salts(wish, state, known_tank=known_tank)
    if isinstance(plan, Refusal):
        return plan
    rise = plan.goals[0].change
    amount = product.needed(rise, volume)
    reading = state.last(wish.analyte)
    start = wish.start
    if start is None and reading is not None and not reading.is_limit:
        start = reading.value
    old = wish.start is None and reading is not None and not reading.is_fresh(state.now)
    made = ProductPlan(
        product, volume, amount, plan.count, {wish.analyte: rise}, plan.gate, start,
        reading.age(state.now) if old and reading is not None else None,
    )  # fmt: skip
    return _with_others(made, products, state, known_tank=known_tank)


def days_dose(
    products: Sequence[Product], volume_l: float | None, state: State, *, known_tank: bool
) -> ProductPlan | Refusal:
    """What of a product may go in on one day, no more than its label gives unless that is hardness.

    Parameters
    ----------
    products, state, known_tank
        As for `plan_product`.
    volume_l : float or None
        Net volume; None takes the tank's. [L]
    """
    volume = volume_for(volume_l, state)
    if isinstance(volume, Refusal):
        return volume
    lead = next((p for p in products if p.label.analyte in HARDNESS), products[0])
    if lead.label.analyte == CHLORINE:
        return ProductPlan(lead, volume, lead.label.dose(volume), 1, {})
    rise = steps_of(state.tank).get(lead.label.analyte, lead.label.rise)
    wish = ProductWish(lead.label.analyte, delta=rise, volume_l=volume)
    plan = plan_product(products, wish, state, known_tank=known_tank)
    return plan if isinstance(plan, Refusal) else part_of(plan)


def part_of(plan: ProductPlan) -> ProductPlan:
    """The first part of a plan alone."""
    rises = {analyte: rise / plan.count for analyte, rise in plan.rises.items()}
    return replace(plan, amount=plan.each, count=1, rises=rises)


def effect_of(
    products: Sequence[Product], amount: float, volume: float, state: State, *, known_tank: bool
) -> tuple[ProductPlan, Refusal | None]:
    """What an amount of a product does at most, in how many days; and what stands against it.

    Parameters
    ----------
    products, state, known_tank
        As for `plan_product`.
    amount : float
        In the label's unit.
    volume : float
        Net volume. [L]
    """
    lead = products[0]
    plan = ProductPlan(lead, volume, amount, 1, {})
    if lead.label.analyte == CHLORINE:
        return plan, None
    rises = {each.label.analyte: _given(each, amount, volume) for each in products}
    told = _with_others(plan, products, state, known_tank=known_tank)
    if isinstance(told, Refusal):
        return replace(plan, rises=rises), told
    return replace(plan, rises=rises, count=math.ceil(amount / told.each - 1e-9)), None


def days_of(
    products: Sequence[Product], amount: float, volume: float, state: State
) -> tuple[Mapping[str, float], int]:
    """What an amount that went in raises at most, and how many days it should have taken.

    By the day's steps alone, and by the label where no step is known: what went in is in.

    Parameters
    ----------
    products, amount, volume
        As for `effect_of`.
    state : State
        The tank before it went in.
    """
    effects = [each for each in in_water(products, state) if each.label.analyte != CHLORINE]
    rises = {each.label.analyte: _given(each, amount, volume) for each in effects}
    steps = steps_of(state.tank)
    days = [
        rises[each.label.analyte] / steps[each.label.analyte]
        if each.label.analyte in steps
        else amount / each.label.dose(volume)
        for each in effects
    ]
    kh = state.last("kh")
    if "kh" in rises and kh is not None:
        blind = kh.low < limits.KH_BLIND_BELOW
        # never more than doubled; under 1 a first small part, and then a test
        days.append(rises["kh"] / (limits.KH_FIRST_PART if blind else kh.value))
    return rises, math.ceil(max(days, default=0.0) / limits.WEIGHED - 1e-9)


def _given(product: Product, amount: float, volume: float) -> float:
    """By how much an amount raises a volume at most."""
    return product.label.given(amount, volume) * product.rise_high / product.label.rise


def _with_others(
    plan: ProductPlan, products: Sequence[Product], state: State, *, known_tank: bool
) -> ProductPlan | Refusal:
    """A plan in as many parts, and of as much, as what else the product raises bears too."""
    for product in products:
        analyte = product.label.analyte
        rise = _given(product, plan.amount, plan.volume_l)
        if analyte not in plan.rises:
            wish = ProductWish(analyte, delta=rise, volume_l=plan.volume_l)
            other = _as_salts(wish, state, known_tank=known_tank)
            if isinstance(other, Refusal):
                return other
            share = min(1.0, other.goals[0].change / rise)
            rises = {name: moved * share for name, moved in plan.rises.items()}
            plan = replace(
                plan,
                amount=plan.amount * share,
                count=max(plan.count, other.count),
                rises={**rises, analyte: rise * share},
                gate=other.gate if analyte == "kh" else plan.gate,
            )
        if analyte not in HARDNESS:
            doses = plan.amount / product.label.dose(plan.volume_l)
            plan = replace(plan, count=max(plan.count, math.ceil(doses - 1e-9)))
    return plan


def _dosed_since(products: Sequence[Product], wish: ProductWish, state: State) -> Refusal | None:
    """Refuse another dose on a reading from before one, of whatever it raises."""
    for product in products:
        reading = state.last(product.label.analyte)
        stated = product.label.analyte == wish.analyte and wish.start is not None
        if not stated and (problem := given_since(product.name, state, reading)) is not None:
            return problem
    return None


def _as_salts(wish: ProductWish, state: State, *, known_tank: bool) -> Plan | Refusal:
    """The same wish by the usual salts for it."""
    if wish.analyte == "kh":
        by_kh = Wish(
            target=wish.target,
            delta=wish.delta,
            start=wish.start,
            volume_l=wish.volume_l,
            premises=wish.premises,
            parts=wish.parts,
        )
        return plan_kh(by_kh, state, known_tank=known_tank)
    if wish.analyte == "iron":
        plans = plan_iron(IRON_SALT, wish.target, wish.delta, wish.volume_l, state)
    else:
        by_salts = SaltWish(
            targets={} if wish.target is None else {wish.analyte: wish.target},
            deltas={} if wish.delta is None else {wish.analyte: wish.delta},
            starts={} if wish.start is None else {wish.analyte: wish.start},
            volume_l=wish.volume_l,
            premises=wish.premises,
            parts=wish.parts,
        )
        plans = plan_salts(by_salts, state, known_tank=known_tank)
    return plans if isinstance(plans, Refusal) else plans[0]
