"""What no salt can do of all that one label tells together: a remineraliser raises GH and KH."""

from __future__ import annotations

import math
from collections.abc import Sequence

from core.advice.plan import Refusal
from core.advice.products import SALT_NEEDED, Label


def doubt_of(labels: Sequence[Label]) -> Refusal | None:
    """The doubt of what one product raises, its effects together where one alone has too much salt.

    Parameters
    ----------
    labels : sequence of Label
        Of the same amount in the same water, each of another analyte.

    Returns
    -------
    Refusal or None
        As `Label.doubt`. Too little for one of them stays too little; too much for one may be what
        the others need. What is told in mg/L may hold any amount of the rest.

    Examples
    --------
    >>> gh, kh = (Label(10.0, "g", 50.0, name, rise) for name, rise in (("gh", 4.0), ("kh", 2.0)))
    >>> doubt_of([kh]).reason, doubt_of([gh, kh])
    ('label_past_salts', None)
    """
    most = 0.0
    for label in labels:
        high = SALT_NEEDED.get(label.analyte, (0.0, math.inf))[1]
        most += high * label.rise / 1000.0 if math.isfinite(high) else math.inf
    for label in labels:
        doubt = label.doubt
        if doubt is None:
            continue
        over = float(doubt.facts.get("each", 0.0)) > float(doubt.facts.get("most", 0.0))
        together = len(labels) > 1 and label.unit == "g" and over and label.dose(1.0) <= most
        if not together:
            return doubt
    return None
