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
    columns = len(rows[0])
    x = [0.0] * columns
    free: list[int] = []
    for _ in range(MOST_STEPS):
        rest = [goal - _dot(row, x) for row, goal in zip(rows, wanted, strict=True)]
        gains = {
            j: sum(row[j] * left for row, left in zip(rows, rest, strict=True))
            for j in range(columns)
            if j not in free
        }
        best = max(gains, key=lambda j: gains[j], default=-1)
        if best < 0 or gains[best] <= TINY:
            break
        free.append(best)
        while free:
            trial = _least_squares(rows, wanted, free, columns)
            falling = [j for j in free if trial[j] <= TINY]
            if not falling:
                break
            # As far towards the trial as no amount turns negative; what reached zero stays there.
            step = min(x[j] / (x[j] - trial[j]) if x[j] > trial[j] else 1.0 for j in falling)
            x = [a + step * (b - a) for a, b in zip(x, trial, strict=True)]
            free = [j for j in free if x[j] > TINY and (j not in falling or step < 1.0)]
        x = trial if free else [0.0] * columns
    return x


def _dot(one: Sequence[float], other: Sequence[float]) -> float:
    return sum(a * b for a, b in zip(one, other, strict=True))


def _least_squares(
    rows: Sequence[Sequence[float]], wanted: Sequence[float], free: list[int], columns: int
) -> list[float]:
    """Least squares over the free columns, zeros elsewhere: normal equations by elimination."""
    size = len(free)
    system = [
        [sum(row[i] * row[j] for row in rows) for j in free]
        + [sum(row[i] * goal for row, goal in zip(rows, wanted, strict=True))]
        for i in free
    ]
    ridge = 1e-12 * max(system[k][k] for k in range(size)) + 1e-300
    for k in range(size):
        system[k][k] += ridge  # two salts that bring the same stay solvable
    for k in range(size):
        pivot = max(range(k, size), key=lambda i: abs(system[i][k]))
        system[k], system[pivot] = system[pivot], system[k]
        for i in range(k + 1, size):
            factor = system[i][k] / system[k][k]
            for j in range(k, size + 1):
                system[i][j] -= factor * system[k][j]
    found = [0.0] * columns
    for k in reversed(range(size)):
        known = sum(system[k][j] * found[free[j]] for j in range(k + 1, size))
        found[free[k]] = (system[k][size] - known) / system[k][k]
    return found
