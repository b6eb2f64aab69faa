"""Which number belongs to which name.

clause = { name quantity } | { quantity name }

A quantity whose unit names its analyte (4 dkh, 25 °C) stands alone. Pairs are taken name first
where the clause begins with a name, number first where it begins with a number. What fits no pair
goes to `core.message.strays`.
"""

from __future__ import annotations

from core.message import doubts, nearest, repeats, strays
from core.message.candidates import Candidate, apply_marks
from core.message.clauses import Clause, Item
from core.message.hardness import is_hardness
from core.message.kinds import is_kind
from core.units import FACTORS


def bind(
    clause: Clause,
    previous: Candidate | None = None,
    *,
    timed: bool = False,
    past: bool = False,
) -> None:
    """Pair the clause's items; candidates and troubles are left in the clause.

    `previous` is the last candidate of the clause before: a lone number behind a comma may be an
    earlier value of the same thing, or the rest of a number that the comma cut. `timed` tells that
    the clause has a time of its own (`was 7.2, today 7.0`), `past` that it is not now.
    """
    repeats.drop(clause)
    _volume(clause)
    items = _singles(clause)
    if not items:
        return
    if _even_pairs(items):
        last: Candidate | None = None
        for first, second in zip(items[::2], items[1::2], strict=True):
            if first.kind == "V":
                made = _pair(clause, second, first)
            else:
                made = _pair(clause, first, second)
            if first.kind == "U" and _joins(first, second):
                before = previous if not made.choices and nearest.bears(first.text) else None
                _between_numbers(last or before, made)
            last = made
        return
    kinds = [item.kind for item in items if item.kind != "U"]
    if items[0].kind == "U" and len(items) > 2 and kinds[:1] == ["V"] and _even_pairs(items[1:]):
        clause.loose += [] if _of_two(items, 0) else [items.pop(0)]
    if timed and kinds == ["V"] and len(items) == 1 and _of_one_unit(items[0], previous):
        assert previous is not None  # noqa: S101
        strays.again(clause, items[0], previous)
        clause.candidates[-1].own_time |= past
    elif items[0].kind == "V":
        _number_first(clause, items, previous if kinds == ["V"] else None)
    else:
        _name_first(clause, items)


def take_back(clauses: list[Clause]) -> None:
    """Leave out what the same message puts right: `kh 5 sorry kh 6`, `kh 5 i mean gh 5`."""
    if not any([c.instead for clause in clauses for c in clause.candidates]):  # noqa: C419
        return
    told: list[tuple[Clause, Candidate]] = []
    found = [(clause, candidate) for clause in clauses for candidate in clause.candidates]
    for clause, candidate in sorted(found, key=lambda pair: pair[1].start):
        if candidate.instead and told:
            same = [pair for pair in told if pair[1].analyte == candidate.analyte]
            where, wrong = (same or told)[-1]
            if same or wrong.quantity.value == candidate.quantity.value is not None:
                where.candidates.remove(wrong)
                told.remove((where, wrong))
        told.append((clause, candidate))


def _of_one_unit(item: Item, previous: Candidate | None) -> bool:
    """Whether a lone number may be the value before's at another time (not `kh 4, at 8ppm`)."""
    unit = None if item.quantity is None else item.quantity.unit
    return previous is not None and unit in {None, previous.quantity.unit}


def _volume(clause: Clause) -> None:
    """A volume before all names is the tank's (`90 l tank, ph 7`): asked about by itself."""
    items = clause.items
    if len(items) < 3 or items[1].kind != "N":
        return
    quantity = items[0].quantity
    if quantity is not None and quantity.unit in {"L", "gal", "uk gal"} and not quantity.problem:
        clause.trouble.append((items[0].start, items[0].end, doubts.STRAY_NUMBER))
        del items[0]


def _even_pairs(items: list[Item]) -> bool:
    """Whether all items fall into pairs of one name and one number, in one order."""
    if len(items) % 2:
        return False
    order = ""
    for first, second in zip(items[::2], items[1::2], strict=True):
        if "V" not in (first.kind, second.kind) or first.kind == second.kind:
            return False
        this = "V" if first.kind == "V" else "N"
        if order == "N" and this == "V":
            return False
        order = this
    return True


