"""What an entry tells, as it would be typed with another number."""

from __future__ import annotations

import re

from bot.store.log import Entry
from core.message import quantities
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Value
from core.message.tokens import cut

_NUMBER = re.compile(r"\d+(?:[.,]\d+)?")
_AMOUNT = re.compile(r"\d+(?:[.,]\d+)?(?:\s?(?:%|[^\W\d]+))?")


def retold_as(entry: Entry, said: str) -> str | None:
    """The text of an entry with another number; None where it holds more than one."""
    if len(entry.readings) == 1 and not entry.events:
        value = entry.readings[0].what
        unit = value.unit if value.unit and said[-1].isdigit() else ""
        basis = f"as {value.basis}" if value.basis else ""
        return f"{value.analyte.replace('_', ' ')} {said} {unit} {basis}".strip()
    numbers = list(_NUMBER.finditer(entry.text))
    if not numbers and (counted := _counted_anew(entry, said)) is not None:
        return counted
    if len(entry.events) != 1 or entry.readings or len(numbers) != 1:
        return None
    start, end = numbers[0].span()
    amount = _AMOUNT.match(entry.text, start)
    if not said[-1].isdigit() and amount is not None and _is_amount(amount[0]):
        end = amount.end()  # 60 l in the place of 25 %, of 50 l
    return f"{entry.text[:start]}{said}{entry.text[end:]}"


def _counted_anew(entry: Entry, said: str) -> str | None:
    """So many animals in the place of as many as words tell: one died, murió una gamba."""
    what = entry.events[0].what if len(entry.events) == 1 and not entry.readings else None
    if what is None or what.kind not in {"lost", "added"} or not said.isdigit():
        return None
    if what.count is None or what.text is not None:
        return None
    kind = what.species or "fish"
    if what.kind == "added":
        return f"added {said} {kind}"
    return f"lost {said} {kind}" if what.species else f"{said} died"


def _is_amount(text: str) -> bool:
    """Whether a text is a number with its unit."""
    plain = fold(text)
    tokens = cut(plain, lexicon(), text)
    found = quantities.read(tokens, 0)
    return found is not None and found.unit is not None and found.last == len(tokens)


def typed_again(value: Value) -> str | None:
    """A value's number as it would be typed again; None where it has none."""
    unit, basis = value.unit or "", f"as {value.basis}" if value.basis else ""
    if value.value is None:
        return None
    mark = "" if value.qualifier == "=" else value.qualifier
    return f"{mark}{value.value:.10g} {unit} {basis}".strip()
