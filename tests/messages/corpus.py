"""The corpus of messages: reading the files, and writing down what a message was taken to mean."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from core.message.model import Context, Event, Parsed, Question, Value

FOLDER = Path(__file__).parent
NOW = datetime.fromisoformat("2026-03-10T15:00:00+01:00")
TANKS = ("Fern", "Quarry", "Lagoon")


@dataclass(frozen=True)
class Case:
    """One line of a corpus file."""

    place: str
    text: str
    meaning: str
    group: bool


def context(*, group: bool = False) -> Context:
    return Context(now=NOW, tanks=TANKS, group=group)


def cases() -> Iterator[Case]:
    """All lines of all files."""
    for path in sorted(FOLDER.glob("*.txt")):
        group = False
        for number, line in enumerate(path.read_text(encoding="utf-8").split("\n"), 1):
            if line.startswith("#!"):
                group = "group" in line
            if not line.strip() or line.startswith("#"):
                continue
            text, _, meaning = line.rpartition(" => ")
            yield Case(f"{path.name}:{number}", unescape(text), meaning.strip(), group)


def unescape(text: str) -> str:
    r"""Turn \n, \t and \uXXXX into the characters that they stand for."""
    out, rest = "", text
    while "\\" in rest:
        head, _, rest = rest.partition("\\")
        out += head
        if rest.startswith("u"):
            out, rest = out + chr(int(rest[1:5], 16)), rest[5:]
        else:
            out, rest = out + {"n": "\n", "t": "\t"}.get(rest[:1], "\\" + rest[:1]), rest[1:]
    return out + rest


def differences(case: Case, parsed: Parsed) -> list[str]:
    """What was found and not meant, and what was meant and not found."""
    wanted = [part.strip() for part in case.meaning.split(";") if part.strip()]
    found = _Found(parsed)
    problems = [f"missing: {part}" for part in wanted if not found.take(part)]
    return problems + [f"extra: {part}" for part in found.left()]


class _Found:
    """The parts of a `Parsed`, crossed off one by one."""

    def __init__(self, parsed: Parsed) -> None:
        self.parsed = parsed
        self.values = list(parsed.values)
        self.events = list(parsed.events)
        self.doubts = list(parsed.doubts)
        self.question = parsed.question
        self.command = parsed.command

    def take(self, part: str) -> bool:
        word, _, rest = part.partition(" ")
        method = getattr(self, f"_{word}", None)
        return bool(method(rest)) if method else self._value(word, rest)

    def left(self) -> list[str]:
        out = [f"{v.analyte} {v.qualifier} {v.canonical} {v.tank} {v.at}" for v in self.values]
        out += [f"event {event}" for event in self.events]
        out += [f"doubt {d.reason} {d.text!r} ~ {d.suggestion}" for d in self.doubts]
        if self.question is not None:
            out.append(f"ask {self.question}")
        if self.command is not None:
            out.append(f"command {self.command}")
        return out

    def _none(self, rest: str) -> bool:
        return not rest and self.parsed.intent == "none"

    def _tank(self, rest: str) -> bool:
        return self.parsed.tank == rest

    def _at(self, rest: str) -> bool:
        return same_time(self.parsed.at, rest)

    def _value(self, analyte: str, rest: str) -> bool:
        number, *options = rest.split(" ")
        for value in self.values:
            right = value.analyte == analyte and _number(value, number)
            if right and all(_option(value, option) for option in options):
                self.values.remove(value)
                return True
        return False

    def _event(self, rest: str) -> bool:
        kind, *options = rest.split(" ")
        for event in self.events:
            if event.kind == kind and _keys(event, options):
                self.events.remove(event)
                return True
        return False

    def _ask(self, rest: str) -> bool:
        kind, *options = rest.split(" ")
        question = self.question
        if question is None or question.kind != kind or not _keys(question, options):
            return False
        self.question = None
        return True

    def _command(self, rest: str) -> bool:
        name, _, arguments = rest.partition(" ")
        command = self.command
        if command is None or (command.name, command.arguments) != (name, arguments):
            return False
        self.command = None
        return True

    def _doubt(self, rest: str) -> bool:
        reason, _, suggestion = rest.partition(" ~ ")
        for doubt in self.doubts:
            if doubt.reason == reason and suggestion in {"", doubt.suggestion}:
                self.doubts.remove(doubt)
                return True
        return False


def same_time(at: datetime | None, text: str) -> bool:
    return at is not None and at.replace(tzinfo=None) == datetime.fromisoformat(text)


def _close(found: object, text: str) -> bool:
    return isinstance(found, int | float) and abs(found - float(text)) <= 1e-3 * max(
        abs(float(text)), 0.01
    )


def _number(value: Value, text: str) -> bool:
    if text == "nd":
        return value.qualifier == "<" and value.value is None and value.canonical is None
    if ".." in text:
        low, high = text.split("..")
        ends = value.canonical
        return isinstance(ends, tuple) and _close(ends[0], low) and _close(ends[1], high)
    qualifier = text[0] if text[0] in "<>~" else "="
    return value.qualifier == qualifier and _close(value.canonical, text.lstrip("<>~"))


def _option(value: Value, option: str) -> bool:
    key, _, text = option.partition("=")
    if key == "at":
        return same_time(value.at, text)
    return str(getattr(value, key)) == text


_JSON = {"from": "start_value", "to": "target", "also_to": "also_target"}
_UNCHECKED = {"kind", "start", "end", "text", "premises", "bound"}


def _keys(found: Event | Question, options: list[str]) -> bool:
    """Whether exactly these keys have content; tank and time of an event only where given."""
    wanted = dict(option.split("=", 1) for option in options)
    premises = dict(getattr(found, "premises", {}))
    for key, text in wanted.items():
        content = (
            premises.pop(key, None)
            if key in premises
            else getattr(found, _JSON.get(key, key), None)
        )
        if not _same(content, text):
            return False
    free = _UNCHECKED | {_JSON.get(key, key) for key in wanted}
    if isinstance(found, Event):
        free |= {"tank", "at"}
    names = [name for name in type(found).__dataclass_fields__ if name not in free]
    return not premises and all(getattr(found, name) is None for name in names)


def _same(content: object, text: str) -> bool:
    if isinstance(content, datetime):
        return same_time(content, text)
    if isinstance(content, str):
        return content == text.replace("_", " ")
    return _close(content, text)
