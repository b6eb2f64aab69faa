"""A number as written, with its unit and all that was said about it."""

from __future__ import annotations


class Quantity:
    """A number as written, not yet bound to what it measures.

    `unit` is our spelling, `of` the analyte that the unit implies, `problem` an id of
    `core.message.doubts`; `sign` is ``+`` or ``-`` where one was written; `arrow` tells a change
    from one number to another; `plus` is what stands behind ±; `grouped` and `mark` are as in
    `numbers.Number`; `first` and `last` are the indexes of its tokens, the last exclusive.
    """

    # Defaults on the class: most quantities set few of them, and many are made.
    value: float | None = None
    low: float | None = None
    high: float | None = None
    plus: float | None = None
    qualifier = "="
    sign = ""
    unit: str | None = None
    unit_text = ""
    of: str | None = None
    basis: str | None = None
    problem: str | None = None
    grouped: float | None = None
    mark = ""
    integer = False
    arrow = False

    def __init__(self, first: int, start: int) -> None:
        self.first = first
        self.last = first
        self.start = start
        self.end = start
