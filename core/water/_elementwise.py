"""One formula for a float and for a numpy array.

Formulas of this package are written with operators and with the functions that `functions_for`
hands out: for plain numbers they come from `math` and numpy is never loaded; as soon as one
argument is an array they are numpy's own. In signatures `float` therefore reads "a float, or an
array of float64 that broadcasts with the others".
"""

from __future__ import annotations

import math
import sys
from collections.abc import Callable
from functools import lru_cache, wraps
from typing import Any, Final, ParamSpec, Protocol, TypeVar, cast

from core.errors import OutOfRange

T = TypeVar("T")
P = ParamSpec("P")


class Functions(Protocol):
    """The functions that formulas may use, elementwise."""

    def exp(self, x: float, /) -> float:
        """Natural exponential."""

    def log(self, x: float, /) -> float:
        """Natural logarithm."""

    def log10(self, x: float, /) -> float:
        """Decimal logarithm."""

    def sqrt(self, x: float, /) -> float:
        """Square root."""

    def minimum(self, x: float, y: float, /) -> float:
        """Return the smaller of two."""

    def maximum(self, x: float, y: float, /) -> float:
        """Return the larger of two."""

    def where(self, condition: bool, x: float, y: float, /) -> float:
        """Return `x` where the condition holds, else `y`; both are computed."""


class _Plain:
    """`Functions` of plain numbers."""

    exp = staticmethod(math.exp)
    log = staticmethod(math.log)
    log10 = staticmethod(math.log10)
    sqrt = staticmethod(math.sqrt)

    minimum = staticmethod(min)
    maximum = staticmethod(max)

    @staticmethod
    def where(condition: bool, x: float, y: float, /) -> float:
        return x if condition else y


PLAIN: Final = cast(Functions, _Plain())

PLAIN_TYPES: Final = (float, int)
"""Types of a plain number; numpy's own scalars of double precision are floats too."""


def functions_for(*values: float) -> Functions:
    """Return the functions that fit these arguments: `math`'s, or numpy's for any array."""
    for value in values:
        if value.__class__ is not float and not isinstance(value, PLAIN_TYPES):
            import numpy  # here, so that the path of plain numbers never loads it

            return cast(Functions, numpy)
    return PLAIN


def remembering(compute: Callable[P, T]) -> Callable[P, T]:
    """Remember what plain numbers gave: a tank's warmth is asked for again and again."""
    remembered = lru_cache(maxsize=512)(compute)

    @wraps(compute)
    def call(*numbers: P.args, **named: P.kwargs) -> T:
        if named or any(number.__class__ is not float for number in numbers):
            return compute(*numbers, **named)
        return remembered(*numbers)

    return call


def is_array(value: object) -> bool:
    """Tell whether a value is a numpy array, without loading numpy to find out."""
    numpy: Any = sys.modules.get("numpy")
    return numpy is not None and isinstance(value, numpy.ndarray)


def anywhere(condition: Any) -> bool:
    """Tell whether a condition holds for any element."""
    return condition if isinstance(condition, bool) else bool(condition.any())


def everywhere(condition: Any) -> bool:
    """Tell whether a condition holds for every element."""
    return condition if isinstance(condition, bool) else bool(condition.all())


def largest(value: Any) -> float:
    """Return a value, or an array's largest element, as a plain number."""
    return float(value) if isinstance(value, PLAIN_TYPES) else float(value.max())


def smallest(value: Any) -> float:
    """Return a value, or an array's smallest element, as a plain number."""
    return float(value) if isinstance(value, PLAIN_TYPES) else float(value.min())


def beside_largest(of: Any, *values: Any) -> tuple[float, ...]:
    """Return the values, as plain numbers, at the element where `of` is largest."""
    if isinstance(of, PLAIN_TYPES):
        return tuple(float(value) for value in values)
    place = of.argmax()
    return tuple(
        float(value) if isinstance(value, PLAIN_TYPES) else float(value.ravel()[place])
        for value in values
    )


def require(what: str, value: float, low: float | None, high: float | None, unit: str = "") -> None:
    """Raise `OutOfRange` unless every element is finite and from `low` to `high`."""
    ends: Any = (value, value) if isinstance(value, PLAIN_TYPES) else (value.min(), value.max())
    if low is not None and high is not None and low <= ends[0] and ends[1] <= high:
        return  # by far the most calls
    for number in map(float, ends):
        if (
            not math.isfinite(number)
            or (low is not None and number < low)
            or (high is not None and number > high)
        ):
            raise OutOfRange(what, number, low, high, unit)
