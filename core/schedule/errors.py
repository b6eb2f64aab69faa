"""What the schedule refuses."""

from __future__ import annotations

from core.errors import CoreError


class BadRule(CoreError):
    """A rule that has no meaning: an interval of nothing, a 32nd day, a date without a zone.

    Attributes
    ----------
    what : str
        Which part of the rule is meant.
    given : object
        What stood there.
    """

    def __init__(self, what: str, given: object) -> None:
        self.what = what
        self.given = given
        super().__init__(f"not a rule: {what} {given!r}")


class NaiveTime(CoreError):
    """A date and time came without a zone; every moment here is aware.

    Attributes
    ----------
    what : str
        The argument's name.
    """

    def __init__(self, what: str) -> None:
        self.what = what
        super().__init__(f"{what} must be aware")
