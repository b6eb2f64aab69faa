"""How often a slip of the thumb makes a different number be stored without a word.

Takes every message of the corpus that stores something, types one or two characters wrong (leave
one out, put one in, swap two, hit a neighbouring key, double one, change case) outside of its
numbers (an edit that adds a digit, or a mark to a number, changes a number and is not counted),
and compares what is stored silently. Prints the rates and examples.

Run: ``python -m tests.bench.parse_mutations [edits a message] [seed]``
"""

from __future__ import annotations

import random
import re
import sys
from collections import Counter

from core.message import parse
from core.message.doubts import UNKNOWN_TANK
from core.message.model import Parsed
from tests.messages import corpus

ROWS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")
KEYS = "abcdefghijklmnopqrstuvwxyz0123456789 .,-:/"


def neighbour(char: str, dice: random.Random) -> str:
    for row in ROWS:
        place = row.find(char.lower())
        if place >= 0:
            near = row[max(place - 1, 0) : place] + row[place + 1 : place + 2]
            return dice.choice(near or KEYS)
    return dice.choice(KEYS)


NUMBER_MARKS = ".,'-+/:±½¼¾"


def places(text: str) -> list[int]:
    """Positions outside numbers: no digit, and no sign or mark that touches one."""
    out = []
    for place, char in enumerate(text):
        beside = text[max(place - 1, 0) : place + 2]
        if char.isdigit() or (char in NUMBER_MARKS and any(c.isdigit() for c in beside)):
            continue
        out.append(place)
    return out


def runs(text: str) -> list[str]:
    """The numbers of a text as written, with the signs and marks that touch them."""
    return re.findall(r"[.,'\-+/:]*\d[\d.,'\-+/:]*", text)


def slip(text: str, dice: random.Random) -> str:
    free = places(text)
    if not free:
        return text
    place = dice.choice(free)
    char = text[place]
    kind = dice.randrange(6)
    if kind == 0:
        return text[:place] + text[place + 1 :]
    if kind == 1:
        return text[:place] + dice.choice(KEYS) + text[place:]
    if kind == 2 and place + 1 in free:
        return text[:place] + text[place + 1] + char + text[place + 2 :]
    if kind == 3:
        return text[:place] + char + text[place:]
    if kind == 4:
        return text[:place] + char.swapcase() + text[place + 1 :]
    return text[:place] + neighbour(char, dice) + text[place + 1 :]


def numbers(parsed: Parsed) -> Counter[object]:
    """The canonical numbers that are stored without asking, as a multiset."""
    if parsed.intent in {"question", "unclear", "none"}:
        return Counter()
    out: Counter[object] = Counter()
    for value in parsed.values:
        if value.canonical is not None:
            out[rounded(value.canonical)] += 1
    for event in parsed.events:
        for amount in (event.percent, event.litres, event.grams, event.spoons, event.count):
            if amount is not None:
                out[rounded(amount)] += 1
    return out


def rounded(number: float | tuple[float, float]) -> object:
    if isinstance(number, tuple):
        return tuple(round(end, 6) for end in number)
    return round(float(number), 6)


def stored(parsed: Parsed) -> set[object]:
    """What is stored: name, number, tank."""
    return {(v.analyte, rounded(v.canonical), v.tank) for v in parsed.values if v.canonical}


def main() -> None:
    edits = int(sys.argv[1]) if len(sys.argv) > 1 else 60
    dice = random.Random(int(sys.argv[2]) if len(sys.argv) > 2 else 20260310)  # noqa: S311
    total = other = moved = doubted = lost = 0
    examples: list[str] = []
    renamed: list[str] = []
    for case in corpus.cases():
        context = corpus.context(group=case.group)
        before = parse(case.text, context)
        if not numbers(before):
            continue
        for _ in range(edits):
            text = slip(case.text, dice)
            if dice.random() < 0.5:
                text = slip(text, dice)
            if text == case.text or runs(text) != runs(case.text):
                continue  # nothing changed, or a number did
            total += 1
            after = parse(text, context)
            new = numbers(after) - numbers(before)
            doubted += bool(after.doubts)
            lost += not after.values and not after.doubts and not after.events
            if new:
                other += 1
                examples.append(f"{case.text!r} -> {text!r}: {dict(new)}")
            elif stored(after) - stored(before) and not any(
                doubt.reason == UNKNOWN_TANK for doubt in after.doubts
            ):
                moved += 1
                renamed.append(f"{case.text!r} -> {text!r}: {stored(after) - stored(before)}")
    print(f"edits {total}")
    print(f"another number stored silently: {other} ({1000 * other / total:.2f} in 1000)")
    print(
        f"the same number under another name or tank: {moved} ({1000 * moved / total:.2f} in 1000)"
    )
    print(f"doubted: {doubted / total:.1%}   nothing found: {lost / total:.1%}")
    for line in dice.sample(examples, min(40, len(examples))):
        print("  ", line)
    print("under another name:")
    for line in dice.sample(renamed, min(15, len(renamed))):
        print("  ", line)


if __name__ == "__main__":
    main()
