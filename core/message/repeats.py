"""A number said again in another unit (`KH 4 °dH = 71 ppm`)."""

from __future__ import annotations

from core.analytes import ANALYTES
from core.errors import CoreError
from core.message.clauses import Clause, Item
from core.units import to_canonical


def drop(clause: Clause) -> None:
    """Drop a number that says the one before it in another unit (`KH 4 °dH = 71 ppm`)."""
    if not any("equals" in item.marks for item in clause.items):
        return
    kept: list[Item] = []
    name = ""
    for item in clause.items:
        name = item.analyte if item.kind == "N" else name
        before = kept[-1] if kept else None
        if before is not None and "equals" in item.marks and _equal(name, before, item):
            before.end = item.end
        else:
            kept.append(item)
    clause.items = kept


def _equal(name: str, first: Item, second: Item) -> bool:
    """Whether two quantities are one within their rounding."""
    one, other = first.quantity, second.quantity
    if one is None or other is None or one.value is None or other.value is None:
        return False
    analyte = one.of or other.of or name
    if one.problem or other.problem or one.unit == other.unit or analyte not in ANALYTES:
        return False
    try:
        a = to_canonical(analyte, one.value, one.unit)
        b = to_canonical(analyte, other.value, other.unit)
    except CoreError:
        return False
    return abs(a - b) <= 0.04 * abs(a) + 0.1 * ANALYTES[analyte].resolution
