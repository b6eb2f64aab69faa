"""What fits no pair of a name and a number: what it makes of the value before it, or its doubt.

A second number right behind a value makes that value doubtful too, since the thumb may have lost
the point (`ph 7 2`), or a name between them; no number is made of the two. A word may say what it
is all the same (`was 6.8 yesterday`, `sorry 6`).
"""

from __future__ import annotations

from core.message import doubts
from core.message.candidates import Candidate, apply_marks
from core.message.clauses import Clause, Item
from core.message.hardness import is_hardness


def nameless(clause: Clause, item: Item, last: Candidate | None) -> None:
    """A name without a number; a unit torn off the value before it makes that one doubtful."""
    if last is not None and item.basis and item.analyte == last.analyte and not last.basis:
        last.basis = item.basis  # the other name says what is counted: ammonia 1 nh4-n
        last.end = max(last.end, item.end)
    elif last is not None and is_hardness(last.name, of=item.analyte) and not last.basis:
        last.analyte, last.name = item.analyte, item.text  # hardness 71 ppm kh
        last.end = max(last.end, item.end)
    elif item.unit is not None and last is not None and last.quantity.unit is None:
        last.problem = last.problem or doubts.UNKNOWN_UNIT
        last.end = max(last.end, item.end)
    else:
        clause.trouble.append((item.start, item.end, doubts.NO_VALUE))


def stray(clause: Clause, item: Item, last: Candidate | None) -> None:
    """A number without a name; directly behind a value it makes that value doubtful."""
    marks = set(item.marks)
    if marks == {"instead"} and last is not None and _put_right(last, item):
        return
    if marks & {"up", "down", "plus"}:
        clause.trouble.append((item.start, item.end, doubts.CHANGE))
        return
    if "to" in marks and last is not None and "wish" not in marks:
        last.problem = last.problem or doubts.BAD_NUMBER  # a range torn apart
        last.end = max(last.end, item.end)
        return
    if "other" in marks:
        if "joint" in marks and last is not None:
            last.problem = last.problem or doubts.UNKNOWN_WORD
        clause.trouble.append((item.start, item.end, doubts.OTHER_WATER))
        clause.other = False
        return
    if marks & {"wish", "to", "if"}:
        if _is_gravity(item):  # want 1.010
            clause.candidates.append(_wished_gravity(item))
        else:
            clause.trouble.append((item.start, item.end, doubts.WISH))
        return
    if last is not None and marks & {"was", "from", "formerly"}:
        again(clause, item, last)
        return
    if last is not None and "joint" in marks:
        last.problem = last.problem or doubts.UNKNOWN_WORD  # 20 no 40, 20 ro 40: 20 to 40?
    if last is not None and "not" in marks:
        return  # "7.4 not 7.2"
    if last is not None:
        last.problem = last.problem or doubts.STRAY_NUMBER
        last.end = max(last.end, item.end)
        return
    before = clause.trouble[-1] if clause.trouble else None
    if before is not None and before[2] == doubts.STRAY_NUMBER and item.start - before[1] < 3:
        clause.trouble[-1] = (before[0], item.end, doubts.STRAY_NUMBER)
    else:
        clause.trouble.append((item.start, item.end, doubts.STRAY_NUMBER))


def _is_gravity(item: Item) -> bool:
    """Whether a bare number can only be a specific gravity."""
    quantity = item.quantity
    value = None if quantity is None or quantity.unit is not None else quantity.value
    return value is not None and 1.0 < value < 1.05


def _wished_gravity(item: Item) -> Candidate:
    assert item.quantity is not None  # noqa: S101 - narrows for the type checker
    item.quantity.unit = "SG"
    made = Candidate("salinity", None, item.quantity, item.start, item.end)
    made.problem = doubts.WISH
    return made


def _put_right(last: Candidate, item: Item) -> bool:
    """Take another number for a value, in its unit: `kh 5 sorry 6`; False where it has its own."""
    anew, told = item.quantity, last.quantity
    if anew is None or not last.analyte or anew.unit not in {None, told.unit}:
        return False
    anew.unit, anew.unit_text, anew.of = told.unit, told.unit_text, told.of
    anew.basis = anew.basis or told.basis
    last.quantity, last.end = anew, item.end
    return True


def again(clause: Clause, item: Item, last: Candidate) -> None:
    """Another value of the thing named before (`was 6.8 yesterday`)."""
    assert item.quantity is not None  # noqa: S101
    more = Candidate(last.analyte, last.basis, item.quantity, item.start, item.end, last.name)
    if not last.analyte:
        more.problem = doubts.UNKNOWN_NAME  # goes before what its time may be doubted for
    apply_marks(more, item.marks)
    clause.candidates.append(more)


def loose(clause: Clause, item: Item, last: Candidate | None, following: Item | None) -> None:
    """A word that is no name: in a unit's place it bears on one value, else on all of them."""
    if last is not None and following is not None:
        last.problem = last.problem or doubts.UNKNOWN_WORD
        last.end = max(last.end, item.end)
    else:
        clause.loose.append(item)
