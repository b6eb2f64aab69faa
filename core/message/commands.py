"""Lines that steer the tool: slash commands and their spoken forms.

command = "/" name ["@" bot] [arguments]
        | alone                                    yes, no, more, done, undo, why, ...
        | "done" number
        | "no" [","] readings                      a correction
        | opening arguments                        remind me to ..., new tank ..., quiet hours ...
"""

from __future__ import annotations

import re

from core.message.clauses import ends_there
from core.message.clocks import clock_part
from core.message.lexicon import lexicon
from core.message.model import Command, Context
from core.message.numbers import Number
from core.message.timeparts import Parts
from core.message.tokens import Token

_SLASH = re.compile(r"\s*/([A-Za-z_]{1,32})(?:@\w{1,64})?(?=\s|$)")
_ALONE = frozenset(
    {
        "undo", "yes", "no", "more", "done", "later", "skip", "why", "help", "settings",
        "privacy", "export", "forget", "remind", "due", "zone", "quiet", "holiday",
        "stock",
    }
)  # fmt: skip
_OPENING = frozenset(
    {"remind", "stop_reminding", "quiet", "holiday", "zone", "rename", "delete_tank", "move"}
)
_TO = re.compile(r"(?<!\s)\s+to\s+")  # a run of blanks is tried once, not from each of them
_TELLING = frozenset({"link", "its", "at", "at_hour"})
_END = frozenset(".!?,;:")
_BEGIN = frozenset("¿¡")

Read = tuple[Command | None, list[Token]]


def read(text: str, tokens: list[Token], context: Context) -> Read:
    """The command that the message is, and the tokens of its readings; (None, tokens) else."""
    first = tokens[0]
    if first.text == "/" and not text[: first.start].strip():
        slash = _SLASH.match(text)
        if slash is not None:
            return _slash(text, slash, tokens, context)
        return None, tokens
    if (clock := _clock_here(tokens)) is not None:
        return Command("zone", f"it is {clock}"), []
    if first.text == "*" and _starred(tokens):
        return Command("correct", text[first.end :].strip()), tokens[1:]
    if (otherwise := _otherwise(tokens)) is not None:
        return Command("correct", text.strip()), otherwise
    spoken = tokens[1:] if first.text in _BEGIN and len(tokens) > 1 else tokens
    if spoken[0].kind not in {"command", "ask", "several"}:
        return None, tokens
    command, rest = _spoken(text, spoken)
    return (None, tokens) if command is None else (command, rest)


def _otherwise(tokens: list[Token]) -> list[Token] | None:
    """The reading of `kh was 5 not 6`: a number, and the one that it is not."""
    numbers = [index for index, token in enumerate(tokens) if token.kind == "number"]
    names = [token for token in tokens if token.kind == "analyte"]
    if len(names) != 1 or len(numbers) != 2 or numbers[1] != len(tokens) - 1:
        return None
    between = [token.value for token in tokens[numbers[0] + 1 : numbers[1]] if token.text != ","]
    before = [token for token in tokens[: numbers[0]] if token is not names[0]]
    said = [token for token in before if token.kind in {"time", "tank"}]
    light = all(t in said or t.kind == "fill" or t.value in _AROUND for t in before)
    if between != ["not"] or not light or (tokens[0] is not names[0] and not said):
        return None
    tanks = [token for token in said if token.kind == "tank"]
    days = [token for token in said if token.kind == "time"]
    return [*tanks, *days, names[0], tokens[numbers[0]]]


_AROUND = frozenset({"was", "link", "in", "its"})


def _starred(tokens: list[Token]) -> bool:
    """A star that touches one line of readings corrects what was said before (`*kh 5`)."""
    lone = sum(token.text == "*" for token in tokens) == 1
    glued = len(tokens) > 1 and tokens[1].start == tokens[0].end
    return lone and glued and _measures(tokens) and all(token.kind != "nl" for token in tokens)


def _slash(text: str, slash: re.Match[str], tokens: list[Token], context: Context) -> Read:
    del context
    name = slash.group(1).lower()
    arguments = text[slash.end() :].strip()
    rest = [token for token in tokens if token.start >= slash.end()]
    return Command(name, arguments), rest


