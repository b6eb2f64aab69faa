"""Non-negative least squares for a handful of salts: Lawson & Hanson's active set."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

MOST_STEPS: Final = 100
TINY: Final = 1e-10


def non_negative(rows: Sequence[Sequence[float]], wanted: Sequence[float]) -> list[float]:
    """Find amounts, none negative, that come nearest to what is wanted.

    Parameters
    ----------
    rows : sequence of sequence of float
        A row a goal, a column a salt: what one unit of the salt brings.
    wanted : sequence of float
        What each goal lacks.

    Returns
    -------
    list of float
        Amount of each salt.

    Notes
    -----
    Lawson & Hanson 1974, Solving Least Squares Problems, chapter 23 (from memory).

    Examples
    --------
    >>> [round(x, 6) for x in non_negative([[2.0, 0.0], [0.0, 4.0]], [1.0, 2.0])]
    [0.5, 0.5]
    """
    import numpy  # small systems, but its least squares is the sound one

    a, b = numpy.asarray(rows, dtype=float), numpy.asarray(wanted, dtype=float)
    x = numpy.zeros(a.shape[1])
    free = numpy.zeros(a.shape[1], dtype=bool)
    for _ in range(MOST_STEPS):
        gain = a.T @ (b - a @ x)
        gain[free] = -numpy.inf
        best = int(numpy.argmax(gain))
        if free.all() or gain[best] <= TINY:
            break
        free[best] = True
        while True:
            trial = numpy.zeros_like(x)
            trial[free] = numpy.linalg.lstsq(a[:, free], b, rcond=None)[0]
            if (trial[free] > TINY).all():
                break
            falling = free & (trial <= TINY)
            room = x[falling] - trial[falling]
            step = numpy.min(x[falling] / numpy.where(room > 0.0, room, 1.0))
            x = x + step * (trial - x)
            free &= x > TINY
            if not free.any():
                trial = numpy.zeros_like(x)
                break
        x = trial
    return [float(amount) for amount in x]
