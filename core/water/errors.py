"""What the water refuses: facts as attributes, wording left to the chat."""

from __future__ import annotations

from core.errors import CoreError


class ImpossibleWater(CoreError):
    """Readings that no water can have together.

    Attributes
    ----------
    reason : str
        ``"carbon_dioxide"``: pH and alkalinity imply more CO2 than any tank water holds.
        ``"no_carbon"``: hydroxide and the other bases alone are more than the alkalinity.
    given : dict of str to float
        The readings that clash and what they imply, by name, in the units of the interface.
    """

    def __init__(self, reason: str, **given: float) -> None:
        self.reason = reason
        self.given = given
        facts = ", ".join(f"{name} {value:g}" for name, value in given.items())
        super().__init__(f"no water can be so ({reason}): {facts}")


class MissingReading(CoreError):
    """A water cannot be told from so little.

    Attributes
    ----------
    needed : str
        The reading that is missing, by its name in `Readings`.
    """

    def __init__(self, needed: str) -> None:
        self.needed = needed
        super().__init__(f"no water without {needed}")


class NotSolved(CoreError):
    """The equilibrium was not reached within the allowed number of steps.

    Attributes
    ----------
    steps : int
        How many steps were made.
    residual : float
        The largest last step, in natural-log units.
    """

    def __init__(self, steps: int, residual: float) -> None:
        self.steps = steps
        self.residual = residual
        super().__init__(f"no equilibrium after {steps} steps, last step {residual:g}")
