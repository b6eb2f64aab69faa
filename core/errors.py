"""The core's own errors: one base, facts as attributes, wording left to the chat."""

from __future__ import annotations


class CoreError(Exception):
    """The base of every error that the core raises."""


class OutOfRange(CoreError):
    """A quantity lies where it has no meaning, or outside what a formula was checked for.

    Attributes
    ----------
    what : str
        The quantity, in words of the trade or the argument's name.
    given : float
        What was given.
    low, high : float or None
        The ends of what is accepted; None where there is no such end.
    unit : str
        The unit of the three numbers.
    """

    def __init__(
        self,
        what: str,
        given: float,
        low: float | None = None,
        high: float | None = None,
        unit: str = "",
    ) -> None:
        self.what = what
        self.given = given
        self.low = low
        self.high = high
        self.unit = unit
        ends = {
            (True, True): f"{low} to {high}",
            (True, False): f"{low} or more",
            (False, True): f"{high} or less",
            (False, False): "a finite number",
        }[(low is not None, high is not None)]
        super().__init__(f"{what} must be {ends} {unit}".rstrip() + f", not {given}")