def _spoken(text: str, tokens: list[Token]) -> Read:
    first = tokens[0]
    name = command_of(first)
    rest = [token for token in tokens[1:] if token.text not in _END]
    if name is None:
        return None, tokens
    if not rest:
        return _alone(name, tokens)
    if name == "why" and len(rest) == 1 and is_not(rest[0]):
        return Command("why"), []
    arguments = text[tokens[1].start :].strip(" ,:")
    if name == "done" and len(rest) == 1 and _count(rest[0]):
        return Command("done", rest[0].text), []
    if first.kind == "several" and tokens[1].text not in {",", ":"}:
        return None, tokens
    if name == "wait" and _tells_of(rest):
        name = "correct"
    if name == "correct" and _asks(tokens[1:]):
        return None, tokens
    said = tokens[1].text in {",", ":"} or name == "correct"
    if name == "no" and not said and not _tells_of(rest):
        return None, tokens  # "no fish died" corrects nothing
    if name == "no" and not said and _without_number(tokens):
        return None, tokens  # "no ammonia, no nitrite": none of either
    if name in {"no", "correct"} and _measures(rest):
        return Command("correct", arguments), rest
    if name == "its" and (clock := _clock(rest)) is not None:
        return Command("zone", f"it is {clock}"), []
    if name == "undo" and all(t.kind == "fill" or t.value in {"last", "one"} for t in rest):
        return Command(name), []
    if name == "stock" and all(_tells_place(token) for token in rest):
        return Command(name, arguments), []
    if name == "new_tank":
        return Command("tank", f"new {arguments}"), []
    if name == "was":
        placed = any(token.kind == "tank" for token in rest) or only_time(rest)
        return (Command("move", arguments.rstrip(".!")), []) if placed else (None, tokens)
    if name in _OPENING:
        return _opening(name, arguments), []
    return None, tokens


def _tells_of(tokens: list[Token]) -> bool:
    """Whether a value is named right behind a word to wait: `wait, kh is 5`, not `wait 2 days`."""
    said = next((token for token in tokens if not _passed(token)), None)
    return said is not None and said.kind in {"analyte", "tank"}


def _passed(token: Token) -> bool:
    return token.kind == "fill" or command_of(token) is not None or token.value in {"link", "was"}


def _asks(tokens: list[Token]) -> bool:
    """Whether what follows a word of regret asks: then it is polite (`sorry, is kh 5 ok?`)."""
    said = [token for token in tokens if token.text not in _END]
    asked = any(token.kind == "ask" or token.text == "?" for token in tokens)
    return asked or (bool(said) and said[0].value == "link")


def only_time(tokens: list[Token]) -> bool:
    """Whether nothing but a time is told: `that was yesterday at 9`."""
    kinds = {token.kind for token in tokens if token.value not in _AT}
    return bool(kinds & _TIMES) and kinds <= _TIMES | {"number", "count", "fill", "p"}


_AT = frozenset({"at", "at_hour", "at_to"})
_TIMES = frozenset({"time", "iso", "clock", "dotted", "slashed"})


def is_not(token: Token) -> bool:
    """The second word of "why not", in all languages."""
    return token.value == "not" or token.text == "no" or command_of(token) == "no"


def _tells_place(token: Token) -> bool:
    return token.kind in {"tank", "fill"} or token.value in {"in", "home"}


def _without_number(tokens: list[Token]) -> bool:
    return tokens[1].kind == "analyte" and ends_there(tokens, 1)


def _clock_here(tokens: list[Token]) -> str | None:
    """The time of day of `aquí son las 19:40`: a clock time, a word for here, and little else."""
    for place, token in enumerate(tokens[:6]):
        if token.kind == "clock":
            return _clock(tokens[place:]) if any(map(_is_here, tokens)) else None
        if token.kind not in {"fill", "several"} and token.value not in _TELLING:
            break
    return None


def _is_here(token: Token) -> bool:
    if token.kind == "several":
        meanings = lexicon().several[str(token.value)]
        return any(entry == ("fill", "here") for _, entry in meanings)
    return token.kind == "fill" and token.value == "here"


def _clock(tokens: list[Token]) -> str | None:
    """The time of day that is all that is said, as hh:mm."""
    parts = Parts()
    used = clock_part(tokens, 0, parts)
    if not used or parts.offset is not None:
        return None
    plain = all(token.kind in {"fill", "several"} for token in tokens[used:])
    if not plain:
        return None
    return tokens[0].text if parts.clock is None else parts.clock.strftime("%H:%M")


def command_of(token: Token) -> str | None:
    """The command that a word opens, if any."""
    if token.kind == "command":
        return str(token.value)
    if token.kind == "several":
        meanings = [entry for _, entry in lexicon().several[str(token.value)]]
        return next((meaning for kind, meaning in meanings if kind == "command"), None)
    return "why" if token.kind == "ask" and token.value == "why" else None


def _alone(name: str, tokens: list[Token]) -> Read:
    if name == "due":
        return Command("remind"), []
    if name in _ALONE:
        return Command(name), []
    return None, tokens


def _opening(name: str, arguments: str) -> Command:
    arguments = arguments.strip()
    if name == "rename":
        return Command("tank", "rename " + _TO.sub(" ", arguments, count=1))
    if name == "delete_tank":
        return Command("tank", f"delete {arguments}")
    return Command(name, arguments.rstrip("."))


def _count(token: Token) -> bool:
    return token.kind == "number" and isinstance(token.value, Number) and token.text.isdigit()


def _measures(tokens: list[Token]) -> bool:
    """Whether there is a reading or an event to correct with."""
    kinds = {token.kind for token in tokens}
    return bool(kinds & {"analyte", "event", "tank"}) or "unit" in kinds
