"""Tables mean the same whichever way round they are and whatever divides their cells."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from core.message import parse
from tests.messages import corpus

NAMES = {"pH": "ph", "KH": "kh", "GH": "gh", "NO3": "nitrate"}
Grid = dict[tuple[str, str], float]

grids = st.fixed_dictionaries(
    {
        "tanks": st.permutations(corpus.TANKS).flatmap(
            lambda order: st.integers(2, 3).map(lambda count: order[:count])
        ),
        "names": st.permutations(list(NAMES)).flatmap(
            lambda order: st.integers(2, 4).map(lambda count: order[:count])
        ),
        "tenths": st.lists(st.integers(62, 88), min_size=12, max_size=12),
        "mark": st.sampled_from(["\t", " | ", "   ", " ", ";"]),
        "comma": st.booleans(),
        "corner": st.sampled_from(["tank", "Becken", ""]),
        "across": st.booleans(),
    }
)


def rendered(drawn: dict[str, object]) -> tuple[str, set[tuple[str, str, float]]]:
    """The table as text, and what it says: (tank, analyte, number)."""
    tanks, names = list(drawn["tanks"]), list(drawn["names"])  # type: ignore[call-overload]
    numbers = iter(drawn["tenths"])  # type: ignore[call-overload]
    said = {(tank, name): next(numbers) / 10 for tank in tanks for name in names}
    sides = (names, tanks) if drawn["across"] else (tanks, names)
    mark, corner = str(drawn["mark"]), str(drawn["corner"])
    rows = [([corner] if corner or mark == "\t" else []) + sides[1]]
    for first in sides[0]:
        cells = [
            said[(second, first) if drawn["across"] else (first, second)] for second in sides[1]
        ]
        rows.append([first, *[str(cell) for cell in cells]])
    text = "\n".join(mark.join(row) for row in rows)
    if drawn["comma"]:
        text = text.replace(".", ",")
    return text, {(tank, NAMES[name], number) for (tank, name), number in said.items()}


@given(grids)
def test_a_table_says_each_cell_of_its_tank(drawn: dict[str, object]) -> None:
    text, wanted = rendered(drawn)
    parsed = parse(text, corpus.context())
    assert parsed.doubts == (), text
    found = {(value.tank or parsed.tank, value.analyte, value.value) for value in parsed.values}
    assert found == wanted, text


@given(grids, st.integers(1, 4))
def test_a_cell_too_many_or_too_few_is_never_guessed_at(drawn: dict[str, object], row: int) -> None:
    """With blanks between nobody can tell which cell is missing: that row stores nothing."""
    text, wanted = rendered({**drawn, "mark": " ", "across": False, "corner": "tank"})
    lines = text.split("\n")
    place = min(row, len(lines) - 1)
    lines[place] = lines[place].rpartition(" ")[0]
    parsed = parse("\n".join(lines), corpus.context())
    found = {(value.tank or parsed.tank, value.analyte, value.value) for value in parsed.values}
    assert found < wanted
    assert parsed.doubts
