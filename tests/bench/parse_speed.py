"""Messages read a second, beside a small lark LALR grammar over clean messages.

The lark grammar knows names, numbers and a few units and nothing else; it is the peer for the
cleanest kind of message only. Prints microseconds a message, the best of several rounds, for each
kind, for all together with their JSON, and the ratio to the peer.

Run: ``python -m tests.bench.parse_speed [rounds]``
"""

from __future__ import annotations

import re
import sys
import time
import tracemalloc
from collections.abc import Callable

from lark import Lark, Transformer, v_args

from core.message import parse
from core.message.lexicon import lexicon
from core.message.wire import to_text
from tests.messages import corpus

CLEAN = (
    "ph 7.2 kh 4 gh 8 no3 20",
    "ph 7.4, kh 5, gh 9, no2 0",
    "temp 25 c ph 7 kh 3 dkh gh 6 dgh",
    "nh3 0 no2 0 no3 20 ppm po4 0.5 mg/l",
)
KINDS = {
    "four readings": "ph 7.2 kh 4 gh 8 no3 20",
    "one reading": "kh 4",
    "with a tank": "quarry: kh 9",
    "decimal commas": "ph 7,4, kh 4,5",
    "a range": "no3 20-40",
    "with a time": "yesterday 20:00 kh 4",
    "an event": "changed 30%",
    "a dose": "dosed 5 g baking soda",
    "a question": "how much baking soda for 120 l from kh 3 to 6",
    "another language": "Karbonathärte 5, Nitrat 20",
    "a slip": "nitrtae 20",
    "talk": "the fish look happy today",
}
GRAMMAR = r"""
start: pair+
pair: NAME [":"|"="] NUMBER [UNIT] [","|";"]
NAME.2: /(ph|kh|gh|no3|no2|nh3|po4|temp)/i
UNIT: /(ppm|mg\/l|dkh|dgh|c|f)/i
NUMBER: /[0-9]+(\.[0-9]+)?/
%ignore /[ \n]+/
"""


@v_args(inline=True)
class Build(Transformer):  # type: ignore[type-arg]
    def pair(self, name: str, number: str, unit: str | None) -> tuple[str, float, str | None]:
        return str(name), float(number), unit and str(unit)

    def start(self, *pairs: object) -> list[object]:
        return list(pairs)


def best(action: Callable[[], object], rounds: int, repeat: int = 200) -> float:
    """Least processor time of one action, in microseconds."""
    least = float("inf")
    for _ in range(rounds):
        start = time.process_time()
        for _ in range(repeat):
            action()
        least = min(least, (time.process_time() - start) / repeat)
    return least * 1e6


def varied(text: str, shift: int) -> str:
    """The text with other numbers, so that nothing is won by hearing the very same again."""
    return re.sub("[4-9]", lambda digit: str(4 + (int(digit[0]) - 4 + shift) % 6), text)


def main() -> None:
    rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 15
    context = corpus.context()
    peer = Lark(GRAMMAR, parser="lalr", transformer=Build())

    def ours() -> None:
        for text in CLEAN:
            parse(text, context)

    def theirs() -> None:
        for text in CLEAN:
            peer.parse(text)

    pairs = [(best(ours, 1, 50), best(theirs, 1, 50)) for _ in range(rounds)]
    mine = min(pair[0] for pair in pairs) / len(CLEAN)
    other = min(pair[1] for pair in pairs) / len(CLEAN)
    print(f"clean messages of four readings: ours {mine:.1f} µs, lark {other:.1f} µs")
    print(f"   ratio {mine / other:.2f} (under 1 is faster)")
    for name, text in KINDS.items():
        print(
            f"{name:>20}: {best(lambda text=text: parse(text, context), rounds):6.1f} µs  {text!r}"
        )

    def whole() -> None:
        for text in KINDS.values():
            to_text(parse(text, context))

    each = best(whole, rounds, 40) / len(KINDS)
    print(f"all kinds with their JSON: {each:.1f} µs a message, {1e6 / each:,.0f} a second")
    short = [
        varied(text, shift) for shift in range(6) for text in KINDS.values() if len(text) <= 25
    ]

    def path() -> None:
        for text in short:
            to_text(parse(text, context))

    each = best(path, rounds, 10) / len(short)
    print(f"short ones with their JSON: {each:.1f} µs a message, {1e6 / each:,.0f} a second")
    start = time.process_time()
    lexicon.__wrapped__()
    print(f"reading the language files: {(time.process_time() - start) * 1e3:.0f} ms, once")
    memory()


def memory() -> None:
    """What stays in memory after many different messages."""
    context = corpus.context()
    texts = [f"{case.text} {number}" for case in corpus.cases() for number in range(20)]
    for text in texts:
        parse(text, context)
    tracemalloc.start()
    before = tracemalloc.get_traced_memory()[0]
    for text in texts:
        parse(text + " x", context)
    grown = tracemalloc.get_traced_memory()[0] - before
    print(f"memory kept after {len(texts)} more messages: {grown / 1024:.0f} KiB")


if __name__ == "__main__":
    main()
