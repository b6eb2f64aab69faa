"""Hostile and broken messages: nothing may raise, and time may only grow with the length.

Two parts: repeated units, bare and behind beginnings that lead to other readers, at doubling
lengths, where an expression or a loop that goes back over what it has read would show; and random
messages (mutated corpus lines, shuffled words, raw characters) for exceptions. Both for processor
time over 5 µs a character and 1 ms (best of three; of the random ones only those slow at first).
That no expression of the reader can go back without end is proved from its parts in
``tests/core/message/test_patterns.py``.

Run: ``python -m tests.bench.parse_fuzz [messages] [seed]``; a million takes about half an hour.
"""

from __future__ import annotations

import json
import random
import sys
import time
from itertools import product

from core.message import parse
from core.message.wire import to_json
from tests.bench.parse_mutations import KEYS, slip
from tests.messages import corpus

A_CHARACTER = 5e-6
A_MESSAGE = 1e-3
STRANGE = (
    "\u200b\u202e\u2066\u0301\ufeff\x00\x07₃²½°µ‰<>&\"'`{}[]()|\\/*+-=~^#@!?٣७九😀e\u0308\ud800"
)
UNITS = (
    "9", "9.", "9,", "9.9,", "1/", "1-", "a", "ph ", "kh 4 ", "ph 7.2 ", "-", "--", "+", "<",
    "9:", "99:99 ", "2026-", "1.1.", "1.1.1.", "'", ",", "., ", "\n", " ", "\u200b", "9\u200b",
    "x9", "9x", "no3", "no3-n ", "nh3/", "@a ", "fern ", "mg/l ", "nitrte 5 ", "zzzz 5 ",
    "zzzzzzzz ", "changed ", "changed 30% ", "dosed 5 g baking soda ", "how much ",
    "yesterday ", "2h ago ", "vor 2 ", "hier ", "a ", "tap ", "was 6 ", "not ",
    "between 5 and ", "5 to ", "1/2", "½", "5±", "(", "https://", "é", "ph, ", "kh 4, ",
    "5 ph ", "in ", "2 dead ", "added 2 x, ",
)  # fmt: skip
HEADS = ("", "rename a", "remind me to ", "no, ", "/w ", "fern: ", "how much ", "5 g per 80 l ")
"""Beginnings that lead to another reader; what is hostile follows."""
CONTEXTS = {group: corpus.context(group=group) for group in (False, True)}


def words() -> list[str]:
    return sorted({word for case in corpus.cases() for word in case.text.split()})


def message(dice: random.Random, lines: list[str], known: list[str]) -> str:
    """One random message of one of five kinds."""
    kind = dice.randrange(5)
    if kind == 0:
        text = dice.choice(lines)
        for _ in range(dice.randrange(1, 5)):
            text = slip(text, dice)
        return text
    if kind == 1:
        return " ".join(dice.choice(known) for _ in range(dice.randrange(1, 14)))
    if kind == 2:
        return "".join(dice.choice(KEYS + STRANGE) for _ in range(dice.randrange(1, 60)))
    if kind == 3:
        head, tail = dice.choice(lines), dice.choice(lines)
        return head[: dice.randrange(len(head) + 1)] + tail[dice.randrange(len(tail) + 1) :]
    return "".join(dice.choice(known) for _ in range(dice.randrange(1, 10)))


def seconds(text: str, *, best_of: int = 1, group: bool = False) -> float:
    """Least processor time of reading a message."""
    context = CONTEXTS[group]
    least = float("inf")
    for _ in range(best_of):
        start = time.process_time()
        parse(text, context)
        least = min(least, time.process_time() - start)
    return least


def random_part(count: int, dice: random.Random) -> None:
    lines = [case.text for case in corpus.cases()]
    known = words()
    slow: list[tuple[float, str]] = []
    raised = 0
    for number in range(count):
        text = message(dice, lines, known)
        limit = A_CHARACTER * len(text) + A_MESSAGE
        try:
            spent = seconds(text, group=number % 4 == 0)
            if number % 50 == 0:
                json.dumps(to_json(parse(text, corpus.context())))
        except Exception as error:  # noqa: BLE001 - the count is what is measured
            raised += 1
            print("RAISED", type(error).__name__, error, repr(text))
            continue
        if spent > limit and (spent := seconds(text, best_of=3)) > limit:
            slow.append((spent, text))
    print(f"random messages {count}, raised {raised}, over the limit {len(slow)}")
    for spent, text in sorted(slow, reverse=True)[:10]:
        again = seconds(text, best_of=3)  # tells a slow message from a moment of a busy machine
        print(
            f"   {spent * 1e3:.2f} ms, at the end {again * 1e3:.2f} ms,"
            f" for {len(text)} characters: {text!r}"
        )


def growth_part() -> None:
    worst_growth, worst_rate = 0.0, 0.0
    for head, unit in product(HEADS, UNITS):
        times = []
        for length in (64, 128, 256, 512, 1024, 2048, 4096):
            text = (head + unit * (length // len(unit) + 1))[:length]
            times.append(seconds(text, best_of=3))
            rate = (times[-1] - A_MESSAGE) / length
            if rate > A_CHARACTER:
                print(f"   {head + unit!r} at {length}: {times[-1] * 1e3:.1f} ms")
            worst_rate = max(worst_rate, rate)
        growth = max(late / max(early, 1e-3) for early, late in zip(times, times[2:], strict=False))
        worst_growth = max(worst_growth, growth)
        if growth > 5.0:
            print(f"   {head + unit!r} grows {growth:.1f} times for four times the length")
    print(f"hostile beginnings and units {len(HEADS) * len(UNITS)}:")
    print(f"   worst {worst_rate * 1e6:.2f} µs a character after 1 ms")
    print(f"   worst growth for four times the length {worst_growth:.1f}")


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 50_000
    dice = random.Random(int(sys.argv[2]) if len(sys.argv) > 2 else 20260310)  # noqa: S311
    seconds("ph 7.2")
    growth_part()
    random_part(count, dice)


if __name__ == "__main__":
    main()
