"""Labels by their words, and doses of products in the parts that all that they raise bears."""

from __future__ import annotations

import pytest

from core.advice.plan import Refusal
from core.advice.product_plans import (
    ProductPlan,
    ProductWish,
    days_dose,
    days_of,
    effect_of,
    in_water,
    plan_product,
)
from core.advice.products import Label, Product, read_labels, salt_of
from core.advice.state import Measured
from tests.core.advice.waters import done, read, state, tank

GUPPIES = tank("Poecilia reticulata", volume_l=120.0)


def well(days_ago: float = 0.0, *, ammonia: float = 0.0, ph: float = 7.2) -> list[Measured]:
    """The readings of a tank that is well, but for what is said."""
    told = {"kh": 4.0, "gh": 6.0, "ph": ph, "temperature": 25.0, "ammonia": ammonia, "nitrate": 10}
    return [read(analyte, value, days_ago) for analyte, value in told.items()]


def of(name: str, amount: float, unit: str, litres: float, **rises: float) -> list[Product]:
    """A product by its label."""
    return [
        Product.of_label(name, Label(amount, unit, litres, analyte, rise))
        for analyte, rise in rises.items()
    ]


def dosed(products: list[Product], **wish: float) -> ProductPlan:
    """The plan of a wish in a tank that is well."""
    ((analyte, target),) = wish.items()
    here = state(*well(), of=GUPPIES)
    found = plan_product(products, ProductWish(analyte, target), here, known_tank=True)
    assert isinstance(found, ProductPlan), found
    return found


@pytest.mark.parametrize(
    ("text", "labels"),
    [
        ("5 g per 80 l raises kh 1", [Label(5, "g", 80, "kh", 1)]),
        ("10 mL per 40 l raises gh 0.3", [Label(10, "ml", 40, "gh", 0.3)]),
        (
            "10 mL per 100 l raises nitrate 5, phosphate 1",
            [Label(10, "ml", 100, "nitrate", 5), Label(10, "ml", 100, "phosphate", 1)],
        ),
        ("5 mL per 50 l raises iron 0.1, manganese 0.02", [Label(5, "ml", 50, "iron", 0.1)]),
        ("5 mL per 40 l removes chlorine", [Label(5, "ml", 40, "chlorine", 0)]),
    ],
)
def test_labels(text: str, labels: list[Label]) -> None:
    assert read_labels(text) == tuple(labels)


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("0 g per 80 l raises kh 1", "label_implausible"),
        ("5 mL per 10 l lowers kh 1", "label_lowers"),
        ("5 mL per 10 l lowers ph 0.3", "label_lowers"),
        ("10 drops per 10 l raises kh 1", "label_unmeasured"),
        ("5 ? per 10 l raises kh 1", "label_unmeasured"),
        ("5 g per ? raises kh 1", "label_unmeasured"),
        ("2 scoops per 50 l", "label_unmeasured"),
    ],
)
def test_a_label_that_tells_no_strength_is_refused(text: str, reason: str) -> None:
    found = read_labels(text)
    assert isinstance(found, Refusal)
    assert found.reason == reason


@pytest.mark.parametrize(
    "text",
    [
        "5 g per 80 l",
        "5 mL per 80 l raises copper 0.1",
        "5 mL per 8 l raises kh 1, ph 1",
        "5 mL per 80 l raises boron 1",
    ],
)
def test_a_label_of_what_is_not_reckoned_with_is_none(text: str) -> None:
    assert read_labels(text) is None


@pytest.mark.parametrize(
    ("label", "doubted"),
    [
        (Label(5, "g", 80, "kh", 1), False),
        (Label(0.001, "g", 100, "nitrate", 5), True),  # no nitrate weighs less than itself
        (Label(1, "g", 100, "nitrate", 5), False),
        (Label(1, "ml", 100, "nitrate", 5), False),
        (Label(0.1, "ml", 100, "nitrate", 5), True),  # 5 g/mL
        (Label(5, "ml", 40, "chlorine", 0), False),
        (Label(500, "ml", 40, "chlorine", 0), True),
    ],
)
def test_a_label_that_nothing_can_do_is_doubted(label: Label, *, doubted: bool) -> None:
    assert (label.doubt is not None) == doubted


def test_a_salt_is_one_behind_words_of_no_weight() -> None:
    assert salt_of("my baking soda") == "sodium bicarbonate"
    assert salt_of("mineral salt") is None


def test_it_goes_in_as_many_parts_as_its_hardness_may_rise() -> None:
    plan = dosed(of("buffer", 5, "g", 80, kh=1), kh=6)
    assert plan.count == 2
    assert plan.amount == pytest.approx(2 * 5 * 120 / 80)
    assert plan.each == pytest.approx(7.5)


def test_what_comes_beside_divides_it_too() -> None:
    """GH may rise by 2 a day alone; KH, which comes with it by twos, by 1."""
    mineral = of("mineral", 1, "g", 10, gh=2, kh=2)
    plan = dosed(mineral, gh=8)
    assert plan.rises == pytest.approx({"gh": 2.0, "kh": 2.0})
    assert plan.count == 2
    assert dosed(mineral[:1], gh=8).count == 1