def _singles(clause: Clause) -> list[Item]:
    """Items without those that need no partner.

    These are a quantity whose unit names its analyte, and the second of two names for one thing
    (`nitrate no3 20`).
    """
    items = clause.items
    out: list[Item] = []
    spare = 0  # names so far that have no number yet
    for index, item in enumerate(items):
        following = items[index + 1] if index + 1 < len(items) else None
        twice = item.kind == "N" and following is not None and following.kind == "N"
        if twice and following is not None and is_hardness(item.text, of=following.analyte):
            following.start = item.start
            continue  # hardness kh 4
        if twice and following is not None and is_hardness(following.text, of=item.analyte):
            following.analyte, following.start = item.analyte, item.start
            continue  # kh hardness 4
        if twice and following is not None and item.analyte == following.analyte:
            following.basis = following.basis or item.basis
            following.start = item.start
            continue
        quantity = item.quantity
        if quantity is not None and quantity.of is not None:
            free = spare > 0 or items[0].kind != "V"
            waiting = free and bool(out) and items[index - 1] is out[-1]
            if not (waiting and out[-1].kind == "N") and not _named(item, items, index):
                made = _own_name(clause, item, quantity.of)
                if "at" in item.marks and any(map(_conducts, items)):
                    made.problem = doubts.UNKNOWN_WORD  # what the meter corrects to, not the tank
                continue
        out.append(item)
        spare += (item.kind == "N") - (item.kind == "V")
    return out


def _conducts(item: Item) -> bool:
    """Whether an item names conductivity or has its unit, or may, being misspelt."""
    quantity = item.quantity
    if item.kind == "U" or (quantity is not None and quantity.problem is not None):
        return True
    return item.analyte == "conductivity" or (
        quantity is not None and quantity.of == "conductivity"
    )


def _named(item: Item, items: list[Item], index: int) -> bool:
    """Whether the name of a self-named quantity stands behind it and has no other number."""
    quantity = item.quantity
    following = items[index + 1] if index + 1 < len(items) else None
    if quantity is None or following is None or following.kind != "N":
        return False
    unit = "°fH" if quantity.unit_text in {"°f", "° f"} else quantity.unit
    if following.analyte != quantity.of and (following.analyte, unit) not in FACTORS:
        return False
    # Where numbers come first, the name behind is this one's, whatever follows it.
    return items[0].kind == "V" or index + 2 >= len(items) or items[index + 2].kind != "V"


def _own_name(clause: Clause, item: Item, of: str) -> Candidate:
    assert item.quantity is not None  # noqa: S101
    candidate = Candidate(of, None, item.quantity, item.start, item.end)
    apply_marks(candidate, item.marks)
    clause.candidates.append(candidate)
    return candidate


def _pair(clause: Clause, name: Item, value: Item) -> Candidate:
    assert value.quantity is not None  # noqa: S101
    start, end = min(name.start, value.start), max(name.end, value.end)
    if name.unit is not None and value.quantity.unit is None:
        value.quantity.unit = name.unit
    if name.kind == "U":
        candidate = Candidate("", None, value.quantity, start, end, name.text)
        names = () if name.ambiguous else nearest.analytes(name.text)
        if names and is_kind(name.text):
            names = ()  # 3 nerite snails are no nitrite
        candidate.problem = doubts.UNKNOWN_NAME if len(names) < 2 else doubts.AMBIGUOUS_NAME
        candidate.choices = names
    else:
        candidate = Candidate(name.analyte, name.basis, value.quantity, start, end, name.text)
        if name.suffixed:
            candidate.problem = doubts.UNKNOWN_WORD
    apply_marks(candidate, value.marks)
    clause.candidates.append(candidate)
    return candidate


