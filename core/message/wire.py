"""A `Parsed` as the JSON that people script against."""

from __future__ import annotations

import json
from dataclasses import fields
from datetime import datetime
from typing import Any

from core.message.model import Event, Parsed, Question, Value

_EVENT_KEYS = tuple(f.name for f in fields(Event) if f.name not in {"start", "end"})
_RENAMED = {"start_value": "from", "target": "to"}
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


def _question_json(question: Question) -> dict[str, Any]:
    out: dict[str, Any] = {}
    for key in _QUESTION_KEYS:
        content = getattr(question, key)
        if content is not None:
            out[_RENAMED.get(key, key)] = content
    for analyte, number in question.premises.items():
        out.setdefault(analyte, number)
    return out


_ENCODER = json.JSONEncoder(ensure_ascii=False, allow_nan=False)


def to_text(parsed: Parsed) -> str:
    """The line that ``meniscus parse`` prints for one message, without its line break."""
    return _ENCODER.encode(to_json(parsed))


def to_json(parsed: Parsed) -> dict[str, Any]:
    """The object that ``meniscus parse`` prints for one message.

    Times are ISO 8601 with offset; a question's premises stand beside its other keys under their
    analyte ids; events and the question leave out what has no content.
    """
    command = parsed.command
    return {
        "intent": parsed.intent,
        "tank": parsed.tank,
        "at": _time(parsed.at),
        "values": [value_json(value, parsed.at) for value in parsed.values],
        "events": [_event_json(event) for event in parsed.events],
        "question": None if parsed.question is None else _question_json(parsed.question),
        "command": None
        if command is None
        else {"name": command.name, "arguments": command.arguments},
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