def test_food_goes_in_by_no_more_than_its_label_at_a_time() -> None:
    plan = dosed(of("food", 10, "ml", 100, nitrate=2, phosphate=0.2), nitrate=16)
    assert plan.count == 3
    assert plan.each == pytest.approx(12.0)
    assert plan.rises["phosphate"] == pytest.approx(0.6)


def test_a_wish_too_high_is_refused_as_with_a_salt() -> None:
    here = state(*well(), of=GUPPIES)
    wish = ProductWish("nitrate", 90.0)
    found = plan_product(of("food", 10, "ml", 100, nitrate=2), wish, here, known_tank=True)
    assert isinstance(found, Refusal)
    assert found.reason == "target_implausible"


def test_a_dose_of_it_makes_the_reading_old() -> None:
    food = of("food", 10, "ml", 100, nitrate=2)
    given = done("dose", 0.1, substance="food", millilitres=12.0)
    here = state(*well(0.2), of=GUPPIES, events=(given,))
    found = plan_product(food, ProductWish("nitrate", 14.0), here, known_tank=True)
    assert isinstance(found, Refusal)
    assert found.reason == "dosed_since"


def test_magnesium_is_hardness_in_fresh_water_alone() -> None:
    """10 mg/L Mg is 0.411 mmol/L; 1 mmol/L is 5.608 °dH (56.08 mg/L CaO, 10 mg/L a degree)."""
    salt = of("salt", 10, "g", 100, magnesium=10)
    (fresh,) = in_water(salt, state(*well(), of=GUPPIES))
    assert (fresh.label.analyte, fresh.label.rise) == (
        "gh",
        pytest.approx(10 / 24.305 * 5.608, rel=1e-3),
    )
    assert in_water(salt, state(of=tank(kind="marine"))) == tuple(salt)
    both = of("mix", 10, "g", 100, gh=3, calcium=20)
    assert [each.label.analyte for each in in_water(both, state(*well(), of=GUPPIES))] == ["gh"]


def test_a_days_dose_is_the_step_of_hardness_or_what_the_label_gives() -> None:
    here = state(*well(), of=GUPPIES)
    for products, amount in (
        (of("buffer", 5, "g", 80, kh=1), 7.5),
        (of("strong", 10, "ml", 100, kh=4), 3.0),
        (of("food", 5, "ml", 50, nitrate=2), 12.0),
        (of("conditioner", 5, "ml", 40, chlorine=0), 15.0),
    ):
        plan = days_dose(products, None, here, known_tank=True)
        assert isinstance(plan, ProductPlan)
        assert plan.count == 1
        assert plan.amount == pytest.approx(amount)


def test_no_days_dose_where_ammonia_forbids_it() -> None:
    poisoned = state(*well(ammonia=0.6, ph=8.0), of=GUPPIES)
    found = days_dose(of("mix", 5, "g", 80, gh=1, kh=1), None, poisoned, known_tank=True)
    assert isinstance(found, Refusal)
    assert found.reason in {"ammonia", "ammonia_already"}


def test_what_an_amount_does_and_in_how_many_days() -> None:
    here = state(*well(), of=GUPPIES)
    plan, problem = effect_of(of("b", 5, "g", 80, kh=1), 15.0, 120.0, here, known_tank=True)
    assert problem is None
    assert plan.rises == pytest.approx({"kh": 2.0})
    assert plan.count == 2


def test_what_stands_against_an_amount_is_told_beside_it() -> None:
    poisoned = state(*well(ammonia=1.0, ph=8.0), of=GUPPIES)
    plan, problem = effect_of(of("b", 5, "g", 80, kh=1), 15.0, 120.0, poisoned, known_tank=True)
    assert problem is not None
    assert problem.reason in {"ammonia", "ammonia_already"}
    assert plan.rises == pytest.approx({"kh": 2.0})


@pytest.mark.parametrize(
    ("products", "amount", "days"),
    [
        (of("buffer", 5, "g", 80, kh=1), 7.5, 1),
        (of("buffer", 5, "g", 80, kh=1), 15.0, 2),
        (of("mineral", 5, "g", 80, gh=1), 15.0, 1),
        (of("food", 10, "ml", 100, nitrate=2), 24.0, 2),
        (of("conditioner", 5, "ml", 40, chlorine=0), 500.0, 0),
    ],
)
def test_how_many_days_what_went_in_should_have_taken(
    products: list[Product], amount: float, days: int
) -> None:
    found = days_of(products, amount, 120.0, state(*well(), of=GUPPIES))[1]
    assert found == days


def test_kh_that_more_than_doubles_is_too_much_for_a_day() -> None:
    low = state(read("kh", 0.5), of=GUPPIES)
    assert days_of(of("buffer", 5, "g", 80, kh=1), 1.9, 120.0, low)[1] == 1
    assert days_of(of("buffer", 5, "g", 80, kh=1), 7.5, 120.0, low)[1] == 4
