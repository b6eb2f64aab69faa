"""A `Parsed` as the JSON that people script against."""

from __future__ import annotations

from dataclasses import fields
from datetime import datetime
from json.encoder import encode_basestring
from typing import Any

from core.message.model import Command, Doubt, Event, Parsed, Question, Value

_EVENT_KEYS = tuple(f.name for f in fields(Event) if f.name not in {"start", "end"})
_RENAMED = {"start_value": "from", "target": "to", "also_target": "also_to"}
_QUESTION_KEYS = tuple(f.name for f in fields(Question) if f.name != "premises")


def _time(at: datetime | None) -> str | None:
    return None if at is None else at.isoformat()


def value_json(value: Value, shared: datetime | None = None) -> dict[str, Any]:
    """One item of ``values``; ``at`` only where it is not the message's time `shared`."""
    canonical = value.canonical
    out = {
        "analyte": value.analyte,
        "value": value.value,
        "low": value.low,
        "high": value.high,
        "qualifier": value.qualifier,
        "unit": value.unit,
        "canonical": list(canonical) if isinstance(canonical, tuple) else canonical,
        "canonical_unit": value.canonical_unit,
        "basis": value.basis,
        "tank": value.tank,
    }
    if value.at is not None and value.at != shared:
        out["at"] = value.at.isoformat()
    return out


def _event_json(event: Event) -> dict[str, Any]:
    out: dict[str, Any] = {}
    for key in _EVENT_KEYS:
        content = getattr(event, key)
        if content is not None:
            out[key] = content.isoformat() if isinstance(content, datetime) else content
    return out


def _command_json(command: Command) -> dict[str, Any]:
    return {"name": command.name, "arguments": command.arguments}


def _question_json(question: Question) -> dict[str, Any]:
    out: dict[str, Any] = {}
    for key in _QUESTION_KEYS:
        content = getattr(question, key)
        if content is not None:
            out[_RENAMED.get(key, key)] = content
    for analyte, number in question.premises.items():
        out.setdefault(analyte, number)
    return out


# The same as text. `json` makes a new encoder for every object, which takes longer than writing
# one of this size: 6.4 µs a message of one value, against 2.2 µs written straight. Numbers are
# finite, since a run of digits is never longer than `numbers.LONGEST`, and so repr is their JSON.

_quoted = encode_basestring  # what the encoder calls in the end, without its way there: 0.3 µs


def to_text(parsed: Parsed) -> str:
    """The line that ``meniscus parse`` prints for one message: `to_json`, without a line break."""
    values = ", ".join([_value_text(value, parsed.at) for value in parsed.values])
    events = ", ".join([_object(_event_json(event)) for event in parsed.events])
    doubts = ", ".join([_doubt_text(doubt) for doubt in parsed.doubts])
    question, command = parsed.question, parsed.command
    asked = "null" if question is None else _object(_question_json(question))
    steers = "null" if command is None else _object(_command_json(command))
    return (
        f'{{"intent": "{parsed.intent}", "tank": {_text(parsed.tank)}, '
        f'"at": {_text(_time(parsed.at))}, "values": [{values}], "events": [{events}], '
        f'"question": {asked}, "command": {steers}, "doubts": [{doubts}]}}'
    )


def _value_text(value: Value, shared: datetime | None) -> str:
    canonical = value.canonical
    if isinstance(canonical, tuple):
        ends = f"[{canonical[0]!r}, {canonical[1]!r}]"
    else:
        ends = _number(canonical)
    own = value.at is not None and value.at != shared
    at = f', "at": {_text(_time(value.at))}' if own else ""
    return (
        f'{{"analyte": "{value.analyte}", "value": {_number(value.value)}, '
        f'"low": {_number(value.low)}, "high": {_number(value.high)}, '
        f'"qualifier": "{value.qualifier}", "unit": {_text(value.unit)}, "canonical": {ends}, '
        f'"canonical_unit": {_text(value.canonical_unit)}, "basis": {_text(value.basis)}, '
        f'"tank": {_text(value.tank)}{at}}}'
    )


def _doubt_text(doubt: Doubt) -> str:
    return (
        f'{{"text": {_quoted(doubt.text)}, "start": {doubt.start}, "end": {doubt.end}, '
        f'"reason": "{doubt.reason}", "suggestion": {_text(doubt.suggestion)}}}'
    )


def _object(content: dict[str, Any]) -> str:
    """An object of texts and numbers only."""
    pairs = [
        f'"{key}": {_quoted(item) if isinstance(item, str) else repr(item)}'
        for key, item in content.items()
    ]
    return f"{{{', '.join(pairs)}}}"


def _text(text: str | None) -> str:
    return "null" if text is None else _quoted(text)


def _number(number: float | None) -> str:
    return "null" if number is None else repr(number)


def to_json(parsed: Parsed) -> dict[str, Any]:
    """The object that ``meniscus parse`` prints for one message.

    Times are ISO 8601 with offset; a question's premises stand beside its other keys under their
    analyte ids; events and the question leave out what has no content.
    """
    return {
        "intent": parsed.intent,
        "tank": parsed.tank,
        "at": _time(parsed.at),
        "values": [value_json(value, parsed.at) for value in parsed.values],
        "events": [_event_json(event) for event in parsed.events],
        "question": None if parsed.question is None else _question_json(parsed.question),
        "command": None if parsed.command is None else _command_json(parsed.command),
        "doubts": [
            {
                "text": doubt.text,
                "start": doubt.start,
                "end": doubt.end,
                "reason": doubt.reason,
                "suggestion": doubt.suggestion,
            }
            for doubt in parsed.doubts
        ],
    }
