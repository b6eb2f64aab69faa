"""Words that belong to no topic: hints, refusals to guess, help, privacy."""

from __future__ import annotations

from collections.abc import Sequence

_NOT_YET = {
    "export": "Export is not built yet; your readings are all kept.",
    "forget": "Deleting a chat from here is not built yet: ask whoever runs this bot.",
}


def only_text() -> list[str]:
    """For a photo, a sticker, a voice note and the like."""
    return ["I can only read text. Type what the kit shows, for example: ph 7.2 kh 4 no3 20"]


def hint(tank: str | None) -> list[str]:
    """For a message that is no reading, no question and no command."""
    example = f"{tank.lower()}: kh 4 ph 7.2" if tank else "kh 4 ph 7.2"
    return [
        f"I did not find a reading or a question in that. Send for example: {example}",
        "or: how much baking soda for 120 l from kh 3 to 6. /help shows more.",
    ]


def not_yet(name: str) -> list[str]:
    """For a command that is known and not built."""
    return [_NOT_YET.get(name, "That is not built yet, so nothing was stored.")]


def question_not_yet() -> list[str]:
    """For a question that is understood and not answered yet."""
    return [
        "I understand the question but cannot answer it yet.",
        "I can work out how much bicarbonate raises KH: dose kh 6",
    ]


def start() -> list[str]:
    """The first words to a new chat."""
    return [
        "I keep your tanks' water in mind: send readings as you type them, ask before you dose,"
        " and I remind you when something is due.",
        "Try: ph 7.2 kh 4 gh 8 no3 20",
        "Then: /tank new Fern 90 l fresh",
        "/help shows the rest on one screen. Not veterinary advice.",
    ]


def help_(tank: str, others: Sequence[str]) -> list[str]:
    """One screen of examples from the keeper's own tanks."""
    other = others[0] if others else tank
    return [
        f"Readings: {tank.lower()}: ph 7.2 kh 4 no3 20 · yesterday 20:00 kh 4 · undo · no, kh 5",
        f"Events: changed 30% · {other.lower()}: dosed 5 g baking soda · cleaned filter",
        "Buffer: dose kh 6 · kh +2 · how much baking soda for 120 l from kh 3 to 6",
        f"Reminders: remind me to test {tank.lower()} every 7 days at 19:00 · /remind lists them",
        "Answers: done · done 2 · more · yes · no",
        f"Tanks: /tank new Fern 90 l fresh · /tank {tank} shows · /tank rename {tank} Moss",
        "Chat: /zone Europe/Lisbon · quiet hours 22:00-07:00 · holiday until 4 May · /settings",
    ]


def privacy() -> list[str]:
    """What is kept, and for how long."""
    return [
        "I keep the readings, events, tanks and reminders that you send, with your words and the"
        " name your messenger shows, to answer you; nothing is passed on.",
        "In groups, what people say to each other is not kept.",
        "To have it all deleted, ask whoever runs this bot.",
    ]


def nothing_more() -> list[str]:
    """For a bare "more" with nothing behind it."""
    return ["There is nothing more to show."]


def nothing_to(word: str) -> list[str]:
    """For a bare yes, no or done with nothing that waits for it."""
    return [f"Nothing is waiting for a “{word}”."]


def old_button() -> list[str]:
    """For a button that belongs to an older version or that nobody gave out."""
    return ["That button is too old for me. Type what you want instead."]


def foreign_button() -> list[str]:
    """For a button of another chat."""
    return ["That button belongs to another chat."]


def already() -> list[str]:
    """For a second press on what was settled."""
    return ["That is settled already; nothing was changed."]


def why_unknown() -> list[str]:
    """For a bare "why" with nothing behind it."""
    return ["Ask why after a reading or a dose: I then show what my answer rested on."]