def _name_first(clause: Clause, items: list[Item]) -> None:
    index = 0
    last: Candidate | None = None
    while index < len(items):
        item = items[index]
        following = items[index + 1] if index + 1 < len(items) else None
        if item.kind == "V":
            strays.stray(clause, item, last)
        elif following is not None and following.kind == "V":
            made = _pair(clause, item, following)
            behind = item.kind == "U" and index > 0 and items[index - 1].kind == "V"
            if behind and _joins(item, following):
                _between_numbers(last, made)
            if index and items[index - 1].kind == "U":
                _modified(made, items[index - 1], item)
            last = made
            index += 1
        elif item.kind == "U" and _of_two(items, index):
            pass  # the word behind it takes it with it
        elif item.kind == "N" and _somebody(items, index):
            index += 3
        elif item.kind == "N" and following is not None and _looks_numeric(following):
            clause.trouble.append((item.start, following.end, doubts.BAD_NUMBER))
            index += 1
        elif item.kind == "N" and _word_between(items, index):
            last = _pair(clause, item, items[index + 2])
            last.problem = last.problem or doubts.UNKNOWN_WORD
            index += 2
        elif item.kind == "N":
            strays.nameless(clause, item, last)
        else:
            strays.loose(clause, item, last, following)
        index += 1


def _of_two(items: list[Item], index: int) -> bool:
    """Whether two words that are no names, and a number behind them, may be one name."""
    ahead = items[index + 1 : index + 3]
    if [item.kind for item in ahead] != ["U", "V"]:
        return False
    return bool(nearest.of_two(items[index].text, ahead[0].text))


def _modified(made: Candidate, before: Item, name: Item) -> None:
    """A misspelt word before a name may make another name of it: `carbonat hardness` is no GH."""
    if names := nearest.of_two(before.text, name.text):
        made.start, made.analyte, made.choices = before.start, "", names
        made.problem = doubts.UNKNOWN_NAME if len(names) < 2 else doubts.AMBIGUOUS_NAME
    elif nearest.modifies(before.text):
        made.problem = made.problem or doubts.UNKNOWN_WORD


def _somebody(items: list[Item], index: int) -> bool:
    """A helper for a time, and an hour: `the temp guy left at 5` is no temperature."""
    if items[index].text != "temp" or index + 3 >= len(items):
        return False
    first, second, hour = items[index + 1 : index + 4]
    quantity = hour.quantity
    if first.kind != "U" or second.kind != "U" or quantity is None or quantity.value is None:
        return False
    return "at" in hour.marks and quantity.unit is None and quantity.value <= 12


def _looks_numeric(item: Item) -> bool:
    """Whether a word is a number with a letter for a digit (`l0`, `2o`)."""
    return (
        item.kind == "U"
        and any(char.isdigit() for char in item.text)
        and all(char.isdigit() or char in "loisz" for char in item.text)
    )


def _joins(word: Item, number: Item) -> bool:
    """Whether a word that is no name may join the number behind it to the one before.

    So may what is nearly a word that bears on numbers, and one letter (`20 -o 40`), unless the
    number hangs on it (`t24.5`); any other is a name that we do not know, and of its number only.
    """
    return nearest.bears(word.text) or (len(word.text) == 1 and word.end != number.start)


def _between_numbers(last: Candidate | None, made: Candidate) -> None:
    """A word that is no name between two numbers may have joined them (`20 tto 40`)."""
    if last is not None:
        last.problem = last.problem or doubts.UNKNOWN_WORD
        last.end = max(last.end, made.end)


def _word_between(items: list[Item], index: int) -> bool:
    """Name, a word that is no misspelt name, number."""
    if index + 2 >= len(items) or items[index + 1].kind != "U" or items[index + 2].kind != "V":
        return False
    return not nearest.analytes(items[index + 1].text)


def _number_first(clause: Clause, items: list[Item], previous: Candidate | None = None) -> None:
    values = sum(item.kind == "V" for item in items)
    names = sum(item.kind == "N" for item in items)
    index = 0
    last = previous
    while index < len(items):
        item = items[index]
        following = items[index + 1] if index + 1 < len(items) else None
        if item.kind == "V" and following is not None and following.kind in "NU":
            last = _pair(clause, following, item)
            if values > names and following.kind == "N":
                last.problem = last.problem or doubts.STRAY_NUMBER
            index += 1
        elif item.kind == "V":
            strays.stray(clause, item, last)
        elif item.kind == "N" and index + 2 == len(items) and items[index + 1].kind == "V":
            last = _pair(clause, item, items[index + 1])
            index += 1
        elif item.kind == "N":
            strays.nameless(clause, item, last)
        else:
            strays.loose(clause, item, last, following)
        index += 1
